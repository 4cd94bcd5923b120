"""Windows against printed rules, planes, and strips laid round an opening as polygons by shapely."""

import math
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scantling.engine.survey.room import Measure
from scantling.engine.tape.lengths import Length, parse_length
from scantling.engine.trim.openings.casing import Make
from scantling.engine.trim.openings.extension import derive_bow, derive_taper, derive_twist
from scantling.engine.trim.openings.jambs import Jambs
from scantling.engine.trim.openings.window import WindowMake, derive_window
from shapely import LineString, Point, intersection

from tests.laid import CLOSE, lay_leg, lay_level, one, openings, walk


def make_of(width, reveal, step="0"):
    casing = parse_length(width)
    return Make(leg_width=casing, head_width=casing, reveal=parse_length(reveal), step=parse_length(step))


@pytest.mark.parametrize("width", ["24", "32 3/16", "61"])
def test_a_stool_with_three_and_a_half_casing_and_quarters_is_eight_longer_than_the_jambs_are_wide(width):
    # Source: a trade journal, on jamb extensions: casing of 3 1/2 with 1/4 and 1/4 makes the jamb width + 8 in (read).
    window = WindowMake(make_of("3 1/2", "1/4"), parse_length("3/4"), horn=parse_length("1/4"))
    found = derive_window(Jambs(one(width), one("50"), one("50")), window)
    assert found.stool.board.long == found.stool.board.short == parse_length(width) + parse_length("8")


@pytest.mark.parametrize(("width", "casing", "reveal"), [("32", "3 1/2", "1/4"), ("27 5/8", "2 1/4", "3/16")])
def test_an_apron_is_as_long_as_the_casing_is_wide_outside(width, casing, reveal):
    # Source: NAVEDTRA 14044, interior trim, and Carpenters' Guide (read): apron length = outside width of the casing.
    window = WindowMake(make_of(casing, reveal), parse_length("3/4"))
    found = derive_window(Jambs(one(width), one("50"), one("50")), window)
    head = next(piece for piece in found.casing if piece.part == "head")
    assert found.apron[0].long == head.long


sixteenths = st.integers(-64, 64).map(lambda n: Fraction(n, 16))


def measures(plane, points):
    """Depths of a wall at four corners and along the sides, as a measure for each place."""
    corner = {name: plane(*at) for name, at in points.items()}
    middle = {name: plane(*at) for name, at in {"left": (0, 24), "right": (40, 24)}.items()}
    runs = {
        "left": (corner["TL"], middle["left"], corner["BL"]), "right": (corner["TR"], middle["right"], corner["BR"]),
        "head": (corner["TL"], corner["TR"]), "sill": (corner["BL"], corner["BR"]),
    }  # fmt: skip
    return {place: Measure(place, (), tuple(map(Length, run))) for place, run in runs.items()}


CORNERS = {"TL": (0, 48), "TR": (40, 48), "BL": (0, 0), "BR": (40, 0)}


@given(sixteenths, sixteenths, sixteenths)
def test_a_wall_in_one_plane_has_no_twist_and_no_bow(depth, across, up):
    # Source: the equation of a plane: depth = a + b x + c y.
    flat = measures(lambda x, y: depth + across * x + up * y, CORNERS)
    assert derive_twist(flat).inches == 0
    assert derive_twist({place: flat[place] for place in ("head", "sill")}).inches == 0
    assert derive_bow(flat["left"].lengths).inches == derive_bow(flat["right"].lengths).inches == 0
    assert derive_taper(flat["left"].lengths).inches == -48 * up


@given(sixteenths, sixteenths, sixteenths, sixteenths)
def test_a_wall_that_winds_is_twisted_by_as_much_as_one_corner_leaves_the_plane_of_the_others(depth, across, up, wind):
    # Source: the plane through three corners, and the fourth corner's depth beside it.
    wound = measures(lambda x, y: depth + across * x + up * y + wind * Fraction(x * y, 40 * 48), CORNERS)
    # Top right lies `wind` off the plane of the other three, and it counts against the twist.
    assert derive_twist(wound).inches == -wind


@given(openings(), st.integers(0, 8).map(lambda n: Fraction(n, 16)), st.integers(6, 16).map(lambda n: Fraction(n, 16)))
def test_extension_strips_close_on_an_opening_out_of_square(opening, step, thickness):
    # Source: shapely: sides laid from the corners of the line set back by the step, the head over their ends.
    depth = Measure("", ("1/2",), (parse_length("1/2"),))
    window = WindowMake(
        Make(leg_width=parse_length("3"), head_width=parse_length("3"), reveal=parse_length("1/4"), step=Length(step)),
        parse_length("3/4"),
        strip_thickness=Length(thickness),
        depths={"left": depth, "right": depth, "head": depth},
    )
    left, right, head = (strip.board for strip in derive_window(opening.jambs(), window).strips)
    wide = float(thickness)
    points = opening.reveal_corners(float(step))
    sides = [
        lay_leg(piece, wide, point, down, out)
        for piece, point, down, out in zip((left, right), points, opening.down, opening.outward, strict=True)
    ]
    ends = [side.exterior.coords[3] for side in sides]
    top = lay_level(head, wide, ends[0], (1, 0), (0, 1))
    assert top.exterior.coords[1][0] == pytest.approx(ends[1][0], abs=CLOSE)
    feet = [side.exterior.coords[place] for side in sides for place in (1, 2)]
    floor = LineString([walk(feet[0], slope(feet[0], feet[2]), -9), walk(feet[2], slope(feet[0], feet[2]), 9)])
    assert max(floor.distance(Point(foot)) for foot in feet) < CLOSE
    for side, piece in zip(sides, (left, right), strict=True):
        assert intersection(top, side, grid_size=CLOSE / 100).area < CLOSE
        upper = LineString([side.exterior.coords[0], side.exterior.coords[3]])
        assert upper.hausdorff_distance(LineString([(x, float(step)) for x, _ in upper.coords])) < CLOSE
        assert math.dist(*side.exterior.coords[2:4]) == pytest.approx(float(piece.outer.inches), abs=CLOSE)


@given(openings(), st.integers(16, 80).map(lambda n: Fraction(n, 16)))
def test_the_apron_runs_between_the_outer_corners_of_the_legs_feet(opening, width):
    # Source: shapely, and the distance between two points.
    make = Make(leg_width=Length(width), head_width=Length(width), reveal=parse_length("1/4"))
    found = derive_window(opening.jambs(), WindowMake(make, parse_length("3/4")))
    left, right, _ = found.casing
    feet = [
        lay_leg(piece, float(width), point, down, out).exterior.coords[2]
        for piece, point, down, out in zip(
            (left, right), opening.reveal_corners(0.25), opening.down, opening.outward, strict=True
        )
    ]
    assert math.dist(*feet) == pytest.approx(float(found.apron[0].long.inches), abs=CLOSE)


def slope(start, end):
    long = math.dist(start, end)
    return (end[0] - start[0]) / long, (end[1] - start[1]) / long
