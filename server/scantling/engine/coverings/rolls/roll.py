"""A roll of wallpaper as its label tells it: width, length, repeat and match, and how far it may be off.

The words are those of EN 235 (vocabulary and symbols of wallcoverings, from memory): free match, straight match,
offset match. An offset of half a repeat is the trade's half-drop; of a repeat divided by n, a drop match over n strips.
"""

from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.errors import EngineError
from scantling.engine.tape.lengths import ZERO, Length, format_length
from scantling.engine.words import say

FREE, STRAIGHT, HALF_DROP, DROP = "free", "straight", "half-drop", "drop"
MATCHES = (FREE, STRAIGHT, HALF_DROP, DROP)
PASTE, PASTE_THE_WALL, PEEL = "paste", "paste the wall", "peel and stick"
HANGINGS = (PASTE, PASTE_THE_WALL, PEEL)
# EN 233 (finished wallpapers), clause 5: a roll's width and length are within 1.5 % of what is printed on it.
TOLERANCE = Fraction(3, 2)
# Labels and symbols by which a match is known: EN 235, from memory.
SYMBOLS = {match: say(f"roll-symbol-{match}") for match in MATCHES}
DROPS_AT_MOST = 12
# Two inches at the ceiling and two at the base. Common practice; a press article says 4 to 6 in in all.
TRIM = Length(Fraction(4))


class RollError(EngineError):
    family = "roll"


@dataclass(frozen=True, slots=True)
class Roll:
    """`drop`: over how many strips the pattern comes level again; 1 for a straight match. `repeat` is 0 for a free one.

    `tolerance` is a percentage; `overlap` is how far a strip lies over the one before it.
    """

    width: Length
    length: Length
    repeat: Length = ZERO
    drop: int = 1
    tolerance: Fraction = TOLERANCE
    overlap: Length = ZERO

    @property
    def covers(self) -> Length:
        """How far along the wall each further strip reaches."""
        return self.width - self.overlap

    @property
    def least_width(self) -> Length:
        return self.width * (1 - self.tolerance / 100)

    @property
    def least_length(self) -> Length:
        return self.length * (1 - self.tolerance / 100)

    @property
    def step(self) -> Length:
        """How far lower the pattern stands on the next strip to the right."""
        return self.repeat / self.drop

    def least(self) -> "Roll":
        """The same roll as narrow and as short as its tolerance allows."""
        return Roll(self.least_width, self.least_length, self.repeat, self.drop, Fraction(0), self.overlap)


def make_roll(
    width: Length,
    length: Length,
    match: str,
    repeat: Length = ZERO,
    drop: int = 2,
    tolerance: Fraction = TOLERANCE,
    overlap: Length = ZERO,
) -> Roll:
    """A roll by its label. Raises `RollError`.

    >>> make_roll(Length(Fraction(41, 2)), Length(Fraction(396)), "half-drop", Length(Fraction(21))).step.inches
    Fraction(21, 2)
    """
    if match != FREE and not repeat:
        raise RollError("no-repeat", field="roll.repeat", match=match)
    if match == DROP and not 2 <= drop <= DROPS_AT_MOST:
        raise RollError("no-drop", field="roll.drop", most=DROPS_AT_MOST, drop=drop)
    drops = {FREE: 1, STRAIGHT: 1, HALF_DROP: 2, DROP: drop}[match]
    roll = Roll(width, length, ZERO if match == FREE else repeat, drops, tolerance, overlap)
    if roll.least_width <= overlap:
        raise RollError("all-overlap", field="roll.width", width=format_length(width))
    return roll
