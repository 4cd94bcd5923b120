"""What a tape, a pencil and a gauge are worth: the figures that a ± is made of, and what a joint can bear of it.

A joint bears the gap that the standard allows (joint.gap): 1/16 by default, which is how far a miter may stand open in
a remodeling performance standard, interior finishes. The rest is common practice, no source.
"""

from dataclasses import replace
from fractions import Fraction

from scantling.engine.standard import Standard
from scantling.engine.tape.lengths import SIXTY_FOURTH, THIRTY_SECOND, format_length
from scantling.engine.trim.piece import Flag, Piece, Step
from scantling.engine.words import say

# Half a graduation of the tape at every reading, and as much at the pencil mark.
READING = THIRTY_SECOND
MARK = THIRTY_SECOND
# A corner that far from square shows when it is cut at 45.
NOT_SQUARE = Fraction(1, 4)
# An end that nothing comes up to takes up whatever its piece is out by; so does the lap of a scarf, slid along.
FREE = ("return", "scarf", "scribe")


def tell_doubt(piece: Piece) -> Piece:
    """The piece, with a line on the worst that its ± may be, where that is more than the ± that is told."""
    if piece.doubt.worst <= piece.doubt.told:
        return piece
    likely, worst = format_length(piece.doubt.plus_minus, THIRTY_SECOND), format_length(piece.doubt.worst, SIXTY_FOURTH)
    said = say("doubt-worst", likely=likely, worst=worst, count=len(piece.doubt.parts))
    return replace(piece, working=(*piece.working, Step(said)))


def mark_in_place(piece: Piece, standard: Standard) -> Piece:
    """The piece, to be measured in place where its ± is more than its joints bear: both its ends are held."""
    joints = (piece.left, piece.right)
    out = piece.doubt.told
    if (
        piece.measured
        or out <= standard.joint_gap
        or any(end.joint in FREE or end.open or end.caulked for end in joints)
    ):
        return piece
    bears, leave = (format_length(each, THIRTY_SECOND) for each in (standard.joint_gap, out))
    message = say("measure-in-place", bears=bears, leave=leave)
    return replace(piece, flags=(*piece.flags, Flag("measure-in-place", message)))
