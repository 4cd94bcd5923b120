"""Attachments: what goes with a house, a room, a wall or a thing; and the bytes of it, piece by piece."""

from typing import Any

from flask import Response
from marshmallow import fields, validate

from scantling.api.blueprint import Blueprint, Written, laptop, reply_answer, require, write
from scantling.api.nouns.readings import ask_desk
from scantling.api.refusals import DoorError
from scantling.blobs import BlobError, Blobs, parse_piece
from scantling.blobs.piece import DIGEST, PieceSchema
from scantling.clock import mint_id, now_ms
from scantling.engine.bodies import AttachmentBody, PinBody, StrokeBody
from scantling.engine.desk import QUESTIONS
from scantling.engine.forms import Schema

blueprint = Blueprint("attachments", __name__, url_prefix="/api", description="Files that go with something.")

NAMED_AT_MOST = 500


class Attachment(AttachmentBody):
    class Meta(AttachmentBody.Meta):
        exclude = ("attachment", "of")


class Caption(AttachmentBody):
    class Meta(AttachmentBody.Meta):
        fields = ("name",)


class Stroke(StrokeBody):
    class Meta(StrokeBody.Meta):
        exclude = ("attachment",)


class Pin(PinBody):
    class Meta(PinBody.Meta):
        exclude = ("pin", "attachment")


class Wanted(Schema):
    """The names of blobs that a device has or wants."""

    blobs = fields.List(
        fields.String(validate=validate.Regexp(DIGEST)), required=True, validate=validate.Length(max=NAMED_AT_MOST)
    )


class Lacking(Schema):
    blob = fields.String(required=True)
    offset = fields.Integer(required=True, metadata={"description": "How many bytes are here, from its start."})


class AllLacking(Schema):
    """Those that are not here whole; every other that was named is."""

    lacking = fields.List(fields.Nested(Lacking), required=True)


class Received(Schema):
    """`offset`: how many bytes are here, from the start; null when the blob is whole."""

    offset = fields.Integer(required=True, allow_none=True)


class From(Schema):
    at = fields.Integer(load_default=0, validate=validate.Range(0, 2**53), metadata={"description": "From which byte."})


@blueprint.get("/of/<thing>/attachments")
@blueprint.response(200, QUESTIONS["attachments"].gives)
def list_attachments(thing: str) -> Response:
    """What goes with a house, a room, a wall or a thing."""
    return reply_answer({"ask": "attachments", "of": thing})


@blueprint.post("/of/<thing>/attachments")
@blueprint.arguments(Attachment)
@blueprint.response(201, Written)
def attach(said: dict[str, Any], thing: str) -> dict[str, Any]:
    """Say that a file goes with something. Its bytes may come before or after."""
    return write("attachment", {"attachment": mint_id(now_ms()), "of": thing, **said})


@blueprint.put("/attachments/<attachment>")
@blueprint.arguments(Attachment)
@blueprint.response(200, Written)
def restate_attachment(said: dict[str, Any], attachment: str) -> dict[str, Any]:
    """Name it anew, or put another file in its place."""
    before = require("attachment", attachment)
    return write("attachment", {"attachment": attachment, "of": before[-1].body["of"], **said}, before)


@blueprint.put("/attachments/<attachment>/caption")
@blueprint.arguments(Caption)
@blueprint.response(200, Written)
def caption_attachment(said: dict[str, Any], attachment: str) -> dict[str, Any]:
    """Say what it shows, and leave the rest as it is."""
    before = require("attachment", attachment)
    return write("attachment", {**before[-1].body, **said}, before)


@blueprint.get("/attachments/<attachment>/marks")
@blueprint.response(200, QUESTIONS["photo"].gives)
def list_marks(attachment: str) -> Response:
    """What is drawn and pinned on a photo, each pin with its figure as it is now, and what may be pinned there."""
    require("attachment", attachment)
    return reply_answer({"ask": "photo", "attachment": attachment})


@blueprint.post("/attachments/<attachment>/strokes")
@blueprint.arguments(Stroke)
@blueprint.response(201, Written)
def add_stroke(said: dict[str, Any], attachment: str) -> dict[str, Any]:
    """Draw a line on a photo. To take it back, strike its entry."""
    require("attachment", attachment)
    return write("stroke", {"attachment": attachment, **said})


@blueprint.post("/attachments/<attachment>/pins")
@blueprint.arguments(Pin)
@blueprint.response(201, Written)
def add_pin(said: dict[str, Any], attachment: str) -> dict[str, Any]:
    """Pin a figure on a photo, one of those that its marks name."""
    require("attachment", attachment)
    _require_figure(attachment, said)
    return write("pin", {"pin": mint_id(now_ms()), "attachment": attachment, **said})


@blueprint.put("/attachments/<attachment>/pins/<pin>")
@blueprint.arguments(Pin)
@blueprint.response(200, Written)
def restate_pin(said: dict[str, Any], attachment: str, pin: str) -> dict[str, Any]:
    """Put a pin elsewhere, or another figure on it."""
    before = require("pin", pin, attachment=attachment)
    _require_figure(attachment, said)
    return write("pin", {"pin": pin, "attachment": attachment, **said}, before)


def _require_figure(attachment: str, said: dict[str, Any]) -> None:
    figures = ask_desk({"ask": "photo", "attachment": attachment})["figures"]
    if not any((one["of"], one["what"]) == (said["of"], said["what"]) for one in figures):
        raise DoorError("no-such-figure", name=said["what"])


@blueprint.post("/blobs/lacking")
@blueprint.arguments(Wanted)
@blueprint.response(200, AllLacking)
def tell_lacking(said: dict[str, Any]) -> dict[str, Any]:
    """Which of these blobs are not here whole, and from which byte each goes on. At most 500 at once."""
    blobs = _blobs()
    offsets = ((blob, blobs.offset(blob)) for blob in dict.fromkeys(said["blobs"]))
    return {"lacking": [{"blob": blob, "offset": offset} for blob, offset in offsets if offset is not None]}


@blueprint.post("/blobs")
@blueprint.arguments(PieceSchema)
@blueprint.response(200, Received)
def receive_piece(said: dict[str, Any]) -> dict[str, Any]:
    """Bring a piece of a blob, at most 250,000 bytes: the next one, from where it ends here. A repeat is no fault.

    With the last of them the whole is held against its name; what is not what its name says is thrown away.
    """
    return {"offset": _blobs().receive(parse_piece(said))}


@blueprint.get("/blobs/<blob>")
@blueprint.arguments(From, location="query")
@blueprint.response(200, PieceSchema)
def read_piece(said: dict[str, Any], blob: str) -> dict[str, Any]:
    """A piece of a blob that is here whole, from a byte on.

    With the first of them the whole is held against its name: one that the disk has spoilt is not handed out.
    """
    blobs = _blobs()
    if said["at"] == 0:
        blobs.prove(blob)
    return blobs.read(blob, said["at"]).body()


def _blobs() -> Blobs:
    found = laptop().blobs
    if found is None:
        raise BlobError("no-blobs")
    return found
