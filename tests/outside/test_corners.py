"""Corners against tables made apart from the engine, and against trigonometry in thirty decimal places.

The decimals are worked here by the power series of sine and cosine, so that neither the engine nor the mathematics
library of this machine vouches for itself.
"""

import json
from decimal import Decimal, localcontext
from fractions import Fraction
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scantling.engine.desk import answer
from scantling.engine.tape.lengths import parse_length

TABLE = json.loads((Path(__file__).parent / "corners.json").read_text(encoding="utf-8"))
EXTENSION = TABLE["outside_extension"]["rows"]
SIDES = TABLE["three_sides"]["rows"]
PLACES = 40
# Pi to 40 places, as printed in any table of constants (from memory); the first test below checks it by its sine.
PI = Decimal("3.141592653589793238462643383279502884197")


@cache
def sine(degrees: Decimal) -> Decimal:
    """By its power series; an angle of no more than a whole turn needs fewer than sixty terms for thirty places."""
    with localcontext(prec=PLACES):
        angle = degrees * PI / 180
        term = total = angle
        for place in range(1, 60):
            term *= -angle * angle / ((2 * place) * (2 * place + 1))
            total += term
        return total


def cosine(degrees: Decimal) -> Decimal:
    return sine(90 - degrees)


def ask(**question: object) -> dict:
    return answer({"ask": "corner", **question})["answer"]


def test_the_sines_worked_here_are_sines():
    # Exact values known to geometry: 0, 1/2, 1, and sin² + cos² = 1.
    assert abs(sine(Decimal(180))) < Decimal("1e-30")
    assert abs(sine(Decimal(30)) - Decimal("0.5")) < Decimal("1e-30")
    assert abs(sine(Decimal(37)) ** 2 + cosine(Decimal(37)) ** 2 - 1) < Decimal("1e-27")


def test_the_tables_have_all_their_rows():
    assert len({(row[0], row[1]) for row in EXTENSION}) == 100
    assert len({tuple(row[:3]) for row in SIDES}) == 9


@pytest.mark.parametrize(("solid", "thickness", "saw", "longer"), EXTENSION)
def test_what_an_outside_miter_adds_is_that_of_the_table_and_of_the_decimals(solid, thickness, saw, longer):
    # Source: corners.json, geometry t·cot(A/2); and the same worked again here in decimals.
    found = ask(turn="outside", corner=solid, thickness=thickness)
    grows = found["front_minus_back"]["inches"]
    assert found["saw"] == float(saw)
    assert grows == pytest.approx(float(longer), abs=6e-6)
    half, inches = Decimal(solid) / 2, parse_length(thickness).inches
    worked = Decimal(inches.numerator) / inches.denominator * cosine(half) / sine(half)
    assert abs(Decimal(grows) - worked) < Decimal("6e-7")
    # At an inside corner of that angle the face is shorter by as much (geometry: the same triangle, turned over).
    assert ask(turn="inside", corner=solid, thickness=thickness)["front_minus_back"]["inches"] == -grows


@pytest.mark.parametrize(("a", "b", "across", "corner"), SIDES)
def test_three_sides_make_the_corner_of_the_table_and_of_the_law_of_cosines(a, b, across, corner):
    # Source: corners.json, law of cosines; and the cosine of the engine's angle worked here in decimals.
    found = ask(sides=[a, b, across], thickness="9/16")["corner"]
    assert found == pytest.approx(float(corner), abs=6e-5)
    x, y, z = (Fraction(side) for side in (a, b, across))
    ratio = (x * x + y * y - z * z) / (2 * x * y)
    # A millionth of a degree, to which an angle is carried, is 1.75e-8 in its cosine.
    assert abs(cosine(Decimal(repr(found))) - Decimal(ratio.numerator) / ratio.denominator) < Decimal("1e-8")


@given(st.integers(300, 1500), st.integers(1, 32), st.integers(1, 32), st.sampled_from(("inside", "outside")))
def test_a_miter_of_two_thicknesses_is_where_two_parallel_lines_cross(tenths, own, other, turn):
    # Source: plane geometry. The boards' faces lie at t and t' from two walls that make the angle W; the foot of their
    # crossing on the first wall is (t' + t·cos W) / sin W from the corner. Worked in decimals.
    gauge = Decimal(tenths) / 10
    room_side = gauge if turn == "inside" else 360 - gauge
    found = ask(turn=turn, corner=str(gauge), thickness=f"{own}/32" if own < 32 else "1",
                meets=f"{other}/32" if other < 32 else "1")  # fmt: skip
    t, u = Decimal(own) / 32, Decimal(other) / 32
    here = -(u + t * cosine(room_side)) / sine(room_side)
    there = -(t + u * cosine(room_side)) / sine(room_side)
    assert abs(Decimal(found["front_minus_back"]["inches"]) - here) < Decimal("1e-6")
    assert abs(Decimal(found["other"]["front_minus_back"]["inches"]) - there) < Decimal("1e-6")
    # The saw's setting, by its tangent: the face is so much longer over the thickness. Near 90 degrees from square the
    # tangent is too steep to compare, so it is compared by sine and cosine.
    saw = Decimal(repr(found["saw"]))
    assert abs(t * sine(saw) - abs(here) * cosine(saw)) < Decimal("1e-6")
