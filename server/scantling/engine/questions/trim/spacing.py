"""`spacing`: equal things along a span, with the marks to set them out by."""

from typing import Any

from marshmallow import ValidationError, fields, validate, validates_schema

from scantling.engine.forms import Schema
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.shapes import AskedIn, LengthOut, LengthText, one_of, out, show, texts_out
from scantling.engine.tape.lengths import SIXTY_FOURTH, THIRTY_SECOND, Length, format_length, format_working, round_to
from scantling.engine.trim.doubt import Doubt
from scantling.engine.trim.own.spacing import (
    ENDS,
    Hazard,
    Spacing,
    check_clashes,
    derive_others,
    derive_spacing,
    derive_spacing_by_gap,
)
from scantling.engine.trim.told.tolerance import MARK, READING
from scantling.engine.words import say


class AvoidIn(Schema):
    at, width = LengthText(required=True), LengthText(required=True)


class SpacingIn(AskedIn):
    span, width = LengthText(required=True), LengthText(required=True)
    count = fields.Integer(strict=True)
    most_gap = LengthText(metadata={"description": say("ask-spacing-most-gap")})
    ends = fields.String(load_default="item", validate=one_of(*ENDS))
    avoid = fields.List(fields.Nested(AvoidIn), load_default=[], validate=validate.Length(max=200))

    @validates_schema
    def check_source(self, data: dict[str, Any], **_: object) -> None:
        if ("count" in data) == ("most_gap" in data):
            raise ValidationError(say("spacing-count-or-gap"), "count")


class ClashOut(Schema):
    item = fields.Integer(required=True, metadata={"description": say("told-clash-item")})
    avoid = fields.Integer(required=True, metadata={"description": say("told-place")})
    mark, over = out(LengthOut), out(LengthOut)


class OtherCountOut(Schema):
    count, clashes = fields.Integer(required=True), fields.Integer(required=True)
    gap = out(LengthOut)


class SpacingOut(Schema):
    """`marks` are the near edges of the items, all from the left end of the span."""

    count = fields.Integer(required=True)
    gap, pitch, plus_minus = out(LengthOut), out(LengthOut), out(LengthOut)
    marks = out(LengthOut, many=True)
    clashes = out(ClashOut, many=True)
    other_counts = out(OtherCountOut, many=True)
    working = texts_out()


def answer_spacing(asked: dict[str, Any], context: Context) -> Answer:
    nearest, most_gap = asked["nearest"], asked.get("most_gap")
    if most_gap is None:
        row = derive_spacing(asked["span"], asked["width"], asked["count"], asked["ends"])
    else:
        row = derive_spacing_by_gap(asked["span"], asked["width"], most_gap, asked["ends"])
    avoid = [Hazard(one["at"], one["width"]) for one in asked["avoid"]]
    return {
        "count": row.count,
        "gap": show(row.gap, nearest),
        "pitch": show(row.pitch, nearest),
        "plus_minus": show(Doubt.of(READING, MARK).plus_minus, THIRTY_SECOND),
        "marks": [show(mark, nearest) for mark in row.marks],
        "clashes": [
            {"item": one.item, "avoid": one.avoid, "mark": show(one.mark, nearest), "over": show(one.over, nearest)}
            for one in check_clashes(row, avoid)
        ],
        "other_counts": [
            {"count": other.count, "gap": show(other.gap, nearest), "clashes": len(check_clashes(other, avoid))}
            for other in derive_others(row, most_gap)
        ],
        "working": _working(row, most_gap, nearest),
    }


def _working(row: Spacing, most_gap: Length | None, nearest: Length) -> list[str]:
    span, width, gap = (format_working(length.inches) for length in (row.span, row.width, row.gap))
    lines = []
    if most_gap is not None:
        lines.append(say("spacing-fewest", gap=format_working(most_gap.inches), count=row.count))
    lines += [
        say("spacing-gap", span=span, count=row.count, width=width, gaps=row.gaps, gap=gap),
        say("spacing-pitch", width=width, gap=gap, pitch=format_working(row.pitch.inches)),
    ]
    astray = (round_to(row.pitch, nearest) - row.pitch) * (row.count - 1)
    if abs(astray) >= SIXTY_FOURTH:
        lines.append(say("spacing-astray", off=format_length(abs(astray), SIXTY_FOURTH)))
    return lines


QUESTIONS = (
    Question("spacing", say("question-spacing"), SpacingIn, SpacingOut, answer_spacing),
)
