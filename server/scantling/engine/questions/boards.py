"""`boards`: the cheapest boards for a list of pieces; `boards_for_room`: the same for what a room needs."""

from collections import Counter
from collections.abc import Mapping
from typing import Any

from marshmallow import EXCLUDE, Schema, ValidationError, fields, validate

from scantling.engine.boards.case import USUAL_HOLD, Case, Plan, PlannedBoard, Stock
from scantling.engine.boards.marks import derive_marks
from scantling.engine.boards.plan import USUAL_TIME_LIMIT, plan_boards
from scantling.engine.cautions import cautions_for_cutting
from scantling.engine.drawings.boards import draw_boards
from scantling.engine.errors import EngineError
from scantling.engine.lengths import SIXTY_FOURTH, ZERO, Length, format_length, round_to
from scantling.engine.questions.facts import RoomIn, find
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.room import ProblemOut, problems_out
from scantling.engine.shapes import Asked, DrawingOut, LengthOut, LengthText, one_of, out, show, text_out, texts_out
from scantling.engine.standard import format_price, format_stock, parse_price
from scantling.engine.survey.room import Room
from scantling.engine.trim.piece import Piece
from scantling.engine.trim.pieces import derive_pieces


class PriceText(fields.Field[str]):
    """Money as text, "19.98", or whole cents as a number where the case says so; never a float."""

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> str:
        if isinstance(value, bool) or not isinstance(value, str | int):
            raise ValidationError('Write a price as text, such as "19.98", or in whole cents.')
        return str(value)


class StockIn(Schema):
    length = LengthText(required=True)
    price = PriceText(required=True)
    limit = fields.Integer(load_default=None, allow_none=True, strict=True)


class BoardsIn(Asked):
    class Meta:
        unknown = EXCLUDE  # a case in a file carries notes of its own: where it comes from, what it once cost

    kerf, end_trim = LengthText(load_default=ZERO), LengthText(load_default=ZERO)
    stock = fields.List(fields.Nested(StockIn), required=True, validate=validate.Length(max=1000))
    pieces = fields.List(LengthText(), required=True, validate=validate.Length(max=10_000))
    hold = LengthText(load_default=USUAL_HOLD)
    price_unit = fields.String(load_default="dollar", validate=one_of("dollar", "cent"))
    time_limit = fields.Float(load_default=USUAL_TIME_LIMIT, validate=validate.Range(0.01, 60))


class BoardOut(Schema):
    stock = fields.Integer(required=True)
    pieces = fields.List(fields.Integer(), required=True)
    offcut = out(LengthOut)


class BoardsOut(Schema):
    boards = out(BoardOut, many=True)
    cost, bound = fields.Raw(required=True), fields.Raw(required=True)
    count = fields.Integer(required=True)
    proven = fields.Boolean(required=True)
    cut_off = fields.Boolean(required=True)
    seconds = fields.Float(required=True, allow_none=True)
    unsafe = fields.List(fields.Integer(), required=True)


class MarkOut(Schema):
    letter = text_out()
    mark = out(LengthOut)


class RoomBoardOut(Schema):
    stock = fields.Integer(required=True)
    length, offcut = out(LengthOut), out(LengthOut)
    pieces = out(MarkOut, many=True)


class RoomPlanOut(Schema):
    profile, cost, proof, summary = text_out(), text_out(), text_out(), text_out()
    boards = out(RoomBoardOut, many=True)
    proven = fields.Boolean(required=True)
    drawing = DrawingOut(required=True)
    unsafe = texts_out()


class BoardsForRoomOut(Schema):
    plans = out(RoomPlanOut, many=True)
    problems = out(ProblemOut, many=True)
    missing = texts_out()
    cautions = texts_out()


def answer_boards(asked: dict[str, Any], context: Context) -> Answer:
    case = Case(
        asked["kerf"],
        asked["end_trim"],
        tuple(_stock(row, place, asked["price_unit"]) for place, row in enumerate(asked["stock"])),
        tuple(asked["pieces"]),
        asked["hold"],
    )
    started = context.clock() if context.clock else None
    plan = plan_boards(case, context.clock, asked["time_limit"])
    return {
        "boards": [
            {"stock": board.stock, "pieces": list(board.pieces), "offcut": show(board.offcut, asked["nearest"])}
            for board in plan.boards
        ],
        "cost": _money(plan.cost, asked["price_unit"]),
        "bound": _money(plan.bound, asked["price_unit"]),
        "count": plan.count,
        "proven": plan.proven,
        "cut_off": plan.cut_off,
        "seconds": None if started is None or context.clock is None else context.clock() - started,
        "unsafe": list(plan.unsafe),
    }


def _stock(row: dict[str, Any], place: int, unit: str) -> Stock:
    written = row["price"]
    try:
        cents = int(written) if unit == "cent" and written.isdecimal() else parse_price(written)
    except EngineError as error:
        error.field = f"stock.{place}.price"
        raise
    return Stock(row["length"], cents, row["limit"])


def _money(cents: int, unit: str) -> str | int:
    return cents if unit == "cent" else format_price(cents)


def answer_boards_for_room(asked: dict[str, Any], context: Context) -> Answer:
    room, _ = find(asked, context)
    pieces, problems = derive_pieces(room)
    answered: Answer = {
        "plans": [],
        "problems": problems_out((*room.problems, *problems)),
        "missing": [],
        "cautions": cautions_for_cutting() if pieces else [],
    }
    if not pieces:
        answered["missing"].append("There is no piece to cut yet: read a wall first.")
    for profile in dict.fromkeys(piece.profile for piece in pieces):
        of_profile = [piece for piece in pieces if piece.profile == profile]
        fitting, missing = _fitting(room, profile, of_profile)
        answered["missing"] += missing
        if fitting:
            answered["plans"].append(_plan(room, profile, fitting, asked["nearest"], context))
    return answered


def _fitting(room: Room, profile: str, pieces: list[Piece]) -> tuple[list[Piece], list[str]]:
    """The pieces that some board of their profile is long enough for, and what is missing for the others."""
    stock = room.standard.stock_of(profile)
    if not stock:
        return [], [f"No stock lengths yet for {profile}: add lengths and prices to the standard under House."]
    longest = max(row.length for row in stock) - room.standard.end_trim
    return [piece for piece in pieces if planned(piece) <= longest], [
        f"{piece.letter} is longer than every board by {format_length(planned(piece) - longest)}: add a longer one."
        for piece in pieces
        if planned(piece) > longest
    ]


def planned(piece: Piece) -> Length:
    """The length that a piece takes of a board, up to the next 64th: a plan may not count on less than that."""
    return round_to(piece.cut, SIXTY_FOURTH, toward="up")


def _plan(room: Room, profile: str, pieces: list[Piece], nearest: Length, context: Context) -> Answer:
    standard = room.standard
    lengths = tuple(planned(piece) for piece in pieces)
    case = Case(standard.kerf, standard.end_trim, standard.stock_of(profile), lengths, standard.hold)
    plan = plan_boards(case, context.clock)
    letters = [piece.letter for piece in pieces]
    return {
        "profile": profile,
        "cost": format_price(plan.cost),
        "proven": plan.proven,
        "proof": _proof(plan),
        "summary": _summary(case, plan),
        "boards": [_board(case, board, letters, nearest) for board in plan.boards],
        "drawing": draw_boards(case, plan, letters),
        "unsafe": [letters[place] for place in plan.unsafe],
    }


def _board(case: Case, board: PlannedBoard, letters: list[str], nearest: Length) -> Answer:
    marks = derive_marks(case, board)
    return {
        "stock": board.stock,
        "length": show(case.stock[board.stock].length, nearest),
        "offcut": show(board.offcut, nearest),
        "pieces": [
            {"letter": letters[place], "mark": show(mark, nearest)}
            for place, mark in zip(board.pieces, marks, strict=True)
        ],
    }


def _proof(plan: Plan) -> str:
    cost = format_price(plan.cost)
    if plan.proven:
        return f"Proved: no plan under ${cost} exists, nor one at that price with fewer boards."
    if plan.bound == plan.cost:
        return f"Proved: no plan under ${cost} exists."
    if not plan.bound:
        return "Not proved: a cheaper plan may exist."
    return f"Within ${format_price(plan.cost - plan.bound)} of the best possible."


def _summary(case: Case, plan: Plan) -> str:
    counted = Counter(board.stock for board in plan.boards)
    words = [f"{counted[place]} of {format_stock(case.stock[place].length)}" for place in sorted(counted)]
    return f"{plan.count} board{'' if plan.count == 1 else 's'}: {', '.join(words)}."


QUESTIONS = (
    Question("boards", "The cheapest boards for a list of pieces, with the order to cut them in and a proof.", BoardsIn,
             BoardsOut, answer_boards),
    Question("boards_for_room", "The boards to buy for what a room needs, and which piece comes from which.", RoomIn,
             BoardsForRoomOut, answer_boards_for_room),
)  # fmt: skip
