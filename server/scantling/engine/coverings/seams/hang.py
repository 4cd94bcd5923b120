"""Strips as they hang from a start, to the right and to the left, each turned round the corners it meets.

At an inside corner a strip is parted: what turns the corner is lost under the next part, which is hung plumb beside it.
An outside corner is wrapped. Both are the trade's practice; how much is turned is a setting.
"""

from bisect import bisect_left, bisect_right
from dataclasses import dataclass

from scantling.engine.coverings.seams.stretch import Gap, Hole, Stretch

LETTERS = "ABCDEFGHIJKL"


@dataclass(frozen=True, slots=True)
class Paper:
    """A roll in the stretch's unit: what a strip is wide, laps, turns and is trimmed; its repeat and usable lengths.

    `sure` is what the worst roll gives from the top of its first strip on; `labeled` what the label says.
    """

    width: int
    lap: int
    turn: int
    trim: int
    repeat: int
    step: int
    drop: int
    sure: int
    labeled: int
    sliver: int
    mark: int = 0

    def letter(self, order: int) -> str:
        """Of strips whose pattern stands alike, one letter: of a straight match all are A, of a half drop A and B."""
        return LETTERS[order % self.drop]


@dataclass(frozen=True, slots=True)
class Strip:
    """`order` counts to the right from the start, to the left below nothing: it says where the pattern stands."""

    order: int
    left: int
    right: int


class CornerWalk:
    """One way along a stretch: its inside corners in the order in which they are met."""

    def __init__(self, stretch: Stretch, paper: Paper, mirrored: bool) -> None:
        self.paper, self.mirrored = paper, mirrored
        inside = [turn.at for turn in stretch.turns if turn.inside]
        self.corners = sorted(-at for at in inside) if mirrored else sorted(inside)

    def step(self, at: int) -> tuple[int, int]:
        """The far edge of the strip whose near edge is here, and where the next begins; mirrored, below nothing."""
        pos, rest = at, self.paper.width
        for place in range(bisect_right(self.corners, at), len(self.corners)):
            corner = self.corners[place]
            if corner >= pos + rest:
                break
            pos, rest = corner, max(0, rest - (corner - pos) - self.paper.turn)
        # What laps lies over the strip before it, and not back round a corner.
        return pos + rest, max(pos + rest - self.paper.lap, pos, at + 1)

    def used(self, near: int, far: int) -> int:
        """How much of a strip's width is used from one edge to the other, with what turns the corners between."""
        first, last = bisect_right(self.corners, near), bisect_left(self.corners, far)
        return far - near + self.paper.turn * max(0, last - first)


@dataclass(frozen=True, slots=True)
class RollCut:
    """A piece to cut from a roll: how long, and where in the pattern its top edge stands (0 is the repeat's mark)."""

    length: int
    phase: int


def cuts_of(
    stretch: Stretch, paper: Paper, order: int, left: int, right: int
) -> list[tuple[str, Hole | None, RollCut]]:
    """What is cut for a strip: whole, or where something takes all its width only what is over and under that."""
    up = -paper.trim // 2 - paper.mark - order * paper.step
    return [(*_called(gap), _cut(paper, gap.foot - gap.top, gap.top + up)) for gap in stretch.gaps(left, right)]


def _called(gap: Gap) -> tuple[str, Hole | None]:
    """By what it hangs under; what reaches up to the top of the paper, by what it hangs over."""
    if gap.above:
        return "under", gap.above
    return ("over", gap.below) if gap.below else ("whole", None)


def _cut(paper: Paper, tall: int, phase: int) -> RollCut:
    return RollCut(tall + paper.trim, phase % paper.repeat if paper.repeat else 0)
