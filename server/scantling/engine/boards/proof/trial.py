"""Trial: go through every way to cut the pieces from exactly these boards, to say that there is none.

The plainest search that could be: the longest piece that is left goes onto each board in turn, as long as what the
boards can still be filled with is enough for the rest. It shares nothing with the planner, is far slower, and gives up
rather than guess.
"""

from __future__ import annotations

from collections.abc import Sequence

from scantling.engine.boards.proof.patience import Patience

_State = tuple[int, tuple[int, ...]]
"""How many pieces are placed, and what room the boards have left, most first."""

FINEST = 100_000
"""The longest board in steps for which sums are kept, a bit for each: beyond it, any room counts as filled."""


def comes_out(sizes: Sequence[int], rooms: Sequence[int], patience: Patience) -> bool:
    """Whether pieces of these sizes fit boards with this much room. Raises `OutOfPatience`.

    >>> comes_out([3, 3, 2], [5, 3], Patience(100)), comes_out([3, 3, 2], [4, 4], Patience(100))
    (True, False)
    """
    sizes = sorted(sizes, reverse=True)
    sums = _derive_sums(sizes) if max(rooms, default=0) <= FINEST else None
    rest = [sum(sizes[placed:]) for placed in range(len(sizes) + 1)]
    waiting: list[_State] = [(0, tuple(sorted(rooms, reverse=True)))]
    seen: set[_State] = set()
    while waiting:
        state = waiting.pop()
        placed, left = state
        if placed == len(sizes):
            return True
        patience.spend()
        if state in seen or _most(left, sums[placed] if sums else None) < rest[placed]:
            continue
        seen.add(state)
        for room in _choices(left, sizes[placed]):
            after = list(left)
            after.remove(room)
            after.append(room - sizes[placed])
            waiting.append((placed + 1, tuple(sorted(after, reverse=True))))
    return False


def _derive_sums(sizes: Sequence[int]) -> list[int]:
    """For every place, the sums that the sizes from there on can make, as the bits of one whole number."""
    sums = [1]
    for size in reversed(sizes):
        sums.append(sums[-1] | sums[-1] << size)
    return sums[::-1]


def _most(left: Sequence[int], sums: int | None) -> int:
    """How much of the room left can be filled at most, each board by itself."""
    if sums is None:
        return sum(left)
    return sum([(sums & ((1 << (room + 1)) - 1)).bit_length() - 1 for room in left])


def _choices(left: Sequence[int], size: int) -> list[int]:
    """The different rooms to try the piece in, the last one first; the room that it fills, where there is one.

    Nothing is lost by that: what another plan puts there can go where the piece would have gone.
    """
    if size in left:
        return [size]
    return sorted({room for room in left if room > size}, reverse=True)
