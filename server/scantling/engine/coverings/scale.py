"""A scale in which lengths are whole numbers, for searches that try many of them. Nothing is rounded."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.tape.lengths import Length


@dataclass(frozen=True, slots=True)
class Scale:
    """Lengths as whole numbers: the finest part that all of them are made of."""

    per_inch: int

    def whole(self, length: Length) -> int:
        return int(length.inches * self.per_inch)

    def length(self, units: int) -> Length:
        return Length(Fraction(units, self.per_inch))


def derive_scale(lengths: Iterable[Length]) -> Scale:
    """
    >>> derive_scale([Length(Fraction(1, 16)), Length(Fraction(1, 3))]).per_inch
    48
    """
    return Scale(math.lcm(1, *(length.inches.denominator for length in lengths)))
