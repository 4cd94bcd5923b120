"""The plan with its pieces: every letter where it goes, joints and angles shown, and no label over another."""

import itertools
import json
from random import Random
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scantling.engine.desk import Desk
from scantling.engine.drawings.plans.labels import Box, Label, place_labels
from scantling.engine.drawings.plans.whole import say_letters
from scantling.engine.trim.pieces import derive_pieces

from tests.engine.test_drawings import ROOMS, SVG, fitting, texts
from tests.parity_questions import DEMO
from tests.random_rooms import make_room, odd_room
from tests.rooms import ask, oblong, pieces, room, thing, wall

CASED = {"left": "80 3/16", "right": "80 1/2"}


def boxes_of(drawing: str) -> list[tuple[str, Box]]:
    """Every label of a plan with the room it takes: its text, or its ring."""
    found = []
    parts = [part for part in fitting(drawing) if part.tag != f"{SVG}title"]
    for before, part in itertools.pairwise(parts):
        if part.tag == f"{SVG}text":
            ring = before if before.get("class") == "lettered" else None
            found.append((part.text, box_of(part, ring)))
    return found


def box_of(part: ElementTree.Element, ring: ElementTree.Element | None) -> Box:
    x, y = float(part.get("x")), float(part.get("y"))
    # Half the letters of a line are narrower than half an em; a label's digits and capitals are not.
    size = 11 if "small" in part.get("class") else 12
    wide, radius = len(part.text) * size * 0.55 / 2, 8.7 if ring is not None else 0
    return Box(x - max(wide, radius), y - max(size * 0.75, radius), x + max(wide, radius), y + max(1, radius - 5))


def overlaps(drawing: str) -> list[tuple[str, str]]:
    pairs = itertools.combinations(boxes_of(drawing), 2)
    return [(one, other) for (one, its), (other, theirs) in pairs if its.meets(theirs)]


def demo_rooms() -> list[str]:
    desk = Desk(json.loads(DEMO.read_text(encoding="utf-8"))["entries"])
    rooms = desk.answer({"ask": "notebook"})["answer"]["houses"][0]["rooms"]
    return [desk.answer({"ask": "plan", "room": one["id"]})["answer"]["drawing"] for one in rooms]


@pytest.mark.parametrize("drawing", demo_rooms(), ids=["sewing room", "stair hall", "bath"])
def test_in_the_demo_house_no_label_lies_over_another_and_no_letter_is_left_out(drawing):
    assert overlaps(drawing) == []
    assert not any("no room here" in words for words in texts(drawing))


@pytest.mark.parametrize("facts", ROOMS.values(), ids=ROOMS)
def test_in_no_room_does_a_label_lie_over_another(facts):
    assert overlaps(ask("plan", facts)["drawing"]) == []


@given(st.integers(0, 10_000))
def test_in_rooms_made_at_random_no_label_lies_over_another(seed):
    for facts in (make_room(seed, 60).facts, odd_room(Random(seed), 12)):
        facts["standard"]["casing.wanted"] = "yes"
        assert overlaps(ask("plan", facts)["drawing"]) == []


def test_every_piece_is_lettered_or_told_to_be_left_out():
    facts = oblong(thing("door", "30", "30 1/8", **CASED), casing__wanted="yes")
    said = texts(ask("plan", facts)["drawing"])
    assert "A–C" in said
    assert {piece["letter"] for piece in pieces(facts)[3:]} <= set(said)
    crowded = room(*(wall(f"w{n}", "30", ("inside", "outside")[n % 3 == 0]) for n in range(60)))
    assert any(words.startswith("no room here for") for words in texts(ask("plan", crowded)["drawing"]))


def test_corners_that_are_not_square_say_their_angle_and_square_ones_do_not():
    facts = oblong()
    facts["walls"][1]["corner"]["corner"] = "91.6"
    facts["walls"][2]["corner"]["corner"] = "90.1"
    degrees = [words for words in texts(ask("plan", facts)["drawing"]) if words.endswith("°")]
    assert degrees == ["91.6°"]


def test_the_joints_that_there_are_are_explained():
    assert "curved: cope" in texts(ask("plan", oblong())["drawing"])
    assert "slanted: miter" in texts(ask("plan", oblong(base__inside="miter"))["drawing"])


def test_letters_that_follow_each_other_are_said_as_a_run():
    from scantling.engine.survey.read import read_room

    found, _ = derive_pieces(read_room(room(*(wall(f"w{n}", "30") for n in range(6)))))
    assert say_letters(found[:3], found) == "A–C"
    assert say_letters([found[0], found[1], found[4]], found) == "A B E"
    assert say_letters([found[5], found[3], found[4], found[0]], found) == "A D–F"


SHEET = Box(0, 0, 100, 100)


def test_of_two_labels_for_one_place_the_more_needed_stays():
    here = ((50.0, 50.0),)
    placed, left_out = place_labels([Label("angle", here, 3, "", 11), Label("A", here, 1, "", 11)], SHEET, [])
    assert [label.words for label, _ in placed] == ["A"]
    assert [label.words for label in left_out] == ["angle"]


def test_a_label_goes_to_its_next_place_when_a_line_runs_through_the_first():
    label = Label("A", ((50.0, 50.0), (50.0, 80.0)), 1, "", 11)
    ((_, place),), _ = place_labels([label], SHEET, [((0.0, 50.0), (100.0, 52.0))])
    assert place == (50.0, 80.0)


def test_a_label_that_would_leave_the_sheet_is_left_out():
    assert place_labels([Label("wide words", ((5.0, 50.0),), 1, "", 11)], SHEET, [])[0] == []


@pytest.mark.parametrize(
    ("start", "finish", "crossed"),
    [((0, 5), (20, 5), True), ((0, 5), (3, 5), False), ((0, 0), (20, 0), False), ((5, 0), (5, 20), True),
     ((0, 15), (15, 0), True), ((0, 7), (7, 0), False), ((7, 7), (8, 8), True)],
    ids=["through", "short of it", "above", "down", "aslant", "past a corner", "inside"],
)  # fmt: skip
def test_a_line_through_a_box_is_seen(start, finish, crossed):
    assert Box(4, 4, 12, 12).is_crossed(start, finish) is crossed
