"""Battens along a wall: equal, marked from the exact pitch, kept clear of outlets, told well when they cannot be."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scantling.engine.desk import Desk

from tests.asked import ask as ask_checked
from tests.entries import four_walls
from tests.rooms import Facts, ask, inches, joints, oblong, thing

WANTED = {"width": "2 1/2", "height": "40", "count": "9"}


def battened(*things: Facts, wants: Facts | None = None, **standard: str) -> Facts:
    facts = oblong(*things, base__wanted="no", **standard)
    facts["walls"][0]["length"] = facts["walls"][2]["length"] = "137 5/16"
    wants = {**WANTED, **(wants or {})}
    facts["walls"][0]["settings"] = {f"battens.{name}": text for name, text in wants.items() if text}
    return facts


def rows(facts: Facts) -> list[Facts]:
    return ask_checked("battens", room=facts)["rows"]


def test_nine_battens_on_a_wall_stand_where_the_exact_pitch_puts_them():
    # (137 5/16 - 9 * 2 1/2) / 8 = 14.3516 between, pitch 16.8516; the last mark is 8 pitches on, 134 13/16.
    (row,) = rows(battened())
    assert inches(row["gap"]) == pytest.approx(14.3515625)
    assert inches(row["marks"][-1]["mark"]) == 134.8125
    assert [mark["item"] for mark in row["marks"]] == list(range(1, 10))


def test_each_batten_is_a_piece_with_its_own_mark_in_its_working():
    pieces = ask_checked("pieces", room=battened())["pieces"]
    assert [piece["part_name"] for piece in pieces[:2]] == ["batten, wall 1, 1 of 9", "batten, wall 1, 2 of 9"]
    assert {piece["cut"]["shown"] for piece in pieces} == {'40"'}
    assert pieces[0]["profile"] == "batten 3/4 × 2 1/2"
    assert {joints(piece) for piece in pieces} == {("square", "square")}
    # What is left of the wall between nine of them, in eight gaps: 114 13/16 / 8 = 14.3516; and 2 1/2 more.
    assert [(step["text"], step["value"]["shown"]) for step in pieces[1]["working"]] == [
        ("height, as this wall's battens are wanted", '40"'),
        ("stretch of wall for 9 battens", '137 5/16"'),
        ("gap: (137 5/16 − 9 × 2 1/2) ÷ 8", '14 11/32"'),
        ('its left edge, from the left end of the stretch, ± 1/16"', '16 27/32"'),
    ]
    marks = [piece["working"][-1]["value"]["inches"] for piece in pieces]
    assert marks == [inches(mark["mark"]) for mark in rows(battened())[0]["marks"]]


def test_a_door_makes_two_stretches_each_spaced_by_the_widest_gap():
    facts = battened(thing("door", "50", "30"), wants={"count": "", "most_gap": "14"})
    left, right = rows(facts)
    assert (left["place"], right["place"]) == ("left of the door", "right of the door")
    assert max(inches(left["gap"]), inches(right["gap"])) <= 14
    # The right stretch starts past the door's other casing: 50 + 30 + 3/16 + 2 1/4.
    assert inches(right["marks"][0]["from_corner"]) == 82.4375
    (problem,) = ask("pieces", battened(thing("door", "50", "30")))["problems"]
    assert problem["key"] == "by-gap"


def test_a_batten_on_an_outlet_is_told_with_the_counts_that_clear_it():
    facts = battened(thing("outlet", "17", "3", "over"))
    (row,) = rows(facts)
    (clash,) = row["clashes"]
    assert (clash["item"], clash["thing"]) == (2, "outlet")
    assert inches(clash["over"]) == pytest.approx(16.8515625 + 2.5 - 17)
    flags = [flag for piece in ask("pieces", facts)["pieces"] for flag in piece["flags"]]
    assert [flag["key"] for flag in flags] == ["clash"]
    assert f"{' or '.join(map(str, row['clear']))} battens would clear it" in flags[0]["message"]
    for count in row["clear"]:
        assert rows(battened(thing("outlet", "17", "3", "over"), wants={"count": str(count)}))[0]["clashes"] == []


def test_an_outlet_not_placed_is_told_and_a_thing_not_named_is_not_kept_clear_of():
    (problem,) = ask("pieces", battened(thing("outlet", None, "3", "over")))["problems"]
    assert problem["key"] == "unplaced"
    assert rows(battened(thing("vent", "17", "3", "over")))[0]["clashes"] == []
    assert rows(battened(thing("vent", "17", "3", "over"), wants={"avoid": "vent"}))[0]["clashes"] != []


WRONG = {
    "no height": ({"height": ""}, "incomplete"),
    "a count and a gap": ({"most_gap": "12"}, "incomplete"),
    "a width that is none": ({"width": "fish"}, "unknown-word"),
    "a width of nothing": ({"width": "0"}, "nothing"),
    "a height that is none": ({"height": "fish"}, "unknown-word"),
    "a widest gap that is none": ({"count": "", "most_gap": "fish"}, "unknown-word"),
    "a thickness of nothing": ({"thickness": "0"}, "nothing"),
    "a count that is none": ({"count": "nine"}, "not-a-count"),
    "a count of one": ({"count": "1"}, "no-items"),
    "more than the wall holds": ({"count": "70"}, "too-many"),
    "more than a list can hold": ({"width": "1/16", "count": "900"}, "too-many"),
    "ends that are none": ({"ends": "both"}, "not-ends"),
}


@pytest.mark.parametrize(("wants", "key"), WRONG.values(), ids=WRONG)
def test_battens_that_cannot_be_are_a_problem_on_their_wall(wants, key):
    facts = battened(wants=wants)
    facts["standard"]["base.wanted"] = "yes"
    answered = ask("pieces", facts)
    (problem,) = answered["problems"]
    assert (problem["wall"], problem["key"]) == ("w1", key)
    assert len(answered["pieces"]) == 4
    assert ask("battens", facts)["problems"] == [problem]


@pytest.mark.parametrize(
    ("wants", "said"),
    [
        ({"ends": "both"}, 'Battens of wall 1, ends: “both” is no end of a row: write item, one, gap.'),
        ({"count": "nine"}, 'Battens of wall 1, count: “nine” is not a count: write how many battens.'),
        ({"height": "0"}, "Battens of wall 1, height: It must be more than nothing."),
        ({"count": "", "most_gap": "0"}, "Battens of wall 1, most gap: It must be more than nothing."),
    ],
)
def test_what_is_wrong_with_a_setting_is_told_by_its_name_with_what_to_write(wants, said):
    (problem,) = ask("battens", battened(wants=wants))["problems"]
    assert problem["message"] == said


def test_what_to_keep_clear_of_is_a_list_of_words_in_any_case_and_spacing():
    vent, niche = thing("vent", "17", "3", "over", name="v"), thing("niche", "51", "3", "over", name="n")
    (row,) = rows(battened(vent, niche, wants={"avoid": " Vent ,, NICHE"}))
    # The second batten lies from 16.85 to 19.35, the fourth from 50.55 to 53.05.
    assert [(clash["item"], clash["thing"]) for clash in row["clashes"]] == [(2, "vent"), (4, "niche")]


@given(st.integers(2, 40), st.sampled_from(("item", "gap", "one")), st.integers(20 * 16, 300 * 16))
def test_every_gap_is_the_same_and_the_row_fills_its_stretch(count, ends, sixteenths):
    facts = battened(wants={"count": str(count), "ends": ends, "width": "1/4"})
    facts["walls"][0]["length"] = (
        f"{sixteenths // 16} {sixteenths % 16}/16" if sixteenths % 16 else str(sixteenths // 16)
    )
    (row,) = rows(facts)
    marks, gap, span = [inches(one["mark"]) for one in row["marks"]], inches(row["gap"]), sixteenths / 16
    first, last = marks[0], span - marks[-1] - 0.25
    assert [b - a - 0.25 for a, b in pairwise(marks)] == pytest.approx([gap] * (count - 1))
    assert (first, last) == pytest.approx({"item": (0, 0), "gap": (gap, gap), "one": (0, gap)}[ends])


def test_what_is_said_of_a_wall_comes_from_the_notebook_and_can_be_said_again():
    house = four_walls()
    for name, value in WANTED.items():
        house.say("setting", of=house.walls[1], name=f"battens.{name}", value=value)
    count = house.entries[-1]["id"]
    desk = Desk(house.entries)
    found = desk.answer({"ask": "battens", "room": house.room})["answer"]
    assert found["rows"][0]["count"] == 9
    entries = found["walls"][0]["entries"]
    assert found["walls"] == [{"wall": house.walls[1], "settings": WANTED, "entries": entries}]
    assert entries["count"] == [count]
    house.say("setting", supersedes=[count], of=house.walls[1], name="battens.count", value="7")
    desk.take(house.entries)
    assert desk.answer({"ask": "battens", "room": house.room})["answer"]["rows"][0]["count"] == 7


def test_no_wall_has_battens_until_something_is_said_of_them():
    found = ask_checked("battens", room=oblong())
    assert found == {"walls": [], "rows": [], "problems": [], "warnings": [], "thickness": "3/4"}
