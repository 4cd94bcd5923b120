"""Filler, abrasives, tape, paste: what goes by the hole, the area or the length. Every rate is a setting.

The rates are common practice, no source, for no two products go equally far: the label comes first.
"""

import math
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.shown.shown_in import is_metric
from scantling.engine.tape.measures import FOOT, SQUARE_FOOT, format_run, format_surface
from scantling.engine.words import say

HOLES, AREA, LENGTH = "holes", "area", "length"
UNITS = {HOLES: "counted-holes", AREA: "in-square-feet", LENGTH: "in-feet"}


@dataclass(frozen=True, slots=True)
class Sundry:
    """Something used up: what it is counted by, how much of that one package does, and what the package is called.

    `metric` is the same package, where it is called by what it holds, to about two places.
    """

    name: str
    by: str
    covers: Fraction
    package: str
    metric: str = ""

    @property
    def called(self) -> str:
        """What its package is called beside lengths as they are shown."""
        return (is_metric() and self.metric) or self.package


# By the hole; by square feet; by feet. A drop cloth is 9 by 12 ft.
SUNDRIES = {
    "filler": Sundry("filler", HOLES, Fraction(400), "half-pint tub", "240-ml tub"),
    "sandpaper": Sundry("sandpaper", AREA, Fraction(20), "sheet"),
    "masking tape": Sundry("masking tape", LENGTH, Fraction(180), "60-yard roll", "55-m roll"),
    "paste": Sundry("paste", AREA, Fraction(300), "gallon", "3.8-L pail"),
    "drop cloth": Sundry("drop cloth", AREA, Fraction(108), "drop cloth"),
}


def format_counted(by: str, amount: Fraction) -> str:
    """So much of what a sundry is counted by: holes, square feet, feet; or square meters and meters.

    >>> format_counted(LENGTH, Fraction(180)), format_counted(HOLES, Fraction(12))
    ('180 ft', '12 holes')
    """
    if by != HOLES and is_metric():
        return format_surface(amount * SQUARE_FOOT) if by == AREA else format_run(amount * FOOT)
    return say(UNITS[by], figure=f"{float(amount):.2f}".removesuffix(".00"))


def name_as_sold(words: str) -> str:
    """Words that name a package, with the name that it has where lengths are shown in inches.

    >>> name_as_sold("2 55-m rolls")
    '2 60-yard rolls'
    """
    for sundry in SUNDRIES.values():
        words = words.replace(sundry.metric or sundry.package, sundry.package)
    return words


def derive_packages(amount: Fraction, covers: Fraction) -> int:
    """
    >>> derive_packages(Fraction(190), Fraction(180))
    2
    """
    return math.ceil(amount / covers)
