"""Rails: the chair rail, which casing of doors and windows and tall things break, and the picture rail above them all.

Both are put up at a height from the floor, to their lower edge. A thing as tall as the chair rail breaks it, so heights
are asked for; at the picture rail only a thing that was read to be so tall does.
"""

from scantling.engine.standard import Standard
from scantling.engine.trim.moldings.molding import Molding
from scantling.engine.trim.piece import Kind
from scantling.engine.trim.runs.course import HEAD, WAIST, Course


def derive_chair_rail(standard: Standard) -> Molding:
    """The chair rail of a standard."""
    course = Course(openings=("door", "cased", "window"), rail="chair_rail", level=WAIST, up=standard.chair_rail_height,
                    tall=standard.chair_rail_width)  # fmt: skip
    return Molding(
        Kind.CHAIR_RAIL,
        "chair rail",
        standard.profile_of("chair_rail"),
        standard.chair_rail_thickness,
        standard.chair_rail_width,
        standard.chair_rail_inside,
        course,
    )


def derive_picture_rail(standard: Standard) -> Molding:
    """The picture rail of a standard."""
    course = Course(
        openings=(),
        if_read=("door", "cased", "window"),
        rail="picture_rail",
        level=HEAD,
        up=standard.picture_rail_height,
        tall=standard.picture_rail_width,
    )
    return Molding(
        Kind.PICTURE_RAIL,
        "picture rail",
        standard.profile_of("picture_rail"),
        standard.picture_rail_thickness,
        standard.picture_rail_width,
        standard.picture_rail_inside,
        course,
    )
