"""How crown lies on the saw, held against planes in space: the blade as it is told cuts the corner's own plane.

Source: vectors, worked here, with none of the engine's formulas. A compound miter saw's manual has the same table for
52/38 crown: at an inside corner the left side with its ceiling edge to the fence, the right side with its wall edge,
both kept left of the blade; round an outside corner the other way about (from memory).
"""

import math
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scantling.engine.tape.lengths import Length
from scantling.engine.trim.ends import End, derive_cope, derive_miter
from scantling.engine.trim.runs.at_saw import find_lay, say_at_saw
from scantling.engine.trim.runs.compound import lean_end, read_turning

Vector = tuple[float, float, float]


def turned(side: str, room_side: float) -> Vector:
    """The normal of the corner's plane: x to the right along the wall, y out of it, z up, with the board below x."""
    half = math.radians(room_side / 2)
    # The plane is upright and holds the line that halves the corner, which leaves it at half the angle from the board.
    toward = 1 if side == "right" else -1
    return (toward * math.sin(half), math.cos(half), 0.0)


def on_the_saw(normal: Vector, spring: float, edge: str) -> Vector:
    """The same plane when the molding lies flat, face up: x along the fence, y to it, z up."""
    lean = math.radians(spring)
    up_the_face = normal[1] * math.sin(lean) + normal[2] * math.cos(lean)  # from the wall edge to the ceiling edge
    out_of_the_face = normal[1] * math.cos(lean) - normal[2] * math.sin(lean)
    flip = 1 if edge == "ceiling" else -1
    return (flip * normal[0], flip * up_the_face, out_of_the_face)


def blade(swing: str, miter: float, bevel: float) -> Vector:
    """The normal of the blade's plane, pointing right: swung so that its near end goes that way, leaned to the left."""
    turn, lean = math.radians(miter), math.radians(bevel)
    way = 1 if swing == "right" else -1
    return (math.cos(turn) * math.cos(lean), way * math.sin(turn) * math.cos(lean), math.sin(lean))


@given(
    st.floats(20, 70), st.floats(60, 175), st.sampled_from(["inside", "outside"]), st.sampled_from(["left", "right"])
)
def test_the_blade_as_it_is_told_cuts_the_plane_that_halves_the_corner(spring, gauge, turn, side):
    gauge, spring = Fraction(round(gauge * 10), 10), Fraction(round(spring * 10), 10)
    corner = read_turning(gauge, turn)
    thick = Length(Fraction(2))
    derive = derive_cope if turn == "inside" else derive_miter
    end = lean_end(derive("corner 1", corner, thick, thick), spring)
    edge, swing, keep = find_lay(end, side)

    wanted = on_the_saw(turned(side, float(corner.degrees)), float(spring), edge)
    told = blade(swing, float(end.saw), float(end.bevel))
    facing = 1 if wanted[0] > 0 else -1  # the blade's normal points right: so must the plane's
    assert tuple(facing * part for part in wanted) == pytest.approx(told, abs=1e-5)
    # The board lies where x is less at its right end, more at its left; turned end for end the other way about.
    to_the_left = (side == "right") == (edge == "ceiling")
    assert keep == ("left" if to_the_left else "right")


def test_the_words_are_those_of_the_table_for_38_degrees_of_spring():
    def said(turn: str, side: str) -> str:
        corner, thick = read_turning(Fraction(90), turn), Length(Fraction(2))
        return say_at_saw(lean_end(derive_miter("corner 1", corner, thick, thick), Fraction(38)), side) or ""

    settings = "lean 33.9° left, keep what is"
    turned_round = "flat, face up, turned end for end, wall edge to the fence: swing 31.6° left"
    as_it_hangs = "flat, face up, ceiling edge to the fence: swing 31.6° right"
    assert said("inside", "right") == f"{as_it_hangs}, {settings} left of the blade"
    assert said("inside", "left") == f"{turned_round}, {settings} left of the blade"
    assert said("outside", "right") == f"{turned_round}, {settings} right of the blade"
    assert said("outside", "left") == f"{as_it_hangs}, {settings} right of the blade"


def test_what_does_not_lean_or_is_cut_square_has_no_such_words():
    assert say_at_saw(End("square", "the wall"), "left") is None
    corner, thick = read_turning(Fraction(90)), Length(Fraction(2))
    assert say_at_saw(derive_miter("corner 1", corner, thick, thick), "left") is None
