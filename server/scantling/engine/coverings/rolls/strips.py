"""Strips: how many come from one roll, how many the walls need, and so how many rolls.

Exact, by the pitch from one strip's top to the next one's on the roll. The last strip of a roll needs its own height,
no whole pitch. Counting by area promises strips that the pattern does not let the roll give.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.coverings.rolls.roll import Roll
from scantling.engine.tape.lengths import ZERO, Length
from scantling.engine.words import say

ONE_ROLL, SEPARATE, IN_TURN = say("strips-one-roll"), say("strips-separate"), say("strips-in-turn")
RIGHT, LEFT = say("strips-to-right"), say("strips-to-left")


@dataclass(frozen=True, slots=True)
class RollCounts:
    """As the label says, and as the worst roll within its tolerance, begun at the worst place, still gives."""

    nominal: int
    guaranteed: int


@dataclass(frozen=True, slots=True)
class Method:
    """One way to cut a roll. `hang`: the direction to hang in, where it matters; `cycle`: strips until one is as the
    first, in the order they are cut."""

    name: str
    pitch: Length
    per_roll: RollCounts
    hang: str = ""
    cycle: int = 1


def derive_pitch(height: Length, repeat: Length, offset: Length = ZERO) -> Length:
    """From one strip's top to the next one's: the least k·R + offset that is no less than the strip.

    >>> derive_pitch(Length(Fraction(96)), Length(Fraction(25)), Length(Fraction(25, 2))).inches
    Fraction(225, 2)
    """
    if not repeat:
        return height
    return repeat * max(0, math.ceil((height - offset) / repeat)) + offset


def derive_methods(roll: Roll, height: Length) -> list[Method]:
    """Every way to cut strips of a height (its trim in it) from a roll, the best first.

    For a pattern that comes level after n strips: all strips of a roll alike, and as many rolls as places in the
    pattern; or each strip the one that hangs next, where the pattern goes down a roll by R/n or by (n − 1)·R/n.
    """
    if roll.drop == 1:
        return [_method(roll, height, IN_TURN, derive_pitch(height, roll.repeat))]
    ways = [_method(roll, height, SEPARATE, derive_pitch(height, roll.repeat))]
    # What stands at the ceiling on the strip to the right stood a step higher up the roll.
    offsets = {RIGHT: roll.repeat - roll.step, LEFT: roll.step}
    for hang, offset in offsets.items() if roll.drop > 2 else [("", roll.step)]:
        ways.append(_method(roll, height, ONE_ROLL, derive_pitch(height, roll.repeat, offset), hang, roll.drop))
    return sorted(ways, key=lambda way: (-way.per_roll.guaranteed, -way.per_roll.nominal, way.name != ONE_ROLL))


def _method(roll: Roll, height: Length, name: str, pitch: Length, hang: str = "", cycle: int = 1) -> Method:
    least = roll.least_length
    anywhere = strips_from(least - roll.repeat, height, pitch)
    # A whole number of cycles has the same strips in it whichever comes first, so a roll may begin at the nearest.
    any_first = strips_from(least - roll.repeat / cycle, height, pitch) // cycle * cycle
    counts = RollCounts(strips_from(roll.length, height, pitch), max(anywhere, any_first))
    return Method(name, pitch, counts, hang, cycle)


def strips_from(length: Length, height: Length, pitch: Length) -> int:
    """Strips from so much of a roll: 1 + ⌊(L − h) / pitch⌋, and none from less than one strip.

    >>> strips_from(Length(Fraction(396)), Length(Fraction(96)), Length(Fraction(100)))
    4
    """
    if length < height or length.inches <= 0:
        return 0
    return 1 + (length - height).inches // pitch.inches


def derive_strips(widths: Iterable[Length], roll: Roll) -> RollCounts:
    """Strips side by side over runs between breaks, each begun with a new strip; the last of a run needs no overlap."""
    runs = [width for width in widths if width]
    least = roll.least()
    return RollCounts(*(sum(strips_over(run, one) for run in runs) for one in (roll, least)))


def strips_over(run: Length, roll: Roll) -> int:
    """Strips over one run: the first covers its width, each further one its width less the overlap.

    >>> strips_over(Length(Fraction(120)), Roll(Length(Fraction(41, 2)), Length(Fraction(396))))
    6
    """
    return max(1, math.ceil((run - roll.overlap) / roll.covers))


def derive_rolls(strips: int, per_roll: int, method: Method, drop: int) -> int | None:
    """Rolls for so many strips; None where a roll gives none. Separate rolls are counted for each place in the pattern.

    >>> derive_rolls(11, 3, Method(SEPARATE, Length(Fraction(96)), RollCounts(3, 3)), 2)
    4
    """
    if not per_roll:
        return None
    if method.name != SEPARATE:
        return math.ceil(Fraction(strips, per_roll))
    return sum(math.ceil(Fraction(share, per_roll)) for share in shares(strips, drop))


def shares(strips: int, drop: int) -> list[int]:
    """How many strips hang at each place in the pattern."""
    return [strips // drop + (place < strips % drop) for place in range(drop)]


def derive_best(methods: Sequence[Method], strips: RollCounts, drop: int) -> tuple[Method, int | None, int | None]:
    """The method that buys fewest rolls for certain, then by the label; with its rolls, nominal and guaranteed."""

    def bought(method: Method) -> tuple[int | None, int | None]:
        nominal = derive_rolls(strips.nominal, method.per_roll.nominal, method, drop)
        return nominal, derive_rolls(strips.guaranteed, method.per_roll.guaranteed, method, drop)

    def rank(method: Method) -> tuple[float, float]:
        nominal, guaranteed = bought(method)
        return (math.inf if guaranteed is None else guaranteed, math.inf if nominal is None else nominal)

    best = min(methods, key=rank)
    return best, *bought(best)
