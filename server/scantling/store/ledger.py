"""The journal within one transaction: rows read in order, an entry appended, and the mark that says who has read what.

Statements are SQLAlchemy Core without dialect.
"""

import hashlib
import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

import sqlalchemy as sa

from scantling.store.canonical import NOTHING, EntryData, canonical_text, digest_of, says_the_same, sum_of
from scantling.store.catalog import journal_table
from scantling.store.refusals import StoreError

ROWS_AT_ONCE = 1000
#: Made once: putting a statement together takes longer than running this one.
NEWEST = (
    sa.select(journal_table.c.row, journal_table.c.mark, journal_table.c.total)
    .order_by(journal_table.c.row.desc())
    .limit(1)
)


@dataclass(frozen=True, slots=True)
class KeptRow:
    """One row as read: its number, and the entry's canonical text."""

    row: int
    text: str

    @property
    def entry(self) -> EntryData:
        try:
            entry: EntryData = json.loads(self.text)
        except ValueError as error:
            raise StoreError("damaged", why=f"row {self.row} is no entry") from error
        return entry


def proved(row: int, text: str, digest: str) -> KeptRow:
    """A row whose text is still what was written: a flipped bit makes another reading of one. Raises StoreError."""
    if not isinstance(text, str) or digest_of(text) != digest:
        raise StoreError("damaged", why=f"row {row} is not what was written there")
    return KeptRow(row, text)


#: What `proved` takes.
ROW = (journal_table.c.row, journal_table.c.entry, journal_table.c.digest)


@dataclass(frozen=True, slots=True)
class Kept:
    """What came of an entry: whether it is new here, the text that came, and the text that stands."""

    new: bool
    came: str
    text: str

    @property
    def same(self) -> bool:
        """The same in every byte."""
        return self.came == self.text

    @property
    def agrees(self) -> bool:
        """The same, but for its number."""
        return says_the_same(self.came, self.text)

    @property
    def entry(self) -> EntryData:
        entry: EntryData = json.loads(self.text)
        return entry


def next_mark(mark: str, text: str) -> str:
    """The mark of the row that follows."""
    return hashlib.sha256(f"{mark} {text}".encode()).hexdigest()


class Ledger:
    """The journal within one transaction.

    Each row carries a mark: a digest of all rows up to it. Who shows the mark of where they stopped reading has read
    this very journal so far, and not one that was put back from an old copy and has gone on differently since.
    """

    def __init__(self, connection: sa.Connection, start: str) -> None:
        self._connection = connection
        self._start = start

    def append(self, entry: EntryData, text: str | None = None) -> bool:
        """Keep an entry; False if it was kept already. Raises StoreError, and keeps nothing, if it said otherwise."""
        (kept,) = self.append_all([entry], None if text is None else [text])
        if not kept.agrees:
            raise StoreError("id-taken", field="id")
        return kept.new

    def append_all(self, entries: Sequence[EntryData], texts: Sequence[str] | None = None) -> list[Kept]:
        """Keep each entry whose id is not known, and tell of each what stands under its id now.

        `texts` are their canonical texts, where the caller has them. Where an id is known with another text, what was
        kept first stands: rows never change.
        """
        texts = [canonical_text(entry) for entry in entries] if texts is None else texts
        standing = self._texts_of([entry["id"] for entry in entries])
        told, fresh = [], []
        for entry, text in zip(entries, texts, strict=True):
            stands = standing.setdefault(entry["id"], text)
            new = stands is text
            if new:
                fresh.append((entry, text))
            told.append(Kept(new, text, stands))
        self._insert(fresh)
        return told

    def _texts_of(self, ids: Sequence[str]) -> dict[str, str]:
        found: dict[str, str] = {}
        for start in range(0, len(ids), ROWS_AT_ONCE):
            wanted = journal_table.c.id.in_(ids[start : start + ROWS_AT_ONCE])
            rows = self._connection.execute(sa.select(journal_table.c.id, journal_table.c.entry).where(wanted))
            found.update((row[0], row[1]) for row in rows)
        return found

    def _insert(self, fresh: Sequence[tuple[EntryData, str]]) -> None:
        if not fresh:
            return
        newest = self._newest()
        mark, total = (newest.mark, newest.total) if newest else (self._start, NOTHING)
        rows = []
        for entry, text in fresh:
            digest = digest_of(text)
            mark, total = next_mark(mark, text), sum_of((total, digest))
            rows.append({"id": entry["id"], "device": entry["device"], "seq": entry["seq"], "entry": text,
                         "digest": digest, "total": total, "mark": mark})  # fmt: skip
        self._connection.execute(sa.insert(journal_table), rows)

    def read_since(self, row: int, at_most: int) -> list[KeptRow]:
        """The entries after a row number, oldest first."""
        wanted = sa.select(*ROW).where(journal_table.c.row > row).order_by(journal_table.c.row).limit(at_most)
        return [proved(*found) for found in self._connection.execute(wanted)]

    def read_all(self) -> Iterator[KeptRow]:
        """Every entry, oldest first, a thousand rows in memory at a time."""
        row = 0
        while rows := self.read_since(row, ROWS_AT_ONCE):
            yield from rows
            row = rows[-1].row

    def read_entry(self, entry_id: str) -> EntryData | None:
        found = self._connection.execute(sa.select(*ROW).where(journal_table.c.id == entry_id)).first()
        return proved(*found).entry if found else None

    def last_row(self) -> int:
        newest = self._newest()
        return newest.row if newest else 0

    def mark_at(self, row: int) -> str:
        """The mark of a row; of row 0, before the first, the name of the database."""
        wanted = sa.select(journal_table.c.mark).where(journal_table.c.row == row)
        return self._connection.execute(wanted).scalar_one() if row else self._start

    def row_of(self, mark: str) -> int | None:
        """The row that has this mark, or None: then the mark is of another journal."""
        wanted = sa.select(journal_table.c.row).where(journal_table.c.mark == mark)
        return 0 if mark == self._start else self._connection.execute(wanted).scalar_one_or_none()

    def total(self) -> str:
        """The sum of all entries here: two journals with the same total hold the same."""
        newest = self._newest()
        return newest.total if newest else NOTHING

    def _newest(self) -> sa.Row[Any, Any, Any] | None:
        return self._connection.execute(NEWEST).first()

    def digests(self) -> list[str]:
        """The digest of every entry, in the order of digests."""
        wanted = sa.select(journal_table.c.digest).order_by(journal_table.c.digest)
        return list(self._connection.execute(wanted).scalars())

    def read_by_digest(self, digests: Sequence[str]) -> list[KeptRow]:
        """The entries that these digests stand for, oldest first; at most ROWS_AT_ONCE may be asked for."""
        wanted = sa.select(*ROW).where(journal_table.c.digest.in_(digests)).order_by(journal_table.c.row)
        return [proved(*found) for found in self._connection.execute(wanted)]

    def numbers_taken_twice(self) -> list[tuple[str, int]]:
        """The numbers that a device gave to more than one entry: it was put back to an older copy, or has a twin."""
        columns = (journal_table.c.device, journal_table.c.seq)
        twice = sa.select(*columns).group_by(*columns).having(sa.func.count() > 1).order_by(*columns)
        return [(row[0], row[1]) for row in self._connection.execute(twice)]
