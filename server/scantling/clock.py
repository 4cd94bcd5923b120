"""Names and stamps, made at the edge: entry ids, device names, and the hybrid clock that orders entries for display.

A stamp never decides whether an entry is kept. It goes on from the largest stamp seen, so that an answer to an entry
sorts after it although one of the two clocks is slow. A clock is known to be wrong when it says a time before there was
any notebook, or a century after: then the stamps seen are the better clock. Else a stamp more than a day ahead comes
from a clock that ran away: it moves nobody, not even the device that gave it. `web/journal/clock.js` keeps the same
rules."""

import datetime as dt
import hashlib
import secrets
import time

from scantling.engine.journal import STAMP

DAY_MS = 24 * 60 * 60 * 1000
COUNTER_END = 1 << 16
FIRST_MS = 1_767_225_600_000  # 2026: no notebook is older
HORIZON_MS = FIRST_MS + 36_525 * DAY_MS  # 2126: what a device without a clock believes at most
LATEST_MS = 2**48 - 1


def now_ms() -> int:
    return time.time_ns() // 1_000_000


def now_utc() -> dt.datetime:
    return dt.datetime.now(dt.UTC).replace(microsecond=0)


def mint_device() -> str:
    return secrets.token_hex(8)


def mint_id(at_ms: int) -> str:
    """A UUID version 7: the time in front, so that ids sort roughly by age, then the system's secure randomness."""
    at_ms = min(max(at_ms, 0), LATEST_MS)  # or a clock before 1970 would put a minus into the id
    value = at_ms << 80 | 0x7 << 76 | secrets.randbits(12) << 64 | 0b10 << 62 | secrets.randbits(62)
    return _as_uuid(value)


def name_id(text: str) -> str:
    """The id that follows from a text: a UUID version 8 (RFC 9562, section 5.8) over its SHA-256."""
    value = int.from_bytes(hashlib.sha256(text.encode()).digest()[:16])
    value = value & ~(0xF << 76) | 0x8 << 76
    value = value & ~(0b11 << 62) | 0b10 << 62
    return _as_uuid(value)


def _as_uuid(value: int) -> str:
    text = f"{value:032x}"
    return "-".join((text[:8], text[8:12], text[12:16], text[16:20], text[20:]))


class HybridClock:
    """Stamps for one device, each after the last, unless the last came from a clock that ran away."""

    def __init__(self) -> None:
        self._ms = 0
        self._counter = 0

    def stamp(self, at_ms: int, device: str) -> str:
        """The next stamp: after every stamp given or followed before."""
        time_ms = FIRST_MS if _is_wrong(at_ms) else at_ms
        if time_ms > self._ms or not _is_sound(self._ms, at_ms):
            self._ms, self._counter = time_ms, 0
        else:
            self._counter += 1
        if self._counter == COUNTER_END:
            self._ms, self._counter = self._ms + 1, 0
        return f"{self._ms:012x}-{self._counter:04x}-{device}"

    def see(self, stamp: str, at_ms: int) -> None:
        """Follow another device's stamp, where it is of a time to go by."""
        if not STAMP.match(stamp):
            return
        ms, counter = int(stamp[:12], 16), int(stamp[13:17], 16)
        if not _is_sound(ms, at_ms):
            return
        if not _is_sound(self._ms, at_ms) or (ms, counter) > (self._ms, self._counter):
            self._ms, self._counter = ms, counter


def _is_wrong(at_ms: int) -> bool:
    return not FIRST_MS <= at_ms <= HORIZON_MS


def _is_sound(ms: int, at_ms: int) -> bool:
    return ms <= (HORIZON_MS if _is_wrong(at_ms) else at_ms + DAY_MS)
