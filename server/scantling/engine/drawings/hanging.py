"""A piece as it hangs, with what it meets in pencil.

What runs along a wall is seen from above, its wall at the top, by a person who stands below and faces it: left is left,
and the walls beside it leave at the angles they truly have. What goes round an opening is seen from in front.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from scantling.engine.drawings import svg
from scantling.engine.drawings.board import is_flat, wave
from scantling.engine.drawings.joints import derive_beside, derive_stops, derive_turn
from scantling.engine.drawings.round import draw_round
from scantling.engine.trim.ends import End
from scantling.engine.trim.piece import Kind, Piece
from scantling.engine.words import say

WIDTH, HEIGHT = 340.0, 172.0
LEFT, RIGHT, WALL = 74.0, 266.0, 66.0
THICK = 18.0
LONG = 46.0


@dataclass(frozen=True, slots=True)
class _Corner:
    """One end of the wall: at `x`, and `way` points from there along the wall, 1 for right and -1 for left."""

    end: End
    x: float
    way: int

    @property
    def side(self) -> str:
        return "left" if self.way > 0 else "right"

    def along(self, distance: float, out: float = 0.0) -> svg.Point:
        """A point so far along this piece's wall from the corner, and so far out into the room."""
        return (self.x + self.way * distance, WALL + out)

    def beside(self, distance: float, out: float = 0.0) -> svg.Point:
        """A point so far along the wall round the corner, and so far out from that one."""
        turn = derive_turn(self.end)
        x = distance * math.cos(turn) + out * math.sin(turn)
        return (self.x + self.way * x, WALL + distance * math.sin(turn) - out * math.cos(turn))


def draw_hanging(piece: Piece, pieces: Sequence[Piece]) -> str:
    """The piece in its place as SVG text; `pieces` are all of the room's, among them its neighbors."""
    if is_flat(piece):
        return draw_round(piece, pieces)
    if not piece.wall or piece.kind == Kind.BATTEN:
        return _draw_alone(piece)
    whole = next((one for one in pieces if one.key == piece.returns), None)
    return _draw_along(whole or piece, pieces, piece)


def _draw_along(piece: Piece, pieces: Sequence[Piece], shown: Piece) -> str:
    """What hangs along a wall; `shown` is the piece itself, or the return of one of its ends."""
    corners = [_Corner(piece.left, LEFT, 1), _Corner(piece.right, RIGHT, -1)]
    parts = [svg.line((LEFT, WALL), (RIGHT, WALL), "wall ink")]
    parts += [svg.sentence(((LEFT + RIGHT) / 2, WALL - 12), _say_wall(piece), "small pencil")]
    for corner in corners:
        parts += _draw_beside(corner, _neighbor(piece, corner.end, pieces))
        turned = shown.returns == piece.key and shown.side == corner.side
        parts += _draw_return(corner, "ink wood" if turned else "pencil sheet")
    parts += [svg.path(_board(*corners), "ink wood" if shown is piece else "pencil sheet")]
    parts += [svg.sentence(((LEFT + RIGHT) / 2, WALL + THICK / 2 + 5), piece.letter, "letter")]
    left, right = (svg.name(end.meets) for end in (piece.left, piece.right))
    parts += [svg.sentence((2, HEIGHT - 24), say("hangs-left", what=left), "small", "start")]
    parts += [svg.sentence((WIDTH - 2, HEIGHT - 24), say("hangs-right", what=right), "small", "end")]
    parts += [svg.sentence((WIDTH / 2, HEIGHT - 6), say("hangs-from-above"), "small pencil")]
    title = say("drawn-on-wall", letter=shown.letter, left=left, right=right)
    return svg.drawing(WIDTH, HEIGHT, title, parts)


def _draw_alone(piece: Piece) -> str:
    """What meets nothing that is known: a batten upright on its wall, or a person's own piece, level."""
    upright = piece.kind == Kind.BATTEN
    x, y, wide, tall = (WIDTH / 2 - 11, 16.0, 22.0, 112.0) if upright else (LEFT, WALL, RIGHT - LEFT, THICK)
    box = [(x, y), (x + wide, y), (x + wide, y + tall), (x, y + tall)]
    on_wall = say("hangs-on-wall", place=piece.place, number=piece.wall_number)
    words = on_wall if upright else say("hangs-where-you-say")
    parts = [
        svg.polygon(box, "ink wood"),
        svg.sentence((x + wide / 2, y + tall / 2 + 5), piece.letter, "letter"),
        svg.sentence((WIDTH / 2, HEIGHT - 24), svg.name(words), "small pencil"),
    ]
    if upright:
        parts.append(svg.line((LEFT, y + tall), (RIGHT, y + tall), "ink thin"))
    return svg.drawing(WIDTH, HEIGHT, say("drawn-where-it-goes", letter=piece.letter), parts)


def _draw_return(corner: _Corner, classes: str) -> Iterator[str]:
    if corner.end.joint == "return":
        yield svg.polygon([corner.along(0), corner.along(THICK), corner.along(0, THICK)], classes)


def _say_wall(piece: Piece) -> str:
    return say("wall", number=piece.wall_number) if piece.wall_number else say("hangs-on-its-wall")


def _neighbor(piece: Piece, end: End, pieces: Sequence[Piece]) -> Piece | None:
    """The board of the same kind that comes round the corner."""
    if end.corner is None:
        return None
    side = end is piece.left
    others = (other for other in pieces if other.kind == piece.kind and other.key != piece.key)
    return next((other for other in others if (other.right if side else other.left).at == end.at), None)


def _ends(corner: _Corner) -> tuple[svg.Point, svg.Point]:
    """Where the back and the face of the piece end."""
    back, face = derive_stops(corner.end, THICK)
    return corner.along(back), corner.along(face, THICK)


def _board(left: _Corner, right: _Corner) -> str:
    left_back, left_face = _ends(left)
    right_back, right_face = _ends(right)
    return (
        f"M{_at(left_back)}L{_at(right_back)}{_to(right.end, right_back, right_face)}"
        f"L{_at(left_face)}{_to(left.end, left_face, left_back)}Z"
    )


def _to(end: End, start: svg.Point, finish: svg.Point) -> str:
    return wave(start, finish) if end.joint == "cope" else f"L{_at(finish)}"


def _at(point: svg.Point) -> str:
    return f"{svg.number(point[0])} {svg.number(point[1])}"


def _draw_beside(corner: _Corner, neighbor: Piece | None) -> Iterator[str]:
    if corner.end.corner is None:
        yield from _draw_stop(corner)
        return
    yield svg.line(corner.along(0), corner.beside(LONG), "wall pencil")
    if neighbor is None:
        return
    back, face = derive_beside(corner.end, THICK)
    board = [corner.beside(back), corner.beside(LONG), corner.beside(LONG, THICK), corner.beside(face, THICK)]
    yield svg.polygon(board, "pencil sheet")
    x, y = corner.beside(LONG - 10, THICK / 2)
    yield svg.sentence((x, y + 4), neighbor.letter, "small pencil strong")


def _draw_stop(corner: _Corner) -> Iterator[str]:
    """What stops the piece short of a corner: casing or a thing, or nothing where it ends in the air."""
    if corner.end.open:
        yield svg.line(corner.along(0), corner.along(-LONG), "wall pencil dashed")
        return
    yield svg.line(corner.along(-16), corner.along(-LONG), "pencil dashed")
    stop = [corner.along(0), corner.along(-16), corner.along(-16, THICK + 4), corner.along(0, THICK + 4)]
    yield svg.polygon(stop, "pencil sheet")
