"""A surveyed room: walls from left to right as one stands inside facing them, with what was read of each.

Every reading is kept as typed. One that cannot be understood, or a survey that cannot be, is a problem on the wall it
concerns; the other walls stand.
"""

import itertools
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import Any

from scantling.engine.angles import (
    SQUARE,
    STRAIGHT,
    Corner,
    derive_corner_by_gauge,
    derive_corner_by_sides,
    parse_degrees,
)
from scantling.engine.errors import EngineError, quote
from scantling.engine.lengths import Length, format_length, parse_length
from scantling.engine.standard import OF_OPENING, Standard, derive_standard, dotted, lay_over
from scantling.engine.survey.names import name_things
from scantling.engine.survey.plumb import parse_plumb
from scantling.engine.survey.points import point_readings
from scantling.engine.survey.studs import parse_studs

TURNS = ("inside", "outside")
OPENINGS = ("door", "window", "cased")
# Where depths of jamb to wall are read, each at several points: sides from the top down, head and sill from the left.
PLACES = ("left", "right", "head", "sill")
BASE_AT = ("stops", "notch", "over")


class SurveyError(EngineError):
    sentences = {
        "not-understood": "{what}: {sentence}",
        "no-length": "{what} is nothing: measure it again.",
        "wider-than-wall": "{what} is {by} wider than its wall: measure both again.",
        "past-the-end": "{what} ends {by} past the end of the wall: measure both again.",
        "overlap": "{what} and {other} lie over each other by {by}: measure both again.",
        "other-points": "{what} was read at {one} points and at {other}: strike one of the two readings.",
        "three-sides": "{text} is not three sides: write the two along the walls, then across: 24, 24, 34 1/4.",
    }


@dataclass(frozen=True, slots=True)
class Measure:
    """Every reading of one figure, as typed and as understood, in the order they were taken."""

    name: str
    texts: tuple[str, ...]
    lengths: tuple[Length, ...]

    @property
    def smallest(self) -> Length:
        """For what goes between. Common practice, no source."""
        return min(self.lengths)

    @property
    def largest(self) -> Length:
        """For what must cover, or be kept clear of. Common practice, no source."""
        return max(self.lengths)

    @property
    def spread(self) -> Length:
        return self.largest - self.smallest


@dataclass(frozen=True, slots=True)
class Problem:
    """What is wrong, on which wall, and a sentence that ends in what to do."""

    wall: str
    key: str
    message: str


@dataclass(frozen=True, slots=True)
class Opening:
    """`left` and `right` are its heights up either side; the two corners are those of its head, seen from inside it.

    `sash`: from a window's closed sash to the plane of the wall; `depths`: from the jamb's edge to it, by place.
    `standard`: the room's, with what this opening differs in; None where that cannot be, and nothing is cut to it.
    """

    id: str
    kind: str
    name: str
    at: Measure | None
    width: Measure | None
    left: Measure | None
    right: Measure | None
    left_corner: Corner | None
    right_corner: Corner | None
    sash: Measure | None
    depths: Mapping[str, Measure]
    standard: Standard | None


@dataclass(frozen=True, slots=True)
class Obstacle:
    id: str
    kind: str
    name: str
    base: str
    at: Measure | None
    width: Measure | None
    height: Measure | None = None


@dataclass(frozen=True, slots=True)
class Wall:
    """`corner` is the one at the wall's right end, None where it has not been read; `turn` is known all the same.

    `studs` are from its left corner; `leans` is how far out of the room it goes for each inch up.
    """

    id: str
    number: int
    turn: str
    length: Measure | None
    corner: Corner | None
    corner_texts: tuple[str, ...]
    meets: Length | None
    openings: tuple[Opening, ...]
    obstacles: tuple[Obstacle, ...]
    height: Measure | None = None
    ceiling: Measure | None = None
    settings: Mapping[str, Any] = field(default_factory=dict)
    studs: Measure | None = None
    leans: Fraction = Fraction(0)
    plumb_texts: tuple[str, ...] = ()

    @property
    def name(self) -> str:
        return f"wall {self.number}"


@dataclass(frozen=True, slots=True)
class Free:
    """A piece that no rule gives: any run of stock, its length a sum as typed that may name figures of the room."""

    id: str
    name: str
    profile: str
    text: str
    count: int


@dataclass(frozen=True, slots=True)
class Room:
    """`closed`: the last wall's right end is the first wall's left end. `unused`: names that nothing here reads.

    `comes_round`: its walls turn once right round. A closed room whose walls do not is still being walked, and nobody
    knows yet what its last wall meets.
    """

    name: str
    closed: bool
    standard: Standard
    walls: tuple[Wall, ...]
    problems: tuple[Problem, ...]
    unused: tuple[str, ...] = ()
    free: tuple[Free, ...] = ()
    comes_round: bool = True

    def after(self, wall: Wall) -> Wall | None:
        """The wall to the right, round the corner."""
        if wall.number < len(self.walls):
            return self.walls[wall.number]
        return self.walls[0] if self.comes_round and len(self.walls) > 1 else None

    def before(self, wall: Wall) -> Wall | None:
        """The wall to the left, round the corner: the one whose `corner` and `meets` tell of this wall's left end."""
        if wall.number > 1:
            return self.walls[wall.number - 2]
        return self.walls[-1] if self.comes_round and len(self.walls) > 1 else None


def _texts(written: object) -> tuple[str, ...]:
    """Readings as a question gives them: none, one, or several."""
    if written is None:
        return ()
    return tuple(str(one) for one in written) if isinstance(written, list | tuple) else (str(written),)


class _Reader:
    """Reads one wall's facts, gathering what is wrong with them instead of stopping."""

    def __init__(self, wall: str) -> None:
        self.wall = wall
        self.problems: list[Problem] = []

    def refuse(self, error: EngineError) -> None:
        self.problems.append(Problem(self.wall, error.key, error.message))

    def measure(self, name: str, written: object) -> Measure | None:
        """Readings of one figure; None when none of them can be used."""
        kept: list[tuple[str, Length]] = []
        for one in _texts(written):
            try:
                kept.append((one, parse_length(one)))
            except EngineError as error:
                self.refuse(_not_understood(name, error))
        if not kept:
            return None
        return Measure(name, tuple(one for one, _ in kept), tuple(length for _, length in kept))

    def depth(self, name: str, written: object) -> Measure | None:
        """Readings of a row of points, each point by the deepest that was read of it, for wood can be planed off."""
        rows: list[tuple[str, ...]] = point_readings(written)
        kept: list[tuple[Length, ...]] = []
        for row in rows:
            try:
                kept.append(tuple(parse_length(one, allow_negative=True) for one in row))
            except EngineError as error:
                self.refuse(_not_understood(name, error))
        for other in kept[1:]:
            if len(other) != len(kept[0]):
                self.refuse(SurveyError("other-points", what=name.capitalize(), one=len(kept[0]), other=len(other)))
                return None
        if not kept:
            return None
        return Measure(
            name, tuple(", ".join(row) for row in rows), tuple(max(point) for point in zip(*kept, strict=True))
        )

    def length(self, name: str, written: object) -> Measure | None:
        measure = self.measure(name, written)
        if measure and not measure.smallest:
            self.refuse(SurveyError("no-length", what=name))
            return None
        return measure

    def studs(self, name: str, written: object, along: Measure | None) -> Measure | None:
        """Every stud of every reading; none where a reading cannot be understood, or names one past the wall's end."""
        end = along.largest if along else None
        texts = _texts(written)
        found: list[Length] = []
        try:
            for text in texts:
                found += parse_studs(text, end)
        except EngineError as error:
            self.refuse(_not_understood(name, error))
            return None
        past = [stud for stud in found if end and stud > end]
        if past:
            by = format_length(max(past) - end) if end else ""
            self.refuse(SurveyError("past-the-end", what=name.capitalize(), by=by))
        return Measure(name, texts, tuple(sorted(set(found)))) if found and not past else None

    def leans(self, name: str, written: object) -> Fraction:
        """The mean of what was read of a wall's lean; plumb until it is read."""
        read: list[Fraction] = []
        for text in _texts(written):
            try:
                read.append(parse_plumb(text))
            except EngineError as error:
                self.refuse(_not_understood(name, error))
        return sum(read, start=Fraction(0)) / len(read) if read else Fraction(0)

    def corner(self, name: str, turn: str, facts: Mapping[str, Any]) -> Corner | None:
        """The mean of what was read of a corner; several readings that differ widen its ±."""
        read: list[Corner] = []
        for written in corner_readings(facts):
            try:
                read.append(read_corner(turn, written))
            except EngineError as error:
                self.refuse(_not_understood(name, error))
        if not read:
            return None
        angles = [corner.degrees for corner in read]
        half_spread = (max(angles) - min(angles)) / 2
        plus_minus = max(half_spread, *(corner.plus_minus for corner in read))
        mean = sum(angles, start=Fraction(0)) / len(angles)
        return Corner(turn, mean, plus_minus, all(corner.exact for corner in read))


def _not_understood(what: str, error: EngineError) -> EngineError:
    refusal = SurveyError("not-understood", what=what, sentence=error.message)
    refusal.key = error.key
    return refusal


def corner_readings(facts: Mapping[str, Any]) -> list[str | tuple[str, ...]]:
    """What was read of a corner: gauge readings as texts, three sides as tuples."""
    gauge, sides = facts.get("corner"), facts.get("sides")
    by_gauge = gauge if isinstance(gauge, list | tuple) else [] if gauge is None else [gauge]
    return [*(str(one) for one in by_gauge), *_sides_readings(sides)]


def _sides_readings(sides: object) -> list[tuple[str, ...]]:
    """Three sides as one text, as a list of three, or as several such lists."""
    if isinstance(sides, list | tuple):
        several = sides if sides and isinstance(sides[0], list | tuple) else [sides] if sides else []
        return [tuple(str(side) for side in three) for three in several]
    return [] if sides is None else [parse_sides(str(sides))]


def parse_sides(text: str) -> tuple[str, ...]:
    """Three sides in one text, parted by commas or semicolons: "24, 24, 34 1/4".

    >>> parse_sides("24, 24, 34 1/4")
    ('24', '24', '34 1/4')
    """
    return tuple(part.strip() for part in text.replace(";", ",").split(","))


def read_corner(turn: str, written: str | tuple[str, ...]) -> Corner:
    """One reading of a corner, by gauge (a text) or by three sides (a tuple). Raises `EngineError`."""
    if isinstance(written, str):
        return derive_corner_by_gauge(turn, parse_degrees(written), written)
    if len(written) != 3:
        raise SurveyError("three-sides", text=quote(", ".join(written)))
    a, b, across = (parse_length(side) for side in written)
    return derive_corner_by_sides(turn, a, b, across)


def _with_boards(standard: Standard, walls: Sequence[Wall]) -> Standard:
    """The room's standard, which also knows the boards that were said for one opening's own profiles."""
    own = (one.standard for wall in walls for one in wall.openings if one.standard and one.standard != standard)
    rows = dict.fromkeys((name, row) for each in own for name, rows in each.stocks.items() for row in rows)
    found = [(name, row) for name, row in rows if not standard.stock_of(name)]
    return replace(standard, other_stock=(*standard.other_stock, *found)) if found else standard


@dataclass(frozen=True, slots=True)
class _Given:
    """The settings of a room as written, and the standard they make."""

    settings: Mapping[str, object]
    standard: Standard


def read_room(facts: Mapping[str, Any]) -> Room:
    """A room's facts, in the shape that questions and the notebook give, to the room they describe.

    Raises `EngineError` only for a standard that cannot be; what is wrong with a wall is a problem in the room.
    """
    settings = dotted(facts.get("standard") or {})
    given = _Given(settings, derive_standard(settings))
    walls: list[Wall] = []
    problems: list[Problem] = []
    for number, wall_facts in enumerate(facts.get("walls") or (), start=1):
        reader = _Reader(str(wall_facts.get("id", f"w{number}")))
        wall = _read_wall(reader, number, wall_facts, given)
        walls.append(wall)
        problems += reader.problems
        problems += check_along(wall)
    free = tuple(
        Free(str(one["id"]), str(one["name"]), str(one["profile"]), str(one["text"]), int(one["count"]))
        for one in facts.get("free") or ()
    )
    closed = bool(facts.get("closed", True))
    return Room(
        str(facts.get("name", "")), closed, _with_boards(given.standard, walls), tuple(walls), tuple(problems),
        free=free, comes_round=closed and derive_turned(walls) is None,
    )  # fmt: skip


def derive_turned(walls: Sequence[Wall]) -> Fraction | None:
    """How far the walls turn to the right in all, where that cannot be once round; an unread corner counts as square.

    Half of a square corner is let pass, for a corner read wrong is told of by closure; and as much for each unread.
    """
    square = {"inside": SQUARE, "outside": 3 * SQUARE}
    corners = [wall.corner.degrees if wall.corner else square[wall.turn] for wall in walls]
    turned = sum((STRAIGHT - corner for corner in corners), start=Fraction(0))
    unread = sum(wall.corner is None for wall in walls)
    return turned if abs(turned - 2 * STRAIGHT) >= (1 + unread) * SQUARE / 2 else None


def _read_wall(reader: _Reader, number: int, facts: Mapping[str, Any], given: _Given) -> Wall:
    corner = facts.get("corner") or {}
    turn = corner.get("turn", "inside")
    found = [*(facts.get("openings") or ()), *(facts.get("obstacles") or ())]
    names = name_things([(_called(one), _left_edge(one)) for one in found])
    named = list(zip(found, names, strict=True))
    openings = [_read_opening(reader, one, name, given) for one, name in named[: len(facts.get("openings") or ())]]
    obstacles = [
        Obstacle(str(one["id"]), one["kind"], name, one.get("base", "stops"),
                 reader.measure(f"{name} from the left", one.get("at")),
                 reader.length(f"{name} width", one.get("width")),
                 reader.length(f"{name} height", one.get("height")))
        for one, name in named[len(openings) :]
    ]  # fmt: skip
    meets = reader.length("the board it meets", corner.get("meets"))
    length = reader.length(f"wall {number}", facts.get("length"))
    return Wall(
        id=reader.wall,
        number=number,
        turn=turn,
        length=length,
        corner=reader.corner(f"corner {number}", turn, corner),
        corner_texts=tuple(one if isinstance(one, str) else ", ".join(one) for one in corner_readings(corner)),
        meets=meets.smallest if meets else None,
        openings=tuple(openings),
        obstacles=tuple(obstacles),
        settings=facts.get("settings") or {},
        height=reader.length(f"wall {number}, to the ceiling", facts.get("height")),
        ceiling=reader.length(f"wall {number}, along the ceiling", facts.get("ceiling")),
        studs=reader.studs(f"studs of wall {number}", facts.get("studs"), length),
        leans=reader.leans(f"wall {number}, out of plumb", facts.get("plumb")),
        plumb_texts=_texts(facts.get("plumb")),
    )


def _called(facts: Mapping[str, Any]) -> str:
    return "cased opening" if facts["kind"] == "cased" else str(facts["kind"])


def _left_edge(facts: Mapping[str, Any]) -> Length | None:
    written = facts.get("at")
    for one in written if isinstance(written, list | tuple) else [written]:
        try:
            return parse_length(str(one))
        except EngineError:
            continue  # told where it is read
    return None


def _read_opening(reader: _Reader, facts: Mapping[str, Any], name: str, given: _Given) -> Opening:
    at_left, at_right = facts.get("head_corners") or (None, None)
    depths = {
        place: reader.depth(f"{name}, depth at the {place}", (facts.get("depths") or {}).get(place)) for place in PLACES
    }
    return Opening(
        id=str(facts["id"]),
        kind=facts["kind"],
        name=name,
        at=reader.measure(f"{name} from the left", facts.get("at")),
        width=reader.length(f"{name} width", facts.get("width")),
        left=reader.length(f"{name} height at the left", facts.get("left")),
        right=reader.length(f"{name} height at the right", facts.get("right")),
        left_corner=reader.corner(f"{name}, left corner of the head", "inside", {"corner": at_left}),
        right_corner=reader.corner(f"{name}, right corner of the head", "inside", {"corner": at_right}),
        sash=reader.length(f"{name}, sash to wall", facts.get("sash")),
        depths={place: depth for place, depth in depths.items() if depth},
        standard=_read_own(reader, name, dotted(facts.get("settings") or {}), given),
    )


def _read_own(reader: _Reader, name: str, said: Mapping[str, object], given: _Given) -> Standard | None:
    """The standard of one opening; None, and a problem, where what was said of it cannot be."""
    own = {key: value for key, value in said.items() if key.startswith(OF_OPENING)}
    try:
        return derive_standard(lay_over(given.settings, own)) if own else given.standard
    except EngineError as error:
        reader.refuse(_not_understood(name.capitalize(), error))
        return None


@dataclass(frozen=True, slots=True)
class _Span:
    name: str
    start: Length
    end: Length


def check_along(wall: Wall) -> list[Problem]:
    """What cannot be along one wall: something past its end, or two things in one place."""
    problems = []
    things: list[Opening | Obstacle] = [*wall.openings, *wall.obstacles]
    for thing in things:
        if wall.length and thing.width and not thing.at and thing.width.smallest > wall.length.largest:
            by = format_length(thing.width.smallest - wall.length.largest)
            problems.append(SurveyError("wider-than-wall", what=f"The {thing.name}", by=by))
    for span in _spans(things):
        if wall.length and span.end > wall.length.largest:
            past = format_length(span.end - wall.length.largest)
            problems.append(SurveyError("past-the-end", what=span.name.capitalize(), by=past))
    # Under a window anything may stand; only two openings, or two things on the floor, cannot be in one place.
    on_floor: list[Opening | Obstacle] = [*wall.obstacles]
    on_floor += [opening for opening in wall.openings if opening.kind != "window"]
    pairs = [*itertools.pairwise(_spans(wall.openings)), *itertools.pairwise(_spans(on_floor))]
    for left, right in dict.fromkeys(pairs):
        if left.end > right.start:
            by = format_length(left.end - right.start)
            problems.append(SurveyError("overlap", what=left.name.capitalize(), other=right.name, by=by))
    return [Problem(wall.id, error.key, error.message) for error in problems]


def _spans(things: Sequence[Opening | Obstacle]) -> list[_Span]:
    found = (
        _Span(f"the {thing.name}", thing.at.largest, thing.at.largest + thing.width.largest)
        for thing in things
        if thing.at and thing.width
    )
    return sorted(found, key=lambda span: (span.start, span.end, span.name))
