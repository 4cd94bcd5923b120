"""Crown in a room: along every wall at the ceiling, leaning by its spring; coped inside, mitered outside.

Its edge on the wall is as long as the wall, and is the one to measure and mark (a compound miter saw's manual, on
crown); its edge on the ceiling follows. To its neighbors it is as thick as it projects.
"""

from scantling.engine.standard import Standard
from scantling.engine.survey.room import Problem, Room
from scantling.engine.trim.crown import derive_drop, derive_projection
from scantling.engine.trim.molding import Molding, derive_molding
from scantling.engine.trim.piece import Piece
from scantling.engine.trim.runs import HEAD, Course


def crown_course(its: Standard) -> Course:
    """What breaks crown: only what was read to reach up to its wall edge."""
    return Course(openings=(), level=HEAD, down=derive_drop(its.crown_width, its.crown_spring))


def derive_crown(room: Room) -> tuple[list[Piece], list[Problem]]:
    """The room's crown in fitting order."""
    its = room.standard
    projection = derive_projection(its.crown_width, its.crown_spring)
    crown = Molding("crown", "crown", its.profile_of("crown"), projection, its.crown_width, its.crown_inside,
                    crown_course(its), spring=its.crown_spring)  # fmt: skip
    return derive_molding(room, crown)
