"""Lines that could not be brought in, kept aside: what is damaged today may be mended by hand tomorrow."""

from __future__ import annotations

import hashlib
import os
import tempfile
from pathlib import Path
from typing import IO

from scantling.journal_file.lines import Line


class LeftOut:
    """A file beside the notebook, made when the first line is left out. Its name follows from what is in it, so that
    the same file brought in twice leaves one."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._digest = hashlib.sha256()
        self._file: IO[bytes] | None = None

    def keep(self, line: Line) -> None:
        if self._file is None:
            self._file = tempfile.NamedTemporaryFile(dir=self._folder, prefix=".left-out-", delete=False)  # noqa: SIM115  # closed by close(), with the last line in it
        written = line.raw + b"\n"
        self._digest.update(written)
        self._file.write(written)

    def close(self) -> Path | None:
        """The file, if there is one."""
        if self._file is None:
            return None
        self._file.close()
        kept = self._folder / f"left-out-{self._digest.hexdigest()[:8]}.ndjson"
        os.replace(self._file.name, kept)
        return kept
