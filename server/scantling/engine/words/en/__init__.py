"""English: the catalogs of all floors as one table, the forms that numbers have, and what is put in metric, and how."""

from collections.abc import Mapping
from fractions import Fraction

from scantling.engine.words.en import (
    boards,
    cautions,
    coverings,
    cutlist,
    drawings,
    house,
    questions,
    survey,
    tape,
    trim,
    walk,
    work,
)
from scantling.engine.words.en.metric import EXAMPLES as EXAMPLES
from scantling.engine.words.en.metric import PACKAGES

FLOORS = (tape, house, cautions, survey, walk, coverings, work, boards, trim, cutlist, drawings, *questions.TABLES)
TEXTS = {key: text for floor in FLOORS for key, text in floor.TEXTS.items()}
#: Texts whose figures are rules and no examples, each with the table that says what they are in metric.
IN_METRIC: Mapping[str, Mapping[str, str]] = {**dict.fromkeys(cautions.TEXTS, cautions.FIGURES), **PACKAGES}


def plural(count: int | Fraction) -> str:
    """Which form of a text goes with a number."""
    return "one" if count == 1 else "other"


def ordinal(place: int) -> str:
    """Which one of many it is, in figures.

    >>> ordinal(11), ordinal(21), ordinal(32), ordinal(43)
    ('11th', '21st', '32nd', '43rd')
    """
    ending = "th" if place % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(place % 10, "th")
    return f"{place}{ending}"
