"""Rooms with something on their walls, as a person writes it down: an article with its label, and where it goes."""

from collections.abc import Mapping
from typing import Any

from scantling.engine.desk import QUESTIONS, Desk

from tests.entries import House

PAPER = {"paper.width": "20", "paper.length": "400", "paper.tolerance": "0", "paper.price": "40.00"}
PATTERNED = {"paper.width": "20 1/2", "paper.length": "33 ft", "paper.repeat": "21", "paper.match": "half-drop",
             "paper.price": "42.50"}  # fmt: skip
FILM = {"film.width": "36", "film.price": "3.20"}
SHEET = {"sheet.width": "48", "sheet.length": "96", "sheet.price": "31.00"}
PAINT: Mapping[str, Any] = {
    "paint.spread": "350",
    "paint.cans": [{"size": "1 gal", "price": "40.00"}, {"size": "1 qt", "price": "15.00"}],
}


def article(house: House, sort: str, name: str, label: Mapping[str, Any]) -> str:
    """Something bought to cover with; gives back its id."""
    found = house.new("article", house=house.house, sort=sort, name=name)
    write(house, found, label)
    return found


def cover(house: House, with_what: str, where: Mapping[str, Any], room: str | None = None) -> str:
    """A covering of the room, or of another; gives back its id."""
    found = house.new("covering", room=room or house.room, article=with_what)
    write(house, found, where)
    return found


def write(house: House, of: str, settings: Mapping[str, Any]) -> None:
    for name, value in settings.items():
        house.say("setting", of=of, name=name, value=value)


def walls(*ids: str) -> list[dict[str, str]]:
    return [{"wall": one} for one in ids]


def lot(house: House, of: str, count: int, name: str = "lot", **more: Any) -> str:
    """So many of a thing, for a room or for the house."""
    said = {"article": None, "price": "", "date": "", "note": "", **more}
    return house.new("lot", of=of, name=name, count=str(count), **said)


def ask(house: House, name: str, /, **more: Any) -> dict[str, Any]:
    """The answer about the room, or what is named instead, checked against the question's own schema."""
    about = more if name == "notebook" or {"room", "house"} & more.keys() else {"room": house.room, **more}
    found = Desk(house.entries).answer({"ask": name, **about})
    assert "answer" in found, found
    assert QUESTIONS[name].gives().validate(found["answer"]) == {}
    return found["answer"]
