"""What a person must know before cutting a piece that runs along a wall."""

from collections.abc import Iterator
from dataclasses import dataclass

from scantling.engine.angles import SQUARE, Corner, format_degrees
from scantling.engine.lengths import SIXTY_FOURTH, ZERO, Length, format_length
from scantling.engine.standard import Standard
from scantling.engine.survey.room import Obstacle, Room, Wall
from scantling.engine.trim.order import Placed, unread_round
from scantling.engine.trim.piece import Flag, Piece
from scantling.engine.trim.runs import CASING, LEFT, RIGHT, Course
from scantling.engine.trim.tolerance import NOT_SQUARE


@dataclass(frozen=True, slots=True)
class Seen:
    """What is known of a piece besides itself: its molding's name and course, how far its face stands out from the
    wall, and the walls in whose right corner its left and right end stand.
    """

    name: str
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
        *_of_stock(room.standard, seen.name, piece),
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


def _of_ends(piece: Piece) -> Iterator[Flag]:
    ends = (piece.left, piece.right)
    out = [end.corner for end in ends if end.corner and end.joint != "square" and _is_out(end.corner)]
    if out:
        degrees = " and ".join(format_degrees(corner.gauge) for corner in out)
        yield Flag("not-square", f"Corner of {degrees}, not 90: try the setting on scrap first.", False)
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


def _of_stock(standard: Standard, name: str, piece: Piece) -> Iterator[Flag]:
    stock = standard.stock_of(piece.profile)
    longest = max((row.length - standard.end_trim for row in stock), default=piece.cut)
    if piece.cut > longest:
        yield Flag("longer-than-stock", f"Longer than any board on the list, {format_length(longest)} usable.")
    if piece.cut < standard.hold:
        yield Flag("short", "Too short to hold at the saw by hand: cut it from the end of a longer board.")


def _say_notch(thing: Obstacle, start: Length) -> str:
    if thing.at is None or thing.width is None:
        return f"Notch it for the {thing.name}, once it is read where that stands."
    near, far = thing.at.smallest - start, thing.at.largest + thing.width.largest - start
    return f"Notch it for the {thing.name}: {format_length(near)} to {format_length(far)} from the left along its back."


def _is_out(corner: Corner) -> bool:
    return abs(corner.gauge - SQUARE) >= NOT_SQUARE
