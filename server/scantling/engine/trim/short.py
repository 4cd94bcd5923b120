"""Short pieces: what cannot be held at the saw is cut off the end of a blank that can, and the blank has a figure.

The blank is what is held, the kerf, and the piece; held are 12 in at the least (a university shop's rule for its saws).
"""

from dataclasses import replace

from scantling.engine.lengths import SIXTEENTH, format_length, round_to
from scantling.engine.standard import Standard
from scantling.engine.trim.piece import Flag, Piece


def mark_short(piece: Piece, standard: Standard) -> Piece:
    """The piece, with the blank to cut it from where it is shorter than can be held."""
    if piece.cut >= standard.hold:
        return piece
    blank = round_to(standard.hold + standard.kerf + piece.cut, SIXTEENTH, toward="up")
    message = f"Too short to hold at the saw: cut it from the end of a blank of {format_length(blank)} or more."
    return replace(piece, blank=blank, flags=(*piece.flags, Flag("short", message)))
