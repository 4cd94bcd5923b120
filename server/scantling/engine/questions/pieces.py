"""`pieces`: every piece of trim that a room needs, in fitting order, with its working."""

from typing import Any

from marshmallow import Schema, fields

from scantling.engine.angles import format_degrees
from scantling.engine.cautions import cautions_for_cutting
from scantling.engine.cutlist.listed import Listed
from scantling.engine.drawings.hanging import draw_hanging
from scantling.engine.drawings.piece import draw_piece
from scantling.engine.drawings.saw import draw_at_saw
from scantling.engine.errors import EngineError, quote
from scantling.engine.lengths import THIRTY_SECOND, Length, format_length, round_to
from scantling.engine.questions.cut_list import GoneOut, StandingOut, find_list, gone_out, say_issue, standing
from scantling.engine.questions.facts import RoomIn
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.readings import show_working
from scantling.engine.questions.room import ProblemOut, problems_out
from scantling.engine.shapes import DrawingOut, LengthOut, out, show, text_out, texts_out
from scantling.engine.survey.room import Room
from scantling.engine.trim.ends import EDGE_WORDS, End
from scantling.engine.trim.piece import Piece

OVERHEAD_PARTS = ("crown", "picture rail")


class NoPieceError(EngineError):
    sentences = {"no-such-piece": "The room has no piece {text}: ask for one by its key or its letter."}


class DrawnIn(RoomIn):
    piece = fields.String(required=True, metadata={"description": "a piece of the room, by its key or its letter"})


class DrawnOut(Schema):
    """One piece large: as it lies on the saw, and as it hangs with what it meets."""

    at_saw, hanging = DrawingOut(required=True), DrawingOut(required=True)


class EndOut(Schema):
    joint, meets, long_edge, shown = text_out(), text_out(), text_out(), text_out()
    saw_shown, point_shown = text_out(), text_out()
    turn = text_out(none=True)
    saw = fields.Float(required=True, metadata={"description": "degrees from square"})
    point = fields.Float(required=True, metadata={"description": "degrees at the board's point"})
    bevel = fields.Float(
        required=True, allow_none=True, metadata={"description": "how far the blade leans, where it does"}
    )
    nested = fields.Float(
        required=True, allow_none=True, metadata={"description": "of crown, the setting when it stands at its spring"}
    )
    bevel_shown, nested_shown = text_out(none=True), text_out(none=True)


class StepOut(Schema):
    text = text_out()
    value = out(LengthOut, none=True)
    readings = texts_out()


class FlagOut(Schema):
    key, message = text_out(), text_out()
    attention = fields.Boolean(required=True)


class PieceOut(StandingOut):
    """`back` and `front` of a flat piece are its inner and outer edge; its `wall` is null, `opening` says whose it is.

    `short` and `long` are the same two lengths by size.
    """

    key, letter, part, part_name = text_out(), text_out(), text_out(), text_out()
    profile, cut_from = text_out(), text_out()
    wall, opening = text_out(none=True), text_out(none=True)
    edges = texts_out()
    short, long = out(LengthOut), out(LengthOut)
    wall_number = fields.Integer(required=True, allow_none=True)
    back, front, cut, plus_minus = out(LengthOut), out(LengthOut), out(LengthOut), out(LengthOut)
    left, right = out(EndOut), out(EndOut)
    blank = out(LengthOut, none=True)
    working = out(StepOut, many=True)
    flags = out(FlagOut, many=True)
    drawing = DrawingOut(required=True)


class PiecesOut(Schema):
    pieces = out(PieceOut, many=True)
    gone = out(GoneOut, many=True)
    to_issue = fields.Integer(required=True, metadata={"description": "pieces whose letters are provisional"})
    issue_words = text_out()
    problems = out(ProblemOut, many=True)
    warnings = texts_out()
    cautions = texts_out()


def answer_pieces(asked: dict[str, Any], context: Context) -> Answer:
    room, cut_list, problems, unused = find_list(asked, context)
    return {
        "pieces": [_piece(one, asked["nearest"]) for one in cut_list.listed],
        "gone": gone_out(cut_list),
        "to_issue": len(cut_list.to_issue),
        "issue_words": say_issue(cut_list),
        "problems": problems_out((*room.problems, *problems)),
        "warnings": unused,
        "cautions": _cautions(room, cut_list.pieces),
    }


def answer_drawn(asked: dict[str, Any], context: Context) -> Answer:
    pieces = find_list(asked, context)[1].pieces
    named = (piece for piece in pieces if asked["piece"] in (piece.key, piece.letter))
    piece = next(named, None)
    if piece is None:
        raise NoPieceError("no-such-piece", field="piece", text=quote(asked["piece"][:80]))
    return {"at_saw": draw_at_saw(piece, asked["nearest"]), "hanging": draw_hanging(piece, pieces)}


def _cautions(room: Room, pieces: list[Piece]) -> list[str]:
    windows = {opening.id for wall in room.walls for opening in wall.openings if opening.kind == "window"}
    has_windows = any(piece.opening in windows for piece in pieces)
    overhead = any(piece.part.startswith(OVERHEAD_PARTS) for piece in pieces)
    return cautions_for_cutting(windows=has_windows, overhead=overhead) if pieces else []


def _piece(one: Listed, nearest: Length) -> Answer:
    piece = one.piece
    plus_minus = round_to(piece.plus_minus, THIRTY_SECOND, toward="up")
    return {
        **standing(one, nearest),
        "key": piece.key,
        "letter": piece.letter,
        "part": piece.part,
        "part_name": piece.name,
        "profile": piece.profile,
        "wall": None if piece.opening else piece.wall or None,
        "opening": piece.opening,
        "wall_number": piece.wall_number or None,
        "back": show(piece.back, nearest),
        "front": show(piece.front, nearest),
        "short": show(min(piece.back, piece.front), nearest),
        "long": show(max(piece.back, piece.front), nearest),
        "edges": [EDGE_WORDS[edge] for edge in piece.left.edges],
        "cut": show(piece.cut, nearest),
        "cut_from": piece.cut_from,
        "left": _end(piece.left),
        "right": _end(piece.right),
        "plus_minus": {**show(piece.plus_minus), "shown": format_length(plus_minus, THIRTY_SECOND)},
        "blank": None if piece.blank is None else show(piece.blank, nearest),
        "working": show_working(piece.working, nearest),
        "flags": [{"key": one.key, "message": one.message, "attention": one.attention} for one in piece.flags],
        "drawing": draw_piece(piece),
    }


def _end(end: End) -> Answer:
    names = ("joint", "meets", "long_edge", "shown")
    return {
        **{name: getattr(end, name) for name in names},
        "turn": end.corner.turn if end.corner else None,
        "saw": float(end.saw),
        "point": float(end.point),
        "bevel": None if end.bevel is None else float(end.bevel),
        "nested": None if end.nested is None else float(end.nested),
        "saw_shown": format_degrees(end.saw),
        "bevel_shown": None if end.bevel is None else format_degrees(end.bevel),
        "nested_shown": None if end.nested is None else format_degrees(end.nested),
        "point_shown": format_degrees(end.point),
    }


QUESTIONS = (
    Question("pieces", "Every piece of trim the room needs, in fitting order, with its working.", RoomIn, PiecesOut,
             answer_pieces),
    Question("drawn", "One piece of the room drawn large: as it lies on the saw, and as it hangs.", DrawnIn, DrawnOut,
             answer_drawn),
)  # fmt: skip
