"""A papered wall from in front, to scale: strips by number, openings, the pattern's repeat as ticks along each seam.

Drawn, not derived: no figure is taken from here.
"""

from collections.abc import Iterator, Sequence

from scantling.engine.coverings.seams.hang import Paper
from scantling.engine.coverings.seams.plan import ListedStrip, Where
from scantling.engine.coverings.seams.stretch import Hole, Part
from scantling.engine.drawings import svg
from scantling.engine.words import say

WIDTH, MARGIN, TALLEST = 340.0, 16.0, 260.0
TICK = 5.0
TICKS_AT_MOST = 60


def draw_papered_wall(part: Part, holes: Sequence[Hole], strips: Sequence[ListedStrip], paper: Paper) -> str:
    """One wall, or one panel, with what hangs on it, as SVG text."""
    long, tall = part.end - part.start, part.height
    scale = min((WIDTH - 2 * MARGIN) / long, (TALLEST - 2 * MARGIN) / tall)
    sheet = _Sheet(part, scale)
    parts = [sheet.box(0, 0, long, tall, "ink")]
    for strip in strips:
        for where in strip.walls:
            if where.part.wall == part.wall and where.part.name == part.name:
                parts += _draw_strip(sheet, strip, where, paper)
    for hole in holes:
        if part.start <= hole.start < part.end:
            sides = hole.start - part.start, hole.over, hole.end - part.start, hole.under
            parts.append(sheet.box(*sides, "opening pencil" if hole.is_thing else "ink wood"))
    parts.append(svg.sentence((WIDTH / 2, sheet.high - 3), part.name, "small pencil"))
    return svg.drawing(WIDTH, sheet.high, say("drawn-strips", wall=part.name.capitalize()), parts)


class _Sheet:
    def __init__(self, part: Part, scale: float) -> None:
        self.scale = scale
        self.left = (WIDTH - (part.end - part.start) * scale) / 2
        self.high = part.height * scale + 2 * MARGIN

    def at(self, along: float, down: float) -> svg.Point:
        return (self.left + along * self.scale, MARGIN + down * self.scale)

    def box(self, left: float, top: float, right: float, foot: float, classes: str) -> str:
        return svg.polygon([self.at(*one) for one in ((left, top), (right, top), (right, foot), (left, foot))], classes)


def _draw_strip(sheet: _Sheet, strip: ListedStrip, where: Where, paper: Paper) -> Iterator[str]:
    start, end = (edge - where.part.base for edge in (where.start, where.end))
    yield svg.line(sheet.at(start, 0), sheet.at(start, where.part.height), "pencil")
    letter = f" {paper.letter(strip.strip.order)}" if paper.drop > 1 else ""
    yield svg.text((sheet.at((start + end) / 2, 0)[0], MARGIN + 12), f"{strip.number}{letter}", "small")
    if paper.repeat:
        down = (paper.mark + strip.strip.order * paper.step) % paper.repeat
        for count in range(min(TICKS_AT_MOST, max(0, (where.part.height - down) // paper.repeat + 1))):
            x, y = sheet.at(start, down + count * paper.repeat)
            yield svg.line((x, y), (x + min(TICK, (end - start) * sheet.scale), y), "pencil")
