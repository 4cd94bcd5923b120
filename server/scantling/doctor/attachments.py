"""Attachments: what the entries name, held against the bytes that are here.

Where those lie is for whoever asks to know: this room is handed a `Kept`, and reads from it. A blob that nothing names
is no fault: an entry that does may still come, or be one that only a newer Scantling reads.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Protocol

from scantling.doctor.finding import Finding, good, refused, wrong
from scantling.engine.errors import EngineError

NAME = re.compile(r"[0-9a-f]{64}\Z")
#: So many names stand in a sentence; the others are counted.
NAMED_AT_MOST = 3
NAME_LETTERS = 12


class Kept(Protocol):
    """The blobs beside a notebook. Raises EngineError or OSError where they cannot be looked at."""

    def whole(self) -> list[str]:
        """The names of those that are here."""

    def damaged(self) -> list[Path]:
        """The files whose bytes are not what their names say."""

    def begun(self) -> set[str]:
        """The names of those of which the first bytes are here."""

    def aside(self) -> list[Path]:
        """The files that were set aside because their bytes had changed."""


def look_at_attachments(kept: Kept, texts: Iterable[str], beside: Path | None = None) -> Iterator[Finding]:
    """`texts`: the entries, as they are kept; `beside`: the folder of attachments, where the entries are in a database:
    another server of it may have put its own elsewhere."""
    named = set(_named(texts))
    try:
        here, damaged, begun, aside = set(kept.whole()), kept.damaged(), kept.begun(), kept.aside()
    except EngineError as error:
        yield refused("attachments", error)
        return
    except OSError as error:
        yield wrong("attachments", "blobs-closed", path=error.filename, why=error.strerror)
        return
    for path in damaged:
        yield wrong("attachments", "blob-spoilt", path=path)
    missing, coming = named - here - begun, (named - here) & begun
    if missing and beside:
        yield wrong("attachments", "blobs-apart", count=len(missing), names=_some(missing), path=beside)
    elif missing:
        yield wrong("attachments", "blobs-missing", count=len(missing), names=_some(missing))
    if coming:
        yield good("attachments", "blobs-coming", count=len(coming))
    if here - named:
        yield good("attachments", "blobs-unnamed", count=len(here - named), names=_some(here - named))
    if aside:
        yield good("attachments", "blobs-aside", count=len(aside), path=aside[0].parent)
    if named and not damaged and named <= here:
        yield good("attachments", "blobs-good", count=len(named))


def _named(texts: Iterable[str]) -> Iterator[str]:
    """What entries name, struck ones too: a strike may be struck."""
    for text in texts:
        if '"attachment"' in text:
            entry = json.loads(text)
            blob = entry["body"].get("blob") if entry["kind"] == "attachment" else None
            if isinstance(blob, str) and NAME.match(blob):
                yield blob


def _some(names: set[str]) -> str:
    shown = [f"{name[:NAME_LETTERS]}…" for name in sorted(names)[:NAMED_AT_MOST]]
    more = len(names) - len(shown)
    return ", ".join([*shown, *([f"{more} more"] if more else [])])
