"""Questions about a room: what is still to be read, its pieces, its plan, and the survey as a person walks it."""

from collections.abc import Iterable, Mapping
from typing import Any

from marshmallow import Schema, fields

from scantling.engine.cautions import cautions_for_survey
from scantling.engine.drawings.elevation import draw_elevation
from scantling.engine.drawings.plans.plan import draw_plan
from scantling.engine.drawings.plans.whole import draw_whole
from scantling.engine.errors import EngineError, quote
from scantling.engine.journal import Entry
from scantling.engine.notebook import Notebook
from scantling.engine.questions.cutlist.cut_list import find_list
from scantling.engine.questions.facts import RoomIn, find, room_of
from scantling.engine.questions.notebook.settings import SettledOut, show_settings
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.readings import ProblemOut, problems_out
from scantling.engine.shapes import AskedIn, DrawingOut, LengthOut, out, show, text_out, texts_out
from scantling.engine.survey.checks import check_room
from scantling.engine.survey.closure import check_closure, derive_closure
from scantling.engine.survey.facts import find_room
from scantling.engine.survey.room import Wall
from scantling.engine.tape.angles import Corner
from scantling.engine.tape.lengths import Length
from scantling.engine.walk.figure import Figure
from scantling.engine.walk.needs import derive_needs
from scantling.engine.walk.rows import Row, Taken, derive_rows, show_corner
from scantling.engine.words import say


class SurveyIn(AskedIn):
    room = fields.String(required=True, metadata={"description": say("ask-room")})
    in_hand = fields.String(metadata={"description": say("ask-survey-in-hand")})


class FigureOut(Schema):
    of, what, wall, hint, why = text_out(), text_out(), text_out(), text_out(), text_out()
    title = text_out()
    short = fields.String(required=True, metadata={"description": say("told-figure-short")})
    number = fields.Integer(required=True)


class NeedsOut(Schema):
    needs = out(FigureOut, many=True)
    problems = out(ProblemOut, many=True)
    warnings = texts_out()


class SuspectOut(Schema):
    kind, wall, message = text_out(), text_out(), text_out()
    number = fields.Integer(required=True)
    by = out(LengthOut, none=True)
    degrees = fields.Float(required=True, allow_none=True)


class ClosureOut(Schema):
    closes = fields.Boolean(required=True)
    length, length_allowed = out(LengthOut), out(LengthOut)
    angle, angle_allowed = fields.Float(required=True), fields.Float(required=True)
    suspects = out(SuspectOut, many=True)
    warnings = texts_out()


class PlanOut(Schema):
    drawing = DrawingOut(required=True)
    warnings = texts_out()


class ElevationIn(RoomIn):
    wall = fields.String(required=True, metadata={"description": say("ask-elevation-wall")})


class NoWallError(EngineError):
    family = "room-wall"


class CornerShown(Schema):
    degrees, plus_minus = fields.Float(required=True), fields.Float(required=True)
    shown = text_out()


class FigureValue(fields.Field[Any]):
    """A length, or for a corner its degrees, or null."""


class TakenOut(Schema):
    entry, text, shown, words = text_out(), text_out(), text_out(), text_out()
    strike, error = text_out(none=True), text_out(none=True)
    struck = fields.Boolean(required=True)


class FigureRowOut(FigureOut):
    key, state, note = text_out(), text_out(), text_out()
    wanted = fields.Boolean(required=True)
    figure = FigureValue(required=True, allow_none=True)
    readings = out(TakenOut, many=True)


class ThingOut(SettledOut):
    """An opening, or what is in the way; `settings`: what it differs in from its room."""

    id, kind, name = text_out(), text_out(), text_out()
    entries = texts_out()


class RoomWallOut(Schema):
    id, turn = text_out(), text_out()
    number = fields.Integer(required=True)
    entries = texts_out()
    openings, obstacles = out(ThingOut, many=True), out(ThingOut, many=True)


class RoomOut(Schema):
    id, name, house = text_out(), text_out(), text_out()
    closed = fields.Boolean(required=True)
    entries = texts_out()


class SurveyOut(Schema):
    room = out(RoomOut)
    rows = out(FigureRowOut, many=True)
    next = text_out(none=True)
    wanted = fields.Integer(required=True)
    walls = out(RoomWallOut, many=True)
    plan = DrawingOut(required=True)
    problems = out(ProblemOut, many=True)
    cautions = texts_out()


def answer_needs(asked: dict[str, Any], context: Context) -> Answer:
    room, unused = find(asked, context)
    return {
        "needs": [_figure(figure) for figure in derive_needs(room)],
        "problems": problems_out((*room.problems, *check_room(room))),
        "warnings": unused,
    }


def answer_closure(asked: dict[str, Any], context: Context) -> Answer:
    room, unused = find(asked, context)
    closure = derive_closure(room)
    return {
        "closes": closure.closes,
        "length": show(closure.gap, asked["nearest"]),
        "length_allowed": show(closure.gap_allowed, asked["nearest"]),
        "angle": float(closure.angle),
        "angle_allowed": float(closure.angle_allowed),
        "suspects": [
            {
                "kind": one.kind,
                "wall": one.wall.id,
                "number": one.wall.number,
                "by": None if one.by is None else show(one.by, asked["nearest"]),
                "degrees": None if one.degrees is None else float(one.degrees),
                "message": one.message,
            }
            for one in closure.suspects
        ],
        "warnings": unused,
    }


def answer_plan(asked: dict[str, Any], context: Context) -> Answer:
    room, cut_list, _, unused = find_list(asked, context)
    return {"drawing": draw_whole(room, cut_list.pieces), "warnings": unused}


def answer_elevation(asked: dict[str, Any], context: Context) -> Answer:
    room, cut_list, _, unused = find_list(asked, context)
    wall = next((wall for wall in room.walls if asked["wall"] in (wall.id, str(wall.number))), None)
    if wall is None:
        raise NoWallError("no-such-wall", field="wall", text=quote(asked["wall"][:80]))
    return {"drawing": draw_elevation(room, wall, cut_list.pieces), "warnings": unused}


def answer_survey(asked: dict[str, Any], context: Context) -> Answer:
    notebook, name = context.notebook, asked["room"]
    shown = find_room(notebook, name)
    room = room_of(notebook, name)
    rows = derive_rows(notebook, room, asked["nearest"])
    wanted = [row for row in rows if row.state == "wanted"]
    following = next(iter(wanted), None)
    return {
        "room": {"id": name, "name": room.name, "house": shown.body["house"], "closed": room.closed,
                 "entries": _in_force(notebook.children("room", shown.body["house"]), name)},
        "rows": [_row(row, asked["nearest"]) for row in rows],
        "next": following and f"{following.figure.of} {following.figure.what}",
        "wanted": len(wanted),
        "walls": [
            _wall(notebook, read, entry, heads)
            for read, (_, entry, heads) in zip(room.walls, notebook.walls(name), strict=True)
        ],
        "plan": draw_plan(room, asked.get("in_hand") or (following.figure.wall if following else None)),
        "problems": problems_out((*room.problems, *check_room(room), *check_closure(room))),
        "cautions": cautions_for_survey(_built(notebook, shown.body["house"])),
    }  # fmt: skip


def _built(notebook: Notebook, house: str) -> int | None:
    return next((shown.body["built"] for found, shown, _ in notebook.houses() if found == house), None)


def _in_force(subjects: Iterable[tuple[str, Entry, list[Entry]]], name: str) -> list[str]:
    return [entry.id for found, _, heads in subjects if found == name for entry in heads]


def _figure(figure: Figure) -> Answer:
    names = ("of", "what", "wall", "number", "title", "short", "hint", "why")
    return {**{name: getattr(figure, name) for name in names}, "hint": figure.hint}


def _row(row: Row, nearest: Length) -> Answer:
    return {
        **_figure(row.figure),
        "key": f"{row.figure.of} {row.figure.what}",
        "state": row.state,
        "note": row.note,
        "wanted": row.figure.wanted,
        "figure": _value(row.value, nearest),
        "readings": [_taken(one) for one in row.taken],
    }


def _value(value: Length | Corner | None, nearest: Length) -> Answer | None:
    if isinstance(value, Corner):
        return {"degrees": float(value.gauge), "plus_minus": float(value.plus_minus), "shown": show_corner(value)}
    return None if value is None else show(value, nearest)


def _taken(one: Taken) -> Answer:
    names = ("entry", "text", "shown", "words", "strike", "error")
    return {**{name: getattr(one, name) for name in names}, "struck": one.strike is not None}


def _wall(notebook: Notebook, wall: Wall, shown: Entry, heads: list[Entry]) -> Answer:
    names = {one.id: one.name for one in wall.openings} | {one.id: one.name for one in wall.obstacles}
    return {
        "id": wall.id,
        "number": wall.number,
        "turn": shown.body["turn"],
        "entries": [entry.id for entry in heads],
        "openings": _things(notebook, "opening", wall.id, names),
        "obstacles": _things(notebook, "obstacle", wall.id, names),
    }


def _things(notebook: Notebook, kind: str, wall: str, names: Mapping[str, str]) -> list[Answer]:
    return [
        {"id": thing, "kind": shown.body["kind"], "name": names[thing], "entries": [entry.id for entry in heads],
         **show_settings(notebook, thing)}
        for thing, shown, heads in notebook.children(kind, wall)
    ]  # fmt: skip


QUESTIONS = (
    Question("needs", say("question-needs"), RoomIn, NeedsOut, answer_needs, kept=True),
    Question("closure", say("question-closure"), RoomIn, ClosureOut, answer_closure, kept=True),
    Question("plan", say("question-plan"), RoomIn, PlanOut, answer_plan, kept=True),
    Question("elevation", say("question-elevation"), ElevationIn, PlanOut, answer_elevation, kept=True),
    Question("survey", say("question-survey"), SurveyIn, SurveyOut, answer_survey, kept=True),
)
