"""Reading a room: its facts, as questions and the notebook give them, to the room they describe.

What cannot be understood is gathered as problems on its wall, and never stops the reading of the others.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Any

from scantling.engine.errors import EngineError, quote
from scantling.engine.settings import OF_OPENING, OF_THING, derive_standard, dotted, lay_over
from scantling.engine.standard import BARE, USUAL, Standard
from scantling.engine.survey.bodies import check_bodies
from scantling.engine.survey.bow import Bow, parse_bow
from scantling.engine.survey.kinds import has_toe, hides, is_free_standing, is_laid, usual_base
from scantling.engine.survey.names import name_things
from scantling.engine.survey.plumb import parse_fall, parse_plumb
from scantling.engine.survey.points import point_readings
from scantling.engine.survey.room import (
    OPENINGS,
    PLACES,
    RAILS,
    THINGS_AT_MOST,
    WALLS_AT_MOST,
    Free,
    Measure,
    Obstacle,
    Opening,
    Problem,
    Room,
    SurveyError,
    Wall,
    check_along,
    derive_turned,
)
from scantling.engine.survey.studs import parse_studs
from scantling.engine.tape.angles import (
    Corner,
    derive_corner_by_gauge,
    derive_corner_by_sides,
    parse_degrees,
)
from scantling.engine.tape.lengths import ZERO, Length, format_length, parse_length
from scantling.engine.words import say


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

    def bows(self, name: str, written: object, along: Measure | None) -> tuple[Bow, ...]:
        """Every place where a wall was read to be off a straight line; one past its end is a problem."""
        found: list[Bow] = []
        for text in _texts(written):
            try:
                bow = parse_bow(text)
            except EngineError as error:
                self.refuse(_not_understood(name, error))
                continue
            if bow and along and bow.at >= along.largest:
                by = format_length(bow.at - along.largest)
                self.refuse(SurveyError("past-the-end", what=name.capitalize(), by=by))
            elif bow:
                found.append(bow)
        return tuple(found)

    def falls(self, name: str, written: object, along: Measure | None) -> Fraction:
        """The mean of what was read of the floor's fall along a wall, for each inch of it; level until it is read."""
        read: list[Length] = []
        for text in _texts(written):
            try:
                read.append(parse_fall(text))
            except EngineError as error:
                self.refuse(_not_understood(name, error))
        if not read or along is None:
            return Fraction(0)
        fall = sum((one.inches for one in read), start=Fraction(0)) / len(read)
        if abs(fall) * 24 > along.smallest.inches:
            self.refuse(SurveyError("falls-too-far", what=name.capitalize()))
            return Fraction(0)
        return fall / along.smallest.inches

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
class Given:
    """The settings of a room as written, and the standard they make."""

    settings: Mapping[str, object]
    standard: Standard


def read_settings(written: Mapping[str, Any]) -> Given:
    """A room's settings as its facts have them. Raises `EngineError` for a standard that cannot be."""
    settings = dotted(written)
    return Given(settings, derive_standard(settings))


def read_room(facts: Mapping[str, Any], told: Sequence[Problem] = (), given: Given | None = None) -> Room:
    """A room's facts, in the shape that questions and the notebook give, to the room they describe.

    `told` are problems that were found as the facts were gathered, `given` its settings where they have been read.

    Raises `EngineError` only for a standard that cannot be, or more than any room holds; what is wrong with a wall is
    a problem in the room.
    """
    _check_size(facts)
    given = given or read_settings(facts.get("standard") or {})
    walls: list[Wall] = []
    problems = list(told)
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
    closed = bool(facts["closed"])
    room = Room(
        str(facts.get("name", "")), closed, _with_boards(given.standard, walls), tuple(walls), tuple(problems),
        free=free, comes_round=closed and derive_turned(walls) is None,
    )  # fmt: skip
    return replace(room, problems=(*room.problems, *check_bodies(room)))


def _check_size(facts: Mapping[str, Any]) -> None:
    walls = facts.get("walls") or ()
    if len(walls) > WALLS_AT_MOST:
        raise SurveyError("too-many-walls", field="room", count=f"{len(walls):,}", most=WALLS_AT_MOST)
    things = sum(len(wall.get(kind) or ()) for wall in walls for kind in ("openings", "obstacles"))
    if things > THINGS_AT_MOST:
        raise SurveyError("too-many-things", field="room", count=f"{things:,}", most=THINGS_AT_MOST)


def _read_wall(reader: _Reader, number: int, facts: Mapping[str, Any], given: Given) -> Wall:
    corner = facts.get("corner") or {}
    turn = corner.get("turn", "inside")
    found = [*(facts.get("openings") or ()), *(facts.get("obstacles") or ())]
    names = name_things([(_called(one), _left_edge(one)) for one in found])
    named = list(zip(found, names, strict=True))
    openings = [_read_opening(reader, one, name, given) for one, name in named[: len(facts.get("openings") or ())]]
    obstacles = [_read_obstacle(reader, one, name, given) for one, name in named[len(openings) :]]
    meets = reader.length(say("board-it-meets"), corner.get("meets"))
    length = reader.length(say("wall", number=number), facts.get("length"))
    return Wall(
        id=reader.wall,
        number=number,
        turn=turn,
        length=length,
        corner=reader.corner(say("corner", number=number), turn, corner),
        corner_texts=tuple(one if isinstance(one, str) else ", ".join(one) for one in corner_readings(corner)),
        meets=meets.smallest if meets else None,
        openings=tuple(openings),
        obstacles=tuple(obstacles),
        settings=dotted(facts.get("settings") or {}),
        height=reader.length(say("wall-to-ceiling", number=number), facts.get("height")),
        ceiling=reader.length(say("wall-along-ceiling", number=number), facts.get("ceiling")),
        studs=reader.studs(say("wall-studs", number=number), facts.get("studs"), length),
        leans=reader.leans(say("wall-out-of-plumb", number=number), facts.get("plumb")),
        plumb_texts=_texts(facts.get("plumb")),
        at_rails={
            rail: read
            for rail in RAILS
            if (read := reader.length(say(f"wall-along-{rail}", number=number), facts.get(rail)))
        },
        bows=reader.bows(say("wall-bow", number=number), facts.get("bow"), length),
        bow_texts=_texts(facts.get("bow")),
        falls=reader.falls(say("floor-along-wall", number=number), facts.get("fall"), length),
        ceiling_corner=reader.corner(
            say("corner-at-ceiling", number=number), turn, {"corner": facts.get("ceiling_corner")}
        ),
    )


def _called(facts: Mapping[str, Any]) -> str:
    kind = str(facts["kind"])
    return say(f"kind-{kind}") if kind in OPENINGS else kind


def _left_edge(facts: Mapping[str, Any]) -> Length | None:
    written = facts.get("at")
    for one in written if isinstance(written, list | tuple) else [written]:
        try:
            return parse_length(str(one))
        except EngineError:
            continue  # told where it is read
    return None


def _read_opening(reader: _Reader, facts: Mapping[str, Any], name: str, given: Given) -> Opening:
    at_left, at_right = facts.get("head_corners") or (None, None)
    depths = {
        place: reader.depth(say(f"opening-depth-{place}", thing=name), (facts.get("depths") or {}).get(place))
        for place in PLACES
    }
    return Opening(
        id=str(facts["id"]),
        kind=facts["kind"],
        name=name,
        at=reader.measure(say("thing-at", thing=name), facts.get("at")),
        width=reader.length(say("thing-width", thing=name), facts.get("width")),
        left=reader.length(say("opening-left", thing=name), facts.get("left")),
        right=reader.length(say("opening-right", thing=name), facts.get("right")),
        left_corner=reader.corner(say("opening-left-corner", thing=name), "inside", {"corner": at_left}),
        right_corner=reader.corner(say("opening-right-corner", thing=name), "inside", {"corner": at_right}),
        sash=reader.length(say("opening-sash", thing=name), facts.get("sash")),
        depths={place: depth for place, depth in depths.items() if depth},
        standard=_read_own(reader, name, dotted(facts.get("settings") or {}), given),
        sill=reader.length(say("opening-sill", thing=name), facts.get("sill")),
        depth=reader.length(say("opening-depth", thing=name), facts.get("depth")),
    )


def _read_obstacle(reader: _Reader, facts: Mapping[str, Any], name: str, given: Given) -> Obstacle:
    said = dotted(facts.get("settings") or {})
    standard = _read_own(reader, name, said, given, OF_THING) or given.standard
    stands_free = is_free_standing(facts["kind"]) and not is_laid(facts["kind"])
    keeps = stands_free or "thing.clearance" in said or facts.get("base") == "notch"
    scribed = standard.thing_end == "scribed"
    return Obstacle(
        id=str(facts["id"]),
        kind=facts["kind"],
        name=name,
        base=facts.get("base") or usual_base(facts["kind"]),
        at=reader.measure(say("thing-at", thing=name), facts.get("at")),
        width=reader.length(say("thing-width", thing=name), facts.get("width")),
        height=reader.length(say("thing-height", thing=name), facts.get("height")),
        depth=reader.length(say("thing-depth", thing=name), facts.get("depth")),
        foot=reader.measure(say("thing-foot", thing=name), facts.get("sill")),
        clearance=standard.thing_clearance if keeps and not scribed else ZERO,
        scribed=scribed,
        toe=_toe_of(standard, facts["kind"], said),
        rake=standard.thing_rake,
        rises=standard.thing_rises,
        hides=hides(facts["kind"]) if standard.thing_behind == USUAL else standard.thing_behind == BARE,
    )


def _toe_of(standard: Standard, kind: str, said: Mapping[str, object]) -> tuple[Length, Length] | None:
    """The toe kick of a cabinet as the house's are, or of a thing that was given one of its own."""
    if standard.toe_height is None or not (has_toe(kind) or "toe.height" in said):
        return None
    return standard.toe_height, standard.toe_depth


def _read_own(
    reader: _Reader, name: str, said: Mapping[str, object], given: Given, may_differ: tuple[str, ...] = OF_OPENING
) -> Standard | None:
    """The standard of one opening or thing; None, and a problem, where what was said of it cannot be."""
    own = {key: value for key, value in said.items() if key.startswith(may_differ)}
    try:
        return derive_standard(lay_over(given.settings, own)) if own else given.standard
    except EngineError as error:
        reader.refuse(_not_understood(name.capitalize(), error))
        return None
