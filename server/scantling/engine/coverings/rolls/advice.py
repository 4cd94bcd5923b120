"""Advice on buying rolls: a smaller trim that saves some, a spare, one batch. Common practice, no source."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from scantling.engine.coverings.rolls.roll import Roll
from scantling.engine.coverings.rolls.strips import RollCounts, derive_best, derive_methods, derive_pitch
from scantling.engine.tape.lengths import ZERO, Length

# Less than this, top and foot together, is no trim to cut a strip to. Common practice, no source.
LEAST_TRIM = Length(Fraction(2))
# A roll that gives so many strips more is not brought about by trimming less.
MORE_AT_MOST = 3


@dataclass(frozen=True, slots=True)
class Saving:
    """A trim that saves rolls, and how many must then be bought for certain."""

    trim: Length
    rolls: int
    saved: int


def derive_smaller_trim(roll: Roll, strips: RollCounts, height: Length, trim: Length, rolls: int) -> Saving | None:
    """The largest trim, no less than 2 in, with which fewer rolls are enough for certain; None where none is."""
    bare = height - trim
    found = []
    for tallest in _heights(roll, height):
        if LEAST_TRIM <= tallest - bare < trim:
            fewer = derive_best(derive_methods(roll, tallest), strips, roll.drop)[2]
            if fewer is not None and fewer < rolls:
                found.append(Saving(tallest - bare, fewer, rolls - fewer))
    return max(found, key=lambda saving: saving.trim, default=None)


def _heights(roll: Roll, height: Length) -> Iterator[Length]:
    """The tallest strips of which a roll, however short and wherever begun, gives one or a few more than now."""
    least = roll.least_length
    now = max(method.per_roll.guaranteed for method in derive_methods(roll, height))
    for length in dict.fromkeys((least - roll.repeat, least - roll.step)):
        for count in range(now + 1, now + 1 + MORE_AT_MOST):
            if length.inches > 0:
                yield derive_tallest(replace(roll, length=length), count)


def derive_tallest(roll: Roll, count: int) -> Length:
    """The tallest strip, its trim in it, of which a roll's printed length gives `count`; nothing where no height does.

    Of the pitches p that the pattern allows, h may be p where p fits `count` times, else what is left of the roll.

    >>> derive_tallest(Roll(Length(Fraction(20)), Length(Fraction(396)), Length(Fraction(25))), 4).inches
    Fraction(96, 1)
    """
    if not roll.repeat:
        return roll.length / count
    return max(_tallest(roll.length, count, pitch) for pitch in _pitches(roll, count))


def _pitches(roll: Roll, count: int) -> Iterator[Length]:
    """The allowed pitches about a roll's count-th part: the last that fits so often, and the first that does not."""
    for offset in {ZERO} if roll.drop == 1 else {ZERO, roll.step, roll.repeat - roll.step}:
        over = derive_pitch(roll.length / count, roll.repeat, offset)
        yield from (over - roll.repeat, over)


def _tallest(length: Length, count: int, pitch: Length) -> Length:
    return max(ZERO, min(pitch, length - pitch * (count - 1)))
