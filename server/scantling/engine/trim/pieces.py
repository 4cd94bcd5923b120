"""The pieces of a room: what every rule of the trade gives, in fitting order and lettered.

Openings are cased before base goes in, for base dies into casing. Common practice, no source.
"""

from dataclasses import replace

from scantling.engine.survey.room import Problem, Room
from scantling.engine.trim.base import derive_base
from scantling.engine.trim.openings import derive_openings
from scantling.engine.trim.piece import Piece, letter

RULES = (derive_openings, derive_base)


def derive_pieces(room: Room) -> tuple[list[Piece], list[Problem]]:
    """Every piece of wood the room needs, and what of it cannot be made as it was read."""
    pieces: list[Piece] = []
    problems: list[Problem] = []
    for derive in RULES:
        found, wrong = derive(room)
        pieces += found
        problems += wrong
    return [replace(piece, letter=letter(place)) for place, piece in enumerate(pieces)], problems
