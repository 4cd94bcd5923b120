"""Base: the board along the floor. Doors, cased openings and what stands on the floor break it; windows do not."""

from scantling.engine.standard import Standard
from scantling.engine.trim.molding import Molding
from scantling.engine.trim.runs import BASE


def base_of(its: Standard) -> Molding:
    """The base of a standard."""
    return Molding("base", "base", its.profile_of("base"), its.base_thickness, its.base_height, its.base_inside, BASE,
                   meets=True)  # fmt: skip
