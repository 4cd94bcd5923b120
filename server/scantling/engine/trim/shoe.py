"""Shoe: a small molding on the floor along the base. Its back lies on the face of the base and follows that line.

It stands out past most casing: there it is eased back or returned. What the base goes over stands on the floor in its
way: it is returned on both sides of it. It goes on after the floor is down, nailed to the base or to the floor and not
to both. Common practice, no source.
"""

from scantling.engine.standard import Standard
from scantling.engine.trim.molding import Molding
from scantling.engine.trim.runs import Course

SHOE = Course(obstacles=("stops", "over"))


def shoe_of(its: Standard) -> Molding:
    """The shoe of a standard; without base it lies on the wall."""
    return Molding("shoe", "shoe", its.profile_of("shoe"), its.shoe_thickness, its.shoe_height, its.shoe_inside, SHOE,
                   on_base=its.wants("base"))  # fmt: skip
