"""Offcuts: among plans of the same money and the same boards, one whose longest offcut is as long as can be.

A board that is to leave more is a board of less capacity: the same packing question, asked again and again with one
board made shorter. Other lists of the same rank are asked too. What is not found within the steps is left.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from scantling.engine.boards.case.case import Rule
from scantling.engine.boards.case.grid import Grid
from scantling.engine.boards.case.rules import derive_size_rule
from scantling.engine.boards.search.greedy import rank
from scantling.engine.boards.ways.lists import Boards, ListWalk
from scantling.engine.boards.ways.packing import Way, pack
from scantling.engine.boards.ways.steps import Steps

TRY = 2_000
LISTS = 16


def derive_longest_left(grid: Grid, ways: tuple[Way, ...]) -> int:
    """How much the emptiest board has left, its last kerf not counted."""
    return max(grid.capacity[stock] - sum([grid.sizes[kind] for kind in kinds]) for stock, kinds in ways)


def leave_more(grid: Grid, ways: tuple[Way, ...], rules: tuple[Rule, ...], steps: Steps) -> tuple[Way, ...]:
    """A plan of the same rank that leaves a longer offcut, or the same plan."""
    for boards in _lists_like(grid, ways, rules, steps):
        for stock, count in enumerate(boards):
            if count and not steps.out:
                ways = _shorten(grid, boards, stock, ways, steps)
    return ways


def _lists_like(grid: Grid, ways: tuple[Way, ...], rules: tuple[Rule, ...], steps: Steps) -> Iterator[Boards]:
    """The plan's own list, then others of the same rank that pass the rules."""
    taken = [stock for stock, _ in ways]
    own = tuple([taken.count(stock) for stock in range(len(grid.price))])
    yield own
    cents, count = rank(grid, ways)
    walk = ListWalk(grid, list(rules), steps)
    walk.ceiling = (cents, count + 1)
    for (place, boards), _ in zip(walk, range(LISTS), strict=False):
        if place == (cents, count) and boards != own:
            yield boards


def _shorten(grid: Grid, boards: Boards, stock: int, ways: tuple[Way, ...], steps: Steps) -> tuple[Way, ...]:
    """Make one board of the stock entry as short as the rest allows, by halves; keep what beats the plan so far."""
    high = grid.capacity[stock] - derive_longest_left(grid, ways) - 1
    low = _least_capacity(grid, boards, stock)
    while low <= high and not steps.out:
        middle = (low + high) // 2 if high - low < grid.capacity[stock] // 4 else high
        found = pack_shortened(grid, boards, stock, middle, steps, TRY)
        if found is None:
            if middle == high:
                break
            low = middle + 1
        else:
            ways = found
            high = grid.capacity[stock] - derive_longest_left(grid, ways) - 1
    return ways


def _least_capacity(grid: Grid, boards: Boards, stock: int) -> int:
    """The board cannot be shorter than the shortest piece, nor than what the other boards, filled up, leave over."""
    tops = derive_size_rule(grid).most
    wanted = sum([size * count for size, count in zip(grid.sizes, grid.demand, strict=True)])
    others = sum([top * count for top, count in zip(tops, boards, strict=True)]) - tops[stock]
    return max(grid.sizes[-1], wanted - others)


def pack_shortened(
    grid: Grid, boards: Boards, stock: int, capacity: int, steps: Steps, allowance: int
) -> tuple[Way, ...] | None:
    """A packing with one board of the stock entry cut down to the capacity, if one is found within the steps."""
    shortened = replace(
        grid,
        capacity=(*grid.capacity, capacity),
        price=(*grid.price, grid.price[stock]),
        limit=(*grid.limit, 1),
    )
    fewer = tuple([count - (t == stock) for t, count in enumerate(boards)])
    packed = pack(shortened, (*fewer, 1), [derive_size_rule(shortened)], steps, allowance)
    if packed.ways is None or len(packed.ways) != sum(boards):
        return None
    return tuple([(stock if t == len(boards) else t, kinds) for t, kinds in packed.ways])
