"""Board cases: what is to be cut, from which lengths on sale or on hand, at which prices; and the plan that answers.

Lengths are exact and money is whole cents: no float is stored here. One convention for the whole planner: a board
gives its length less `end_trim` (the total for both ends); n pieces need n - 1 kerfs between them; what is left after
the last piece's own kerf is the offcut. A case that cannot be answered is refused by name, before any search begins.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.boards.case.cuts import Ends
from scantling.engine.errors import EngineError
from scantling.engine.tape.lengths import ZERO, Length, format_length

PIECES_AT_MOST = 150
STOCK_AT_MOST = 40
USUAL_HOLD = Length(Fraction(12))


class BoardsError(EngineError):
    """A board case that has no answer."""

    family = "boards"


@dataclass(frozen=True, slots=True)
class Stock:
    """One length of board: its price each (0 = on hand) and how many there are (None = as many as needed)."""

    length: Length
    price_cents: int
    limit: int | None = None


@dataclass(frozen=True, slots=True)
class Case:
    """What is asked. `end_trim` is the total taken off one board; `hold` the least length left in the hand at a cut.

    `ends` are what both ends of every piece ask of the saw, or none for all of them square; `beyond` is what a piece
    takes of a board past its own length, counted in `pieces` already. With `shared_miters` two ends that lean alike
    are parted by one cut; what that saves goes to the offcut, and no plan counts on it. `last` are places of pieces
    that are best cut last on their board; `ranks`, one a piece, in which order those of a board are cut if it matters.
    """

    kerf: Length
    end_trim: Length
    stock: tuple[Stock, ...]
    pieces: tuple[Length, ...]
    hold: Length = USUAL_HOLD
    ends: tuple[Ends, ...] = ()
    beyond: tuple[Length, ...] = ()
    shared_miters: bool = False
    last: frozenset[int] = frozenset()
    ranks: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class PlannedBoard:
    """One board: its place in the case's stock, its pieces' places in the case in cutting order, and what is left.

    `shared` are the pieces whose left end is made by the cut that parts off the piece before.
    """

    stock: int
    pieces: tuple[int, ...]
    offcut: Length
    shared: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Rule:
    """One reason why a shopping list may be too short: points per piece, and the most points one board can hold.

    `points` has one whole number per different piece length (longest first); `most` one per stock entry. Every plan's
    boards together hold at least all pieces' points; a list of boards that cannot is no plan. With `up_to`, the rule
    holds for plans that cost no more than so many cents: their boards can be filled only in ways that waste few
    points of the rule `given`, and `most` looks at those ways alone. (No rule is given that is itself so limited.)
    """

    points: tuple[int, ...]
    most: tuple[int, ...]
    up_to: int | None = None
    given: Rule | None = None

    def ordered(self, kinds: Sequence[int]) -> Rule:
        """The rule with the points of these kinds, in this order."""
        given = self.given.ordered(kinds) if self.given else None
        return Rule(tuple(self.points[kind] for kind in kinds), self.most, self.up_to, given)


@dataclass(frozen=True, slots=True)
class Proof:
    """Why nothing better exists: no list of boards below the claim passes every rule, but those in `searched`.

    `searched` are the lists (how many of each stock entry) that pass the rules and were tried out in full instead.
    """

    rules: tuple[Rule, ...] = ()
    searched: tuple[tuple[int, ...], ...] = ()


@dataclass(frozen=True, slots=True)
class Plan:
    """The answer. No plan costs less than `bound`; `proven` says that none is cheaper, nor as cheap with fewer boards.

    `unsafe` are pieces that leave less than `hold` in the hand in every cutting order of their board. `cut_off` says
    that the clock, not the count of steps, ended the search: another run may answer otherwise.
    """

    boards: tuple[PlannedBoard, ...]
    cost: int
    bound: int
    proven: bool
    unsafe: tuple[int, ...]
    cut_off: bool
    steps: int
    proof: Proof

    @property
    def count(self) -> int:
        """How many boards, those on hand included."""
        return len(self.boards)

    @property
    def proven_cost(self) -> bool:
        """Whether no cheaper plan exists; one as cheap with fewer boards still might."""
        return self.bound == self.cost

    @property
    def gap(self) -> Fraction:
        """The most that a better plan could save, as a share of this plan's cost."""
        return Fraction(self.cost - self.bound, self.cost) if self.cost else Fraction(0)


def check_case(case: Case) -> list[BoardsError]:
    """Every reason to refuse the case, in the order of its fields; never raises."""
    return [*_check_figures(case), *_check_stock(case), *_check_pieces(case), *_check_ends(case)]


def _check_figures(case: Case) -> list[BoardsError]:
    figures = {"kerf-negative": "kerf", "end-trim-negative": "end_trim", "hold-negative": "hold"}
    return [BoardsError(key, field=name) for key, name in figures.items() if getattr(case, name) < ZERO]


def _check_stock(case: Case) -> list[BoardsError]:
    if not case.stock:
        return [BoardsError("no-stock", field="stock")]
    if len(case.stock) > STOCK_AT_MOST:
        return [BoardsError("too-many-stock", field="stock", count=len(case.stock), most=STOCK_AT_MOST)]
    problems = []
    for place, stock in enumerate(case.stock):
        wrong = {
            ("length", "stock-not-positive"): stock.length <= ZERO,
            ("price", "price-negative"): stock.price_cents < 0,
            ("limit", "limit-negative"): stock.limit is not None and stock.limit < 0,
        }
        problems += [
            BoardsError(key, field=f"stock.{place}.{name}", number=place + 1)
            for (name, key), bad in wrong.items()
            if bad
        ]
    return problems


def _check_pieces(case: Case) -> list[BoardsError]:
    if not case.pieces:
        return [BoardsError("no-pieces", field="pieces")]
    if len(case.pieces) > PIECES_AT_MOST:
        return [BoardsError("too-many-pieces", field="pieces", count=len(case.pieces), most=PIECES_AT_MOST)]
    longest = max((s.length - case.end_trim for s in case.stock if s.limit != 0), default=ZERO)
    if longest <= ZERO:
        return [BoardsError("no-board-left", field="stock")]
    problems = []
    for place, piece in enumerate(case.pieces):
        field, number = f"pieces.{place}", place + 1
        if piece <= ZERO:
            problems.append(BoardsError("piece-not-positive", field=field, number=number))
        elif piece > longest:
            too_long = BoardsError(
                "piece-too-long",
                field=field,
                number=number,
                length=format_length(piece),
                over=format_length(piece - longest),
                boards=math.ceil(piece / longest),
            )
            problems.append(too_long)
    return problems


def _check_ends(case: Case) -> list[BoardsError]:
    if len(case.ends) in (0, len(case.pieces)):
        return []
    return [BoardsError("ends-not-matched", field="ends", count=len(case.ends), pieces=len(case.pieces))]
