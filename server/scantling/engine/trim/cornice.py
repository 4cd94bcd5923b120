"""Crown in a room: along every wall at the ceiling, leaning by its spring; coped inside, mitered outside.

Its edge on the wall is as long as the wall, and is the one to measure and mark (a compound miter saw's manual, on
crown); its edge on the ceiling follows. To its neighbors it is as thick as it projects. Only what was read to reach up
to its wall edge breaks it.
"""

from scantling.engine.standard import Standard
from scantling.engine.trim.crown import derive_drop, derive_projection
from scantling.engine.trim.molding import Molding
from scantling.engine.trim.runs import HEAD, Course


def crown_of(its: Standard) -> Molding:
    """The crown of a standard."""
    projection = derive_projection(its.crown_width, its.crown_spring)
    course = Course(openings=(), level=HEAD, down=derive_drop(its.crown_width, its.crown_spring))
    return Molding("crown", "crown", its.profile_of("crown"), projection, its.crown_width, its.crown_inside, course,
                   spring=its.crown_spring)  # fmt: skip
