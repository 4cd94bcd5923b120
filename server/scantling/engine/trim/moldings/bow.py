"""Bowed walls: a long board is sprung to the wall, a stiffer one is set straight and shimmed, or planed to it.

A board bends the farther the longer it is: under one stress by a·b, where it is pushed a from one of its ends and b
from the other (a beam on two supports: y = M·a·b / 3EI). How far one of 8 ft is sprung in its middle is set; what a bow
adds to its length is under 1/64 up to 1/2 in of it. Nothing is told of a wall whose bow was not read. Crown
does not spring: it is stiff across its lean, and its other edge is on the ceiling. Springing, shimming, planing, and
how wide a gap caulk fills are common practice, no source.
"""

from collections.abc import Iterator
from fractions import Fraction

from scantling.engine.standard import SCRIBE, Standard
from scantling.engine.survey.bow import Bow
from scantling.engine.survey.room import Wall
from scantling.engine.tape.lengths import SIXTEENTH, SIXTY_FOURTH, ZERO, Length, format_length
from scantling.engine.trim.piece import Flag, Piece
from scantling.engine.words import say

# The middle of the 8 ft that the setting is said for.
HALF = Fraction(48)
# The widest gap that caulk fills without drawing in.
CAULKED = Length(Fraction(1, 8))


def flag_bow(standard: Standard, wall: Wall, piece: Piece, thickness: Length) -> Iterator[Flag]:
    """What is done with a board on a wall that bows behind it by 1/16 or more: once, for the worst place."""
    found = _worst(wall, piece)
    if found is None or piece.start is None:
        return
    bow, off = found
    end, place = piece.start + piece.back, bow.at - piece.start
    springs = Length(standard.bow_spring.inches * (place.inches / HALF) * ((end - bow.at).inches / HALF))
    planed = standard.bow_beyond == SCRIBE and off <= thickness / 2
    done = "spring" if off <= springs else "plane" if planed else "shim"
    known = {"off": _write(off), "at": format_length(place), "how": say(f"to-{bow.way}-{done}", by=_write(off))}
    if off > springs >= SIXTY_FOURTH:
        yield Flag("bow", say(f"{bow.way}-behind-stiff", springs=_write(springs), **known), False)
    else:
        yield Flag("bow", say(f"{bow.way}-behind", **known), False)


def flag_bow_of_crown(wall: Wall, piece: Piece) -> Iterator[Flag]:
    """The gap that a bowed wall leaves at the wall edge of crown: caulked where it is narrow, or else scribed."""
    found = _worst(wall, piece)
    if found is None or piece.start is None:
        return
    bow, off = found
    by, at = _write(off), format_length(bow.at - piece.start)
    how = say(f"to-{bow.way}-{'caulk' if off <= CAULKED else 'scribe'}", by=by)
    yield Flag("bow", say(f"{bow.way}-behind-crown", off=by, at=at, how=how), False)


def _worst(wall: Wall, piece: Piece) -> tuple[Bow, Length] | None:
    """The bow that a wall is farthest off a board by, and how far; None where that is under 1/16."""
    if piece.start is None or wall.length is None:
        return None
    start, end = piece.start, piece.start + piece.back
    length = max(wall.length.largest, end)
    bow = max(wall.bows, key=lambda one: one.off(length, start, end), default=None)
    off = bow.off(length, start, end) if bow else ZERO
    return (bow, off) if bow and off >= SIXTEENTH else None


def _write(length: Length) -> str:
    return format_length(length, SIXTY_FOURTH)
