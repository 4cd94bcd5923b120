"""Frames: flat boards round an opening, how two of them meet, and the four-sided line that their inner edges follow.

The width along the head, the height of each side and the angle at each head corner fix the whole figure; so the line
at the foot, floor or stool or sill, and what the feet are off square, are worked out and need no reading.
Boards are flat on the wall: a miter here is seen from the front, never through the board's thickness.
"""

import math
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.errors import EngineError
from scantling.engine.tape.angles import SQUARE, STRAIGHT, cotangent_of_half, format_degrees, rounded, scaled
from scantling.engine.tape.lengths import SIXTY_FOURTH, ZERO, Length, format_length
from scantling.engine.trim.doubt import Doubt
from scantling.engine.trim.ends import FLAT, End
from scantling.engine.trim.piece import Kind, Step

# A corner past these is no frame that a miter closes; a head under a stair is well inside. Common practice, no source.
SHARPEST, BLUNTEST = Fraction(30), Fraction(150)


class FrameError(EngineError):
    family = "frame"


@dataclass(frozen=True, slots=True)
class FlatPiece:
    """A board of a frame. `inner` is its edge at the opening, and what its ends grow makes the outer one.

    Upright boards have `first` at the top and `second` at the foot, level ones left and right. An apron lies with its
    back to the wall: its `inner` edge is the back, its outer the face. `side` of those that there are several of, and
    `returns` is the part whose end it turns back to the wall. `wide` where it is ripped to its place.
    """

    kind: Kind
    part: str
    upright: bool
    inner: Length
    first: End
    second: End
    doubt: Doubt
    working: tuple[Step, ...]
    notes: tuple[str, ...] = ()
    side: str = ""
    returns: str = ""
    wide: Length | None = None

    def __post_init__(self) -> None:
        if min(self.inner, self.outer).inches < 0 or not max(self.inner, self.outer):
            raise FrameError("nothing-left", part=self.part, length=write(min(self.inner, self.outer)))

    @property
    def outer(self) -> Length:
        return self.inner + self.first.grows + self.second.grows

    @property
    def short(self) -> Length:
        return min(self.inner, self.outer)

    @property
    def long(self) -> Length:
        return max(self.inner, self.outer)

    @property
    def long_edge(self) -> str:
        if self.inner == self.outer:
            return "none"
        return self.first.edges[self.outer > self.inner]


def flat_end(joint: str, meets: str, saw: Fraction = Fraction(0), grows: Length = ZERO) -> End:
    """An end as it is seen on the wall: its saw setting is a miter, turned on the face."""
    return End(joint, meets, saw, grows, edges=FLAT)


@dataclass(frozen=True, slots=True)
class Meeting:
    """A board's end in a flat miter: how far its outer edge runs past its inner one, and the saw from square."""

    grows: Length
    saw: Fraction


def write(length: Length) -> str:
    """A length inside a sentence, to a 64th, so that no difference worth a word is hidden."""
    return format_length(length, SIXTY_FOURTH)


def derive_meeting(own: Length, other: Length, corner: Fraction) -> Meeting:
    """The end of a board `own` wide where it miters with one `other` wide, their inner edges at `corner` degrees.

    grows = (other + own·cos th) / sin th, which for equal boards is w·cot(th/2) and a saw of 90 − th/2. Geometry.
    Raises `FrameError` where one board is too wide for the other.

    >>> derive_meeting(Length(Fraction(9, 4)), Length(Fraction(7, 2)), Fraction(90)).grows.inches
    Fraction(7, 2)
    """
    if own == other:
        return Meeting(scaled(own, cotangent_of_half(corner)), SQUARE - corner / 2)
    grows = derive_offset(own, other, corner)
    if grows.inches <= 0:
        raise FrameError("no-miter", own=write(own), other=write(other), degrees=format_degrees(corner))
    return Meeting(grows, rounded(math.degrees(math.atan2(float(grows.inches), float(own.inches)))))


def derive_offset(own: Length, other: Length, corner: Fraction) -> Length:
    """How far along a board's outer edge, from its short point, the outer edge of the other board lies."""
    if corner == SQUARE:
        return other
    turn = math.radians(corner)
    return Length.approximate((float(other.inches) + float(own.inches) * math.cos(turn)) / math.sin(turn))


def derive_slant(width: Length, off: Fraction) -> Length:
    """What a cut that is `off` degrees from square gains across a board: w·tan off; exact and nothing where square."""
    return scaled(width, math.tan(math.radians(off))) if off else ZERO


def derive_crossed(width: Length, corner: Fraction) -> Length:
    """A board's width as it is crossed at an angle: w / sin th; the width itself where square."""
    return width if corner == SQUARE else scaled(width, 1 / math.sin(math.radians(corner)))


@dataclass(frozen=True, slots=True)
class Outline:
    """A four-sided line: its sides, and its corners in degrees, all seen from inside it."""

    head: Length
    left: Length
    right: Length
    foot: Length
    head_left: Fraction
    head_right: Fraction
    foot_left: Fraction
    foot_right: Fraction


def derive_whole_outline(
    head: Length, left: Length, right: Length, head_left: Fraction, head_right: Fraction
) -> Outline:
    """Head, sides and head corners to the whole figure: the foot runs from the end of one side to the end of the other.

    Exact where the corners are square and the sides equal. Raises `FrameError`.

    >>> side = Length(Fraction(80))
    >>> derive_whole_outline(Length(Fraction(30)), side, side, Fraction(90), Fraction(90)).foot_left
    Fraction(90, 1)
    """
    for corner in (head_left, head_right):
        if not SHARPEST <= corner <= BLUNTEST:
            raise FrameError("no-frame", degrees=format_degrees(corner))
    if head_left == head_right == SQUARE and left == right:
        return Outline(head, left, right, head, SQUARE, SQUARE, SQUARE, SQUARE)
    lean_left, lean_right = math.radians(head_left), math.radians(head_right)
    across = float(head.inches) - float(right.inches) * math.cos(lean_right) - float(left.inches) * math.cos(lean_left)
    rise = float(left.inches) * math.sin(lean_left) - float(right.inches) * math.sin(lean_right)
    if across <= 0:
        raise FrameError("sides-meet")
    slope = rounded(math.degrees(math.atan2(rise, across)))
    feet = (STRAIGHT - head_left - slope, STRAIGHT - head_right + slope)
    if not SHARPEST <= min(feet) <= max(feet) <= BLUNTEST:
        raise FrameError("steep-foot", degrees=format_degrees(min(feet)))
    return Outline(head, left, right, Length.approximate(math.hypot(across, rise)), head_left, head_right, *feet)


def derive_standing_line(
    width: Length, left: Length, right: Length, corners: tuple[Fraction, Fraction], back: Length
) -> Outline:
    """The line of boards that stand on something and frame head and sides, set back from the jambs by `back`.

    The heights count where the boards' inner edges will stand, so nothing is added at the foot.
    """
    at_left, at_right = (scaled(back, cotangent_of_half(corner)) for corner in corners)
    return derive_whole_outline(width + at_left + at_right, left + at_left, right + at_right, *corners)


def derive_frame_line(
    width: Length, left: Length, right: Length, corners: tuple[Fraction, Fraction], back: Length
) -> Outline:
    """The line of boards on all four sides of an opening, set back from its jambs by `back` all round."""
    jambs = derive_whole_outline(width, left, right, *corners)
    head_left, head_right, foot_left, foot_right = (
        scaled(back, cotangent_of_half(corner))
        for corner in (jambs.head_left, jambs.head_right, jambs.foot_left, jambs.foot_right)
    )
    return Outline(
        jambs.head + head_left + head_right, jambs.left + head_left + foot_left, jambs.right + head_right + foot_right,
        jambs.foot + foot_left + foot_right, jambs.head_left, jambs.head_right, jambs.foot_left, jambs.foot_right,
    )  # fmt: skip
