"""`boards_for_room`: the boards a room needs, profile by profile: what is accepted, or what is proposed; `boards_if`:
what another choice of lengths would change."""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from marshmallow import Schema, fields, validate

from scantling.engine.boards.case import BoardsError, Plan, Stock
from scantling.engine.boards.plan import USUAL_TIME_LIMIT, plan_boards
from scantling.engine.cautions import cautions_for_cutting
from scantling.engine.cutlist.listed import CutList
from scantling.engine.drawings.boards import draw_boards
from scantling.engine.errors import EngineError
from scantling.engine.lengths import Length, format_length
from scantling.engine.questions.cut_list import find_list
from scantling.engine.questions.facts import RoomIn
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.room import ProblemOut, problems_out
from scantling.engine.rack.accepted import derive_accepted, format_body
from scantling.engine.rack.leftovers import derive_leftovers, derive_scraps
from scantling.engine.rack.progress import Made
from scantling.engine.rack.settle import Settled, Wanted, settle
from scantling.engine.rack.stick import LaidStick, Stick
from scantling.engine.rack.wanted import derive_case, derive_length
from scantling.engine.shapes import DrawingOut, LengthOut, LengthText, out, show, text_out, texts_out
from scantling.engine.standard import format_price, format_stock, parse_price
from scantling.engine.survey.room import Room
from scantling.engine.trim.piece import Piece


class NoSuchProfile(EngineError):
    sentences = {"no-such-profile": "The room needs no piece of {profile} with boards to cut it from."}


class RoomBoardsIn(RoomIn):
    time_limit = fields.Float(
        load_default=USUAL_TIME_LIMIT,
        validate=validate.Range(0.01, 60),
        metadata={"description": "seconds' worth of search, for each profile"},
    )


class MarkOut(Schema):
    letter, state = text_out(), text_out()
    mark = out(LengthOut)
    shares_cut = fields.Boolean(
        required=True, metadata={"description": "whether its left end is made by the cut before it"}
    )


class RoomBoardOut(Schema):
    board = text_out(none=True)
    length, offcut = out(LengthOut), out(LengthOut)
    length_shown, why = text_out(), text_out()
    bought = fields.Boolean(required=True)
    pieces = out(MarkOut, many=True)
    settings = fields.Integer(required=True, metadata={"description": "how often the saw is set anew on the board"})


class LetterBlankOut(Schema):
    letter, message = text_out(), text_out()
    length = out(LengthOut)


class BuyOut(Schema):
    """A line of the shopping list: so many of a length, at so much each, comes to."""

    count = fields.Integer(required=True)
    length, each, cost, why = text_out(), text_out(), text_out(), text_out()


class EntryOut(Schema):
    """What to write to accept the plan. A board without a name is named by whoever writes it."""

    kind = text_out()
    body = fields.Dict(keys=fields.String(), required=True)
    supersedes = texts_out()


class RoomPlanOut(Schema):
    profile, cost, proof, summary = text_out(), text_out(), text_out(), text_out()
    paid = fields.String(required=True, metadata={"description": "what the boards that stand here cost"})
    total = fields.String(required=True, metadata={"description": "what is still to buy, spares and overage with it"})
    boards = out(RoomBoardOut, many=True)
    buy = out(BuyOut, many=True)
    proven, accepted = fields.Boolean(required=True), fields.Boolean(required=True)
    reasons = texts_out()
    drawing = DrawingOut(required=True)
    unsafe = texts_out()
    blanks = out(LetterBlankOut, many=True)
    accept = out(EntryOut, none=True)


class BoardsForRoomOut(Schema):
    plans = out(RoomPlanOut, many=True)
    total = fields.String(required=True, metadata={"description": "what all profiles come to, still to buy"})
    problems = out(ProblemOut, many=True)
    missing = texts_out()
    cautions = texts_out()


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

    def wanted(self, profile: str, pieces: Sequence[Piece]) -> Wanted:
        """What one profile asks of the rack."""
        standard, notebook = self.room.standard, self.context.notebook
        if self.id is None:
            return Wanted(standard, profile, pieces, {}, ())
        accepted = derive_accepted(notebook, self.id).get(profile)
        case = derive_case(standard, standard.stock_of(profile), pieces)
        scraps = derive_scraps(self.cut_list.scraps(profile), accepted.sticks if accepted else (), case)
        rack = (*derive_leftovers(notebook, self.id, profile, case), *scraps)
        return Wanted(standard, profile, pieces, self._made(), rack, accepted)

    def _made(self) -> Mapping[str, Made]:
        listed = ((one.piece.key, one.state) for one in self.cut_list.listed)
        gone = ((one.lettered.key, one.state) for one in self.cut_list.gone)
        return {key: Made(state.is_cut, len(state.spoilt)) for key, state in (*listed, *gone)}


def answer_boards_for_room(asked: dict[str, Any], context: Context) -> Answer:
    room, cut_list, problems, _ = find_list(asked, context)
    about = _Asked(room, asked["room"] if isinstance(asked["room"], str) else None, cut_list, context)
    answered: Answer = {
        "plans": [],
        "problems": problems_out((*room.problems, *problems)),
        "missing": [],
        "cautions": cautions_for_cutting() if cut_list.pieces else [],
    }
    total = 0
    if not cut_list.pieces:
        answered["missing"].append("There is no piece to cut yet: read a wall first.")
    for profile in about.profiles():
        pieces = [one.piece for one in cut_list.to_cut if one.piece.profile == profile]
        wanted = about.wanted(profile, pieces)
        fitting, missing = _fitting(wanted)
        answered["missing"] += missing
        try:
            settled = settle(replace(wanted, pieces=fitting), context.clock, asked["time_limit"])
        except BoardsError as refusal:
            if fitting:
                answered["missing"].append(f"{profile}: {refusal.message}")
            continue
        if settled.sticks:
            answered["plans"].append(_plan(about.id, replace(wanted, pieces=fitting), settled, asked["nearest"]))
            total += settled.to_pay
    return {**answered, "total": format_price(total)}


def _fitting(wanted: Wanted) -> tuple[list[Piece], list[str]]:
    """The pieces that some board of their profile is long enough for, and what is missing for the others."""
    accepted = wanted.accepted.sticks if wanted.accepted else ()
    lengths = [row.length for row in wanted.standard.stock_of(wanted.profile)]
    lengths += [stick.length for stick in (*wanted.rack, *accepted)]
    if not wanted.pieces:
        return [], []
    if not lengths:
        return [], [f"No stock lengths yet for {wanted.profile}: add lengths and prices to the standard under House."]
    longest = max(lengths) - wanted.standard.end_trim
    sizes = {piece.key: derive_length(piece) for piece in wanted.pieces}
    return [piece for piece in wanted.pieces if sizes[piece.key] <= longest], [
        f"{piece.letter} is longer than every board by {format_length(sizes[piece.key] - longest)}: add a longer one."
        for piece in wanted.pieces
        if sizes[piece.key] > longest
    ]


def _plan(room: str | None, wanted: Wanted, settled: Settled, nearest: Length) -> Answer:
    sticks = [laid.stick for laid in settled.sticks]
    accepted = wanted.accepted
    stands = accepted is not None and not settled.reasons
    plan = settled.plan
    return {
        "profile": wanted.profile,
        "cost": format_price(sum(stick.pays for stick in sticks if not stick.why)),
        "paid": format_price(settled.paid),
        "total": format_price(settled.to_pay),
        "proven": plan.proven if plan else False,
        "accepted": stands,
        "reasons": list(settled.reasons),
        "proof": say_proof(plan) if plan else "Accepted: this plan is shown on every device until another is accepted.",
        "summary": _summary(sticks),
        "boards": [_board(laid, nearest) for laid in settled.sticks],
        "buy": _buy(sticks),
        "drawing": draw_boards(settled.sticks, wanted.standard.end_trim),
        "unsafe": [letter for letter, _ in settled.blanks],
        "blanks": [_blank(letter, length, nearest) for letter, length in settled.blanks],
        "accept": None if room is None else {
            "kind": "plan",
            "body": dict(format_body(room, wanted.profile, sticks)),
            "supersedes": list(accepted.entries) if accepted else [],
        },
    }  # fmt: skip


def _board(laid: LaidStick, nearest: Length) -> Answer:
    stick = laid.stick
    return {
        "board": stick.board,
        "length": show(stick.length, nearest),
        "length_shown": format_stock(stick.length),
        "why": stick.why or (f"left of {stick.source}" if stick.source and stick.source.startswith("spoilt") else
                             "left of another room's board" if stick.source else ""),
        "bought": stick.is_here,
        "offcut": show(laid.offcut, nearest),
        "settings": laid.settings,
        "pieces": [
            {
                "letter": piece.line.letter,
                "state": piece.line.state,
                "mark": show(piece.end if piece.mark is None else piece.mark, nearest),
                "shares_cut": piece.shares_cut,
            }
            for piece in laid.laid
        ],
    }  # fmt: skip


def _blank(letter: str, length: Length, nearest: Length) -> Answer:
    least = format_length(length, nearest)
    return {
        "letter": letter,
        "length": show(length, nearest),
        "message": f"{letter} leaves too little to hold in any order: cut it from a blank of {least} or more.",
    }


def _buy(sticks: Sequence[Stick]) -> list[Answer]:
    """What is still to buy, length by length; what stands here already is not bought again."""
    counted = Counter((stick.why, stick.length, stick.price_cents) for stick in sticks if stick.pays)
    return [
        {
            "count": count,
            "length": format_stock(length),
            "each": format_price(cents),
            "cost": format_price(count * cents),
            "why": why,
        }
        for (why, length, cents), count in sorted(counted.items())
    ]


def say_proof(plan: Plan) -> str:
    """What is known of a plan's price, in plain words."""
    cost = format_price(plan.cost)
    if plan.proven:
        return f"Cheapest: ${cost}. Proved: no plan under ${cost} exists, nor one at that price with fewer boards."
    if plan.bound == plan.cost:
        return f"Cheapest: ${cost}. Proved: no plan under ${cost} exists."
    if not plan.bound:
        return "Not proved: a cheaper plan may exist."
    return f"Within ${format_price(plan.cost - plan.bound)} of the best possible."


def _summary(sticks: Sequence[Stick]) -> str:
    cut = [stick.length for stick in sticks if not stick.why]
    words = [f"{count} of {format_stock(length)}" for length, count in sorted(Counter(cut).items())]
    return f"{len(cut)} board{'' if len(cut) == 1 else 's'}: {', '.join(words)}."


# ---- what another choice of lengths would change ---------------------------------------------------------------------


class BoardsIfIn(RoomBoardsIn):
    profile = fields.String(required=True)
    length = LengthText(metadata={"description": "one more length on the rack of what is sold"})
    price = fields.String(metadata={"description": "what that length costs"})


class IfOut(Schema):
    words = text_out()
    cost = text_out(none=True)


class BoardsIfOut(Schema):
    cost = text_out()
    single = out(IfOut, many=True)
    more = out(IfOut, none=True)


def answer_boards_if(asked: dict[str, Any], context: Context) -> Answer:
    room, cut_list, _, _ = find_list(asked, context)
    stock = room.standard.stock_of(asked["profile"])
    pieces = [one.piece for one in cut_list.to_cut if one.piece.profile == asked["profile"]]
    longest = max((row.length for row in stock), default=room.standard.end_trim) - room.standard.end_trim
    pieces = [piece for piece in pieces if derive_length(piece) <= longest]
    if not pieces:
        raise NoSuchProfile("no-such-profile", field="profile", profile=asked["profile"][:80])
    more = Stock(asked["length"], parse_price(asked["price"])) if {"length", "price"} <= asked.keys() else None

    def cents(rows: Sequence[Stock]) -> int | None:
        try:
            return plan_boards(derive_case(room.standard, rows, pieces), context.clock, asked["time_limit"]).cost
        except BoardsError:
            return None

    now = plan_boards(derive_case(room.standard, stock, pieces), context.clock, asked["time_limit"]).cost
    here, sold = [row for row in stock if not row.price_cents], [row for row in stock if row.price_cents]
    return {
        "cost": format_price(now),
        "single": [_compared(f"Only {format_stock(row.length)}", cents([*here, row]), now) for row in sold],
        "more": more and _compared(f"With {format_stock(more.length)} at ${format_price(more.price_cents)}",
                                   cents([*stock, more]), now),
    }  # fmt: skip


def _compared(what: str, cents: int | None, now: int) -> Answer:
    if cents is None:
        return {"words": f"{what}: some piece does not come out of it.", "cost": None}
    by = format_price(abs(cents - now))
    change = f"${by} more" if cents > now else f"${by} less" if cents < now else "the same"
    return {"words": f"{what}: ${format_price(cents)}, {change}.", "cost": format_price(cents)}


QUESTIONS = (
    Question("boards_for_room", "The boards to buy for what a room needs, and which piece comes from which.",
             RoomBoardsIn, BoardsForRoomOut, answer_boards_for_room),
    Question("boards_if", "What it would change to buy only one length, or to have one more length to buy.",
             BoardsIfIn, BoardsIfOut, answer_boards_if),
)  # fmt: skip
