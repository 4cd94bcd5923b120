"""Wood movement against the Wood Handbook's tables, and the miter against its geometry."""

import json
import math
from fractions import Fraction
from pathlib import Path

import pytest
from scantling.engine.movement import derive_movement, find_wood
from scantling.engine.tape.lengths import parse_length

TABLE = json.loads((Path(__file__).parent / "wood.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize(("name", "radial", "tangential"), TABLE["rows"], ids=[row[0] for row in TABLE["rows"]])
def test_a_coefficient_is_that_of_the_wood_handbook(name, radial, tangential):
    # Source: wood.json: Wood Handbook FPL-GTR-190, table 13-5.
    wood = find_wood(name)
    assert (wood.radial, wood.tangential) == (Fraction(radial), Fraction(tangential))
    assert wood.source == "Wood Handbook (FPL-GTR-190), table 13-5"


@pytest.mark.parametrize(
    ("name", "radial", "tangential", "how"), TABLE["shrinkage"], ids=[r[0] for r in TABLE["shrinkage"]]
)
def test_a_coefficient_follows_from_the_shrinkage_of_the_wood(name, radial, tangential, how):
    # Source: wood.json: Wood Handbook, table 4-3, and the straight line from green at 30 % that both tables rest on.
    wood = find_wood(name)
    for coefficient, percent in ((wood.radial, radial), (wood.tangential, tangential)):
        shrinkage = Fraction(percent) / 100
        assert float(coefficient) == pytest.approx(float((shrinkage / 30) / (1 - shrinkage * 20 / 30)), abs=1.1e-5)
    assert ("from memory" in wood.source) == (how == "memory")


@pytest.mark.parametrize(
    ("name", "width", "start", "end", "change"),
    [
        ("red oak", "5 1/2", 8, 5, -0.0609),
        ("sugar maple", "3 1/2", 8, 5, -0.0371),
        ("yellow-poplar", "5 1/2", 11, 6, -0.0795),
    ],
)
def test_a_flat_sawn_board_changes_by_width_times_coefficient_times_points(name, width, start, end, change):
    # Source: worked by hand from the formula of the Wood Handbook, chapter 13: change = width x C x (to - from).
    moved = derive_movement(find_wood(name), "flat", parse_length(width), Fraction(start), Fraction(end))
    assert float(moved.change.inches) == pytest.approx(change, abs=5e-5)


@pytest.mark.parametrize(("start", "end"), [(8, 5), (6, 14), (11, 6)])
def test_a_miter_opens_as_two_moved_boards_in_a_square_frame_do(start, end):
    # Source: coordinates, worked here. A board 3 1/2 wide lies along x with its inner edge at y = 0; its 45 ran from
    # the inner corner to (w, w). Across the grain it changes, along it not: the face now runs to (w, w(1 + s)). The
    # other board is its mirror image in the line y = x, and slides along that line until the two faces touch.
    moved = derive_movement(find_wood("red oak"), "flat", parse_length("3 1/2"), Fraction(start), Fraction(end))
    width = 3.5
    toe = (width, width + float(moved.change.inches))
    # Half of the gap: how far the other end of the face is from the mirror line, once the nearer end lies on it.
    assert float(moved.miter_gap.inches) == pytest.approx(2 * abs(toe[1] - toe[0]) / math.sqrt(2), abs=1e-6)


def test_three_points_of_drying_open_a_wide_oak_miter_by_a_sixteenth_at_its_inner_edge():
    # Source: worked by hand: s = 3 x 0.00369; each 45 becomes atan(1 - s) = 44.681, and the faces swing 0.638 apart.
    moved = derive_movement(find_wood("red oak"), "flat", parse_length("3 1/2"), Fraction(8), Fraction(5))
    swing = math.radians(90 - 2 * math.degrees(math.atan(1 - 3 * 0.00369)))
    assert math.degrees(swing) == pytest.approx(0.638, abs=5e-4)
    assert float(moved.miter_gap.inches) == pytest.approx(0.055, abs=5e-4)
    assert float(moved.miter_gap.inches) == pytest.approx(3.5 * math.sqrt(2) * swing, abs=5e-4)
