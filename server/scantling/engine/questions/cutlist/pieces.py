"""`pieces`: every piece of trim that a room needs, in fitting order, with its working.

A room may need a hundred, and a phone takes each in with all it says: so what a list shows of them is a question of its
own, `piece_rows`, and drawings are asked for by name, where they are shown.
"""

from typing import Any

from marshmallow import fields, validate

from scantling.engine.bodies import LIST_AT_MOST
from scantling.engine.cautions import cautions_for_cutting
from scantling.engine.cutlist.listed import CutList, Listed
from scantling.engine.cutlist.tried import derive_tried
from scantling.engine.drawings.hanging import draw_hanging
from scantling.engine.drawings.piece import draw_piece
from scantling.engine.drawings.saw import draw_at_saw
from scantling.engine.errors import EngineError, quote
from scantling.engine.forms import Schema
from scantling.engine.questions.called import call_stock
from scantling.engine.questions.cutlist.cut_list import GoneOut, StandingOut, find_list, gone_out, say_issue, standing
from scantling.engine.questions.cutlist.grouped import tell_ends, tell_found_by, tell_group
from scantling.engine.questions.facts import RoomIn
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.readings import ProblemOut, StepOut, problems_out, show_working
from scantling.engine.shapes import DrawingOut, LengthOut, out, show, text_out, texts_out
from scantling.engine.shown.shown_in import shown_in
from scantling.engine.survey.closure import check_closure
from scantling.engine.survey.kinds import is_of_fire, is_wet
from scantling.engine.survey.room import Room
from scantling.engine.tape.angles import format_degrees
from scantling.engine.tape.lengths import THIRTY_SECOND, Length, format_length
from scantling.engine.trim.ends import End, say_edge
from scantling.engine.trim.footprint import LEFT, RIGHT
from scantling.engine.trim.moldings.stick import SETTINGS as STICKS
from scantling.engine.trim.piece import Kind, Piece
from scantling.engine.trim.runs.at_saw import say_at_saw
from scantling.engine.trim.runs.chains import THROUGH
from scantling.engine.words import say

OVERHEAD = (Kind.CROWN, Kind.PICTURE_RAIL)
# What of a window's trim may come into its opening: an apron and its returns hang below it.
IN_ITS_LIGHT = (Kind.LEG, Kind.HEAD, Kind.SILL, Kind.STOOL, Kind.EXTENSION)


class NoPieceError(EngineError):
    family = "piece"


class PiecesIn(RoomIn):
    piece = fields.String(metadata={"description": say("ask-pieces-piece")})


class SmallIn(RoomIn):
    pieces = fields.List(
        fields.String(), required=True, validate=validate.Length(max=LIST_AT_MOST),
        metadata={"description": say("ask-small-pieces")},
    )  # fmt: skip


class DrawnIn(RoomIn):
    piece = fields.String(required=True, metadata={"description": say("ask-drawn-piece")})


class DrawnOut(Schema):
    """One piece large: as it lies on the saw, and as it hangs with what it meets."""

    at_saw, hanging = DrawingOut(required=True), DrawingOut(required=True)


class SmallDrawing(Schema):
    key, letter = text_out(), text_out()
    drawing = DrawingOut(required=True)


class SmallOut(Schema):
    drawings = out(SmallDrawing, many=True)


class TurnsOut(Schema):
    """What to set to turn a joint round: the setting, and its value, of the wall whose right end the corner is."""

    of, name, value, words = text_out(), text_out(), text_out(), text_out()


class EndOut(Schema):
    joint, meets, said, long_edge, shown = text_out(), text_out(), text_out(), text_out(), text_out()
    saw_shown, point_shown = text_out(), text_out()
    turn = text_out(none=True)
    leans = fields.Boolean(required=True, metadata={"description": say("told-end-leans")})
    saw = fields.Float(required=True, metadata={"description": say("told-degrees-from-square")})
    point = fields.Float(required=True, metadata={"description": say("told-end-point")})
    bevel = fields.Float(required=True, allow_none=True, metadata={"description": say("told-end-bevel")})
    nested = fields.Float(required=True, allow_none=True, metadata={"description": say("told-end-nested")})
    bevel_shown, nested_shown = text_out(none=True), text_out(none=True)
    at_saw = fields.String(required=True, allow_none=True, metadata={"description": say("told-end-at-saw")})
    turns = out(TurnsOut, none=True)


class StickOut(Schema):
    """How thick the boards along its wall were said to be: the setting of that wall, and its value as written."""

    of, name, value, words = text_out(), text_out(), text_out(), text_out()


class FlagOut(Schema):
    key, message = text_out(), text_out()
    attention = fields.Boolean(required=True)


class PieceOut(StandingOut):
    """`back` and `front` of a flat piece are its inner and outer edge; its `wall` is null, `opening` says whose it is.

    `short` and `long` are the same two lengths by size.
    """

    key, kind, letter, part, part_name = (text_out() for _ in range(5))
    profile, profile_shown, cut_from = text_out(), text_out(), text_out()
    wall, opening = text_out(none=True), text_out(none=True)
    edges = texts_out()
    short, long = out(LengthOut), out(LengthOut)
    wall_number = fields.Integer(required=True, allow_none=True)
    back, front, cut, plus_minus = out(LengthOut), out(LengthOut), out(LengthOut), out(LengthOut)
    left, right = out(EndOut), out(EndOut)
    blank = out(LengthOut, none=True)
    stick = out(StickOut, none=True)
    working = out(StepOut, many=True)
    flags = out(FlagOut, many=True)
    tried = fields.List(fields.String(), required=True, metadata={"description": say("told-piece-tried")})


class PieceRow(Schema):
    """What a list shows of a piece: `left`, `right` the joints at its ends, `ends` both in brief beside a drawing,
    `flags` those that want attention. `group` is its opening or wall, `short` its name there; `found_by` small words.

    `blank` is what to cut it from where it is too short to hold at the saw; `salvaged` how one that
    is there already is trimmed.
    """

    key, letter, part_name, state = text_out(), text_out(), text_out(), text_out()
    provisional = fields.Boolean(required=True)
    cut, plus_minus, left, right = text_out(), text_out(), text_out(), text_out()
    ends, group, group_name, short, found_by = text_out(), text_out(), text_out(), text_out(), text_out()
    change, blank, salvaged = text_out(none=True), text_out(none=True), text_out(none=True)
    flags = texts_out()


class _AroundOut(Schema):
    """What is told with the pieces of a room, or with the rows of them.

    `lengths` is what they are shown in: inches, feet and inches, or millimeters.
    """

    lengths = text_out()
    gone = out(GoneOut, many=True)
    to_issue = fields.Integer(required=True, metadata={"description": say("told-to-issue")})
    issue_words = text_out()
    problems = out(ProblemOut, many=True)
    warnings = texts_out()
    cautions = texts_out()


class PiecesOut(_AroundOut):
    pieces = out(PieceOut, many=True)


class RowsOut(_AroundOut):
    rows = out(PieceRow, many=True)


def answer_pieces(asked: dict[str, Any], context: Context) -> Answer:
    room, cut_list, around = _find(asked, context)
    wanted = asked.get("piece")
    listed = [one for one in cut_list.listed if wanted in (None, one.piece.key, one.letter)]
    if wanted is not None and not listed:
        raise NoPieceError("no-such-piece", field="piece", text=quote(wanted[:80]))
    cautions = _cautions(room, [one.piece for one in listed])
    pieces = [_piece(context, room, one, asked["nearest"]) for one in listed]
    return {"pieces": pieces, **around, "cautions": cautions}


def answer_rows(asked: dict[str, Any], context: Context) -> Answer:
    room, cut_list, around = _find(asked, context)
    rows = [_row(one, asked["nearest"]) for one in cut_list.listed]
    return {"rows": rows, **around, "cautions": _cautions(room, cut_list.pieces)}


def _find(asked: dict[str, Any], context: Context) -> tuple[Room, CutList, Answer]:
    room, cut_list, problems, unused = find_list(asked, context)
    return room, cut_list, {
        "lengths": shown_in(),
        "gone": gone_out(cut_list),
        "to_issue": len(cut_list.to_issue),
        "issue_words": say_issue(cut_list),
        "problems": problems_out((*room.problems, *check_closure(room), *problems)),
        "warnings": unused,
    }


def answer_small(asked: dict[str, Any], context: Context) -> Answer:
    named = set(asked["pieces"])
    pieces = [one for one in find_list(asked, context)[1].pieces if named & {one.key, one.letter}]
    return {"drawings": [{"key": one.key, "letter": one.letter, "drawing": draw_piece(one)} for one in pieces]}


def answer_drawn(asked: dict[str, Any], context: Context) -> Answer:
    pieces = find_list(asked, context)[1].pieces
    named = (piece for piece in pieces if asked["piece"] in (piece.key, piece.letter))
    piece = next(named, None)
    if piece is None:
        raise NoPieceError("no-such-piece", field="piece", text=quote(asked["piece"][:80]))
    return {"at_saw": draw_at_saw(piece, asked["nearest"]), "hanging": draw_hanging(piece, pieces)}


def _cautions(room: Room, pieces: list[Piece]) -> list[str]:
    """What is told with these pieces, each of them looked at: of the whole list, or of the one that was asked for."""
    windows = {opening.id for wall in room.walls for opening in wall.openings if opening.kind == "window"}
    narrows = any(piece.opening in windows and piece.kind in IN_ITS_LIGHT for piece in pieces)
    overhead = any(piece.kind in OVERHEAD for piece in pieces)
    beside = {piece.wall for piece in pieces}
    fireplace = any(is_of_fire(thing.kind) for wall in room.walls if wall.id in beside for thing in wall.obstacles)
    wet = any(is_wet(thing.kind) for wall in room.walls for thing in wall.obstacles)
    if not pieces:
        return []
    return cautions_for_cutting(windows=narrows, near_water=wet, overhead=overhead, fireplace=fireplace)


def _row(one: Listed, nearest: Length) -> Answer:
    piece = one.piece
    return {
        "key": piece.key,
        "letter": piece.letter,
        "part_name": piece.name,
        "state": one.state.name,
        "provisional": one.provisional,
        "cut": format_length(piece.cut, nearest),
        "plus_minus": format_length(piece.doubt.plus_minus, THIRTY_SECOND),
        "left": piece.left.shown,
        "right": piece.right.shown,
        "ends": tell_ends(piece),
        **tell_group(piece),
        "found_by": tell_found_by(piece),
        "change": one.change and one.change.message,
        "blank": None if piece.blank is None else format_length(piece.blank, nearest),
        "salvaged": say("piece-there", text=piece.salvaged) if piece.salvaged else None,
        "flags": [flag.message for flag in piece.flags if flag.attention],
    }


def _piece(context: Context, room: Room, one: Listed, nearest: Length) -> Answer:
    piece = one.piece
    return {
        **standing(one, nearest),
        "key": piece.key,
        "letter": piece.letter,
        "kind": piece.kind,
        "part": piece.part,
        "part_name": piece.name,
        "profile": piece.profile,
        "profile_shown": call_stock(piece.profile),
        "wall": None if piece.opening else piece.wall or None,
        "opening": piece.opening,
        "wall_number": piece.wall_number or None,
        "back": show(piece.back, nearest),
        "front": show(piece.front, nearest),
        "short": show(min(piece.back, piece.front), nearest),
        "long": show(max(piece.back, piece.front), nearest),
        "edges": [say_edge(edge) for edge in piece.left.edges],
        "cut": show(piece.cut, nearest),
        "cut_from": piece.cut_from,
        "left": _end(piece.left, LEFT),
        "right": _end(piece.right, RIGHT),
        "plus_minus": show(piece.doubt.plus_minus, THIRTY_SECOND),
        "blank": None if piece.blank is None else show(piece.blank, nearest),
        "stick": _stick(room, piece),
        "working": show_working(piece.working, nearest),
        "flags": [{"key": one.key, "message": one.message, "attention": one.attention} for one in piece.flags],
        "tried": [each.words for each in derive_tried(context.notebook, piece) if each.text],
    }


def _stick(room: Room, piece: Piece) -> Answer | None:
    wall = next((wall for wall in room.walls if wall.id == piece.wall), None)
    name = f"stick.{piece.kind}"
    if wall is None or piece.returns or name not in STICKS:
        return None
    words = say("piece-stick", part=piece.part, wall=wall.name).capitalize()
    return {"of": wall.id, "name": name, "value": str(wall.settings.get(name) or ""), "words": words}


def _end(end: End, side: str) -> Answer:
    names = ("joint", "meets", "said", "long_edge", "shown")
    return {
        **{name: getattr(end, name) for name in names},
        "turn": end.corner.turn if end.corner else None,
        "leans": end.leans,
        "saw": float(end.saw),
        "point": float(end.point),
        "bevel": None if end.bevel is None else float(end.bevel),
        "nested": None if end.nested is None else float(end.nested),
        "saw_shown": format_degrees(end.setting),
        "bevel_shown": None if end.bevel is None else format_degrees(end.bevel),
        "nested_shown": None if end.nested is None else format_degrees(end.nested),
        "point_shown": format_degrees(end.point),
        "at_saw": say_at_saw(end, side),
        "turns": _turns(end) if end.turns else None,
    }


def _turns(end: End) -> Answer:
    key = "piece-turns-coped" if end.joint in ("cope", "butt") else "piece-turns-mitered"
    return {"of": end.at, "name": THROUGH, "value": end.turns, "words": say(key, corner=end.meets)}


QUESTIONS = (
    Question("pieces", say("question-pieces"), PiecesIn, PiecesOut, answer_pieces, kept=True),
    Question("piece_rows", say("question-piece_rows"), RoomIn, RowsOut, answer_rows, kept=True),
    Question("small_drawings", say("question-small_drawings"), SmallIn, SmallOut, answer_small, kept=True),
    Question("drawn", say("question-drawn"), DrawnIn, DrawnOut, answer_drawn, kept=True),
)
