"""A piece as it lies on the saw: back to the fence at the top, face towards you, so that no hand is mistaken.

The length is not to scale; the ends lean the way they are cut.
"""

from scantling.engine.drawings import svg
from scantling.engine.trim.ends import End
from scantling.engine.trim.piece import Piece

WIDTH = 200.0
HEIGHT = 34.0
TOP, BOTTOM = 8.0, 28.0
SIDE = 30.0
LEAN = 16.0


def draw_piece(piece: Piece) -> str:
    """The piece as SVG text: a wall's dashes over its back, a cope drawn as the curve it is cut to."""
    left_back, left_face = _edges(piece.left)
    right_back, right_face = _edges(piece.right)
    board = (
        f"M{svg.number(SIDE - left_back)} {svg.number(TOP)}H{svg.number(WIDTH - SIDE + right_back)}"
        f"{_side(piece.right, WIDTH - SIDE + right_back, WIDTH - SIDE + right_face, TOP, BOTTOM)}"
        f"H{svg.number(SIDE - left_face)}"
        f"{_side(piece.left, SIDE - left_face, SIDE - left_back, BOTTOM, TOP)}Z"
    )
    parts = [
        svg.line((SIDE - LEAN, TOP - 4), (WIDTH - SIDE + LEAN, TOP - 4), "pencil dashed"),
        svg.path(board, "ink wood"),
    ]
    ends = f"left end {piece.left.shown}, right end {piece.right.shown}"
    return svg.drawing(WIDTH, HEIGHT, f"Piece {piece.letter} on the saw, back to the fence: {ends}", parts)


def _edges(end: End) -> tuple[float, float]:
    """How far back and face reach outwards at one end."""
    lean = 0.0 if not end.saw else LEAN if end.joint in ("miter", "cope") else 4.0
    return (lean, 0.0) if end.long_edge == "back" else (0.0, lean)


def _side(end: End, start: float, finish: float, y_start: float, y_finish: float) -> str:
    if end.joint != "cope":
        return f"L{svg.number(finish)} {svg.number(y_finish)}"
    middle, half = (start + finish) / 2, (y_start + y_finish) / 2
    return (
        f"Q{svg.number(start)} {svg.number(half)} {svg.number(middle)} {svg.number(half)}"
        f"T{svg.number(finish)} {svg.number(y_finish)}"
    )
