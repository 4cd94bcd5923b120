"""Rooms as questions carry them, for every test that asks about one: written short, with one thing odd at a time."""

from collections.abc import Sequence
from typing import Any

from scantling.engine.desk import answer, dump

Facts = dict[str, Any]
Texts = str | Sequence[str] | None


def wall(
    name: str,
    length: Texts,
    turn: str = "inside",
    corner: Texts = "90",
    things: Sequence[Facts] = (),
    **more: Any,
) -> Facts:
    """A wall and the corner at its right end; `more` goes into the corner (`sides`, `meets`)."""
    given = {"turn": turn, **({} if corner is None else {"corner": corner}), **more}
    facts: Facts = {"id": name, "corner": given}
    if length is not None:
        facts["length"] = length
    facts["openings"] = [thing for thing in things if thing["kind"] in ("door", "window", "cased")]
    facts["obstacles"] = [thing for thing in things if thing not in facts["openings"]]
    return facts


def thing(kind: str, at: Texts, width: Texts, base: str = "", **more: Any) -> Facts:
    """A door, window or cased opening; with `base`, an obstacle."""
    facts: Facts = {"id": more.pop("name", f"the only {kind}"), "kind": kind, **more}
    facts |= {name: value for name, value in (("at", at), ("width", width), ("base", base)) if value}
    return facts


def room(*walls: Facts, closed: bool = True, **standard: Any) -> Facts:
    """A room of these walls; settings by name, with __ for the dot: base__inside="miter". Base only, if not said."""
    settings: Facts = {"casing.wanted": "no"}
    settings |= {name.replace("__", "."): value for name, value in standard.items()}
    return {"name": "a room", "closed": closed, "standard": settings, "walls": list(walls)}


def oblong(*things: Facts, **standard: Any) -> Facts:
    """Walls of 120, 96, 120, 96 with square corners; the things stand along the first."""
    walls = [wall(f"w{number}", length) for number, length in enumerate(("120", "96", "120", "96"), start=1)]
    walls[0] = wall("w1", "120", things=things)
    return room(*walls, **standard)


def ask(name: str, facts: object, **more: Any) -> Facts:
    """The answer to a question about a room, where there must be one; no sentence in it has a value missing."""
    answered = answer({"ask": name, "room": facts, **more})
    assert "answer" in answered, answered
    assert "None" not in dump(answered), answered
    return answered["answer"]


def pieces(facts: Facts) -> list[Facts]:
    """The pieces of a room in which nothing is wrong."""
    answered = ask("pieces", facts)
    assert answered["problems"] == []
    assert answered["warnings"] == []
    return answered["pieces"]


def by_wall(facts: Facts) -> dict[str, Facts]:
    """The pieces of a room with one to a wall, by the wall's id."""
    found = {piece["wall"]: piece for piece in pieces(facts)}
    assert len(found) == len(pieces(facts))
    return found


def joints(piece: Facts) -> tuple[str, str]:
    return piece["left"]["joint"], piece["right"]["joint"]


def inches(length: Facts) -> float:
    return length["inches"]
