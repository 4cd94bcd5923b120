"""Runs of base: where along each wall base is wanted, and what its two ends come up against.

A run goes from corner to corner, less the doors (to the outer edge of their casing) and whatever base stops at.
A run that is bounded by two openings needs no wall length, so it can be cut before the wall was measured.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from scantling.engine.lengths import ZERO, Length, format_length
from scantling.engine.survey.room import Measure, Obstacle, Opening, Problem, Room, SurveyError, Wall, check_along

CORNER, CASING, OBSTACLE, OPEN = "corner", "casing", "obstacle", "open"
LEFT, RIGHT = "left", "right"


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
        """How far along the wall it starts."""
        return _along(self.left)

    @property
    def key(self) -> str:
        """Which run it is, by the ids of its wall and of what it ends at: the same whatever is read of them."""
        return f"{self.wall.id} {self.left.of or 'left end'} {self.right.of or 'right end'}"

    @property
    def place(self) -> str:
        """What tells it from another run on the same wall: left of the door, between the door and the cabinet."""
        left, right = (bound.name if bound.kind in (CASING, OBSTACLE) else "" for bound in (self.left, self.right))
        if left and right:
            return f"between {left} and {right}"
        return f"right of {left}" if left else f"left of {right}" if right else ""


def derive_runs(room: Room) -> tuple[list[Run], list[Problem]]:
    """Every run of base in the room, walking left to right, and the walls that leave no room for one."""
    runs: list[Run] = []
    problems: list[Problem] = []
    for wall in room.walls:
        # Where a wall's figures contradict each other any of them may be the wrong one: nothing is cut by them.
        for run in _runs_along(room, wall) if not is_refused(wall) else ():
            if run.back.inches > 0:
                runs.append(run)
            elif run.back.inches < 0:
                problems.append(_no_room(run))
    return runs, problems


def is_refused(wall: Wall) -> bool:
    """Whether what base goes by along a wall cannot be as it was read. Windows and what it runs over do not count."""
    openings = tuple(opening for opening in wall.openings if opening.kind != "window")
    obstacles = tuple(obstacle for obstacle in wall.obstacles if obstacle.base != "over")
    return bool(check_along(replace(wall, openings=openings, obstacles=obstacles)))


def may_yet_reach(wall: Wall, side: str) -> bool:
    """Whether it is still open if base comes to that end of a wall, for want of a reading or because one is wrong."""
    stops = base_stops_at(wall)
    unplaced = any(thing.at is None or thing.width is None for thing in stops)
    return is_refused(wall) or unplaced or (wall.length is None and (side == RIGHT or not stops))


def _no_room(run: Run) -> Problem:
    name = run.left.name if run.left.kind == CASING else run.right.name
    other = run.right.name if run.left.kind == CASING else run.left.name
    error = RunError("no-room", what=name, other=other, by=format_length(-run.back))
    return Problem(run.wall.id, error.key, error.message)


class RunError(SurveyError):
    sentences = {
        "too-short": "Between {what} there is only {by} of wall, which the joints of base take up: fill it by hand.",
        "no-room": "The casing of {what} would reach {by} past {other}: read both again, or rip the casing.",
    }


def _runs_along(room: Room, wall: Wall) -> Iterator[Run]:
    breaks = [_break(room, thing) for thing in base_stops_at(wall)]
    if any(found is None for found in breaks):
        return  # a thing not yet placed may stand anywhere along this wall
    placed = sorted((found for found in breaks if found), key=lambda found: _along(found[0]))
    before = room.before(wall)
    bound = Bound(CORNER, f"corner {before.number}", ()) if before else Bound(OPEN, "the open left end", ())
    for left_side, right_side in placed:
        yield _run(wall, bound, left_side)
        bound = right_side
    if wall.length:
        kind, name = (CORNER, f"corner {wall.number}") if room.after(wall) else (OPEN, "the open right end")
        yield _run(wall, bound, Bound(kind, name, (Term(1, wall.name, wall.length),)))


def base_stops_at(wall: Wall) -> tuple[Opening | Obstacle, ...]:
    """What breaks the base along a wall: doors and cased openings, and things it is to stop at; windows do not."""
    doors = tuple(opening for opening in wall.openings if opening.kind != "window")
    return (*doors, *(obstacle for obstacle in wall.obstacles if obstacle.base == "stops"))


def _break(room: Room, thing: Opening | Obstacle) -> tuple[Bound, Bound] | None:
    if thing.at is None or thing.width is None:
        return None
    at, width = Term(1, f"to the {thing.name}", thing.at), Term(1, f"the {thing.name}", thing.width)
    name = f"the {thing.name}"
    if isinstance(thing, Obstacle):
        return Bound(OBSTACLE, name, (at,), thing.id), Bound(OBSTACLE, name, (at, width), thing.id)
    reveal = Term(1, "reveal", room.standard.reveal)
    casing = Term(1, "casing", room.standard.casing_width)
    left = Bound(CASING, name, (at, reveal.turned(), casing.turned()), thing.id)
    return left, Bound(CASING, name, (at, width, reveal, casing), thing.id)


def _along(bound: Bound) -> Length:
    return sum((term.value * term.sign for term in bound.terms), start=ZERO)


def _run(wall: Wall, left: Bound, right: Bound) -> Run:
    """A run with what it is notched for: what stands along it, and what may, as long as its place was not read."""
    start, end = _along(left), _along(right)
    notches = (
        thing
        for thing in wall.obstacles
        if thing.base == "notch"
        and (thing.at is None or thing.width is None
             or (thing.at.smallest < end and thing.at.smallest + thing.width.smallest > start))
    )  # fmt: skip
    return Run(wall, left, right, tuple(notches))
