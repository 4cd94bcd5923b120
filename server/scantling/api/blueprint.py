"""The blueprint that every noun uses, and the three things that its views do: require, write, reply.

Bodies are read by the door, and what a schema refuses goes out in the one error body.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import partial
from typing import Any, NoReturn

import flask
import flask_smorest  # type: ignore[import-untyped]
from flask import Request, Response
from marshmallow import Schema, ValidationError, fields
from webargs.flaskparser import FlaskParser

from scantling.api.door import read_json
from scantling.api.refusals import DoorError, status_of
from scantling.clock import name_id
from scantling.engine.desk import dump
from scantling.engine.errors import quote
from scantling.engine.journal import Entry, EntrySchema
from scantling.engine.shapes import first_refusal
from scantling.laptop import Laptop
from scantling.store import EntryData

ONCE = "Idempotency-Key"
KEY_AT_MOST = 255


class DoorParser(FlaskParser):
    """webargs reads through the door, or gzip, depth and content type would be checked in one view only."""

    def load_json(self, req: Request, schema: Schema) -> Any:
        flask.g.said = read_json(req)
        return flask.g.said

    def handle_error(self, error: ValidationError, *_: Any, **__: Any) -> NoReturn:
        (messages,) = error.messages.values() if isinstance(error.messages, dict) else [error.messages]
        raise first_refusal(messages) from error


class Blueprint(flask_smorest.Blueprint):
    ARGUMENTS_PARSER = DoorParser()

    def register_views_in_doc(self, api: Any, *arguments: Any, **options: Any) -> None:
        """Describe the views when the specification is asked for: that takes three quarters of an app's making."""
        api.describe_later(partial(super().register_views_in_doc, api, *arguments, **options))


class Written(Schema):
    """What was written into the journal."""

    entry = fields.Nested(EntrySchema, required=True)


def laptop() -> Laptop:
    """The laptop of the household that asks."""
    found: Laptop = flask.g.laptop
    return found


def require(kind: str, subject: str, **parent: str) -> list[Entry]:
    """The statements in force about a house, room or wall; a refusal (404) when there is none, or when the one to use
    says that it is elsewhere."""
    found = laptop().in_force(kind, **{kind: subject})
    if not found or any(found[-1].body[name] != value for name, value in parent.items()):
        raise DoorError(f"no-such-{kind}", name=quote(subject))
    return found


def write(kind: str, body: Mapping[str, Any], before: Sequence[Entry] = ()) -> dict[str, Any]:
    """Write an entry that supersedes the ones before, and reply with it."""
    return {"entry": write_once(kind, body, [entry.id for entry in before])}


def write_once(kind: str, body: Mapping[str, Any], supersedes: Sequence[str]) -> EntryData:
    """Write an entry; where the request names itself by an Idempotency-Key, the same request again is the same entry.

    The key is in the entry's id, so that it holds also where the journal came home from another device meanwhile.
    """
    return laptop().write(kind, body, supersedes, _id_of_request())


def _id_of_request() -> str | None:
    key = flask.request.headers.get(ONCE)
    if key is None:
        return None
    if not 0 < len(key) <= KEY_AT_MOST:
        raise DoorError("wrong-key", limit=KEY_AT_MOST)
    flask.g.written = flask.g.get("written", 0) + 1
    said = [key, flask.request.method, flask.request.path, flask.g.get("said"), flask.g.written]
    return name_id(dump(said))


def reply_answer(question: Mapping[str, Any]) -> Response:
    """The desk's answer by itself, or its refusal in the one error body, in the desk's own spelling of JSON."""
    answered = laptop().answer(question)
    refused = answered.get("error")
    status = status_of(refused["key"]) if refused else 200
    return Response(dump(answered if refused else answered["answer"]), status, content_type="application/json")
