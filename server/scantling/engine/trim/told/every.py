"""What is told of any piece by its length: longer than a board, to be measured in place, too short to hold, seasons.

Told once, and last: a length that was measured in place, or that makes up for another board, is the one that is cut.
"""

from collections.abc import Sequence

from scantling.engine.standard import Standard
from scantling.engine.trim.piece import Piece
from scantling.engine.trim.told.seasons import note_movement
from scantling.engine.trim.told.short import mark_short
from scantling.engine.trim.told.steep import mark_steep
from scantling.engine.trim.told.stock import mark_too_long
from scantling.engine.trim.told.together import gather_returns
from scantling.engine.trim.told.tolerance import mark_in_place, tell_doubt


def tell_all(pieces: Sequence[Piece], standard: Standard) -> list[Piece]:
    """A room's pieces, each told, and what is told of several together."""
    return gather_returns([tell(piece, standard) for piece in pieces], standard)


def tell(piece: Piece, standard: Standard) -> Piece:
    """The piece, whose length is final, with all that follows from it."""
    measured = mark_in_place(mark_too_long(tell_doubt(piece), standard), standard)
    return note_movement(standard, mark_steep(mark_short(measured, standard), standard))
