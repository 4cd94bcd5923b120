"""A desk that has read the store to its end before each answer, and answers one at a time."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from threading import RLock
from time import monotonic

from scantling.engine.desk import Desk
from scantling.store import ROWS_AT_ONCE, EntryData, Store


class Reader:
    """`see` is told every entry as it is read."""

    def __init__(self, store: Store, see: Callable[[EntryData], None] = lambda entry: None) -> None:
        self._store = store
        self._see = see
        self._lock = RLock()
        self._desk = Desk(clock=monotonic)
        self._row = 0

    @contextmanager
    def up_to_date(self) -> Iterator[Desk]:
        """The desk, for as long as it is held; taken again by the same thread, it reads on."""
        with self._lock:
            self._catch_up()
            yield self._desk

    def _catch_up(self) -> None:
        # By row number, so entries that another process or a phone has brought are read too.
        while True:
            with self._store.reading() as ledger:
                rows = ledger.read_since(self._row, ROWS_AT_ONCE)
            if not rows:
                return
            entries = [row.entry for row in rows]
            self._desk.take(entries)
            for entry in entries:
                self._see(entry)
            self._row = rows[-1].row
