"""A whole wall said in one breath, as dictation writes it, taken apart into readings of what the room lists.

"Wall two, ninety-six and three eighths, window at thirty and a quarter": words that name a wall, a thing or a figure
part what was said; what lies between is a reading, understood as any reading is. A figure's word may come before its
reading ("at thirty") or after ("thirty wide"). Nothing is guessed: where a part could be two things, or is none, it is
a doubt, told as a sentence, with the figures that it may be. What nothing reads stands in its part: it is not dropped.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from types import MappingProxyType

from scantling.engine.errors import EngineError
from scantling.engine.survey.read import read_corner
from scantling.engine.survey.room import Obstacle, Opening, Room, Wall
from scantling.engine.tape.angles import Corner
from scantling.engine.tape.lengths import ONE_INCH, Length, parse_reading
from scantling.engine.tape.marks import PLAIN, plain_words, read_marks
from scantling.engine.tape.quantities import INCHES, MILLIMETERS
from scantling.engine.tape.spoken import TENS, UNITS, gather_numbers
from scantling.engine.tape.sums import write_units
from scantling.engine.walk.figure import Figure
from scantling.engine.walk.rows import AGREE, Row
from scantling.engine.words import say

LONGEST_BREATH = 1000
PARTS_AT_MOST = 40
#: Words of two readings that ran together: a longer run is no two lengths.
RUN_AT_MOST = 16
CORNERS = ("corner", "ceiling_corner", "left_corner", "right_corner")
OF_WALL = ("length", "corner", "ceiling", "ceiling_corner", "chair_rail", "picture_rail")
#: What one breath reads: rows of studs, leans and depths have pads of their own.
SAID_AS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "length": ("along the floor", "corner to corner", "length", "long"),
        "at": ("from the left corner", "from the corner", "from the left", "starts at", "at"),
        "width": ("jamb to jamb", "edge to edge", "width", "wide", "across"),
        "left": ("height at the left", "height on the left", "high at the left", "high on the left", "left"),
        "right": ("height at the right", "height on the right", "high at the right", "high on the right", "right"),
        "left_corner": ("left corner of the head",),
        "right_corner": ("right corner of the head",),
        "height": ("height", "high", "tall"),
        "sill": ("floor to its sill", "floor to the sill", "sill"),
        "sash": ("sash to the wall", "sash"),
        "depth": ("depth", "deep"),
        "ceiling": ("along the ceiling", "ceiling"),
        "ceiling_corner": ("corner at the ceiling",),
        "corner": ("corner", "angle"),
        "chair_rail": ("along the chair rail", "chair rail"),
        "picture_rail": ("along the picture rail", "picture rail"),
    }
)
#: Of an opening a height is two, one up either jamb.
ALSO: Mapping[str, tuple[str, ...]] = MappingProxyType({"height": ("height", "left", "right")})
#: What dictation writes for a number after "wall".
SOUNDS_LIKE: Mapping[str, int] = MappingProxyType({"to": 2, "too": 2, "for": 4, "won": 1, "ate": 8})
#: Words between readings that say nothing.
FILLERS = frozenset(("the", "is", "it", "its", "then", "next", "um", "uh", "er", "so", "now", "to", "from", "that"))
JOINS = frozenset(("and", "a", "an"))

_MARK = re.compile(
    r"(?P<figure>[0-9](?:[0-9.,/]*[0-9])?)|(?P<word>[a-z]+)|(?P<stop>[,;:!?.]+)|(?P<space> +)|(?P<other>.)", re.ASCII
)


@dataclass(frozen=True, slots=True)
class Heard:
    """One reading. `text` is what to write; `figure` what it is of, None in doubt; `choices` what it may be."""

    heard: str
    text: str
    figure: Figure | None
    value: Length | Corner | None
    doubt: str = ""
    choices: tuple[Figure, ...] = ()


@dataclass(frozen=True, slots=True)
class _Mark:
    kind: str
    text: str
    at: int
    end: int


@dataclass(slots=True)
class _Said:
    """What is being heard: where one is, and the marks of the reading so far."""

    wall: Wall | None
    like: str = ""
    things: tuple[str, ...] = ()
    what: str = ""
    named: str = ""
    marks: list[_Mark] = field(default_factory=list)


def hear_breath(
    text: str, room: Room, rows: Sequence[Row], in_hand: str | None = None, bare: str = INCHES
) -> list[Heard]:
    """The readings of what was said, in order; never raises. `in_hand`: the wall one faces, until another is named;
    `bare`: what lengths without a unit are in."""
    by_key: dict[tuple[str, str], Length | Corner | None] = {}
    wall = next((one for one in room.walls if one.id == in_hand), None)
    parts: list[Heard] = []
    for said in _split(text[:LONGEST_BREATH], room, wall):
        if len(parts) == PARTS_AT_MOST:
            break
        part = _understand(said, rows, bare)
        parts.append(_compared(part, rows, by_key))
    return parts


# ---- taken apart -----------------------------------------------------------------------------------------------------


def _split(text: str, room: Room, wall: Wall | None) -> Iterator[_Said]:
    marks = _read_marks(text)
    said, at = _Said(wall), 0
    while at < len(marks):
        mark = marks[at]
        found = _named_at(marks, at, said.wall)
        if mark.text == "wall" and mark.kind == "word":
            yield from _flush(said)
            said, at = _at_wall(marks, at + 1, room, said)
        elif found:
            name, at = found
            yield from _take_name(said, *name)
        elif mark.kind == "stop" or (mark.kind == "word" and mark.text in FILLERS):
            yield from _flush(said)
            at += 1
        else:
            said.marks.append(mark)
            at += 1
    yield from _flush(said)
    if said.named:
        yield _Said(said.wall, said.like, said.things, said.what, said.named)


def _read_marks(text: str) -> list[_Mark]:
    plain = "".join(PLAIN.get(character, character) for character in text)
    matches = (match for match in _MARK.finditer(plain) if match.lastgroup != "space")
    return [_Mark(str(match.lastgroup), match.group(), match.start(), match.end()) for match in matches]


def _flush(said: _Said) -> Iterator[_Said]:
    """What was gathered, as a part of its own; what joins alone is none."""
    marks = said.marks
    while marks and marks[0].text == "and":
        marks = marks[1:]
    while marks and marks[-1].text in JOINS:
        marks = marks[:-1]
    said.marks = []
    if marks:
        yield _Said(said.wall, said.like, said.things, said.what, said.named, marks)
        said.what, said.named, said.like = "", "", ""


def _take_name(said: _Said, kind: str, name: object, words: str) -> Iterator[_Said]:
    """A thing, or a figure's word: after a reading that has none it is that reading's own."""
    if kind == "what" and said.marks and not said.what:
        said.what = str(name)
        if name in OF_WALL:
            said.things = ()
        yield from _flush(said)
        return
    two = _two_readings(said.marks) if kind == "what" and said.what else None
    if two:
        said.marks, after = two
        yield from _flush(said)
        said.what, said.marks = str(name), after
    yield from _flush(said)
    if kind == "what" and not two:
        said.what, said.named = str(name), words
        if name in OF_WALL:
            said.things = ()
    elif kind == "thing":
        said.things, said.what, said.named = tuple(name), "", words  # type: ignore[arg-type]


def _two_readings(marks: list[_Mark]) -> tuple[list[_Mark], list[_Mark]] | None:
    """Two readings that ran together, "thirty and a quarter thirty six", where they can be parted in one way alone."""
    if len(marks) > RUN_AT_MOST or _is_reading(marks):
        return None
    parted = [(marks[:at], marks[at:]) for at in range(1, len(marks))]
    found = [two for two in parted if all(map(_is_reading, two))]
    return found[0] if len(found) == 1 else None


def _is_reading(marks: Sequence[_Mark]) -> bool:
    try:
        parse_reading(_written(marks))
    except EngineError:
        return False
    return True


def _at_wall(marks: Sequence[_Mark], at: int, room: Room, said: _Said) -> tuple[_Said, int]:
    """The wall whose number follows; where none does it is the wall in hand, and what follows is a reading."""
    word = marks[at].text if at < len(marks) else ""
    number, after = _number_at(marks, at)
    like = ""
    if number is None and word in SOUNDS_LIKE:
        number, after, like = SOUNDS_LIKE[word], at + 1, word
    wall = next((one for one in room.walls if one.number == number), None)
    if wall is None:
        return _Said(said.wall, named="wall"), at
    return _Said(wall, like, named=f"{wall.name},"), after


def _number_at(marks: Sequence[_Mark], at: int) -> tuple[int | None, int]:
    if at >= len(marks):
        return None, at
    word = marks[at].text
    if word.isascii() and word.isdigit():
        return int(word[:9]), at + 1
    if word in TENS:
        hyphen = at + 1 < len(marks) and marks[at + 1].text == "-"
        ones = at + 1 + hyphen
        one = UNITS.get(marks[ones].text, 0) if ones < len(marks) else 0
        return (TENS[word] + one, ones + 1) if 0 < one < 10 else (TENS[word], at + 1)
    return (UNITS[word], at + 1) if word in UNITS else (None, at)


def _named_at(marks: Sequence[_Mark], at: int, wall: Wall | None) -> tuple[tuple[str, object, str], int] | None:
    """The longest name of a thing or a figure that stands here, and where it ends."""
    if marks[at].kind != "word":
        return None
    names: dict[str, tuple[str, object]] = {}
    for what, phrases in SAID_AS.items():
        names |= dict.fromkeys(phrases, ("what", what))
    names |= {name: ("thing", ids) for name, ids in _things(wall).items()}
    longest = max(len(name.split()) for name in names)
    for count in range(min(longest, len(marks) - at), 0, -1):
        words = " ".join(mark.text for mark in marks[at : at + count])
        if words in names:
            return (*names[words], words), at + count
    return None


def _things(wall: Wall | None) -> dict[str, tuple[str, ...]]:
    """What stands in a wall by its name, and by its kind all that are of it."""
    if wall is None:
        return {}
    things: list[Opening | Obstacle] = [*wall.openings, *wall.obstacles]
    found: dict[str, tuple[str, ...]] = {}
    for thing in things:
        kinds = {thing.name, thing.kind, "opening" if thing.kind == "cased" else thing.kind}
        for name in {plain_words(kind) for kind in kinds} - {""}:
            found[name] = (*found.get(name, ()), thing.id)
    return found


# ---- understood ------------------------------------------------------------------------------------------------------


def _understand(said: _Said, rows: Sequence[Row], bare: str) -> Heard:
    text = _written(said.marks)
    length = _with_unit(text, bare)
    heard = " ".join(filter(None, (said.named, text)))
    if said.wall is None:
        return Heard(heard, text, None, None, say("heard-no-wall"))
    wall = said.wall
    figures = [row.figure for row in rows if row.figure.wall == wall.id and row.figure.what in SAID_AS]
    candidates = _candidates(said, wall, figures)
    if not text:
        return Heard(heard, text, None, None, say("heard-no-figure"))
    if len(candidates) == 1:
        only = candidates[0]
        written = _without_number(text, wall, only) if only.what in CORNERS else length
        return _read(heard, written, only, wall, said.like)
    doubt = say("heard-which") if candidates else say("heard-none-such", number=wall.number)
    values = {one: _value(text if one.what in CORNERS else length, one.what, wall) for one in candidates or figures}
    first = next((value for value, _ in values.values() if value is not None), None)
    if first is None:
        return Heard(heard, text, None, None, _value(text, "length", wall)[1])
    # A length and an angle of the same words are shown otherwise: what may be one is not offered as the other.
    alike = tuple(one for one, (value, _) in values.items() if type(value) is type(first))
    return Heard(heard, text if isinstance(first, Corner) else length, None, first, doubt, alike)


def _with_unit(text: str, bare: str) -> str:
    try:
        return write_units(text) if bare == MILLIMETERS else text
    except EngineError:  # it is told what is wrong with it when it is read
        return text


def _candidates(said: _Said, wall: Wall, figures: Sequence[Figure]) -> list[Figure]:
    of = said.things or (wall.id,)
    whats = ALSO.get(said.what, (said.what,)) if said.what else () if said.things else ("length",)
    here = [one for one in figures if one.of in of]
    if whats:
        named = [one for one in here if one.what in whats]
        if not named and not said.things:
            # "Thirty wide" on a wall with one window: whose it is was not said.
            named = [one for one in figures if one.what in whats]
            return named if len(named) != 1 else [*named, *(one for one in here if one not in named)]
        return named
    return here


def _read(heard: str, text: str, figure: Figure, wall: Wall, like: str) -> Heard:
    value, why = _value(text, figure.what, wall)
    if value is None:
        return Heard(heard, text, None, None, why)
    if like:
        doubt = say("heard-sounds-like", word=like, number=wall.number)
        return Heard(heard, text, None, value, doubt, (figure,))
    if figure.what == "length" and isinstance(value, Length) and value < ONE_INCH:
        return Heard(heard, text, None, value, say("heard-so-short"), (figure,))
    return Heard(heard, text, figure, value)


def _value(text: str, what: str, wall: Wall) -> tuple[Length | Corner | None, str]:
    try:
        if what not in CORNERS:
            return parse_reading(text).measured, ""
        turn = "inside" if what in ("left_corner", "right_corner") else wall.turn
        return read_corner(turn, _degrees(text)), ""
    except EngineError as error:
        return None, error.message


def _degrees(text: str) -> str:
    """Degrees in words as a gauge would have them written: "ninety one and a half" as 91.5."""
    try:
        tokens = [one for one in gather_numbers(read_marks(text), text) if one.text not in ("degrees", "and")]
    except EngineError:
        return text
    if not tokens or any(one.kind not in ("number", "decimal", "fraction") for one in tokens):
        return text
    total = sum((one.value for one in tokens), Fraction(0))
    decimals = f"{float(total):.3f}".rstrip("0").rstrip(".")
    return decimals if len(tokens) <= 2 and Fraction(decimals) == total else text


def _without_number(text: str, wall: Wall, figure: Figure) -> str:
    """A corner goes by its number too: "corner two, ninety-one"."""
    if figure.what not in ("corner", "ceiling_corner"):
        return text
    marks = _read_marks(text)
    number, after = _number_at(marks, 0)
    return _written(marks[after:]) if number == wall.number and after < len(marks) else _degrees(text)


def _written(marks: Sequence[_Mark]) -> str:
    """The marks as a text, with a space wherever there was one."""
    text = ""
    for place, mark in enumerate(marks):
        apart = place and marks[place - 1].end < mark.at
        text += f" {mark.text}" if apart else mark.text
    return text


def _compared(part: Heard, rows: Sequence[Row], said: dict[tuple[str, str], Length | Corner | None]) -> Heard:
    """In doubt where it differs from what was read of it, or said of it in the same breath."""
    if part.figure is None:
        return part
    key = (part.figure.of, part.figure.what)
    before = next((row for row in rows if (row.figure.of, row.figure.what) == key), None)
    doubt = ""
    if key in said and _differ(said[key], part.value):
        doubt = say("heard-twice")
    elif before and before.value is not None and _differ(before.value, part.value):
        doubt = say("heard-differs", before=", ".join(one.text for one in before.taken if one.strike is None))
    said.setdefault(key, part.value)
    return Heard(part.heard, part.text, None, part.value, doubt, (part.figure,)) if doubt else part


def _differ(one: Length | Corner | None, other: Length | Corner | None) -> bool:
    if isinstance(one, Length) and isinstance(other, Length):
        return abs(one - other) > AGREE
    if isinstance(one, Corner) and isinstance(other, Corner):
        return abs(one.degrees - other.degrees) > 1
    return False
