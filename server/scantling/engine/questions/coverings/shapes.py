"""Shapes that the questions about coverings share: a roll by its label, and counts for certain and by the label."""

from typing import Any

from marshmallow import fields

from scantling.engine.coverings.rolls.roll import (
    FREE,
    HANGINGS,
    MATCHES,
    PASTE,
    PEEL,
    TOLERANCE,
    Roll,
    make_roll,
)
from scantling.engine.errors import EngineError
from scantling.engine.forms import Schema
from scantling.engine.questions.amounts import Amount
from scantling.engine.questions.readings import Positive
from scantling.engine.shapes import LengthText, one_of, text_out
from scantling.engine.tape.lengths import HALF, ZERO, Length
from scantling.engine.words import say

# How far strips that stick by themselves lie over each other, for they shrink: common practice, no source.
PEEL_OVERLAP = HALF


class RollIn(Schema):
    width, length = Positive(required=True), Positive(required=True)
    repeat = LengthText(load_default=ZERO)
    match = fields.String(load_default=FREE, validate=one_of(*MATCHES))
    drop = fields.Integer(strict=True, load_default=2, metadata={"description": say("ask-roll-drop")})
    tolerance = Amount(
        "tolerance", most=50, load_default=TOLERANCE, metadata={"description": say("ask-roll-tolerance")}
    )  # fmt: skip
    hanging = fields.String(load_default=PASTE, validate=one_of(*HANGINGS))
    overlap = LengthText(metadata={"description": say("ask-roll-overlap")})


class CountsOut(Schema):
    """`nominal` by the label; `guaranteed` for the worst roll within its tolerance, begun at the worst place."""

    nominal = fields.Integer(required=True, allow_none=True)
    guaranteed = fields.Integer(required=True, allow_none=True)


class NamedProblemOut(Schema):
    key, message = text_out(), text_out()


def read_roll(asked: dict[str, Any]) -> Roll:
    """The roll of a question. Raises `RollError`."""
    return make_roll(
        asked["width"], asked["length"], asked["match"], asked["repeat"], asked["drop"], asked["tolerance"],
        overlap_of(asked),
    )  # fmt: skip


def overlap_of(asked: dict[str, Any]) -> Length:
    given: Length | None = asked.get("overlap")
    if given is not None:
        return given
    return PEEL_OVERLAP if asked["hanging"] == PEEL else ZERO


class MarksOut(Schema):
    """On which side of a blank, as it lies, its top, its left and its right are marked: near is the end at hand."""

    top, left, right = text_out(), text_out(), text_out()


class UnableOut(Schema):
    item = fields.Integer(required=True, metadata={"description": say("told-place")})
    key, message = text_out(), text_out()


def unable(item: int, error: EngineError) -> dict[str, Any]:
    return {"item": item, "key": error.key, "message": error.message}
