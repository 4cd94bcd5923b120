"""Cover: choose ready-made ways from a menu until every piece is cut exactly once.

The kind with the fewest ways left is served first, the way that wastes least is tried first, and the last few boards
are packed by `packing`, with any ways at all: that finds packings that `packing` alone would be very long about. When
the menu holds every way that the boards can spare the points for, and none works out, there is no packing.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from scantling.engine.boards.case.case import Rule
from scantling.engine.boards.case.grid import Grid
from scantling.engine.boards.case.rules import derive_size_rule, derive_total
from scantling.engine.boards.ways.lists import ListRank, ListWalk
from scantling.engine.boards.ways.menu import Menu
from scantling.engine.boards.ways.packing import Packed, Way, pack
from scantling.engine.boards.ways.steps import Steps

TAIL = 6
"""How many boards are left to `packing`: it settles so few in a fraction of a millisecond."""

TAIL_ALLOWANCE = 1_000
FREE_TAIL = 3
FREE_TAIL_LISTS = 12
REMEMBERED_AT_MOST = 60_000


def cover(
    grid: Grid,
    boards: Sequence[int],
    menu: Menu,
    rules: Sequence[Rule],
    steps: Steps,
    allowance: int,
    width: int,
    turn: int,
) -> Packed:
    """Pack all pieces into the boards by the first `width` ways on the menu, the last few boards in any way.

    `turn` varies the order of trying from one attempt to the next. The answer is certainly no only if the menu reaches
    as far as the boards can spare points, and every choice was tried.
    """
    return _Cover(grid, boards, menu, rules, steps, allowance, width, turn).run()


def cover_freely(
    grid: Grid, menu: Menu, ceiling: ListRank, spare: int, steps: Steps, allowance: int, width: int, turn: int
) -> tuple[Way, ...] | None:
    """Any packing that ranks below the ceiling, from any boards: found soon, or not at all; it proves nothing.

    `spare` is how many of the rule's points the boards together may waste.
    """
    return _FreeCover(grid, menu, ceiling, spare, steps, allowance, width, turn).run().ways


@dataclass(slots=True)
class _Level:
    """One choice made: ways alive, ways still to try, the way placed to get here, and kinds by how few serve them."""

    alive: int
    candidates: int
    placed: int
    scarce: list[int]


class _Cover:
    """One search; `left` and `boards` are what the choices on the stack leave."""

    def __init__(
        self,
        grid: Grid,
        boards: Sequence[int],
        menu: Menu,
        rules: Sequence[Rule],
        steps: Steps,
        allowance: int,
        width: int,
        turn: int,
    ) -> None:
        self.grid, self.menu, self.rules, self.steps = grid, menu, rules, steps
        self.left = list(grid.demand)
        self.boards = list(boards)
        self.spare = sum([m * b for m, b in zip(menu.rule.most, boards, strict=True)]) - derive_total(menu.rule, grid)
        self.stop = steps.used + allowance
        self.tail = min(TAIL, sum(boards) // 2)
        self.dice = 7_919 * turn
        self.alive = menu.within(self.spare) & ((1 << min(width, len(menu.ways))) - 1)
        self.weight = 1 + min(width, len(menu.ways)) // 4_000
        self.certain = menu.reach >= self.spare and self.alive == menu.within(self.spare)
        for t, count in enumerate(self.boards):
            if not count:
                self.alive &= ~menu.stock[t]
        self.failed: set[tuple[tuple[int, ...], tuple[int, ...]]] = set()

    def run(self) -> Packed:
        levels = [self._open(self.alive, -1, [kind for kind, count in enumerate(self.left) if count])]
        while levels:
            if self.steps.out or self.steps.used >= self.stop:
                return Packed(None, certain=False)
            level = levels[-1]
            if not level.candidates:
                levels.pop()
                self._forget(level)
                continue
            way = self._next(level)
            self._place(way, -1)
            tail = self._is_tail()
            if tail and not self._is_known():
                rest = self._finish()
                if rest is not None:
                    chosen = [level.placed for level in levels if level.placed >= 0]
                    return Packed((*[self.menu.ways[w] for w in (*chosen, way)], *rest), certain=True)
                self.failed.add(self._state())
            if tail or self._is_known():
                self._place(way, 1)
            else:
                levels.append(self._open(self._still_alive(level.alive, way), way, level.scarce))
        return Packed(None, certain=self.certain, tried_all=True)

    def _place(self, way: int, sign: int) -> None:
        stock, kinds = self.menu.ways[way]
        self.boards[stock] += sign
        for kind in kinds:
            self.left[kind] += sign
        self.spare += sign * self.menu.wastes[way]

    def _forget(self, level: _Level) -> None:
        """Leave a level that gave nothing: remember that its state fails, and take its way back."""
        if level.placed >= 0:
            if len(self.failed) < REMEMBERED_AT_MOST:
                self.failed.add(self._state())
            self._place(level.placed, 1)

    def _state(self) -> tuple[tuple[int, ...], tuple[int, ...]]:
        return tuple(self.left), tuple(self.boards)

    def _is_known(self) -> bool:
        return self._state() in self.failed

    def _is_tail(self) -> bool:
        """Whether so little is left that any ways at all may be tried."""
        return sum(self.boards) <= self.tail or not any(self.left)

    def _finish(self) -> tuple[Way, ...] | None:
        """Ways for all that is left, if the boards left take it."""
        rest = replace(self.grid, demand=tuple(self.left))
        packed = pack(rest, self.boards, self.rules, self.steps, TAIL_ALLOWANCE)
        self.certain = self.certain and packed.certain
        return packed.ways

    def _still_alive(self, alive: int, way: int) -> int:
        """The ways that still fit what is left, the boards left and the points to spare."""
        stock, kinds = self.menu.ways[way]
        for kind in dict.fromkeys(kinds):
            alive &= ~self.menu.more_than[kind][self.left[kind]]
        if not self.boards[stock]:
            alive &= ~self.menu.stock[stock]
        return alive & self.menu.within(self.spare)

    def _open(self, alive: int, way: int, scarce: list[int]) -> _Level:
        """Serve next the kind that the fewest ways can serve; look first at those that few could serve before."""
        counted = []
        work = 2
        for kind in scarce:
            if self.left[kind]:
                serving = alive & self.menu.more_than[kind][0]
                if not serving:
                    self.steps.take(self.weight * work // 2)
                    return _Level(alive, 0, way, scarce)
                counted.append((serving.bit_count(), kind))
                work += 1
        counted.sort()
        self.steps.take(self.weight * work // 2)
        return _Level(alive, alive & self.menu.more_than[counted[0][1]][0], way, [kind for _, kind in counted])

    def _next(self, level: _Level) -> int:
        """Take the next way to try off the level's candidates: the least wasteful, or by the dice one soon after."""
        candidates = level.candidates
        if self.dice:
            self.dice = (self.dice * 1_103_515_245 + 12_345) % (1 << 31)
            for _ in range((self.dice >> 16) % 4):
                rest = candidates & (candidates - 1)
                if not rest:
                    break
                candidates = rest
        bit = candidates & -candidates
        level.candidates ^= bit
        self.steps.take(2 * self.weight)
        return bit.bit_length() - 1


class _FreeCover(_Cover):
    """A search that may take any boards, as long as it comes out below a ceiling."""

    def __init__(
        self, grid: Grid, menu: Menu, ceiling: ListRank, spare: int, steps: Steps, allowance: int, width: int, turn: int
    ) -> None:
        super().__init__(grid, grid.limit, menu, (), steps, allowance, width, turn)
        self.ceiling = ceiling
        self.spare = spare
        self.alive &= menu.within(spare)
        self.certain = False
        self.tail = FREE_TAIL * max(grid.capacity)

    def _is_tail(self) -> bool:
        return sum([size * count for size, count in zip(self.grid.sizes, self.left, strict=True)]) <= self.tail

    def _finish(self) -> tuple[Way, ...] | None:
        """The cheapest boards that take what is left, if they leave the whole below the ceiling."""
        taken = [limit - left for limit, left in zip(self.grid.limit, self.boards, strict=True)]
        cost = sum([price * count for price, count in zip(self.grid.price, taken, strict=True)])
        rest = replace(self.grid, demand=tuple(self.left), limit=tuple(self.boards))
        if not any(self.left):
            return () if (cost, sum(taken)) < self.ceiling else None
        rule = derive_size_rule(rest)
        walk = ListWalk(rest, [rule], self.steps)
        walk.ceiling = (self.ceiling[0] - cost, self.ceiling[1] - sum(taken))
        for (_, boards), _ in zip(walk, range(FREE_TAIL_LISTS), strict=False):
            packed = pack(rest, boards, (rule,), self.steps, TAIL_ALLOWANCE)
            if packed.ways is not None:
                return packed.ways
        return None
