"""A plan of boards as it is shown: what to buy and what that comes to, its proof, and which piece comes from which."""

from collections import Counter
from collections.abc import Iterable, Sequence, Set

from marshmallow import Schema, fields

from scantling.engine.boards.case.case import Plan
from scantling.engine.drawings.boards import draw_boards
from scantling.engine.questions.called import call_stock
from scantling.engine.questions.question import Answer
from scantling.engine.rack.accepted import format_body
from scantling.engine.rack.settle import Settled, Wanted
from scantling.engine.rack.stick import LaidStick, Stick
from scantling.engine.rack.wanted import derive_length, is_uncertain
from scantling.engine.shapes import DrawingOut, LengthOut, out, show, text_out, texts_out
from scantling.engine.shown.shown_in import is_metric
from scantling.engine.standard import format_price, format_stock
from scantling.engine.tape.lengths import SIXTY_FOURTH, Length, format_length
from scantling.engine.trim.piece import Piece
from scantling.engine.words import all_of, say, say_counted


class CutMarkOut(Schema):
    letter, state = text_out(), text_out()
    mark = out(LengthOut)
    uncertain = fields.Boolean(required=True, metadata={"description": say("told-mark-uncertain")})
    shares_cut = fields.Boolean(required=True, metadata={"description": say("told-mark-shares-cut")})


class RoomBoardOut(Schema):
    board = text_out(none=True)
    length, offcut = out(LengthOut), out(LengthOut)
    length_shown, why = text_out(), text_out()
    bought = fields.Boolean(required=True)
    pieces = out(CutMarkOut, many=True)
    drawing = DrawingOut(required=True)
    settings = fields.Integer(required=True, metadata={"description": say("told-board-settings")})


# What lumber is usually sold in: common practice, no source.
USUAL = ("8 ft", "10 ft", "12 ft", "14 ft", "16 ft")
USUAL_METRIC = ("2.4 m", "3 m", "3.6 m", "4.2 m", "4.8 m")


class UnpricedOut(Schema):
    """`words` are those that say it under what is missing; `profile_shown` is what the profile is called there."""

    profile, profile_shown, setting, words = text_out(), text_out(), text_out(), text_out()
    lengths = texts_out()


class LetterBlankOut(Schema):
    letter, message = text_out(), text_out()
    length = out(LengthOut)


class BuyOut(Schema):
    """A line of the shopping list: so many of a length, at so much each, comes to."""

    count = fields.Integer(required=True)
    length, each, cost, why = text_out(), text_out(), text_out(), text_out()


class PlanEntryOut(Schema):
    """What to write to accept the plan. A board without a name is named by whoever writes it."""

    kind = text_out()
    body = fields.Dict(keys=fields.String(), required=True)
    supersedes = texts_out()


class RoomPlanOut(Schema):
    profile, profile_shown, cost, proof, summary = text_out(), text_out(), text_out(), text_out(), text_out()
    slack = fields.String(required=True, metadata={"description": say("told-room-plan-slack")})
    paid = fields.String(required=True, metadata={"description": say("told-room-plan-paid")})
    total = fields.String(required=True, metadata={"description": say("told-room-plan-total")})
    boards = out(RoomBoardOut, many=True)
    buy = out(BuyOut, many=True)
    proven, accepted = fields.Boolean(required=True), fields.Boolean(required=True)
    reasons = texts_out()
    unsafe = texts_out()
    blanks = out(LetterBlankOut, many=True)
    accept = out(PlanEntryOut, none=True)


def find_unpriced(wants: Iterable[Wanted]) -> list[Answer]:
    """Profiles that no board is known of yet, with the setting to say them in and the lengths usually sold.

    Boards of a profile that no rule makes are said in one list with those of others: not here.
    """
    return [
        {"profile": wanted.profile, "profile_shown": call_stock(wanted.profile),
         "setting": wanted.standard.stock_setting(wanted.profile),
         "lengths": list(USUAL_METRIC if is_metric() else USUAL), "words": _say_unpriced(wanted.profile)}
        for wanted in wants
        if wanted.pieces
        and wanted.standard.stock_setting(wanted.profile) != "other.stock"
        and not (wanted.standard.stock_of(wanted.profile) or wanted.rack or wanted.accepted)
    ]  # fmt: skip


def _say_unpriced(profile: str) -> str:
    return say("boards-unpriced", profile=call_stock(profile))


def find_fitting(wanted: Wanted) -> tuple[list[Piece], list[str]]:
    """The pieces that some board of their profile is long enough for, and what is missing for the others."""
    accepted = wanted.accepted.sticks if wanted.accepted else ()
    lengths = [row.length for row in wanted.standard.stock_of(wanted.profile)]
    lengths += [stick.length for stick in (*wanted.rack, *accepted)]
    if not wanted.pieces:
        return [], []
    if not lengths:
        return [], [_say_unpriced(wanted.profile)]
    longest = max(lengths) - wanted.standard.end_trim
    sizes = {piece.key: derive_length(piece) for piece in wanted.pieces}
    return [piece for piece in wanted.pieces if sizes[piece.key] <= longest], [
        say("boards-piece-longer", letter=piece.letter, by=format_length(sizes[piece.key] - longest))
        for piece in wanted.pieces
        if sizes[piece.key] > longest
    ]


def show_plan(of: str | None, wanted: Wanted, settled: Settled, nearest: Length) -> Answer:
    """The plan as `RoomPlanOut`; `of` is the id of the room or the house that may settle on it."""
    sticks = [laid.stick for laid in settled.sticks]
    accepted = wanted.accepted
    stands = accepted is not None and not settled.reasons
    plan = settled.plan
    uncertain = {piece.key for piece in wanted.pieces if is_uncertain(wanted.standard, piece)}
    drawings = draw_boards(settled.sticks, wanted.standard.end_trim)
    return {
        "profile": wanted.profile,
        "profile_shown": call_stock(wanted.profile),
        "cost": format_price(sum(stick.pays for stick in sticks if not stick.why)),
        "paid": format_price(settled.paid),
        "total": format_price(settled.to_pay),
        "proven": plan.proven if plan else False,
        "accepted": stands,
        "reasons": list(settled.reasons),
        "proof": say_proof(plan) if plan else say("plan-accepted"),
        "summary": _summary(sticks),
        "slack": _say_slack(wanted, settled),
        "boards": [
            _board(laid, uncertain, wanted, nearest) | {"drawing": drawing}
            for laid, drawing in zip(settled.sticks, drawings, strict=True)
        ],
        "buy": _buy(sticks),
        "unsafe": [letter for letter, _ in settled.blanks],
        "blanks": [_blank(letter, length, nearest) for letter, length in settled.blanks],
        "accept": None if of is None else {
            "kind": "plan",
            "body": dict(format_body(of, wanted.profile, sticks)),
            "supersedes": list(accepted.entries) if accepted else [],
        },
    }  # fmt: skip


def _board(laid: LaidStick, uncertain: Set[str], wanted: Wanted, nearest: Length) -> Answer:
    stick = laid.stick
    return {
        "board": stick.board,
        "length": show(stick.length, nearest),
        "length_shown": format_stock(stick.length),
        "why": stick.why or (_say_source(stick.source, stick.is_scrap, wanted) if stick.source else ""),
        "bought": stick.is_here,
        "offcut": show(laid.offcut, nearest),
        "settings": laid.settings,
        "pieces": [
            {
                "letter": piece.line.letter,
                "state": piece.line.state,
                "mark": show(piece.end if piece.mark is None else piece.mark, nearest),
                "uncertain": piece.line.key in uncertain,
                "shares_cut": piece.shares_cut,
            }
            for piece in laid.laid
        ],
    }  # fmt: skip


def _say_source(source: str, is_scrap: bool, wanted: Wanted) -> str:
    if is_scrap:
        return say("board-left-of", board=wanted.called.get(source, source))
    return say("board-left-of-other-room-uncut" if source in wanted.uncut else "board-left-of-other-room")


def _say_slack(wanted: Wanted, settled: Settled) -> str:
    slack, plan = settled.slack, settled.plan
    if slack is None or plan is None:
        return ""
    saves = [f"${format_price(plan.cost - slack.cost)}"] if plan.cost > slack.cost else []
    saves += [say_counted("so-many-board", fewer)] if (fewer := plan.count - slack.count) > 0 else []
    kept, saved = format_length(slack.kept, SIXTY_FOURTH), all_of(saves or [say("slack-saves-nothing")])
    filled = [wanted.pieces[place].letter for place in slack.filled]
    if not filled:
        return say("slack-all", length=kept, saved=saved)
    return say_counted("slack-but-for", len(filled), length=kept, letters=", ".join(filled), saved=saved)


def _blank(letter: str, length: Length, nearest: Length) -> Answer:
    least = format_length(length, nearest)
    return {
        "letter": letter,
        "length": show(length, nearest),
        "message": say("plan-blank", letter=letter, least=least),
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
        return say("plan-cheapest-and-fewest", cost=cost)
    if plan.bound == plan.cost:
        return say("plan-cheapest", cost=cost)
    if not plan.bound:
        return say("plan-not-proved")
    return say("plan-within", by=format_price(plan.cost - plan.bound))


def _summary(sticks: Sequence[Stick]) -> str:
    cut = [stick.length for stick in sticks if not stick.why]
    words = (say("count-of-size", count=count, size=format_stock(length))
             for length, count in sorted(Counter(cut).items()))  # fmt: skip
    return say_counted("boards-in-all", len(cut), lengths=", ".join(words))
