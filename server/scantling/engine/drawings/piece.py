"""A piece in a list: small, its length not to scale, its ends leaning the way they are cut.

It lies as at the saw, back or outer edge to the fence at the top and face to the person, so that no hand is mistaken.
"""

from scantling.engine.drawings import svg
from scantling.engine.drawings.board import derive_lean, say_edges
from scantling.engine.trim.ends import End
from scantling.engine.trim.piece import Piece
from scantling.engine.words import say

WIDTH = 200.0
HEIGHT = 34.0
TOP, BOTTOM = 8.0, 28.0
SIDE = 30.0
LEAN = 16.0


def draw_piece(piece: Piece) -> str:
    """The piece as SVG text: a wall's dashes over the edge at the fence, a cope drawn as the curve it is cut to."""
    left_above, left_below = derive_lean(piece.left, BOTTOM - TOP, LEAN)
    right_above, right_below = derive_lean(piece.right, BOTTOM - TOP, LEAN)
    board = (
        f"M{svg.number(SIDE - left_above)} {svg.number(TOP)}H{svg.number(WIDTH - SIDE + right_above)}"
        f"{_side(piece.right, WIDTH - SIDE + right_above, WIDTH - SIDE + right_below, TOP, BOTTOM)}"
        f"H{svg.number(SIDE - left_below)}"
        f"{_side(piece.left, SIDE - left_below, SIDE - left_above, BOTTOM, TOP)}Z"
    )
    parts = [
        svg.line((SIDE - LEAN, TOP - 4), (WIDTH - SIDE + LEAN, TOP - 4), "pencil dashed"),
        svg.path(board, "ink wood"),
    ]
    left, right = piece.left.shown, piece.right.shown
    title = say("drawn-on-saw", letter=piece.letter, lies=say_edges(piece), left=left, right=right)
    return svg.drawing(WIDTH, HEIGHT, title, parts)


def _side(end: End, start: float, finish: float, y_start: float, y_finish: float) -> str:
    if end.joint != "cope":
        return f"L{svg.number(finish)} {svg.number(y_finish)}"
    middle, half = (start + finish) / 2, (y_start + y_finish) / 2
    return (
        f"Q{svg.number(start)} {svg.number(half)} {svg.number(middle)} {svg.number(half)}"
        f"T{svg.number(finish)} {svg.number(y_finish)}"
    )
