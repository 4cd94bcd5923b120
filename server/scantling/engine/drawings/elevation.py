"""A wall seen from in front, to scale: its openings with their casing, what stands along it, base, rails and battens.

A height that nothing needs may be unread: the wall then ends above its highest thing in a dashed line, and a window
whose sill was not read hangs with its head level with the doors', dashed. Drawn, not derived: no figure is taken from
here.
"""

import math
from collections.abc import Iterator, Sequence

from scantling.engine.drawings import svg
from scantling.engine.drawings.front import Board, derive_front_boards
from scantling.engine.drawings.plans.labels import Box, Label, place_labels
from scantling.engine.drawings.plans.whole import say_letters
from scantling.engine.survey.kinds import is_laid, is_plate, is_tile
from scantling.engine.survey.room import Obstacle, Opening, Room, Wall
from scantling.engine.tape.lengths import Length, format_length
from scantling.engine.trim.moldings.every import wanted_moldings
from scantling.engine.trim.openings.reach import derive_heights
from scantling.engine.trim.piece import Kind, Piece
from scantling.engine.trim.runs.toe import find_above
from scantling.engine.words import say

WIDTH, MARGIN, TALLEST = 340.0, 26.0, 240.0
# Where nothing was read: a door as high as most, a wall a foot above it. Common practice, no source.
DOOR, ABOVE = 80.0, 16.0
THING = 24.0
# Which edge of its opening a board is seen along: so far to the right of its middle, and up.
EDGES = {Kind.HEAD: (0, 1), Kind.BUILT_UP: (0, 1), Kind.SILL: (0, -1), Kind.STOOL: (0, -1), Kind.APRON: (0, -1)}
SIDES = {"left": (-1, 0), "right": (1, 0)}
# From such an edge to the middle of a letter, and from one letter to the next.
INSIDE, APART = 12.0, 21.0
# The words at the foot, which no letter may hide.
CAPTION = 16.0
# The plate of an outlet or a switch.
PLATE = 4.5
# From one joint of tile or paneling to the next, drawn for what it is and not as it is laid.
JOINT, JOINTS_AT_MOST = 6.0, 100


def draw_elevation(room: Room, wall: Wall, pieces: Sequence[Piece]) -> str:
    """One wall as SVG text, its pieces lettered."""
    sheet = _Sheet(wall)
    here = [piece for piece in pieces if piece.wall == wall.id]
    parts = [*_draw_edges(sheet, wall)]
    parts += (part for thing in wall.obstacles for part in _draw_joints(sheet, thing))
    parts += (part for piece in here for part in _draw_run(sheet, room, wall, piece))
    for opening in wall.openings:
        parts += _draw_opening(sheet, room, wall, opening)
    for thing in wall.obstacles:
        parts += _draw_thing(sheet, thing)
    placed, _ = place_labels(_letters(sheet, room, wall, pieces), Box(0, 0, WIDTH, sheet.height - CAPTION), [])
    parts += (part for label, place in placed for part in label.draw(place))
    parts.append(svg.sentence((WIDTH / 2, sheet.height - 5), _caption(wall), "small pencil"))
    return svg.drawing(WIDTH, sheet.height, say("drawn-wall", number=wall.number), parts)


def _caption(wall: Wall) -> str:
    """Which wall, and what was read of it as a whole: on paper nothing else is at hand."""
    said = [say("wall-from-in-front", number=wall.number)]
    said += [say("so-long", length=format_length(wall.length.smallest))] if wall.length else []
    said += [say("so-high", height=format_length(wall.height.largest))] if wall.height else []
    return " · ".join(said)


class _Sheet:
    """Inches along the wall and up from the floor to the drawing's units."""

    def __init__(self, wall: Wall) -> None:
        things: list[Opening | Obstacle] = [*wall.openings, *wall.obstacles]
        ends = [end for thing in things for end in _span(thing)]
        self.long = max(_inches(wall.length.smallest) if wall.length else 96.0, *ends, 1.0)
        tops = [_top(opening) for opening in wall.openings]
        tops += [_inches(thing.height.largest) for thing in wall.obstacles if thing.height]
        self.high = _inches(wall.height.largest) if wall.height else max([DOOR, *tops]) + ABOVE
        self.scale = min((WIDTH - 2 * MARGIN) / self.long, TALLEST / self.high)
        self.left = (WIDTH - self.long * self.scale) / 2
        self.height = self.high * self.scale + 2 * MARGIN

    def at(self, along: float, up: float) -> svg.Point:
        x = min(max(along, 0.0), self.long) * self.scale
        return (self.left + x, self.height - MARGIN - min(max(up, 0.0), self.high) * self.scale)

    def box(self, left: float, bottom: float, right: float, top: float, classes: str) -> str:
        corners = ((left, bottom), (left, top), (right, top), (right, bottom))
        return svg.polygon([self.at(*corner) for corner in corners], classes)


def _inches(length: Length) -> float:
    return float(length.inches)


def _span(thing: Opening | Obstacle) -> tuple[float, float] | tuple[()]:
    if thing.at is None or thing.width is None:
        return ()
    start = _inches(thing.at.smallest)
    return start, start + _inches(thing.width.smallest)


def _top(opening: Opening) -> float:
    if opening.left is None or opening.right is None or (opening.kind == "window" and opening.sill is None):
        return DOOR
    top = derive_heights(opening)[1]
    return _inches(top) if top else DOOR


def _hole(opening: Opening) -> Board | None:
    """From jamb to jamb and from sill or floor to head."""
    span, top, foot = _span(opening), _top(opening), 0.0
    if not span:
        return None
    if opening.kind == "window":
        tall = _inches(opening.left.smallest) if opening.left else DOOR / 2
        foot = _inches(opening.sill.smallest) if opening.sill else max(top - tall, 0.0)
    return span[0], foot, span[1], top


def _draw_edges(sheet: _Sheet, wall: Wall) -> Iterator[str]:
    yield svg.line(sheet.at(0, 0), sheet.at(sheet.long, 0), "ink")
    yield svg.line(sheet.at(0, sheet.high), sheet.at(sheet.long, sheet.high), "ink" if wall.height else "pencil dashed")
    for along in (0.0, sheet.long):
        yield svg.line(sheet.at(along, 0), sheet.at(along, sheet.high), "ink" if wall.length else "pencil dashed")


def _levels(sheet: _Sheet, room: Room, wall: Wall, piece: Piece) -> tuple[float, float] | None:
    """How far up from the floor a piece begins and ends; below a cabinet no higher than its toe kick."""
    above = find_above(wall, piece)
    if above and above.toe:
        tall = room.standard.base_height if piece.kind == Kind.BASE else room.standard.shoe_height
        return 0.0, _inches(min(tall, above.toe[0]))
    if piece.kind == Kind.BATTEN:
        foot = _inches(room.standard.base_height) if room.standard.wants("base") else 0.0
        return foot, foot + _inches(piece.back)
    courses = (molding.course for molding in wanted_moldings(room.standard) if molding.kind == piece.kind)
    course = next(courses, None)
    if course is None:
        return None
    if course.down is not None:
        return sheet.high - _inches(course.down), sheet.high
    return _inches(course.up), _inches(course.up + course.tall)


def _draw_run(sheet: _Sheet, room: Room, wall: Wall, piece: Piece) -> Iterator[str]:
    levels, span = _levels(sheet, room, wall, piece), _run_span(wall, piece)
    if levels and span:
        yield svg.lettered([piece.letter], sheet.box(span[0], levels[0], span[1], levels[1], "ink thin wood"))


def _run_span(wall: Wall, piece: Piece) -> tuple[float, float] | None:
    above = find_above(wall, piece)
    if above:
        return _span(above) or None
    if piece.start is None:
        return None
    start = _inches(piece.start)
    return (start, start + (2.0 if piece.kind == Kind.BATTEN else _inches(piece.back)))


def _draw_opening(sheet: _Sheet, room: Room, wall: Wall, opening: Opening) -> Iterator[str]:
    hole = _hole(opening)
    if not hole:
        return
    needed = (opening.left, opening.sill) if opening.kind == "window" else (opening.left, opening.right)
    unread = "" if all(needed) else " dashed"
    for board in derive_front_boards(room, wall, opening, hole):
        yield sheet.box(*board, f"ink thin wood{unread}")
    yield sheet.box(*hole, f"opening{unread}")


def _draw_thing(sheet: _Sheet, thing: Obstacle) -> Iterator[str]:
    box = _box_of(thing)
    if box:
        yield sheet.box(*box, "pencil dashed")


def _box_of(thing: Obstacle) -> Board | None:
    span = _span(thing)
    if not span:
        return None
    tall = _inches(thing.height.largest) if thing.height else THING
    foot = max(tall - PLATE, 0.0) if is_plate(thing.kind) else 0.0
    if thing.foot and (thing.hangs or is_laid(thing.kind)):
        foot = _inches(thing.foot.smallest)
        tall = max(tall, foot + PLATE) if thing.height is None else tall
    return span[0], foot, span[1], tall


def _draw_joints(sheet: _Sheet, thing: Obstacle) -> Iterator[str]:
    """What tells tile and paneling from a thing that stands there: joints every so often, of tile both ways."""
    box = _box_of(thing) if is_laid(thing.kind) else None
    if box:
        left, foot, right, top = box
        for along in _every(left, right):
            yield svg.line(sheet.at(along, foot), sheet.at(along, top), "pencil thin")
        for up in _every(foot, top) if is_tile(thing.kind) else ():
            yield svg.line(sheet.at(left, up), sheet.at(right, up), "pencil thin")


def _every(start: float, end: float) -> list[float]:
    return [start + JOINT * count for count in range(1, min(JOINTS_AT_MOST, math.ceil((end - start) / JOINT)))]


def _letters(sheet: _Sheet, room: Room, wall: Wall, pieces: Sequence[Piece]) -> Iterator[Label]:
    here = [piece for piece in pieces if piece.wall == wall.id]
    for piece in here:
        levels, along = _levels(sheet, room, wall, piece), _run_span(wall, piece)
        if levels and along:
            middle, up = (along[0] + along[1]) / 2, levels[1]
            x, y = sheet.at(middle, up)
            places = [(x + by, y - out) for out in (11, 28, -22) for by in (0, 14, -14, 28, -28)]
            yield Label(piece.letter, tuple(places), 1, "small strong", 11, ringed=True, letters=(piece.letter,))
    for opening in wall.openings:
        hole = _hole(opening)
        if hole:
            around = [piece for piece in here if piece.opening == opening.id]
            yield from _letters_round(sheet, hole, around, pieces)


def _letters_round(sheet: _Sheet, hole: Board, around: list[Piece], pieces: Sequence[Piece]) -> Iterator[Label]:
    """The letter of a board beside it, inside its opening; in the middle those of what is not seen from in front."""
    (left, foot), (right, top) = sheet.at(*hole[:2]), sheet.at(*hole[2:])
    middle, half = ((left + right) / 2, (top + foot) / 2), ((right - left) / 2, (foot - top) / 2)
    unseen = []
    for piece in around:
        edge = _edge_of(piece)
        if edge is None:
            unseen.append(piece)
            continue
        by = INSIDE if piece.kind == Kind.APRON else -INSIDE  # an apron hangs below, under its stool
        at = (middle[0] + edge[0] * (half[0] + by), middle[1] - edge[1] * (half[1] + by))
        outward = (edge[0] * 2 * INSIDE, -edge[1] * 2 * INSIDE)
        along = (0.0, APART) if edge[0] else (APART, 0.0)
        yield _lettered_near([piece], pieces, at, along, outward)
    if unseen:
        yield _lettered_near(unseen, pieces, middle, (0.0, APART), (0.0, half[1] + INSIDE + APART))


def _edge_of(piece: Piece) -> tuple[int, int] | None:
    if piece.returns:
        return None
    return SIDES.get(piece.side) if piece.kind == Kind.LEG else EDGES.get(piece.kind)


def _lettered_near(
    some: Sequence[Piece], pieces: Sequence[Piece], at: svg.Point, along: svg.Point, outward: svg.Point
) -> Label:
    """Letters as near to a place as there is room: there, on along its edge, or beyond it."""
    steps = [(out, by) for out in (0, 1, 2, -1) for by in (0, 1, -1, 2, -2)]
    places = [(at[0] + outward[0] * out + along[0] * by, at[1] + outward[1] * out + along[1] * by) for out, by in steps]
    letters = tuple(piece.letter for piece in some)
    need = 1 if len(some) == 1 else 2
    return Label(say_letters(some, pieces), tuple(places), need, "small strong", 11, ringed=True, letters=letters)
