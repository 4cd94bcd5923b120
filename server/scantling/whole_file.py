"""A file that is there whole or not at all: written beside its place, on the disk, and then moved into it.

Half a backup that stands under the name of a whole one is found out on the day on which it is needed.
"""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterator, Mapping
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import IO, ClassVar

from scantling.engine.errors import EngineError


class FileError(EngineError):
    sentences: ClassVar[Mapping[str, str]] = {
        "not-written": "The file {path} could not be written ({why}), and nothing of it was left there: "
        "choose another place.",
    }


@contextmanager
def whole_file(path: Path) -> Iterator[IO[bytes]]:
    """A file to write to. Raises FileError when the disk will not have it; what was there before then stays."""
    try:
        if path.exists() and not path.is_file():
            with path.open("wb") as device:  # such as /dev/stdout, which nothing can be moved onto
                yield device
            return
        with _beside(path) as beside:
            yield beside
    except OSError as error:
        raise FileError("not-written", path=path, why=error.strerror or error) from error


@contextmanager
def _beside(path: Path) -> Iterator[IO[bytes]]:
    with tempfile.NamedTemporaryFile(dir=path.parent, prefix=f".{path.name}.", delete=False) as beside:
        try:
            yield beside
            beside.flush()
            os.fsync(beside.fileno())
            beside.close()
            os.replace(beside.name, path)
        except BaseException:
            with suppress(OSError):
                os.unlink(beside.name)
            raise
    flush_folder(path.parent)


def flush_folder(folder: Path) -> None:
    """Have the folder's own list on the disk, where the system has such a thing."""
    with suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
