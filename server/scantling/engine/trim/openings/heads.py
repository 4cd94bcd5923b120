"""Heads: how high the casing over an opening reaches, and how far what is put on a butted head stands past the legs.

A fillet lies on the legs and lifts the head by its thickness, a cap lies on that; a corner block stands past leg and
head by (block − leg) / 2 on every side. Geometry of how each is made (`dressed`).
"""

from dataclasses import dataclass

from scantling.engine.standard import Standard
from scantling.engine.tape.lengths import ZERO, Length
from scantling.engine.trim.openings.casing import Make


@dataclass(frozen=True, slots=True)
class Level:
    """One board over an opening: from where to where above the legs' tops, and how far past their outer edges."""

    name: str
    bottom: Length
    top: Length
    past: Length


def derive_levels(standard: Standard, make: Make) -> list[Level]:
    """What lies over an opening, from the legs up; its corner blocks last, which are beside it."""
    if make.mitered:
        return [Level("head", ZERO, make.head_width, ZERO)]
    block, past = standard.block_size, derive_past(standard)
    levels, top = [], ZERO
    for name, thick, more in (
        ("fillet", standard.fillet_thickness, standard.fillet_overhang),
        ("head", make.head_width, ZERO),
        ("head cap", standard.head_cap_thickness, standard.head_cap_overhang),
    ):
        if thick:
            # Between blocks a head, and what it is built up of, ends short of the legs' outer edges.
            levels.append(Level(name, top, top + thick, ZERO if block else make.overhang + more))
            top = top + thick
    return [*levels, Level("corner block", -past, block - past, past)] if block else levels


def derive_past(standard: Standard) -> Length:
    """How far a corner block stands past leg and head."""
    return max(ZERO, (standard.block_size or ZERO) - standard.casing_width) / 2


def derive_rise(standard: Standard, make: Make) -> Length:
    """How far above the legs' tops the uppermost of it reaches.

    >>> from dataclasses import replace
    >>> from fractions import Fraction
    >>> standard = replace(Standard(), head="butted", head_cap_thickness=Length(Fraction(3, 4)))
    >>> wide = Length(Fraction(9, 4))
    >>> derive_rise(standard, Make(wide, wide, reveal=ZERO, mitered=False))
    Length(inches=Fraction(3, 1), exact=True)
    """
    return max(level.top for level in derive_levels(standard, make))
