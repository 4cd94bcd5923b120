"""Settle: the sticks of one profile in a room, as accepted where that still stands, and otherwise planned anew.

What is cut stays where it was cut, and a board that is bought stays bought: only what is still to be cut is planned,
from what stands on the rack first, for it costs nothing more, and then from what is sold.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace

from scantling.engine.boards.case.case import STOCK_AT_MOST, Plan, Stock
from scantling.engine.rack.accepted import Accepted
from scantling.engine.rack.extra import derive_extras
from scantling.engine.rack.progress import Progress, derive_standing, mark_progress
from scantling.engine.rack.slack import Slack, plan_with_slack
from scantling.engine.rack.stick import LaidStick, Stick, StickLine, derive_own, lay_out_stick
from scantling.engine.rack.wanted import derive_case
from scantling.engine.standard import Standard
from scantling.engine.tape.lengths import Length
from scantling.engine.trim.piece import Piece


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is asked of the rack: pieces still to cut, how far all came, what is on the rack, and what was accepted.

    `called`: what a person knows a board's source by, where that is not its own name; `uncut`: the sources of which
    something is still to be cut.
    """

    standard: Standard
    profile: str
    pieces: Sequence[Piece]
    made: Mapping[str, Progress]
    rack: Sequence[Stick] = ()
    accepted: Accepted | None = None
    called: Mapping[str, str] = field(default_factory=dict)
    uncut: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Settled:
    """The sticks, those beyond the plan last. `plan` is None where the accepted ones stand; `reasons` say why they
    do not, where something was accepted. `slack` is what a new plan keeps to spare, if it does."""

    sticks: tuple[LaidStick, ...]
    plan: Plan | None
    reasons: tuple[str, ...] = ()
    blanks: tuple[tuple[str, Length], ...] = ()
    slack: Slack | None = None

    @property
    def to_pay(self) -> int:
        return sum(laid.stick.pays for laid in self.sticks)

    @property
    def paid(self) -> int:
        """What the boards that stand here cost when they were bought."""
        return sum(laid.stick.price_cents for laid in self.sticks if laid.stick.is_here and laid.stick.source is None)


def settle(wanted: Wanted, clock: Callable[[], float] | None, time_limit: float) -> Settled:
    """The accepted sticks where every piece still comes out of them, or a new plan. Raises `BoardsError`."""
    before = mark_progress(wanted.accepted.sticks, wanted.made) if wanted.accepted else []
    case = derive_case(wanted.standard, wanted.standard.stock_of(wanted.profile), wanted.pieces)
    keys = [piece.key for piece in wanted.pieces]
    letters = {piece.key: piece.letter for piece in wanted.pieces}
    standing, reasons = derive_standing(case, before, letters)
    if wanted.accepted and not reasons:
        return _settled(wanted, standing, None, ())
    kept = [replace(stick, lines=stick.fixed) for stick in before if stick.is_here]
    if not keys:
        return _settled(wanted, kept, None, ())
    return _plan_anew(wanted, kept, tuple(reasons) if wanted.accepted else (), clock, time_limit)


def _plan_anew(
    wanted: Wanted, kept: list[Stick], reasons: tuple[str, ...], clock: Callable[[], float] | None, time_limit: float
) -> Settled:
    standard = wanted.standard
    sale = standard.stock_of(wanted.profile)
    bare = derive_case(standard, sale, wanted.pieces)
    usable = [(stick, derive_own(bare, stick)) for stick in (*kept, *wanted.rack)]
    least = min(bare.pieces)
    here = [(stick, left) for stick, left in usable if left - standard.slack >= least][
        : max(0, STOCK_AT_MOST - len(sale))
    ]
    stock = (*(Stock(left + standard.end_trim, 0, 1) for _, left in here), *sale)
    case = derive_case(standard, stock, wanted.pieces)
    plan, slack = plan_with_slack(case, standard.slack, clock, time_limit)
    sticks: list[Stick] = []
    taken = set()
    for board in plan.boards:
        lines = tuple(
            StickLine(wanted.pieces[place].key, wanted.pieces[place].letter, case.pieces[place])
            for place in board.pieces
        )
        if board.stock < len(here):
            stick = here[board.stock][0]
            taken.add(board.stock)
            sticks.append(replace(stick, lines=(*stick.lines, *lines)))
        else:
            sold = case.stock[board.stock]
            sticks.append(Stick(sold.length, sold.price_cents, lines, bought=not sold.price_cents))
    held = [here[place][0] for place in taken]
    idle = [stick for stick in kept if not any(stick is one for one in held)]
    return replace(_settled(wanted, [*sticks, *idle, *_extras(wanted, idle)], plan, reasons), slack=slack)


def _extras(wanted: Wanted, idle: Sequence[Stick]) -> list[Stick]:
    """Spares and overage still to buy; a bought board that nothing is cut from is a spare already."""
    standard = wanted.standard
    case = derive_case(standard, standard.stock_of(wanted.profile), wanted.pieces)
    here = sum(not stick.fixed for stick in idle)
    found = derive_extras(case, max(0, standard.spare_sticks - here), standard.overage)
    return [
        Stick(case.stock[place].length, case.stock[place].price_cents, why=extra.why)
        for extra in found
        for place in extra.stock
    ]


def _settled(wanted: Wanted, sticks: Sequence[Stick], plan: Plan | None, reasons: tuple[str, ...]) -> Settled:
    case = derive_case(wanted.standard, (), wanted.pieces)
    places = {piece.key: place for place, piece in enumerate(wanted.pieces)}
    laid = tuple(lay_out_stick(case, places, stick) for stick in sticks)
    blanks = tuple(
        (wanted.pieces[place].letter, case.pieces[place] + case.kerf + case.hold)
        for one in laid
        for place in one.unsafe
    )
    return Settled(laid, plan, reasons, blanks)
