"""Money in the notebook: what each room of a house was planned to cost, its receipts, and its rough size."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Any

from marshmallow import fields, validate

from scantling.engine.costs.lots import Lot, derive_lots
from scantling.engine.costs.next_rooms import Rough
from scantling.engine.errors import EngineError
from scantling.engine.forms import Field
from scantling.engine.notebook import Notebook
from scantling.engine.questions.called import call_stock
from scantling.engine.questions.costs.shapes import RoughIn
from scantling.engine.questions.covered.planned import find_article
from scantling.engine.questions.facts import room_of
from scantling.engine.questions.question import Answer, Context
from scantling.engine.questions.said import Wrong, check_by, collect
from scantling.engine.questions.shopping.good import BOARDS, SUPPLIES, Good
from scantling.engine.questions.shopping.shopping import derive_goods
from scantling.engine.standard import format_price
from scantling.engine.survey.facts import find_room

#: Rooms still to come, by their rough size: a setting of the house.
COMING: Field = fields.List(fields.Nested(RoughIn), validate=validate.Length(max=100))
FIELDS: Mapping[str, Field] = {"next.rooms": COMING}


def check_rough(name: str, value: object) -> list[Any]:
    """What is wrong with the list of rooms to come: nothing, or the refusal. Other names are not judged."""
    return check_by(FIELDS, name, value)


@dataclass(frozen=True, slots=True)
class RoomMoney:
    """A room's goods, and the lots that were bought for it; `names` what each of them is called in the plan."""

    id: str
    name: str
    goods: tuple[Good, ...]
    lots: tuple[Lot, ...]
    names: Mapping[str, str]

    @property
    def unpriced(self) -> list[str]:
        return [good.shown for good in self.goods if good.unpriced]

    @property
    def planned(self) -> int:
        return sum(good.planned or 0 for good in self.goods)


def rooms_of(notebook: Notebook, house: str) -> Iterator[str]:
    return (room for room, _, _ in notebook.children("room", house))


def derive_money(context: Context, room: str) -> RoomMoney:
    """Raises `EngineError`: where there is no such room, or it holds more than can be worked out."""
    goods, _, _ = derive_goods(context, room)
    return replace(derive_unplanned(context.notebook, room), goods=tuple(goods))


def derive_unplanned(notebook: Notebook, room: str) -> RoomMoney:
    """What was spent alone, of a room whose plan cannot be worked out. Raises `FactsError`."""
    lots = derive_lots(notebook, room)
    return RoomMoney(room, find_room(notebook, room).body["name"], (), tuple(lots), names_of(notebook, lots))


def collect_money(context: Context, house: str, problems: list[Answer]) -> Iterator[RoomMoney]:
    """Every room of a house. Of one that cannot be worked out that is told, and the others stand."""
    for room in rooms_of(context.notebook, house):
        try:
            yield derive_money(context, room)
        except EngineError as error:
            spent = derive_unplanned(context.notebook, room)
            problems.append({"name": spent.name, "key": error.key, "message": error.message})
            yield spent


def names_of(notebook: Notebook, lots: list[Lot]) -> Mapping[str, str]:
    """What each lot is of: its article, as that is called now; or what it was called itself."""
    return {lot.id: _article(notebook, lot.article) or lot.name for lot in lots}


def _article(notebook: Notebook, article: str | None) -> str:
    return find_article(notebook, article)[0].name if article is not None else ""


def show_lot(lot: Lot, name: str, where: str) -> Answer:
    return {
        "id": lot.id, "of": lot.of, "where": where, "article": lot.article, "name": name,
        "name_shown": name if lot.article else call_stock(name), "called": lot.name,
        "count": lot.count, "price": None if lot.cents is None else format_price(lot.cents), "date": lot.date,
        "note": lot.note, "wrong": lot.wrong,
    }  # fmt: skip


def derive_rough(context: Context, money: RoomMoney) -> Rough | None:
    """The rough size of a room that was measured; None while a wall of it was not, or it does not come round."""
    room = room_of(context.notebook, money.id)
    lengths = [wall.length.largest.inches for wall in room.walls if wall.length]
    if not room.comes_round or not lengths or len(lengths) < len(room.walls):
        return None
    heights = [wall.height.largest.inches for wall in room.walls if wall.height]
    openings = sum(len(wall.openings) for wall in room.walls)
    by_area = sum(good.planned or 0 for good in money.goods if good.sort not in (BOARDS, SUPPLIES))
    high = max(heights) / 12 if heights else None
    return Rough(money.name, sum(lengths, start=Fraction(0)) / 12, openings, money.planned, high, by_area)


def collect_coming(notebook: Notebook, house: str) -> tuple[list[dict[str, Any]], list[Wrong]]:
    """The rooms to come as they were written, and what of that cannot be read."""
    settings = {name: entry.body["value"] for name, (entry, _) in notebook.settings(house).items()}
    said, wrong = collect(FIELDS, settings, "next")
    return said.get("rooms", []), wrong
