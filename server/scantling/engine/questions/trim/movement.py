"""`movement`: how a solid board's width follows its moisture."""

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from marshmallow import Schema, ValidationError, fields

from scantling.engine.errors import quote
from scantling.engine.movement import Movement, check_movement, derive_movement, find_wood
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.readings import Positive
from scantling.engine.shapes import AskedIn, LengthOut, one_of, out, show, text_out, texts_out
from scantling.engine.shown.shown_in import MILLIMETERS, MILLIMETERS_PER_INCH, shown_in
from scantling.engine.tape.lengths import format_working
from scantling.engine.tape.marks import decimal_value
from scantling.engine.tape.measures import format_number
from scantling.engine.words import say

LONGEST_PERCENT = 8


class Percent(fields.Field[Fraction]):
    """Moisture in percent as text or number: "8", 7.5."""

    wants = say("wants-percent")

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Fraction:
        text = "" if isinstance(value, bool) else str(value).strip().removesuffix("%").strip()
        digits = text.replace(".", "", 1)
        if not (digits.isascii() and digits.isdigit() and len(text) <= LONGEST_PERCENT):
            raise ValidationError(say("moisture-unread", given=quote(str(value))))
        return decimal_value(text)


class MovementIn(AskedIn):
    species = fields.String(required=True)
    cut = fields.String(load_default="flat", validate=one_of("flat", "quarter"))
    width = Positive(required=True)
    from_ = Percent(required=True, data_key="from")
    to = Percent(required=True)


class MovementOut(Schema):
    change, miter_gap = out(LengthOut), out(LengthOut)
    species, source, opens = text_out(), text_out(), text_out()
    coefficient = fields.Float(required=True, metadata={"description": say("told-movement-coefficient")})
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
        return say("miter-stays")
    if moved.change.inches < 0:
        return say("miter-drying")
    return say("miter-swelling")


def _working(asked: dict[str, Any], moved: Movement) -> list[str]:
    width, start, end = format_working(asked["width"].inches), format_number(asked["from_"]), format_number(asked["to"])
    scale = MILLIMETERS_PER_INCH if shown_in() == MILLIMETERS else 1
    change, gap = (float(length.inches * scale) for length in (moved.change, moved.miter_gap))
    return [
        say(f"movement-by-{asked['cut']}", width=width, part=f"{float(moved.coefficient):.5f}", end=end, start=start,
            change=f"{change:.4f}"),
        say("moved-miter", change=f"{abs(change):.4f}", gap=f"{gap:.4f}"),
    ]


QUESTIONS = (
    Question("movement", say("question-movement"), MovementIn, MovementOut, answer_movement),
)
