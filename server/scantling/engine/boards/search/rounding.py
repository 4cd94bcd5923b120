"""Rounding: from the price program's boards in fractions to whole boards.

The way that the program uses most is cut, the program is solved again for the pieces that are left, and so on until
few are left: they are planned at once. Other throws of the dice take other ways first.
"""

from __future__ import annotations

from collections.abc import Iterator

from scantling.engine.boards.search.columns import Task
from scantling.engine.boards.ways.packing import Way, derive_fullest, derive_sums
from scantling.engine.boards.ways.steps import Steps

NEARLY = 0.05
"""How close to the most used way another must come to be taken in its place."""


def round_off(task: Task, turn: int, pieces_at_once: int, steps: Steps) -> tuple[tuple[Way, ...], list[int]]:
    """The ways cut until no more than so many pieces are left, or the steps run out; and what is left of every kind."""
    return _Rounding(task, turn, steps).run(pieces_at_once)


class _Rounding:
    """One way to whole boards; pieces and boards are what the ways cut so far leave."""

    def __init__(self, task: Task, turn: int, steps: Steps) -> None:
        self._task, self._steps = task, steps
        self._dice = 7_919 * turn
        self._ways: list[Way] = []
        self._left = list(task.grid.demand)
        self._boards = list(task.grid.limit)

    def run(self, pieces_at_once: int) -> tuple[tuple[Way, ...], list[int]]:
        while sum(self._left) > pieces_at_once and self._solve() and self._cut(self._choose()):
            pass
        return tuple(self._ways), self._left

    def _solve(self) -> bool:
        """Solve the program for what is left; False when the steps run out."""
        program = self._task.program
        program.restate(self._left, [self._boards[t] for t in self._task.stock])
        while not self._steps.out and program.mend():
            pass
        return self._task.solve(self._steps)

    def _choose(self) -> Way | None:
        """The way that the program uses most, or by the dice one that it uses nearly as much."""
        used = sorted(self._used(), reverse=True)
        self._steps.take(len(self._task.program.basis) // 4)
        near = [way for value, way in used if value >= used[0][0] - NEARLY * self._throw(8)]
        return near[self._throw(len(near))] if near else None

    def _used(self) -> Iterator[tuple[float, Way]]:
        program = self._task.program
        for column, value in zip(program.basis, program.values, strict=True):
            way = self._task.way_of(column)
            if way is not None and value > NEARLY and self._boards[way[0]]:
                yield min(1.0, value), way

    def _cut(self, way: Way | None) -> bool:
        """Take one board cut so, its pieces as far as they are wanted and its room filled up with others."""
        if way is None:
            return False
        grid, stock = self._task.grid, way[0]
        room, kinds = grid.capacity[stock], []
        for kind in way[1]:
            if self._left[kind]:
                self._left[kind] -= 1
                room -= grid.sizes[kind]
                kinds.append(kind)
        if len(kinds) < len(way[1]):
            reach = derive_sums(grid.sizes, self._left)
            self._steps.take(len(self._left))
            for kind in derive_fullest(grid.sizes, self._left, reach, 0, room):
                self._left[kind] -= 1
                kinds.append(kind)
        self._boards[stock] -= 1
        self._ways.append((stock, tuple(sorted(kinds))))
        return bool(kinds)

    def _throw(self, sides: int) -> int:
        if not self._dice:
            return 0
        self._dice = (self._dice * 1_103_515_245 + 12_345) % (1 << 31)
        return (self._dice >> 8) % sides
