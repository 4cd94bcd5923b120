"""Columns: the strongest rules, found by a linear program over all ways to fill a board.

If boards could be bought and filled in fractions, what would the pieces cost? The program's duals are the points of a
rule, and no other points make the pieces dearer. Ways to fill a board are made as they are wanted, by `worth`; there
are far too many to list. The duals that are priced lean toward those of the turn before, which saves turns: at the
start they swing wildly. Every turn gives a rule that holds, so the work may stop at any.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass

from scantling.engine.boards.case.case import Rule
from scantling.engine.boards.case.grid import Grid, derive_coarse
from scantling.engine.boards.case.rules import derive_least_cents
from scantling.engine.boards.search.simplex import Column, Program
from scantling.engine.boards.ways.packing import Way, derive_fullest, derive_sums
from scantling.engine.boards.ways.steps import Steps
from scantling.engine.boards.ways.worth import derive_point_scale, fill_best

FINENESS = 1_000
"""Points to a cent: fine enough that cutting a dual down to whole points costs no cent of the bound."""

LEAN = 0.3
CLOSE_ENOUGH = 0.0002
"""The share of the cost by which the price rule may fall short of the program's cost."""


@dataclass(frozen=True, slots=True)
class Duals:
    """What the program would pay for each kind, and for one more of each stock entry."""

    pieces: tuple[float, ...]
    boards: tuple[float, ...]

    def leaning(self, other: Duals, share: float) -> Duals:
        """These duals, moved toward the other ones by the share."""
        pieces = zip(self.pieces, other.pieces, strict=True)
        boards = zip(self.boards, other.boards, strict=True)
        return Duals(tuple([a + share * (b - a) for a, b in pieces]), tuple([a + share * (b - a) for a, b in boards]))


class Columns:
    """The ways found so far for one grid, shared by all its programs."""

    def __init__(self, grid: Grid, steps: Steps, known: Iterable[Way] = ()) -> None:
        """`known` are ways of a good plan: from them the program needs fewer turns."""
        self._grid = grid
        self._steps = steps
        self.task = Task(grid, steps)
        self._known = tuple(known)
        self._ways: dict[Way, None] = dict.fromkeys((*_derive_first_ways(grid, self.task.stock), *self._known))
        best_buy = min([grid.price[t] / grid.capacity[t] for t in self.task.stock if grid.price[t]], default=1.0)
        self._center = Duals(tuple([best_buy * size for size in grid.sizes]), tuple(map(float, grid.price)))

    def price(self, allowance: int) -> Rule | None:
        """The rule behind the least money that boards in fractions could cost: the best found within the allowance."""
        task = self.task
        task.start(self._ways, self._known)
        best, best_cents = None, -1
        stop = self._steps.used + allowance
        for rule in self._turns():
            cents = derive_least_cents(rule, self._grid)
            if cents is not None and cents > best_cents:
                best, best_cents = rule, cents
            if task.program.cost - best_cents <= CLOSE_ENOUGH * task.program.cost or self._steps.used >= stop:
                break
        return best

    def _turns(self) -> Iterator[Rule]:
        """Solve, price, offer what was found, again and again; each turn's rule holds."""
        task, center = self.task, self._center
        for way in self._ways:
            if way not in task.offered:
                task.offer(way)
        while task.solve(self._steps):
            duals = task.duals()
            for share in (LEAN, 0.0):
                leaning = duals.leaning(center, share)
                rule, ways = price_out(self._grid, leaning, self._steps)
                if self._steps.out:
                    return
                yield rule
                fresh = [way for way in ways if way not in self._ways and task.promises(way, duals)]
                if fresh:
                    break
            if not fresh:
                return
            center = leaning
            for way in fresh:
                self._ways[way] = None
                task.offer(way)


class Task:
    """The price program: a row per kind (at least the demand), and a row per stock entry (at most its limit)."""

    def __init__(self, grid: Grid, steps: Steps) -> None:
        self.grid = grid
        self.stock = tuple([t for t, limit in enumerate(grid.limit) if limit])
        self.offered: dict[Way, int] = {}
        self._ways: dict[int, Way] = {}
        self._kinds = len(grid.sizes)
        self._rows = {t: self._kinds + j for j, t in enumerate(self.stock)}
        dear = float(sum(grid.price) + 1) * self._kinds
        self.program = Program(grid.demand, [grid.limit[t] for t in self.stock], [dear] * self._kinds, steps)
        # A longer piece's place can always serve a shorter piece: saying so keeps the duals in order of size.
        for kind in range(self._kinds - 1):
            self.program.add((0.0, ((kind, -1), (kind + 1, 1))))

    def offer(self, way: Way) -> None:
        """Add one way to fill a board."""
        stock, kinds = way
        counts: dict[int, int] = {}
        for kind in kinds:
            counts[kind] = counts.get(kind, 0) + 1
        column: Column = (float(self.grid.price[stock]), (*counts.items(), (self._rows[stock], 1)))
        self.offered[way] = self.program.add(column)
        self._ways[self.offered[way]] = way

    def start(self, ways: Iterable[Way], known: Iterable[Way]) -> None:
        """Begin with the pieces cut longest first, each length from the best buy: near enough to save half the turns.

        A kind that longer pieces' boards already provide for begins with too many; where every board that takes a kind
        has a limit, its makeshift stays for now. The ways of a known plan come before others.
        """
        cheapest: dict[int, tuple[float, Way]] = {}
        offers = [(self.grid.price[way[0]] / sum([self.grid.sizes[kind] for kind in way[1]]), way) for way in ways]
        for offer in (*offers, *[(0.0, way) for way in known]):
            stock, kinds = offer[1]
            plenty = self.grid.limit[stock] >= sum(self.grid.demand)
            if plenty and (kinds[0] not in cheapest or offer < cheapest[kinds[0]]):
                cheapest[kinds[0]] = offer
        for kind in range(self._kinds):
            if self.program.values[kind] <= 0:
                self.program.start_with(kind, self.program.surplus(kind))
            elif kind in cheapest:
                way = cheapest[kind][1]
                self.offer(way)
                self.program.start_with(kind, self.offered[way])

    def allow(self, usable: Collection[Way] | None) -> None:
        """Let only these ways be used from here on, or all that were offered; what is in the basis may stay."""
        for way, column in self.offered.items():
            self.program.charge(column, self.grid.price[way[0]] if usable is None or way in usable else None)

    def solve(self, steps: Steps) -> bool:
        """Bring the program to its least cost; False when the steps run out first."""
        while not steps.out and self.program.improve():
            pass
        return not steps.out

    def way_of(self, column: int) -> Way | None:
        """The way that a column of the program stands for; None for those that only balance it."""
        return self._ways.get(column)

    def duals(self) -> Duals:
        """The duals of the present solution."""
        duals = self.program.duals
        boards = [0.0] * len(self.grid.price)
        for t, row in self._rows.items():
            boards[t] = self.grid.price[t] + max(0.0, -duals[row])
        return Duals(tuple([max(0.0, dual) for dual in duals[: self._kinds]]), tuple(boards))

    def promises(self, way: Way, duals: Duals) -> bool:
        """Whether the way is worth more than its board by the program's own duals, not only by the leaning ones."""
        worth = -duals.boards[way[0]]
        for kind in way[1]:
            worth += duals.pieces[kind]
        return worth > 0.5 / FINENESS


def price_out(grid: Grid, duals: Duals, steps: Steps) -> tuple[Rule, list[Way]]:
    """The duals as a rule, and per stock entry the way worth most, where worth more than the board."""
    points = tuple([max(1, int(FINENESS * dual)) for dual in duals.pieces])
    scale = derive_point_scale(grid, points)
    most = [0] * len(grid.price)
    ways = []
    for t, limit in enumerate(grid.limit):
        if limit:
            most[t], kinds = fill_best(scale, grid.capacity[t], int(FINENESS * duals.boards[t]), steps)
            if kinds:
                ways.append((t, tuple(sorted(kinds))))
    return Rule(points, tuple(most)), ways


def derive_rough_price(grid: Grid, kinds: int, steps: Steps, allowance: int) -> Rule | None:
    """A price rule for very many kinds: from a program for groups of like sizes, with a line drawn between them."""
    coarse = derive_coarse(grid, kinds)
    rough = Columns(coarse, steps).price(allowance)
    if rough is None:
        return None
    known = sorted(zip(coarse.sizes, rough.points, strict=True))
    pieces = []
    for size in grid.sizes:
        at = min(max(1, bisect_left(known, (size, 0))), len(known) - 1)
        (low, least), (high, most) = known[at - 1], known[at]
        pieces.append((least + (most - least) * (size - low) / (high - low)) / FINENESS)
    rule, _ = price_out(grid, Duals(tuple(pieces), (0.0,) * len(grid.price)), steps)
    return None if steps.out else rule


def _derive_first_ways(grid: Grid, stock: tuple[int, ...]) -> Iterator[Way]:
    """Per stock entry and kind, the fullest board whose longest piece is of that kind: a good start for the program."""
    reach = derive_sums(grid.sizes, grid.demand)
    for t in stock:
        for longest, size in enumerate(grid.sizes):
            if size <= grid.capacity[t]:
                room = grid.capacity[t] - size
                yield t, (longest, *derive_fullest(grid.sizes, grid.demand, reach, longest + 1, room))
