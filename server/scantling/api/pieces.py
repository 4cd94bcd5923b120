"""Pieces and boards: what a room needs cut, as JSON and as a table, and from which boards."""

from flask import Response

from scantling.api.blueprint import Blueprint, laptop, reply_answer, require
from scantling.engine.desk import QUESTIONS
from scantling.printed import format_pieces_csv

blueprint = Blueprint("pieces", __name__, url_prefix="/api/rooms", description="Cut list and board plan.")


@blueprint.get("/<room>/pieces")
@blueprint.response(200, QUESTIONS["pieces"].gives)
def list_pieces(room: str) -> Response:
    """Every piece that the room needs, with its working."""
    require("room", room)
    return reply_answer({"ask": "pieces", "room": room})


@blueprint.get("/<room>/pieces.csv")
@blueprint.response(200, {"type": "string"}, content_type="text/csv")
def table_pieces(room: str) -> Response:
    """The cut list as a table for a spreadsheet."""
    name = require("room", room)[-1].body["name"]
    answered = laptop().answer({"ask": "pieces", "room": room})
    if "error" in answered:
        return reply_answer({"ask": "pieces", "room": room})
    table = format_pieces_csv([(name, answered["answer"])])
    headers = {"Content-Disposition": 'attachment; filename="pieces.csv"'}
    return Response(table, headers=headers, content_type="text/csv; charset=utf-8")


@blueprint.get("/<room>/boards")
@blueprint.response(200, QUESTIONS["boards_for_room"].gives)
def plan_boards(room: str) -> Response:
    """What to buy for the room, what it costs with its proof, and which piece comes from which board."""
    require("room", room)
    return reply_answer({"ask": "boards_for_room", "room": room})
