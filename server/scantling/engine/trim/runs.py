"""Runs: where along each wall a molding is wanted, and what its two ends come up against.

A run goes from corner to corner, less what its course is broken by: openings to the outer edge of their casing, and
what stands as high as it runs. A run between two openings needs no wall length, so it can be cut before that is read.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from scantling.engine.errors import EngineError
from scantling.engine.lengths import ZERO, Length, format_length
from scantling.engine.survey.room import Measure, Obstacle, Opening, Problem, Room, SurveyError, Wall, check_along
from scantling.engine.trim.reach import derive_reach, problem_of

CORNER, CASING, OBSTACLE, AIR, OPEN, SCARF = "corner", "casing", "obstacle", "air", "open", "scarf"
LEFT, RIGHT = "left", "right"
FLOOR, WAIST, HEAD = "floor", "waist", "head"


@dataclass(frozen=True, slots=True)
class Course:
    """What breaks a molding as it runs along a wall.

    On the floor: whatever stands there. At the waist: what reaches so high, and nothing is cut past a thing whose
    height is unread. At the head: only what was read to reach so high; `up` is from the floor to its lower edge, or
    from the ceiling down to it, `down`.
    """

    openings: tuple[str, ...] = ("door", "cased")
    obstacles: tuple[str, ...] = ("stops",)
    level: str = FLOOR
    up: Length = ZERO
    down: Length | None = None

    def reaches(self, wall: Wall, thing: Obstacle) -> bool:
        """Whether a thing stands in its way; one of unread height does at the waist, and does not at the head."""
        if self.level == FLOOR or thing.height is None:
            return self.level != HEAD
        if self.down is None:
            return thing.height.largest > self.up
        return wall.height is not None and thing.height.largest + self.down > wall.height.smallest

    def is_placed(self, thing: Opening | Obstacle) -> bool:
        """Whether all that has to be known of a thing in the way has been read."""
        if isinstance(thing, Obstacle) and self.level == WAIST and thing.height is None:
            return False
        return thing.at is not None and thing.width is not None


BASE = Course()


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
    def readings(self) -> tuple[str, ...]:
        return self.figure.texts if isinstance(self.figure, Measure) else ()

    def turned(self) -> "Term":
        return Term(-self.sign, self.name, self.figure)


@dataclass(frozen=True, slots=True)
class Bound:
    """Where a run ends: its kind, its name, and how far along the wall, as terms from the wall's left end.

    `of` is the id of the thing it ends at, empty at the wall's own end.
    """

    kind: str
    name: str
    terms: tuple[Term, ...]
    of: str = ""


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
        return sum((term.value * term.sign for term in self.terms), start=ZERO)

    @property
    def start(self) -> Length:
        """How far along the wall it starts, by the readings that its length goes by."""
        return -sum((term.value * term.sign for term in map(Term.turned, self.left.terms)), start=ZERO)

    @property
    def key(self) -> str:
        """Which run it is, by the ids of its wall and of what it ends at: the same whatever is read of them."""
        return f"{self.wall.id} {self.left.of or 'left end'} {self.right.of or 'right end'}"

    @property
    def place(self) -> str:
        """What tells it from another run on the same wall: left of the door, between the door and the cabinet."""
        left, right = (bound.name if bound.of else "" for bound in (self.left, self.right))
        if left and right:
            return f"between {left} and {right}"
        return f"right of {left}" if left else f"left of {right}" if right else ""


def derive_runs(room: Room, course: Course = BASE) -> tuple[list[Run], list[Problem]]:
    """Every run of a molding in the room, walking left to right, and the walls that leave no room for one."""
    runs: list[Run] = []
    problems: list[Problem] = []
    for wall in room.walls:
        if is_refused(wall, course):
            continue  # its figures contradict each other, any of them may be the wrong one: nothing is cut by them
        problems += _uncased(room, wall, course)
        for run in _runs_along(room, wall, course):
            if run.back.inches > 0:
                runs.append(run)
            elif run.back.inches < 0:
                problems.append(_no_room(run))
    return runs, problems


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
    left, right = (
        [Term(1, *named) for named in derive_reach(room, wall, opening, side, on_floor=on_floor)]
        for side in (LEFT, RIGHT)
    )
    return left, right


def is_refused(wall: Wall, course: Course = BASE) -> bool:
    """Whether what a molding goes by along a wall cannot be as it was read. What does not break it does not count."""
    openings = tuple(opening for opening in wall.openings if opening.kind in course.openings)
    obstacles = tuple(thing for thing in wall.obstacles if thing.base != "over" and course.reaches(wall, thing))
    return bool(check_along(replace(wall, openings=openings, obstacles=obstacles)))


def may_yet_reach(wall: Wall, side: str, course: Course = BASE) -> bool:
    """Whether it is still open if a molding comes to that end of a wall: a reading is wanted, or one is wrong."""
    stops = stops_at(wall, course)
    unplaced = not all(course.is_placed(thing) for thing in stops)
    return is_refused(wall, course) or unplaced or (wall.length is None and (side == RIGHT or not stops))


def _no_room(run: Run) -> Problem:
    name = run.left.name if run.left.kind == CASING else run.right.name
    other = run.right.name if run.left.kind == CASING else run.left.name
    error = RunError("no-room", what=name, other=other, by=format_length(-run.back))
    return Problem(run.wall.id, error.key, error.message)


class RunError(SurveyError):
    sentences = {
        "too-short": "{part}: between {what} is only {by} of wall, which its joints take up. Fill it by hand.",
        "no-wall-left": "{part}: between {what} the base it lies on leaves no room for it.",
        "no-room": "The casing of {what} would reach {by} past {other}: read both again, or rip the casing.",
    }


def _runs_along(room: Room, wall: Wall, course: Course) -> Iterator[Run]:
    things = stops_at(wall, course)
    if not all(course.is_placed(thing) for thing in things):
        return  # a thing not yet placed may stand anywhere along this wall
    breaks = [found for thing in things if (found := _break(room, wall, thing, course))]
    if len(breaks) < len(things):
        return  # an opening that no casing lies beside leaves it open where its wall's moldings end
    placed = sorted(breaks, key=lambda found: _along(found[0]))
    before = room.before(wall)
    bound = Bound(CORNER, f"corner {before.number}", ()) if before else Bound(OPEN, _open_end(room, LEFT), ())
    for left_side, right_side in placed:
        yield make_run(wall, bound, left_side, course)
        bound = right_side
    if wall.length:
        kind, name = (CORNER, f"corner {wall.number}") if room.after(wall) else (OPEN, _open_end(room, RIGHT))
        yield make_run(wall, bound, Bound(kind, name, (_wall_term(wall, wall.length, course),)), course)


def _open_end(room: Room, side: str) -> str:
    """An end that nothing is known beyond: of a room that does not come round yet, or is not to."""
    if not room.closed:
        return f"the open {side} end"
    return "where the walk began" if side == LEFT else "where the walk has come to"


def _wall_term(wall: Wall, length: Measure, course: Course) -> Term:
    """The wall's length where the molding runs: along the ceiling, if it was read there too."""
    if course.level == HEAD and wall.ceiling:
        return Term(1, f"{wall.name}, along the ceiling", wall.ceiling)
    return Term(1, wall.name, length)


def stops_at(wall: Wall, course: Course) -> tuple[Opening | Obstacle, ...]:
    """What breaks a molding along a wall: openings of some kinds, and things that stand in its way."""
    openings = (opening for opening in wall.openings if opening.kind in course.openings)
    things = (thing for thing in wall.obstacles if thing.base in course.obstacles and course.reaches(wall, thing))
    return (*openings, *things)


def _break(room: Room, wall: Wall, thing: Opening | Obstacle, course: Course) -> tuple[Bound, Bound] | None:
    if thing.at is None or thing.width is None:
        return None
    at, width = Term(1, f"to the {thing.name}", thing.at), Term(1, f"the {thing.name}", thing.width)
    name = f"the {thing.name}"
    if isinstance(thing, Obstacle):
        kind = AIR if thing.base == "over" else OBSTACLE
        return Bound(kind, name, (at,), thing.id), Bound(kind, name, (at, width), thing.id)
    try:
        left, right = _sides(room, wall, thing, course)
    except EngineError:
        return None  # told as a problem of the wall
    left_bound = Bound(CASING, name, (at, *(term.turned() for term in left)), thing.id)
    return left_bound, Bound(CASING, name, (at, width, *right), thing.id)


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
