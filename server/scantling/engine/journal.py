"""Entries: the only stored truth. Immutable, made on a device, exchanged whole.

A kind's body is checked by its schema here, on the phone and on the laptop alike. A kind or a version that this engine
does not know is not refused: it is kept and passed on, for a newer engine to read.
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from marshmallow import RAISE, Schema, ValidationError, fields, validate

from scantling.engine.cutlist.figures import is_figure
from scantling.engine.errors import EngineError
from scantling.engine.shapes import first_refusal

VERSION = 1
TEXT_AT_MOST = 2000
LIST_AT_MOST = 200
FIGURE_AT_MOST = 60


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of the journal. `order` puts entries in a row that every device agrees on."""

    id: str
    device: str
    seq: int
    stamp: str
    version: int
    kind: str
    body: Mapping[str, Any]
    supersedes: tuple[str, ...] = ()

    @property
    def order(self) -> tuple[str, str]:
        return (self.stamp, self.id)

    @property
    def known(self) -> bool:
        """Whether this engine can read the body; if not, the entry is only kept."""
        return self.version == VERSION and self.kind in BODIES


class EntryError(EngineError):
    sentences = {
        "not-an-entry": "A journal entry is an object with an id, a device and a body; this is {what}.",
        "not-text": "{where} holds half a character (a lone surrogate), which cannot be stored; type it again.",
    }


_ID = re.compile(r"[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}\Z")


def _id(**options: Any) -> fields.String:
    return fields.String(required=True, validate=validate.Regexp(_ID, error="Not a UUID."), **options)


def _words(**options: Any) -> fields.String:
    return fields.String(required=True, validate=validate.Length(max=TEXT_AT_MOST), **options)


def _figure() -> fields.String:
    return fields.String(required=True, allow_none=True, validate=validate.Length(max=FIGURE_AT_MOST))


def _choice(*choices: str) -> fields.String:
    return fields.String(required=True, validate=validate.OneOf(choices))


class _TrueOrFalse(fields.Boolean):
    """Nothing else: to Python 1 is True, and a set of truths that holds True holds 1."""

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> bool:
        if not isinstance(value, bool):
            raise self.make_error("invalid", input=value)
        return value


class Body(Schema):
    class Meta:
        unknown = RAISE


class HouseBody(Body):
    house, name = _id(), _words()
    built = fields.Integer(required=True, allow_none=True, strict=True, validate=validate.Range(1, 9999))


class RoomBody(Body):
    room, house, name = _id(), _id(), _words()
    closed = _TrueOrFalse(required=True)


class WallBody(Body):
    room, wall = _id(), _id()
    after = _id(allow_none=True)
    turn = _choice("inside", "outside")


class OpeningBody(Body):
    opening, wall = _id(), _id()
    kind = _choice("door", "window", "cased")


class ObstacleBody(Body):
    obstacle, wall, kind = _id(), _id(), _words()
    base = _choice("stops", "notch", "over")


class ReadingBody(Body):
    of = _id()
    what = _choice(
        "length", "corner", "sides", "at", "width", "height", "left", "right", "left_corner", "right_corner", "studs",
        "ceiling", "plumb", "in_place", "sash", "depth_left", "depth_right", "depth_head", "depth_sill",
    )  # fmt: skip
    text = _words()


def _check_setting(value: object) -> None:
    if isinstance(value, str) and len(value) <= TEXT_AT_MOST:
        return
    if isinstance(value, list) and len(value) <= LIST_AT_MOST and all(_is_row(row) for row in value):
        return
    raise ValidationError("A setting is a text, or a list of rows of texts.")


def _is_row(row: object) -> bool:
    return isinstance(row, dict) and all(
        (isinstance(cell, str) and len(cell) <= TEXT_AT_MOST) or cell is None for cell in row.values()
    )


class SettingBody(Body):
    of = _id()
    name = fields.String(required=True, validate=validate.Regexp(r"[a-z_]+(\.[a-z_]+){0,3}\Z"))
    value = fields.Raw(required=True, validate=_check_setting)


def _check_issued(value: object) -> None:
    if isinstance(value, list) and len(value) <= LIST_AT_MOST and all(_is_issued(row) for row in value):
        return
    raise ValidationError("A list is of pieces, each with its id, key, letter, name, profile and figure.")


def _is_issued(row: object) -> bool:
    return isinstance(row, dict) and row.keys() == _ISSUED.keys() and all(
        isinstance(cell, str) and _ISSUED[name].match(cell) for name, cell in row.items()
    )  # fmt: skip


_ISSUED = {
    "piece": _ID,
    "key": re.compile(r"(?s).{1,500}\Z"),
    "letter": re.compile(r"[A-Z]{1,4}\Z"),
    "name": re.compile(r"(?s).{0,500}\Z"),
    "profile": re.compile(r"(?s).{0,200}\Z"),
    "cut": re.compile(rf"(?s).{{0,{FIGURE_AT_MOST}}}\Z"),
    "shown": re.compile(rf"(?s).{{0,{FIGURE_AT_MOST}}}\Z"),
}


class IssueBody(Body):
    """A list of pieces handed out: from then on each has its letter for ever. A long list is several entries."""

    list, room = _id(), _id()
    pieces = fields.Raw(required=True, validate=_check_issued)


class StateBody(Body):
    """What a person says of a piece. A cut remembers what it was cut to: the figure, and how its ends were to be."""

    piece = _id()
    state = _choice("to cut", "cut", "fitted", "recut")
    cut_to, left, right = _figure(), _figure(), _figure()
    as_cut = _words(allow_none=True)


class FreeBody(Body):
    """A piece of a room that no rule of the trade gives: its length is a sum, `text`, and so many are `count`."""

    free, room = _id(), _id()
    name = fields.String(required=True, validate=validate.Regexp(r"(?=.*\S).{1,80}\Z", error="Give it a name."))
    profile = fields.String(required=True, validate=validate.Regexp(r"(?=.*\S).{1,80}\Z", error="Name its stock."))
    text = _words()
    count = fields.String(required=True, validate=validate.Regexp(r"[1-9][0-9]{0,2}\Z", error="Not a count."))


_LINES: dict[str, Callable[[Any], bool]] = {
    "key": lambda value: isinstance(value, str) and 0 < len(value) <= 500,
    "letter": lambda value: isinstance(value, str) and re.match(r"[A-Z]{1,4}\Z", value) is not None,
    "takes": lambda value: _is_length(value),
    "spoilt": lambda value: isinstance(value, bool),
}
_ROWS: dict[str, Callable[[Any], bool]] = {
    "board": lambda value: isinstance(value, str) and _ID.match(value) is not None,
    "source": lambda value: value is None or _is_short(value),
    "length": lambda value: _is_length(value),
    "cents": lambda value: isinstance(value, str) and re.match(r"\d{1,9}\Z", value, re.ASCII) is not None,
    "bought": lambda value: isinstance(value, bool),
    "pieces": lambda value: isinstance(value, list) and len(value) <= LIST_AT_MOST
    and all(_fits_rows(one, _LINES) for one in value),
}  # fmt: skip


def _is_short(value: object) -> bool:
    return isinstance(value, str) and len(value) <= FIGURE_AT_MOST


def _is_length(value: object) -> bool:
    """A figure as `format_figure` writes it, more than nothing: a wrong one must not be taken for no length."""
    return isinstance(value, str) and is_figure(value) and bool(value.partition("/")[0].strip("0."))


def _fits_rows(value: object, rows: Mapping[str, Callable[[Any], bool]]) -> bool:
    return isinstance(value, dict) and value.keys() == rows.keys() and all(rows[name](value[name]) for name in rows)


def _check_boards(value: object) -> None:
    if isinstance(value, list) and len(value) <= LIST_AT_MOST and all(_fits_rows(row, _ROWS) for row in value):
        return
    raise ValidationError("A plan is of boards, each with its name, length, price and pieces.")


class PlanBody(Body):
    """The boards that a person settled on for a room's profile: it is shown from then on, on every device."""

    of = _id()
    profile = _words()
    boards = fields.Raw(required=True, validate=_check_boards)


class StrikeBody(Body):
    entry, why = _id(), _words()


class DeviceBody(Body):
    name = _words()


BODIES: dict[str, type[Body]] = {
    "house": HouseBody,
    "room": RoomBody,
    "wall": WallBody,
    "opening": OpeningBody,
    "obstacle": ObstacleBody,
    "reading": ReadingBody,
    "setting": SettingBody,
    "issue": IssueBody,
    "state": StateBody,
    "free": FreeBody,
    "plan": PlanBody,
    "strike": StrikeBody,
    "device": DeviceBody,
}


class EntrySchema(Schema):
    """The envelope of every entry, of known kinds and others."""

    class Meta:
        unknown = RAISE

    id = _id()
    device = fields.String(required=True, validate=validate.Regexp(r"[0-9a-f]{16}\Z"))
    seq = fields.Integer(required=True, strict=True, validate=validate.Range(1, 2**53))
    stamp = fields.String(required=True, validate=validate.Regexp(r"[0-9a-f]{12}-[0-9a-f]{4}-[0-9a-f]{16}\Z"))
    version = fields.Integer(required=True, strict=True, validate=validate.Range(1, 10**6))
    kind = fields.String(required=True, validate=validate.Regexp(r"[a-z][a-z_]{0,39}\Z"))
    body = fields.Dict(required=True, keys=fields.String())
    supersedes = fields.List(_id(), required=True, validate=validate.Length(max=LIST_AT_MOST))


_ENVELOPE = EntrySchema()
_NAMES = _ENVELOPE.fields.keys()
_BODIES = {kind: schema() for kind, schema in BODIES.items()}


def parse_entry(data: object) -> Entry:
    """A dict to an entry, or `EngineError` naming the first thing that is wrong with it."""
    if not isinstance(data, Mapping):
        raise EntryError("not-an-entry", what=type(data).__name__)
    try:
        loaded = _ENVELOPE.load(data)
        if loaded["version"] == VERSION and loaded["kind"] in _BODIES:
            try:
                _BODIES[loaded["kind"]].load(loaded["body"])
            except ValidationError as error:
                raise ValidationError({"body": error.messages}) from error
    except ValidationError as error:
        raise first_refusal(error.messages) from error
    _check_text(data)
    return Entry(**{**loaded, "supersedes": tuple(loaded["supersedes"])})


def admit_entry(data: object) -> Entry:
    """The quick look that an entry gets on its way into a notebook: its envelope holds what the fold leans on.

    Ten thousand entries are folded each time a phone starts; the body's schema is read when the entry is first used.
    """
    if isinstance(data, Mapping) and data.keys() == _NAMES and isinstance(data["body"], Mapping):
        older = data["supersedes"]
        found = [data[name] for name in ("id", "device", "stamp", "kind")]
        if isinstance(older, list | tuple) and all(isinstance(value, str) for value in (*found, *older)):
            return Entry(**data)
    raise EntryError("not-an-entry", what=type(data).__name__)


_TYPES = {fields.String: str, fields.Integer: int, _TrueOrFalse: bool, fields.Raw: object}
_SHAPES = {
    kind: [(name, _TYPES[type(field)], field.allow_none, field.validators) for name, field in schema.fields.items()]
    for kind, schema in _BODIES.items()
}


def fits(entry: Entry) -> bool:
    """Whether this engine can read the entry's body: its schema's own rules, without the cost of a full load.

    Every body of a house is judged when it is first shown; loading thousands by schema would take a phone seconds.
    """
    if not entry.known or len(entry.body) != len(_SHAPES[entry.kind]):
        return False
    try:
        for name, kind, may_be_none, validators in _SHAPES[entry.kind]:
            value = entry.body[name]
            if value is None and may_be_none:
                continue
            if not isinstance(value, kind) or (kind is int and isinstance(value, bool)):
                return False
            for check in validators:
                check(value)
        _check_text(entry.body)
    except (KeyError, EngineError, ValidationError):
        return False
    return True


def check_entry(data: object) -> list[EngineError]:
    """What is wrong with an entry: an empty list, or the first refusal."""
    try:
        parse_entry(data)
    except EngineError as error:
        return [error]
    return []


_SURROGATE = re.compile("[\ud800-\udfff]")


def _check_text(data: object) -> None:
    # SQLite and UTF-8 refuse a lone surrogate; found here, one bad entry is named instead of stopping a whole exchange.
    waiting: list[object] = [data]
    while waiting:
        found = waiting.pop()
        if isinstance(found, str) and not found.isascii() and _SURROGATE.search(found):
            raise EntryError("not-text", where="The entry")
        if isinstance(found, Mapping):
            waiting += [*found.keys(), *found.values()]
        elif isinstance(found, list):
            waiting += found
