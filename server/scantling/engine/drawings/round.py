"""A board of casing as it hangs round its opening, seen from in front, its fellows in pencil.

Widths are not to scale: a leg drawn as narrow as it is would not show which way its ends lean.
"""

from collections.abc import Iterator, Sequence

from scantling.engine.drawings import svg
from scantling.engine.drawings.board import derive_lean
from scantling.engine.trim.piece import Kind, Piece
from scantling.engine.words import say

WIDTH, HEIGHT = 340.0, 236.0
LEFT, RIGHT, HEAD = 112.0, 228.0, 52.0
WIDE = 26.0
# Of a door the legs stand on the floor; a window's frame or stool ends higher up.
FLOOR, SILL = 210.0, 162.0
# What only a window has, below it.
BELOW = (Kind.STOOL, Kind.APRON, Kind.SILL)


def draw_round(piece: Piece, pieces: Sequence[Piece]) -> str:
    """The piece at its opening as SVG text."""
    fellows = [other for other in pieces if other.opening == piece.opening and other.key != piece.key]
    foot = FLOOR if not any(_is_below(other) for other in (piece, *fellows)) else SILL
    parts = [svg.line((20, FLOOR), (WIDTH - 20, FLOOR), "ink thin"), *_jambs(foot)]
    for other in fellows:
        parts += _draw_board(other, foot, "pencil sheet", "small pencil strong")
    parts += _draw_board(piece, foot, "ink wood", "letter")
    parts += [svg.sentence((WIDTH / 2, HEIGHT - 8), say("hangs-from-in-front"), "small pencil")]
    return svg.drawing(WIDTH, HEIGHT, say("drawn-round-opening", letter=piece.letter), parts)


def _is_below(piece: Piece) -> bool:
    return piece.kind in BELOW


def _jambs(foot: float) -> Iterator[str]:
    opening = [(LEFT, foot), (LEFT, HEAD), (RIGHT, HEAD), (RIGHT, foot)]
    yield svg.polyline(opening, "pencil dashed") if foot == FLOOR else svg.polygon(opening, "pencil dashed")


def _draw_board(piece: Piece, foot: float, classes: str, letter: str) -> Iterator[str]:
    points = _place(piece, foot)
    if not points:
        return
    yield svg.polygon(points, classes)
    x, y = (sum(values) / len(points) for values in zip(*points, strict=True))
    yield svg.sentence((x, y + 5), piece.letter, letter)


def _place(piece: Piece, foot: float) -> list[svg.Point]:
    """The four corners of a board where it hangs; nothing for a part that is not seen from in front."""
    kind, at_left = piece.kind, piece.side == "left"
    if kind == Kind.EXTENSION or piece.returns:
        return []
    if kind == Kind.LEG and at_left:
        # As at the saw, turned a quarter: the fence goes to the left and the left end down.
        return [(LEFT - y, foot - x) for x, y in _lying(piece, foot - HEAD)]
    if kind == Kind.LEG and not piece.side:
        middle = (LEFT + RIGHT) / 2
        return _box(middle - WIDE / 2, HEAD, middle + WIDE / 2, foot)
    if kind == Kind.LEG:
        return [(RIGHT + y, HEAD + x) for x, y in _lying(piece, foot - HEAD)]
    if kind == Kind.PLINTH:
        left = LEFT - WIDE - 4 if at_left else RIGHT - 4
        return _box(left, foot - 30, left + WIDE + 8, foot)
    if kind == Kind.STOOL:
        return _box(LEFT - WIDE - 12, foot, RIGHT + WIDE + 12, foot + 10)
    if kind == Kind.APRON:
        return _box(LEFT - WIDE, foot + 10, RIGHT + WIDE, foot + WIDE + 4)
    if kind == Kind.SILL:
        # The fence goes down, so the left end at the saw hangs at the right.
        return [(RIGHT - x, foot + y) for x, y in _lying(piece, RIGHT - LEFT)]
    return [(LEFT + x, HEAD - y) for x, y in _lying(piece, RIGHT - LEFT)]


def _box(left: float, top: float, right: float, bottom: float) -> list[svg.Point]:
    return [(left, top), (right, top), (right, bottom), (left, bottom)]


def _lying(piece: Piece, inner: float) -> list[svg.Point]:
    """The board as it lies at the saw: x along it from the end of its inner edge, y across from that to the outer."""
    left_above, left_below = derive_lean(piece.left, WIDE, WIDE)
    right_above, right_below = derive_lean(piece.right, WIDE, WIDE)
    overhang = WIDE if piece.kind == Kind.HEAD and _is_butted(piece) else 0.0
    return [(-left_below - overhang, 0.0), (inner + right_below + overhang, 0.0),
            (inner + right_above + overhang, WIDE), (-left_above - overhang, WIDE)]  # fmt: skip


def _is_butted(piece: Piece) -> bool:
    return piece.left.joint != "miter"
