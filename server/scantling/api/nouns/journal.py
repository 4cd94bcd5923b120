"""The journal as a file: one entry on each line, to keep as a backup or to carry to another notebook."""

from __future__ import annotations

from typing import Any

import flask
from flask import Response
from marshmallow import Schema, fields, validate

from scantling.api.blueprint import Blueprint, laptop
from scantling.api.door import JOURNAL_BYTES
from scantling.api.packed import pieces_of
from scantling.api.refusals import DoorError
from scantling.engine.errors import quote
from scantling.journal_file.restoring import restore

blueprint = Blueprint("journal", __name__, url_prefix="/api/journal", description="The journal as a file.")

LINES = "application/x-ndjson"


class Asked(Schema):
    beside = fields.Integer(
        load_default=0,
        validate=validate.OneOf([0, 1]),
        metadata={"description": "1 takes in another notebook too: its houses stand beside those here."},
    )


class LeftOut(Schema):
    key = fields.String(required=True)
    message = fields.String(required=True, metadata={"description": "Why, with the number of the line."})


class Imported(Schema):
    stored = fields.Integer(required=True, metadata={"description": "Entries that were new."})
    known = fields.Integer(required=True, metadata={"description": "Entries that were here already, the same."})
    left_out = fields.Integer(required=True, metadata={"description": "Lines that are damaged or no entries."})
    refused = fields.List(
        fields.Nested(LeftOut),
        required=True,
        metadata={"description": "The first hundred of those lines; and that the file was cut short, where it was."},
    )


@blueprint.get("")
@blueprint.response(200, {"type": "string"}, content_type=LINES)
def export_journal() -> Response:
    """Every entry, one to a line, in the order in which they came here."""
    # Read to its end before the first byte goes out: a journal that breaks off within a 200 passes for a whole one.
    with laptop().store.reading() as ledger:
        lines = "".join(f"{row.text}\n" for row in ledger.read_all())
    headers = {"Content-Disposition": 'attachment; filename="scantling-journal.ndjson"'}
    return Response(lines, headers=headers, content_type=LINES)


@blueprint.post("")
@blueprint.doc(requestBody={"required": True, "content": {LINES: {"schema": {"type": "string"}}}})
@blueprint.arguments(Asked, location="query")
@blueprint.response(200, Imported)
def import_journal(asked: dict[str, Any]) -> dict[str, Any]:
    """Bring entries from a file, which may be gzip: what is sound goes in, what is not is named by its line.

    Refused as a whole where no line of it is sound, and where it is of another notebook.
    """
    flask.request.max_content_length = JOURNAL_BYTES
    if flask.request.mimetype != LINES:
        raise DoorError("wrong-lines-type", what=quote(flask.request.mimetype))
    pieces = pieces_of(flask.request, JOURNAL_BYTES)
    restored = restore(laptop().store, pieces, blobs=laptop().blobs, beside=None if asked["beside"] else "?beside=1")
    refused = [*restored.refusals, *filter(None, [restored.cut_short()])]
    if refused and not restored.stored + restored.known:
        raise refused[0]
    said = [{"key": error.key, "message": error.message} for error in refused]
    return {"stored": restored.stored, "known": restored.known, "left_out": restored.left_out, "refused": said}
