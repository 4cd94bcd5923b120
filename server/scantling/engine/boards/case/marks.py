"""Where to mark a board: the end of each piece, from the fresh end that is left when the first end is trimmed."""

from collections.abc import Iterator

from scantling.engine.boards.case.case import Case, PlannedBoard
from scantling.engine.boards.case.saw import saved
from scantling.engine.tape.lengths import ZERO, Length


def derive_marks(case: Case, board: PlannedBoard) -> tuple[Length, ...]:
    """One mark a piece, in cutting order, kerfs between them counted: cut on the far side of each."""
    return tuple(end for _, end in derive_places(case, board))


def derive_places(case: Case, board: PlannedBoard) -> Iterator[tuple[Length, Length]]:
    """Where each piece lies on its board, long point to long point, from the fresh end."""
    at, before = ZERO, None
    for place in board.pieces:
        beyond = case.beyond[place] if case.beyond else ZERO
        if before is not None and place in board.shared:
            at = at - (saved(case, before, place) or ZERO)
        end = at + case.pieces[place] - beyond
        yield at, end
        at, before = end + beyond + case.kerf, place
