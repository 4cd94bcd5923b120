"""How far the casing of an opening reaches along its wall: one answer for the leg that is cut and the base that dies
into it.

A side wall is known from the survey: from the left corner to the jamb is what `at` reads, and to the right there is the
wall's length less that and the opening. In an inside corner nearer than the casing is wide the leg is ripped to lie
flush in it; past an outside corner no casing can lie, and that is a problem with a name. What stands beside the opening
itself, a vanity or a tall cabinet, is to a leg what stands round the corner is: along most of it the leg is ripped to
that, and round what is lower it is notched. Common practice, no source.
"""

from collections.abc import Container, Iterator
from dataclasses import dataclass, replace

from scantling.engine.errors import EngineError
from scantling.engine.standard import PICTURE, STOOL, YIELDS, Standard
from scantling.engine.survey.room import SIDES, Measure, Opening, Problem, Room, Wall
from scantling.engine.tape.angles import Corner
from scantling.engine.tape.lengths import ZERO, Length
from scantling.engine.trim.footprint import (
    LEFT,
    RIGHT,
    Band,
    BodyRound,
    Stop,
    find_stop_round,
    from_corner,
    things_round,
    wall_round,
)
from scantling.engine.trim.openings.casing import CasingError, Make, Plinth, derive_fit
from scantling.engine.trim.openings.frame import write
from scantling.engine.trim.openings.heads import derive_rise
from scantling.engine.trim.openings.mulled import find_joined
from scantling.engine.words import say


class ReachError(CasingError):
    family = "reach"


@dataclass(frozen=True, slots=True)
class Beside:
    """The corner beside an opening, by number and turn: how far it is from the jamb, and how that is found.

    `stop` is what stands there before the corner, and the distance is then to that.
    """

    number: int
    turn: str
    distance: Measure
    working: str
    stop: Stop | None = None


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
        clearance_for="minus-stool" if window else "minus-floor",
        stands_on="meets-stool" if window else "meets-floor",
        step=standard.extension_step if extended else ZERO,
    )


def is_back(opening: Opening) -> bool:
    """Whether a jamb lies back from the wall somewhere, as far as its depths were read."""
    return any(depth.largest.inches > 0 for depth in opening.depths.values())


def find_beside(
    room: Room, wall: Wall, opening: Opening, side: str, *, legs: bool = True, banded: Container[str] | None = None
) -> Beside | None:
    """What is beside an opening in the corner next to it; None where the wall ends in the open, or nothing was read.

    Without `legs`, the casing round the corner is left out: of two legs that want one corner, the one that keeps it.
    `banded`, the openings that have a backband, is given while that is worked out: what is looked for then is the room
    beside a leg with its band.
    """
    beside, own = _find_corner(room, wall, opening, side), derive_leg_band(opening)
    if opening.standard is None:
        return beside
    stop = _find_stop_in_corner(room, wall, opening, side, legs, banded) if beside else None
    if beside and stop:
        left = max(ZERO, beside.distance.smallest - stop.along - stop.body.clearance)
        working = say("beside-thing", working=beside.working, along=write(stop.along), what=stop.body.name)
        beside = replace(beside, distance=Measure("", (), (left,)), working=_clear(working, stop.body), stop=stop)
    on_wall = [one for one in _things_beside(wall, opening, side)
               if one.stop and is_leg_stopped(own, one.stop.body.band)]  # fmt: skip
    return min([*on_wall, *([beside] if beside else [])], key=lambda one: one.distance.smallest, default=None)


def _things_beside(wall: Wall, opening: Opening, side: str) -> Iterator[Beside]:
    """What stands on an opening's own wall at one side of it, each with how far from the jamb that is."""
    if opening.at is None or opening.width is None:
        return
    for thing in wall.obstacles:
        if thing.base != "stops" or not thing.stands or thing.at is None or thing.width is None:
            continue
        name, start, end = say("the-thing", thing=thing.name), thing.at.smallest, thing.at.largest + thing.width.largest
        if side == "left":
            distance = opening.at.smallest - end
            working = say("beside-thing-left", at=write(opening.at.smallest), end=write(end), what=name)
        else:
            jamb = opening.at.largest + opening.width.largest
            distance = start - jamb
            working = say("beside-thing-right", start=write(start), jamb=write(jamb), what=name)
        if distance.inches < 0:
            continue  # at the other side of it, below it, or where it cannot be: the survey says so
        band = Band(ZERO, thing.height.largest if thing.height else None)
        deep = thing.depth or Measure("", (), (ZERO,))
        body = BodyRound(thing.id, name, "", wall, start, end, deep, band, thing.clearance, thing.scribed)
        left = Measure("", (), (max(ZERO, distance - thing.clearance),))
        yield Beside(wall.number, "inside", left, _clear(working, body), Stop(body, ZERO))


def _clear(working: str, body: BodyRound) -> str:
    return say("beside-clear", working=working, clearance=write(body.clearance)) if body.clearance else working


def _find_corner(room: Room, wall: Wall, opening: Opening, side: str) -> Beside | None:
    if opening.at is None:
        return None
    if side == "left":
        before = room.before(wall)
        if before is None:
            return None
        return Beside(before.number, before.turn, opening.at, say("beside-left", at=write(opening.at.smallest)))
    if opening.width is None or wall.length is None or room.after(wall) is None:
        return None
    parts = (wall.length.smallest, opening.at.largest, opening.width.largest)
    left_over = max(ZERO, parts[0] - parts[1] - parts[2])  # past the end of the wall: the survey says so
    working = say("beside-right", wall=write(parts[0]), at=write(parts[1]), width=write(parts[2]))
    return Beside(wall.number, wall.turn, Measure("", (), (left_over,)), working)


def _find_stop_in_corner(
    room: Room, wall: Wall, opening: Opening, side: str, legs: bool, banded: Container[str] | None
) -> Stop | None:
    """Where a leg stops at what stands round the corner: a thing as tall as most of it, or another leg."""
    found = wall_round(room, wall, side)
    if found is None or opening.standard is None:
        return None
    own = derive_leg_band(opening)
    bodies = [body for body in things_round(room, wall, side) if is_leg_stopped(own, body.band)]
    if legs and own.bottom is not None:
        kept = _legs_kept(room, wall, side, opening, find_banded(room) if banded is None else banded)
        bodies += (body for body in kept if is_leg_stopped(own, body.band))
    deep = opening.standard.casing_thickness
    return find_stop_round(found[1], bodies, deep if banded is None else max(deep, opening.standard.backband_thickness))


def find_notch(room: Room, wall: Wall, opening: Opening, side: str, make: Make) -> tuple[BodyRound, Length] | None:
    """What a leg is notched round for part of its height, for all of it would be too much to rip; and how deep."""
    found, corner = wall_round(room, wall, side), _find_corner(room, wall, opening, side)
    beside, bottom = find_beside(room, wall, opening, side), derive_leg_band(opening).bottom
    if opening.standard is None or bottom is None:
        return None
    near = [(one.stop.body, one.distance.smallest) for one in _things_beside(wall, opening, side) if one.stop]
    if found and corner:
        bodies = [body for body in things_round(room, wall, side) if body.band.top and body.band.top > bottom]
        stop = find_stop_round(found[1], bodies, opening.standard.casing_thickness)
        near += [(stop.body, corner.distance.smallest - stop.along - stop.body.clearance)] if stop else []
    # What is ripped off is not cut out as well: of that to which the leg is ripped nothing is left to notch.
    wide = min(make.leg_width, beside.distance.smallest - make.back) if beside else make.leg_width
    deep = [(make.back + wide - distance, body) for body, distance in near if body.band.top and body.band.top > bottom]
    by, body = max(deep, key=lambda one: one[0], default=(ZERO, None))
    return (body, by) if body and by > ZERO else None


def edge_round(room: Room, wall: Wall, opening: Opening, side: str) -> Corner | None:
    """The corner that a ripped leg's edge leans with; None where what it is ripped to stands on the wall itself."""
    beside, found = find_beside(room, wall, opening, side), wall_round(room, wall, side)
    return None if found is None or (beside and beside.stop and beside.stop.body.wall is wall) else found[1]


def derive_leg_band(opening: Opening) -> Band:
    """How far up the casing of an opening reaches: a window's from its apron, a door's from the floor."""
    standard = opening.standard
    if standard is None:
        return Band()
    bottom, top = derive_heights(opening)
    if standard.is_bare:
        return Band(bottom, top)
    make = derive_make(standard, opening)
    may_have_band = asks_for_band(standard) if opening.banded is None else opening.banded
    band = standard.backband_width if may_have_band else ZERO
    if opening.kind == "window" and bottom is not None:
        stool = standard.window_style != PICTURE
        frame = make.back + make.head_width + band
        under = standard.under_sill if stool else frame
        bottom = max(ZERO, bottom - under)
    return Band(bottom, top + make.back + derive_rise(standard, make) + band if top is not None else None)


def asks_for_band(standard: Standard | None) -> bool:
    """Whether a backband is asked for: round mitered casing alone."""
    return standard is not None and standard.wants_backband and standard.head == "mitered" and standard.wants("casing")


def settle_bands(room: Room) -> Room:
    """The room, each opening that asks for a backband told whether one goes round it: heights go by that."""
    if not any(asks_for_band(one.standard) for wall in room.walls for one in wall.openings):
        return room
    banded = find_banded(room)
    walls = (
        replace(wall, openings=tuple(replace(one, banded=one.id in banded) for one in wall.openings))
        for wall in room.walls
    )
    return replace(room, walls=tuple(walls))


def find_banded(room: Room) -> frozenset[str]:
    """The openings, by id, round which a backband goes: all that ask for one and have room for it beside both legs.

    A row of mulled windows has one round all of it, or none.
    """
    return room.derived("banded", lambda: _find_banded(room))


def _find_banded(room: Room) -> frozenset[str]:
    """One by one from the first; one not come to yet counts as banded, so that no two bands are given one place."""
    openings = [one for wall in room.walls for one in wall.openings]
    if any(one.banded is not None for one in openings):
        return frozenset(one.id for one in openings if one.banded)
    placed = [(wall, one) for wall in room.walls for one in wall.openings if asks_for_band(one.standard)]
    banded = {one.id for _, one in placed if one.standard and one.standard.head_width == one.standard.casing_width}
    for wall, one in placed:
        row = _find_row_of(wall, one)
        if not banded >= row or not all(_has_room_for_band(room, wall, one, side, banded) for side in SIDES):
            banded -= row
    return frozenset(banded)


def _find_row_of(wall: Wall, opening: Opening) -> set[str]:
    """The ids of an opening and of all that share a casing with it, one beside the other."""
    row, pairs = {opening.id}, find_joined(wall)
    for _ in pairs:
        row |= {of for pair in pairs for of in pair if row & set(pair)}
    return row


def _has_room_for_band(room: Room, wall: Wall, opening: Opening, side: str, banded: Container[str]) -> bool:
    if opening.standard is None:
        return False
    beside, make = find_beside(room, wall, opening, side, banded=banded), derive_make(opening.standard, opening)
    wanted = make.back + make.leg_width + opening.standard.backband_width
    return beside is None or beside.distance.smallest >= wanted


def derive_heights(opening: Opening) -> tuple[Length | None, Length | None]:
    """Where an opening itself begins and ends above the floor, as far as it was read."""
    tall = max(opening.left.largest, opening.right.largest) if opening.left and opening.right else None
    if opening.kind != "window":
        return ZERO, tall
    if opening.sill is None:
        return None, None
    standard = opening.standard
    # Its sides are read from where the stool will lie, its sill to the top of that: legs are so much shorter than read.
    on_stool = standard is not None and standard.wants("casing") and standard.window_style == STOOL
    stool = standard.stool_thickness if standard and on_stool else ZERO
    return opening.sill.smallest, opening.sill.largest + tall - stool if tall is not None else None


def is_leg_stopped(own: Band, other: Band) -> bool:
    """Whether a leg gives way to something beside it for all its height; round what is lower it is notched."""
    if own.bottom is None or other.bottom is None:
        return False
    if other.top is None or own.top is None:
        return True
    return other.bottom < own.top and other.top > own.bottom + (own.top - own.bottom) / 2


def _legs_kept(
    room: Room, wall: Wall, side: str, opening: Opening, banded: Container[str]
) -> Iterator[BodyRound]:
    """The legs round a corner that this opening's own leg gives way to, as wide as they keep."""
    found = wall_round(room, wall, side)
    for other in found[0].openings if found else ():
        if found and gives_way(opening, other, side):
            yield from _leg_bodies(room, found[0], other, side, banded, legs=False)


def gives_way(opening: Opening, other: Opening, side: str) -> bool:
    """Whether an opening's leg in the corner at that side of its wall gives way to another's round the corner.

    As each was set; where they were set alike, the one left of the corner is the one that keeps its width or yields.
    Common practice, no source: one has to, and a person may turn it.
    """
    says = [one.standard.casing_corner if one.standard else YIELDS for one in (opening, other)]
    if says[0] != says[1]:
        return says[0] == YIELDS
    return side == (RIGHT if says[0] == YIELDS else LEFT)


def legs_round(room: Room, wall: Wall, side: str) -> Iterator[BodyRound]:
    """The casing legs, with plinths and backband, along the wall round a corner."""
    found = wall_round(room, wall, side)
    for opening in found[0].openings if found else ():
        if found:
            yield from _leg_bodies(room, found[0], opening, side, find_banded(room), legs=True)


def _leg_bodies(
    room: Room, wall: Wall, opening: Opening, side: str, banded: Container[str], *, legs: bool
) -> Iterator[BodyRound]:
    """What of an opening's casing stands nearest a corner; `side` is the end of the wall that one looks at it from."""
    standard, near_side = opening.standard, RIGHT if side == LEFT else LEFT
    jamb = from_corner(wall, side, opening.at, opening.width) if opening.at and opening.width else None
    if standard is None or standard.is_bare or jamb is None:
        return
    make, band = derive_make(standard, opening), derive_leg_band(opening)
    name = say("casing-on-wall", what=opening.name, wall=wall.name)
    sorts = [(band, False, standard.casing_thickness, ZERO)]
    if make.plinth:
        sorts.append((Band(ZERO, make.plinth.height), True, standard.plinth_thickness, ZERO))
    if opening.id in banded:
        sorts.append((band, False, standard.backband_thickness, standard.backband_width))
    for reach, on_floor, thickness, past in sorts:
        try:
            out = derive_reach(room, wall, opening, near_side, on_floor=on_floor, legs=legs)
        except EngineError:
            return  # told as a problem of that wall
        near = jamb[0] - past - sum((length for _, length in out), start=ZERO)
        depth = Measure(name, (), (thickness,))
        thick = say("thickness-of-thing", what=name)
        yield BodyRound(opening.id, name, thick, wall, max(ZERO, near), jamb[0], depth, reach, is_leg=True)


def find_stop(room: Room, wall: Wall, opening: Opening, side: str, make: Make, *, legs: bool = True) -> Measure | None:
    """The distance from a jamb to the side wall in an inside corner, or to what stands there before it.

    Raises `ReachError` past an outside corner.
    """
    beside = find_beside(room, wall, opening, side, legs=legs)
    if beside is None:
        return None
    if beside.turn == "inside":
        return beside.distance
    wanted = make.back + make.leg_width
    if beside.distance.smallest < wanted:
        away, jamb = write(beside.distance.smallest), say(f"jamb-{side}")
        raise ReachError("past-corner", room=away, jamb=jamb, number=beside.number, wanted=write(wanted))
    return None


Addend = tuple[str, Length]


def derive_reach(
    room: Room, wall: Wall, opening: Opening, side: str, *, on_floor: bool = True, legs: bool = True
) -> list[Addend]:
    """From a jamb to the outer edge of its casing, or on the floor of its plinth, as named lengths.

    Raises `EngineError` where no casing can lie there.
    """
    if opening.standard is None:
        raise ReachError("no-standard", what=opening.name)
    if opening.standard.is_bare:
        return []
    make = derive_make(opening.standard, opening)
    name, wide = "casing", make.leg_width
    if on_floor and make.plinth:
        name, wide = "plinth", make.plinth.width or make.leg_width
    fit = derive_fit(side, wide, find_stop(room, wall, opening, side, make, legs=legs), make)
    # The room's standard may know boards besides: only what differs is told as this opening's own.
    own = "standard" if opening.standard.is_but_for_stock(room.standard) else "own"
    step = [(say("reach-step"), make.step)] if make.step else []
    reveal, casing = (opening.standard.source(one) for one in ("reveal", "casing.width"))
    set_back = say(f"reach-reveal-{own}", what=opening.name, source=reveal)
    name = f"{name}-ripped" if fit.ripped else name
    width = say(f"reach-{name}-{own}", what=opening.name, source=casing)
    return [(set_back, make.reveal), *step, (width, fit.width)]
