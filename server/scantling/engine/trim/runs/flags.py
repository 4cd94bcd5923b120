"""What a person must know before cutting a piece that runs along a wall."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.standard import Standard
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

# How tall the plate of an outlet or a switch is. Common practice, no source.
PLATE = Length(Fraction(9, 2))
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
    return (
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
            message = f"Corner {wall.number} was read at the floor, and that stands in for the ceiling's."
            yield Flag("corner-at-floor", message, False)
        if wall and wall.corner is None and not (seen.at_ceiling and wall.ceiling_corner):
            message = f"Corner {wall.number} has not been read and is taken as square: read it before cutting."
            yield Flag("corner-unread", message)
    for side in (LEFT, RIGHT):
        beyond = unread_round(room, placed.run, side, seen.course)
        if beyond:
            message = f"{beyond.name.capitalize()} is still to read: what comes from there may change this."
            yield Flag("neighbor-unread", message)
        for thing in find_unread_depths(room, placed.run.wall, side, seen.stands_out):
            message = f"The {thing.name} round its {side} corner may stand in the way here: read how deep it is."
            yield Flag("depth-unread", message)
    if room.closed and OPEN in (placed.run.left.kind, placed.run.right.kind):
        message = "The room has not been walked round yet: do not cut the end that nothing is known beyond."
        yield Flag("not-walked-round", message)


def _of_floor(standard: Standard, seen: Seen, wall: Wall, piece: Piece) -> Iterator[Flag]:
    """What is done with a board on a floor that falls along it."""
    fall = Length(wall.falls * piece.back.inches)
    if seen.course.level != FLOOR or seen.course.up or abs(fall) < SIXTEENTH:
        return
    by, (high, low) = format_length(abs(fall)), (LEFT, RIGHT) if fall > ZERO else (RIGHT, LEFT)
    how = {
        "follow": "it lies on the floor, its top out of level by as much",
        "scribe": f"set it level and scribe its foot: {by} off at the {high}, nothing at the {low}",
        "taper": f"rip its foot in a straight line, {by} off at the {high} to nothing at the {low}",
    }[standard.base_floor]
    yield Flag("floor-falls", f"The floor falls {by} to the {low} along it: {how}.", False)


def _of_ends(piece: Piece, wall: Wall) -> Iterator[Flag]:
    ends = (piece.left, piece.right)
    out = [end.corner for end in ends if end.corner and end.joint == "miter" and _is_out(end.corner, end)]
    if out:
        degrees = " and ".join(format_degrees(corner.gauge) for corner in out)
        yield Flag("not-square", f"Corner of {degrees}, not 90: try the setting on scrap first.", False)
    for side, end in zip((LEFT, RIGHT), ends, strict=True):
        if end.taper and end.bevel is not None:
            longer, shorter = ("top", "foot") if end.taper > ZERO else ("foot", "top")
            by = format_length(abs(end.taper), SIXTY_FOURTH)
            if end.raked:
                message = f"Its {side} meets {end.meets} at half its rake: lean the blade {format_degrees(end.bevel)}, "
                yield Flag("rake", f"{message}{by} longer at the {longer} than at the {shorter}.", False)
                continue
            why = "end is cut plumb on the falling floor" if wall.falls else "corner is out of plumb"
            message = f"Its {side} {why}: {by} longer at the {longer} than at the {shorter}."
            yield Flag("out-of-plumb", f"{message} Lean the blade {format_degrees(end.bevel)}.", False)
    if all(end.joint == "cope" for end in ends):
        yield Flag("coped-twice", "Coped at both ends: fit it when both its neighbors are up.", False)


def _proud(standard: Standard, seen: Seen, placed: Placed, piece: Piece) -> Iterator[Flag]:
    """Where its face stands out past the casing it dies into: eased back to it, unless it was set otherwise."""
    by = seen.stands_out - standard.casing_thickness
    bounds = ((placed.run.left, piece.left), (placed.run.right, piece.right))
    sides = [name for name, (bound, end) in zip((LEFT, RIGHT), bounds, strict=True)
             if bound.kind == CASING and end.joint == "square"]  # fmt: skip
    if by > ZERO and sides:
        ends = " and ".join(sides)
        how = f"ease its {ends} end back to it"
        if is_notched(standard, seen.course):
            deep = format_length(standard.casing_thickness, SIXTY_FOURTH)
            how = f"notch the back of its {ends} end, {format_length(LAP)} along and {deep} deep, to lie over its edge"
        elif standard.proud_end == "butted":
            how = f"its {ends} end is butted, and stays proud"
        yield Flag("proud", f"It stands {format_length(by, SIXTY_FOURTH)} out past the casing: {how}.", False)


def _plates(seen: Seen, placed: Placed, piece: Piece) -> Iterator[Flag]:
    """The plates of outlets and switches that it would cross, as far as their height was read."""
    wall, start = placed.run.wall, placed.run.start
    for thing in wall.obstacles:
        if thing.stands or not (thing.height and thing.at and thing.width):
            continue
        near, far = thing.at.smallest - start, thing.at.largest + thing.width.largest - start
        band = Band(max(ZERO, thing.height.smallest - PLATE), thing.height.largest)
        if near < piece.back and far > ZERO and seen.course.meets(wall, band):
            where = f"{format_length(near)} to {format_length(far)} from the left"
            yield Flag("plate", f"It crosses the plate of the {thing.name}, {where}: move one of them, or notch it.")


def say_too_long(wall: Wall) -> str:
    """The key of the sentence that no board is so long, of what runs along a wall."""
    return "longer-than-stock-read-studs" if wall.studs is None else "longer-than-stock-no-stud"


def _of_light(placed: Placed, piece: Piece) -> Iterator[Flag]:
    """Why it is this piece that is coped, where the light has it so."""
    ends = ((LEFT, piece.left), (RIGHT, piece.right))
    sides = [side for side, end in ends if side in placed.unlit and end.joint == "cope"]
    if sides:
        ends_are, joints_are = ("ends are", "joints are") if len(sides) == 2 else ("end is", "joint is")
        message = f"Its {' and '.join(sides)} {ends_are} coped, so that the {joints_are} turned away from the light."
        yield Flag("light", message, False)


def _of_scarf(placed: Placed, piece: Piece) -> Iterator[Flag]:
    """What is done at a scarf; the board that laps over another is the one to fit to what is left."""
    bounds = ((placed.run.left, piece.left), (placed.run.right, piece.right))
    for side, (bound, end) in zip((LEFT, RIGHT), bounds, strict=True):
        if bound.kind == SCARF:
            over = end.long_edge in (end.edges[1], "none")
            how = (
                "laps over the board beyond, which is up: cut it to what is left" if over else "lies under: on the stud"
            )
            away = " It opens away from the light." if placed.lit else ""
            yield Flag("scarf", f"Its {side} end {how}. Glue it, and nail it to the stud.{away}", False)


def _say_notch(thing: Obstacle, start: Length) -> str:
    if thing.at is None or thing.width is None:
        return f"Notch it for the {thing.name}, once it is read where that stands."
    near, far = thing.at.smallest - start, thing.at.largest + thing.width.largest - start
    up = f", {format_length(thing.height.largest)} up" if thing.height else ""
    span = f"{format_length(near)} to {format_length(far)} from the left along its back{up}"
    wider = f", and {format_length(thing.clearance)} wider each way" if thing.clearance else ""
    return f"Notch it for the {thing.name}: {span}{wider}."


def _is_out(corner: Corner, end: End) -> bool:
    """Whether a miter is worth a try on scrap: what leans between wall and ceiling sooner than what stands."""
    return abs(corner.gauge - SQUARE) >= (NOT_SQUARE if end.nested is not None else STANDING_OUT)
