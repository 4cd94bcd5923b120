"""Filler, abrasives, tape, paste: what goes by the hole, the area or the length. Every rate is a setting.

The rates are common practice, no source, for no two products go equally far: the label comes first.
"""

import math
from dataclasses import dataclass
from fractions import Fraction

HOLES, AREA, LENGTH = "holes", "area", "length"


@dataclass(frozen=True, slots=True)
class Sundry:
    """Something used up: what it is counted by, how much of that one package does, and what the package is called."""

    name: str
    by: str
    covers: Fraction
    package: str


# By the hole; by square feet; by feet. A drop cloth is 9 by 12 ft.
SUNDRIES = {
    "filler": Sundry("filler", HOLES, Fraction(400), "half-pint tub"),
    "sandpaper": Sundry("sandpaper", AREA, Fraction(20), "sheet"),
    "masking tape": Sundry("masking tape", LENGTH, Fraction(180), "60-yard roll"),
    "paste": Sundry("paste", AREA, Fraction(300), "gallon"),
    "drop cloth": Sundry("drop cloth", AREA, Fraction(108), "drop cloth"),
}


def derive_packages(amount: Fraction, covers: Fraction) -> int:
    """
    >>> derive_packages(Fraction(190), Fraction(180))
    2
    """
    return math.ceil(amount / covers)
