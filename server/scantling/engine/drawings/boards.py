"""Boards to scale, one under the other: letters, kerfs, what is left over, and the marks from the fresh end."""

from collections.abc import Iterator, Sequence

from scantling.engine.boards.case import Case, Plan, PlannedBoard
from scantling.engine.boards.marks import derive_marks
from scantling.engine.drawings import svg
from scantling.engine.lengths import Length, format_length
from scantling.engine.standard import format_stock

WIDTH = 340.0
BAR = 26.0
PITCH = 72.0
# A mark needs so much room for its figure; closer ones are left to the list beside the drawing.
MARK_WIDTH = 44.0


def draw_boards(case: Case, plan: Plan, letters: Sequence[str]) -> str:
    """Every board of a plan as SVG text; `letters` name the case's pieces."""
    longest = max(case.stock[board.stock].length for board in plan.boards)
    scale = (WIDTH - 2) / float(longest.inches)
    parts = [part for row, board in enumerate(plan.boards) for part in _draw_board(case, board, letters, row, scale)]
    return svg.drawing(WIDTH, PITCH * len(plan.boards), f"{plan.count} boards and what is cut from each", parts)


def _draw_board(case: Case, board: PlannedBoard, letters: Sequence[str], row: int, scale: float) -> Iterator[str]:
    whole = case.stock[board.stock].length
    top = row * PITCH + 20
    yield svg.text((1, top - 6), f"{row + 1} · {format_stock(whole)}", "small strong", "start")
    yield svg.text((WIDTH - 1, top - 6), f"{format_length(board.offcut)} left", "small pencil", "end")
    yield _bar(1, 1 + float(whole.inches) * scale, top, "pencil dashed")
    fresh = 1 + float(case.end_trim.inches) / 2 * scale
    told = -MARK_WIDTH
    for place, mark in zip(board.pieces, derive_marks(case, board), strict=True):
        end = fresh + float(mark.inches) * scale
        start = end - float(case.pieces[place].inches) * scale
        yield _bar(start, end, top, "ink wood")
        yield svg.text(((start + end) / 2, top + BAR / 2 + 5), letters[place], "letter")
        if end - told >= MARK_WIDTH:
            at = (max(min(end, WIDTH - 2), MARK_WIDTH), top + BAR + 14)
            yield svg.text(at, _mark(mark), "small pencil", "end")
            told = at[0]


def _mark(mark: Length) -> str:
    return format_length(mark).rstrip('"')


def _bar(start: float, end: float, top: float, classes: str) -> str:
    return svg.polygon([(start, top), (end, top), (end, top + BAR), (start, top + BAR)], classes)
