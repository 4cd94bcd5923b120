"""The door: what a request must be before any view sees it, and the one body in which every refusal goes out.

It checks the host name also on loopback (a page of another site can point its own name at 127.0.0.1 and would then read
the notebook), takes JSON only as application/json (a form of another site cannot send that unasked), and bounds size,
depth and the unpacking of gzip. There are no cookies, so there is nothing to steal with them.
"""

from __future__ import annotations

import logging
import re
import zlib
from collections.abc import Mapping
from typing import Any, ClassVar

import flask
from flask import Flask, Request, Response
from marshmallow import Schema, fields
from werkzeug.exceptions import HTTPException, RequestEntityTooLarge

from scantling.engine.errors import EngineError, quote
from scantling.wire import parse_json, parse_text

BODY_BYTES = 2_000_000
JOURNAL_BYTES = 64_000_000
PIECE_BYTES = 64_000
OWN_NAMES = ("localhost", "127.0.0.1", "[::1]")

log = logging.getLogger(__name__)


class DoorError(EngineError):
    """A refusal of the request itself, before anybody looked at what it asks."""

    sentences: ClassVar[Mapping[str, str]] = {
        "wrong-type": 'The body is {what}: send it as "Content-Type: application/json".',
        "wrong-lines-type": 'The body is {what}: send the journal as "Content-Type: application/x-ndjson".',
        "wrong-encoding": "The body is encoded as {what}: send it plain or as gzip.",
        "not-gzip": "The body says it is gzip and cannot be unpacked: send it again.",
        "no-length": "The body comes without a Content-Length: send it with one.",
        "too-large": "The body is larger than {limit} bytes: send less at once.",
        "wrong-host": "This notebook does not answer to the name {name}: use localhost, or its own name.",
        "no-such-address": "There is nothing at this address: see /api/ for what there is.",
        "wrong-method": "This address does not take {method}: see /api/ for what it takes.",
        "request": "The request was refused ({code} {name}).",
        "no-such-house": "There is no house {name} in this notebook: see /api/houses.",
        "no-such-room": "There is no room {name} in this notebook: see /api/houses.",
        "no-such-wall": "There is no wall {name} in this room: see the room's survey.",
        "no-such-entry": "There is no entry {name} in this journal.",
        "not-understood": "{sentence}",
        "failed": "Scantling failed here, and nothing of this request was kept: the log on the laptop says why.",
    }


STATUS: Mapping[str, int] = {
    "not-json": 400,
    "too-deep": 400,
    "wrong-type": 415,
    "wrong-lines-type": 415,
    "wrong-encoding": 415,
    "not-gzip": 400,
    "no-length": 411,
    "too-large": 413,
    "too-many-entries": 413,
    "wrong-host": 421,
    "protocol": 409,
    "id-taken": 409,
    "seq-taken": 409,
    "no-such-house": 404,
    "no-such-room": 404,
    "no-such-wall": 404,
    "no-such-entry": 404,
    "not-issued": 404,
    "disk": 507,
    "damaged": 500,
}
HEARD_BUT_REFUSED = 422


class Where(Schema):
    field = fields.String(required=True)
    at = fields.Integer(required=True, allow_none=True)


class Refusal(Schema):
    key = fields.String(required=True)
    message = fields.String(required=True)
    where = fields.Nested(Where, required=True)


class RefusalBody(Schema):
    """The body of every answer that is not a success."""

    error = fields.Nested(Refusal, required=True)


def guard(app: Flask, names: tuple[str, ...]) -> None:
    """Put the door in front of the app, and its refusals behind it. `names` are the host names besides loopback."""
    allowed = {name.lower() for name in (*OWN_NAMES, *names)}
    app.config["MAX_CONTENT_LENGTH"] = BODY_BYTES

    @app.before_request
    def check_host() -> None:
        host = flask.request.environ.get("HTTP_HOST", "")
        if re.sub(r":\d{1,5}\Z", "", host).lower() not in allowed:
            raise DoorError("wrong-host", name=quote(host))

    @app.after_request
    def mark_as_private(response: Response) -> Response:
        if flask.request.path.startswith("/api/"):
            response.headers.setdefault("Cache-Control", "no-store")
            response.headers.setdefault("X-Content-Type-Options", "nosniff")
        return response

    app.register_error_handler(EngineError, reply_refusal)
    app.register_error_handler(HTTPException, reply_http)
    app.register_error_handler(Exception, reply_failure)


def reply_refusal(error: EngineError) -> tuple[dict[str, Any], int]:
    return {"error": error.body()}, status_of(error.key)


def status_of(key: str) -> int:
    """The HTTP status of a refusal. What the engine refuses was a proper request about something that cannot be."""
    return STATUS.get(key, HEARD_BUT_REFUSED)


def reply_http(error: HTTPException) -> Response | tuple[dict[str, Any], int] | HTTPException:
    """werkzeug's own refusals in our words; its redirects and other answers as they are."""
    code = error.code or 500
    if code < 400:
        return error
    refusal = {
        404: lambda: DoorError("no-such-address"),
        405: lambda: DoorError("wrong-method", method=quote(flask.request.method)),
    }.get(code, lambda: DoorError("request", code=code, name=error.name))()
    response = flask.jsonify({"error": refusal.body()})
    response.status_code = code
    if code == 405:
        response.headers["Allow"] = dict(error.get_headers()).get("Allow", "")
    return response


def reply_failure(error: Exception) -> tuple[dict[str, Any], int]:
    # %r, or a line break in the address would write a line of its own into the log.
    log.error("failed at %r", flask.request.path, exc_info=error)
    return {"error": DoorError("failed").body()}, 500


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
