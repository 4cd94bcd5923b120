"""Base: the board along the floor. Doors, cased openings and what stands on the floor break it; windows do not."""

from scantling.engine.survey.room import Problem, Room
from scantling.engine.trim.molding import Molding, derive_molding
from scantling.engine.trim.piece import Piece
from scantling.engine.trim.runs import BASE


def base_of(room: Room) -> Molding:
    """The base of a room's standard."""
    its = room.standard
    return Molding("base", "base", its.profile_of("base"), its.base_thickness, its.base_height, its.base_inside, BASE,
                   meets=True)  # fmt: skip


def derive_base(room: Room) -> tuple[list[Piece], list[Problem]]:
    """The room's base in fitting order, and the walls that leave no room for a piece."""
    return derive_molding(room, base_of(room))
