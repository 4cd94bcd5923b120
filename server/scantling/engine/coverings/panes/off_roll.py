"""The shortest length off a roll, by bands cut straight across it: proven, or with how much shorter it might be.

Best first by a bound that no layout can beat: what is cut, and the area still to cut over the roll's width. Steps
are counted and not timed, so that every machine stops at the same place.
"""

import heapq
from collections.abc import Sequence
from dataclasses import dataclass

from scantling.engine.coverings.panes.bands import BlankKind, Left, PaneBand, StepsLeft, derive_bands, take

# Before the best found so far is given with its gap: under a second on a laptop.
STEPS_AT_MOST = 50_000
STEPS_A_BAND = 300
# So many of the layouts in hand are finished then.
FINISHED = 5
# Of more kinds than these, the fullest band is not looked for.
GREEDY_AT_MOST = 40


@dataclass(frozen=True, slots=True)
class OffRoll:
    """Bands in the order they come off the roll, their length in all, and a length that none can be shorter than."""

    bands: tuple[PaneBand, ...]
    length: int
    bound: int


def plan_off_roll(kinds: Sequence[BlankKind], room: int) -> OffRoll:
    """The bands that take the least of a roll as wide as `room`; every kind must fit it."""
    start = tuple(kind.count for kind in kinds)
    best = min((plan(kinds, start, room) for plan in (_greedy, first_fit)), key=lambda plan: plan.length)
    waiting = [(_bound(kinds, start, room), 0, start)]
    came: dict[Left, tuple[int, tuple[PaneBand, ...]]] = {start: (0, ())}
    patience = StepsLeft(STEPS_AT_MOST)
    while waiting:
        bound, length, left = heapq.heappop(waiting)
        if bound >= best.length:
            break
        if length > came[left][0]:
            continue
        bands = came[left][1]
        if not any(left):
            return OffRoll(bands, length, length)
        for band in derive_bands(kinds, left, room, hardest(kinds, left), patience):
            after, further = take(left, band.counts), length + band.height
            if after not in came or further < came[after][0]:
                came[after] = (further, (*bands, band))
                heapq.heappush(waiting, (further + _bound(kinds, after, room), further, after))
        if patience.spent:
            heapq.heappush(waiting, (bound, length, left))  # not every band of it was seen, so its bound still counts
            break
    return _stopped(kinds, room, best, waiting, came)


def _stopped(
    kinds: Sequence[BlankKind], room: int, best: OffRoll, waiting: list[tuple[int, int, Left]],
    came: dict[Left, tuple[int, tuple[PaneBand, ...]]],
) -> OffRoll:  # fmt: skip
    """The best known: the greedy one, or what the search had in hand, finished greedily."""
    bound = min((one[0] for one in waiting), default=best.length)
    for _, length, left in waiting[:FINISHED]:
        rest = _greedy(kinds, left, room)
        if length + rest.length < best.length:
            best = OffRoll((*came[left][1], *rest.bands), length + rest.length, 0)
    return OffRoll(best.bands, best.length, min(bound, best.length))


def hardest(kinds: Sequence[BlankKind], left: Left) -> int:
    """The kind that some band must hold next: the one of which the lowest band is the highest."""
    return max(
        (place for place, count in enumerate(left) if count),
        key=lambda place: (min(along for _, along in kinds[place].ways), kinds[place].width, -place),
    )


def _bound(kinds: Sequence[BlankKind], left: Left, room: int) -> int:
    """No layout is shorter than its area over the width, nor than what can only lie one behind the other."""
    there = [(kind, count) for kind, count in zip(kinds, left, strict=True) if count]
    area = sum(kind.width * kind.height * count for kind, count in there)
    alone = sum(_lowest(kind, room) * count for kind, count in there if all(2 * way[0] > room for way in kind.ways))
    lowest = max((_lowest(kind, room) for kind, _ in there), default=0)
    return max(-(-area // room), alone, lowest)


def _lowest(kind: BlankKind, room: int) -> int:
    return min(along for across, along in kind.ways if across <= room)


def _greedy(kinds: Sequence[BlankKind], left: Left, room: int) -> OffRoll:
    """Band after band, each the one that wastes the least part of itself."""
    if len(kinds) > GREEDY_AT_MOST:
        return first_fit(kinds, left, room)
    bands: list[PaneBand] = []
    while any(left):
        band = max(derive_some(kinds, left, room), key=lambda one: (fullness(one) / one.height, one.counts))
        bands.append(band)
        left = take(left, band.counts)
    return OffRoll(tuple(bands), sum(band.height for band in bands), 0)


def first_fit(kinds: Sequence[BlankKind], left: Left, room: int) -> OffRoll:
    """The highest blank first, each into the first band with room beside what is in it."""
    lying = [min((along, across) for across, along in kind.ways if across <= room) for kind in kinds]
    spare: list[int] = []
    counts: list[list[int]] = []
    heights: list[int] = []
    for place in sorted(range(len(kinds)), key=lambda one: (-lying[one][0], -lying[one][1], one)):
        along, across = lying[place]
        for _ in range(left[place]):
            band = next((number for number, left in enumerate(spare) if left >= across), len(spare))
            if band == len(spare):
                spare.append(room)
                counts.append([0] * len(kinds))
                heights.append(along)
            spare[band] -= across
            counts[band][place] += 1
    ways = [(across, along) for along, across in lying]
    bands = [
        PaneBand(high, tuple(each), tuple(way if count else (0, 0) for way, count in zip(ways, each, strict=True)))
        for high, each in zip(heights, counts, strict=True)
    ]
    return OffRoll(tuple(bands), sum(heights), 0)


def derive_some(kinds: Sequence[BlankKind], left: Left, room: int, longest: int | None = None) -> list[PaneBand]:
    """The first bands of those that hold the hardest blank: enough to choose from, and always one."""
    return list(derive_bands(kinds, left, room, hardest(kinds, left), StepsLeft(STEPS_A_BAND + 5 * len(left)), longest))


def fullness(band: PaneBand) -> int:
    return sum(across * along * count for (across, along), count in zip(band.ways, band.counts, strict=True))
