"""Free pieces: any run of stock that no rule gives, its length a sum of a person's own.

The sum is tape arithmetic and may name figures of the room, so the piece follows when one is read again. One that
comes to no length is a problem by its name, with the place in its sum; the other pieces stand.
"""

from collections.abc import Callable, Iterator
from typing import TypeVar

from scantling.engine.errors import EngineError
from scantling.engine.survey.room import Free, Problem, Room
from scantling.engine.tape.lengths import Length, format_length
from scantling.engine.tape.marks import name_pattern, plain_words
from scantling.engine.tape.sums import SumResult, evaluate_sum, write_units
from scantling.engine.trim.doubt import Doubt
from scantling.engine.trim.ends import End
from scantling.engine.trim.own.names import NamedFigure, derive_names
from scantling.engine.trim.piece import Kind, Piece, Step
from scantling.engine.trim.told.tolerance import MARK, READING
from scantling.engine.words import say

MOST_PIECES = 400
T = TypeVar("T")


class FreeError(EngineError):
    family = "free"


def derive_free(room: Room) -> tuple[list[Piece], list[Problem]]:
    """Every free piece of the room, each as often as it is wanted, and those whose sum comes to no length."""
    names = derive_names(room) if room.free else {}
    pieces: list[Piece] = []
    problems: list[Problem] = []
    for free in room.free:
        try:
            if len(pieces) + free.count > MOST_PIECES:
                raise FreeError("too-many", most=MOST_PIECES)
            pieces += _derive_pieces(free, names)
        except EngineError as error:
            problems.append(Problem("", error.key, f"{free.name}: {error.message}"))
    return pieces, problems


def evaluate_free(text: str, names: dict[str, NamedFigure]) -> tuple[SumResult, Length]:
    """A free piece's sum worked, and the length it comes to. Raises `EngineError`."""
    result = _with_names(evaluate_sum, text, names)
    if result.length is None:
        what = say("taken-as-number" if result.area is None else "unit-of-area")
        raise FreeError("not-a-length", field="text", what=what)
    if result.length.inches <= 0:
        raise FreeError("no-length", field="text", length=format_length(result.length))
    return result, result.length


def write_free(text: str, names: dict[str, NamedFigure]) -> str:
    """A free piece's sum with its millimeters written, as it is kept. Raises `EngineError`."""
    return _with_names(write_units, text, names)


def _with_names(work: Callable[[str, dict[str, Length]], T], text: str, names: dict[str, NamedFigure]) -> T:
    try:
        return work(text, {name: named.length for name, named in names.items()})
    except EngineError as error:
        if error.key != "unknown-word":
            raise
        raise FreeError("no-such-figure", field="text", at=error.at, sentence=error.message) from error


def _derive_pieces(free: Free, names: dict[str, NamedFigure]) -> Iterator[Piece]:
    result, length = evaluate_free(free.text, names)
    used = find_used(free.text, names)
    working = [*(named.step for named in used), *_steps(result), Step(say("free-length"), length)]
    read = sum(bool(named.step.readings) for named in used)
    end = End("square", say("meets-nothing-known"))
    for number in range(1, free.count + 1):
        yield Piece(
            key=f"free {free.id} {number}",
            kind=Kind.FREE,
            part=free.name,
            place=say("number-of", number=number, count=free.count) if free.count > 1 else "",
            profile=free.profile,
            wall="",
            wall_number=0,
            back=length,
            left=end,
            right=end,
            doubt=Doubt.of(*[READING] * read, MARK),
            working=tuple(working),
            flags=(),
        )


def find_used(text: str, names: dict[str, NamedFigure]) -> list[NamedFigure]:
    """The figures that a sum names, each once, in the order in which it names them."""
    pattern = name_pattern(names)
    found = pattern.finditer(plain_words(text)) if pattern else ()
    return [names[name] for name in dict.fromkeys(plain_words(match.group()) for match in found)]


def _steps(result: SumResult) -> Iterator[Step]:
    for step in result.steps:
        value = Length(step.value.amount) if step.value.sort in ("length", "figure") else None
        yield Step(step.text if value else f"{step.text} = {step.value.show()}", value)
