"""Base: the board along the floor. Doors, cased openings and what stands on the floor break it; windows do not."""

from scantling.engine.standard import Standard
from scantling.engine.trim.moldings.molding import Molding
from scantling.engine.trim.piece import Kind
from scantling.engine.trim.runs.course import Course


def derive_base(standard: Standard) -> Molding:
    """The base of a standard."""
    return Molding(
        Kind.BASE,
        "base",
        standard.profile_of("base"),
        standard.base_thickness,
        standard.base_height,
        standard.base_inside,
        Course(tall=standard.base_height),
        meets=True,
    )
