"""Rails: the chair rail, which casing of doors and windows and tall things break, and the picture rail above them all.

Both are put up at a height from the floor, to their lower edge. A thing as tall as the chair rail breaks it, so heights
are asked for; at the picture rail only a thing that was read to be so tall does.
"""

from scantling.engine.standard import Standard
from scantling.engine.trim.molding import Molding
from scantling.engine.trim.runs import HEAD, WAIST, Course


def chair_rail_of(its: Standard) -> Molding:
    """The chair rail of a standard."""
    course = Course(openings=("door", "cased", "window"), level=WAIST, up=its.chair_rail_height)
    return Molding("chair_rail", "chair rail", its.profile_of("chair_rail"), its.chair_rail_thickness,
                   its.chair_rail_width, its.chair_rail_inside, course)  # fmt: skip


def picture_rail_of(its: Standard) -> Molding:
    """The picture rail of a standard."""
    course = Course(openings=(), level=HEAD, up=its.picture_rail_height)
    return Molding("picture_rail", "picture rail", its.profile_of("picture_rail"), its.picture_rail_thickness,
                   its.picture_rail_width, its.picture_rail_inside, course)  # fmt: skip
