"""Fasteners: long enough to hold, not so long that they reach what lies behind, and how many.

Into framing at least 3/4 in (articles on trim, two). A cable may lawfully lie 1 1/4 in from the face of a stud (NEC
300.4(A)(1)), and a pipe nearer: a nail that goes deeper is told of.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.supplies.beads import SupplyError
from scantling.engine.tape.lengths import ZERO, Length, format_length

BITE = Length(Fraction(3, 4))
CABLE = Length(Fraction(5, 4))
# Casing nails in pairs about 16 in apart; base two to each stud: NAVEDTRA 14044, interior finish of walls.
APART = Length(Fraction(16))
ROWS = 2
# Lengths that nails for trim are sold in; by the penny 2d is 1 in and each penny a quarter more, to 10d.
LENGTHS = tuple(Length(Fraction(quarters, 4)) for quarters in range(3, 13))
MOST = 100_000
# What a nail goes into: the framing, a jamb, or the base that shoe and cap lie on.
STUD, JAMB, BASE = "stud", "jamb", "base"


@dataclass(frozen=True, slots=True)
class Nail:
    """`bite` is how far it goes into the stud; `deep` where that is farther than a cable may lawfully be off."""

    length: Length
    bite: Length
    deep: bool


def derive_least(through: Sequence[Length], bite: Length = BITE) -> Length:
    """What a nail must reach: all it goes through, and its bite into the framing.

    >>> from scantling.engine.tape.lengths import parse_length
    >>> derive_least([parse_length("9/16"), parse_length("1/2")]).inches
    Fraction(29, 16)
    """
    return sum(through, start=ZERO) + bite


def choose_nail(
    name: str,
    through: Sequence[Length],
    lengths: Sequence[Length] = LENGTHS,
    bite: Length = BITE,
    into: str = STUD,
) -> Nail:
    """The shortest nail that bites as far as it must. Raises `SupplyError` where none given is as long."""
    least = derive_least(through, bite)
    long = [length for length in sorted(lengths) if length >= least]
    if not long:
        raise SupplyError("no-length", name=name, need=format_length(least))
    return judge_nail(through, long[0], into)


def judge_nail(through: Sequence[Length], length: Length, into: str = STUD) -> Nail:
    """How far a nail goes in; only what goes into a stud can reach a cable there.

    >>> from scantling.engine.tape.lengths import parse_length
    >>> judge_nail([parse_length("9/16"), parse_length("1/2")], parse_length("2 1/2")).deep
    True
    """
    bite = length - sum(through, start=ZERO)
    return Nail(length, bite, into == STUD and bite > CABLE)


def derive_count(along: Length, apart: Length = APART, rows: int = ROWS) -> int:
    """Nails along a length: one at its start and one every `apart`, in so many rows.

    >>> from scantling.engine.tape.lengths import parse_length
    >>> derive_count(parse_length("82"))
    12
    """
    return rows * (int(along.inches // apart.inches) + 1)


def count_nails(pieces: Iterable[Length], apart: Length = APART, rows: int = ROWS) -> int:
    """Nails in pieces that each begin with one.

    >>> from scantling.engine.tape.lengths import parse_length
    >>> count_nails([parse_length("82"), parse_length("30")])
    16
    """
    return sum(derive_count(piece, apart, rows) for piece in pieces)


def derive_boxes(count: int, box: int) -> int:
    return math.ceil(Fraction(count, box))
