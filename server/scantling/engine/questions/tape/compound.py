"""`compound`: saw settings for crown, from its spring and the corner."""

from typing import Any

from marshmallow import Schema, fields

from scantling.engine.cautions import cautions_for_cutting
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.readings import Positive
from scantling.engine.shapes import AskedIn, DegreesText, LengthOut, one_of, out, show, texts_out
from scantling.engine.tape.angles import SQUARE, Corner, format_degrees
from scantling.engine.tape.lengths import Length
from scantling.engine.trim.runs.compound import (
    CrownCut,
    derive_ceiling_minus_wall,
    derive_crown_cut,
    derive_drop,
    derive_projection,
    read_turning,
)
from scantling.engine.words import say


class CompoundIn(AskedIn):
    spring = DegreesText(required=True, metadata={"description": say("ask-compound-spring")})
    corner = DegreesText(required=True, metadata={"description": say("ask-compound-corner")})
    turn = fields.String(
        validate=one_of("inside", "outside"), metadata={"description": say("ask-compound-turn")}
    )
    width = Positive(metadata={"description": say("ask-compound-width")})


class EdgesOut(Schema):
    projection, drop, ceiling_minus_wall = out(LengthOut), out(LengthOut), out(LengthOut)


class CompoundOut(Schema):
    miter, bevel, nested = fields.Float(required=True), fields.Float(required=True), fields.Float(required=True)
    corner = fields.Float(required=True, metadata={"description": say("told-compound-corner")})
    edges = out(EdgesOut, none=True)
    working, cautions = texts_out(), texts_out()


def answer_compound(asked: dict[str, Any], context: Context) -> Answer:
    spring, corner = asked["spring"], read_turning(asked["corner"], asked.get("turn"))
    cut = derive_crown_cut(spring, corner)
    return {
        "miter": float(cut.miter),
        "bevel": float(cut.bevel),
        "nested": float(cut.nested),
        "corner": float(corner.degrees),
        "edges": _edges(asked["width"], asked, corner) if "width" in asked else None,
        "working": _working(asked, corner, cut),
        "cautions": cautions_for_cutting(overhead=True),
    }


def _edges(width: Length, asked: dict[str, Any], corner: Corner) -> Answer:
    spring, nearest = asked["spring"], asked["nearest"]
    return {
        "projection": show(derive_projection(width, spring), nearest),
        "drop": show(derive_drop(width, spring), nearest),
        "ceiling_minus_wall": show(derive_ceiling_minus_wall(width, spring, corner), nearest),
    }


def _working(asked: dict[str, Any], corner: Corner, cut: CrownCut) -> list[str]:
    spring, gauge = float(asked["spring"]), float(corner.gauge)
    both = {"spring": f"{spring:g}", "gauge": f"{gauge:g}"}
    return [
        say(f"crown-spring-{corner.turn}", rest=f"{float(SQUARE) - spring:g}", **both),
        say("crown-flat-miter", miter=f"{float(cut.miter):.2f}", **both),
        say("crown-flat-bevel", bevel=f"{float(cut.bevel):.2f}", **both),
        say("crown-nested", saw=format_degrees(cut.nested)),
        say(f"crown-ends-{corner.turn if cut.nested else 'straight'}"),
    ]


QUESTIONS = (
    Question("compound", say("question-compound"), CompoundIn, CompoundOut, answer_compound),
)
