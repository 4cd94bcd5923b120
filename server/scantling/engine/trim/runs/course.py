"""Courses: how high a molding runs, and what along a wall reaches into its way."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from scantling.engine.survey.kinds import is_plate
from scantling.engine.survey.room import Obstacle, Opening, Wall, check_along
from scantling.engine.tape.lengths import ZERO, Length
from scantling.engine.trim.footprint import RIGHT, Band
from scantling.engine.trim.openings.reach import derive_leg_band

FLOOR, WAIST, HEAD = "floor", "waist", "head"

# How far a molding stands out from each wall that it runs along.
StandsOut = Callable[[Wall], Length]


@dataclass(frozen=True, slots=True)
class Course:
    """What breaks a molding as it runs along a wall.

    On the floor: whatever stands there. At the waist: what reaches so high, and nothing is cut past a thing whose
    height is unread. At the head: only what was read to reach so high; `up` is from the floor to its lower edge, or
    from the ceiling down to it, `down`, and it is `tall` from there. The `openings` break it unless they were read to
    end below it or begin above, those of `if_read` only where they were read to meet it. `rail`: by what name a wall's
    length is kept that was read just where it runs.
    """

    openings: tuple[str, ...] = ("door", "cased")
    obstacles: tuple[str, ...] = ("stops",)
    level: str = FLOOR
    up: Length = ZERO
    down: Length | None = None
    tall: Length = ZERO
    if_read: tuple[str, ...] = ("window",)
    rail: str = ""

    def band(self, wall: Wall) -> Band:
        """How far up along a wall it reaches."""
        if self.down is None:
            return Band(self.up, self.up + self.tall)
        return Band(wall.height.smallest - self.down, wall.height.largest) if wall.height else Band(None, None)

    def meets(self, wall: Wall, other: Band) -> bool:
        """Whether something that reaches so far up is as high as it runs; what is unread, as `reaches` has it."""
        own = self.band(wall)
        if other.bottom is None:
            return self.level == WAIST
        if other.top is None or own.bottom is None or own.top is None:
            return self.level != HEAD and (own.top is None or other.bottom < own.top)
        return other.bottom < own.top and other.top > own.bottom

    def breaks_at(self, wall: Wall, opening: Opening) -> bool:
        """Whether an opening, with its casing, breaks it."""
        own, other = self.band(wall), derive_leg_band(opening)
        if opening.kind in self.openings:
            above = other.bottom is not None and own.top is not None and other.bottom >= own.top
            below = other.top is not None and own.bottom is not None and other.top <= own.bottom
            return not (above or below)
        return opening.kind in self.if_read and other.bottom is not None and self.meets(wall, other)

    def reaches(self, wall: Wall, thing: Obstacle) -> bool:
        """Whether a thing stands in its way; one of unread height does at the waist, and does not at the head.

        What stops the base stops all that lies on it.
        """
        if thing.hangs and thing.foot:
            return thing.height is not None and self.meets(wall, Band(thing.foot.smallest, thing.height.largest))
        if thing.height is None or (self.level == FLOOR and thing.base == "stops"):
            return self.level != HEAD
        if self.down is None:
            return thing.height.largest > self.up
        return wall.height is not None and thing.height.largest + self.down > wall.height.smallest

    def is_placed(self, thing: Opening | Obstacle) -> bool:
        """Whether all that has to be known of a thing in the way has been read."""
        if isinstance(thing, Obstacle) and self.level == WAIST and thing.height is None:
            return False
        return thing.at is not None and thing.width is not None


def stops_at(wall: Wall, course: Course) -> tuple[Opening | Obstacle, ...]:
    """What breaks a molding along a wall: openings as high as it, and things that stand in its way."""
    openings = (opening for opening in wall.openings if course.breaks_at(wall, opening))
    things = (
        thing
        for thing in wall.obstacles
        if (thing.base in course.obstacles or (thing.hangs and course.level != FLOOR))
        and course.reaches(wall, thing) and (thing.base == "stops" or not is_plate(thing.kind))
    )
    return (*openings, *things)


def is_refused(wall: Wall, course: Course) -> bool:
    """Whether what a molding goes by along a wall cannot be as it was read. What does not break it does not count."""
    openings = tuple(opening for opening in wall.openings if course.breaks_at(wall, opening))
    obstacles = tuple(thing for thing in wall.obstacles if thing.base != "over" and course.reaches(wall, thing))
    if not openings and not obstacles:
        return False
    return bool(check_along(replace(wall, openings=openings, obstacles=obstacles)))


def may_yet_reach(wall: Wall, side: str, course: Course) -> bool:
    """Whether it is still open if a molding comes to that end of a wall: a reading is wanted, or one is wrong."""
    stops = stops_at(wall, course)
    unplaced = not all(course.is_placed(thing) for thing in stops)
    return is_refused(wall, course) or unplaced or (wall.length is None and (side == RIGHT or not stops))
