"""Casing against figures worked by hand, and against boards laid on a wall as polygons by shapely.

The polygons must close on an opening that was drawn first, without the engine.
"""

import math
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scantling.engine.survey.room import Measure
from scantling.engine.tape.lengths import Length, parse_length
from scantling.engine.trim.openings.casing import Make, Plinth, derive_casing
from scantling.engine.trim.openings.frame import derive_meeting
from scantling.engine.trim.openings.jambs import Jambs
from scantling.engine.trim.openings.window import derive_picture
from shapely import LineString, Point, Polygon, intersection, union

from tests.laid import (
    CLOSE,
    assert_boards_meet,
    lay_leg,
    lay_level,
    longest_on,
    one,
    openings,
    outer_edge,
    reveals,
    sixteenths,
    walk,
)


def plain_make(reveal, width, **more):
    return Make(leg_width=parse_length(width), head_width=parse_length(width), reveal=parse_length(reveal), **more)


@pytest.mark.parametrize(
    ("width", "height", "reveal", "casing", "head", "leg"),
    [
        ("30 1/8", "80 3/16", "3/16", "2 1/4", ("30 1/2", "35"), ("80 3/8", "82 5/8")),
        ("32", "81 1/2", "1/4", "3 1/2", ("32 1/2", "39 1/2"), ("81 3/4", "85 1/4")),
    ],
)
def test_a_square_mitered_door_is_that_worked_by_hand(width, height, reveal, casing, head, leg):
    # Source: worked by hand: head = width + 2 reveals, and 2 casings more at the long points; leg = height + reveal,
    # and one casing more.
    found = derive_casing(Jambs(one(width), one(height), one(height)), plain_make(reveal, casing))
    assert [(piece.short, piece.long) for piece in found] == [tuple(map(parse_length, leg))] * 2 + [
        tuple(map(parse_length, head))
    ]
    assert all(piece.short.exact and piece.long.exact for piece in found)
    assert found[0].first.saw == found[2].first.saw == found[2].second.saw == 45


def test_a_butted_head_is_that_worked_by_hand():
    # Source: worked by hand: 32 + 2 x 1/4 + 2 x 3 1/2 + 2 x 1/2 = 40 1/2; legs 81 1/2 + 1/4, square at both ends.
    make = plain_make("1/4", "3 1/2", mitered=False, overhang=parse_length("1/2"))
    left, right, head = derive_casing(Jambs(one("32"), one("81 1/2"), one("81 1/2")), make)
    assert head.short == head.long == parse_length("40 1/2")
    assert left.short == left.long == right.short == right.long == parse_length("81 3/4")
    assert left.first.saw == left.second.saw == head.first.saw == 0


@pytest.mark.parametrize(("corner", "past", "saw"), [(91, 2.2111, 44.5), (89, 2.2896, 45.5)])
def test_a_miter_out_of_square_is_that_worked_by_hand(corner, past, saw):
    # Source: worked by hand with a table of cotangents: 2 1/4 x cot(corner / 2).
    meeting = derive_meeting(parse_length("2 1/4"), parse_length("2 1/4"), Fraction(corner))
    assert float(meeting.grows.inches) == pytest.approx(past, abs=5e-5)
    assert float(meeting.saw) == saw


@given(openings(), reveals, sixteenths, sixteenths)
def test_legs_and_head_close_on_an_opening_out_of_square(opening, reveal, leg_width, head_width):
    # Source: shapely's crossings, distances and areas.
    make = Make(leg_width=Length(leg_width), head_width=Length(head_width), reveal=Length(reveal))
    left, right, head = derive_casing(opening.jambs(), make)
    short_points = opening.reveal_corners(float(reveal))
    laid = [
        lay_leg(piece, float(leg_width), point, down, out)
        for piece, point, down, out in zip((left, right), short_points, opening.down, opening.outward, strict=True)
    ]
    top = lay_level(head, float(head_width), short_points[0], (1, 0), (0, 1))
    assert math.dist(*short_points) == pytest.approx(float(head.inner.inches), abs=CLOSE)
    for leg, point, down, out in zip(laid, short_points, opening.down, opening.outward, strict=True):
        long_point = min(top.exterior.coords, key=lambda at: math.dist(at, leg.exterior.coords[3]))
        assert_boards_meet(top, leg, point, math.dist(point, long_point))
        jamb = opening.jamb_corners[short_points.index(point)]
        side = LineString([walk(jamb, down, 1), walk(jamb, down, 20)])
        assert side.distance(leg) == pytest.approx(float(reveal), abs=CLOSE)
        assert leg.representative_point().distance(LineString([jamb, walk(jamb, out, 100)])) > 0
    assert top.distance(LineString([(1, 0), (float(opening.width) - 1, 0)])) == pytest.approx(float(reveal), abs=CLOSE)
    for piece, board in ((left, laid[0]), (right, laid[1]), (head, top)):
        assert outer_edge(board) == pytest.approx(float(piece.outer.inches), abs=CLOSE)


@given(openings(), reveals, sixteenths, st.integers(0, 32).map(lambda n: Fraction(n, 16)))
def test_the_feet_of_both_legs_lie_on_one_floor(opening, reveal, leg_width, clearance):
    # Source: shapely: the floor is the straight line through the points where both inner edges come down; kept clear of
    # a floor still to come, each foot lies as far above it as was asked, measured along its leg.
    make = Make(
        leg_width=Length(leg_width), head_width=Length(leg_width), reveal=Length(reveal), clearance=Length(clearance)
    )
    left, right, _ = derive_casing(opening.jambs(), make)
    feet = []
    for piece, point, down, out in zip(
        (left, right), opening.reveal_corners(float(reveal)), opening.down, opening.outward, strict=True
    ):
        board = lay_leg(piece, float(leg_width), point, down, out)
        feet += [walk(board.exterior.coords[place], down, float(clearance)) for place in (1, 2)]
    (x, y), (far_x, far_y) = feet[0], feet[2]
    slope = (far_y - y) / (far_x - x)
    floor = LineString([(x - 100, y - 100 * slope), (far_x + 100, far_y + 100 * slope)])
    assert max(floor.distance(Point(foot)) for foot in feet) < CLOSE


@given(openings(), reveals, sixteenths, st.integers(32, 160).map(lambda n: Fraction(n, 16)))
def test_a_leg_on_its_plinth_comes_down_to_the_same_floor(opening, reveal, leg_width, height):
    # Source: shapely: leg and plinth laid one on the other, against the leg that stands on the floor itself.
    bare = Make(leg_width=Length(leg_width), head_width=Length(leg_width), reveal=Length(reveal))
    on_plinths = Make(
        leg_width=Length(leg_width), head_width=Length(leg_width), reveal=Length(reveal), plinth=Plinth(Length(height))
    )
    plain = derive_casing(opening.jambs(), bare)
    plinth_left, plinth_right, leg_left, leg_right, _ = derive_casing(opening.jambs(), on_plinths)
    for whole, plinth, leg, point, down, out in zip(
        plain, (plinth_left, plinth_right), (leg_left, leg_right), opening.reveal_corners(float(reveal)), opening.down,
        opening.outward, strict=False,
    ):  # fmt: skip
        one_piece = lay_leg(whole, float(leg_width), point, down, out)
        upper = lay_leg(leg, float(leg_width), point, down, out)
        lower = lay_leg(plinth, float(leg_width), walk(point, down, float(leg.inner.inches)), down, out)
        assert intersection(upper, lower, grid_size=CLOSE / 100).area < CLOSE
        stacked = union(upper, lower, grid_size=CLOSE / 100)
        assert stacked.hausdorff_distance(one_piece) < CLOSE


@given(openings(), reveals, sixteenths, sixteenths, st.integers(0, 16).map(lambda n: Fraction(n, 16)))
def test_a_butted_head_lies_on_both_legs(opening, reveal, leg_width, head_width, overhang):
    # Source: shapely.
    make = Make(
        leg_width=Length(leg_width), head_width=Length(head_width), reveal=Length(reveal), mitered=False,
        overhang=Length(overhang),
    )  # fmt: skip
    left, right, head = derive_casing(opening.jambs(), make)
    points = opening.reveal_corners(float(reveal))
    legs = [
        lay_leg(piece, float(leg_width), point, down, out)
        for piece, point, down, out in zip((left, right), points, opening.down, opening.outward, strict=True)
    ]
    ends = [min(legs[0].exterior.coords[3][0], points[0][0]), max(legs[1].exterior.coords[3][0], points[1][0])]
    start = (ends[0] - float(overhang), float(reveal))
    top = lay_level(head, float(head_width), start, (1, 0), (0, 1))
    assert top.exterior.coords[1][0] == pytest.approx(ends[1] + float(overhang), abs=CLOSE)
    for leg in legs:
        upper = LineString([leg.exterior.coords[0], leg.exterior.coords[3]])
        assert upper.hausdorff_distance(LineString([(x, float(reveal)) for x, _ in upper.coords])) < CLOSE
        assert intersection(top, leg, grid_size=CLOSE / 100).area < CLOSE


@given(openings(), reveals, sixteenths, st.integers(1, 99))
def test_beside_a_side_wall_the_ripped_leg_and_the_cut_off_head_end_at_the_wall(opening, reveal, width, percent):
    # Source: shapely: the same boards at full width, and all that lies past the wall cut away.
    room = Fraction(int(width * 16 * percent / 100), 16)
    assume(room > 0)
    stop = Measure("", ("",), (Length(reveal + room),))
    make = Make(leg_width=Length(width), head_width=Length(width), reveal=Length(reveal))
    full_left, _, full_head = derive_casing(opening.jambs(), make)
    left, _, head = derive_casing(opening.jambs(left_stop=stop), make)
    point, down, out = opening.reveal_corners(float(reveal))[0], opening.down[0], opening.outward[0]
    at_wall = walk(point, out, float(room))
    past = Polygon(
        [walk(at_wall, down, by) for by in (-300, 300)]
        + [walk(walk(at_wall, out, 300), down, by) for by in (300, -300)]
    )
    leg = lay_leg(full_left, float(width), point, down, out).difference(past)
    top = lay_level(full_head, float(width), point, (1, 0), (0, 1)).difference(past)
    assert longest_on(leg, at_wall, down) == pytest.approx(float(left.outer.inches), abs=CLOSE)
    outer = (point[0], point[1] + float(width))
    assert longest_on(top, outer, (1, 0)) == pytest.approx(float(head.outer.inches), abs=CLOSE)


@given(openings(), reveals, sixteenths, sixteenths)
def test_a_picture_frame_closes_at_all_four_corners(opening, reveal, leg_width, head_width):
    # Source: shapely. The sill's jamb runs between the ends of both sides; its reveal line is set back from it as the
    # others are, and its corners are crossings.
    make = Make(leg_width=Length(leg_width), head_width=Length(head_width), reveal=Length(reveal))
    head, left, right, sill = derive_picture(opening.jambs(), make)
    low = [walk(corner, down, float(height)) for corner, down, height in
           zip(opening.jamb_corners, opening.down, (opening.left, opening.right), strict=True)]  # fmt: skip
    span = math.dist(*low)
    along = ((low[1][0] - low[0][0]) / span, (low[1][1] - low[0][1]) / span)
    below = (along[1], -along[0])
    line = LineString([walk(walk(low[0], below, float(reveal)), along, by) for by in (-500, 500)])
    points = opening.reveal_corners(float(reveal))
    feet = []
    for point, down in zip(points, opening.down, strict=True):
        crossing = LineString([point, walk(point, down, 500)]).intersection(line)
        feet.append((crossing.x, crossing.y))
    boards = {
        "head": lay_level(head, float(head_width), points[0], (1, 0), (0, 1)),
        "sill": lay_level(sill, float(head_width), feet[0], along, below),
    }
    for piece, name, place in ((left, "left", 0), (right, "right", 1)):
        boards[name] = lay_leg(piece, float(leg_width), points[place], opening.down[place], opening.outward[place])
        assert math.dist(points[place], feet[place]) == pytest.approx(float(piece.inner.inches), abs=CLOSE)
        assert_boards_meet(
            boards["head"], boards[name], points[place], math.dist(points[place], boards[name].exterior.coords[3])
        )
        assert_boards_meet(
            boards["sill"], boards[name], feet[place], math.dist(feet[place], boards[name].exterior.coords[2])
        )
    for piece, name in ((head, "head"), (left, "left"), (right, "right"), (sill, "sill")):
        assert outer_edge(boards[name]) == pytest.approx(float(piece.outer.inches), abs=CLOSE)
