"""Blocking: a strip between wall and ceiling behind crown, for nails where no stud or joist is.

Ripped from framing stock, a triangle in section: its legs lie on wall and ceiling, its face stands a little behind the
back of the crown, so that nothing holds that off. It stops short of the ends of its run, for the piece round the corner
has its own. Off until it is wanted. Common practice, no source; the figures are plane geometry.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.standard import BLOCKING, Standard
from scantling.engine.survey.room import Room
from scantling.engine.tape.angles import format_degrees
from scantling.engine.tape.lengths import SIXTY_FOURTH, ZERO, Length, format_length
from scantling.engine.trim.doubt import Doubt
from scantling.engine.trim.ends import End
from scantling.engine.trim.footprint import LEFT, RIGHT
from scantling.engine.trim.piece import Flag, Kind, Piece, Step
from scantling.engine.trim.runs.compound import derive_projection
from scantling.engine.trim.told.tolerance import MARK
from scantling.engine.words import say


@dataclass(frozen=True, slots=True)
class Section:
    """The triangle: how far it reaches down the wall, and out along the ceiling."""

    down: Length
    out: Length


def derive_section(width: Length, spring: Fraction, gap: Length) -> Section | None:
    """The triangle whose face lies so far behind the crown's back; None where nothing is left of it.

    The back is b long; from the corner it is b·cos S·sin S away, and the triangle is so much smaller as that shrinks.

    >>> from scantling.engine.tape.lengths import parse_length
    >>> found = derive_section(parse_length("3 5/8"), Fraction(38), parse_length("1/4"))
    >>> f"{float(found.down.inches):.4f} {float(found.out.inches):.4f}"
    '2.4505 1.9145'
    """
    lean = math.radians(spring)
    whole = float(width.inches)
    away = whole * math.cos(lean) * math.sin(lean)
    share = 1 - float(gap.inches) / away
    if share <= 0:
        return None
    return Section(
        Length.approximate(whole * math.cos(lean) * share), Length.approximate(whole * math.sin(lean) * share)
    )


def derive_blocking(room: Room, crown: Iterable[Piece]) -> list[Piece]:
    """The strip behind each board of crown, where it is wanted and there is room for one."""
    standard = room.standard
    section = derive_section(standard.crown_width, standard.crown_spring, standard.blocking_gap)
    if not standard.wants("blocking") or section is None:
        return []
    boards = (piece for piece in crown if piece.kind == Kind.CROWN and not piece.returns)
    strips = (_strip(standard, section, board) for board in boards)
    return [strip for strip in strips if strip.back > ZERO]


def _strip(standard: Standard, section: Section, board: Piece) -> Piece:
    short = derive_projection(standard.crown_width, standard.crown_spring)
    steps = [Step(say("blocking-from"), board.back)]
    steps += [
        Step(say(f"blocking-short-{side}"), short)
        for side, end in ((LEFT, board.left), (RIGHT, board.right))
        if end.joint != "scarf"
    ]
    back = sum((-step.value for step in steps[1:] if step.value), start=board.back)
    down, out = (format_length(leg, SIXTY_FOURTH) for leg in (section.down, section.out))
    lean = format_degrees(standard.crown_spring)
    square = End("square", say("blocking-free-end"), open=True)
    return Piece(
        key=f"{board.key} blocking",
        kind=Kind.BLOCKING,
        part="crown blocking",
        place=board.place,
        profile=BLOCKING,
        wall=board.wall,
        wall_number=board.wall_number,
        back=back,
        left=square,
        right=square,
        doubt=Doubt.of(MARK),
        working=(*steps, Step(say("blocking-so-long"), back)),
        flags=(Flag("rip", say("blocking-rip", down=down, out=out, lean=lean), False),),
    )
