"""Bodies in a room: what stands in it, in plan, and what of that cannot be: through a wall, before a door, two in one.

Drawn on the room's outline, so only where every wall's length was read; what a tape or a corner may be out is let pass.
"""

import itertools
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from scantling.engine.errors import EngineError
from scantling.engine.survey.outline import DrawnWall, derive_outline
from scantling.engine.survey.room import Obstacle, Opening, Problem, Room, Wall
from scantling.engine.tape.lengths import Length, format_length
from scantling.engine.words import say

FloorPoint = tuple[float, float]
# What a scribe, a filler or a reading may make up for. Common practice, no source.
SLACK = 1.0


class BodyError(EngineError):
    family = "body"


@dataclass(frozen=True, slots=True)
class _Body:
    """A thing in plan; `front` is the edge that is away from its wall."""

    wall: Wall
    name: str
    kind: str
    depth: Length
    ring: tuple[FloorPoint, ...]

    @property
    def sides(self) -> list[tuple[FloorPoint, FloorPoint]]:
        return list(zip(self.ring, (*self.ring[1:], self.ring[0]), strict=True))


def check_bodies(room: Room) -> Iterator[Problem]:
    """Every thing that cannot stand where it was read, on its wall."""
    sides = derive_outline(room)
    if not sides or not all(side.known for side in sides):
        return
    bodies = [body for side in sides for thing in side.wall.obstacles if (body := _body(side, thing))]
    for body in bodies:
        through = next((side for side in sides if side.wall is not body.wall and _goes_through(body, side)), None)
        if through:
            deep = format_length(body.depth)
            yield _problem(body, BodyError("through-wall", what=body.name.capitalize(), deep=deep,
                                           other=through.wall.name))  # fmt: skip
            continue
        yield from _before_openings(body, sides)
    for one, other in itertools.combinations(bodies, 2):
        if one.wall is not other.wall and _overlap(one.ring, other.ring):
            yield _problem(one, _in_one_place(one, other))


def _in_one_place(one: _Body, other: _Body) -> BodyError:
    """A tub in an alcove stands against three walls: who walks round the room may write it on each."""
    if one.kind == other.kind:
        return BodyError("one-twice", what=one.name.capitalize(), wall=one.wall.name, other=other.wall.name)
    name = say("thing-on-wall", thing=other.name, wall=other.wall.name)
    return BodyError("in-one-place", what=one.name.capitalize(), other=name)


def _problem(body: _Body, error: EngineError) -> Problem:
    return Problem(body.wall.id, error.key, error.message)


def _body(side: DrawnWall, thing: Obstacle) -> _Body | None:
    if thing.at is None or thing.width is None or thing.depth is None:
        return None
    start, deep = float(thing.at.smallest.inches), float(thing.depth.smallest.inches)
    return _Body(side.wall, say("the-thing", thing=thing.name), thing.kind.lower(), thing.depth.smallest,
                 _ring(side, start, start + float(thing.width.smallest.inches), deep))  # fmt: skip


def _ring(side: DrawnWall, start: float, end: float, deep: float) -> tuple[FloorPoint, ...]:
    return (side.point(start), side.point(end), side.point(end, deep), side.point(start, deep))


def _goes_through(body: _Body, side: DrawnWall) -> bool:
    """Whether an edge of the body has its ends on either side of a wall, and the wall's on either side of the edge."""
    return any(_cross(edge, (side.start, side.end)) for edge in body.sides)


def _cross(one: tuple[FloorPoint, FloorPoint], other: tuple[FloorPoint, FloorPoint]) -> bool:
    ends, others = [_beside(one, point) for point in other], [_beside(other, point) for point in one]
    return all(min(pair) < -SLACK and max(pair) > SLACK for pair in (ends, others))


def _beside(line: tuple[FloorPoint, FloorPoint], point: FloorPoint) -> float:
    (ax, ay), (bx, by) = line
    return ((bx - ax) * (point[1] - ay) - (by - ay) * (point[0] - ax)) / max(math.dist(*line), 0.001)


def _before_openings(body: _Body, sides: Sequence[DrawnWall]) -> Iterator[Problem]:
    for side in sides:
        for opening in side.wall.openings if side.wall is not body.wall else ():
            span = _span(opening)
            if opening.kind != "window" and span and _overlap(body.ring, _ring(side, *span, 2 * SLACK)):
                other = say("thing-in-wall", thing=opening.name, wall=side.wall.name)
                yield _problem(body, BodyError("before-opening", what=body.name.capitalize(), other=other))


def _span(opening: Opening) -> tuple[float, float] | None:
    if opening.at is None or opening.width is None:
        return None
    start = float(opening.at.smallest.inches)
    return start, start + float(opening.width.smallest.inches)


def _overlap(one: Sequence[FloorPoint], other: Sequence[FloorPoint]) -> bool:
    """Whether two convex rings lie over each other by more than may be let pass (separating axes)."""
    for ring in (one, other):
        for (ax, ay), (bx, by) in zip(ring, (*ring[1:], ring[0]), strict=True):
            long = max(math.hypot(bx - ax, by - ay), 0.001)
            out = ((by - ay) / long, (ax - bx) / long)
            spans = [[x * out[0] + y * out[1] for x, y in each] for each in (one, other)]
            if min(max(spans[0]) - min(spans[1]), max(spans[1]) - min(spans[0])) <= SLACK:
                return False
    return True
