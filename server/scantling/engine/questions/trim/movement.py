"""`movement`: how a solid board's width follows its moisture."""

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from marshmallow import Schema, ValidationError, fields

from scantling.engine.errors import quote
from scantling.engine.movement import Movement, check_movement, derive_movement, find_wood
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.readings import Positive
from scantling.engine.shapes import Asked, LengthOut, one_of, out, show, text_out, texts_out
from scantling.engine.shown.shown_in import MILLIMETERS, MILLIMETERS_PER_INCH, shown_in
from scantling.engine.tape.lengths import format_working
from scantling.engine.tape.marks import decimal_value
from scantling.engine.tape.measures import format_number

LONGEST_PERCENT = 8


class Percent(fields.Field[Fraction]):
    """Moisture in percent as text or number: "8", 7.5."""

    wants = 'percent, such as 8 or 7.5'

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Fraction:
        text = "" if isinstance(value, bool) else str(value).strip().removesuffix("%").strip()
        digits = text.replace(".", "", 1)
        if not (digits.isascii() and digits.isdigit() and len(text) <= LONGEST_PERCENT):
            raise ValidationError(f"{quote(str(value))} is not a moisture content: write percent such as 8 or 7.5.")
        return decimal_value(text)


class MovementIn(Asked):
    species = fields.String(required=True)
    cut = fields.String(load_default="flat", validate=one_of("flat", "quarter"))
    width = Positive(required=True)
    from_ = Percent(required=True, data_key="from")
    to = Percent(required=True)


class MovementOut(Schema):
    change, miter_gap = out(LengthOut), out(LengthOut)
    species, source, opens = text_out(), text_out(), text_out()
    coefficient = fields.Float(required=True, metadata={"description": "part of the width per point of moisture"})
    working, warnings = texts_out(), texts_out()


def answer_movement(asked: dict[str, Any], context: Context) -> Answer:
    wood = find_wood(asked["species"])
    moved = derive_movement(wood, asked["cut"], asked["width"], asked["from_"], asked["to"])
    return {
        "change": show(moved.change, asked["nearest"]),
        "miter_gap": show(moved.miter_gap, asked["nearest"]),
        "species": wood.name,
        "source": wood.source,
        "opens": _opens(moved),
        "coefficient": float(moved.coefficient),
        "working": _working(asked, moved),
        "warnings": list(check_movement(wood, asked["from_"], asked["to"])),
    }


def _opens(moved: Movement) -> str:
    if not moved.change:
        return "The miter stays as it is."
    if moved.change.inches < 0:
        return "Drying, the miter opens at its inner edge."
    return "Swelling, the miter opens at its outer edge."


def _working(asked: dict[str, Any], moved: Movement) -> list[str]:
    width, start, end = format_working(asked["width"].inches), format_number(asked["from_"]), format_number(asked["to"])
    way = "tangential" if asked["cut"] == "flat" else "radial"
    scale = MILLIMETERS_PER_INCH if shown_in() == MILLIMETERS else 1
    change, gap = (float(length.inches * scale) for length in (moved.change, moved.miter_gap))
    return [
        f"change = {width} × {float(moved.coefficient):.5f} ({way}, per point) × ({end} − {start}) = {change:.4f}",
        f"miter: {abs(change):.4f} × 1.4142 (across a 45) = {gap:.4f}",
    ]


QUESTIONS = (
    Question("movement", "How much a solid board widens or narrows as its moisture changes, and what a miter does.",
             MovementIn, MovementOut, answer_movement),
)  # fmt: skip
