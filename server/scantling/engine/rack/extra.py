"""Extra: boards bought beyond the plan, against a spoilt cut: a spare stick, or a share of the length in hand.

A spare is the cheapest board from which the longest piece could be cut again, so that any one piece can. Overage is a
share of what the pieces measure together, in the boards that give so much for the least money.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.boards.case.case import Case, Stock
from scantling.engine.tape.lengths import ZERO, Length

WHOLE = 100


@dataclass(frozen=True, slots=True)
class Extra:
    """Boards to buy beyond the plan, by their places in the stock, and why."""

    why: str
    stock: tuple[int, ...]

    def cost(self, case: Case) -> int:
        return sum(case.stock[place].price_cents for place in self.stock)


def derive_extras(case: Case, spare_sticks: int, overage: Fraction) -> list[Extra]:
    """What the settings ask for; nothing where they ask for nothing, or where nothing on sale would do."""
    sale = [place for place, stock in enumerate(case.stock) if stock.price_cents and stock.limit is None]
    longest = max(case.pieces)
    fit = [place for place in sale if case.stock[place].length - case.end_trim >= longest]
    extras = []
    if spare_sticks and fit:
        spare = min(fit, key=lambda place: (case.stock[place].price_cents, place))
        extras.append(Extra("spare", (spare,) * spare_sticks))
    if overage and sale:
        wanted = sum((piece.inches for piece in case.pieces), start=Fraction(0)) * overage / WHOLE
        extras.append(Extra("overage", _cheapest(case, sale, Length(wanted))))
    return extras


def _cheapest(case: Case, sale: Sequence[int], wanted: Length) -> tuple[int, ...]:
    """The cheapest boards that give so much together: by whole inches, each counted down."""
    gives = {place: max(1, _whole_inches(case.stock[place], case.end_trim)) for place in sale}
    inches = -(-wanted.inches // 1)
    best: list[tuple[int, tuple[int, ...]]] = [(0, ())]
    for need in range(1, int(inches) + 1):
        found = []
        for place in sale:
            cents, boards = best[max(0, need - gives[place])]
            found.append((cents + case.stock[place].price_cents, (*boards, place)))
        best.append(min(found))
    return tuple(sorted(best[-1][1]))


def _whole_inches(stock: Stock, end_trim: Length) -> int:
    return int(max(ZERO, stock.length - end_trim).inches // 1)
