"""`compare`: the rooms of a house side by side: what is read and open, cut and to cut, to buy and in doubt."""

from typing import Any

from marshmallow import fields

from scantling.engine.cutlist.states import CUT, FITTED
from scantling.engine.errors import EngineError
from scantling.engine.forms import Schema
from scantling.engine.questions.costs.of_house import RoomMoney, derive_money, rooms_of
from scantling.engine.questions.cutlist.cut_list import list_of
from scantling.engine.questions.facts import room_of
from scantling.engine.questions.notebook.journal import count_readings
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.shopping.good import BOARDS
from scantling.engine.shapes import AskedIn, out, text_out
from scantling.engine.standard import format_price
from scantling.engine.survey.closure import check_closure
from scantling.engine.survey.facts import find_house, find_room
from scantling.engine.walk.needs import derive_needs
from scantling.engine.words import say

NOTHING = {"walls": 0, "read": 0, "wanted": 0, "to_cut": 0, "cut": 0, "fitted": 0, "boards": 0}


class CompareIn(AskedIn):
    house = fields.String(required=True, metadata={"description": say("ask-house")})


class ComparedOut(Schema):
    """A room: readings that stand, `read`, and figures still `wanted`; pieces by how they stand; `boards` still to buy;
    `planned` and `spent` in dollars, for all that the room wants; `doubts`: what wants a look."""

    id, name = text_out(), text_out()
    closed = fields.Boolean(required=True)
    walls, read, wanted = (fields.Integer(required=True) for _ in range(3))
    to_cut, cut, fitted, boards, doubts = (fields.Integer(required=True) for _ in range(5))
    planned, spent = text_out(), text_out()


class CompareOut(Schema):
    rooms = out(ComparedOut, many=True)


def answer_compare(asked: dict[str, Any], context: Context) -> Answer:
    house = find_house(context.notebook, asked["house"])
    return {"rooms": [_room(context, room, asked) for room in rooms_of(context.notebook, house)]}


def _room(context: Context, room: str, asked: dict[str, Any]) -> Answer:
    said = find_room(context.notebook, room).body
    named = {"id": room, "name": said["name"], "closed": said["closed"]}
    try:
        return {**named, **_counts(context, room, asked), **_money(derive_money(context, room))}
    except EngineError:  # more than can be worked out: every answer about the room says so
        return {**named, **NOTHING, "doubts": 1, "planned": format_price(0), "spent": format_price(0)}


def _counts(context: Context, room: str, asked: dict[str, Any]) -> Answer:
    found = room_of(context.notebook, room)
    listed = list_of(context.notebook, room, asked["nearest"]).listed
    states = [one.state.name for one in listed]
    needs = derive_needs(found)
    doubtful = [one for one in listed if one.change or any(flag.attention for flag in one.piece.flags)]
    return {
        "walls": len(found.walls),
        "read": count_readings(context.notebook, room),
        "wanted": len(needs),
        "to_cut": len([state for state in states if state not in (CUT, FITTED)]),
        "cut": states.count(CUT),
        "fitted": states.count(FITTED),
        "doubts": len(found.problems) + len(check_closure(found)) + len(doubtful),
    }


def _money(money: RoomMoney) -> Answer:
    boards = sum(len(line.boards) for good in money.goods if good.sort == BOARDS for line in good.buy)
    spent = sum(lot.cents or 0 for lot in money.lots)
    return {"boards": boards, "planned": format_price(money.planned), "spent": format_price(spent)}


QUESTIONS = (
    Question("compare", say("question-compare"), CompareIn, CompareOut, answer_compare),
)
