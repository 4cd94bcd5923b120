"""Footprints: what stands along one wall takes room on the next, and whatever runs there stops at its face.

In plan a thing is a rectangle on its wall, so far from the corner and so deep; a board is a strip along the next wall.
Where the two would lie over each other the strip begins at the thing's face: in a square corner its depth from the
corner, in others by plane geometry. Where a thing stands so close to a corner that what opens between its side and the
next wall is a gap to be closed, the board stops at its face all the same. Common practice, no source, for that last.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from scantling.engine.survey.room import Measure, Obstacle, Room, Wall
from scantling.engine.tape.angles import SQUARE, STRAIGHT, Corner, rounded
from scantling.engine.tape.lengths import ZERO, Length
from scantling.engine.words import say

LEFT, RIGHT = "left", "right"
# What opens so wide behind a thing in a corner is room for a board; less is closed by a filler.
OPENS = 2.0


@dataclass(frozen=True, slots=True)
class Band:
    """How far up from the floor something reaches, from and to; None where that is not read."""

    bottom: Length | None = ZERO
    top: Length | None = None


@dataclass(frozen=True, slots=True)
class BodyRound:
    """A thing round the corner: how far from the corner it begins and ends along its wall, and how deep it is.

    `of` is the id of the thing or the opening, `figure` what its depth is called, `clearance` what is kept free before
    its face. `is_leg`: it is casing, and no thing.
    """

    of: str
    name: str
    figure: str
    wall: Wall
    near: Length
    far: Length
    depth: Measure
    band: Band
    clearance: Length = ZERO
    scribed: bool = False
    is_leg: bool = False


@dataclass(frozen=True, slots=True)
class Stop:
    """Where a strip stops at a body: how far from the corner at the wall, and how much farther at the strip's face.

    `at_face` is all there is to it in a square corner: the body's depth.
    """

    body: BodyRound
    along: Length
    lean: Length = ZERO
    saw: Fraction = Fraction(0)
    at_face: bool = True


def wall_round(room: Room, wall: Wall, side: str) -> tuple[Wall, Corner] | None:
    """The wall round the inside corner at one end of a wall, and that corner; None where there is none."""
    other = room.before(wall) if side == LEFT else room.after(wall)
    at = other if side == LEFT else wall
    if other is None or other is wall or at is None or at.turn != "inside":
        return None
    return other, at.corner_or_square


def from_corner(other: Wall, side: str, at: Measure, width: Measure) -> tuple[Length, Length] | None:
    """How near and how far from the corner something on the wall round it may be; None while that wall is unread.

    `side` is the end of the wall one stands before: the corner at its left is at the right end of the other.
    """
    if side == RIGHT:
        return at.smallest, at.largest + width.largest
    if other.length is None:
        return None
    near = other.length.smallest - at.largest - width.largest
    return max(ZERO, near), max(ZERO, near) + width.largest


def things_round(room: Room, wall: Wall, side: str) -> Iterator[BodyRound]:
    """What stands along the wall round a corner and was read how deep it is."""
    found = wall_round(room, wall, side)
    for thing in found[0].obstacles if found else ():
        if found and thing.base == "stops" and thing.stands and thing.at and thing.width and thing.depth:
            reach = from_corner(found[0], side, thing.at, thing.width)
            if reach:
                top = thing.height.largest if thing.height else None
                name = say("the-thing-on-wall", thing=thing.name, wall=found[0].name)
                body = BodyRound(
                    thing.id, name, say("depth-of-thing", what=name), found[0], *reach, thing.depth, Band(ZERO, top),
                    thing.clearance, thing.scribed,
                )  # fmt: skip
                yield from _over_toe(body, thing) if thing.toe else (body,)


def _over_toe(body: BodyRound, thing: Obstacle) -> Iterator[BodyRound]:
    """A thing above its toe kick, and what of it stands back there: what is lower than that goes on to it."""
    if thing.toe is None or body.depth.smallest <= thing.toe[1]:
        yield body  # told as a problem of its wall
        return
    high, back = thing.toe
    name = say("thing-toe-kick", what=body.name)
    set_back = replace(body.depth, lengths=tuple(length - back for length in body.depth.lengths))
    yield replace(body, band=Band(high, body.band.top))
    yield replace(body, name=name, figure=say("depth-of-thing", what=name), depth=set_back, band=Band(ZERO, high))


def find_unread_depths(room: Room, wall: Wall, side: str, deep: Length) -> Iterator[Obstacle]:
    """What stands in a corner, in the way of a strip so deep along the next wall, and how deep it is was not read."""
    found = wall_round(room, wall, side)
    for thing in found[0].obstacles if found else ():
        if found and thing.base == "stops" and thing.stands and thing.at and thing.width and not thing.depth:
            reach = from_corner(found[0], side, thing.at, thing.width)
            if reach and reach[0] < deep:
                yield thing


def find_stop_round(corner: Corner, bodies: Sequence[BodyRound], deep: Length) -> Stop | None:
    """Of the bodies round a corner the one that a strip so deep stops at first, coming toward the corner."""
    stops = [stop for body in bodies if (stop := derive_stop(corner, body, deep))]
    return max(stops, key=lambda stop: stop.along + stop.body.clearance, default=None)


def derive_stop(corner: Corner, body: BodyRound, deep: Length) -> Stop | None:
    """Where a strip so deep stops at a body round an inside corner; None where it passes before that.

    >>> depth = Measure("", (), (Length(Fraction(24)),))
    >>> wall = Wall("w1", 1, "inside", None, None, (), None, (), ())
    >>> body = BodyRound("c", "the cabinet", "its depth", wall, ZERO, Length(Fraction(36)), depth, Band())
    >>> derive_stop(Corner("inside", SQUARE, Fraction(0)), body, Length(Fraction(9, 16))).along
    Length(inches=Fraction(24, 1), exact=True)
    """
    if corner.degrees == SQUARE:
        return Stop(body, body.depth.largest) if body.near < deep else None
    turn = math.radians(corner.degrees)
    near, far, depth = (float(length.inches) for length in (body.near, body.far, body.depth.largest))
    strip = float(deep.inches)
    if near * math.sin(turn) >= strip and near * math.sin(turn) - depth * math.cos(turn) >= strip:
        return None
    opens = near * math.sin(turn) - depth * math.cos(turn)
    faces = [(out + depth * math.cos(turn)) / math.sin(turn) for out in (0.0, strip)]
    if all(near <= along <= far for along in faces):
        at_wall = depth / math.sin(turn)
        at_strip = (depth + strip * math.cos(turn)) / math.sin(turn)
        lean = Length.approximate(at_strip - at_wall)
        return Stop(body, Length.approximate(at_wall), lean, rounded(abs(float(SQUARE) - float(corner.degrees))), False)
    along = _clipped(near, far, depth, turn, strip)
    if STRAIGHT > corner.degrees > SQUARE and opens < OPENS:
        along = max(along, near * math.cos(turn) + depth * math.sin(turn))
    return Stop(body, Length.approximate(along), at_face=False) if along > 0 else None


def _clipped(near: float, far: float, depth: float, turn: float, strip: float) -> float:
    """How far along the wall the body reaches within the strip."""
    corners = [(near, 0.0), (far, 0.0), (far, depth), (near, depth)]
    points = [(u * math.cos(turn) + v * math.sin(turn), u * math.sin(turn) - v * math.cos(turn)) for u, v in corners]
    found = [x for x, y in points if 0 <= y <= strip]
    for (ax, ay), (bx, by) in zip(points, [*points[1:], points[0]], strict=True):
        for level in (0.0, strip):
            if min(ay, by) < level < max(ay, by):
                found.append(ax + (bx - ax) * (level - ay) / (by - ay))
    return max(found, default=0.0)
