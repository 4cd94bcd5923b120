"""What the same standard would cost in the next rooms, from their rough size and the rooms measured already.

Trim costs by the foot of wall and by the door, what covers the walls by their area. Each measured room gives its own
rates, doors counted as feet; the next room is told from the least and the greatest of them, widened by how far each
measured room lies from what the others would have said of it. Common practice, no source: with one room measured
nothing checks it, and half is added.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.costs.spent import CostError

# Casing of one side of a door: two legs and a head, about 17 ft of trim for the 3 ft of base it takes away.
FEET_A_DOOR = 14
# With nothing to check it against, how much more or less a room may cost.
UNCHECKED = Fraction(1, 2)


@dataclass(frozen=True, slots=True)
class Rough:
    """A room by its rough size: feet round, how many doors and windows are cased, feet high where that is known.

    `cents` where it was planned, and how many of them go by the area of the walls.
    """

    name: str
    perimeter: Fraction
    openings: int
    cents: int | None = None
    height: Fraction | None = None
    by_area: int = 0

    @property
    def feet(self) -> Fraction:
        return self.perimeter + self.openings * FEET_A_DOOR

    @property
    def area(self) -> Fraction:
        """Square feet of wall, openings and all; nothing while the height is not known."""
        return self.perimeter * (self.height or 0)


@dataclass(frozen=True, slots=True)
class Range:
    """What a room may cost, from and to, in cents; `miss` is how far the measured rooms were missed by the others."""

    name: str
    low: int
    high: int
    miss: Fraction


def derive_miss(measured: Sequence[Rough]) -> Fraction:
    """How far, as a part of its cost, a measured room lies outside what the other measured rooms say; the worst."""
    misses = []
    for room in measured:
        others = [other for other in measured if other is not room]
        if others:
            low, high = _tell(others, room)
            cents = room.cents or 0
            misses.append(max(low - cents, cents - high, Fraction(0)) / cents)
    return max(misses, default=UNCHECKED)


def derive_ranges(measured: Sequence[Rough], coming: Sequence[Rough]) -> list[Range]:
    """What each coming room may cost. Raises `CostError` where no measured room has a cost.

    >>> derive_ranges([Rough("a", Fraction(36), 1, 50000)], [Rough("b", Fraction(36), 1)])[0]
    Range(name='b', low=25000, high=75000, miss=Fraction(1, 2))
    """
    known = [room for room in measured if room.cents and room.feet]
    if not known:
        raise CostError("no-rooms", field="measured")
    miss = derive_miss(known)
    less, more = 1 - min(miss, Fraction(1)), 1 + miss
    told = [(room, *_tell(known, room)) for room in coming]
    return [Range(room.name, math.floor(low * less), math.ceil(high * more), miss) for room, low, high in told]


def _tell(known: Sequence[Rough], room: Rough) -> tuple[Fraction, Fraction]:
    """The least and the most that the rates of the known rooms make of a room."""
    by_foot = [Fraction(_along(one)) / one.feet for one in known]
    by_area = [Fraction(one.by_area) / one.area for one in known if one.area] or [Fraction(0)]
    least, most = (pick(by_foot) * room.feet + pick(by_area) * room.area for pick in (min, max))
    return least, most


def _along(room: Rough) -> int:
    """What of its cost goes by the foot: all of it, where there is no height to tell its walls by."""
    return (room.cents or 0) - (room.by_area if room.area else 0)
