"""The shapes of `supplies`: joints and beads, fasteners, sundries; or the room that uses them up."""

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from marshmallow import ValidationError, fields, validate, validates_schema

from scantling.engine.errors import quote
from scantling.engine.forms import Schema
from scantling.engine.questions.amounts import Amount, Area, Price, Volume, split_unit
from scantling.engine.questions.facts import RoomFacts, RoomField
from scantling.engine.questions.readings import Positive
from scantling.engine.shapes import AskedIn, LengthOut, LengthText, one_of, out, text_out, texts_out
from scantling.engine.supplies.beads import SHAPES, WASTE
from scantling.engine.supplies.fasteners import APART, BASE, BITE, JAMB, MOST, ROWS, STUD
from scantling.engine.supplies.sundries import AREA, LENGTH, SUNDRIES, format_counted
from scantling.engine.tape.lengths import parse_length
from scantling.engine.tape.measures import FOOT, SQUARE_FOOT, format_number
from scantling.engine.words import say

PIECES_AT_MOST = 2000
# Tubes as they are sold: caulk of 10.1 fl oz, adhesive of 10 fl oz.
CAULK, ADHESIVE = (Fraction(text) * Fraction(231, 128) for text in ("10.1", "10"))
EIGHTH, QUARTER = parse_length("1/8"), parse_length("1/4")
AT_MOST = validate.Length(max=200)


class BeadIn(Schema):
    name = fields.String(validate=validate.Length(max=80))
    length = Positive(required=True)
    shape = fields.String(validate=one_of(*SHAPES))
    size = LengthText()
    tube = Volume(metadata={"description": say("ask-bead-tube")})
    waste = Amount("waste", most=90, load_default=WASTE, metadata={"description": say("ask-bead-waste")})
    price = Price()


class Along(Positive):
    """How much trim is nailed: one length, or the length of each piece, which begins with a nail of its own."""

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Any:
        many = value if isinstance(value, list) else [value]
        if not 1 <= len(many) <= PIECES_AT_MOST:
            raise ValidationError(say("trim-for-nails"))
        return [super(Along, self)._deserialize(one, attr, data, **kwargs) for one in many]


class BoxIn(Schema):
    length = Positive(required=True)
    count = fields.Integer(strict=True, required=True, validate=validate.Range(min=1, max=MOST))
    price = Price()


class FastenerIn(Schema):
    """`through`: the thickness of everything it goes through before the stud: trim, plaster or board."""

    name = fields.String(validate=validate.Length(max=80))
    kind = fields.String(load_default="nail", validate=validate.Length(max=80))
    through = fields.List(Positive(), required=True, validate=validate.Length(min=1, max=10))
    bite = LengthText(load_default=BITE)
    length = Positive(metadata={"description": say("ask-fastener-length")})
    lengths = fields.List(Positive(), validate=validate.Length(min=1, max=40))
    along = Along(required=True, metadata={"description": say("ask-fastener-along")})
    into = fields.String(load_default=STUD, validate=one_of(STUD, JAMB, BASE))
    apart = Positive(load_default=APART)
    rows = fields.Integer(strict=True, load_default=ROWS, validate=validate.Range(min=1, max=10))
    box = fields.Integer(strict=True, validate=validate.Range(min=1, max=MOST))
    price = Price()
    boxes = fields.List(
        fields.Nested(BoxIn), validate=validate.Length(min=1, max=40),
        metadata={"description": say("ask-fastener-boxes")},
    )  # fmt: skip


class Covers(Amount):
    """How far a package goes: a number of what its sundry is counted by, or with a unit: "10 m2", "50 m"."""

    def __init__(self, by: str = "", **kwargs: Any) -> None:
        super().__init__("number", zero=False, **kwargs)
        self.by = by

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Fraction:
        _, unit = split_unit(value)
        if not unit or unit == "%":
            return super()._deserialize(value, attr, data, **kwargs)
        named = SUNDRIES.get(str((data or {}).get("name")))
        by = self.by or (named.by if named else "")
        if by == LENGTH:
            return Fraction(Positive().deserialize(value).inches) / FOOT
        area = Area().deserialize(value) if by == AREA else None
        if not area:
            raise ValidationError(say("amount-unread", given=quote(str(value)), what=say("figure-of-number")))
        return Fraction(area) / SQUARE_FOOT

    def show(self, value: Fraction) -> str:
        """How far it goes, with its unit."""
        return format_counted(self.by, value) if self.by in (AREA, LENGTH) else format_number(value)


class SundryIn(Schema):
    """`amount`: holes, square feet or feet, by what the sundry is counted by."""

    name = fields.String(required=True, validate=one_of(*SUNDRIES))
    amount = Amount(required=True)
    covers = Covers(metadata={"description": say("ask-sundry-covers")})
    price = Price()


class SuppliesIn(AskedIn):
    """With a room, what its pieces use up, by the settings of its standard; and whatever else is given."""

    room = RoomField(RoomFacts)
    joints = fields.List(fields.Nested(BeadIn), load_default=[], validate=AT_MOST)
    beads = fields.List(fields.Nested(BeadIn), load_default=[], validate=AT_MOST)
    fasteners = fields.List(fields.Nested(FastenerIn), load_default=[], validate=AT_MOST)
    sundries = fields.List(fields.Nested(SundryIn), load_default=[], validate=AT_MOST)

    @validates_schema
    def check_any(self, data: dict[str, Any], **_: object) -> None:
        if "room" not in data and not any(data[name] for name in ("joints", "beads", "fasteners", "sundries")):
            raise ValidationError(say("supplies-of-what"), "joints")


class TubesOut(Schema):
    """All joints, or beads, that one kind of tube is for, together."""

    what, name = text_out(), text_out()
    count = fields.Integer(required=True)
    feet_a_tube = fields.Float(required=True, allow_none=True)
    cost = text_out(none=True)
    working = texts_out()


class BoxesOut(Schema):
    name, kind = text_out(), text_out()
    count = fields.Integer(required=True)
    boxes = fields.Integer(required=True, allow_none=True)
    length, bite = out(LengthOut), out(LengthOut)
    deep = fields.Boolean(required=True, metadata={"description": say("told-boxes-deep")})
    cost = text_out(none=True)
    working, warnings = texts_out(), texts_out()


class NailsOut(Schema):
    """All nails of one kind and length, whatever they hold: they come out of the same boxes."""

    kind, names = text_out(), text_out()
    length = out(LengthOut)
    count = fields.Integer(required=True)
    boxes = fields.Integer(required=True, allow_none=True)
    cost = text_out(none=True)
    working = texts_out()


class PackagesOut(Schema):
    name, package = text_out(), text_out()
    count = fields.Integer(required=True)
    cost = text_out(none=True)
    working = texts_out()


class SupplyProblemOut(Schema):
    """`what`: the list it is on, and `item` its place in that; or the setting that cannot be read."""

    what = text_out()
    item = fields.Integer(required=True)
    key, message = text_out(), text_out()


class SuppliesOut(Schema):
    tubes = out(TubesOut, many=True)
    boxes = out(BoxesOut, many=True)
    nails = out(NailsOut, many=True)
    lengths = out(LengthOut, many=True)
    packages = out(PackagesOut, many=True)
    problems = out(SupplyProblemOut, many=True)
    warnings, cautions = texts_out(), texts_out()
