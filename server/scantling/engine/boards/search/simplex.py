"""A small simplex: linear programs whose columns arrive as they are wanted.

Least cost subject to "at least" and "at most" rows, with the inverse of the basis kept in full: the programs here have
a few dozen rows. Floats live in this module and in the duals it hands out; nothing that is claimed rests on them, for
the duals are turned into whole-number rules that are checked exactly. Floats are added one by one, never by `sum`,
which rounds otherwise from Python 3.12 on than before: laptop and phone must take the same turn at every tie.
"""

from __future__ import annotations

from collections.abc import Sequence

from scantling.engine.boards.ways.steps import Steps

TINY = 1e-9
ENOUGH = 1e-7
SHORTLIST = 24
BARRED = 1e15

Column = tuple[float, tuple[tuple[int, int], ...]]
"""A column: its cost, and its entries as (row, whole number)."""


class Program:
    """Rows `at_least` then `at_most`; each "at least" row starts covered by a makeshift of the given cost."""

    def __init__(
        self,
        at_least: Sequence[int],
        at_most: Sequence[int],
        makeshift: Sequence[float],
        steps: Steps,
    ) -> None:
        rows = len(at_least) + len(at_most)
        self._steps = steps
        self.columns: list[Column] = [(float(makeshift[i]), ((i, 1),)) for i in range(len(at_least))]
        self.columns += [(0.0, ((len(at_least) + j, 1),)) for j in range(len(at_most))]
        self.columns += [(0.0, ((i, -1),)) for i in range(len(at_least))]
        self.basis = list(range(rows))
        self.values = [float(v) for v in (*at_least, *at_most)]
        self.inverse = [[1.0 if i == j else 0.0 for j in range(rows)] for i in range(rows)]
        self.duals = [self.columns[i][0] for i in range(rows)]
        self.pivots = 0
        self._shortlist: list[int] = []

    @property
    def cost(self) -> float:
        """What the present solution costs."""
        total = 0.0
        for column, value in zip(self.basis, self.values, strict=True):
            total += self.columns[column][0] * value
        return total

    def add(self, column: Column) -> int:
        """Offer one more column; its number."""
        self.columns.append(column)
        return len(self.columns) - 1

    def surplus(self, row: int) -> int:
        """The number of the column that takes away what an "at least" row has too much of."""
        return len(self.basis) + row

    def start_with(self, row: int, entering: int) -> None:
        """Put a column into the basis in place of the row's makeshift; for starts that are known to come out.

        The caller promises that no value turns negative: rows in order, each column with nothing in earlier rows.
        """
        self._pivot(row, self._change(self.columns[entering][1]), self._reduced(entering))
        self.basis[row] = entering

    def improve(self) -> bool:
        """One turn: bring the most promising column into the basis; False when no column promises anything."""
        best = self._most_promising(self._shortlist)
        if best is None:
            self._shortlist = self._promising()
            best = self._most_promising(self._shortlist)
        return best is not None and self._enter(*best)

    def restate(self, at_least: Sequence[int], at_most: Sequence[int]) -> None:
        """Change what the rows ask for. Some values may turn negative: `mend` until none is."""
        wanted = (*at_least, *at_most)
        self.values = []
        for line in self.inverse:
            value = 0.0
            for share, amount in zip(line, wanted, strict=True):
                value += share * amount
            self.values.append(value)

    def mend(self) -> bool:
        """One turn: the value furthest below zero leaves for the column that costs least; False when none is below."""
        least = min(self.values)
        if least > -ENOUGH:
            return False
        leaving = self.values.index(least)
        line = self.inverse[leaving]
        entering, best, steadiest = -1, 0.0, 0.0
        self._steps.take(len(self.columns) // 2)
        for c, (_, entries) in enumerate(self.columns):
            fall = 0.0
            for row, amount in entries:
                fall -= line[row] * amount
            if fall > ENOUGH:
                ratio = max(0.0, self._reduced(c)) / fall
                if entering < 0 or ratio < best - TINY or (ratio < best + TINY and fall > steadiest):
                    entering, best, steadiest = c, ratio, fall
        if entering < 0:
            return False
        self._pivot(leaving, self._change(self.columns[entering][1]), self._reduced(entering))
        self.basis[leaving] = entering
        return True

    def charge(self, column: int, cost: float | None) -> None:
        """Change what a column costs, unless it is in the basis; with None it never enters."""
        if column not in self.basis:
            self.columns[column] = (BARRED if cost is None else cost, self.columns[column][1])

    def _promising(self) -> list[int]:
        """The columns that promise most now. The next turns look only at these: all columns are many."""
        self._steps.take(len(self.columns) // 2)
        reduced = [(self._reduced(c), c) for c in range(len(self.columns))]
        return [c for cost, c in sorted([r for r in reduced if r[0] < -ENOUGH])[:SHORTLIST]]

    def _most_promising(self, columns: list[int]) -> tuple[int, float] | None:
        best, least = -1, -ENOUGH
        for c in columns:
            cost = self._reduced(c)
            if cost < least:
                best, least = c, cost
        return None if best < 0 else (best, least)

    def _reduced(self, column: int) -> float:
        """What one unit of the column would add to the cost."""
        cost, entries = self.columns[column]
        duals = self.duals
        for row, amount in entries:
            cost -= duals[row] * amount
        return cost

    def _enter(self, entering: int, reduced: float) -> bool:
        change = self._change(self.columns[entering][1])
        leaving = self._leaving(change)
        if leaving < 0:
            return False
        self._pivot(leaving, change, reduced)
        self.basis[leaving] = entering
        self.values = [v if v > 0.0 else 0.0 for v in self.values]
        return True

    def _change(self, entries: tuple[tuple[int, int], ...]) -> list[float]:
        """How each basic value falls for one unit of a column."""
        change = []
        for line in self.inverse:
            total = 0.0
            for row, amount in entries:
                total += line[row] * amount
            change.append(total)
        return change

    def _leaving(self, change: Sequence[float]) -> int:
        """The row whose value reaches zero first; among ties the steadiest (largest) pivot."""
        leaving, least, pivot = -1, 0.0, 0.0
        for i, (amount, value) in enumerate(zip(change, self.values, strict=True)):
            if amount > TINY:
                ratio = value / amount
                if leaving < 0 or ratio < least - TINY or (ratio < least + TINY and amount > pivot):
                    leaving, least, pivot = i, ratio, amount
        return leaving

    def _pivot(self, leaving: int, change: Sequence[float], reduced: float) -> None:
        pivot = change[leaving]
        line = [v / pivot for v in self.inverse[leaving]]
        value = self.values[leaving] / pivot
        for i, amount in enumerate(change):
            if i != leaving and (amount > 1e-12 or amount < -1e-12):
                self.inverse[i] = [a - amount * b for a, b in zip(self.inverse[i], line, strict=True)]
                self.values[i] -= amount * value
        self.inverse[leaving] = line
        self.values[leaving] = value
        self.duals = [y + reduced * b for y, b in zip(self.duals, line, strict=True)]
        self.pivots += 1
        self._steps.take(4 + len(self.basis) ** 2 // 25)
