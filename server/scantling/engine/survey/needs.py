"""What is still to be read: the figures that the wanted pieces use and the survey lacks, in walking order.

Never one that nothing uses: a window does not break the base, so base asks nothing of it. What a person reads of it all
the same is kept and drawn. A head corner may be read, and is square until it is: nothing waits for it.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from scantling.engine.lengths import ZERO, Length
from scantling.engine.survey.figure import Figure
from scantling.engine.survey.openings import figures_of_casing
from scantling.engine.survey.room import Measure, Obstacle, Opening, Room, Wall
from scantling.engine.trim.moldings import derive_longer_than_stock, wanted_moldings
from scantling.engine.trim.openings import is_cased
from scantling.engine.trim.runs import (
    CORNER,
    FLOOR,
    HEAD,
    LEFT,
    RIGHT,
    WAIST,
    Course,
    Run,
    derive_runs,
    may_yet_reach,
    stops_at,
)


def derive_figures(room: Room) -> list[Figure]:
    """Every figure that can be read of the room, in walking order: along each wall, then the corner at its right."""
    courses = {molding.part: molding.course for molding in wanted_moldings(room.standard)}
    ends = {course: _Ends(course, derive_runs(room, course)[0]) for course in courses.values()}
    longer = derive_longer_than_stock(room)
    return [figure for wall in room.walls for figure in _figures_of(room, wall, courses, list(ends.values()), longer)]


def derive_needs(room: Room) -> list[Figure]:
    """The figures still wanted."""
    return [figure for figure in derive_figures(room) if figure.wanted]


@dataclass(frozen=True, slots=True)
class _Ends:
    """Whether a molding comes to the end of a wall, or may yet. A door's casing in a corner keeps it away."""

    course: Course
    runs: list[Run]

    def comes(self, wall: Wall, side: str) -> bool:
        ends = ((run.left if side == LEFT else run.right) for run in self.runs if run.wall is wall)
        return any(end.kind == CORNER for end in ends) or may_yet_reach(wall, side, self.course)

    def meet(self, wall: Wall, after: Wall) -> bool:
        """Whether what is cut at the corner of two walls depends on its angle."""
        ends = (self.comes(wall, RIGHT), self.comes(after, LEFT))
        return all(ends) if wall.turn == "outside" else any(ends)


def _figures_of(
    room: Room, wall: Wall, courses: dict[str, Course], ends: list[_Ends], longer: set[str]
) -> Iterator[Figure]:
    things: list[Opening | Obstacle] = [*wall.openings, *wall.obstacles]
    for thing in sorted(things, key=_where):
        yield from _figures_of_thing(room, wall, thing, courses)
    cased = (opening for opening in wall.openings if is_cased(opening) and room.after(wall))
    beside = next((_beside(room, wall, opening) for opening in cased), "")
    yield Figure(
        wall.id, "length", wall.id, wall.number, f"{wall.name}, along the floor",
        "Hold the tape 2 in up from the floor, corner to corner.",
        f"every piece of {_and(courses)} on this wall" if courses else beside or "the drawing only",
        used=bool(courses or beside), read=wall.length is not None,
    )  # fmt: skip
    yield from _figures_overhead(wall, {name: course for name, course in courses.items() if course.level == HEAD})
    if courses:
        yield from _figures_behind(wall, wall.id in longer)
    after = room.after(wall)
    if after:
        yield _corner_figure(wall, any(one.meet(wall, after) for one in ends))
    elif room.closed and len(room.walls) > 1:
        # Not round yet: what is beyond its last corner is to come, but the corner is there to be read.
        yield _corner_figure(wall, bool(courses))


def _figures_behind(wall: Wall, longer: bool) -> Iterator[Figure]:
    """Its studs, where something along it is longer than a board; and whether it leans, which nothing waits for."""
    if longer:
        yield Figure(
            wall.id, "studs", wall.id, wall.number, f"{wall.name}, studs",
            "From the left corner to the middle of each, as 14 1/2, 30 1/2; or 14 1/2, every 16.",
            "where boards are joined, for none is long enough", used=True, read=wall.studs is not None,
        )  # fmt: skip
    yield Figure(
        wall.id, "plumb", wall.id, wall.number, f"{wall.name}, out of plumb",
        "Hold a 24 in level upright on it by its right corner; read the gap and where it is: 1/4 top, or 1/4 foot.",
        "the ends of what stands against it", used=True, read=bool(wall.plumb_texts), assumed="plumb",
    )  # fmt: skip


def _figures_overhead(wall: Wall, courses: dict[str, Course]) -> Iterator[Figure]:
    """What may be read again up there, where walls are not as long as at the floor: nothing waits for it."""
    if courses:
        yield Figure(
            wall.id, "ceiling", wall.id, wall.number, f"{wall.name}, along the ceiling",
            "Hold the tape under the ceiling, corner to corner.", f"the {_and(courses)} on this wall",
            used=True, read=wall.ceiling is not None, assumed="along the floor",
        )  # fmt: skip
    if "crown" in courses and any(thing.height for thing in wall.obstacles):
        yield Figure(
            wall.id, "height", wall.id, wall.number, f"{wall.name}, floor to ceiling",
            "Beside the tallest thing along this wall, floor to ceiling.", "whether that breaks the crown",
            used=True, read=wall.height is not None, assumed="above all that stands here",
        )  # fmt: skip


def _and(names: Iterable[str]) -> str:
    *most, last = names
    return f"{', '.join(most)} and {last}" if most else last


def _where(thing: Opening | Obstacle) -> tuple[bool, Length, str]:
    # A thing not yet placed is asked for first: its place decides what the rest of the wall is.
    return (thing.at is not None, thing.at.smallest if thing.at else ZERO, thing.id)


def _figures_of_thing(
    room: Room, wall: Wall, thing: Opening | Obstacle, courses: dict[str, Course]
) -> Iterator[Figure]:
    base = _use_along(wall, thing, courses)
    casing = f"the casing of the {thing.name}" if isinstance(thing, Opening) and is_cased(thing) else ""
    beside = casing and _beside(room, wall, thing)
    edge = "inner face of the jamb" if isinstance(thing, Opening) else "near edge"
    across, level = ("jamb to jamb", "jamb to jamb: at the head, halfway, and at the foot")
    if isinstance(thing, Obstacle):
        across = level = "from edge to edge, at the floor"
    figures: tuple[tuple[str, Measure | None, str, str, str], ...] = (
        ("at", thing.at, f"left corner to the {thing.name}", f"From the left corner to the {edge}, 2 in up.",
         base or beside),
        ("width", thing.width, f"{thing.name}, {across}", f"Hold the tape level, {level}.", base or casing),
    )  # fmt: skip
    for what, measure, title, hint, use in figures:
        yield Figure(
            thing.id, what, wall.id, wall.number, f"{wall.name}, {title}", hint, use or "the drawing only",
            used=bool(use), read=measure is not None,
        )  # fmt: skip
    if isinstance(thing, Obstacle):
        yield from _height_figure(wall, thing, courses)
    if isinstance(thing, Opening) and casing:
        yield from figures_of_casing(wall, thing, casing)


def _beside(room: Room, wall: Wall, thing: Opening | Obstacle) -> str:
    """What the place of an opening tells its casing: how much room there is to the corner on either side."""
    ends = room.before(wall) or room.after(wall)
    return f"the room beside the casing of the {thing.name}" if ends else ""


def _use_along(wall: Wall, thing: Opening | Obstacle, courses: dict[str, Course]) -> str:
    """Which moldings need a thing's place and width; none for what they do not come to."""
    broken = [name for name, course in courses.items() if thing in stops_at(wall, course)]
    if broken:
        return f"the {_and(broken)} to the left and right of the {thing.name}"
    if isinstance(thing, Obstacle) and thing.base == "notch":
        notched = any(course.reaches(wall, thing) for course in courses.values())
        return f"the notch for the {thing.name}" if notched else ""
    return ""


def _height_figure(wall: Wall, thing: Obstacle, courses: dict[str, Course]) -> Iterator[Figure]:
    """How tall a thing is, for what runs as high: a chair rail waits for it, what runs over heads does not."""
    reached = [name for name, course in courses.items() if course.level != FLOOR and thing.base in course.obstacles]
    if not reached:
        return
    waits = any(courses[name].level == WAIST for name in reached)
    yield Figure(
        thing.id, "height", wall.id, wall.number, f"{wall.name}, {thing.name}, how tall",
        "From the floor to its top.", f"whether it breaks the {_and(reached)}",
        used=True, read=thing.height is not None, assumed="" if waits else f"lower than the {_and(reached)}",
    )  # fmt: skip


def _corner_figure(wall: Wall, used: bool) -> Figure:
    hint = {
        "inside": "Set the gauge in the corner 2 in up; or read three sides: 24 in along each wall, then across.",
        "outside": "Close the gauge round the corner 2 in up; or carry both walls on over the floor, read three sides.",
    }[wall.turn]
    joint = "miter" if wall.turn == "outside" else "joint"
    why = f"the {joint} at corner {wall.number}" if used else "the drawing only"
    title = f"corner {wall.number}, {wall.turn}"
    return Figure(wall.id, "corner", wall.id, wall.number, title, hint, why, used, wall.corner is not None)
