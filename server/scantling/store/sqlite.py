"""What is SQLite's own: the file, the pragmas, the lock that a writer takes, the triggers that keep the journal.

Writes run with `synchronous=FULL`: an entry that was acknowledged survives a power cut, at a few milliseconds each.
"""

import os
import sqlite3
from pathlib import Path
from typing import Any

import sqlalchemy as sa

from scantling.store.readonly import address
from scantling.store.refusals import StoreError

FILE_NAME = "notebook.sqlite3"
#: How every file of SQLite begins.
HEAD = b"SQLite format 3\0"
BUSY_SECONDS = 10


def create_engine(path: Path) -> sa.Engine:
    """The engine of a notebook's file, which is made here if it is not there. Raises OSError.

    Never made later: a file that was deleted under a running server would come back empty and take the next reading.
    """
    if not path.exists():
        os.close(os.open(path, os.O_CREAT | os.O_WRONLY, 0o600))
    path.open("r+b").close()  # SQLite opens what it may not write as if it might, and refuses each writing

    def connect() -> sqlite3.Connection:
        return sqlite3.connect(address(path, mode="rw"), uri=True, timeout=BUSY_SECONDS, check_same_thread=False)

    engine = sa.create_engine("sqlite://", creator=connect, poolclass=sa.pool.QueuePool)
    sa.event.listen(engine, "connect", _prepare_connection)
    sa.event.listen(engine, "begin", _begin)
    sa.event.listen(engine, "connect", lambda _, record: record.info.update(file=(path, _inode(path))))
    return engine


def _inode(path: Path) -> int:
    """Which file this is, under whatever name; 0 where there is none."""
    try:
        return path.stat().st_ino
    except OSError:
        return 0


def _prepare_connection(connection: Any, _record: object) -> None:
    connection.isolation_level = None  # or the driver commits by itself before a CREATE, and a migration is not whole
    for pragma in ("journal_mode = WAL", "synchronous = FULL", "recursive_triggers = ON", "foreign_keys = ON"):
        connection.execute(f"PRAGMA {pragma}")


def _begin(connection: sa.Connection) -> None:
    """A writer takes the lock at once: taken later, two writers that have both read would refuse each other."""
    writes = connection.get_execution_options().get("writes", False)
    if writes:
        path, inode = connection.info["file"]
        if _inode(path) != inode:
            # The file is written all the same, where nobody will find it again.
            raise StoreError("gone", path=path)
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")


def forbid_changes_by_number(connection: sa.Connection) -> None:
    """The triggers as they were while a number of a device was given once only."""
    _forbid(connection, "id = NEW.id OR (device = NEW.device AND seq = NEW.seq) OR mark = NEW.mark")


def forbid_changes(connection: sa.Connection) -> None:
    _forbid(connection, "id = NEW.id OR mark = NEW.mark")


def allow_changes(connection: sa.Connection) -> None:
    """For a step of the migrations alone, within its transaction."""
    for name in ("update", "delete", "replace"):
        connection.exec_driver_sql(f"DROP TRIGGER IF EXISTS journal_no_{name}")


def _forbid(connection: sa.Connection, same: str) -> None:
    """No row changes, none goes. INSERT OR REPLACE deletes without the delete trigger unless the connection has
    recursive_triggers on, and a stranger's has not: hence the third, which fires before the conflict is resolved."""
    refuse = "BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END"
    for verb in ("UPDATE", "DELETE"):
        connection.exec_driver_sql(f"CREATE TRIGGER journal_no_{verb.lower()} BEFORE {verb} ON journal {refuse}")
    connection.exec_driver_sql(
        "CREATE TRIGGER journal_no_replace BEFORE INSERT ON journal "
        f'WHEN EXISTS (SELECT 1 FROM journal WHERE {same} OR "row" = NEW."row") {refuse}'
    )
