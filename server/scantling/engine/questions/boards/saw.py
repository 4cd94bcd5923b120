"""`saw`: what is still to be cut in a room, in the order to cut it, each piece with all that is needed at the saw.

One answer for the whole list: it is read where there may be no engine awake and no time to wait.
"""

from typing import Any

from marshmallow import Schema, fields

from scantling.engine.cutlist.listed import Listed
from scantling.engine.cutlist.states import TO_CUT
from scantling.engine.cutlist.tried import derive_tried
from scantling.engine.drawings.board import say_edges
from scantling.engine.drawings.saw import draw_at_saw
from scantling.engine.notebook import Notebook
from scantling.engine.questions.boards.room_boards import RoomBoardsIn, answer_boards_for_room
from scantling.engine.questions.called import call_stock
from scantling.engine.questions.cutlist.cut_list import RememberOut, find_list, say_issue, standing
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.rack.at_saw import StickPlace, count_settings, order_by_board, order_by_setting
from scantling.engine.rack.wanted import derive_ends
from scantling.engine.shapes import DrawingOut, one_of, out, text_out, texts_out
from scantling.engine.tape.lengths import THIRTY_SECOND, Length, format_length, say_length
from scantling.engine.trim.ends import say_edge
from scantling.engine.trim.piece import Flag, Piece
from scantling.engine.words import say, say_counted

ORDERS = {"board": order_by_board, "setting": order_by_setting}
# What cannot be held, or not at that angle.
HELD = ("short", "returns", "steep")


class SawIn(RoomBoardsIn):
    order = fields.String(load_default="board", validate=one_of(*ORDERS))


class OrderOut(Schema):
    key, words = text_out(), text_out()


class CornerTriedOut(Schema):
    """A corner that an end is cut to: `of` and `what` name it, `text` is what scraps showed there."""

    of, what, side, name, text = text_out(), text_out(), text_out(), text_out(), text_out()


class AtSawOut(Schema):
    """`board` says which board it comes from; `other` the length of its other edge, where that differs; `wall` is the
    id of the one that it hangs on."""

    id, wall = text_out(none=True), text_out(none=True)
    key, letter, part_name, profile, state = text_out(), text_out(), text_out(), text_out(), text_out()
    profile_shown = text_out()
    cut, cut_from, plus_minus, other, board, spoken = (text_out() for _ in range(6))
    provisional = fields.Boolean(required=True)
    remember = out(RememberOut)
    drawing = DrawingOut(required=True)
    notes = texts_out()
    tried = out(CornerTriedOut, many=True)


class SawOut(Schema):
    pieces = out(AtSawOut, many=True)
    orders = out(OrderOut, many=True)
    to_issue = fields.Integer(required=True)
    issue_words = text_out()
    warnings = texts_out()


def answer_saw(asked: dict[str, Any], context: Context) -> Answer:
    _, cut_list, _, unused = find_list(asked, context)
    waiting = {one.letter: one for one in cut_list.listed if not one.state.is_cut}
    boards, named = _boards(answer_boards_for_room(asked, context), waiting)
    ends = [[derive_ends(one.piece) for one in board] for board in boards]
    orders = {name: derive(ends) for name, derive in ORDERS.items()}
    return {
        "pieces": [
            _piece(context.notebook, boards[at][place], named[at], asked["nearest"])
            for at, place in orders[asked["order"]]
        ],
        "orders": [{"key": name, "words": _say_order(name, ends, order)} for name, order in orders.items()],
        "to_issue": len(cut_list.to_issue),
        "issue_words": say_issue(cut_list),
        "warnings": unused,
    }


def _boards(answer: Answer, waiting: dict[str, Listed]) -> tuple[list[list[Listed]], list[str]]:
    """What is to be cut of each board, in its order, and what each board is called; last what is on none."""
    boards, named = [], []
    rest = dict(waiting)
    for plan in answer["plans"]:
        used = [board for board in plan["boards"] if board["pieces"]]
        for number, board in enumerate(used, start=1):
            letters = [piece["letter"] for piece in board["pieces"] if piece["state"] == TO_CUT]
            boards.append([rest.pop(letter) for letter in letters if letter in rest])
            key = "saw-board" if plan["accepted"] else "saw-board-proposed"
            named.append(say(key, number=number, count=len(used), size=board["length_shown"]))
    for one in rest.values():
        boards.append([one])
        there, elsewhere = one.piece.salvaged, one.letter in answer["elsewhere"]
        key = "saw-is-there" if there else "saw-board-for-several" if elsewhere else "saw-no-board"
        named.append(say(key))
    return boards, named


def _say_order(name: str, ends: Any, order: list[StickPlace]) -> str:
    return say_counted(f"order-by-{name}", count_settings(ends, order))


def _piece(notebook: Notebook, one: Listed, board: str, nearest: Length) -> Answer:
    piece = one.piece
    tried = derive_tried(notebook, piece)
    stands = standing(one, nearest)
    return {
        **{name: stands[name] for name in ("id", "state", "provisional", "remember")},
        "key": piece.key,
        "wall": piece.wall or None,
        "letter": piece.letter,
        "part_name": piece.name,
        "profile": piece.profile,
        "profile_shown": call_stock(piece.profile),
        "cut": format_length(piece.cut, nearest),
        "cut_from": piece.cut_from,
        "plus_minus": format_length(piece.doubt.plus_minus, THIRTY_SECOND),
        "other": _say_other(piece, nearest),
        "board": board,
        "drawing": draw_at_saw(piece, nearest),
        "notes": [flag.message for flag in sorted(piece.flags, key=_by_danger)],
        "tried": [{name: getattr(each, name) for name in ("of", "what", "side", "name", "text")} for each in tried],
        "spoken": " ".join(
            [_say(piece, nearest), *(say("saw-test-cut", words=each.words) for each in tried if each.text)]
        ),
    }


def _by_danger(flag: Flag) -> int:
    """What keeps a hand from the blade comes first: a small screen shows no more than the first lines."""
    return 0 if flag.key in HELD else 1 if flag.attention else 2


def _say_other(piece: Piece, nearest: Length) -> str:
    lengths = dict(zip(piece.left.edges, (piece.back, piece.front), strict=True))
    return ", ".join(
        say("saw-other-edge", length=format_length(length, nearest), edge=say_edge(edge))
        for edge, length in lengths.items()
        if format_length(length, nearest) != format_length(piece.cut, nearest)
    )


def _say(piece: Piece, nearest: Length) -> str:
    """All that one needs to hear with a board in both hands."""
    return say(
        "saw-spoken", letter=piece.letter, part=piece.name, length=say_length(piece.cut, nearest).capitalize(),
        cut_from=piece.cut_from, left=piece.left.shown, right=piece.right.shown, edges=say_edges(piece),
    )  # fmt: skip


QUESTIONS = (
    Question("saw", say("question-saw"), SawIn, SawOut, answer_saw),
)
