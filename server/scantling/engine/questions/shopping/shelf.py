"""The shelf: how many of a thing are on hand for a room. What was bought for the room is its own; the house's is for
whoever needs it first; another room's is lent only so far as that room has no need of it itself.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.costs.lots import Lot, derive_lots
from scantling.engine.questions.amounts import parse_amount, parse_unit, split_unit
from scantling.engine.questions.covered.amount import derive_amount
from scantling.engine.questions.covered.planned import coverings_of
from scantling.engine.questions.question import Context
from scantling.engine.survey.facts import find_room


@dataclass(frozen=True, slots=True)
class OnHand:
    """`own` was bought for the room; `lent` comes from the house, or from rooms that have it over."""

    own: Fraction = Fraction(0)
    lent: Fraction = Fraction(0)


def derive_on_hand(context: Context, room: str, *, article: str | None = None, name: str = "") -> OnHand:
    """What is on hand of an article, of paint in cubic inches; or of a thing without one, by its name."""
    notebook = context.notebook
    house = find_room(notebook, room).body["house"]
    own, of_house = (_count(derive_lots(notebook, of), article, name) for of in (room, house))
    lent = of_house
    if article is not None:
        others = [other for other, _, _ in notebook.children("room", house) if other != room]
        lent += sum((_over(context, other, article) for other in others), start=Fraction(0))
    return OnHand(own, lent)


def _over(context: Context, room: str, article: str) -> Fraction:
    """What a room was bought of an article beyond what its own coverings want."""
    bought = _count(derive_lots(context.notebook, room), article, "")
    if not bought:
        return bought
    wanted = [derive_amount(planned) for planned in coverings_of(context, room) if planned.article.id == article]
    need = sum((amount.count for amount in wanted if amount), start=Fraction(0))
    return max(Fraction(0), bought - need)


def _count(lots: Sequence[Lot], article: str | None, name: str) -> Fraction:
    found = [lot for lot in lots if lot.article == article and (article is not None or same(lot.name, name))]
    return sum((lot.count * size_of(lot) for lot in found), start=Fraction(0))


def size_of(lot: Lot) -> Fraction:
    """What one of a lot counts: a can by the size that it is called by, everything else as one."""
    figure, unit = split_unit(lot.name)
    amount, each = parse_amount(figure), parse_unit(unit) if unit else None
    return amount * each if amount and each else Fraction(1)


def same(one: str, other: str) -> bool:
    return one.strip().lower() == other.strip().lower()


