"""`window`: stool, apron, casing and jamb extension round one window."""

from collections.abc import Mapping
from typing import Any

from marshmallow import fields

from scantling.engine.cautions import cautions_for_cutting
from scantling.engine.forms import Schema
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.readings import Positive, Readings
from scantling.engine.questions.trim.casing import FlatPieceOut, OpeningIn, jambs_of, show_flat, steep_of
from scantling.engine.shapes import AskedIn, LengthOut, LengthText, one_of, out, show, text_out, texts_out
from scantling.engine.standard import HEADS, STOOL, STYLES, Standard
from scantling.engine.tape.lengths import ZERO, Length
from scantling.engine.trim.openings.casing import Make
from scantling.engine.trim.openings.extension import ExtensionStrip
from scantling.engine.trim.openings.frame import FlatPiece
from scantling.engine.trim.openings.stool import Stool
from scantling.engine.trim.openings.window import WindowMake, derive_window
from scantling.engine.words import say


class CasingSizeIn(Schema):
    width, thickness = Positive(required=True), Positive()
    head_width = Positive(metadata={"description": say("ask-casing-size-head-width")})


class CasingSize(fields.Nested):
    """Casing by its width as text, or {width, thickness, head_width}."""

    wants = say("wants-casing-size")

    def _deserialize(self, value: Any, *args: Any, **kwargs: Any) -> Any:
        return super()._deserialize(value if isinstance(value, Mapping) else {"width": value}, *args, **kwargs)


class DepthsIn(Schema):
    """From the jamb's edge to the plane of the wall: sides from the top down, head and sill from the left."""

    left, right, head, sill = Readings(signed=True), Readings(signed=True), Readings(signed=True), Readings(signed=True)


class WindowIn(AskedIn):
    opening = fields.Nested(OpeningIn, required=True)
    reveal = LengthText(required=True)
    casing = CasingSize(CasingSizeIn, required=True)
    style = fields.String(load_default=STOOL, validate=one_of(*STYLES))
    head = fields.String(load_default="mitered", validate=one_of(*HEADS))
    overhang = LengthText(load_default=ZERO)
    horn = LengthText(load_default=Standard().stool_horn)
    left_stop = Readings(metadata={"description": say("ask-casing-left-stop")})
    right_stop = Readings(metadata={"description": say("ask-casing-right-stop")})
    depths = fields.Nested(DepthsIn, load_default={})
    sash = Readings(metadata={"description": say("ask-opening-sash")})
    stool_thickness = LengthText(
        load_default=ZERO, metadata={"description": say("ask-window-stool-thickness")}
    )
    apron_thickness = Positive(metadata={"description": say("ask-window-apron-thickness")})
    extension_thickness = Positive(load_default=Standard().extension_thickness)
    extension_step = LengthText(
        load_default=ZERO, metadata={"description": say("ask-window-extension-step")}
    )


class WindowPieceOut(FlatPieceOut):
    """Extension strips have widths at each point that was read; the other pieces have none."""

    widths = out(LengthOut, many=True)
    taper, bow = out(LengthOut, none=True), out(LengthOut, none=True)
    ripping = text_out(none=True)


class StoolOut(Schema):
    """`between` the jambs; `tongue` from sash to wall plane and `width` overall are null until the sash is read."""

    between, front, left_horn, right_horn = out(LengthOut), out(LengthOut), out(LengthOut), out(LengthOut)
    tongue, width = out(LengthOut, none=True), out(LengthOut, none=True)


class WindowOut(Schema):
    """Pieces in the order they are put up."""

    pieces = out(WindowPieceOut, many=True)
    stool = out(StoolOut, none=True)
    twist = out(LengthOut, none=True)
    order, warnings, cautions = texts_out(), texts_out(), texts_out()


def answer_window(asked: dict[str, Any], context: Context) -> Answer:
    nearest = asked["nearest"]
    window = derive_window(jambs_of(asked), _make(asked))
    stool = [_plain(window.stool.board, nearest)] if window.stool else []
    return {
        "pieces": [
            *stool,
            *(_strip(strip, nearest) for strip in window.strips),
            *(_plain(piece, nearest) for piece in (*window.casing, *window.apron)),
        ],
        "stool": _stool(window.stool, nearest) if window.stool else None,
        "twist": None if window.twist is None else show(window.twist, nearest),
        "order": [sentence for _, sentence in window.order],
        "warnings": [*window.warnings, *steep_of((*window.casing, *window.apron))],
        "cautions": cautions_for_cutting(windows=True),
    }


def _make(asked: dict[str, Any]) -> WindowMake:
    casing = asked["casing"]
    make = Make(
        leg_width=casing["width"],
        head_width=casing.get("head_width", casing["width"]),
        reveal=asked["reveal"],
        mitered=asked["head"] == "mitered",
        overhang=asked["overhang"],
        clearance=asked["stool_thickness"] if asked["style"] == STOOL else ZERO,
        clearance_for="minus-stool",
        step=asked["extension_step"],
    )
    return WindowMake(
        make=make,
        thickness=casing.get("thickness", Standard().casing_thickness),
        style=asked["style"],
        horn=asked["horn"],
        apron_thickness=asked.get("apron_thickness"),
        strip_thickness=asked["extension_thickness"],
        sash=asked.get("sash"),
        depths=asked["depths"],
    )


def _plain(piece: FlatPiece, nearest: Length) -> Answer:
    return {**show_flat(piece, nearest), "widths": [], "taper": None, "bow": None, "ripping": None}


def _strip(strip: ExtensionStrip, nearest: Length) -> Answer:
    return {
        **show_flat(strip.board, nearest),
        "widths": [show(width, nearest) for width in strip.widths],
        "taper": show(strip.taper, nearest),
        "bow": show(strip.bow, nearest),
        "ripping": strip.ripping,
    }


def _stool(stool: Stool, nearest: Length) -> Answer:
    lengths = {
        "between": stool.between,
        "front": stool.front,
        "left_horn": stool.left_horn,
        "right_horn": stool.right_horn,
        "tongue": stool.tongue,
        "width": stool.width,
    }
    return {name: None if length is None else show(length, nearest) for name, length in lengths.items()}


QUESTIONS = (
    Question("window", say("question-window"), WindowIn, WindowOut, answer_window),
)
