"""Moldings that run along walls: what one is, and how each run of it becomes a piece.

Its back, along the wall, is fixed by the run; its face is longer or shorter by what its ends give. Molded stock is
coped inside and mitered outside; square-edged stock may be butted inside (NAVEDTRA 14044). It dies square into casing.
"""

import math
from dataclasses import dataclass, replace
from fractions import Fraction

from scantling.engine.angles import SQUARE, Corner, derive_front_minus_back
from scantling.engine.lengths import SIXTY_FOURTH, ZERO, Length, format_length
from scantling.engine.survey.room import Problem, Room, Wall
from scantling.engine.trim.crown import lean_end
from scantling.engine.trim.ends import End, derive_butt, derive_cope, derive_miter, derive_run_through
from scantling.engine.trim.flags import Seen, derive_flags
from scantling.engine.trim.order import Placed, derive_order
from scantling.engine.trim.piece import Piece
from scantling.engine.trim.plumb import derive_reach, lean_blade
from scantling.engine.trim.returns import derive_return, derive_return_end, is_returned
from scantling.engine.trim.runs import BASE, CORNER, LEFT, RIGHT, SCARF, Bound, Course, Run, RunError, Term, derive_runs
from scantling.engine.trim.scarf import derive_lap, derive_scarf_end, fitting_order, is_too_long, split_run
from scantling.engine.trim.tolerance import MARK, READING
from scantling.engine.trim.working import derive_working


@dataclass(frozen=True, slots=True)
class Molding:
    """A molding as a room is given it. `name` is its name among the settings, `part` its name in a piece.

    `thickness` is how far it stands out from what it lies on, `width` how far it reaches up or down that. `spring`
    makes it lean between wall and ceiling: its thickness is then its projection. One that lies `on_base` follows the
    face of the base; of one that `meets` another board in a corner the thickness may differ from wall to wall.
    """

    name: str
    part: str
    profile: str
    thickness: Length
    width: Length
    inside: str
    course: Course = BASE
    spring: Fraction | None = None
    on_base: bool = False
    meets: bool = False

    def thickness_along(self, room: Room, wall: Wall) -> Length:
        """How thick it is along a wall: what the board to its left `meets` round the corner, or else the standard's."""
        return base_thickness_along(room, wall) if self.meets else self.thickness

    def stands_out(self, room: Room, wall: Wall) -> Length:
        """How far its face is from the wall."""
        behind = base_thickness_along(room, wall) if self.on_base else ZERO
        return behind + self.thickness_along(room, wall)


def base_thickness_along(room: Room, wall: Wall) -> Length:
    """How thick the base of a wall is."""
    before = room.before(wall)
    return (before.meets if before else None) or room.standard.base_thickness


def corner_right_of(wall: Wall) -> Corner:
    """The corner as read; square until it has been, which the piece is flagged with."""
    return wall.corner or Corner(wall.turn, SQUARE if wall.turn == "inside" else 3 * SQUARE, Fraction(1))


def derive_molding(room: Room, molding: Molding) -> tuple[list[Piece], list[Problem]]:
    """A room's pieces of one molding in fitting order, and the walls that leave no room for a piece."""
    whole, problems = derive_whole(room, molding)
    pieces: list[Piece] = []
    for placed, piece in whole:
        for part in _of_boards(room, molding, placed, piece):
            pieces += [part, *derive_return(part, molding.thickness_along(room, placed.run.wall))]
    return pieces, problems


def derive_whole(room: Room, molding: Molding) -> tuple[list[tuple[Placed, Piece]], list[Problem]]:
    """The same, each run as if there were boards of any length."""
    runs, problems = derive_runs(room, molding.course)
    whole: list[tuple[Placed, Piece]] = []
    for placed in derive_order(runs, room, molding.course):
        if molding.on_base:
            placed = replace(placed, run=_on_the_base(room, placed))
        piece = _derive_piece(room, molding, placed)
        # Less wall than its joints take: as a piece it would have a face, or a back, of less than nothing.
        if min(piece.back, piece.front) > ZERO:
            whole.append((placed, piece))
        else:
            problems.append(_too_short(molding, placed.run))
    return whole, problems


def _of_boards(room: Room, molding: Molding, placed: Placed, piece: Piece) -> list[Piece]:
    """The piece as it is, or scarfed of several where no board is so long."""
    standard, run = room.standard, placed.run
    if not is_too_long(standard, piece):
        return [piece]
    lap = derive_lap(molding.thickness_along(room, run.wall), standard.base_scarf)
    parts = split_run(standard, molding.course, run, piece, lap, placed.door)
    if len(parts) == 1:
        return [piece]
    return [_derive_piece(room, molding, replace(placed, run=part)) for part in fitting_order(parts, placed.door)]


def _too_short(molding: Molding, run: Run) -> Problem:
    key = "too-short" if run.back > ZERO else "no-wall-left"
    between, by = f"{run.left.name} and {run.right.name}", format_length(run.back, SIXTY_FOURTH)
    error = RunError(key, part=molding.part.capitalize(), what=between, by=by)
    return Problem(run.wall.id, error.key, error.message)


def _walls_at(room: Room, run: Run) -> tuple[Wall | None, Wall | None]:
    """The walls whose right corner a run's left and right ends stand in, if they stand in one."""
    left = room.before(run.wall) if run.left.kind == CORNER else None
    return left, run.wall if run.right.kind == CORNER else None


def _on_the_base(room: Room, placed: Placed) -> Run:
    """The run along the face of the base: that line ends where the faces of two boards of base cross in a corner."""
    run, bounds = placed.run, []
    joins = (placed.joins_left, placed.joins_right)
    for sign, bound, wall, joined in zip((-1, 1), (run.left, run.right), _walls_at(room, run), joins, strict=True):
        by = _base_gives(room, run.wall, wall, joined) if wall else ZERO
        term = Term(sign if by.inches > 0 else -sign, f"the face of the base in {bound.name}", abs(by))
        bounds.append(replace(bound, terms=(*bound.terms, term)) if by else bound)
    return replace(run, left=bounds[0], right=bounds[1])


def _base_gives(room: Room, along: Wall, wall: Wall, joined: bool) -> Length:
    """How much farther the base's face reaches than the wall it stands along, in the corner at the right of `wall`."""
    own, corner = base_thickness_along(room, along), corner_right_of(wall)
    other = base_thickness_along(room, wall if along is not wall else room.after(wall) or wall)
    if joined:
        return derive_front_minus_back(own, corner, other)
    return derive_run_through("", corner, own, own).grows if corner.turn == "inside" else ZERO


def _derive_piece(room: Room, molding: Molding, placed: Placed) -> Piece:
    run = placed.run
    left, right = (_derive_end(room, molding, placed, side) for side in (LEFT, RIGHT))
    piece = Piece(
        key=f"{molding.part} {run.key}",
        part=molding.part,
        place=run.place,
        profile=_profile(room, molding, run.wall),
        wall=run.wall.id,
        wall_number=run.wall.number,
        back=run.back - left.taken - right.taken,
        left=left,
        right=right,
        plus_minus=_derive_plus_minus(run, (left, right)),
        working=derive_working(room.standard, run, left, right),
        flags=(),
        start=run.start + left.taken,
    )
    seen = Seen(molding.course, molding.stands_out(room, run.wall), _walls_at(room, run))
    return replace(piece, flags=derive_flags(room, seen, placed, piece))


def _profile(room: Room, molding: Molding, wall: Wall) -> str:
    """Its profile; a board of another thickness is another profile, for it is bought as one."""
    thickness = molding.thickness_along(room, wall)
    return molding.profile if thickness == molding.thickness else room.standard.base_of(thickness)


def _derive_end(room: Room, molding: Molding, placed: Placed, side: str) -> End:
    """One end of a run, by what it comes up against there."""
    run, at_left = placed.run, side == LEFT
    bound, wall = (run.left if at_left else run.right), _walls_at(room, run)[not at_left]
    own = molding.thickness_along(room, run.wall)
    if bound.kind == SCARF:
        end = derive_scarf_end(bound, own, room.standard.base_scarf, (placed.door == LEFT) == (side == RIGHT))
    elif wall is None:
        returned = is_returned(room, bound.kind, molding.stands_out(room, run.wall))
        end = derive_return_end(bound.name, own) if returned else End("square", bound.name)
    else:
        joins = placed.joins_left if at_left else placed.joins_right
        is_up = placed.left_is_up if at_left else placed.right_is_up
        beyond = wall if at_left else room.after(wall) or wall
        other = molding.thickness_along(room, beyond) if joins else own
        corner = corner_right_of(wall)
        end = _derive_end_in_corner(molding, bound, corner, (own, other), joins, is_up)
        if molding.spring is None:
            end = lean_blade(end, derive_reach(corner, run.wall.leans, beyond.leans), molding.width)
    return end if molding.spring is None else lean_end(end, molding.spring)


def _derive_end_in_corner(
    molding: Molding, bound: Bound, corner: Corner, thick: tuple[Length, Length], joins: bool, is_up: bool
) -> End:
    own, other = thick
    if not joins:
        inside = corner.turn == "inside"
        return derive_run_through(bound.name, corner, own, own) if inside else derive_return_end(bound.name, own)
    if corner.turn == "outside" or molding.inside == "miter":
        return derive_miter(bound.name, corner, own, other)
    if not is_up:
        return derive_run_through(bound.name, corner, own, other)
    derive = derive_cope if molding.inside == "cope" else derive_butt
    return derive(bound.name, corner, own, other)


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
