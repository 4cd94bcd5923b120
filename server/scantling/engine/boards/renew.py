"""Renewal: take a few boards out of a plan, plan their pieces anew, and keep what is better.

Rooms are planned at once and houses are not; but any few boards of a house are a room. Which boards are taken is drawn
by dice that begin alike every time, so that one case has one answer.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from scantling.engine.boards.grid import Grid
from scantling.engine.boards.packing import Way

PIECES_AT_ONCE = 16
"""How many pieces are planned anew together: as many as are still planned at once."""

BOARDS_AT_LEAST = 3


class Renewal:
    """Groups of boards of a plan to plan anew, one after another, never ending: the caller says when it is enough."""

    def __init__(self) -> None:
        self._dice = 20_011

    def choose(self, ways: Sequence[Way]) -> tuple[tuple[Way, ...], tuple[Way, ...]]:
        """Some boards to plan anew, and the rest."""
        order = list(range(len(ways)))
        chosen: list[int] = []
        pieces = 0
        while order:
            place = order.pop(self._throw(len(order)))
            pieces += len(ways[place][1])
            if pieces > PIECES_AT_ONCE and len(chosen) >= BOARDS_AT_LEAST:
                break
            chosen.append(place)
        taken = set(chosen)
        return tuple([ways[place] for place in chosen]), tuple(
            [way for place, way in enumerate(ways) if place not in taken]
        )

    def _throw(self, sides: int) -> int:
        self._dice = (self._dice * 1_103_515_245 + 12_345) % (1 << 31)
        return (self._dice >> 8) % sides


def derive_part(grid: Grid, chosen: Sequence[Way], kept: Sequence[Way]) -> tuple[Grid, tuple[int, ...]]:
    """The chosen boards' pieces as a grid of their own, with the boards that the kept ones leave; and its kinds."""
    counts: dict[int, int] = {}
    for _, kinds in chosen:
        for kind in kinds:
            counts[kind] = counts.get(kind, 0) + 1
    kinds = tuple(sorted(counts))
    pieces = sum(counts.values())
    used = [0] * len(grid.limit)
    for stock, _ in kept:
        used[stock] += 1
    part = replace(
        grid,
        sizes=tuple([grid.sizes[kind] for kind in kinds]),
        demand=tuple([counts[kind] for kind in kinds]),
        members=tuple([grid.members[kind] for kind in kinds]),
        limit=tuple(
            [
                min(pieces, limit - count) if room >= grid.sizes[kinds[-1]] else 0
                for limit, count, room in zip(grid.limit, used, grid.capacity, strict=True)
            ]
        ),
    )
    return part, kinds


def translate(ways: Sequence[Way], kinds: Sequence[int]) -> Iterator[Way]:
    """Ways in a part's own kinds, in those of the whole."""
    for stock, way in ways:
        yield stock, tuple([kinds[kind] for kind in way])
