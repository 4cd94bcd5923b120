"""A piece drawn large: sound, its hands as they are, and what it says the same as the list of pieces says."""

from itertools import pairwise
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scantling.engine.desk import dump
from scantling.engine.drawings.hanging import draw_hanging
from scantling.engine.drawings.saw import draw_at_saw
from scantling.engine.survey.read import read_room
from scantling.engine.trim.pieces import derive_pieces

from tests.asked import ask as ask_checked
from tests.asked import refusal
from tests.engine.test_drawings import NASTY, ROOMS, SVG, fitting, points_of, sound, texts
from tests.random_rooms import make_room, mirrored, odd_room
from tests.rooms import Facts, inches, oblong, pieces, room, thing, wall

WIDTH = 340.0
CASED = {"left": "80 3/16", "right": "80 1/2", "head_corners": ["90", "88.5"]}


def drawn(facts: Facts, key: str) -> Facts:
    return ask_checked("drawn", room=facts, piece=key)


def cased(**standard: str) -> Facts:
    return oblong(thing("door", "30", "30 1/8", **CASED), casing__wanted="yes", **standard)


def every_drawing(facts: Facts) -> list[tuple[Facts, Facts]]:
    """Each piece as answered with its drawings, the room read once."""
    answered = ask_checked("pieces", room=facts)["pieces"]
    found, _ = derive_pieces(read_room(facts))
    large = [{"at_saw": draw_at_saw(piece), "hanging": draw_hanging(piece, found)} for piece in found]
    return list(zip(answered, large, strict=True))


@pytest.mark.parametrize("facts", [*ROOMS.values(), cased(), cased(head="butted")], ids=[*ROOMS, "cased", "butted"])
def test_every_piece_of_any_room_is_drawn_large_and_soundly(facts):
    for piece, found in every_drawing(facts)[:12]:
        for drawing in found.values():
            assert fitting(drawing)[0].text.startswith(f"Piece {piece['letter']}")


@given(st.integers(0, 10_000))
def test_pieces_of_rooms_made_at_random_are_drawn_soundly(seed):
    for facts in (make_room(seed, 10).facts, odd_room(Random(seed), 6)):
        facts["standard"] |= {"crown.wanted": "yes", "shoe.wanted": "yes", "open_end": "returned"}
        for _, found in every_drawing(facts):
            fitting(found["at_saw"])
            fitting(found["hanging"])


def test_at_the_saw_both_settings_the_length_and_its_edge_are_said():
    facts = room(wall("w1", "20", "outside", "89"), wall("w2", "50", "outside"), wall("w3", "20"), closed=False)
    (front,) = (piece for piece in pieces(facts) if piece["wall"] == "w2")
    said = texts(drawn(facts, front["key"])["at_saw"])
    assert "back to the fence, face to you" in said
    assert {front["cut"]["shown"], "along the face"} <= set(said)
    here = said.index("left end: outside miter")
    assert said[here + 1 : here + 4] == ["saw 45.5° from square", "point of the board 44.5°", "long at the face"]
    assert "right end: outside miter" in said


def test_the_length_at_the_saw_is_rounded_as_it_was_asked():
    facts = cased()
    head = next(piece for piece in pieces(facts) if piece["part"] == "head")
    found = ask_checked("drawn", room=facts, piece=head["key"], nearest="1/64")
    cut = ask_checked("pieces", room=facts, nearest="1/64")["pieces"][2]["cut"]["shown"]
    assert cut in texts(found["at_saw"])


def test_casing_lies_with_its_outer_edge_to_the_fence_and_is_long_there():
    facts = cased()
    leg = next(piece for piece in pieces(facts) if piece["part"] == "left leg")
    root = sound(drawn(facts, leg["key"])["at_saw"])
    board = next(element for element in root.iter(f"{SVG}polygon") if "wood" in element.get("class"))
    points = [tuple(float(value) for value in point.split(",")) for point in board.get("points").split()]
    top = min(y for _, y in points)
    # Its miter is at the right: the top of the leg, which was turned a quarter to lie on the saw.
    assert max(x for x, y in points if y == top) > max(x for x, y in points if y != top)


def seen_in_a_mirror(drawing: str) -> list[tuple[float, float]]:
    return sorted((round(WIDTH - x, 1) + 0.0, y) for x, y in points_of(sound(drawing)))


@given(st.integers(0, 10_000))
def test_a_room_seen_in_a_mirror_is_drawn_as_in_a_mirror(seed):
    facts = make_room(seed, 8).facts
    facts["standard"]["base.inside"] = "miter"  # which of two boards is coped is no matter of left and right
    for each in facts["walls"]:
        each["corner"].pop("meets", None)  # told of the wall to the left: a mirror would tell it of the other
    seen = every_drawing(mirrored(facts))
    for piece, found in every_drawing(facts):
        other = next(drawings for one, drawings in seen if is_mirrored(piece, one))
        ours = sorted(points_of(sound(found["at_saw"])))
        theirs = sorted((WIDTH - x, y) for x, y in points_of(sound(other["at_saw"])))
        assert [point for pair in ours for point in pair] == pytest.approx([point for pair in theirs for point in pair])


def is_mirrored(piece: Facts, other: Facts) -> bool:
    ends = [tuple(piece[side][name] for name in ("joint", "saw_shown", "long_edge")) for side in ("left", "right")]
    seen = [tuple(other[side][name] for name in ("joint", "saw_shown", "long_edge")) for side in ("right", "left")]
    return piece["wall"] == other["wall"] and ends == seen and abs(inches(piece["cut"]) - inches(other["cut"])) < 1e-4


def test_a_leaning_molding_lies_with_its_ceiling_edge_to_the_fence_and_has_a_setting_for_nesting():
    facts = oblong(base__wanted="no", crown__wanted="yes", crown__inside="miter")
    (piece, found), *_ = every_drawing(facts)
    said = texts(found["at_saw"])
    assert "ceiling edge to the fence, face up" in said
    assert {"saw 31.6°, blade over 33.9°", "or nested 45°, blade upright"} <= set(said)
    assert piece["part"] == "crown"


def test_a_return_is_drawn_at_the_end_that_it_closes():
    facts = room(wall("w1", "60"), closed=False, open_end="returned")
    drawings = {piece["part_name"]: found["hanging"] for piece, found in every_drawing(facts)}
    ends = {}
    for name, drawing in drawings.items():
        filled = next(part for part in sound(drawing).iter() if "wood" in part.get("class", "").split())
        if filled.tag == f"{SVG}polygon":
            ends[name] = float(filled.get("points").split(",")[0])
    left, right = (ends[name] for name in sorted(ends))
    assert len(ends) == 2
    assert left < WIDTH / 2 < right


def test_the_neighbors_are_lettered_where_they_are():
    facts = oblong()
    found = {piece["wall"]: piece for piece in pieces(facts)}
    said = texts(drawn(facts, found["w2"]["key"])["hanging"])
    letters = [words for words in said if len(words) == 1]
    assert letters == [found["w1"]["letter"], found["w3"]["letter"], found["w2"]["letter"]]
    assert "left: corner 1" in said
    assert "right: corner 2" in said


def test_the_boards_of_a_frame_hang_where_their_names_say():
    facts = cased()
    boards = {}
    for piece, found in every_drawing(facts)[:3]:
        root = sound(found["hanging"])
        board = next(element for element in root.iter(f"{SVG}polygon") if "wood" in element.get("class"))
        points = [tuple(float(value) for value in point.split(",")) for point in board.get("points").split()]
        boards[piece["part"]] = tuple(sum(values) / 4 for values in zip(*points, strict=True))
    assert boards["left leg"][0] < boards["head"][0] < boards["right leg"][0]
    assert boards["head"][1] < min(boards["left leg"][1], boards["right leg"][1])


def test_the_lines_of_an_end_do_not_lie_over_each_other():
    for _, found in every_drawing(cased()):
        for element, after in pairwise(sound(found["at_saw"]).iter(f"{SVG}text")):
            same = element.get("x") == after.get("x")
            assert not same or float(after.get("y")) - float(element.get("y")) >= 12


def test_a_nasty_name_is_escaped_in_what_a_piece_meets():
    facts = oblong(thing(NASTY, "30", "20", "stops"))
    for _, found in every_drawing(facts):
        fitting(found["hanging"])


def test_a_piece_that_is_not_there_is_named():
    key, field, message = refusal("drawn", room=oblong(), piece="ZZ")
    assert (key, field) == ("no-such-piece", "piece")
    assert "ZZ" in message


def test_small_drawings_are_asked_for_by_name_and_are_small():
    facts = room(*(wall(f"w{number}", "1607 mm", corner="87") for number in range(60)))
    letters = [piece["letter"] for piece in ask_checked("pieces", room=facts)["pieces"]]
    small = ask_checked("small_drawings", room=facts, pieces=letters)["drawings"]
    assert [one["letter"] for one in small] == letters
    assert all(len(one["drawing"]) < 800 for one in small)
    assert len(drawn(facts, letters[0])["at_saw"]) > 1500
    few = ask_checked("small_drawings", room=facts, pieces=[letters[7], small[3]["key"], "not a piece"])["drawings"]
    assert few == [small[3], small[7]]


def test_the_rows_of_a_room_of_a_hundred_pieces_are_light_and_say_what_the_pieces_say():
    facts = room(*(wall(f"w{number}", "1607 mm", corner="89.9") for number in range(96)))
    answered, full = ask_checked("piece_rows", room=facts), ask_checked("pieces", room=facts)
    assert len(dump(answered)) < 60_000 < len(dump(full))
    for row, piece in zip(answered["rows"], full["pieces"], strict=True):
        same = ("key", "letter", "part_name", "state", "provisional", "change")
        assert {name: row[name] for name in same} == {name: piece[name] for name in same}
        assert [row[name] for name in ("cut", "plus_minus", "left", "right")] == [
            piece[name]["shown"] for name in ("cut", "plus_minus", "left", "right")
        ]
        assert row["flags"] == [flag["message"] for flag in piece["flags"] if flag["attention"]]
    assert {name: answered[name] for name in answered if name != "rows"} == {
        name: full[name] for name in full if name != "pieces"
    }


def test_one_piece_is_told_alone_and_is_the_same_as_among_all():
    facts = room(*(wall(f"w{number}", "1607 mm", corner="89.9") for number in range(4)))
    full = ask_checked("pieces", room=facts)
    alone = ask_checked("pieces", room=facts, piece="C")
    assert alone == {**full, "pieces": [full["pieces"][2]]}
    assert ask_checked("pieces", room=facts, piece=full["pieces"][2]["key"]) == alone
    key, field, _ = refusal("pieces", room=facts, piece="ZZ")
    assert (key, field) == ("no-such-piece", "piece")


def test_a_page_finds_every_piece_on_the_plan_without_reading_its_words():
    """What says A–C in one ring is marked with all three."""
    facts = cased()
    drawing = ask_checked("plan", room=facts)["drawing"]
    marked = {letter for element in sound(drawing).iter() for letter in element.get("data-letters", "").split()}
    assert "A–C" in texts(drawing)
    assert marked == {piece["letter"] for piece in ask_checked("pieces", room=facts)["pieces"]}
