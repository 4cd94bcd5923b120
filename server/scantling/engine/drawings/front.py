"""Casing as it is seen from in front: its boards as rectangles in inches, along the wall and up from the floor.

As each opening is to be cased, by its own settings where it has any. What a side wall leaves no room for is ripped, as
its pieces are; corners count as square here.
"""

import itertools
from collections.abc import Iterator

from scantling.engine.errors import EngineError
from scantling.engine.standard import STOOL, Standard
from scantling.engine.survey.room import SIDES, Opening, Room, Wall
from scantling.engine.tape.lengths import ZERO
from scantling.engine.trim.openings.cased import is_cased
from scantling.engine.trim.openings.casing import Make
from scantling.engine.trim.openings.mulled import find_row
from scantling.engine.trim.openings.reach import derive_make, derive_reach

# Left, foot, right and top.
Board = tuple[float, float, float, float]


def derive_front_boards(room: Room, wall: Wall, opening: Opening, hole: Board) -> list[Board]:
    """The boards round an opening that is as large as `hole`; none where it is not cased, or cannot be."""
    standard = opening.standard
    if standard is None or not is_cased(opening):
        return []
    make = derive_make(standard, opening)
    try:
        row = find_row(wall, opening)
        ends = (opening, opening) if row is None else (row.windows[0], row.windows[-1])
        if row:
            if opening is not ends[0]:
                return []
            hole = (hole[0], hole[1], _right_of(ends[1]), hole[3])
        legs, feet = (_outer(room, wall, ends, hole, on_floor) for on_floor in (False, True))
    except EngineError:
        return []  # told as a problem of the wall
    window, stool = opening.kind == "window", standard.window_style == STOOL
    found = list(_frame(make, hole, legs, is_all_round=window and not stool))
    if window and stool:
        found += _below(standard, hole, legs)
    if row and not make.mitered:
        found += [_shared(make, one, other, hole) for one, other in itertools.pairwise(row.windows)]
    if make.plinth:
        back, top = float(make.back.inches), float(make.plinth.height.inches)
        found += [(feet[0], 0.0, hole[0] - back, top), (hole[2] + back, 0.0, feet[1], top)]
    return found


def _right_of(opening: Opening) -> float:
    """How far along its wall an opening ends."""
    return float(opening.at.smallest.inches + opening.width.smallest.inches) if opening.at and opening.width else 0.0


def _shared(make: Make, one: Opening, other: Opening, hole: Board) -> Board:
    """The casing between two windows of a row."""
    back = float(make.back.inches)
    at = float(other.at.smallest.inches) if other.at else 0.0
    return _right_of(one) + back, hole[1], at - back, hole[3] + back


def _outer(
    room: Room, wall: Wall, ends: tuple[Opening, Opening], hole: Board, on_floor: bool
) -> tuple[float, float]:
    """The outer edges of the legs, or on the floor of their plinths."""
    sides = zip(ends, SIDES, strict=True)
    reaches = [derive_reach(room, wall, opening, side, on_floor=on_floor) for opening, side in sides]
    left, right = (float(sum((length for _, length in reach), start=ZERO).inches) for reach in reaches)
    return hole[0] - left, hole[2] + right


def _frame(make: Make, hole: Board, legs: tuple[float, float], is_all_round: bool) -> Iterator[Board]:
    """Mitered boards as one, for they lie in one plane; or the legs and, over them, the head."""
    back, head, past = (float(length.inches) for length in (make.back, make.head_width, make.overhang))
    level = hole[3] + back
    if make.mitered:
        yield legs[0], hole[1] - back - head if is_all_round else hole[1], legs[1], level + head
        return
    under = float(make.plinth.height.inches) if make.plinth else hole[1]
    yield legs[0], under, hole[0] - back, level
    yield hole[2] + back, under, legs[1], level
    yield legs[0] - past, level, legs[1] + past, level + head


def _below(standard: Standard, hole: Board, legs: tuple[float, float]) -> Iterator[Board]:
    """The stool, and the apron under it, where there is one."""
    sizes = (standard.stool_horn, standard.stool_thickness, standard.under_sill)
    horn, thick, under = (float(length.inches) for length in sizes)
    yield legs[0] - horn, hole[1] - thick, legs[1] + horn, hole[1]
    if standard.wants("apron"):
        yield legs[0], hole[1] - under, legs[1], hole[1] - thick
