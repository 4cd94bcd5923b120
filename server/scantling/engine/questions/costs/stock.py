"""`stock`: what is on hand in a house: boards left over, rolls, sheets and cans, and what else was bought or found."""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Any

from marshmallow import Schema, fields

from scantling.engine.bodies import PAINT
from scantling.engine.costs.lots import Lot, derive_lots
from scantling.engine.errors import EngineError
from scantling.engine.notebook import Notebook
from scantling.engine.questions.called import call_stock
from scantling.engine.questions.costs.of_house import names_of, rooms_of, show_lot
from scantling.engine.questions.costs.shapes import LotOut
from scantling.engine.questions.covered.amount import derive_amount, say_amount
from scantling.engine.questions.covered.covering import ArticleOut, show_article
from scantling.engine.questions.covered.listed import is_done
from scantling.engine.questions.covered.planned import coverings_of, find_article
from scantling.engine.questions.facts import room_of
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.shopping.shelf import size_of
from scantling.engine.rack.leftovers import derive_house_leftovers
from scantling.engine.rack.wanted import derive_case
from scantling.engine.shapes import AskedIn, LengthOut, out, show, text_out
from scantling.engine.survey.facts import find_house, find_room
from scantling.engine.words import say

UNITS = {"paper": "roll", "film": "roll", "sheet": "sheet", PAINT: "paint"}


class HouseStockIn(AskedIn):
    house = fields.String(required=True, metadata={"description": say("ask-house")})


class LeftoverOut(Schema):
    profile, profile_shown, room = text_out(), text_out(), text_out()
    length = out(LengthOut)


class ShelfOut(Schema):
    """An article on hand: what came, what is up already, what rooms still want, and what is over after that."""

    article, name, sort, came, used, wanted, over = (text_out() for _ in range(7))


class StockOut(Schema):
    boards = out(LeftoverOut, many=True)
    shelf = out(ShelfOut, many=True)
    lots = out(LotOut, many=True)
    articles = out(ArticleOut, many=True)


def answer_stock(asked: dict[str, Any], context: Context) -> Answer:
    notebook, house = context.notebook, find_house(context.notebook, asked["house"])
    rooms = {room: find_room(notebook, room).body["name"] for room in rooms_of(notebook, house)}
    readable = [room for room in rooms if _is_readable(notebook, room)]
    places = {**rooms, house: say("the-house")}
    lots = [lot for of in places for lot in derive_lots(notebook, of)]
    names = names_of(notebook, lots)
    articles = [article for article, _, _ in notebook.children("article", house)]
    cases = {room: derive_case(room_of(notebook, room).standard, (), ()) for room in readable}
    if cases:
        cases[house] = next(iter(cases.values()))  # planned for several rooms, and cut with the same saw
    return {
        "boards": [
            {"profile": profile, "profile_shown": call_stock(profile), "room": places[room],
             "length": show(stick.length, asked["nearest"])}
            for room, profile, stick in derive_house_leftovers(notebook, house, cases)
        ],
        "shelf": list(_shelf(context, readable, lots)),
        "lots": [show_lot(lot, names[lot.id], places[lot.of]) for lot in lots],
        "articles": [show_article(notebook, article) for article in articles],
    }


def _is_readable(notebook: Notebook, room: str) -> bool:
    """One that holds more than can be worked out has no plan, and every answer about it says so."""
    try:
        room_of(notebook, room)
    except EngineError:
        return False
    return True


def _shelf(context: Context, rooms: Sequence[str], lots: Sequence[Lot]) -> Iterator[Answer]:
    """Every article of which anything came, or is wanted."""
    used: dict[str, Fraction] = {}
    wanted: dict[str, Fraction] = {}
    units: dict[str, str] = {}
    for planned in (planned for room in rooms for planned in coverings_of(context, room)):
        amount = derive_amount(planned)
        if amount:
            into = used if is_done(context.notebook, planned) else wanted
            into[planned.article.id] = into.get(planned.article.id, Fraction(0)) + amount.count
            units[planned.article.id] = amount.unit
    came: dict[str, Fraction] = {}
    for lot in lots:
        if lot.article is not None:
            came[lot.article] = came.get(lot.article, Fraction(0)) + lot.count * size_of(lot)
    for article in dict.fromkeys([*came, *used, *wanted]):
        found, _ = find_article(context.notebook, article)
        unit = units.get(article, UNITS.get(found.sort, "piece"))
        here, gone, want = (amounts.get(article, Fraction(0)) for amounts in (came, used, wanted))
        said = {"came": here, "used": gone, "wanted": want, "over": max(Fraction(0), here - gone - want)}
        yield {"article": article, "name": found.name, "sort": found.sort,
               **{name: say_amount(unit, count) if count else "" for name, count in said.items()}}  # fmt: skip


QUESTIONS = (
    Question("stock", say("question-stock"), HouseStockIn, StockOut, answer_stock),
)
