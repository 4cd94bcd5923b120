"""Cuts: what the two ends of a piece ask of the saw, and what a slanted cut takes of a board.

A board is cut from its fresh end on, face toward the person and always the same edge to the fence: it has a profile
and cannot be turned end for end. So the blade leans one way for a right end that is long at the face and the other
way for a left end that is; a right end long at the face and a left end long at the back lean alike.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.tape.lengths import SIXTY_FOURTH, ZERO, Length, round_to

STEEPEST = Fraction(80)
"""Past this no saw cuts, and the slanted kerf would have no end."""

Setting = tuple[bool, Fraction, Fraction]
"""How the saw stands: whether the board lies flat; degrees from square, and of bevel, to which side."""


@dataclass(frozen=True, slots=True)
class Cut:
    """One end: degrees from square, how much longer the face is than the back there, and whether it is cut flat.

    `bevel` is how far the blade leans besides, for a molding that leans in the room and lies flat at the saw.
    """

    saw: Fraction = Fraction(0)
    grows: Length = ZERO
    flat: bool = False
    bevel: Fraction = Fraction(0)


@dataclass(frozen=True, slots=True)
class Ends:
    """The left and the right end of a piece, as it lies at the saw."""

    left: Cut = Cut()
    right: Cut = Cut()

    @property
    def settings(self) -> tuple[Setting, Setting]:
        """How the saw stands for the left end and for the right."""
        return _setting(self.left, self.left.grows < ZERO), _setting(self.right, self.right.grows > ZERO)


def _setting(cut: Cut, leans_right: bool) -> Setting:
    if not cut.saw:
        return False, Fraction(0), Fraction(0)
    side = 1 if leans_right else -1
    return cut.flat, side * cut.saw, side * cut.bevel


def derive_beyond(kerf: Length, ends: Ends) -> Length:
    """What the cut that parts a piece from the board takes beyond the kerf, for it runs slanted: kerf / cos a - kerf.

    With a bevel b besides, kerf / (cos a cos b): the blade's plane meets the board's length at that slant.

    That cut is the right end's: a left end is cut on what is left of the board, into what is waste already. Up to the
    next 64th, so that a plan never counts on less. Geometry.

    >>> derive_beyond(Length(Fraction(1, 8)), Ends(right=Cut(Fraction(45), Length(Fraction(9, 16)))))
    Length(inches=Fraction(1, 16), exact=True)
    """
    saw = min(ends.right.saw, STEEPEST)
    if not saw or not kerf:
        return ZERO
    slant = math.cos(math.radians(float(saw))) * math.cos(math.radians(float(min(ends.right.bevel, STEEPEST))))
    slanted = float(kerf.inches) / slant
    beyond = round_to(Length.approximate(slanted - float(kerf.inches)), SIXTY_FOURTH, toward="up")
    return Length(beyond.inches)  # a 64th that was settled on is exact, whatever it was rounded from


def saved_between(before: Ends, after: Ends) -> Length | None:
    """What one cut for two ends saves of the board, where the right end of one and the left of the next lean alike.

    The slanted ends lie in each other, so that their long points pass each other by what both gain. None where two
    cuts are needed, and where both ends are square, whose cut is one anyway.
    """
    right, left = before.settings[1], after.settings[0]
    if right != left or not right[1]:
        return None
    return min(abs(before.right.grows), abs(after.left.grows))
