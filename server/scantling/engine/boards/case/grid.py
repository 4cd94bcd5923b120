"""The grid: a board case in whole numbers, so that the search never meets a fraction or a float.

A piece with its kerf is one size, a board with one kerf more is one capacity: pieces fit when their sizes add up to no
more than the capacity. Everything is a multiple of one unit, the finest that the case's own lengths need. Where that is
too fine to search (millimeters beside eighths, say), the case is put on two coarser grids: one that takes every piece
for longer and every board for shorter than it is, where whatever fits does fit, and one the other way round, where
whatever does not fit does not.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import gcd, lcm

from scantling.engine.boards.case.case import Case

FINEST = 32_768
"""Steps of the grid in the longest board: the search keeps a bit for each."""


@dataclass(frozen=True, slots=True)
class Grid:
    """Different sizes, largest first, with how many of each; per stock entry its capacity, price and limit.

    `members` are the places of the pieces of each size. A stock entry that no piece fits has the limit 0.
    """

    sizes: tuple[int, ...]
    demand: tuple[int, ...]
    members: tuple[tuple[int, ...], ...]
    capacity: tuple[int, ...]
    price: tuple[int, ...]
    limit: tuple[int, ...]


def derive_unit(case: Case) -> Fraction:
    """The finest step that all sizes are whole multiples of, in inches.

    >>> from scantling.engine.boards.case.case import Stock
    >>> from scantling.engine.tape.lengths import Length
    >>> eighth, stock = Length(Fraction(1, 8)), (Stock(Length(Fraction(96)), 749),)
    >>> derive_unit(Case(eighth, eighth, stock, (Length(Fraction(255, 4)), Length(Fraction(12)))))
    Fraction(1, 8)
    """
    sizes = [piece.inches + case.kerf.inches for piece in case.pieces]
    common = lcm(*(size.denominator for size in sizes))
    return Fraction(gcd(*(int(size * common) for size in sizes)), common)


def derive_grids(case: Case) -> tuple[Grid, Grid | None]:
    """The grid to search for a plan, and the one to search for a bound: the same unless the case is very fine.

    None in place of the second means that some piece is too short for it, and that there is no bound to be had.
    """
    unit = derive_unit(case)
    longest = max(stock.length.inches for stock in case.stock) + case.kerf.inches
    if longest / unit <= FINEST:
        grid = _derive_grid(case, unit, generous=False)
        return grid, grid
    unit = longest / FINEST
    shortest = min(piece.inches for piece in case.pieces) + case.kerf.inches
    strict = _derive_grid(case, unit, generous=False)
    return strict, _derive_grid(case, unit, generous=True) if shortest >= unit else None


def _derive_grid(case: Case, unit: Fraction, generous: bool) -> Grid:
    kerf = case.kerf.inches
    places: dict[int, list[int]] = {}
    for place, piece in enumerate(case.pieces):
        size = (piece.inches + kerf) / unit
        places.setdefault(int(size // 1 if generous else -(-size // 1)), []).append(place)
    sizes = tuple(sorted(places, reverse=True))
    rooms = [(stock.length.inches - case.end_trim.inches + kerf) / unit for stock in case.stock]
    capacity = tuple(max(0, int(-(-room // 1) if generous else room // 1)) for room in rooms)
    wanted = len(case.pieces)
    limits = [wanted if stock.limit is None else min(stock.limit, wanted) for stock in case.stock]
    return Grid(
        sizes=sizes,
        demand=tuple(len(places[size]) for size in sizes),
        members=tuple(tuple(places[size]) for size in sizes),
        capacity=capacity,
        price=tuple(stock.price_cents for stock in case.stock),
        limit=tuple(0 if room < sizes[-1] else limit for limit, room in zip(limits, capacity, strict=True)),
    )


def derive_coarse(grid: Grid, kinds: int) -> Grid:
    """The grid with neighboring sizes taken together until so many kinds are left.

    For estimates only: a group's size is the mean of its pieces, so that neither yes nor no carries over.
    """
    gaps = sorted((a - b, kind + 1) for kind, (a, b) in enumerate(zip(grid.sizes, grid.sizes[1:], strict=False)))
    joined = {kind for _, kind in gaps[: max(0, len(grid.sizes) - kinds)]}
    groups: list[list[int]] = []
    for kind in range(len(grid.sizes)):
        if kind in joined:
            groups[-1].append(kind)
        else:
            groups.append([kind])
    demand = tuple(sum(grid.demand[k] for k in group) for group in groups)
    totals = [sum(grid.sizes[k] * grid.demand[k] for k in group) for group in groups]
    sizes = tuple(total // count for total, count in zip(totals, demand, strict=True))
    members = tuple(tuple(place for k in group for place in grid.members[k]) for group in groups)
    return Grid(sizes, demand, members, grid.capacity, grid.price, grid.limit)
