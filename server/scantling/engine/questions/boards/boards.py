"""`boards`: the cheapest boards for a list of pieces, with a proof; `prove`: whether such an answer's proof holds."""

from collections.abc import Mapping
from typing import Any

from marshmallow import EXCLUDE, ValidationError, fields, validate

from scantling.engine.boards.case.case import USUAL_HOLD, BoardsError, Case, Plan, Proof, Rule, Stock, check_case
from scantling.engine.boards.case.cuts import STEEPEST, Cut, Ends, derive_beyond
from scantling.engine.boards.case.saw import derive_blank, derive_changes
from scantling.engine.boards.case.sound import check_boards, derive_cost
from scantling.engine.boards.proof.proof import Claim, Confirmed, confirm
from scantling.engine.boards.search.plan import USUAL_TIME_LIMIT, plan_boards
from scantling.engine.errors import EngineError
from scantling.engine.forms import Schema
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.shapes import AskedIn, DegreesText, LengthOut, LengthText, one_of, out, show, texts_out
from scantling.engine.standard import format_price, parse_price
from scantling.engine.tape.lengths import ZERO, Length
from scantling.engine.words import say

LONG_EDGES = {"front": 1, "outer": 1, "back": -1, "inner": -1, "none": 0}


class PriceText(fields.Field[str]):
    """Money as text, "19.98", or whole cents as a number where the case says so; never a float."""

    wants = say("wants-price-text")

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> str:
        if isinstance(value, bool) or not isinstance(value, str | int):
            raise ValidationError(say("price-as-text"))
        return str(value)


class StockIn(Schema):
    length = LengthText(required=True)
    price = PriceText(required=True)
    limit = fields.Integer(load_default=None, allow_none=True, strict=True)


class CutIn(Schema):
    saw = DegreesText(required=True, metadata={"description": say("told-degrees-from-square")})
    long_edge = fields.String(load_default="none", validate=one_of(*LONG_EDGES))
    gains = LengthText(load_default=ZERO, metadata={"description": say("ask-cut-gains")})


class EndsIn(Schema):
    left, right = fields.Nested(CutIn, required=True), fields.Nested(CutIn, required=True)


class CaseIn(AskedIn):
    class Meta:
        unknown = EXCLUDE  # a case in a file carries notes of its own: where it comes from, what it once cost

    kerf, end_trim = LengthText(load_default=ZERO), LengthText(load_default=ZERO)
    stock = fields.List(fields.Nested(StockIn), required=True, validate=validate.Length(max=1000))
    pieces = fields.List(LengthText(), required=True, validate=validate.Length(max=10_000))
    hold = LengthText(load_default=USUAL_HOLD)
    ends = fields.List(fields.Nested(EndsIn), validate=validate.Length(max=10_000))
    shared_miters = fields.Boolean(load_default=False)
    price_unit = fields.String(load_default="dollar", validate=one_of("dollar", "cent"))


class BoardsIn(CaseIn):
    time_limit = fields.Float(load_default=USUAL_TIME_LIMIT, validate=validate.Range(0.01, 60))


class BoardOut(Schema):
    stock = fields.Integer(required=True)
    pieces = fields.List(fields.Integer(), required=True)
    offcut = out(LengthOut)
    shared = fields.List(fields.Integer(), required=True, metadata={"description": say("told-board-shared")})
    settings = fields.Integer(required=True, metadata={"description": say("told-board-settings")})


class BlankOut(Schema):
    piece = fields.Integer(required=True)
    length = out(LengthOut)


class GivenRuleOut(Schema):
    points = fields.List(fields.Integer(strict=True), required=True, validate=validate.Length(max=200))
    most = fields.List(fields.Integer(strict=True), required=True, validate=validate.Length(max=200))


class RuleOut(GivenRuleOut):
    """Points for each different length, the longest first, and the most points that each stock entry can hold."""

    up_to = fields.Integer(required=True, allow_none=True, strict=True)
    given = fields.Nested(GivenRuleOut, required=True, allow_none=True)


class ProofOut(Schema):
    """`searched` are lists of boards, how many of each stock entry, that pass the rules and were tried out in full."""

    rules = fields.List(fields.Nested(RuleOut), required=True, validate=validate.Length(max=1000))
    searched = fields.List(
        fields.List(fields.Integer(strict=True)), required=True, validate=validate.Length(max=10_000)
    )


class BoardsOut(Schema):
    boards = out(BoardOut, many=True)
    cost, bound = fields.Raw(required=True), fields.Raw(required=True)
    count = fields.Integer(required=True)
    proven = fields.Boolean(required=True)
    cut_off = fields.Boolean(required=True)
    seconds = fields.Float(required=True, allow_none=True)
    unsafe = fields.List(fields.Integer(), required=True)
    blanks = out(BlankOut, many=True)
    proof = out(ProofOut)


class TakenIn(Schema):
    class Meta:
        unknown = EXCLUDE

    stock = fields.Integer(required=True, strict=True)
    pieces = fields.List(fields.Integer(strict=True), required=True, validate=validate.Length(max=10_000))


class ClaimIn(Schema):
    """An answer of `boards`, as it was given."""

    class Meta:
        unknown = EXCLUDE

    boards = fields.List(fields.Nested(TakenIn), required=True, validate=validate.Length(max=10_000))
    cost, bound = PriceText(required=True), PriceText(required=True)
    proven = fields.Boolean(required=True)
    proof = fields.Nested(ProofOut, required=True)


class ProveIn(CaseIn):
    answer = fields.Nested(ClaimIn, required=True)


class ProveOut(Schema):
    holds = fields.Boolean(required=True)
    sentences = texts_out()
    rules, lists = fields.Integer(required=True), fields.Integer(required=True)


def answer_boards(asked: dict[str, Any], context: Context) -> Answer:
    case = case_of(asked)
    started = context.clock() if context.clock else None
    plan = plan_boards(case, context.clock, asked["time_limit"])
    nearest = asked["nearest"]
    return {
        "boards": [
            {
                "stock": board.stock,
                "pieces": list(board.pieces),
                "offcut": show(board.offcut, nearest),
                "shared": list(board.shared),
                "settings": derive_changes(case, board),
            }
            for board in plan.boards
        ],
        "cost": _money(plan.cost, asked["price_unit"]),
        "bound": _money(plan.bound, asked["price_unit"]),
        "count": plan.count,
        "proven": plan.proven,
        "cut_off": plan.cut_off,
        "seconds": None if started is None or context.clock is None else context.clock() - started,
        "unsafe": list(plan.unsafe),
        "blanks": [{"piece": place, "length": show(derive_blank(case, place), nearest)} for place in plan.unsafe],
        "proof": _proof_out(plan),
    }


def case_of(asked: dict[str, Any]) -> Case:
    """The case as it was asked; mitered ends given, each piece takes its slanted kerf of a board too."""
    ends = tuple(Ends(_cut(row["left"]), _cut(row["right"])) for row in asked.get("ends", ()))
    beyond = tuple(derive_beyond(asked["kerf"], both) for both in ends)
    pieces = tuple(asked["pieces"])
    if len(ends) == len(pieces):
        pieces = tuple(length + more for length, more in zip(pieces, beyond, strict=True))
    stock = tuple(_stock(row, place, asked["price_unit"]) for place, row in enumerate(asked["stock"]))
    return Case(asked["kerf"], asked["end_trim"], stock, pieces, asked["hold"], ends, beyond, asked["shared_miters"])


def _cut(row: dict[str, Any]) -> Cut:
    if not 0 <= row["saw"] <= STEEPEST:
        raise BoardsError("no-such-cut", field="ends", most=STEEPEST)
    edge = LONG_EDGES[row["long_edge"]]
    # An end whose gain was not given still leans to one side: the least of lengths says which.
    gains = (row["gains"] or Length(row["saw"] / 1_000_000)) * edge
    return Cut(row["saw"], gains, row["long_edge"] in ("outer", "inner"))


def _stock(row: dict[str, Any], place: int, unit: str) -> Stock:
    try:
        cents = _cents(row["price"], unit)
    except EngineError as error:
        error.field = f"stock.{place}.price"
        raise
    return Stock(row["length"], cents, row["limit"])


def _cents(written: str, unit: str) -> int:
    return int(written) if unit == "cent" and written.isascii() and written.isdecimal() else parse_price(written)


def _money(cents: int, unit: str) -> str | int:
    return cents if unit == "cent" else format_price(cents)


def _proof_out(plan: Plan) -> Answer:
    return {
        "rules": [{**_rule_out(rule), "up_to": rule.up_to, "given": rule.given and _rule_out(rule.given)}
                  for rule in plan.proof.rules],
        "searched": [list(boards) for boards in plan.proof.searched],
    }  # fmt: skip


def _rule_out(rule: Rule) -> dict[str, list[int]]:
    return {"points": list(rule.points), "most": list(rule.most)}


def answer_prove(asked: dict[str, Any], context: Context) -> Answer:
    case, said = case_of(asked), asked["answer"]
    problems = check_case(case)
    if problems:
        raise problems[0]
    boards = [(board["stock"], board["pieces"]) for board in said["boards"]]
    faults = check_boards(case, boards)
    cents = derive_cost(case, boards)
    unit = asked["price_unit"]
    cost, bound = _cents(said["cost"], unit), _cents(said["bound"], unit)
    if cost != cents:
        faults.append(BoardsError("not-the-cost", cost=f"${format_price(cents)}", said=f"${format_price(cost)}"))
    claim = Claim(cost, len(boards), _proof_in(said)) if said["proven"] else Claim(bound, 0, _proof_in(said))
    confirmed = confirm(case, claim)
    sentences = [fault.message for fault in faults] + _sentences(confirmed, said["proven"], bound, cost, len(boards))
    return {
        "holds": confirmed.holds and not faults,
        "sentences": sentences,
        "rules": len(claim.proof.rules),
        "lists": len(claim.proof.searched),
    }


def _proof_in(said: dict[str, Any]) -> Proof:
    rules = tuple(
        Rule(tuple(row["points"]), tuple(row["most"]), row["up_to"], row["given"] and _given(row["given"]))
        for row in said["proof"]["rules"]
    )
    return Proof(rules, tuple(tuple(boards) for boards in said["proof"]["searched"]))


def _given(row: dict[str, Any]) -> Rule:
    return Rule(tuple(row["points"]), tuple(row["most"]))


def _sentences(confirmed: Confirmed, proven: bool, bound: int, cost: int, boards: int) -> list[str]:
    """What was found, in words that a person can act on."""
    if confirmed.holds and proven:
        return [say("proof-holds-fewest", cost=format_price(cost))]
    if confirmed.holds:
        return [
            say("proof-holds", bound=format_price(bound)),
            say("proof-costs-more", cost=format_price(cost), by=format_price(cost - bound)),
        ]
    found = []
    if confirmed.broken:
        numbers = ", ".join(str(place + 1) for place in confirmed.broken)
        found.append(say("proof-broken", numbers=numbers))
    if confirmed.unexplained:
        lists = "; ".join(" + ".join(map(str, counts)) for counts in confirmed.unexplained)
        found.append(say("proof-unexplained", lists=lists))
    if confirmed.resting:
        found.append(say("proof-resting", count=len(confirmed.resting)))
    if not confirmed.finished:
        found.append(say("proof-too-long"))
    return found


QUESTIONS = (
    Question("boards", say("question-boards"), BoardsIn, BoardsOut, answer_boards),
    Question("prove", say("question-prove"), ProveIn, ProveOut, answer_prove),
)
