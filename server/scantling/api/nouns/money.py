"""Money and what it buys: what a room wants bought, receipts, what is on hand, what it came to."""

from typing import Any

from flask import Response
from marshmallow import fields

from scantling.api.blueprint import Blueprint, Written, laptop, reply_answer, require, write
from scantling.clock import mint_id, now_ms
from scantling.engine.bodies import LotBody
from scantling.engine.desk import QUESTIONS

blueprint = Blueprint("money", __name__, url_prefix="/api", description="What is bought, and what it costs.")


class Lot(LotBody):
    article = fields.String(
        load_default=None, allow_none=True, metadata={"description": "What it is of; else name it as the plan does."}
    )
    price = fields.String(load_default="", metadata={"description": "Paid in all; left out where it is just here."})
    date = fields.String(load_default="")
    note = fields.String(load_default="", metadata={"description": "Such as its batch number."})

    class Meta(LotBody.Meta):
        exclude = ("lot", "of")


@blueprint.get("/rooms/<room>/shopping")
@blueprint.response(200, QUESTIONS["shopping"].gives)
def list_shopping(room: str) -> Response:
    """All that a room wants bought: boards, coverings and supplies."""
    require("room", room)
    return reply_answer({"ask": "shopping", "room": room})


@blueprint.get("/houses/<house>/stock")
@blueprint.response(200, QUESTIONS["stock"].gives)
def list_stock(house: str) -> Response:
    """What is on hand: boards left over, rolls, sheets and cans."""
    require("house", house)
    return reply_answer({"ask": "stock", "house": house})


@blueprint.get("/houses/<house>/compared")
@blueprint.response(200, QUESTIONS["compare"].gives)
def compare_rooms(house: str) -> Response:
    """The rooms of a house side by side: read and open, pieces cut and to cut, boards and money, doubts."""
    require("house", house)
    return reply_answer({"ask": "compare", "house": house})


@blueprint.get("/houses/<house>/money")
@blueprint.response(200, QUESTIONS["spent"].gives)
def list_money(house: str) -> Response:
    """What was planned against what was spent, room by room, with every receipt."""
    require("house", house)
    return reply_answer({"ask": "spent", "house": house})


@blueprint.get("/houses/<house>/next-rooms")
@blueprint.response(200, QUESTIONS["next_rooms"].gives)
def tell_next_rooms(house: str) -> Response:
    """What the rooms to come may cost, told from those that are measured."""
    require("house", house)
    return reply_answer({"ask": "next_rooms", "house": house})


@blueprint.post("/houses/<house>/lots")
@blueprint.arguments(Lot)
@blueprint.response(201, Written)
def add_lot_for_house(said: dict[str, Any], house: str) -> dict[str, Any]:
    """So many of a thing, on hand for any room of the house."""
    require("house", house)
    _require_article(house, said)
    return write("lot", {"lot": mint_id(now_ms()), "of": house, **said})


@blueprint.post("/rooms/<room>/lots")
@blueprint.arguments(Lot)
@blueprint.response(201, Written)
def add_lot_for_room(said: dict[str, Any], room: str) -> dict[str, Any]:
    """So many of a thing for this room: with a price it is a receipt against the plan."""
    _require_article(require("room", room)[-1].body["house"], said)
    return write("lot", {"lot": mint_id(now_ms()), "of": room, **said})


@blueprint.put("/lots/<lot>")
@blueprint.arguments(Lot)
@blueprint.response(200, Written)
def restate_lot(said: dict[str, Any], lot: str) -> dict[str, Any]:
    """Say anew how many there are, or what was paid."""
    before = require("lot", lot)
    of = before[-1].body["of"]
    _require_article(next((room.body["house"] for room in laptop().in_force("room", room=of)[-1:]), of), said)
    return write("lot", {"lot": lot, "of": of, **said}, before)


def _require_article(house: str, said: dict[str, Any]) -> None:
    if said["article"] is not None:
        require("article", said["article"], house=house)
