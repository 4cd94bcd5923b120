"""What a person must know before cutting a piece that runs along a wall."""

from collections.abc import Iterator
from dataclasses import dataclass

from scantling.engine.angles import SQUARE, Corner, format_degrees
from scantling.engine.lengths import SIXTY_FOURTH, ZERO, Length, format_length
from scantling.engine.standard import Standard
from scantling.engine.survey.room import Obstacle, Room, Wall
from scantling.engine.trim.order import Placed, unread_round
from scantling.engine.trim.piece import Flag, Piece
from scantling.engine.trim.runs import CASING, LEFT, OPEN, RIGHT, SCARF, Course
from scantling.engine.trim.scarf import is_too_long, longest_usable
from scantling.engine.trim.tolerance import NOT_SQUARE


@dataclass(frozen=True, slots=True)
class Seen:
    """What is known of a piece besides itself: its molding's course, how far its face stands out from the wall, and the
    walls in whose right corner its left and right end stand.
    """

    course: Course
    stands_out: Length
    corners: tuple[Wall | None, Wall | None]


def derive_flags(room: Room, seen: Seen, placed: Placed, piece: Piece) -> tuple[Flag, ...]:
    """Every flag of one piece."""
    run = placed.run
    return (
        *_unread(room, seen, placed),
        *_of_ends(piece),
        *_proud(room.standard, seen, placed, piece),
        *_of_stock(room.standard, run.wall, piece),
        *_of_scarf(placed, piece),
        *(Flag("notch", _say_notch(thing, run.start + piece.left.taken), False) for thing in run.notches),
    )


def _unread(room: Room, seen: Seen, placed: Placed) -> Iterator[Flag]:
    for wall in seen.corners:
        if wall and wall.corner is None:
            message = f"Corner {wall.number} has not been read and is taken as square: read it before cutting."
            yield Flag("corner-unread", message)
    for side in (LEFT, RIGHT):
        beyond = unread_round(room, placed.run, side, seen.course)
        if beyond:
            message = f"{beyond.name.capitalize()} is still to read: what comes from there may change this."
            yield Flag("neighbor-unread", message)
    if room.closed and OPEN in (placed.run.left.kind, placed.run.right.kind):
        message = "The room has not been walked round yet: do not cut the end that nothing is known beyond."
        yield Flag("not-walked-round", message)


def _of_ends(piece: Piece) -> Iterator[Flag]:
    ends = (piece.left, piece.right)
    out = [end.corner for end in ends if end.corner and end.joint != "square" and _is_out(end.corner)]
    if out:
        degrees = " and ".join(format_degrees(corner.gauge) for corner in out)
        yield Flag("not-square", f"Corner of {degrees}, not 90: try the setting on scrap first.", False)
    for side, end in zip((LEFT, RIGHT), ends, strict=True):
        if end.taper and end.bevel is not None:
            longer, shorter = ("top", "foot") if end.taper > ZERO else ("foot", "top")
            by = format_length(abs(end.taper), SIXTY_FOURTH)
            message = f"Its {side} corner is out of plumb: {by} longer at the {longer} than at the {shorter}."
            yield Flag("out-of-plumb", f"{message} Lean the blade {format_degrees(end.bevel)}.", False)
    if all(end.joint == "cope" for end in ends):
        yield Flag("coped-twice", "Coped at both ends, for want of a place to begin: fit it last.")


def _proud(standard: Standard, seen: Seen, placed: Placed, piece: Piece) -> Iterator[Flag]:
    """Where its face stands out past the casing it dies into: eased back to it, unless it is returned."""
    by = seen.stands_out - standard.casing_thickness
    bounds = ((placed.run.left, piece.left), (placed.run.right, piece.right))
    sides = [name for name, (bound, end) in zip((LEFT, RIGHT), bounds, strict=True)
             if bound.kind == CASING and end.joint == "square"]  # fmt: skip
    if by > ZERO and sides:
        ends = " and ".join(sides)
        message = f"It stands {format_length(by, SIXTY_FOURTH)} out past the casing: ease its {ends} end back to it."
        yield Flag("proud", message, False)


def _of_stock(standard: Standard, wall: Wall, piece: Piece) -> Iterator[Flag]:
    longest = longest_usable(standard, piece.profile)
    if longest is None or not is_too_long(standard, piece):
        return
    what = f"Longer than any board on the list, {format_length(longest)} usable"
    then = f", and no stud of {wall.name} is where boards so long could be joined."
    if wall.studs is None:
        then = f": read where the studs of {wall.name} are, to join it on one."
    yield Flag("longer-than-stock", what + then)


def _of_scarf(placed: Placed, piece: Piece) -> Iterator[Flag]:
    """What is done at a scarf; the board that laps over another is the one to fit to what is left."""
    bounds = ((placed.run.left, piece.left), (placed.run.right, piece.right))
    for side, (bound, end) in zip((LEFT, RIGHT), bounds, strict=True):
        if bound.kind == SCARF:
            over = end.long_edge in (end.edges[1], "none")
            how = (
                "laps over the board beyond, which is up: cut it to what is left" if over else "lies under: on the stud"
            )
            yield Flag("scarf", f"Its {side} end {how}. Glue it, and nail it to the stud.", False)


def _say_notch(thing: Obstacle, start: Length) -> str:
    if thing.at is None or thing.width is None:
        return f"Notch it for the {thing.name}, once it is read where that stands."
    near, far = thing.at.smallest - start, thing.at.largest + thing.width.largest - start
    return f"Notch it for the {thing.name}: {format_length(near)} to {format_length(far)} from the left along its back."


def _is_out(corner: Corner) -> bool:
    return abs(corner.gauge - SQUARE) >= NOT_SQUARE
