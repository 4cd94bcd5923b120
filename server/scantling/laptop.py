"""The laptop: one store, the desks that have read all of it, and the pen with which the laptop itself writes.

The API and the command line share it. A plan of boards may take ten seconds, so it is made at a desk of its own, and
whoever asks anything else does not wait for it.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from threading import BoundedSemaphore
from time import monotonic
from typing import Any, ClassVar

from scantling.blobs import Blobs
from scantling.clock import HybridClock, mint_device, mint_id, now_ms
from scantling.engine.desk import Desk
from scantling.engine.errors import EngineError
from scantling.engine.journal import VERSION, Entry, check_entry
from scantling.reader import Reader
from scantling.store import EntryData, Store

LAPTOP_NAME = "laptop"
#: Questions that may take seconds.
LONG = frozenset({"boards", "boards_for_room", "boards_if", "prove", "sheets", "shopping", "spent", "next_rooms"})
PLANS_AT_ONCE = 4


class LaptopError(EngineError):
    sentences: ClassVar[Mapping[str, str]] = {
        "too-many-plans": "The laptop is at several plans of boards already: ask again when one of them is done.",
    }


class Laptop:
    def __init__(self, store: Store, clock: Callable[[], int] = now_ms, blobs: Blobs | None = None) -> None:
        self.store = store
        self.blobs = blobs
        self._clock = clock
        self._stamps = HybridClock()
        self._reader = Reader(store, lambda entry: self._stamps.see(entry["stamp"], self._clock()))
        self._planner = Reader(store)
        self._places = BoundedSemaphore(PLANS_AT_ONCE)
        # A pen is new with every run: a notebook restored from an old copy would else give a number a second time,
        # and the first entry of that number, still on a phone, could never come back.
        self._device = mint_device()
        self._seq = 0

    def answer(self, question: Mapping[str, Any]) -> dict[str, Any]:
        """One answer from a desk that has read every entry of the store."""
        with self._desk_for([question]) as desk:
            return desk.answer(question)

    def answer_text(self, text: str) -> str:
        """The desk's own text for a question, or a list of them, in JSON. Raises LaptopError."""
        with self._desk_for(_questions_in(text)) as desk:
            return desk.answer_text(text)

    @contextmanager
    def _desk_for(self, questions: Sequence[Any]) -> Iterator[Desk]:
        asked = {name for one in questions if isinstance(one, Mapping) and isinstance(name := one.get("ask"), str)}
        if "take" in asked:
            # It would teach the desk entries that the store has not kept: such a request gets a desk of its own.
            yield Desk(self._all_entries(), monotonic)
        elif asked & LONG:
            with self._place(), self._planner.up_to_date() as desk:
                yield desk
        else:
            with self._reader.up_to_date() as desk:
                yield desk

    @contextmanager
    def _place(self) -> Iterator[None]:
        """One of the few places to wait for a plan: with more of them, those who wait would hold every thread."""
        if not self._places.acquire(blocking=False):
            raise LaptopError("too-many-plans")
        try:
            yield
        finally:
            self._places.release()

    def write(
        self, kind: str, body: Mapping[str, Any], supersedes: Iterable[str] = (), entry_id: str | None = None
    ) -> EntryData:
        """Keep one entry in the laptop's own hand, or give the one that is kept under `entry_id` already.

        Raises EngineError, and keeps nothing then.
        """
        with self._reader.up_to_date():
            if self._seq == 0:
                self._keep(self._compose("device", {"name": LAPTOP_NAME}, (), None))
            return self._keep(self._compose(kind, body, supersedes, entry_id))

    def in_force(self, kind: str, **subject: str) -> list[Entry]:
        """The statements of a kind about one subject that are neither struck nor superseded, the one to use last.

        `subject` says who it is, and not where: a wall that was said to be in another room has left the first.
        """
        with self._reader.up_to_date() as desk:
            notebook = desk.context.notebook
            said = [entry for entry in notebook.entries.values() if entry.kind == kind and _says(entry, subject)]
            return notebook.heads(sorted(said, key=lambda entry: entry.order))

    def last_wall(self, room: str) -> str | None:
        """The rightmost wall of a room so far."""
        with self._reader.up_to_date() as desk:
            walls = desk.context.notebook.walls(room)
            return walls[-1][0] if walls else None

    def _compose(
        self, kind: str, body: Mapping[str, Any], supersedes: Iterable[str], entry_id: str | None
    ) -> EntryData:
        at_ms = self._clock()
        return {
            "id": entry_id or mint_id(at_ms),
            "device": self._device,
            "seq": self._seq + 1,
            "stamp": self._stamps.stamp(at_ms, self._device),
            "version": VERSION,
            "kind": kind,
            "body": dict(body),
            "supersedes": list(supersedes),
        }

    def _keep(self, entry: EntryData) -> EntryData:
        for problem in check_entry(entry):
            raise problem
        with self.store.writing() as ledger:
            (kept,) = ledger.append_all([entry])
        self._seq += kept.new
        return kept.entry

    def _all_entries(self) -> list[EntryData]:
        with self.store.reading() as ledger:
            return [row.entry for row in ledger.read_all()]


def _questions_in(text: str) -> Sequence[Any]:
    try:
        asked = json.loads(text)
    except (ValueError, RecursionError):
        return ()
    return asked if isinstance(asked, list) else [asked]


def _says(entry: Entry, about: Mapping[str, str]) -> bool:
    return entry.known and all(entry.body.get(name) == value for name, value in about.items())
