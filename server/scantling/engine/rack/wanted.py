"""Wanted: pieces of one profile as the planner takes them, by the house's own saw, trim and boards."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from scantling.engine.boards.case.case import Case, Stock
from scantling.engine.boards.case.cuts import Cut, Ends, derive_beyond
from scantling.engine.rack.grain import derive_ranks
from scantling.engine.standard import YES, Standard
from scantling.engine.tape.lengths import SIXTY_FOURTH, Length, round_to
from scantling.engine.trim.ends import FLAT, End
from scantling.engine.trim.piece import Piece


def derive_length(piece: Piece) -> Length:
    """The length of a board that a piece is, up to the next 64th: a plan may not count on less than that."""
    return Length(round_to(piece.cut, SIXTY_FOURTH, toward="up").inches)


def is_uncertain(standard: Standard, piece: Piece) -> bool:
    """Whether a piece may still come out longer than it is now: it is cut last of its board, where the slack is."""
    return piece.doubt.told > standard.joint_gap or any(flag.attention for flag in piece.flags)


def derive_ends(piece: Piece) -> Ends:
    """What the ends of a piece ask of the saw."""
    return Ends(_cut(piece.left), _cut(piece.right))


def _cut(end: End) -> Cut:
    return Cut(end.setting, end.grows, end.edges == FLAT, end.bevel or Fraction(0))


def derive_case(standard: Standard, stock: Sequence[Stock], pieces: Sequence[Piece]) -> Case:
    """The pieces as a case: each takes its own length, and where its right end is mitered the slanted kerf beyond."""
    ends = tuple(derive_ends(piece) for piece in pieces)
    beyond = tuple(derive_beyond(standard.kerf, both) for both in ends)
    return Case(
        kerf=standard.kerf,
        end_trim=standard.end_trim,
        stock=tuple(stock),
        pieces=tuple(derive_length(piece) + more for piece, more in zip(pieces, beyond, strict=True)),
        hold=standard.hold,
        ends=ends,
        beyond=beyond,
        shared_miters=standard.shared_miters == YES,
        ranks=derive_ranks(pieces) if standard.grain_order == YES else (),
        last=frozenset(place for place, piece in enumerate(pieces) if is_uncertain(standard, piece)),
    )
