"""`take` and `check` entries: the first that a phone asks when it wakes, so nothing here leans on the rest."""

from typing import Any

from marshmallow import Schema, fields

from scantling.engine.journal import check_entry, name_entry
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.shapes import AskedIn, out, text_out
from scantling.engine.words import say


class EntriesIn(AskedIn):
    entries = fields.List(fields.Raw(), required=True, metadata={"description": say("ask-entries")})


class RefusedOut(Schema):
    id, key, message = text_out(), text_out(), text_out()


class TakeOut(Schema):
    taken = fields.Integer(required=True)
    refused = out(RefusedOut, many=True)
    kept_unread = fields.Integer(required=True)


class CheckOut(Schema):
    refused = out(RefusedOut, many=True)


def answer_take(asked: dict[str, Any], context: Context) -> Answer:
    return context.notebook.take(asked["entries"])


def answer_check(asked: dict[str, Any], context: Context) -> Answer:
    """The full check that the laptop makes too: by it the phone knows at once what the laptop would refuse."""
    refused = []
    for entry in asked["entries"]:
        for error in check_entry(entry):
            refused.append({"id": name_entry(entry), "key": error.key, "message": error.message})
    return {"refused": refused}


QUESTIONS = (
    Question("take", say("question-take"), EntriesIn, TakeOut, answer_take, of_entries=True),
    Question("check", say("question-check"), EntriesIn, CheckOut, answer_check, of_entries=True),
)
