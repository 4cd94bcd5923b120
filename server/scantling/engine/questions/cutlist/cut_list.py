"""The cut list in answers: how each piece stands, what is gone; and `issue` and `mark`, which give what to write.

The page and the laptop write entries; what goes into them is said here, so that both write the same.
"""

from typing import Any

from marshmallow import Schema, fields, validate

from scantling.engine.bodies import LIST_AT_MOST, TEXT_AT_MOST
from scantling.engine.cutlist.change import Change, show_difference
from scantling.engine.cutlist.letters import piece_id
from scantling.engine.cutlist.listed import CutList, Listed, derive_list
from scantling.engine.cutlist.place import hint_in_place
from scantling.engine.cutlist.remembered import format_end
from scantling.engine.cutlist.salvage import hint_there
from scantling.engine.cutlist.states import CUT, STATES, Made
from scantling.engine.errors import EngineError, quote
from scantling.engine.journal import Entry
from scantling.engine.notebook import Notebook
from scantling.engine.questions.facts import find, find_pieces, pieces_of, room_of
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.shapes import AskedIn, LengthOut, one_of, out, show, text_out, texts_out
from scantling.engine.survey.room import Problem, Room
from scantling.engine.tape.figures import format_figure
from scantling.engine.tape.lengths import Length, format_length
from scantling.engine.trim.piece import Piece
from scantling.engine.trim.told.every import tell_all
from scantling.engine.words import say

# Of the longest rows, so many fit in what one entry may weigh on its way between devices.
ROWS_IN_ONE = min(60, LIST_AT_MOST)
NAME_AT_MOST = 120


class ListError(EngineError):
    family = "list"


class ChangeOut(Schema):
    advice, message, shown = text_out(), text_out(), text_out()
    by = out(LengthOut, none=True)


class AsCutOut(Schema):
    text = text_out()
    length = out(LengthOut, none=True)
    error = text_out(none=True)


class RememberOut(Schema):
    """What a cut remembers, to be written with it."""

    cut_to, left, right = text_out(), text_out(), text_out()


class StateSaidOut(Schema):
    entry, state, shown = text_out(), text_out(), text_out()
    struck = fields.Boolean(required=True)
    strike = text_out(none=True)


class StandingOut(Schema):
    """How a piece stands. `id` is null, and the letter provisional, until it is issued.

    `place_of` is what a reading of its place is of, issued or not; null where the room is no room of the notebook.
    """

    id, place_of = text_out(none=True), text_out(none=True)
    provisional, in_place = fields.Boolean(required=True), fields.Boolean(required=True)
    state, place_hint, there_hint = text_out(), text_out(), text_out()
    cut_to = out(LengthOut, none=True)
    as_cut = out(AsCutOut, none=True)
    change = out(ChangeOut, none=True)
    remember = out(RememberOut)
    entries = texts_out()
    said, places, there = out(StateSaidOut, many=True), out(StateSaidOut, many=True), out(StateSaidOut, many=True)
    salvaged = fields.Boolean(required=True, metadata={"description": say("told-standing-salvaged")})


class GoneOut(Schema):
    id, letter, name, state, message = text_out(), text_out(), text_out(), text_out(), text_out()
    entries = texts_out()


def find_list(asked: dict[str, Any], context: Context) -> tuple[Room, CutList, list[Problem], list[str]]:
    """A room with its cut list, what cannot be made, and what of the question nothing reads.

    A room that the question brings in full has no history: every letter is provisional.
    """
    room, unused = find(asked, context)
    pieces, problems = find_pieces(asked, room, context)
    if isinstance(asked["room"], str):
        return room, list_of(context.notebook, asked["room"], asked["nearest"]), problems, unused
    return room, CutList(tuple(map(Listed, tell_all(pieces, room.standard)))), problems, unused


def list_of(notebook: Notebook, room: str, nearest: Length) -> CutList:
    """The cut list of a room of the notebook; differences are told to `nearest`."""

    def derive() -> CutList:
        # The room and its pieces are asked for in here, so that the list is noted to lean on both.
        standard = room_of(notebook, room).standard
        return derive_list(notebook, room, pieces_of(notebook, room)[0], standard, nearest)

    return notebook.derived(f"list to {nearest.inches}", room, derive)


def standing(one: Listed, nearest: Length) -> Answer:
    """How a piece stands, as `StandingOut`."""
    made = one.state.made
    return {
        "id": one.id,
        "place_of": one.of,
        "provisional": one.provisional,
        "in_place": one.in_place,
        "state": one.state.name,
        "place_hint": hint_in_place(one.piece),
        "there_hint": hint_there(one.piece),
        "cut_to": show(made.cut_to, nearest) if made and made.cut_to is not None else None,
        "as_cut": _as_cut(made, nearest),
        "change": _change(one.change, nearest),
        "remember": remember(one.piece),
        "entries": [entry.id for entry in one.state.heads],
        "said": [_saying_out(said.entry, said.strike, tell_state(said.entry)) for said in one.state.said],
        "places": [_saying_out(entry, strike, entry.body["text"]) for entry, strike in one.places],
        "there": [_saying_out(entry, strike, entry.body["text"]) for entry, strike in one.there],
        "salvaged": bool(one.piece.salvaged),
    }


def _as_cut(made: Made | None, nearest: Length) -> Answer | None:
    if made is None or made.text is None:
        return None
    length = None if made.as_cut is None else show(made.as_cut, nearest)
    return {"text": made.text, "length": length, "error": made.refusal}


def _change(change: Change | None, nearest: Length) -> Answer | None:
    if change is None:
        return None
    by = None if change.by is None else show(change.by, nearest)
    shown = "" if change.by is None else show_difference(abs(change.by), nearest)
    return {"advice": change.advice, "message": change.message, "by": by, "shown": shown}


def remember(piece: Piece) -> Answer:
    """What a cut of a piece remembers, as `RememberOut`."""
    return {"cut_to": format_figure(piece.cut), "left": format_end(piece.left), "right": format_end(piece.right)}


def tell_state(entry: Entry) -> str:
    """What was said of a piece, in words."""
    state, as_cut = entry.body["state"], entry.body["as_cut"]
    if as_cut == "0":
        return say("state-of-no-use", state=state)
    return str(state) if as_cut is None else say("state-read-as", state=state, as_cut=as_cut)


def _saying_out(entry: Entry, strike: str | None, shown: str) -> Answer:
    state = entry.body.get("state", "")
    return {"entry": entry.id, "state": state, "shown": shown, "struck": strike is not None, "strike": strike}


def gone_out(cut_list: CutList) -> list[Answer]:
    return [
        {"id": one.lettered.id, "letter": one.lettered.letter, "name": one.lettered.named, "state": one.state.name,
         "message": one.message, "entries": [entry.id for entry in one.state.heads]}
        for one in cut_list.gone
    ]  # fmt: skip


def say_issue(cut_list: CutList) -> str:
    """What issuing would do, in a sentence; nothing where there is nothing to issue."""
    letters = [one.letter for one in cut_list.to_issue]
    if not letters:
        return ""
    if len(letters) == 1:
        return say("issue-one", letter=letters[0])
    return say("issue-several", count=len(letters), first=letters[0], last=letters[-1])


class IssueIn(AskedIn):
    room = fields.String(required=True, metadata={"description": say("ask-room")})
    list = fields.String(required=True, metadata={"description": say("ask-issue-list")})


class IssueOut(Schema):
    """`bodies` are those of the `issue` entries to write; none where every piece has its letter."""

    bodies = fields.List(fields.Dict(), required=True)
    words = text_out()


def answer_issue(asked: dict[str, Any], context: Context) -> Answer:
    _, cut_list, _, _ = find_list(asked, context)
    rows = [_row(asked["room"], one.piece) for one in cut_list.to_issue]
    return {
        "bodies": [
            {"list": asked["list"], "room": asked["room"], "pieces": rows[start : start + ROWS_IN_ONE]}
            for start in range(0, len(rows), ROWS_IN_ONE)
        ],
        "words": say_issue(cut_list),
    }


def _row(room: str, piece: Piece) -> dict[str, str]:
    return {
        "piece": piece_id(room, piece.key),
        "key": piece.key,
        "letter": piece.letter,
        "name": piece.name[:NAME_AT_MOST],
        "profile": piece.profile[:NAME_AT_MOST],
        "cut": format_figure(piece.cut),
        # For a page whose engine sleeps, which can write a figure down but not reckon one.
        "shown": format_length(piece.cut),
    }


class MarkIn(AskedIn):
    room = fields.String(required=True, metadata={"description": say("ask-room")})
    piece = fields.String(required=True, metadata={"description": say("ask-mark-piece")})
    state = fields.String(required=True, validate=one_of(*STATES))
    as_cut = fields.String(load_default=None, allow_none=True, validate=validate.Length(max=TEXT_AT_MOST))


class StateMarkOut(Schema):
    """`body` is that of the `state` entry to write, `supersedes` what it follows."""

    body = fields.Dict(required=True)
    supersedes = texts_out()


def answer_mark(asked: dict[str, Any], context: Context) -> Answer:
    _, cut_list, _, _ = find_list(asked, context)
    listed = next((one for one in cut_list.listed if one.id == asked["piece"]), None)
    gone = next((one for one in cut_list.gone if one.lettered.id == asked["piece"]), None)
    state = listed.state if listed else gone.state if gone else None
    if state is None:
        raise ListError("not-issued", field="piece", name=quote(asked["piece"]))
    blank: Answer = {"cut_to": None, "left": None, "right": None}
    remembered = remember(listed.piece) if listed and asked["state"] == CUT else blank
    body = {"piece": asked["piece"], "state": asked["state"], "as_cut": asked["as_cut"], **remembered}
    return {"body": body, "supersedes": [entry.id for entry in state.heads]}


QUESTIONS = (
    Question("issue", say("question-issue"), IssueIn, IssueOut, answer_issue),
    Question("mark", say("question-mark"), MarkIn, StateMarkOut, answer_mark),
)
