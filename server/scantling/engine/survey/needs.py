"""What is still to be read: the figures that the wanted pieces use and the survey lacks, in walking order.

Never one that nothing uses: a window does not break the base, so base asks nothing of it. What a person reads of it all
the same is kept and drawn. A head corner may be read, and is square until it is: nothing waits for it.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from scantling.engine.lengths import ZERO, Length
from scantling.engine.survey.room import Measure, Obstacle, Opening, Room, Wall
from scantling.engine.trim.runs import CORNER, LEFT, RIGHT, Run, base_stops_at, derive_runs, may_yet_reach


@dataclass(frozen=True, slots=True)
class Figure:
    """One figure of the survey that pieces use: what it is, where to hold the tape, why, and what was read of it."""

    of: str
    what: str
    wall: str
    number: int
    title: str
    hint: str
    why: str
    used: bool
    read: bool
    #: What is taken in its place until it is read; nothing, where a piece has to wait for it.
    assumed: str = ""

    @property
    def short(self) -> str:
        """The title without the wall that it stands under."""
        return self.title.removeprefix(f"wall {self.number}, ")

    @property
    def wanted(self) -> bool:
        return self.used and not self.read and not self.assumed


def derive_figures(room: Room) -> list[Figure]:
    """Every figure that can be read of the room, in walking order: along each wall, then the corner at its right."""
    runs, _ = derive_runs(room)
    return [figure for wall in room.walls for figure in _figures_of(room, wall, runs)]


def derive_needs(room: Room) -> list[Figure]:
    """The figures still wanted."""
    return [figure for figure in derive_figures(room) if figure.wanted]


def _figures_of(room: Room, wall: Wall, runs: list[Run]) -> Iterator[Figure]:
    things: list[Opening | Obstacle] = [*wall.openings, *wall.obstacles]
    for thing in sorted(things, key=_where):
        yield from _figures_of_thing(room, wall, thing)
    base = room.standard.wants("base")
    yield Figure(
        wall.id, "length", wall.id, wall.number, f"{wall.name}, along the floor",
        "Hold the tape 2 in up from the floor, corner to corner.",
        "every piece of base on this wall" if base else "the drawing only",
        used=base, read=wall.length is not None,
    )  # fmt: skip
    after = room.after(wall)
    if after:
        ends = (_comes(room, wall, RIGHT, runs), _comes(room, after, LEFT, runs))
        yield _corner_figure(wall, base and (all(ends) if wall.turn == "outside" else any(ends)))


def _comes(room: Room, wall: Wall, side: str, runs: list[Run]) -> bool:
    """Whether base comes to that end of a wall, or may yet. A door's casing in a corner keeps it away."""
    reached = any(run.wall is wall and (run.left if side == LEFT else run.right).kind == CORNER for run in runs)
    return reached or may_yet_reach(wall, side)


def _where(thing: Opening | Obstacle) -> tuple[bool, Length, str]:
    # A thing not yet placed is asked for first: its place decides what the rest of the wall is.
    return (thing.at is not None, thing.at.smallest if thing.at else ZERO, thing.id)


def _figures_of_thing(room: Room, wall: Wall, thing: Opening | Obstacle) -> Iterator[Figure]:
    base = _base_use(room, wall, thing)
    casing = f"the casing of the {thing.name}" if _is_cased(room, thing) else ""
    edge = "inner face of the jamb" if isinstance(thing, Opening) else "near edge"
    across = "jamb to jamb, at the floor" if isinstance(thing, Opening) else "from edge to edge, at the floor"
    figures: tuple[tuple[str, Measure | None, str, str, str], ...] = (
        ("at", thing.at, f"left corner to the {thing.name}", f"From the left corner to the {edge}, 2 in up.", base),
        ("width", thing.width, f"{thing.name}, {across}", f"Hold the tape level, {across}.", base or casing),
    )
    for what, measure, title, hint, use in figures:
        yield Figure(
            thing.id, what, wall.id, wall.number, f"{wall.name}, {title}", hint, use or "the drawing only",
            used=bool(use), read=measure is not None,
        )  # fmt: skip
    if isinstance(thing, Opening) and casing:
        yield from _figures_of_casing(wall, thing, casing)


def _base_use(room: Room, wall: Wall, thing: Opening | Obstacle) -> str:
    """What of the base needs a thing's place and width; nothing for what it does not come to."""
    if not room.standard.wants("base"):
        return ""
    if thing in base_stops_at(wall):
        return f"the base to the left and right of the {thing.name}"
    notched = isinstance(thing, Obstacle) and thing.base == "notch"
    return f"the notch for the {thing.name}" if notched else ""


def _is_cased(room: Room, thing: Opening | Obstacle) -> bool:
    return isinstance(thing, Opening) and thing.kind != "window" and room.standard.wants("casing")


def _figures_of_casing(wall: Wall, opening: Opening, why: str) -> Iterator[Figure]:
    for side, measure in (("left", opening.left), ("right", opening.right)):
        yield Figure(
            opening.id, side, wall.id, wall.number, f"{wall.name}, {opening.name}, height at the {side}",
            f"Up the {side} jamb, from the floor to the underside of the head jamb.", why,
            used=True, read=measure is not None,
        )  # fmt: skip
    for side, corner in (("left", opening.left_corner), ("right", opening.right_corner)):
        title = f"{wall.name}, {opening.name}, {side} corner of the head"
        yield Figure(
            opening.id, f"{side}_corner", wall.id, wall.number, title,
            f"Set the gauge inside the opening, in the {side} corner of the head.", why,
            used=True, read=corner is not None, assumed="square",
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
