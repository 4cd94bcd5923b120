"""How far a wall is off a straight line from corner to corner, and where: a hump stands into the room, a hollow back.

"1/4 hollow at 48": a string along the wall, or a straightedge, is 1/4 off it 48 from the left corner; "1/4 hump at 48":
as much packed out at its ends to pass there. "0" is straight. Either side of there a wall is taken to run straight,
which is the most that it can be off along a shorter board.
"""

import re
from dataclasses import dataclass

from scantling.engine.errors import EngineError, quote
from scantling.engine.tape.lengths import THIRTY_SECOND, ZERO, Length, format_length, parse_length
from scantling.engine.words import say

HOLLOW, HUMP = "hollow", "hump"
WRITTEN = re.compile(rf"(?P<by>.+?)\s+(?P<way>{HOLLOW}|{HUMP})(?:\s+at\s+|\s*,\s*)(?P<at>.+)", re.IGNORECASE)
# More than this is another wall, or a reading from somewhere else.
MOST = Length.approximate(6)


class BowError(EngineError):
    family = "bow"


@dataclass(frozen=True, slots=True)
class Bow:
    """How far off, which way, and how far from the wall's left corner."""

    by: Length
    way: str
    at: Length

    def off(self, wall: Length, start: Length, end: Length) -> Length:
        """How far the wall is off a straight board that lies along it from `start` to `end`; nothing beside it.

        >>> inches = lambda figure: parse_length(figure)
        >>> bow = Bow(inches("1/2"), HOLLOW, inches("60"))
        >>> bow.off(inches("120"), ZERO, inches("120")), bow.off(inches("120"), inches("30"), inches("90"))
        (Length(inches=Fraction(1, 2), exact=True), Length(inches=Fraction(1, 4), exact=True))
        """
        if not start < self.at < end <= wall:
            return ZERO
        at_start = self.by.inches * start.inches / self.at.inches
        at_end = self.by.inches * (wall - end).inches / (wall - self.at).inches
        part = (self.at - start).inches / (end - start).inches
        return Length(self.by.inches - at_start - (at_end - at_start) * part)


def parse_bow(text: str) -> Bow | None:
    """A reading of a wall's bow; None for one that is straight. Raises `EngineError`.

    >>> parse_bow("1/4 hump at 48").at
    Length(inches=Fraction(48, 1), exact=True)
    """
    found = WRITTEN.fullmatch(text.strip())
    if found is None:
        if not text.strip() or any(way in text.lower() for way in (HOLLOW, HUMP)) or parse_length(text) != ZERO:
            raise BowError("which-way", text=quote(text))
        return None
    by = parse_length(found["by"])
    if by > MOST:
        raise BowError("bows-too-far", text=quote(text))
    return Bow(by, found["way"].lower(), parse_length(found["at"])) if by else None


def say_bow(bow: Bow | None) -> str:
    """In words.

    >>> say_bow(parse_bow("1/4 hump at 48"))
    'a hump of 1/4" at 48"'
    """
    if bow is None:
        return say("wall-straight")
    return say(f"wall-bows-{bow.way}", by=format_length(bow.by, THIRTY_SECOND), at=format_length(bow.at))
