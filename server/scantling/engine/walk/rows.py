"""The survey as a person walks it: one row a figure, with every reading ever taken of it and what to make of them."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.errors import EngineError, plain
from scantling.engine.journal import Entry
from scantling.engine.notebook import Notebook
from scantling.engine.survey.bow import parse_bow, say_bow
from scantling.engine.survey.plumb import parse_fall, parse_plumb, say_fall, say_plumb
from scantling.engine.survey.points import parse_points
from scantling.engine.survey.read import parse_sides, read_corner
from scantling.engine.survey.room import Obstacle, Opening, Room, Wall
from scantling.engine.survey.studs import parse_studs
from scantling.engine.tape.angles import Corner, format_degrees
from scantling.engine.tape.lengths import (
    ONE_INCH,
    SIXTEENTH,
    ZERO,
    Length,
    format_length,
    parse_length,
    parse_reading,
    say_length,
)
from scantling.engine.walk.figure import Figure
from scantling.engine.walk.needs import derive_figures
from scantling.engine.words import say, say_counted

# Readings that differ by more were not of one thing: two graduations of the tape, or a degree of a corner. Common
# practice, no source.
AGREE = SIXTEENTH * 2
AGREE_DEGREES = Fraction(1)
# Walls do not meet as sharply as this: 9 was typed for 90. Common practice, no source.
TOO_SHARP = Fraction(30)
# Three sides are another way to read a corner.
FIGURE = {"sides": "corner"}
TITLES = {"left", "right", "at", "sash", "ceiling_corner", "sill", "depth"}
# Depths of a window's jambs, a row of points to a reading.
DEPTH = "depth_"
# Corners of an opening's head: always inside ones, and read by gauge.
HEAD_CORNERS = ("left_corner", "right_corner")


@dataclass(frozen=True, slots=True)
class Taken:
    """One reading of a figure: as typed, as understood or why not; `strike` names the strike in force against it."""

    entry: str
    text: str
    strike: str | None
    shown: str
    words: str
    error: str | None = None
    value: Length | Corner | None = None


@dataclass(frozen=True, slots=True)
class Row:
    """`state`: wanted, read, check (look at it again), spare (nothing uses it)."""

    figure: Figure
    taken: tuple[Taken, ...]
    state: str
    note: str
    value: Length | Corner | None


def derive_rows(notebook: Notebook, room: Room, nearest: Length = SIXTEENTH) -> list[Row]:
    """A row for every figure of the room that is wanted or was ever read, as one walks; then those nothing asks."""
    walls = {wall.id: wall for wall in room.walls}
    figures = derive_figures(room)
    told = {(figure.of, figure.what) for figure in figures}
    unasked = (figure for wall in room.walls for figure in _unasked(notebook, wall))
    figures += [figure for figure in unasked if (figure.of, figure.what) not in told]
    return [_derive_row(notebook, walls[figure.wall], figure, nearest) for figure in figures]


def _unasked(notebook: Notebook, wall: Wall) -> Iterator[Figure]:
    """Figures that were read of a wall, or of a thing in it, whether or not anything asks for them."""
    things: list[Opening | Obstacle] = [*wall.openings, *wall.obstacles]
    for of, thing in {wall.id: "", **{thing.id: thing.name for thing in things}}.items():
        whats = [entry.body["what"] for entry in notebook.about("reading", of)]
        for what in dict.fromkeys(FIGURE.get(what, what) for what in whats):
            title = say(f"walk-title-{what}") if what in TITLES else what
            short = say("walk-of-thing", thing=thing, title=title) if thing else title
            yield Figure(of, what, wall.id, wall.number, short, "", say("walk-for-record"), used=False, read=True)


def _derive_row(notebook: Notebook, wall: Wall, figure: Figure, nearest: Length) -> Row:
    taken = tuple(_take(notebook, entry, wall, nearest) for entry in _entries(notebook, figure))
    standing = [one for one in taken if one.strike is None]
    state, note = _judge(figure, standing)
    return Row(figure, taken, state, note, _used(figure, wall, standing))


def _entries(notebook: Notebook, figure: Figure) -> list[Entry]:
    readings = notebook.about("reading", figure.of)
    return [entry for entry in readings if FIGURE.get(entry.body["what"], entry.body["what"]) == figure.what]


def _take(notebook: Notebook, entry: Entry, wall: Wall, nearest: Length) -> Taken:
    text, strike = entry.body["text"], notebook.strike_of(entry.id)
    try:
        if entry.body["what"] == "studs":
            studs = parse_studs(text, wall.length.largest if wall.length else None)
            shown = say_counted("walk-taken-studs", len(studs))
            return Taken(entry.id, text, strike, shown, f"{shown}: {plain(text)}")
        if entry.body["what"] == "plumb":
            shown = say_plumb(parse_plumb(text))
            return Taken(entry.id, text, strike, shown, shown)
        if entry.body["what"] == "bow":
            shown = say_bow(parse_bow(text))
            return Taken(entry.id, text, strike, shown, shown)
        if entry.body["what"] == "fall":
            shown = say_fall(parse_fall(text))
            return Taken(entry.id, text, strike, shown, shown)
        if entry.body["what"] in ("corner", "sides", "ceiling_corner", *HEAD_CORNERS):
            turn = "inside" if entry.body["what"] in HEAD_CORNERS else wall.turn
            corner = read_corner(turn, parse_sides(text) if entry.body["what"] == "sides" else text)
            shown = show_corner(corner)
            said = say("walk-degrees", figure=shown.removesuffix("°"))
            return Taken(entry.id, text, strike, shown, said, value=corner)
        if entry.body["what"].startswith(DEPTH):
            points = [parse_length(one, allow_negative=True) for one in parse_points(text)]
            shown, said = (", ".join(show(one, nearest) for one in points) for show in (format_length, say_length))
            return Taken(entry.id, text, strike, shown, said, value=max(points))
        reading = parse_reading(text).measured
        return Taken(
            entry.id, text, strike, format_length(reading, nearest), say_length(reading, nearest), value=reading
        )
    except EngineError as error:
        return Taken(entry.id, text, strike, "", "", error.message)


def show_corner(corner: Corner) -> str:
    """As the gauge shows it: the angle of the corner itself, inside or out, to a tenth."""
    return f"{float(corner.gauge):.1f}°"


def _judge(figure: Figure, standing: list[Taken]) -> tuple[str, str]:
    if any(one.error for one in standing):
        return "check", say("walk-not-understood")
    if not standing and figure.assumed:
        return "spare", say("walk-assumed", value=figure.assumed)
    if not standing:
        return ("wanted", say("walk-not-read")) if figure.used else ("spare", say("walk-not-used"))
    sharp = next((one for one in standing if isinstance(one.value, Corner) and one.value.gauge < TOO_SHARP), None)
    if sharp:
        return "check", say("walk-too-sharp", figure=sharp.shown)
    spread = _spread([one.value for one in standing])
    if spread:
        return "check", spread
    count = len(standing)
    often = say({1: "walk-once", 2: "walk-twice"}.get(count, "walk-often"), count=count)
    # What is no length and no angle has no figure beside its name: on paper it would be lost.
    told = [one.shown for one in standing if one.value is None]
    note = say("walk-told", what="; ".join(dict.fromkeys(told)), often=often) if told else often
    return ("read" if figure.used else "spare"), note


def _spread(values: list[Length | Corner | None]) -> str:
    lengths = [value for value in values if isinstance(value, Length)]
    spread = max(lengths, default=ZERO) - min(lengths, default=ZERO)
    if abs(spread - ONE_INCH) <= SIXTEENTH:
        return say("walk-differ-inch")
    if spread > AGREE:
        return say("walk-differ", by=format_length(spread))
    angles = [value.degrees for value in values if isinstance(value, Corner)]
    if angles and max(angles) - min(angles) > AGREE_DEGREES:
        return say("walk-differ", by=format_degrees(max(angles) - min(angles)))
    return ""


def _used(figure: Figure, wall: Wall, standing: list[Taken]) -> Length | Corner | None:
    if figure.what == "corner":
        return wall.corner
    if figure.what == "ceiling_corner":
        return wall.ceiling_corner
    if figure.what in HEAD_CORNERS:
        return _head_corner(figure, wall)
    lengths = [one.value for one in standing if isinstance(one.value, Length)]
    # A strip is ripped to the deepest point; all else is told by its smallest reading.
    return (max if figure.what.startswith(DEPTH) else min)(lengths, default=None)


def _head_corner(figure: Figure, wall: Wall) -> Corner | None:
    opening = next((one for one in wall.openings if one.id == figure.of), None)
    corner: Corner | None = getattr(opening, figure.what, None)
    return corner
