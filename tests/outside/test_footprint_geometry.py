"""Footprints against plane geometry: rooms whose doors and cabinets stand in their corners, every board a polygon.

By a library that knows nothing of trim (shapely, planar predicates): no board runs through a leg of casing, a thing or
another board, and none through a wall; in square corners a board that stops at something touches it.
"""

import math
from dataclasses import dataclass, field
from random import Random

import pytest
from scantling.engine.survey.read import read_room
from scantling.engine.survey.room import Room
from scantling.engine.trim.openings.reach import derive_reach, find_banded
from scantling.engine.trim.piece import Piece
from scantling.engine.trim.pieces import derive_pieces
from shapely import Polygon

from tests.random_rooms import Made, make_room
from tests.rooms import room, thing, wall

SEEDS = range(150)
CLOSED = 1e-4
CASING = {"casing__width": "2 1/4", "casing__thickness": "11/16", "reveal": "3/16"}
BASE, SHOE, LEG, BAND = 0.5625, 0.5, 0.6875, 1.0


@dataclass
class Plan:
    """A room in plan: its outline, and by wall the rectangles that stand along it, in its own (along, inward)."""

    made: Made
    room: Room
    things: list[tuple[int, tuple[float, float], float]] = field(default_factory=list)
    legs: list[tuple[int, tuple[float, float], float]] = field(default_factory=list)

    def point(self, place: int, along: float, inward: float) -> tuple[float, float]:
        corners = self.made.corners
        (x, y), (ex, ey) = corners[place], corners[(place + 1) % len(corners)]
        length = math.dist((x, y), (ex, ey))
        dx, dy = (ex - x) / length, (ey - y) / length
        return (x + along * dx + inward * dy, y + along * dy - inward * dx)

    def shape(self, place: int, span: tuple[float, float], deep: float) -> Polygon:
        left, right = span
        whole = Polygon([self.point(place, a, i) for a, i in ((left, 0), (right, 0), (right, deep), (left, deep))])
        # A leg in a corner tighter than square is beveled to lie on the side wall.
        return whole.intersection(Polygon(self.made.corners))


def make_plan(seed: int) -> Plan:
    rng, made = Random(seed), make_room(seed, 14)
    count = len(made.corners)
    inside = [angle < 180 for angle in made.angles]
    lengths = [math.dist(a, b) for a, b in zip(made.corners, made.corners[1:] + made.corners[:1], strict=True)]
    walls, things = [], []
    fit = [place for place in range(count) if inside[place] and abs(made.angles[place] - 90) <= 12
           and lengths[place] > 50 and lengths[(place + 1) % count] > 60]  # fmt: skip
    cabinet = rng.choice(fit) if fit and rng.random() < 0.7 else None
    for place in range(count):
        found = []
        left_free, right_free = 0.0, lengths[place]
        if place == cabinet:
            near, wide, deep = rng.choice((0.0, rng.uniform(0, 2))), rng.uniform(10, 30), rng.uniform(4, 20)
            at = right_free - near - wide
            found.append(thing("cabinet", f"{at:.6f}", f"{wide:.6f}", "stops", depth=f"{deep:.6f}"))
            things.append((place, (at, at + wide), deep))
            right_free = at - 3
        for side, turned in (("left", inside[place - 1]), ("right", inside[place])):
            taken = (place == cabinet and side == "right") or (
                cabinet is not None and place == (cabinet + 1) % count and side == "left"
            )
            wide, off = rng.uniform(10, 30), rng.uniform(0.4, 8)
            if taken or not turned or rng.random() < 0.4 or right_free - left_free < wide + off + 14:
                continue
            at = off if side == "left" else right_free - off - wide
            found.append(thing("door", f"{at:.6f}", f"{wide:.6f}", name=f"{side} door {place}", left="80", right="80"))
            left_free, right_free = (at + wide + 6, right_free) if side == "left" else (left_free, at - 6)
        turn = "inside" if inside[place] else "outside"
        gauge = made.angles[place] if inside[place] else 360 - made.angles[place]
        walls.append(wall(f"w{place + 1}", f"{lengths[place]:.6f}", turn, f"{gauge:.1f}", found))
    wanted = {"casing__wanted": "yes", "shoe__wanted": "yes", "base__inside": rng.choice(("cope", "miter", "butt"))}
    corner = rng.choice(("keeps", "yields"))
    band = rng.choice(("0", "3/4"))  # 1 thick, as it comes
    facts = room(*walls, casing__corner=corner, proud_end="returned", backband__width=band, **wanted, **CASING)
    plan = Plan(made, read_room(facts), things)
    plan.legs = list(_legs(plan.room))
    return plan


def _legs(read: Room):
    for place, each in enumerate(read.walls):
        for opening in each.openings:
            at, width = float(opening.at.smallest.inches), float(opening.width.smallest.inches)
            for side, jamb, way in (("left", at, -1), ("right", at + width, 1)):
                try:
                    reach = [float(length.inches) for _, length in derive_reach(read, each, opening, side)]
                except Exception as error:  # no casing fits there, and the room says so
                    assert getattr(error, "key", "") in ("no-room", "past-corner")  # noqa: PT017
                    continue
                inner, outer = jamb + way * reach[0], jamb + way * sum(reach)
                yield place, (min(inner, outer), max(inner, outer)), LEG
                if opening.id in find_banded(read):
                    edge = outer + way * 0.75
                    yield place, (min(outer, edge), max(outer, edge)), BAND


def board(plan: Plan, piece: Piece, others: list[Piece]) -> Polygon:
    """A board of base as it stands, coped ends cut along the face line of the board they are coped to."""
    place = piece.wall_number - 1
    starts, ends = float(piece.start.inches), float((piece.start + piece.back).inches)
    faces = (starts - float(piece.left.grows.inches), ends + float(piece.right.grows.inches))
    if piece.left.joint == "cope":
        starts = _crossing(plan, place, place - 1)
    if piece.right.joint == "cope":
        ends = _crossing(plan, place, (place + 1) % len(plan.made.corners))
    ring = ((starts, 0), (ends, 0), (faces[1], BASE), (faces[0], BASE))
    return Polygon([plan.point(place, along, inward) for along, inward in ring])


def _crossing(plan: Plan, place: int, other: int) -> float:
    """How far along a wall the face line of base on another crosses it."""
    (px, py), (rx, ry) = plan.point(other, 0, BASE), plan.point(other, 1, BASE)
    (qx, qy), (sx, sy) = plan.point(place, 0, 0), plan.point(place, 1, 0)
    (dx, dy), (ex, ey) = (rx - px, ry - py), (sx - qx, sy - qy)
    return ((px - qx) * dy - (py - qy) * dx) / (ex * dy - ey * dx)


@pytest.fixture(scope="module")
def plans() -> list[tuple[Plan, list[Piece]]]:
    found = []
    for seed in SEEDS:
        plan = make_plan(seed)
        found.append((plan, [one for one in derive_pieces(plan.room)[0] if one.part == "base"]))
    return found


def shrunk(shape: Polygon) -> Polygon:
    return shape.buffer(-CLOSED, join_style="mitre")


def test_the_rooms_have_legs_and_things_in_their_corners_that_boards_stop_at(plans):
    meets = [end.meets for _, found in plans for piece in found for end in (piece.left, piece.right)]
    assert sum(one.startswith("the casing of ") for one in meets) > 30
    assert sum(one.startswith("the cabinet on ") for one in meets) > 15
    assert sum(leg[2] == BAND for plan, _ in plans for leg in plan.legs) > 30
    assert sum(flag.key == "gives-way" for plan, _ in plans for one in derive_pieces(plan.room)[0]
               for flag in one.flags) > 10  # fmt: skip


def test_no_board_runs_through_a_leg_or_a_thing(plans):
    for plan, found in plans:
        bodies = [plan.shape(*body) for body in (*plan.legs, *plan.things)]
        for piece in found:
            shape = shrunk(board(plan, piece, found))
            for body in bodies:
                assert not shape.intersects(shrunk(body)), (piece.name, piece.left, piece.right, plan.made.angles)


def test_no_board_runs_through_another_or_through_a_wall(plans):
    for plan, found in plans:
        outline = Polygon(plan.made.corners).buffer(CLOSED, join_style="mitre", mitre_limit=10)
        shapes = [(piece, board(plan, piece, found)) for piece in found]
        for place, (piece, shape) in enumerate(shapes):
            assert outline.covers(shape), piece.name
            for other, beside in shapes[place + 1 :]:
                assert not shrunk(shape).intersects(shrunk(beside)), (piece.name, other.name)


def test_no_two_legs_stand_in_one_place(plans):
    for plan, _ in plans:
        # In a corner tighter than square the edge of the leg that gives way is beveled: at the wall they are apart.
        deep = 4 * CLOSED if min(plan.made.angles) < 90 else BAND
        shapes = [(leg, plan.shape(*leg), shrunk(plan.shape(leg[0], leg[1], min(deep, leg[2])))) for leg in plan.legs]
        for place, (leg, _, shape) in enumerate(shapes):
            for other, whole, _ in shapes[place + 1 :]:
                assert not shape.intersects(shrunk(whole)), (leg, other)


def test_in_a_square_corner_a_board_that_stops_at_something_round_it_touches_it(plans):
    touched = 0
    for plan, found in plans:
        bodies = [plan.shape(*body) for body in (*plan.legs, *plan.things)]
        for piece in found:
            place = piece.wall_number - 1
            for end, corner in ((piece.left, place - 1), (piece.right, place)):
                if " on wall " in end.meets and plan.made.angles[corner] == 90:
                    shape = board(plan, piece, found)
                    assert min(shape.distance(body) for body in bodies) < CLOSED
                    touched += 1
    assert touched > 10
