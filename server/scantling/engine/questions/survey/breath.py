"""`breath`: a wall said in one breath, part by part: what each is of, how it is understood, what is in doubt."""

from typing import Any

from marshmallow import Schema, fields, validate

from scantling.engine.questions.facts import room_of
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.shapes import AskedIn, one_of, out, text_out
from scantling.engine.survey.facts import find_room
from scantling.engine.tape.angles import Corner
from scantling.engine.tape.lengths import Length, format_length, say_length
from scantling.engine.tape.quantities import BARE, INCHES
from scantling.engine.walk.breath import LONGEST_BREATH, PARTS_AT_MOST, Heard, hear_breath
from scantling.engine.walk.figure import Figure
from scantling.engine.walk.rows import derive_rows, show_corner
from scantling.engine.words import say

TOO_LONG = say("breath-too-long", most=LONGEST_BREATH)


class BreathIn(AskedIn):
    room = fields.String(required=True, metadata={"description": say("ask-room")})
    text = fields.String(
        required=True,
        validate=validate.Length(max=LONGEST_BREATH, error=TOO_LONG),
        metadata={"description": say("ask-breath-text")},
    )
    bare = fields.String(
        load_default=INCHES, validate=one_of(*BARE), metadata={"description": say("ask-sum-bare")}
    )  # fmt: skip
    wall = fields.String(load_default=None, metadata={"description": say("ask-breath-wall")})


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


def _say(parts: list[Heard]) -> str:
    if not parts:
        return ""
    clear = sum(part.figure is not None for part in parts)
    rest = len(parts) - clear
    said = say("breath-understood", clear=clear, count=len(parts))
    said = say("breath-in-doubt", clear=clear, count=len(parts), rest=rest) if rest else said
    return say("breath-full", said=said) if len(parts) == PARTS_AT_MOST else said


def _part(part: Heard, nearest: Length) -> Answer:
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


def _show(part: Heard, nearest: Length) -> tuple[str, str]:
    if isinstance(part.value, Corner):
        shown = show_corner(part.value)
        return shown, say("said-degrees", number=shown.removesuffix("°"))
    return ("", "") if part.value is None else (format_length(part.value, nearest), say_length(part.value, nearest))


def _may_be(figure: Figure) -> Answer:
    return {"of": figure.of, "what": figure.what, "title": figure.title}


QUESTIONS = (
    Question("breath", say("question-breath"), BreathIn, BreathOut, answer_breath),
)
