"""A stretch of wall to paper without a break, laid out flat: its walls end to end, the corners between, its openings.

Whole numbers of one unit throughout, so that every start can be tried: along from the left end, and down from the top
of the paper. A stretch that comes round is laid out twice over, so that a strip may lie across its join.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass, replace


@dataclass(frozen=True, slots=True)
class Part:
    """A wall, or a panel on one: where it begins and ends along the stretch, and how tall its paper is.

    `base` is how far along its own wall it begins; `short` is its name where there is room for little.
    """

    wall: str
    name: str
    short: str
    start: int
    end: int
    height: int
    base: int = 0


@dataclass(frozen=True, slots=True)
class Hole:
    """An opening with its casing, or what hides the wall: along the stretch, and from `over` down to `under`."""

    id: str
    name: str
    start: int
    end: int
    over: int
    under: int
    is_thing: bool = False


@dataclass(frozen=True, slots=True)
class Gap:
    """What is papered between what is not: from `top` down to `foot`, and the holes that it ends at, if any."""

    top: int
    foot: int
    above: Hole | None = None
    below: Hole | None = None


@dataclass(frozen=True, slots=True)
class Turn:
    """A corner on the way; after the inside ones the strip is parted, and `number` says which it is."""

    at: int
    inside: bool
    number: int


@dataclass(frozen=True, slots=True)
class Stretch:
    """`end` is its length; of one that comes round, parts, holes and turns stand in it twice.

    Between two of `edges` the same is to be papered all along: the gaps of that column.
    """

    parts: tuple[Part, ...]
    holes: tuple[Hole, ...]
    turns: tuple[Turn, ...]
    end: int
    closed: bool
    edges: tuple[int, ...]
    columns: tuple[tuple[Gap, ...], ...]

    def part_at(self, along: int) -> Part:
        return self.parts[max(0, bisect_right(self.parts, along, key=lambda part: part.start) - 1)]

    def parts_over(self, left: int, right: int) -> list[Part]:
        return [part for part in self.parts if part.start < right and part.end > left]

    def columns_over(self, left: int, right: int) -> tuple[int, int]:
        """The first and the last column that a strip lies over."""
        return max(0, bisect_right(self.edges, left) - 1), min(len(self.columns), bisect_left(self.edges, right)) - 1

    def gaps(self, left: int, right: int) -> list[Gap]:
        """What is papered of a strip so wide, from the top down: wherever any of its width has wall behind it."""
        first, last = self.columns_over(left, right)
        found: list[Gap] = []
        for gap in sorted((gap for column in self.columns[first : last + 1] for gap in column), key=_from_the_top):
            if found and gap.top <= found[-1].foot:
                lower = max(found[-1], gap, key=lambda one: one.foot)
                found[-1] = Gap(found[-1].top, lower.foot, found[-1].above, lower.below)
            else:
                found.append(gap)
        return found


def _from_the_top(gap: Gap) -> tuple[int, int]:
    return gap.top, -gap.foot


def lay_out_stretch(parts: Sequence[Part], holes: Sequence[Hole], turns: Sequence[Turn], closed: bool) -> Stretch:
    """A stretch from what stands along it once."""
    end = parts[-1].end
    kept = [replace(hole, end=min(hole.end, end)) for hole in sorted(holes, key=lambda one: (one.start, one.end))
            if hole.start < min(hole.end, end)]  # fmt: skip
    parts, turns = list(parts), list(turns)
    if closed:
        parts += [replace(one, start=one.start + end, end=one.end + end) for one in parts]
        kept += [replace(one, start=one.start + end, end=one.end + end) for one in kept]
        turns += [replace(one, at=one.at + end) for one in turns]
    edges = sorted({0, *(at for one in parts for at in (one.start, one.end)),
                    *(at for one in kept for at in (one.start, one.end))})  # fmt: skip
    columns = tuple(_gaps_at(parts, kept, edge) for edge in edges[:-1])
    return Stretch(tuple(parts), tuple(kept), tuple(turns), end, closed, tuple(edges), columns)


def _gaps_at(parts: Sequence[Part], holes: Sequence[Hole], along: int) -> tuple[Gap, ...]:
    """What is papered just right of a place: from the top of the paper down to its foot, less every hole there."""
    height = next(part.height for part in parts if part.start <= along < part.end)
    here = sorted((hole for hole in holes if hole.start <= along < hole.end), key=lambda hole: hole.over)
    found, top, above = [], 0, None
    for hole in here:
        if hole.over > top:
            found.append(Gap(top, hole.over, above, hole))
        if hole.under > top or above is None:
            top, above = max(top, hole.under), hole
    return (*found, Gap(top, height, above)) if top < height else tuple(found)
