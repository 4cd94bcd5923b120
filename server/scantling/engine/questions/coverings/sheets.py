"""`sheets`: panels cut from sheets by straight cuts, and how many sheets to buy."""

from collections.abc import Iterator, Sequence
from typing import Any

from marshmallow import fields, validate

from scantling.engine.coverings.panes.layout import PlacedBlank, gather_kinds, place_bands
from scantling.engine.coverings.panes.pane import PaneError
from scantling.engine.coverings.panes.sheets import SheetPlan, fits_on_sheet, plan_sheets
from scantling.engine.coverings.scale import Scale, derive_scale
from scantling.engine.drawings.coverings.layout import draw_layout
from scantling.engine.errors import EngineError
from scantling.engine.forms import Schema
from scantling.engine.questions.amounts import Price
from scantling.engine.questions.coverings.shapes import UnableOut, unable
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.readings import Positive, Readings
from scantling.engine.shapes import AskedIn, DrawingOut, LengthOut, LengthText, out, show, text_out, texts_out
from scantling.engine.standard import format_price
from scantling.engine.tape.lengths import Length, format_length, format_working, parse_length
from scantling.engine.tape.measures import format_area
from scantling.engine.words import say

KERF = parse_length("1/8")
PANELS_AT_MOST = 200


class SheetPanelIn(Schema):
    name = fields.String(validate=validate.Length(max=80))
    widths, heights = Readings(required=True), Readings(required=True)
    count = fields.Integer(strict=True, load_default=1, validate=validate.Range(min=1, max=PANELS_AT_MOST))
    turnable = fields.Boolean(metadata={"description": say("ask-turnable-here")})


class SheetIn(Schema):
    width, length = Positive(required=True), Positive(required=True)
    price = Price()


class SheetsIn(AskedIn):
    """A panel's height lies along the sheet, with its grain, unless it may be turned."""

    panels = fields.List(
        fields.Nested(SheetPanelIn), required=True, validate=validate.Length(min=1, max=PANELS_AT_MOST)
    )
    gap = LengthText(load_default=parse_length("0"), metadata={"description": say("ask-gap")})
    kerf = LengthText(load_default=KERF)
    sheet = fields.Nested(SheetIn, required=True)
    turnable = fields.Boolean(load_default=False)


class PanelOut(Schema):
    panel, count = fields.Integer(required=True), fields.Integer(required=True)
    name = text_out()
    width, height = out(LengthOut), out(LengthOut)
    working = texts_out()


class SheetCutOut(Schema):
    """From the sheet's left edge and its near end."""

    panel, band = fields.Integer(required=True), fields.Integer(required=True)
    turned = fields.Boolean(required=True)
    x, y, across, along = out(LengthOut), out(LengthOut), out(LengthOut), out(LengthOut)


class SheetOut(Schema):
    cuts = out(SheetCutOut, many=True)
    drawing = DrawingOut(required=True)


class SheetsOut(Schema):
    panels = out(PanelOut, many=True)
    sheets = out(SheetOut, many=True)
    count, bound = fields.Integer(required=True), fields.Integer(required=True)
    proven = fields.Boolean(required=True)
    first_cut = text_out()
    said = text_out()
    cost = fields.String(required=True, allow_none=True)
    impossible = out(UnableOut, many=True)
    working = texts_out()


def answer_sheets(asked: dict[str, Any], context: Context) -> Answer:
    sheet = asked["sheet"]
    sizes = {place: _size(one, asked["gap"]) for place, one in enumerate(asked["panels"])}
    lengths = [sheet["width"], sheet["length"], asked["kerf"], *(size for both in sizes.values() for size in both)]
    scale = derive_scale(lengths)
    impossible = dict(_find_impossible(asked, sizes, scale))
    each = [place for place in sizes if place not in impossible for _ in range(asked["panels"][place]["count"])]
    plan, cut = _plan(asked, each, sizes, scale)
    price = sheet.get("price")
    return {
        "panels": [_panel(place, one, sizes[place], asked) for place, one in enumerate(asked["panels"])],
        "sheets": [_sheet(places, each, asked) for places in cut],
        "count": len(cut),
        "bound": plan.bound if plan else 0,
        "proven": not plan or plan.bound == len(plan.sheets),
        "first_cut": ("rip" if plan.along else "crosscut") if plan else "",
        "said": _said(plan),
        "cost": None if price is None else format_price(price * len(cut)),
        "impossible": [unable(place, error) for place, error in sorted(impossible.items())],
        "working": list(_working(asked, each, sizes, len(cut))),
    }


def _size(one: dict[str, Any], gap: Length) -> tuple[Length, Length]:
    return one["widths"].smallest - gap * 2, one["heights"].smallest - gap * 2


def _name(asked: dict[str, Any], place: int) -> str:
    return asked["panels"][place].get("name") or say("nameless-panel", number=place + 1)


def _may_turn(asked: dict[str, Any], place: int) -> bool:
    return bool(asked["panels"][place].get("turnable", asked["turnable"]))


def _find_impossible(
    asked: dict[str, Any], sizes: dict[int, tuple[Length, Length]], scale: Scale
) -> Iterator[tuple[int, EngineError]]:
    room, long = scale.whole(asked["sheet"]["width"]), scale.whole(asked["sheet"]["length"])
    for place, (width, height) in sizes.items():
        name = _name(asked, place).capitalize()
        if min(width, height).inches <= 0:
            read = asked["panels"][place]
            size = format_length(min(read["widths"].smallest, read["heights"].smallest))
            yield place, PaneError("all-gap", name=name, size=size, gap=format_length(asked["gap"]))
            continue
        (kind,), _ = gather_kinds([(width, height)], scale, [_may_turn(asked, place)])
        if not fits_on_sheet(kind, room, long):
            wide, high = format_length(width), format_length(height)
            yield place, PaneError("off-the-sheet", name=name, width=wide, height=high)


def _plan(
    asked: dict[str, Any], each: Sequence[int], sizes: dict[int, tuple[Length, Length]], scale: Scale
) -> tuple[SheetPlan | None, list[list[PlacedBlank]]]:
    """The plan, and each sheet's panels at their places, seen with the sheet's width across."""
    if not each:
        return None, []
    kinds, members = gather_kinds([sizes[one] for one in each], scale, [_may_turn(asked, one) for one in each])
    kerf = scale.whole(asked["kerf"])
    plan = plan_sheets(kinds, scale.whole(asked["sheet"]["width"]), scale.whole(asked["sheet"]["length"]), kerf)
    waiting = [list(items) for items in members]
    cut = []
    for bands in plan.sheets:
        placed = place_bands(bands, waiting, plan.kinds, scale, kerf)
        taken = {place.item for place in placed}
        waiting = [[item for item in items if item not in taken] for items in waiting]
        cut.append([_across(place) for place in placed] if plan.along else placed)
    return plan, cut


def _across(place: PlacedBlank) -> PlacedBlank:
    """A panel of a sheet ripped first, seen as the others are: what lay across lies along."""
    return PlacedBlank(place.item, place.turned, place.band, place.y, place.x, place.along, place.across)


def _panel(place: int, one: dict[str, Any], size: tuple[Length, Length], asked: dict[str, Any]) -> Answer:
    working = [
        say(f"panel-{way}", smallest=format_working(one[way].smallest.inches),
            gap=format_working(asked["gap"].inches), length=format_working(length.inches))
        for way, length in zip(("widths", "heights"), size, strict=True)
    ]
    return {
        "panel": place,
        "count": one["count"],
        "name": _name(asked, place),
        "width": show(size[0], asked["nearest"]),
        "height": show(size[1], asked["nearest"]),
        "working": working,
    }


def _sheet(places: Sequence[PlacedBlank], each: Sequence[int], asked: dict[str, Any]) -> Answer:
    names = [_name(asked, one) for one in each]
    nearest = asked["nearest"]
    cuts = [
        {"panel": each[one.item], "band": one.band, "turned": one.turned}
        | {name: show(getattr(one, name), nearest) for name in ("x", "y", "across", "along")}
        for one in places
    ]
    sheet = asked["sheet"]
    drawing = draw_layout(sheet["width"], sheet["length"], places, names, say("sheets-drawing"))
    return {"cuts": cuts, "drawing": drawing}


def _said(plan: SheetPlan | None) -> str:
    if plan is None:
        return say("sheets-none")
    first = "ripped" if plan.along else "crosscut"
    if plan.bound == len(plan.sheets):
        return say(f"sheets-proven-{first}")
    return say(f"sheets-bound-{first}", bound=plan.bound)


def _working(
    asked: dict[str, Any], each: Sequence[int], sizes: dict[int, tuple[Length, Length]], count: int
) -> Iterator[str]:
    area = sum((sizes[one][0].inches * sizes[one][1].inches for one in each), start=parse_length("0").inches)
    sheet = asked["sheet"]["width"].inches * asked["sheet"]["length"].inches
    yield say("sheets-cut", panels=format_area(area), sheet=format_area(sheet), count=count)
    if "price" in asked["sheet"]:
        price = asked["sheet"]["price"]
        yield f"{count} × ${format_price(price)} = ${format_price(price * count)}"


QUESTIONS = (
    Question("sheets", say("question-sheets"), SheetsIn, SheetsOut, answer_sheets),
)
