"""`boards_for_room`: the boards a room needs, profile by profile: what is accepted, or what is proposed."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from marshmallow import Schema, fields, validate

from scantling.engine.boards.case.case import BoardsError
from scantling.engine.boards.search.plan import USUAL_TIME_LIMIT
from scantling.engine.cautions import cautions_for_cutting
from scantling.engine.cutlist.letters import whole_key
from scantling.engine.cutlist.listed import CutList
from scantling.engine.notebook import Notebook
from scantling.engine.questions.boards.shown import RoomPlanOut, UnpricedOut, find_fitting, find_unpriced, show_plan
from scantling.engine.questions.called import call_stock
from scantling.engine.questions.cutlist.cut_list import find_list, list_of
from scantling.engine.questions.facts import RoomIn, room_of
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.readings import ProblemOut, problems_out
from scantling.engine.rack.accepted import derive_accepted
from scantling.engine.rack.leftovers import (
    WantedElsewhere,
    derive_leftovers,
    derive_scraps,
    find_lent,
    find_uncut,
    find_used_scraps,
    mark_lent,
)
from scantling.engine.rack.of_house import find_held, house_of, is_house
from scantling.engine.rack.progress import Progress
from scantling.engine.rack.settle import Wanted, settle
from scantling.engine.rack.wanted import derive_case
from scantling.engine.shapes import out, texts_out
from scantling.engine.standard import Standard, format_price
from scantling.engine.survey.room import Room
from scantling.engine.tape.lengths import SIXTEENTH, Length, parse_length
from scantling.engine.trim.piece import Piece
from scantling.engine.words import say

# A board that is whippy and heavy for one: common practice, no source.
LONG = parse_length("16 ft")
TIME_LIMIT = fields.Float(
    load_default=USUAL_TIME_LIMIT,
    validate=validate.Range(0.01, 60),
    metadata={"description": say("ask-time-limit")},
)


class RoomBoardsIn(RoomIn):
    time_limit = TIME_LIMIT


class BoardsForRoomOut(Schema):
    """`elsewhere`: letters of the pieces that lie on boards planned for several rooms at once."""

    plans = out(RoomPlanOut, many=True)
    total = fields.String(required=True, metadata={"description": say("told-boards-total")})
    problems = out(ProblemOut, many=True)
    missing, warnings, cautions = texts_out(), texts_out(), texts_out()
    elsewhere = texts_out()
    unpriced = out(UnpricedOut, many=True)


@dataclass(frozen=True, slots=True)
class _Asked:
    """One question about a room's boards, with what the notebook says of the room."""

    room: Room
    id: str | None
    cut_list: CutList
    context: Context

    def profiles(self) -> list[str]:
        """Those of the pieces; and those that boards were bought of, though no piece is of them any more."""
        bought: list[str] = []
        if self.id is not None:
            accepted = derive_accepted(self.context.notebook, self.id)
            bought = [profile for profile, plan in accepted.items() if any(stick.bought for stick in plan.sticks)]
        return list(dict.fromkeys([*(piece.profile for piece in self.cut_list.pieces), *bought]))

    def elsewhere(self) -> list[Piece]:
        """What is still to be cut, of boards that were planned for the house."""
        if self.id is None:
            return []
        notebook = self.context.notebook
        held = {key for keys in find_held(notebook, house_of(notebook, self.id)).values() for key in keys}
        pieces = (one.piece for one in self.cut_list.to_cut)
        return [piece for piece in pieces if whole_key(self.id, piece.key) in held]

    def wanted(self, profile: str, pieces: Sequence[Piece]) -> Wanted:
        """What one profile asks of the rack."""
        standard, notebook = self.room.standard, self.context.notebook
        if self.id is None:
            return Wanted(standard, profile, pieces, {}, ())
        accepted = derive_accepted(notebook, self.id).get(profile)
        if accepted:
            lent = find_lent(notebook, self.id, profile)
            kept = [stick for stick in accepted.sticks if stick.lines or stick.board not in lent]
            accepted = replace(accepted, sticks=mark_lent(notebook, self.id, profile, kept))
        case = derive_case(standard, standard.stock_of(profile), pieces)
        scraps = derive_scraps(self.cut_list.scraps(profile), find_used_scraps(notebook, self.id, profile), case)
        rack = (*derive_leftovers(notebook, self.id, profile, case, planned_of(notebook, standard)), *scraps)
        uncut = find_uncut(notebook, self.id, profile)
        return Wanted(standard, profile, pieces, made_of(self.cut_list), rack, accepted, uncut=uncut)


def planned_of(notebook: Notebook, standard: Standard) -> WantedElsewhere:
    """What the rooms of the notebook want of boards of their own that are not cut up yet."""
    return WantedElsewhere(lambda owner: _takes_of(notebook, owner), standard.slack)


def _takes_of(notebook: Notebook, owner: str) -> Mapping[str, Length]:
    """By its key, what each piece of a room that is still to cut takes of a board; of a house by its whole key."""
    if not is_house(notebook, owner):
        return _takes(notebook, owner)
    rooms = [room for room, _, _ in notebook.children("room", owner)]
    return {whole_key(room, key): takes for room in rooms for key, takes in _takes(notebook, room).items()}


def _takes(notebook: Notebook, room: str) -> Mapping[str, Length]:
    pieces = [one.piece for one in list_of(notebook, room, SIXTEENTH).to_cut]
    case = derive_case(room_of(notebook, room).standard, (), pieces)
    return {piece.key: takes for piece, takes in zip(pieces, case.pieces, strict=True)}


def made_of(cut_list: CutList) -> Mapping[str, Progress]:
    """How far each piece of a list has come, by its key."""
    listed = ((one.piece.key, one.state) for one in cut_list.listed)
    gone = ((one.lettered.key, one.state) for one in cut_list.gone)
    return {key: Progress(state.is_cut, len(state.spoilt)) for key, state in (*listed, *gone)}


def answer_boards_for_room(asked: dict[str, Any], context: Context) -> Answer:
    room, cut_list, problems, unused = find_list(asked, context)
    about = _Asked(room, asked["room"] if isinstance(asked["room"], str) else None, cut_list, context)
    elsewhere = about.elsewhere()
    to_cut = [one.piece for one in cut_list.to_cut if one.piece not in elsewhere]
    wants = [
        about.wanted(profile, [piece for piece in to_cut if piece.profile == profile]) for profile in about.profiles()
    ]
    plans, missing, to_pay = settle_profiles(about.id, wants, asked, context)
    if not cut_list.pieces:
        missing.insert(0, say("boards-no-piece"))
    return {
        "plans": plans,
        "total": format_price(to_pay),
        "problems": problems_out((*room.problems, *problems)),
        "missing": missing,
        "warnings": unused,
        "cautions": cautions_for_cutting(long=has_long(room.standard)) if cut_list.pieces else [],
        "elsewhere": [piece.letter for piece in elsewhere],
        "unpriced": find_unpriced(wants),
    }


def boards_of(asked: dict[str, Any], context: Context, cut_list: CutList, profile: str) -> tuple[list[Answer], int]:
    """The plans of one profile in a room of the notebook, and what is to pay, with this list for the room's own."""
    about = _Asked(find_list(asked, context)[0], asked["room"], cut_list, context)
    elsewhere = about.elsewhere()
    to_cut = [one.piece for one in cut_list.to_cut if one.piece.profile == profile and one.piece not in elsewhere]
    plans, _, to_pay = settle_profiles(about.id, [about.wanted(profile, to_cut)], asked, context)
    return plans, to_pay


def settle_profiles(
    of: str | None, wants: Iterable[Wanted], asked: dict[str, Any], context: Context
) -> tuple[list[Answer], list[str], int]:
    """The plans of what is wanted, profile by profile, what is missing for others, and what is still to pay."""
    plans, to_pay = [], 0
    missing: list[str] = []
    for wanted in wants:
        fitting, lacking = find_fitting(wanted)
        missing += lacking
        try:
            settled = settle(replace(wanted, pieces=fitting), context.clock, asked["time_limit"])
        except BoardsError as refusal:
            if fitting:
                missing.append(f"{call_stock(wanted.profile)}: {refusal.message}")
            continue
        if settled.sticks:
            plans.append(show_plan(of, replace(wanted, pieces=fitting), settled, asked["nearest"]))
            to_pay += settled.to_pay
    return plans, missing, to_pay


def has_long(standard: Standard) -> bool:
    """Whether boards are on its lists that one person does not carry."""
    return any(row.length >= LONG for rows in standard.stocks.values() for row in rows)


QUESTIONS = (
    Question("boards_for_room", say("question-boards_for_room"),
             RoomBoardsIn, BoardsForRoomOut, answer_boards_for_room),
)  # fmt: skip
