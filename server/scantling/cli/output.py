"""What goes out of the command line: text for people, JSON for machines, bytes for files.

A name that came by sync may hold what a terminal obeys: escape sequences, a bell, marks that turn the direction of the
text. People get a dot instead; in JSON, which a program may want as it was, such a character is written as an escape.
"""

from __future__ import annotations

import os
import re
import sys
from collections.abc import Iterable
from contextlib import suppress
from typing import TextIO

from scantling.engine.errors import UNSHOWN, plain


def say(text: str) -> None:
    """Lines of text on standard output."""
    _print(text, sys.stdout)


def complain(text: str) -> None:
    """A sentence on standard error."""
    _print(f"scantling: {text}", sys.stderr)


def _print(text: str, out: TextIO) -> None:
    shown = "\n".join(plain(line) for line in text.split("\n"))
    coding = out.encoding or "utf-8"
    # A terminal that has not every letter shows a question mark for it, and not a traceback.
    print(shown.encode(coding, "replace").decode(coding), file=out)


def write_text(pieces: Iterable[str]) -> None:
    """Text for a file, in UTF-8 and with its own line ends whatever the system's are."""
    sys.stdout.flush()
    for piece in pieces:
        sys.stdout.buffer.write(piece.encode())


def write_json(text: str) -> None:
    """JSON, with a line end."""
    write_text([escape_unshown(text), "\n"])


def escape_unshown(json_text: str) -> str:
    """The same JSON, with nothing in it that a terminal obeys: such characters stand only in its strings.

    >>> escape_unshown('"\\x9b2J"')
    '"\\\\u009b2J"'
    """
    return _UNSHOWN_IN_JSON.sub(lambda found: f"\\u{ord(found[0]):04x}", json_text)


_UNSHOWN_IN_JSON = re.compile(f"(?!\n){UNSHOWN.pattern}")


def give_up_output() -> None:
    """After a failed write: Python would try once more when it ends, and complain in words of its own."""
    with suppress(OSError, ValueError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
