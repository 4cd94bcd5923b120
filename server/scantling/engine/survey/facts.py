"""The facts of a room from the notebook, in the one shape that questions also carry.

Struck readings stay in the notebook and are left out here. Nothing is read or judged: texts go through as typed.
"""

from collections.abc import Mapping
from typing import Any

from scantling.engine.errors import EngineError
from scantling.engine.journal import Entry
from scantling.engine.notebook import Notebook
from scantling.engine.settings import lay_over
from scantling.engine.survey.points import parse_points
from scantling.engine.survey.read import parse_sides


class FactsError(EngineError):
    sentences = {"no-such-room": "There is no room {room} in this notebook: ask for one that the house lists."}


def find_room(notebook: Notebook, room: str) -> Entry:
    """The statement in force about a room. Raises `FactsError`."""
    for house, _, _ in notebook.houses():
        for found, shown, _ in notebook.children("room", house):
            if found == room:
                return shown
    raise FactsError("no-such-room", field="room", room=room[:40])


def collect_facts(notebook: Notebook, room: str) -> dict[str, Any]:
    """A room of the notebook in the shape that `read_room` takes. Raises `FactsError`."""
    shown = find_room(notebook, room)
    return {
        "name": shown.body["name"],
        "closed": shown.body["closed"],
        "standard": collect_standard(notebook, shown.body["house"], room),
        "walls": [_wall_facts(notebook, wall, entry) for wall, entry, _ in notebook.walls(room)],
        "free": [{"id": free, **_said(entry, "name", "profile", "text", "count")}
                 for free, entry, _ in notebook.children("free", room)],
    }  # fmt: skip


def _said(entry: Entry, *names: str) -> dict[str, Any]:
    return {name: entry.body[name] for name in names}


def collect_standard(notebook: Notebook, house: str, room: str | None = None) -> dict[str, object]:
    """Settings by dotted name: the house's, and over them those in which the room differs on purpose."""
    of_house = _settings(notebook, house)
    return lay_over(of_house, _settings(notebook, room)) if room else of_house


def _settings(notebook: Notebook, of: str) -> dict[str, object]:
    return {name: shown.body["value"] for name, (shown, _) in notebook.settings(of).items()}


def live_texts(notebook: Notebook, of: str, what: str) -> list[str]:
    """The readings of one figure that stand, as typed, in order."""
    readings = (entry for entry in notebook.about("reading", of) if entry.body["what"] == what)
    return [entry.body["text"] for entry in readings if notebook.strike_of(entry.id) is None]


def _wall_facts(notebook: Notebook, wall: str, shown: Entry) -> dict[str, Any]:
    return {
        "id": wall,
        "settings": {name: entry.body["value"] for name, (entry, _) in notebook.settings(wall).items()},
        **{what: live_texts(notebook, wall, what) for what in ("length", "ceiling", "height", "studs", "plumb")},
        "corner": {
            "turn": shown.body["turn"],
            "corner": live_texts(notebook, wall, "corner"),
            "sides": [parse_sides(text) for text in live_texts(notebook, wall, "sides")],
        },
        "openings": [
            {
                "id": opening,
                "kind": entry.body["kind"],
                "settings": _settings(notebook, opening),
                **_along(notebook, opening),
                **_up(notebook, opening),
            }
            for opening, entry, _ in notebook.children("opening", wall)
        ],
        "obstacles": [
            {
                "id": obstacle,
                "kind": entry.body["kind"],
                "base": entry.body["base"],
                **_along(notebook, obstacle),
                "height": live_texts(notebook, obstacle, "height"),
            }
            for obstacle, entry, _ in notebook.children("obstacle", wall)
        ],
    }


def _up(notebook: Notebook, opening: str) -> Mapping[str, Any]:
    heights = {what: live_texts(notebook, opening, what) for what in ("left", "right")}
    return {
        **heights,
        "head_corners": [live_texts(notebook, opening, f"{side}_corner") for side in heights],
        "sash": live_texts(notebook, opening, "sash"),
        "depths": {
            place: [parse_points(text) for text in live_texts(notebook, opening, f"depth_{place}")]
            for place in ("left", "right", "head", "sill")
        },
    }


def _along(notebook: Notebook, thing: str) -> Mapping[str, list[str]]:
    return {what: live_texts(notebook, thing, what) for what in ("at", "width")}
