"""The order at the saw: board after board, or by how the saw stands, with boards taken side by side.

On each board the pieces stay in their planned order, so that what is left of it is long enough to hold; only which
board is next is free. Of a room's boards the order that sets the saw least often is found and proved by never asking
for less than what is left must ask for; where that would take long, of many boards, a good one is, not proved the best.
"""

from __future__ import annotations

import heapq
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from scantling.engine.boards.case.cuts import Ends, Setting

StickPlace = tuple[int, int]
"""A piece by its board and its place on it."""

_Sets = list[list[tuple[int, int]]]
"""Of each board the settings of its pieces, left and right, by number."""

_Begun = tuple[int, tuple[int, ...], int, tuple[StickPlace, ...]]
"""An order begun: settings so far, how many are cut of each board, how the saw stands, and the pieces."""

UNSET = -1
KEPT = 12
"""How many of the best begun orders are gone on with, where not all can be."""

LOOKED_AT = 60_000
"""How much is looked at before the best is no longer looked for: for each begun order every board by every board."""


def order_by_board(boards: Sequence[Sequence[Ends]]) -> list[StickPlace]:
    return [(at, place) for at, board in enumerate(boards) for place in range(len(board))]


def order_by_setting(boards: Sequence[Sequence[Ends]]) -> list[StickPlace]:
    """An order that sets the saw as seldom as can be, or at least no more often than board after board does."""
    known: dict[Setting, int] = {}
    sets = [
        [(known.setdefault(left, len(known)), known.setdefault(right, len(known))) for left, right in
         (ends.settings for ends in board)]
        for board in boards
    ]  # fmt: skip
    found = [_find_best(sets) or _find_good(sets), order_by_board(boards)]
    return min(found, key=lambda order: count_settings(boards, order))


def _find_best(sets: _Sets) -> list[StickPlace] | None:
    """The order of fewest settings, those begun first that may yet come to least; None where that takes too long."""
    rests = [[_Rest.of(board[done:]) for done in range(len(board) + 1)] for board in sets]
    begun: _Begun = (0, (0,) * len(sets), UNSET, ())
    waiting = [(0, (0, 0, 0), begun)]
    known: dict[tuple[tuple[int, ...], int], int] = {}
    for number in range(LOOKED_AT // max(1, len(sets)) ** 2):
        begun = heapq.heappop(waiting)[2]
        if all(cut == len(board) for cut, board in zip(begun[1], sets, strict=True)):
            return list(begun[3])
        for turn, more in enumerate(_go_on(sets, begun)):
            if more[0] < known.get(more[1:3], more[0] + 1):
                known[more[1:3]] = more[0]
                # Of those that may come to as much, what has come farthest; then in the order in which they were found.
                heapq.heappush(waiting, (_least(rests, more), (-len(more[3]), number, turn), more))
    return None


def _find_good(sets: _Sets) -> list[StickPlace]:
    """One begun order beside the other, piece by piece; of those as far, the few with the fewest settings."""
    beam: list[_Begun] = [(0, (0,) * len(sets), UNSET, ())]
    for _ in range(sum(map(len, sets))):
        longer: dict[tuple[tuple[int, ...], int], _Begun] = {}
        for begun in beam:
            for found in _go_on(sets, begun):
                if found[1:3] not in longer or found[0] < longer[found[1:3]][0]:
                    longer[found[1:3]] = found
        beam = sorted(longer.values(), key=lambda found: (found[0], found[3]))[:KEPT]
    return list(beam[0][3])


def _go_on(sets: _Sets, begun: _Begun) -> Iterator[_Begun]:
    """Every way to cut one piece more; what is cut with the saw as it stands is cut at once, for that costs nothing."""
    changes, cut, standing, order = begun
    ways = [(at, *board[done]) for at, (board, done) in enumerate(zip(sets, cut, strict=True)) if done < len(board)]
    free = [way for way in ways if way[1] == way[2] == standing]
    for at, left, right in free[:1] or ways:
        more = (standing != left) + (left != right)
        yield changes + more, (*cut[:at], cut[at] + 1, *cut[at + 1 :]), right, (*order, (at, cut[at]))


@dataclass(frozen=True, slots=True)
class _Rest:
    """What is left of a board: the settings it still wants, a bit for each, the first of them, and how often it sets
    the saw by itself once that stands."""

    wanted: int
    first: int
    changes: int

    @staticmethod
    def of(pieces: Sequence[tuple[int, int]]) -> _Rest:
        settings = [one for both in pieces for one in both]
        wanted = sum(1 << one for one in set(settings))
        changes = sum(one != other for one, other in pairwise(settings))
        return _Rest(wanted, settings[0] if settings else UNSET, changes)


def _least(rests: list[list[_Rest]], begun: _Begun) -> int:
    """The settings that an order begun so comes to at least: each that is still wanted is set once, and the saw follows
    the board that asks for most."""
    changes, cut, standing, _ = begun
    wanted = most = 0
    for board, done in zip(rests, cut, strict=True):
        rest = board[done]
        wanted |= rest.wanted
        most = max(most, rest.changes + (rest.first not in (UNSET, standing)))
    return changes + max((wanted & ~(1 << standing)).bit_count(), most)


def count_settings(boards: Sequence[Sequence[Ends]], order: Sequence[StickPlace]) -> int:
    """How often the saw is set, the first time counted."""
    settings = [setting for at, place in order for setting in boards[at][place].settings]
    return bool(settings) + sum(before != after for before, after in pairwise(settings))
