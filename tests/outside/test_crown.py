"""Crown against published settings and against a model in three dimensions that shares no formula with the engine."""

import json
import math
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scantling.engine.tape.lengths import Length
from scantling.engine.trim.runs.compound import (
    derive_ceiling_minus_wall,
    derive_crown_cut,
    derive_drop,
    derive_projection,
    read_turning,
)

TABLE = json.loads((Path(__file__).parent / "crown.json").read_text(encoding="utf-8"))


def cut(spring, corner, turn=None):
    return derive_crown_cut(Fraction(str(spring)), read_turning(Fraction(str(corner)), turn))


@pytest.mark.parametrize(("spring", "corner", "miter", "bevel"), TABLE["rows"])
def test_a_crown_setting_is_that_of_the_table(spring, corner, miter, bevel):
    # Source: crown.json, which says how its figures were come by.
    found = cut(spring, corner)
    assert float(found.miter) == pytest.approx(miter, abs=6e-5)
    assert float(found.bevel) == pytest.approx(bevel, abs=6e-5)
    assert found.nested == (180 - Fraction(str(corner))) / 2


def test_the_table_has_its_hundred_and_five_rows():
    assert len({(row[0], row[1]) for row in TABLE["rows"]}) == 105


@pytest.mark.parametrize(("source", "spring", "corner", "miter", "bevel", "within"), TABLE["printed"])
def test_a_crown_setting_is_that_printed_in_a_saws_manual(source, spring, corner, miter, bevel, within):
    found = cut(spring, corner)
    assert float(found.miter) == pytest.approx(miter, abs=within), source
    assert float(found.bevel) == pytest.approx(bevel, abs=within), source


springs = st.integers(1, 899).map(lambda tenths: tenths / 10)
gauges = st.integers(200, 1795).map(lambda tenths: tenths / 10)


@given(springs, gauges, st.sampled_from(["inside", "outside"]))
def test_settings_agree_with_planes_cut_in_three_dimensions(spring, gauge, turn):
    # Source: vectors, worked here. The molding runs along x; its back is a plane that leans by the spring from the
    # wall; both moldings end in the upright plane that halves the corner.
    lean, half = math.radians(spring), math.radians(gauge / 2)
    up_the_face = (0.0, math.sin(lean), math.cos(lean))
    normal = (0.0, math.cos(lean), -math.sin(lean))
    # The halving plane holds the vertical and a line at half the corner from the wall, along x.
    halving = (math.sin(half), -math.cos(half), 0.0)
    trace = cross(normal, halving)
    miter = math.degrees(math.atan2(abs(trace[0]), abs(dot(trace, up_the_face))))
    bevel = 90 - math.degrees(math.acos(min(1.0, abs(dot(normal, halving)))))
    found = cut(spring, gauge, turn)
    assert float(found.miter) == pytest.approx(miter, abs=1e-5)
    assert float(found.bevel) == pytest.approx(bevel, abs=1e-5)


@given(springs, st.integers(200, 3400).map(lambda tenths: tenths / 10), st.integers(16, 160))
def test_edges_end_where_the_corners_halving_line_crosses_them(spring, room_side, sixteenths):
    # Source: plane geometry, worked here. Seen from above, the wall edge lies on the wall and ends in its corner; the
    # ceiling edge lies as far out as the molding projects, and ends on the line that halves the room-side corner.
    width = sixteenths / 16
    length, angle, corner = (
        Length(Fraction(sixteenths, 16)),
        Fraction(str(spring)),
        read_turning(Fraction(str(room_side))),
    )
    out, down = float(derive_projection(length, angle).inches), float(derive_drop(length, angle).inches)
    assert math.hypot(out, down) == pytest.approx(width, abs=2e-6)
    assert math.degrees(math.atan2(out, down)) == pytest.approx(spring, abs=1e-3)
    half = math.radians(room_side / 2)
    along = out * math.cos(half) / math.sin(half)  # where the halving line is `out` from the wall
    assert float(derive_ceiling_minus_wall(length, angle, corner).inches) == pytest.approx(
        -along, abs=1e-5 * (1 + abs(along))
    )


def dot(a, b):
    return sum(x * y for x, y in zip(a, b, strict=True))


def cross(a, b):
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])
