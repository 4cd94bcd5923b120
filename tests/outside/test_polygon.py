"""Regular polygons: a frame of n equal sides closes when every miter is 180/n from square."""

import json
from fractions import Fraction
from pathlib import Path

import pytest
from scantling.engine.tape.angles import derive_corner_by_gauge
from scantling.engine.tape.lengths import Length
from scantling.engine.trim.openings.frame import derive_meeting
from scantling.engine.trim.runs.compound import derive_crown_cut, read_turning

TABLE = json.loads((Path(__file__).parent / "polygon.json").read_text(encoding="utf-8"))
WIDTH = Length(Fraction(9, 4))


@pytest.mark.parametrize(("sides", "corner", "miter"), TABLE["rows"], ids=[f"{row[0]} sides" for row in TABLE["rows"]])
def test_the_miter_of_a_polygon_is_that_of_the_table(sides, corner, miter):
    # Source: polygon.json, which says how its figures were come by. Three doors to one figure: base standing on edge,
    # casing flat on the wall, and a molding that lies flat on the ceiling.
    degrees = 180 - Fraction(360, sides)
    assert float(degrees) == pytest.approx(float(corner), abs=5e-5)
    assert float(derive_corner_by_gauge("inside", degrees).saw) == pytest.approx(float(miter), abs=5e-5)
    assert float(derive_meeting(WIDTH, WIDTH, degrees).saw) == pytest.approx(float(miter), abs=5e-5)
    flat = derive_crown_cut(Fraction(90), read_turning(degrees))
    assert (float(flat.miter), float(flat.bevel)) == (pytest.approx(float(miter), abs=5e-5), pytest.approx(0, abs=1e-5))
