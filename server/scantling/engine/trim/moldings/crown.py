"""Crown in a room: along every wall at the ceiling, leaning by its spring; coped inside, mitered outside.

Its edge on the wall is as long as the wall, and is the one to measure and mark (a compound miter saw's manual, on
crown); its edge on the ceiling follows. To its neighbors it is as thick as it projects. Only what was read to reach up
to its wall edge breaks it.
"""

from scantling.engine.standard import Standard
from scantling.engine.trim.moldings.molding import Molding
from scantling.engine.trim.piece import Kind
from scantling.engine.trim.runs.compound import derive_drop, derive_projection
from scantling.engine.trim.runs.course import HEAD, Course


def derive_crown(standard: Standard) -> Molding:
    """The crown of a standard."""
    projection = derive_projection(standard.crown_width, standard.crown_spring)
    course = Course(openings=(), if_read=(), level=HEAD, down=derive_drop(standard.crown_width, standard.crown_spring))
    return Molding(
        Kind.CROWN,
        "crown",
        standard.profile_of("crown"),
        projection,
        standard.crown_width,
        standard.crown_inside,
        course,
        spring=standard.crown_spring,
    )
