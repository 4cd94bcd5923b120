"""The order at the saw: board after board, or by how the saw stands, with boards taken side by side.

On each board the pieces stay in their planned order, so that what is left of it is long enough to hold; only which
board is next is free. What is found is good, not proved the best: for many boards that would take long.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from scantling.engine.boards.case.cuts import Ends, Setting

Place = tuple[int, int]
"""A piece by its board and its place on it."""

_Begun = tuple[int, tuple[int, ...], Setting | None, tuple[Place, ...]]
"""An order begun: settings so far, how many are cut of each board, how the saw stands, and the pieces."""

KEPT = 12
"""How many of the best begun orders are gone on with."""


def order_by_board(boards: Sequence[Sequence[Ends]]) -> list[Place]:
    return [(at, place) for at, board in enumerate(boards) for place in range(len(board))]


def order_by_setting(boards: Sequence[Sequence[Ends]]) -> list[Place]:
    """An order that sets the saw anew no more often than board after board does, mostly less."""
    beam: list[_Begun] = [(0, (0,) * len(boards), None, ())]
    for _ in order_by_board(boards):
        longer: dict[tuple[tuple[int, ...], Setting | None], _Begun] = {}
        for begun in beam:
            for found in _go_on(boards, begun):
                if found[1:3] not in longer or found[0] < longer[found[1:3]][0]:
                    longer[found[1:3]] = found
        beam = sorted(longer.values(), key=lambda found: (found[0], found[3]))[:KEPT]
    return min(list(beam[0][3]), order_by_board(boards), key=lambda order: count_settings(boards, order))


def _go_on(boards: Sequence[Sequence[Ends]], begun: _Begun) -> Iterator[_Begun]:
    """Every way to cut one piece more."""
    changes, cut, standing, order = begun
    for at, board in enumerate(boards):
        if cut[at] == len(board):
            continue
        left, right = board[cut[at]].settings
        more = (standing != left) + (left != right)
        yield changes + more, (*cut[:at], cut[at] + 1, *cut[at + 1 :]), right, (*order, (at, cut[at]))


def count_settings(boards: Sequence[Sequence[Ends]], order: Sequence[Place]) -> int:
    """How often the saw is set, the first time counted."""
    settings = [setting for at, place in order for setting in boards[at][place].settings]
    return bool(settings) + sum(before != after for before, after in pairwise(settings))
