"""Slack: what every board of a plan keeps to spare, so that a piece that comes out longer can still be cut from it.

Besides what is trimmed off the ends. A plan that stands may use its slack up, for that is what it is kept for. A piece
as long as the longest board gives is cut from it all the same, without slack: it fills that board either way. Common
practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import partial

from scantling.engine.boards.case.case import BoardsError, Case, Plan
from scantling.engine.boards.search.plan import plan_boards
from scantling.engine.tape.lengths import ZERO, Length


@dataclass(frozen=True, slots=True)
class Slack:
    """What a plan kept to spare on each board, and what the boards would come to, and how many there were, without it.

    `filled` are the places of pieces that leave less than that of a board.
    """

    kept: Length
    cost: int
    count: int
    filled: tuple[int, ...]


def keep_slack(case: Case, slack: Length) -> Case:
    """The case with so much less of each board to plan with; a piece longer than that allows fills the longest board.

    >>> from fractions import Fraction
    >>> from scantling.engine.boards.case.case import Stock
    >>> inches = lambda *figures: tuple(Length(Fraction(figure)) for figure in figures)
    >>> case = Case(ZERO, ZERO, (Stock(Length(Fraction(96)), 1000),), inches("95.875", "40"))
    >>> [float(piece.inches) for piece in keep_slack(case, Length(Fraction(1, 4))).pieces]
    [95.75, 40.0]
    """
    gives = [stock.length - case.end_trim for stock in case.stock if stock.limit != 0]
    most = max(gives, default=ZERO) - slack
    if most <= ZERO:
        return case
    pieces = tuple(most if most < piece <= most + slack else piece for piece in case.pieces)
    return replace(case, end_trim=case.end_trim + slack, pieces=pieces)


def find_filled(case: Case, slack: Length) -> tuple[int, ...]:
    """The places of the pieces that fill a board, so that it keeps no slack."""
    kept = keep_slack(case, slack)
    return tuple(place for place, piece in enumerate(case.pieces) if kept.pieces[place] < piece)


def plan_with_slack(
    case: Case, slack: Length, clock: Callable[[], float] | None, time_limit: float
) -> tuple[Plan, Slack | None]:
    """The plan that keeps so much to spare, and what it would be without. Raises `BoardsError`.

    Where the boards are too few to keep any, the plan is made without, and there is no slack to tell of.
    """
    look_for = partial(plan_boards, clock=clock, time_limit=time_limit)
    if not slack:
        return look_for(case), None
    try:
        plan = look_for(keep_slack(case, slack))
    except BoardsError:
        return look_for(case), None
    bare = look_for(case)
    cost, count = min((plan.cost, plan.count), (bare.cost, bare.count))
    return plan, Slack(slack, cost, count, find_filled(case, slack))
