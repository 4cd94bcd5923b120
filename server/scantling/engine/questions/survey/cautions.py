"""`cautions`: those that a house has put aside, so that they can be told again."""

from typing import Any

from marshmallow import Schema, fields

from scantling.engine.cautions import EVERY, word_of
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.shapes import AskedIn, out, text_out
from scantling.engine.survey.facts import find_house
from scantling.engine.words import say


class CautionsIn(AskedIn):
    house = fields.String(required=True, metadata={"description": say("ask-house")})


class CautionOut(Schema):
    word, words = text_out(), text_out()


class CautionsOut(Schema):
    aside = out(CautionOut, many=True)


def answer_cautions(asked: dict[str, Any], context: Context) -> Answer:
    known = {word_of(words): words for words in map(say, EVERY)}
    ticks = context.notebook.ticks(find_house(context.notebook, asked["house"]), "cautions")
    return {"aside": [{"word": word, "words": known.get(word, word)} for word in ticks]}


QUESTIONS = (
    Question("cautions", say("question-cautions"), CautionsIn, CautionsOut, answer_cautions),
)
