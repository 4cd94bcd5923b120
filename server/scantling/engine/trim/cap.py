"""Base cap: a small molding on top of the base, its back to the wall. It runs where base runs, and after it."""

from scantling.engine.survey.room import Problem, Room
from scantling.engine.trim.molding import Molding, derive_molding
from scantling.engine.trim.piece import Piece
from scantling.engine.trim.runs import BASE


def derive_cap(room: Room) -> tuple[list[Piece], list[Problem]]:
    """The room's base cap in fitting order, and the walls that leave no room for a piece."""
    its = room.standard
    cap = Molding("cap", "base cap", its.profile_of("cap"), its.cap_thickness, its.cap_width, its.cap_inside, BASE)
    return derive_molding(room, cap)
