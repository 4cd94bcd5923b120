"""The ends of a board in a corner: what joint, what saw setting, how much the face gains or loses on the back.

A gauge in the corner gives W; a board's end follows from W, its own thickness and the other board's.
"""

import math
from dataclasses import dataclass, replace
from fractions import Fraction

from scantling.engine.angles import SQUARE, Corner, derive_front_minus_back, derive_saw, format_degrees, scaled
from scantling.engine.lengths import ZERO, Length

# The two edges of a board that its ends are seen along: first the one that its place fixes, then the other. Against a
# wall they are its back and its face; lying flat round an opening, its edge at the opening and the one away from it.
# Leaning between wall and ceiling, its edge on the wall and its edge on the ceiling.
AGAINST_WALL, FLAT, LEANING = ("back", "front"), ("inner", "outer"), ("wall", "ceiling")
EDGE_WORDS = {
    "back": "back", "front": "face", "inner": "inner edge", "outer": "outer edge",
    "wall": "wall edge", "ceiling": "ceiling edge",
}  # fmt: skip
# A saw is set to no less than this: a bevel under it is a square end. Common practice, no source.
SCALE = Fraction(1, 20)


@dataclass(frozen=True, slots=True)
class End:
    """One end of a piece. `saw` is degrees from square, 0 for a square cut.

    `grows` is how much longer the second of its `edges` is than the first at this end; `taken` how far the first stops
    short of the corner; `meets` what the end comes up against. `bevel` is how far the blade leans, `nested` the setting
    for a leaning molding that stands in the saw as it will lean in the room, with no bevel. `taper` is how much farther
    the end reaches at the top of the board than at its foot, where the corner is out of plumb.
    """

    joint: str
    meets: str
    saw: Fraction = Fraction(0)
    grows: Length = ZERO
    taken: Length = ZERO
    corner: Corner | None = None
    edges: tuple[str, str] = AGAINST_WALL
    bevel: Fraction | None = None
    nested: Fraction | None = None
    taper: Length = ZERO

    @property
    def long_edge(self) -> str:
        """Which edge is the long point, by its name in `edges`, or none for a square end."""
        if not self.grows:
            return "none"
        return self.edges[self.grows.inches > 0]

    @property
    def point(self) -> Fraction:
        """The angle at the point of the board."""
        return SQUARE - self.saw

    @property
    def shown(self) -> str:
        """In a carpenter's words: square; cope, 45.5°; outside miter, 44.5°; miter, 44.5°, long at the outer edge."""
        degrees = format_degrees(self.saw)
        if self.nested:
            degrees = f"{degrees} with bevel {format_degrees(self.bevel or Fraction(0))}"
        if self.joint == "miter" and self.corner:
            return f"{self.corner.turn} miter, {degrees}"
        if self.joint == "cope":
            return f"cope, {degrees}"
        if degrees == "0°":
            return self.joint
        setting = f"beveled {degrees}" if self.corner else degrees
        return f"{self.joint}, {setting}, long at the {EDGE_WORDS[self.long_edge]}"


def derive_miter(meets: str, corner: Corner, own: Length, other: Length) -> End:
    """Both boards cut at half of what the walls turn by; boards of two thicknesses, each at its own angle."""
    grows = derive_front_minus_back(own, corner, other)
    return End("miter", meets, derive_saw(own, grows, corner, other), grows, corner=corner)


def derive_cope(meets: str, corner: Corner, own: Length, other: Length) -> End:
    """Cut as an inside miter, long point at the back in the corner, then coped along the line the cut shows."""
    return replace(derive_miter(meets, corner, own, other), joint="cope")


def derive_run_through(meets: str, corner: Corner, own: Length, other: Length) -> End:
    """The end that runs into the corner, for another to be coped or butted to: square where the corner is or opens.

    In a corner tighter than square the face would strike the other wall first: the end is cut to lie flat on it. In a
    wide one the face of a thinner board may pass the square end of a thicker: that is cut long at the face, to meet it.
    """
    if corner.degrees > SQUARE - SCALE:
        reach = derive_front_minus_back(own, corner, other)
        if reach.inches <= 0:
            return End("square", meets, corner=corner)
        return End("square", meets, derive_saw(own, reach, corner, other), reach, corner=corner)
    return End("square", meets, SQUARE - corner.degrees, -_times_cotangent(own, corner), corner=corner)


def derive_butt(meets: str, corner: Corner, own: Length, other: Length) -> End:
    """Against the face of a board already up: the back stops t'/sin W short, the end follows that face."""
    sine = Fraction(1) if corner.degrees == SQUARE else math.sin(math.radians(corner.degrees))
    taken = scaled(other, 1 / sine)
    if abs(SQUARE - corner.degrees) < SCALE:
        return End("butt", meets, taken=taken, corner=corner)
    return End("butt", meets, abs(SQUARE - corner.degrees), -_times_cotangent(own, corner), taken, corner)


def _times_cotangent(length: Length, corner: Corner) -> Length:
    if corner.degrees == SQUARE:
        return ZERO
    return scaled(length, 1 / math.tan(math.radians(corner.degrees)))
