"""The journal as lines: one entry to a line, so that a line damaged on the way costs that line and no other.

Reads bytes as they come, in UTF-8 or UTF-16, with or without a byte-order mark, with either line ending, and holds one
line at a time: 64 megabytes of nothing cost no memory. A byte that is no text stays in its line as a lone surrogate,
which no entry may hold, so a torn line can never pass for a sound one.
"""

from __future__ import annotations

import codecs
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any, ClassVar

from scantling.engine.errors import EngineError
from scantling.wire import parse_json

FORMAT = "scantling journal"
FORMAT_VERSION = 1
#: An entry has at most 100,000 bytes, and JSON may spell each of them in six characters.
LINE_AT_MOST = 600_000
HEAD_BYTES = 8

BYTE_ORDER_MARKS = (
    (codecs.BOM_UTF8, "utf-8-sig"),
    (codecs.BOM_UTF32_LE, "utf-32"),
    (codecs.BOM_UTF32_BE, "utf-32"),
    (codecs.BOM_UTF16_LE, "utf-16"),
    (codecs.BOM_UTF16_BE, "utf-16"),
)
_BLANK = " \t\r\0\ufeff"
_NOT_BLANK = re.compile(f"[^\n{_BLANK}][^\n]*")
_NO_TEXT = re.compile("[\ud800-\udfff]")


class LineError(EngineError):
    sentences: ClassVar[Mapping[str, str]] = {
        "torn": "Line {number} holds bytes that are no text: it was damaged on the way.",
        "too-long": "Line {number} is longer than an entry can be.",
        "not-sound": "Line {number}: {why}",
    }


@dataclass(frozen=True, slots=True)
class Line:
    """One line that is not blank: its number in the file, and its text with lone surrogates for bytes that are none."""

    number: int
    text: str

    @property
    def raw(self) -> bytes:
        """The line as it came, or as near to it as UTF-8 can say."""
        try:
            return self.text.encode("utf-8", "surrogateescape")
        except UnicodeEncodeError:
            return self.text.encode("utf-8", "surrogatepass")

    def parse(self) -> Any:
        """The line's JSON. Raises EngineError, which names the line."""
        if len(self.text) > LINE_AT_MOST:
            raise LineError("too-long", number=self.number)
        if _NO_TEXT.search(self.text):
            raise LineError("torn", number=self.number)
        return parse_json(self.text, f"Line {self.number}")


def heading(entries: int, blobs: int = 0, houses: Iterable[str] = ()) -> dict[str, object]:
    """The first line of a backup: what it is, how much follows, or a file cut short would look whole, and of which
    houses, or a neighbor's would be taken for one's own."""
    said = {"format": FORMAT, "version": FORMAT_VERSION, "entries": entries}
    more = {"blobs": blobs, "houses": sorted(houses)}
    return {**said, **{name: value for name, value in more.items() if value}}


def announced(data: object, what: str = "entries") -> int | None:
    """How many entries, or blobs, a heading says that follow; None for what is no heading."""
    if isinstance(data, Mapping) and data.get("format") == FORMAT:
        count = data.get(what)
        return count if isinstance(count, int) else 0
    return None


def houses_in(data: object) -> set[str]:
    """The houses that a line names: those of a heading's notebook, or the one that an entry is about."""
    if not isinstance(data, Mapping):
        return set()
    if data.get("format") == FORMAT:
        named = data.get("houses")
    else:
        body = data.get("body")
        named = [body.get("house")] if data.get("kind") == "house" and isinstance(body, Mapping) else []
    return {one for one in named if isinstance(one, str)} if isinstance(named, list) else set()


def is_piece(data: object) -> bool:
    """Whether a line is a piece of a blob; every other that is no heading is to be an entry."""
    return isinstance(data, Mapping) and "blob" in data and "id" not in data


def read_lines(pieces: Iterable[bytes]) -> Iterator[Line]:
    """The lines of a file that comes in pieces, without the blank ones."""
    number, rest = 1, ""
    for text in _decode(pieces):
        whole, newline, tail = text.rpartition("\n")
        if not newline:
            rest = (rest + tail)[: LINE_AT_MOST + 1]
            continue
        yield from _lines_in(rest + whole, number)
        number += text.count("\n")
        rest = tail
    yield from _lines_in(rest, number)


def _lines_in(text: str, number: int) -> Iterator[Line]:
    """Found by a search and not by cutting: sixty million blank lines would be as many steps. Not by splitlines()
    either: a text may hold a line separator."""
    position = 0
    for found in _NOT_BLANK.finditer(text):
        number += text.count("\n", position, found.start())
        position = found.start()
        yield Line(number, found[0].rstrip(_BLANK))


def _decode(pieces: Iterable[bytes]) -> Iterator[str]:
    decoder: codecs.IncrementalDecoder | None = None
    head = b""
    for piece in pieces:
        head += piece
        if decoder is None and len(head) < HEAD_BYTES:
            continue
        decoder = decoder or _decoder(head)
        yield decoder.decode(head)
        head = b""
    yield (decoder or _decoder(head)).decode(head, final=True)


def _decoder(head: bytes) -> codecs.IncrementalDecoder:
    return codecs.getincrementaldecoder(_encoding_of(head))(errors=_keep_bytes.__name__)


def _encoding_of(head: bytes) -> str:
    """By the byte-order mark, or by where the zeros are: every other byte of plain JSON in UTF-16."""
    for mark, name in BYTE_ORDER_MARKS:
        if head.startswith(mark):
            return name
    first, second = any(head[0:HEAD_BYTES:2]), any(head[1:HEAD_BYTES:2])
    if len(head) > 1 and first != second:
        return "utf-16-le" if first else "utf-16-be"
    return "utf-8"


def _keep_bytes(error: UnicodeError) -> tuple[str, int]:
    """What cannot be decoded stays as one lone surrogate for each byte."""
    assert isinstance(error, UnicodeDecodeError)
    return "".join(chr(0xDC00 + byte) for byte in error.object[error.start : error.end]), error.end


codecs.register_error(_keep_bytes.__name__, _keep_bytes)
