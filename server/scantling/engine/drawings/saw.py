"""A piece as it lies on the saw, large: fence at the top, settings at its ends, and the length with its edge below.

Seen from above by the person at the saw, whose left is the drawing's left. The ends lean as they are cut; the length is
not to scale. Of a leaning molding each end has its own lay below (`laid_flat`).
"""

from collections.abc import Iterator

from scantling.engine.drawings import svg
from scantling.engine.drawings.board import derive_lean, say_edges, wave
from scantling.engine.drawings.laid_flat import HEIGHT as LAID_HEIGHT
from scantling.engine.drawings.laid_flat import draw_laid_flat, is_laid_flat, say_laid_flat
from scantling.engine.tape.angles import format_degrees
from scantling.engine.tape.lengths import SIXTEENTH, Length, format_length
from scantling.engine.trim.ends import End, say_edge
from scantling.engine.trim.piece import Piece
from scantling.engine.words import say

WIDTH, HEIGHT = 340.0, 194.0
FENCE, TOP, BOTTOM = 16.0, 28.0, 72.0
SIDE, LEAN = 54.0, 46.0
# The blade's line is drawn on past the board, into the fence and towards the person.
PAST = 7.0
MEASURE = 91.0
LABEL, PITCH = 142.0, 15.0
LAID = LABEL + 2.5 * PITCH


def draw_at_saw(piece: Piece, nearest: Length = SIXTEENTH) -> str:
    """The piece as SVG text, its length rounded to the asked graduation."""
    sides = {side: _side(piece, side) for side in ("left", "right")}
    (left_above, left_below), (right_above, right_below) = sides["left"], sides["right"]
    board = [(left_above, TOP), (right_above, TOP), (right_below, BOTTOM), (left_below, BOTTOM)]
    parts = [
        svg.sentence((WIDTH / 2, FENCE - 4), say("at-saw-fence"), "small pencil"),
        svg.polygon([(0, FENCE), (WIDTH, FENCE), (WIDTH, TOP), (0, TOP)], "fence"),
        svg.polygon(board, "ink wood"),
        svg.sentence((WIDTH / 2, (TOP + BOTTOM) / 2 + 4), say_edges(piece), "small"),
    ]
    for side, end in (("left", piece.left), ("right", piece.right)):
        parts += [*_blade(sides[side]), *_coped(end, sides[side]), *_label(side, end)]
    outermost = (min(left_above, left_below), max(right_above, right_below))
    parts += _measure(outermost, format_length(piece.cut, nearest), piece.cut_from)
    left, right = piece.left.shown, piece.right.shown
    title = say("drawn-at-saw", letter=piece.letter, lies=say_edges(piece), left=left, right=right)
    if not is_laid_flat(piece):
        return svg.drawing(WIDTH, HEIGHT, title, parts)
    parts += draw_laid_flat(piece, LAID)
    return svg.drawing(WIDTH, LAID + LAID_HEIGHT, f"{title}. {say_laid_flat(piece)}", parts)


def _side(piece: Piece, side: str) -> tuple[float, float]:
    """Where an end meets the edge at the fence, and the one towards the person."""
    above, below = derive_lean(piece.left if side == "left" else piece.right, BOTTOM - TOP, LEAN)
    return (SIDE - above, SIDE - below) if side == "left" else (WIDTH - SIDE + above, WIDTH - SIDE + below)


def _blade(side: tuple[float, float]) -> Iterator[str]:
    slope = (side[1] - side[0]) / (BOTTOM - TOP)
    start, finish = (side[0] - slope * PAST, TOP - PAST), (side[1] + slope * PAST, BOTTOM + PAST)
    yield svg.line(start, finish, "hand")


def _coped(end: End, side: tuple[float, float]) -> Iterator[str]:
    """After the saw a cope is sawn along the line that the cut shows on the face: what goes lies beyond it."""
    if end.joint == "cope":
        within = min(side, key=lambda x: abs(x - WIDTH / 2))
        start = (within, BOTTOM)
        yield svg.path(f"M{svg.number(within)} {svg.number(BOTTOM)}{wave(start, (within, TOP))}", "ink dashed")


def _label(side: str, end: End) -> Iterator[str]:
    """What an end is and both its settings, under the side where it lies."""
    at, anchor = (2.0, "start") if side == "left" else (WIDTH - 2, "end")
    lines = [(say(f"saw-label-{side}", joint=say_joint(end)), "hand strong")]
    setting = format_degrees(end.setting)
    if end.bevel:
        lines += [
            (say("at-saw-bevel", setting=setting, bevel=format_degrees(end.bevel)), "hand small"),
            (say("at-saw-nested", setting=format_degrees(end.nested or end.setting)), "hand small"),
        ]
    elif end.leans:
        lines += [
            (say("at-saw-setting", setting=setting), "hand small"),
            (say("at-saw-point", angle=format_degrees(end.point)), "hand small"),
        ]
    if end.leans and not end.bevel:
        lines += [(say("at-saw-long", edge=say_edge(end.long_edge)), "small pencil")]
    for place, (words, classes) in enumerate(lines):
        yield svg.sentence((at, LABEL + PITCH * place), words, classes, anchor)


def say_joint(end: End) -> str:
    """What an end is, without its setting: outside miter, cope, square."""
    return say(f"miter-at-{end.corner.turn}") if end.joint == "miter" and end.corner else end.joint


def _measure(outermost: tuple[float, float], length: str, edge: str) -> Iterator[str]:
    start, finish = outermost
    yield svg.line((start, MEASURE), (finish, MEASURE), "ink thin")
    for x in outermost:
        yield svg.line((x, MEASURE - 4), (x, MEASURE + 4), "ink thin")
    yield svg.sentence((WIDTH / 2, MEASURE + 17), length, "letter")
    yield svg.sentence((WIDTH / 2, MEASURE + 31), edge, "small")
