"""Openings drawn on a wall, and flat boards laid round them as polygons, without the engine's geometry.

A board is drawn from what a person carries to the saw: its inner edge, its width, and the settings at its two ends.
"""

import math
from dataclasses import dataclass
from fractions import Fraction

import pytest
from hypothesis import strategies as st
from scantling.engine.survey.room import Measure
from scantling.engine.tape.angles import derive_corner_by_gauge
from scantling.engine.tape.lengths import parse_length
from scantling.engine.trim.openings.jambs import Jambs
from shapely import LineString, Point, Polygon, intersection

CLOSE = 1e-4


def one(text):
    return Measure("", (text,), (parse_length(text),))


@dataclass(frozen=True)
class Drawn:
    """An opening as points, with y up: the head's jamb corners, and where the leg's inner edge meets the floor."""

    width: Fraction
    left: Fraction
    right: Fraction
    corners: tuple[Fraction, Fraction]

    def jambs(self, **more):
        texts = (f"{float(figure)!r}" for figure in (self.width, self.left, self.right))
        corners = (derive_corner_by_gauge("inside", corner) for corner in self.corners)
        return Jambs(*map(one, texts), *corners, **more)

    @property
    def down(self):
        """Which way each side runs from the head, as unit vectors."""
        left, right = (math.radians(corner) for corner in self.corners)
        return (math.cos(left), -math.sin(left)), (-math.cos(right), -math.sin(right))

    @property
    def outward(self):
        """Away from the opening, square to each side."""
        left, right = self.down
        return (left[1], -left[0]), (-right[1], right[0])

    @property
    def jamb_corners(self):
        return (0.0, 0.0), (float(self.width), 0.0)

    def reveal_corners(self, back):
        """Where lines set back by `back` from head and side cross: found as crossings, by no formula of the engine."""
        head = LineString([(-1000, back), (1000, back)])
        found = []
        for corner, down, out in zip(self.jamb_corners, self.down, self.outward, strict=True):
            start = (corner[0] + out[0] * back, corner[1] + out[1] * back)
            side = LineString([walk(start, down, -500), walk(start, down, 500)])
            found.append(side.intersection(head))
        return tuple((point.x, point.y) for point in found)


def walk(point, way, by):
    return point[0] + way[0] * by, point[1] + way[1] * by


def tangent(saw):
    return math.tan(math.radians(saw))


def lay_leg(piece, width, short_point, down, out):
    """A leg as a polygon, its inner edge from the short point down; ends as the saw makes them."""
    foot = walk(short_point, down, float(piece.inner.inches))
    ends = []
    for cut, at, past in ((piece.first, short_point, -1), (piece.second, foot, 1)):
        lean = {"outer": 1, "inner": -1, "none": 0}[cut.long_edge]
        ends.append(walk(walk(at, out, width), down, past * lean * width * tangent(cut.saw)))
    return Polygon([short_point, foot, ends[1], ends[0]])


def lay_level(piece, width, start, along, out):
    """A head or sill as a polygon, its inner edge from its left short point."""
    end = walk(start, along, float(piece.inner.inches))
    first = walk(walk(start, out, width), along, -width * tangent(piece.first.saw))
    second = walk(walk(end, out, width), along, width * tangent(piece.second.saw))
    return Polygon([start, end, second, first])


def outer_edge(board):
    """Of a board laid by the two functions above: the length of the edge away from the opening."""
    points = list(board.exterior.coords)
    return math.dist(points[2], points[3])


def assert_boards_meet(one_board, other, corner, reach):
    """Two boards share one face from the inner corner for `reach`, and lie nowhere over each other."""
    # On a grid: without one, faces that all but coincide have made the library give back one whole board.
    assert intersection(one_board, other, grid_size=CLOSE / 100).area < CLOSE
    assert one_board.distance(Point(corner)) < CLOSE
    assert other.distance(Point(corner)) < CLOSE
    shared = one_board.buffer(CLOSE).intersection(other.buffer(CLOSE))
    west, south, east, north = shared.bounds
    assert math.hypot(east - west, north - south) == pytest.approx(reach, abs=8 * CLOSE)


sixteenths = st.integers(16 * 1, 16 * 7).map(lambda n: Fraction(n, 16))
reveals = st.integers(0, 8).map(lambda n: Fraction(n, 16))
tenths_out = st.integers(-25, 25)


@st.composite
def openings(draw):
    width = Fraction(draw(st.integers(16 * 18, 16 * 72)), 16)
    left = Fraction(draw(st.integers(16 * 30, 16 * 96)), 16)
    right = left + Fraction(draw(st.integers(-16, 16)), 16)
    lean, skew = draw(tenths_out), draw(st.integers(-3, 3))
    return Drawn(width, left, right, (90 + Fraction(lean, 10), 90 - Fraction(lean + skew, 10)))


def longest_on(board, point, way):
    """How much of a board's edge lies on the line through a point."""
    line = LineString([walk(point, way, -600), walk(point, way, 600)])
    return board.boundary.intersection(line.buffer(1e-7)).length
