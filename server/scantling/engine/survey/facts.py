"""The facts of a room from the notebook, in the one shape that questions also carry.

Struck readings stay in the notebook and are left out here. The facts are neither read nor judged: texts go through as
typed, to `read`.
"""

from collections.abc import Mapping
from typing import Any

from scantling.engine.errors import EngineError
from scantling.engine.journal import Entry
from scantling.engine.notebook import Notebook
from scantling.engine.settings import check_setting, lay_over
from scantling.engine.survey.points import parse_points
from scantling.engine.survey.read import Given, parse_sides, read_room, read_settings
from scantling.engine.survey.room import RAILS, SIDES, Problem, Room
from scantling.engine.words import say

WALL_READINGS = ("length", "ceiling", "ceiling_corner", "height", "studs", "plumb", "bow", "fall", *RAILS)
ALONG = ("at", "width")
UP_OPENING = ("sash", "sill", "depth")
DEPTHS = ("left", "right", "head", "sill")
UP_OBSTACLE = ("height", "depth", "sill")
# What is read of each sort of thing; whatever else is said of one is never asked for.
READINGS: Mapping[str, tuple[str, ...]] = {
    "wall": (*WALL_READINGS, "corner", "sides"),
    "opening": (*ALONG, *SIDES, *(f"{one}_corner" for one in SIDES), *UP_OPENING, *(f"depth_{one}" for one in DEPTHS)),
    "obstacle": (*ALONG, *UP_OBSTACLE),
}


class FactsError(EngineError):
    family = "facts"


def find_room(notebook: Notebook, room: str) -> Entry:
    """The statement in force about a room, in a house that is in force too. Raises `FactsError`."""
    # Straight to it, and not from house to house: what is said of another room must leave this one as it was derived.
    heads = notebook.heads(notebook.about("the room", room))
    if heads and notebook.heads(notebook.about("the house", heads[-1].body["house"])):
        return heads[-1]
    raise FactsError("no-such-room", field="room", room=room[:40])


def find_house(notebook: Notebook, house: str) -> str:
    """The id of a house, where it is in force. Raises `FactsError`."""
    if not notebook.heads(notebook.about("the house", house)):
        raise FactsError("no-such-house", field="house", house=house[:40])
    return house


def collect_room(notebook: Notebook, room: str) -> Room:
    """A room of the notebook, read. Raises `EngineError`.

    Its settings are kept by themselves: most of what is said of a room are readings, which change none of them.
    """
    given = notebook.derived("settings", room, lambda: _collect_given(notebook, room))
    told = notebook.derived("unread settings", room, lambda: check_settings(notebook, room))
    return read_room(collect_facts(notebook, room), told, given)


def _collect_given(notebook: Notebook, room: str) -> Given:
    return read_settings(collect_standard(notebook, find_room(notebook, room).body["house"], room))


def collect_facts(notebook: Notebook, room: str) -> dict[str, Any]:
    """A room of the notebook in the shape that `read_room` takes, but for its settings. Raises `FactsError`."""
    shown = find_room(notebook, room)
    return {
        "name": shown.body["name"],
        "closed": shown.body["closed"],
        "walls": [_wall_facts(notebook, wall, entry) for wall, entry, _ in notebook.walls(room)],
        "free": [{"id": free, **_facts_of(entry, "name", "profile", "text", "count")}
                 for free, entry, _ in notebook.children("free", room)],
    }  # fmt: skip


def _facts_of(entry: Entry, *names: str) -> dict[str, Any]:
    return {name: entry.body[name] for name in names}


def collect_standard(notebook: Notebook, house: str, room: str | None = None) -> dict[str, object]:
    """Settings by dotted name: the house's, and over them those in which the room differs on purpose.

    One that cannot be read, as an older or a newer device may have sent it, is left out: `check_settings` says so.
    """
    of_house = _readable(_settings(notebook, house))
    return lay_over(of_house, _readable(_settings(notebook, room))) if room else of_house


def _readable(settings: Mapping[str, object]) -> dict[str, object]:
    return {name: value for name, value in settings.items() if not check_setting(name, value)}


def check_settings(notebook: Notebook, room: str) -> list[Problem]:
    """The settings of a room and of its house that cannot be read, and what stands in for each. Raises `FactsError`."""
    house = find_room(notebook, room).body["house"]
    of_house = _readable(_settings(notebook, house))
    problems = []
    for whose, of in (("house", house), ("room", room)):
        for name, value in _settings(notebook, of).items():
            instead = "the-house" if of == room and name in of_house else "the-default"
            for error in check_setting(name, value):
                stands = say("stands-no-board" if name.endswith("stock") else f"stands-{instead}")
                message = say(f"unread-setting-{whose}", why=error.message, stands=stands)
                problems.append(Problem("", error.key, message))
    return problems


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
        **{what: live_texts(notebook, wall, what) for what in WALL_READINGS},
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
                "settings": _settings(notebook, obstacle),
                **_along(notebook, obstacle),
                **{what: live_texts(notebook, obstacle, what) for what in UP_OBSTACLE},
            }
            for obstacle, entry, _ in notebook.children("obstacle", wall)
        ],
    }


def _up(notebook: Notebook, opening: str) -> Mapping[str, Any]:
    heights = {what: live_texts(notebook, opening, what) for what in SIDES}
    return {
        **heights,
        "head_corners": [live_texts(notebook, opening, f"{side}_corner") for side in heights],
        **{what: live_texts(notebook, opening, what) for what in UP_OPENING},
        "depths": {
            place: [parse_points(text) for text in live_texts(notebook, opening, f"depth_{place}")]
            for place in DEPTHS
        },
    }


def _along(notebook: Notebook, thing: str) -> Mapping[str, list[str]]:
    return {what: live_texts(notebook, thing, what) for what in ALONG}
