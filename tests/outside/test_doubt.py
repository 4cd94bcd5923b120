"""The ± of a length against an independent Monte Carlo, as JCGM 101:2008 has it, and against figures of the GUM."""

from fractions import Fraction
from math import sqrt
from random import Random

import pytest
from scantling.engine.tape.lengths import ZERO, Length
from scantling.engine.trim.doubt import Doubt

THIRTY_SECOND = Length(Fraction(1, 32))
TRIALS = 40_000
SETS = {
    "a mark": [1 / 32],
    "a reading and a mark": [1 / 32] * 2,
    "right of a door: three readings and a mark": [1 / 32] * 4,
    "a chain of six": [1 / 32] * 7,
    "with a corner's worth": [1 / 32, 1 / 32, 0.0049],
    "one that outweighs the others": [1 / 8, 1 / 64, 1 / 64],
    "a lean at 84 in": [1 / 32, 1 / 32, 1 / 32, 0.109],
}


def doubt(parts):
    return Doubt.of(*(Length(Fraction(part)) for part in parts))


@pytest.mark.parametrize("parts", SETS.values(), ids=SETS)
def test_19_in_20_of_what_chance_makes_stay_within_and_hardly_more_is_told(parts):
    """Each input anywhere in its half width, drawn and summed. One that outweighs the rest has no tails: up to a fifth
    more is told than it needs."""
    random = Random(1)
    out = sorted(abs(sum(random.uniform(-part, part) for part in parts)) for _ in range(TRIALS))
    told = float(doubt(parts).plus_minus.inches)
    assert out[int(0.945 * TRIALS)] < told < out[int(0.95 * TRIALS)] * (1.06 if max(parts) < 2 * min(parts) else 1.2)
    assert told <= sum(parts)


def test_of_equal_parts_it_is_as_the_guide_has_it():
    """JCGM 100:2008, 4.3.7 (u = a/√3) and 5.1.2 (the root of the sum of squares), with 1.96 of them (table G.1)."""
    for count in (2, 3, 4, 9):
        assert float(doubt([1 / 32] * count).plus_minus.inches) == pytest.approx(1.96 / 32 * sqrt(count / 3), abs=1e-6)


def test_three_readings_and_a_mark_are_told_as_a_16th_and_not_as_an_eighth():
    found = doubt([1 / 32] * 4)
    assert (found.told, found.worst) == (Length(Fraction(1, 16)), Length(Fraction(1, 8)))


def test_nothing_in_doubt_is_nothing():
    assert Doubt.of(ZERO).parts == ()
    assert Doubt.of().plus_minus == ZERO
