"""Bands: straight across the roll or the sheet, then split. A band is as high as the highest blank in it.

At a given height each blank lies the way in which it takes least of the width, and a band that has room for one more
blank is never better than with it: so only full bands are tried. Whole numbers, of a unit that the caller chooses.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class BlankKind:
    """Blanks alike: their size, how many, and whether one may be turned by a quarter."""

    width: int
    height: int
    count: int
    turnable: bool

    @property
    def ways(self) -> list[tuple[int, int]]:
        """Width across and height along, unturned first."""
        both = [(self.width, self.height)]
        return [*both, (self.height, self.width)] if self.turnable and self.width != self.height else both


@dataclass(frozen=True, slots=True)
class PaneBand:
    """How many of each kind, and the way (width across, height along) in which that kind lies; none: (0, 0)."""

    height: int
    counts: tuple[int, ...]
    ways: tuple[tuple[int, int], ...]


Left = tuple[int, ...]


class StepsLeft:
    """Steps that may still be taken. Counted and not timed, so that every machine stops at the same place."""

    __slots__ = ("steps",)

    def __init__(self, steps: int) -> None:
        self.steps = steps

    @property
    def spent(self) -> bool:
        return self.steps <= 0


def derive_bands(
    kinds: Sequence[BlankKind], left: Left, room: int, must: int, patience: StepsLeft, longest: int | None = None
) -> Iterator[PaneBand]:
    """Every full band that holds a blank of the kind `must`, of what is `left` of each kind; none above `longest`.

    Once the patience is spent there may be more than were given.
    """
    seen: set[tuple[int, Left]] = set()
    for height in _heights(kinds, left, room, must, longest):
        patience.steps -= len(kinds)
        ways = [_way(kind, height, count) for kind, count in zip(kinds, left, strict=True)]
        if not ways[must][0]:
            continue
        for counts in _fill([width for width, _ in ways], left, room, must, patience):
            used = tuple(way if count else (0, 0) for way, count in zip(ways, counts, strict=True))
            high = max(along for _, along in used)
            if (high, counts) not in seen:
                seen.add((high, counts))
                yield PaneBand(high, counts, used)


def _heights(kinds: Sequence[BlankKind], left: Left, room: int, must: int, longest: int | None) -> list[int]:
    lowest = min((along for across, along in kinds[must].ways if across <= room), default=0)
    found = {
        along
        for kind, count in zip(kinds, left, strict=True)
        for across, along in (kind.ways if count else ())
        if across <= room and lowest <= along and (longest is None or along <= longest)
    }
    return sorted(found)


def _way(kind: BlankKind, height: int, count: int) -> tuple[int, int]:
    ways = [way for way in kind.ways if way[1] <= height]
    return min(ways) if ways and count else (0, 0)


def _fill(widths: Sequence[int], left: Left, room: int, must: int, patience: StepsLeft) -> Iterator[Left]:
    """Every choice that holds one of `must` and leaves no room for one more."""
    # Its place is kept from the start: the others must not fill it.
    if widths[must] > room:
        return
    left = tuple(count - (place == must) for place, count in enumerate(left))
    # What all kinds from a place on could still fill: with more room than that, what was passed over would fit too.
    rest = [0]
    for width, count in zip(reversed(widths), reversed(left), strict=True):
        rest.append(rest[-1] + width * count)
    rest.reverse()
    waiting: list[tuple[int, int, Left]] = [(room - widths[must], room + 1, ())]
    while waiting and not patience.spent:
        patience.steps -= 1
        spare, passed, taken = waiting.pop()
        place = len(taken)
        if place == len(widths):
            yield tuple(count + (place == must) for place, count in enumerate(taken))
            continue
        width = widths[place]
        most = min(left[place], spare // width) if width else 0
        for count in range(most + 1):
            # The narrowest kind of which one more could have been taken must not fit in the end.
            narrowest = min(passed, width) if width and count < left[place] else passed
            over = spare - count * width
            if over - rest[place + 1] < narrowest:
                waiting.append((over, narrowest, (*taken, count)))


def take(left: Left, counts: Left) -> Left:
    return tuple(has - gone for has, gone in zip(left, counts, strict=True))
