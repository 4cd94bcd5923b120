"""The work of a room in the notebook: which steps are ticked off, and which of its readings a step has put in doubt.

A figure is in doubt where a step was ticked off after the last of its readings that stand: then it was read of what is
not there any more. Read once after that, it is in doubt no longer.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from scantling.engine.journal import Entry
from scantling.engine.notebook import Notebook
from scantling.engine.survey.room import Room
from scantling.engine.walk.figure import Figure
from scantling.engine.walk.rows import derive_rows
from scantling.engine.work.order import DONE, SKIPPED
from scantling.engine.work.steps import BY_KEY, STEPS, WorkStep

LIST = "work"
#: The kinds of reading that each thing in doubt is: of a wall, of an opening by its kind, of what stands in the way.
DOORS, WINDOWS, THINGS, WALLS = ("door", "cased"), ("window",), ("thing",), ("wall",)
OPENINGS = (*DOORS, *WINDOWS)
READINGS: Mapping[str, tuple[tuple[str, ...], tuple[str, ...]]] = {
    "corners": (WALLS, ("corner", "sides", "ceiling_corner")),
    "lengths": (WALLS, ("length", "ceiling", "chair_rail", "picture_rail")),
    "plumb": (WALLS, ("plumb", "bow")),
    "depths": (OPENINGS, ("depth", "depth_left", "depth_right", "depth_head", "depth_sill")),
    "legs": (DOORS, ("left", "right")),
    "heights": (WALLS, ("height", "fall")),
    "sills": (WINDOWS, ("sill",)),
    "openings": (OPENINGS, ("width", "left", "right")),
    "heads": (OPENINGS, ("left_corner", "right_corner")),
    "between": (THINGS, ("at", "width")),
    "paper": (WALLS, ("height",)),
}


@dataclass(frozen=True, slots=True)
class InDoubt:
    """A figure, and the step that was done since it was read."""

    figure: Figure
    because: WorkStep


def find_done(notebook: Notebook, room: str) -> tuple[set[str], set[str]]:
    """The keys of the steps that are done in a room, and of those that it does without."""
    ticks = {key: entry for key, (entry, _) in notebook.ticks(room, LIST).items() if key in BY_KEY}
    done = {key for key, entry in ticks.items() if entry.body["state"] == DONE}
    return done, {key for key, entry in ticks.items() if entry.body["state"] == SKIPPED}


def derive_in_doubt(notebook: Notebook, room: str, found: Room) -> list[InDoubt]:
    """Every figure of a room in doubt, in walking order, each by the first step that put it there."""
    ticks = notebook.ticks(room, LIST)
    done = [(step, ticks[step.key][0]) for step in STEPS
            if step.voids and step.key in ticks and ticks[step.key][0].body["state"] == DONE]  # fmt: skip
    return list(_in_doubt(notebook, found, done)) if done else []


def _in_doubt(notebook: Notebook, room: Room, done: Sequence[tuple[WorkStep, Entry]]) -> Iterator[InDoubt]:
    sorts = dict(_sorts(room))
    for row in derive_rows(notebook, room):
        standing = [notebook.entries[one.entry] for one in row.taken if one.strike is None]
        last = max((entry.order for entry in standing), default=None)
        since = [step for step, tick in done if last is not None and tick.order > last]
        step = next((step for step in since if _voids(step, sorts.get(row.figure.of, ""), row.figure.what)), None)
        if step:
            yield InDoubt(row.figure, step)


def _sorts(room: Room) -> Iterator[tuple[str, str]]:
    """What sort each wall, and each thing on it, is."""
    for wall in room.walls:
        yield wall.id, "wall"
        yield from ((opening.id, opening.kind) for opening in wall.openings)
        yield from ((thing.id, "thing") for thing in wall.obstacles)


def _voids(step: WorkStep, sort: str, what: str) -> bool:
    return any(sort in sorts and what in readings for sorts, readings in (READINGS[one] for one in step.voids))
