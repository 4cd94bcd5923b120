"""Battens: upright strips at equal spacing along one wall, or along what doors, windows and cabinets leave of it.

What one wall is given is said of that wall: battens.width, .height, and either .count or .most_gap. Each mark is taken
from the left end of its stretch, from the exact pitch and rounded by itself. A batten that would lie on an outlet is
told, with the counts that would not. Plates and boxes are the electrician's business; here they are only kept clear of.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from scantling.engine.errors import EngineError, quote
from scantling.engine.standard import profile_name
from scantling.engine.survey.room import Obstacle, Problem, Room, Wall
from scantling.engine.tape.lengths import SIXTY_FOURTH, ZERO, Length, format_bare, format_length, parse_length
from scantling.engine.trim.doubt import Doubt
from scantling.engine.trim.ends import End
from scantling.engine.trim.own.spacing import (
    ENDS,
    Clash,
    Hazard,
    Spacing,
    check_clashes,
    derive_others,
    derive_spacing,
    derive_spacing_by_gap,
)
from scantling.engine.trim.piece import Flag, Kind, Piece, Step
from scantling.engine.trim.runs.course import Course
from scantling.engine.trim.runs.run import Run, derive_runs
from scantling.engine.trim.told.tolerance import MARK, READING
from scantling.engine.words import any_of, say

#: What a wall may be told of its battens; the thickness is only for the profile's name.
SETTINGS = ("count", "most_gap", "width", "thickness", "height", "ends", "avoid")
COURSE = Course(openings=("door", "cased", "window"))
THICKNESS, AVOID = "3/4", "outlet, switch"
MOST_BATTENS = 200


class BattenError(EngineError):
    family = "batten"


@dataclass(frozen=True, slots=True)
class BattensWanted:
    """How a wall is to have its battens, as read from its settings."""

    width: Length
    height: Length
    thickness: Length
    count: int | None
    most_gap: Length | None
    ends: str
    avoid: tuple[str, ...]

    @property
    def profile(self) -> str:
        return profile_name("batten", self.thickness, self.width)


@dataclass(frozen=True, slots=True)
class BattenStretch:
    """The battens of one stretch of wall: how they are spaced, what they land on, and counts that clear it."""

    run: Run
    spacing: Spacing
    avoid: tuple[Obstacle, ...]
    clashes: tuple[Clash, ...]
    clear: tuple[int, ...]


def derive_battens(room: Room) -> tuple[list[Piece], list[Problem]]:
    """The battens of every wall that is given some, and what cannot be made of them."""
    pieces: list[Piece] = []
    problems: list[Problem] = []
    for wall in room.walls:
        if not is_battened(wall):
            continue
        try:
            wanted = read_wanted(wall)
            rows = derive_batten_rows(room, wall, wanted)
            pieces += (piece for row in rows for piece in _derive_pieces(wanted, row))
        except EngineError as error:
            problems.append(Problem(wall.id, error.key, error.message))
            continue
        problems += _check_avoided(wall, wanted, rows)
    return pieces, problems


def is_battened(wall: Wall) -> bool:
    """Whether anything was said of battens on a wall."""
    return any(name.startswith("battens.") and str(value).strip() for name, value in wall.settings.items())


def read_wanted(wall: Wall) -> BattensWanted:
    """A wall's settings of battens, understood. Raises `BattenError`."""
    given = {name: str(wall.settings.get(f"battens.{name}") or "").strip() for name in SETTINGS}
    if not (given["width"] and given["height"] and bool(given["count"]) != bool(given["most_gap"])):
        raise BattenError("incomplete", wall=wall.name)
    ends = given["ends"] or "item"
    if ends not in ENDS:
        raise _bad(wall, "ends", BattenError("not-ends", text=quote(ends), ends=", ".join(ENDS)))
    return BattensWanted(
        width=_length(wall, "width", given),
        height=_length(wall, "height", given),
        thickness=_length(wall, "thickness", {"thickness": given["thickness"] or THICKNESS}),
        count=_count(wall, given["count"]) if given["count"] else None,
        most_gap=_length(wall, "most_gap", given) if given["most_gap"] else None,
        ends=ends,
        avoid=tuple(word.strip().lower() for word in (given["avoid"] or AVOID).split(",") if word.strip()),
    )


def _length(wall: Wall, name: str, given: Mapping[str, str]) -> Length:
    try:
        length = parse_length(given[name])
        if not length:
            raise BattenError("nothing")
        return length
    except EngineError as error:
        raise _bad(wall, name, error) from error


def _count(wall: Wall, text: str) -> int:
    if not (text.isascii() and text.isdigit() and len(text) <= 4):
        raise _bad(wall, "count", BattenError("not-a-count", text=quote(text)))
    return int(text)


def _bad(wall: Wall, name: str, error: EngineError) -> BattenError:
    said, field = say(f"batten-setting-{name}"), f"battens.{name}"
    refusal = BattenError("bad-setting", wall=wall.name, name=said, sentence=error.message, field=field)
    refusal.key = error.key
    return refusal


def derive_batten_rows(room: Room, wall: Wall, wanted: BattensWanted) -> list[BattenStretch]:
    """A row for each stretch of the wall. Raises `BattenError`."""
    course = replace(COURSE, tall=wanted.height)
    runs = [run for run in derive_runs(room, course, lambda _: wanted.thickness)[0] if run.wall is wall]
    if wanted.count is not None and len(runs) > 1:
        raise BattenError("by-gap", wall=wall.name.capitalize(), stretches=len(runs))
    rows: list[BattenStretch] = []
    for run in runs:
        try:
            rows.append(_derive_row(run, wanted))
        except EngineError as error:
            refusal = BattenError("row", wall=wall.name, sentence=error.message)
            refusal.key = error.key
            raise refusal from error
    count = sum(row.spacing.count for row in rows)
    if count > MOST_BATTENS:
        raise BattenError("too-many", wall=wall.name, count=count)
    return rows


def _derive_row(run: Run, wanted: BattensWanted) -> BattenStretch:
    if wanted.count is not None:
        spacing = derive_spacing(run.back, wanted.width, wanted.count, wanted.ends)
    else:
        assert wanted.most_gap is not None
        spacing = derive_spacing_by_gap(run.back, wanted.width, wanted.most_gap, wanted.ends)
    avoid = tuple(_avoided(run, wanted))
    hazards = [_hazard(run, thing) for thing in avoid]
    clashes = tuple(check_clashes(spacing, hazards))
    others = derive_others(spacing, wanted.most_gap) if clashes else ()
    clear = tuple(other.count for other in others if not check_clashes(other, hazards))
    return BattenStretch(run, spacing, avoid, clashes, clear)


def _is_avoided(wanted: BattensWanted, thing: Obstacle) -> bool:
    return any(word in thing.kind.lower() for word in wanted.avoid)


def _avoided(run: Run, wanted: BattensWanted) -> Iterator[Obstacle]:
    for thing in run.wall.obstacles:
        if _is_avoided(wanted, thing) and thing.at and thing.width:
            end = thing.at.largest + thing.width.largest
            if thing.at.smallest < run.start + run.back and end > run.start:
                yield thing


def _hazard(run: Run, thing: Obstacle) -> Hazard:
    """What to keep clear of, from the left end of the stretch: as wide as its readings may make it."""
    assert thing.at is not None
    assert thing.width is not None
    return Hazard(thing.at.smallest - run.start, thing.width.largest + thing.at.spread)


def _check_avoided(wall: Wall, wanted: BattensWanted, rows: Sequence[BattenStretch]) -> Iterator[Problem]:
    for thing in wall.obstacles:
        if rows and _is_avoided(wanted, thing) and not (thing.at and thing.width):
            error = BattenError("unplaced", thing=thing.name, wall=wall.name)
            yield Problem(wall.id, error.key, error.message)


def _derive_pieces(wanted: BattensWanted, row: BattenStretch) -> Iterator[Piece]:
    run, spacing = row.run, row.spacing
    stretch = f", {run.place}" if run.place else ""
    for number, mark in enumerate(spacing.marks, start=1):
        yield Piece(
            key=f"batten {run.key} {number}",
            kind=Kind.BATTEN,
            part="batten",
            place=f"{say('number-of', number=number, count=spacing.count)}{stretch}",
            profile=wanted.profile,
            wall=run.wall.id,
            wall_number=run.wall.number,
            back=wanted.height,
            left=End("square", say("meets-floor-side")),
            right=End("square", say("meets-ceiling-side")),
            doubt=Doubt.of(MARK),
            working=tuple(_working(wanted, row, mark)),
            flags=tuple(_clash_flags(row, number)),
            start=run.start + mark,
        )


def _working(wanted: BattensWanted, row: BattenStretch, mark: Length) -> Iterator[Step]:
    spacing = row.spacing
    yield Step(say("batten-tall"), wanted.height)
    yield Step(say("batten-stretch", count=spacing.count), spacing.span)
    span, width = _exactly(spacing.span), _exactly(spacing.width)
    yield Step(say("batten-gap", span=span, count=spacing.count, width=width, gaps=spacing.gaps), spacing.gap)
    yield Step(say("batten-edge", out=format_length(READING + MARK, SIXTY_FOURTH)), mark)
    if row.run.start != ZERO:
        yield Step(say("batten-edge-from-corner"), row.run.start + mark)


def _exactly(length: Length) -> str:
    return format_bare(length, SIXTY_FOURTH)


def _clash_flags(row: BattenStretch, number: int) -> Iterator[Flag]:
    for clash in row.clashes:
        if clash.item == number:
            thing, over = row.avoid[clash.avoid].name, format_length(clash.over, SIXTY_FOURTH)
            told = say("batten-clash-always", over=over, thing=thing)
            if row.clear:
                told = say("batten-clash", over=over, thing=thing, counts=any_of(map(str, row.clear)))
            yield Flag("clash", told)
