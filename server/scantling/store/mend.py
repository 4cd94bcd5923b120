"""A damaged notebook: moved aside whole, and made anew of all that its dated copies and what is readable of it prove.

Nothing is thrown away. The new file is built and read back beside the old one before either moves, so that a disk which
fills up on the way leaves things as they were.
"""

from __future__ import annotations

import json
import os
import shutil
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from scantling.store.copies import list_copies
from scantling.store.database import open_store
from scantling.store.examine import Examined, Judge, examine, salvage, search
from scantling.store.readonly import WAL, log_of
from scantling.store.refusals import StoreError
from scantling.store.sqlite import FILE_NAME

ASIDE = "damaged"
BUILDING = ".rebuilding"
DOUBTFUL = "doubtful.ndjson"


@dataclass(frozen=True, slots=True)
class Mended:
    """What came of it: entries that the new file holds, how many of them only a copy held, how many texts could not be
    proved, and the folder in which the old file and those texts lie."""

    entries: int
    from_copies: int
    doubtful: int
    aside: Path


def look_through(folder: Path, judge: Judge) -> Examined:
    """A notebook's file, read through and held against its log and newest copy. Raises StoreError for no notebook."""
    path = folder / FILE_NAME
    found = examine(path, judge)
    if not found.faults:
        # What lies in the log and SQLite does not read: a bit of it flipped, or a write was cut off on the way.
        found.lack(search(log_of(path), judge), log_of(path))
        for copy in list_copies(folder)[:1]:
            kept = examine(copy, judge)
            if kept.database_id == found.database_id:
                found.lack(kept.sound, copy)
    if [fault.key for fault in found.faults] == ["no-head"] and not list_copies(folder):
        salvage(path, found, judge)
        if not found.sound:
            raise StoreError("not-a-store", path=path)  # somebody's own file, which is no business of ours
    return found


def mend(folder: Path, judge: Judge, called: str) -> Mended:
    """Put a sound notebook in the place of a damaged one; `called` names the folder for the old. Raises StoreError."""
    try:
        return _mend(folder, judge, called)
    except OSError as error:
        raise StoreError("not-mended", why=error.strerror or error) from error


def _mend(folder: Path, judge: Judge, called: str) -> Mended:
    own = _read_own(folder / FILE_NAME, judge)
    copies = [examine(copy, judge) for copy in list_copies(folder)]
    entries: dict[str, str] = {}
    for source in (*copies, own):
        entries = {**entries, **{key: text for key, text in source.sound.items() if key not in entries}}
    doubtful = list(dict.fromkeys(text for key, text in own.doubtful if key not in entries))
    building = folder / BUILDING
    shutil.rmtree(building, ignore_errors=True)
    _build(building, entries, judge)
    aside = _move_aside(folder, called, doubtful)
    os.replace(building / FILE_NAME, folder / FILE_NAME)
    shutil.rmtree(building, ignore_errors=True)
    return Mended(len(entries), len(entries.keys() - own.sound.keys()), len(doubtful), aside)


def _read_own(path: Path, judge: Judge) -> Examined:
    """All that the file proves: with the log beside it, without it, and where no query reaches. An older file put back
    beside a newer log is sound by itself and noise together with it."""
    own = Examined()
    if not path.exists():
        return own
    own = examine(path, judge)
    log = log_of(path)
    if log.exists() and path.stat().st_size:
        alone = path.with_name(BUILDING + path.name)
        try:
            shutil.copy(path, alone)
            without = examine(alone, judge)
        finally:
            for left in (alone, alone.with_name(alone.name + WAL), alone.with_name(alone.name + "-shm")):
                with suppress(OSError):
                    left.unlink(missing_ok=True)
        own.sound = {**without.sound, **own.sound}
        own.doubtful += without.doubtful
    salvage(path, own, judge)
    return own


def _build(folder: Path, entries: dict[str, str], judge: Judge) -> None:
    store = open_store(folder)
    try:
        with store.writing() as ledger:
            ledger.append_all([json.loads(text) for text in entries.values()])
    finally:
        store.close()
    built = examine(folder / FILE_NAME, judge)
    if built.faults or built.sound != entries:
        raise StoreError("not-mended", why="the new file does not read back as it was written")


def _move_aside(folder: Path, called: str, doubtful: list[str]) -> Path:
    aside = folder / ASIDE / called
    aside.mkdir(parents=True, mode=0o700)
    if doubtful:
        (aside / DOUBTFUL).write_bytes("".join(f"{text}\n" for text in doubtful).encode("utf-8", "surrogateescape"))
    for name in (FILE_NAME, FILE_NAME + WAL, f"{FILE_NAME}-shm"):
        with suppress(FileNotFoundError):
            os.replace(folder / name, aside / name)
    return aside
