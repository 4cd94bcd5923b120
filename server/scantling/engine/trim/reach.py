"""How far the casing of an opening reaches along its wall: one answer for the leg that is cut and the base that dies
into it.

A side wall is known from the survey: from the left corner to the jamb is what `at` reads, and to the right there is the
wall's length less that and the opening. In an inside corner nearer than the casing is wide the leg is ripped to lie
flush in it; past an outside corner no casing can lie, and that is a problem with a name.
"""

from dataclasses import dataclass, replace

from scantling.engine.errors import EngineError
from scantling.engine.lengths import ZERO, Length
from scantling.engine.standard import PICTURE, Standard
from scantling.engine.survey.room import Measure, Opening, Problem, Room, Wall
from scantling.engine.trim.casing import CasingError, Make, Plinth, derive_fit
from scantling.engine.trim.frame import said

SIDES = ("left", "right")


class ReachError(CasingError):
    sentences = {
        "past-corner": "From the {side} jamb to outside corner {number} there is {room}, and its casing comes to "
        "{wanted}: read both again, or choose narrower casing for it.",
        "no-standard": "What was set for the {what} alone cannot be: put that right first.",
    }


@dataclass(frozen=True, slots=True)
class Beside:
    """The corner beside an opening, by number and turn: how far it is from the jamb, and how that is found."""

    number: int
    turn: str
    distance: Measure
    working: str


def problem_of(wall: Wall, opening: Opening, error: EngineError) -> Problem:
    """What is wrong with an opening, as its wall tells it: the same whether casing or base found it."""
    return Problem(wall.id, error.key, f"{opening.name.capitalize()}: {error.message}")


def derive_make(standard: Standard, opening: Opening) -> Make:
    """How the casing of an opening is made to its standard. A picture frame is mitered whatever heads otherwise are."""
    window, picture = opening.kind == "window", opening.kind == "window" and standard.window_style == PICTURE
    mitered = picture or standard.head == "mitered"
    plinth = None if window or standard.plinth_height is None else Plinth(standard.plinth_height, standard.plinth_width)
    extended = window and standard.wants("extension") and is_back(opening)
    below = ZERO if picture else standard.stool_thickness if window else standard.casing_clearance
    return Make(
        leg_width=standard.casing_width,
        head_width=standard.head_width,
        reveal=standard.reveal,
        mitered=mitered,
        overhang=ZERO if mitered else standard.casing_overhang,
        plinth=plinth,
        clearance=below,
        clearance_for="the stool it stands on" if window else "the floor still to come",
        stands_on="the stool" if window else "the floor",
        step=standard.extension_step if extended else ZERO,
    )


def is_back(opening: Opening) -> bool:
    """Whether a jamb lies back from the wall somewhere, as far as its depths were read."""
    return any(depth.largest.inches > 0 for depth in opening.depths.values())


def find_beside(room: Room, wall: Wall, opening: Opening, side: str) -> Beside | None:
    """The corner beside an opening; None where the wall ends in the open, or its distance has not been read."""
    if opening.at is None:
        return None
    if side == "left":
        before = room.before(wall)
        if before is None:
            return None
        return Beside(before.number, before.turn, opening.at, f"{said(opening.at.smallest)} to the jamb")
    if opening.width is None or wall.length is None or room.after(wall) is None:
        return None
    parts = (wall.length.smallest, opening.at.largest, opening.width.largest)
    left_over = max(ZERO, parts[0] - parts[1] - parts[2])  # past the end of the wall: the survey says so
    working = f"{said(parts[0])} of wall − {said(parts[1])} to the jamb − {said(parts[2])} across"
    return Beside(wall.number, wall.turn, Measure("", (), (left_over,)), working)


def find_stop(room: Room, wall: Wall, opening: Opening, side: str, make: Make) -> Measure | None:
    """The distance from a jamb to the side wall in an inside corner. Raises `ReachError` past an outside one."""
    beside = find_beside(room, wall, opening, side)
    if beside is None:
        return None
    if beside.turn == "inside":
        return beside.distance
    wanted = make.back + make.leg_width
    if beside.distance.smallest < wanted:
        away = said(beside.distance.smallest)
        raise ReachError("past-corner", room=away, side=side, number=str(beside.number), wanted=said(wanted))
    return None


Named = tuple[str, Length]


def derive_reach(room: Room, wall: Wall, opening: Opening, side: str, *, on_floor: bool = True) -> list[Named]:
    """From a jamb to the outer edge of its casing, or on the floor of its plinth, as named lengths.

    Raises `EngineError` where no casing can lie there.
    """
    if opening.standard is None:
        raise ReachError("no-standard", what=opening.name)
    make = derive_make(opening.standard, opening)
    name, wide = "casing", make.leg_width
    if on_floor and make.plinth:
        name, wide = "plinth", make.plinth.width or make.leg_width
    fit = derive_fit(side, wide, find_stop(room, wall, opening, side, make), make)
    # The room's standard may know boards besides: only what differs is told as this opening's own.
    same = opening.standard == replace(room.standard, other_stock=opening.standard.other_stock)
    own = "" if same else f" of the {opening.name}"
    step = [("the extension's step", make.step)] if make.step else []
    return [(f"reveal{own}", make.reveal), *step, (f"{name}{own}{', ripped' * fit.ripped}", fit.width)]
