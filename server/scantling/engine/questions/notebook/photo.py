"""`photo`: what is drawn and pinned on it, each pin with its figure as it stands now, and what may be pinned there.

A pin says which figure it shows, never what it was: a wall that is read again is right on every photo of it.
"""

from collections.abc import Iterator
from typing import Any

from marshmallow import Schema, fields

from scantling.engine.bodies import CUT_TO
from scantling.engine.cutlist.place import IN_PLACE
from scantling.engine.cutlist.salvage import SALVAGED
from scantling.engine.errors import EngineError, quote
from scantling.engine.journal import Entry
from scantling.engine.notebook import Notebook
from scantling.engine.questions.cutlist.cut_list import list_of
from scantling.engine.questions.facts import room_of
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.shapes import AskedIn, out, text_out, texts_out
from scantling.engine.tape.angles import Corner
from scantling.engine.tape.lengths import Length, format_length
from scantling.engine.walk.rows import FIGURE, Row, derive_rows, show_corner
from scantling.engine.words import say


class PhotoError(EngineError):
    family = "photo"


class PhotoIn(AskedIn):
    attachment = fields.String(required=True, metadata={"description": say("ask-photo-attachment")})
    room = fields.String(metadata={"description": say("ask-tape-room")})


class PinnedFigure(Schema):
    """`shown` is what the figure is now, nothing where it is not read; `state` as in the survey, or gone."""

    of, what, title, shown, state, note = (text_out() for _ in range(6))


class PinOut(PinnedFigure):
    pin = text_out()
    x = fields.Integer(required=True, metadata={"description": say("told-pin-x")})
    y = fields.Integer(required=True, metadata={"description": say("told-pin-y")})
    entries = texts_out()


class StrokeOut(Schema):
    entry = text_out()
    points = fields.Raw(required=True, metadata={"description": say("told-stroke-points")})


class PhotoOut(Schema):
    """`strokes` are drawn in their order; `figures` are those that a pin may show on this photo."""

    attachment, of, caption = text_out(), text_out(), text_out()
    strokes = out(StrokeOut, many=True)
    pins = out(PinOut, many=True)
    figures = out(PinnedFigure, many=True)


def answer_photo(asked: dict[str, Any], context: Context) -> Answer:
    notebook, photo = context.notebook, asked["attachment"]
    heads = notebook.heads(notebook.about("the attachment", photo))
    if not heads:
        raise PhotoError("no-such-photo", field="attachment", name=quote(photo))
    of = heads[-1].body["of"]
    pins = sorted(notebook.children("pin", photo), key=lambda one: one[1].order)
    strokes = [entry for entry in notebook.about("stroke", photo) if notebook.strike_of(entry.id) is None]
    return {
        "attachment": photo,
        "of": of,
        "caption": heads[-1].body["name"],
        # Copies, or who changes an answer would redraw the entry.
        "strokes": [{"entry": entry.id, "points": [list(one) for one in entry.body["points"]]} for entry in strokes],
        "pins": [_pin(notebook, pin, shown, entries, asked["nearest"]) for pin, shown, entries in pins],
        "figures": figures_of(notebook, of, asked["nearest"]),
    }


def _pin(notebook: Notebook, pin: str, shown: Entry, heads: list[Entry], nearest: Length) -> Answer:
    of, what = shown.body["of"], shown.body["what"]
    what = FIGURE.get(what, what)
    figure = next((one for one in figures_of(notebook, of, nearest) if (one["of"], one["what"]) == (of, what)), None)
    gone = {"of": of, "what": what, "title": say("pin-gone"), "shown": "", "state": "gone", "note": say("pin-gone")}
    place = {name: shown.body[name] for name in ("x", "y")}
    return {"pin": pin, **(figure or gone), **place, "entries": [entry.id for entry in heads]}


def figures_of(notebook: Notebook, of: str, nearest: Length) -> list[Answer]:
    """The figures of a thing, with those of its wall behind them; of a room, all that it has; of a piece, its own.

    None of what is not in the house. Lengths are shown to `nearest`.
    """
    piece_room = next((room for room, pieces in _issued(notebook) if of in pieces), None)
    if piece_room is not None:
        return _of_piece(notebook, piece_room, of, nearest)
    wall, room = _wall_and_room(notebook, of)
    if room is None:
        return []
    rows = [row for row in _rows(notebook, room, nearest) if wall is None or row.figure.wall == wall]
    own_first = sorted(rows, key=lambda row: row.figure.of != of)
    return [_of_row(row, nearest) for row in own_first]


def _issued(notebook: Notebook) -> Iterator[tuple[str, set[str]]]:
    for house, _, _ in notebook.houses():
        for room, _, _ in notebook.children("room", house):
            yield room, {row["piece"] for entry in notebook.about("issue", room) for row in entry.body["pieces"]}


def _wall_and_room(notebook: Notebook, of: str) -> tuple[str | None, str | None]:
    """Where a thing is: its wall, none of a room, and its room; neither of what is nowhere."""
    for kind in ("opening", "obstacle"):
        found = notebook.heads(notebook.about(f"the {kind}", of))
        of = found[-1].body["wall"] if found else of
    walls = notebook.heads(notebook.about("the wall", of))
    room = walls[-1].body["room"] if walls else of
    rooms = notebook.heads(notebook.about("the room", room))
    standing = rooms and notebook.heads(notebook.about("the house", rooms[-1].body["house"]))
    return (of if walls else None), (room if standing else None)


def _rows(notebook: Notebook, room: str, nearest: Length) -> list[Row]:
    def derive() -> list[Row]:
        return derive_rows(notebook, room_of(notebook, room), nearest)

    return notebook.derived(f"rows to {nearest.inches}", room, derive)


def _of_row(row: Row, nearest: Length) -> Answer:
    standing = [one.shown for one in row.taken if one.strike is None and not one.error]
    shown = standing[-1] if standing else ""  # studs, and how far off plumb, are told as they were read last
    if isinstance(row.value, Corner):
        shown = show_corner(row.value)
    elif row.value is not None:
        shown = format_length(row.value, nearest)
    figure = row.figure
    return {"of": figure.of, "what": figure.what, "title": figure.title, "shown": shown, "state": row.state,
            "note": row.note}  # fmt: skip


def _of_piece(notebook: Notebook, room: str, piece: str, nearest: Length) -> list[Answer]:
    listed = next((one for one in list_of(notebook, room, nearest).listed if one.of == piece), None)
    if listed is None:
        return []
    name = f"{listed.letter}, {listed.piece.name}"
    place = format_length(listed.piece.back, nearest) if listed.in_place else ""
    there = [entry.body["text"] for entry, strike in listed.there if strike is None]
    told = (
        (CUT_TO, "pin-cut-to", format_length(listed.piece.cut, nearest), listed.state.name),
        (IN_PLACE, "pin-measured", place, say("read-in-place" if place else "not-read-yet")),
        *((SALVAGED, "pin-there", text, say("as-it-was-found")) for text in there[-1:]),
    )
    return [
        {"of": piece, "what": what, "title": say(title, piece=name), "shown": shown, "note": note,
         "state": "read" if shown else "wanted"}
        for what, title, shown, note in told
    ]  # fmt: skip


QUESTIONS = (
    Question("photo", say("question-photo"), PhotoIn, PhotoOut, answer_photo, kept=True),
)
