"""`compound`: saw settings for crown, from its spring and the corner."""

from typing import Any

from marshmallow import Schema, fields

from scantling.engine.cautions import cautions_for_cutting
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.readings import Positive
from scantling.engine.shapes import Asked, DegreesText, LengthOut, one_of, out, show, texts_out
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


class CompoundIn(Asked):
    spring = DegreesText(required=True, metadata={"description": "between the wall and the back of the molding"})
    corner = DegreesText(required=True, metadata={"description": "room-side angle W, above 180 outside"})
    turn = fields.String(
        validate=one_of("inside", "outside"), metadata={"description": "where `corner` is what a gauge read"}
    )
    width = Positive(metadata={"description": "of the molding, flat across its back: adds the edges to the answer"})


class EdgesOut(Schema):
    projection, drop, ceiling_minus_wall = out(LengthOut), out(LengthOut), out(LengthOut)


class CompoundOut(Schema):
    miter, bevel, nested = fields.Float(required=True), fields.Float(required=True), fields.Float(required=True)
    corner = fields.Float(required=True, metadata={"description": "the room-side angle W"})
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
    longer = "wall" if corner.turn == "inside" else "ceiling"
    ends = f"the {longer} edge is the long one at this end" if cut.nested else "straight on: neither edge is longer"
    return [
        f"spring {spring:g}° from the wall ({float(SQUARE) - spring:g}° from the ceiling); "
        f"{corner.turn} corner, the gauge reads {gauge:g}°",
        f"flat: miter = atan(sin {spring:g} ÷ tan({gauge:g} ÷ 2)) = {float(cut.miter):.2f}°",
        f"flat: bevel = asin(cos {spring:g} × cos({gauge:g} ÷ 2)) = {float(cut.bevel):.2f}°",
        f"nested, ceiling edge on the table and wall edge up the fence: saw {format_degrees(cut.nested)}, no bevel",
        f"{ends}; try both settings on two scraps first",
    ]


QUESTIONS = (
    Question("compound", "Crown at a corner: miter and bevel lying flat on the saw, and the setting when nested.",
             CompoundIn, CompoundOut, answer_compound),
)  # fmt: skip
