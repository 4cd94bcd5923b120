"""`behind`: how studs, a wall's lean or bow, a floor's fall, jamb depths, or a board that is there, is understood."""

from typing import Any

from marshmallow import Schema, fields

from scantling.engine.cutlist.salvage import SALVAGED, parse_salvaged, say_salvaged
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.shapes import AskedIn, LengthText, one_of, text_out
from scantling.engine.survey.bow import parse_bow, say_bow
from scantling.engine.survey.plumb import parse_fall, parse_plumb, say_fall, say_plumb
from scantling.engine.survey.points import parse_points
from scantling.engine.survey.studs import parse_studs
from scantling.engine.tape.lengths import format_length, parse_length
from scantling.engine.words import say

# As many as are said one by one: a row of them goes on.
SAID = 4


class BehindIn(AskedIn):
    what = fields.String(required=True, validate=one_of("studs", "plumb", "bow", "fall", "depths", SALVAGED))
    text = fields.String(required=True, metadata={"description": say("ask-behind-text")})
    length = LengthText(metadata={"description": say("ask-behind-length")})


class BehindOut(Schema):
    words = text_out()


def answer_behind(asked: dict[str, Any], context: Context) -> Answer:
    if asked["what"] == "plumb":
        return {"words": say_plumb(parse_plumb(asked["text"]))}
    if asked["what"] == "bow":
        return {"words": say_bow(parse_bow(asked["text"]))}
    if asked["what"] == "fall":
        return {"words": say_fall(parse_fall(asked["text"]))}
    if asked["what"] == "depths":
        points = [parse_length(one, allow_negative=True) for one in parse_points(asked["text"])]
        depths = ", ".join(format_length(point, asked["nearest"]) for point in points)
        return {"words": say("depths-read", depths=depths)}
    if asked["what"] == SALVAGED:
        return {"words": say_salvaged(parse_salvaged(asked["text"]), asked["nearest"])}
    studs = [format_length(stud, asked["nearest"]) for stud in parse_studs(asked["text"], asked.get("length"))]
    return {"words": say("studs-read" if len(studs) <= SAID else "studs-go-on", studs=", ".join(studs[:SAID]))}


QUESTIONS = (
    Question("behind", say("question-behind"), BehindIn, BehindOut, answer_behind),
)
