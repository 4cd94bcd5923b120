"""Rooms: a room's walls from left to right, what is in them, and what the survey says of it."""

from typing import Any

from flask import Response
from marshmallow import fields

from scantling.api.blueprint import Blueprint, Written, laptop, reply_answer, require, write
from scantling.api.nouns.houses import Room, Setting, write_setting
from scantling.api.nouns.readings import find_thing
from scantling.clock import mint_id, now_ms
from scantling.engine.bodies import FreeBody, ObstacleBody, OpeningBody, WallBody
from scantling.engine.desk import QUESTIONS

blueprint = Blueprint("rooms", __name__, url_prefix="/api/rooms", description="A room and what is in it.")


class Wall(WallBody):
    after = fields.String(
        allow_none=True,
        metadata={"description": "The wall to its left; null for the first. Left out: the last wall so far."},
    )

    class Meta(WallBody.Meta):
        exclude = ("room", "wall")


class Opening(OpeningBody):
    class Meta(OpeningBody.Meta):
        exclude = ("opening",)


class Obstacle(ObstacleBody):
    class Meta(ObstacleBody.Meta):
        exclude = ("obstacle",)


class Free(FreeBody):
    class Meta(FreeBody.Meta):
        exclude = ("free", "room")


@blueprint.get("/<room>")
@blueprint.response(200, QUESTIONS["survey"].gives)
def survey_room(room: str) -> Response:
    """The room as surveyed: readings taken and wanted, problems, plan."""
    require("room", room)
    return reply_answer({"ask": "survey", "room": room})


@blueprint.get("/<room>/needs")
@blueprint.response(200, QUESTIONS["needs"].gives)
def list_needs(room: str) -> Response:
    """The readings still wanted, in walking order, each with why."""
    require("room", room)
    return reply_answer({"ask": "needs", "room": room})


@blueprint.put("/<room>")
@blueprint.arguments(Room(partial=("closed",)))
@blueprint.response(200, Written)
def restate_room(said: dict[str, Any], room: str) -> dict[str, Any]:
    """Say the room's name anew, or that its walls are closed."""
    before = require("room", room)
    return write("room", {**before[-1].body, **said}, before)


@blueprint.put("/<room>/settings/<name>")
@blueprint.arguments(Setting)
@blueprint.response(200, Written)
def set_for_room(said: dict[str, Any], room: str, name: str) -> dict[str, Any]:
    """Let this room differ from the house's standard in one line."""
    require("room", room)
    return write_setting("room", room, name, said["value"])


@blueprint.put("/<room>/things/<thing>/settings/<name>")
@blueprint.arguments(Setting)
@blueprint.response(200, Written)
def set_for_thing(said: dict[str, Any], room: str, thing: str, name: str) -> dict[str, Any]:
    """Let one wall, opening or obstacle of this room differ from it in one line: casing.width, thing.behind."""
    require("room", room)
    sort, _ = find_thing(room, thing)
    return write_setting(sort, thing, name, said["value"])


@blueprint.post("/<room>/free")
@blueprint.arguments(Free)
@blueprint.response(201, Written)
def add_free(said: dict[str, Any], room: str) -> dict[str, Any]:
    """Add a piece that no rule gives: its length is a sum, which may name figures of the room."""
    require("room", room)
    return write("free", {"free": mint_id(now_ms()), "room": room, **said})


@blueprint.put("/<room>/free/<free>")
@blueprint.arguments(Free)
@blueprint.response(200, Written)
def restate_free(said: dict[str, Any], room: str, free: str) -> dict[str, Any]:
    """Say a free piece anew."""
    before = require("free", free, room=room)
    return write("free", {"free": free, "room": room, **said}, before)


@blueprint.post("/<room>/walls")
@blueprint.arguments(Wall)
@blueprint.response(201, Written)
def add_wall(said: dict[str, Any], room: str) -> dict[str, Any]:
    """Add a wall; its turn is the corner at its right end, seen from inside."""
    require("room", room)
    if "after" not in said:
        said["after"] = laptop().last_wall(room)
    elif said["after"] is not None:
        require("wall", said["after"], room=room)
    return write("wall", {"wall": mint_id(now_ms()), "room": room, **said})


@blueprint.put("/<room>/walls/<wall>")
@blueprint.arguments(Wall)
@blueprint.response(200, Written)
def restate_wall(said: dict[str, Any], room: str, wall: str) -> dict[str, Any]:
    """Say a wall's corner or its place anew."""
    before = require("wall", wall, room=room)
    if said.get("after") is not None:
        require("wall", said["after"], room=room)
    said.setdefault("after", before[-1].body["after"])
    return write("wall", {"wall": wall, "room": room, **said}, before)


@blueprint.post("/<room>/openings")
@blueprint.arguments(Opening)
@blueprint.response(201, Written)
def add_opening(said: dict[str, Any], room: str) -> dict[str, Any]:
    """Add a door, a window or a cased opening to a wall of this room."""
    require("wall", said["wall"], room=room)
    return write("opening", {"opening": mint_id(now_ms()), **said})


@blueprint.put("/<room>/openings/<opening>")
@blueprint.arguments(Opening)
@blueprint.response(200, Written)
def restate_opening(said: dict[str, Any], room: str, opening: str) -> dict[str, Any]:
    """Say an opening anew: what it is called, or in which wall of this room it is."""
    find_thing(room, opening)
    require("wall", said["wall"], room=room)
    return write("opening", {"opening": opening, **said}, require("opening", opening))


@blueprint.post("/<room>/obstacles")
@blueprint.arguments(Obstacle)
@blueprint.response(201, Written)
def add_obstacle(said: dict[str, Any], room: str) -> dict[str, Any]:
    """Add what stands in the way of the base, which stops there, is notched around it or runs over it; or tile."""
    require("wall", said["wall"], room=room)
    return write("obstacle", {"obstacle": mint_id(now_ms()), **said})


@blueprint.put("/<room>/obstacles/<obstacle>")
@blueprint.arguments(Obstacle)
@blueprint.response(200, Written)
def restate_obstacle(said: dict[str, Any], room: str, obstacle: str) -> dict[str, Any]:
    """Say what stands in the way anew: what the base does at it, or at which wall of this room it stands."""
    find_thing(room, obstacle)
    require("wall", said["wall"], room=room)
    return write("obstacle", {"obstacle": obstacle, **said}, require("obstacle", obstacle))
