"""Grain: of wood that is stained, not painted, the pieces of a board are cut in the order in which they will hang.

So what meets in a corner or round an opening comes from one stretch of the board, and figure and color run on: along
the walls from left to right, and round an opening up the left leg, across the head and down the right. Off until a
house asks for it (grain.order). Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence

from scantling.engine.tape.lengths import ZERO, Length
from scantling.engine.trim.piece import Kind, Piece

ROUND_AN_OPENING = {"left": 0, "": 1, "right": 2}


def derive_ranks(pieces: Sequence[Piece]) -> tuple[int, ...]:
    """For each piece, how many hang before it, as one walks along the walls."""
    order = sorted(range(len(pieces)), key=lambda place: (*_place(pieces[place]), place))
    ranks = [0] * len(pieces)
    for rank, place in enumerate(order):
        ranks[place] = rank
    return tuple(ranks)


def _place(piece: Piece) -> tuple[int, str, int, Length]:
    side = ROUND_AN_OPENING.get(piece.side, 1) if piece.kind in (Kind.LEG, Kind.HEAD) else 0
    return piece.wall_number, piece.opening or "", side, piece.start or ZERO
