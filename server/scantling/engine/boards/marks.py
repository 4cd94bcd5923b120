"""Where to mark a board: the end of each piece, from the fresh end that is left when the first end is trimmed."""

from scantling.engine.boards.case import Case, PlannedBoard
from scantling.engine.lengths import ZERO, Length


def derive_marks(case: Case, board: PlannedBoard) -> tuple[Length, ...]:
    """One mark a piece, in cutting order, kerfs between them counted: cut on the far side of each."""
    marks, at = [], ZERO
    for place in board.pieces:
        at = at + case.pieces[place]
        marks.append(at)
        at = at + case.kerf
    return tuple(marks)
