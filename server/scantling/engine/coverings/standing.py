"""What stands against a wall or is laid on it, and leaves that much of it neither papered nor painted.

Tile, a wainscot, what is built in, a tub: each from its lower edge up to its top, as far as that was read, for a cover
that is planned to what nobody read comes out too short. What stands in a corner hides as much of the next wall, as deep
as it is. Common practice, no source: paper is trimmed at the upper edge of all of these, and what goes a little way
behind comes out of what is trimmed. Where someone papers or paints first and builds in later, `thing.behind` says so.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from scantling.engine.survey.room import Obstacle, Room, Wall
from scantling.engine.tape.angles import SQUARE
from scantling.engine.tape.lengths import ONE_INCH, ZERO, Length
from scantling.engine.trim.footprint import LEFT, RIGHT, from_corner, wall_round

# In a corner wider than this the wall is seen past the side of what stands there.
HARDLY_OPEN = 2


@dataclass(frozen=True, slots=True)
class Opens:
    """A part of a wall that is left out: an opening with its casing, or a thing that hides it.

    In lengths along its wall, and up from the floor; `is_thing` tells what one cannot see through.
    """

    id: str
    name: str
    start: Length
    end: Length
    bottom: Length
    top: Length
    is_thing: bool = False


def derive_hidden(room: Room, wall: Wall) -> Iterator[Opens]:
    """What hides a part of a wall, as far as it was read: on the wall itself, and round its corners."""
    yield from _along(wall)
    for side in (LEFT, RIGHT):
        yield from _round(room, wall, side)


def _along(wall: Wall) -> Iterator[Opens]:
    for thing in wall.obstacles:
        levels = _levels(thing)
        if levels and thing.at and thing.width:
            start, end = thing.at.largest, thing.at.smallest + thing.width.smallest
            yield from _opens(thing, start, end, levels)


def _opens(thing: Obstacle, start: Length, end: Length, levels: tuple[Length, Length]) -> Iterator[Opens]:
    if start < end:
        yield Opens(thing.id, thing.name, start, end, *levels, is_thing=True)


def _levels(thing: Obstacle) -> tuple[Length, Length] | None:
    """From and to above the floor, where it hides its wall; of what hangs, nothing while its lower edge is unread."""
    if not thing.hides or thing.height is None:
        return None
    foot = thing.foot.largest if thing.foot else ZERO
    unhung = thing.foot is None and thing.base == "over" and thing.stands
    return (foot, thing.height.smallest) if foot < thing.height.smallest and not unhung else None


def _round(room: Room, wall: Wall, side: str) -> Iterator[Opens]:
    """The sides of what stands in the corner at one end, against the next wall: a gap of an inch is not papered."""
    found = wall_round(room, wall, side)
    for thing in found[0].obstacles if found and found[1].degrees <= SQUARE + HARDLY_OPEN else ():
        levels = _levels(thing) if thing.stands else None
        if found and levels and thing.at and thing.width and thing.depth:
            reach, deep = from_corner(found[0], side, thing.at, thing.width), thing.depth.smallest
            if reach and reach[0] <= ONE_INCH and side == LEFT:
                yield from _opens(thing, ZERO, deep, levels)
            elif reach and reach[0] <= ONE_INCH and wall.length:
                yield from _opens(thing, max(ZERO, wall.length.largest - deep), wall.length.largest, levels)


def find_unread(wall: Wall) -> list[Obstacle]:
    """The stretches of tile and paneling that are covered over, for where they are was not all read."""
    return [thing for thing in _unread(wall) if not thing.stands]


def find_covered_behind(wall: Wall) -> list[Obstacle]:
    """What is built in, and the wall behind it is covered all the same, for how tall it is was not read.

    A tub in its alcove is no such thing: what it stands before is tiled.
    """
    return [thing for thing in _unread(wall) if thing.stands and not _stands_before(wall, thing)]


def _stands_before(wall: Wall, thing: Obstacle) -> bool:
    """Whether all the wall behind a thing is hidden by something else that begins at the floor."""
    if thing.at is None or thing.width is None:
        return False
    start, end = thing.at.smallest, thing.at.smallest + thing.width.smallest
    return any(one.start <= start and end <= one.end and not one.bottom for one in _along(wall))


def _unread(wall: Wall) -> Iterator[Obstacle]:
    for thing in wall.obstacles:
        if thing.hides and not (thing.at and thing.width and _levels(thing)):
            yield thing
