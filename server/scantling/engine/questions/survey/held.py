"""`held`: a small picture of where the tape, the gauge or the level is held for a reading."""

from typing import Any

from marshmallow import Schema, fields

from scantling.engine.bodies import ReadingBody
from scantling.engine.drawings.held import draw_held
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.shapes import AskedIn, one_of, text_out
from scantling.engine.survey.room import OPENINGS
from scantling.engine.words import say

WHATS = ReadingBody().fields["what"].validators[0].choices  # type: ignore[attr-defined]


class HeldIn(AskedIn):
    of = fields.String(required=True, validate=one_of("wall", *OPENINGS, "thing"))
    what = fields.String(required=True, validate=one_of(*WHATS))
    turn = fields.String(load_default="inside", validate=one_of("inside", "outside"))


class HeldOut(Schema):
    """`drawing` is empty where there is no picture of it."""

    drawing = text_out()


def answer_held(asked: dict[str, Any], context: Context) -> Answer:
    return {"drawing": draw_held(asked["of"], asked["what"], asked["turn"])}


QUESTIONS = (
    Question("held", say("question-held"), HeldIn, HeldOut, answer_held),
)
