"""Files that nobody but their owner may read: written whole, and refused when others could have read them."""

from __future__ import annotations

import os
import stat
from pathlib import Path

from scantling.lan.refusals import LanError

OWNER_ONLY = 0o600


def write_private(path: Path, data: bytes) -> None:
    """Write beside and move into place: a half-written key would lock every phone out. Raises LanError."""
    beside = path.with_name(f".{path.name}.{os.getpid()}")
    try:
        path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        beside.unlink(missing_ok=True)
        # Made with its mode, not changed to it: in between, another could open it.
        with os.fdopen(os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_EXCL, OWNER_ONLY), "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        beside.replace(path)
    except OSError as error:
        raise LanError("folder", path=path.parent, why=error.strerror) from error


def read_private(path: Path) -> bytes:
    """The bytes of a file that only its owner may read. Raises LanError otherwise, FileNotFoundError without one."""
    with path.open("rb") as file:
        mode = os.fstat(file.fileno()).st_mode
        # Windows keeps no such bits; there the folder of the user is closed to others.
        if os.name == "posix" and stat.S_IMODE(mode) & 0o077:
            raise LanError("key-open", path=path)
        return file.read()
