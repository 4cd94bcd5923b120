"""The blueprint that every noun uses, and the three things that its views do: require, write, reply.

Bodies are read by the door, and what a schema refuses goes out in the one error body.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, NoReturn

import flask_smorest  # type: ignore[import-untyped]
from flask import Request, Response, current_app
from marshmallow import Schema, ValidationError, fields
from webargs.flaskparser import FlaskParser

from scantling.api.door import DoorError, read_json, status_of
from scantling.engine.desk import dump
from scantling.engine.errors import quote
from scantling.engine.journal import Entry, EntrySchema
from scantling.engine.shapes import first_refusal
from scantling.laptop import Laptop


class DoorParser(FlaskParser):
    """webargs reads through the door, or gzip, depth and content type would be checked in one view only."""

    def load_json(self, req: Request, schema: Schema) -> Any:
        return read_json(req)

    def handle_error(self, error: ValidationError, *_: Any, **__: Any) -> NoReturn:
        (messages,) = error.messages.values() if isinstance(error.messages, dict) else [error.messages]
        raise first_refusal(messages) from error


class Blueprint(flask_smorest.Blueprint):
    ARGUMENTS_PARSER = DoorParser()


class Written(Schema):
    """What was written into the journal."""

    entry = fields.Nested(EntrySchema, required=True)


def laptop() -> Laptop:
    """The laptop that this app stands on."""
    found: Laptop = current_app.extensions["scantling"]
    return found


def require(kind: str, subject: str, **parent: str) -> list[Entry]:
    """The statements in force about a house, room or wall; a refusal (404) when there is none."""
    found = laptop().in_force(kind, **{kind: subject}, **parent)
    if not found:
        raise DoorError(f"no-such-{kind}", name=quote(subject))
    return found


def write(kind: str, body: Mapping[str, Any], before: Sequence[Entry] = ()) -> dict[str, Any]:
    """Write an entry that supersedes the ones before, and reply with it."""
    return {"entry": laptop().write(kind, body, [entry.id for entry in before])}


def reply_answer(question: Mapping[str, Any]) -> Response:
    """The desk's answer by itself, or its refusal in the one error body, in the desk's own spelling of JSON."""
    answered = laptop().answer(question)
    refused = answered.get("error")
    status = status_of(refused["key"]) if refused else 200
    return Response(dump(answered if refused else answered["answer"]), status, content_type="application/json")
