"""Spacing: equal things along a span, each mark taken from one end.

Every mark is worked from the exact pitch and rounded by itself; a rounded gap that is stepped off adds its error up.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from scantling.engine.errors import EngineError
from scantling.engine.tape.lengths import SIXTY_FOURTH, ZERO, Length, format_length

# What the row begins and ends with, and how many more gaps than items that makes.
ENDS = {"item": -1, "one": 0, "gap": 1}
MOST_ITEMS = 1000
# How many fewer and how many more are tried when a mark lands on something.
OTHERS = 3


class SpacingError(EngineError):
    family = "spacing"


@dataclass(frozen=True, slots=True)
class Hazard:
    """Something that an item must not lie on: from where, and how wide."""

    at: Length
    width: Length


@dataclass(frozen=True, slots=True)
class Clash:
    """Which item (1 is the first) lies on which thing to avoid (by its place in the list), and over how much of it."""

    item: int
    avoid: int
    mark: Length
    over: Length


@dataclass(frozen=True, slots=True)
class Spacing:
    """A row of `count` items of `width`; each mark is an item's near edge from the left end of the span."""

    span: Length
    width: Length
    count: int
    ends: str
    gap: Length

    @property
    def gaps(self) -> int:
        return self.count + ENDS[self.ends]

    @property
    def pitch(self) -> Length:
        return self.width + self.gap

    @property
    def marks(self) -> tuple[Length, ...]:
        first = self.gap if self.ends == "gap" else ZERO
        return tuple(first + self.pitch * place for place in range(self.count))


def derive_spacing(span: Length, width: Length, count: int, ends: str) -> Spacing:
    """A row of so many items: gap = (L − n·w) / (n − 1, n or n + 1). Exact. Raises `SpacingError`.

    >>> from scantling.engine.tape.lengths import parse_length
    >>> derive_spacing(parse_length("96"), parse_length("1 1/2"), 5, "gap").gap.inches
    Fraction(59, 4)
    """
    least = _least(ends)
    if not span:
        raise SpacingError("no-span", field="span")
    if count < least:
        raise SpacingError("no-items", field="count", count=count, least=least)
    if count > MOST_ITEMS:
        raise SpacingError("too-many-marks", field="count", most=MOST_ITEMS)
    left = span - width * count
    if left.inches < 0:
        over = format_length(-left, SIXTY_FOURTH)
        raise SpacingError("too-many", field="count", count=count, width=format_length(width, SIXTY_FOURTH), over=over)
    return Spacing(span, width, count, ends, left / (count + ENDS[ends]))


def _least(ends: str) -> int:
    return 2 if ends == "item" else 1


def derive_spacing_by_gap(span: Length, width: Length, most_gap: Length, ends: str) -> Spacing:
    """The row with the fewest items whose gap is no wider than `most_gap`. Raises `SpacingError`.

    From (L − n·w) / (n + e) ≤ g: n ≥ (L − e·g) / (w + g), with e the gaps beyond the items.

    >>> from scantling.engine.tape.lengths import parse_length
    >>> derive_spacing_by_gap(parse_length("120"), parse_length("3 1/2"), parse_length("20"), "item").count
    6
    """
    if not most_gap:
        raise SpacingError("no-gap", field="most_gap")
    count = max(_least(ends), math.ceil((span - most_gap * ENDS[ends]) / (width + most_gap)))
    if count > MOST_ITEMS:
        raise SpacingError("too-many-marks", field="most_gap", most=MOST_ITEMS)
    if width * count > span:
        wide, gap = (format_length(length, SIXTY_FOURTH) for length in (width, most_gap))
        raise SpacingError("no-count", field="most_gap", width=wide, gap=gap)
    return derive_spacing(span, width, count, ends)


def check_clashes(row: Spacing, avoid: Sequence[Hazard]) -> list[Clash]:
    """Every item that lies on something to avoid; edges that only touch do not clash."""
    return [
        Clash(item, place, mark, min(mark + row.width, thing.at + thing.width) - max(mark, thing.at))
        for item, mark in enumerate(row.marks, start=1)
        for place, thing in enumerate(avoid)
        if _lies_on(mark, row.width, thing)
    ]


def _lies_on(mark: Length, width: Length, thing: Hazard) -> bool:
    if mark == thing.at and not width and not thing.width:
        return True  # a nail on a screw: neither has a width, and both are at one place
    return mark < thing.at + thing.width and thing.at < mark + width


def derive_others(row: Spacing, most_gap: Length | None = None) -> Iterator[Spacing]:
    """Rows of a few items fewer or more, nearest first, that fit the span and any widest gap."""
    nearest_first = [row.count + way * by for by in range(1, OTHERS + 1) for way in (1, -1)]
    for count in nearest_first:
        if not _least(row.ends) <= count <= MOST_ITEMS or row.width * count > row.span:
            continue
        other = derive_spacing(row.span, row.width, count, row.ends)
        if most_gap is None or other.gap <= most_gap:
            yield other
