"""Drawings: well-formed, by class only, every name escaped, and all that is drawn inside the sheet."""

import json
import re
from collections.abc import Iterator
from random import Random
from typing import Any
from xml.etree import ElementTree

import pytest
from hypothesis import given
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
    "data-letters",
    "data-wall",
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
    "sheet", "fence", "lettered", "opening", "lay",
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
    letters = [piece["letter"] for piece in ask("pieces", facts)["pieces"]][:200]
    for piece in ask("small_drawings", facts, pieces=letters)["drawings"]:
        root = sound(piece["drawing"])
        assert f"Piece {piece['letter']}" in root[0].text
    if len(facts["walls"]) < 100:
        for plan in ask("boards_for_room", facts)["plans"]:
            for board in plan["boards"]:
                sound(board["drawing"])


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


def test_from_in_front_each_board_of_a_casing_has_its_letter_beside_it():
    door = thing("door", "30", "30", left="80", right="80")
    facts = oblong(door, base__wanted="no", casing__wanted="yes")
    root = sound(ask("elevation", facts, wall="w1")["drawing"])
    hole = next(part for part in root.iter(f"{SVG}polygon") if part.get("class") == "opening")
    xs, ys = zip(*(map(float, point.split(",")) for point in hole.get("points").split()), strict=True)
    at = {text.text: (float(text.get("x")), float(text.get("y"))) for text in root.iter(f"{SVG}text")}
    of = {piece["part"]: at[piece["letter"]] for piece in ask("pieces", facts)["pieces"]}
    assert min(xs) < of["left leg"][0] < min(xs) + 20
    assert max(xs) - 20 < of["right leg"][0] < max(xs)
    assert of["head"][0] == pytest.approx((min(xs) + max(xs)) / 2, abs=1)
    assert min(ys) < of["head"][1] < min(ys) + 20


#: A wall of 120 in fills a sheet of 340 less its margins, and what is drawn is in tenths.
SCALE, TENTH = (340 - 2 * 26) / 120, 0.06


def boards_in_front(*things: Facts, **standard: str) -> list[tuple[float, float, float, float]]:
    """Every board on the first wall of an oblong as it is drawn: left, foot, right and top, in inches."""
    facts = oblong(*things, **{"base__wanted": "no", **standard})
    root = sound(ask("elevation", facts, wall="w1")["drawing"])
    floor = float(root.get("viewBox").split()[3]) - 26
    found = []
    for board in root.iter(f"{SVG}polygon"):
        if "wood" in board.get("class").split():
            points = [tuple(map(float, point.split(","))) for point in board.get("points").split()]
            alongs, ups = [(x - 26) / SCALE for x, _ in points], [(floor - y) / SCALE for _, y in points]
            found.append((min(alongs), min(ups), max(alongs), max(ups)))
    return found


def reaches(board: tuple[float, ...], *inches: float | None) -> bool:
    """Whether a board is drawn as far left, down, right and up as it is; None where that is not asked."""
    pairs = zip(board, inches, strict=True)
    return all(wanted is None or abs(drawn - wanted) < TENTH for drawn, wanted in pairs)


def test_what_runs_along_a_wall_is_drawn_as_high_as_it_runs():
    (base, cap) = sorted(boards_in_front(base__wanted="yes", cap__wanted="yes"), key=lambda board: board[1])
    assert reaches(base, 0, 0, 120, 5.5)
    assert reaches(cap, 0, 5.5, 120, 5.5 + 1.125)
    (rail,) = boards_in_front(picture_rail__wanted="yes")
    assert reaches(rail, None, 84, None, 85.75)


def test_crown_is_drawn_by_how_far_it_comes_down_and_not_by_its_width():
    # 3 5/8 leaning at 38 degrees: 3 5/8 · cos 38° = 2.857 down the wall, and the ceiling 16 in above a door of 80.
    (crown,) = boards_in_front(crown__wanted="yes")
    assert reaches(crown, None, 96 - 2.857, None, 96)


def test_an_opening_is_drawn_with_the_casing_that_it_was_given():
    # Jambs at 40 and 70, a reveal of 3/16 and casing of 2 1/4: 2 7/16 out on each side.
    door = thing("door", "40", "30", left="80", right="80")
    (plain,) = boards_in_front(door, casing__wanted="yes")
    assert reaches(plain, 40 - 2.4375, 0, 70 + 2.4375, 80 + 2.4375)
    (own,) = boards_in_front({**door, "settings": {"casing.width": "5", "reveal": "1/2"}}, casing__wanted="yes")
    assert reaches(own, 40 - 5.5, 0, 70 + 5.5, 80 + 5.5)
    assert boards_in_front({**door, "settings": {"casing.wanted": "no"}}, casing__wanted="yes") == []


def test_a_head_that_lies_on_its_legs_is_drawn_past_them_and_plinths_under_them():
    door = thing("door", "40", "30", left="80", right="80")
    more = {"head": "butted", "casing__overhang": "1", "casing__head_width": "4", "plinth__height": "8"}
    boards = sorted(boards_in_front(door, casing__wanted="yes", plinth__width="3", **more))
    head, plinth, leg, _, _ = boards
    assert reaches(head, 40 - 2.4375 - 1, 80.1875, 70 + 2.4375 + 1, 84.1875)
    assert reaches(plinth, 40 - 0.1875 - 3, 0, 40 - 0.1875, 8)
    assert reaches(leg, 40 - 2.4375, 8, 40 - 0.1875, 80.1875)


def test_a_window_is_drawn_on_its_stool_or_framed_all_round():
    # The top of the stool 30 up, and 48 tall from under its 3/4; horns of 1/2, and an apron as wide as the casing.
    window = thing("window", "40", "30", left="48", right="48", sill="30")
    apron, stool, frame = sorted(boards_in_front(window, casing__wanted="yes"), key=lambda board: board[1])
    assert reaches(frame, 40 - 2.4375, 30, 70 + 2.4375, 78 - 0.75 + 2.4375)
    assert reaches(stool, 40 - 2.9375, 29.25, 70 + 2.9375, 30)
    assert reaches(apron, 40 - 2.4375, 27, 70 + 2.4375, 29.25)
    (picture,) = boards_in_front(window, casing__wanted="yes", window__style="picture")
    assert reaches(picture, 40 - 2.4375, 30 - 2.4375, 70 + 2.4375, 78 + 2.4375)


def test_a_wall_that_is_not_there_is_named():
    error = Desk().answer({"ask": "elevation", "room": oblong(), "wall": "9"})["error"]
    assert error["key"] == "no-such-wall"
    assert "9" in error["message"]


@given(st.integers(0, 10_000))
def test_rooms_made_at_random_are_drawn_soundly(seed):
    for facts in (make_room(seed).facts, odd_room(Random(seed), 12)):
        sound(ask("plan", facts)["drawing"])


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


def drawing_of(facts: Facts, piece: dict[str, Any]) -> str:
    (found,) = ask("small_drawings", facts, pieces=[piece["key"]])["drawings"]
    return found["drawing"]


def test_a_piece_is_drawn_with_its_long_points_where_they_are():
    # A breast's front: both long points at the face, the lower edge. Between two inside miters: at the back, above.
    facts = room(wall("w1", "20", "outside"), wall("w2", "50", "outside"), wall("w3", "20"), closed=False)
    (front,) = (piece for piece in ask("pieces", facts)["pieces"] if piece["wall"] == "w2")
    path, title = side_of(drawing_of(facts, front))
    ends = list(_path_points(path))
    widths = {y: max(x for x, at in ends if at == y) - min(x for x, at in ends if at == y) for _, y in ends}
    (above, below) = (widths[y] for y in sorted(widths)[:: len(widths) - 1])
    assert below > above
    assert title.endswith("left end outside miter, 45°, right end outside miter, 45°")
    facts = oblong(base__inside="miter")
    (mitered, *_) = ask("pieces", facts)["pieces"]
    ends = list(_path_points(side_of(drawing_of(facts, mitered))[0]))
    widths = {y: max(x for x, at in ends if at == y) - min(x for x, at in ends if at == y) for _, y in ends}
    (above, below) = (widths[y] for y in sorted(widths)[:: len(widths) - 1])
    assert above > below


def test_boards_are_drawn_with_every_letter_once():
    facts = oblong(thing("door", "30", "30"), base__stock=list(STOCK))
    answered = ask("boards_for_room", facts)
    drawn = [text for plan in answered["plans"] for board in plan["boards"] for text in texts(board["drawing"])]
    letters = [piece["letter"] for board in answered["plans"][0]["boards"] for piece in board["pieces"]]
    assert sorted(text for text in drawn if len(text) == 1 and text.isalpha()) == sorted(letters)

