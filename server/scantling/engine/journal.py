"""Entries: the only stored truth. Immutable, made on a device, exchanged whole.

A kind's body is checked by its schema here, on the phone and on the laptop alike. A kind or a version that this engine
does not know is not refused: it is kept and passed on, for a newer engine to read.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from marshmallow import RAISE, ValidationError, fields, validate

from scantling.engine.bodies import BODIES, ID, LIST_AT_MOST, TrueOrFalse, id_field
from scantling.engine.errors import EngineError
from scantling.engine.forms import Schema
from scantling.engine.shapes import first_refusal
from scantling.engine.words import say

VERSION = 1
SEQ_AT_MOST = 2**53
VERSION_AT_MOST = 10**6


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
    family = "entry"


_DEVICE = re.compile(r"[0-9a-f]{16}\Z")
STAMP = re.compile(r"[0-9a-f]{12}-[0-9a-f]{4}-[0-9a-f]{16}\Z")
_KIND = re.compile(r"[a-z][a-z_]{0,39}\Z")


class EntrySchema(Schema):
    """The envelope of every entry, of known kinds and others."""

    class Meta:
        unknown = RAISE

    id = id_field()
    device = fields.String(required=True, validate=validate.Regexp(_DEVICE))
    seq = fields.Integer(required=True, strict=True, validate=validate.Range(1, SEQ_AT_MOST))
    stamp = fields.String(required=True, validate=validate.Regexp(STAMP))
    version = fields.Integer(required=True, strict=True, validate=validate.Range(1, VERSION_AT_MOST))
    kind = fields.String(required=True, validate=validate.Regexp(_KIND))
    body = fields.Dict(required=True, keys=fields.String())
    supersedes = fields.List(id_field(), required=True, validate=validate.Length(max=LIST_AT_MOST))


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


ID_AT_MOST = 64


def name_entry(data: object) -> str:
    """The id that a refusal names it by; empty where it has none. What is no text may be too deep to be written."""
    named = data.get("id") if isinstance(data, Mapping) else None
    return named[:ID_AT_MOST] if isinstance(named, str) else ""


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


_TYPES = {fields.String: str, fields.Integer: int, TrueOrFalse: bool, fields.Raw: object}
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


_PATTERNS = {"id": ID, "device": _DEVICE, "stamp": STAMP, "kind": _KIND}


def _is_plainly_sound(data: object) -> bool:
    """The schema's own rules without the cost of a full load, which is for those entries that are to be refused.

    A phone brings ten thousand entries at its first exchange, and all but none of them are sound.
    """
    if not isinstance(data, dict) or data.keys() != _NAMES or not isinstance(data["body"], dict):
        return False
    if not all(isinstance(data[name], str) and pattern.match(data[name]) for name, pattern in _PATTERNS.items()):
        return False
    seq, version, older = data["seq"], data["version"], data["supersedes"]
    if type(seq) is not int or type(version) is not int or type(older) is not list or len(older) > LIST_AT_MOST:
        return False
    if not (1 <= seq <= SEQ_AT_MOST and 1 <= version <= VERSION_AT_MOST):
        return False
    if not all(isinstance(one, str) and ID.match(one) for one in older):
        return False
    entry = Entry(**data)
    return entry.known and fits(entry)


def check_entry(data: object) -> list[EngineError]:
    """What is wrong with an entry: an empty list, or the first refusal."""
    if _is_plainly_sound(data):
        return []
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
            raise EntryError("not-text", where=say("entry-itself"))
        if isinstance(found, Mapping):
            waiting += [*found.keys(), *found.values()]
        elif isinstance(found, list):
            waiting += found
