"""Quantities: what a figure in a sum stands for, and what two of them make.

It knows four sorts. A *figure* was given without a unit, and what it meets decides whether it is inches or a plain
number; the other three are settled. Pairs that are not in the tables have no meaning on a tape, and are refused.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType
from typing import Literal

from scantling.engine.shown.shown_in import MILLIMETERS_PER_INCH
from scantling.engine.tape.lengths import format_exact, format_unrounded
from scantling.engine.tape.measures import format_area, format_surface
from scantling.engine.words import say

Sort = Literal["figure", "number", "length", "area"]
Sign = Literal["+", "-", "×", "÷", "of"]


class UnlikeQuantities(Exception):
    """Two quantities that cannot be put together; its one argument is the key of the sentence.

    It never reaches a person: the sum that catches it knows the place, and refuses there.
    """


@dataclass(frozen=True, slots=True)
class Quantity:
    """An exact amount of one sort: inches for a length, square inches for an area."""

    sort: Sort
    amount: Fraction

    def show(self) -> str:
        """The amount unrounded, as it stands in the working.

        >>> Quantity("area", Fraction(720)).show()
        '720 sq in (5 sq ft)'
        """
        if self.sort == "area":
            return f"{format_area(self.amount)} ({format_surface(self.amount)})"
        return format_unrounded(self.amount) if self.sort == "length" else format_exact(self.amount)


Pairs = Mapping[tuple[Sort, Sort], Sort]
ADDED: Pairs = MappingProxyType(
    {
        ("figure", "figure"): "figure",
        ("figure", "length"): "length",
        ("length", "figure"): "length",
        ("length", "length"): "length",
        ("figure", "number"): "number",
        ("number", "figure"): "number",
        ("number", "number"): "number",
        ("area", "area"): "area",
    }
)
COUNTED: Pairs = MappingProxyType(
    {
        ("figure", "figure"): "figure",
        ("figure", "number"): "number",
        ("figure", "length"): "length",
        ("figure", "area"): "area",
        ("number", "figure"): "number",
        ("number", "number"): "number",
        ("number", "length"): "length",
        ("number", "area"): "area",
    }
)
MULTIPLIED: Pairs = MappingProxyType(
    dict(COUNTED)
    | {
        ("length", "figure"): "length",
        ("length", "number"): "length",
        ("length", "length"): "area",
        ("area", "figure"): "area",
        ("area", "number"): "area",
    }
)
DIVIDED: Pairs = MappingProxyType(
    {
        ("figure", "figure"): "figure",
        ("figure", "number"): "number",
        ("figure", "length"): "number",
        ("number", "figure"): "number",
        ("number", "number"): "number",
        ("length", "figure"): "length",
        ("length", "number"): "length",
        ("length", "length"): "number",
        ("area", "figure"): "area",
        ("area", "number"): "area",
        ("area", "length"): "length",
        ("area", "area"): "number",
    }
)
TABLES: Mapping[str, Pairs] = MappingProxyType({"+": ADDED, "-": ADDED, "×": MULTIPLIED, "÷": DIVIDED, "of": COUNTED})


INCHES, MILLIMETERS = "inches", "millimeters"
#: What a figure without a unit may be in, and how many inches one is.
BARE = MappingProxyType({INCHES: Fraction(1), MILLIMETERS: 1 / MILLIMETERS_PER_INCH})


def combine(left: Quantity, sign: str, right: Quantity, bare: str = INCHES) -> tuple[Quantity, list[str]]:
    """Two quantities put together, and a sentence for each figure that thereby became a length or a plain number.

    >>> combine(Quantity("figure", Fraction(120)), "-", Quantity("length", Fraction(30)))
    (Quantity(sort='length', amount=Fraction(90, 1)), ['120 has no unit: taken as inches.'])
    """
    sort = TABLES[sign].get((left.sort, right.sort))
    if sort is None:
        raise UnlikeQuantities("unlike" if sign in "+-" else "no-such-unit")
    if sign == "÷" and not right.amount:
        raise UnlikeQuantities("nothing-under")
    as_length = (sign in "+-" and "length" in (left.sort, right.sort)) or (sign == "÷" and right.sort == "length")
    one, other = (_scaled(side, BARE[bare] if as_length else Fraction(1)) for side in (left, right))
    return Quantity(sort, _amount(one, sign, other)), _settled(left, right, bare if as_length else "number")


def _scaled(side: Quantity, bare: Fraction) -> Fraction:
    return side.amount * bare if side.sort == "figure" else side.amount


def _amount(left: Fraction, sign: str, right: Fraction) -> Fraction:
    if sign == "+":
        return left + right
    if sign == "-":
        return left - right
    return left / right if sign == "÷" else left * right


def _settled(left: Quantity, right: Quantity, as_what: str) -> list[str]:
    if left.sort == right.sort:
        return []
    taken = say(f"taken-as-{as_what}")
    return [say("sum-bare", figure=side.show(), taken=taken) for side in (left, right) if side.sort == "figure"]
