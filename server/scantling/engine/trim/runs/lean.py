"""Corners out of plumb: a wall that leans makes the boards that end at it longer at one edge than at the other.

A wall going out of the room by so much an inch up takes the corner along the wall beside it: (other + own·cos W)/sin W,
as a board's thickness does in a miter. The blade leans by that angle; the length is where it was measured, near the
floor. Geometry.
"""

import math
from dataclasses import replace
from fractions import Fraction

from scantling.engine.tape.angles import SQUARE, STRAIGHT, Corner, rounded, scaled
from scantling.engine.tape.lengths import SIXTY_FOURTH, Length
from scantling.engine.trim.ends import End


def derive_corner_lean(corner: Corner, own: Fraction, other: Fraction) -> Fraction | float:
    """How much farther along its wall a corner is for each inch up, by how far its two walls lean out of the room.

    >>> from scantling.engine.tape.angles import derive_corner_by_gauge
    >>> derive_corner_lean(derive_corner_by_gauge("outside", Fraction(90)), Fraction(0), Fraction(1, 96))
    Fraction(-1, 96)
    """
    exact = {SQUARE: other, 3 * SQUARE: -other, STRAIGHT: Fraction(0)}
    if corner.degrees in exact:
        return exact[corner.degrees]
    turn = math.radians(corner.degrees)
    return (float(other) + float(own) * math.cos(turn)) / math.sin(turn)


def lean_blade(end: End, reach: Fraction | float, height: Length) -> End:
    """The end cut to the corner's lean, where over the board's height that is a 64th or more."""
    if not reach:
        return end
    taper = scaled(height, reach)
    if abs(taper) < SIXTY_FOURTH:
        return end
    return replace(end, taper=taper, bevel=rounded(math.degrees(math.atan(abs(float(reach))))))
