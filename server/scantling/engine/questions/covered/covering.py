"""`coverings`: what a room is covered with. `covering`: one of them planned, drawn, and listed to work by."""

import copy
from collections.abc import Sequence
from typing import Any

from marshmallow import Schema, fields

from scantling.engine.bodies import FILM, PAINT, PAPER, SHEET
from scantling.engine.cautions import (
    cautions_for_film,
    cautions_for_paint,
    cautions_for_paper,
    cautions_for_sheets,
)
from scantling.engine.coverings.paint.surfaces import CEILING, WALLS
from scantling.engine.notebook import Notebook
from scantling.engine.questions.covered.amount import derive_amount, derive_price_day
from scantling.engine.questions.covered.composed import CoveringError
from scantling.engine.questions.covered.listed import show_list
from scantling.engine.questions.covered.planned import PlannedCovering, coverings_of, derive_planned, find_article
from scantling.engine.questions.covered.said import COVER, check_said, defaults_of
from scantling.engine.questions.coverings.paint import PaintOut, SurfaceOut, show_surface
from scantling.engine.questions.coverings.panes import PanesOut
from scantling.engine.questions.coverings.seam_shapes import SeamsOut
from scantling.engine.questions.coverings.shapes import NamedProblemOut
from scantling.engine.questions.coverings.sheets import SheetsOut
from scantling.engine.questions.facts import room_of
from scantling.engine.questions.notebook.settings import SettledOut, show_settings
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.shapes import AskedIn, out, text_out, texts_out
from scantling.engine.standard import format_price
from scantling.engine.survey.facts import find_room
from scantling.engine.survey.kinds import WET, is_wet
from scantling.engine.survey.room import Room
from scantling.engine.words import say, say_counted

PLANS = ("seams", "panes", "sheets", "paint")
OILY = ("oil", "stain", "varnish")


class CoveringsIn(AskedIn):
    room = fields.String(required=True, metadata={"description": say("ask-room")})


class CoveringIn(CoveringsIn):
    covering = fields.String(required=True)


class CoverSaidOut(SettledOut):
    """What was said, and what counts where nothing is."""

    defaults = fields.Dict(keys=fields.String(), values=fields.String(), required=True)


class ArticleOut(CoverSaidOut):
    id, name, sort = text_out(), text_out(), text_out()


class CoveringNameOut(Schema):
    id, name = text_out(), text_out()


class CoveredWallOut(CoveringNameOut):
    number = fields.Integer(required=True)


class OpeningOut(CoveringNameOut):
    wall = text_out()


class CoverRowOut(Schema):
    """`done`: how much of its list is up; `look` where something is wrong or missing."""

    id, name, sort, where, amount, done = (text_out() for _ in range(6))
    look = fields.Boolean(required=True)


class CoveringsOut(Schema):
    """What may be named: walls, the openings in them, inside corners; the articles are all those of the house."""

    rows = out(CoverRowOut, many=True)
    articles = out(ArticleOut, many=True)
    walls, openings = out(CoveredWallOut, many=True), out(OpeningOut, many=True)
    corners = texts_out()


class CoverLineOut(Schema):
    """`state`: cut, hung or done, nothing where it is still to do; `changed`, where it has been planned anew since."""

    key, said, where, state, changed = (text_out() for _ in range(5))


class CoveringOut(CoverSaidOut):
    """The plan is under the name of the question that made it; `missing`: what is still to be said for there to be one.

    `amount` is all it wants, whatever is on hand; `seen` the day of its price.
    """

    id, where = text_out(), text_out()
    article = out(ArticleOut)
    missing = texts_out()
    amount, cost, seen = text_out(), text_out(none=True), text_out()
    seams, panes = out(SeamsOut, none=True), out(PanesOut, none=True)
    sheets, paint = out(SheetsOut, none=True), out(PaintOut, none=True)
    surfaces = out(SurfaceOut, many=True)
    list = out(CoverLineOut, many=True)
    done = text_out()
    problems = out(NamedProblemOut, many=True)
    cautions = texts_out()


def answer_coverings(asked: dict[str, Any], context: Context) -> Answer:
    notebook, here = context.notebook, asked["room"]
    house = find_room(notebook, here).body["house"]
    room = room_of(notebook, here)
    return {
        "rows": [_row(context, planned, room) for planned in coverings_of(context, here)],
        "articles": [show_article(notebook, article) for article, _, _ in notebook.children("article", house)],
        "walls": [{"id": wall.id, "name": wall.name, "number": wall.number} for wall in room.walls],
        "openings": [
            {"id": opening.id, "name": f"{opening.name}, {wall.name}", "wall": wall.id}
            for wall in room.walls
            for opening in wall.openings
        ],
        "corners": [f"corner {wall.number}" for wall in room.walls if wall.turn == "inside"],
    }


def _row(context: Context, planned: PlannedCovering, room: Room) -> Answer:
    amount = derive_amount(planned)
    wrong = planned.missing or planned.wrong or planned.problems or _problems_in(planned)
    return {
        "id": planned.id,
        "name": planned.article.name,
        "sort": planned.article.sort,
        "where": _where(planned, room),
        "amount": amount.words if amount else "",
        "done": _done(show_list(context.notebook, planned)),
        "look": bool(wrong),
    }


def show_article(notebook: Notebook, article: str) -> Answer:
    """An article with what its label says, and what of that cannot be read."""
    found, _ = find_article(notebook, article)
    return {"id": article, "name": found.name, "sort": found.sort, **show_settings(notebook, article, check_said),
            "defaults": defaults_of(found.sort)}  # fmt: skip


def answer_covering(asked: dict[str, Any], context: Context) -> Answer:
    notebook = context.notebook
    planned = derive_planned(context, asked["covering"])
    if planned.room != asked["room"]:
        raise CoveringError("no-such-covering", field="covering", covering=asked["covering"][:40])
    room, amount = room_of(notebook, planned.room), derive_amount(planned)
    lines = show_list(notebook, planned)
    made = planned.question["ask"] if planned.question else ""
    return {
        "id": planned.id,
        "where": _where(planned, room),
        "article": show_article(notebook, planned.article.id),
        **show_settings(notebook, planned.id, check_said),
        "defaults": defaults_of(COVER),
        "missing": list(planned.missing),
        "amount": amount.words if amount else "",
        "cost": _cost(planned),
        "seen": derive_price_day(notebook, planned),
        # A copy: what a caller does to an answer must not reach the plan that is kept.
        **{name: copy.deepcopy(planned.answer) if name == made else None for name in PLANS},
        "surfaces": [show_surface(surface) for surface in planned.surfaces],
        "list": lines,
        "done": _done(lines),
        "problems": _problems(planned),
        "cautions": _cautions(notebook, planned, room),
    }


def _where(planned: PlannedCovering, room: Room) -> str:
    """Where it goes, in a few words."""
    cover = planned.cover
    if planned.article.sort in (FILM, SHEET):
        rows = cover.get("panes" if planned.article.sort == FILM else "sheets", ())
        count = sum(row.get("count", 1) for row in rows)
        return say_counted("so-many-pane" if planned.article.sort == FILM else "so-many-panel", count)
    chosen = [wall.number for wall in room.walls if wall.id in cover.get("walls", ())]
    walls = say_walls(chosen) or say("on-all-walls")
    if planned.article.sort == PAPER:
        named = (panel.get("name", say("on-a-panel")) for panel in cover.get("panels", ()))
        return ", ".join(named) if "panels" in cover else walls
    names = [row["name"] for row in cover.get("surfaces") or [{"name": WALLS}]]
    return ", ".join(walls if name == WALLS else name for name in names)


def say_walls(numbers: Sequence[int]) -> str:
    """
    >>> say_walls([1, 2, 3, 7]), say_walls([4])
    ('walls 1 to 3, 7', 'wall 4')
    """
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    said = (str(run[0]) if len(run) == 1 else say("number-to-number", first=run[0], last=run[-1]) for run in runs)
    return say_counted("on-walls", len(numbers), walls=", ".join(said)) if runs else ""


def _done(lines: Sequence[Answer]) -> str:
    up = sum(line["state"] in ("hung", "done") for line in lines)
    return say("so-many-up", up=up, count=len(lines)) if lines else ""


def _cost(planned: PlannedCovering) -> str | None:
    amount = derive_amount(planned)
    if amount is None:
        return None
    if planned.article.sort == PAINT and planned.answer:
        cost: str | None = planned.answer["products"][0]["cost"]
        return cost
    return None if amount.cents is None else format_price(int(amount.count) * amount.cents)


def _problems(planned: PlannedCovering) -> list[Answer]:
    """What its settings, its room and its plan have wrong, each sentence once."""
    said = [(one.error.key, one.error.message) for one in planned.wrong]
    said += [(one.key, one.message) for one in planned.problems]
    said += [(one["key"], one["message"]) for one in _problems_in(planned)]
    return [{"key": key, "message": message} for key, message in dict.fromkeys(said)]


def _problems_in(planned: PlannedCovering) -> list[Answer]:
    answer = planned.answer or {}
    return [*answer.get("problems", ()), *answer.get("impossible", ())]


def _cautions(notebook: Notebook, planned: PlannedCovering, room: Room) -> list[str]:
    """Those whose trigger this covering meets."""
    house = notebook.heads(notebook.about("the house", find_room(notebook, planned.room).body["house"]))
    built, sort = house[-1].body["built"], planned.article.sort
    if sort == PAPER:
        return cautions_for_paper(built)
    if sort == SHEET:
        return cautions_for_sheets()
    if sort == FILM:
        return cautions_for_film(near_water=_is_near_water(planned, room))
    if sort != PAINT:
        return []
    high = any(surface.name in (WALLS, CEILING) for surface in planned.surfaces)
    oil = any(word in planned.article.name.lower() for word in OILY)
    return cautions_for_paint(built, high=high, oil=oil)


def _is_near_water(planned: PlannedCovering, room: Room) -> bool:
    """Whether a tub or a shower is in the room, or a pane is called by one, or by a door."""
    names = [str(row.get("name", "")).lower() for row in planned.cover.get("panes", ())]
    return any(is_wet(thing.kind) for wall in room.walls for thing in wall.obstacles) or any(
        word in name for word in (*WET, "door") for name in names
    )


QUESTIONS = (
    Question("coverings", say("question-coverings"), CoveringsIn, CoveringsOut, answer_coverings, kept=True),
    Question("covering", say("question-covering"), CoveringIn, CoveringOut, answer_covering, kept=True),
)
