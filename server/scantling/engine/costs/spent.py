"""Money for a room: what was planned against what was spent, receipt by receipt. Whole cents throughout.

A receipt is for one thing planned, or for something nobody planned; one with no price is told, and the others count.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from scantling.engine.errors import EngineError


class CostError(EngineError):
    family = "cost"


@dataclass(frozen=True, slots=True)
class PlannedCost:
    """`still` is what must be paid yet although some of it was bought."""

    name: str
    cents: int
    still: int = 0


@dataclass(frozen=True, slots=True)
class Receipt:
    """What was paid, for which planned thing by its name; empty where nothing planned it."""

    name: str
    cents: int
    date: str


@dataclass(frozen=True, slots=True)
class CostLine:
    """One thing: planned, spent, what must still be paid of it, and what of the plan waits, none of it bought yet."""

    name: str
    planned: int
    spent: int
    still: int
    waiting: int
    open: bool

    @property
    def over(self) -> int:
        """Below nothing where less was spent than planned; what waits is neither."""
        return self.spent - (self.planned - self.waiting)

    @property
    def expected(self) -> int:
        """What it comes to in the end: what waits by its plan, else what was spent, and what must still be paid."""
        return self.spent + self.still + self.waiting


def derive_lines(planned: Sequence[PlannedCost], receipts: Sequence[Receipt]) -> list[CostLine]:
    """A line for each thing planned, in order, then for each that was bought without a plan.

    >>> derive_lines([PlannedCost("base", 4000)], [Receipt("base", 4250, "2026-03-14")])[0].over
    250
    """
    spent: dict[str, int] = {}
    for receipt in receipts:
        spent[receipt.name] = spent.get(receipt.name, 0) + receipt.cents
    names = dict.fromkeys([*(one.name for one in planned), *spent])
    return [_line(name, [one for one in planned if one.name == name], spent.get(name)) for name in names]


def _line(name: str, planned: Sequence[PlannedCost], spent: int | None) -> CostLine:
    wanted = sum(one.cents for one in planned)
    if spent is None:
        return CostLine(name, wanted, 0, 0, wanted, open=True)
    return CostLine(name, wanted, spent, sum(one.still for one in planned), 0, open=False)


def merge_lines(rooms: Iterable[Sequence[CostLine]]) -> list[CostLine]:
    """The lines of several rooms, thing by thing: bought for one room, it may wait in another."""
    alike: dict[str, list[CostLine]] = {}
    for lines in rooms:
        for line in lines:
            alike.setdefault(line.name, []).append(line)
    return [
        CostLine(
            name,
            sum(line.planned for line in some),
            sum(line.spent for line in some),
            sum(line.still for line in some),
            sum(line.waiting for line in some),
            all(line.open for line in some),
        )
        for name, some in alike.items()
    ]
