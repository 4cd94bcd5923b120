"""`strips`: how many strips and rolls of wallpaper, by the label and for certain."""

from collections.abc import Iterator
from typing import Any

from marshmallow import ValidationError, fields, validate, validates_schema

from scantling.engine.cautions import cautions_for_paper
from scantling.engine.coverings.rolls.advice import derive_smaller_trim
from scantling.engine.coverings.rolls.roll import SYMBOLS, TRIM, Roll
from scantling.engine.coverings.rolls.strips import Method, RollCounts, derive_best, derive_methods, derive_strips
from scantling.engine.forms import Schema
from scantling.engine.questions.coverings.shapes import CountsOut, NamedProblemOut, RollIn, read_roll
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.readings import Positive
from scantling.engine.shapes import AskedIn, LengthOut, LengthText, out, show, text_out, texts_out
from scantling.engine.tape.lengths import (
    SIXTY_FOURTH,
    Length,
    format_length,
    format_working,
)
from scantling.engine.tape.measures import format_number
from scantling.engine.words import say


class StripsIn(AskedIn):
    widths = fields.List(Positive(), validate=validate.Length(min=1, max=200))
    perimeter = Positive(metadata={"description": say("ask-strips-perimeter")})
    height = Positive(required=True)
    trim = LengthText(load_default=TRIM, metadata={"description": say("ask-trim")})
    roll = fields.Nested(RollIn, required=True)

    @validates_schema
    def check_source(self, data: dict[str, Any], **_: object) -> None:
        if ("widths" in data) == ("perimeter" in data):
            raise ValidationError(say("strips-of-what"), "widths")


class MethodOut(Schema):
    method, hang = text_out(), text_out()
    pitch = out(LengthOut)
    per_roll, rolls = out(CountsOut), out(CountsOut)


class StripsOut(Schema):
    """`buy`: the rolls that are enough for certain. `methods`: every way to cut, the best first."""

    strips, per_roll, rolls = out(CountsOut), out(CountsOut), out(CountsOut)
    buy = fields.Integer(required=True, allow_none=True)
    method, hang = text_out(), text_out()
    cut, pitch = out(LengthOut), out(LengthOut)
    methods = out(MethodOut, many=True)
    symbol = text_out()
    advice, working, cautions = texts_out(), texts_out(), texts_out()
    problems = out(NamedProblemOut, many=True)


def answer_strips(asked: dict[str, Any], context: Context) -> Answer:
    roll, nearest = read_roll(asked["roll"]), asked["nearest"]
    height = asked["height"] + asked["trim"]
    strips = derive_strips(asked.get("widths") or [asked["perimeter"]], roll)
    methods = derive_methods(roll, height)
    best, nominal, guaranteed = derive_best(methods, strips, roll.drop)
    return {
        "strips": _counts(strips),
        "per_roll": _counts(best.per_roll),
        "rolls": {"nominal": nominal, "guaranteed": guaranteed},
        "buy": guaranteed,
        "method": best.name,
        "hang": best.hang,
        "cut": show(height, nearest),
        "pitch": show(best.pitch, nearest),
        "methods": [_method(method, strips, roll, nearest) for method in sorted(methods, key=lambda way: way != best)],
        "symbol": SYMBOLS[asked["roll"]["match"]],
        "advice": list(_advice(asked, roll, strips, best, guaranteed)),
        "working": list(_working(asked, roll, strips, best)),
        "problems": list(_problems(roll, height, best)),
        "cautions": cautions_for_paper(),
    }


def _counts(counts: RollCounts) -> Answer:
    return {"nominal": counts.nominal, "guaranteed": counts.guaranteed}


def _method(method: Method, strips: RollCounts, roll: Roll, nearest: Length) -> Answer:
    _, nominal, guaranteed = derive_best([method], strips, roll.drop)
    return {
        "method": method.name,
        "hang": method.hang,
        "pitch": show(method.pitch, nearest),
        "per_roll": _counts(method.per_roll),
        "rolls": {"nominal": nominal, "guaranteed": guaranteed},
    }


def _problems(roll: Roll, height: Length, best: Method) -> Iterator[Answer]:
    if not best.per_roll.nominal:
        short = format_length(height - roll.length)
        yield {"key": "roll-too-short", "message": say("strip-past-roll", short=short)}
    elif not best.per_roll.guaranteed:
        yield {"key": "no-strip-for-certain", "message": say("strip-not-certain")}
    if roll.repeat > roll.length:
        yield {"key": "repeat-past-roll", "message": say("repeat-past-roll")}


def _advice(asked: dict[str, Any], roll: Roll, strips: RollCounts, best: Method, rolls: int | None) -> Iterator[str]:
    if best.hang:
        yield say("strips-hang-from", end=best.hang)
    if rolls is None:
        return
    saving = derive_smaller_trim(roll, strips, asked["height"] + asked["trim"], asked["trim"], rolls)
    if saving:
        trim, given = (format_length(length, SIXTY_FOURTH) for length in (saving.trim, asked["trim"]))
        yield say("strips-less-trim", trim=trim, given=given, rolls=saving.rolls, saved=saving.saved)
    yield say("strips-buy", rolls=rolls)


def _working(asked: dict[str, Any], roll: Roll, strips: RollCounts, best: Method) -> Iterator[str]:
    height, trim, width = (format_working(length.inches) for length in (asked["height"], asked["trim"], roll.covers))
    cut = format_working((asked["height"] + asked["trim"]).inches)
    yield say("strips-cut", height=height, trim=trim, cut=cut)
    if roll.overlap:
        whole, lap = format_working(roll.width.inches), format_working(roll.overlap.inches)
        yield say("strips-cover", width=whole, lap=lap, covers=width)
    runs = (f"⌈{format_working(run.inches)} ÷ {width}⌉" for run in asked.get("widths") or [asked["perimeter"]])
    yield say("strips-counted", runs=" + ".join(runs), count=strips.nominal)
    pitch = format_working(best.pitch.inches)
    if roll.repeat:
        yield say("strips-pitch", method=best.name, pitch=pitch)
    length = format_working(roll.length.inches)
    yield say("strips-per-roll", length=length, cut=cut, pitch=pitch, count=best.per_roll.nominal)
    yield say("strips-certain-repeat" if roll.repeat else "strips-certain", percent=format_number(roll.tolerance),
              count=best.per_roll.guaranteed, strips=strips.guaranteed)  # fmt: skip


QUESTIONS = (
    Question("strips", say("question-strips"), StripsIn, StripsOut, answer_strips),
)
