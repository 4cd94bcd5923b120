"""`read` a length and `sum` an expression."""

from typing import Any

from marshmallow import Schema, fields

from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.shapes import AskedIn, LengthOut, one_of, out, show, text_out, texts_out
from scantling.engine.tape.lengths import derive_shown, format_feet, parse_reading, say_length
from scantling.engine.tape.measures import format_number
from scantling.engine.tape.quantities import BARE, INCHES, MILLIMETERS
from scantling.engine.tape.sums import SumResult, derive_remainder, evaluate_sum, say_remainder, write_units
from scantling.engine.words import say


class ReadIn(AskedIn):
    text = fields.String(required=True, metadata={"description": say("ask-read-text")})


class ReadOut(Schema):
    length = out(LengthOut)
    words, feet = text_out(), text_out()
    strong, shy = fields.Boolean(required=True), fields.Boolean(required=True)


class SumIn(AskedIn):
    text = fields.String(required=True, metadata={"description": say("ask-sum-text")})
    bare = fields.String(
        load_default=INCHES, validate=one_of(*BARE), metadata={"description": say("ask-sum-bare")}
    )  # fmt: skip


class NumberOut(Schema):
    value = fields.Float(required=True)
    exact, shown = text_out(), text_out()


class AreaOut(Schema):
    square_inches = fields.Float(required=True)
    exact, shown = text_out(), text_out()


class SumStepOut(Schema):
    text, shown = text_out(), text_out()


class SumOut(Schema):
    """Just one of `length`, `number` and `area`; the other two are null. `written` is the sum to be kept: as it was
    asked, with its unit where that was left out and is not inches."""

    length = out(LengthOut, none=True)
    number = out(NumberOut, none=True)
    area = out(AreaOut, none=True)
    remainder = out(LengthOut, none=True)
    remainder_said, words = text_out(none=True), text_out(none=True)
    written = text_out()
    taken = texts_out()
    working = out(SumStepOut, many=True)


def answer_read(asked: dict[str, Any], context: Context) -> Answer:
    reading = parse_reading(asked["text"])
    said = say_length(reading.length, asked["nearest"])
    return {
        "length": show(reading.measured, asked["nearest"]),
        "words": say(f"lean-{reading.lean}", words=said) if reading.lean else said,
        "feet": format_feet(reading.length, asked["nearest"]),
        "strong": reading.lean == "strong",
        "shy": reading.lean == "shy",
    }


def answer_sum(asked: dict[str, Any], context: Context) -> Answer:
    written = write_units(asked["text"]) if asked["bare"] == MILLIMETERS else asked["text"]
    result = evaluate_sum(written)
    length, number, area = result.length, result.number, result.area
    remainder = None if length is None else derive_remainder(length, asked["nearest"])
    return {
        "length": None if length is None else show(length, asked["nearest"]),
        "number": None if number is None else _number(result),
        "area": None if area is None else _area(result),
        "remainder": None if remainder is None else show(remainder, asked["nearest"]),
        "remainder_said": None if length is None else say_remainder(length - derive_shown(length, asked["nearest"])),
        "words": None if length is None else say_length(length, asked["nearest"]),
        "written": written,
        "taken": list(result.taken),
        "working": [{"text": step.text, "shown": step.value.show()} for step in result.steps],
    }


def _number(result: SumResult) -> Answer:
    amount = result.value.amount
    return {"value": float(amount), "exact": str(amount), "shown": format_number(amount)}


def _area(result: SumResult) -> Answer:
    amount = result.value.amount
    return {"square_inches": float(amount), "exact": str(amount), "shown": result.value.show()}


QUESTIONS = (
    Question("read", say("question-read"), ReadIn, ReadOut, answer_read),
    Question("sum", say("question-sum"), SumIn, SumOut, answer_sum),
)
