"""What a person must know before cutting a piece that runs along a wall."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.standard import Standard
from scantling.engine.survey.kinds import is_plate
from scantling.engine.survey.room import Obstacle, Room, Wall
from scantling.engine.tape.angles import SQUARE, Corner, format_degrees
from scantling.engine.tape.lengths import SIXTEENTH, SIXTY_FOURTH, ZERO, Length, format_length
from scantling.engine.trim.ends import End
from scantling.engine.trim.footprint import LEFT, RIGHT, Band, find_unread_depths
from scantling.engine.trim.piece import Flag, Piece
from scantling.engine.trim.runs.course import FLOOR, Course
from scantling.engine.trim.runs.order import Placed, unread_round
from scantling.engine.trim.runs.returns import LAP, is_notched
from scantling.engine.trim.runs.reveal import flag_reveals
from scantling.engine.trim.runs.run import CASING, OPEN, SCARF
from scantling.engine.trim.told.tolerance import NOT_SQUARE
from scantling.engine.words import all_of, say

# How tall the plate of an outlet or a switch is. Common practice, no source.
PLATE = Length(Fraction(9, 2))
# So little wall is no place for a board: a strip marked in the gap fills it, or caulk. Common practice, no source.
NARROW = Length(Fraction(3, 4))
# A corner that far from square shows in a miter of boards that stand. Common practice, no source.
STANDING_OUT = Fraction(1)


@dataclass(frozen=True, slots=True)
class Seen:
    """What is known of a piece besides itself: its molding's course, how far its face stands out from the wall, and the
    walls in whose right corner its left and right end stand. `at_ceiling`: its corners are best read up there.
    """

    course: Course
    stands_out: Length
    corners: tuple[Wall | None, Wall | None]
    at_ceiling: bool = False


def derive_flags(room: Room, seen: Seen, placed: Placed, piece: Piece) -> tuple[Flag, ...]:
    """Every flag of one piece."""
    run = placed.run
    narrow = Flag("narrow", say("run-narrow", by=format_length(run.back, SIXTY_FOURTH)))
    return (
        *([narrow] if run.back < NARROW else []),
        *_unread(room, seen, placed),
        *_of_ends(piece, run.wall),
        *_of_floor(room.standard, seen, run.wall, piece),
        *_proud(room.standard, seen, placed, piece),
        *flag_reveals(run),
        *_plates(seen, placed, piece),
        *_of_light(placed, piece),
        *_of_scarf(placed, piece),
        *(Flag("notch", _say_notch(thing, run.start + piece.left.taken), False) for thing in run.notches),
    )


def _unread(room: Room, seen: Seen, placed: Placed) -> Iterator[Flag]:
    for wall in seen.corners:
        if wall and seen.at_ceiling and wall.ceiling_corner is None and wall.corner:
            yield Flag("corner-at-floor", say("run-corner-at-floor", number=wall.number), False)
        if wall and wall.corner is None and not (seen.at_ceiling and wall.ceiling_corner):
            yield Flag("corner-unread", say("run-corner-unread", number=wall.number))
    for side in (LEFT, RIGHT):
        beyond = unread_round(room, placed.run, side, seen.course)
        if beyond:
            yield Flag("neighbor-unread", say("run-neighbor-unread", wall=beyond.name.capitalize()))
        for thing in find_unread_depths(room, placed.run.wall, side, seen.stands_out):
            yield Flag("depth-unread", say(f"run-depth-{side}", thing=thing.name))
    if room.closed and OPEN in (placed.run.left.kind, placed.run.right.kind):
        yield Flag("not-walked-round", say("run-not-round"))


def _of_floor(standard: Standard, seen: Seen, wall: Wall, piece: Piece) -> Iterator[Flag]:
    """What is done with a board on a floor that falls along it."""
    fall = Length(wall.falls * piece.back.inches)
    if seen.course.level != FLOOR or seen.course.up or abs(fall) < SIXTEENTH:
        return
    low, by = RIGHT if fall > ZERO else LEFT, format_length(abs(fall))
    yield Flag("floor-falls", say(f"falls-{low}-{standard.base_floor}", by=by), False)


def _of_ends(piece: Piece, wall: Wall) -> Iterator[Flag]:
    ends = (piece.left, piece.right)
    out = [end.corner for end in ends if end.corner and end.joint == "miter" and _is_out(end.corner, end)]
    if out:
        degrees = all_of(format_degrees(corner.gauge) for corner in out)
        yield Flag("not-square", say("miter-not-square", degrees=degrees), False)
    for side, end in zip((LEFT, RIGHT), ends, strict=True):
        if end.taper and end.bevel is not None:
            longer, by = "top" if end.taper > ZERO else "foot", format_length(abs(end.taper), SIXTY_FOURTH)
            known = {"side": say(f"side-{side}"), "bevel": format_degrees(end.bevel), "by": by}
            if end.raked:
                yield Flag("rake", say(f"at-rake-{longer}", meets=end.meets, **known), False)
                continue
            why = "on-falling-floor" if wall.falls else "out-of-plumb"
            yield Flag("out-of-plumb", say(f"{why}-{longer}", **known), False)
    if all(end.joint == "cope" for end in ends):
        yield Flag("coped-twice", say("coped-twice"), False)


def _proud(standard: Standard, seen: Seen, placed: Placed, piece: Piece) -> Iterator[Flag]:
    """Where its face stands out past the casing it dies into: eased back to it, unless it was set otherwise."""
    by = seen.stands_out - standard.casing_thickness
    bounds = ((placed.run.left, piece.left), (placed.run.right, piece.right))
    sides = [name for name, (bound, end) in zip((LEFT, RIGHT), bounds, strict=True)
             if bound.kind == CASING and end.joint == "square"]  # fmt: skip
    if by > ZERO and sides:
        known = {"by": format_length(by, SIXTY_FOURTH), "ends": all_of(say(f"side-{side}") for side in sides)}
        if is_notched(standard, seen.course):
            deep = format_length(standard.casing_thickness, SIXTY_FOURTH)
            told = say("proud-notched", along=format_length(LAP), deep=deep, **known)
        else:
            told = say("proud-butted" if standard.proud_end == "butted" else "proud-eased", **known)
        yield Flag("proud", told, False)


def _plates(seen: Seen, placed: Placed, piece: Piece) -> Iterator[Flag]:
    """The plates of outlets and switches that it would cross, as far as their height was read."""
    wall, start = placed.run.wall, placed.run.start
    for thing in wall.obstacles:
        if not is_plate(thing.kind) or not (thing.height and thing.at and thing.width):
            continue
        near, far = thing.at.smallest - start, thing.at.largest + thing.width.largest - start
        band = Band(max(ZERO, thing.height.smallest - PLATE), thing.height.largest)
        if near < piece.back and far > ZERO and seen.course.meets(wall, band):
            span = {"near": format_length(near), "far": format_length(far)}
            yield Flag("plate", say("crosses-plate", thing=thing.name, **span))


def say_too_long(wall: Wall) -> str:
    """The key of the sentence that no board is so long, of what runs along a wall."""
    return "longer-than-stock-read-studs" if wall.studs is None else "longer-than-stock-no-stud"


def _of_light(placed: Placed, piece: Piece) -> Iterator[Flag]:
    """Why it is this piece that is coped, where the light has it so."""
    ends = ((LEFT, piece.left), (RIGHT, piece.right))
    sides = [side for side, end in ends if side in placed.unlit and end.joint == "cope"]
    if len(sides) == 2:
        yield Flag("light", say("coped-twice-for-light"), False)
    elif sides:
        yield Flag("light", say("coped-for-light", side=say(f"side-{sides[0]}")), False)


def _of_scarf(placed: Placed, piece: Piece) -> Iterator[Flag]:
    """What is done at a scarf; the board that laps over another is the one to fit to what is left."""
    bounds = ((placed.run.left, piece.left), (placed.run.right, piece.right))
    for side, (bound, end) in zip((LEFT, RIGHT), bounds, strict=True):
        if bound.kind == SCARF:
            lies = "over" if end.long_edge in (end.edges[1], "none") else "under"
            told = say(f"{lies}-scarf-lit" if placed.lit else f"{lies}-scarf", side=say(f"side-{side}"))
            yield Flag("scarf", told, False)


def _say_notch(thing: Obstacle, start: Length) -> str:
    if thing.at is None or thing.width is None:
        return say("notch-for-unplaced", thing=thing.name)
    near, far = thing.at.smallest - start, thing.at.largest + thing.width.largest - start
    where = {"near": format_length(near), "far": format_length(far)}
    up = thing.height and format_length(thing.height.largest)
    span = say("notch-at-up", up=up, **where) if up else say("notch-at", **where)
    if thing.clearance:
        return say("notch-for-wider", thing=thing.name, span=span, wider=format_length(thing.clearance))
    return say("notch-for", thing=thing.name, span=span)


def _is_out(corner: Corner, end: End) -> bool:
    """Whether a miter is worth a try on scrap: what leans between wall and ceiling sooner than what stands."""
    return abs(corner.gauge - SQUARE) >= (NOT_SQUARE if end.nested is not None else STANDING_OUT)
