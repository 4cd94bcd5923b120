"""`tape`: the sums that are kept, the newest first, each worked anew; and what of it a reading may be.

A sum is kept as it was typed. What it comes to is worked out when it is asked for, so that it can never be another
figure than its own working gives.
"""

from collections.abc import Sequence
from typing import Any

from marshmallow import Schema, fields, validate

from scantling.engine.errors import EngineError
from scantling.engine.journal import Entry
from scantling.engine.notebook import Notebook
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.tape.lengths import SumOut, answer_sum
from scantling.engine.shapes import AskedIn, out, text_out, texts_out
from scantling.engine.shown.shown_in import is_metric
from scantling.engine.tape.lengths import Length, format_reading, parse_length
from scantling.engine.tape.quantities import INCHES
from scantling.engine.tape.sums import evaluate_sum, write_units
from scantling.engine.words import say

SHOWN_AT_ONCE = 30
SHOWN_AT_MOST = 200


class TapeIn(AskedIn):
    most = fields.Integer(
        load_default=SHOWN_AT_ONCE, strict=True, validate=validate.Range(1, SHOWN_AT_MOST),
        metadata={"description": say("ask-tape-most", most=SHOWN_AT_MOST)},
    )  # fmt: skip
    skip = fields.Integer(
        load_default=0, strict=True, validate=validate.Range(0, 2**53),
        metadata={"description": say("ask-tape-skip")},
    )  # fmt: skip
    room = fields.String(metadata={"description": say("ask-tape-room")})
    sum = fields.String(metadata={"description": say("ask-tape-sum")})


class KeptSumOut(Schema):
    """Either `worked` or `error` is null. `reading` is the text that a reading of it would have, null of what no tape
    could read; `rounded` where that is not all of it, and `rounded_to` what: 1/64, or 0.1 mm. `again` is the sum to
    begin with anew: it comes to the same where lengths without a unit are in millimeters."""

    sum, text, note, again = text_out(), text_out(), text_out(), text_out()
    of = text_out(none=True)
    room = fields.String(required=True, metadata={"description": say("told-kept-sum-room")})
    worked = out(SumOut, none=True)
    reading, error = text_out(none=True), text_out(none=True)
    rounded, rounded_to = fields.Boolean(required=True), text_out()
    entries = texts_out()


class StruckSumOut(Schema):
    """`strikes`: to strike for it to stand again."""

    sum, text, note = text_out(), text_out(), text_out()
    strikes = texts_out()


class TapeOut(Schema):
    """`total` is how many stand in all; of those that are struck the last few are told."""

    sums = out(KeptSumOut, many=True)
    total = fields.Integer(required=True)
    struck = out(StruckSumOut, many=True)


def answer_tape(asked: dict[str, Any], context: Context) -> Answer:
    notebook = context.notebook
    found = sorted(notebook.children("sum", ""), key=lambda one: _first(notebook, one[0]).order, reverse=True)
    named = [one for one in found if asked.get("sum") in (None, one[0])]
    shown = named[asked["skip"] : asked["skip"] + asked["most"]]
    return {
        "sums": [_kept(one, entry, heads, asked, context) for one, entry, heads in shown],
        "total": len(found),
        "struck": _struck(notebook)[:SHOWN_AT_ONCE],
    }


def _first(notebook: Notebook, kept: str) -> Entry:
    """What was said of it first: to note something on an old sum must not make it the newest."""
    return notebook.about("the sum", kept)[0]


def _kept(kept: str, entry: Entry, heads: Sequence[Entry], asked: dict[str, Any], context: Context) -> Answer:
    text = entry.body["text"]
    worked, length, error, again = None, None, None, text
    try:
        worked = answer_sum({"text": text, "nearest": asked["nearest"], "bare": INCHES}, context)
        length = evaluate_sum(text).length
        again = write_units(text, bare=INCHES) if is_metric() else text
    except EngineError as refused:  # a page writes what the engine could work; an entry may come from elsewhere
        error = refused.message
    return {
        "sum": kept, **{name: entry.body[name] for name in ("text", "note", "of")},
        "room": _room_name(context.notebook, entry.body["of"]),
        "worked": worked, **_reading(length), "error": error, "again": again, "entries": [one.id for one in heads],
    }  # fmt: skip


def _reading(length: Length | None) -> Answer:
    text = None if length is None else format_reading(length)
    return {"reading": text, "rounded": text is not None and parse_length(text) != length,
            "rounded_to": "0.1 mm" if is_metric() else "1/64"}  # fmt: skip


def _room_name(notebook: Notebook, of: str | None) -> str:
    heads = notebook.heads(notebook.about("the room", of)) if of else []
    return str(heads[-1].body["name"]) if heads else ""


def _struck(notebook: Notebook) -> list[Answer]:
    """Those of which nothing stands, the last kept first."""
    said: dict[str, list[Entry]] = {}
    for entry in notebook.about("sum", ""):
        said.setdefault(entry.body["sum"], []).append(entry)
    strikes = {kept: [notebook.strike_of(entry.id) for entry in entries] for kept, entries in said.items()}
    return [
        {"sum": kept, **{name: said[kept][-1].body[name] for name in ("text", "note")}, "strikes": strikes[kept]}
        for kept in reversed(said) if all(strikes[kept])
    ]  # fmt: skip


QUESTIONS = (
    Question("tape", say("question-tape"), TapeIn, TapeOut, answer_tape, kept=True),
)
