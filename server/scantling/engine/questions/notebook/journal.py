"""What the whole `notebook` adds up to: its houses and rooms, devices, and what two of them said apart."""

from collections import Counter
from typing import Any

from marshmallow import Schema, fields

from scantling.engine.cutlist.letters import derive_letters
from scantling.engine.cutlist.states import derive_state
from scantling.engine.errors import EngineError
from scantling.engine.journal import Entry
from scantling.engine.notebook import Notebook
from scantling.engine.questions.cutlist.cut_list import tell_state
from scantling.engine.questions.facts import room_of
from scantling.engine.questions.notebook.settings import SettledOut, show_defaults, show_settings
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.shown_in import find_shown_in
from scantling.engine.shapes import AskedIn, out, text_out, texts_out
from scantling.engine.shown.shown_in import showing
from scantling.engine.survey.facts import find_room
from scantling.engine.walk.needs import derive_needs
from scantling.engine.words import say


class RoomLine(SettledOut):
    id, name = text_out(), text_out()
    closed = fields.Boolean(required=True)
    walls, readings = fields.Integer(required=True), fields.Integer(required=True)
    wanted, problems = fields.Integer(required=True), fields.Integer(required=True)


class HouseOut(SettledOut):
    id, name = text_out(), text_out()
    built = fields.Integer(required=True, allow_none=True)
    rooms = out(RoomLine, many=True)
    defaults = fields.Dict(keys=fields.String(), required=True)
    entries = texts_out()


class DeviceOut(Schema):
    device = text_out()
    name = text_out(none=True)
    entries = fields.Integer(required=True)


class ChoiceOut(Schema):
    entry, shown = text_out(), text_out()


class ConflictOut(Schema):
    of, name = text_out(), text_out()
    choices = out(ChoiceOut, many=True)


class NotebookOut(Schema):
    houses = out(HouseOut, many=True)
    devices = out(DeviceOut, many=True)
    conflicts = out(ConflictOut, many=True)
    entries, kept_unread = fields.Integer(required=True), fields.Integer(required=True)


def answer_notebook(asked: dict[str, Any], context: Context) -> Answer:
    notebook = context.notebook
    houses = list(notebook.houses())
    return {
        "houses": [_house(notebook, *house, asked.get("shown_in")) for house in houses],
        "devices": _devices(notebook),
        "conflicts": [conflict for house, _, heads in houses for conflict in _conflicts(notebook, house, heads)],
        "entries": len(notebook.entries),
        "kept_unread": notebook.kept_unread,
    }


def _house(notebook: Notebook, house: str, shown: Entry, heads: list[Entry], shown_in: str | None) -> Answer:
    """Each house in what it shows its lengths in, unless the question says one for all."""
    with showing(shown_in or find_shown_in({"house": house}, notebook)):
        return {
            "id": house,
            "name": shown.body["name"],
            "built": shown.body["built"],
            "rooms": [dict(_room(notebook, room)) for room, _, _ in notebook.children("room", house)],
            **show_settings(notebook, house),
            "defaults": show_defaults(),
            "entries": [entry.id for entry in heads],
        }


def _room(notebook: Notebook, room: str) -> Answer:
    return notebook.derived("line", room, lambda: _room_line(notebook, room))


def _room_line(notebook: Notebook, room: str) -> Answer:
    shown = find_room(notebook, room)
    line = {"id": room, "name": shown.body["name"], "closed": shown.body["closed"], **show_settings(notebook, room)}
    line["readings"] = count_readings(notebook, room)
    try:
        found = room_of(notebook, room)
    except EngineError:  # more than can be worked out: every answer about the room says so
        return {**line, "walls": len(notebook.walls(room)), "wanted": 0, "problems": 1}
    return {**line, "walls": len(found.walls), "wanted": len(derive_needs(found)), "problems": len(found.problems)}


def count_readings(notebook: Notebook, room: str) -> int:
    """How many readings of a room stand."""
    walls = [wall for wall, _, _ in notebook.walls(room)]
    kinds = ("opening", "obstacle")
    things = [thing for wall in walls for kind in kinds for thing, _, _ in notebook.children(kind, wall)]
    return sum(
        notebook.strike_of(entry.id) is None for of in (*walls, *things) for entry in notebook.about("reading", of)
    )


def _devices(notebook: Notebook) -> list[Answer]:
    counts = Counter(entry.device for entry in notebook.entries.values())
    names = {entry.device: entry.body["name"] for entry in notebook.about("device", "")}
    return [{"device": device, "name": names.get(device), "entries": counts[device]} for device in sorted(counts)]


def _conflicts(notebook: Notebook, house: str, heads: list[Entry]) -> list[Answer]:
    """What two devices said apart of one thing: the later one is used until a person chooses."""
    found = [_conflict("house", house, heads)] if len(heads) > 1 else []
    found += [_conflict(name, house, those) for name, (_, those) in notebook.settings(house).items() if len(those) > 1]
    for room, _, those in notebook.children("room", house):
        if len(those) > 1:
            found.append(_conflict("room", room, those))
        found += notebook.derived("conflicts", room, lambda room=room: _conflicts_in(notebook, room))  # type: ignore[misc]
    return found


def _conflicts_in(notebook: Notebook, room: str) -> list[Answer]:
    walls = notebook.walls(room)
    subjects = [("wall", wall, heads) for wall, _, heads in walls]
    subjects += [
        (kind, thing, heads)
        for wall, _, _ in walls
        for kind in ("opening", "obstacle")
        for thing, _, heads in notebook.children(kind, wall)
    ]
    openings = [opening for wall, _, _ in walls for opening, _, _ in notebook.children("opening", wall)]
    subjects += [(name, of, heads) for of in (room, *openings) for name, (_, heads) in notebook.settings(of).items()]
    lettered = derive_letters(notebook, room).by_key.values()
    subjects += [
        (say("conflict-piece", letter=one.letter), one.id, list(derive_state(notebook, one.id).heads))
        for one in lettered
    ]
    return [_conflict(name, of, heads) for name, of, heads in subjects if len(heads) > 1]


def _conflict(name: str, of: str, heads: list[Entry]) -> Answer:
    return {"of": of, "name": name, "choices": [{"entry": entry.id, "shown": _describe(entry)} for entry in heads]}


def _describe(entry: Entry) -> str:
    if entry.kind == "setting":
        value = entry.body["value"]
        return value if isinstance(value, str) else say("conflict-rows", count=len(value))
    if entry.kind == "state":
        return tell_state(entry)
    names = ("name", "built", "closed", "turn", "kind", "base")
    return ", ".join(f"{name} {entry.body[name]}" for name in names if name in entry.body)


QUESTIONS = (
    Question("notebook", say("question-notebook"), AskedIn, NotebookOut, answer_notebook),
)
