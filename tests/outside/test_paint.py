"""Spreading rate against the published table of coatings; what is not painted of a wall against a geometry library."""

from fractions import Fraction
from random import Random

import pytest
import shapely
from scantling.engine.coverings.paint.cans import derive_spread

from tests.asked import ask
from tests.rooms import oblong, thing

# Source: UFC 3-190-06 (as MIL-HDBK-1110), section 2.1.5: square feet a gallon by part of solids and mils of dry film.
# Its row for half solids prints 600, 400, 200; at one mil 600 cannot be, for it must be half of the 1600 above it, and
# twice the 400 beside it: 800, a misprint. It rounds 1604 to 1600.
PUBLISHED = [("1", "1", 1600), ("1", "2", 800), ("1", "4", 400), ("0.5", "2", 400), ("0.5", "4", 200)]


@pytest.mark.parametrize(("solids", "mils", "feet"), PUBLISHED)
def test_spread_is_the_published_one(solids, mils, feet):
    assert float(derive_spread(Fraction(solids), Fraction(mils))) == pytest.approx(feet, rel=0.003)


def test_the_misprinted_row_is_eight_hundred_as_its_neighbors_say():
    half = Fraction(1, 2)
    assert derive_spread(half, Fraction(1)) == derive_spread(Fraction(1), Fraction(1)) / 2
    assert derive_spread(half, Fraction(1)) == derive_spread(half, Fraction(2)) * 2
    assert float(derive_spread(half, Fraction(1))) == pytest.approx(800, rel=0.003)


def test_a_data_sheets_spread_is_found_again():
    # Source: a maker's data sheet, 65 % solids by volume at 5 mils (125 µm): 208.5 sq ft a gallon.
    assert float(derive_spread(Fraction(65, 100), Fraction(5))) == pytest.approx(208.5, abs=0.05)


@pytest.mark.parametrize("seed", range(20))
def test_what_lies_over_each_other_on_a_wall_is_taken_off_once(seed):
    # Source: shapely, the union of rectangles, clipped to what is painted of the wall.
    random = Random(seed)
    boxes = []
    for _ in range(random.randint(3, 12)):
        left, foot = random.randint(0, 90), random.randint(0, 60)
        boxes.append((left, foot, left + random.randint(1, 30), foot + random.randint(1, 36)))
    things = [thing("tile", str(left), str(right - left), "stops", sill=str(foot), height=str(top), name=f"t{number}")
              for number, (left, foot, right, top) in enumerate(boxes)]  # fmt: skip
    edges = {"from_floor": str(random.choice((0, 20))), "from_ceiling": str(random.choice((0, 10)))}
    found = ask("paint_areas", room=oblong(*things), height="96", **edges)["surfaces"][0]
    foot, top = int(edges["from_floor"]), 96 - int(edges["from_ceiling"])
    tiled = shapely.unary_union([shapely.box(*box) for box in boxes]).intersection(shapely.box(0, foot, 120, top))
    assert found["square_feet"] == pytest.approx((432 * (top - foot) - tiled.area) / 144, abs=1e-5)
