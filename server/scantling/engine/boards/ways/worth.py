"""Worth: what one board can hold, when every kind of piece has points. Whole numbers in and out.

Branch and bound over the kinds, best points for their size first: a branch is left as soon as the rest of the board,
filled with the best of what is still to come and a part of one more piece, could not be worth enough.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate

from scantling.engine.boards.case.grid import Grid
from scantling.engine.boards.ways.steps import Steps

TURNS_BETWEEN_STEPS = 256


@dataclass(frozen=True, slots=True)
class PointScale:
    """Points for every kind, laid out for the search: kinds with points, best value for their size first.

    `sizes_to` and `points_to` are running totals: what all pieces before a place measure and are worth together.
    """

    kinds: tuple[int, ...]
    sizes: tuple[int, ...]
    points: tuple[int, ...]
    demand: tuple[int, ...]
    sizes_to: tuple[int, ...]
    points_to: tuple[int, ...]
    smallest: tuple[int, ...]
    by_size: tuple[int, ...]
    single: tuple[int, ...]


def derive_point_scale(grid: Grid, points: Sequence[int]) -> PointScale:
    """Lay out the points; kinds with none are left out."""
    kinds = sorted((k for k, p in enumerate(points) if p > 0), key=lambda k: (-points[k] / grid.sizes[k], k))
    sizes, values = [grid.sizes[k] for k in kinds], [points[k] for k in kinds]
    demand = [grid.demand[k] for k in kinds]
    by_size = [grid.sizes[k] for k in reversed(range(len(points))) if points[k] > 0]
    return PointScale(
        tuple(kinds),
        tuple(sizes),
        tuple(values),
        tuple(demand),
        tuple(accumulate((s * d for s, d in zip(sizes, demand, strict=True)), initial=0)),
        tuple(accumulate((p * d for p, d in zip(values, demand, strict=True)), initial=0)),
        tuple(accumulate(reversed(sizes), min))[::-1],
        tuple(by_size),
        tuple(accumulate([points[k] for k in reversed(range(len(points))) if points[k] > 0], max, initial=0)),
    )


class Bar:
    """How many points a filling must be worth to be looked at; whoever looks may raise it as better ones are found."""

    __slots__ = ("least",)

    def __init__(self, least: int) -> None:
        self.least = least


def fill_best(scale: PointScale, room: int, above: int, steps: Steps) -> tuple[int, tuple[int, ...]]:
    """The most points within `room`, and the kinds that give them, where that is more than `above`; else `above`, ().

    When the steps run out the answer is only the best so far: whoever claims something by it looks at `steps.out`.
    """
    best: tuple[int, ...] = ()
    bar = Bar(above + 1)
    for value, kinds in fillings(scale, room, bar, steps):
        bar.least, best = value + 1, kinds
    return bar.least - 1, best


def fillings(  # noqa: C901  # one loop on purpose: a call in it doubles the time of every search
    scale: PointScale, room: int, bar: Bar, steps: Steps
) -> Iterator[tuple[int, tuple[int, ...]]]:
    """Every filling of the room that clears the bar, as (points, kinds); all of them, unless the steps run out."""
    sizes, points, demand = scale.sizes, scale.points, scale.demand
    sizes_to, points_to = scale.sizes_to, scale.points_to
    smallest, by_size, single = scale.smallest, scale.by_size, scale.single
    last = len(sizes)
    counts = [0] * last
    at = value = turns = 0
    least = bar.least
    while True:
        while at < last and room >= smallest[at]:
            if sizes[at] > room:
                counts[at] = 0
                at += 1
                continue
            turns += 1
            if room < 2 * smallest[at] and value + single[bisect_right(by_size, room)] < least:
                break
            full = bisect_right(sizes_to, sizes_to[at] + room, at) - 1
            bound = value + points_to[full] - points_to[at]
            if full < last:
                bound += (room - sizes_to[full] + sizes_to[at]) * points[full] // sizes[full]
            if bound < least:
                break
            count = counts[at] = min(demand[at], room // sizes[at])
            value += count * points[at]
            room -= count * sizes[at]
            at += 1
        if value >= least:
            turns += 6
            yield value, tuple([k for k, n in zip(scale.kinds[:at], counts, strict=False) for _ in range(n)])
            least = bar.least
        at -= 1
        while at >= 0 and not counts[at]:
            at -= 1
        if turns > TURNS_BETWEEN_STEPS or at < 0:
            steps.take(turns // 2)
            turns = 0
            if at < 0 or steps.out:
                return
        counts[at] -= 1
        value -= points[at]
        room += sizes[at]
        at += 1
