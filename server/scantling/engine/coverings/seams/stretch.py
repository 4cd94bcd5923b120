"""A stretch of wall to paper without a break, laid out flat: its walls end to end, the corners between, its openings.

Whole numbers of one unit throughout, so that every start can be tried: along from the left end, and down from the top
of the paper. A stretch that comes round is laid out twice over, so that a strip may lie across its join.
"""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Part:
    """A wall, or a panel on one: where it begins and ends along the stretch, and how tall its paper is.

    `base` is how far along its own wall it begins.
    """

    wall: str
    name: str
    start: int
    end: int
    height: int
    base: int = 0


@dataclass(frozen=True, slots=True)
class Hole:
    """An opening with its casing: from and to along the stretch, and from `over` down to `under`."""

    id: str
    name: str
    start: int
    end: int
    over: int
    under: int


@dataclass(frozen=True, slots=True)
class Turn:
    """A corner on the way; after the inside ones the strip is parted, and `number` says which it is."""

    at: int
    inside: bool
    number: int


@dataclass(frozen=True, slots=True)
class Stretch:
    """`end` is its length; of one that comes round, parts, holes and turns stand in it twice."""

    parts: tuple[Part, ...]
    holes: tuple[Hole, ...]
    turns: tuple[Turn, ...]
    end: int
    closed: bool

    def part_at(self, along: int) -> Part:
        return self.parts[max(0, bisect_right(self.parts, along, key=lambda part: part.start) - 1)]

    def parts_over(self, left: int, right: int) -> list[Part]:
        return [part for part in self.parts if part.start < right and part.end > left]

    def hole_round(self, left: int, right: int) -> Hole | None:
        """The opening that takes all the width of a strip; None where wall stands beside it."""
        place = bisect_right(self.holes, left, key=lambda hole: hole.start) - 1
        hole = self.holes[place] if place >= 0 else None
        return hole if hole and right <= hole.end else None


def lay_out(parts: Sequence[Part], holes: Sequence[Hole], turns: Sequence[Turn], closed: bool) -> Stretch:
    """A stretch from what stands along it once; holes that lie over each other are cut apart."""
    end = parts[-1].end
    kept: list[Hole] = []
    for hole in sorted(holes, key=lambda one: (one.start, one.end)):
        start = max(hole.start, kept[-1].end if kept else 0)
        if start < min(hole.end, end):
            kept.append(Hole(hole.id, hole.name, start, min(hole.end, end), hole.over, hole.under))
    if not closed:
        return Stretch(tuple(parts), tuple(kept), tuple(turns), end, False)
    again = [Part(one.wall, one.name, one.start + end, one.end + end, one.height, one.base) for one in parts]
    more = [Hole(one.id, one.name, one.start + end, one.end + end, one.over, one.under) for one in kept]
    round_ = [Turn(one.at + end, one.inside, one.number) for one in turns]
    return Stretch((*parts, *again), (*kept, *more), (*turns, *round_), end, True)
