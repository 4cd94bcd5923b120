"""What a room uses up as goods: tubes, boxes of nails and packages, each by the settings that it is counted by."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from scantling.engine.bodies import PAINT, PAPER, SHEET
from scantling.engine.coverings.rolls.roll import PEEL
from scantling.engine.questions.covered.amount import price_day
from scantling.engine.questions.covered.planned import PlannedCovering, coverings_of
from scantling.engine.questions.question import Answer, Context
from scantling.engine.questions.said import collect
from scantling.engine.questions.shopping.good import SUPPLIES, Buy, Good
from scantling.engine.questions.shopping.shelf import derive_on_hand
from scantling.engine.questions.supplies.of_room import Covered
from scantling.engine.questions.supplies.said import DEFAULTS, FIELDS, SUNDRY_OF
from scantling.engine.questions.supplies.supplies import LOADER, count_supplies, settings_of
from scantling.engine.shapes import load
from scantling.engine.standard import parse_price
from scantling.engine.survey.facts import find_room
from scantling.engine.tape.figures import parse_figure
from scantling.engine.tape.lengths import ZERO, Length, format_inches, parse_length
from scantling.engine.words import say, say_counted

PREFIX_OF = {name: prefix for prefix, name in SUNDRY_OF.items()}


def derive_supply_goods(context: Context, room: str) -> tuple[list[Good], Answer]:
    """Each thing that is used up, and the answer that it was taken from, for its problems and cautions."""
    notebook = context.notebook
    return notebook.derived("goods of supplies", room, lambda: _derive(Context(notebook), room))


def _derive(context: Context, room: str) -> tuple[list[Good], Answer]:
    covered = _covered(coverings_of(context, room), _apart(context, room))
    answer = count_supplies(load(LOADER, {"ask": "supplies", "room": room}), context, covered)
    return list(_goods(context, room, answer)), answer


def _apart(context: Context, room: str) -> Length:
    said, _ = collect(FIELDS, settings_of(room, context), "adhesive")
    return parse_length(said.get("apart", DEFAULTS["adhesive.apart"]))


def _covered(some: Sequence[PlannedCovering], apart: Length) -> Covered:
    """What the coverings add: paste for paper that does not stick by itself, beads up the back of every panel."""
    pasted = Fraction(0)
    beads: list[tuple[str, Length]] = []
    for planned in some:
        if planned.article.sort == PAPER and planned.article.facts.get("hanging") != PEEL:
            pasted += _area(planned)
        if planned.article.sort == SHEET and planned.answer:
            up = sum((_bead(panel, apart) for panel in planned.answer["panels"]), start=ZERO)
            beads += [(planned.article.name, up)] if up else []
    sorts = {planned.article.sort for planned in some if planned.answer}
    return Covered(pasted, PAINT in sorts, PAPER in sorts, tuple(beads))


def _area(planned: PlannedCovering) -> Fraction:
    """Square inches of all strips as they are cut, the trim in them."""
    if planned.answer is None:
        return Fraction(0)
    width, rolls = parse_length(planned.article.facts["width"]), planned.answer["cutting"]
    cut = sum((_exact(piece["cut"]) for roll in rolls for piece in roll["pieces"]), start=ZERO)
    return cut.inches * width.inches


def _exact(length: Answer) -> Length:
    return parse_figure(length["exact"] or "") or ZERO


def _bead(panel: Answer, apart: Length) -> Length:
    """One bead up each edge, and no two farther apart: common practice, no source."""
    width, height = _exact(panel["width"]), _exact(panel["height"])
    each: int = -(-width.inches // apart.inches) + 1
    return height * (int(panel["count"]) * each)


def _goods(context: Context, room: str, answer: Answer) -> Iterator[Good]:
    for tube in answer["tubes"]:
        need = say_counted("tubes-for", tube["count"], names=tube["name"])
        yield _good(context, room, tube["what"], tube["what"], tube, tube["count"], need, "tube")
    for nails in answer["nails"]:
        name = f"{nails['kind']}s {format_inches(_exact(nails['length']))}"  # a box is found by it, so it stays
        need = say("nails-for", count=nails["count"], names=nails["names"])
        yield _good(context, room, name, "nail", nails, nails["boxes"], need, "box")
    for sundry in answer["packages"]:
        name, prefix, count = sundry["name"], PREFIX_OF[sundry["name"]], sundry["count"]
        yield _good(context, room, name, prefix, sundry, count, say_packages(count, prefix), prefix)


def _good(
    context: Context, room: str, name: str, prefix: str, of: Answer, count: int | None, need: str, unit: str
) -> Good:
    """Where no box was said, so many nails are wanted that nobody has a price of."""
    on_hand = derive_on_hand(context, room, name=name)
    each = parse_price(of["cost"]) // count if of["cost"] and count else None
    number = of["count"] if count is None else count
    plan = max(0, number - int(on_hand.lent))
    buy = max(0, plan - int(on_hand.own))
    here = min(number, int(on_hand.lent + on_hand.own))
    words = say("nails-loose", count=buy) if count is None else say_packages(buy, unit)
    lines = [Buy(name, words, None if each is None else buy * each, each)] if buy else []
    return Good(name, SUPPLIES, prefix, need, str(here) if here else "", None if each is None else plan * each,
                _day(context, room, prefix), tuple(of["working"]), tuple(lines))  # fmt: skip


def say_packages(count: int, unit: str) -> str:
    """
    >>> say_packages(2, "box"), say_packages(1, "tube")
    ('2 boxes', '1 tube')
    """
    return say_counted(f"so-many-{unit}", count)


def _day(context: Context, room: str, prefix: str) -> str:
    names = [f"{prefix}.{'boxes' if prefix == 'nail' else 'price'}"]
    house = find_room(context.notebook, room).body["house"]
    return next((day for of in (room, house) if (day := price_day(context.notebook, of, names))), "")


