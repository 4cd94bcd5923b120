"""`spoiled`: a piece spoiled at the saw: what of its board that uses up, what it costs, and what to write.

The piece comes back to be cut again. What can still be used of the spoiled one stands on the rack for other pieces.
Where nothing is said none of it does: wood that may be split is no board to plan from.
"""

from dataclasses import replace
from typing import Any

from marshmallow import fields, validate

from scantling.engine.bodies import TEXT_AT_MOST
from scantling.engine.cutlist.listed import CutList, Listed, Supposed, derive_list
from scantling.engine.cutlist.states import CUT, FITTED, RECUT, TO_CUT, Made
from scantling.engine.errors import EngineError, quote
from scantling.engine.forms import Schema
from scantling.engine.questions.boards.room_boards import TIME_LIMIT, boards_of
from scantling.engine.questions.cutlist.cut_list import list_of, remember
from scantling.engine.questions.facts import pieces_of, room_of
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.readings import StepOut, show_working
from scantling.engine.rack.stick import DONE
from scantling.engine.rack.wanted import derive_length
from scantling.engine.shapes import AskedIn, out, text_out
from scantling.engine.standard import format_price
from scantling.engine.tape.lengths import ZERO, Length, format_length, parse_length
from scantling.engine.trim.piece import Step
from scantling.engine.words import say

#: Of what is spoiled, nothing can be used: what a cut that left nothing was read as.
NOTHING = "0"


class SpoiledError(EngineError):
    family = "spoiled"


class SpoiledIn(AskedIn):
    room = fields.String(required=True, metadata={"description": say("ask-room")})
    piece = fields.String(required=True, metadata={"description": say("ask-spoiled-piece")})
    left = fields.String(
        load_default=None, allow_none=True, validate=validate.Length(max=TEXT_AT_MOST),
        metadata={"description": say("ask-spoiled-left")},
    )  # fmt: skip
    time_limit = TIME_LIMIT


class SpoiledEntryOut(Schema):
    """An entry to write; each takes the place of the one in force."""

    kind = text_out()
    body = fields.Dict(required=True)


class SpoiledOut(Schema):
    """`board` says what of which board is used up, `left` what becomes of the rest of the piece, `cost` what is bought
    besides; `entries` are written in their order."""

    words, board, left, cost = text_out(), text_out(), text_out(), text_out()
    working = out(StepOut, many=True)
    entries = out(SpoiledEntryOut, many=True)


def answer_spoiled(asked: dict[str, Any], context: Context) -> Answer:
    notebook, room, nearest = context.notebook, asked["room"], asked["nearest"]
    standard = room_of(notebook, room).standard
    before = list_of(notebook, room, nearest)
    one = _find(before, asked["piece"])
    piece = one.piece
    left = _left(one, asked["left"], nearest)
    made = Made("", piece.cut, None, None, asked["left"], left)
    state = replace(one.state, name=RECUT, made=None, spoilt=(*one.state.spoilt, made))
    supposed = Supposed(states={piece.key: state})
    after = derive_list(notebook, room, pieces_of(notebook, room)[0], standard, nearest, supposed)
    plans, paid_before = boards_of(asked, context, before, piece.profile)
    _, paid_after = boards_of(asked, context, after, piece.profile)
    takes = derive_length(piece)
    board, gone = _board_of(plans, one), format_length(takes + standard.kerf, nearest)
    return {
        "words": say("spoiled-comes-back", letter=one.letter, part=piece.name),
        "board": say("spoiled-of-board", length=gone, **board) if board else say("spoiled-of-its-board", length=gone),
        "left": _say_left(left, nearest),
        "cost": _say_cost(paid_after - paid_before) if board else "",
        "working": show_working(
            (Step(say("spoiled-along", letter=one.letter), takes), Step(say("spoiled-kerf"), standard.kerf),
             Step(say("spoiled-used-up"), takes + standard.kerf)), nearest,
        ),
        "entries": _entries(one, asked["left"]),
    }  # fmt: skip


def _find(cut_list: CutList, name: str) -> Listed:
    one = next((each for each in cut_list.listed if name in (each.piece.key, each.letter, each.id)), None)
    gone = next((each.lettered for each in cut_list.gone if name in (each.lettered.letter, each.lettered.id)), None)
    if one is None and gone is not None:
        raise SpoiledError("not-wanted", field="piece", letter=gone.letter)
    if one is None:
        raise SpoiledError("no-such-piece", field="piece", text=quote(name[:80]))
    if one.provisional:
        raise SpoiledError("not-issued", field="piece", letter=one.letter)
    if one.state.name == FITTED:
        raise SpoiledError("fitted", field="piece", letter=one.letter)
    if one.piece.salvaged:
        raise SpoiledError("salvaged", field="piece", letter=one.letter)
    return one


def _left(one: Listed, text: str | None, nearest: Length) -> Length:
    if text is None:
        return ZERO
    try:
        left = parse_length(text)
    except EngineError as error:
        raise SpoiledError("not-read", field="left", at=error.at, sentence=error.message) from error
    if left > one.piece.cut:
        raise SpoiledError("longer", field="left", letter=one.letter, cut=format_length(one.piece.cut, nearest))
    return left


def _board_of(plans: list[Answer], one: Listed) -> Answer:
    """The board that it was cut from, by what the saw calls it; nothing where it is on none."""
    for plan in plans:
        used = [board for board in plan["boards"] if board["pieces"]]
        for number, board in enumerate(used, start=1):
            if any(each["letter"] == one.letter and each["state"] in (TO_CUT, DONE) for each in board["pieces"]):
                return {"number": number, "count": len(used), "size": board["length_shown"]}
    return {}


def _say_left(left: Length, nearest: Length) -> str:
    if not left:
        return say("spoiled-nothing-left")
    return say("spoiled-left", length=format_length(left, nearest))


def _say_cost(cents: int) -> str:
    if cents > 0:
        return say("spoiled-costs", cost=format_price(cents))
    return say("spoiled-costs-nothing")


def _entries(one: Listed, left: str | None) -> list[Answer]:
    said = {"piece": one.id, "as_cut": left or NOTHING, "state": CUT}
    blank = dict.fromkeys(("cut_to", "left", "right", "as_cut"))
    made = one.state.made
    cut = next((each.entry.body for each in one.state.said if made and each.entry.id == made.entry), {})
    return [
        {"kind": "state", "body": {**remember(one.piece), **cut, **said}},
        {"kind": "state", "body": {**blank, "piece": one.id, "state": RECUT}},
    ]


QUESTIONS = (
    Question("spoiled", say("question-spoiled"), SpoiledIn, SpoiledOut, answer_spoiled),
)
