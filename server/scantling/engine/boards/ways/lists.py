"""Shopping lists: how many boards of each length, walked from the cheapest up and, at one price, from the fewest up.

The first list on the walk from which the pieces can be cut is the best plan there is: everything cheaper, and
everything as cheap with fewer boards, has failed before it. Rules keep the walk short: a part-made list is put off
until its rank, the money and boards that it must still cost by some rule, is the lowest.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from heapq import heappop, heappush

from scantling.engine.boards.case.case import Rule
from scantling.engine.boards.case.grid import Grid
from scantling.engine.boards.case.rules import climb, derive_total
from scantling.engine.boards.ways.steps import Steps

Boards = tuple[int, ...]
ListRank = tuple[int, int]

_Node = tuple[int, int, int, Boards, tuple[int, ...]]
"""Cents and boards at least, less the depth, the numbers taken so far, and the points still needed by every rule."""


class ListWalk:
    """The walk over all lists that pass the rules. Rules may be added on the way; a rank is (cents, boards)."""

    def __init__(self, grid: Grid, rules: list[Rule], steps: Steps, margin: int | None = None) -> None:
        """With `margin`, only lists that pass every rule with one part in so many to spare: they are easier to pack."""
        self._grid = grid
        self._margin = margin
        self._steps = steps
        self._order = _settle_order(grid, rules)
        self._rules: list[Rule] = []
        self._ladders: list[list[list[tuple[int, int, int]]]] = []
        self._most: list[list[int]] = []
        self._up_to: list[int | None] = []
        self.ceiling: ListRank | None = None
        for rule in rules:
            self.add(rule)
        self._heap: list[_Node] = []
        self._push(0, 0, (), tuple([self._need(rule) for rule in rules]))

    def add(self, rule: Rule) -> None:
        """Make every list from here on pass this rule too."""
        self._rules.append(rule)
        ladders, most = [], []
        grid = self._grid
        helpful = [t for t in self._order if rule.most[t] > 0 and grid.limit[t]]
        helpful.sort(key=lambda t: (Fraction(grid.price[t], rule.most[t]), t))
        for depth in range(len(self._order) + 1):
            decided = self._order[:depth]
            ladder = [(rule.most[t], grid.price[t], grid.limit[t]) for t in helpful if t not in decided]
            ladders.append(ladder)
            most.append(max([points for points, _, _ in ladder], default=0))
        self._ladders.append(ladders)
        self._most.append(most)
        self._up_to.append(rule.up_to)

    @property
    def floor(self) -> ListRank | None:
        """No list still to come ranks lower; None when none is to come."""
        return self._heap[0][:2] if self._heap else None

    @property
    def is_over(self) -> bool:
        """Whether no list below the ceiling is to come."""
        return not self._heap or (self.ceiling is not None and self._heap[0][:2] >= self.ceiling)

    def __iter__(self) -> Iterator[tuple[ListRank, Boards]]:
        """Lists in order of rank, below `ceiling` where one is set; ends early when the steps are out."""
        while self._heap and not self._steps.out:
            cost, count, depth, taken, needs = self._heap[0]
            if self.is_over:
                return
            heappop(self._heap)
            if len(needs) < len(self._rules):
                self._catch_up(taken, needs)
            elif -depth == len(self._order):
                yield (cost, count), self._in_stock_order(taken)
            else:
                self._branch(taken, needs)

    def _catch_up(self, taken: Boards, needs: tuple[int, ...]) -> None:
        """Put a part-made list back at the rank that the newer rules give it."""
        for rule in self._rules[len(needs) :]:
            need = self._need(rule)
            for stock, n in zip(self._order, taken, strict=False):
                need -= rule.most[stock] * n
            needs += (need,)
        spent = sum([self._grid.price[t] * n for t, n in zip(self._order, taken, strict=False)])
        self._push(spent, sum(taken), taken, needs)

    def _branch(self, taken: Boards, needs: tuple[int, ...]) -> None:
        stock = self._order[len(taken)]
        price, most = self._grid.price[stock], [rule.most[stock] for rule in self._rules]
        spent = sum([self._grid.price[t] * n for t, n in zip(self._order, taken, strict=False)])
        before = sum(taken)
        first = self._least_of_last(needs, most) if len(taken) + 1 == len(self._order) else 0
        self._steps.take(2 + len(needs))
        spent += first * price
        before += first
        needs = tuple([need - first * points for need, points in zip(needs, most, strict=True)])
        for count in range(first, self._grid.limit[stock] + 1):
            if self.ceiling is not None and (spent, before) >= self.ceiling:
                break
            self._push(spent, before, (*taken, count), needs)
            spent += price
            before += 1
            needs = tuple([need - points for need, points in zip(needs, most, strict=True)])

    def _least_of_last(self, needs: tuple[int, ...], most: list[int]) -> int:
        """How many boards of the last entry it takes at least: fewer cannot pass, so that they need not be tried."""
        least = 0
        for need, points, up_to in zip(needs, most, self._up_to, strict=True):
            if need > 0 and up_to is None:  # a rule for cheap plans says nothing here: more boards may pass its price
                least = max(least, -(-need // points) if points else 1 << 30)
        return least

    def _push(self, spent: int, count: int, taken: Boards, needs: tuple[int, ...]) -> None:
        """Put a part-made list in its place in the walk, unless no list that begins so can pass or matter."""
        self._steps.take(1 + len(needs) // 3)
        depth = len(taken)
        more_cents = more_boards = 0
        for need, ladders, most, up_to in zip(needs, self._ladders, self._most, self._up_to, strict=True):
            if need > 0:
                cents = climb(ladders[depth], need)
                if up_to is not None and (cents is None or spent + cents > up_to):
                    more_cents = max(more_cents, up_to + 1 - spent)
                    continue
                if cents is None:
                    return
                more_cents = max(more_cents, cents)
                more_boards = max(more_boards, -(-need // most[depth]))
        if self.ceiling is None or (spent + more_cents, count + more_boards) < self.ceiling:
            heappush(self._heap, (spent + more_cents, count + more_boards, -depth, taken, needs))

    def _need(self, rule: Rule) -> int:
        need = derive_total(rule, self._grid)
        return need + need // self._margin if self._margin else need

    def _in_stock_order(self, taken: Boards) -> Boards:
        boards = [0] * len(self._order)
        for stock, count in zip(self._order, taken, strict=True):
            boards[stock] = count
        return tuple(boards)


def _settle_order(grid: Grid, rules: list[Rule]) -> tuple[int, ...]:
    """Stock entries in the order of deciding: on hand first, then the dearest for what it holds, the best buy last."""
    holds = rules[0].most if rules else grid.capacity
    return tuple(
        sorted(range(len(grid.price)), key=lambda t: (grid.price[t] > 0, -grid.price[t] / max(1, holds[t]), t))
    )
