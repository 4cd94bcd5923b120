"""Sync: the exchange of entries with a phone."""

from typing import Any

import flask
from flask import current_app

from scantling.api.blueprint import Blueprint, laptop
from scantling.api.door import read_json
from scantling.sync import ExchangeReply, ExchangeRequest, exchange

blueprint = Blueprint("sync", __name__, url_prefix="/api/sync", description="The exchange of journal entries.")


@blueprint.post("")
@blueprint.doc(
    requestBody={"required": True, "content": {"application/json": {"schema": ExchangeRequest}}},
)
@blueprint.response(200, ExchangeReply)
def sync() -> dict[str, Any]:
    """Bring entries and fetch what is new; the same request may be sent any number of times.

    The body may be gzip. At most 500 entries at once; 413 means: send half as many.
    """
    return exchange(laptop().store, read_json(flask.request), current_app.config["BUILD"])
