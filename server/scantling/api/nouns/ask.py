"""Ask: the desk's door as it is, for one question or a list of them."""

from typing import Any

import flask
from flask import Response

from scantling.api.blueprint import Blueprint, laptop
from scantling.api.door import read_text
from scantling.wire import parse_json

blueprint = Blueprint("ask", __name__, url_prefix="/api/ask", description="Questions to the engine.")


def _or_list(name: str) -> dict[str, Any]:
    one = {"$ref": f"#/components/schemas/{name}"}
    return {"content": {"application/json": {"schema": {"oneOf": [one, {"type": "array", "items": one}]}}}}


@blueprint.post("")
@blueprint.doc(
    requestBody={"required": True, **_or_list("Question")},
    responses={"200": {"description": "OK", **_or_list("Answered")}},
)
def ask() -> Response:
    """Ask one question, or a list of them.

    The answer is {"answer": …} or {"error": …}, a list for a list, and status 200 for both: the question was heard.
    """
    text = read_text(flask.request)
    parse_json(text)  # refuses what the desk's own reader would choke on, with the status that says whose fault it is
    return Response(laptop().answer_text(text), content_type="application/json")
