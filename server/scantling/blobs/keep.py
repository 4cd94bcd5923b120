"""The blobs beside a notebook, each a file under its digest; those that are coming lie apart until they are whole.

A piece counts when it is on the disk. A process that is killed in the middle of one leaves bytes that are counted or
not, and whoever sends asks how many are here. Only what its digest proves is ever moved among the blobs, so neither a
torn write nor a liar can put another thing under a name.
"""

from __future__ import annotations

import hashlib
import os
import shutil
import time
from collections.abc import Callable, Iterator
from contextlib import suppress
from pathlib import Path
from threading import Lock

from scantling.blobs.piece import DIGEST, PIECE_BYTES, BlobError, Piece, short
from scantling.whole_file import flush_folder

COMING = "coming"
#: Where a file goes whose bytes changed on the disk: a person may still see something in it.
SPOILT = "spoilt"
COMING_AT_MOST = 64
BLOBS_AT_MOST = 50_000
#: What did not go on for a month is thrown away when others want its place: its device has it still.
FORGOTTEN_SECONDS = 30 * 24 * 60 * 60
FREE_BYTES = 100_000_000


class Blobs:
    """In `folder`, which is made with the first piece. Raises BlobError throughout."""

    def __init__(self, folder: Path, clock: Callable[[], float] = time.time) -> None:
        self._folder = folder
        self._clock = clock
        self._line = Lock()

    def offset(self, blob: str) -> int | None:
        """How many bytes of a blob are here, from its start; None when it is here whole."""
        if self._path(blob).exists():
            return None
        with self._line:
            try:
                self._finish(blob)
            except OSError as error:
                raise BlobError("blob-disk", why=error.strerror or error) from error
            if self._path(blob).exists():
                return None
            return min((_size(path) for path in self._coming(blob)), default=0)

    def receive(self, piece: Piece) -> int | None:
        """Keep a piece: how many bytes are here now, None when the blob is whole. A repeat is no fault."""
        with self._line:
            try:
                return self._receive(piece)
            except OSError as error:
                raise BlobError("blob-disk", why=error.strerror or error) from error

    def read(self, blob: str, at: int) -> Piece:
        """The piece that begins at a byte of a blob which is here whole."""
        try:
            with self._path(blob).open("rb") as file:
                size = os.fstat(file.fileno()).st_size
                file.seek(at)
                data = file.read(PIECE_BYTES)
        except OSError as error:
            raise BlobError("no-such-blob", blob=short(blob)) from error
        if not data:
            raise BlobError("piece-outside", field="at", blob=short(blob), byte=at, size=size)
        return Piece(blob, size, at, data)

    def pieces(self, blob: str) -> Iterator[Piece]:
        """All of a blob, in order."""
        at = 0
        while True:
            piece = self.read(blob, at)
            yield piece
            at += len(piece.data)
            if at >= piece.size:
                return

    def prove(self, blob: str) -> None:
        """Set one aside whose bytes are no longer what its name says: then it is lacking, and who has it brings it."""
        path, aside = self._path(blob), self._folder / SPOILT
        with self._line:
            try:
                if not path.exists() or _digest_of(path) == blob:
                    return
                aside.mkdir(exist_ok=True, mode=0o700)
                os.replace(path, aside / blob)
            except OSError as error:
                raise BlobError("blob-disk", why=error.strerror or error) from error

    def whole(self) -> list[str]:
        """The blobs that are here."""
        return sorted(path.name for path in self._folder.glob("[0-9a-f][0-9a-f]/*") if DIGEST.match(path.name))

    def damaged(self) -> list[Path]:
        """The files whose bytes are no longer what their names say."""
        return [path for blob in self.whole() if _digest_of(path := self._path(blob)) != blob]

    def begun(self) -> set[str]:
        """The blobs of which the first bytes are here."""
        return {path.stem for path in (self._folder / COMING).glob("*.*") if DIGEST.match(path.stem)}

    def aside(self) -> list[Path]:
        """The files that were set aside because their bytes had changed."""
        return sorted((self._folder / SPOILT).glob("*"))

    def _receive(self, piece: Piece) -> int | None:
        if self._path(piece.blob).exists():
            return None
        path = self._folder / COMING / f"{piece.blob}.{piece.size}"
        have = _size(path)
        if piece.at > have:
            raise BlobError("blob-elsewhere", field="at", blob=short(piece.blob), offset=have, byte=piece.at)
        fresh = piece.data[have - piece.at :]
        if fresh:
            self._make_room(path, piece.size - have)
            with path.open("ab") as file:
                file.write(fresh)
                file.flush()
                os.fsync(file.fileno())
        have += len(fresh)
        if have < piece.size:
            return have
        self._complete(path, piece.blob)
        return None

    def _finish(self, blob: str) -> None:
        """A process killed between its last byte and its name left all of it: nobody has another piece to send."""
        for path in self._coming(blob):
            if _size(path) >= int(path.suffix[1:]):
                with suppress(BlobError, FileNotFoundError):  # thrown away, or another server was quicker
                    self._complete(path, blob)

    def _complete(self, path: Path, blob: str) -> None:
        if _digest_of(path) != blob:
            path.unlink()
            raise BlobError("blob-damaged", blob=short(blob))
        target = self._path(blob)
        target.parent.mkdir(exist_ok=True, mode=0o700)
        os.replace(path, target)
        flush_folder(target.parent)
        for other in self._coming(blob):
            other.unlink(missing_ok=True)

    def _make_room(self, path: Path, more: int) -> None:
        """Refuse one blob too many before the first byte of it is written."""
        path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        if shutil.disk_usage(path.parent).free < FREE_BYTES + more:
            raise BlobError("no-room", size=more)
        if path.exists():
            return
        if len(self.whole()) >= BLOBS_AT_MOST:
            raise BlobError("too-many-blobs", limit=BLOBS_AT_MOST)
        coming = sorted(path.parent.iterdir(), key=lambda one: one.stat().st_mtime)
        if len(coming) >= COMING_AT_MOST:
            if self._clock() - coming[0].stat().st_mtime < FORGOTTEN_SECONDS:
                raise BlobError("too-many-coming", limit=COMING_AT_MOST)
            coming[0].unlink(missing_ok=True)

    def _path(self, blob: str) -> Path:
        if not DIGEST.match(blob):
            raise BlobError("no-such-blob", blob=short(blob))
        return self._folder / blob[:2] / blob

    def _coming(self, blob: str) -> list[Path]:
        return list((self._folder / COMING).glob(f"{blob}.*"))


def _size(path: Path) -> int:
    try:
        return path.stat().st_size
    except FileNotFoundError:
        return 0


def _digest_of(path: Path) -> str:
    with path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()
