"""Board plans: which boards to take and what to cut from each, for the least money, then the fewest boards.

A case that has no answer is refused (`BoardsError`). The search counts steps, not seconds, so that one case has one
answer on every machine; a clock, when the caller passes one, can only cut it off, and the plan then says so.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from scantling.engine.boards.case.case import BoardsError, Case, Plan, Proof, check_case
from scantling.engine.boards.case.grid import Grid, derive_grids
from scantling.engine.boards.case.saw import derive_board, derive_safer, derive_unsafe, set_in_order
from scantling.engine.boards.search.greedy import rank
from scantling.engine.boards.search.offcut import leave_more
from scantling.engine.boards.search.search import Search
from scantling.engine.boards.ways.lists import ListRank
from scantling.engine.boards.ways.packing import Way
from scantling.engine.boards.ways.steps import STEPS_A_SECOND, Steps

USUAL_TIME_LIMIT = 0.5
DRAWING_UP = 0.000_06
"""Seconds a piece that the plan takes to be drawn up when the search is over: kept back from it."""

OFFCUT_STEPS = 16_000
"""What a longer offcut may cost at most: it is worth less than the rest of the plan."""


def plan_boards(case: Case, clock: Callable[[], float] | None = None, time_limit: float = USUAL_TIME_LIMIT) -> Plan:
    """The best plan found within `time_limit` seconds' worth of steps, with its proof; raises `BoardsError`.

    `clock` gives seconds, and cuts the search off if it is slower than its steps.

    >>> from fractions import Fraction
    >>> from scantling.engine.boards.case.case import Stock
    >>> from scantling.engine.tape.lengths import ZERO, Length
    >>> stock = (Stock(Length(Fraction(96)), 1000), Stock(Length(Fraction(144)), 1400))
    >>> pieces = (Length(Fraction(95)), Length(Fraction(195, 4)), Length(Fraction(47)))
    >>> plan = plan_boards(Case(Length(Fraction(1, 8)), ZERO, stock, pieces, hold=ZERO))
    >>> plan.cost, plan.count, plan.proven
    (2000, 2, True)
    """
    problems = check_case(case)
    if problems:
        raise problems[0]
    seconds = max(time_limit / 2, time_limit - DRAWING_UP * len(case.pieces))
    steps = Steps(int(time_limit * STEPS_A_SECOND), clock, seconds)
    grid, generous = derive_grids(case)
    search = Search(grid, steps if generous is grid else steps.part(steps.limit // 2))
    search.run()
    floor, proof = (search.floor, search.proof) if generous is grid else _bound(generous, steps)
    if search.best is None:
        raise BoardsError("not-enough-stock" if floor is None else "no-plan-found", field="stock")
    part = steps.part(min(steps.limit // 20, OFFCUT_STEPS))
    ways = leave_more(grid, search.best, proof.rules if generous is grid else (), part)
    steps.close(part)
    return _draw_up(case, grid, ways, floor or (0, 0), _by_length(case, generous or grid, proof), steps)


def _bound(generous: Grid | None, steps: Steps) -> tuple[ListRank | None, Proof]:
    """What no plan can beat, from the grid that takes every piece for a little shorter than it is."""
    if generous is None:
        return (0, 0), Proof()
    search = Search(generous, steps)
    search.run()
    return search.floor, search.proof


def _draw_up(case: Case, grid: Grid, ways: tuple[Way, ...], floor: ListRank, proof: Proof, steps: Steps) -> Plan:
    """Give the ways their pieces, in cutting order."""
    waiting = [list(reversed(places)) for places in grid.members]
    boards = [derive_board(case, t, tuple(waiting[kind].pop() for kind in kinds)) for t, kinds in sorted(ways)]
    boards = set_in_order(case, derive_safer(case, boards))
    place = rank(grid, ways)
    unsafe = [piece for board in boards for piece in derive_unsafe(case, board)]
    return Plan(
        boards=tuple(boards),
        cost=place[0],
        bound=min(floor, place)[0],
        proven=floor >= place,
        unsafe=tuple(sorted(unsafe)),
        cut_off=steps.cut_off,
        steps=steps.used,
        proof=proof,
    )


def _by_length(case: Case, grid: Grid, proof: Proof) -> Proof:
    """The proof with points for every different length, where the grid takes some of them together."""
    lengths = sorted(set(case.pieces), reverse=True)
    if len(lengths) == len(grid.sizes):
        return proof
    kinds = {place: kind for kind, places in enumerate(grid.members) for place in places}
    order = [kinds[case.pieces.index(length)] for length in lengths]
    return replace(proof, rules=tuple(rule.ordered(order) for rule in proof.rules))
