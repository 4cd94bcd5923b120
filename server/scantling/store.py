"""The store: the journal on disk, and the only module that speaks SQL.

It knows rows: one entry is one row, written once. Triggers refuse to change or delete a row, also for a stranger's
connection, so no bug above this module can lose a reading. It knows nothing of what an entry means, and it has no
clock. Writes run with `synchronous=FULL`: an entry that was acknowledged survives a power cut, at a few milliseconds
each.

Statements are SQLAlchemy Core without dialect; what is SQLite's own (pragmas, triggers, the opening of a file) stands
apart at the end of the module, as the place where another database would differ.
"""

from __future__ import annotations

import hashlib
import json
import math
import secrets
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any, ClassVar

import sqlalchemy as sa

from scantling.engine.errors import EngineError

FILE_NAME = "notebook.sqlite3"
BUSY_SECONDS = 10
ROWS_AT_ONCE = 1000
SAFE_INTEGER = 2**53 - 1

EntryData = dict[str, Any]

catalog = sa.MetaData()
migration_table = sa.Table("migration", catalog, sa.Column("name", sa.Text, primary_key=True))
identity_table = sa.Table("identity", catalog, sa.Column("database_id", sa.Text, primary_key=True))
journal_table = sa.Table(
    "journal",
    catalog,
    sa.Column("row", sa.Integer, primary_key=True, autoincrement=True),
    sa.Column("id", sa.Text, nullable=False, unique=True),
    sa.Column("device", sa.Text, nullable=False),
    sa.Column("seq", sa.Integer, nullable=False),
    sa.Column("entry", sa.Text, nullable=False),
    sa.Column("mark", sa.Text, nullable=False, unique=True),
    sa.UniqueConstraint("device", "seq"),
    sqlite_autoincrement=True,  # a row number is never given twice, or a phone's cursor would step over an entry
)


class StoreError(EngineError):
    """The disk, or the journal's own law, said no."""

    sentences: ClassVar[Mapping[str, str]] = {
        "id-taken": "An entry with this id is kept already, with other content: entries never change, write a new one.",
        "seq-taken": "This device used number {seq} for another entry already: give it a new name and send again.",
        "not-carriable": "The entry holds a number that cannot travel between devices: write it as text.",
        "newer-store": "This notebook was written by a newer Scantling ({names}): update this one first.",
        "not-a-store": "The file {path} is not a Scantling notebook: move it away, or choose another folder.",
        "damaged": "The notebook file is damaged ({why}): restore an exported journal into another folder.",
        "no-folder": "The folder {path} cannot be used for the notebook: choose another.",
        "disk": "The notebook could not be written ({why}): nothing of this was kept, try again when that is mended.",
    }


def canonical_text(entry: Mapping[str, Any]) -> str:
    """The one spelling of an entry, so that "same id, same bytes" is a comparison of two texts.

    A phone writes 1936.0 as 1936 and rounds beyond 2**53: the first is made equal here, the second refused, or an entry
    that went to a phone and back would no longer be the same.
    """
    try:
        text = json.dumps(_plain(entry), sort_keys=True, separators=(",", ":"), ensure_ascii=False, allow_nan=False)
        text.encode()
    except (TypeError, ValueError) as error:
        raise StoreError("not-carriable") from error
    return text


def _plain(value: Any) -> Any:
    """The same JSON with every whole number as an integer. Depth is bounded at the door, where JSON is read."""
    if isinstance(value, Mapping):
        return {key: _plain(inner) for key, inner in value.items()}
    if isinstance(value, list):
        return [_plain(inner) for inner in value]
    if isinstance(value, float) and math.isfinite(value) and value.is_integer():
        value = int(value)
    if isinstance(value, int) and abs(value) > SAFE_INTEGER:
        raise ValueError(value)
    return value


@dataclass(frozen=True, slots=True)
class KeptRow:
    """One row as read: its number, and the entry's canonical text."""

    row: int
    text: str

    @property
    def entry(self) -> EntryData:
        entry: EntryData = json.loads(self.text)
        return entry


class Ledger:
    """The journal within one transaction.

    Each row carries a mark: a digest of all rows up to it. Who shows the mark of where they stopped reading has read
    this very journal so far, and not one that was put back from an old copy and has gone on differently since.
    """

    def __init__(self, connection: sa.Connection, start: str) -> None:
        self._connection = connection
        self._start = start

    def append(self, entry: EntryData) -> bool:
        """Keep an entry; False if it was kept already, the same in every byte. Raises StoreError and keeps nothing."""
        text = canonical_text(entry)
        kept = self._connection.execute(
            sa.select(journal_table.c.entry).where(journal_table.c.id == entry["id"])
        ).scalar_one_or_none()
        if kept is not None:
            if kept != text:
                raise StoreError("id-taken", field="id")
            return False
        if self._number_used(entry["device"], entry["seq"]):
            raise StoreError("seq-taken", field="seq", seq=entry["seq"])
        mark = hashlib.sha256(f"{self.mark_at(self.last_row())} {text}".encode()).hexdigest()
        values = {"id": entry["id"], "device": entry["device"], "seq": entry["seq"], "entry": text, "mark": mark}
        self._connection.execute(sa.insert(journal_table).values(values))
        return True

    def _number_used(self, device: str, seq: int) -> bool:
        wanted = sa.and_(journal_table.c.device == device, journal_table.c.seq == seq)
        return self._connection.execute(sa.select(journal_table.c.row).where(wanted)).first() is not None

    def read_since(self, row: int, at_most: int) -> list[KeptRow]:
        """The entries after a row number, oldest first."""
        columns = sa.select(journal_table.c.row, journal_table.c.entry)
        wanted = columns.where(journal_table.c.row > row).order_by(journal_table.c.row).limit(at_most)
        return [KeptRow(number, text) for number, text in self._connection.execute(wanted)]

    def read_all(self) -> Iterator[KeptRow]:
        """Every entry, oldest first, a thousand rows in memory at a time."""
        row = 0
        while rows := self.read_since(row, ROWS_AT_ONCE):
            yield from rows
            row = rows[-1].row

    def read_entry(self, entry_id: str) -> EntryData | None:
        wanted = sa.select(journal_table.c.row, journal_table.c.entry).where(journal_table.c.id == entry_id)
        found = self._connection.execute(wanted).first()
        return KeptRow(*found).entry if found else None

    def last_row(self) -> int:
        return self._connection.execute(sa.select(sa.func.max(journal_table.c.row))).scalar_one() or 0

    def mark_at(self, row: int) -> str:
        """The mark of a row; of row 0, before the first, the name of the database."""
        wanted = sa.select(journal_table.c.mark).where(journal_table.c.row == row)
        return self._connection.execute(wanted).scalar_one() if row else self._start

    def row_of(self, mark: str) -> int | None:
        """The row that has this mark, or None: then the mark is of another journal."""
        wanted = sa.select(journal_table.c.row).where(journal_table.c.mark == mark)
        return 0 if mark == self._start else self._connection.execute(wanted).scalar_one_or_none()

    def counts(self) -> dict[str, int]:
        """How many entries of each device are kept: what lets two sides find out that one was restored or copied."""
        tally = sa.select(journal_table.c.device, sa.func.count()).group_by(journal_table.c.device)
        rows = self._connection.execute(tally.order_by(journal_table.c.device))
        return {row[0]: row[1] for row in rows}


class Store:
    """An open notebook folder. `reading` and `writing` give a Ledger; a writing is one transaction, all or nothing."""

    def __init__(self, engine: sa.Engine) -> None:
        self._engine = engine
        _migrate(engine)
        with engine.connect() as connection:
            self.database_id: str = connection.execute(sa.select(identity_table.c.database_id)).scalar_one()

    @contextmanager
    def reading(self) -> Iterator[Ledger]:
        """One snapshot: what is read within it belongs together."""
        with _refusals(), self._engine.connect() as connection:
            yield Ledger(connection, self.database_id)

    @contextmanager
    def writing(self) -> Iterator[Ledger]:
        """All or nothing."""
        with _refusals(), self._engine.execution_options(writes=True).begin() as connection:
            yield Ledger(connection, self.database_id)

    def close(self) -> None:
        self._engine.dispose()


@contextmanager
def _refusals() -> Iterator[None]:
    """What the disk does to us, as refusals; a broken constraint stays what it is, a fault of ours."""
    try:
        yield
    except sa.exc.IntegrityError:
        raise
    except sa.exc.OperationalError as error:
        raise StoreError("disk", why=str(error.orig)) from error
    except sa.exc.DatabaseError as error:
        raise StoreError("damaged", why=str(error.orig)) from error


def _migrate(engine: sa.Engine) -> None:
    """Run the steps that this file has not had, all in one transaction with the record of each."""
    with engine.execution_options(writes=True).begin() as connection:
        migration_table.create(connection, checkfirst=True)
        done = set(connection.execute(sa.select(migration_table.c.name)).scalars())
        unknown = done - MIGRATIONS.keys()
        if unknown:
            raise StoreError("newer-store", names=", ".join(sorted(unknown)))
        for name, step in MIGRATIONS.items():
            if name not in done:
                step(connection)
                connection.execute(sa.insert(migration_table).values(name=name))


def create_journal(connection: sa.Connection) -> None:
    journal_table.create(connection)


def name_the_database(connection: sa.Connection) -> None:
    """A name that no other database has: the mark before the first row."""
    identity_table.create(connection)
    connection.execute(sa.insert(identity_table).values(database_id=secrets.token_hex(16)))


# ---- SQLite's own ----------------------------------------------------------------------------------------------------


def forbid_changes(connection: sa.Connection) -> None:
    """No row changes, none goes. INSERT OR REPLACE deletes without the delete trigger unless the connection has
    recursive_triggers on, and a stranger's has not: hence the third, which fires before the conflict is resolved."""
    for verb in ("UPDATE", "DELETE"):
        connection.exec_driver_sql(
            f"CREATE TRIGGER journal_no_{verb.lower()} BEFORE {verb} ON journal "
            "BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END"
        )
    connection.exec_driver_sql(
        "CREATE TRIGGER journal_no_replace BEFORE INSERT ON journal "
        "WHEN EXISTS (SELECT 1 FROM journal WHERE id = NEW.id "
        'OR (device = NEW.device AND seq = NEW.seq) OR mark = NEW.mark OR "row" = NEW."row") '
        "BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END"
    )


MIGRATIONS: Mapping[str, Callable[[sa.Connection], None]] = {
    "001 journal": create_journal,
    "002 database id": name_the_database,
    "003 append-only": forbid_changes,
}


def open_store(folder: Path) -> Store:
    """The store of a notebook folder, made if it is not there. Raises StoreError."""
    path = folder / FILE_NAME
    try:
        folder.mkdir(parents=True, exist_ok=True, mode=0o700)
    except OSError as error:
        raise StoreError("no-folder", path=folder) from error
    engine = sa.create_engine(f"sqlite:///{path}", connect_args={"timeout": BUSY_SECONDS})
    sa.event.listen(engine, "connect", _prepare_connection)
    sa.event.listen(engine, "begin", _begin)
    try:
        return Store(engine)
    except sa.exc.OperationalError as error:
        engine.dispose()
        raise StoreError("no-folder", path=folder) from error
    except sa.exc.DatabaseError as error:
        engine.dispose()
        raise StoreError("not-a-store", path=path) from error
    except StoreError:
        engine.dispose()
        raise


def _prepare_connection(connection: Any, _record: object) -> None:
    connection.isolation_level = None  # or the driver commits by itself before a CREATE, and a migration is not whole
    for pragma in ("journal_mode = WAL", "synchronous = FULL", "recursive_triggers = ON", "foreign_keys = ON"):
        connection.execute(f"PRAGMA {pragma}")


def _begin(connection: sa.Connection) -> None:
    """A writer takes the lock at once: taken later, two writers that have both read would refuse each other."""
    writes = connection.get_execution_options().get("writes", False)
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")
