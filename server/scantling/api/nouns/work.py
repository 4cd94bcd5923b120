"""The order of work in a room, and what is ticked off on any list."""

from typing import Any

from flask import Response
from marshmallow import fields

from scantling.api.blueprint import Blueprint, Written, laptop, reply_answer, require, write
from scantling.engine.bodies import TickBody
from scantling.engine.desk import QUESTIONS

blueprint = Blueprint("work", __name__, url_prefix="/api", description="The order of work, and ticks.")


class Tick(TickBody):
    remember = fields.String(load_default="", metadata={"description": "What the line said when it was ticked off."})

    class Meta(TickBody.Meta):
        exclude = ("of",)


@blueprint.get("/rooms/<room>/work")
@blueprint.response(200, QUESTIONS["work"].gives)
def order_work(room: str) -> Response:
    """The order of work in a room: what is done, what can be done today, which readings are in doubt."""
    require("room", room)
    return reply_answer({"ask": "work", "room": room})


@blueprint.post("/houses/<house>/ticks")
@blueprint.arguments(Tick)
@blueprint.response(201, Written)
def tick_for_house(said: dict[str, Any], house: str) -> dict[str, Any]:
    """Tick off a line of a list of the house, such as a caution."""
    require("house", house)
    return _tick(house, said)


@blueprint.post("/rooms/<room>/ticks")
@blueprint.arguments(Tick)
@blueprint.response(201, Written)
def tick_for_room(said: dict[str, Any], room: str) -> dict[str, Any]:
    """Tick off a step of the room's work, or a thing to buy for it."""
    require("room", room)
    return _tick(room, said)


@blueprint.post("/rooms/<room>/coverings/<covering>/ticks")
@blueprint.arguments(Tick)
@blueprint.response(201, Written)
def tick_for_covering(said: dict[str, Any], room: str, covering: str) -> dict[str, Any]:
    """Tick off a strip that is cut, or hung."""
    require("covering", covering, room=room)
    return _tick(covering, said)


def _tick(of: str, said: dict[str, Any]) -> dict[str, Any]:
    about = {"of": of, "list": said["list"], "key": said["key"]}
    return write("tick", {"of": of, **said}, laptop().in_force("tick", **about))
