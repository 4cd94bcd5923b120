"""A notebook that can be read and not written: a disk without a byte free, a folder or file that is read-only.

SQLite wants to make a small file beside even to read. Where it may not, the file is opened as one that nobody changes;
where changes lie beside it that are not yet in it, both are read from a copy elsewhere.
"""

from __future__ import annotations

import shutil
import sqlite3
import tempfile
from contextlib import suppress
from pathlib import Path
from urllib.parse import quote

import sqlalchemy as sa

from scantling.store.refusals import StoreError

WAL = "-wal"
PLACES = (None, "/dev/shm")


def log_of(path: Path) -> Path:
    """Where SQLite keeps what has not been brought into the file yet."""
    return path.with_name(path.name + WAL)


def address(path: Path, **options: object) -> str:
    """SQLite's own way to name a file, with how it is to be opened."""
    return f"file:{quote(str(path.absolute()))}?{'&'.join(f'{name}={value}' for name, value in options.items())}"


def connect_to_read(path: Path) -> sqlite3.Connection:
    """A connection that reads, with what has not been brought from the log into the file. Raises sqlite3.Error, or
    StoreError where the changes beside the file cannot be read."""
    with suppress(sqlite3.OperationalError):
        return _tried(address(path, mode="ro"))
    log = log_of(path)
    if not (log.exists() and log.stat().st_size):
        return _tried(address(path, immutable=1))
    for place in PLACES:
        with suppress(OSError):
            return _tried(address(_copied(path, log, place), mode="ro"))
    raise StoreError("no-room-to-read", path=log)


def _tried(uri: str) -> sqlite3.Connection:
    connection = sqlite3.connect(uri, uri=True, check_same_thread=False, isolation_level=None)
    try:
        connection.execute("SELECT count(*) FROM sqlite_master").fetchone()
    except sqlite3.Error:
        connection.close()
        raise
    return connection


def _copied(path: Path, log: Path, place: str | None) -> Path:
    folder = Path(tempfile.mkdtemp(prefix="scantling-", dir=place))
    try:
        for one in (path, log):
            shutil.copy(one, folder)
    except OSError:
        shutil.rmtree(folder, ignore_errors=True)
        raise
    return folder / path.name


def create_engine(path: Path) -> sa.Engine:
    """The engine of a notebook that can only be read."""
    return sa.create_engine("sqlite://", creator=lambda: connect_to_read(path), poolclass=sa.pool.QueuePool)
