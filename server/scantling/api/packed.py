"""A body that may be gzip, unpacked some at a time: a few kilobytes may else fill the memory."""

from __future__ import annotations

import zlib
from collections.abc import Iterator

from flask import Request

from scantling.api.door import receive
from scantling.api.refusals import DoorError
from scantling.engine.errors import quote

PIECE_BYTES = 1 << 16
GZIP = 31


def pieces_of(request: Request, limit: int) -> Iterator[bytes]:
    """The body in pieces, no more than `limit` bytes of it in all. Raises DoorError, perhaps after the first pieces."""
    data = receive(request)
    encoding = request.headers.get("Content-Encoding", "identity").lower()
    if encoding == "gzip":
        yield from _unpack(data, limit)
    elif encoding == "identity":
        yield from (data[start : start + PIECE_BYTES] for start in range(0, len(data), PIECE_BYTES))
    else:
        raise DoorError("wrong-encoding", what=quote(encoding))


def _unpack(data: bytes, limit: int) -> Iterator[bytes]:
    unpacker = zlib.decompressobj(GZIP)
    left = limit
    try:
        while data and not unpacker.eof:
            piece = unpacker.decompress(data, PIECE_BYTES)
            data = unpacker.unconsumed_tail
            left -= len(piece)
            if left < 0:
                raise DoorError("too-large", limit=limit)
            yield piece
    except zlib.error as error:
        raise DoorError("not-gzip") from error
    if not unpacker.eof or unpacker.unused_data:
        raise DoorError("not-gzip")
