"""A board seen from above, as it lies or hangs: which edge is which, and how far each end leans.

At the fence, at the top, lies the back of what stands against a wall and the outer edge of what lies flat round an
opening; of a leaning molding, cut lying on its back, the edge that goes to the ceiling. So left at the saw is left on
the wall.
"""

import math

from scantling.engine.drawings import svg
from scantling.engine.trim.ends import AGAINST_WALL, FLAT, End, say_edge
from scantling.engine.trim.piece import Piece
from scantling.engine.words import say

# A cut of half a degree must still be seen to lean, and a very sharp one must stay on the sheet.
LEAST_LEAN = 3.0


def derive_lean(end: End, depth: float, most: float) -> tuple[float, float]:
    """How far the edge at the fence, and the one towards the person, reach past the shorter of the two at one end."""
    if end.long_edge == "none":
        return 0.0, 0.0
    lean = min(max(depth * math.tan(math.radians(min(float(end.saw), 80.0))), LEAST_LEAN), most)
    at_fence = end.edges[end.edges != AGAINST_WALL]
    return (lean, 0.0) if end.long_edge == at_fence else (0.0, lean)


def is_flat(piece: Piece) -> bool:
    return piece.left.edges == FLAT


def wave(start: svg.Point, finish: svg.Point) -> str:
    """The line that a cope is sawn along, as the rest of a path: out to one side and back past the other."""
    middle = ((start[0] + finish[0]) / 2, (start[1] + finish[1]) / 2)
    swing = ((finish[1] - start[1]) / 4, (start[0] - finish[0]) / 4)
    bend = ((start[0] + middle[0]) / 2 + swing[0], (start[1] + middle[1]) / 2 + swing[1])
    points = (bend, middle, finish)
    numbers = [svg.number(value) for point in points for value in point]
    return "Q{} {} {} {}T{} {}".format(*numbers)


def say_edges(piece: Piece) -> str:
    """How a piece lies at the saw, in words."""
    if piece.left.edges == AGAINST_WALL:
        return say("lies-against-wall")
    return say("lies-flat", edge=say_edge(piece.left.edges[1]))
