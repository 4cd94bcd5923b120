"""Dated copies of a notebook, beside it: made by SQLite's own backup, read back before they count, and few."""

from __future__ import annotations

import os
import re
import sqlite3
from contextlib import closing, suppress
from pathlib import Path

from scantling.store.examine import Judge, examine
from scantling.store.readonly import connect_to_read
from scantling.store.refusals import StoreError
from scantling.store.sqlite import FILE_NAME

FOLDER = "copies"
KEPT = 7
_NAME = re.compile(r"notebook-\d{4}-\d{2}-\d{2}\.sqlite3")


def list_copies(folder: Path) -> list[Path]:
    """The copies of a notebook's folder, newest first."""
    try:
        found = [path for path in (folder / FOLDER).iterdir() if _NAME.fullmatch(path.name)]
    except OSError:
        return []
    return sorted(found, reverse=True)


def make_copy(folder: Path, day: str, judge: Judge) -> Path | None:
    """Copy the notebook as it is now under this day's date; None where that day's copy holds all of it already.

    Raises StoreError when the copy cannot be made or does not read back as it should: no older one is given up then.
    """
    target = folder / FOLDER / f"notebook-{day}.sqlite3"
    beside = target.with_suffix(".new")
    try:
        with closing(connect_to_read(folder / FILE_NAME)) as source:
            if target.exists() and _count(source) == _count_in(target):
                return None
            target.parent.mkdir(exist_ok=True, mode=0o700)
            beside.unlink(missing_ok=True)
            _back_up(source, beside)
        faults = examine(beside, judge).faults
        if faults:
            raise StoreError("no-copy", why=faults[0].message)
        os.replace(beside, target)
    except (OSError, sqlite3.Error) as error:
        raise StoreError("no-copy", why=error) from error
    finally:
        with suppress(OSError):
            beside.unlink(missing_ok=True)
    for old in list_copies(folder)[KEPT:]:
        old.unlink(missing_ok=True)
    return target


def _back_up(source: sqlite3.Connection, target: Path) -> None:
    with closing(sqlite3.connect(target, isolation_level=None)) as copy:
        source.backup(copy)
        # One file, which needs none beside it to be read: a copy may lie on a stick or a read-only disk.
        copy.execute("PRAGMA journal_mode = DELETE")


def _count(connection: sqlite3.Connection) -> int:
    count: int = connection.execute("SELECT count(*) FROM journal").fetchone()[0]
    return count


def _count_in(path: Path) -> int:
    with suppress(sqlite3.Error), closing(connect_to_read(path)) as connection:
        return _count(connection)
    return -1
