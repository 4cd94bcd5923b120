"""`fit`: a room's pieces in fitting order with what is left; `hair`: a hair off one or more of it, and what follows."""

from collections.abc import Callable
from typing import Any

from marshmallow import fields

from scantling.engine.cutlist.hair import (
    HAIRS,
    MORE,
    OFF,
    Hair,
    Moved,
    as_written,
    derive_hair,
    derive_moved,
    say_moved,
    write_length,
)
from scantling.engine.cutlist.listed import CutList, Listed, Supposed, derive_list
from scantling.engine.cutlist.states import CUT, FITTED, RECUT
from scantling.engine.errors import EngineError, quote
from scantling.engine.forms import Schema
from scantling.engine.questions.called import call_stock
from scantling.engine.questions.cutlist.cut_list import RememberOut, list_of, remember
from scantling.engine.questions.cutlist.grouped import tell_group
from scantling.engine.questions.facts import pieces_of, room_of
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.readings import StepOut, show_working
from scantling.engine.shapes import AskedIn, LengthOut, one_of, out, show, text_out
from scantling.engine.survey.facts import find_room
from scantling.engine.tape.lengths import SIXTY_FOURTH, ZERO, Length, format_inches, format_length, format_plain
from scantling.engine.trim.piece import Step
from scantling.engine.words import say

WAYS = (OFF, MORE)


class FitError(EngineError):
    family = "fit"


class FitIn(AskedIn):
    room = fields.String(required=True, metadata={"description": say("ask-room")})


class FitRow(Schema):
    """`standing` is how the piece stands, in words; `shown` its figure, or what its board is where that is known;
    `wall` is the id of the one that it hangs on."""

    id, change, wall = (text_out(none=True) for _ in range(3))
    key, letter, part_name, profile, group_name = text_out(), text_out(), text_out(), text_out(), text_out()
    profile_shown, state, standing, shown = text_out(), text_out(), text_out(), text_out()
    salvaged = fields.Boolean(required=True)
    remember = out(RememberOut)


class HairChoice(Schema):
    """What can be touched: how much, which way, and the words for it."""

    by, way, words = text_out(), text_out(), text_out()


class FitOut(Schema):
    """`left` in fitting order, what is fitted in `fitted`; `words` say how far the room is."""

    left, fitted = out(FitRow, many=True), out(FitRow, many=True)
    words = text_out()
    hairs = out(HairChoice, many=True)


def _name(hair: Length) -> str:
    """What a hair is asked for by, whatever lengths are shown in."""
    return format_inches(hair, SIXTY_FOURTH).strip('"')


class HairIn(AskedIn):
    room = fields.String(required=True, metadata={"description": say("ask-room")})
    piece = fields.String(required=True, metadata={"description": say("ask-hair-piece")})
    by = fields.String(required=True, validate=one_of(*map(_name, HAIRS)))
    way = fields.String(required=True, validate=one_of(*WAYS))


class MovedOut(Schema):
    letter, part_name, message = text_out(), text_out(), text_out()
    before, after = out(LengthOut), out(LengthOut)
    working = out(StepOut, many=True)


class FitEntryOut(Schema):
    """An entry to write; a state takes the place of the one in force."""

    kind = text_out()
    body = fields.Dict(required=True)


class HairOut(Schema):
    """What the piece is then, by which working; what its neighbours do; and what to write, in that order."""

    length = out(LengthOut)
    words, neighbours = text_out(), text_out()
    working = out(StepOut, many=True)
    moved = out(MovedOut, many=True)
    entries = out(FitEntryOut, many=True)


def answer_fit(asked: dict[str, Any], context: Context) -> Answer:
    find_room(context.notebook, asked["room"])
    listed = list_of(context.notebook, asked["room"], asked["nearest"]).listed
    fitted = [one for one in listed if one.state.name == FITTED]
    left = [one for one in listed if one.state.name != FITTED]
    return {
        "left": [_row(one, asked["nearest"]) for one in left],
        "fitted": [_row(one, asked["nearest"]) for one in fitted],
        "words": _say_left(len(listed), len(fitted), sum(one.state.name == CUT for one in left)),
        "hairs": [
            {"by": _name(by), "way": way, "words": say(f"touch-{way}", by=format_plain(by))}
            for way, sizes in ((OFF, HAIRS[::-1]), (MORE, HAIRS))
            for by in sizes
        ],
    }


def _say_left(count: int, fitted: int, cut: int) -> str:
    if not count:
        return say("fit-no-pieces")
    if fitted == count:
        return say("fit-all")
    return say("fit-left", fitted=fitted, count=count, cut=cut, left=count - fitted - cut)


def _row(one: Listed, nearest: Length) -> Answer:
    piece, made = one.piece, one.state.made if one.state.is_cut else None
    return {
        "id": one.id,
        "key": piece.key,
        "wall": piece.wall or None,
        "letter": piece.letter,
        "part_name": piece.name,
        "profile": piece.profile,
        "profile_shown": call_stock(piece.profile),
        "group_name": tell_group(piece)["group_name"],
        "state": one.state.name,
        "salvaged": bool(piece.salvaged),
        "standing": say("fit-there") if piece.salvaged and not one.state.is_cut else one.state.name,
        "shown": _figure(made.length if made and made.length is not None else piece.cut, nearest),
        "change": one.change and one.change.message,
        "remember": remember(piece),
    }


def _figure(length: Length, nearest: Length) -> str:
    """A board that was trimmed by a hair is shown to a hair."""
    on_mark = (length.inches / nearest.inches).denominator == 1 or not length.exact
    return format_length(length, nearest if on_mark else SIXTY_FOURTH)


def answer_hair(asked: dict[str, Any], context: Context) -> Answer:
    notebook, room = context.notebook, asked["room"]
    find_room(notebook, room)
    before = list_of(notebook, room, asked["nearest"])
    one = _find(before, asked["piece"])
    by = next(each for each in HAIRS if _name(each) == asked["by"])
    pieces, standard = pieces_of(notebook, room)[0], room_of(notebook, room).standard

    def suppose(supposed: Supposed) -> CutList:
        return derive_list(notebook, room, pieces, standard, asked["nearest"], supposed)

    hair = derive_hair(one, by, asked["way"], _follows(one, suppose))
    if hair is None:
        raise FitError("nothing-left", field="by", letter=one.letter)
    after = suppose(hair.supposed)
    now = _find(after, one.piece.key)
    moved = derive_moved(before, after, one.piece.key)
    length = now.state.made.length if hair.trimmed and now.state.made else now.piece.cut
    return {
        "length": show(length or now.piece.cut, SIXTY_FOURTH),
        "words": _say(one, now, hair, format_plain(by), asked["way"]),
        "neighbours": say_moved(before, one, moved),
        "working": show_working((*hair.working, *_to_the_cut(now, hair)), asked["nearest"]),
        "moved": [_moved(each, asked["nearest"]) for each in moved],
        "entries": _entries(one, hair),
    }


def _follows(one: Listed, suppose: Callable[[Supposed], CutList]) -> Length:
    """How much of its figure comes of a board that it makes up for: what the list adds to a place read as it is."""
    if not any(flag.key == "follows" for flag in one.piece.flags):
        return ZERO
    read = as_written(one.piece.back)
    as_read = suppose(Supposed(texts={one.piece.key: (write_length(read),)}))
    return _find(as_read, one.piece.key).piece.back - read


def _find(cut_list: CutList, name: str) -> Listed:
    one = next((each for each in cut_list.listed if name in (each.piece.key, each.letter)), None)
    if one is None:
        raise FitError("no-such-piece", field="piece", text=quote(name[:80]))
    if one.provisional:
        raise FitError("not-issued", field="piece", letter=one.letter)
    if one.state.name == FITTED:
        raise FitError("fitted", field="piece", letter=one.letter)
    if one.piece.salvaged and not one.state.is_cut:
        raise FitError("salvaged", field="piece", letter=one.letter)
    return one


def _say(one: Listed, now: Listed, hair: Hair, by: str, way: str) -> str:
    if hair.trimmed:
        then = now.change.message if now.change else say("hair-within")
        return f"{say('hair-trim', by=by, letter=one.letter)} {then}"
    if one.state.is_cut:
        return say("hair-cut-again", letter=one.letter, by=by)
    return say("hair-shorter" if way == OFF else "hair-longer", letter=one.letter, by=by)


def _to_the_cut(now: Listed, hair: Hair) -> tuple[Step, ...]:
    if hair.trimmed or now.piece.cut == now.piece.back:
        return ()
    return (Step(f"= {now.letter}, {now.piece.cut_from}", now.piece.cut),)


def _moved(each: Moved, nearest: Length) -> Answer:
    piece = each.after.piece
    return {
        "letter": piece.letter,
        "part_name": piece.name,
        "message": each.after.change.message if each.after.change else "",
        "before": show(each.before.piece.cut, SIXTY_FOURTH),
        "after": show(piece.cut, SIXTY_FOURTH),
        "working": show_working(piece.working, nearest),
    }


def _entries(one: Listed, hair: Hair) -> list[Answer]:
    if hair.trimmed:
        cut = next(said.entry for said in one.state.said if one.state.made and said.entry.id == one.state.made.entry)
        return [{"kind": "state", "body": {**cut.body, "as_cut": hair.text}}]
    # The smallest reading of a place stands, so those before would hide one that is a hair more.
    strikes = [entry.id for entry, strike in one.places if strike is None]
    entries: list[Answer] = [{"kind": "strike", "body": {"entry": entry, "why": "a hair"}} for entry in strikes]
    entries.append({"kind": "reading", "body": {"of": one.of, "what": "in_place", "text": hair.text}})
    if one.state.is_cut:
        blank = dict.fromkeys(("cut_to", "left", "right", "as_cut"))
        entries.append({"kind": "state", "body": {"piece": one.id, "state": RECUT, **blank}})
    return entries


QUESTIONS = (
    Question("fit", say("question-fit"), FitIn, FitOut, answer_fit, kept=True),
    Question("hair", say("question-hair"), HairIn, HairOut, answer_hair),
)
