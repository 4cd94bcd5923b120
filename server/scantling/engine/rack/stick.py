"""Sticks: the boards of one profile in a room, those that were settled on and those that are still a proposal."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from scantling.engine.boards.case.case import Case, PlannedBoard
from scantling.engine.boards.case.cuts import Ends
from scantling.engine.boards.case.marks import derive_places
from scantling.engine.boards.case.saw import derive_changes, derive_shared_cuts, derive_unsafe_from, saved
from scantling.engine.cutlist.states import CUT, TO_CUT
from scantling.engine.tape.lengths import ZERO, Length

SQUARE_ENDS = Ends()
DONE, SPOILT = CUT, "spoilt"


@dataclass(frozen=True, slots=True)
class StickLine:
    """A piece on a stick: what it takes of the stick's length, its slanted kerf counted, and how far it has come.

    `spoilt` is a piece that was cut and has to be cut again: it took its length all the same.
    """

    key: str
    letter: str
    takes: Length
    state: str = TO_CUT


#: What the source of a board begins with that a piece was spoilt of; of any other it is a board's name.
SCRAP = "spoilt "


@dataclass(frozen=True, slots=True)
class Stick:
    """One board. `board` is its name for ever, once it was settled on; `source` says what it is left of.

    `why` says what it is for where nothing is planned from it: a spare, or overage. `lent` is what of its far end a
    plan of another room counts on.
    """

    length: Length
    price_cents: int
    lines: tuple[StickLine, ...] = ()
    board: str | None = None
    bought: bool = False
    source: str | None = None
    why: str = ""
    lent: Length = ZERO

    @property
    def fixed(self) -> tuple[StickLine, ...]:
        """What is cut from it already."""
        return tuple(line for line in self.lines if line.state != TO_CUT)

    @property
    def open(self) -> tuple[StickLine, ...]:
        """What is still to be cut from it."""
        return tuple(line for line in self.lines if line.state == TO_CUT)

    @property
    def is_scrap(self) -> bool:
        """Whether it is what a piece of this room was spoilt of."""
        return (self.source or "").startswith(SCRAP)

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


def derive_own(case: Case, stick: Stick) -> Length:
    """What of that its own room may still plan from: what was lent is parted off by a kerf."""
    left = derive_left(case, stick)
    return max(ZERO, left - stick.lent - case.kerf) if stick.lent else left


@dataclass(frozen=True, slots=True)
class Laid:
    """A piece where it lies on its stick, from the fresh end; `mark` is where to cut, from the last cut made."""

    line: StickLine
    start: Length
    end: Length
    mark: Length | None = None
    shares_cut: bool = False
    ends: Ends = SQUARE_ENDS


@dataclass(frozen=True, slots=True)
class LaidStick:
    """A stick with its pieces in place, what is left, and what the saw and the hand have to do with it."""

    stick: Stick
    laid: tuple[Laid, ...]
    offcut: Length
    settings: int
    unsafe: tuple[int, ...]


def lay_out_stick(case: Case, places: Mapping[str, int], stick: Stick) -> LaidStick:
    """The stick's pieces where they lie. `places` are the case's pieces by key."""
    at = ZERO
    laid = []
    for line in stick.fixed:
        laid.append(Laid(line, at, at + line.takes))
        at = at + line.takes + case.kerf
    order = tuple(places[line.key] for line in stick.open)
    board = PlannedBoard(0, order, ZERO, derive_shared_cuts(case, order))
    left = derive_left(case, stick)
    unsafe = derive_unsafe_from(case, order, left)
    before: int | None = None
    for line, place, (start, end) in zip(stick.open, order, derive_places(case, board), strict=True):
        shares = place in board.shared
        ends = case.ends[place] if case.ends else Ends()
        laid.append(Laid(line, at + start, at + end, end, shares, ends))
        gained = saved(case, before, place) if before is not None and shares else None
        left = left - line.takes - case.kerf + (gained or ZERO)
        before = place
    return LaidStick(stick, tuple(laid), max(ZERO, left), derive_changes(case, board), unsafe)
