"""How crown lies at the saw, as drawn: read off the drawing's own points and held against the settings in words."""

import math
import re
from xml.etree import ElementTree

import pytest

from tests.rooms import Facts, ask, oblong, room, thing, wall

MIDDLE = {"left": 42.0, "right": 212.0}
TOP = 179.0


def drawn(facts: Facts) -> list[tuple[Facts, ElementTree.Element]]:
    found = ask("saw", facts)["pieces"]
    pieces = {one["letter"]: one for one in ask("pieces", facts)["pieces"] if one["part"] == "crown"}
    return [(pieces[one["letter"]], ElementTree.fromstring(one["drawing"])) for one in found if one["letter"] in pieces]


def points(line: ElementTree.Element) -> tuple[float, ...]:
    return tuple(float(line.get(name, "")) for name in ("x1", "y1", "x2", "y2"))


def in_strip(drawing: ElementTree.Element, tag: str, side: str) -> list[ElementTree.Element]:
    """What is drawn below for one end, by the half of the sheet that it stands in."""
    found = []
    for one in drawing.iter(f"{{http://www.w3.org/2000/svg}}{tag}"):
        x, y = (float(one.get(name) or one.get(f"{name}1") or 0) for name in ("x", "y"))
        if y > TOP and (x < 170) == (side == "left"):
            found.append(one)
    return found


@pytest.mark.parametrize("corner", ["90", "84", "97"])
def test_swing_lean_and_turn_are_drawn_for_every_end_as_they_are_told(corner):
    facts = room(wall("w1", "60"), wall("w2", "40", "outside", corner=corner), wall("w3", "60"), closed=False,
                 base__wanted="no", crown__wanted="yes", open_end="square")  # fmt: skip
    ends = [(piece, side, drawing) for piece, drawing in drawn(facts) for side in ("left", "right")]
    told = [(piece[side]["at_saw"], side, drawing) for piece, side, drawing in ends]
    assert sum(words is not None for words, _, _ in told) == 3  # a cope, and the two of the outside corner
    turned = set()
    for words, side, drawing in told:
        blades = [points(line) for line in in_strip(drawing, "line", side) if line.get("class") == "hand"]
        texts = [text.text for text in in_strip(drawing, "text", side)]
        if words is None:
            assert (blades, texts) == ([], [])
            continue
        said = re.search(r"(\w+) edge to the fence: swing ([\d.]+)° (\w+), lean ([\d.]+)° left", words)
        assert said, words
        above, front = blades
        swing = math.degrees(math.atan((above[2] - above[0]) / (above[3] - above[1])))  # down the sheet is nearer
        assert swing == pytest.approx(float(said[2]) * (1 if said[3] == "right" else -1), abs=0.3)
        lean = math.degrees(math.atan((front[0] - front[2]) / (front[1] - front[3])))
        assert lean == pytest.approx(float(said[4]), abs=0.3)
        assert f"{said[1]} edge to the fence" in texts
        assert ("turned end for end" in texts) == ("turned end for end" in words)
        turned.add("turned end for end" in words)
        title = drawing.find("{http://www.w3.org/2000/svg}title")
        assert title is not None
        assert f"{side} end {words}" in (title.text or "")
    assert turned == {True, False}


def test_what_is_kept_is_wood_on_the_side_that_is_told():
    for piece, drawing in drawn(oblong(thing("door", "30", "30"), base__wanted="no", crown__wanted="yes")):
        for side in ("left", "right"):
            words = piece[side]["at_saw"]
            if words:
                shapes = [one for one in drawing.iter("{http://www.w3.org/2000/svg}polygon")
                          if one.get("class") == "ink wood"]  # fmt: skip
                corners = [[tuple(map(float, at.split(","))) for at in one.get("points", "").split()] for one in shapes]
                below = [each for each in corners
                         if each[0][1] > TOP and (each[0][0] < 170) == (side == "left")]  # fmt: skip
                assert len(below) == 2
                outer = "left" if below[0][0][0] < MIDDLE[side] else "right"
                assert words.endswith(f"keep what is {outer} of the blade")


def test_what_stands_against_the_wall_has_no_lay_of_its_own():
    one = ask("saw", oblong())["pieces"][0]
    assert 'viewBox="0 0 340 194"' in one["drawing"]
