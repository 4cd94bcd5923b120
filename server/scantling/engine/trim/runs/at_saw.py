"""At the saw: how a leaning molding lies flat on it, which way the blade swings and leans, and what is kept.

It lies face up on its back. The blade leans left, as every compound saw can: what would want it leaned right is turned
end for end, its other edge to the fence. Swung right, the blade's near end is to the right. Geometry, held against
planes in space; a compound miter saw's manual has the same table for both sides of both corners, from memory.
"""

from scantling.engine.tape.angles import format_degrees
from scantling.engine.tape.lengths import ZERO
from scantling.engine.trim.ends import LEANING, End
from scantling.engine.trim.footprint import LEFT, RIGHT
from scantling.engine.words import say


def find_lay(end: End, side: str) -> tuple[str, str, str]:
    """Which edge goes to the fence, which way the blade swings, and which side of it is kept.

    In an inside corner the ceiling edge is the shorter; round an outside one, and at a return, the longer.

    >>> from scantling.engine.tape.lengths import SIXTEENTH
    >>> find_lay(End("cope", "corner 1", grows=ZERO - SIXTEENTH, edges=LEANING), "right")
    ('ceiling', 'right', 'left')
    """
    inside = end.grows < ZERO
    turned = inside == (side == LEFT)
    return ("wall" if turned else "ceiling"), (LEFT if turned else RIGHT), (LEFT if inside else RIGHT)


def say_at_saw(end: End, side: str) -> str | None:
    """The same in words; None for an end that is cut square, or of what does not lean."""
    if end.edges != LEANING or not end.bevel or not end.grows:
        return None
    edge, _, keep = find_lay(end, side)  # the edge at the fence says which way the blade swings
    return say(f"lay-{edge}-{keep}", swing=format_degrees(end.saw), lean=format_degrees(end.bevel))
