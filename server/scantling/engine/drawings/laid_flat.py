"""A leaning molding laid flat on the saw, end by end: from above the edge at the fence and the swing; from in front the
blade's lean. What is kept is wood, what falls off dashed; a piece that is turned end for end for a cut has its arrow.

Angles are drawn as they are, up to where they would leave the sheet. The setting and its words are `runs.at_saw`'s.
"""

import math
from collections.abc import Iterator
from fractions import Fraction

from scantling.engine.drawings import svg
from scantling.engine.tape.angles import format_degrees
from scantling.engine.trim.ends import End
from scantling.engine.trim.footprint import LEFT
from scantling.engine.trim.piece import Piece
from scantling.engine.trim.runs.at_saw import find_lay, say_at_saw
from scantling.engine.words import say

HALF, REACH, BESIDE, ALONG = 85.0, 80.0, 43.0, 37.0
# Down from the top of the strip: the fence, the board from above and beside it the table with the board on it, the
# words on how it lies; and how thick that is, and how high the blade.
FENCE, BOARD, DEPTH, TURN, LEANS, THICK, BLADE = 16.0, 23.0, 26.0, 64.0, 79.0, 9.0, 32.0
HEIGHT = 84.0
MOST = 30.0


def is_laid_flat(piece: Piece) -> bool:
    """Whether an end of a piece has a lay of its own to draw."""
    return any(say_at_saw(end, side) for side, end in _ends(piece))


def draw_laid_flat(piece: Piece, top: float) -> Iterator[str]:
    """How each end lies and the blade leans, below what else is drawn: the left end at the left."""
    for side, end in _ends(piece):
        if say_at_saw(end, side):
            yield from _lay(end, side, HALF if side == LEFT else 3 * HALF, top)


def say_laid_flat(piece: Piece) -> str:
    """The same for whoever does not see it."""
    told = ((side, say_at_saw(end, side)) for side, end in _ends(piece))
    return "; ".join(say(f"laid-flat-{side}", words=words) for side, words in told if words)


def _ends(piece: Piece) -> tuple[tuple[str, End], tuple[str, End]]:
    return ("left", piece.left), ("right", piece.right)


def _lay(end: End, side: str, middle: float, top: float) -> Iterator[str]:
    edge, swing, keep = find_lay(end, side)
    above, front = middle - BESIDE, middle + BESIDE
    far, near = top + BOARD, top + BOARD + DEPTH
    yield svg.sentence((middle, top + FENCE - 5), say(f"edge-to-fence-{edge}"), "small lay")
    fence = [(above - ALONG, top + FENCE), (above + ALONG, top + FENCE), (above + ALONG, far), (above - ALONG, far)]
    yield svg.polygon(fence, "fence")
    # Swung right, the blade's near end is to the right.
    over = _over(DEPTH, float(end.saw)) / 2 * (-1 if swing == LEFT else 1)
    yield from _parted(above, (above - over, far), (above + over, near), keep == LEFT)
    yield svg.line((above - over, far), (above + over, near), "hand")
    yield svg.line((front - ALONG, near), (front + ALONG, near), "ink")
    lean = _over(BLADE, float(end.bevel or 0))
    yield from _parted(front, (front - lean * THICK / BLADE, near - THICK), (front, near), keep == LEFT)
    yield svg.line((front, near), (front, near - BLADE), "pencil dashed")
    yield svg.line((front, near), (front - lean, near - BLADE), "hand")
    yield from _turned(middle, top + TURN, edge == "wall")
    leans = say("blade-leans-left", bevel=format_degrees(end.bevel or Fraction(0)))
    yield svg.sentence((middle, top + LEANS), leans, "hand small")


def _over(along: float, degrees: float) -> float:
    return min(along * math.tan(math.radians(min(degrees, 80.0))), MOST)


def _parted(middle: float, far: svg.Point, near: svg.Point, keep_left: bool) -> Iterator[str]:
    """A board parted from its far or upper edge to its near or lower one: what is kept, and what falls off."""
    for outer, kept in zip((middle - ALONG, middle + ALONG), (keep_left, not keep_left), strict=True):
        corners = [(outer, far[1]), far, near, (outer, near[1])]
        yield svg.polygon(corners, "ink wood" if kept else "pencil dashed")


def _turned(middle: float, y: float, turned: bool) -> Iterator[str]:
    """In words; and where it is turned, an arrow half way round."""
    if not turned:
        yield svg.sentence((middle, y), say("lies-as-it-hangs"), "small pencil")
        return
    yield svg.sentence((middle + 8, y), say("lies-turned"), "small strong")
    x, across = middle - REACH + 6, 16.0
    start, finish = (svg.number(x), svg.number(y)), (svg.number(x + across), svg.number(y))
    yield svg.path(f"M{' '.join(start)}A8 9 0 0 1 {' '.join(finish)}", "hand")
    yield svg.polyline([(x + across - 4, y - 5), (x + across, y), (x + across + 4, y - 5)], "hand")
