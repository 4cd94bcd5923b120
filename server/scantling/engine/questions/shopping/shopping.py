"""`shopping`: all that a room wants bought on one list, boards, coverings and supplies, ticked off line by line."""

import copy
import re
from collections.abc import Mapping, Sequence
from typing import Any

from marshmallow import Schema, fields

from scantling.engine.journal import Entry
from scantling.engine.questions.boards.shown import PlanEntryOut
from scantling.engine.questions.covered.covering import CoveringsIn
from scantling.engine.questions.coverings.shapes import NamedProblemOut
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.shopping.boards import derive_boards
from scantling.engine.questions.shopping.coverings import derive_covering_goods
from scantling.engine.questions.shopping.good import Buy, Good
from scantling.engine.questions.shopping.supplies import derive_supply_goods
from scantling.engine.shapes import out, text_out, texts_out
from scantling.engine.standard import format_price
from scantling.engine.supplies.sundries import name_as_sold
from scantling.engine.survey.facts import find_room
from scantling.engine.tape.alike import is_alike
from scantling.engine.words import say

#: What film by the foot comes to, beside its feet.
_METERS = re.compile(r" \(\d+\.\d+ m\)$")


class BuyLineOut(Schema):
    """`state`: bought, or nothing; `changed`, where it was ticked off as something else than is wanted now.

    `boards`: their places in what the good accepts, which says that they are bought; with none, it is ticked off.
    """

    key, words, state, changed = (text_out() for _ in range(4))
    each, cost = text_out(none=True), text_out(none=True)
    boards = fields.List(fields.Integer(), required=True)


class GoodOut(Schema):
    """`sort`: boards, paper, film, sheet, paint or supplies; `of` says by what it is counted: the profile, the id of
    the article, or the prefix of its settings. `name` is what it is found by, `name_shown` what it is called. `here`:
    what of it is on hand; `accept`: the entry that settles on its boards, null of what is no board.
    """

    name, name_shown, sort, of, need, here, seen = (text_out() for _ in range(7))
    working = texts_out()
    lines = out(BuyLineOut, many=True)
    accept = out(PlanEntryOut, none=True)


class ShoppingOut(Schema):
    """`total`: what is still to pay, of all that has a price; `unpriced`: what has none."""

    goods = out(GoodOut, many=True)
    total = text_out()
    unpriced, missing, cautions = texts_out(), texts_out(), texts_out()
    problems = out(NamedProblemOut, many=True)


def derive_goods(context: Context, room: str) -> tuple[list[Good], list[str], Answer]:
    """Every good of a room, what is missing for a plan of one, and the answer about its supplies."""
    boards, wanting = derive_boards(context, room)
    covering, missing = derive_covering_goods(context, room)
    supplies, answer = derive_supply_goods(context, room)
    return [*boards, *covering, *supplies], [*wanting, *missing], answer


def answer_shopping(asked: dict[str, Any], context: Context) -> Answer:
    notebook, room = context.notebook, asked["room"]
    find_room(notebook, room)
    goods, missing, supplies = derive_goods(context, room)
    ticks = notebook.ticks(room, "supplies")
    warned = [warning for box in supplies["boxes"] for warning in box["warnings"]]
    problems = [{"key": one["key"], "message": one["message"]} for one in supplies["problems"]]
    return {
        "goods": [_good(good, ticks) for good in goods],
        "total": format_price(sum(good.to_pay for good in goods)),
        "unpriced": [good.shown for good in goods if good.buy and good.unpriced],
        "missing": missing,
        "problems": [*problems, *({"key": "nail", "message": words} for words in dict.fromkeys(warned))],
        "cautions": list(supplies["cautions"]),
    }


def _good(good: Good, ticks: Mapping[str, tuple[Entry, Sequence[Entry]]]) -> Answer:
    return {
        "name": good.name, "name_shown": good.shown, "sort": good.sort, "of": good.of, "need": good.need,
        "here": good.here, "seen": good.seen,
        "working": list(good.working), "accept": copy.deepcopy(good.accept),
        "lines": [_line(line, ticks) for line in good.buy],
    }  # fmt: skip


def _line(line: Buy, ticks: Mapping[str, tuple[Entry, Sequence[Entry]]]) -> Answer:
    entry = ticks[line.key][0] if line.key in ticks else None
    was = entry.body["remember"] if entry else ""
    return {
        "key": line.key,
        "words": line.words,
        "state": entry.body["state"] if entry else "",
        "changed": say("line-bought-changed", was=was, now=line.words) if was and not _is_same(was, line.words) else "",
        "each": None if line.each is None else format_price(line.each),
        "cost": None if line.cents is None else format_price(line.cents),
        "boards": list(line.boards),
    }


def _is_same(was: str, now: str) -> bool:
    """Whether a line ticked off is this one, whatever lengths were shown in then."""
    return is_alike(*(_METERS.sub("", name_as_sold(words)) for words in (was, now)))


QUESTIONS = (
    Question("shopping", say("question-shopping"), CoveringsIn, ShoppingOut, answer_shopping),
)
