"""Jambs: an opening as it was read, and what its readings say against each other.

Widths are read along the head from jamb to jamb, heights up each side where the leg's inner edge will stand, corners
inside the opening. A corner that was not read is taken as square, and that is told.
"""

import math
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.errors import EngineError
from scantling.engine.survey.room import Measure
from scantling.engine.tape.angles import SQUARE, Corner, format_degrees
from scantling.engine.tape.lengths import SIXTY_FOURTH, Length
from scantling.engine.trim.openings.frame import Outline, derive_slant, derive_whole_outline, write
from scantling.engine.trim.told.tolerance import NOT_SQUARE, READING
from scantling.engine.words import say


class JambError(EngineError):
    family = "jamb"


@dataclass(frozen=True, slots=True)
class Mull:
    """What is between two windows of a row: how far from the first jamb it begins, how wide it is, how high beside it.

    `between` are their names, `readings` what the gap follows from.
    """

    start: Length
    gap: Length
    height: Measure
    between: tuple[str, str]
    readings: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Jambs:
    """`left_stop` and `right_stop` are the distances from a jamb to a side wall, where one is near; `left_wall` and
    `right_wall` the corners that those walls make with this one, seen from the room. `mulls`: of a row of windows, what
    stands between them.
    """

    width: Measure
    left: Measure
    right: Measure
    left_corner: Corner | None = None
    right_corner: Corner | None = None
    left_stop: Measure | None = None
    right_stop: Measure | None = None
    left_wall: Fraction = SQUARE
    right_wall: Fraction = SQUARE
    mulls: tuple[Mull, ...] = ()

    def __post_init__(self) -> None:
        for what, measure in (("width", self.width), ("left", self.left), ("right", self.right)):
            if not measure.smallest:
                raise JambError("no-opening", field=f"opening.{what}", what=say(f"nothing-{what}"))

    @property
    def corners(self) -> tuple[Fraction, Fraction]:
        """The head corners in degrees; square until they have been read."""
        left, right = self.left_corner, self.right_corner
        return (left.degrees if left else SQUARE, right.degrees if right else SQUARE)


def check_jambs(jambs: Jambs, wide: Length, covers_height: bool = False) -> list[str]:
    """What a person should know before cutting: readings that differ, corners out of square, sides that lean.

    `wide` is a leg's width: a foot that is off square is told where that moves an edge of it by a 64th.
    `covers_height`: the sides cover the opening, as a picture frame's do, and are cut to the largest height.
    """
    line = derive_whole_outline(jambs.width.largest, jambs.left.smallest, jambs.right.smallest, *jambs.corners)
    return [
        *_check_spread(jambs, covers_height),
        *_check_corners(jambs),
        *_check_foot(jambs, line, wide),
        *_check_lean(jambs, line),
    ]


def _check_spread(jambs: Jambs, covers_height: bool) -> list[str]:
    told = []
    for name, measure, covers in (
        ("width", jambs.width, True),
        ("left", jambs.left, covers_height),
        ("right", jambs.right, covers_height),
    ):
        if measure.spread:
            least, most = write(measure.smallest), write(measure.largest)
            told.append(say(f"reads-{name}-covers" if covers else f"reads-{name}", least=least, most=most))
    return told


def _check_corners(jambs: Jambs) -> list[str]:
    read = [(name, corner) for name, corner in (("left", jambs.left_corner), ("right", jambs.right_corner)) if corner]
    told = [
        say(f"head-corner-{name}", degrees=format_degrees(corner.degrees))
        for name, corner in read
        if abs(corner.degrees - SQUARE) >= NOT_SQUARE
    ]
    if len(read) < 2:
        told.append(say("corner-unread" if read else "corners-unread"))
    return told


def _check_foot(jambs: Jambs, line: Outline, wide: Length) -> list[str]:
    off = max(abs(SQUARE - line.foot_left), abs(SQUARE - line.foot_right))
    if derive_slant(wide, off) < SIXTY_FOURTH:
        return []
    if jambs.left_corner is None or jambs.right_corner is None:
        apart = write(abs(jambs.left.smallest - jambs.right.smallest))
        return [say("foot-by-heights", by=apart)]
    return [say("foot-off-square", degrees=format_degrees(off))]


def _check_lean(jambs: Jambs, line: Outline) -> list[str]:
    """Head corners that do not make 180 together lean the sides, and then the width cannot be the same at the foot."""
    if jambs.left_corner is None or jambs.right_corner is None:
        return []
    gauge = math.radians(jambs.left_corner.plus_minus + jambs.right_corner.plus_minus)
    allowed = jambs.width.spread + READING * 2 + Length.approximate(float(line.left.inches) * gauge)
    by = line.foot - line.head
    if abs(by) <= allowed:
        return []
    return [say("foot-wider" if by.inches > 0 else "foot-narrower", by=write(abs(by)))]
