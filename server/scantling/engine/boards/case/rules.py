"""Rules: reasons why a shopping list cannot be enough, each one checkable by hand.

Give every piece some points. If the most points that one board can hold is known for each length of board, then the
boards of any plan together hold at least the points of all pieces. Points may be anything; good ones are the sizes of
the longer pieces, or one point for each longer piece.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from scantling.engine.boards.case.case import Rule
from scantling.engine.boards.case.grid import Grid


def derive_size_rule(grid: Grid) -> Rule:
    """Every piece counts its size; a board holds the fullest sum that it can reach."""
    sums = 1
    for kind, size in enumerate(grid.sizes):
        for _ in range(grid.demand[kind]):
            sums |= sums << size
    return Rule(grid.sizes, tuple([_top(sums, room) for room in grid.capacity]))


def derive_size_rules(grid: Grid) -> list[Rule]:
    """For each kind: pieces of that size and longer count their size; a board holds the fullest sum in its reach."""
    rules = []
    sums = 1
    for kind, size in enumerate(grid.sizes):
        for _ in range(grid.demand[kind]):
            sums |= sums << size
        points = grid.sizes[: kind + 1] + (0,) * (len(grid.sizes) - kind - 1)
        rules.append(Rule(points, tuple(_top(sums, room) for room in grid.capacity)))
    rules.reverse()
    return rules


def derive_count_rules(grid: Grid) -> list[Rule]:
    """For each kind: pieces of that size and longer count one; a board holds as many of the shortest as fit."""
    rules = []
    for kind in range(len(grid.sizes)):
        points = (1,) * (kind + 1) + (0,) * (len(grid.sizes) - kind - 1)
        rules.append(Rule(points, tuple(_most_pieces(grid, kind, room) for room in grid.capacity)))
    return rules


def derive_total(rule: Rule, grid: Grid) -> int:
    """The points of all pieces."""
    return sum([points * count for points, count in zip(rule.points, grid.demand, strict=True)])


def derive_spare(rule: Rule, grid: Grid, cents: int) -> int:
    """The most points that any boards for so much money can hold beyond what the pieces need; below zero if too few."""
    points = sum([rule.most[t] * limit for t, limit in enumerate(grid.limit) if not grid.price[t] and rule.most[t] > 0])
    offers = [(rule.most[t], grid.price[t], limit) for t, limit in enumerate(grid.limit) if grid.price[t]]
    for most, price, limit in sorted(offers, key=lambda offer: Fraction(-offer[0], offer[1])):
        if most <= 0 or cents <= price * limit:
            points += max(0, most) * cents // price
            break
        points += most * limit
        cents -= price * limit
    return points - derive_total(rule, grid)


def passes(rule: Rule, need: int, boards: Sequence[int]) -> bool:
    """Whether these boards can hold the points needed."""
    return sum([most * count for most, count in zip(rule.most, boards, strict=True)]) >= need


def derive_least_cents(rule: Rule, grid: Grid) -> int | None:
    """The least money for the points needed if a part of a board could be bought; None when all boards are too few."""
    offers = [(rule.most[t], grid.price[t], limit) for t, limit in enumerate(grid.limit) if limit and rule.most[t] > 0]
    offers.sort(key=lambda offer: Fraction(offer[1], offer[0]))
    return climb(offers, derive_total(rule, grid))


def climb(ladder: Sequence[tuple[int, int, int]], need: int) -> int | None:
    """The least money for `need` points from offers (points, cents, limit), best buy first; rounded up to a cent."""
    cents = 0
    for most, price, limit in ladder:
        if most * limit >= need:
            return cents - (-need * price // most)
        need -= most * limit
        cents += price * limit
    return None


def _top(sums: int, room: int) -> int:
    return (sums & ((1 << (room + 1)) - 1)).bit_length() - 1


def _most_pieces(grid: Grid, shortest: int, room: int) -> int:
    most = 0
    for kind in range(shortest, -1, -1):
        count = min(grid.demand[kind], room // grid.sizes[kind])
        most += count
        room -= count * grid.sizes[kind]
        if count < grid.demand[kind]:
            break
    return most
