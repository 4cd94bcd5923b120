"""Crown: saw settings and edges of a molding that leans between wall and ceiling.

Spring is the angle at the wall, between it and the back of the molding; some catalogs name the angle at the ceiling
first, so that "52/38" has a spring of 38. Miter and bevel are for the molding lying flat on the saw; nested, held on
the saw as it will lean in the room, it wants the plain miter of the corner and no bevel.
"""

import math
from dataclasses import dataclass, replace
from fractions import Fraction

from scantling.engine.errors import EngineError
from scantling.engine.tape.angles import (
    SQUARE,
    STRAIGHT,
    Corner,
    cotangent_of_half,
    derive_corner_by_gauge,
    rounded,
    scaled,
)
from scantling.engine.tape.lengths import Length
from scantling.engine.trim.ends import LEANING, End


class CrownError(EngineError):
    family = "crown"


@dataclass(frozen=True, slots=True)
class CrownCut:
    """Settings from square, in degrees: miter and bevel lying flat, `nested` standing at its spring."""

    miter: Fraction
    bevel: Fraction
    nested: Fraction


def read_turning(degrees: Fraction, turn: str | None = None) -> Corner:
    """The corner for crown: room-side angle W, above 180 at an outside corner; or, with a turn, what a gauge reads.

    An outside corner may be given either way, since a gauge closed round it reads less than 180. Straight on, 180, is
    a joint in a run and no corner, but the settings hold for it. Raises `CrownError` or `AngleError`.

    >>> read_turning(Fraction(270)) == read_turning(Fraction(90), "outside")
    True
    """
    if not 0 < degrees < 2 * STRAIGHT:
        raise CrownError("no-room-side", degrees=f"{float(degrees):g}", field="corner")
    if degrees > STRAIGHT and turn == "inside":
        other = f"{float(2 * STRAIGHT - degrees):g}"
        raise CrownError("wrong-turn", degrees=f"{float(degrees):g}", other=other, field="turn")
    if degrees == STRAIGHT:
        return Corner(turn or "inside", STRAIGHT, Fraction(0))
    if degrees > STRAIGHT:
        return derive_corner_by_gauge("outside", 2 * STRAIGHT - degrees)
    return derive_corner_by_gauge(turn or "inside", degrees)


def check_spring(spring: Fraction) -> None:
    """Raises `CrownError` for a lean that is none."""
    if not 0 <= spring <= SQUARE:
        raise CrownError("no-spring", degrees=f"{float(spring):g}", field="spring")


def derive_crown_cut(spring: Fraction, corner: Corner) -> CrownCut:
    """Flat: miter = atan(sin S / tan(A/2)), bevel = asin(cos S · cos(A/2)), with A what the gauge reads. Geometry.

    An outside corner takes the same settings, the blade swung or the piece turned the other way. Raises `CrownError`.

    >>> cut = derive_crown_cut(Fraction(38), read_turning(Fraction(90)))
    >>> f"{float(cut.miter):.2f} {float(cut.bevel):.2f} {cut.nested}"
    '31.62 33.86 45'
    """
    check_spring(spring)
    return derive_flat_cut(spring, corner.saw)


def derive_flat_cut(spring: Fraction, nested: Fraction) -> CrownCut:
    """The same by what the saw is set to with the molding nested, from square: any upright cut, in a corner or not."""
    lean, turn = math.radians(spring), math.radians(nested)
    miter = math.atan2(math.sin(lean) * math.sin(turn), math.cos(turn))
    bevel = math.asin(math.cos(lean) * math.sin(turn))
    return CrownCut(rounded(math.degrees(miter)), rounded(math.degrees(bevel)), nested)


def derive_projection(width: Length, spring: Fraction) -> Length:
    """How far the molding stands out along the ceiling: b·sin S."""
    return Length.approximate(float(width.inches) * math.sin(math.radians(spring)))


def derive_drop(width: Length, spring: Fraction) -> Length:
    """How far the molding comes down the wall: b·cos S. A strip of wallpaper is shorter by it."""
    return Length.approximate(float(width.inches) * math.cos(math.radians(spring)))


def derive_ceiling_minus_wall(width: Length, spring: Fraction, corner: Corner) -> Length:
    """How much longer the ceiling edge is than the wall edge, per mitered end: shorter at an inside corner.

    −projection·cot(W/2), as base mitered in a corner would be that is as thick as the crown projects. The wall edge is
    the one to measure and mark (a compound miter saw's manual, on crown).
    """
    return -scaled(derive_projection(width, spring), cotangent_of_half(corner.degrees))


def lean_end(end: End, spring: Fraction) -> End:
    """An end of a board as thick as the molding projects, to the end of the molding: its settings flat and nested."""
    cut = derive_flat_cut(spring, end.saw)
    return replace(end, saw=cut.miter, bevel=cut.bevel, nested=cut.nested, edges=LEANING)
