"""Returns together: each is cut off the end of a board that can be held, and all of one profile off the same.

So they have one note and one blank: what is held, and a kerf and a return for each. Common practice, no source.
"""

from collections.abc import Sequence
from dataclasses import replace

from scantling.engine.standard import Standard
from scantling.engine.tape.lengths import SIXTEENTH, Length, format_length, round_to
from scantling.engine.trim.piece import Flag, Piece
from scantling.engine.words import say

# What is told of a return by itself, and here of them all.
OF_EACH = ("glue", "short")


def gather_returns(pieces: Sequence[Piece], standard: Standard) -> list[Piece]:
    """The pieces, the first return of each profile with what is true of them all, and the others without it."""
    small = [piece for piece in pieces if piece.returns and piece.blank is not None]
    found: dict[str, Piece] = {}
    for profile in dict.fromkeys(piece.profile for piece in small):
        first, *others = (piece for piece in small if piece.profile == profile)
        blank = derive_shared_blank(standard, [piece.cut for piece in (first, *others)])
        count = len(others) + 1
        said = say("returns-all" if count > 2 else "returns-both" if others else "returns-one", count=count,
                   blank=format_length(blank))  # fmt: skip
        found[first.key] = replace(first, blank=blank, flags=(*_others(first), Flag("returns", said, attention=False)))
        found |= {piece.key: replace(piece, blank=None, flags=_others(piece)) for piece in others}
    return [found.get(piece.key, piece) for piece in pieces]


def derive_shared_blank(standard: Standard, cuts: Sequence[Length]) -> Length:
    """What to cut several short pieces from, one after another: what is held, and a kerf for each."""
    total = standard.hold
    for cut in cuts:
        total = total + standard.kerf + cut
    return round_to(total, SIXTEENTH, toward="up")


def _others(piece: Piece) -> tuple[Flag, ...]:
    return tuple(flag for flag in piece.flags if flag.key not in OF_EACH)
