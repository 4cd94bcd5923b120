"""Spacing as it is asked for: ends, marks that are each rounded by themselves, things in the way, what is refused."""

from fractions import Fraction

import pytest
from scantling.engine.tape.lengths import SIXTEENTH, Length, format_length

from tests.asked import ask, refusal


def spread(**more):
    return ask("spacing", **{"span": "96", "width": "1 1/2", "count": 5, "ends": "gap", **more})


@pytest.mark.parametrize(
    ("ends", "gap", "first", "last"),
    [
        ("gap", '14 3/4"', '14 3/4"', '79 3/4"'),
        ("item", '22 1/8"', '0"', '94 1/2"'),
        ("one", '17 11/16"', '0"', '76 13/16"'),
    ],
)
def test_a_row_begins_and_ends_as_asked(ends, gap, first, last):
    found = spread(ends=ends)
    assert (found["gap"]["shown"], found["marks"][0]["shown"], found["marks"][-1]["shown"]) == (gap, first, last)


def test_every_mark_is_rounded_from_the_exact_pitch():
    found = ask("spacing", span="137 5/16", width="2 1/2", count=9)
    pitch = Fraction(2157, 128)
    assert found["pitch"]["exact"] == "2157/128"
    for place, mark in enumerate(found["marks"]):
        assert mark["exact"] == str(pitch * place)
        assert mark["shown"] == format_length(Length(pitch * place), SIXTEENTH)
    # Stepped off at 16 7/8, the last mark would lie at 135.
    assert found["marks"][-1]["shown"] == '134 13/16"'
    assert 'stepped off, would put the last 3/16" astray' in found["working"][-1]


def test_where_the_pitch_is_on_the_tape_stepping_off_is_not_warned_of():
    assert not any("astray" in line for line in spread()["working"])


def test_the_widest_gap_gives_the_fewest_items():
    found = ask("spacing", span="120", width="3 1/2", most_gap="20", ends="item")
    assert (found["count"], found["gap"]["exact"]) == (6, "99/5")
    assert found["working"][0] == "fewest items for a gap of 20 or less: 6"


def test_a_gap_that_comes_out_exactly_is_not_passed_over():
    assert ask("spacing", span="96", width="1 1/2", most_gap="14 3/4", ends="gap")["count"] == 5


def test_the_working_can_be_followed_with_a_pencil():
    assert spread()["working"] == ["gap = (96 − 5 × 1 1/2) ÷ 6 = 14 3/4", "pitch = 1 1/2 + 14 3/4 = 16 1/4"]


def test_an_item_on_something_in_the_way_is_told_with_how_much():
    found = spread(avoid=[{"at": "40", "width": "2"}, {"at": "31 1/2", "width": "1"}])
    # Items lie at 14 3/4, 31, 47 1/4, 63 1/2 and 79 3/4.
    assert [(one["item"], one["avoid"], one["over"]["shown"]) for one in found["clashes"]] == [(2, 1, '1"')]


@pytest.mark.parametrize(
    ("at", "width", "clashes"),
    [
        ("32 1/2", "1", 0), ("30", "1", 0), ("32 7/16", "1", 1), ("30", "1 1/16", 1),
        ("31", "0", 0), ("32 1/2", "0", 0), ("31 1/16", "0", 1),
    ],
    ids=["touches on the right", "touches on the left", "over by a hair on the right", "and on the left",
         "a screw at the edge", "a screw at the other edge", "a screw under it"],
)  # fmt: skip
def test_edges_that_only_touch_do_not_clash(at, width, clashes):
    assert len(spread(avoid=[{"at": at, "width": width}])["clashes"]) == clashes


def test_a_nail_on_a_screw_clashes_though_neither_has_a_width():
    found = spread(width="0", avoid=[{"at": "16", "width": "0"}])
    assert [(one["item"], one["over"]["shown"]) for one in found["clashes"]] == [(1, '0"')]


def test_other_counts_are_offered_nearest_first_with_their_clashes():
    found = spread(avoid=[{"at": "31 1/2", "width": "1"}])
    assert [other["count"] for other in found["other_counts"]] == [6, 4, 7, 3, 8, 2]
    for other in found["other_counts"]:
        again = spread(count=other["count"], avoid=[{"at": "31 1/2", "width": "1"}])
        assert (other["gap"], other["clashes"]) == (again["gap"], len(again["clashes"]))


def test_other_counts_keep_to_the_span_and_to_the_widest_gap():
    assert [other["count"] for other in spread(span="8", count=4)["other_counts"]] == [5, 3, 2, 1]
    by_gap = ask("spacing", span="120", width="3 1/2", most_gap="20", ends="item")
    assert [other["count"] for other in by_gap["other_counts"]] == [7, 8, 9]
    assert [other["count"] for other in spread(ends="item", count=3)["other_counts"]] == [4, 2, 5, 6]


def test_items_that_fill_the_span_leave_a_gap_of_nothing():
    assert spread(span="7 1/2")["gap"]["exact"] == "0"


REFUSED = {
    "no count and no gap": ({"span": "96", "width": "1"}, "bad-field", "count"),
    "count and gap": ({"span": "96", "width": "1", "count": 3, "most_gap": "4"}, "bad-field", "count"),
    "no items": ({"span": "96", "width": "1", "count": 0, "ends": "gap"}, "no-items", "count"),
    "one item at both ends": ({"span": "96", "width": "1", "count": 1, "ends": "item"}, "no-items", "count"),
    "more items than fit": ({"span": "96", "width": "20", "count": 5}, "too-many", "count"),
    "a span of nothing": ({"span": "0", "width": "0", "count": 5}, "no-span", "span"),
    "a gap of nothing": ({"span": "96", "width": "1", "most_gap": "0"}, "no-gap", "most_gap"),
    "a gap that no count keeps": ({"span": "10", "width": "6", "most_gap": "1", "ends": "gap"}, "no-count", "most_gap"),
    "marks without end": ({"span": "96", "width": "0", "count": 1001}, "too-many-marks", "count"),
    "gaps without end": ({"span": "9600", "width": "0", "most_gap": "1/16"}, "too-many-marks", "most_gap"),
    "a count that is none": ({"span": "96", "width": "1", "count": "five"}, "bad-field", "count"),
    "ends that are none": ({"span": "96", "width": "1", "count": 5, "ends": "both"}, "bad-field", "ends"),
}


@pytest.mark.parametrize(("question", "key", "field"), REFUSED.values(), ids=REFUSED)
def test_what_is_no_row_is_refused_by_key_and_place(question, key, field):
    found_key, found_field, message = refusal("spacing", **question)
    assert (found_key, found_field) == (key, field)
    assert "{" not in message
