"""Base cap: a small molding on top of the base, its back to the wall. It runs where base runs, and after it."""

from scantling.engine.standard import Standard
from scantling.engine.trim.moldings.base import derive_base
from scantling.engine.trim.moldings.molding import Molding
from scantling.engine.trim.piece import Kind
from scantling.engine.trim.runs.course import Course


def derive_cap(standard: Standard) -> Molding:
    """The base cap of a standard."""
    return Molding(
        Kind.CAP,
        "base cap",
        standard.profile_of("cap"),
        standard.cap_thickness,
        standard.cap_width,
        standard.cap_inside,
        Course(up=standard.base_height, tall=standard.cap_width),
        under=(derive_base(standard),) if standard.wants("base") else (),
    )
