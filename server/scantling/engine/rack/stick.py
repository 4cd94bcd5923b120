"""Sticks: the boards of one profile in a room, those that were settled on and those that are still a proposal."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.engine.boards.case import Case, PlannedBoard
from scantling.engine.lengths import ZERO, Length

TO_CUT, DONE, SPOILT = "to cut", "cut", "spoilt"


@dataclass(frozen=True, slots=True)
class Line:
    """A piece on a stick: what it takes of the stick's length, its slanted kerf counted, and how far it has come.

    `spoilt` is a piece that was cut and has to be cut again: it took its length all the same.
    """

    key: str
    letter: str
    takes: Length
    state: str = TO_CUT


@dataclass(frozen=True, slots=True)
class Stick:
    """One board. `board` is its name for ever, once it was settled on; `source` that of the board it is left of."""

    length: Length
    price_cents: int
    lines: tuple[Line, ...] = ()
    board: str | None = None
    bought: bool = False
    source: str | None = None

    @property
    def fixed(self) -> tuple[Line, ...]:
        """What is cut from it already."""
        return tuple(line for line in self.lines if line.state != TO_CUT)

    @property
    def open(self) -> tuple[Line, ...]:
        """What is still to be cut from it."""
        return tuple(line for line in self.lines if line.state == TO_CUT)

    @property
    def is_here(self) -> bool:
        """Whether it stands on the rack: bought, left over, or cut into."""
        return self.bought or bool(self.fixed)

    @property
    def pays(self) -> int:
        """What is still to be paid for it, in cents."""
        return 0 if self.is_here else self.price_cents


def derive_left(case: Case, stick: Stick) -> Length:
    """What is usable of a stick after what was cut from it; nothing where the last kerf ran out of it."""
    left = stick.length - case.end_trim
    for line in stick.fixed:
        left = left - line.takes - case.kerf
    return max(ZERO, left)


def derive_planned(case: Case, stick: Stick, places: dict[str, int]) -> PlannedBoard:
    """What is still to be cut, as a board of the case; the offcut is what is left when all of it is cut."""
    left = derive_left(case, stick)
    for line in stick.open:
        left = left - line.takes - case.kerf
    return PlannedBoard(0, tuple(places[line.key] for line in stick.open), max(ZERO, left))
