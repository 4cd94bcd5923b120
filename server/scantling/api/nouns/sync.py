"""Sync: the exchange of entries with a phone."""

from typing import Any

import flask
from flask import current_app

from scantling.api.blueprint import Blueprint, laptop
from scantling.api.door import read_json
from scantling.sync import (
    CompareReply,
    CompareRequest,
    ExchangeReply,
    ExchangeRequest,
    FetchReply,
    FetchRequest,
    compare,
    exchange,
    fetch,
)

blueprint = Blueprint("sync", __name__, url_prefix="/api/sync", description="The exchange of journal entries.")


def takes(schema: type) -> dict[str, Any]:
    return {"required": True, "content": {"application/json": {"schema": schema}}}


@blueprint.post("")
@blueprint.doc(requestBody=takes(ExchangeRequest))
@blueprint.response(200, ExchangeReply)
def sync() -> dict[str, Any]:
    """Bring entries and fetch what is new; the same request may be sent any number of times.

    The body may be gzip. At most 500 entries at once; 413 means: send half as many. When `left` is 0 and nothing waits
    to be sent, compare `total` with your own: where they differ, ask at /api/sync/compare what is missing.
    """
    return exchange(laptop().store, read_json(flask.request), current_app.config["BUILD"])


@blueprint.post("/compare")
@blueprint.doc(requestBody=takes(CompareRequest))
@blueprint.response(200, CompareReply)
def compare_journals() -> dict[str, Any]:
    """Find out which entries one of the two journals lacks.

    A digest is the first 32 hex digits of the SHA-256 of an entry's canonical JSON; a sum is its digests XORed.
    """
    return compare(laptop().store, read_json(flask.request))


@blueprint.post("/fetch")
@blueprint.doc(requestBody=takes(FetchRequest))
@blueprint.response(200, FetchReply)
def fetch_entries() -> dict[str, Any]:
    """Fetch entries by their digests, at most 500 at once; what does not fit into the answer, ask for again."""
    return fetch(laptop().store, read_json(flask.request))
