"""The laptop: one store, one desk that has read all of it, and the pen with which the laptop itself writes.

The API and the command line share it. It knows when the desk has fallen behind the store (by row number, so entries
that another process or a phone has brought are read before the next answer) and it keeps one thing at a time: one
lock."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Mapping
from threading import RLock
from time import monotonic
from typing import Any

from scantling.clock import HybridClock, mint_device, mint_id, now_ms
from scantling.engine.desk import Desk
from scantling.engine.journal import VERSION, Entry, check_entry
from scantling.store import ROWS_AT_ONCE, EntryData, Store

LAPTOP_NAME = "laptop"


class Laptop:
    def __init__(self, store: Store, clock: Callable[[], int] = now_ms) -> None:
        self.store = store
        self._clock = clock
        self._lock = RLock()
        self._desk = Desk(clock=monotonic)
        self._row = 0
        self._stamps = HybridClock()
        # A pen is new with every run: a notebook restored from an old copy would else give a number a second time,
        # and the first entry of that number, still on a phone, could never come back.
        self._device = mint_device()
        self._seq = 0

    def answer(self, question: Mapping[str, Any]) -> dict[str, Any]:
        """One answer from the desk, with every entry of the store read."""
        with self._lock:
            self._catch_up()
            return self._desk.answer(question)

    def answer_text(self, text: str) -> str:
        """The desk's own text for a question, or a list of them, in JSON."""
        with self._lock:
            self._catch_up()
            # "take" would teach this desk entries that the store has not kept: such a request gets a desk of its own.
            desk = Desk(self._all_entries(), monotonic) if _takes(text) else self._desk
            return desk.answer_text(text)

    def write(self, kind: str, body: Mapping[str, Any], supersedes: Iterable[str] = ()) -> EntryData:
        """Keep one entry in the laptop's own hand. Raises EngineError, and keeps nothing then."""
        with self._lock:
            self._catch_up()
            if self._seq == 0:
                self._keep(self._compose("device", {"name": LAPTOP_NAME}, ()))
            entry = self._compose(kind, body, supersedes)
            self._keep(entry)
            self._catch_up()
            return entry

    def in_force(self, kind: str, **about: str) -> list[Entry]:
        """The statements of a kind that say all of this in their body and are neither struck nor superseded."""
        with self._lock:
            self._catch_up()
            notebook = self._desk.context.notebook
            said = [entry for entry in notebook.entries.values() if entry.kind == kind and _says(entry, about)]
            return notebook.heads(sorted(said, key=lambda entry: entry.order))

    def last_wall(self, room: str) -> str | None:
        """The rightmost wall of a room so far."""
        with self._lock:
            self._catch_up()
            walls = self._desk.context.notebook.walls(room)
            return walls[-1][0] if walls else None

    def _compose(self, kind: str, body: Mapping[str, Any], supersedes: Iterable[str]) -> EntryData:
        at_ms = self._clock()
        return {
            "id": mint_id(at_ms),
            "device": self._device,
            "seq": self._seq + 1,
            "stamp": self._stamps.stamp(at_ms, self._device),
            "version": VERSION,
            "kind": kind,
            "body": dict(body),
            "supersedes": list(supersedes),
        }

    def _keep(self, entry: EntryData) -> None:
        for problem in check_entry(entry):
            raise problem
        with self.store.writing() as ledger:
            ledger.append(entry)
        self._seq += 1

    def _catch_up(self) -> None:
        while True:
            with self.store.reading() as ledger:
                rows = ledger.read_since(self._row, ROWS_AT_ONCE)
            if not rows:
                return
            entries = [row.entry for row in rows]
            self._desk.take(entries)
            for entry in entries:
                self._stamps.see(entry["stamp"], self._clock())
            self._row = rows[-1].row

    def _all_entries(self) -> list[EntryData]:
        with self.store.reading() as ledger:
            return [row.entry for row in ledger.read_all()]


def _takes(text: str) -> bool:
    try:
        asked = json.loads(text)
    except (ValueError, RecursionError):
        return False
    questions = asked if isinstance(asked, list) else [asked]
    return any(isinstance(one, Mapping) and one.get("ask") == "take" for one in questions)


def _says(entry: Entry, about: Mapping[str, str]) -> bool:
    return entry.known and all(entry.body.get(name) == value for name, value in about.items())
