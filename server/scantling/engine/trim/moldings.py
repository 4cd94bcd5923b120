"""Every molding that runs along walls, in fitting order, and those that a room is given."""

from collections.abc import Callable

from scantling.engine.standard import Standard
from scantling.engine.survey.room import Problem, Room
from scantling.engine.trim.base import base_of
from scantling.engine.trim.cap import cap_of
from scantling.engine.trim.cornice import crown_of
from scantling.engine.trim.molding import Molding, derive_molding, derive_whole
from scantling.engine.trim.piece import Piece
from scantling.engine.trim.rail import chair_rail_of, picture_rail_of
from scantling.engine.trim.scarf import is_too_long
from scantling.engine.trim.shoe import shoe_of

# What goes on before casing, from the ceiling down, and what dies into it.
ABOVE_CASING = (crown_of, picture_rail_of)
INTO_CASING = (chair_rail_of, base_of, cap_of, shoe_of)


def wanted_moldings(its: Standard) -> list[Molding]:
    """What is wanted, base first."""
    moldings = [molding_of(its) for molding_of in (base_of, cap_of, shoe_of, chair_rail_of, *ABOVE_CASING[::-1])]
    return [molding for molding in moldings if its.wants(molding.name)]


def derive_all(room: Room, wanted: tuple[Callable[[Standard], Molding], ...]) -> tuple[list[Piece], list[Problem]]:
    """The room's pieces of some moldings, and what of them cannot be made as it was read."""
    pieces: list[Piece] = []
    problems: list[Problem] = []
    for molding_of in wanted:
        molding = molding_of(room.standard)
        found, wrong = derive_molding(room, molding) if room.standard.wants(molding.name) else ([], [])
        pieces += found
        problems += wrong
    return pieces, problems


def derive_longer_than_stock(room: Room) -> set[str]:
    """The walls, by id, along which something is longer than any board on its list, and is to be joined on a stud."""
    its = room.standard
    return {
        piece.wall
        for molding in wanted_moldings(its)
        if its.stock_of(molding.profile)
        for _, piece in derive_whole(room, molding)[0]
        if is_too_long(its, piece)
    }
