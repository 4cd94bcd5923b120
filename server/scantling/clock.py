"""Names and stamps, made at the edge: entry ids, device names, and the hybrid clock that orders entries for display.

A stamp never decides whether an entry is kept. It follows the largest stamp seen, so that an answer to an entry sorts
after it although one of the two clocks is slow; a clock more than a day ahead is not followed, or one phone with a
wrong year would drag every other device along."""

import secrets
import time

DAY_MS = 24 * 60 * 60 * 1000
COUNTER_END = 1 << 16


def now_ms() -> int:
    return time.time_ns() // 1_000_000


def mint_device() -> str:
    return secrets.token_hex(8)


def mint_id(at_ms: int) -> str:
    """A UUID version 7: the time in front, so that ids sort roughly by age, then the system's secure randomness."""
    value = at_ms << 80 | 0x7 << 76 | secrets.randbits(12) << 64 | 0b10 << 62 | secrets.randbits(62)
    text = f"{value:032x}"
    return "-".join((text[:8], text[8:12], text[12:16], text[16:20], text[20:]))


class HybridClock:
    """Stamps that only grow, for one device."""

    def __init__(self) -> None:
        self._ms = 0
        self._counter = 0

    def stamp(self, at_ms: int, device: str) -> str:
        """The next stamp: after every stamp given or seen before, whatever the clock says."""
        if at_ms > self._ms:
            self._ms, self._counter = at_ms, 0
        else:
            self._counter += 1
        if self._counter == COUNTER_END:
            self._ms, self._counter = self._ms + 1, 0
        return f"{self._ms:012x}-{self._counter:04x}-{device}"

    def see(self, stamp: str, at_ms: int) -> None:
        """Follow another device's stamp, unless it is more than a day ahead."""
        ms, counter = int(stamp[:12], 16), int(stamp[13:17], 16)
        if ms <= at_ms + DAY_MS and (ms, counter) > (self._ms, self._counter):
            self._ms, self._counter = ms, counter
