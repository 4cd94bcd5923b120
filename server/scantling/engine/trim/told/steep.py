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
from scantling.engine.words import say

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
        deep = max(WEDGE, end.saw - most)
        may_cope = end.corner and end.corner.turn == "inside" and end.joint == "miter"
        wants, turns, wedge, left_over = map(format_degrees, (end.saw, most, deep, end.saw - deep))
        yield say("steep-or-cope" if may_cope else "steep", end=say(f"end-{side}"), wants=wants, turns=turns,
                  wedge=wedge, left_over=left_over)  # fmt: skip
