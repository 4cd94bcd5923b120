"""The shapes of `spent` and `next_rooms`: plans and receipts, rooms by their rough size."""

from typing import Any

from marshmallow import ValidationError, fields, validate, validates_schema

from scantling.engine.bodies import AS_A_DATE
from scantling.engine.forms import Schema
from scantling.engine.questions.amounts import Price
from scantling.engine.questions.readings import Positive
from scantling.engine.shapes import AskedIn, out, text_out, texts_out
from scantling.engine.words import say

MANY = validate.Length(max=500)
DATE = validate.Regexp(r"\d{4}-\d{2}-\d{2}\Z", error=AS_A_DATE)


class PlannedIn(Schema):
    """`seen`: the day on which its price was seen."""

    name = fields.String(required=True, validate=validate.Length(min=1, max=80))
    price = fields.Raw(load_default="", allow_none=True)
    seen = fields.String(validate=DATE)


class ReceiptIn(Schema):
    name = fields.String(required=True, validate=validate.Length(min=1, max=80))
    price = fields.Raw(load_default="", allow_none=True)
    date = fields.String(load_default="", validate=validate.Regexp(r"(\d{4}-\d{2}-\d{2})?\Z", error=AS_A_DATE))


class SpentIn(AskedIn):
    """What is given; and with a room, or a house, what its plans come to and what was bought for it."""

    room = fields.String(metadata={"description": say("ask-room")})
    house = fields.String(metadata={"description": say("ask-spent-house")})
    planned = fields.List(fields.Nested(PlannedIn), load_default=[], validate=MANY)
    receipts = fields.List(fields.Nested(ReceiptIn), load_default=[], validate=MANY)


class CostLineOut(Schema):
    """`over` has a minus where less was spent than planned; null while nothing was bought. `name_shown`: its name in
    what lengths are shown in."""

    name, name_shown, planned, spent = text_out(), text_out(), text_out(), text_out()
    over = text_out(none=True)
    seen = text_out()


class CostProblemOut(Schema):
    name, key, message = text_out(), text_out(), text_out()


class RoomSpentOut(Schema):
    id, name, planned, spent, expected = (text_out() for _ in range(5))


class LotOut(Schema):
    """`name`: what it is of, `name_shown` the same in what lengths are shown in; `called`: what it was written down as,
    of paint the size of the can."""

    id, of, where, name, name_shown, called, date, note, wrong = (text_out() for _ in range(9))
    article, price = text_out(none=True), text_out(none=True)
    count = fields.Integer(required=True)


class SpentOut(Schema):
    """`unpriced`: what is planned and has no price, so that no figure holds it; `rooms`, of a house, room by room."""

    lines = out(CostLineOut, many=True)
    planned, spent, expected = text_out(), text_out(), text_out()
    rooms, lots = out(RoomSpentOut, many=True), out(LotOut, many=True)
    working, unpriced = texts_out(), texts_out()
    problems = out(CostProblemOut, many=True)


class RoughIn(Schema):
    name = fields.String(required=True, validate=validate.Length(min=1, max=80))
    perimeter = Positive(required=True)
    openings = fields.Integer(strict=True, load_default=0, validate=validate.Range(min=0, max=100))
    height = Positive()


class MeasuredIn(RoughIn):
    cost = fields.Raw(load_default="")
    covering = Price(metadata={"description": say("ask-measured-covering")})


class NextRoomsIn(AskedIn):
    """What is given; and with a house its rooms that are measured and planned, and those that it says are to come."""

    house = fields.String(metadata={"description": say("ask-house")})
    measured = fields.List(fields.Nested(MeasuredIn), load_default=[], validate=MANY)
    coming = fields.List(fields.Nested(RoughIn), load_default=[], validate=validate.Length(max=100))

    @validates_schema
    def check_any(self, data: dict[str, Any], **_: object) -> None:
        if "house" not in data and not (data["measured"] and data["coming"]):
            raise ValidationError(say("costs-of-what"), "coming")


class RangeOut(Schema):
    name, low, high = text_out(), text_out(), text_out()
    working = text_out()


class NextRoomsOut(Schema):
    rooms = out(RangeOut, many=True)
    low, high, said = text_out(), text_out(), text_out()
    problems = out(CostProblemOut, many=True)
