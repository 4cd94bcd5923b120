"""The exchange: idempotent requests that bring entries and fetch entries.

A device sends what the laptop has not acknowledged and says how far it has read; the answer acknowledges, refuses one
by one, hands over what is new, and says what the laptop's whole journal comes to. Any request may be sent again after a
lost reply and nothing is stored twice. An entry is known by its id alone.

When nothing is left to send or to read, the two hold the same or one of them was put back to an older copy; the totals
tell. Then the device compares: sums of digests by their first two digits, and where those differ the digests
themselves. It asks for the entries that it lacks, and sends again those that the laptop lacks. No count, no number of a
device and no clock decides anything.

It knows the wire, not Flask and not SQL. A bad entry never stops a good one.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from marshmallow import RAISE, ValidationError, fields, validate

from scantling.engine.errors import EngineError
from scantling.engine.forms import Schema
from scantling.engine.journal import check_entry
from scantling.engine.shapes import first_refusal
from scantling.store import EntryData, KeptRow, Ledger, Store, StoreError, canonical_text, sum_of

PROTOCOL = 2
ENTRIES_AT_ONCE = 500
BYTES_AT_ONCE = 1_000_000
ENTRY_BYTES = 100_000
DIGESTS_AT_ONCE = 5_000
PLACES = 2


class SyncError(EngineError):
    sentences: ClassVar[Mapping[str, str]] = {
        "protocol": "This laptop speaks exchange protocol {ours}, the device {theirs}: update the older of the two.",
        "not-a-list": "The {what} are a list: send [] when there are none.",
        "too-many-entries": "{count} entries came at once and {limit} are the most: send fewer at a time.",
        "entry-too-large": "The entry is {size} bytes and {limit} are the most: it cannot be exchanged.",
    }


class Refused(Schema):
    id = fields.String(required=True)
    key = fields.String(required=True)
    message = fields.String(required=True)


def _digest() -> fields.String:
    return fields.String(required=True, validate=validate.Regexp(r"[0-9a-f]{32}\Z"))


class Request(Schema):
    class Meta:
        unknown = RAISE

    protocol = fields.Integer(required=True, strict=True)
    device = fields.String(required=True, validate=validate.Regexp(r"[0-9a-f]{16}\Z"))


class ExchangeRequest(Request):
    """What a device sends: `database` as the last answer gave it, null the first time; `entries` at most 500."""

    database = fields.String(required=True, allow_none=True, validate=validate.Length(max=64))
    cursor = fields.Integer(required=True, strict=True, validate=validate.Range(0, 2**53))
    entries = fields.List(fields.Raw(allow_none=True), required=True)


class ExchangeReply(Schema):
    """What the laptop answers. `instead`: what stands here under an id that came with another text; `left`: how many
    rows are still to be read; `total`: what all entries here come to."""

    database = fields.String(required=True)
    acked = fields.List(fields.String(), required=True)
    rejected = fields.List(fields.Nested(Refused), required=True)
    instead = fields.List(fields.Dict(), required=True)
    entries = fields.List(fields.Dict(), required=True)
    cursor = fields.Integer(required=True)
    left = fields.Integer(required=True)
    total = fields.String(required=True)
    build = fields.String(required=True)


class CompareRequest(Request):
    """The sums of what a device holds, by the first two digits of the digests; where it has none it says nothing."""

    sums = fields.Dict(
        required=True,
        keys=fields.String(validate=validate.Regexp(r"[0-9a-f]{2}\Z")),
        values=_digest(),
    )


class CompareReply(Schema):
    """Where the sums differ, every digest that the laptop has there; with `more`, not yet of all that differ."""

    differ = fields.Dict(keys=fields.String(), values=fields.List(fields.String()), required=True)
    more = fields.Boolean(required=True)


class FetchRequest(Request):
    """The digests of entries that a device lacks, at most 500."""

    digests = fields.List(_digest(), required=True, validate=validate.Length(max=ENTRIES_AT_ONCE))


class FetchReply(Schema):
    """As many of the entries as fit into one answer; what is missing may be asked for again."""

    entries = fields.List(fields.Dict(), required=True)


_EXCHANGE, _COMPARE, _FETCH = ExchangeRequest(), CompareRequest(), FetchRequest()


def exchange(store: Store, sent: object, build: str) -> dict[str, Any]:
    """One exchange, in one transaction. Raises EngineError when the request as a whole makes no sense."""
    request = parse_request(_EXCHANGE, sent, "entries")
    count = len(request["entries"])
    if count > ENTRIES_AT_ONCE:
        raise SyncError("too-many-entries", field="entries", count=count, limit=ENTRIES_AT_ONCE)
    sound, rejected = sift(request["entries"])
    with store.writing() if sound else store.reading() as ledger:
        cursor = _cursor_of(ledger, request)
        receipt = keep_entries(ledger, sound, rejected)
        rows = _fitting(ledger.read_since(cursor, ENTRIES_AT_ONCE))
        cursor = rows[-1].row if rows else cursor
        known = set(receipt["acked"])
        return {
            "database": ledger.mark_at(cursor),
            **receipt,
            "entries": [entry for entry in (row.entry for row in rows) if entry["id"] not in known],
            "cursor": cursor,
            "left": ledger.last_row() - cursor,
            "total": ledger.total(),
            "build": build,
        }


def compare(store: Store, sent: object) -> dict[str, Any]:
    """Where a device's journal differs from this one. Raises EngineError when the request makes no sense."""
    sums = parse_request(_COMPARE, sent)["sums"]
    here: dict[str, list[str]] = defaultdict(list)
    with store.reading() as ledger:
        for digest in ledger.digests():
            here[digest[:PLACES]].append(digest)
    differ: dict[str, list[str]] = {}
    told = 0
    for place in sorted({*sums, *here}):
        digests = here.get(place, [])
        if sums.get(place, sum_of(())) == sum_of(digests):
            continue
        if differ and told + len(digests) > DIGESTS_AT_ONCE:
            return {"differ": differ, "more": True}
        differ[place] = digests
        told += len(digests)
    return {"differ": differ, "more": False}


def fetch(store: Store, sent: object) -> dict[str, Any]:
    """The entries that a device asks for by their digests. Raises EngineError when the request makes no sense."""
    digests = parse_request(_FETCH, sent, "digests")["digests"]
    with store.reading() as ledger:
        return {"entries": [row.entry for row in _fitting(ledger.read_by_digest(digests))]}


def parse_request(schema: Schema, sent: object, listed: str | None = None) -> dict[str, Any]:
    """The request, its shape checked. The protocol is looked at first: a newer one may have another shape."""
    theirs = sent.get("protocol") if isinstance(sent, Mapping) else None
    if isinstance(theirs, int) and theirs != PROTOCOL:
        raise SyncError("protocol", field="protocol", ours=PROTOCOL, theirs=theirs)
    try:
        request: dict[str, Any] = schema.load(sent)  # type: ignore[arg-type]
    except ValidationError as error:
        raise first_refusal(error.messages) from error
    if listed and not isinstance(sent[listed], list):  # type: ignore[index]
        raise SyncError("not-a-list", field=listed, what=listed)  # marshmallow takes an object for the list of its keys
    return request


def _cursor_of(ledger: Ledger, request: Mapping[str, Any]) -> int:
    """From where the device is to read on. Where its mark is not known here, one of the two was put back: what it lacks
    is then found by comparing, and reading all again would be the longer way."""
    mark, cursor = request["database"], request["cursor"]
    known = 0 if mark is None else ledger.row_of(mark)
    return cursor if known is not None and cursor <= known else ledger.last_row()


def sift(entries: Iterable[object]) -> tuple[dict[str, EntryData], list[dict[str, str]]]:
    """The entries that can be kept by their canonical texts, and the refusals of the others by name.

    Before the journal is asked for: who writes keeps all others from writing, and looking at entries takes longer than
    keeping them.
    """
    sound: dict[str, EntryData] = {}
    rejected: list[dict[str, str]] = []
    for entry in entries:
        try:
            checked, text = check_carried(entry)
            sound[text] = checked
        except EngineError as error:
            rejected.append(_refusal(entry, error))
    return sound, rejected


def keep_entries(ledger: Ledger, sound: dict[str, EntryData], rejected: list[dict[str, str]]) -> dict[str, Any]:
    """Keep what came through: the ids acknowledged, all refusals by name, and what stands instead."""
    acked: list[str] = []
    instead: list[EntryData] = []
    for kept in ledger.append_all(list(sound.values()), list(sound)) if sound else ():
        entry = sound[kept.came]
        if not kept.same:
            instead.append(kept.entry)
        if kept.agrees:
            acked.append(entry["id"])
        else:
            rejected.append(_refusal(entry, StoreError("id-taken", field="id")))
    return {"acked": acked, "rejected": rejected, "instead": instead}


def _refusal(entry: object, error: EngineError) -> dict[str, str]:
    named = entry.get("id") if isinstance(entry, Mapping) else None
    shown = named[:64] if isinstance(named, str) else ""
    return {"id": shown, "key": error.key, "message": error.message}


def check_carried(entry: object) -> tuple[EntryData, str]:
    """The entry and its canonical text, when it is one and can travel. Raises EngineError."""
    for problem in check_entry(entry):
        raise problem
    checked: EntryData = entry  # type: ignore[assignment]
    text = canonical_text(checked)
    size = len(text.encode())
    if size > ENTRY_BYTES:
        raise SyncError("entry-too-large", size=size, limit=ENTRY_BYTES)
    return checked, text


def keep_entry(ledger: Ledger, entry: object) -> bool:
    """Check an entry and keep it; False if it was kept already. Raises EngineError, and keeps nothing of it then."""
    return ledger.append(*check_carried(entry))


def _fitting(rows: list[KeptRow]) -> list[KeptRow]:
    """The first of these rows, cut off by their bytes, but never to none."""
    size = 0
    for index, row in enumerate(rows):
        size += len(row.text.encode())
        if size > BYTES_AT_ONCE and index:
            return rows[:index]
    return rows
