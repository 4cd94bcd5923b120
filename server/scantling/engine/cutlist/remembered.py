"""How an end is cut, as an entry remembers it, so that a changed corner can be told of a board that is cut."""

import re
from fractions import Fraction

from scantling.engine.trim.ends import End

_END = re.compile(r"([a-z ]{1,30}) (\d{1,3}(?:\.\d{1,6})?)\Z", re.ASCII)


def format_end(end: End) -> str:
    """How an end is cut, as an entry remembers it: the joint and the saw's degrees from square.

    >>> format_end(End("miter", "corner 1", Fraction(91, 2)))
    'miter 45.5'
    """
    degrees = f"{float(end.saw):.6f}".rstrip("0").rstrip(".")
    return f"{end.joint} {degrees}"


def parse_end(text: str) -> tuple[str, Fraction] | None:
    """The joint and the degrees that `format_end` wrote; None for what it never wrote."""
    found = _END.match(text)
    return (found[1], Fraction(found[2])) if found else None
