"""Stock: whether any board that can be bought gives a piece of such a length.

A piece is asked for in 64ths, up: a board that is short by less than the saw can tell is short all the same.
"""

from dataclasses import replace

from scantling.engine.standard import Standard
from scantling.engine.tape.lengths import SIXTY_FOURTH, Length, format_length, round_to
from scantling.engine.trim.piece import Flag, Piece
from scantling.engine.words import say


def longest_usable(standard: Standard, profile: str) -> Length | None:
    """The longest piece that a board of a profile really gives; None where no board is on the list."""
    return standard.longest.get(profile)


def is_too_long(standard: Standard, piece: Piece) -> bool:
    """Whether a piece is longer than any board on the list."""
    longest = longest_usable(standard, piece.profile)
    return longest is not None and round_to(piece.cut, SIXTY_FOURTH, toward="up") > longest


def mark_too_long(piece: Piece, standard: Standard) -> Piece:
    """The piece, told to be longer than any board where it is."""
    longest = longest_usable(standard, piece.profile)
    if longest is None or not is_too_long(standard, piece):
        return piece
    message = say(piece.too_long, longest=format_length(longest), wall=piece.wall_number)
    return replace(piece, flags=(*piece.flags, Flag("longer-than-stock", message)))
