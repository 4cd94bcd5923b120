"""What a changed reading, or a board that came out otherwise, means for a piece that is already cut.

Long is trimmed, short is cut again; what the joint bears is nothing to speak of. The difference is told as it is and to
the tape. A piece that is fitted is not judged: it hangs, and the readings no longer matter to it.
"""

from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.cutlist.states import Made
from scantling.engine.tape.angles import format_degrees
from scantling.engine.tape.lengths import SIXTY_FOURTH, ZERO, Length, format_length
from scantling.engine.trim.ends import End, set_to
from scantling.engine.trim.piece import Piece
from scantling.engine.trim.told.tolerance import MARK, NOT_SQUARE
from scantling.engine.words import say

# What a joint bears without being seen: half a sixteenth, the pencil's own width. Common practice, no source.
BEARS = MARK
# A board that is off by more was cut to something else, or a reading since is wrong. Common practice, no source.
BEYOND = Length(Fraction(1, 2))


@dataclass(frozen=True, slots=True)
class Change:
    """`by` is how much the board is long (positive) or short; None where an end alone is otherwise.

    `advice` is trim, recut, doubt (the reading may be the wrong one, or the board), end (cut an end anew) or taken-up
    (another piece, still to cut, makes up for it).
    """

    advice: str
    message: str
    by: Length | None = None


def derive_change(piece: Piece, made: Made | None, nearest: Length, taken_up_by: str = "") -> Change | None:
    """What to do about a board that is cut, or None where it fits."""
    if made is None:
        return None
    if made.length is not None and abs(by := made.length - piece.cut) > BEARS:
        return _of_length(piece.letter, by, nearest, taken_up_by)
    return _of_end(piece, "left", made.left, piece.left) or _of_end(piece, "right", made.right, piece.right)


def _of_length(letter: str, by: Length, nearest: Length, taken_up_by: str) -> Change:
    shown = show_difference(abs(by), nearest)
    way = "long" if by > ZERO else "short"
    if taken_up_by:
        return Change("taken-up", say(f"taken-up-{way}", letter=letter, by=shown, other=taken_up_by), by)
    if abs(by) > BEYOND:
        return Change("doubt", say(f"doubted-{way}", letter=letter, by=shown), by)
    advice = "trim" if by > ZERO else "recut"
    return Change(advice, say(f"board-off-{advice}", letter=letter, by=shown), by)


def _of_end(piece: Piece, side: str, was: tuple[str, Fraction] | None, now: End) -> Change | None:
    if was is None or (was[0] == now.joint and abs(set_to(*was) - now.setting) < NOT_SQUARE):
        return None
    before = f"{was[0]}, {format_degrees(was[1])}"
    after = f"{now.joint}, {format_degrees(now.setting)}"
    return Change("end", say(f"recut-end-{side}", letter=piece.letter, before=before, after=after))


def show_difference(by: Length, nearest: Length) -> str:
    """Rounded to the tape, but never to nothing.

    >>> show_difference(SIXTY_FOURTH, Length(Fraction(1, 16)))
    '1/64"'
    """
    shown = format_length(by, nearest)
    return shown if shown != format_length(ZERO, nearest) else format_length(by, SIXTY_FOURTH)
