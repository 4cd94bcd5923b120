"""Drawings: well-formed, by class only, every name escaped, and all that is drawn inside the sheet."""

import json
import re
from collections.abc import Iterator
from random import Random
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scantling.engine.desk import Desk
from scantling.engine.drawings import svg

from tests.parity_questions import DEMO, STOCK
from tests.random_rooms import make_room, odd_room
from tests.rooms import Facts, ask, oblong, room, thing, wall

SVG = "{http://www.w3.org/2000/svg}"
ELEMENTS = {"svg", "title", "g", "line", "polygon", "polyline", "path", "text", "circle"}
ATTRIBUTES = {
    "class",
    "x",
    "y",
    "cx",
    "cy",
    "r",
    "x1",
    "y1",
    "x2",
    "y2",
    "points",
    "d",
    "text-anchor",
    "viewBox",
    "role",
}
CLASSES = {
    "ink", "pencil", "wood", "hand", "dashed", "red", "letter", "number", "small", "strong", "thin", "wall", "gap",
    "sheet", "fence", "lettered", "opening",
}  # fmt: skip
NUMBER = r"-?\d+(?:\.\d)?"
NASTY = "<script>alert(1)</script> & \"quotes\" 'and' ]]> \x00\x1b\ud800\u202e \N{COFFIN} " + "n" * 10_000


def sound(drawing: str) -> ElementTree.Element:
    """The drawing, shown to be well-formed, of the allowed parts only, and inside its own sheet."""
    assert drawing.encode("utf-8").decode("utf-8") == drawing
    root = ElementTree.fromstring(drawing)
    for element in root.iter():
        assert element.tag.removeprefix(SVG) in ELEMENTS
        assert set(element.attrib) <= ATTRIBUTES
        assert set(element.get("class", "").split()) <= CLASSES
    assert root.get("role") == "img"
    assert root[0].tag == f"{SVG}title"
    assert root[0].text
    left, top, width, height = (float(value) for value in root.get("viewBox").split())
    assert width > 0
    assert height > 0
    for x, y in (*points_of(root), *rims_of(root)):
        assert left <= x <= left + width, drawing[:2000]
        assert top <= y <= top + height, drawing[:2000]
    return root


def fitting(drawing: str) -> ElementTree.Element:
    """A sound drawing whose lines of text end where its sheet does."""
    root = sound(drawing)
    width = float(root.get("viewBox").split()[2])
    for start, end, classes in lines_of_text(root):
        assert -0.5 <= start <= end <= width + 0.5, (classes, drawing[:2000])
    return root


def rims_of(root: ElementTree.Element) -> Iterator[tuple[float, float]]:
    for ring in root.iter(f"{SVG}circle"):
        x, y, radius = (float(ring.get(name)) for name in ("cx", "cy", "r"))
        yield from ((x - radius, y - radius), (x + radius, y + radius))


def lines_of_text(root: ElementTree.Element) -> Iterator[tuple[float, float, str]]:
    """Where each line of text begins and ends, at least: a digit of the page's typeface is wider than this."""
    for element in root.iter(f"{SVG}text"):
        classes = element.get("class").split()
        size = 15 if "letter" in classes else 11 if "small" in classes else 12
        wide, x = len(element.text) * size * 0.5, float(element.get("x"))
        back = {"start": 0.0, "middle": wide / 2, "end": wide}[element.get("text-anchor")]
        yield x - back, x - back + wide, element.get("class")


def points_of(root: ElementTree.Element) -> Iterator[tuple[float, float]]:
    for element in root.iter():
        for names in (("x", "y"), ("x1", "y1"), ("x2", "y2")):
            if names[0] in element.attrib:
                yield float(element.get(names[0])), float(element.get(names[1]))
        for point in element.get("points", "").split():
            x, y = point.split(",")
            yield float(x), float(y)
        yield from _path_points(element.get("d", ""))


def _path_points(data: str) -> Iterator[tuple[float, float]]:
    """Ends and control points of a path in absolute moves, lines and curves."""
    x = y = 0.0
    for letter, written in re.findall(r"([A-Z])([^A-Z]*)", data):
        values = [float(value) for value in re.findall(NUMBER, written)]
        if letter == "H":
            x = values[-1]
        elif letter == "V":
            y = values[-1]
        elif letter == "A":
            x, y = values[-2:]
        elif letter in "MLQT":
            for place in range(0, len(values) - 2, 2):
                yield values[place], values[place + 1]
            x, y = values[-2:]
        else:
            assert letter == "Z"
        yield x, y


ROOMS: dict[str, Facts] = {
    "no walls": room(),
    "one wall": room(wall("w1", "120")),
    "one wall and a wide door": room(wall("w1", "120", things=[thing("door", "5", "110")])),
    "two walls": room(wall("w1", "120"), wall("w2", "96")),
    "sixty walls": room(*(wall(f"w{n}", "30", ("inside", "outside")[n % 3 == 0]) for n in range(60))),
    "two hundred walls that spin": room(*(wall(f"w{n}", "30", corner="30") for n in range(200))),
    "huge": room(*(wall(f"w{n}", "12000") for n in range(4))),
    "tiny": room(*(wall(f"w{n}", "1/64") for n in range(4))),
    "a long wall and a short": room(wall("w1", "12000"), wall("w2", "1/64"), wall("w3", "12000"), wall("w4", "1/64")),
    "nothing read": room(*(wall(f"w{n}", None, corner=None) for n in range(5))),
    "a length that is none": room(wall("w1", "fish"), wall("w2", "96"), wall("w3", "120")),
    "sharp corners": room(wall("w1", "100", corner="1"), wall("w2", "100", corner="179"), wall("w3", "50")),
    "things past the end": oblong(thing("door", "110", "60"), thing("window", "200", "10", name="b")),
    "a door the length of a narrow hall": room(
        wall("w1", "36", things=[thing("door", "2", "32")]), wall("w2", "8"), wall("w3", "36"), wall("w4", "8")
    ),
    "things of no place": oblong(thing("door", None, "30"), thing("shelf", "5", None, "stops")),
    "nasty names": oblong(thing(NASTY, "10", "20", "stops")) | {"name": NASTY},
}


@pytest.mark.parametrize("facts", ROOMS.values(), ids=ROOMS)
def test_the_plan_of_any_room_is_sound(facts):
    sound(ask("plan", facts)["drawing"])


@pytest.mark.parametrize("facts", ROOMS.values(), ids=ROOMS)
def test_every_piece_and_board_of_any_room_is_drawn_soundly(facts):
    facts = {**facts, "standard": {**facts["standard"], "base.stock": [*STOCK, {"length": "1000 ft", "price": "1"}]}}
    for piece in ask("pieces", facts)["pieces"]:
        root = sound(piece["drawing"])
        assert f"Piece {piece['letter']}" in root[0].text
    if len(facts["walls"]) < 100:
        for plan in ask("boards_for_room", facts)["plans"]:
            sound(plan["drawing"])


@pytest.mark.parametrize("facts", ROOMS.values(), ids=ROOMS)
def test_each_wall_of_any_room_is_drawn_soundly_from_in_front(facts):
    for number in range(1, min(len(facts["walls"]), 6) + 1):
        root = fitting(ask("elevation", facts, wall=str(number))["drawing"])
        assert root[0].text == f"Wall {number} from in front, with its pieces by letter"


def test_a_wall_from_in_front_letters_what_hangs_on_it_and_nothing_else():
    door = thing("door", "30", "30", left="80", right="80")
    facts = oblong(door, casing__wanted="yes", crown__wanted="yes", chair_rail__wanted="yes")
    pieces = ask("pieces", facts)["pieces"]
    here = [one["letter"] for one in pieces if one["wall"] == "w1" or one["opening"]]
    drawn = ask("elevation", facts, wall="w1")["drawing"]
    assert sorted(words for words in texts(drawn) if len(words) == 1) == sorted(here)
    assert ask("elevation", facts, wall="1")["drawing"] == drawn


def test_a_wall_that_is_not_there_is_named():
    error = Desk().answer({"ask": "elevation", "room": oblong(), "wall": "9"})["error"]
    assert error["key"] == "no-such-wall"
    assert "9" in error["message"]


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 10_000))
def test_rooms_made_at_random_are_drawn_soundly(seed):
    for facts in (make_room(seed).facts, odd_room(Random(seed), 12)):
        sound(ask("plan", facts)["drawing"])


@settings(max_examples=100, deadline=None)
@given(st.text(max_size=60))
def test_any_name_is_drawn_escaped_and_never_as_markup(name):
    drawing = ask("plan", {**oblong(), "name": name})["drawing"]
    root = sound(drawing)
    assert root[0].text.startswith("Plan of")


def test_words_in_a_drawing_are_escaped_and_cut_to_fit():
    # No name stands in a drawing's text today, only in its title; the next one that does must not be markup either.
    element = ElementTree.fromstring(svg.text((1, 2), NASTY, "small"))
    assert element.text.startswith("<script>")
    assert len(element.text) <= svg.NAME_AT_MOST


def texts(drawing: str) -> list[str]:
    return [element.text for element in sound(drawing).iter(f"{SVG}text")]


def test_the_plan_numbers_every_wall_and_says_how_many():
    drawing = ask("plan", oblong(base__wanted="no"))["drawing"]
    assert texts(drawing) == ["1", "2", "3", "4"]
    assert sound(drawing)[0].text == "Plan of a room, 4 walls, with its pieces by letter"


def test_a_room_without_walls_says_so():
    assert texts(ask("plan", room())["drawing"]) == ["no walls yet"]


def marked(drawing: str, *classes: str) -> int:
    return sum(set(classes) <= set(element.get("class", "").split()) for element in sound(drawing).iter())


def test_a_wall_not_read_is_dashed_and_one_read_is_not():
    facts = oblong()
    assert marked(ask("plan", facts)["drawing"], "wall", "dashed") == 0
    del facts["walls"][1]["length"]
    assert marked(ask("plan", facts)["drawing"], "wall", "dashed") == 1


def test_a_room_that_does_not_close_shows_the_gap_in_red():
    facts = oblong()
    assert marked(ask("plan", facts)["drawing"], "red") == 0
    facts["walls"][0]["length"] = "130"
    assert marked(ask("plan", facts)["drawing"], "red") == 1


def test_the_wall_in_hand_is_marked_and_no_other():
    desk = Desk(json.loads(DEMO.read_text(encoding="utf-8"))["entries"])
    found = desk.answer({"ask": "notebook"})["answer"]["houses"][0]["rooms"][0]["id"]
    walls = desk.answer({"ask": "survey", "room": found})["answer"]["walls"]
    for each in walls:
        plan = desk.answer({"ask": "survey", "room": found, "in_hand": each["id"]})["answer"]["plan"]
        (number,) = (e.text for e in sound(plan).iter(f"{SVG}text") if "hand" in e.get("class"))
        assert number == str(each["number"])


def side_of(drawing: str) -> tuple[str, str]:
    """The path of a piece, and its title."""
    root = sound(drawing)
    return next(element.get("d") for element in root.iter(f"{SVG}path")), root[0].text


def test_a_piece_is_drawn_with_its_long_points_where_they_are():
    # A breast's front: both long points at the face, the lower edge. Between two inside miters: at the back, above.
    facts = room(wall("w1", "20", "outside"), wall("w2", "50", "outside"), wall("w3", "20"), closed=False)
    (front,) = (piece for piece in ask("pieces", facts)["pieces"] if piece["wall"] == "w2")
    path, title = side_of(front["drawing"])
    ends = list(_path_points(path))
    widths = {y: max(x for x, at in ends if at == y) - min(x for x, at in ends if at == y) for _, y in ends}
    (above, below) = (widths[y] for y in sorted(widths)[:: len(widths) - 1])
    assert below > above
    assert title.endswith("left end outside miter, 45°, right end outside miter, 45°")
    (mitered, *_) = ask("pieces", oblong(base__inside="miter"))["pieces"]
    ends = list(_path_points(side_of(mitered["drawing"])[0]))
    widths = {y: max(x for x, at in ends if at == y) - min(x for x, at in ends if at == y) for _, y in ends}
    (above, below) = (widths[y] for y in sorted(widths)[:: len(widths) - 1])
    assert above > below


def test_boards_are_drawn_with_every_letter_once():
    facts = oblong(thing("door", "30", "30"), base__stock=list(STOCK))
    answered = ask("boards_for_room", facts)
    drawn = [text for plan in answered["plans"] for text in texts(plan["drawing"])]
    letters = [piece["letter"] for board in answered["plans"][0]["boards"] for piece in board["pieces"]]
    assert sorted(text for text in drawn if len(text) == 1 and text.isalpha()) == sorted(letters)
