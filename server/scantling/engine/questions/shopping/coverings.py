"""What a room's coverings want bought, article by article: rolls, sheets, film by the foot, cans chosen by price."""

from collections.abc import Sequence
from fractions import Fraction

from scantling.engine.bodies import PAINT
from scantling.engine.notebook import Notebook
from scantling.engine.questions.covered.amount import (
    ArticleAmount,
    derive_amount,
    derive_price_day,
    say_amount,
)
from scantling.engine.questions.covered.planned import ANSWERING, PlannedCovering, coverings_of
from scantling.engine.questions.question import Answer, Context
from scantling.engine.questions.shopping.good import Buy, Good
from scantling.engine.questions.shopping.shelf import OnHand, derive_on_hand
from scantling.engine.shapes import load
from scantling.engine.standard import parse_price
from scantling.engine.tape.measures import GALLON
from scantling.engine.words import say


def derive_covering_goods(context: Context, room: str) -> tuple[list[Good], list[str]]:
    """Each article that the room's coverings are of, and in words what is missing for a plan of one."""
    by_article: dict[str, list[PlannedCovering]] = {}
    for planned in coverings_of(context, room):
        by_article.setdefault(planned.article.id, []).append(planned)
    goods = [_good(context, room, some) for some in by_article.values()]
    missing = [f"{planned.article.name}: {', '.join(planned.missing)}."
               for some in by_article.values() for planned in some if planned.missing]  # fmt: skip
    return [good for good in goods if good], missing


def _good(context: Context, room: str, some: Sequence[PlannedCovering]) -> Good | None:
    amounts = [amount for amount in map(derive_amount, some) if amount]
    if not amounts:
        return None
    on_hand = derive_on_hand(context, room, article=some[0].article.id)
    day = derive_price_day(context.notebook, some[0])
    return (_paint if some[0].article.sort == PAINT else _counted)(some, amounts, on_hand, day)


def _counted(some: Sequence[PlannedCovering], amounts: Sequence[ArticleAmount], on_hand: OnHand, day: str) -> Good:
    article, unit, cents = some[0].article, amounts[0].unit, amounts[0].cents
    need = sum((amount.count for amount in amounts), start=Fraction(0))
    plan = max(Fraction(0), need - on_hand.lent)
    buy = max(Fraction(0), plan - on_hand.own)
    lines = [Buy(article.id, say_amount(unit, buy), _times(cents, buy), cents)] if buy else []
    here = min(need, on_hand.lent + on_hand.own)
    working = [line for amount in amounts for line in amount.working]
    return Good(article.name, article.sort, article.id, say_amount(unit, need), say_amount(unit, here) if here else "",
                _times(cents, plan), day, tuple(working), tuple(lines))  # fmt: skip


def _times(cents: int | None, count: Fraction) -> int | None:
    return None if cents is None else int(count) * cents


def _paint(some: Sequence[PlannedCovering], amounts: Sequence[ArticleAmount], on_hand: OnHand, day: str) -> Good | None:
    """All that one paint goes on, out of the same cans."""
    article = some[0].article
    plan = _cans(some, on_hand.lent)
    buy = _cans(some, on_hand.lent + on_hand.own)
    if not plan or not buy:
        return None
    sizes = [can["size"] for can in article.facts["cans"]]
    lines = [
        Buy(f"{article.id} {sizes[can['can']]}", say("count-of-size", count=can["count"], size=sizes[can["can"]]),
            can["count"] * parse_price(can["price"]), parse_price(can["price"]))
        for can in buy["cans"]
    ]  # fmt: skip
    if buy["cost"] is None:  # no can of it has a price: how much it is can be said all the same
        lines = [Buy(article.id, buy["need"]["shown"], None)]
    here = on_hand.lent + on_hand.own
    need = _cans(some, Fraction(0))
    wanted = need["need"]["shown"] if need else ""
    cost = None if plan["cost"] is None else parse_price(plan["cost"])
    return Good(article.name, article.sort, article.id, wanted, say_amount("paint", here) if here else "", cost, day,
                tuple(buy["working"]), tuple(lines))  # fmt: skip


def _cans(some: Sequence[PlannedCovering], here: Fraction) -> Answer | None:
    """What `paint` answers about all of it together, with so many cubic inches on hand."""
    questions = [planned.question for planned in some if planned.question]
    if not questions:
        return None
    surfaces = [
        {**surface, "name": f"{place + 1}: {surface['name']}"}
        for place, question in enumerate(questions)
        for surface in question["surfaces"]
    ]
    product = {**questions[0]["products"][0], "on": [surface["name"] for surface in surfaces]}
    if here:
        product["on_hand"] = f"{float(here / GALLON):.6f}"
    asked = ANSWERING["paint"]
    question = load(asked.loader, {"ask": "paint", "surfaces": surfaces, "products": [product]})
    found: Answer = asked.answer(question, Context(Notebook()))["products"][0]
    return found


