"""The door: what a request must be before any view sees it, and how its body is read.

Who asks is `visitor`'s matter, and how a refusal goes out is `refusals`'. Here JSON is taken only as application/json,
and size, depth and the unpacking of gzip are bounded. There are no cookies, so there is nothing to steal with them.
"""

from __future__ import annotations

import zlib
from typing import Any

import flask
from flask import Flask, Request, Response
from werkzeug.exceptions import HTTPException, RequestEntityTooLarge

from scantling.api.refusals import DoorError, reply_failure, reply_http, reply_refusal
from scantling.api.visitor import Entrance
from scantling.engine.errors import EngineError, quote
from scantling.wire import parse_json, parse_text

BODY_BYTES = 2_000_000
JOURNAL_BYTES = 64_000_000
PIECE_BYTES = 64_000


def guard(app: Flask, entrance: Entrance) -> None:
    """Put the door in front of the app, and its refusals behind it."""
    app.config["MAX_CONTENT_LENGTH"] = BODY_BYTES

    @app.before_request
    def check_visitor() -> Response | None:
        return entrance.check(flask.request)

    @app.after_request
    def mark_as_private(response: Response) -> Response:
        if flask.request.path.startswith("/api/"):
            response.headers.setdefault("Cache-Control", "no-store")
            response.headers.setdefault("X-Content-Type-Options", "nosniff")
            response.headers.update(entrance.sharing(flask.request))
        return response

    app.register_error_handler(EngineError, reply_refusal)
    app.register_error_handler(HTTPException, reply_http)
    app.register_error_handler(Exception, reply_failure)


def read_text(request: Request) -> str:
    """The body as text: unpacked, bounded, UTF-8."""
    if request.mimetype != "application/json":
        raise DoorError("wrong-type", what=quote(request.mimetype or "of no type"))
    return parse_text(read_bytes(request))


def read_bytes(request: Request) -> bytes:
    data = receive(request)
    encoding = request.headers.get("Content-Encoding", "identity").lower()
    if encoding == "gzip":
        return unpack(data, request.max_content_length or BODY_BYTES)
    if encoding != "identity":
        raise DoorError("wrong-encoding", what=quote(encoding))
    return data


def receive(request: Request) -> bytes:
    """The body as it came. Without a length it could be cut off at the limit and look whole, so it is not taken."""
    if request.content_length is None and request.headers.get("Transfer-Encoding"):
        _drop_body(request)
        raise DoorError("no-length")
    try:
        return request.get_data(cache=False)
    except RequestEntityTooLarge as error:
        _drop_body(request)
        raise DoorError("too-large", limit=request.max_content_length) from error


def _drop_body(request: Request) -> None:
    """Read what is still coming: a sender that is cut off while it sends sees a broken connection and not the refusal,
    and a phone would never learn to send less."""
    body, dropped = request.environ["wsgi.input"], 0
    while dropped < JOURNAL_BYTES and (piece := body.read(PIECE_BYTES)):
        dropped += len(piece)


def unpack(data: bytes, limit: int) -> bytes:
    """gzip, unpacked no further than the limit: a few kilobytes can else fill the memory."""
    unpacker = zlib.decompressobj(31)
    try:
        unpacked = unpacker.decompress(data, limit)
    except zlib.error as error:
        raise DoorError("not-gzip") from error
    if unpacker.unconsumed_tail:
        raise DoorError("too-large", limit=limit)
    if not unpacker.eof or unpacker.unused_data:
        raise DoorError("not-gzip")
    return unpacked


def read_json(request: Request) -> Any:
    return parse_json(read_text(request))
