"""Moldings that run along walls: what one is, and how each run of it becomes a piece.

Its back, along the wall, is fixed by the run; its face is longer or shorter by what its ends give. Molded stock is
coped inside and mitered outside; square-edged stock may be butted inside (NAVEDTRA 14044). It dies square into casing.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import partial

from scantling.engine.standard import Standard
from scantling.engine.survey.room import Problem, Room, Wall
from scantling.engine.tape.angles import Corner, derive_front_minus_back
from scantling.engine.tape.lengths import SIXTY_FOURTH, ZERO, Length, format_length
from scantling.engine.trim.doubt import Doubt
from scantling.engine.trim.ends import SCALE, End, derive_butt, derive_cope, derive_miter, derive_run_through
from scantling.engine.trim.footprint import LEFT, RIGHT
from scantling.engine.trim.moldings.bow import flag_bow, flag_bow_of_crown
from scantling.engine.trim.moldings.rake import find_skirt, meet_rake, rake_end
from scantling.engine.trim.moldings.stick import actual_thickness, check_stick
from scantling.engine.trim.piece import Kind, Piece, Step
from scantling.engine.trim.runs.compound import lean_end
from scantling.engine.trim.runs.course import FLOOR, Course
from scantling.engine.trim.runs.flags import Seen, derive_flags, say_too_long
from scantling.engine.trim.runs.lean import derive_corner_lean, lean_blade
from scantling.engine.trim.runs.order import Placed, derive_order
from scantling.engine.trim.runs.returns import derive_return, derive_return_end, is_returned, lap_over
from scantling.engine.trim.runs.reveal import derive_arris_end, derive_reveals, find_bare
from scantling.engine.trim.runs.run import (
    AIR,
    ARRIS,
    CASING,
    CORNER,
    FACE,
    OBSTACLE,
    OPEN,
    SCARF,
    Bound,
    Run,
    RunError,
    Term,
    derive_runs,
)
from scantling.engine.trim.runs.scarf import (
    choose_studs,
    derive_lap,
    derive_scarf_end,
    fitting_order,
    move_joint,
    say_rule,
    say_studs,
    split_run,
)
from scantling.engine.trim.runs.working import derive_working
from scantling.engine.trim.told.stock import is_too_long
from scantling.engine.trim.told.tolerance import MARK, READING
from scantling.engine.words import all_of, say


@dataclass(frozen=True, slots=True)
class Molding:
    """A molding as a room is given it. `kind` is its name among the settings, `part` what a piece of it is called.

    `thickness` is how far it stands out from what it lies on, `width` how far it reaches up or down that. `spring`
    makes it lean between wall and ceiling: its thickness is then its projection. One that lies `on_base` follows the
    face of the base; of one that `meets` another board in a corner the thickness may differ from wall to wall.
    `under` is what it lies on or beside: it is not joined on the same studs.
    """

    kind: Kind
    part: str
    profile: str
    thickness: Length
    width: Length
    inside: str
    course: Course
    spring: Fraction | None = None
    on_base: bool = False
    meets: bool = False
    under: tuple[Molding, ...] = ()

    @property
    def springs_in(self) -> bool:
        """Whether a board of it that is coped at both ends is cut long, to spring in."""
        return self.spring is not None and self.inside == "cope"

    def thickness_along(self, room: Room, wall: Wall) -> Length:
        """How thick it is along a wall: what the board to its left `meets` round the corner, or else the standard's."""
        actual = actual_thickness(wall, self.kind) if self.spring is None else None
        return actual or self.nominal_along(room, wall)

    def nominal_along(self, room: Room, wall: Wall) -> Length:
        """The same by the standard, whatever its boards there were found to be: by it they are bought."""
        return nominal_base_along(room, wall) if self.meets else self.thickness

    def corner_of(self, wall: Wall) -> Corner:
        """The corner at a wall's right end: at the ceiling for what leans there, where it was read there."""
        return (wall.ceiling_corner if self.spring is not None else None) or wall.corner_or_square

    def stands_out(self, room: Room, wall: Wall) -> Length:
        """How far its face is from the wall."""
        return self.behind(room, wall) + self.thickness_along(room, wall)

    def behind(self, room: Room, wall: Wall) -> Length:
        """How thick what it lies on is."""
        return base_thickness_along(room, wall) if self.on_base else ZERO


def base_thickness_along(room: Room, wall: Wall) -> Length:
    """How thick the base of a wall is."""
    return actual_thickness(wall, Kind.BASE) or nominal_base_along(room, wall)


def nominal_base_along(room: Room, wall: Wall) -> Length:
    """How thick the base of a wall is to be: what the board to its left meets round the corner, or the standard's."""
    before = room.before(wall)
    return (before.meets if before else None) or room.standard.base_thickness


def derive_molding(room: Room, molding: Molding) -> tuple[list[Piece], list[Problem]]:
    """A room's pieces of one molding in fitting order, and the walls that leave no room for a piece."""
    whole, problems = derive_whole(room, molding)
    problems = (*problems, *(problem for wall in room.walls for problem in check_stick(wall, molding.kind)))
    pieces: list[Piece] = []
    for placed, piece in whole:
        for part in _of_boards(room, molding, placed, piece):
            thick = molding.thickness_along(room, placed.run.wall)
            pieces += [
                part,
                *derive_return(part, thick),
                *derive_reveals(placed.run, part, thick, molding.behind(room, placed.run.wall)),
            ]
    return pieces, list(problems)


def runs_of(room: Room, molding: Molding) -> tuple[tuple[Run, ...], tuple[Problem, ...]]:
    """Where a molding runs in a room, and the walls that leave no room for it: the walk and the pieces go by both."""
    return room.derived(("runs", molding), lambda: _runs_of(room, molding))


def _runs_of(room: Room, molding: Molding) -> tuple[tuple[Run, ...], tuple[Problem, ...]]:
    runs, problems = derive_runs(room, molding.course, partial(molding.stands_out, room))
    return tuple(runs), tuple(problems)


Whole = tuple[tuple[tuple[Placed, Piece], ...], tuple[Problem, ...]]


def derive_whole(room: Room, molding: Molding) -> Whole:
    """The same, each run as if there were boards of any length."""
    return room.derived(("whole", molding), lambda: _derive_whole(room, molding))


def _derive_whole(room: Room, molding: Molding) -> Whole:
    runs, found = runs_of(room, molding)
    problems = list(found)
    if molding.on_base:
        problems = [one for one in problems if one.key != "closed-off"]  # the base behind it fills what is to be filled
    whole: list[tuple[Placed, Piece]] = []
    for placed in derive_order(list(runs), room, molding.course):
        if molding.on_base:
            placed = replace(placed, run=_on_the_base(room, placed))
        run = lap_over(room, molding.course, placed.run, molding.stands_out(room, placed.run.wall))
        run = meet_rake(run, molding.course, molding.width)
        if molding.springs_in and placed.coped_twice:
            run = _spring_in(run, room.standard.crown_spring_in)
        placed = replace(placed, run=run)
        piece = _derive_piece(room, molding, placed)
        # Less wall than its joints take: as a piece it would have a face, or a back, of less than nothing.
        if min(piece.back - piece.left.covered - piece.right.covered, piece.front) > ZERO:
            whole.append((placed, piece))
        else:
            problems.append(_too_short(molding, placed.run))
    return tuple(whole), tuple(problems)


def _spring_in(run: Run, by: Length) -> Run:
    """The run of a board between two that are up, cut so much longer that it bows into place and closes its joints."""
    right = replace(run.right, terms=(*run.right.terms, Term(1, say("run-to-spring-in"), by)))
    return replace(run, right=right) if by else run


@dataclass(frozen=True, slots=True)
class Scarfed:
    """A piece that no board is so long for, where it goes, and on which studs it is joined: none, where none will do.

    `moves` are the same joints with one of them on another stud, by its number among them.
    """

    placed: Placed
    piece: Piece
    lap: Length
    taken: frozenset[Length]
    joints: tuple[Length, ...]

    def moves(self, standard: Standard, number: int) -> list[tuple[Length, ...]]:
        return move_joint(standard, self.placed.run, self.piece, self.lap, self.taken, self.joints, number)

    def boards(self, room: Room, molding: Molding) -> list[Piece]:
        """Its boards as a room has them joined."""
        return _of_boards(room, molding, self.placed, self.piece)


def scarfed_in(room: Room, molding: Molding) -> tuple[Scarfed, ...]:
    """The pieces of a molding that are made of several boards, along the walls."""
    joined = tuple((key, one.studs) for key, one in sorted(room.joined.items()))
    whole = derive_whole(room, molding)[0]
    found = room.derived(("scarfed", molding, joined), lambda: [_scarf(room, molding, *one) for one in whole])
    return tuple(one for one in found if one.joints)


def _scarf(room: Room, molding: Molding, placed: Placed, piece: Piece) -> Scarfed:
    standard, run = room.standard, placed.run
    if not is_too_long(standard, piece):
        return Scarfed(placed, piece, ZERO, frozenset(), ())
    lap = derive_lap(molding.thickness_along(room, run.wall), standard.base_scarf)
    taken = frozenset(stud for under in molding.under for one in scarfed_in(room, under)
                      if one.piece.wall == run.wall.id for stud in one.joints)  # fmt: skip
    chosen = room.joined.get(piece.key)
    joints = chosen.studs if chosen else choose_studs(standard, run, piece, lap, taken)
    return Scarfed(placed, piece, lap, taken, joints)


def _of_boards(room: Room, molding: Molding, placed: Placed, piece: Piece) -> list[Piece]:
    """The piece as it is, or scarfed of several where no board is so long."""
    one = _scarf(room, molding, placed, piece)
    if not one.joints:
        return [piece]
    parts = split_run(molding.course, placed.run, one.joints, one.lap, placed.door)
    why = room.joined[piece.key].why if piece.key in room.joined else say_rule(room.standard)
    step = Step(say("joined-where", where=say_studs(one.joints), why=why), of_end=True)
    boards = (_derive_piece(room, molding, replace(placed, run=part)) for part in fitting_order(parts, placed.door))
    return [replace(board, working=(*board.working, step)) for board in boards]


def _too_short(molding: Molding, run: Run) -> Problem:
    key = "too-short" if run.back > ZERO else "no-wall-left"
    between, by = all_of((run.left.name, run.right.name)), format_length(run.back, SIXTY_FOURTH)
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
        by = _base_gives(room, run.wall, wall, joined) if wall else _face_takes(bound)
        if find_bare(run, LEFT if sign < 0 else RIGHT):
            by = base_thickness_along(room, run.wall)
        term = Term(sign if by.inches > 0 else -sign, say("run-on-base", what=bound.name), abs(by))
        bounds.append(replace(bound, terms=(*bound.terms, term)) if by else bound)
    return replace(run, left=bounds[0], right=bounds[1])


def _face_takes(bound: Bound) -> Length:
    """How much farther than at the wall what fills a corner reaches where the base ends, so that it ends square."""
    lean = bound.stop.lean if bound.stop else ZERO
    return -lean if lean > ZERO else ZERO


def _base_gives(room: Room, along: Wall, wall: Wall, joined: bool) -> Length:
    """How much farther the base's face reaches than the wall it stands along, in the corner at the right of `wall`."""
    own, corner = base_thickness_along(room, along), wall.corner_or_square
    other = base_thickness_along(room, wall if along is not wall else room.after(wall) or wall)
    if joined:
        return derive_front_minus_back(own, corner, other)
    return derive_run_through("", corner, own, own).grows if corner.turn == "inside" else ZERO


def _derive_piece(room: Room, molding: Molding, placed: Placed) -> Piece:
    run = placed.run
    left, right = (_derive_end(room, molding, placed, side) for side in (LEFT, RIGHT))
    piece = Piece(
        key=f"{molding.part} {run.key}",
        kind=molding.kind,
        part=molding.part,
        place=run.place,
        profile=_profile(room, molding, run.wall),
        wall=run.wall.id,
        wall_number=run.wall.number,
        back=run.back - left.taken - right.taken,
        left=left,
        right=right,
        doubt=_derive_doubt(run, (left, right)),
        working=(*derive_working(run, left, right), *_lines(molding)),
        flags=(),
        start=run.start + left.taken,
        too_long=say_too_long(run.wall),
    )
    seen = Seen(molding.course, molding.stands_out(room, run.wall), _walls_at(room, run), molding.spring is not None)
    flags = derive_flags(room, seen, placed, piece)
    if molding.spring is not None:
        flags = (*flags, *flag_bow_of_crown(run.wall, piece))
    elif not molding.on_base:
        flags = (*flags, *flag_bow(room.standard, run.wall, piece, molding.thickness_along(room, run.wall)))
    return replace(piece, flags=flags)


def _lines(molding: Molding) -> Iterator[Step]:
    """Of a leaning molding, where its two edges lie: what a line is snapped by on the wall and on the ceiling."""
    if molding.spring is not None and molding.course.down is not None:
        down, out = (format_length(one, SIXTY_FOURTH) for one in (molding.course.down, molding.thickness))
        yield Step(say("lines-to-snap", down=down, out=out), of_end=True)


def _profile(room: Room, molding: Molding, wall: Wall) -> str:
    """Its profile; a board of another thickness is another profile, for it is bought as one."""
    thickness = molding.nominal_along(room, wall)
    return molding.profile if thickness == molding.thickness else room.standard.base_profile_of(thickness)


def _derive_end(room: Room, molding: Molding, placed: Placed, side: str) -> End:
    """One end of a run, by what it comes up against there."""
    run, at_left = placed.run, side == LEFT
    bound, wall = (run.left if at_left else run.right), _walls_at(room, run)[not at_left]
    own = molding.thickness_along(room, run.wall)
    reach: Fraction | float = Fraction(0)
    if bound.kind == SCARF:
        end = derive_scarf_end(run, side, own, room.standard.base_scarf, (placed.door == LEFT) == (side == RIGHT))
    elif bound.kind == ARRIS:
        end = derive_arris_end(run, side, own)
    elif bound.kind in (FACE, OBSTACLE):
        end = _derive_end_at_thing(bound, flat=molding.on_base)
    elif wall is None:
        returned = is_returned(room, bound.kind, molding.stands_out(room, run.wall))
        end = derive_return_end(bound.name, own) if returned else End("square", bound.name, open=bound.kind == OPEN)
    else:
        joins = placed.joins_left if at_left else placed.joins_right
        is_up = placed.left_is_up if at_left else placed.right_is_up
        beyond = wall if at_left else room.after(wall) or wall
        other = molding.thickness_along(room, beyond) if joins else own
        corner = molding.corner_of(wall)
        turns = (placed.turn_left if at_left else placed.turn_right) if molding.inside != "miter" else ""
        joint = _derive_end_in_corner(molding, bound, corner, (own, other), joins, is_up)
        end = replace(joint, at=wall.id, turns=turns)
        reach = derive_corner_lean(corner, run.wall.leans, beyond.leans)
    if bound.kind == CASING:
        end = replace(end, into_casing=True)
    if molding.spring is None and bound.kind not in (SCARF, AIR):
        end = lean_blade(end, reach + _fall_at(room, molding, run.wall, side), molding.width)
    skirt = find_skirt(run, side, molding.course)
    if skirt is not None:
        return rake_end(end, skirt, side, molding.width)
    return end if molding.spring is None else lean_end(end, molding.spring)


def _fall_at(room: Room, molding: Molding, wall: Wall, side: str) -> Fraction:
    """How much farther an end reaches for each inch up, so as to be plumb on a board that lies on a falling floor."""
    if molding.course.level != FLOOR or room.standard.base_floor != "follow":
        return Fraction(0)
    return wall.falls if side == LEFT else -wall.falls


def _derive_end_at_thing(bound: Bound, *, flat: bool) -> End:
    """Square to its wall or along the face it meets; or left long, and scribed to it."""
    stop = bound.stop
    saw, grows = (Fraction(0), ZERO) if stop is None or flat or stop.saw < SCALE else (stop.saw, -stop.lean)
    joint = "scribe" if bound.scribed else "square"
    return End(joint, bound.name, saw, grows, caulked=bound.clearance > ZERO)


def _derive_end_in_corner(
    molding: Molding, bound: Bound, corner: Corner, thick: tuple[Length, Length], joins: bool, is_up: bool
) -> End:
    own, other = thick
    if not joins:
        if corner.turn == "outside":
            return derive_return_end(bound.name, own, corner)
        return derive_run_through(bound.name, corner, own, own)
    if corner.turn == "outside" or molding.inside == "miter":
        return derive_miter(bound.name, corner, own, other)
    if not is_up:
        return derive_run_through(bound.name, corner, own, other)
    derive = derive_cope if molding.inside == "cope" else derive_butt
    return derive(bound.name, corner, own, other)


def _derive_doubt(run: Run, ends: tuple[End, End]) -> Doubt:
    """Readings and mark, and what the corners' ± does to a face that is longer than the back.

    d(t·cot(W/2))/dW = t / (2·sin²(W/2)); small: 0.01 in a degree for 9/16 stock.
    """
    parts = [READING for term in run.terms if term.readings] + [MARK, run.left.lean_out, run.right.lean_out]
    for end in ends:
        if end.corner and end.grows.inches > 0:
            half = math.radians(end.corner.degrees / 2)
            by = float(end.grows.inches) * math.radians(end.corner.plus_minus) / abs(math.sin(2 * half))
            parts.append(Length.approximate(by))
    return Doubt.of(*parts)
