"""The machine's clock, held against what it can be held against: the age of notebooks, the file's own date, the times
that entries bear, and what the system says of it."""

from __future__ import annotations

import datetime as dt
import json
from collections.abc import Iterator
from pathlib import Path

from scantling.clock import DAY_MS, FIRST_MS, HORIZON_MS
from scantling.doctor.finding import Finding, good, wrong
from scantling.doctor.firewall import Run
from scantling.store import FILE_NAME
from scantling.store.examine import Examined

ASK_SYSTEM = ("timedatectl", "show", "--property=NTPSynchronized", "--value")


def look_at_clock(folder: Path, notebook: Examined | None, now_ms: int, run: Run) -> Iterator[Finding]:
    now = _date(now_ms)
    if not FIRST_MS <= now_ms <= HORIZON_MS:
        yield wrong("clock", "clock-off", now=now)
        return
    written_ms = _written_ms(folder / FILE_NAME)
    if written_ms > now_ms + DAY_MS:
        yield wrong("clock", "clock-behind", now=now, then=_date(written_ms))
        return
    ahead = sorted(stamp for stamp in _stamps(notebook) if int(stamp[:12], 16) > now_ms + DAY_MS)
    if ahead:
        then, device = _date(int(ahead[-1][:12], 16)), ahead[-1][-16:]
        yield wrong("clock", "clock-ahead", count=len(ahead), then=then, device=device)
    else:
        yield good("clock", "clock-good", now=now)
    if (run(ASK_SYSTEM) or "").strip() == "no":
        yield good("clock", "clock-alone")


def _written_ms(path: Path) -> int:
    try:
        return path.stat().st_mtime_ns // 1_000_000
    except OSError:
        return 0


def _stamps(notebook: Examined | None) -> Iterator[str]:
    for text in notebook.sound.values() if notebook else ():
        yield json.loads(text)["stamp"]


def _date(ms: int) -> str:
    """To the minute; a time that no calendar has, by its milliseconds."""
    try:
        return f"{dt.datetime.fromtimestamp(ms / 1000, dt.UTC):%Y-%m-%d %H:%M}"
    except (OverflowError, OSError, ValueError):
        return f"{ms} ms"
