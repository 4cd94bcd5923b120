"""`breath`: a wall said in one breath, part by part: what each is of, how it is understood, what is in doubt."""

from typing import Any

from marshmallow import Schema, fields, validate

from scantling.engine.questions.facts import room_of
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.shapes import Asked, one_of, out, text_out
from scantling.engine.survey.facts import find_room
from scantling.engine.tape.angles import Corner
from scantling.engine.tape.lengths import Length, format_length, say_length
from scantling.engine.tape.quantities import BARE, INCHES
from scantling.engine.walk.breath import LONGEST_BREATH, PARTS_AT_MOST, Part, hear_breath
from scantling.engine.walk.figure import Figure
from scantling.engine.walk.rows import derive_rows, show_corner

TOO_LONG = f"Say it in parts: {LONGEST_BREATH} letters at once are the most."


class BreathIn(Asked):
    room = fields.String(required=True, metadata={"description": "the id of a room in the notebook"})
    text = fields.String(
        required=True,
        validate=validate.Length(max=LONGEST_BREATH, error=TOO_LONG),
        metadata={"description": "what was said, as dictation writes it"},
    )
    bare = fields.String(
        load_default=INCHES, validate=one_of(*BARE), metadata={"description": "what lengths without a unit are in"}
    )  # fmt: skip
    wall = fields.String(load_default=None, metadata={"description": "the id of the wall one faces"})


class MayBeOut(Schema):
    """A figure of the room that a reading may be of."""

    of, what, title = text_out(), text_out(), text_out()


class PartOut(Schema):
    """`reading` is the text to write. `figure` is what it is of: null where that, or the reading, is in doubt."""

    heard, reading, shown, words, doubt = text_out(), text_out(), text_out(), text_out(), text_out()
    figure = out(MayBeOut, none=True)
    choices = out(MayBeOut, many=True)


class BreathOut(Schema):
    """`words` say how far it was understood; empty where nothing was said."""

    parts = out(PartOut, many=True)
    words = text_out()


def answer_breath(asked: dict[str, Any], context: Context) -> Answer:
    notebook, name = context.notebook, asked["room"]
    find_room(notebook, name)
    room = room_of(notebook, name)
    rows = derive_rows(notebook, room, asked["nearest"])
    parts = hear_breath(asked["text"], room, rows, asked["wall"], asked["bare"])
    return {"parts": [_part(part, asked["nearest"]) for part in parts], "words": _say(parts)}


def _say(parts: list[Part]) -> str:
    if not parts:
        return ""
    clear = sum(part.figure is not None for part in parts)
    said = f"{clear} of {len(parts)} understood"
    rest = len(parts) - clear
    asked = f"; {rest} to look at" if rest else ""
    full = " Say the rest after these are saved." if len(parts) == PARTS_AT_MOST else ""
    return f"{said}{asked}.{full}"


def _part(part: Part, nearest: Length) -> Answer:
    shown, words = _show(part, nearest)
    return {
        "heard": part.heard,
        "reading": part.text,
        "shown": shown,
        "words": words,
        "doubt": part.doubt,
        "figure": part.figure and _may_be(part.figure),
        "choices": [_may_be(one) for one in part.choices],
    }


def _show(part: Part, nearest: Length) -> tuple[str, str]:
    if isinstance(part.value, Corner):
        shown = show_corner(part.value)
        return shown, f"{shown.removesuffix('°')} degrees"
    return ("", "") if part.value is None else (format_length(part.value, nearest), say_length(part.value, nearest))


def _may_be(figure: Figure) -> Answer:
    return {"of": figure.of, "what": figure.what, "title": figure.title}


QUESTIONS = (
    Question("breath", "What was said of a wall in one breath, part by part, with what is in doubt.", BreathIn,
             BreathOut, answer_breath),
)  # fmt: skip
