"""A notebook file that nobody should trust, read row by row.

A row is sound when its text is what its digest and its mark were made of: a bit that flipped in a reading, 63 to 73, is
a fine entry still, and only they tell. What cannot be proved is kept apart and never passed on as read. Where SQLite
finds no way to a row any more, the bytes of the file are searched for it: a row carries its own proof wherever it lies.
"""

from __future__ import annotations

import json
import re
import sqlite3
from collections.abc import Callable, Iterator, Mapping
from contextlib import closing
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, ClassVar

from scantling.engine.errors import EngineError
from scantling.store.canonical import NOTHING, digest_of, sum_of
from scantling.store.ledger import next_mark
from scantling.store.migrations import MIGRATIONS
from scantling.store.readonly import connect_to_read, log_of
from scantling.store.refusals import StoreError
from scantling.store.sqlite import HEAD

HEAD_BYTES = 100
LOG_HEADS = (b"\x37\x7f\x06\x82", b"\x37\x7f\x06\x83")
LOG_HEAD_BYTES = 32
FAULTS_AT_MOST = 20
SAID_AT_MOST = 160
#: How far one row that cannot be found may be from the next that can, before the rest is left to the search of bytes.
GAP_AT_MOST = 100_000
ENTRY_BYTES = 200_000
STARTS_AT_MOST = 8

#: What is wrong with an entry, in a sentence, or None.
Judge = Callable[[object], str | None]


class FileFault(EngineError):
    """What is wrong with a notebook file."""

    sentences: ClassVar[Mapping[str, str]] = {
        "missing": "The notebook file {path} is gone.",
        "empty": "The notebook file {path} is empty, of 0 bytes.",
        "no-head": "The file {path} does not begin as a notebook does.",
        "cut-off": "The notebook file is cut off: {have} of its {said} bytes are there.",
        "log": "The file {path}, which holds the newest entries, is damaged.",
        "structure": "The notebook file is damaged inside ({why}).",
        "rows-lost": "Entries are missing from the notebook file: {count} of {said} cannot be found.",
        "row-changed": "Row {row} of the notebook file is not what was written there: its mark does not fit.",
        "row-broken": "Row {row} of the notebook file is no entry: {why}",
        "older": "The notebook file lacks {count} entries that {source} holds.",
    }


@dataclass(slots=True)
class Examined:
    """What is wrong with a file; the last step of the migrations that it had; the texts of its sound entries by id, in
    the order of the file; the rows that hold something and cannot be proved, each as its id and its text; and what is
    proved elsewhere and is not in the file."""

    database_id: str = ""
    step: str = ""
    faults: list[FileFault] = field(default_factory=list)
    sound: dict[str, str] = field(default_factory=dict)
    doubtful: list[tuple[str, str]] = field(default_factory=list)
    lacking: dict[str, str] = field(default_factory=dict)

    def lack(self, held: Mapping[str, str], source: Path) -> None:
        """Entries that another file proves: what this one has not of them is a fault."""
        lost = {key: text for key, text in held.items() if key not in self.sound}
        if lost:
            self.fault("older", count=len(lost), source=source)
            self.lacking.update(lost)

    def fault(self, key: str, **facts: Any) -> None:
        if len(self.faults) < FAULTS_AT_MOST:
            self.faults.append(FileFault(key, **facts))


@dataclass(frozen=True, slots=True)
class FoundRow:
    """A row as it was found: any column may hold anything."""

    row: Any
    id: Any
    device: Any
    seq: Any
    text: Any
    mark: Any
    digest: Any
    total: Any


def examine(path: Path, judge: Judge) -> Examined:
    """Read a notebook file through. Raises StoreError for a file that is none, or a newer Scantling's."""
    found = Examined()
    if not _looks_whole(path, found):
        return found
    try:
        with closing(connect_to_read(path)) as connection:
            connection.text_factory = lambda data: data.decode("utf-8", "surrogateescape")
            _examine_structure(connection, path, found)
            _examine_rows(connection, found, judge)
    except sqlite3.Error as error:
        found.fault("structure", why=error)
    return found


def salvage(path: Path, found: Examined, judge: Judge) -> None:
    """Search the bytes of a damaged file, and of the log beside it, for entries that no query reaches."""
    for part in (path, log_of(path)):
        found.sound = {**search(part, judge), **found.sound}


def search(path: Path, judge: Judge) -> dict[str, str]:
    """The texts of entries that the bytes of a file prove, by id."""
    texts: dict[str, str] = {}
    for text in _proved_texts(path.read_bytes() if path.is_file() else b""):
        entry = _parsed(text)
        if isinstance(entry, dict) and judge(entry) is None:
            texts.setdefault(entry["id"], text)
    return texts


def _looks_whole(path: Path, found: Examined) -> bool:
    """Whether there is anything for SQLite to read."""
    try:
        size = path.stat().st_size
        with path.open("rb") as file:
            head = file.read(HEAD_BYTES)
    except FileNotFoundError:
        found.fault("missing", path=path)
        return False
    if not size:
        found.fault("empty", path=path)
        return False
    if not head.startswith(HEAD[: len(head)]):
        found.fault("no-head", path=path)
        return False
    if not _is_log(log_of(path)):
        found.fault("log", path=log_of(path))
    said = _size_said(head)
    if size < max(said, HEAD_BYTES):
        found.fault("cut-off", have=size, said=said or "")
    return True


def _is_log(log: Path) -> bool:
    """Whether a log begins as one (SQLite's file format, section 4.1); one that was hardly begun holds nothing."""
    if not log.is_file():
        return True
    with log.open("rb") as file:
        head = file.read(LOG_HEAD_BYTES)
    return len(head) < LOG_HEAD_BYTES or head.startswith(LOG_HEADS)


def _size_said(head: bytes) -> int:
    """Bytes that the file should have, by its head (SQLite's file format, section 1.3); 0 where it does not say."""
    page = int.from_bytes(head[16:18], "big")
    return int.from_bytes(head[28:32], "big") * (65_536 if page == 1 else page)


def _examine_structure(connection: sqlite3.Connection, path: Path, found: Examined) -> None:
    tables = {row[0] for row in connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'")}
    if tables and not tables & {"journal", "migration", "identity"}:
        raise StoreError("not-a-store", path=path)
    if "migration" in tables:
        done = {row[0] for row in connection.execute("SELECT name FROM migration")}
        unknown = sorted(map(str, done - MIGRATIONS.keys()))
        found.step = max((name for name in MIGRATIONS if name in done), default="")
        if unknown and all(name > max(MIGRATIONS) and re.fullmatch(r"\d{3} [a-z -]+", name) for name in unknown):
            raise StoreError("newer-store", names=", ".join(unknown))
        for name in unknown:
            found.fault("structure", why=f"a step called {name}")
    for (said,) in connection.execute(f"PRAGMA integrity_check({FAULTS_AT_MOST})"):
        if said != "ok":
            found.fault("structure", why=" ".join(str(said).split())[:SAID_AT_MOST])


def _examine_rows(connection: sqlite3.Connection, found: Examined, judge: Judge) -> None:
    columns = {row[1] for row in connection.execute("PRAGMA table_info(journal)")}
    if not columns:
        if found.faults or connection.execute("SELECT count(*) FROM sqlite_master").fetchone()[0]:
            found.fault("structure", why="there is no journal in it")
        return
    names = connection.execute("SELECT database_id FROM identity").fetchall()
    found.database_id = str(names[0][0]) if len(names) == 1 else ""
    said = connection.execute("SELECT max(seq) FROM sqlite_sequence WHERE name = 'journal'").fetchone()[0] or 0
    chain = _Chain(found.database_id, "digest" in columns)
    for row in _read_rows(connection, "digest" in columns, said):
        _examine_row(row, chain, found, judge)
    lost = max(said if isinstance(said, int) else 0, chain.last) - chain.count
    if lost:
        found.fault("rows-lost", count=lost, said=chain.count + lost)


class _Chain:
    """The marks as they follow each other."""

    def __init__(self, start: str, digested: bool) -> None:
        self.mark, self.total, self.digested = start, NOTHING, digested
        self.last = self.count = 0

    def proves(self, row: FoundRow) -> tuple[bool, bool]:
        """Whether the row's text is what was written, and whether all that goes with it fits too."""
        text = row.text
        linked = next_mark(self.mark, text) == row.mark
        digest = digest_of(text)
        proved = digest == row.digest if self.digested else linked
        if proved:
            self.total = sum_of((self.total, digest))
        fits = linked and (not self.digested or (proved and row.total == self.total))
        self.pass_by(row)
        if self.digested and isinstance(row.total, str) and re.fullmatch("[0-9a-f]{32}", row.total):
            self.total = row.total  # the row after a spoilt one is judged by itself
        return proved, fits

    def pass_by(self, row: FoundRow) -> None:
        self.mark = row.mark if isinstance(row.mark, str) and row.mark.isascii() else ""
        self.last, self.count = row.row, self.count + 1


def _examine_row(row: FoundRow, chain: _Chain, found: Examined, judge: Judge) -> None:
    if not isinstance(row.text, str) or (not row.text.isascii() and _torn(row.text)):
        chain.pass_by(row)
        found.fault("row-changed", row=row.row)
        found.doubtful.append((str(row.id), str(row.text)))
        return
    proved, fits = chain.proves(row)
    entry = _parsed(row.text)
    why = judge(entry) if isinstance(entry, dict) else "it cannot be read."
    if proved and why is None:
        named = (entry["id"], entry["device"], entry["seq"]) == (row.id, row.device, row.seq)
        found.sound.setdefault(entry["id"], row.text)
        if not (fits and named):
            found.fault("row-changed", row=row.row)
    else:
        found.doubtful.append((str(row.id), row.text))
        key = "row-broken" if proved else "row-changed"
        found.fault(key, row=row.row, why=why)


def _read_rows(connection: sqlite3.Connection, digested: bool, said: object) -> Iterator[FoundRow]:
    """Every row that can be reached: all in one query, and where that breaks off one by one."""
    more = "digest, total" if digested else "NULL, NULL"
    columns = f'"row", id, device, seq, entry, mark, {more}'
    last = 0
    try:
        for row in connection.execute(f'SELECT {columns} FROM journal ORDER BY "row"'):
            last = row[0]
            yield FoundRow(*row)
    except sqlite3.Error:
        end = said if isinstance(said, int) and said < last + GAP_AT_MOST else last + ENTRY_BYTES // 100
        for number in range(last + 1, end + 1):
            try:
                row = connection.execute(f'SELECT {columns} FROM journal WHERE "row" = ?', (number,)).fetchone()
            except sqlite3.Error:
                continue
            if row:
                yield FoundRow(*row)


def _parsed(text: str) -> Any:
    try:
        return json.loads(text)
    except (ValueError, RecursionError):
        return None


def _torn(text: str) -> bool:
    return re.search("[\ud800-\udfff]", text) is not None


#: The end of an entry's text, and the digest, total and mark that lie behind it in a row.
_ROW_END = re.compile(rb"\}([0-9a-f]{32})[0-9a-f]{32}[0-9a-f]{64}")
_ROW_START = b'{"body":'


def _proved_texts(data: bytes) -> Iterator[str]:
    """The texts of entries in raw bytes, each proved by the digest that follows it."""
    for end in _ROW_END.finditer(data):
        start, floor = end.start() + 1, max(0, end.start() - ENTRY_BYTES)
        for _ in range(STARTS_AT_MOST):
            start = data.rfind(_ROW_START, floor, start)
            if start < 0:
                break
            text = data[start : end.start() + 1].decode("utf-8", "replace")
            if digest_of(text) == end[1].decode():
                yield text
                break
