"""The ends of a board in a corner: what joint, what saw setting, how much the face gains or loses on the back.

A gauge in the corner gives W; a board's end follows from W, its own thickness and the other board's.
"""

import math
from dataclasses import dataclass, replace
from fractions import Fraction

from scantling.engine.tape.angles import SQUARE, Corner, derive_front_minus_back, derive_saw, format_degrees, scaled
from scantling.engine.tape.lengths import SIXTY_FOURTH, ZERO, Length
from scantling.engine.words import say

# The two edges of a board that its ends are seen along: first the one that its place fixes, then the other. Against a
# wall they are its back and its face; lying flat round an opening, its edge at the opening and the one away from it.
# Leaning between wall and ceiling, its edge on the wall and its edge on the ceiling.
AGAINST_WALL, FLAT, LEANING = ("back", "front"), ("inner", "outer"), ("wall", "ceiling")
# A saw is set to no less than this: a bevel under it is a square end. Common practice, no source.
SCALE = Fraction(1, 20)
# Joints in which two boards meet at an angle that shows, however little one edge is longer.
MITERED = ("miter", "cope", "return", "scarf")
# A cope is sawn along the line that its cut shows: this near to 45 the saw stays there. Common practice, no source.
ONE_SETTING, OF_COPES = Fraction(2), Fraction(45)


def say_edge(edge: str) -> str:
    """An edge of a board, as people call it."""
    return say(f"edge-of-{edge}")


def set_to(joint: str, saw: Fraction) -> Fraction:
    """What the saw is set to for an end: copes that are all but square have one setting.

    >>> set_to("cope", Fraction(91, 2)), set_to("miter", Fraction(91, 2))
    (Fraction(45, 1), Fraction(91, 2))
    """
    return OF_COPES if joint == "cope" and abs(saw - OF_COPES) <= ONE_SETTING else saw


@dataclass(frozen=True, slots=True)
class End:
    """One end of a piece. `saw` is degrees from square, 0 for a square cut.

    `grows` is how much longer the second of its `edges` is than the first at this end; `taken` how far the first stops
    short of the corner; `meets` what the end comes up against. `bevel` is how far the blade leans, `nested` the setting
    for a leaning molding that stands in the saw as it will lean in the room, with no bevel. `taper` is how much farther
    the end reaches at the top of the board than at its foot, where the corner is out of plumb; `open` where
    nothing is known beyond it. `at` is which joint it is in, by an id: the end of the other board in it has the same;
    `turns`, of a joint in an inside corner, which side has to run through there to turn it round;
    `raked`: it meets the skirt of a stair, and its taper is that of the stair.
    `covered` is how much of the wall at a coped end lies behind the board it is coped to;
    `caulked`: what is kept clear there is caulked, which hides what it is out by; `into_casing`: it dies into casing,
    and `meets` names the opening. `horn`, of a stool: how far from its notch the horn begins, past the casing, and how
    long it is.
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
    open: bool = False
    covered: Length = ZERO
    caulked: bool = False
    into_casing: bool = False
    horn: tuple[Length, Length] | None = None
    at: str = ""
    turns: str = ""
    raked: bool = False

    @property
    def said(self) -> str:
        """What it ends at, in words: meets corner 1; a free end."""
        return self.meets if self.open else say("meeting", what=self.meets)

    @property
    def leans(self) -> bool:
        """Whether the end is other than square, as far as it is seen: by a 64th of one edge, or in a miter at all."""
        return bool(self.grows) and (self.joint in MITERED or abs(self.grows) >= SIXTY_FOURTH)

    @property
    def long_edge(self) -> str:
        """Which edge is the long point, by its name in `edges`, or none for a square end."""
        if not self.grows:
            return "none"
        return self.edges[self.grows.inches > 0]

    @property
    def setting(self) -> Fraction:
        """What the saw is set to, from square."""
        return set_to(self.joint, self.saw)

    @property
    def point(self) -> Fraction:
        """The angle at the point of the board."""
        return SQUARE - self.setting

    @property
    def shown(self) -> str:
        """In a carpenter's words: square; cope, 45.5°; outside miter, 44.5°; miter, 44.5°, long at the outer edge."""
        saw, joint = self._say_saw(self.setting), say(f"joint-{self.joint}")
        if self.joint == "miter" and self.corner:
            return say(f"cut-as-miter-{self.corner.turn}", saw=saw)
        if self.joint == "cope":
            return say("cut-as", joint=joint, saw=saw)
        if saw == format_degrees(Fraction(0)) or not self.leans:
            return joint
        saw = say("saw-beveled", saw=saw) if self.corner else saw
        # A sliver may gain so little that it comes to nothing: then it has a setting, and no longer edge.
        if not self.grows:
            return say("cut-as", joint=joint, saw=saw)
        return say("cut-as-long", joint=joint, saw=saw, edge=say_edge(self.long_edge))

    @property
    def brief(self) -> str:
        """What a drawing of it does not say: square, 45.5°, cope 44.9°."""
        joint = say(f"joint-{self.joint}")
        if format_degrees(self.saw) == format_degrees(Fraction(0)):
            return joint
        saw = self._say_saw(self.saw)
        return saw if self.joint == "miter" else say("cut-in-brief", joint=joint, saw=saw)

    def _say_saw(self, saw: Fraction) -> str:
        """A setting; with its bevel, where a leaning molding may be cut flat."""
        degrees = format_degrees(saw)
        if not self.nested:
            return degrees
        return say("saw-with-bevel", saw=degrees, bevel=format_degrees(self.bevel or Fraction(0)))


def derive_miter(meets: str, corner: Corner, own: Length, other: Length) -> End:
    """Both boards cut at half of what the walls turn by; boards of two thicknesses, each at its own angle."""
    grows = derive_front_minus_back(own, corner, other)
    return _set_saw(End("miter", meets, derive_saw(own, corner, other), grows, corner=corner))


def _set_saw(end: End) -> End:
    """An end as the saw will make it: a bevel finer than its scale is a square cut, and the face gains nothing."""
    return end if end.saw >= SCALE else replace(end, saw=Fraction(0), grows=ZERO)


def derive_cope(meets: str, corner: Corner, own: Length, other: Length) -> End:
    """Cut as an inside miter, long point at the back in the corner, then coped along the line the cut shows."""
    return replace(derive_miter(meets, corner, own, other), joint="cope", covered=_across(other, corner))


def derive_run_through(meets: str, corner: Corner, own: Length, other: Length) -> End:
    """The end that runs into the corner, for another to be coped or butted to: square where the corner is or opens.

    In a corner tighter than square the face would strike the other wall first: the end is cut to lie flat on it. In a
    wide one the face of a thinner board may pass the square end of a thicker: that is cut long at the face, to meet it.
    """
    if corner.degrees > SQUARE - SCALE:
        reach = derive_front_minus_back(own, corner, other)
        if reach.inches <= 0:
            return End("square", meets, corner=corner)
        return _set_saw(End("square", meets, derive_saw(own, corner, other), reach, corner=corner))
    return End("square", meets, SQUARE - corner.degrees, -_times_cotangent(own, corner), corner=corner)


def derive_butt(meets: str, corner: Corner, own: Length, other: Length) -> End:
    """Against the face of a board already up: the back stops t'/sin W short, the end follows that face."""
    taken = _across(other, corner)
    if abs(SQUARE - corner.degrees) < SCALE:
        return End("butt", meets, taken=taken, corner=corner)
    return End("butt", meets, abs(SQUARE - corner.degrees), -_times_cotangent(own, corner), taken, corner)


def _across(other: Length, corner: Corner) -> Length:
    """How far from the corner the face of a board on the other wall crosses this one."""
    sine = Fraction(1) if corner.degrees == SQUARE else math.sin(math.radians(corner.degrees))
    return scaled(other, 1 / sine)


def _times_cotangent(length: Length, corner: Corner) -> Length:
    if corner.degrees == SQUARE:
        return ZERO
    return scaled(length, 1 / math.tan(math.radians(corner.degrees)))
