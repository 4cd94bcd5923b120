"""The boards of a room as goods, profile by profile: what its plan still has to buy, length by length."""

from collections import Counter
from collections.abc import Callable, Iterator
from fractions import Fraction

from scantling.engine.boards.search.plan import USUAL_TIME_LIMIT
from scantling.engine.notebook import Notebook
from scantling.engine.questions.boards.room_boards import answer_boards_for_room
from scantling.engine.questions.covered.amount import price_day
from scantling.engine.questions.facts import room_of
from scantling.engine.questions.question import Answer, Context
from scantling.engine.questions.shopping.good import BOARDS, Buy, Good
from scantling.engine.rack.of_house import derive_home_sticks
from scantling.engine.rack.stick import Stick
from scantling.engine.settings import SETTINGS
from scantling.engine.standard import Standard, format_stock, name_stock, parse_price
from scantling.engine.survey.facts import find_room
from scantling.engine.tape.lengths import SIXTEENTH, Length
from scantling.engine.words import say, say_counted


def derive_boards(context: Context, room: str) -> tuple[list[Good], list[str]]:
    """Each profile's boards, and in words what is missing for a plan; planned once for all who ask.

    Without a clock, so that the list is the same on every device: the search stops by its steps.
    """
    notebook = context.notebook
    return notebook.derived("goods of boards", room, lambda: _derive(notebook, room))


def _derive(notebook: Notebook, room: str) -> tuple[list[Good], list[str]]:
    asked = {"room": room, "nearest": SIXTEENTH, "time_limit": USUAL_TIME_LIMIT}
    answer = answer_boards_for_room(asked, Context(notebook))
    standard, house = room_of(notebook, room).standard, find_room(notebook, room).body["house"]

    def day(profile: str) -> str:
        return _day(notebook, standard, profile, room, house)

    own = [_good(plan, day(plan["profile"])) for plan in answer["plans"]]
    return [*own, *_shared(notebook, room, day)], [*answer["missing"]]


def _shared(notebook: Notebook, room: str, day: Callable[[str], str]) -> Iterator[Good]:
    """The boards planned for several rooms that count as this one's, which takes most of them."""
    by_profile: dict[str, list[Stick]] = {}
    for profile, stick in derive_home_sticks(notebook, room):
        by_profile.setdefault(profile, []).append(stick)
    for profile, sticks in by_profile.items():
        still = Counter((stick.length, stick.price_cents) for stick in sticks if stick.pays)
        yield Good(
            name=profile, sort=BOARDS, of=profile, need=say_counted("boards-for-several", len(sticks)), here="",
            planned=sum(stick.price_cents for stick in sticks if stick.source is None), seen=day(profile), working=(),
            buy=tuple(_shared_line(profile, *row, count) for row, count in sorted(still.items())),
        )  # fmt: skip


def _shared_line(profile: str, length: Length, cents: int, count: int) -> Buy:
    words = say("count-of-size-for-several", count=count, size=format_stock(length))
    return Buy(f"{profile}, {name_stock(length)}, several rooms", words, cents * count, cents)


def _good(plan: Answer, day: str) -> Good:
    profile = plan["profile"]
    return Good(
        name=profile, sort=BOARDS, of=profile, need=plan["summary"], here=_here(plan),
        planned=parse_price(plan["paid"]) + parse_price(plan["total"]), seen=day, working=(plan["proof"],),
        buy=tuple(_lines(profile, plan)), accept=plan["accept"],
    )  # fmt: skip


def _here(plan: Answer) -> str:
    """The boards of a plan that are here already, in words."""
    counted = Counter(board["length_shown"] for board in plan["boards"] if board["bought"])
    return ", ".join(say("count-of-size", count=count, size=length) for length, count in counted.items())


def _lines(profile: str, plan: Answer) -> Iterator[Buy]:
    waiting: dict[tuple[str, str], list[int]] = {}
    for place, board in enumerate(plan["boards"]):
        if not board["bought"]:
            waiting.setdefault((board["length_shown"], board["why"]), []).append(place)
    for line in plan["buy"]:
        why = f", {line['why']}" if line["why"] else ""
        words = f"{say('count-of-size', count=line['count'], size=line['length'])}{why}"
        places = waiting.get((line["length"], line["why"]), [])
        boards, places[:] = tuple(places[: line["count"]]), places[line["count"] :]
        named = _name(plan["boards"][boards[0]]["length"]) if boards else line["length"]
        yield Buy(f"{profile}, {named}{why}", words, parse_price(line["cost"]), parse_price(line["each"]), boards)


def _name(length: Answer) -> str:
    return name_stock(Length(Fraction(length["exact"] or str(length["inches"]))))


def _day(notebook: Notebook, standard: Standard, profile: str, room: str, house: str) -> str:
    """The oldest day of the prices that the profile's boards were taken from: the room's, where it has its own."""
    stock = standard.stock_of(profile)
    names = [name for name in SETTINGS if name.endswith("stock") and stock
             and getattr(standard, name.replace(".", "_")) == stock] or ["other.stock"]  # fmt: skip
    return next((day for of in (room, house) if (day := price_day(notebook, of, names))), "")
