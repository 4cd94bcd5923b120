"""`figures`: the lengths of a room that a sum may take from a reading, or give to one.

A corner in degrees, studs in a row, and how far off plumb are read in other ways, and are left out.
"""

from typing import Any

from marshmallow import Schema, fields

from scantling.engine.questions.facts import room_of
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.shapes import AskedIn, out, text_out
from scantling.engine.survey.facts import find_room
from scantling.engine.tape.lengths import Length, format_length, format_reading
from scantling.engine.walk.rows import Row, derive_rows
from scantling.engine.words import say

OF_LENGTH = frozenset(
    (
        *("length", "at", "width", "height", "left", "right", "ceiling", "chair_rail", "picture_rail", "depth", "sill"),
        "sash",
    )
)


class FiguresIn(AskedIn):
    room = fields.String(required=True, metadata={"description": say("ask-room")})


class LengthOfRoom(Schema):
    """`shown` is the figure as it is used, `text` all of it, as a sum takes it; null where it is not read."""

    of, what, title, state, note, shown = (text_out() for _ in range(6))
    text = text_out(none=True)


class FiguresOut(Schema):
    figures = out(LengthOfRoom, many=True)


def answer_figures(asked: dict[str, Any], context: Context) -> Answer:
    find_room(context.notebook, asked["room"])
    rows = derive_rows(context.notebook, room_of(context.notebook, asked["room"]), asked["nearest"])
    return {"figures": [_figure(row, asked["nearest"]) for row in rows if row.figure.what in OF_LENGTH]}


def _figure(row: Row, nearest: Length) -> Answer:
    value = row.value if isinstance(row.value, Length) else None
    return {
        **{name: getattr(row.figure, name) for name in ("of", "what", "title")},
        "state": row.state,
        "note": row.note,
        "shown": "" if value is None else format_length(value, nearest),
        "text": None if value is None else format_reading(value),
    }


QUESTIONS = (
    Question("figures", say("question-figures"), FiguresIn, FiguresOut, answer_figures, kept=True),
)
