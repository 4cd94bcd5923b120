"""`boards_if`: what another choice of lengths would change in what a room's boards come to."""

from collections.abc import Sequence
from typing import Any

from marshmallow import Schema, fields

from scantling.engine.boards.case.case import BoardsError, Stock
from scantling.engine.boards.search.plan import plan_boards
from scantling.engine.errors import EngineError
from scantling.engine.questions.boards.room_boards import RoomBoardsIn
from scantling.engine.questions.called import call_stock
from scantling.engine.questions.cutlist.cut_list import find_list
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.rack.slack import keep_slack
from scantling.engine.rack.wanted import derive_case, derive_length
from scantling.engine.shapes import LengthText, out, text_out, texts_out
from scantling.engine.standard import format_price, format_stock, parse_price
from scantling.engine.words import say


class NoSuchProfile(EngineError):
    family = "boards-if"


class BoardsIfIn(RoomBoardsIn):
    profile = fields.String(required=True)
    length = LengthText(metadata={"description": say("ask-boards-if-length")})
    price = fields.String(metadata={"description": say("ask-boards-if-price")})


class IfOut(Schema):
    words = text_out()
    cost = text_out(none=True)


class BoardsIfOut(Schema):
    cost = text_out()
    single = out(IfOut, many=True)
    more = out(IfOut, none=True)
    warnings = texts_out()


def answer_boards_if(asked: dict[str, Any], context: Context) -> Answer:
    room, cut_list, _, unused = find_list(asked, context)
    stock = room.standard.stock_of(asked["profile"])
    pieces = [one.piece for one in cut_list.to_cut if one.piece.profile == asked["profile"]]
    longest = max((row.length for row in stock), default=room.standard.end_trim) - room.standard.end_trim
    pieces = [piece for piece in pieces if derive_length(piece) <= longest]
    if not pieces:
        raise NoSuchProfile("no-such-profile", field="profile", profile=call_stock(asked["profile"][:80]))
    more = Stock(asked["length"], parse_price(asked["price"])) if {"length", "price"} <= asked.keys() else None

    def least(rows: Sequence[Stock]) -> int:
        case = keep_slack(derive_case(room.standard, rows, pieces), room.standard.slack)
        return plan_boards(case, context.clock, asked["time_limit"]).cost

    def cents(rows: Sequence[Stock]) -> int | None:
        try:
            return least(rows)
        except BoardsError:
            return None

    now = least(stock)
    here, sold = [row for row in stock if not row.price_cents], [row for row in stock if row.price_cents]
    return {
        "cost": format_price(now),
        "single": [_compared(say("boards-if-only", length=format_stock(row.length)), cents([*here, row]), now)
                   for row in sold],
        "more": more and _compared(
            say("boards-if-with", length=format_stock(more.length), price=format_price(more.price_cents)),
            cents([*stock, more]), now),
        "warnings": unused,
    }  # fmt: skip


def _compared(what: str, cents: int | None, now: int) -> Answer:
    if cents is None:
        return {"words": say("boards-if-none", what=what), "cost": None}
    cost, by = format_price(cents), format_price(abs(cents - now))
    same = say("boards-if-same", what=what, cost=cost)
    change = "boards-if-more" if cents > now else "boards-if-less"
    return {"words": same if cents == now else say(change, what=what, cost=cost, by=by), "cost": cost}


QUESTIONS = (
    Question("boards_if", say("question-boards_if"), BoardsIfIn, BoardsIfOut, answer_boards_if),
)
