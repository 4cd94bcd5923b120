"""Rails: the chair rail, which casing of doors and windows and tall things break, and the picture rail above them all.

Both are put up at a height from the floor. A thing as tall as the chair rail breaks it, so heights are asked for; at
the picture rail only a thing that was read to be so tall does.
"""

from scantling.engine.standard import Standard
from scantling.engine.survey.room import Problem, Room
from scantling.engine.trim.molding import Molding, derive_molding
from scantling.engine.trim.piece import Piece
from scantling.engine.trim.runs import HEAD, WAIST, Course


def chair_rail_course(its: Standard) -> Course:
    """What breaks the chair rail: its height is to its lower edge."""
    return Course(openings=("door", "cased", "window"), level=WAIST, up=its.chair_rail_height)


def picture_rail_course(its: Standard) -> Course:
    """What breaks the picture rail."""
    return Course(openings=(), level=HEAD, up=its.picture_rail_height)


def derive_chair_rail(room: Room) -> tuple[list[Piece], list[Problem]]:
    """The room's chair rail in fitting order, and the walls that leave no room for a piece."""
    its = room.standard
    rail = Molding("chair_rail", "chair rail", its.profile_of("chair_rail"), its.chair_rail_thickness,
                   its.chair_rail_width, its.chair_rail_inside, chair_rail_course(its))  # fmt: skip
    return derive_molding(room, rail)


def derive_picture_rail(room: Room) -> tuple[list[Piece], list[Problem]]:
    """The room's picture rail in fitting order."""
    its = room.standard
    rail = Molding("picture_rail", "picture rail", its.profile_of("picture_rail"), its.picture_rail_thickness,
                   its.picture_rail_width, its.picture_rail_inside, picture_rail_course(its))  # fmt: skip
    return derive_molding(room, rail)
