"""Shoe: a small molding on the floor along the base. Its back lies on the face of the base and follows that line.

It stands out past most casing: there it is eased back or returned. What the base goes over, or is notched for, stands
on the floor in its way: it is returned on both sides of it. It goes on after the floor is down, nailed to the base or
to the floor and not to both. Common practice, no source.
"""

from scantling.engine.standard import Standard
from scantling.engine.trim.moldings.base import derive_base
from scantling.engine.trim.moldings.cap import derive_cap
from scantling.engine.trim.moldings.molding import Molding
from scantling.engine.trim.piece import Kind
from scantling.engine.trim.runs.course import Course

BESIDE = {"base": derive_base, "cap": derive_cap}


def derive_shoe(standard: Standard) -> Molding:
    """The shoe of a standard; without base it lies on the wall."""
    return Molding(
        Kind.SHOE,
        "shoe",
        standard.profile_of("shoe"),
        standard.shoe_thickness,
        standard.shoe_height,
        standard.shoe_inside,
        Course(obstacles=("stops", "over", "notch"), tall=standard.shoe_height),
        on_base=standard.wants("base"),
        under=tuple(derive(standard) for wanted, derive in BESIDE.items() if standard.wants(wanted)),
    )
