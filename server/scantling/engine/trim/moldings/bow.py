"""Bowed walls: a long board is sprung to the wall, a stiffer one is set straight and shimmed, or planed to it.

A board bends the farther the longer it is: under one stress by a·b, where it is pushed a from one of its ends and b
from the other (a beam on two supports: y = M·a·b / 3EI). How far one of 8 ft is sprung in its middle is set; what a bow
adds to its length is under 1/64 up to 1/2 in of it. Nothing is told of a wall whose bow was not read. Springing,
shimming and planing are common practice, no source.
"""

from collections.abc import Iterator
from fractions import Fraction

from scantling.engine.standard import SCRIBE, Standard
from scantling.engine.survey.bow import HOLLOW
from scantling.engine.survey.room import Wall
from scantling.engine.tape.lengths import SIXTEENTH, SIXTY_FOURTH, ZERO, Length, format_length
from scantling.engine.trim.piece import Flag, Piece

# The middle of the 8 ft that the setting is said for.
HALF = Fraction(48)


def flag_bow(standard: Standard, wall: Wall, piece: Piece, thickness: Length) -> Iterator[Flag]:
    """What is done with a board on a wall that bows behind it by 1/16 or more: once, for the worst place."""
    if piece.start is None or wall.length is None:
        return
    start, end = piece.start, piece.start + piece.back
    length = max(wall.length.largest, end)
    bow = max(wall.bows, key=lambda one: one.off(length, start, end), default=None)
    off = bow.off(length, start, end) if bow else ZERO
    if bow is None or off < SIXTEENTH:
        return
    place, by = bow.at - start, _write(off)
    where = f"{format_length(place)} from its left"
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
    message = f"The wall has a {bow.way} of {by} behind it, {where}{stiff}: {how}."
    yield Flag("bow", message, False)


def _write(length: Length) -> str:
    return format_length(length, SIXTY_FOURTH)
