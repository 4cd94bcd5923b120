"""Base cap: a small molding on top of the base, its back to the wall. It runs where base runs, and after it."""

from scantling.engine.standard import Standard
from scantling.engine.trim.molding import Molding
from scantling.engine.trim.runs import BASE


def cap_of(its: Standard) -> Molding:
    """The base cap of a standard."""
    return Molding("cap", "base cap", its.profile_of("cap"), its.cap_thickness, its.cap_width, its.cap_inside, BASE)
