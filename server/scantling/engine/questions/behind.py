"""`behind`: how what was read of a wall's studs, or of its lean, is understood, before it is saved."""

from typing import Any

from marshmallow import Schema, fields

from scantling.engine.lengths import format_length
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.shapes import Asked, LengthText, one_of, text_out
from scantling.engine.survey.plumb import parse_plumb, say_plumb
from scantling.engine.survey.studs import parse_studs

# As many as are said one by one: a row of them goes on.
SAID = 4


class BehindIn(Asked):
    what = fields.String(required=True, validate=one_of("studs", "plumb"))
    text = fields.String(required=True)
    length = LengthText(metadata={"description": "of the wall, where a row of studs ends"})


class BehindOut(Schema):
    words = text_out()


def answer_behind(asked: dict[str, Any], context: Context) -> Answer:
    if asked["what"] == "plumb":
        return {"words": say_plumb(parse_plumb(asked["text"]))}
    studs = [format_length(stud, asked["nearest"]) for stud in parse_studs(asked["text"], asked.get("length"))]
    return {"words": "studs at " + ", ".join(studs if len(studs) <= SAID else [*studs[:SAID], "and so on"])}


QUESTIONS = (
    Question("behind", "How a reading of a wall's studs, or of how far it leans, is understood.", BehindIn, BehindOut,
             answer_behind),
)  # fmt: skip
