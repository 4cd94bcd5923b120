"""`panes`: film cut to panes of glass, from a roll. `sheets`: panels cut from sheets, by straight cuts."""

from collections.abc import Iterator, Sequence
from typing import Any

from marshmallow import fields, validate

from scantling.engine.cautions import cautions_for_film
from scantling.engine.coverings.panes.layout import PlacedBlank, gather_kinds, place_bands
from scantling.engine.coverings.panes.off_roll import OffRoll, plan_off_roll
from scantling.engine.coverings.panes.pane import Pane, PaneError, derive_pane, find_impossible
from scantling.engine.coverings.scale import derive_scale
from scantling.engine.drawings.coverings.layout import draw_layout
from scantling.engine.errors import EngineError
from scantling.engine.forms import Schema
from scantling.engine.questions.coverings.shapes import MarksOut, UnableOut, unable
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.readings import Positive, Readings
from scantling.engine.shapes import AskedIn, DrawingOut, LengthOut, LengthText, out, show, text_out, texts_out
from scantling.engine.tape.lengths import (
    ONE_INCH,
    ZERO,
    Length,
    format_length,
    format_working,
    parse_length,
)
from scantling.engine.tape.measures import format_area
from scantling.engine.words import say

# What a knife runs along, at the edge of film: common practice, no source.
GAP = parse_length("1/16")
PANES_AT_MOST = 200


class PaneIn(Schema):
    name = fields.String(validate=validate.Length(max=80))
    widths, heights = Readings(required=True), Readings(required=True)
    turnable = fields.Boolean(metadata={"description": say("ask-turnable-here")})


class PanesIn(AskedIn):
    panes = fields.List(fields.Nested(PaneIn), required=True, validate=validate.Length(min=1, max=PANES_AT_MOST))
    gap = LengthText(load_default=GAP, metadata={"description": say("ask-gap")})
    allowance = LengthText(load_default=ONE_INCH, metadata={"description": say("ask-panes-allowance")})
    roll_width = Positive(required=True)
    turnable = fields.Boolean(load_default=False, metadata={"description": say("ask-panes-turnable")})


class PaneBlankOut(Schema):
    """`widths` and `heights`: what is left of it at each place read, once trimmed."""

    pane = fields.Integer(required=True, metadata={"description": say("told-place")})
    name = text_out()
    width, height = out(LengthOut), out(LengthOut)
    widths, heights = out(LengthOut, many=True), out(LengthOut, many=True)
    working = texts_out()


class PlaceOut(Schema):
    """From the roll's left edge and from its end; a turned blank's height lies across."""

    pane, band = fields.Integer(required=True), fields.Integer(required=True)
    turned = fields.Boolean(required=True)
    x, y, across, along = out(LengthOut), out(LengthOut), out(LengthOut), out(LengthOut)
    marks = out(MarksOut)


class PanesOut(Schema):
    blanks = out(PaneBlankOut, many=True)
    layout = out(PlaceOut, many=True)
    length, bound = out(LengthOut), out(LengthOut)
    proven = fields.Boolean(required=True)
    said = text_out()
    impossible = out(UnableOut, many=True)
    drawing = DrawingOut(required=True, allow_none=True)
    working, cautions = texts_out(), texts_out()


def answer_panes(asked: dict[str, Any], context: Context) -> Answer:
    nearest, roll = asked["nearest"], asked["roll_width"]
    panes, impossible = _sort_out(asked)
    fitting = [place for place, pane in panes.items() if place not in impossible]
    sizes = [panes[place].blank for place in fitting]
    scale = derive_scale([roll, *(size for both in sizes for size in both)])
    kinds, members = gather_kinds(sizes, scale, [_may_turn(asked, place) for place in fitting])
    plan = plan_off_roll(kinds, scale.whole(roll))
    places = place_bands(plan.bands, members, kinds, scale)
    length, bound = scale.length(plan.length), scale.length(plan.bound)
    names = [panes[place].name for place in fitting]
    title = say("panes-drawing")
    return {
        "blanks": [_blank(place, pane, asked) for place, pane in panes.items()],
        "layout": [_place(one, fitting, nearest) for one in places],
        "length": show(length, nearest),
        "bound": show(bound, nearest),
        "proven": plan.length == plan.bound,
        "said": _said(plan, length, bound, nearest),
        "impossible": [unable(place, error) for place, error in sorted(impossible.items())],
        "drawing": draw_layout(roll, length, places, names, title) if names else None,
        "working": _working(sizes, roll, length),
        "cautions": cautions_for_film(),
    }


def _sort_out(asked: dict[str, Any]) -> tuple[dict[int, Pane], dict[int, EngineError]]:
    """Every pane that leaves anything, by its place; and what is wrong with those that cannot be cut."""
    panes: dict[int, Pane] = {}
    impossible: dict[int, EngineError] = {}
    for place, one in enumerate(asked["panes"]):
        name = one.get("name") or say("nameless-pane", number=place + 1)
        try:
            panes[place] = derive_pane(name, one["widths"], one["heights"], asked["gap"], asked["allowance"])
        except PaneError as error:
            impossible[place] = error
            continue
        refusal = find_impossible(panes[place], asked["roll_width"], _may_turn(asked, place))
        if refusal:
            impossible[place] = refusal
    return panes, impossible


def _may_turn(asked: dict[str, Any], place: int) -> bool:
    return bool(asked["panes"][place].get("turnable", asked["turnable"]))


def _blank(place: int, pane: Pane, asked: dict[str, Any]) -> Answer:
    nearest = asked["nearest"]
    return {
        "pane": place,
        "name": pane.name,
        "width": show(pane.blank_width, nearest),
        "height": show(pane.blank_height, nearest),
        "widths": [show(width, nearest) for width in pane.widths],
        "heights": [show(height, nearest) for height in pane.heights],
        "working": list(_blank_working(pane, asked["panes"][place], asked["gap"], asked["allowance"])),
    }


def _blank_working(pane: Pane, read: dict[str, Any], gap: Length, allowance: Length) -> Iterator[str]:
    for way, blank in (("widths", pane.blank_width), ("heights", pane.blank_height)):
        figures = {"largest": format_working(read[way].largest.inches), "allowance": format_working(allowance.inches),
                   "blank": format_working(blank.inches)}  # fmt: skip
        count = len(read[way].lengths)
        yield say(f"pane-{way}", **figures) if count == 1 else say(f"pane-largest-{way}", count=count, **figures)
    yield say("pane-trimmed", gap=format_working(gap.inches))


def _place(one: PlacedBlank, fitting: Sequence[int], nearest: Length) -> Answer:
    lengths = {name: show(getattr(one, name), nearest) for name in ("x", "y", "across", "along")}
    return {"pane": fitting[one.item], "band": one.band, "turned": one.turned, **lengths, "marks": one.marks}


def _said(plan: OffRoll, length: Length, bound: Length, nearest: Length) -> str:
    if not plan.length:
        return say("panes-none")
    if plan.length == plan.bound:
        return say("panes-proven")
    return say("panes-not-proven", length=format_length(length - bound, nearest))


def _working(sizes: Sequence[tuple[Length, Length]], roll: Length, length: Length) -> list[str]:
    area = sum((width.inches * height.inches for width, height in sizes), start=ZERO.inches)
    used = format_working(area / roll.inches)
    return [
        say("panes-without-waste", area=format_area(area), roll=format_working(roll.inches), length=used),
        say("panes-in-bands", length=format_working(length.inches)),
    ]


QUESTIONS = (
    Question("panes", say("question-panes"), PanesIn, PanesOut, answer_panes),
)
