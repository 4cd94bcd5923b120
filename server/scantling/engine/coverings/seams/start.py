"""Where hanging may start: a seam or a strip on the middle of a wall or of an opening, or plumb at a mark along a wall.

Where nobody chose, all are tried: both on the middle of every wall, and a plumb line at every mark of a rule that is as
fine as the count of walls lets it be, over one strip's width from the wall's left end.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from scantling.engine.coverings.seams.hang import Paper
from scantling.engine.coverings.seams.stretch import Part, Stretch

SEAM, STRIP, PLUMB = "seam", "strip", "plumb"
STARTS_AT_MOST = 220
# Sixteenths of an inch between the marks tried, the finest first.
STEPS = (1, 2, 4, 8, 16, 32)


@dataclass(frozen=True, slots=True)
class Start:
    """A seam at `along`; `how` says what it was chosen by, on the wall or opening of that name."""

    along: int
    how: str
    of: str


def derive_starts(stretch: Stretch, paper: Paper, sixteenth: int) -> tuple[list[Start], int]:
    """Every start to try, and how many sixteenths lie between the marks."""
    parts = [part for part in stretch.parts if part.start < stretch.end]
    counts = {one: sum(_marks(part, paper, sixteenth * one) for part in parts) for one in STEPS}
    step = next((one for one, count in counts.items() if count <= STARTS_AT_MOST), STEPS[-1])
    found = [start for part in parts for start in middle_starts((part.start + part.end) // 2, paper, part.name)]
    found += (
        Start(part.start + mark * sixteenth * step, PLUMB, part.name)
        for part in parts
        for mark in range(_marks(part, paper, sixteenth * step))
    )
    return [start for start in found if 0 <= start.along < stretch.end], step


def _marks(part: Part, paper: Paper, step: int) -> int:
    return -(-min(part.end - part.start, paper.width - paper.lap) // step)


def middle_starts(middle: int, paper: Paper, of: str, how: str = "") -> Iterator[Start]:
    """A seam on the middle, and a strip on it; or only one of them."""
    if how != STRIP:
        yield Start(middle, SEAM, of)
    if how != SEAM:
        yield Start(middle - paper.width // 2, STRIP, of)
