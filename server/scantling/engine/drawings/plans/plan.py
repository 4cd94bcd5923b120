"""The plan of a room to scale: walls numbered, doors and windows, what stands in the way, what is still to read."""

import math
from collections.abc import Iterator

from scantling.engine.drawings import svg
from scantling.engine.survey.kinds import is_laid
from scantling.engine.survey.outline import DrawnWall, derive_outline
from scantling.engine.survey.room import Measure, Obstacle, Opening, Room
from scantling.engine.walk.needs import derive_needs
from scantling.engine.words import say, say_counted

WIDTH = 340.0
MARGIN = 22.0
TALLEST = 300.0
# A gap that the tape's own ± does not explain is drawn, so that it is seen; small ones are drawn shut.
GAP_SEEN = 3.0
SHORT = 36.0
# A thing whose depth was not read, in the drawing's units; and tile or paneling, which has none to speak of.
UNREAD_DEPTH, LAID = 10.0, 3.0
HALF_OPEN = math.sqrt(0.5)


def draw_plan(room: Room, in_hand: str | None = None) -> str:
    """The room as SVG text, seen from above; the wall with the id `in_hand` in blue."""
    sides = derive_outline(room)
    if not sides:
        return nothing_yet()
    paper = PlanPaper(sides)
    wanted = {figure.wall for figure in derive_needs(room)}
    # Filled only when it closes: half a room would be cut across from its last wall to its first.
    parts = [svg.polygon([paper.at(side.start) for side in sides], "sheet")] if room.closed else []
    for side in sides:
        in_this = side.wall.id == in_hand
        parts += draw_wall(paper, side, in_hand=in_this)
        parts.append(_number(paper, side, in_this, side.wall.id in wanted))
    parts += draw_gap(paper, room, sides)
    named = svg.name(room.name) or say("drawn-room")
    return svg.drawing(paper.width, paper.height, say_counted("drawn-plan", len(sides), room=named), parts)


def nothing_yet() -> str:
    return svg.drawing(WIDTH, 60, say("drawn-nothing"), [svg.text((WIDTH / 2, 34), say("drawn-no-walls"), "pencil")])


class PlanPaper:
    """Inches to the drawing's units: fitted to the width, or to the height of a tall room."""

    def __init__(self, sides: list[DrawnWall], margin: float = MARGIN, tallest: float = TALLEST) -> None:
        points = [point for side in sides for point in (side.start, side.end, *_swept(side))]
        xs, ys = [x for x, _ in points], [y for _, y in points]
        wide, tall = max(max(xs) - min(xs), 1.0), max(max(ys) - min(ys), 1.0)
        self.scale = min((WIDTH - 2 * margin) / wide, tallest / tall)
        self.width = WIDTH
        self.height = tall * self.scale + 2 * margin
        self.left = min(xs) - (WIDTH / self.scale - wide) / 2
        self.top = min(ys) - margin / self.scale

    def at(self, point: svg.Point) -> svg.Point:
        return ((point[0] - self.left) * self.scale, (point[1] - self.top) * self.scale)


def _swept(side: DrawnWall) -> Iterator[svg.Point]:
    """How far into the room the doors of a wall swing: the leaf open, and half open, where it reaches farthest out."""
    for opening in side.wall.openings:
        span = span_of(opening.at, opening.width, side.length)
        if span and opening.kind == "door":
            width = span[1] - span[0]
            yield side.point(span[0], width)
            yield side.point(span[0] + width * HALF_OPEN, width * HALF_OPEN)


def draw_wall(paper: PlanPaper, side: DrawnWall, in_hand: bool = False) -> Iterator[str]:
    """A wall with its openings and what stands along it."""
    stroke = "wall hand" if in_hand else "wall ink"
    if not side.known:
        stroke += " dashed"
    yield svg.of_wall(side.wall.id, svg.line(paper.at(side.start), paper.at(side.end), stroke))
    for opening in side.wall.openings:
        yield from _draw_opening(paper, side, opening)
    for obstacle in side.wall.obstacles:
        yield from _draw_obstacle(paper, side, obstacle)


def _number(paper: PlanPaper, side: DrawnWall, in_hand: bool, wanted: bool) -> str:
    # The number stands inside the room; of a short wall outside it, where its neighbors' numbers are not.
    inward = 12 if side.length * paper.scale > SHORT else -11
    middle = side.point(side.length / 2, inward / paper.scale)
    x, y = paper.at(middle)
    kind = "number hand" if in_hand else "number pencil" if wanted else "number"
    return svg.of_wall(side.wall.id, svg.text((x, y + 4), str(side.wall.number), kind))


def span_of(at: Measure | None, width: Measure | None, length: float) -> tuple[float, float] | None:
    """Where a thing lies along its wall, kept on it, so that a wrong reading does not draw across the room."""
    if at is None or width is None:
        return None
    start = min(float(at.smallest.inches), length)
    return start, min(start + float(width.smallest.inches), length)


def _draw_opening(paper: PlanPaper, side: DrawnWall, opening: Opening) -> Iterator[str]:
    span = span_of(opening.at, opening.width, side.length)
    if span is None:
        return
    start, end = (paper.at(side.point(along)) for along in span)
    yield svg.line(start, end, "gap")
    if opening.kind == "window":
        for offset in (-2.0, 2.0):
            near, far = (paper.at(side.point(along, offset / paper.scale)) for along in span)
            yield svg.line(near, far, "ink thin")
    elif opening.kind == "door":
        yield from _draw_swing(paper, side, span)


def _draw_swing(paper: PlanPaper, side: DrawnWall, span: tuple[float, float]) -> Iterator[str]:
    """A door as plans show it: the leaf opened into the room, and its swing. Which way it truly swings is not read."""
    width = span[1] - span[0]
    hinge, shut = paper.at(side.point(span[0])), paper.at(side.point(span[1]))
    leaf = paper.at(side.point(span[0], width))
    radius = svg.number(math.dist(hinge, shut))
    x, y = (svg.number(value) for value in shut)
    yield svg.path(f"M{svg.number(leaf[0])} {svg.number(leaf[1])}A{radius} {radius} 0 0 0 {x} {y}", "pencil dashed")
    yield svg.line(hinge, leaf, "pencil dashed")


def _draw_obstacle(paper: PlanPaper, side: DrawnWall, obstacle: Obstacle) -> Iterator[str]:
    span = span_of(obstacle.at, obstacle.width, side.length)
    if span is None:
        return
    unread = (LAID if is_laid(obstacle.kind) else UNREAD_DEPTH) / paper.scale
    deep = float(obstacle.depth.smallest.inches) if obstacle.depth else unread
    corners = [(span[0], 0.0), (span[1], 0.0), (span[1], deep), (span[0], deep)]
    yield svg.polygon([paper.at(side.point(*corner)) for corner in corners], "pencil dashed")


def draw_gap(paper: PlanPaper, room: Room, sides: list[DrawnWall]) -> Iterator[str]:
    """By how much a room fails to close, where that is more than the tape explains."""
    if not room.closed or len(sides) < 3 or not all(side.known for side in sides):
        return
    gap = math.dist(sides[-1].end, sides[0].start)
    if gap > GAP_SEEN:
        yield svg.line(paper.at(sides[-1].end), paper.at(sides[0].start), "red dashed")
