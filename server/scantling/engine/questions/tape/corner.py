"""`corner`: what a gauge or three sides say of a corner, and how boards are cut for it."""

from typing import Any

from marshmallow import ValidationError, fields, validate, validates_schema

from scantling.engine.forms import Schema
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.shapes import AskedIn, DegreesText, LengthOut, LengthText, one_of, out, show, texts_out
from scantling.engine.tape.angles import (
    Corner,
    derive_corner_by_gauge,
    derive_corner_by_sides,
    derive_front_minus_back,
    derive_saw,
    format_degrees,
)
from scantling.engine.tape.lengths import Length
from scantling.engine.words import say

THREE_SIDES = say("corner-three-sides")


class CornerIn(AskedIn):
    turn = fields.String(load_default="inside", validate=one_of("inside", "outside"))
    corner = DegreesText(metadata={"description": say("ask-corner-gauge")})
    sides = fields.List(LengthText(), validate=validate.Length(equal=3, error=THREE_SIDES))
    thickness = LengthText(required=True)
    meets = LengthText(metadata={"description": say("ask-corner-meets")})

    @validates_schema
    def check_source(self, data: dict[str, Any], **_: object) -> None:
        if ("corner" in data) == ("sides" in data):
            raise ValidationError(say("corner-one-source"), "corner")


class BoardEndOut(Schema):
    saw = fields.Float(required=True)
    point = fields.Float(required=True)
    front_minus_back = out(LengthOut)


class CornerOut(BoardEndOut):
    corner = fields.Float(required=True, metadata={"description": say("told-compound-corner")})
    plus_minus = fields.Float(required=True)
    other = fields.Nested(BoardEndOut, required=True, allow_none=True)
    working = texts_out()


def answer_corner(asked: dict[str, Any], context: Context) -> Answer:
    corner = _corner(asked)
    own, other = asked["thickness"], asked.get("meets")
    return {
        "corner": float(corner.degrees),
        "plus_minus": float(corner.plus_minus),
        **_board_end(corner, own, other, asked["nearest"]),
        "other": None if other is None else _board_end(corner, other, own, asked["nearest"]),
        "working": _working(corner, "sides" in asked),
    }


def _corner(asked: dict[str, Any]) -> Corner:
    if "sides" in asked:
        return derive_corner_by_sides(asked["turn"], *asked["sides"])
    return derive_corner_by_gauge(asked["turn"], asked["corner"])


def _board_end(corner: Corner, own: Length, other: Length | None, nearest: Length) -> Answer:
    grows = derive_front_minus_back(own, corner, other)
    saw = derive_saw(own, corner, other)
    return {"saw": float(saw), "point": float(90 - saw), "front_minus_back": show(grows, nearest)}


def _working(corner: Corner, by_sides: bool) -> list[str]:
    gauge, saw, point = (format_degrees(angle) for angle in (corner.gauge, corner.saw, corner.point))
    source = "sides" if by_sides else "gauge"
    lines = [say(f"corner-by-{source}-{corner.turn}", gauge=gauge, off=format_degrees(corner.plus_minus))]
    if corner.turn == "outside":
        lines.append(say("room-side-of-corner", gauge=gauge, corner=format_degrees(corner.degrees)))
    return [*lines, say("corner-saw", gauge=gauge, saw=saw), say("corner-point", gauge=gauge, point=point)]


QUESTIONS = (
    Question("corner", say("question-corner"), CornerIn, CornerOut, answer_corner),
)
