"""The walls of a surveyed room as stretches to paper: which are papered, how tall, what opens in them.

What was not read is told, and papered over: that never buys too little. A wall without a length parts the stretch.
Above tile, a wainscot or a vanity hang short strips, as over a door.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from scantling.engine.coverings.scale import Scale
from scantling.engine.coverings.seams.stretch import Hole, Part, Stretch, Turn, lay_out_stretch
from scantling.engine.coverings.standing import Opens, derive_hidden, find_unread
from scantling.engine.errors import EngineError
from scantling.engine.survey.room import Opening, Problem, Room, Wall
from scantling.engine.tape.lengths import ZERO, Length, format_length
from scantling.engine.trim.openings.reach import derive_heights, derive_leg_band, derive_reach, find_banded
from scantling.engine.words import say


class SeamError(EngineError):
    family = "seam"


@dataclass(frozen=True, slots=True)
class WantedPaper:
    """Which walls by id, all where none are named; the height where none was read; and where paper begins and ends."""

    walls: tuple[str, ...]
    height: Length | None
    from_floor: Length
    from_ceiling: Length


@dataclass(frozen=True, slots=True)
class Papered:
    """A wall, or a panel on it, to paper: how long, how high its top is above the floor, and how much of that."""

    wall: Wall
    name: str
    short: str
    base: Length
    length: Length
    top: Length
    height: Length
    opens: tuple[Opens, ...]


def derive_papered(room: Room, wanted: WantedPaper) -> tuple[list[list[Papered]], bool, list[Problem]]:
    """Stretches of papered walls, each from left to right; whether the one stretch comes round; and what is told.

    Raises `SeamError` where there is no wall to paper.
    """
    known = {wall.id for wall in room.walls}
    strange = next((wall for wall in wanted.walls if wall not in known), None)
    if strange is not None:
        raise SeamError("no-such-wall", field="walls", wall=strange[:40])
    problems: list[Problem] = []
    heights = [wall.height.largest for wall in room.walls if wall.height]
    instead = wanted.height or max(heights, default=None)
    found: dict[int, Papered] = {}
    for wall in room.walls:
        if not wanted.walls or wall.id in wanted.walls:
            papered = _papered(room, wall, wanted, instead, problems)
            if papered:
                found[wall.number] = papered
    if not found:
        raise SeamError("no-walls", field="room")
    whole = room.comes_round and len(found) == len(room.walls) and len(found) > 1
    return _stretches(room, found, whole), whole, problems


def _stretches(room: Room, found: Mapping[int, Papered], whole: bool) -> list[list[Papered]]:
    stretches: list[list[Papered]] = []
    for number in sorted(found):
        if number - 1 in found:
            stretches[-1].append(found[number])
        else:
            stretches.append([found[number]])
    if room.comes_round and not whole and len(stretches) > 1 and {1, len(room.walls)} <= found.keys():
        stretches[0] = [*stretches.pop(), *stretches[0]]
    return stretches


def _papered(
    room: Room, wall: Wall, wanted: WantedPaper, instead: Length | None, problems: list[Problem]
) -> Papered | None:
    def tell(key: str, what: str = wall.name.capitalize(), height: str = "") -> None:
        error = SeamError(key, what=what, height=height)
        problems.append(Problem(wall.id, error.key, error.message))

    if wall.length is None:
        tell("no-length")
        return None
    high = wall.height.largest if wall.height else instead
    if high is None:
        tell("no-height", height=say("seam-no-height-either"))
        return None
    if wall.height is None and wanted.height is None:
        tell("no-height", height=format_length(high))
    height = high - wanted.from_floor - wanted.from_ceiling
    if height <= ZERO:
        tell("no-room", height=format_length(high))
        return None
    opens = []
    for opening in wall.openings:
        hole = derive_hole(room, wall, opening)
        if hole is None:
            tell("unread-opening", what=opening.name)
        else:
            opens.append(hole)
    for thing in find_unread(wall):
        tell("unread-thing", what=thing.name)
    opens += derive_hidden(room, wall)
    top, short = high - wanted.from_ceiling, str(wall.number)
    return Papered(wall, wall.name, short, ZERO, wall.length.largest, top, height, tuple(opens))


def derive_hole(room: Room, wall: Wall, opening: Opening) -> Opens | None:
    """What an opening and its casing take of a wall; None while where it stands or how high it is was not read."""
    if opening.at is None or opening.width is None:
        return None
    cased = opening.standard is not None and opening.standard.wants("casing")
    band = derive_leg_band(opening) if cased else None
    bottom, top = (band.bottom, band.top) if band else derive_heights(opening)
    if bottom is None or top is None:
        return None
    beside = [_reach(room, wall, opening, side) if cased else ZERO for side in ("left", "right")]
    start = max(ZERO, opening.at.largest - beside[0])
    end = opening.at.smallest + opening.width.smallest + beside[1]
    return Opens(opening.id, opening.name, start, end, bottom, top) if start < end else None


def _reach(room: Room, wall: Wall, opening: Opening, side: str) -> Length:
    """To the outer edge of casing, or of its band; nothing where no casing can lie there, which the pieces tell."""
    band = opening.standard.backband_width if opening.standard and opening.id in find_banded(room) else ZERO
    try:
        return sum((length for _, length in derive_reach(room, wall, opening, side, on_floor=False)), start=band)
    except EngineError:
        return ZERO


def lengths_of(stretches: Sequence[Sequence[Papered]]) -> Iterator[Length]:
    """Every length in them, for a scale that all are whole numbers in."""
    for stretch in stretches:
        for one in stretch:
            yield from (one.base, one.length, one.top, one.height)
            for opens in one.opens:
                yield from (opens.start, opens.end, opens.bottom, opens.top)


def make_stretch(papered: Sequence[Papered], closed: bool, scale: Scale) -> Stretch:
    """A stretch in whole numbers."""
    parts: list[Part] = []
    holes: list[Hole] = []
    turns: list[Turn] = []
    at = 0
    for place, one in enumerate(papered):
        end = at + scale.whole(one.length)
        height, base = scale.whole(one.height), scale.whole(one.base)
        parts.append(Part(one.wall.id, one.name, one.short, at, end, height, base))
        holes += _holes(one, at, scale)
        if closed or place < len(papered) - 1:
            turns.append(Turn(end, one.wall.turn == "inside", one.wall.number))
        at = end
    return lay_out_stretch(parts, holes, turns, closed)


def _holes(one: Papered, at: int, scale: Scale) -> Iterator[Hole]:
    for opens in one.opens:
        over = max(ZERO, one.top - opens.top)
        under = min(one.height, one.top - opens.bottom)
        start, end = (max(ZERO, min(one.length, edge - one.base)) for edge in (opens.start, opens.end))
        if over < under and start < end:
            sizes = (scale.whole(size) for size in (start, end, over, under))
            left, right, low, high = sizes
            yield Hole(opens.id, opens.name, at + left, at + right, low, high, opens.is_thing)


@dataclass(frozen=True, slots=True)
class Panel:
    """A panel on a wall, between rails: where it begins along the wall, and its foot and head above the floor."""

    name: str
    wall: str
    at: Length
    width: Length
    bottom: Length
    top: Length


def derive_panels(room: Room, panels: Sequence[Panel]) -> tuple[list[list[Papered]], list[Problem]]:
    """Each panel a stretch of its own; one that cannot be is told. Raises `SeamError` where none is left."""
    walls = {wall.id: wall for wall in room.walls}
    problems: list[Problem] = []
    found: list[list[Papered]] = []
    for panel in panels:
        wall = walls.get(panel.wall)
        if wall is None:
            raise SeamError("no-such-wall", field="panels", wall=panel.wall[:40])
        error = _wrong(panel, wall)
        if error:
            problems.append(Problem(wall.id, error.key, error.message))
            continue
        holes = [derive_hole(room, wall, opening) for opening in wall.openings]
        opens = (*(hole for hole in holes if hole), *derive_hidden(room, wall))
        tall = panel.top - panel.bottom
        found.append([Papered(wall, panel.name, panel.name, panel.at, panel.width, panel.top, tall, opens)])
    if not found:
        raise SeamError("no-walls", field="panels")
    return found, problems


def _wrong(panel: Panel, wall: Wall) -> SeamError | None:
    past = wall.length is not None and panel.at + panel.width > wall.length.largest
    if past or (wall.height is not None and panel.top > wall.height.largest):
        return SeamError("past-the-end", what=panel.name.capitalize())
    if panel.top <= panel.bottom:
        return SeamError("no-room", what=panel.name.capitalize(), height=format_length(panel.top))
    return None


