"""Which piece comes from which roll: whole strips first, and what goes over and under openings from what is left.

On a roll the next piece begins where the pattern stands as it must. Each next one is the longest that still fits, or in
a second cutting the nearest; the better of the two is kept. It is proven where no roll could hold more, or where every
order of cutting was tried.
"""

import math
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from scantling.engine.coverings.seams.hang import RollCut

RollOf = tuple[RollCut, ...]
# Pieces cut of each kind and the kind cut last; and the rolls begun, where on the last one, and what came before.
CuttingState = tuple[tuple[int, ...], int]
Reached = tuple[int, int, "tuple[int, Reached] | None"]
# Few enough pieces for every order of cutting them to be tried.
STATES_AT_MOST = 1500


@dataclass(frozen=True, slots=True)
class Cutting:
    """The rolls, each its pieces in the order they are cut; and how many at least any cutting takes."""

    rolls: tuple[RollOf, ...]
    bound: int


def advance(before: RollCut, after: RollCut, repeat: int) -> int:
    """From one piece's top to the next one's."""
    gap = (after.phase - before.phase - before.length) % repeat if repeat else 0
    return before.length + gap


def cut_rolls(cuts: Iterable[RollCut], usable: int, repeat: int) -> Cutting | None:
    """All pieces cut from rolls of which so much is usable from the first piece's top on; None where one is longer."""
    wanted = Counter(cuts)
    if any(cut.length > usable for cut in wanted):
        return None
    bound = _bound(wanted, usable, repeat)
    best = min((_fill(wanted, usable, repeat, longest) for longest in (True, False)), key=len)
    if len(best) > bound and len(wanted) * math.prod(count + 1 for count in wanted.values()) <= STATES_AT_MOST:
        best = _try_all(wanted, usable, repeat)
        bound = len(best)
    return Cutting(best, bound)


def _try_all(wanted: Counter[RollCut], usable: int, repeat: int) -> tuple[RollOf, ...]:
    """Every order of cutting: of the same pieces cut, the same one last, only the way that used least is followed."""
    kinds = sorted(wanted, key=lambda cut: (-cut.length, cut.phase))
    steps = [[advance(one, other, repeat) for other in kinds] for one in kinds]
    none = (0,) * len(kinds)
    level: dict[CuttingState, Reached] = {(_more(none, first), first): (1, 0, None) for first in range(len(kinds))}
    for _ in range(wanted.total() - 1):
        after: dict[CuttingState, Reached] = {}
        for (counts, last), reached in level.items():
            for kind, cut in enumerate(kinds):
                if counts[kind] == wanted[cut]:
                    continue
                top = reached[1] + steps[last][kind]
                fits = top + cut.length <= usable
                rolls, at = (reached[0], top) if fits else (reached[0] + 1, 0)
                state = (_more(counts, kind), kind)
                if state not in after or (rolls, at) < after[state][:2]:
                    after[state] = (rolls, at, (last, reached))
        level = after
    (_, last), reached = min(level.items(), key=lambda item: (item[1][:2], item[0]))
    return _rolls_of(kinds, last, reached)


def _more(counts: tuple[int, ...], kind: int) -> tuple[int, ...]:
    return (*counts[:kind], counts[kind] + 1, *counts[kind + 1 :])


def _rolls_of(kinds: Sequence[RollCut], last: int, reached: "Reached") -> tuple[RollOf, ...]:
    """The rolls that led to a state, from its last piece back to the first."""
    rolls: list[list[RollCut]] = [[]]
    while True:
        _, at, before = reached
        rolls[-1].append(kinds[last])
        if before is None:
            break
        last, reached = before
        if not at:
            rolls.append([])
    return tuple(tuple(reversed(roll)) for roll in reversed(rolls))


def _fill(wanted: Counter[RollCut], usable: int, repeat: int, longest: bool) -> tuple[RollOf, ...]:
    left = dict(sorted(wanted.items(), key=lambda item: (-item[0].length, item[0].phase)))
    rolls: list[RollOf] = []
    while left:
        first = max(left, key=lambda cut: (cut.length, left[cut]))
        roll, at = [first], 0
        _take(left, first)
        while True:
            fits = [
                (cut, step) for cut in left if at + (step := advance(roll[-1], cut, repeat)) + cut.length <= usable
            ]
            if not fits:
                break
            nearest, step = min(fits, key=lambda one: (-one[0].length if longest else 0, one[1], -left[one[0]]))
            at += step
            roll.append(nearest)
            _take(left, nearest)
        rolls.append(tuple(roll))
    return tuple(rolls)


def _take(left: dict[RollCut, int], cut: RollCut) -> None:
    left[cut] -= 1
    if not left[cut]:
        del left[cut]


def _bound(wanted: Counter[RollCut], usable: int, repeat: int) -> int:
    """By length alone; and by how many of the long pieces any roll can hold, each at the least advance there is."""
    if not wanted:
        return 0
    by_length = -(-sum(cut.length * count for cut, count in wanted.items()) // usable)
    longest = max(cut.length for cut in wanted)
    long = [cut for cut in wanted if 2 * cut.length >= longest]
    least = min(advance(one, other, repeat) for one in long for other in long)
    shortest = min(cut.length for cut in long)
    most = 1 + (usable - shortest) // least
    return max(by_length, -(-sum(wanted[cut] for cut in long) // most))


def order_of(rolls: Sequence[RollOf], repeat: int) -> dict[RollCut, list[tuple[int, int, int]]]:
    """Where each piece is cut: roll, place on it and how far from its first top, for all that are alike, in order."""
    found: dict[RollCut, list[tuple[int, int, int]]] = {}
    for number, roll in enumerate(rolls, start=1):
        at = 0
        for place, cut in enumerate(roll, start=1):
            at += advance(roll[place - 2], cut, repeat) if place > 1 else 0
            found.setdefault(cut, []).append((number, place, at))
    return found
