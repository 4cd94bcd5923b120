"""Renewal: take a few boards out of a plan, plan their pieces anew, and keep what is better.

Rooms are planned at once and houses are not; but any few boards of a house are a room. Where nothing better is found,
what the boards leave over is gathered in one of them: it costs the same, and a long rest is the way to a shorter board.
Which boards are taken is drawn by dice that begin alike every time, so that one case has one answer.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from scantling.engine.boards.case.grid import Grid
from scantling.engine.boards.search.offcut import pack_shortened
from scantling.engine.boards.ways.packing import Way
from scantling.engine.boards.ways.steps import Steps

PIECES_AT_ONCE = 16
"""How many pieces are planned anew together: as many as are still planned at once."""

BOARDS_AT_LEAST = 3

WITH_MUCH_LEFT = 2
LOOKED_AT = 4
"""How many boards are taken for what they leave over, and of how many each of these is the one that leaves most."""

GATHERED = 4
GATHER_ALLOWANCE = 300
"""The share of what the others leave that one board is to leave besides, and the steps to find out whether it can."""


class Renewal:
    """Groups of boards of a plan to plan anew, one after another, never ending: the caller says when it is enough."""

    def __init__(self) -> None:
        self._dice = 20_011

    def choose(self, grid: Grid, ways: Sequence[Way]) -> tuple[tuple[Way, ...], tuple[Way, ...]]:
        """Some boards to plan anew, a few of them with much left over, and the rest."""
        rests = derive_rests(grid, ways)
        order = list(range(len(ways)))
        chosen: list[int] = []
        pieces = 0
        while order:
            throws = LOOKED_AT if len(chosen) < WITH_MUCH_LEFT else 1
            place = max([self._throw(len(order)) for _ in range(throws)], key=lambda at: rests[order[at]])
            place = order.pop(place)
            pieces += len(ways[place][1])
            if pieces > PIECES_AT_ONCE and len(chosen) >= BOARDS_AT_LEAST:
                break
            chosen.append(place)
        taken = set(chosen)
        return tuple([ways[place] for place in chosen]), tuple(
            [way for place, way in enumerate(ways) if place not in taken]
        )

    def gather(self, part: Grid, known: Sequence[Way], steps: Steps) -> tuple[Way, ...] | None:
        """The same pieces from the same boards with a longer rest on the one that leaves most, or None."""
        rests = derive_rests(part, known)
        longest = max(rests)
        elsewhere = sum(rests) - longest
        if not elsewhere:
            return None
        stock = known[rests.index(longest)][0]
        rest = longest + 1 + self._throw(elsewhere) // GATHERED
        taken = [way[0] for way in known]
        boards = tuple([taken.count(t) for t in range(len(part.price))])
        return pack_shortened(part, boards, stock, part.capacity[stock] - rest, steps, GATHER_ALLOWANCE)

    def _throw(self, sides: int) -> int:
        self._dice = (self._dice * 1_103_515_245 + 12_345) % (1 << 31)
        return (self._dice >> 8) % sides


def derive_rests(grid: Grid, ways: Sequence[Way]) -> list[int]:
    """What each board leaves over."""
    return [grid.capacity[stock] - sum([grid.sizes[kind] for kind in kinds]) for stock, kinds in ways]


def derive_part(grid: Grid, wanted: Sequence[int], kept: Sequence[Way]) -> tuple[Grid, tuple[int, ...]]:
    """So many wanted of each kind as a grid of their own, with the boards that the kept ones leave; and its kinds."""
    kinds = tuple([kind for kind, count in enumerate(wanted) if count])
    pieces = sum(wanted)
    used = [0] * len(grid.limit)
    for stock, _ in kept:
        used[stock] += 1
    part = replace(
        grid,
        sizes=tuple([grid.sizes[kind] for kind in kinds]),
        demand=tuple([wanted[kind] for kind in kinds]),
        members=tuple([grid.members[kind] for kind in kinds]),
        limit=tuple(
            [
                min(pieces, limit - count) if room >= grid.sizes[kinds[-1]] else 0
                for limit, count, room in zip(grid.limit, used, grid.capacity, strict=True)
            ]
        ),
    )
    return part, kinds


def count_kinds(grid: Grid, ways: Sequence[Way]) -> list[int]:
    """How many of each kind are cut from these boards."""
    counts = [0] * len(grid.sizes)
    for _, kinds in ways:
        for kind in kinds:
            counts[kind] += 1
    return counts


def translate(ways: Sequence[Way], kinds: Sequence[int]) -> Iterator[Way]:
    """Ways in a part's own kinds, in those of the whole."""
    for stock, way in ways:
        yield stock, tuple([kinds[kind] for kind in way])
