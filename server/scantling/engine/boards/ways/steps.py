"""Steps: the planner's own measure of effort, so that one case has one answer on every machine.

A step is about a millionth of a second's work on an ordinary laptop. The search stops at a number of steps that
depends on the case alone; a clock, where the caller passes one, is looked at every so many steps and can only stop it
sooner.
"""

from __future__ import annotations

from collections.abc import Callable

STEPS_A_SECOND = 800_000
STEPS_BETWEEN_LOOKS = 1_000


class Steps:
    """A purse of steps. `take` spends; `out` is True when nothing is left or the clock has run out (`cut_off`)."""

    __slots__ = ("_clock", "_deadline", "_next_look", "cut_off", "limit", "out", "used")

    def __init__(self, limit: int, clock: Callable[[], float] | None = None, seconds: float = 0.0) -> None:
        self.limit = limit
        self.used = 0
        self.out = False
        self.cut_off = False
        self._clock = clock
        self._deadline = clock() + seconds if clock else 0.0
        self._next_look = 0

    def part(self, limit: int) -> Steps:
        """A purse for one part of the work, by the same clock; `close` it to have its steps counted here."""
        part = Steps(min(limit, self.limit - self.used))
        part._clock, part._deadline = self._clock, self._deadline
        return part

    def close(self, part: Steps) -> None:
        """Count what a part has used."""
        self.cut_off = self.cut_off or part.cut_off
        self.take(part.used)

    def take(self, count: int) -> bool:
        """Spend `count` steps; False when the search must stop."""
        self.used += count
        if self.used >= self._next_look:
            self._next_look = self.used + STEPS_BETWEEN_LOOKS
            if self.used >= self.limit:
                self.out = True
            elif self._clock and self._clock() >= self._deadline:
                self.out = self.cut_off = True
        return not self.out
