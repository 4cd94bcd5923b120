"""What the laptop does for its notebook by itself: one server to a folder, the file read through and mended at start,
and a dated copy of it each day.

It knows folders, files and days; what is in an entry it asks nobody but the envelope. Everything that it finds or does
is told in a sentence.
"""

from __future__ import annotations

import json
import logging
import os
import threading
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path
from typing import IO, ClassVar

from scantling.engine.errors import EngineError
from scantling.engine.journal import admit_entry
from scantling.store import FILE_NAME, StoreError, open_store
from scantling.store.copies import list_copies, make_copy
from scantling.store.examine import Examined
from scantling.store.mend import DOUBTFUL, Mended, look_through, mend

log = logging.getLogger(__name__)

LOCK = "serving.lock"
COPY_EVERY_SECONDS = 60 * 60


class Told(EngineError):
    """Sentences about what was found and done."""

    sentences: ClassVar[Mapping[str, str]] = {
        "held": "Another Scantling serves the notebook in {folder} already: use that one, stop it, or choose another "
        "folder with --data.",
        "wrong": "{what} Stop Scantling where it runs, then run scantling check --mend.",
        "mended": "The notebook was made anew of all that its copies and the file itself prove: {entries} entries, "
        "{copied} of them from copies alone. The old file is in {aside}.",
        "begun": "Nothing of the file could be read, and there is no copy: a new notebook is begun. The old file is in "
        "{aside}. Bring a backup in with scantling restore.",
        "doubtful": "{count} rows could not be proved, and are not in the notebook. They are in {file}: look at them, "
        "and bring in those that are right with scantling restore.",
        "devices": "What only a phone holds comes home with its next exchange.",
        "blob": "The attachment in {path} is not what its name says: delete that file, and a device that has it "
        "brings it again.",
        "brought-back": "{count} entries are in the notebook again.",
        "only-read": "The notebook can be read and exported, and not written ({why}). Mend that, and start Scantling "
        "again.",
    }


@contextmanager
def kept(folder: Path, tell: Callable[[str], None]) -> Iterator[None]:
    """Look after a notebook while it is served. Raises Told or StoreError when it cannot be served."""
    with held(folder):
        try:
            found = put_right(folder)
        except OSError as error:
            raise StoreError("no-folder", path=folder, why=error.strerror) from error
        for sentence in found:
            tell(sentence)
        with _copied_daily(folder, tell):
            yield


@contextmanager
def held(folder: Path) -> Iterator[None]:
    """Hold a folder, so that nobody mends or serves it besides. A folder that cannot be written holds nothing up."""
    try:
        folder.mkdir(parents=True, exist_ok=True, mode=0o700)
        lock = (folder / LOCK).open("a+b")
    except OSError:
        yield
        return
    with lock:
        if not _locked(lock):
            raise Told("held", folder=folder)
        yield


def is_held(folder: Path) -> bool:
    """Whether somebody holds a folder now. Where its lock cannot be looked at, nobody is known to."""
    try:
        with (folder / LOCK).open("r+b") as lock:
            return not _locked(lock)
    except OSError:
        return False


def _locked(lock: IO[bytes]) -> bool:
    """Whether the lock is ours now; the system gives it back when this process ends, however that is."""
    try:
        if os.name == "nt":
            import msvcrt

            msvcrt.locking(lock.fileno(), msvcrt.LK_NBLCK, 1)  # type: ignore[attr-defined,unused-ignore]
        else:
            import fcntl

            fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        return False
    return True


def judge(data: object) -> str | None:
    """Whether a row is an entry at all. What is in its body is no damage, and stays even where nobody can read it."""
    try:
        admit_entry(data)
    except EngineError as error:
        return error.message
    return None


def look(folder: Path) -> Examined:
    """What is wrong with the notebook in a folder. Raises StoreError for a file that is none."""
    return look_through(folder, judge)


def put_right(folder: Path) -> list[str]:
    """Mend what is wrong with a notebook; what was wrong and what was done, in sentences. Raises StoreError."""
    if not (folder / FILE_NAME).exists() and not list_copies(folder):
        return []
    found = look(folder)
    if not found.faults:
        return []
    told = [fault.message for fault in found.faults]
    if all(fault.key == "older" for fault in found.faults):
        return [*told, _bring_back(folder, list(found.lacking.values()))]
    try:
        mended = mend(folder, judge, f"{datetime.now().astimezone():%Y-%m-%dT%H-%M-%S}")
    except StoreError as error:
        raise Told("wrong", what=f"{told[0]} {error.message}") from error
    return [*told, *_tell_mended(mended)]


def _bring_back(folder: Path, texts: list[str]) -> str:
    store = open_store(folder)
    try:
        with store.writing() as ledger:
            count = sum(kept.new for kept in ledger.append_all([json.loads(text) for text in texts]))
    finally:
        store.close()
    return Told("brought-back", count=count).message


def _tell_mended(mended: Mended) -> Iterator[str]:
    if mended.entries:
        yield Told("mended", entries=mended.entries, copied=mended.from_copies, aside=mended.aside).message
    else:
        yield Told("begun", aside=mended.aside).message
    if mended.doubtful:
        yield Told("doubtful", count=mended.doubtful, file=mended.aside / DOUBTFUL).message
    yield Told("devices").message


@contextmanager
def _copied_daily(folder: Path, tell: Callable[[str], None]) -> Iterator[None]:
    """A copy at start, at the end, and each hour in which something came; the day's last is the one that stays."""
    over = threading.Event()

    def copy_each_hour() -> None:
        while not over.wait(COPY_EVERY_SECONDS):
            copy_now(folder, log.warning)

    copy_now(folder, tell)
    copier = threading.Thread(target=copy_each_hour, daemon=True)
    copier.start()
    try:
        yield
    finally:
        over.set()
        copier.join()
        copy_now(folder, tell)


def copy_now(folder: Path, tell: Callable[[str], None]) -> None:
    """Today's copy, where there is something to copy. A copy that cannot be made stops nobody's work."""
    if (folder / FILE_NAME).exists():
        try:
            make_copy(folder, f"{datetime.now().astimezone():%Y-%m-%d}", judge)
        except StoreError as error:
            tell(error.message)
