"""`supplies`: tubes of caulk and adhesive, nails by length and count, and what else is used up."""

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Any

from scantling.engine.cautions import cautions_for_fixing
from scantling.engine.errors import EngineError
from scantling.engine.questions.facts import find, find_pieces
from scantling.engine.questions.question import Answer, Context, Question
from scantling.engine.questions.supplies.of_room import Covered, compose
from scantling.engine.questions.supplies.said import FIELDS
from scantling.engine.questions.supplies.shapes import (
    ADHESIVE,
    CAULK,
    EIGHTH,
    QUARTER,
    SuppliesIn,
    SuppliesOut,
)
from scantling.engine.settings import OF_SUPPLIES, dotted
from scantling.engine.shapes import load, show
from scantling.engine.shown.shown_in import is_metric
from scantling.engine.standard import format_price
from scantling.engine.supplies.beads import (
    FILLET,
    ROUND,
    SupplyError,
    derive_bead_length,
    derive_bead_section,
    derive_tubes,
)
from scantling.engine.supplies.fasteners import (
    LENGTHS,
    MOST,
    Nail,
    choose_nail,
    count_nails,
    derive_boxes,
    derive_least,
    judge_nail,
)
from scantling.engine.supplies.sundries import SUNDRIES, derive_packages, format_counted
from scantling.engine.survey.facts import collect_standard, find_room
from scantling.engine.tape.lengths import (
    SIXTY_FOURTH,
    Length,
    format_length,
    format_working,
)
from scantling.engine.tape.measures import format_content, format_number, format_section
from scantling.engine.words import say

LISTS = ("joints", "beads", "fasteners", "sundries")
# Its name, how long it is, and its bead: shape, size and section.
JointSaid = tuple[str, Length, str, Length, Fraction]


def answer_supplies(asked: dict[str, Any], context: Context) -> Answer:
    return count_supplies(asked, context, Covered())


def count_supplies(asked: dict[str, Any], context: Context, covered: Covered) -> Answer:
    """What is asked, and with a room what its pieces and its coverings use up."""
    problems: list[Answer] = []
    unused: list[str] = []
    if "room" in asked:
        asked = _with_room(asked, context, covered, problems, unused)
    tubes = [*_tubes("caulk", "joints", asked, problems), *_tubes("adhesive", "beads", asked, problems)]
    boxes = list(_boxes(asked, problems))
    lengths = sorted({box["length"]["inches"]: box["length"] for box in boxes}.items())
    return {
        "tubes": tubes,
        "boxes": boxes,
        "nails": list(_by_length(boxes, asked)),
        "lengths": [length for _, length in lengths],
        "packages": [_packages(one) for one in asked["sundries"]],
        "problems": problems,
        "warnings": unused,
        "cautions": cautions_for_fixing(nails=bool(asked["fasteners"]), adhesive=bool(asked["beads"])),
    }


def _with_room(
    asked: dict[str, Any], context: Context, covered: Covered, problems: list[Answer], unused: list[str]
) -> dict[str, Any]:
    room, more = find(asked, context)
    pieces, _ = find_pieces(asked, room, context)
    settings = settings_of(asked["room"], context)
    unused += [*more, *(say("not-used", name=f"standard.{name}") for name in settings
                        if name.startswith(OF_SUPPLIES) and name not in FIELDS)]  # fmt: skip
    question, wrong = compose(room, pieces, settings, covered)
    problems += ({"what": one.name, "item": 0, "key": one.error.key, "message": one.error.message} for one in wrong)
    loaded = load(LOADER, {"ask": "supplies", "joints": [], "room": asked["room"], **question})
    return {**asked, **{name: [*asked[name], *loaded[name]] for name in LISTS}}


def settings_of(facts: Any, context: Context) -> Mapping[str, object]:
    """Every setting that counts in a room, by dotted name."""
    if not isinstance(facts, str):
        return dotted(facts.get("standard") or {})
    return collect_standard(context.notebook, find_room(context.notebook, facts).body["house"], facts)


def _tubes(what: str, field: str, asked: dict[str, Any], problems: list[Answer]) -> Iterator[Answer]:
    """Tubes by their size, price and waste: joints that share a tube are filled out of the same ones."""
    shape, size, tube = (FILLET, EIGHTH, CAULK) if what == "caulk" else (ROUND, QUARTER, ADHESIVE)
    shared: dict[tuple[Fraction, int | None, Fraction], list[JointSaid]] = {}
    for place, one in enumerate(asked[field]):
        name = one.get("name") or say(f"nameless-{what}", number=place + 1)
        own = (one.get("shape", shape), one.get("size", size))
        try:
            section = derive_bead_section(*own)
        except SupplyError as error:
            problems.append(_problem(field, place, error))
            continue
        key = (one.get("tube", tube), one.get("price"), one["waste"])
        shared.setdefault(key, []).append((name, one["length"], *own, section))
    for (tube, price, waste), joints in shared.items():
        volume = sum((length.inches * section for _, length, _, _, section in joints), start=Fraction(0))
        count = derive_tubes(volume, tube, waste)
        alike = len({section for *_, section in joints}) == 1
        reach = derive_bead_length(tube, joints[0][-1]).inches / 12
        yield {
            "what": what,
            "name": ", ".join(dict.fromkeys(name for name, *_ in joints)),
            "count": count,
            "feet_a_tube": float(f"{float(reach):.2f}") if alike else None,
            "cost": None if price is None else format_price(price * count),
            "working": list(_tubes_working(joints, tube, waste, volume, count)),
        }


def _tubes_working(
    joints: list[JointSaid], tube: Fraction, waste: Fraction, volume: Fraction, count: int
) -> Iterator[str]:
    for name, length, shape, size, section in joints:
        wide = format_length(size, SIXTY_FOURTH)
        yield f"{name}: {format_length(length)} × {format_section(section)} ({shape} {wide})"
    held = format_content(tube)
    yield say("tubes-counted", volume=format_content(volume), tube=held, waste=format_number(waste), count=count)


def _boxes(asked: dict[str, Any], problems: list[Answer]) -> Iterator[Answer]:
    for place, one in enumerate(asked["fasteners"]):
        name = one.get("name") or say("nameless-fastener", number=place + 1)
        count = count_nails(one["along"], one["apart"], one["rows"])
        try:
            if count > MOST:
                raise SupplyError("too-many-holes", name=name.capitalize(), most=MOST)
            nail = _nail(name.capitalize(), one)
        except EngineError as error:
            problems.append(_problem("fasteners", place, error))
            continue
        box, price = _box(one, nail.length)
        boxes = derive_boxes(count, box) if box else None
        yield {
            "name": name, "kind": one["kind"], "count": count, "boxes": boxes, "deep": nail.deep,
            "cost": format_price(boxes * price) if boxes is not None and price is not None else None,
            "length": show(nail.length, asked["nearest"]), "bite": show(nail.bite, asked["nearest"]),
            "working": list(_boxes_working(one, nail, count)), "warnings": list(_warnings(one, nail)),
        }  # fmt: skip


def _box(one: dict[str, Any], length: Length) -> tuple[int | None, int | None]:
    """How many are in a box of nails so long, and what it costs."""
    row = next((row for row in one.get("boxes", ()) if row["length"] == length), None)
    return (row["count"], row.get("price")) if row else (one.get("box"), one.get("price"))


def _by_length(boxes: list[Answer], asked: dict[str, Any]) -> Iterator[Answer]:
    """Nails alike come out of the same boxes, whatever they hold."""
    sold = {show(row["length"])["exact"]: (row["count"], row.get("price"))
            for one in asked["fasteners"] for row in one.get("boxes", ())}  # fmt: skip
    alike: dict[tuple[str, Any], list[Answer]] = {}
    for box in boxes:
        alike.setdefault((box["kind"], box["length"]["exact"]), []).append(box)
    for (kind, exact), some in sorted(alike.items(), key=lambda one: (one[0][0], one[1][0]["length"]["inches"])):
        count = sum(one["count"] for one in some)
        held, price = sold.get(exact, (None, None))
        number = derive_boxes(count, held) if held else None
        each = " + ".join(f"{one['count']} ({one['name']})" for one in some)
        yield {
            "kind": kind, "names": ", ".join(one["name"] for one in some), "length": some[0]["length"], "count": count,
            "boxes": number, "cost": None if number is None or price is None else format_price(number * price),
            "working": [
                *([f"{each} = {count}"] if len(some) > 1 else []),
                *([say("boxes-counted", count=count, held=held, boxes=number)] if held else []),
            ],
        }  # fmt: skip


def _nail(name: str, one: dict[str, Any]) -> Nail:
    if "length" in one:
        return judge_nail(one["through"], one["length"], one["into"])
    lengths = [row["length"] for row in one.get("boxes", ())] or one.get("lengths", LENGTHS)
    return choose_nail(name, one["through"], lengths, one["bite"], one["into"])


def _boxes_working(one: dict[str, Any], nail: Nail, count: int) -> Iterator[str]:
    through = " + ".join(format_working(thick.inches) for thick in one["through"])
    least = derive_least(one["through"], one["bite"])
    bite, length = format_working(one["bite"].inches), format_length(nail.length)
    into = say(f"nail-into-{one['into']}")
    yield say("nail-length", through=through, bite=bite, into=into, least=format_working(least.inches), length=length)
    apart, rows = format_working(one["apart"].inches), one["rows"]
    along = sum((piece.inches for piece in one["along"]), start=Fraction(0))
    if len(one["along"]) == 1:
        yield f"{rows} × (⌊{format_working(along)} ÷ {apart}⌋ + 1) = {count}"
    else:
        yield say("nails-each", pieces=len(one["along"]), length=format_length(Length(along)), rows=rows, apart=apart,
                  count=count)  # fmt: skip


def _warnings(one: dict[str, Any], nail: Nail) -> Iterator[str]:
    bite = format_length(nail.bite)
    if nail.bite < one["bite"]:
        need = format_length(derive_least(one["through"], one["bite"]))
        into = say(f"nail-into-{one['into']}")
        yield say("nail-too-short", bite=bite, into=into, wanted=format_length(one["bite"]), need=need)
    if nail.deep:
        yield say("caution-cable", bite=bite)


def _packages(one: dict[str, Any]) -> Answer:
    sundry = SUNDRIES[one["name"]]
    covers = one.get("covers", sundry.covers)
    count = derive_packages(one["amount"], covers)
    key = "packages-as-set" if "covers" in one else "packages-usual"
    wanted = format_counted(sundry.by, one["amount"])
    each = format_counted(sundry.by, covers) if is_metric() else format_number(covers)
    return {
        "name": sundry.name,
        "package": sundry.called,
        "count": count,
        "cost": format_price(count * one["price"]) if "price" in one else None,
        "working": [say(key, wanted=wanted, each=each, package=sundry.called, count=count)],
    }


def _problem(what: str, item: int, error: EngineError) -> Answer:
    return {"what": what, "item": item, "key": error.key, "message": error.message}


LOADER = SuppliesIn()
QUESTIONS = (
    Question("supplies", say("question-supplies"), SuppliesIn, SuppliesOut, answer_supplies),
)
