"""Short pieces: what cannot be held at the saw is cut off the end of a blank that can, and the blank has a figure.

The blank is what is held, the kerf, and the piece; held are 12 in at the least (a university shop's rule for its saws).
"""

from dataclasses import replace

from scantling.engine.standard import Standard
from scantling.engine.tape.lengths import SIXTEENTH, ZERO, Length, format_length, round_to
from scantling.engine.trim.ends import MITERED
from scantling.engine.trim.piece import Flag, Piece
from scantling.engine.words import say


def _tip(piece: Piece) -> Length:
    """Mitered at both ends, it leaves what is held with a tip of its own, which the hand does not hold."""
    ends = (piece.left, piece.right)
    mitered = all(end.joint in MITERED for end in ends)
    return min(abs(end.grows) for end in ends) if mitered else ZERO


def mark_short(piece: Piece, standard: Standard) -> Piece:
    """The piece, with the blank to cut it from where it is shorter than can be held."""
    if piece.cut >= standard.hold:
        return piece
    blank = round_to(standard.hold + standard.kerf + piece.cut + _tip(piece), SIXTEENTH, toward="up")
    message = say("short-blank", blank=format_length(blank))
    return replace(piece, blank=blank, flags=(*piece.flags, Flag("short", message, attention=False)))
