"""Order at the saw: which piece to cut first, so that there is always enough left to hold.

At a cut one hand holds the piece or the rest of the board, whichever is longer. Cutting the short pieces first, while
the board is long, keeps that above the asked length wherever any order does. The far end's trim is not counted as
something to hold: it may be split or painted.
"""

from __future__ import annotations

from itertools import combinations

from scantling.engine.boards.case import Case, PlannedBoard
from scantling.engine.lengths import ZERO, Length

EXCHANGED_AT_MOST = 10
"""How many pieces two boards may hold together for all ways to share them out to be tried."""


def derive_board(case: Case, stock: int, places: tuple[int, ...]) -> PlannedBoard:
    """One board with its pieces in cutting order, shortest first; equal ones by their place in the case."""
    order = tuple(sorted(places, key=lambda place: (case.pieces[place], place)))
    return PlannedBoard(stock, order, max(ZERO, _left_after(case, stock, order)))


def derive_unsafe(case: Case, board: PlannedBoard) -> tuple[int, ...]:
    """The pieces at whose cut both the piece and the rest of the board are shorter than the length to hold."""
    unsafe = []
    left = case.stock[board.stock].length - case.end_trim
    for place in board.pieces:
        left = left - case.pieces[place] - case.kerf
        drops_off_uncut = case.end_trim == ZERO and left == -case.kerf
        if max(left, case.pieces[place]) < case.hold and not drops_off_uncut:
            unsafe.append(place)
    return tuple(unsafe)


def derive_safer(case: Case, boards: list[PlannedBoard]) -> list[PlannedBoard]:
    """The same boards, pieces exchanged between an unsafe board and another where that leaves fewer unsafe cuts.

    The longest offcut stays as long as it was.
    """
    boards = list(boards)
    for risky in range(len(boards)):
        for other in range(len(boards)):
            if other != risky and derive_unsafe(case, boards[risky]):
                boards[risky], boards[other] = _exchange(case, boards, risky, other)
    return boards


def _exchange(case: Case, boards: list[PlannedBoard], risky: int, other: int) -> tuple[PlannedBoard, PlannedBoard]:
    """The safest way to share out two boards' pieces among them."""
    pool = boards[risky].pieces + boards[other].pieces
    best = boards[risky], boards[other]
    if len(pool) > EXCHANGED_AT_MOST:
        return best
    longest = max(board.offcut for board in boards)
    kept = max((board.offcut for at, board in enumerate(boards) if at not in (risky, other)), default=ZERO)
    least = sum(len(derive_unsafe(case, board)) for board in best)
    for count in range(1, len(pool)):
        for chosen in combinations(pool, count):
            rest = tuple(place for place in pool if place not in chosen)
            if _fits(case, best[0].stock, chosen) and _fits(case, best[1].stock, rest):
                trial = derive_board(case, best[0].stock, chosen), derive_board(case, best[1].stock, rest)
                unsafe = sum(len(derive_unsafe(case, board)) for board in trial)
                if unsafe < least and max(kept, trial[0].offcut, trial[1].offcut) >= longest:
                    best, least = trial, unsafe
    return best


def _fits(case: Case, stock: int, places: tuple[int, ...]) -> bool:
    """Whether the pieces come out of the board: the last one needs no kerf of its own."""
    return _left_after(case, stock, places) + case.kerf >= ZERO


def _left_after(case: Case, stock: int, places: tuple[int, ...]) -> Length:
    """What is left of the board after these cuts; less than nothing where the last kerf runs out of the board."""
    left = case.stock[stock].length - case.end_trim
    for place in places:
        left = left - case.pieces[place] - case.kerf
    return left
