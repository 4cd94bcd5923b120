"""Runs: where along each wall a molding is wanted, and what its two ends come up against.

A run goes from corner to corner, less what its course is broken by: openings to the outer edge of their casing, and
what stands as high as it runs. A run between two openings needs no wall length, so it can be cut before that is read.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from scantling.engine.errors import EngineError
from scantling.engine.standard import STOOL
from scantling.engine.survey.plumb import LEVEL
from scantling.engine.survey.room import Measure, Obstacle, Opening, Problem, Room, SurveyError, Wall
from scantling.engine.tape.angles import scaled
from scantling.engine.tape.lengths import SIXTY_FOURTH, ZERO, Length, add_up, format_length
from scantling.engine.trim.footprint import (
    LEFT,
    RIGHT,
    Band,
    BodyRound,
    Stop,
    find_stop_round,
    things_round,
    wall_round,
)
from scantling.engine.trim.openings.heads import derive_levels
from scantling.engine.trim.openings.mulled import find_joined
from scantling.engine.trim.openings.reach import (
    derive_heights,
    derive_leg_band,
    derive_make,
    derive_reach,
    find_banded,
    find_notch,
    legs_round,
    problem_of,
)
from scantling.engine.trim.runs.course import FLOOR, HEAD, Course, StandsOut, is_refused, stops_at
from scantling.engine.trim.runs.lean import derive_corner_lean
from scantling.engine.trim.told.tolerance import READING
from scantling.engine.words import all_of, say

# FACE: of what stands round the corner, and fills it.
# Walls are read with the tape that far up from the floor.
TAPE_UP = Length(Fraction(2))
CORNER, CASING, OBSTACLE, AIR, OPEN, SCARF, FACE = "corner", "casing", "obstacle", "air", "open", "scarf", "face"
ARRIS = "arris"


@dataclass(frozen=True, slots=True)
class Term:
    """One figure in a run's length: read (then the smallest or largest counts, by its sign) or from the standard."""

    sign: int
    name: str
    figure: Measure | Length

    @property
    def value(self) -> Length:
        if isinstance(self.figure, Length):
            return self.figure
        # A run goes between things: what it is made of counts small, what is taken off it counts large.
        return self.figure.smallest if self.sign > 0 else self.figure.largest

    @property
    def counted(self) -> Length:
        """What it adds to the run, or takes off it."""
        return self.value if self.sign > 0 else -self.value

    @property
    def readings(self) -> tuple[str, ...]:
        return self.figure.texts if isinstance(self.figure, Measure) else ()

    def turned(self) -> "Term":
        return Term(-self.sign, self.name, self.figure)


@dataclass(frozen=True, slots=True)
class Bound:
    """Where a run ends: its kind, its name, and how far along the wall, as terms from the wall's left end.

    `of` is the id of the thing it ends at, empty at the wall's own end, and so before what fills the corner: a run is
    the same run when it is read how deep that is. `clearance` is what its terms keep free; `stop`, of what is before it
    there. `lean_out` is what a corner's lean leaves open of it, besides its readings.
    """

    kind: str
    name: str
    terms: tuple[Term, ...]
    of: str = ""
    clearance: Length = ZERO
    scribed: bool = False
    stop: Stop | None = None
    lean_out: Length = ZERO


@dataclass(frozen=True, slots=True)
class Run:
    wall: Wall
    left: Bound
    right: Bound
    notches: tuple[Obstacle, ...] = ()

    @property
    def terms(self) -> tuple[Term, ...]:
        return (*self.right.terms, *(term.turned() for term in self.left.terms))

    @property
    def back(self) -> Length:
        """The length along the wall."""
        return add_up(term.counted for term in self.terms)

    @property
    def start(self) -> Length:
        """How far along the wall it starts, by the readings that its length goes by."""
        return -add_up(term.counted for term in map(Term.turned, self.left.terms))

    @property
    def key(self) -> str:
        """Which run it is, by the ids of its wall and of what it ends at: the same whatever is read of them."""
        return f"{self.wall.id} {self.left.of or 'left end'} {self.right.of or 'right end'}"

    @property
    def place(self) -> str:
        """What tells it from another run on the same wall: left of the door, between the door and the cabinet."""
        left, right = (bound.name if bound.of else "" for bound in (self.left, self.right))
        if left and right:
            return say("run-between", left=left, right=right)
        return say("run-right-of", left=left) if left else say("run-left-of", right=right) if right else ""


def derive_runs(room: Room, course: Course, stands_out: StandsOut) -> tuple[list[Run], list[Problem]]:
    """Every run of a molding in the room, walking left to right, and the walls that leave no room for one."""
    runs: list[Run] = []
    problems: list[Problem] = []
    for wall in room.walls:
        if is_refused(wall, course):
            continue  # its figures contradict each other, any of them may be the wrong one: nothing is cut by them
        above = list(_above_ceiling(wall, course))
        problems += above or [*_uncased(room, wall, course), *_meets_heads(wall, course)]
        for run in [] if above else _runs_along(room, wall, course, stands_out):
            if run.back.inches > 0:
                closed_off = _is_closed_off(room, run, course, stands_out)
                problems += [_closed_off(run)] if closed_off else []
                runs += [] if closed_off else [run]
            elif run.back + run.left.clearance + run.right.clearance < ZERO and _is_casing_in_way(room, run):
                problems.append(_no_room(run))
    return runs, problems


def _above_ceiling(wall: Wall, course: Course) -> Iterator[Problem]:
    """A rail that is to be put up higher than the wall is."""
    top = course.band(wall).top
    if course.down is None and wall.height and top and top > wall.height.smallest:
        high, ceiling = format_length(top), format_length(wall.height.smallest)
        error = RunError("above-ceiling", wall=wall.name, top=high, ceiling=ceiling)
        yield Problem(wall.id, error.key, error.message)


def _meets_heads(wall: Wall, course: Course) -> Iterator[Problem]:
    """Crown that comes down over the head casing of an opening: one of the two has to be narrower."""
    bottom = course.band(wall).bottom
    for opening in wall.openings if course.down is not None and bottom else ():
        top = derive_leg_band(opening).top
        if bottom and top and top > bottom:
            down, head = format_length(bottom, SIXTY_FOURTH), format_length(top, SIXTY_FOURTH)
            error = RunError("crown-on-casing", crown=down, what=opening.name, casing=head)
            yield Problem(wall.id, error.key, error.message)


def _is_casing_in_way(room: Room, run: Run) -> bool:
    """Whether casing is what leaves no wall. Of things that stand in one place, or in a corner, the survey tells; where
    a leg is notched round what stands beside it, there is no wall and none is lacking.
    """
    ends = ((run.left, RIGHT, run.right), (run.right, LEFT, run.left))
    kinds = (run.left.kind, run.right.kind)
    return CASING in kinds and FACE not in kinds and not any(_is_notched(room, run.wall, *end) for end in ends)


def _is_notched(room: Room, wall: Wall, casing: Bound, side: str, beside: Bound) -> bool:
    opening = next((one for one in wall.openings if one.id == casing.of), None)
    if opening is None or opening.standard is None:
        return False
    notch = find_notch(room, wall, opening, side, derive_make(opening.standard, opening))
    return notch is not None and notch[0].of == beside.of


def _is_closed_off(room: Room, run: Run, course: Course, stands_out: StandsOut) -> bool:
    """Whether a run is the gap between a corner and what fills it: the board round that corner stops there."""
    for side, end, other in ((LEFT, run.left, run.right), (RIGHT, run.right, run.left)):
        found = wall_round(room, run.wall, side) if end.kind == CORNER else None
        if found and other.kind in (OBSTACLE, CASING):
            stop = find_round(room, found[0], RIGHT if side == LEFT else LEFT, course, stands_out(found[0]))
            if stop and stop.body.of == other.of:
                return True
    return False


def find_round(room: Room, wall: Wall, side: str, course: Course, deep: Length) -> Stop | None:
    """What round the corner at one end of a wall is in the way of a molding that stands out so far."""
    found = wall_round(room, wall, side)
    if found is None:
        return None
    bodies: list[BodyRound] = [*things_round(room, wall, side), *legs_round(room, wall, side)]
    return find_stop_round(found[1], [body for body in bodies if course.meets(found[0], body.band)], deep)


def _uncased(room: Room, wall: Wall, course: Course) -> Iterator[Problem]:
    """The openings in a wall beside which no casing can lie, for a molding to die into."""
    for opening in stops_at(wall, course):
        if isinstance(opening, Opening):
            try:
                _sides(room, wall, opening, course)
            except EngineError as error:
                yield problem_of(wall, opening, error)


def _sides(room: Room, wall: Wall, opening: Opening, course: Course) -> tuple[list[Term], list[Term]]:
    on_floor = course.level == FLOOR
    past = [*_horn_in_way(wall, opening, course), *_head_in_way(wall, opening, course)]
    if opening.standard and opening.id in find_banded(room):
        past.append((say("run-backband"), opening.standard.backband_width))
    left, right = (
        [Term(1, *named) for named in (*derive_reach(room, wall, opening, side, on_floor=on_floor), *past)]
        for side in (LEFT, RIGHT)
    )
    return left, right


def _horn_in_way(wall: Wall, opening: Opening, course: Course) -> list[tuple[str, Length]]:
    """The stool's horn, past the casing, where a window's sill was read to be as high as a molding runs."""
    sill, standard = derive_heights(opening)[0], opening.standard
    if opening.kind != "window" or sill is None or standard is None or standard.window_style != STOOL:
        return []
    stool = Band(sill - standard.stool_thickness, sill)
    return [(say("run-horn"), standard.stool_horn)] if standard.stool_horn and course.meets(wall, stool) else []


def _head_in_way(wall: Wall, opening: Opening, course: Course) -> list[tuple[str, Length]]:
    """What is put on a head and stands past the casing just as high as a molding runs: the farthest of it."""
    standard, tall = opening.standard, derive_heights(opening)[1]
    if standard is None or tall is None or standard.is_bare or course.level == FLOOR:
        return []
    make = derive_make(standard, opening)
    legs = tall + make.back
    levels = (one for one in derive_levels(standard, make)
              if one.past and course.meets(wall, Band(legs + one.bottom, legs + one.top)))  # fmt: skip
    out = max(levels, key=lambda one: one.past, default=None)
    return [(say("run-past-casing", what=out.name), out.past)] if out else []


def _closed_off(run: Run) -> Problem:
    """The same for all that runs there: it is told once."""
    between = all_of((run.left.name, run.right.name))
    error = RunError("closed-off", what=between, by=format_length(run.back, SIXTY_FOURTH))
    return Problem(run.wall.id, error.key, error.message)


def _no_room(run: Run) -> Problem:
    name = run.left.name if run.left.kind == CASING else run.right.name
    other = run.right.name if run.left.kind == CASING else run.left.name
    error = RunError("no-room", what=name, other=other, by=format_length(-run.back))
    return Problem(run.wall.id, error.key, error.message)


class RunError(SurveyError):
    family = "run"


def _runs_along(room: Room, wall: Wall, course: Course, stands_out: StandsOut) -> Iterator[Run]:
    things = stops_at(wall, course)
    if not all(course.is_placed(thing) for thing in things):
        return  # a thing not yet placed may stand anywhere along this wall
    breaks = [found for thing in things if (found := _break(room, wall, thing, course))]
    if len(breaks) < len(things):
        return  # an opening that no casing lies beside leaves it open where its wall's moldings end
    placed = sorted(breaks, key=lambda found: _along(found[0]))
    bound, end = (_end_of(room, wall, side, course, stands_out) for side in (LEFT, RIGHT))
    joined = find_joined(wall)
    for left_side, right_side in placed:
        if end.kind == FACE and _along(left_side) >= _along(end):
            break  # behind what fills the corner: a board that came to it would pass through that
        if (bound.of, left_side.of) not in joined:
            yield make_run(wall, bound, left_side, course)
        # What hangs over a cabinet, and no farther than that, ends nothing: the next board begins at the cabinet.
        bound = max(bound, right_side, key=_along)
    if wall.length:
        yield make_run(wall, bound, end, course)


def _end_of(room: Room, wall: Wall, side: str, course: Course, stands_out: StandsOut) -> Bound:
    """The end of a wall as a molding finds it: its corner, the face of what fills that, or nothing known."""
    at_left = side == LEFT
    terms = () if at_left or wall.length is None else (_wall_term(wall, wall.length, course),)
    before = room.before(wall) if at_left else wall
    if before is None or (not at_left and room.after(wall) is None):
        return Bound(OPEN, _open_end(room, side), terms)
    stop = find_round(room, wall, side, course, stands_out(wall))
    if stop is None:
        return _lean_out(room, wall, side, course, Bound(CORNER, say("corner", number=before.number), terms))
    body, sign = stop.body, 1 if at_left else -1
    terms = (*terms, Term(sign, body.figure, body.depth if stop.at_face else stop.along))
    return _keep_clear(Bound(FACE, body.name, terms, scribed=body.scribed, stop=stop), sign, body.clearance)


def _lean_out(room: Room, wall: Wall, side: str, course: Course, bound: Bound) -> Bound:
    """The corner as high up as the molding runs, where it is out of plumb and was read at another height."""
    at_left = side == LEFT
    other = room.before(wall) if at_left else room.after(wall)
    corner = (other if at_left else wall) if other else None
    height = _above_reading(wall, course)
    if other is None or corner is None or not height:
        return bound
    reach = derive_corner_lean(corner.corner_or_square, wall.leans, other.leans)
    by = scaled(height, reach)
    if abs(by) < SIXTY_FOURTH:
        return bound
    leans = ("away" if other.leans > 0 else "in") if other.leans else "corner"
    what = say(f"above-tape-{leans}" if height > ZERO else f"below-tape-{leans}", wall=other.name,
               high=format_length(abs(height)))  # fmt: skip
    term = Term((-1 if at_left else 1) * (1 if by > ZERO else -1), what, abs(by))
    out = scaled(abs(height), READING.inches / LEVEL) if other.plumb_texts else ZERO
    return replace(bound, terms=(*bound.terms, term), lean_out=out)


def _above_reading(wall: Wall, course: Course) -> Length:
    """How much higher a molding's lower edge is than its wall's length was read: below nothing where that is higher."""
    bottom = course.band(wall).bottom
    if course.rail in wall.at_rails:
        return ZERO
    if course.level == HEAD and wall.ceiling:
        # Read at the ceiling: crown runs there, and a picture rail as much lower as the ceiling is known to be higher.
        return course.up - wall.height.smallest if course.down is None and wall.height else ZERO
    return max(ZERO, bottom - TAPE_UP) if bottom else ZERO


def _keep_clear(bound: Bound, sign: int, clearance: Length) -> Bound:
    """The bound with what is kept free before a thing."""
    if not clearance:
        return bound
    return replace(bound, terms=(*bound.terms, Term(sign, say("run-clearance"), clearance)), clearance=clearance)


def _open_end(room: Room, side: str) -> str:
    """An end that nothing is known beyond: of a room that does not come round yet, or is not to."""
    if not room.closed:
        return say("meets-free-end")
    return say("meets-walk-began" if side == LEFT else "meets-walk-so-far")


def _wall_term(wall: Wall, length: Measure, course: Course) -> Term:
    """The wall's length where the molding runs: along the ceiling, if it was read there too."""
    if course.rail in wall.at_rails:
        return Term(1, say(f"run-along-{course.rail}", wall=wall.name), wall.at_rails[course.rail])
    if course.level == HEAD and wall.ceiling:
        return Term(1, say("run-along-ceiling", wall=wall.name), wall.ceiling)
    return Term(1, wall.name, length)


def _break(room: Room, wall: Wall, thing: Opening | Obstacle, course: Course) -> tuple[Bound, Bound] | None:
    if thing.at is None or thing.width is None:
        return None
    name = say("the-thing", thing=thing.name)
    at, width = Term(1, say("run-to-thing", thing=thing.name), thing.at), Term(1, name, thing.width)
    if isinstance(thing, Obstacle):
        kind = OBSTACLE if thing.base == "stops" or thing.hangs else AIR
        left, right = (Bound(kind, name, terms, thing.id, scribed=thing.scribed) for terms in ((at,), (at, width)))
        return _keep_clear(left, -1, thing.clearance), _keep_clear(right, 1, thing.clearance)
    try:
        to_left, to_right = _sides(room, wall, thing, course)
    except EngineError:
        return None  # told as a problem of the wall
    bare = thing.standard is not None and thing.standard.is_bare
    kind, name = (ARRIS, say("meets-arris", what=name)) if bare else (CASING, name)
    left_bound = Bound(kind, name, (at, *(term.turned() for term in to_left)), thing.id)
    return left_bound, Bound(kind, name, (at, width, *to_right), thing.id)


def _along(bound: Bound) -> Length:
    return sum((term.value * term.sign for term in bound.terms), start=ZERO)


def make_run(wall: Wall, left: Bound, right: Bound, course: Course) -> Run:
    """A run with what it is notched for: what stands along it, and what may, as long as its place was not read."""
    start, end = _along(left), _along(right)
    notches = (
        thing
        for thing in wall.obstacles
        if thing.base == "notch"
        and course.reaches(wall, thing)
        and (thing.at is None or thing.width is None
             or (thing.at.smallest < end and thing.at.smallest + thing.width.smallest > start))
    )  # fmt: skip
    return Run(wall, left, right, tuple(notches))
