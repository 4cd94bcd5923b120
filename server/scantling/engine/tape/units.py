"""Units: which words name a unit of length, and how many inches each is.

The tape's own units are plain numbers here, so that reading feet and inches never waits for a library. Everything
else goes through pint, made on first use (it takes a phone a noticeable while) and told to count in fractions, so
that 1600 mm is 8000/127 in and not nearly that. Pint never sees what a person typed: only a name out of the tables
below, because its own reader would take "63 1/4 m" for a product and "5'" for something else again.
"""

from collections.abc import Mapping
from fractions import Fraction
from functools import cache
from types import MappingProxyType
from typing import Any

from scantling.engine.errors import EngineError

INCH, FOOT, YARD = "inch", "foot", "yard"
CUSTOMARY: Mapping[str, int] = MappingProxyType({INCH: 1, FOOT: 12, YARD: 36})

LENGTH_UNITS: Mapping[str, str] = MappingProxyType(
    dict.fromkeys(('"', "in", "ins", "inch", "inches"), INCH)
    | dict.fromkeys(("'", "ft", "foot", "feet"), FOOT)
    | dict.fromkeys(("yd", "yds", "yard", "yards"), YARD)
    | dict.fromkeys(("mm", "millimeter", "millimeters", "millimetre", "millimetres"), "millimeter")
    | dict.fromkeys(("cm", "centimeter", "centimeters", "centimetre", "centimetres"), "centimeter")
    | dict.fromkeys(("m", "meter", "meters", "metre", "metres"), "meter")
)

OTHER_UNITS: Mapping[str, str] = MappingProxyType(
    dict.fromkeys(("sq", "square", "sqft", "sqin", "acre", "acres"), "area")
    | dict.fromkeys(
        ("cubic", "gal", "gallon", "gallons", "l", "liter", "liters", "litre", "litres", "quart"), "volume"
    )
    | dict.fromkeys(("kg", "g", "gram", "grams", "lb", "lbs", "pound", "pounds", "oz", "ounce", "ounces"), "weight")
    | dict.fromkeys(("deg", "degree", "degrees"), "angle")
    | dict.fromkeys(("second", "seconds", "sec", "minute", "minutes", "hour", "hours"), "time")
)

SHORT_NAMES: Mapping[str, str] = MappingProxyType({"millimeter": "mm", "centimeter": "cm", "meter": "m"})


class UnitError(EngineError):
    """A unit that cannot be used where it stands."""

    family = "unit"


@cache
def _registry() -> Any:  # pint's registry type is generic over its own internals and tells a reader nothing
    from pint import UnitRegistry  # here and not above: the import alone costs a slow phone more than a second

    return UnitRegistry(non_int_type=Fraction, cache_folder=None)


def inches_per(unit: str) -> Fraction:
    """The inches in one of a named unit ("foot", "millimeter"), exactly.

    >>> inches_per("foot")
    Fraction(12, 1)
    >>> inches_per("millimeter")
    Fraction(5, 127)
    """
    if unit in CUSTOMARY:
        return Fraction(CUSTOMARY[unit])
    return convert(Fraction(1), unit, INCH)


@cache
def _factor(unit: str, into: str) -> Fraction:
    from pint.errors import DimensionalityError, UndefinedUnitError

    registry = _registry()
    try:
        return Fraction(registry.Quantity(Fraction(1), unit).to(into).magnitude)
    except DimensionalityError as error:
        raise UnitError("wrong-measure", unit=unit, into=into) from error
    except (UndefinedUnitError, AttributeError) as error:
        raise UnitError("unknown-unit", unit=unit) from error


def convert(amount: Fraction, unit: str, into: str) -> Fraction:
    """An amount in another unit of the same kind, exactly; both are names that the engine itself writes, never typed.

    >>> convert(Fraction(1), "gallon", "inch ** 3")
    Fraction(231, 1)
    """
    return amount * _factor(unit, into)


def format_metric(inches: Fraction, unit: str, places: int) -> str:
    """Inches as decimal text in mm, cm or m; a tie goes to the even digit, as for the tape.

    >>> format_metric(Fraction(253, 4), "millimeter", 1)
    '1606.6 mm'
    """
    if unit not in SHORT_NAMES:
        raise UnitError("not-metric", unit=unit)
    amount = abs(convert(inches, INCH, unit)) * 10**places
    below, over = divmod(amount, 1)
    steps = int(below) + (over > Fraction(1, 2) or (over == Fraction(1, 2) and below % 2 == 1))
    sign = "-" if inches < 0 and steps else ""
    whole, decimals = divmod(steps, 10**places)
    return f"{sign}{whole}{f'.{decimals:0{places}}' if places else ''} {SHORT_NAMES[unit]}"
