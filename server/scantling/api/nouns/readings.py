"""Readings: taken as text, understood before they are kept; and the striking of entries, which takes them back."""

from typing import Any

from marshmallow import fields

from scantling.api.blueprint import Blueprint, Written, laptop, require, write
from scantling.api.refusals import DoorError
from scantling.engine.bodies import ReadingBody, StrikeBody
from scantling.engine.cutlist.place import IN_PLACE
from scantling.engine.cutlist.salvage import SALVAGED
from scantling.engine.errors import quote
from scantling.engine.journal import Entry
from scantling.engine.survey.facts import READINGS
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
    if said["what"] in (IN_PLACE, SALVAGED):
        require_piece(room, said["of"])
    if said["what"] == SALVAGED:
        understood = ask_desk({"ask": "behind", "what": SALVAGED, "text": said["text"]})
    elif said["what"] == IN_PLACE:
        understood = ask_desk({"ask": "read", "text": said["text"]})
    else:
        sort, wall = find_thing(room, said["of"])
        require_figure(sort, said["what"])
        understood = understand(wall, said["what"], said["text"])
    return {**write("reading", said), "understood": understood}


def require_piece(room: str, piece: str) -> None:
    """A piece of this room, issued or not. Raises DoorError."""
    listed = ask_desk({"ask": "pieces", "room": room})["pieces"]
    if piece not in {one["place_of"] for one in listed}:
        raise DoorError("no-such-piece", name=quote(piece))


def require_figure(sort: str, what: str) -> None:
    """A figure that is read of such a thing: of any other nothing would ever be asked. Raises DoorError."""
    if what not in READINGS[sort]:
        raise DoorError("no-such-reading", field="what", sort=sort, name=quote(what), names=", ".join(READINGS[sort]))


def find_thing(room: str, subject: str) -> tuple[str, Entry]:
    """What was measured, a wall, an opening or an obstacle, and the wall that it is or is in. Raises DoorError."""
    for kind in ("opening", "obstacle"):
        for entry in laptop().in_force(kind, **{kind: subject})[-1:]:
            return kind, require("wall", entry.body["wall"], room=room)[-1]
    return "wall", require("wall", subject, room=room)[-1]


def understand(wall: Entry, what: str, text: str) -> dict[str, Any]:
    """What the desk takes a reading for. Raises DoorError with the place in the text."""
    return ask_desk(question_of(wall.body["turn"], what, text))


def question_of(turn: str, what: str, text: str) -> dict[str, Any]:
    """The question that says how a figure's text is understood: a gauge's degrees are no length."""
    corner = {"ask": "corner", "turn": turn, "thickness": "1"}
    if what in ("corner", "ceiling_corner"):
        return {**corner, "corner": text}
    if what == "sides":
        return {**corner, "sides": list(parse_sides(text))}
    if what in ("left_corner", "right_corner"):
        return {**corner, "turn": "inside", "corner": text}
    if what in ("studs", "plumb", "bow", "fall"):
        return {"ask": "behind", "what": what, "text": text}
    if what in ("depth_left", "depth_right", "depth_head", "depth_sill"):
        return {"ask": "behind", "what": "depths", "text": text}
    return {"ask": "read", "text": text}


def ask_desk(question: dict[str, Any]) -> dict[str, Any]:
    """The desk's answer. Raises DoorError with the place in the text."""
    answered = laptop().answer(question)
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
