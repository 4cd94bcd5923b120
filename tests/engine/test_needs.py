"""What is still to be read: all that a piece uses, in walking order, and nothing that no piece uses."""

import copy
from random import Random
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.random_rooms import make_room, odd_room
from tests.rooms import Facts, ask, oblong, room, thing, wall

SEEDS = st.integers(0, 10_000)


def needs(facts: Facts) -> list[tuple[str, str]]:
    return [(one["of"], one["what"]) for one in ask("needs", facts)["needs"]]


def unread(*things: Facts, closed: bool = True, turn: str = "inside") -> Facts:
    """Four walls of which nothing has been read; the things stand along the first."""
    walls = [wall(f"w{number}", None, turn, None) for number in (1, 2, 3, 4)]
    walls[0] = wall("w1", None, turn, None, things)
    return room(*walls, closed=closed)


def test_of_bare_walls_each_length_and_each_corner_is_wanted_in_walking_order():
    assert needs(unread()) == [(f"w{number}", what) for number in (1, 2, 3, 4) for what in ("length", "corner")]


def test_an_open_room_has_no_last_corner():
    assert needs(unread(closed=False))[-1] == ("w4", "length")


def test_along_a_wall_the_things_come_before_its_end():
    things = (thing("door", None, None, name="d"), thing("cabinet", "9", None, "stops", name="c"))
    assert needs(unread(*things))[:5] == [
        ("c", "width"),
        ("d", "at"),
        ("d", "width"),
        ("w1", "length"),
        ("w1", "corner"),
    ]


@pytest.mark.parametrize(
    ("stands", "wanted"),
    [
        (thing("window", None, None, name="t"), []),
        (thing("door", None, None, name="t"), ["at", "width"]),
        (thing("cased", None, None, name="t"), ["at", "width"]),
        (thing("shelf", None, None, "stops", name="t"), ["at", "width"]),
        (thing("pipe", None, None, "notch", name="t"), ["at", "width"]),
        (thing("register", None, None, "over", name="t"), []),
    ],
    ids=["window, above base", "door", "cased opening", "base stops at it", "notched for", "base runs over it"],
)  # fmt: skip
def test_only_of_what_base_stops_at_or_is_notched_for_is_anything_wanted(stands, wanted):
    assert [what for of, what in needs(unread(stands)) if of == "t"] == wanted


def test_a_corner_that_the_casing_of_a_door_keeps_base_from_is_not_wanted():
    # Wall 2 is door and casing from end to end: 36 + 2 * (3/16 + 2 1/4) = 40 7/8. Corner 1 turns outward: a board alone
    # at an outside corner is cut square whatever its angle. Corner 2 turns inward: a board alone still runs into it.
    door = thing("door", "2 7/16", "36")
    facts = room(
        wall("w1", "50", "outside", None), wall("w2", "40 7/8", "inside", None, [door]), wall("w3", "20"), closed=False
    )
    assert needs(facts) == [("w2", "corner")]


def test_a_corner_is_wanted_while_it_is_open_if_a_board_comes_round_it():
    facts = room(wall("w1", "50", "outside", None), wall("w2", None), closed=False)
    assert needs(facts) == [("w1", "corner"), ("w2", "length")]


def test_how_high_a_notch_is_may_be_read_and_nothing_waits_for_it():
    facts = oblong(thing("pipe", "60", "1 1/4", "notch", name="p"))
    assert needs(facts) == []
    (base,) = [one for one in ask("pieces", facts)["pieces"] if one["wall"] == "w1"]
    facts["walls"][0]["obstacles"][0]["height"] = "3"
    (told,) = [one for one in ask("pieces", facts)["pieces"] if one["wall"] == "w1"]
    assert (told["back"], told["left"], told["right"]) == (base["back"], base["left"], base["right"])
    assert '3" up' in next(flag["message"] for flag in told["flags"] if flag["key"] == "notch")


def test_each_need_says_where_to_hold_the_tape_and_what_for():
    for one in ask("needs", unread(thing("door", None, None), thing("pipe", None, None, "notch")))["needs"]:
        assert one["title"].endswith(one["short"])
        assert one["hint"].endswith(".")
        assert one["why"] != "the drawing only"
        assert one["number"] in (1, 2, 3, 4)


def test_a_reading_that_cannot_be_understood_leaves_its_figure_wanted():
    facts = oblong()
    facts["walls"][2]["length"] = "63 1/"
    assert needs(facts) == [("w3", "length")]


def stripped(facts: Facts, random: Random) -> Facts:
    """A room with a good half of its readings taken out."""
    left = copy.deepcopy(facts)
    for each in left["walls"]:
        for holder, name in ((each, "length"), (each["corner"], "corner"), *_read_of(each)):
            if random.random() < 0.6:
                holder.pop(name, None)
    return left


def _read_of(each: Facts) -> list[tuple[Facts, str]]:
    return [(one, name) for one in (*each["openings"], *each["obstacles"]) for name in ("at", "width")]


def holder_of(facts: Facts, of: str, what: str) -> Facts:
    """Where in a room a figure is written."""
    for each in facts["walls"]:
        if each["id"] == of:
            return each["corner"] if what == "corner" else each
        for one in (*each["openings"], *each["obstacles"]):
            if one["id"] == of:
                return one
    raise AssertionError(of)


def answered(facts: Facts) -> Any:
    found = ask("pieces", facts)
    return found["pieces"], found["problems"]


@given(SEEDS, st.randoms(use_true_random=False))
def test_giving_every_reading_that_is_wanted_leaves_none_wanted_and_all_as_in_the_full_survey(seed, random):
    full = make_room(seed, 12).facts
    facts = stripped(full, random)
    for of, what in needs(facts):
        holder_of(facts, of, what)[what] = holder_of(full, of, what)[what]
    # A length may show that a door's place is wanted no more, never that something new is.
    assert needs(facts) == []
    assert answered(facts) == answered(full)


@given(SEEDS, st.randoms(use_true_random=False))
def test_a_reading_that_is_not_wanted_changes_no_piece(seed, random):
    facts = stripped(make_room(seed, 12).facts, random)
    asked, (before, _) = set(needs(facts)), answered(facts)
    for each in facts["walls"]:
        figures = [(each, each["id"], "length"), (each["corner"], each["id"], "corner")]
        figures += [(one, one["id"], name) for one, name in _read_of(each)]
        # How tall a thing is that a board is notched for may be read, and is told of the notch: nothing waits for it.
        tall = [one for one, _ in _read_of(each) if one.get("base") != "notch"]
        figures += [(one, one["id"], name) for one in tall for name in ("height", "left", "right")]
        for holder, of, what in figures:
            if what not in holder and (of, what) not in asked:
                holder[what] = random.choice(("1", "33 1/4", "89"))
        each["studs"] = ["16", "32"]
    assert answered(facts)[0] == before


@given(SEEDS, st.randoms(use_true_random=False))
def test_a_reading_that_is_wanted_changes_a_piece_or_brings_one_or_tells_of_a_problem(seed, random):
    full = make_room(seed, 8).facts
    facts = stripped(full, random)
    wanted = needs(facts)
    if not wanted:
        return
    of, what = random.choice(wanted)
    # With all else read, so that it alone is lacking.
    lacking = copy.deepcopy(full)
    del holder_of(lacking, of, what)[what]
    if (of, what) in needs(lacking):
        assert answered(lacking) != answered(full)


@given(SEEDS)
def test_in_the_oddest_room_what_is_wanted_is_unread_and_named_once(seed):
    facts = odd_room(Random(seed))
    wanted = needs(facts)
    assert len(set(wanted)) == len(wanted)
    walls = [each["id"] for each in facts["walls"]]
    order = [walls.index(one["wall"]) for one in ask("needs", facts)["needs"]]
    assert order == sorted(order)
