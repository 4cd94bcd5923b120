"""What covers a room: papers, films, sheets and paints by their labels, and where each goes."""

from typing import Any

from flask import Response

from scantling.api.blueprint import Blueprint, Written, reply_answer, require, write
from scantling.api.nouns.houses import Setting, write_setting
from scantling.clock import mint_id, now_ms
from scantling.engine.bodies import ArticleBody, CoveringBody
from scantling.engine.desk import QUESTIONS

blueprint = Blueprint("coverings", __name__, url_prefix="/api", description="Coverings.")


class Article(ArticleBody):
    class Meta(ArticleBody.Meta):
        exclude = ("article", "house")


class Covering(CoveringBody):
    class Meta(CoveringBody.Meta):
        exclude = ("covering", "room")


@blueprint.post("/houses/<house>/articles")
@blueprint.arguments(Article)
@blueprint.response(201, Written)
def add_article(said: dict[str, Any], house: str) -> dict[str, Any]:
    """Name a paper, film, sheet or paint; what its label says are its settings."""
    require("house", house)
    return write("article", {"article": mint_id(now_ms()), "house": house, **said})


@blueprint.put("/houses/<house>/articles/<article>")
@blueprint.arguments(Article)
@blueprint.response(200, Written)
def restate_article(said: dict[str, Any], house: str, article: str) -> dict[str, Any]:
    """Name it anew."""
    before = require("article", article, house=house)
    return write("article", {"article": article, "house": house, **said}, before)


@blueprint.put("/houses/<house>/articles/<article>/settings/<name>")
@blueprint.arguments(Setting)
@blueprint.response(200, Written)
def set_for_article(said: dict[str, Any], house: str, article: str, name: str) -> dict[str, Any]:
    """Write one line of its label down: paper.width, paint.cans."""
    sort = require("article", article, house=house)[-1].body["sort"]
    return write_setting(sort, article, name, said["value"])


@blueprint.get("/rooms/<room>/coverings")
@blueprint.response(200, QUESTIONS["coverings"].gives)
def list_coverings(room: str) -> Response:
    """What a room is covered with, and all that it might be."""
    require("room", room)
    return reply_answer({"ask": "coverings", "room": room})


@blueprint.get("/rooms/<room>/coverings/<covering>")
@blueprint.response(200, QUESTIONS["covering"].gives)
def plan_covering(room: str, covering: str) -> Response:
    """One covering: its plan, its drawing, its list to work by, what it wants and costs."""
    require("covering", covering, room=room)
    return reply_answer({"ask": "covering", "room": room, "covering": covering})


@blueprint.post("/rooms/<room>/coverings")
@blueprint.arguments(Covering)
@blueprint.response(201, Written)
def add_covering(said: dict[str, Any], room: str) -> dict[str, Any]:
    """Cover something of this room with an article of its house."""
    _require_article(room, said["article"])
    return write("covering", {"covering": mint_id(now_ms()), "room": room, **said})


@blueprint.put("/rooms/<room>/coverings/<covering>")
@blueprint.arguments(Covering)
@blueprint.response(200, Written)
def restate_covering(said: dict[str, Any], room: str, covering: str) -> dict[str, Any]:
    """Cover it with another article."""
    before = require("covering", covering, room=room)
    _require_article(room, said["article"])
    return write("covering", {"covering": covering, "room": room, **said}, before)


@blueprint.put("/rooms/<room>/coverings/<covering>/settings/<name>")
@blueprint.arguments(Setting)
@blueprint.response(200, Written)
def set_for_covering(said: dict[str, Any], room: str, covering: str, name: str) -> dict[str, Any]:
    """Say one thing of where and how: cover.walls, cover.from_floor."""
    require("covering", covering, room=room)
    return write_setting("covering", covering, name, said["value"])


def _require_article(room: str, article: str) -> None:
    require("article", article, house=require("room", room)[-1].body["house"])
