"""Lift: stronger rules for plans below a price that is known to be enough.

A plan that costs little has few points to spare by the price rule, so that each of its boards is filled in one of few
ways: those on a menu. Can a list of boards be filled in fractions by these ways alone? Where not, the program's duals
are the points of a rule that refutes the list, and often many like it: it holds for all plans of that price, and their
boards hold the fewer points the shorter the menu is.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence

from scantling.engine.boards.case.case import Rule
from scantling.engine.boards.case.grid import Grid
from scantling.engine.boards.case.rules import derive_spare, derive_total, passes
from scantling.engine.boards.search.columns import FINENESS, Task, price_out
from scantling.engine.boards.ways.menu import Menu
from scantling.engine.boards.ways.packing import Way
from scantling.engine.boards.ways.steps import Steps

CLEARLY = 0.5
"""How many cents more than its boards a list must cost by the program: below that, rounding might tell otherwise."""

WAYS = 4_000


def derive_up_to(grid: Grid, menu: Menu, low: int, high: int) -> int:
    """The most cents, from `low` up to `high`, that plans may cost and still use only the menu's first ways.

    With more than so many ways the program takes long: then the rule is made for fewer plans.
    """
    reach = menu.reach if len(menu.ways) <= WAYS else menu.wastes[WAYS]
    while low < high:
        middle = (low + high + 1) // 2
        if derive_spare(menu.rule, grid, middle) <= reach:
            low = middle
        else:
            high = middle - 1
    return low


class Refuter:
    """Rules against one list after another, by the price program: what would the pieces cost from these boards alone?

    The program goes on where it stopped, with as many boards as the list has. A few turns show that the list costs more
    than its boards do, or that it might do. With a menu, only ways on it are used, as far as a plan of `up_to` cents
    can use them, and the rules hold for such plans; without one, all ways are, and the rules hold for all plans.
    """

    def __init__(self, task: Task, steps: Steps, menu: Menu | None = None, up_to: int | None = None) -> None:
        self.up_to = up_to
        self._task = task
        self._steps = steps
        self._menu = menu
        self._usable: tuple[Way, ...] = ()
        if menu is None or up_to is None:
            task.allow(None)
            return
        self._usable = menu.ways[: bisect_right(menu.wastes, derive_spare(menu.rule, task.grid, up_to))]
        task.allow(set(self._usable))
        for way in self._usable:
            if way not in task.offered:
                task.offer(way)

    def refute(self, boards: Sequence[int], allowance: int) -> Rule | None:
        """A rule that these boards do not pass, or None."""
        grid, program = self._task.grid, self._task.program
        stop = self._steps.used + allowance
        cost = sum([price * count for price, count in zip(grid.price, boards, strict=True)]) + CLEARLY
        program.restate(grid.demand, [boards[t] for t in self._task.stock])
        while program.cost < cost and program.mend():
            if self._steps.out or self._steps.used >= stop:
                return None
        while program.cost >= cost and self._steps.used < stop and not self._steps.out:
            rule, fresh = self._measure()
            if not passes(rule, derive_total(rule, grid), boards):
                return rule
            if not fresh:
                return None
            for way in fresh:
                self._task.offer(way)
            while not self._steps.out and (program.mend() or program.improve()):
                pass
        return None

    def _measure(self) -> tuple[Rule, list[Way]]:
        """The program's duals as a rule, and ways that it does not know yet and would use."""
        duals = self._task.duals()
        if self._menu is None:
            rule, ways = price_out(self._task.grid, duals, self._steps)
            return rule, [way for way in ways if way not in self._task.offered and self._task.promises(way, duals)]
        points = tuple([int(FINENESS * dual) for dual in duals.pieces])
        most = [0] * len(self._task.grid.price)
        for stock, kinds in self._usable:
            worth = sum([points[kind] for kind in kinds])
            if worth > most[stock]:
                most[stock] = worth
        self._steps.take(len(self._usable) // 2)
        return Rule(points, tuple(most), self.up_to, self._menu.rule), []
