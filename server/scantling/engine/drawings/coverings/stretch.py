"""A stretch of papered walls laid out flat, all at one scale: where each strip hangs, and where its pattern stands.

Walls stand side by side, in as many rows as they need. The start is drawn in hand, and where the ends meet in red.
Drawn, not derived: no figure is taken from here.
"""

from collections.abc import Iterator, Sequence

from scantling.engine.coverings.seams.hang import Paper
from scantling.engine.coverings.seams.plan import ListedStrip, Where
from scantling.engine.coverings.seams.search import Hung
from scantling.engine.coverings.seams.stretch import Hole, Part, Stretch
from scantling.engine.drawings import svg
from scantling.engine.words import say

WIDTH, EDGE, UNDER = 340.0, 10.0, 22.0
# How tall a wall is drawn: less where one row does not hold them all.
TALLEST, IN_ROWS = 250.0, 150.0
# Narrower than this on the sheet a strip has no room for its number, nor a wall for its name.
ROOM_FOR_NUMBER, ROOM_FOR_NAME = 11.0, 34.0
MARKS_AT_MOST = 60
# What a letter of a name takes, and how tall a thing has to be drawn to be named below the numbers.
LETTER_WIDE, LETTER_TALL = 6.0, 16.0


def draw_stretch(stretch: Stretch, hung: Hung, strips: Sequence[ListedStrip], paper: Paper) -> str:
    """The walls with their strips by number, as SVG text; a dashed line across a strip for each mark of its pattern."""
    parts = [part for part in stretch.parts if part.start < stretch.end]
    tall = max(part.height for part in parts)
    widest = (WIDTH - 2 * EDGE) / max(part.end - part.start for part in parts)
    scale = min(TALLEST / tall, (WIDTH - 2 * EDGE) / stretch.end)
    if scale * tall < IN_ROWS:
        scale = min(IN_ROWS / tall, widest)
    rows = _rows(parts, scale)
    high = tall * scale + UNDER
    placed = [_Row(stretch, scale, number * high, row) for number, row in enumerate(rows)]
    drawn = [one for row in placed for one in row.draw(strips, paper, hung)]
    return svg.drawing(WIDTH, len(rows) * high + EDGE, say("drawn-stretch"), drawn)


def _rows(parts: Sequence[Part], scale: float) -> list[list[Part]]:
    rows: list[list[Part]] = []
    for part in parts:
        if rows and (part.end - rows[-1][0].start) * scale <= WIDTH - 2 * EDGE and part.start == rows[-1][-1].end:
            rows[-1].append(part)
        else:
            rows.append([part])
    return rows


class _Row:
    """Some walls in a row, its top so far down the sheet."""

    def __init__(self, stretch: Stretch, scale: float, top: float, parts: Sequence[Part]) -> None:
        self.stretch, self.scale, self.top, self.parts = stretch, scale, top + EDGE, parts
        self.tall = max(part.height for part in parts)
        self.left = (WIDTH - (parts[-1].end - parts[0].start) * scale) / 2

    def at(self, along: float, down: float) -> svg.Point:
        return self.left + (along - self.parts[0].start) * self.scale, self.top + down * self.scale

    def draw(self, strips: Sequence[ListedStrip], paper: Paper, hung: Hung) -> Iterator[str]:
        here = [(strip, *place) for strip in strips for where in strip.walls for place in self._places(where)]
        for strip, part, start, end in here:
            yield from self._strip(strip, part, start, end, paper)
        holes = [hole for hole in self.stretch.holes if self.parts[0].start <= hole.start < self.parts[-1].end]
        for hole in sorted(holes, key=lambda one: not one.is_thing):
            classes = "opening pencil" if hole.is_thing else "ink opening"
            yield svg.polygon(self._box(hole.start, hole.over, hole.end, hole.under), classes)
        # Over what is left out: a strip above a door has little room, and its number is wanted.
        for strip, _, start, end in here:
            yield from self._number(strip, start, end, paper)
        yield from (self._name_of(hole) for hole in holes if self._is_named(hole, holes))
        for part in self.parts:
            yield svg.polygon(self._box(part.start, 0, part.end, part.height), "ink")
            yield self._name(part)
        yield from self._line(hung.start.along % max(1, self.stretch.end), "hand")
        if hung.mismatch:
            yield from self._line(hung.mismatch.at % self.stretch.end, "red")

    def _places(self, where: Where) -> Iterator[tuple[Part, int, int]]:
        """Part of a strip on whichever wall of this row it is, and from and to along the stretch."""
        for part in self.parts:
            if (part.wall, part.name) == (where.part.wall, where.part.name):
                yield part, part.start + where.start - part.base, part.start + where.end - part.base

    def _strip(self, strip: ListedStrip, part: Part, start: int, end: int, paper: Paper) -> Iterator[str]:
        if paper.repeat:
            mark = (paper.mark + strip.strip.order * paper.step) % paper.repeat
            for down in list(range(mark, part.height, paper.repeat))[:MARKS_AT_MOST]:
                yield svg.line(self.at(start, down), self.at(end, down), "pencil dashed")
        yield svg.line(self.at(start, 0), self.at(start, part.height), "thin")

    def _number(self, strip: ListedStrip, start: int, end: int, paper: Paper) -> Iterator[str]:
        if (end - start) * self.scale >= ROOM_FOR_NUMBER:
            x, _ = self.at((start + end) / 2, 0)
            yield svg.text((x, self.top + 14), str(strip.number), "number")
            if paper.drop > 1:
                yield svg.text((x, self.top + 25), paper.letter(strip.strip.order), "number")

    def _box(self, left: float, top: float, right: float, foot: float) -> list[svg.Point]:
        return [self.at(*one) for one in ((left, top), (right, top), (right, foot), (left, foot))]

    def _is_named(self, hole: Hole, holes: Sequence[Hole]) -> bool:
        """Whether it is drawn large enough, and nothing else is where its name would stand."""
        wide, tall = (hole.end - hole.start) * self.scale, (hole.under - hole.over) * self.scale
        along, down = (hole.start + hole.end) / 2, (hole.over + hole.under) / 2
        clear = not any(other is not hole and other.start <= along < other.end and other.over <= down < other.under
                        for other in holes)  # fmt: skip
        return hole.is_thing and clear and wide >= LETTER_WIDE * len(hole.name) and tall >= LETTER_TALL

    def _name_of(self, hole: Hole) -> str:
        x, y = self.at((hole.start + hole.end) / 2, (hole.over + hole.under) / 2)
        return svg.text((x, y + 4), hole.name, "small pencil")

    def _name(self, part: Part) -> str:
        wide = (part.end - part.start) * self.scale
        words = part.name if wide >= ROOM_FOR_NAME else part.short
        x, _ = self.at((part.start + part.end) / 2, 0)
        return svg.text((x, self.top + self.tall * self.scale + 12), words, "small pencil")

    def _line(self, along: int, classes: str) -> Iterator[str]:
        """A plumb line, on whichever wall of this row it is."""
        for part in self.parts:
            if part.start <= along < part.end:
                yield svg.line(self.at(along, 0), self.at(along, part.height), classes)

