"""Steep miters: an end that wants more of the saw than it turns, and what to do instead.

Many miter saws stop a little past 50 degrees; how far one turns, its own scale says (saw.range). A wedge at the fence
takes the rest: the board lies along the wedge, and the saw is set to what is left. Common practice, no source.
"""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from scantling.engine.standard import Standard
from scantling.engine.tape.angles import format_degrees
from scantling.engine.trim.ends import End
from scantling.engine.trim.piece import Flag, Piece

# What a wedge is cut to, and what is then left for the saw to do. Common practice, no source.
WEDGE = Fraction(15)


def mark_steep(piece: Piece, standard: Standard) -> Piece:
    """The piece, with a warning for each end that its saw does not turn to."""
    said = tuple(Flag("steep", message) for message in say_steep(piece.left, piece.right, standard.saw_range))
    return replace(piece, flags=(*piece.flags, *said)) if said else piece


def say_steep(left: End, right: End, most: Fraction, sides: tuple[str, str] = ("left", "right")) -> Iterator[str]:
    """What is wrong with an end that is steeper than the saw turns, and what to do."""
    for side, end in zip(sides, (left, right), strict=True):
        if end.saw <= most or not end.leans:
            continue
        wedge = max(WEDGE, end.saw - most)
        left_over = format_degrees(end.saw - wedge)
        cope = ", or cope it" if end.corner and end.corner.turn == "inside" and end.joint == "miter" else ""
        wants, turns = format_degrees(end.saw), format_degrees(most)
        how = f"clamp it along a wedge of {format_degrees(wedge)} at the fence and set {left_over}{cope}"
        yield f"Its {side} end wants {wants} on the saw, which turns to {turns}: {how}."
