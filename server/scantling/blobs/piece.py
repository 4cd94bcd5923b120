"""A piece of a blob as it travels: one JSON object, the same in a request, in an answer and on a line of a file.

It carries the digest of its own bytes, so that a piece that was damaged on the way costs that piece and not the blob.
"""

from __future__ import annotations

import base64
import binascii
import hashlib
import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, ClassVar

from marshmallow import RAISE, ValidationError, fields, validate

from scantling.engine.bodies import BLOB_AT_MOST
from scantling.engine.errors import EngineError
from scantling.engine.forms import Schema
from scantling.engine.shapes import first_refusal

BLOB_BYTES = BLOB_AT_MOST
#: In base64 it must fit into a line of a file, and into a request with room to spare.
PIECE_BYTES = 250_000
DIGEST = re.compile(r"[0-9a-f]{64}\Z")


class BlobError(EngineError):
    sentences: ClassVar[Mapping[str, str]] = {
        "piece-damaged": "The piece of {blob} at {byte} is not what its digest says: send it again.",
        "piece-outside": "A piece of {blob} at {byte} does not lie within its {size} bytes: look how large it is.",
        "blob-elsewhere": "Of {blob} the first {offset} bytes are here: go on from there, and not from {byte}.",
        "blob-damaged": "What came as {blob} is not what its name says, and was thrown away: send it from its start.",
        "no-such-blob": "There is no attachment {blob} here, or not all of it yet.",
        "too-many-coming": "{limit} attachments are on their way here already: finish one of those first.",
        "too-many-blobs": "{limit} attachments are here, and that is the most: no other is taken.",
        "no-room": "Too little is free on the disk for an attachment of {size} bytes: free some, then send it again.",
        "no-blobs": "This server keeps no attachments.",
        "blob-disk": "The attachment could not be kept ({why}): nothing of this piece counts, send it again.",
    }


def _digest(**said: str) -> fields.String:
    return fields.String(required=True, validate=validate.Regexp(DIGEST), metadata=said)


class PieceSchema(Schema):
    """A part of a blob: `data` in base64, from byte `at` on; `digest` is the SHA-256 of those bytes in hex."""

    class Meta:
        unknown = RAISE

    blob = _digest(description="The SHA-256 of all its bytes, in hex: its name.")
    size = fields.Integer(required=True, strict=True, validate=validate.Range(1, BLOB_BYTES))
    at = fields.Integer(required=True, strict=True, validate=validate.Range(0, BLOB_BYTES))
    digest = _digest(description="The SHA-256 of the bytes of this piece, in hex.")
    data = fields.String(required=True, validate=validate.Length(max=PIECE_BYTES * 4 // 3 + 4))


_SCHEMA = PieceSchema()


@dataclass(frozen=True, slots=True)
class Piece:
    """`size` is of the whole blob."""

    blob: str
    size: int
    at: int
    data: bytes

    def body(self) -> dict[str, Any]:
        """As it travels."""
        digest = hashlib.sha256(self.data).hexdigest()
        data = base64.b64encode(self.data).decode()
        return {"blob": self.blob, "size": self.size, "at": self.at, "digest": digest, "data": data}


def parse_piece(data: object) -> Piece:
    """A piece that is one. Raises EngineError."""
    try:
        read: dict[str, Any] = _SCHEMA.load(data)  # type: ignore[arg-type]
    except ValidationError as error:
        raise first_refusal(error.messages) from error
    blob, at, size = read["blob"], read["at"], read["size"]
    try:
        content = base64.b64decode(read["data"], validate=True)
    except (binascii.Error, ValueError):  # ValueError: letters beyond ASCII
        content = b""
    if not content or hashlib.sha256(content).hexdigest() != read["digest"]:
        raise BlobError("piece-damaged", field="data", blob=short(blob), byte=at)
    if at + len(content) > size:
        raise BlobError("piece-outside", field="at", blob=short(blob), byte=at, size=size)
    return Piece(blob, size, at, content)


def short(blob: str) -> str:
    """As much of a blob's name as a sentence bears."""
    return f"{blob[:12]}…"
