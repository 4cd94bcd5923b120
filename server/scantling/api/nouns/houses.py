"""Houses: the house itself, its rooms, and the standard that it keeps."""

from difflib import get_close_matches
from typing import Any

from flask import Response
from marshmallow import Schema, fields

from scantling.api.blueprint import Blueprint, Written, laptop, reply_answer, require, write
from scantling.api.nouns.pieces import Plan, write_plan
from scantling.api.refusals import DoorError
from scantling.clock import mint_id, now_ms
from scantling.engine.bodies import HouseBody, RoomBody, SettingBody
from scantling.engine.desk import QUESTIONS
from scantling.engine.errors import quote
from scantling.engine.questions.costs.of_house import check_rough
from scantling.engine.questions.covered.said import check_said
from scantling.engine.questions.settable import SETTABLE
from scantling.engine.questions.supplies.said import check_supply
from scantling.engine.settings import check_setting

blueprint = Blueprint("houses", __name__, url_prefix="/api/houses", description="Houses, rooms, standards.")


class House(HouseBody):
    built = fields.Integer(load_default=None, allow_none=True, strict=True)

    class Meta(HouseBody.Meta):
        exclude = ("house",)


class Room(RoomBody):
    class Meta(RoomBody.Meta):
        exclude = ("room", "house")


class Setting(SettingBody):
    class Meta(SettingBody.Meta):
        exclude = ("of", "name")


@blueprint.get("")
@blueprint.response(200, QUESTIONS["notebook"].gives)
def list_houses() -> Response:
    """All houses with their rooms, settings and counts, as the question notebook gives them."""
    return reply_answer({"ask": "notebook"})


@blueprint.post("")
@blueprint.arguments(House)
@blueprint.response(201, Written)
def add_house(said: dict[str, Any]) -> dict[str, Any]:
    """Start a house."""
    return write("house", {"house": mint_id(now_ms()), **said})


@blueprint.put("/<house>")
@blueprint.arguments(House)
@blueprint.response(200, Written)
def restate_house(said: dict[str, Any], house: str) -> dict[str, Any]:
    """Say the house's name and year anew; what was said before is kept and superseded."""
    return write("house", {"house": house, **said}, require("house", house))


@blueprint.put("/<house>/settings/<name>")
@blueprint.arguments(Setting)
@blueprint.response(200, Written)
def set_for_house(said: dict[str, Any], house: str, name: str) -> dict[str, Any]:
    """Set one line of the house's standard, such as base.thickness."""
    require("house", house)
    return write_setting("house", house, name, said["value"])


@blueprint.post("/<house>/rooms")
@blueprint.arguments(Room(partial=("closed",)))
@blueprint.response(201, Written)
def add_room(said: dict[str, Any], house: str) -> dict[str, Any]:
    """Start a room in this house."""
    require("house", house)
    return write("room", {"room": mint_id(now_ms()), "house": house, "closed": False, **said})


class Rooms(Schema):
    room = fields.List(fields.String(), metadata={"description": "rooms to plan; left out, every room still to cut"})


@blueprint.get("/<house>/boards")
@blueprint.arguments(Rooms, location="query")
@blueprint.response(200, QUESTIONS["boards_for_house"].gives)
def plan_boards(said: dict[str, Any], house: str) -> Response:
    """What to buy for several rooms at once, so that one board may serve two of them."""
    require("house", house)
    chosen = {"rooms": said["room"]} if said.get("room") else {}
    return reply_answer({"ask": "boards_for_house", "house": house, **chosen})


@blueprint.post("/<house>/boards/plans")
@blueprint.arguments(Plan)
@blueprint.response(201, Written)
def accept_plan(said: dict[str, Any], house: str) -> dict[str, Any]:
    """Settle on boards of one profile for several rooms, as a plan's `accept` gives them."""
    require("house", house)
    return write_plan(house, said)


def write_setting(sort: str, of: str, name: str, value: object) -> dict[str, Any]:
    """A line of a standard, refused when it cannot be: a price that is no price, a joint that nobody cuts, a name that
    counts for nothing where it is said."""
    if name not in SETTABLE[sort]:
        nearest = ", ".join(get_close_matches(name, sorted(SETTABLE[sort]), n=3, cutoff=0))
        raise DoorError("no-such-setting", name=quote(name), sort=sort, nearest=nearest)
    for check in (check_setting, check_said, check_supply, check_rough):
        for problem in check(name, value):
            raise problem
    return write("setting", {"of": of, "name": name, "value": value}, laptop().in_force("setting", of=of, name=name))
