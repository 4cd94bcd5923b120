"""What there is to paint in a surveyed room: walls less what of them is not, ceiling, trim by developed width.

Areas in square inches, with their working; they are estimates to buy paint by, and are told as such.
"""

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.coverings.standing import derive_hidden, find_covered_behind, find_unread
from scantling.engine.standard import MOLDINGS, Standard
from scantling.engine.survey.outline import derive_outline
from scantling.engine.survey.room import Opening, Room, Wall
from scantling.engine.tape.lengths import ZERO, Length, format_bare, format_working
from scantling.engine.tape.measures import format_surface
from scantling.engine.trim.openings.reach import derive_heights
from scantling.engine.trim.piece import Kind, Piece
from scantling.engine.words import all_of, say

# What a profile's curves add to its face: 10 to 15 % is common practice, no source.
GROWTH = Fraction(1, 8)
WALLS, CEILING, TRIM = "walls", "ceiling", "trim"
# What lies flat round an opening, and the sizes of the standard it is made to.
SIZES = {
    Kind.LEG: ("casing_width", "casing_thickness"),
    Kind.HEAD: ("head_width", "casing_thickness"),
    Kind.SILL: ("casing_width", "casing_thickness"),
}
# What is ripped to the depth of its window, and how thick it is.
RIPPED = {Kind.STOOL: "stool_thickness", Kind.EXTENSION: "extension_thickness"}


@dataclass(frozen=True, slots=True)
class Surface:
    """An area in square inches, with its working, and what had to be left out of it for want of a reading."""

    name: str
    area: Fraction
    working: tuple[str, ...]
    missing: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class TakenOff:
    """A part of a wall that is not painted: along it, and up from the floor."""

    left: Length
    right: Length
    foot: Length
    top: Length

    def between(self, foot: Length, top: Length) -> "TakenOff":
        return TakenOff(self.left, self.right, max(self.foot, foot), min(self.top, top))


def derive_walls(
    room: Room, chosen: Sequence[Wall] = (), height: Length | None = None, from_floor: Length = ZERO,
    from_ceiling: Length = ZERO,
) -> Surface:  # fmt: skip
    """The length of every wall, or of those chosen, by its height, less its openings, tile, and what is built in.

    `height` stands in for a wall's own that was not read; paint may begin above a wainscot, or end below a rail.
    """
    area, working, missing = Fraction(0), [], []
    walls = chosen or room.walls
    low = [wall.name for wall in walls if wall.length and not (wall.height or height)]
    if len(low) > 1:
        missing.append(say("paint-no-heights", walls=all_of(low)))
    for wall in walls:
        tall = wall.height.largest if wall.height else height
        if wall.length is None or tall is None:
            key = "paint-no-length" if wall.length is None else "paint-no-height" if len(low) == 1 else ""
            missing += [say(key, wall=wall.name)] if key else []
            continue
        top = tall - from_ceiling
        painted = max(ZERO, top - from_floor)
        area += wall.length.largest.inches * painted.inches
        working.append(f"{wall.name}: {format_bare(wall.length.largest)} × {format_bare(painted)}")
        for name, out, why in _not_painted(room, wall, from_floor, top):
            area -= out
            (missing if why else working).append(why or f"− {name}: {format_surface(out)}")
        working += (say("paint-behind", what=thing.name) for thing in find_covered_behind(wall))
    return Surface(WALLS, max(area, Fraction(0)), tuple(working), tuple(missing))


def _not_painted(room: Room, wall: Wall, foot: Length, top: Length) -> Iterator[tuple[str, Fraction, str]]:
    """What is taken off, each so much as nothing before it took: a window in tile is no more wall than the tile."""
    taken: list[TakenOff] = []
    for opening in wall.openings:
        size, place = _height_of(opening), _place_of(opening)
        if opening.width is None or size is None:
            yield opening.name, Fraction(0), say("paint-no-size", opening=opening.name)
        elif place is None:
            yield opening.name, opening.width.smallest.inches * min(size, max(ZERO, top - foot)).inches, ""
        else:
            yield opening.name, _take(taken, place.between(foot, top)), ""
    for thing in find_unread(wall):
        yield thing.name, Fraction(0), say("paint-no-size", opening=thing.name)
    for one in derive_hidden(room, wall):
        out = _take(taken, TakenOff(one.start, one.end, one.bottom, one.top).between(foot, top))
        if out:
            yield one.name, out, ""


def _place_of(opening: Opening) -> TakenOff | None:
    size, bottom = _height_of(opening), derive_heights(opening)[0]
    if opening.at is None or opening.width is None or size is None or bottom is None:
        return None
    left = opening.at.smallest
    return TakenOff(left, left + opening.width.smallest, bottom, bottom + size)


def _take(taken: list[TakenOff], more: TakenOff) -> Fraction:
    """How much more of the wall is taken with it, in square inches."""
    before = _area(taken)
    taken.append(more)
    return _area(taken) - before


def _area(some: Sequence[TakenOff]) -> Fraction:
    """What rectangles cover together: strip by strip between their sides."""
    sides = sorted({side for one in some for side in (one.left, one.right)})
    area = Fraction(0)
    for left, right in itertools.pairwise(sides):
        reached = None
        for one in sorted((one for one in some if one.left <= left and right <= one.right), key=lambda one: one.foot):
            foot = max(one.foot, reached) if reached is not None else one.foot
            area += max(ZERO, one.top - foot).inches * (right - left).inches
            reached = max(reached, one.top) if reached is not None else one.top
    return area


def _height_of(opening: Opening) -> Length | None:
    if opening.kind == "window":
        return min(opening.left.smallest, opening.right.smallest) if opening.left and opening.right else None
    return derive_heights(opening)[1]


def derive_ceiling(room: Room) -> Surface:
    """The area inside the walls as they lie on the plan; nothing while a wall is unread or the room is still open."""
    if not room.comes_round or any(wall.length is None for wall in room.walls) or len(room.walls) < 3:
        return Surface(CEILING, Fraction(0), (), (say("paint-no-ceiling"),))
    points = [side.start for side in derive_outline(room)]
    pairs = zip(points, [*points[1:], points[0]], strict=True)
    twice = sum(x * other_y - other_x * y for (x, y), (other_x, other_y) in pairs)
    area = Length.approximate(abs(twice) / 2).inches
    return Surface(CEILING, area, (say("paint-by-plan"),))


def derive_trim(room: Room, pieces: list[Piece], growth: Fraction = GROWTH) -> Surface:
    """Each piece's longer edge by its developed width: face and edge, and what the curves of the profile add."""
    area, working, missing = Fraction(0), [], []
    lengths: dict[tuple[str, tuple[Length, Length] | None], Length] = {}
    for piece in pieces:
        if piece.returns:  # an inch of trim, whose own width is that of what it turns back
            continue
        alike = (piece.part, _sizes(room.standard, piece))
        lengths[alike] = lengths.get(alike, ZERO) + max(piece.back, piece.front)
    for (part, sizes), length in lengths.items():
        if sizes is None:
            missing.append(part)
            continue
        wide = (sizes[0] + sizes[1]) * (1 + growth)
        area += length.inches * wide.inches
        working.append(say("paint-trim", part=part, long=format_bare(length), wide=format_working(wide.inches)))
    told = (say("paint-no-width", parts=", ".join(missing)),) if missing else ()
    return Surface(TRIM, area, tuple(working), told)


def _sizes(standard: Standard, piece: Piece) -> tuple[Length, Length] | None:
    """A piece's face and edge."""
    kind = piece.kind
    if kind in RIPPED:
        return None if piece.ripped is None else (piece.ripped, getattr(standard, RIPPED[kind]))
    if kind in MOLDINGS:
        thick, wide = (getattr(standard, f"{kind}_{size}") for size in MOLDINGS[kind])
        return wide, thick
    if kind == Kind.CROWN:
        return standard.crown_width, ZERO
    if kind == Kind.APRON:
        return standard.apron_size[1], standard.apron_size[0]
    if kind in SIZES:
        wide, thick = (getattr(standard, name) for name in SIZES[kind])
        return wide, thick
    return None
