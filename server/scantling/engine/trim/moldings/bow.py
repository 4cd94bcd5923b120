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
from scantling.engine.survey.bow import HOLLOW, Bow
from scantling.engine.survey.room import Wall
from scantling.engine.tape.lengths import SIXTEENTH, SIXTY_FOURTH, ZERO, Length, format_length
from scantling.engine.trim.piece import Flag, Piece

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
    end, place, by = piece.start + piece.back, bow.at - piece.start, _write(off)
    springs = Length(standard.bow_spring.inches * (place.inches / HALF) * ((end - bow.at).inches / HALF))
    hollow = bow.way == HOLLOW
    if off <= springs:
        how = f"spring it {'in' if hollow else 'over'}, and nail it there"
        how += "" if hollow else " and at both ends"
    elif standard.bow_beyond == SCRIBE and off <= thickness / 2:
        where_off = "its ends, to nothing there" if hollow else "that place, to nothing at its ends"
        how = f"plane {by} off its back at {where_off}"
    else:
        how = f"set it straight, with shims of {by} behind {'it there' if hollow else 'its ends'}"
    stiff = "" if off <= springs else f", and it springs {_write(springs)}" if springs >= SIXTY_FOURTH else ""
    yield Flag("bow", f"{_say(bow, off, piece.start)}{stiff}: {how}.", False)


def flag_bow_of_crown(wall: Wall, piece: Piece) -> Iterator[Flag]:
    """The gap that a bowed wall leaves at the wall edge of crown: caulked where it is narrow, or else scribed."""
    found = _worst(wall, piece)
    if found is None or piece.start is None:
        return
    bow, off = found
    by, hollow = _write(off), bow.way == HOLLOW
    gap = f"the gap of {by} {'there' if hollow else 'at both ends'}, at its wall edge,"
    if off <= CAULKED:
        how = f"set it straight to its line, and caulk {gap.rstrip(',')}"
    else:
        where = "its ends, to nothing there" if hollow else "that place, to nothing at its ends"
        how = f"{gap} is too wide for caulk: scribe that edge, {by} off it at {where}"
    above = "Hold a string under the ceiling first: the wall may bow otherwise there."
    yield Flag("bow", f"{_say(bow, off, piece.start)}: {how}. {above}", False)


def _worst(wall: Wall, piece: Piece) -> tuple[Bow, Length] | None:
    """The bow that a wall is farthest off a board by, and how far; None where that is under 1/16."""
    if piece.start is None or wall.length is None:
        return None
    start, end = piece.start, piece.start + piece.back
    length = max(wall.length.largest, end)
    bow = max(wall.bows, key=lambda one: one.off(length, start, end), default=None)
    off = bow.off(length, start, end) if bow else ZERO
    return (bow, off) if bow and off >= SIXTEENTH else None


def _say(bow: Bow, off: Length, start: Length) -> str:
    return f"The wall has a {bow.way} of {_write(off)} behind it, {format_length(bow.at - start)} from its left"


def _write(length: Length) -> str:
    return format_length(length, SIXTY_FOURTH)
