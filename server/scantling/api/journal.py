"""The journal as a file: one entry on each line, to keep as a backup or to carry to another notebook."""

from collections.abc import Iterator
from typing import Any

import flask
from flask import Response
from marshmallow import Schema, fields

from scantling.api.blueprint import Blueprint, laptop
from scantling.api.door import JOURNAL_BYTES, DoorError, read_bytes
from scantling.engine.errors import quote
from scantling.sync import keep_lines
from scantling.wire import parse_text

blueprint = Blueprint("journal", __name__, url_prefix="/api/journal", description="The journal as a file.")

LINES = "application/x-ndjson"


class Imported(Schema):
    stored = fields.Integer(required=True, metadata={"description": "Entries that were new."})
    known = fields.Integer(required=True, metadata={"description": "Entries that were here already, the same."})


@blueprint.get("")
@blueprint.response(200, {"type": "string"}, content_type=LINES)
def export_journal() -> Response:
    """Every entry, one to a line, in the order in which they came here."""
    store = laptop().store

    def lines() -> Iterator[str]:
        with store.reading() as ledger:
            for row in ledger.read_all():
                yield row.text + "\n"

    headers = {"Content-Disposition": 'attachment; filename="scantling-journal.ndjson"'}
    return Response(lines(), headers=headers, content_type=LINES)


@blueprint.post("")
@blueprint.doc(requestBody={"required": True, "content": {LINES: {"schema": {"type": "string"}}}})
@blueprint.response(200, Imported)
def import_journal() -> dict[str, Any]:
    """Bring entries from a file: all of them, or, when one is not a proper entry, none."""
    flask.request.max_content_length = JOURNAL_BYTES
    if flask.request.mimetype != LINES:
        raise DoorError("wrong-lines-type", what=quote(flask.request.mimetype))
    stored, known = keep_lines(laptop().store, parse_text(read_bytes(flask.request)))
    return {"stored": stored, "known": known}
