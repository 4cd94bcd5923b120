"""Boards to scale, one under the other: letters, kerfs, what is left over, and the marks from the fresh end."""

from collections.abc import Iterator, Sequence

from scantling.engine.boards.case import Case, PlannedBoard
from scantling.engine.boards.cuts import Ends
from scantling.engine.boards.marks import derive_places
from scantling.engine.drawings import svg
from scantling.engine.lengths import ZERO, Length, format_length
from scantling.engine.standard import format_stock

WIDTH = 340.0
BAR = 26.0
PITCH = 72.0
# A mark needs so much room for its figure; closer ones are left to the list beside the drawing.
MARK_WIDTH = 44.0
# A slanted end is drawn leaning by so much at most: a miter through an inch of wood is a hair at this scale.
LEAN = 5.0


def draw_boards(case: Case, boards: Sequence[PlannedBoard], letters: Sequence[str]) -> str:
    """Every board of a plan as SVG text; `letters` name the case's pieces."""
    longest = max(case.stock[board.stock].length for board in boards)
    scale = (WIDTH - 2) / float(longest.inches)
    parts = [part for row, board in enumerate(boards) for part in _draw_board(case, board, letters, row, scale)]
    return svg.drawing(WIDTH, PITCH * len(boards), f"{len(boards)} boards and what is cut from each", parts)


def _draw_board(case: Case, board: PlannedBoard, letters: Sequence[str], row: int, scale: float) -> Iterator[str]:
    whole = case.stock[board.stock].length
    top = row * PITCH + 20
    yield svg.text((1, top - 6), f"{row + 1} · {format_stock(whole)}", "small strong", "start")
    yield svg.text((WIDTH - 1, top - 6), f"{format_length(board.offcut)} left", "small pencil", "end")
    yield _bar(1, 1 + float(whole.inches) * scale, top, "pencil dashed")
    fresh = 1 + float(case.end_trim.inches) / 2 * scale
    told = -MARK_WIDTH
    for place, (first, last) in zip(board.pieces, derive_places(case, board), strict=True):
        start, end = (fresh + float(at.inches) * scale for at in (first, last))
        ends = case.ends[place] if case.ends else Ends()
        yield _piece(start, end, top, ends)
        yield svg.text(((start + end) / 2, top + BAR / 2 + 5), letters[place], "letter")
        if end - told >= MARK_WIDTH:
            at = (max(min(end, WIDTH - 2), MARK_WIDTH), top + BAR + 14)
            yield svg.text(at, _mark(last), "small pencil", "end")
            told = at[0]


def _mark(mark: Length) -> str:
    return format_length(mark).rstrip('"')


def _piece(start: float, end: float, top: float, ends: Ends) -> str:
    """A piece as it lies at the fence: its back at the far edge, its face at the near one."""
    left, right = _lean(ends.left.grows, end - start), _lean(ends.right.grows, end - start)
    back, face = (start + max(0.0, left), end - max(0.0, right)), (start - min(0.0, left), end + min(0.0, right))
    corners = [(back[0], top), (back[1], top), (face[1], top + BAR), (face[0], top + BAR)]
    return svg.polygon(corners, "ink wood")


def _lean(grows: Length, width: float) -> float:
    """How far an end leans, in the drawing: to the face's side where the face is longer there."""
    lean = min(LEAN, width / 3)
    return 0.0 if grows == ZERO else lean if grows > ZERO else -lean


def _bar(start: float, end: float, top: float, classes: str) -> str:
    return svg.polygon([(start, top), (end, top), (end, top + BAR), (start, top + BAR)], classes)
