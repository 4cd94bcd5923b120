"""`attachments`: the files that go with a house, a room, a wall or a thing, by the names of their bytes."""

from typing import Any

from marshmallow import Schema, fields

from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.shapes import AskedIn, out, text_out, texts_out
from scantling.engine.words import say


class AttachmentsIn(AskedIn):
    of = fields.String(required=True, metadata={"description": say("ask-attachments-of")})


class AttachmentOut(Schema):
    """`blob` names its bytes, which travel by themselves and may not be here yet; `entries` say that it is here."""

    attachment, name, type, blob = (text_out() for _ in range(4))
    size = fields.Integer(required=True)
    entries = texts_out()


class AttachmentsOut(Schema):
    attachments = out(AttachmentOut, many=True)


def answer_attachments(asked: dict[str, Any], context: Context) -> Answer:
    found = context.notebook.children("attachment", asked["of"])
    return {
        "attachments": [
            {
                "attachment": attachment,
                **{name: entry.body[name] for name in ("name", "type", "blob", "size")},
                "entries": [one.id for one in heads],
            }
            for attachment, entry, heads in sorted(found, key=lambda one: one[1].order)
        ]
    }


QUESTIONS = (
    Question("attachments", say("question-attachments"), AttachmentsIn, AttachmentsOut, answer_attachments, kept=True),
)
