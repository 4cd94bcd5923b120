"""Greedy: a fair plan at once, so that there is always an answer and the search knows what it has to beat."""

from __future__ import annotations

from collections.abc import Sequence

from scantling.engine.boards.case.grid import Grid
from scantling.engine.boards.ways.packing import Way, derive_fullest, derive_sums
from scantling.engine.boards.ways.steps import Steps


def derive_greedy(grid: Grid, steps: Steps) -> tuple[Way, ...] | None:
    """The best of a few greedy plans; None when the limits defeat all of them, which proves nothing."""
    best: tuple[Way, ...] | None = None
    for favorite in (None, *[t for t, limit in enumerate(grid.limit) if limit]):
        plan = _fill(grid, favorite, steps)
        if plan is not None and (best is None or rank(grid, plan) < rank(grid, best)):
            best = plan
        if best is not None and steps.out:
            break
    return best


def rank(grid: Grid, ways: Sequence[Way]) -> tuple[int, int]:
    """What a plan is judged by: cents, then boards."""
    return sum([grid.price[stock] for stock, _ in ways]), len(ways)


def _fill(grid: Grid, favorite: int | None, steps: Steps) -> tuple[Way, ...] | None:
    """Serve the longest piece left, from the board that costs least for what it holds: the favorite where it fits."""
    left, boards = list(grid.demand), list(grid.limit)
    ways: list[Way] = []
    while any(left):
        longest = next(kind for kind, count in enumerate(left) if count)
        left[longest] -= 1
        reach = derive_sums(grid.sizes, left)
        steps.take(len(left))
        offers = []
        for t, capacity in enumerate(grid.capacity):
            room = capacity - grid.sizes[longest]
            if boards[t] and room >= 0:
                waste = room - (reach[0] & ((1 << (room + 1)) - 1)).bit_length() + 1
                offers.append((t != favorite and grid.price[t] > 0, grid.price[t] / (capacity - waste), waste, t))
        if not offers:
            return None
        stock = min(offers)[-1]
        beside = derive_fullest(grid.sizes, left, reach, 0, grid.capacity[stock] - grid.sizes[longest])
        for kind in beside:
            left[kind] -= 1
        boards[stock] -= 1
        ways.append((stock, tuple(sorted((longest, *beside)))))
    return _trade_down(grid, ways, boards)


def _trade_down(grid: Grid, ways: list[Way], boards: list[int]) -> tuple[Way, ...]:
    """Cut every board's pieces from the cheapest board that holds them."""
    traded = []
    for stock, kinds in ways:
        size = sum([grid.sizes[kind] for kind in kinds])
        boards[stock] += 1
        fitting = [t for t, room in enumerate(grid.capacity) if boards[t] and room >= size]
        cheapest = min(fitting, key=lambda t: (grid.price[t], grid.capacity[t], t))
        boards[cheapest] -= 1
        traded.append((cheapest, kinds))
    return tuple(traded)
