"""What a seam at a place shows: how much of it is seen, and whether it stands too near a corner or an opening."""

from bisect import bisect_right
from itertools import accumulate

from scantling.engine.coverings.seams.hang import Paper
from scantling.engine.coverings.seams.stretch import Stretch


class Sight:
    """Both change only at the edges of what stands along a stretch, so they are worked out once between each two.

    A seam over an opening shows only above and below it. Within a sliver's width of a corner, an opening or an end a
    strip would be left too narrow to hang well: 2 in, a hanging guide.
    """

    def __init__(self, stretch: Stretch, paper: Paper) -> None:
        edges = [turn.at for turn in stretch.turns] + [at for hole in stretch.holes for at in (hole.start, hole.end)]
        edges += [0] if stretch.closed else [0, stretch.end]
        near = [(edge - paper.sliver + 1, edge + paper.sliver) for edge in edges] if paper.sliver else []
        changes = {0, *(part.start for part in stretch.parts), *(at for pair in near for at in pair)}
        changes |= {at for hole in stretch.holes for at in (hole.start + 1, hole.end)}
        self.changes = sorted(changes)
        starts = dict.fromkeys(self.changes, 0)
        for begins, ends in near:
            starts[begins] += 1
            starts[ends] -= 1
        self.near = [int(count > 0) for count in accumulate(starts[at] for at in self.changes)]
        self.seen = [_seen(stretch, at) for at in self.changes]

    def at(self, along: int) -> tuple[int, int]:
        """How much of a seam there is seen, and 1 where it stands too near something."""
        place = bisect_right(self.changes, along) - 1
        return self.seen[place], self.near[place]


def _seen(stretch: Stretch, along: int) -> int:
    height = stretch.part_at(along).height
    for hole in stretch.holes:
        if hole.start < along < hole.end:
            return max(0, hole.over) + max(0, height - hole.under)
    return height
