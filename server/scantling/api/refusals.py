"""What the door refuses, in sentences, with the status of each; and the one body in which every refusal goes out."""

from __future__ import annotations

import logging
from collections.abc import Mapping
from typing import Any, ClassVar

import flask
from flask import Response
from marshmallow import Schema, fields
from werkzeug.exceptions import HTTPException

from scantling.engine.errors import EngineError, quote

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
        "wrong-origin": "This came from another site's page ({origin}), and nothing was done: open Scantling's own.",
        "through-a-proxy": "This came through a proxy that this server was not told of: start it with "
        "--behind-proxy and the proxy's address.",
        "wrong-forwarded": "The proxy says {what} of who asked, which is no Forwarded header: see RFC 7239.",
        "two-forwardings": "The proxy sends both Forwarded and X-Forwarded headers: let it send one kind and drop the "
        "other, which anybody may have written.",
        "owner-only": "Only the laptop's own page does this: open it there, on localhost.",
        "wrong-host": "This notebook does not answer to the name {name}: use localhost, or its own name.",
        "no-such-address": "There is nothing at this address: see /api/ for what there is.",
        "wrong-method": "This address does not take {method}: see /api/ for what it takes.",
        "request": "The request was refused ({code} {name}).",
        "wrong-key": "The Idempotency-Key of a request has 1 to {limit} characters.",
        "no-such-house": "There is no house {name} in this notebook: see /api/houses.",
        "no-such-room": "There is no room {name} in this notebook: see /api/houses.",
        "no-such-wall": "There is no wall {name} in this room: see the room's survey.",
        "no-such-setting": "{name} is no setting of this {sort}: the nearest that it has are {nearest}.",
        "no-such-reading": "There is no {name} of this {sort} to read: it has {names}.",
        "no-such-piece": "There is no piece {name} in this room: see the room's pieces, place_of.",
        "no-such-free": "There is no free piece {name} in this room: see the question free.",
        "no-such-article": "There is no paper, film, sheet or paint {name} in this house: see the question coverings.",
        "no-such-covering": "There is no covering {name} in this room: see the question coverings.",
        "no-such-attachment": "There is no attachment {name} in this notebook: see the question attachments.",
        "no-such-pin": "There is no pin {name} on this photo: see the photo's marks.",
        "no-such-figure": "No {name} can be pinned there: see the figures that the photo's marks name.",
        "no-such-sum": "There is no sum {name} on the tape: see /api/sums.",
        "no-such-lot": "There is no lot {name} in this notebook.",
        "no-such-entry": "There is no entry {name} in this journal.",
        "not-understood": "{sentence}",
        "failed": "Scantling failed here, and nothing of this request was kept: the log on the laptop says why.",
    }


STATUS: Mapping[str, int] = {
    "not-json": 400,
    "too-deep": 400,
    "too-many-brackets": 413,
    "wrong-type": 415,
    "wrong-lines-type": 415,
    "wrong-encoding": 415,
    "not-gzip": 400,
    "no-length": 411,
    "too-large": 413,
    "too-many-entries": 413,
    "wrong-origin": 403,
    "through-a-proxy": 403,
    "wrong-forwarded": 400,
    "two-forwardings": 400,
    "owner-only": 403,
    "not-paired": 401,
    "struck-device": 401,
    "wrong-code": 403,
    "used-code": 403,
    "old-code": 403,
    "closed-code": 403,
    "no-such-device": 404,
    "wrong-host": 421,
    "wrong-key": 400,
    "protocol": 409,
    "id-taken": 409,
    "no-such-house": 404,
    "no-such-room": 404,
    "no-such-wall": 404,
    "no-such-setting": 404,
    "no-such-piece": 404,
    "no-such-free": 404,
    "no-such-article": 404,
    "no-such-covering": 404,
    "no-such-lot": 404,
    "no-such-attachment": 404,
    "no-such-pin": 404,
    "no-such-figure": 404,
    "no-such-sum": 404,
    "no-such-blob": 404,
    "blob-elsewhere": 409,
    "too-many-coming": 503,
    "too-many-blobs": 507,
    "no-room": 507,
    "no-blobs": 404,
    "blob-disk": 507,
    "no-such-entry": 404,
    "not-issued": 404,
    "too-many-plans": 503,
    "disk": 507,
    "damaged": 500,
    "read-only": 507,
    "gone": 507,
    "busy": 503,
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
