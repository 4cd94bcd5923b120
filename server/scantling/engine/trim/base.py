"""Baseboard: each run of a room to a piece with its joints, lengths and working.

The back is the length along the wall; the face is longer or shorter by what its ends give. Moulded base is coped inside
and mitered outside; square-edged base may be butted inside (NAVEDTRA 14044). Base dies square into casing.
"""

import math
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.angles import SQUARE, Corner, format_degrees
from scantling.engine.lengths import SIXTY_FOURTH, ZERO, Length, format_length
from scantling.engine.survey.room import Obstacle, Problem, Room, Wall
from scantling.engine.trim.ends import End, derive_butt, derive_cope, derive_miter, derive_run_through
from scantling.engine.trim.piece import Flag, Piece, Step
from scantling.engine.trim.runs import CORNER, LEFT, RIGHT, Bound, Run, RunError, derive_runs, may_yet_reach
from scantling.engine.trim.tolerance import MARK, NOT_SQUARE, READING


@dataclass(frozen=True, slots=True)
class _Placed:
    """A run in fitting order; at each end, whether a board comes round the corner, and whether it is up already."""

    run: Run
    joins_left: bool
    joins_right: bool
    left_is_up: bool
    right_is_up: bool


def derive_base(room: Room) -> tuple[list[Piece], list[Problem]]:
    """The room's base in fitting order, and the walls that leave no room for a piece."""
    if not room.standard.wants("base"):
        return [], []
    runs, problems = derive_runs(room)
    pieces: list[Piece] = []
    for placed in _fitting_order(runs, room):
        piece = _derive_piece(room, placed)
        # Less wall than its joints take: as a piece it would have a face, or a back, of less than nothing.
        if min(piece.back, piece.front) > ZERO:
            pieces.append(piece)
        else:
            problems.append(_too_short(placed.run))
    return pieces, problems


def _too_short(run: Run) -> Problem:
    between = f"{run.left.name} and {run.right.name}"
    error = RunError("too-short", what=between, by=format_length(run.back, SIXTY_FOURTH))
    return Problem(run.wall.id, error.key, error.message)


def _fitting_order(runs: list[Run], room: Room) -> list[_Placed]:
    """From the run farthest from the door, outward both ways: at an inside corner the later board meets the earlier.

    So the board one faces from the door runs through, those beside it are coped to it, joints open away from the door,
    and none is coped at both ends; only a room of inside corners with nothing to stop at leaves one that is. Common
    practice, no source.
    """
    after = {index: right for index in range(len(runs)) if (right := _round_the_corner(runs, index, room)) is not None}
    before = {right: left for left, right in after.items()}
    walk = _walk(runs, before)
    far = _farthest(walk, runs)
    order = sorted(range(len(walk)), key=lambda place: (abs(place - far), -place))
    rank = {walk[place]: turn for turn, place in enumerate(order)}
    return [
        _Placed(
            run=runs[index],
            joins_left=index in before or _unread_round(room, runs[index], LEFT) is not None,
            joins_right=index in after or _unread_round(room, runs[index], RIGHT) is not None,
            left_is_up=index in before and rank[before[index]] < rank[index],
            right_is_up=index in after and rank[after[index]] < rank[index],
        )
        for index in sorted(rank, key=rank.__getitem__)
    ]


def _round_the_corner(runs: list[Run], index: int, room: Room) -> int | None:
    """Which run starts in the corner that this one ends in."""
    follows = (index + 1) % len(runs)
    meets = runs[index].right.kind == CORNER and runs[follows].left.kind == CORNER
    return follows if meets and runs[follows].wall is room.after(runs[index].wall) else None


def _unread_round(room: Room, run: Run, side: str) -> Wall | None:
    """The wall round the corner, if a board may yet come from there: its joint is then allowed for.

    A board cut square to an outside corner is too short to be mitered when the wall beyond has been read.
    """
    at_left = side == LEFT
    wall = room.before(run.wall) if at_left else room.after(run.wall)
    if (run.left if at_left else run.right).kind != CORNER or wall is None:
        return None
    return wall if may_yet_reach(wall, RIGHT if at_left else LEFT) else None


def _walk(runs: list[Run], before: dict[int, int]) -> list[int]:
    """The runs from the door round to the door; without one from another break, or from an outside corner."""
    loose = [index for index in range(len(runs)) if index not in before]
    after_door = [index for index in loose if runs[index].left.name == "the door"]
    after_outside = sorted(index for index, left in before.items() if runs[left].wall.turn == "outside")
    start = next(iter([*after_door, *loose, *after_outside]), None)
    if start is None and runs:
        # All inside corners and nothing to stop at: the longest board runs through, as far from the end as can be.
        longest = max(range(len(runs)), key=lambda index: (runs[index].back, -index))
        start = (longest - len(runs) // 2) % len(runs)
    return [*range(start or 0, len(runs)), *range(start or 0)]


def _farthest(walk: list[int], runs: list[Run]) -> int:
    """The place in the middle of the walk; of the two in the middle, the longer board's."""
    middle = len(walk) // 2
    if len(walk) % 2 or not walk:
        return middle
    return middle if runs[walk[middle]].back > runs[walk[middle - 1]].back else middle - 1


def _derive_piece(room: Room, placed: _Placed) -> Piece:
    run = placed.run
    left_wall = room.before(run.wall) if run.left.kind == CORNER else None
    right_wall = run.wall if run.right.kind == CORNER else None
    own = thickness_along(room, run.wall)
    at_left = thickness_along(room, left_wall) if left_wall else own
    at_right = thickness_along(room, room.after(run.wall) or run.wall)
    left = _derive_end(room, left_wall, run.left, own, at_left, placed.joins_left, placed.left_is_up)
    right = _derive_end(room, right_wall, run.right, own, at_right, placed.joins_right, placed.right_is_up)
    corners = [wall for wall in (left_wall, right_wall) if wall]
    return Piece(
        key=f"base {run.key}",
        part="base",
        place=run.place,
        profile=room.standard.base_profile,
        wall=run.wall.id,
        wall_number=run.wall.number,
        back=run.back - left.taken - right.taken,
        left=left,
        right=right,
        plus_minus=_derive_plus_minus(run, (left, right)),
        working=_derive_working(room, run, left, right),
        flags=_derive_flags(room, run, left, right, corners),
        start=run.start + left.taken,
    )


def thickness_along(room: Room, wall: Wall) -> Length:
    """How thick the base of a wall is: what the board to its left `meets` round the corner, or else the standard's."""
    before = room.before(wall)
    return (before.meets if before else None) or room.standard.base_thickness


def corner_right_of(wall: Wall) -> Corner:
    """The corner as read; square until it has been, which the piece is flagged with."""
    return wall.corner or Corner(wall.turn, SQUARE if wall.turn == "inside" else 3 * SQUARE, Fraction(1))


def _derive_end(
    room: Room, corner_wall: Wall | None, bound: Bound, own: Length, other: Length, joins: bool, is_up: bool
) -> End:
    if corner_wall is None:
        return End("square", bound.name)
    corner = corner_right_of(corner_wall)
    if not joins:
        inside = corner.turn == "inside"
        return derive_run_through(bound.name, corner, own, own) if inside else End("square", bound.name)
    if corner.turn == "outside" or room.standard.base_inside == "miter":
        return derive_miter(bound.name, corner, own, other)
    if not is_up:
        return derive_run_through(bound.name, corner, own, other)
    if room.standard.base_inside == "cope":
        return derive_cope(bound.name, corner, own, other)
    return derive_butt(bound.name, corner, own, other)


def _derive_plus_minus(run: Run, ends: tuple[End, End]) -> Length:
    """Readings and mark at their worst, and what the corners' ± does to a face that is longer than the back.

    d(t·cot(W/2))/dW = t / (2·sin²(W/2)); small: 0.01 in a degree for 9/16 stock.
    """
    total = READING * sum(bool(term.readings) for term in run.terms) + MARK
    for end in ends:
        if end.corner and end.grows.inches > 0:
            half = math.radians(end.corner.degrees / 2)
            by = float(end.grows.inches) * math.radians(end.corner.plus_minus) / abs(math.sin(2 * half))
            total = total + Length.approximate(by)
    return total


def _derive_working(room: Room, run: Run, left: End, right: End) -> tuple[Step, ...]:
    steps = [Step(_said(room, term.name, term.sign, term.readings), term.value, term.readings) for term in run.terms]
    if len(steps) > 1:
        steps.append(Step("= along the wall", run.back))
    for side, end in (("left", left), ("right", right)):
        if end.taken:
            steps.append(Step(f"− the board it butts, at the {side}", end.taken))
        if end.corner:
            steps.append(_end_step(side, end))
    back = run.back - left.taken - right.taken
    steps.append(Step("= back", back))
    steps.append(Step("= face", back + left.grows + right.grows))
    return tuple(steps)


def _said(room: Room, name: str, sign: int, readings: tuple[str, ...]) -> str:
    source = {"reveal": room.standard.source("reveal"), "casing": room.standard.source("casing.width")}.get(name, "")
    if len(readings) > 1:
        source = f"{'smallest' if sign > 0 else 'largest'} of {len(readings)} readings"
    return f"{'+' if sign > 0 else '−'} {name}{f' ({source})' if source else ''}"


def _end_step(side: str, end: End) -> Step:
    corner = end.corner
    assert corner is not None
    saw, point = format_degrees(end.saw), format_degrees(end.point)
    where = f"{side} end, {corner.turn} corner, gauge {format_degrees(corner.gauge)}"
    if saw == "0°":
        return Step(f"{where}: square")
    gives = "longer" if end.grows.inches > 0 else "shorter"
    return Step(f"{where}: {end.joint}, saw {saw} from square (point {point}); face {gives} by", abs(end.grows))


def _derive_flags(room: Room, run: Run, left: End, right: End, corners: list[Wall]) -> tuple[Flag, ...]:
    flags = [
        Flag("corner-unread", f"Corner {wall.number} has not been read and is taken as square: read it before cutting.")
        for wall in corners
        if wall.corner is None
    ]
    flags += [
        Flag("neighbor-unread", f"{wall.name.capitalize()} is still to read: what comes from there may change this.")
        for side in (LEFT, RIGHT)
        if (wall := _unread_round(room, run, side))
    ]
    out = [end.corner for end in (left, right) if end.corner and end.joint != "square" and _is_out(end.corner)]
    if out:
        degrees = " and ".join(format_degrees(corner.gauge) for corner in out)
        flags.append(Flag("not-square", f"Corner of {degrees}, not 90: try the setting on scrap first.", False))
    if left.joint == right.joint == "cope":
        flags.append(Flag("coped-twice", "Coped at both ends, for want of a place to begin: fit it last."))
    cut = run.back + max(ZERO, left.grows) + max(ZERO, right.grows)
    longest = max((stock.length - room.standard.end_trim for stock in room.standard.base_stock), default=cut)
    if cut > longest:
        flags.append(Flag("longer-than-stock", f"Longer than any board on the list, {format_length(longest)} usable."))
    if cut < room.standard.hold:
        flags.append(Flag("short", "Too short to hold at the saw by hand: cut it from the end of a longer board."))
    flags += [Flag("notch", _say_notch(thing, run.start + left.taken), False) for thing in run.notches]
    return tuple(flags)


def _say_notch(thing: Obstacle, start: Length) -> str:
    if thing.at is None or thing.width is None:
        return f"Notch it for the {thing.name}, once it is read where that stands."
    near, far = thing.at.smallest - start, thing.at.largest + thing.width.largest - start
    return f"Notch it for the {thing.name}: {format_length(near)} to {format_length(far)} from the left along its back."


def _is_out(corner: Corner) -> bool:
    return abs(corner.gauge - SQUARE) >= NOT_SQUARE
