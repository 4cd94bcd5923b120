"""`boards_for_room`: the boards to buy for what a room needs, profile by profile, and which piece comes from which."""

from collections import Counter
from typing import Any

from marshmallow import Schema, fields, validate

from scantling.engine.boards.case import BoardsError, Case, Plan, PlannedBoard, Stock
from scantling.engine.boards.marks import derive_marks
from scantling.engine.boards.plan import USUAL_TIME_LIMIT, plan_boards
from scantling.engine.boards.saw import derive_blank, derive_changes
from scantling.engine.cautions import cautions_for_cutting
from scantling.engine.drawings.boards import draw_boards
from scantling.engine.lengths import Length, format_length
from scantling.engine.questions.cut_list import find_list
from scantling.engine.questions.facts import RoomIn
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.room import ProblemOut, problems_out
from scantling.engine.rack.extra import Extra, derive_extras
from scantling.engine.rack.wanted import derive_case, derive_length
from scantling.engine.shapes import DrawingOut, LengthOut, out, show, text_out, texts_out
from scantling.engine.standard import format_price, format_stock
from scantling.engine.survey.room import Room
from scantling.engine.trim.piece import Piece


class RoomBoardsIn(RoomIn):
    time_limit = fields.Float(
        load_default=USUAL_TIME_LIMIT,
        validate=validate.Range(0.01, 60),
        metadata={"description": "seconds' worth of search, for each profile"},
    )


class MarkOut(Schema):
    letter = text_out()
    mark = out(LengthOut)
    shares_cut = fields.Boolean(
        required=True, metadata={"description": "whether its left end is made by the cut before it"}
    )


class RoomBoardOut(Schema):
    stock = fields.Integer(required=True)
    length, offcut = out(LengthOut), out(LengthOut)
    pieces = out(MarkOut, many=True)
    settings = fields.Integer(required=True, metadata={"description": "how often the saw is set anew on the board"})


class LetterBlankOut(Schema):
    letter, message = text_out(), text_out()
    length = out(LengthOut)


class BuyOut(Schema):
    """A line of the shopping list: so many of a length, at so much each, comes to."""

    count = fields.Integer(required=True)
    length, each, cost, why = text_out(), text_out(), text_out(), text_out()


class RoomPlanOut(Schema):
    profile, cost, proof, summary = text_out(), text_out(), text_out(), text_out()
    total = fields.String(required=True, metadata={"description": "the cost with what is bought beyond the plan"})
    boards = out(RoomBoardOut, many=True)
    buy = out(BuyOut, many=True)
    proven = fields.Boolean(required=True)
    drawing = DrawingOut(required=True)
    unsafe = texts_out()
    blanks = out(LetterBlankOut, many=True)


class BoardsForRoomOut(Schema):
    plans = out(RoomPlanOut, many=True)
    total = fields.String(required=True, metadata={"description": "what all profiles come to"})
    problems = out(ProblemOut, many=True)
    missing = texts_out()
    cautions = texts_out()


def answer_boards_for_room(asked: dict[str, Any], context: Context) -> Answer:
    room, cut_list, problems, _ = find_list(asked, context)
    pieces = cut_list.pieces
    answered: Answer = {
        "plans": [],
        "problems": problems_out((*room.problems, *problems)),
        "missing": [],
        "cautions": cautions_for_cutting() if pieces else [],
    }
    total = 0
    if not pieces:
        answered["missing"].append("There is no piece to cut yet: read a wall first.")
    for profile in dict.fromkeys(piece.profile for piece in pieces):
        of_profile = [piece for piece in pieces if piece.profile == profile]
        fitting, missing = _fitting(room, profile, of_profile)
        answered["missing"] += missing
        if fitting:
            try:
                plan, cents = _plan(room, profile, fitting, asked, context)
            except BoardsError as refusal:
                answered["missing"].append(f"{profile}: {refusal.message}")
            else:
                answered["plans"].append(plan)
                total += cents
    return {**answered, "total": format_price(total)}


def _fitting(room: Room, profile: str, pieces: list[Piece]) -> tuple[list[Piece], list[str]]:
    """The pieces that some board of their profile is long enough for, and what is missing for the others."""
    stock = room.standard.stock_of(profile)
    if not stock:
        return [], [f"No stock lengths yet for {profile}: add lengths and prices to the standard under House."]
    longest = max(row.length for row in stock) - room.standard.end_trim
    lengths = {piece.key: derive_length(piece) for piece in pieces}
    return [piece for piece in pieces if lengths[piece.key] <= longest], [
        f"{piece.letter} is longer than every board by {format_length(lengths[piece.key] - longest)}: add a longer one."
        for piece in pieces
        if lengths[piece.key] > longest
    ]


def _plan(room: Room, profile: str, pieces: list[Piece], asked: dict[str, Any], context: Context) -> tuple[Answer, int]:
    standard, nearest = room.standard, asked["nearest"]
    case = derive_case(standard, standard.stock_of(profile), pieces)
    plan = plan_boards(case, context.clock, asked["time_limit"])
    letters = [piece.letter for piece in pieces]
    extras = derive_extras(case, standard.spare_sticks, standard.overage)
    total = plan.cost + sum(extra.cost(case) for extra in extras)
    return {
        "profile": profile,
        "cost": format_price(plan.cost),
        "total": format_price(total),
        "proven": plan.proven,
        "proof": say_proof(plan),
        "summary": _summary(case, plan),
        "boards": [_board(case, board, letters, nearest) for board in plan.boards],
        "buy": _buy(case, plan, extras),
        "drawing": draw_boards(case, plan.boards, letters),
        "unsafe": [letters[place] for place in plan.unsafe],
        "blanks": [_blank(letters[place], derive_blank(case, place), nearest) for place in plan.unsafe],
    }, total


def _board(case: Case, board: PlannedBoard, letters: list[str], nearest: Length) -> Answer:
    marks = derive_marks(case, board)
    return {
        "stock": board.stock,
        "length": show(case.stock[board.stock].length, nearest),
        "offcut": show(board.offcut, nearest),
        "settings": derive_changes(case, board),
        "pieces": [
            {"letter": letters[place], "mark": show(mark, nearest), "shares_cut": place in board.shared}
            for place, mark in zip(board.pieces, marks, strict=True)
        ],
    }


def _blank(letter: str, length: Length, nearest: Length) -> Answer:
    least = format_length(length, nearest)
    return {
        "letter": letter,
        "length": show(length, nearest),
        "message": f"{letter} leaves too little to hold in any order: cut it from a blank of {least} or more.",
    }


def _buy(case: Case, plan: Plan, extras: list[Extra]) -> list[Answer]:
    """What to buy, length by length; boards on hand cost nothing and are not bought."""
    lists = [("", [board.stock for board in plan.boards]), *[(extra.why, extra.stock) for extra in extras]]
    return [
        _line(case.stock[place], count, why)
        for why, places in lists
        for place, count in sorted(Counter(places).items())
        if case.stock[place].price_cents
    ]


def _line(stock: Stock, count: int, why: str) -> Answer:
    return {
        "count": count,
        "length": format_stock(stock.length),
        "each": format_price(stock.price_cents),
        "cost": format_price(count * stock.price_cents),
        "why": why,
    }


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


def _summary(case: Case, plan: Plan) -> str:
    counted = Counter(board.stock for board in plan.boards)
    words = [f"{counted[place]} of {format_stock(case.stock[place].length)}" for place in sorted(counted)]
    return f"{plan.count} board{'' if plan.count == 1 else 's'}: {', '.join(words)}."


QUESTIONS = (
    Question("boards_for_room", "The boards to buy for what a room needs, and which piece comes from which.",
             RoomBoardsIn, BoardsForRoomOut, answer_boards_for_room),
)  # fmt: skip
