"""`spent`: planned against spent. `next_rooms`: what the same standard may cost in rooms known by their rough size."""

from collections.abc import Sequence
from fractions import Fraction
from typing import Any

from scantling.engine.costs.lots import Lot, derive_lots
from scantling.engine.costs.next_rooms import FEET_A_DOOR, Rough, derive_ranges
from scantling.engine.costs.spent import CostError, CostLine, PlannedCost, Receipt, derive_lines, merge_lines
from scantling.engine.errors import EngineError
from scantling.engine.questions.called import call_stock
from scantling.engine.questions.costs.of_house import (
    COMING,
    RoomMoney,
    collect_coming,
    collect_money,
    derive_money,
    derive_rough,
    names_of,
    show_lot,
)
from scantling.engine.questions.costs.shapes import NextRoomsIn, NextRoomsOut, SpentIn, SpentOut
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.shopping.good import BOARDS
from scantling.engine.shown.shown_in import is_metric
from scantling.engine.standard import format_price, parse_price
from scantling.engine.survey.facts import find_house
from scantling.engine.tape.measures import FOOT, SQUARE_FOOT, format_run, format_surface
from scantling.engine.words import say


def answer_spent(asked: dict[str, Any], context: Context) -> Answer:
    problems: list[Answer] = []
    planned = [PlannedCost(one["name"], cents) for one, cents in _priced(asked["planned"], problems)]
    receipts = [Receipt(one["name"], cents, one["date"]) for one, cents in _priced(asked["receipts"], problems)]
    rooms, own = _rooms(asked, context, problems), _own_lots(asked, context)
    names = names_of(context.notebook, own)
    seen = {one["name"]: one.get("seen", "") for one in asked["planned"]}
    seen |= {good.name: good.seen for money in rooms for good in money.goods}
    lines = merge_lines([derive_lines(planned, [*receipts, *_receipts(own, names)]), *map(_lines_of, rooms)])
    spent, expected = (sum(getattr(line, part) for line in lines) for part in ("spent", "expected"))
    return {
        "lines": [_line(line, seen.get(line.name, "")) for line in lines],
        "planned": format_price(sum(line.planned for line in lines)),
        "spent": format_price(spent),
        "expected": format_price(expected),
        "rooms": [_room(money) for money in rooms],
        "lots": [*(show_lot(lot, money.names[lot.id], money.name) for money in rooms for lot in money.lots),
                 *(show_lot(lot, names[lot.id], say("the-house")) for lot in own)],
        "working": [
            say("costs-in-all", spent=format_price(spent), planned=format_price(expected - spent),
                all=format_price(expected))
        ],
        "unpriced": list(dict.fromkeys(name for money in rooms for name in money.unpriced)),
        "problems": [*problems, *_wrong([*own, *(lot for money in rooms for lot in money.lots)])],
    }  # fmt: skip


def _rooms(asked: dict[str, Any], context: Context, problems: list[Answer]) -> list[RoomMoney]:
    if "house" in asked:
        return list(collect_money(context, find_house(context.notebook, asked["house"]), problems))
    return [derive_money(context, asked["room"])] if "room" in asked else []


def _own_lots(asked: dict[str, Any], context: Context) -> list[Lot]:
    return derive_lots(context.notebook, asked["house"]) if "house" in asked else []


def _planned(money: RoomMoney) -> list[PlannedCost]:
    """Of boards nobody knows how many a receipt was for; of the rest, what is still to buy is what was not bought."""
    return [
        PlannedCost(good.name, good.planned, 0 if good.sort == BOARDS else good.to_pay)
        for good in money.goods
        if good.planned is not None
    ]


def _receipts(lots: Sequence[Lot], names: Any) -> list[Receipt]:
    return [Receipt(names[lot.id], lot.cents, lot.date) for lot in lots if lot.cents is not None]


def _wrong(lots: Sequence[Lot]) -> list[Answer]:
    return [{"name": lot.name, "key": "not-money", "message": lot.wrong} for lot in lots if lot.wrong]


def _lines_of(money: RoomMoney) -> list[CostLine]:
    return derive_lines(_planned(money), _receipts(money.lots, money.names))


def _room(money: RoomMoney) -> Answer:
    lines = _lines_of(money)
    sums = {part: format_price(sum(getattr(line, part) for line in lines)) for part in ("planned", "spent", "expected")}
    return {"id": money.id, "name": money.name, **sums}


def _line(line: CostLine, seen: str) -> Answer:
    return {
        "name": line.name, "name_shown": call_stock(line.name), "planned": format_price(line.planned),
        "spent": format_price(line.spent),
        "over": None if line.open else _signed(line.over), "seen": seen,
    }  # fmt: skip


def _signed(cents: int) -> str:
    return f"-{format_price(-cents)}" if cents < 0 else format_price(cents)


def _priced(rows: list[dict[str, Any]], problems: list[Answer]) -> list[tuple[dict[str, Any], int]]:
    """The rows with a price; each of the others is told."""
    found = []
    for row in rows:
        try:
            cents = parse_price("" if isinstance(row["price"], bool) else str(row["price"]))
        except EngineError:
            cents = 0
        if cents:
            found.append((row, cents))
        else:
            error = CostError("no-price", name=row["name"])
            problems.append({"name": row["name"], "key": error.key, "message": error.message})
    return found


def answer_next_rooms(asked: dict[str, Any], context: Context) -> Answer:
    problems: list[Answer] = []
    rows = [row | {"price": row["cost"]} for row in asked["measured"]]
    measured = [_rough(row, cents) for row, cents in _priced(rows, problems)]
    coming = [_rough(row) for row in asked["coming"]]
    if "house" in asked:
        measured += _measured(asked, context, problems)
        coming += _coming(context, asked["house"], problems)
        if not coming:
            return {"rooms": [], "low": "0.00", "high": "0.00", "said": say("costs-no-room"),
                    "problems": problems}  # fmt: skip
    ranges = derive_ranges(measured, coming)
    return {
        "rooms": [
            {"name": one.name, "low": format_price(one.low), "high": format_price(one.high), "working": _working(room)}
            for one, room in zip(ranges, coming, strict=True)
        ],
        "low": format_price(sum(one.low for one in ranges)),
        "high": format_price(sum(one.high for one in ranges)),
        "said": _said(len(measured), ranges[0].miss),
        "problems": problems,
    }


def _working(room: Rough) -> str:
    round_, door, along = (format_run(feet * FOOT) for feet in (room.perimeter, FEET_A_DOOR, room.feet))
    trim = say("costs-rough-trim", round=round_, openings=room.openings, door=door, along=along)
    if not room.height:
        return trim
    unit = " m" if is_metric() else " ft"  # said once, behind the second: 38 × 7 2/3 ft
    high = format_run(room.height * FOOT)
    return f"{trim}; {round_.removesuffix(unit)} × {high} = {format_surface(room.area * SQUARE_FOOT)}"


def _rough(row: dict[str, Any], cents: int | None = None) -> Rough:
    height = row["height"].inches / 12 if "height" in row else None
    return Rough(row["name"], row["perimeter"].inches / 12, row["openings"], cents, height, row.get("covering") or 0)


def _measured(asked: dict[str, Any], context: Context, problems: list[Answer]) -> list[Rough]:
    """The rooms of the house that come round and have a cost; what of a plan has no price is told."""
    found = []
    for money in collect_money(context, find_house(context.notebook, asked["house"]), problems):
        rough = derive_rough(context, money) if money.goods else None
        if rough and rough.cents:
            found.append(rough)
            if money.unpriced:
                error = CostError("part-priced", name=money.name, what=", ".join(money.unpriced))
                problems.append({"name": money.name, "key": error.key, "message": error.message})
    return found


def _coming(context: Context, house: str, problems: list[Answer]) -> list[Rough]:
    rows, wrong = collect_coming(context.notebook, house)
    problems += ({"name": one.name, "key": one.error.key, "message": one.error.message} for one in wrong)
    return [_rough(row) for row in COMING.deserialize(rows) or []]


def _said(measured: int, miss: Fraction) -> str:
    percent = f"{float(miss * 100):.0f} %"
    if measured < 2:
        return say("costs-from-one", percent=percent)
    return say("costs-from-several", rooms=measured, percent=percent)


QUESTIONS = (
    Question("spent", say("question-spent"), SpentIn, SpentOut, answer_spent),
    Question("next_rooms", say("question-next_rooms"), NextRoomsIn, NextRoomsOut, answer_next_rooms),
)
