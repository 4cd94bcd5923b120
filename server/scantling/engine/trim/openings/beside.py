"""What is told of the wall beside an opening: how a leg that is ripped was found, how its edge leans, its notches."""

import math
from collections.abc import Iterator, Mapping

from scantling.engine.survey.room import SIDES, Opening, Room, Wall
from scantling.engine.tape.angles import SQUARE, Corner, format_degrees, scaled
from scantling.engine.tape.lengths import SIXTY_FOURTH, Length
from scantling.engine.trim.openings.casing import Make
from scantling.engine.trim.openings.frame import write
from scantling.engine.trim.openings.reach import derive_make, edge_round, find_beside, find_notch
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
            if beside.stop and not beside.stop.body.is_leg and beside.stop.body.band.top is None:
                told = say("leg-taken-tall", what=beside.stop.body.name)
                yield leg, Flag("taken-tall", told)
            if beside.stop and beside.stop.body.is_leg:
                told = say("leg-gives-way", number=beside.number, what=beside.stop.body.name)
                yield leg, Flag("gives-way", told, attention=False)
            corner = edge_round(room, wall, opening, side)
            yield from _lean_flags(corner, side, thickness) if corner else ()


def find_things_at_legs(room: Room) -> frozenset[str]:
    """What a leg is ripped to or notched round, by id: which of the two goes by how tall it is."""
    return room.derived("things at legs", lambda: frozenset(_things_at_legs(room)))


def _things_at_legs(room: Room) -> Iterator[str]:
    placed = [(wall, opening) for wall in room.walls for opening in wall.openings]
    for wall, opening in placed:
        if opening.standard is None or not opening.standard.wants("casing"):
            continue
        make = derive_make(opening.standard, opening)
        for side in SIDES:
            beside, notch = find_beside(room, wall, opening, side), find_notch(room, wall, opening, side, make)
            if notch:
                yield notch[0].of
            if beside and beside.stop and beside.distance.smallest < make.back + make.leg_width:
                yield beside.stop.body.of


def derive_notch_flags(room: Room, wall: Wall, ends: OpeningsBeside, make: Make) -> Iterator[tuple[Of, Flag]]:
    """What each leg is notched round."""
    for side in SIDES:
        notch = find_notch(room, wall, ends[side], side, make)
        if notch and notch[0].band.top:
            deep, up = write(notch[1]), write(notch[0].band.top)
            message = say("leg-notch", what=notch[0].name, deep=deep, up=up)
            yield (Kind.LEG, side), Flag("notch", message, attention=False)


def _lean_flags(corner: Corner, side: str, thickness: Length) -> Iterator[tuple[Of, Flag]]:
    """In a corner that is not square the side wall leans over the casing's face, or away: its edge is cut to lean too.

    Face and back differ by thickness · cot W. Geometry.
    """
    if corner.degrees == SQUARE:
        return
    degrees, lean = format_degrees(corner.degrees), format_degrees(abs(SQUARE - corner.degrees))
    by = abs(scaled(thickness, 1 / math.tan(math.radians(corner.degrees))))
    if by < SIXTY_FOURTH:
        return
    how = "wide" if corner.degrees > SQUARE else "tight"
    rip = say(f"leg-leans-{how}", degrees=degrees, lean=lean, by=write(by))
    yield (Kind.LEG, side), Flag("rip-lean", rip, attention=False)
    tip = say(f"tip-leans-{how}", degrees=degrees, lean=lean, by=write(by), where=say(f"place-{side}"))
    yield (Kind.HEAD, ""), Flag("tip-lean", tip, attention=False)
