"""Cans of paint: how much a product wants, and the cans that hold it for the least money, exactly.

Each product is counted by itself and rounded up to its own cans; paint left of one is no other. Money is whole cents.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.errors import EngineError

# 231 in³ in a US gallon over 144 in² in a square foot, at a thousandth of an inch: 1604.17 sq ft. Arithmetic.
SQUARE_FEET_MILS_PER_GALLON = Fraction(231 * 1000, 144)


class PaintError(EngineError):
    family = "paint"


# More of the largest can than this is a slip of the pen.
CANS_AT_MOST = 500


@dataclass(frozen=True, slots=True)
class Can:
    """A size in cubic inches and its price in cents, more than nothing; `item` is its place in what was asked."""

    item: int
    size: Fraction
    cents: int


@dataclass(frozen=True, slots=True)
class Choice:
    """How many of each can, in the order given, and what they cost and hold."""

    counts: tuple[int, ...]
    cents: int
    holds: Fraction


def derive_paint(area: Fraction, coats: int, spread: Fraction, loss: Fraction = Fraction(0)) -> Fraction:
    """Cubic inches of paint for square inches of surface. `spread`: square inches a coat that a cubic inch covers.

    >>> derive_paint(Fraction(400 * 144), 2, Fraction(400 * 144, 231)) / 231
    Fraction(2, 1)
    """
    return area * coats / spread / (1 - loss / 100)


def derive_spread(solids: Fraction, mils: Fraction) -> Fraction:
    """Square feet a gallon, from the part of it that stays and how thick it is to dry, in thousandths of an inch.

    1604 × solids / thickness, before any loss: UFC 3-190-06, section 2.1.5, which rounds to 1600.

    >>> float(derive_spread(Fraction(65, 100), Fraction(5)))
    208.54166666666666
    """
    return SQUARE_FEET_MILS_PER_GALLON * solids / mils


def choose_cans(cans: Sequence[Can], need: Fraction) -> Choice:
    """The cans that hold so much for the least money; of equals the fewest cans, then the least left over. Exact.

    Cans by what their paint costs, the cheapest first: whatever is still needed cannot cost less than at the rate of
    the cheapest can still to be chosen from, nor take fewer cans than of the largest: a choice that by these is no
    better than the best found is not followed.
    """
    order = sorted(cans, key=lambda can: (can.cents / can.size, -can.size, can.item))
    largest = [max(can.size for can in order[place:]) for place in range(len(order))]
    best: tuple[tuple[int, int, Fraction], tuple[int, ...]] | None = None
    waiting: list[tuple[int, Fraction, tuple[int, ...]]] = [(0, need, ())]
    while waiting:
        cents, left, counts = waiting.pop()
        place = len(counts)
        if left <= 0 or place == len(order):
            rank = (cents, sum(counts), -left)
            if left <= 0 and (best is None or rank < best[0]):
                best = rank, counts
            continue
        can = order[place]
        if best and (cents + left / can.size * can.cents, sum(counts) + left / largest[place], 0) >= best[0]:
            continue
        # The fullest choice is looked at first, for it is nearly always nearly the best.
        for count in range(math.ceil(left / can.size) + 1):
            waiting.append((cents + count * can.cents, left - count * can.size, (*counts, count)))
    return _in_order(cans, order, best[1] if best else ())


def _in_order(cans: Sequence[Can], order: Sequence[Can], counts: Sequence[int]) -> Choice:
    taken = dict.fromkeys((can.item for can in cans), 0) | {
        can.item: count for can, count in zip(order, counts, strict=False)
    }
    cents = sum(taken[can.item] * can.cents for can in cans)
    holds = sum((taken[can.item] * can.size for can in cans), start=Fraction(0))
    return Choice(tuple(taken[can.item] for can in cans), cents, holds)
