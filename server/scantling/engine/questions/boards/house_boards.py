"""`boards_for_house`: the boards of several rooms planned at once, so that one board may serve two of them.

Pieces are lettered as in their rooms, behind the room's number: 2C. What a room has a bought board for stays on it;
what was spoilt in one of them, and boards bought for one that nothing is to be cut from, are there for all.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from marshmallow import Schema, fields, validate

from scantling.engine.boards.case.case import Case
from scantling.engine.cautions import cautions_for_cutting
from scantling.engine.cutlist.letters import room_of_key, whole_key
from scantling.engine.cutlist.listed import CutList
from scantling.engine.notebook import Notebook
from scantling.engine.questions.boards.room_boards import TIME_LIMIT, has_long, made_of, planned_of, settle_profiles
from scantling.engine.questions.boards.shown import RoomPlanOut
from scantling.engine.questions.cutlist.cut_list import list_of
from scantling.engine.questions.facts import room_of
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.rack.accepted import Accepted, derive_accepted
from scantling.engine.rack.leftovers import (
    derive_leftovers,
    derive_marked,
    derive_scraps,
    find_uncut,
    find_used_scraps,
    mark_lent,
    name_scrap,
)
from scantling.engine.rack.of_house import find_held
from scantling.engine.rack.progress import Progress
from scantling.engine.rack.settle import Wanted
from scantling.engine.rack.stick import SCRAP, SPOILT, Stick
from scantling.engine.rack.wanted import derive_case
from scantling.engine.shapes import AskedIn, out, text_out, texts_out
from scantling.engine.standard import Standard, format_price
from scantling.engine.survey.facts import find_house, find_room
from scantling.engine.trim.piece import Piece
from scantling.engine.words import say


class BoardsForHouseIn(AskedIn):
    house = fields.String(required=True, metadata={"description": say("ask-house")})
    rooms = fields.List(
        fields.String(),
        validate=validate.Length(max=200),
        metadata={"description": say("ask-rooms-of-house")},
    )
    time_limit = TIME_LIMIT


class ChosenOut(Schema):
    id, name, mark = text_out(), text_out(), text_out()
    chosen = fields.Boolean(required=True)
    to_cut = fields.Integer(required=True, metadata={"description": say("told-chosen-to-cut")})


class BoardsForHouseOut(Schema):
    rooms = out(ChosenOut, many=True)
    plans = out(RoomPlanOut, many=True)
    total = fields.String(required=True, metadata={"description": say("told-boards-total")})
    missing, cautions = texts_out(), texts_out()
    accepted = texts_out()


@dataclass(frozen=True, slots=True)
class _Room:
    id: str
    name: str
    mark: str
    standard: Standard
    cut_list: CutList
    chosen: bool
    stays: frozenset[str]

    def pieces(self) -> Iterator[Piece]:
        """What is to be cut of it, and not of a board that was bought for the room alone."""
        for one in self.cut_list.to_cut if self.chosen else ():
            key = whole_key(self.id, one.piece.key)
            if key not in self.stays:
                yield replace(one.piece, key=key, letter=f"{self.mark}{one.piece.letter}")

    def scraps(self, notebook: Notebook, profile: str, case: Case) -> Iterator[Stick]:
        """What was spoilt of it, or is not wanted any more, and no plan counts on yet."""
        used = find_used_scraps(notebook, self.id, profile)
        yield from (name_scrap(self.id, stick) for stick in derive_scraps(self.cut_list.scraps(profile), used, case))

    def made(self) -> Mapping[str, Progress]:
        return {whole_key(self.id, key): progress for key, progress in made_of(self.cut_list).items()}


def answer_boards_for_house(asked: dict[str, Any], context: Context) -> Answer:
    house = find_house(context.notebook, asked["house"])
    rooms = list(_rooms(asked, context, house))
    accepted = _lettered(derive_accepted(context.notebook, house), {room.id: room.mark for room in rooms})
    made = {key: progress for room in rooms for key, progress in room.made().items()}
    by_profile: dict[str, list[Piece]] = {profile: [] for profile in accepted}
    for room in rooms:
        for piece in room.pieces():
            by_profile.setdefault(piece.profile, []).append(piece)

    def wanted(profile: str) -> Wanted:
        pieces, standard = by_profile[profile], _standard(rooms, profile)
        case = derive_case(standard, standard.stock_of(profile), pieces)
        chosen = [room for room in rooms if room.chosen]
        planned = planned_of(context.notebook, standard)
        left = derive_leftovers(context.notebook, house, profile, case, planned, [room.id for room in chosen])
        scraps = (stick for room in chosen for stick in room.scraps(context.notebook, profile, case))
        rack, plan = (*left, *scraps), accepted.get(profile)
        plan = plan and replace(plan, sticks=mark_lent(context.notebook, house, profile, plan.sticks))
        uncut = find_uncut(context.notebook, house, profile)
        return Wanted(standard, profile, pieces, made, rack, plan, _called(rooms, rack, plan), uncut)

    wants = [wanted(profile) for profile in by_profile if rooms]
    plans, missing, to_pay = settle_profiles(house, wants, asked, context)
    if not any(by_profile.values()):
        missing.append(say("boards-no-piece-in-house"))
    return {
        "rooms": [
            {"id": room.id, "name": room.name, "mark": room.mark, "chosen": room.chosen,
             "to_cut": sum(1 for _ in room.pieces())}
            for room in rooms
        ],
        "plans": plans,
        "total": format_price(to_pay),
        "missing": missing,
        "cautions": cautions_for_cutting(long=any(has_long(room.standard) for room in rooms)) if plans else [],
        "accepted": [entry for plan in accepted.values() for entry in plan.entries],
    }  # fmt: skip


def _called(rooms: Sequence[_Room], rack: Sequence[Stick], plan: Accepted | None) -> dict[str, str]:
    """What scraps are called: by the letter pencilled on them, behind the number of their room."""
    marks = {room.id: room.mark for room in rooms}
    called = {}
    for stick in (*rack, *(plan.sticks if plan else ())):
        if stick.is_scrap and stick.source:
            words, _, room = stick.source.removeprefix(SCRAP).partition(" of ")
            called[stick.source] = f"{SCRAP}{marks.get(room, '')}{words}"
    return called


def _lettered(accepted: Mapping[str, Accepted], marks: Mapping[str, str]) -> dict[str, Accepted]:
    """What was accepted, each letter behind the number of its room."""
    return {
        profile: replace(plan, sticks=tuple(
            replace(stick, lines=tuple(
                replace(line, letter=f"{marks.get(room_of_key(line.key), '')}{line.letter}") for line in stick.lines
            ))
            for stick in plan.sticks
        ))
        for profile, plan in accepted.items()
    }  # fmt: skip


def _rooms(asked: dict[str, Any], context: Context, house: str) -> Iterator[_Room]:
    """Every room of the house, numbered as it is listed, and whether it is of this plan."""
    notebook = context.notebook
    held = {key for keys in find_held(notebook, house).values() for key in keys}
    for room in asked.get("rooms", ()):
        find_room(notebook, room)
    chosen = set(asked.get("rooms") or {room_of_key(key) for key in held})
    for number, (room, entry, _) in enumerate(notebook.children("room", house), start=1):
        on_bought = {
            whole_key(room, line.key)
            for profile in derive_accepted(notebook, room)
            for stick in derive_marked(notebook, room, profile)
            if stick.is_here
            for line in stick.lines
            if line.state != SPOILT
        }
        yield _Room(
            id=room,
            name=entry.body["name"],
            mark=str(number),
            standard=room_of(notebook, room).standard,
            cut_list=list_of(notebook, room, asked["nearest"]),
            chosen=not chosen or room in chosen,
            stays=frozenset(on_bought - held),
        )


def _standard(rooms: list[_Room], profile: str) -> Standard:
    """The saw and the boards that a profile is planned with: of the first room that has boards of it."""
    standards = [room.standard for room in sorted(rooms, key=lambda room: not room.chosen)]
    return next((standard for standard in standards if standard.stock_of(profile)), standards[0])


QUESTIONS = (
    Question("boards_for_house", say("question-boards_for_house"),
             BoardsForHouseIn, BoardsForHouseOut, answer_boards_for_house),
)  # fmt: skip
