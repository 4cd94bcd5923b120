"""Bringing entries from a file into the notebook: what is sound goes in, and what is not is named by its line.

Entries go in some hundreds at a time, so that others can write meanwhile. Each is checked and kept as the exchange does
it, by the same code, so the same file may be brought in any number of times.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Iterable, Mapping
from contextlib import suppress
from dataclasses import dataclass, field
from itertools import islice
from typing import ClassVar

from scantling.blobs import BlobError, Blobs, Piece, parse_piece
from scantling.engine.errors import EngineError
from scantling.journal_file.lines import Line, LineError, announced, houses_in, is_piece, read_lines
from scantling.store import EntryData, Store, StoreError
from scantling.sync import check_carried

LINES_AT_ONCE = 500
NAMED_AT_MOST = 100
#: Thirty million lines of noise would keep the laptop busy for an hour.
LEFT_OUT_AT_MOST = 10_000
PAUSE_SECONDS = 0.02
#: The house of the page's invented room, to look around in: it makes no notebook anybody's.
INVENTED = "00000000-0000-7000-8000-1d5c9e000001"


class RestoreError(EngineError):
    sentences: ClassVar[Mapping[str, str]] = {
        "another-notebook": "This file is of another notebook: no house of it is in this one. Nothing was added. "
        "To have its houses beside those here, say {option}.",
        "no-journal": "More than {limit} lines of this are no entries: it is no journal.",
        "cut-short-blobs": "The file was cut short: it says that {said} attachments follow, and {found} are whole.",
        "cut-short": "The file was cut short: it says that {said} entries follow, and {found} do.",
        "stopped": "{why} Before that, {stored} entries of the file were added.",
    }


@dataclass(slots=True)
class Restored:
    """What came of a file: entries that were new, entries that were here, and the lines that are in neither; the blobs
    of the file that are here whole, and those of them that were not before."""

    stored: int = 0
    known: int = 0
    left_out: int = 0
    said: int = 0
    said_blobs: int = 0
    blobs: set[str] = field(default_factory=set)
    added: set[str] = field(default_factory=set)
    refusals: list[EngineError] = field(default_factory=list)

    def refuse(self, error: EngineError) -> None:
        self.left_out += 1
        if self.left_out > LEFT_OUT_AT_MOST:
            raise RestoreError("no-journal", limit=LEFT_OUT_AT_MOST)
        if len(self.refusals) < NAMED_AT_MOST:
            self.refusals.append(error)

    def cut_short(self) -> EngineError | None:
        """The sentence for a file with fewer entries than its heading says."""
        found = self.stored + self.known + self.left_out
        if found < self.said:
            return RestoreError("cut-short", said=self.said, found=found)
        if len(self.blobs) < self.said_blobs:
            return RestoreError("cut-short-blobs", said=self.said_blobs, found=len(self.blobs))
        return None


def restore(
    store: Store,
    pieces: Iterable[bytes],
    left_out: Callable[[Line], None] = lambda line: None,
    blobs: Blobs | None = None,
    beside: str | None = None,
) -> Restored:
    """Bring in a journal's lines; `left_out` gets every line that cannot be.

    A file of another notebook is refused where `beside` says how to ask for that; None takes it in. Raises EngineError,
    for that and when the disk fails.
    """
    restored = Restored()
    lines = read_lines(pieces)
    while batch := list(islice(lines, LINES_AT_ONCE)):
        if beside and restored == Restored() and is_of_another(store, batch):
            raise RestoreError("another-notebook", option=beside)
        if restored.stored:
            time.sleep(PAUSE_SECONDS)  # or one who waits for the lock finds it taken again each time that it looks
        stored = restored.stored
        try:
            _restore_some(store, batch, restored, left_out, blobs)
        except EngineError as error:
            if not stored:
                raise
            raise RestoreError("stopped", why=error.message, stored=stored) from error
    return restored


def is_of_another(store: Store, lines: list[Line]) -> bool:
    """Whether lines name houses, none of which is in a notebook that has some: merged, two families' houses could never
    be told apart again by anything but hand. A house that was struck counts: it was here."""
    named: set[str] = set()
    for line in lines:
        with suppress(EngineError):
            named |= houses_in(line.parse())
    here = houses_of(store) - {INVENTED}
    return bool(named and here) and named.isdisjoint(here)


def houses_of(store: Store) -> set[str]:
    """The ids of all houses that entries of a notebook name."""
    with store.reading() as ledger:
        return {house for row in ledger.read_all() for house in houses_in(row.entry)}


def _restore_some(
    store: Store, batch: list[Line], restored: Restored, left_out: Callable[[Line], None], blobs: Blobs | None
) -> None:
    sound: list[tuple[Line, EntryData, str]] = []
    for line in batch:
        try:
            data = line.parse()
            said = announced(data)
            if said is not None:
                restored.said += said
                restored.said_blobs += announced(data, "blobs") or 0
            elif is_piece(data):
                _restore_piece(parse_piece(data), restored, blobs)
            else:
                sound.append((line, *check_carried(data)))
        except EngineError as error:
            restored.refuse(_naming(line, error))
            left_out(line)
    with store.writing() as ledger:
        kept = ledger.append_all([entry for _, entry, _ in sound], [text for *_, text in sound])
    for (line, *_), one in zip(sound, kept, strict=True):
        restored.stored += one.new
        restored.known += one.agrees and not one.new
        if not one.agrees:
            restored.refuse(_naming(line, StoreError("id-taken", field="id")))
            left_out(line)


def _restore_piece(piece: Piece, restored: Restored, blobs: Blobs | None) -> None:
    """By the same way as a piece comes from a phone: a file that was cut short is gone on with by the next."""
    if blobs is None:
        raise BlobError("no-blobs")
    if piece.blob in restored.blobs:
        return
    was_here = piece.at == 0 and blobs.offset(piece.blob) is None
    if blobs.receive(piece) is None:
        restored.blobs.add(piece.blob)
        if not was_here:
            restored.added.add(piece.blob)


def _naming(line: Line, error: EngineError) -> EngineError:
    """The refusal with its line's number in it."""
    if error.message.startswith(f"Line {line.number} "):
        return error
    where = f" {error.field}:" if error.field else ""
    named = LineError("not-sound", number=line.number, why=f"{where} {error.message}".strip())
    named.key = error.key
    return named
