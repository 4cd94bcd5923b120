"""Sums: the running tape, and what is kept on it."""

from typing import Any

from flask import Response
from marshmallow import fields, validate

from scantling.api.blueprint import Blueprint, Written, reply_answer, require, write
from scantling.api.nouns.readings import ask_desk
from scantling.clock import mint_id, now_ms
from scantling.engine.bodies import SumBody
from scantling.engine.desk import QUESTIONS
from scantling.engine.forms import Schema
from scantling.engine.questions.tape.running import SHOWN_AT_MOST, SHOWN_AT_ONCE

blueprint = Blueprint("sums", __name__, url_prefix="/api/sums", description="Sums that are kept.")


class Sum(SumBody):
    of = fields.String(
        load_default=None, allow_none=True, metadata={"description": "The room that it was done in, if any."}
    )
    note = fields.String(load_default="", metadata={"description": "What it was for."})

    class Meta(SumBody.Meta):
        exclude = ("sum",)


class Part(Schema):
    """Which part of the tape."""

    most = fields.Integer(load_default=SHOWN_AT_ONCE, validate=validate.Range(1, SHOWN_AT_MOST))
    skip = fields.Integer(load_default=0, validate=validate.Range(0, 2**53))


@blueprint.get("")
@blueprint.arguments(Part, location="query")
@blueprint.response(200, QUESTIONS["tape"].gives)
def list_sums(said: dict[str, Any]) -> Response:
    """The tape, the newest sum first, each worked out exactly."""
    return reply_answer({"ask": "tape", **said})


@blueprint.post("")
@blueprint.arguments(Sum)
@blueprint.response(201, Written)
def add_sum(said: dict[str, Any]) -> dict[str, Any]:
    """Keep a sum. One that cannot be worked is refused with the place in it, and nothing is kept."""
    _require_room(said["of"])
    ask_desk({"ask": "sum", "text": said["text"]})
    return write("sum", {"sum": mint_id(now_ms()), **said})


@blueprint.put("/<sum>")
@blueprint.arguments(Sum)
@blueprint.response(200, Written)
def restate_sum(said: dict[str, Any], sum: str) -> dict[str, Any]:
    """Write it, or its note, anew."""
    before = require("sum", sum)
    _require_room(said["of"])
    ask_desk({"ask": "sum", "text": said["text"]})
    return write("sum", {"sum": sum, **said}, before)


def _require_room(room: str | None) -> None:
    if room is not None:
        require("room", room)
