"""Figures in entries: the length that a piece was cut to, as text that is the same length again when it is read.

A person never writes these; the engine gives them and reads them back, exactly, or to the millionth that it carries.
"""

import re
from fractions import Fraction

from scantling.engine.lengths import Length
from scantling.engine.trim.ends import End

FIGURE_AT_MOST = 60
# Not Fraction(text) alone: it reads "3 / 4" on one Python and refuses it on another, and two Pythons run us.
_FIGURE = re.compile(r"\d{1,30}(?:/[1-9]\d{0,28}|\.\d{1,6})?\Z", re.ASCII)
_END = re.compile(r"([a-z ]{1,30}) (\d{1,3}(?:\.\d{1,6})?)\Z", re.ASCII)


def is_figure(text: str) -> bool:
    return len(text) <= FIGURE_AT_MOST and _FIGURE.match(text) is not None


def format_figure(length: Length) -> str:
    """A length as an entry remembers it.

    >>> format_figure(Length(Fraction(253, 4)))
    '253/4'
    """
    exact = str(length.inches)
    return exact if length.exact and is_figure(exact) else f"{float(length.inches):.6f}"


def parse_figure(text: str) -> Length | None:
    """The length that `format_figure` wrote; None for what it never wrote."""
    if not is_figure(text):
        return None
    return Length(Fraction(text), exact="." not in text)


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
