"""Readings: taken as text, understood before they are kept; and the striking of entries, which takes them back."""

from typing import Any

from marshmallow import fields

from scantling.api.blueprint import Blueprint, Written, laptop, require, write
from scantling.api.door import DoorError
from scantling.engine.errors import quote
from scantling.engine.journal import Entry, ReadingBody, StrikeBody
from scantling.engine.survey.read import parse_sides
from scantling.store import EntryData

blueprint = Blueprint("readings", __name__, url_prefix="/api", description="Readings, and the striking of entries.")


class Strike(StrikeBody):
    why = fields.String(load_default="")

    class Meta(StrikeBody.Meta):
        exclude = ("entry",)


class ReadingWritten(Written):
    understood = fields.Dict(required=True, metadata={"description": "What the engine took the text for."})


@blueprint.post("/rooms/<room>/readings")
@blueprint.arguments(ReadingBody)
@blueprint.response(201, ReadingWritten)
def add_reading(said: dict[str, Any], room: str) -> dict[str, Any]:
    """Keep a reading. A text that cannot be understood is refused with the place in it, and nothing is kept."""
    require("room", room)
    understood = understand(find_wall(room, said["of"]), said["what"], said["text"])
    return {**write("reading", said), "understood": understood}


def find_wall(room: str, subject: str) -> Entry:
    """The wall that was measured, or in which the opening or the obstacle is. Raises DoorError."""
    for kind in ("opening", "obstacle"):
        for entry in laptop().in_force(kind, **{kind: subject}):
            subject = entry.body["wall"]
    return require("wall", subject, room=room)[-1]


def understand(wall: Entry, what: str, text: str) -> dict[str, Any]:
    """What the desk takes a reading for. Raises DoorError with the place in the text."""
    corner = {"ask": "corner", "turn": wall.body["turn"], "thickness": "1"}
    questions = {"corner": {**corner, "corner": text}, "sides": {**corner, "sides": list(parse_sides(text))}}
    answered = laptop().answer(questions.get(what, {"ask": "read", "text": text}))
    if "error" in answered:
        error = answered["error"]
        refusal = DoorError("not-understood", sentence=error["message"], field="text", at=error["where"]["at"])
        refusal.key = error["key"]
        raise refusal
    answer: dict[str, Any] = answered["answer"]
    return answer


@blueprint.post("/entries/<entry>/strike")
@blueprint.arguments(Strike)
@blueprint.response(201, Written)
def strike_entry(said: dict[str, Any], entry: str) -> dict[str, Any]:
    """Strike an entry: it stays in the journal, without force. To restore it, strike the strike."""
    find_entry(entry)
    return write("strike", {"entry": entry, **said})


@blueprint.get("/entries/<entry>")
@blueprint.response(200, Written)
def read_entry(entry: str) -> dict[str, Any]:
    """One entry of the journal, as it was written."""
    return {"entry": find_entry(entry)}


def find_entry(entry: str) -> EntryData:
    with laptop().store.reading() as ledger:
        found = ledger.read_entry(entry)
    if found is None:
        raise DoorError("no-such-entry", name=quote(entry))
    return found
