"""Doubt: how far a length may be out, of what its readings, its pencil mark and its corners may each be out.

Each may lie anywhere within its half width and is as likely to lie anywhere there: a rectangular distribution, whose
standard uncertainty is the half width / √3 (JCGM 100:2008, the GUM, 4.3.7). Together they are worth the root of the sum
of their squares (5.1.2), and what is told is 1.96 times that, which 19 in 20 stay within (6.2.1, G.1.3). All of them at
their worst at once is kept for the working.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.kept import remembered
from scantling.engine.tape.lengths import THIRTY_SECOND, Length, round_to

COVERAGE = Fraction(196, 100)
MILLION = 10**6


@dataclass(frozen=True, slots=True)
class Doubt:
    """Half widths, in inches, of what is out by itself, one for each reading or mark."""

    parts: tuple[Length, ...]

    @classmethod
    def of(cls, *parts: Length) -> Doubt:
        """What is nothing adds nothing, and is left out."""
        return cls(tuple(part for part in parts if part))

    def __add__(self, other: Doubt) -> Doubt:
        return Doubt(self.parts + other.parts)

    @property
    def worst(self) -> Length:
        worst, _ = _weigh(*(part.inches.as_integer_ratio() for part in self.parts))
        return Length(worst, all(part.exact for part in self.parts))

    @property
    def plus_minus(self) -> Length:
        """The ± that 19 in 20 stay within, to a millionth; never more than the worst.

        >>> thirty_second = Length(Fraction(1, 32))
        >>> float(Doubt.of(*[thirty_second] * 4).plus_minus.inches)
        0.070725
        """
        _, likely = _weigh(*(part.inches.as_integer_ratio() for part in self.parts))
        return min(Length(likely, exact=False), self.worst)

    @property
    def told(self) -> Length:
        """The ± as it is told everywhere: to the nearest 32nd."""
        return round_to(self.plus_minus, THIRTY_SECOND)


@remembered
def _weigh(*parts: tuple[int, int]) -> tuple[Fraction, Fraction]:
    """What some parts come to at the worst, and 19 times in 20. The same few come again at every piece of a room."""
    whole = math.lcm(*(below for _, below in parts))
    halves = [above * (whole // below) for above, below in parts]
    squares = Fraction(sum(half * half for half in halves), whole * whole)
    # The root in whole millionths: every machine must come to the same.
    millionths = math.isqrt(int(COVERAGE**2 * squares / 3 * MILLION**2))
    return Fraction(sum(halves), whole), Fraction(millionths, MILLION)
