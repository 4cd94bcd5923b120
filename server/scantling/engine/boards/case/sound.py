"""Soundness: whether a list of boards is a plan at all, by the convention alone; nothing of the search is used.

A board gives its length less the end trim. Pieces come out of it when they and the kerfs between them are no longer
than that; the cut after the last piece may run into what is trimmed off. Every piece is cut once, no stock entry is
taken more often than there is of it, and money is what the boards cost.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction

from scantling.engine.boards.case.case import BoardsError, Case

BoardTaken = tuple[int, Sequence[int]]
"""One board as a plan states it: its stock entry and its pieces."""


def check_boards(case: Case, boards: Sequence[BoardTaken]) -> list[BoardsError]:
    """Everything that is wrong with the boards; nothing when they are a plan."""
    return [
        *[fault for number, board in enumerate(boards, 1) for fault in _check_board(case, number, board)],
        *_check_pieces(case, boards),
        *_check_limits(case, boards),
    ]


def derive_cost(case: Case, boards: Sequence[BoardTaken]) -> int:
    """What the boards cost in cents, those of unknown stock left out."""
    return sum(case.stock[stock].price_cents for stock, _ in boards if 0 <= stock < len(case.stock))


def _check_board(case: Case, number: int, board: BoardTaken) -> list[BoardsError]:
    stock, places = board
    if not 0 <= stock < len(case.stock):
        return [BoardsError("unknown-board", number=number)]
    if not places:
        return [BoardsError("empty-board", number=number)]
    known = [case.pieces[place].inches for place in places if 0 <= place < len(case.pieces)]
    wanted = sum(known, start=Fraction(0)) + case.kerf.inches * (len(known) - 1)
    usable = case.stock[stock].length.inches - case.end_trim.inches
    return [BoardsError("board-too-short", number=number)] if wanted > usable else []


def _check_pieces(case: Case, boards: Sequence[BoardTaken]) -> list[BoardsError]:
    cut = Counter(place for _, places in boards for place in places)
    unknown = [
        BoardsError("unknown-piece", number=place + 1) for place in sorted(cut) if place not in range(len(case.pieces))
    ]
    return unknown + [
        BoardsError("piece-not-cut-once", number=place + 1, times=cut[place])
        for place in range(len(case.pieces))
        if cut[place] != 1
    ]


def _check_limits(case: Case, boards: Sequence[BoardTaken]) -> list[BoardsError]:
    used = Counter(stock for stock, _ in boards)
    return [
        BoardsError("over-limit", number=place + 1, limit=stock.limit, times=used[place])
        for place, stock in enumerate(case.stock)
        if stock.limit is not None and used[place] > stock.limit
    ]
