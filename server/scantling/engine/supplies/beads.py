"""Beads of caulk and adhesive: the area of their section, how far a tube goes, and how many tubes.

Loose figures of feet a tube run from 20 to 200: only the bead's own section says.
"""

import math
from fractions import Fraction

from scantling.engine.errors import EngineError
from scantling.engine.tape.lengths import Length

ROUND, FILLET, SQUARE = "round", "fillet", "square"
SHAPES = (ROUND, FILLET, SQUARE)
# π to a millionth, so that every machine counts the same.
PI = Fraction(3_141_593, 1_000_000)
# Of each tube, what stays in it and what is wiped off: 5 to 10 %, common practice, no source.
WASTE = Fraction(10)


class SupplyError(EngineError):
    family = "supply"


def derive_bead_section(shape: str, size: Length) -> Fraction:
    """Square inches of a bead: round by its diameter, a fillet by its leg, square by its side. Raises `SupplyError`.

    >>> derive_bead_section("fillet", Length(Fraction(1, 8)))
    Fraction(1, 128)
    """
    if not size:
        raise SupplyError("no-bead", field="size")
    square = size.inches**2
    return {ROUND: square * PI / 4, FILLET: square / 2, SQUARE: square}[shape]


def derive_bead_length(tube: Fraction, section: Fraction) -> Length:
    """How far a tube of so many cubic inches goes, nothing wasted.

    >>> float(derive_bead_length(Fraction("10.1") * Fraction(231, 128), Fraction(1, 128)).inches / 12)
    194.425
    """
    return Length(tube / section)


def derive_tubes(volume: Fraction, tube: Fraction, waste: Fraction = WASTE) -> int:
    """Tubes for so many cubic inches laid, with a percentage of each tube wasted."""
    return math.ceil(volume / (tube * (1 - waste / 100)))
