"""Menus: ready-made ways to fill a board, the least wasteful by a rule first, and sets of them as whole numbers.

Where a rule leaves a shopping list little to spare, only ways that waste few of its points can belong to a packing.
They are listed once for all lists. A set of ways is one whole number with a bit for each, so that leaving out all ways
that no longer fit is a single operation.
"""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass

from scantling.engine.boards.case.case import Rule
from scantling.engine.boards.case.grid import Grid
from scantling.engine.boards.case.rules import derive_total
from scantling.engine.boards.ways.packing import Way
from scantling.engine.boards.ways.steps import Steps
from scantling.engine.boards.ways.worth import Bar, derive_point_scale, fillings

MENU_WAYS = 8_000
CHOICE = 3
"""A menu long enough for any use, and how many ways should serve every kind."""

MENU_STEPS = 30_000
MENU_SHARE = 16
"""The steps that one menu may take, or this share of all steps: a walk without menus does better than a long wait."""


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
    scale = derive_point_scale(grid, rule.points)
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


class Menus:
    """Menus by one rule, each made when it is wanted; the last one is kept."""

    def __init__(self, grid: Grid, rule: Rule, steps: Steps) -> None:
        self._grid = grid
        self._rule = rule
        self._steps = steps
        self._menu: Menu | None = None
        self._most_ways = max(1_000, 30 * len(grid.sizes))
        self._usual_reach = self._first_reach = derive_total(rule, grid) // 1_000

    def reach_to(self, spare: int, effort: int, farthest: int) -> Menu | None:
        """A menu that goes as far as the points to spare, or else the longest that is short enough.

        `farthest` is as many points as any list of boards may have to spare; with more effort it may be longer.
        """
        if self._menu is None:
            self._menu = self._first()
        menu, most = self._menu, self._most_ways << min(effort + 2, 4)
        if menu is not None and menu.reach < spare and not self._steps.out:
            for reach in (farthest, 2 * spare, spare):
                if reach >= spare and _foresee(menu, reach) < most:
                    self._menu = self._derive(reach, most) or menu
                    break
        return self._menu

    def longer(self, menu: Menu) -> Menu:
        """A menu about three times as long, or the same one when the steps run out."""
        most = 3 * max(len(menu.ways), self._most_ways)
        self._menu = self._derive(2 * max(menu.reach, self._usual_reach), most) or menu
        return self._menu

    def _first(self) -> Menu | None:
        """A short menu, but with a choice for every kind: nothing can be cut from one that leaves a kind out."""
        menu = self._derive(self._first_reach, self._most_ways)
        if menu is None:
            self._first_reach //= 4
        while menu and not all(ways[0].bit_count() >= CHOICE for ways in menu.more_than) and len(menu.ways) < MENU_WAYS:
            longer = self.longer(menu)
            if len(longer.ways) < 2 * len(menu.ways):
                return longer  # there are hardly more ways to be had
            menu = longer
        return menu

    def _derive(self, reach: int, most_ways: int) -> Menu | None:
        part = self._steps.part(max(MENU_STEPS, self._steps.limit // MENU_SHARE))
        menu = derive_menu(self._grid, self._rule, reach, most_ways, part)
        self._steps.close(part)
        return menu


def _foresee(menu: Menu, reach: int) -> int:
    """About how many ways a menu of another reach would have: they grow like its square."""
    return len(menu.ways) * reach * reach // max(1, menu.reach * menu.reach)
