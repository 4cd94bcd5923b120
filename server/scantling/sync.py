"""The exchange: one idempotent request that brings entries and fetches entries.

A phone sends what the laptop has not acknowledged and says how far it has read; the answer acknowledges, refuses one by
one, and hands over what is new. Any request may be sent again after a lost reply and nothing is stored twice. Two
things tell when one of the two was put back from an old copy: `database`, the mark of the journal up to the cursor,
which a laptop that has forgotten or gone on differently does not know; and `have`, the count of entries per device, by
which a phone notices that it has forgotten.

It knows the wire, not Flask and not SQL. It never judges an entry by its clock, and a bad entry never stops a good one.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, ClassVar

from marshmallow import RAISE, Schema, ValidationError, fields, validate

from scantling.engine.errors import EngineError
from scantling.engine.journal import check_entry
from scantling.engine.shapes import first_refusal
from scantling.store import EntryData, KeptRow, Ledger, Store, canonical_text
from scantling.wire import parse_json

PROTOCOL = 1
ENTRIES_AT_ONCE = 500
BYTES_AT_ONCE = 1_000_000
ENTRY_BYTES = 100_000


class SyncError(EngineError):
    sentences: ClassVar[Mapping[str, str]] = {
        "protocol": "This laptop speaks exchange protocol {ours}, the device {theirs}: update the older of the two.",
        "not-a-list": "The entries are a list: send [] when there are none.",
        "too-many-entries": "{count} entries came at once and {limit} are the most: send fewer at a time.",
        "entry-too-large": "The entry is {size} bytes and {limit} are the most: it cannot be exchanged.",
    }


class Refused(Schema):
    id = fields.String(required=True)
    key = fields.String(required=True)
    message = fields.String(required=True)


class ExchangeRequest(Schema):
    """What a device sends: `database` as the last answer gave it, null the first time; `entries` at most 500."""

    class Meta:
        unknown = RAISE

    protocol = fields.Integer(required=True, strict=True)
    device = fields.String(required=True, validate=validate.Regexp(r"[0-9a-f]{16}\Z"))
    database = fields.String(required=True, allow_none=True, validate=validate.Length(max=64))
    cursor = fields.Integer(required=True, strict=True, validate=validate.Range(0, 2**53))
    entries = fields.List(fields.Raw(allow_none=True), required=True)


class ExchangeReply(Schema):
    """What the laptop answers: with `reset`, nothing was kept and the device starts over from cursor 0."""

    database = fields.String(required=True)
    reset = fields.Boolean()
    acked = fields.List(fields.String())
    rejected = fields.List(fields.Nested(Refused))
    entries = fields.List(fields.Dict())
    cursor = fields.Integer()
    more = fields.Boolean()
    have = fields.Dict(keys=fields.String(), values=fields.Integer())
    build = fields.String()


_REQUEST = ExchangeRequest()


def exchange(store: Store, sent: object, build: str) -> dict[str, Any]:
    """One exchange, in one transaction. Raises EngineError when the request as a whole makes no sense."""
    request = parse_request(sent)
    with store.writing() as ledger:
        if _must_reset(ledger, request):
            return {"database": store.database_id, "reset": True}
        acked, rejected = keep_entries(ledger, request["entries"])
        rows, cursor = _rows_for(ledger, request["cursor"])
        known = set(acked)
        return {
            "database": ledger.mark_at(cursor),
            "acked": acked,
            "rejected": rejected,
            "entries": [entry for entry in (row.entry for row in rows) if entry["id"] not in known],
            "cursor": cursor,
            "more": cursor < ledger.last_row(),
            "have": ledger.counts(),
            "build": build,
        }


def parse_request(sent: object) -> dict[str, Any]:
    """The request, its shape checked. The protocol is looked at first: a newer one may have another shape."""
    theirs = sent.get("protocol") if isinstance(sent, Mapping) else None
    if isinstance(theirs, int) and theirs != PROTOCOL:
        raise SyncError("protocol", field="protocol", ours=PROTOCOL, theirs=theirs)
    try:
        request: dict[str, Any] = _REQUEST.load(sent)  # type: ignore[arg-type]
    except ValidationError as error:
        raise first_refusal(error.messages) from error
    if not isinstance(sent["entries"], list):  # type: ignore[index]
        raise SyncError("not-a-list", field="entries")  # marshmallow takes an object for the list of its keys
    count = len(request["entries"])
    if count > ENTRIES_AT_ONCE:
        raise SyncError("too-many-entries", field="entries", count=count, limit=ENTRIES_AT_ONCE)
    return request


def _must_reset(ledger: Ledger, request: Mapping[str, Any]) -> bool:
    mark = request["database"]
    known = 0 if mark is None else ledger.row_of(mark)
    return known is None or request["cursor"] > known


def keep_entries(ledger: Ledger, entries: list[object]) -> tuple[list[str], list[dict[str, str]]]:
    """Keep each entry that can be kept: the ids acknowledged, and the refusals by name."""
    acked: list[str] = []
    rejected: list[dict[str, str]] = []
    for entry in entries:
        try:
            keep_entry(ledger, entry)
            acked.append(_id_of(entry))
        except EngineError as error:
            rejected.append({"id": _id_of(entry), "key": error.key, "message": error.message})
    return acked, rejected


def keep_entry(ledger: Ledger, entry: object) -> bool:
    """Check an entry and keep it; False if it was kept already. Raises EngineError, and keeps nothing of it then."""
    for problem in check_entry(entry):
        raise problem
    checked: EntryData = entry  # type: ignore[assignment]
    size = len(canonical_text(checked).encode())
    if size > ENTRY_BYTES:
        raise SyncError("entry-too-large", size=size, limit=ENTRY_BYTES)
    return ledger.append(checked)


def keep_lines(store: Store, text: str) -> tuple[int, int]:
    """Keep a journal that was written one entry to a line: how many were new, how many known. All of it, or nothing."""
    lines = [line for line in text.split("\n") if line.strip()]  # not splitlines(): a text may hold a line separator
    with store.writing() as ledger:
        stored = sum(keep_entry(ledger, parse_json(line, f"Line {number}")) for number, line in enumerate(lines, 1))
    return stored, len(lines) - stored


def _id_of(entry: object) -> str:
    named = entry.get("id") if isinstance(entry, Mapping) else None
    return named[:64] if isinstance(named, str) else ""


def _rows_for(ledger: Ledger, cursor: int) -> tuple[list[KeptRow], int]:
    """The next rows, cut off by count and by bytes (but never to none), and the cursor after them."""
    rows = ledger.read_since(cursor, ENTRIES_AT_ONCE)
    size = 0
    for index, row in enumerate(rows):
        size += len(row.text.encode())
        if size > BYTES_AT_ONCE and index:
            rows = rows[:index]
            break
    return rows, rows[-1].row if rows else cursor
