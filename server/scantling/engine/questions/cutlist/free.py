"""`free`: a room's free pieces, the names a sum may use, and a sum tried; `battens`: the marks along each wall."""

from typing import Any

from marshmallow import Schema, fields

from scantling.engine.errors import EngineError
from scantling.engine.notebook import Notebook
from scantling.engine.questions.called import call_stock
from scantling.engine.questions.facts import RoomIn, find, find_pieces
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.readings import ProblemOut, problems_out, show_working
from scantling.engine.shapes import LengthOut, one_of, out, show, text_out, texts_out
from scantling.engine.survey.room import Problem, Wall
from scantling.engine.tape.lengths import Length, format_plain, parse_length
from scantling.engine.tape.quantities import BARE, INCHES, MILLIMETERS
from scantling.engine.trim.own.battens import (
    SETTINGS,
    THICKNESS,
    BattenStretch,
    derive_batten_rows,
    is_battened,
    read_wanted,
)
from scantling.engine.trim.own.free import evaluate_free, find_used, write_free
from scantling.engine.trim.own.names import derive_names
from scantling.engine.trim.piece import Step
from scantling.engine.words import say


class FreeIn(RoomIn):
    text = fields.String(metadata={"description": say("ask-free-text")})
    bare = fields.String(
        load_default=INCHES, validate=one_of(*BARE), metadata={"description": say("ask-free-bare")}
    )  # fmt: skip


class NamedLengthOut(Schema):
    name = text_out()
    length = out(LengthOut)


class TrialStep(Schema):
    text = text_out()
    value = out(LengthOut, none=True)
    readings = texts_out()


class TrialOut(Schema):
    """A sum tried: its length with the working, or what is wrong with it and where."""

    length = out(LengthOut, none=True)
    working = out(TrialStep, many=True)
    message = text_out(none=True)
    at = fields.Integer(required=True, allow_none=True)
    written = fields.String(required=True, metadata={"description": say("told-trial-written")})


class FreeLine(Schema):
    """`entries` are the statements in force, `all` those to strike for the piece to be gone."""

    id, name, profile, text, count = text_out(), text_out(), text_out(), text_out(), text_out()
    entries, all = texts_out(), texts_out()


class FreeOut(Schema):
    free = out(FreeLine, many=True)
    names = out(NamedLengthOut, many=True)
    profiles, profiles_shown = texts_out(), texts_out()
    trial = out(TrialOut, none=True)
    warnings = texts_out()


class BattenMarkOut(Schema):
    item = fields.Integer(required=True, metadata={"description": say("told-clash-item")})
    mark, from_corner = out(LengthOut), out(LengthOut)


class BattenClash(Schema):
    item = fields.Integer(required=True, metadata={"description": say("told-clash-item")})
    thing = text_out()
    over = out(LengthOut)


class BattenRow(Schema):
    wall, place = text_out(), text_out()
    number, count = fields.Integer(required=True), fields.Integer(required=True)
    span, gap, pitch = out(LengthOut), out(LengthOut), out(LengthOut)
    marks = out(BattenMarkOut, many=True)
    clashes = out(BattenClash, many=True)
    clear = fields.List(fields.Integer(), required=True, metadata={"description": say("told-batten-row-clear")})


class BattenWall(Schema):
    """What a wall was told of its battens, with the entries in force."""

    wall = text_out()
    settings = fields.Dict(keys=fields.String(), values=fields.String(), required=True)
    entries = fields.Dict(keys=fields.String(), values=fields.List(fields.String()), required=True)


class BattensOut(Schema):
    walls = out(BattenWall, many=True)
    rows = out(BattenRow, many=True)
    thickness = fields.String(required=True, metadata={"description": say("told-battens-thickness")})
    problems = out(ProblemOut, many=True)
    warnings = texts_out()


def answer_free(asked: dict[str, Any], context: Context) -> Answer:
    room, unused = find(asked, context)
    nearest, names = asked["nearest"], derive_names(room)
    pieces, _ = find_pieces(asked, room, context)
    profiles = sorted({piece.profile for piece in pieces})
    here = asked["room"] if isinstance(asked["room"], str) else None
    return {
        "free": [
            {"id": one.id, "name": one.name, "profile": one.profile, "text": one.text, "count": str(one.count),
             **_entries(context.notebook, here, one.id)}
            for one in room.free
        ],
        "names": [{"name": named.name, "length": show(named.length, nearest)} for named in names.values()],
        "profiles": profiles,
        "profiles_shown": [call_stock(profile) for profile in profiles],
        "trial": _trial(asked, names) if asked.get("text", "").strip() else None,
        "warnings": unused,
    }  # fmt: skip


def _entries(notebook: Notebook, room: str | None, free: str) -> Answer:
    if room is None:
        return {"entries": [], "all": []}
    said = notebook.about("the free", free)
    standing = [entry.id for entry in said if notebook.strike_of(entry.id) is None]
    return {"entries": [entry.id for entry in notebook.heads(said)], "all": standing}


def _trial(asked: dict[str, Any], names: dict[str, Any]) -> Answer:
    text, nearest = asked["text"], asked["nearest"]
    try:
        text = write_free(text, names) if asked["bare"] == MILLIMETERS else text
        result, length = evaluate_free(text, names)
    except EngineError as error:
        return {"length": None, "working": [], "message": error.message, "at": error.at, "written": text}
    steps = [*(named.step for named in find_used(text, names)), *(Step(step.text) for step in result.steps)]
    return {"length": show(length, nearest), "working": show_working(steps, nearest), "message": None, "at": None,
            "written": text}  # fmt: skip


def answer_battens(asked: dict[str, Any], context: Context) -> Answer:
    room, unused = find(asked, context)
    rows: list[Answer] = []
    problems: list[Problem] = []
    for wall in filter(is_battened, room.walls):
        try:
            rows += [_row(wall, row, asked["nearest"]) for row in derive_batten_rows(room, wall, read_wanted(wall))]
        except EngineError as error:
            problems.append(Problem(wall.id, error.key, error.message))
    walls = [_told(context.notebook, wall) for wall in filter(is_battened, room.walls)]
    return {"walls": walls, "rows": rows, "thickness": format_plain(parse_length(THICKNESS)),
            "problems": problems_out(problems), "warnings": unused}  # fmt: skip


def _told(notebook: Notebook, wall: Wall) -> Answer:
    given = {name.removeprefix("battens."): str(value) for name, value in wall.settings.items()}
    said = notebook.settings(wall.id)
    return {
        "wall": wall.id,
        "settings": {name: value for name, value in given.items() if name in SETTINGS},
        "entries": {name.removeprefix("battens."): [entry.id for entry in heads] for name, (_, heads) in said.items()},
    }


def _row(wall: Wall, row: BattenStretch, nearest: Length) -> Answer:
    spacing = row.spacing
    return {
        "wall": wall.id,
        "number": wall.number,
        "place": row.run.place,
        "count": spacing.count,
        "span": show(spacing.span, nearest),
        "gap": show(spacing.gap, nearest),
        "pitch": show(spacing.pitch, nearest),
        "marks": [
            {"item": item, "mark": show(mark, nearest), "from_corner": show(row.run.start + mark, nearest)}
            for item, mark in enumerate(spacing.marks, start=1)
        ],
        "clashes": [
            {"item": one.item, "thing": row.avoid[one.avoid].name, "over": show(one.over, nearest)}
            for one in row.clashes
        ],
        "clear": list(row.clear),
    }


QUESTIONS = (
    Question("free", say("question-free"), FreeIn, FreeOut, answer_free),
    Question("battens", say("question-battens"), RoomIn, BattensOut, answer_battens),
)
