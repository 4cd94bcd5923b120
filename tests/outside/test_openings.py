"""Openings of whole rooms, as `pieces` lists their boards for the saw: laid on the wall they close; mirrored and scaled
rooms give mirrored and scaled pieces."""

import math
from fractions import Fraction
from types import SimpleNamespace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tests.laid import CLOSE, assert_boards_meet, lay_leg, lay_level, openings, outer_edge, reveals, sixteenths
from tests.rooms import ask, room, thing, wall

KINDS = st.sampled_from(["door", "cased", "window"])
STYLES = st.sampled_from(["stool", "picture"])


def text(figure):
    return f"{float(figure):.6f}"


def cased(drawn, kind, at, *, flipped=False, by=1, **standard):
    """An opening alone in a wall of 500, casing only; `flipped` as seen in a mirror, `by` so many times as large."""
    left, right = (drawn.left, drawn.right)[:: -1 if flipped else 1]
    corners = [text(corner) for corner in drawn.corners[:: -1 if flipped else 1]]
    place = 500 - at - drawn.width if flipped else at
    figures = {"left": text(left * by), "right": text(right * by), "head_corners": corners, "sash": text(4 * by)}
    one = thing(kind, text(place * by), text(drawn.width * by), name="it", **figures)
    walls = [wall("w1", text(500 * by), things=[one]), *(wall(f"w{n}", text(500 * by)) for n in (2, 3, 4))]
    sizes = {"casing.wanted": "yes", "base.wanted": "no", **standard}
    return {**room(*walls), "standard": sizes}


def sizes(reveal, leg, by=1, style="stool"):
    return {"reveal": text(reveal * by), "casing.width": text(leg * by), "casing.thickness": text(Fraction(3, 4) * by),
            "stool.thickness": text(Fraction(3, 4) * by), "stool.horn": text(Fraction(1, 2) * by),
            "window.style": style}  # fmt: skip


def found_in(facts):
    answered = ask("pieces", facts, nearest="1/64")
    assert answered["problems"] == []
    return {piece["part"]: piece for piece in answered["pieces"]}


def board(piece):
    """A piece as it hangs: a leg lies at the saw on its outer edge, so the left one's top is its right end."""
    ends = [SimpleNamespace(saw=end["saw"], long_edge=end["long_edge"]) for end in (piece["left"], piece["right"])]
    first, second = ends[::-1] if piece["part"] == "left leg" else ends
    return SimpleNamespace(inner=SimpleNamespace(inches=piece["back"]["inches"]), first=first, second=second)


@given(openings(), reveals, sixteenths, sixteenths)
def test_legs_and_head_that_the_cut_list_names_close_on_the_wall(opening, reveal, leg, head):
    # Source: shapely's crossings, distances and areas, on an opening that was drawn without the engine.
    at = Fraction(200)
    answered = ask("pieces", cased(opening, "door", at, **{**sizes(reveal, leg), "casing.head_width": text(head)}))
    assume(not answered["problems"])  # boards too unlike to miter at such a corner
    pieces = {piece["part"]: piece for piece in answered["pieces"]}
    points = opening.reveal_corners(float(reveal))
    legs = [
        lay_leg(board(pieces[f"{side} leg"]), float(leg), point, down, out)
        for side, point, down, out in zip(("left", "right"), points, opening.down, opening.outward, strict=True)
    ]
    top = lay_level(board(pieces["head"]), float(head), points[0], (1, 0), (0, 1))
    for leg_board, point in zip(legs, points, strict=True):
        long_point = min(top.exterior.coords, key=lambda at: math.dist(at, leg_board.exterior.coords[3]))
        assert_boards_meet(top, leg_board, point, math.dist(point, long_point))
    for name, laid in (("left leg", legs[0]), ("right leg", legs[1]), ("head", top)):
        assert outer_edge(laid) == pytest.approx(pieces[name]["front"]["inches"], abs=CLOSE)


def mirrored(part):
    other = {"left": "right", "right": "left"}
    return " ".join(other.get(word, word) for word in part.replace(",", " ,").split()).replace(" ,", ",")


def measures(pieces):
    return {part: [piece[edge]["inches"] for edge in ("short", "long", "cut")] for part, piece in pieces.items()}


@given(openings(), reveals, sixteenths, KINDS, STYLES, st.integers(1, 200))
def test_a_mirrored_room_gives_the_mirrored_pieces(opening, reveal, leg, kind, style, place):
    # Source: symmetry. Places near a corner too, where a side wall has the leg ripped.
    at = Fraction(place, 4)
    plain = ask("pieces", cased(opening, kind, at, **sizes(reveal, leg, style=style)))
    assume(not plain["problems"])
    here = {mirrored(piece["part"]): piece for piece in plain["pieces"]}
    there = found_in(cased(opening, kind, at, flipped=True, **sizes(reveal, leg, style=style)))
    assert here.keys() == there.keys()
    for part, found in measures(there).items():
        assert found == pytest.approx(measures(here)[part], abs=CLOSE)
        ends, seen = ([one[side] for side in ("left", "right")] for one in (there[part], here[part]))
        assert [(end["joint"], end["long_edge"]) for end in ends] == [
            (end["joint"], end["long_edge"]) for end in seen[::-1]
        ]
        assert [end["saw"] for end in ends] == pytest.approx([end["saw"] for end in seen[::-1]], abs=1e-6)


@given(openings(), reveals, sixteenths, KINDS, STYLES)
def test_a_room_twice_as_large_gives_pieces_twice_as_long(opening, reveal, leg, kind, style):
    # Source: similarity: every length of the room and of the stock doubled, every angle kept.
    at = Fraction(40)
    once = ask("pieces", cased(opening, kind, at, **sizes(reveal, leg, style=style)))
    assume(not once["problems"])
    small = measures({piece["part"]: piece for piece in once["pieces"]})
    large = measures(found_in(cased(opening, kind, at, by=2, **sizes(reveal, leg, 2, style))))
    assert small.keys() == large.keys()
    for part, found in large.items():
        assert found == pytest.approx([2 * length for length in small[part]], abs=2 * CLOSE)
