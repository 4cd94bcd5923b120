"""Movement: how much a board's width changes with its moisture, and what that does to a miter.

Solid wood only, across the grain: along it the change is too small to count, and fiberboard follows other figures.
The coefficients are the Wood Handbook's; a wood that is not in the table is refused, for none stands for another.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.errors import EngineError, quote
from scantling.engine.tape.lengths import Length
from scantling.engine.words import say

TABLE = say("wood-table")
# C = (S/30) / (1 − 20·S/30), S the shrinkage from green to oven-dry: it gives back the table's own rows.
DERIVED = say("wood-from-shrinkage")
DERIVED_FROM_MEMORY = say("wood-from-memory")

# The table is for these moisture contents; the Wood Handbook's chapter 13 says so in its heading.
DRIEST, WETTEST = Fraction(6), Fraction(14)
# Above about this, water leaves the cells without shrinking them (Wood Handbook, chapter 4; from memory).
GREEN = Fraction(30)


class MovementError(EngineError):
    family = "wood"


@dataclass(frozen=True, slots=True)
class Wood:
    """Change across the grain per point of moisture, as a part of the width: radial and tangential."""

    name: str
    radial: Fraction
    tangential: Fraction
    source: str = TABLE
    also: tuple[str, ...] = ()


def _wood(name: str, radial: str, tangential: str, source: str = TABLE, also: tuple[str, ...] = ()) -> Wood:
    return Wood(name, Fraction(f"0.{radial}"), Fraction(f"0.{tangential}"), source, also)


WOODS = (
    _wood("red alder", "00151", "00256", also=("alder",)),
    _wood("white ash", "00169", "00274"),
    _wood("quaking aspen", "00119", "00234", also=("aspen", "aspen quaking")),
    _wood("American basswood", "00230", "00330", also=("basswood",)),
    _wood("American beech", "00190", "00431", also=("beech",)),
    _wood("paper birch", "00219", "00304"),
    _wood("yellow birch", "00256", "00338"),
    _wood("black cherry", "00126", "00248", also=("cherry",)),
    _wood("American chestnut", "00116", "00234", also=("chestnut",)),
    _wood("red maple", "00137", "00289"),
    _wood("silver maple", "00102", "00252"),
    _wood("sugar maple", "00165", "00353", also=("hard maple",)),
    _wood("red oak", "00158", "00369", also=("red oak commercial",)),
    _wood("white oak", "00180", "00365", also=("white oak commercial",)),
    _wood("sweetgum", "00183", "00365"),
    _wood("American sycamore", "00172", "00296", also=("sycamore",)),
    _wood("black walnut", "00190", "00274", also=("walnut",)),
    _wood("yellow-poplar", "00158", "00289", DERIVED, ("poplar", "tulipwood")),
    _wood("Douglas-fir", "00165", "00267", DERIVED, ("Douglas-fir coast",)),
    _wood("western redcedar", "00081", "00172", DERIVED, ("western red cedar",)),
    _wood("eastern white pine", "00071", "00212", DERIVED_FROM_MEMORY),
    _wood("ponderosa pine", "00133", "00216", DERIVED_FROM_MEMORY),
    _wood("sugar pine", "00099", "00194", DERIVED_FROM_MEMORY),
    _wood("longleaf pine", "00176", "00263", DERIVED_FROM_MEMORY, ("heart pine",)),
)


def _plain(name: str) -> str:
    return " ".join(name.lower().replace("-", " ").replace(",", " ").split())


BY_NAME = {_plain(name): wood for wood in WOODS for name in (wood.name, *wood.also)}


def find_wood(text: str) -> Wood:
    """The wood of a name, hyphens and capitals aside. Raises `MovementError`, naming those there are.

    >>> find_wood("Yellow Poplar").name
    'yellow-poplar'
    """
    wood = BY_NAME.get(_plain(text))
    if wood is None:
        woods = ", ".join(wood.name for wood in WOODS)
        raise MovementError("unknown-wood", field="species", text=quote(text), woods=woods)
    return wood


@dataclass(frozen=True, slots=True)
class Movement:
    """`change` of the width, less than nothing when the board shrinks; `miter_gap` is how far a miter opens."""

    wood: Wood
    coefficient: Fraction
    change: Length
    miter_gap: Length


def derive_movement(wood: Wood, cut: str, width: Length, from_percent: Fraction, to_percent: Fraction) -> Movement:
    """Change = width · C · (to − from): C tangential across a flat-sawn board, radial across a quarter-sawn one.

    The change is exact. A miter between two boards opens by w·√2·s, s the part of the width that is gained or lost:
    the lengths stay, so each 45 becomes atan(1 − s) and the faces swing apart. Raises `MovementError`.

    >>> oak = find_wood("red oak")
    >>> float(derive_movement(oak, "flat", Length(Fraction(11, 2)), Fraction(8), Fraction(5)).change.inches)
    -0.060885
    """
    for field, percent in (("from", from_percent), ("to", to_percent)):
        if percent > GREEN:
            raise MovementError("green", field=field, percent=f"{float(percent):g}")
    coefficient = wood.tangential if cut == "flat" else wood.radial
    change = width * (coefficient * (to_percent - from_percent))
    return Movement(wood, coefficient, change, Length.approximate(abs(float(change.inches)) * math.sqrt(2)))


def check_movement(wood: Wood, from_percent: Fraction, to_percent: Fraction) -> Iterator[str]:
    """What weakens the figure: moisture outside the table's range, a coefficient that is not the table's own."""
    if min(from_percent, to_percent) < DRIEST or max(from_percent, to_percent) > WETTEST:
        yield say("wood-outside")
    if wood.source != TABLE:
        yield say("wood-derived", wood=wood.name, source=wood.source)
