"""Corners and saw settings. Angles are decimal degrees.

`W` is the room-side angle of a corner (inside < 180 < outside). The saw's scale reads from square: 0 for a square cut.
Half the corner is the angle at the point of the board; the two agree only at 90, so both are always given.
"""

import math
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.errors import EngineError, quote
from scantling.engine.kept import remembered
from scantling.engine.tape.lengths import THIRTY_SECOND, Length, from_decimals

STRAIGHT = Fraction(180)
SQUARE = Fraction(90)
# Of half a corner, and of an angle: where they are no fractions of something endless.
COTANGENTS = {SQUARE: Fraction(1), STRAIGHT: Fraction(0), 3 * SQUARE: Fraction(-1)}
TANGENTS = {Fraction(0): Fraction(0), SQUARE / 2: Fraction(1)}
# Common practice, no source: a gauge in the hand is not read closer than a tenth of a degree.
GAUGE_AT_BEST = Fraction(1, 10)


class AngleError(EngineError):
    family = "angle"


@dataclass(frozen=True, slots=True)
class Corner:
    """A corner as it was found: room-side angle, how far it may be off, and whether it was read or worked out.

    `exact` is False where the angle comes from three sides.
    """

    turn: str
    degrees: Fraction
    plus_minus: Fraction
    exact: bool = True

    @property
    def gauge(self) -> Fraction:
        """What a gauge reads: in an inside corner W, closed round an outside one 360 - W."""
        return self.degrees if self.turn == "inside" else 2 * STRAIGHT - self.degrees

    @property
    def saw(self) -> Fraction:
        """The setting from square for a plain miter, half of what the walls turn by."""
        return abs(STRAIGHT - self.degrees) / 2

    @property
    def point(self) -> Fraction:
        """The angle at the point of the mitered board."""
        return SQUARE - self.saw


@remembered
def parse_degrees(text: str) -> Fraction:
    """Degrees as written, exactly: "91", "88.5", "90.25°". Raises `AngleError`.

    >>> parse_degrees("88.5°")
    Fraction(177, 2)
    """
    plain = text.strip().removesuffix("°").removesuffix("degrees").removesuffix("deg").strip()
    digits = plain.replace(".", "", 1)
    if not (digits.isascii() and digits.isdigit() and len(plain) <= 12 and plain[0] != "."):
        raise AngleError("not-degrees", at=0, text=quote(text))
    return Fraction(plain.rstrip("."))


def derive_corner_by_gauge(turn: str, gauge: Fraction, text: str = "") -> Corner:
    """What an angle gauge read (inside: in the corner; outside: wrapped round it) to the room-side corner.

    It is taken to be off by half of the last place written, and never less than a tenth of a degree.

    >>> derive_corner_by_gauge("outside", Fraction(91)).degrees
    Fraction(269, 1)
    """
    shown = text or f"{float(gauge):g}"
    if gauge > STRAIGHT and gauge < 2 * STRAIGHT:
        raise AngleError("wrong-turn", turn=turn, text=shown, other=f"{float(2 * STRAIGHT - gauge):g}")
    if not 0 < gauge < STRAIGHT:
        raise AngleError("no-corner", text=shown)
    places = len(shown.strip().rstrip("°").partition(".")[2])
    plus_minus = max(Fraction(1, 2 * 10**places), GAUGE_AT_BEST)
    return Corner(turn, gauge if turn == "inside" else 2 * STRAIGHT - gauge, plus_minus)


def derive_corner_by_sides(turn: str, a: Length, b: Length, across: Length) -> Corner:
    """Two sides along the walls and the one across between their ends, to the corner they make (law of cosines).

    At an outside corner the walls' lines are carried past it on the floor: the sides lie in the angle so drawn.
    The one across is taken to be off by half a sixteenth: dW = c·dc / (a·b·sin W).

    >>> three = [Length(Fraction(n)) for n in (36, 48, 60)]
    >>> derive_corner_by_sides("inside", *three).degrees
    Fraction(90, 1)
    """
    sides = (a.inches, b.inches, across.inches)
    if min(sides) <= 0 or 2 * max(sides) >= sum(sides):
        raise AngleError("no-triangle", sides=", ".join(str(float(side)) for side in sides))
    cosine = (sides[0] ** 2 + sides[1] ** 2 - sides[2] ** 2) / (2 * sides[0] * sides[1])
    angle = rounded(math.degrees(math.acos(cosine)))
    if not 0 < angle < STRAIGHT:  # so flat that a millionth of a degree does not tell it from a line
        raise AngleError("no-triangle", sides=", ".join(str(float(side)) for side in sides))
    off = sides[2] * THIRTY_SECOND.inches / (sides[0] * sides[1] * Fraction(math.sin(math.radians(angle))))
    degrees = angle if turn == "inside" else 2 * STRAIGHT - angle
    return Corner(turn, degrees, max(rounded(math.degrees(off)), GAUGE_AT_BEST), exact=cosine == 0)


def rounded(degrees: float) -> Fraction:
    """An angle from trigonometry, carried to a millionth of a degree so that every machine agrees on it."""
    return from_decimals(degrees)


def format_degrees(degrees: Fraction) -> str:
    """Degrees to a tenth, which is all that a saw's scale shows.

    >>> format_degrees(Fraction(179, 4)), format_degrees(Fraction(45))
    ('44.8°', '45°')
    """
    return f"{float(degrees):.1f}".removesuffix(".0") + "°"


def cotangent_of_half(corner: Fraction) -> Fraction | float:
    """cot(W/2); exact where the corner is square or straight, so that lengths there stay exact."""
    exact = COTANGENTS.get(corner)
    return 1 / math.tan(math.radians(corner / 2)) if exact is None else exact


def tangent(degrees: Fraction) -> Fraction | float:
    """The tangent of a saw's setting; exact where the cut is square, or at half of that."""
    exact = TANGENTS.get(degrees)
    return math.tan(math.radians(degrees)) if exact is None else exact


def scaled(length: Length, factor: Fraction | float) -> Length:
    """A length times a factor from an angle: exact while the factor is."""
    if isinstance(factor, Fraction):
        return length * factor
    return Length.approximate(float(length.inches) * factor)


def derive_front_minus_back(thickness: Length, corner: Corner, meets: Length | None = None) -> Length:
    """How much longer a mitered board's face is than its back, per end: -(t' + t·cos W) / sin W.

    With equal boards that is -t·cot(W/2): shorter in front at an inside corner, longer at an outside one. Geometry.

    >>> derive_front_minus_back(Length(Fraction(9, 16)), derive_corner_by_gauge("outside", Fraction(90))).inches
    Fraction(9, 16)
    """
    if meets is None or meets == thickness:
        return -scaled(thickness, cotangent_of_half(corner.degrees))
    if corner.degrees == SQUARE:
        return -meets
    if corner.degrees == 3 * SQUARE:
        return Length(meets.inches, meets.exact)
    if corner.degrees == STRAIGHT:
        return Length(Fraction(0))
    turn = math.radians(corner.degrees)
    return Length.approximate(-(float(meets.inches) + float(thickness.inches) * math.cos(turn)) / math.sin(turn))


def derive_saw(thickness: Length, corner: Corner, meets: Length | None = None) -> Fraction:
    """The saw's setting from square for a board mitered in a corner: atan(|t' + t·cos W| / (t·sin W)). Geometry.

    Not from the rounded length that the face gains: of thin boards a millionth of an inch shows in the setting.

    >>> derive_saw(Length(Fraction(1)), derive_corner_by_gauge("inside", Fraction(90)), Length(Fraction(2)))
    Fraction(63434949, 1000000)
    """
    if meets is None or meets == thickness:
        return corner.saw
    if corner.degrees == STRAIGHT:
        return Fraction(0)
    turn, own = math.radians(corner.degrees), float(thickness.inches)
    return rounded(math.degrees(math.atan2(abs(float(meets.inches) + own * math.cos(turn)), own * abs(math.sin(turn)))))
