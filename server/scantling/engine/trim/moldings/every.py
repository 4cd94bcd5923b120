"""Every molding that runs along walls, in fitting order, and those that a room is given."""

from collections.abc import Callable

from scantling.engine.standard import Standard
from scantling.engine.survey.room import Problem, Room
from scantling.engine.trim.moldings.base import derive_base
from scantling.engine.trim.moldings.cap import derive_cap
from scantling.engine.trim.moldings.crown import derive_crown
from scantling.engine.trim.moldings.molding import Molding, derive_molding, derive_whole
from scantling.engine.trim.moldings.rail import derive_chair_rail, derive_picture_rail
from scantling.engine.trim.moldings.shoe import derive_shoe
from scantling.engine.trim.piece import Piece
from scantling.engine.trim.told.stock import is_too_long

# What goes on before casing, from the ceiling down, and what dies into it.
ABOVE_CASING = (derive_crown, derive_picture_rail)
INTO_CASING = (derive_chair_rail, derive_base, derive_cap, derive_shoe)


def wanted_moldings(standard: Standard) -> list[Molding]:
    """What is wanted, base first."""
    moldings = [
        derive(standard) for derive in (derive_base, derive_cap, derive_shoe, derive_chair_rail, *ABOVE_CASING[::-1])
    ]
    return [molding for molding in moldings if standard.wants(molding.kind)]


def derive_all(room: Room, wanted: tuple[Callable[[Standard], Molding], ...]) -> tuple[list[Piece], list[Problem]]:
    """The room's pieces of some moldings, and what of them cannot be made as it was read."""
    pieces: list[Piece] = []
    problems: list[Problem] = []
    for derive in wanted:
        molding = derive(room.standard)
        found, wrong = derive_molding(room, molding) if room.standard.wants(molding.kind) else ([], [])
        pieces += found
        problems += wrong
    return pieces, problems


def derive_longer_than_stock(room: Room) -> set[str]:
    """The walls, by id, along which something is longer than any board on its list, and is to be joined on a stud."""
    standard = room.standard
    return {
        piece.wall
        for molding in wanted_moldings(standard)
        if standard.stock_of(molding.profile)
        for _, piece in derive_whole(room, molding)[0]
        if is_too_long(standard, piece)
    }
