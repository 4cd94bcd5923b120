"""`work`: the order of work in a room: what can be done today, what waits, and which readings are in doubt."""

from collections.abc import Iterable
from typing import Any

from marshmallow import Schema, fields, validate

from scantling.engine.cautions import cautions_for_work
from scantling.engine.cutlist.listed import Listed
from scantling.engine.cutlist.place import dies_into_casing, hint_in_place
from scantling.engine.notebook import Notebook
from scantling.engine.questions.cutlist.cut_list import list_of
from scantling.engine.questions.facts import room_of
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.shapes import AskedIn, out, text_out, texts_out
from scantling.engine.survey.facts import find_room
from scantling.engine.trim.piece import Kind
from scantling.engine.words import say
from scantling.engine.work.of_room import InDoubt, derive_in_doubt, find_done
from scantling.engine.work.order import READY, Standing, StepDoubt, derive_doubts, derive_work_order, find_steps
from scantling.engine.work.steps import STEPS

KEYS = validate.Length(max=len(STEPS))


class WorkIn(AskedIn):
    """What is given; and with a room, what is ticked off in it, and which of its readings were taken before."""

    room = fields.String(metadata={"description": say("ask-room")})
    done = fields.List(fields.String(), load_default=[], validate=KEYS)
    skipped = fields.List(
        fields.String(), load_default=[], validate=KEYS, metadata={"description": say("ask-work-skipped")}
    )
    since = fields.List(
        fields.String(), load_default=[], validate=KEYS, metadata={"description": say("ask-work-since")}
    )


class StepStandingOut(Schema):
    """`state`: done, ready, waits, skipped; early where it was done before what it must come after."""

    key, name, state, why = text_out(), text_out(), text_out(), text_out()
    waits_for = texts_out()


class DoubtOut(Schema):
    what, because, said = text_out(), text_out(), text_out()


class InDoubtOut(Schema):
    """A figure of a room, by what was read and of what; the step done since, and why it matters."""

    of, what, title, because, why = (text_out() for _ in range(5))


class InPlaceOut(Schema):
    """A piece that dies into casing that is up: `of` is what a reading of its place is of."""

    of, letter, part_name, hint = text_out(), text_out(), text_out(), text_out()
    provisional = fields.Boolean(required=True, metadata={"description": say("told-in-place-provisional")})


class WorkOut(Schema):
    """`today`: the keys of what can be done now; `in_doubt`: the figures of a room to read again, in walking order.

    `in_place`: pieces still to cut whose place may now be read, between the casing and what is beyond.
    """

    steps = out(StepStandingOut, many=True)
    today = texts_out()
    doubts = out(DoubtOut, many=True)
    in_doubt = out(InDoubtOut, many=True)
    in_place = out(InPlaceOut, many=True)
    cautions = texts_out()


def answer_work(asked: dict[str, Any], context: Context) -> Answer:
    done, skipped, since = (find_steps(asked[name], name) for name in ("done", "skipped", "since"))
    in_doubt: list[InDoubt] = []
    in_place: list[Answer] = []
    cautions: list[str] = []
    if "room" in asked:
        notebook, room = context.notebook, room_of(context.notebook, asked["room"])
        ticked, without = find_done(notebook, asked["room"])
        done, skipped = done | ticked, skipped | without
        in_doubt = derive_in_doubt(notebook, asked["room"], room)
        if "casing" in done and "base" not in done:
            in_place = _in_place(list_of(notebook, asked["room"], asked["nearest"]).listed)
        if "strip" not in done | skipped:
            cautions = cautions_for_work(_built(notebook, asked["room"]), room.standard.base_height)
    order = derive_work_order(done, skipped)
    return {
        "steps": [_step(one) for one in order],
        "today": [one.step.key for one in order if one.state == READY],
        "doubts": [_doubt(doubt) for doubt in derive_doubts(since)],
        "in_doubt": [_in_doubt(one) for one in in_doubt],
        "in_place": in_place,
        "cautions": cautions,
    }


def _built(notebook: Notebook, room: str) -> int | None:
    house = find_room(notebook, room).body["house"]
    built: int | None = notebook.heads(notebook.about("the house", house))[-1].body["built"]
    return built


def _step(one: Standing) -> Answer:
    return {
        "key": one.step.key,
        "name": one.step.name,
        "state": one.state,
        "why": one.step.why,
        "waits_for": [step.key for step in one.waits_for],
    }


def _doubt(doubt: StepDoubt) -> Answer:
    because = doubt.because.why or doubt.because.name.lower()
    said = say("doubt-read-again", figure=doubt.what, because=because)
    return {"what": doubt.what, "because": doubt.because.key, "said": said}


def _in_doubt(one: InDoubt) -> Answer:
    figure = one.figure
    return {"of": figure.of, "what": figure.what, "title": figure.title, "because": one.because.key,
            "why": one.because.why}  # fmt: skip


def _in_place(listed: Iterable[Listed]) -> list[Answer]:
    """Boards on the wall, and not what lies on them: a reading of that would be one of the board behind."""
    return [
        {"of": one.of, "letter": one.letter, "part_name": one.piece.name, "hint": hint_in_place(one.piece),
         "provisional": one.provisional}
        for one in listed
        if one.piece.kind in (Kind.BASE, Kind.CHAIR_RAIL)
        and dies_into_casing(one.piece)
        and not (one.in_place or one.state.is_cut)
    ]


QUESTIONS = (
    Question("work", say("question-work"), WorkIn, WorkOut, answer_work),
)
