"""What a seam at a place shows: how much of it is seen, and whether it stands too near a corner or an opening."""

from bisect import bisect_right
from itertools import accumulate, pairwise

from scantling.engine.coverings.seams.hang import Paper
from scantling.engine.coverings.seams.stretch import Stretch


class Sight:
    """Both change only at the edges of what stands along a stretch, so they are worked out once between each two.

    A seam over an opening shows only above and below it. Within a sliver's width of a corner, an opening or an end a
    strip would be left too narrow to hang well: 2 in, a hanging guide.
    """

    def __init__(self, stretch: Stretch, paper: Paper) -> None:
        free = [[(gap.top, gap.foot) for gap in column] for column in stretch.columns]
        steps = zip(stretch.edges[1:], pairwise(free), strict=False)
        edges = [turn.at for turn in stretch.turns] + [at for at, (one, other) in steps if one != other]
        edges += [0] if stretch.closed else [0, stretch.end]
        near = [(edge - paper.sliver + 1, edge + paper.sliver) for edge in edges] if paper.sliver else []
        changes = {at for pair in near for at in pair}
        changes |= {at for edge in stretch.edges for at in (edge, edge + 1)}
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
    """What hangs on either side of a seam, or on both."""
    along = along or (stretch.end if stretch.closed else 0)
    return sum(gap.foot - gap.top for gap in stretch.gaps(along - 1, along + 1))
