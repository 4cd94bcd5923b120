"""What a notebook is kept on: its folder, the disk, the file itself with its copies, or a database.

Everything is looked at as it lies there. Nothing is made or brought up to date, but for one empty file that shows
whether the folder can be written, and goes again.
"""

from __future__ import annotations

import os
import shutil
import tempfile
from collections.abc import Iterator
from pathlib import Path

from scantling.doctor.finding import Finding, good, refused, wrong
from scantling.engine.errors import EngineError
from scantling.store import FILE_NAME, MIGRATIONS, Database, describe_database, open_store
from scantling.store.copies import list_copies
from scantling.store.examine import Examined
from scantling.upkeep import look

MB = 1_000_000
#: The fewest megabytes that should be free, and how many times a notebook's own size: its copy is made beside it.
LEAST_MB = 200
TIMES_ITS_SIZE = 3


def look_at_folder(folder: Path, served: bool) -> Iterator[Finding]:
    try:
        list(folder.iterdir())
    except FileNotFoundError:
        yield good("folder", "folder-none", path=folder)
        return
    except OSError as error:
        yield wrong("folder", "folder-closed", path=folder, what="read", why=error.strerror)
        return
    try:
        tempfile.TemporaryFile(dir=folder).close()
        yield good("folder", "folder-good", path=folder)
    except OSError as error:
        yield wrong("folder", "folder-closed", path=folder, what="written", why=error.strerror)
    if os.name == "posix" and folder.stat().st_mode & 0o077:
        yield good("folder", "folder-open", path=folder)
    yield good("folder", "served" if served else "not-served")


def look_at_disk(folder: Path) -> Iterator[Finding]:
    try:
        there = next(path for path in (folder, *folder.absolute().parents) if path.exists())
        free = shutil.disk_usage(there).free // MB
        path = folder / FILE_NAME
        wanted = max(LEAST_MB, TIMES_ITS_SIZE * (path.stat().st_size // MB if path.is_file() else 0))
    except OSError:
        return  # the folder's own finding says it
    if free < wanted:
        yield wrong("disk", "disk-full", free=free, path=there, wanted=wanted)
    else:
        yield good("disk", "disk-good", free=free)


def look_at_notebook(folder: Path) -> tuple[list[Finding], Examined | None]:
    """How the file is, and what is in it for others to look at."""
    try:
        if not (folder / FILE_NAME).exists() and not list_copies(folder):
            return [], None
        found = look(folder)
    except EngineError as error:
        return [refused("notebook", error)], None
    except OSError as error:
        return [wrong("notebook", "folder-closed", path=folder, what="read", why=error.strerror)], None
    if found.faults:
        return [wrong("notebook", "notebook-bad", why=fault.message) for fault in found.faults], found
    told = [good("notebook", "notebook-good", entries=len(found.sound), copies=len(list_copies(folder)))]
    if found.step and found.step != max(MIGRATIONS):
        told.append(good("notebook", "notebook-older", step=found.step))
    return told, found


def look_at_database(database: Database) -> tuple[list[Finding], list[str]]:
    """How it is, and the texts of its entries where they can be read without changing anything."""
    try:
        missing = describe_database(database)
        if missing is None:
            return [good("database", "database-new", household=database.household)], []
        if missing:
            return [good("database", "database-older", household=database.household, steps=", ".join(missing))], []
        return [good("database", "database-good", household=database.household)], _texts_of(database)
    except EngineError as error:
        return [refused("database", error)], []


def _texts_of(database: Database) -> list[str]:
    store = open_store(database)
    try:
        with store.reading() as ledger:
            return [row.text for row in ledger.read_all()]
    finally:
        store.close()
