"""Closure: whether walls and corners, laid end to end, come back to where they began; if not, which is to blame.

A closed room of n corners has (n - 2)·180 degrees inside it. When the angles agree, the gap that is left is a vector: a
single wall read wrong leaves a gap along that wall; a single corner read wrong swings all that follows about it.

A room is doubted where it misses itself by more than all but one in a hundred honest rooms would: what each reading is
uncertain by goes into the angle and the gap to first order, and they are held against the normal distribution and that
of two dimensions (traverse closure as in plane surveying; JCGM 100:2008, 5.1.2, for the combination).
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.errors import EngineError
from scantling.engine.survey.room import Problem, Room, Wall
from scantling.engine.tape.angles import STRAIGHT, Corner, format_degrees, rounded
from scantling.engine.tape.lengths import ONE_INCH, SIXTEENTH, Length, format_length
from scantling.engine.words import say

# A suspect must explain all but a quarter of the gap, and no one is suspected of what the tape's own ± explains.
LEFT_OVER = 0.25
SUSPECTS_AT_MOST = 4
# Standard uncertainties, common practice, no source. Of a gauge, in degrees, beyond what its scale shows; of a wall, in
# inches: a tape held by hand, half a graduation either way, and plaster out of line by a sixteenth either way.
GAUGE = 0.1
WALL = math.sqrt(1 / 32**2 + 1 / 32**2 / 3 + 1 / 16**2 / 3)
# One honest room in two hundred is beyond each of these: of one dimension by the table of the normal distribution, of
# two by the square of the distance, −2 ln(1/200).
ANGLE_BEYOND = 2.807
GAP_BEYOND = -2 * math.log(1 / 200)

Vector = tuple[float, float]


class ClosureError(EngineError):
    family = "closure"


@dataclass(frozen=True, slots=True)
class Suspect:
    """A wall or corner that alone would explain the gap, and by how much its reading would be out."""

    kind: str
    wall: Wall
    by: Length | None
    degrees: Fraction | None
    message: str


@dataclass(frozen=True, slots=True)
class Closure:
    """`gap` and `angle` are how far the room misses itself; `gap_allowed` and `angle_allowed` what its ± explain."""

    gap: Length
    gap_allowed: Length
    angle: Fraction
    angle_allowed: Fraction
    suspects: tuple[Suspect, ...]

    @property
    def closes(self) -> bool:
        return self.gap <= self.gap_allowed and abs(self.angle) <= self.angle_allowed


def derive_closure(room: Room) -> Closure:
    """How far the room misses itself, and whose fault that may be. Raises `ClosureError` when it cannot be told."""
    if not room.closed or len(room.walls) < 3:
        raise ClosureError("not-closed", field="room")
    for wall in room.walls:
        if wall.length is None or wall.corner is None:
            what = wall.name if wall.length is None else say("corner", number=wall.number)
            raise ClosureError("not-all-read", field="room", what=what.capitalize())
    corners = [wall.corner.degrees for wall in room.walls if wall.corner]
    angle = sum(corners, start=Fraction(0)) - (len(corners) - 2) * STRAIGHT
    uncertain = [_corner_uncertainty(wall.corner) for wall in room.walls if wall.corner]
    angle_allowed = rounded(ANGLE_BEYOND * math.hypot(*uncertain))
    # The angles' own small error is shared out first, or it would be taken for a fault of the lengths.
    balanced = [corner - angle / len(corners) for corner in corners]
    gap = _gap(room.walls, balanced)
    size = math.hypot(*gap)
    allowed = _gap_allowed(room.walls, balanced, uncertain, gap)
    if abs(angle) > angle_allowed:
        suspects = _suspect_corners(room, corners, angle)
    else:
        suspects = _suspect_walls(room, balanced, gap) if size > float(allowed.inches) else []
    return Closure(Length.approximate(size), allowed, angle, angle_allowed, tuple(suspects[:SUSPECTS_AT_MOST]))


def _headings(corners: Sequence[Fraction]) -> list[float]:
    headings, heading = [], Fraction(0)
    for corner in corners:
        headings.append(math.radians(heading))
        heading += STRAIGHT - corner
    return headings


def _gap(walls: Sequence[Wall], corners: Sequence[Fraction]) -> Vector:
    """From the first wall's beginning to the last wall's end, in inches."""
    along = list(zip(_headings(corners), (_length(wall) for wall in walls), strict=True))
    return (
        sum(length * math.cos(heading) for heading, length in along),
        sum(length * math.sin(heading) for heading, length in along),
    )


def _length(wall: Wall) -> float:
    return float(wall.length.smallest.inches) if wall.length else 0.0


def _corner_uncertainty(corner: Corner) -> float:
    """The gauge's own, and that of its scale or of readings apart: anywhere within its ± is as likely (GUM 4.3.7)."""
    return math.hypot(GAUGE, float(corner.plus_minus) / math.sqrt(3))


def _gap_allowed(walls: Sequence[Wall], corners: Sequence[Fraction], uncertain: Sequence[float], gap: Vector) -> Length:
    """How far an honest room may miss itself in the direction in which this one does; in any, where it does not."""
    (xx, xy, yy) = _gap_covariance(walls, corners, uncertain)
    size = math.hypot(*gap)
    if size < SIXTEENTH.inches / 1000:
        widest = (xx + yy) / 2 + math.hypot((xx - yy) / 2, xy)
        return Length.approximate(math.sqrt(GAP_BEYOND * widest))
    x, y = gap[0] / size, gap[1] / size
    return Length.approximate(math.sqrt(GAP_BEYOND * (xx * yy - xy * xy) / (yy * x * x - 2 * xy * x * y + xx * y * y)))


def _gap_covariance(
    walls: Sequence[Wall], corners: Sequence[Fraction], uncertain: Sequence[float]
) -> tuple[float, float, float]:
    """The gap's variances along the first wall and across it, with their covariance between, in square inches.

    A wall moves the end along itself. A corner swings all walls beyond it, less its share in what was balanced out.
    """
    headings, lengths = _headings(corners), [_length(wall) for wall in walls]
    moved = [(WALL * math.cos(heading), WALL * math.sin(heading)) for heading in headings]
    ways = zip(headings, lengths, strict=True)
    swings = [(-length * math.sin(heading), length * math.cos(heading)) for heading, length in ways]
    count = len(walls)
    shared = [sum(swing[axis] * place / count for place, swing in enumerate(swings)) for axis in (0, 1)]
    rest = [sum(swing[axis] for swing in swings) for axis in (0, 1)]
    for swing, degrees in zip(swings, uncertain, strict=True):
        rest = [rest[0] - swing[0], rest[1] - swing[1]]
        turn = math.radians(degrees)
        moved.append((turn * (rest[0] - shared[0]), turn * (rest[1] - shared[1])))
    return sum(x * x for x, _ in moved), sum(x * y for x, y in moved), sum(y * y for _, y in moved)


def _suspect_walls(room: Room, corners: Sequence[Fraction], gap: Vector) -> list[Suspect]:
    found: list[tuple[Fraction, Suspect]] = []
    size = math.hypot(*gap)
    for wall, heading in zip(room.walls, _headings(corners), strict=True):
        along = gap[0] * math.cos(heading) + gap[1] * math.sin(heading)
        across = abs(gap[1] * math.cos(heading) - gap[0] * math.sin(heading))
        if across <= LEFT_OVER * size and _length(wall) > abs(along) / 2:
            # Rounded, or the last digit of a machine's sine would choose between two walls that are as likely.
            found.append((rounded(across - abs(along)), _suspect_wall(wall, Length.approximate(along))))
    return [suspect for _, suspect in sorted(found, key=lambda one: (one[0], one[1].wall.number))]


def _suspect_wall(wall: Wall, by: Length) -> Suspect:
    longer = "long" if by.inches > 0 else "short"
    what = wall.name.capitalize()
    message = say(f"suspect-wall-{longer}", what=what, by=format_length(abs(by)))
    if abs(abs(by) - ONE_INCH) <= SIXTEENTH:
        message = say(f"suspect-inch-{longer}", what=what)
    return Suspect("wall", wall, by, None, message)


def _suspect_corners(room: Room, corners: Sequence[Fraction], angle: Fraction) -> list[Suspect]:
    found = []
    for place, wall in enumerate(room.walls):
        put_right = [*corners[:place], corners[place] - angle, *corners[place + 1 :]]
        left_over = rounded(math.hypot(*_gap(room.walls, put_right)))
        wide = "wide" if (angle > 0) == (wall.turn == "inside") else "tight"
        message = say(f"suspect-corner-{wide}", number=wall.number, by=format_degrees(abs(angle)))
        found.append((left_over, Suspect("corner", wall, None, angle, message)))
    found.sort(key=lambda one: (one[0], one[1].wall.number))
    near = found[0][0] + ONE_INCH.inches
    return [suspect for left_over, suspect in found if left_over <= near]


def check_closure(room: Room) -> list[Problem]:
    """The problem of a room that does not close, on its likeliest culprit; none while it still wants readings."""
    if not room.comes_round:
        return []  # not walked round yet, or a corner far off, which is told of as such
    try:
        closure = derive_closure(room)
    except ClosureError:
        return []
    if closure.closes:
        return []
    angles_agree = abs(closure.angle) <= closure.angle_allowed
    missed = format_length(closure.gap) if angles_agree else format_degrees(abs(closure.angle))
    one, other = [*(suspect.message for suspect in closure.suspects[:2]), "", ""][:2]
    said = say("suspects", one=one, other=other) if other else one or say("no-suspect")
    wall = closure.suspects[0].wall if closure.suspects else room.walls[-1]
    return [Problem(wall.id, "not-closing", say("not-closing", by=missed, said=said))]
