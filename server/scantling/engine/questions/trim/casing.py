"""`casing`: the legs and head round an opening, mitered or butted, on plinths or on the floor."""

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from marshmallow import fields, validate

from scantling.engine.cautions import cautions_for_cutting
from scantling.engine.forms import Schema
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.readings import Gauged, Positive, Readings, StepOut, show_working
from scantling.engine.shapes import AskedIn, LengthOut, LengthText, one_of, out, show, text_out, texts_out
from scantling.engine.standard import HEADS, Standard
from scantling.engine.tape.lengths import THIRTY_SECOND, ZERO, Length
from scantling.engine.trim.openings.casing import Make, Plinth, check_casing, derive_casing, derive_sides
from scantling.engine.trim.openings.frame import FlatPiece
from scantling.engine.trim.openings.jambs import Jambs, check_jambs
from scantling.engine.trim.told.steep import say_steep
from scantling.engine.words import say


class OpeningIn(Schema):
    width = Readings(required=True, metadata={"description": say("ask-opening-width")})
    left = Readings(required=True, metadata={"description": say("ask-opening-left")})
    right = Readings(required=True, metadata={"description": say("ask-opening-right")})
    head_corners = fields.List(
        Gauged(allow_none=True),
        validate=validate.Length(equal=2, error=say("casing-head-corners")),
        metadata={"description": say("ask-opening-head-corners")},
    )


class PlinthIn(Schema):
    height = Positive(required=True)
    width = Positive()


class PlinthField(fields.Nested):
    """A plinth block: its height as text, or {height, width}."""

    wants = say("wants-plinth")

    def _deserialize(self, value: Any, *args: Any, **kwargs: Any) -> Any:
        return super()._deserialize(value if isinstance(value, Mapping) else {"height": value}, *args, **kwargs)


class CasingIn(AskedIn):
    opening = fields.Nested(OpeningIn, required=True)
    reveal = LengthText(required=True)
    leg_width, head_width = Positive(required=True), Positive(metadata={"description": say("ask-casing-head-width")})
    thickness = Positive(metadata={"description": say("ask-casing-thickness")})
    head = fields.String(load_default="mitered", validate=one_of(*HEADS))
    overhang = LengthText(load_default=ZERO, metadata={"description": say("ask-casing-overhang")})
    plinth = PlinthField(PlinthIn, allow_none=True, load_default=None)
    clearance = LengthText(load_default=ZERO, metadata={"description": say("ask-casing-clearance")})
    left_stop = Readings(metadata={"description": say("ask-casing-left-stop")})
    right_stop = Readings(metadata={"description": say("ask-casing-right-stop")})


class EndCutOut(Schema):
    joint, long_edge, shown = text_out(), text_out(), text_out()
    saw = fields.Float(required=True, metadata={"description": say("told-degrees-from-square")})


class FlatPieceOut(Schema):
    """Legs have `saw_top` and `foot`, level pieces `saw_left` and `saw_right`; the other two are null.

    `plus_minus` is for the edge at the opening, which is the one to mark; the other follows from the saw.
    """

    part, long_edge = text_out(), text_out()
    short, long, plus_minus = out(LengthOut), out(LengthOut), out(LengthOut)
    saw_top, foot = fields.Float(required=True, allow_none=True), fields.Float(required=True, allow_none=True)
    saw_left, saw_right = fields.Float(required=True, allow_none=True), fields.Float(required=True, allow_none=True)
    first, second = out(EndCutOut), out(EndCutOut)
    working = out(StepOut, many=True)
    notes = texts_out()


class CasingOut(Schema):
    pieces = out(FlatPieceOut, many=True)
    warnings, cautions = texts_out(), texts_out()


def answer_casing(asked: dict[str, Any], context: Context) -> Answer:
    jambs = jambs_of(asked)
    plinth = asked["plinth"]
    make = Make(
        leg_width=asked["leg_width"],
        head_width=asked.get("head_width", asked["leg_width"]),
        reveal=asked["reveal"],
        mitered=asked["head"] == "mitered",
        overhang=asked["overhang"],
        plinth=None if plinth is None else Plinth(plinth["height"], plinth.get("width")),
        clearance=asked["clearance"],
    )
    pieces = derive_casing(jambs, make)
    return {
        "pieces": [show_flat(piece, asked["nearest"]) for piece in pieces],
        "warnings": [
            *check_jambs(jambs, make.leg_width),
            *check_casing(derive_sides(jambs, make), make),
            *steep_of(pieces),
        ],
        "cautions": cautions_for_cutting(),
    }


def jambs_of(asked: dict[str, Any]) -> Jambs:
    """The opening of a question, with its side walls."""
    opening = asked["opening"]
    left_corner, right_corner = opening.get("head_corners", (None, None))
    return Jambs(
        opening["width"], opening["left"], opening["right"], left_corner, right_corner,
        asked.get("left_stop"), asked.get("right_stop"),
    )  # fmt: skip


def steep_of(pieces: Iterable[FlatPiece]) -> Iterator[str]:
    """What is said of ends that many saws do not turn to; a question knows no saw."""
    for piece in pieces:
        sides = ("top", "foot") if piece.upright else ("left", "right")
        for said in say_steep(piece.first, piece.second, Standard().saw_range, sides):
            yield f"{piece.part.capitalize()}: {said[0].lower()}{said[1:]}"


def show_flat(piece: FlatPiece, nearest: Length) -> Answer:
    saws = (float(piece.first.saw), float(piece.second.saw))
    names = ("saw_top", "foot") if piece.upright else ("saw_left", "saw_right")
    cuts = [
        {"joint": cut.joint, "saw": float(cut.saw), "long_edge": cut.long_edge, "shown": cut.shown}
        for cut in (piece.first, piece.second)
    ]
    return {
        "part": piece.part,
        "short": show(piece.short, nearest),
        "long": show(piece.long, nearest),
        "long_edge": piece.long_edge,
        "plus_minus": show(piece.doubt.plus_minus, THIRTY_SECOND),
        "saw_top": None, "foot": None, "saw_left": None, "saw_right": None,
        **dict(zip(names, saws, strict=True)),
        "first": cuts[0],
        "second": cuts[1],
        "working": show_working(piece.working, nearest),
        "notes": list(piece.notes),
    }  # fmt: skip


QUESTIONS = (
    Question("casing", say("question-casing"), CasingIn, CasingOut, answer_casing),
)
