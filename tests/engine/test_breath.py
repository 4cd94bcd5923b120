"""A wall said in one breath: taken apart, each part understood or asked for, and nothing lost or guessed."""

import re
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scantling.engine.desk import Desk
from scantling.engine.tape.lengths import Length, parse_length, say_length
from scantling.engine.walk.breath import LONGEST_BREATH, PARTS_AT_MOST, SAID_AS

from tests.entries import House, four_walls

Answer = dict[str, Any]
SIXTEENTHS = st.integers(17, 16 * 240).map(lambda count: Length(Fraction(count, 16)))


def furnished() -> House:
    """Four walls that are read; a window in wall 2, two windows in wall 3, a door and a cabinet in wall 4."""
    house = four_walls()
    house.new("opening", wall=house.walls[1], kind="window")
    for at in ("10", "60"):
        house.read(house.new("opening", wall=house.walls[2], kind="window"), "at", at)
    house.new("opening", wall=house.walls[3], kind="door")
    house.new("obstacle", wall=house.walls[3], kind="cabinet", base="stops")
    return house


HOUSE = furnished()
DESK = Desk(HOUSE.entries)


def hear(text: str, wall: int | None = None) -> list[Answer]:
    in_hand = None if wall is None else HOUSE.walls[wall - 1]
    answered = DESK.answer({"ask": "breath", "room": HOUSE.room, "text": text, "wall": in_hand})
    assert "answer" in answered, answered
    return answered["answer"]["parts"]


def understood(text: str, wall: int | None = None) -> list[tuple[str, str]]:
    return [(one["figure"]["title"] if one["figure"] else "?", one["shown"]) for one in hear(text, wall)]


@pytest.mark.parametrize(
    ("said", "parts"),
    [
        ("wall two, ninety-six and one sixteenth, window at thirty and a quarter, thirty-six wide",
         [("wall 2, along the floor", '96 1/16"'), ("wall 2, left corner to the window", '30 1/4"'),
          ("wall 2, window, jamb to jamb", '36"')]),
        ("wall two ninety six and one sixteenth window at thirty and a quarter thirty six wide",
         [("wall 2, along the floor", '96 1/16"'), ("wall 2, left corner to the window", '30 1/4"'),
          ("wall 2, window, jamb to jamb", '36"')]),
        ("Wall 2: 96 1/16. The window is at 30.25, width 36",
         [("wall 2, along the floor", '96 1/16"'), ("wall 2, left corner to the window", '30 1/4"'),
          ("wall 2, window, jamb to jamb", '36"')]),
        ("wall four door at 30 and the cabinet at 84 1/8 corner ninety",
         [("wall 4, left corner to the door", '30"'), ("wall 4, left corner to the cabinet", '84 1/8"'),
          ("corner 4, inside", "90.0°")]),
        ("wall four door left eighty and three sixteenths, right eighty and a quarter",
         [("wall 4, door, height at the left", '80 3/16"'), ("wall 4, door, height at the right", '80 1/4"')]),
        ("wall three left window thirty wide, right window 31 wide",
         [("wall 3, left window, jamb to jamb", '30"'), ("wall 3, right window, jamb to jamb", '31"')]),
        ("wall 2 corner two 90.5", [("corner 2, inside", "90.5°")]),
        ("corner ninety and a half wall 4 96", [("?", ""), ("wall 4, along the floor", '96"')]),
    ],
    ids=["with commas", "as it is dictated", "in figures", "things and a corner", "heights", "two alike", "its number",
         "no wall yet"],
)  # fmt: skip
def test_a_breath_is_taken_apart_into_what_the_room_lists(said, parts):
    assert understood(said) == parts


def test_the_wall_in_hand_is_meant_until_another_is_named():
    parts = understood("96 long, corner ninety", 2)
    assert parts == [("wall 2, along the floor", '96"'), ("corner 2, inside", "90.0°")]


@pytest.mark.parametrize(
    ("said", "wall", "doubt", "choices"),
    [
        ("ninety-six", None, "Which wall is not said", 0),
        ("wall three window at thirty", None, "Which of these is it?", 2),
        ("window thirty", 2, "Which of these is it?", 2),
        ("wall two purple", None, "“purple”", 0),
        ("wall to ninety six", None, "was taken for wall 2", 1),
        ("wall two one half", None, "Under an inch", 1),
        ("wall two seventy", None, "Before it was read as 96", 1),
        ("window", 2, "No figure was heard", 0),
        ("wall four door at 30, door at 31", None, "said twice", 1),
    ],
    ids=["no wall", "two of that name", "no figure named", "no number", "sounds alike", "too short", "read otherwise",
         "nothing after it", "twice"],
)  # fmt: skip
def test_what_is_in_doubt_is_asked_and_is_of_nothing_yet(said, wall, doubt, choices):
    part = hear(said, wall)[-1]
    assert part["figure"] is None
    assert doubt in part["doubt"]
    assert len(part["choices"]) >= choices
    assert bool(part["choices"]) == bool(choices)


@settings(max_examples=40)
@given(SIXTEENTHS, SIXTEENTHS, st.sampled_from([", ", ". ", "; then "]))
def test_any_two_lengths_said_in_words_are_heard_as_those(at, width, between):
    said = f"wall four door at {say_length(at)}{between}{say_length(width)} wide"
    parts = hear(said)
    assert [parse_length(one["reading"]).inches for one in parts] == [at.inches, width.inches]
    assert [one["figure"]["what"] for one in parts] == ["at", "width"]


WORDS = st.sampled_from(
    [*(phrase for phrases in SAID_AS.values() for phrase in phrases), "wall", "two", "ninety", "six", "and", "a",
     "three", "eighths", "window", "door", "left window", "cabinet", "96", "3/8", "1/0", ",", ".", "-", "fish", "½",
     "point", "hundred", "feet", "inches", "strong", "minus", "to", "for", "٣", "'", '"', "°", "degrees"]
)  # fmt: skip


@settings(max_examples=60)
@given(st.lists(WORDS, max_size=30).map(" ".join) | st.text(max_size=200), st.sampled_from([None, 1, 2, 3, 4]))
def test_whatever_is_said_is_answered_and_what_is_clear_reads_back_as_it_was_shown(said, wall):
    for part in hear(said, wall):
        if part["figure"] is None:
            assert part["doubt"]
            continue
        assert part["doubt"] == ""
        assert part["choices"] == []
        if not part["shown"].endswith("°"):
            shown = DESK.answer({"ask": "read", "text": part["reading"]})["answer"]["length"]["shown"]
            assert shown == part["shown"]


@settings(max_examples=30)
@given(st.lists(WORDS, max_size=20).map(" ".join))
def test_no_figure_that_was_said_is_passed_over(said):
    digits = re.findall(r"[0-9]+", said)
    heard = " ".join(one["heard"] for one in hear(said, 1))
    walls = re.findall(r"(?:wall|corner) (?:96|two|three|ninety|six)", said)
    assert len(re.findall(r"[0-9]+", heard)) + len(walls) >= len(digits)


def test_a_breath_is_bounded():
    assert len(hear("at 3, " * (LONGEST_BREATH // 6), 1)) == PARTS_AT_MOST
    refused = DESK.answer({"ask": "breath", "room": HOUSE.room, "text": "9" * (LONGEST_BREATH + 1)})
    assert refused["error"]["where"]["field"] == "text"
