"""Menus: ready-made ways to fill a board, the least wasteful by a rule first, and sets of them as whole numbers.

Where a rule leaves a shopping list little to spare, only ways that waste few of its points can belong to a packing.
They are listed once for all lists. A set of ways is one whole number with a bit for each, so that leaving out all ways
that no longer fit is a single operation.
"""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass

from scantling.engine.boards.case import Rule
from scantling.engine.boards.grid import Grid
from scantling.engine.boards.packing import Way
from scantling.engine.boards.steps import Steps
from scantling.engine.boards.worth import Bar, derive_scale, fillings


@dataclass(frozen=True, slots=True)
class Menu:
    """Every way to fill a board that wastes at most `reach` points of the rule.

    `more_than[k][r]` is the set of ways with more than r pieces of kind k, `stock[t]` those cut from stock entry t.
    """

    rule: Rule
    reach: int
    ways: tuple[Way, ...]
    wastes: tuple[int, ...]
    more_than: tuple[tuple[int, ...], ...]
    stock: tuple[int, ...]

    def within(self, spare: int) -> int:
        """The set of ways that waste at most `spare`."""
        return (1 << bisect_right(self.wastes, spare)) - 1


def derive_menu(grid: Grid, rule: Rule, reach: int, most_ways: int, steps: Steps) -> Menu | None:
    """All ways within the reach; where they are too many, the reach is drawn in until about `most_ways` are left.

    None when the steps run out, or when the rule gives some pieces no points: a menu would leave them out.
    """
    if not all(rule.points):
        return None
    scale = derive_scale(grid, rule.points)
    listed: list[tuple[int, int, tuple[int, ...]]] = []
    for t, limit in enumerate(grid.limit):
        if limit:
            bar = Bar(rule.most[t] - reach)
            for points, kinds in fillings(scale, grid.capacity[t], bar, steps):
                listed.append((rule.most[t] - points, t, tuple(sorted(kinds))))
                if len(listed) > 2 * most_ways:
                    reach = _draw_in(listed, most_ways)
                    bar.least = rule.most[t] - reach
            if steps.out:
                return None
    if len(listed) > most_ways:
        reach = _draw_in(listed, most_ways)
    listed.sort()
    steps.take(3 * len(listed))
    return _lay_out(grid, rule, reach, listed)


def _draw_in(listed: list[tuple[int, int, tuple[int, ...]]], most_ways: int) -> int:
    """Keep the ways that waste less than the one at the cut, all of them: a menu has no gaps within its reach."""
    wastes = sorted([waste for waste, _, _ in listed])
    reach = max(0, wastes[most_ways] - 1)
    listed[:] = [way for way in listed if way[0] <= reach]
    return reach


def _lay_out(grid: Grid, rule: Rule, reach: int, listed: list[tuple[int, int, tuple[int, ...]]]) -> Menu:
    more_than = [[0] * (count + 1) for count in grid.demand]
    stock = [0] * len(grid.price)
    bit = 1
    for _, t, kinds in listed:
        stock[t] |= bit
        held: dict[int, int] = {}
        for kind in kinds:
            count = held.get(kind, 0)
            more_than[kind][count] |= bit
            held[kind] = count + 1
        bit <<= 1
    return Menu(
        rule=rule,
        reach=reach,
        ways=tuple([(t, kinds) for _, t, kinds in listed]),
        wastes=tuple([waste for waste, _, _ in listed]),
        more_than=tuple(map(tuple, more_than)),
        stock=tuple(stock),
    )
