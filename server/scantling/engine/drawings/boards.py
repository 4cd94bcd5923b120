"""A board to scale: letters, kerfs, what is left over, and the marks from the fresh end.

Each is a drawing of its own, all of a plan at one scale, so that a page may put them under each other, and a sheet of
paper beside each other, with none torn in two.
"""

from collections.abc import Iterator, Sequence

from scantling.engine.boards.case.cuts import Ends
from scantling.engine.cutlist.states import TO_CUT
from scantling.engine.drawings import svg
from scantling.engine.rack.stick import SPOILT, Laid, LaidStick
from scantling.engine.standard import format_stock
from scantling.engine.tape.lengths import ZERO, Length, format_bare, format_length
from scantling.engine.words import say

WIDTH = 340.0
BAR = 26.0
# Over the bar stand the board's own words, and between them and the bar the letters that find no room on it.
WORDS, OVER, FOOT = 18.0, 16.0, 6.0
# A mark needs so much room for its figure; where the one before leaves less, it goes onto the second line.
MARK_WIDTH = 50.0
MARK_LINES = (14.0, 26.0)
# A letter needs so much room; where a piece has less, it goes over the board, and a line leads from it to the piece.
# Two letters stand by themselves where so much is between them: AL AP, not ALAP.
LETTER_WIDTH, APART = 10.0, 6.0
# A slanted end is drawn leaning by so much at most: a miter through an inch of wood is a hair at this scale.
LEAN = 5.0


def draw_boards(sticks: Sequence[LaidStick], end_trim: Length) -> list[str]:
    """Every board as SVG text; what is cut already in pencil, what is still to be cut as wood."""
    longest = max(laid.stick.length for laid in sticks)
    scale = (WIDTH - 2) / float(longest.inches)
    return [_draw_board(laid, end_trim, number, scale) for number, laid in enumerate(sticks, start=1)]


def _draw_board(laid: LaidStick, end_trim: Length, number: int, scale: float) -> str:
    whole = laid.stick.length
    fresh = 1 + float(end_trim.inches) / 2 * scale
    spans = [tuple(fresh + float(at.inches) * scale for at in (piece.start, piece.end)) for piece in laid.laid]
    crowded = any(end - start < _wide(piece) for piece, (start, end) in zip(laid.laid, spans, strict=True))
    top = WORDS + (OVER if crowded else 0)
    marks, lines = _marks(laid.laid, spans, top)
    words, left = f"{number} · {format_stock(whole)}", say("drawn-board-left", length=format_length(laid.offcut))
    parts = [
        svg.text((1, WORDS - 6), words, "small strong", "start"),
        svg.text((WIDTH - 1, WORDS - 6), left, "small pencil", "end"),
        _bar(1, 1 + float(whole.inches) * scale, top, "pencil dashed"),
        *_pieces(laid.laid, spans, top),
        *marks,
    ]
    return svg.drawing(WIDTH, top + BAR + lines + FOOT, say("drawn-board", board=words), parts)


def _wide(piece: Laid) -> float:
    return LETTER_WIDTH * len(piece.line.letter)


def _pieces(laid: Sequence[Laid], spans: Sequence[tuple[float, ...]], top: float) -> Iterator[str]:
    """Each with its letter, on it or over it."""
    over = 0.0
    for piece, (start, end) in zip(laid, spans, strict=True):
        parts = [_piece(start, end, top, piece)]
        middle, wide = (start + end) / 2, _wide(piece)
        at = (middle, top + BAR / 2 + 5)
        if end - start < wide:
            at = (min(max(middle, over + wide / 2), WIDTH - wide / 2), top - 6)
            over = at[0] + wide / 2 + APART
            parts.append(svg.line((at[0], top - 4), (middle, top + BAR / 3), "pencil"))
        parts.append(svg.text(at, piece.line.letter, _letter_classes(piece)))
        yield from (svg.lettered([piece.line.letter], part) for part in parts)


def _marks(laid: Sequence[Laid], spans: Sequence[tuple[float, ...]], top: float) -> tuple[list[str], float]:
    """The figures under the board, and how far down they go."""
    told = [-MARK_WIDTH for _ in MARK_LINES]
    said, down = [], 0.0
    for piece, (_, end) in zip(laid, spans, strict=True):
        line = next((at for at, last in enumerate(told) if end - last >= MARK_WIDTH), None)
        if piece.mark is not None and line is not None:
            at = (max(min(end, WIDTH - 2), MARK_WIDTH), top + BAR + MARK_LINES[line])
            said.append(svg.text(at, format_bare(piece.mark), "small pencil", "end"))
            told[line] = at[0]
            down = max(down, MARK_LINES[line])
    return said, down


def _letter_classes(piece: Laid) -> str:
    return {TO_CUT: "letter", SPOILT: "small red"}.get(piece.line.state, "small pencil")


def _piece(start: float, end: float, top: float, piece: Laid) -> str:
    """A piece as it lies at the fence: its back at the far edge, its face at the near one."""
    if piece.line.state != TO_CUT:
        return _bar(start, end, top, "pencil")
    left, right = _leans(piece.ends, end - start)
    back, face = (start + max(0.0, left), end - max(0.0, right)), (start - min(0.0, left), end + min(0.0, right))
    corners = [(back[0], top), (back[1], top), (face[1], top + BAR), (face[0], top + BAR)]
    return svg.polygon(corners, "ink wood")


def _leans(ends: Ends, width: float) -> tuple[float, float]:
    return _lean(ends.left.grows, width), _lean(ends.right.grows, width)


def _lean(grows: Length, width: float) -> float:
    """How far an end leans, in the drawing: to the face's side where the face is longer there."""
    lean = min(LEAN, width / 3)
    return 0.0 if grows == ZERO else lean if grows > ZERO else -lean


def _bar(start: float, end: float, top: float, classes: str) -> str:
    return svg.polygon([(start, top), (end, top), (end, top + BAR), (start, top + BAR)], classes)
