"""What is told of the wall beside an opening: how a leg that is ripped was found, how its edge leans, its notches."""

import math
from collections.abc import Iterator, Mapping

from scantling.engine.survey.room import SIDES, Opening, Room, Wall
from scantling.engine.tape.angles import SQUARE, format_degrees, scaled
from scantling.engine.tape.lengths import SIXTY_FOURTH, Length
from scantling.engine.trim.footprint import wall_round
from scantling.engine.trim.openings.casing import Make
from scantling.engine.trim.openings.frame import write
from scantling.engine.trim.openings.reach import find_beside, find_notch
from scantling.engine.trim.piece import Flag, Kind
from scantling.engine.words import say

#: What a flag is of: the kind of piece, and at which side.
Of = tuple[Kind, str]
#: The opening at either side: one and the same, but for a row of windows.
OpeningsBeside = Mapping[str, Opening]


def derive_beside_flags(room: Room, wall: Wall, ends: OpeningsBeside, make: Make) -> Iterator[tuple[Of, Flag]]:
    """What is known of the wall beside each leg: how a ripped one's width was found, how its edge leans."""
    for side in SIDES:
        opening = ends[side]
        thickness = (opening.standard or room.standard).casing_thickness
        beside = find_beside(room, wall, opening, side)
        leg = (Kind.LEG, side)
        if beside is None:
            if room.before(wall) if side == "left" else room.after(wall):
                yield leg, Flag("unread-side", say("leg-side-unread", where=say(f"place-{side}")))
        elif beside.turn == "inside" and beside.distance.smallest < make.back + make.leg_width:
            left = beside.distance.smallest - make.back
            message = say("leg-ripped-to", width=write(left), working=beside.working, back=write(make.back))
            yield leg, Flag("ripped", message, attention=False)
            if beside.stop and beside.stop.body.is_leg:
                told = say("leg-gives-way", number=beside.number, what=beside.stop.body.name)
                yield leg, Flag("gives-way", told, attention=False)
            yield from _lean_flags(room, wall, side, thickness)


def derive_notch_flags(room: Room, wall: Wall, ends: OpeningsBeside, make: Make) -> Iterator[tuple[Of, Flag]]:
    """What each leg is notched round."""
    for side in SIDES:
        notch = find_notch(room, wall, ends[side], side, make)
        if notch and notch[0].band.top:
            deep, up = write(notch[1]), write(notch[0].band.top)
            message = say("leg-notch", what=notch[0].name, deep=deep, up=up)
            yield (Kind.LEG, side), Flag("notch", message, attention=False)


def _lean_flags(room: Room, wall: Wall, side: str, thickness: Length) -> Iterator[tuple[Of, Flag]]:
    """In a corner that is not square the side wall leans over the casing's face, or away: its edge is cut to lean too.

    Face and back differ by thickness · cot W. Geometry.
    """
    found = wall_round(room, wall, side)
    if found is None or found[1].degrees == SQUARE:
        return
    corner = found[1]
    degrees, lean = format_degrees(corner.degrees), format_degrees(abs(SQUARE - corner.degrees))
    by = abs(scaled(thickness, 1 / math.tan(math.radians(corner.degrees))))
    if by < SIXTY_FOURTH:
        return
    how = "wide" if corner.degrees > SQUARE else "tight"
    rip = say(f"leg-leans-{how}", degrees=degrees, lean=lean, by=write(by))
    yield (Kind.LEG, side), Flag("rip-lean", rip, attention=False)
    tip = say(f"tip-leans-{how}", degrees=degrees, lean=lean, by=write(by), where=say(f"place-{side}"))
    yield (Kind.HEAD, ""), Flag("tip-lean", tip, attention=False)
