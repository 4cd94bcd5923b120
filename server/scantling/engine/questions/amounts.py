"""Amounts as a question brings them: counts with decimals, percentages, prices, areas, volumes. All exact."""

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from marshmallow import ValidationError, fields

from scantling.engine.errors import EngineError, quote
from scantling.engine.shapes import refused
from scantling.engine.standard import parse_price
from scantling.engine.tape.marks import decimal_value
from scantling.engine.tape.measures import format_content
from scantling.engine.tape.units import convert
from scantling.engine.words import say

LONGEST_AMOUNT = 12
SQUARE_INCHES = {
    **dict.fromkeys(("", "sq ft", "ft2", "ft²", "square feet"), Fraction(144)),
    **dict.fromkeys(("sq in", "in2", "in²", "square inches"), Fraction(1)),
}
SQUARE_METERS = ("sq m", "m2", "m²", "square meters", "square metres")
# US gallon 231 in³, and its parts (NIST Handbook 44, appendix C, from memory).
CUBIC_INCHES = {
    "gal": Fraction(231), "gallon": Fraction(231), "qt": Fraction(231, 4), "quart": Fraction(231, 4),
    "pt": Fraction(231, 8), "pint": Fraction(231, 8), "fl oz": Fraction(231, 128), "oz": Fraction(231, 128),
}  # fmt: skip
LITERS = {"l": Fraction(1), "liter": Fraction(1), "litre": Fraction(1), "ml": Fraction(1, 1000)}


def parse_amount(text: str) -> Fraction | None:
    """A plain decimal or a fraction, 3 1/2 written as 3.5; None where it is neither.

    >>> parse_amount("7.25"), parse_amount("-1")
    (Fraction(29, 4), None)
    """
    digits = text.replace(".", "", 1)
    if not (digits.isascii() and digits.isdigit() and len(text) <= LONGEST_AMOUNT):
        return None
    return decimal_value(text)


def split_unit(value: object) -> tuple[str, str]:
    """A figure and the unit behind it, both as typed.

    >>> split_unit("10.1 fl oz")
    ('10.1', 'fl oz')
    """
    text = "" if isinstance(value, bool) else str(value).strip().lower()
    figure = text[: len(text) - len(text.lstrip("0123456789."))]
    return figure, text[len(figure) :].strip()


class Amount(fields.Field[Fraction]):
    """A number as text or number, exactly: "350", 12.5. Never less than nothing."""

    def __init__(self, what: str = "number", *, most: int | None = None, zero: bool = True, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self.what, self.most, self.zero = what, most, zero
        self.wants = say("amount-wanted", what=self._called)

    @property
    def _called(self) -> str:
        return say(f"figure-of-{self.what}")

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Fraction:
        text = "" if isinstance(value, bool) else str(value).strip().removesuffix("%").strip()
        amount = parse_amount(text)
        if amount is None:
            raise ValidationError(say("amount-unread", given=quote(str(value)), what=self._called))
        if not amount and not self.zero:
            raise ValidationError(say("amount-of-nothing", what=self._called))
        if self.most is not None and amount > self.most:
            raise ValidationError(say("amount-too-great", given=quote(str(value)), what=self._called, most=self.most))
        return amount


class Price(fields.Field[int]):
    """Dollars and cents as text, "19.98", to whole cents."""

    wants = say("wants-price")

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> int:
        try:
            return parse_price("" if isinstance(value, bool) else str(value))
        except EngineError as error:
            raise refused(error) from error


class FilmPrice(Price):
    """A price as of a roll or of a foot, "3.40"; or of a meter, where that is written behind it: "11.20 / m"."""

    wants = say("wants-film-price")

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> int:
        price = "" if isinstance(value, bool) else split_price(str(value))[0]
        return super()._deserialize(price, attr, data, **kwargs)


def split_price(text: str) -> tuple[str, str]:
    """A price, and "m" where it is one by the meter.

    >>> split_price("11.20 / m"), split_price("3.40")
    (('11.20', 'm'), ('3.40', ''))
    """
    price, slash, unit = text.partition("/")
    return (price.strip(), "m") if slash and unit.strip().lower() in ("m", "meter", "metre") else (text, "")


class Area(fields.Field[Fraction]):
    """An area to square inches: square feet where no unit stands behind it; "384 sq ft", "35.7 m2"."""

    wants = say("wants-area")

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Fraction:
        figure, unit = split_unit(value)
        amount = parse_amount(figure)
        if amount is None or (unit not in SQUARE_INCHES and unit not in SQUARE_METERS):
            raise ValidationError(say("area-unread", given=quote(str(value))))
        # pint is woken for metric alone.
        return amount * (SQUARE_INCHES.get(unit) or convert(Fraction(1), "meter ** 2", "inch ** 2"))


class Volume(fields.Field[Fraction]):
    """A volume to cubic inches: "1 gal", "10.1 fl oz", "300 ml". A figure alone is gallons."""

    wants = say("wants-volume")

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Fraction:
        figure, unit = split_unit(value)
        amount = parse_amount(figure)
        known = parse_unit(unit or "gal")
        if amount is None or not amount or known is None:
            raise ValidationError(say("volume-unread", given=quote(str(value))))
        return amount * known

    def show(self, value: Fraction) -> str:
        """A volume that it read, as tubes are sold."""
        return format_content(value)


def parse_unit(unit: str) -> Fraction | None:
    """The cubic inches in a unit of volume; None where it is no such unit."""
    name = unit if unit in CUBIC_INCHES or unit in LITERS else unit.removesuffix("s")
    if name in CUBIC_INCHES:
        return CUBIC_INCHES[name]
    return convert(LITERS[name], "liter", "inch ** 3") if name in LITERS else None
