"""A room as a question brings it: in full, reading by reading as written, or as the id of one in the notebook."""

from collections.abc import Callable, Mapping
from typing import Any

from marshmallow import INCLUDE, Schema, ValidationError, fields, validate, validates_schema

from scantling.engine import forms
from scantling.engine.errors import quote
from scantling.engine.notebook import Notebook
from scantling.engine.questions.question import Context
from scantling.engine.rack.joins import join_boards, known_lengths
from scantling.engine.settings import OF_OPENING, OF_SUPPLIES, OF_THING, SETTINGS, dotted
from scantling.engine.shapes import AskedIn, one_of
from scantling.engine.survey.facts import collect_room
from scantling.engine.survey.read import read_room
from scantling.engine.survey.room import BASE_AT, OPENINGS, TURNS, WALLS_AT_MOST, Problem, Room
from scantling.engine.tape.lengths import Length
from scantling.engine.trim.moldings.stick import SETTINGS as STICK_SETTINGS
from scantling.engine.trim.openings.reach import settle_bands
from scantling.engine.trim.own.battens import SETTINGS as BATTEN_SETTINGS
from scantling.engine.trim.piece import Piece
from scantling.engine.trim.pieces import derive_pieces
from scantling.engine.trim.runs.chains import THROUGH
from scantling.engine.words import say

UNUSED_AT_MOST = 20
OF_WALL = (*(f"battens.{name}" for name in BATTEN_SETTINGS), THROUGH, *STICK_SETTINGS)


class Lenient(forms.Schema):
    """Part of a room: what nothing here reads is let through, and named among the answer's warnings."""

    class Meta:
        unknown = INCLUDE


class TypedReading(fields.Field[Any]):
    """One reading as text, or a list of them; read later, wall by wall, so that one bad one does not stop the rest."""

    wants = say("wants-readings")

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Any:
        many = value if isinstance(value, list) else [value]
        if not all(isinstance(one, str | int | float) and not isinstance(one, bool) for one in many) or len(many) > 100:
            raise ValidationError(say("write-readings"))
        return value


class Points(TypedReading):
    """Depths at a row of points."""

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Any:
        rows = value if isinstance(value, list) and value and isinstance(value[0], list) else [value]
        for row in rows:
            super()._deserialize(row, attr, data, **kwargs)
        return value


class CornerFacts(Lenient):
    turn = fields.String(load_default="inside", validate=one_of(*TURNS))
    corner = TypedReading()
    sides = TypedReading()
    meets = TypedReading()


class DepthsFacts(Lenient):
    """From the jamb's edge to the plane of the wall, a text for each point: sides from the top down, head and sill from
    the left; or one text, "1/2, 5/8, 3/4", or several lists of points where they were read more than once."""

    left, right, head, sill = Points(), Points(), Points(), Points()


class OpeningFacts(Lenient):
    id = fields.String(required=True)
    kind = fields.String(required=True, validate=one_of(*OPENINGS))
    at = TypedReading()
    width = TypedReading()
    left = TypedReading()
    right = TypedReading()
    head_corners = fields.List(
        TypedReading(allow_none=True),
        validate=validate.Length(equal=2, error=say("two-head-corners")),
    )
    sill = TypedReading(metadata={"description": say("ask-opening-sill")})
    depth = TypedReading(metadata={"description": say("ask-opening-depth")})
    sash = TypedReading(metadata={"description": say("ask-opening-sash")})
    depths = fields.Nested(DepthsFacts)
    settings = fields.Dict(keys=fields.String(), metadata={"description": say("ask-opening-settings")})


class ObstacleFacts(Lenient):
    id = fields.String(required=True)
    kind = fields.String(required=True)
    at = TypedReading()
    width = TypedReading()
    height = TypedReading(metadata={"description": say("ask-obstacle-height")})
    depth = TypedReading(metadata={"description": say("ask-obstacle-depth")})
    sill = TypedReading(metadata={"description": say("ask-obstacle-sill")})
    base = fields.String(validate=one_of(*BASE_AT), metadata={"description": say("ask-obstacle-base")})
    settings = fields.Dict(keys=fields.String(), metadata={"description": say("ask-obstacle-settings")})


class FreeFacts(Lenient):
    id, name = fields.String(required=True), fields.String(required=True)
    profile, text = fields.String(required=True), fields.String(required=True)
    count = fields.String(load_default="1", validate=validate.Regexp(r"[1-9][0-9]{0,2}\Z", error=say("not-a-count")))


class WallFacts(Lenient):
    id = fields.String(required=True)
    length = TypedReading()
    ceiling = TypedReading(metadata={"description": say("ask-wall-ceiling")})
    ceiling_corner = TypedReading(metadata={"description": say("ask-wall-ceiling-corner")})
    height = TypedReading(metadata={"description": say("ask-wall-height")})
    corner = fields.Nested(CornerFacts, metadata={"description": say("ask-wall-corner")})
    settings = fields.Dict(keys=fields.String(), metadata={"description": say("ask-wall-settings")})
    studs = TypedReading(metadata={"description": say("ask-wall-studs")})
    plumb = TypedReading(metadata={"description": say("ask-wall-plumb")})
    bow = TypedReading(metadata={"description": say("ask-wall-bow")})
    chair_rail = TypedReading(metadata={"description": say("ask-wall-chair-rail")})
    picture_rail = TypedReading(metadata={"description": say("ask-wall-picture-rail")})
    fall = TypedReading(metadata={"description": say("ask-wall-fall")})
    openings = fields.List(fields.Nested(OpeningFacts))
    obstacles = fields.List(fields.Nested(ObstacleFacts))


class RoomFacts(Lenient):
    name = fields.String(load_default="")
    closed = fields.Boolean(load_default=True)
    standard = fields.Dict(keys=fields.String(), metadata={"description": say("ask-room-standard")})
    free = fields.List(fields.Nested(FreeFacts), validate=validate.Length(max=WALLS_AT_MOST))
    walls = fields.List(fields.Nested(WallFacts), required=True, validate=validate.Length(max=WALLS_AT_MOST))

    @validates_schema
    def check_ids(self, data: dict[str, Any], **_: object) -> None:
        ids = [wall["id"] for wall in data["walls"]]
        twice = next((wall for wall in ids if ids.count(wall) > 1), None)
        if twice is not None:
            raise ValidationError(say("wall-id-twice", wall=quote(twice)), "walls")


class RoomField(fields.Nested):
    """A room in full, or the id of a room in the notebook as text."""

    wants = say("wants-room")

    def _deserialize(self, value: Any, *args: Any, **kwargs: Any) -> Any:
        return value if isinstance(value, str) else super()._deserialize(value, *args, **kwargs)


class RoomIn(AskedIn):
    room = RoomField(RoomFacts, required=True)


def find(asked: dict[str, Any], context: Context) -> tuple[Room, list[str]]:
    """The room asked about, and what of the question nothing here reads."""
    facts = asked["room"]
    if isinstance(facts, str):
        return room_of(context.notebook, facts), []
    return settle_bands(read_room(facts)), [say("not-used", name=name) for name in _unused(facts)]


def room_of(notebook: Notebook, room: str) -> Room:
    """A room of the notebook, read; read again only after something was said of it. Raises `EngineError`."""
    return notebook.derived("room", room, lambda: settle_bands(collect_room(notebook, room)))


def find_pieces(asked: dict[str, Any], room: Room, context: Context) -> tuple[list[Piece], list[Problem]]:
    """The pieces of the room asked about, lettered as if no list had been issued, and what cannot be made."""
    facts = asked["room"]
    return pieces_of(context.notebook, facts) if isinstance(facts, str) else _pieces_joined(room)


def pieces_of(notebook: Notebook, room: str) -> tuple[list[Piece], list[Problem]]:
    """The pieces of a room of the notebook, derived once for all who ask."""

    def derive() -> tuple[list[Piece], list[Problem]]:
        return _pieces_joined(room_of(notebook, room), lambda: known_lengths(notebook, room))

    return notebook.derived("pieces", room, derive)


def _pieces_joined(room: Room, known: Callable[[], Mapping[str, Length]] = dict) -> tuple[list[Piece], list[Problem]]:
    """The pieces, those of several boards joined where all the boards of the room come out best."""
    return derive_pieces(join_boards(room, known))


def _unused(facts: Mapping[str, Any]) -> list[str]:
    """The fields that nothing reads, at any depth, and settings that are none or that the thing may not have."""
    names = [f"standard.{name}" for name in dotted(facts.get("standard") or {})
             if name not in SETTINGS and not name.startswith(OF_SUPPLIES)]  # fmt: skip
    waiting: list[tuple[str, type[Schema], Mapping[str, Any]]] = [("", RoomFacts, facts)]
    while waiting:
        path, schema, found = waiting.pop()
        known = schema._declared_fields
        names += [f"{path}{name}" for name in found if name not in known]
        if schema in MAY_DIFFER:
            settings = dotted(found.get("settings") or {})
            names += [f"{path}settings.{name}" for name in settings if not MAY_DIFFER[schema](name)]
        for name, field in known.items():
            held = found.get(name)
            if isinstance(field, fields.Nested) and held:
                waiting.append((f"{path}{name}.", field.schema.__class__, held))
            elif isinstance(field, fields.List) and isinstance(field.inner, fields.Nested):
                below = field.inner.schema.__class__
                waiting += [(f"{path}{name}.{place}.", below, one) for place, one in enumerate(held or ())]
    return sorted(names)[:UNUSED_AT_MOST]


# What a thing may be told that differs from its room, by name.
MAY_DIFFER: Mapping[type[Schema], Callable[[str], bool]] = {
    OpeningFacts: lambda name: name in SETTINGS and name.startswith(OF_OPENING),
    ObstacleFacts: lambda name: name in SETTINGS and name.startswith(OF_THING),
    WallFacts: lambda name: name in OF_WALL,
}
