"""How boards meet in a corner, for drawings: where back and face end, for a board as thick as it is drawn.

The engine's lengths are for boards as thick as they are; a drawing makes them thicker, to be seen.
"""

import math

from scantling.engine.trim.ends import End

# A corner all but straight, or all but shut, would send its miter off the sheet.
MOST_REACH = 1.7


def derive_stops(end: End, thick: float) -> tuple[float, float]:
    """How far short of the wall's end the back and the face stop; less than nothing where the face runs past it."""
    if end.joint == "return":
        return thick, 0.0  # the face runs to the end, and the return fills what the back leaves
    if end.corner is None:
        return 0.0, _derive_slant(end, thick)
    if end.joint == "miter":
        return 0.0, derive_shortening(end, thick)
    if end.joint in ("cope", "butt"):
        return derive_across(end, thick), derive_shortening(end, thick)
    return 0.0, derive_tight(end, thick)


def derive_beside(end: End, thick: float) -> tuple[float, float]:
    """The same of the board round the corner, which the end meets."""
    if end.joint == "miter":
        return 0.0, derive_shortening(end, thick)
    if end.joint in ("cope", "butt"):
        return 0.0, derive_tight(end, thick)
    return derive_across(end, thick), derive_shortening(end, thick)


def _derive_slant(end: End, thick: float) -> float:
    if end.joint not in ("scarf", "miter"):
        return 0.0
    return thick if end.long_edge == end.edges[0] else -thick


def derive_turn(end: End) -> float:
    """The room-side angle in radians; square where there is no corner."""
    return math.radians(float(end.corner.degrees)) if end.corner else math.pi / 2


def derive_shortening(end: End, thick: float) -> float:
    """How much shorter a face is than its back in a miter: t·cot(W/2)."""
    return _kept(thick / math.tan(derive_turn(end) / 2), thick)


def derive_across(end: End, thick: float) -> float:
    """How far along the wall a board on the other one reaches: t/sin W."""
    sine = math.sin(derive_turn(end))
    return _kept(thick / sine if abs(sine) > 0.05 else 2 * thick, thick)


def derive_tight(end: End, thick: float) -> float:
    """In a corner tighter than square a face that runs through is cut to lie flat on the other wall."""
    turn = derive_turn(end)
    return _kept(thick / math.tan(turn), thick) if turn < math.pi / 2 else 0.0


def _kept(reach: float, thick: float) -> float:
    return max(-MOST_REACH * thick, min(MOST_REACH * thick, reach))
