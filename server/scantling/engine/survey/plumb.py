"""How far a wall leans: the gap that a level of 24 in, held upright on it, leaves at the end that stands off.

"1/4 top": it touches at the foot, so the wall leans away from the room; "1/4 foot": it touches at the top, and the wall
leans in. "0" is plumb; "1/4 in 48 top" is read off a level of 48 in. So is said at which end of a wall the floor is
lower.
"""

import re
from fractions import Fraction

from scantling.engine.errors import EngineError, quote
from scantling.engine.shown.shown_in import is_metric
from scantling.engine.tape.lengths import THIRTY_SECOND, ZERO, Length, format_length, parse_length
from scantling.engine.words import say

LEVEL = Fraction(24)
# "1/4 in" is a gap; "1/4 in 48" is one and how long the level is that shows it.
OVER = re.compile(r"(?P<gap>.*\S) +(?:in|over) +(?P<level>[1-9].*)", re.IGNORECASE | re.ASCII)
AWAY = {"top": 1, "foot": -1, "bottom": -1}


class PlumbError(EngineError):
    family = "plumb"


def parse_plumb(text: str) -> Fraction:
    """How far out of the room a wall leans for each inch up: below zero where it leans in. Raises `EngineError`.

    >>> parse_plumb("1/4 foot"), parse_plumb("1/4 in 48 foot")
    (Fraction(-1, 96), Fraction(-1, 192))
    """
    said, _, end = text.strip().rpartition(" ")
    if end.lower() not in AWAY:
        if OVER.fullmatch(text.strip()) or parse_length(text) != ZERO:
            raise PlumbError("which-end", text=quote(text))
        return Fraction(0)
    over = OVER.fullmatch(said)
    gap, level = parse_length(over["gap"] if over else said), parse_length(over["level"]) if over else Length(LEVEL)
    if gap.inches * 6 > level.inches:
        raise PlumbError("leans-too-far", text=quote(text))
    return AWAY[end.lower()] * gap.inches / level.inches


def say_plumb(leans: Fraction) -> str:
    """In words, by what the level shows.

    >>> say_plumb(parse_plumb("1/4 foot"))
    'leans in, 1/4" in 24'
    """
    if not leans:
        return say("wall-plumb")
    gap = format_length(Length(abs(leans) * LEVEL), THIRTY_SECOND)
    return say("wall-leans-away" if leans > 0 else "wall-leans-in", gap=gap, level="610" if is_metric() else "24")


def parse_fall(text: str) -> Length:
    """How much lower the floor is at the right end of a wall than at its left: below nothing where it rises.

    "1/2 right": it is lower at the right; "1/2 left"; "0" is level. Raises `EngineError`.

    >>> parse_fall("1/2 left")
    Length(inches=Fraction(-1, 2), exact=True)
    """
    by, _, end = text.strip().rpartition(" ")
    if end.lower() not in ("left", "right"):
        if parse_length(text) != ZERO:
            raise PlumbError("which-way", text=quote(text))
        return ZERO
    return parse_length(by) if end.lower() == "right" else -parse_length(by)


def say_fall(fall: Length) -> str:
    """In words, by which end is lower.

    >>> say_fall(parse_fall("1/2 left"))
    '1/2" lower at the left'
    """
    if not fall:
        return say("floor-level")
    return say("floor-lower-right" if fall > ZERO else "floor-lower-left", by=format_length(abs(fall)))
