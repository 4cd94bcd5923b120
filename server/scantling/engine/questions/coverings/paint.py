"""`paint`: cans for each product, chosen by price. `paint_areas`: what there is to paint in a surveyed room."""

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Any

from marshmallow import ValidationError, fields, validate

from scantling.engine.cautions import cautions_for_paint
from scantling.engine.coverings.paint.cans import CANS_AT_MOST, Can, Choice, PaintError, choose_cans, derive_paint
from scantling.engine.coverings.paint.surfaces import GROWTH, Surface, derive_ceiling, derive_trim, derive_walls
from scantling.engine.errors import EngineError, quote
from scantling.engine.forms import Schema
from scantling.engine.questions.amounts import Amount, Area, Volume, parse_amount, parse_unit, split_unit
from scantling.engine.questions.facts import RoomIn, find, find_pieces
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.readings import Positive, ProblemOut, problems_out
from scantling.engine.shapes import AskedIn, LengthText, out, text_out, texts_out
from scantling.engine.shown.shown_in import is_metric
from scantling.engine.standard import format_price, parse_price
from scantling.engine.tape.lengths import ZERO
from scantling.engine.tape.measures import (
    GALLON,
    format_number,
    format_rough_surface,
    format_spread,
    format_surface,
    format_volume,
)
from scantling.engine.tape.units import convert
from scantling.engine.words import say

QUART = GALLON / 4
SQUARE_FEET = "sq ft"
# Whether an area is in square meters.
AREAS = dict.fromkeys(("m2", "m²", "sq m"), True) | dict.fromkeys(("", "sq ft", "ft2", "ft²"), False)


class Spread(fields.Field[Fraction]):
    """Square feet a gallon, "350", or "10 m2/l"; to square inches that a cubic inch covers, once."""

    wants = say("wants-spread")

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Fraction:
        figure, unit = split_unit(value)
        area, _, volume = unit.partition("/")
        amount = parse_amount(figure)
        square = AREAS.get(area.strip())
        each = parse_unit(volume.strip() or "gal")
        if not amount or square is None or each is None:
            raise ValidationError(say("no-spread-metric" if is_metric() else "no-spread", given=quote(str(value))))
        return amount * (convert(Fraction(1), "meter ** 2", "inch ** 2") if square else Fraction(144)) / each


class CanIn(Schema):
    size = Volume(required=True, metadata={"description": say("ask-can-size")})
    price = fields.Raw(load_default="")


class SurfaceIn(Schema):
    name = fields.String(validate=validate.Length(max=80))
    area = Area(required=True, metadata={"description": say("ask-surface-area")})


class ProductIn(Schema):
    name = fields.String(validate=validate.Length(max=80))
    on = fields.List(fields.String(), metadata={"description": say("ask-product-on")})
    coats = fields.Integer(strict=True, load_default=2, validate=validate.Range(min=1, max=10))
    spread = Spread(required=True)
    loss = Amount("loss", most=80, load_default=Fraction(0), metadata={"description": say("ask-product-loss")})
    keep = Volume(metadata={"description": say("ask-product-keep")})
    on_hand = Volume(metadata={"description": say("ask-product-on-hand")})
    cans = fields.List(fields.Nested(CanIn), required=True, validate=validate.Length(max=20))


class PaintIn(AskedIn):
    surfaces = fields.List(fields.Nested(SurfaceIn), required=True, validate=validate.Length(min=1, max=200))
    products = fields.List(fields.Nested(ProductIn), required=True, validate=validate.Length(min=1, max=40))


class CansOut(Schema):
    can = fields.Integer(required=True, metadata={"description": say("told-place")})
    count = fields.Integer(required=True)
    size, price = text_out(), text_out()


class VolumeOut(Schema):
    gallons = fields.Float(required=True)
    shown = text_out()


class ProductOut(Schema):
    """`left` counts what is kept for touching up."""

    name = text_out()
    cans = out(CansOut, many=True)
    cost = text_out(none=True)
    need, left = out(VolumeOut), out(VolumeOut, none=True)
    working, advice = texts_out(), texts_out()


class PaintProblemOut(Schema):
    product = fields.Integer(required=True)
    key, message = text_out(), text_out()


class PaintOut(Schema):
    products = out(ProductOut, many=True)
    cost = text_out()
    problems = out(PaintProblemOut, many=True)
    cautions = texts_out()


def answer_paint(asked: dict[str, Any], context: Context) -> Answer:
    found, problems, total = [], [], 0
    for place, product in enumerate(asked["products"]):
        name = product.get("name") or say("nameless-product", number=place + 1)
        answer, wrong, cents = _answer_product(name, product, asked["surfaces"])
        found.append(answer)
        total += cents
        problems += [{"product": place, "key": error.key, "message": error.message} for error in wrong]
    return {"products": found, "cost": format_price(total), "problems": problems, "cautions": cautions_for_paint()}


def _answer_product(
    name: str, product: dict[str, Any], surfaces: list[dict[str, Any]]
) -> tuple[Answer, list[EngineError], int]:
    wrong: list[EngineError] = []
    area = _area(name, product, surfaces, wrong)
    cans = _cans(name, product, wrong)
    paint = derive_paint(area, product["coats"], product["spread"], product["loss"])
    here = product.get("on_hand", Fraction(0))
    need = max(Fraction(0), paint + product.get("keep", Fraction(0)) - here)
    large = [can for can in cans if need <= CANS_AT_MOST * can.size]
    if large:
        small = [can for can in cans if can not in large]
        wrong += (PaintError("too-small", can=can.item + 1, product=name, most=CANS_AT_MOST) for can in small)
        cans = large
    choice = None
    if not area:
        wrong.append(PaintError("no-area", product=name.capitalize()))
    elif not need:
        choice = Choice((0,) * len(cans), 0, Fraction(0))
    elif not cans:
        wrong.append(PaintError("no-cans", product=name.capitalize()))
    elif not large:
        wrong.append(PaintError("too-much", product=name.capitalize(), most=CANS_AT_MOST))
    else:
        choice = choose_cans(cans, need)
    answer = {
        "name": name,
        "cans": _chosen(cans, choice) if choice else [],
        "cost": format_price(choice.cents) if choice else None,
        "need": _volume(need),
        "left": _volume(choice.holds + here - paint) if choice else None,
        "working": list(_working(product, area, paint, choice)),
        "advice": list(_advice(product, paint, choice)),
    }
    return answer, wrong, choice.cents if choice else 0


def _area(name: str, product: dict[str, Any], surfaces: list[dict[str, Any]], wrong: list[EngineError]) -> Fraction:
    known = {one.get("name") or say("nameless-surface", number=place): one["area"]
             for place, one in enumerate(surfaces, start=1)}  # fmt: skip
    if "on" not in product:
        return sum((one["area"] for one in surfaces), start=Fraction(0))
    for on in product["on"]:
        if on not in known:
            wrong.append(PaintError("no-surface", product=name.capitalize(), name=quote(on)))
    return sum((area for on, area in known.items() if on in product["on"]), start=Fraction(0))


def _cans(name: str, product: dict[str, Any], wrong: list[EngineError]) -> list[Can]:
    """The cans with a price; of the others, each is told."""
    cans = []
    for place, can in enumerate(product["cans"]):
        try:
            cents = parse_price(str(can["price"]))
        except EngineError:
            cents = 0
        if cents:
            cans.append(Can(place, can["size"], cents))
        else:
            wrong.append(PaintError("no-price", can=place + 1, product=name))
    return cans


def _chosen(cans: list[Can], choice: Choice) -> list[Answer]:
    return [
        {"can": can.item, "count": count, "size": format_volume(can.size), "price": format_price(can.cents)}
        for can, count in zip(cans, choice.counts, strict=True)
        if count
    ]


def _volume(amount: Fraction) -> Answer:
    return {"gallons": float(f"{float(amount / GALLON):.6f}"), "shown": format_volume(amount)}


def _working(product: dict[str, Any], area: Fraction, paint: Fraction, choice: Choice | None) -> Iterator[str]:
    figures = {"area": format_surface(area), "coats": product["coats"], "spread": format_spread(product["spread"]),
               "paint": format_volume(paint)}  # fmt: skip
    loss = format_number(product["loss"]) if product["loss"] else ""
    yield say("paint-need-loss", loss=loss, **figures) if loss else say("paint-need", **figures)
    if product.get("keep"):
        yield say("paint-kept", volume=format_volume(product["keep"]))
    if product.get("on_hand"):
        yield say("paint-on-hand", volume=format_volume(product["on_hand"]))
    if choice and choice.cents:
        yield say("paint-cheapest", volume=format_volume(choice.holds), price=format_price(choice.cents))


def _advice(product: dict[str, Any], paint: Fraction, choice: Choice | None) -> Iterator[str]:
    # A quart to touch up with: common practice, no source.
    left = choice.holds + product.get("on_hand", Fraction(0)) - paint if choice else QUART
    if "keep" not in product and left < QUART:
        little = format_volume(QUART) if is_metric() else say("paint-a-quart")
        yield say("paint-too-little", little=little)


class AreasIn(RoomIn):
    height = Positive(metadata={"description": say("ask-areas-height")})
    from_floor = LengthText(load_default=ZERO, metadata={"description": say("ask-areas-from-floor")})
    from_ceiling = LengthText(load_default=ZERO, metadata={"description": say("ask-areas-from-ceiling")})
    growth = Amount("growth", most=100, metadata={"description": say("ask-areas-growth")})


class SurfaceOut(Schema):
    name = text_out()
    square_feet = fields.Float(required=True)
    area, shown = text_out(), text_out()
    working, missing = texts_out(), texts_out()


class AreasOut(Schema):
    """`area` is written as `paint` takes it."""

    surfaces = out(SurfaceOut, many=True)
    problems = out(ProblemOut, many=True)
    warnings = texts_out()


def answer_areas(asked: dict[str, Any], context: Context) -> Answer:
    room, unused = find(asked, context)
    pieces, problems = find_pieces(asked, room, context)
    growth = asked["growth"] / 100 if "growth" in asked else GROWTH
    walls = derive_walls(room, (), asked.get("height"), asked["from_floor"], asked["from_ceiling"])
    surfaces = (walls, derive_ceiling(room), derive_trim(room, pieces, growth))
    return {
        "surfaces": [show_surface(surface) for surface in surfaces],
        "problems": problems_out((*room.problems, *problems)),
        "warnings": unused,
    }


def show_surface(surface: Surface) -> Answer:
    """An area with its working."""
    feet = surface.area / 144
    return {
        "name": surface.name,
        "square_feet": float(f"{float(feet):.6f}"),
        "area": f"{float(feet):.2f} {SQUARE_FEET}",
        "shown": format_rough_surface(surface.area),
        "working": list(surface.working),
        "missing": list(surface.missing),
    }


QUESTIONS = (
    Question("paint", say("question-paint"), PaintIn, PaintOut, answer_paint),
    Question("paint_areas", say("question-paint_areas"), AreasIn, AreasOut, answer_areas),
)
