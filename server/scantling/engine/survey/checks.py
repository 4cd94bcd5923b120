"""What of a whole room cannot be, or is not likely, as it was read: walls through each other, heights out of line.

A wall's own faults are found as it is read (room.py); whether walls come back to where they began, closure tells.
"""

from collections.abc import Iterator
from itertools import combinations, pairwise

from scantling.engine.errors import EngineError
from scantling.engine.survey.outline import DrawnWall, derive_outline
from scantling.engine.survey.room import Measure, Problem, Room, Wall
from scantling.engine.tape.lengths import ONE_INCH, SIXTEENTH, Length, format_length
from scantling.engine.words import say

# Heads of doors and ceilings follow the floor's fall; more than this between neighbors was read wrong. Common practice.
HEAD_AGREES, CEILING_AGREES = ONE_INCH * 2, ONE_INCH * 3


class CheckError(EngineError):
    family = "check"


def check_room(room: Room) -> list[Problem]:
    """Every problem of the room as a whole, on the wall it concerns."""
    return [*_half_walked(room), *_crossings(room), *_heights(room)]


def _half_walked(room: Room) -> Iterator[Problem]:
    if room.closed and len(room.walls) > 1 and not room.comes_round:
        turned = sum(180 - (float(wall.corner.degrees) if wall.corner else _square(wall)) for wall in room.walls)
        yield _problem(room.walls[-1], CheckError("half-walked", turned=f"{turned:g}"))


def _square(wall: Wall) -> float:
    return 90.0 if wall.turn == "inside" else 270.0


def _problem(wall: Wall, error: EngineError) -> Problem:
    return Problem(wall.id, error.key, error.message)


def _crossings(room: Room) -> Iterator[Problem]:
    """Walls that cross though they share no corner; nothing is said of a room that wants a length or a corner."""
    sides = derive_outline(room)
    if not all(side.known and side.wall.corner for side in sides[:-1]) or not sides or not sides[-1].known:
        return
    count = len(sides)
    for a, b in combinations(range(count), 2):
        beside = b - a == 1 or (room.closed and b - a == count - 1)
        if not beside and _cross(sides[a], sides[b]):
            error = CheckError("walls-cross", what=sides[b].wall.name.capitalize(), other=sides[a].wall.name)
            yield _problem(sides[b].wall, error)
            return


def _cross(one: DrawnWall, other: DrawnWall) -> bool:
    """Whether each has its ends on either side of the other, by more than a tape may be out."""
    ends = [_beside(one, point) for point in (other.start, other.end)]
    others = [_beside(other, point) for point in (one.start, one.end)]
    return all(min(pair) < -1.0 and max(pair) > 1.0 for pair in (ends, others))


def _beside(side: DrawnWall, point: tuple[float, float]) -> float:
    """How far a point lies from the line of a wall, below nothing on its other side."""
    (ax, ay), (bx, by) = side.start, side.end
    return ((bx - ax) * (point[1] - ay) - (by - ay) * (point[0] - ax)) / max(side.length, 0.001)


def _heights(room: Room) -> Iterator[Problem]:
    heads = [
        (wall, opening.name, measure)
        for wall in room.walls
        for opening in wall.openings
        if opening.kind != "window"
        for measure in (opening.left, opening.right)
        if measure
    ]
    ceilings = [(wall, say("the-ceiling"), wall.height) for wall in room.walls if wall.height]
    yield from _differs([(wall, say("head-of", thing=name), one) for wall, name, one in heads], HEAD_AGREES)
    yield from _differs(ceilings, CEILING_AGREES)


def _differs(heights: list[tuple[Wall, str, Measure]], agrees: Length) -> Iterator[Problem]:
    """A height out of line with the one read before it: by a whole inch, or by more than a floor falls."""
    for (before, other, low), (wall, what, high) in pairwise(heights):
        by = high.smallest - low.smallest
        inch = abs(abs(by) - ONE_INCH) <= SIXTEENTH
        if inch or abs(by) > agrees:
            way = say("way-higher" if by.inches > 0 else "way-lower")
            in_other = before is not wall
            there = say("thing-in-wall", thing=other, wall=before.name) if in_other else say("other-side")
            named = say("thing-in-wall", thing=what, wall=wall.name).capitalize()
            key = "height-inch" if inch else "height-differs"
            yield _problem(wall, CheckError(key, what=named, by=format_length(abs(by)), way=way, other=there))
