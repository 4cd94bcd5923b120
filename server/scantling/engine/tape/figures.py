"""Figures in entries: the length that a piece was cut to, as text that is the same length again when it is read.

A person never writes these; the engine gives them and reads them back, exactly, or to the millionth that it carries.
"""

import re
from fractions import Fraction

from scantling.engine.tape.lengths import Length

FIGURE_AT_MOST = 60
# Not Fraction(text) alone: it reads "3 / 4" on one Python and refuses it on another, and two Pythons run us.
_FIGURE = re.compile(r"\d{1,30}(?:/[1-9]\d{0,28}|\.\d{1,6})?\Z", re.ASCII)


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
