"""Pieces and boards: what a room needs cut, as JSON and as a table, how its pieces stand, and from which boards."""

from typing import Any

from flask import Response
from marshmallow import Schema, fields

from scantling.api.blueprint import Blueprint, Written, laptop, reply_answer, require, write, write_once
from scantling.api.refusals import DoorError
from scantling.clock import mint_id, now_ms
from scantling.engine.bodies import PlanBody, ScrapCutBody, StateBody
from scantling.engine.desk import QUESTIONS
from scantling.engine.journal import EntrySchema
from scantling.engine.questions.cutlist.files import format_table

blueprint = Blueprint("pieces", __name__, url_prefix="/api/rooms", description="Cut list and board plan.")


class Mark(StateBody):
    as_cut = fields.String(
        load_default=None, allow_none=True, metadata={"description": "The board's length as it was read, as typed."}
    )

    class Meta(StateBody.Meta):
        # The piece is in the address; what a cut remembers is the engine's to say.
        exclude = ("piece", "cut_to", "left", "right")


class Plan(PlanBody):
    boards = fields.Raw(
        required=True, metadata={"description": "as the plan's accept gives them; one without a name is given one"}
    )

    class Meta(PlanBody.Meta):
        exclude = ("of",)


class Issued(Schema):
    """What was written: none where every piece had its letter."""

    entries = fields.List(fields.Nested(EntrySchema), required=True)


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
    table = format_table([(name, answered["answer"])])
    headers = {"Content-Disposition": 'attachment; filename="pieces.csv"'}
    return Response(table, headers=headers, content_type="text/csv; charset=utf-8")


@blueprint.post("/<room>/pieces/issue")
@blueprint.response(201, Issued)
def issue_pieces(room: str) -> dict[str, Any]:
    """Hand out the list: every piece that has none gets its letter for good."""
    require("room", room)
    found = _answer({"ask": "issue", "room": room, "list": mint_id(now_ms())})
    return {"entries": [write("issue", body)["entry"] for body in found["bodies"]]}


@blueprint.post("/<room>/pieces/<piece>/state")
@blueprint.arguments(Mark)
@blueprint.response(201, Written)
def mark_piece(said: dict[str, Any], room: str, piece: str) -> dict[str, Any]:
    """Say that a piece is cut, fitted, to be cut anew, or still to cut; with its length as cut, if it was read."""
    require("room", room)
    found = _answer({"ask": "mark", "room": room, "piece": piece, **said})
    return {"entry": write_once("state", found["body"], found["supersedes"])}


class Spoiled(Schema):
    left = fields.String(
        load_default=None, allow_none=True,
        metadata={"description": "How long what can still be used of it is, as typed; nothing of it without."},
    )  # fmt: skip


@blueprint.post("/<room>/pieces/<piece>/spoiled")
@blueprint.arguments(Spoiled)
@blueprint.response(201, Issued)
def spoil_piece(said: dict[str, Any], room: str, piece: str) -> dict[str, Any]:
    """Say that a piece was spoiled at the saw: it comes back to be cut again."""
    require("room", room)
    found = _answer({"ask": "spoiled", "room": room, "piece": piece, **said})
    written: list[Any] = []
    for entry in found["entries"]:
        before = laptop().in_force("state", piece=entry["body"]["piece"])
        written.append(write(entry["kind"], entry["body"], before)["entry"])
    return {"entries": written}


class ScrapCut(ScrapCutBody):
    class Meta(ScrapCutBody.Meta):
        exclude = ("of",)


@blueprint.post("/<room>/corners/<wall>/test-cuts")
@blueprint.arguments(ScrapCut)
@blueprint.response(201, Written)
def note_test_cut(said: dict[str, Any], room: str, wall: str) -> dict[str, Any]:
    """Note what scraps showed in the corner at a wall's right end, at the floor or at the ceiling."""
    require("wall", wall, room=room)
    return write("test_cut", {"of": wall, **said}, laptop().in_force("test_cut", of=wall, what=said["what"]))


def _answer(question: dict[str, Any]) -> dict[str, Any]:
    answered = laptop().answer(question)
    if "error" in answered:
        error = answered["error"]
        refusal = DoorError("not-understood", sentence=error["message"], field=error["where"]["field"])
        refusal.key = error["key"]
        raise refusal
    answer: dict[str, Any] = answered["answer"]
    return answer


@blueprint.post("/<room>/boards/plans")
@blueprint.arguments(Plan)
@blueprint.response(201, Written)
def accept_plan(said: dict[str, Any], room: str) -> dict[str, Any]:
    """Settle on boards for one profile, as a plan's `accept` gives them: they are shown from then on."""
    require("room", room)
    return write_plan(room, said)


def write_plan(of: str, said: dict[str, Any]) -> dict[str, Any]:
    """The plan that is settled on for a room, or for a house; a board that has no name yet is given one."""
    boards = said["boards"]
    if isinstance(boards, list):
        boards = [{**row, "board": row.get("board") or mint_id(now_ms())} if isinstance(row, dict) else row
                  for row in boards]  # fmt: skip
    body = {"of": of, **said, "boards": boards}
    return write("plan", body, laptop().in_force("plan", of=of, profile=said["profile"]))


@blueprint.get("/<room>/boards")
@blueprint.response(200, QUESTIONS["boards_for_room"].gives)
def plan_boards(room: str) -> Response:
    """What to buy for the room, what it costs with its proof, and which piece comes from which board."""
    require("room", room)
    return reply_answer({"ask": "boards_for_room", "room": room})
