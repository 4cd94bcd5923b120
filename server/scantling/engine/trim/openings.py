"""The openings of a room: each door and cased opening to its casing, as pieces of the room.

An opening is cased once its width and both its heights are read; the head corners count as square until they are. What
cannot be cased as it was read is a problem on its wall, and the others stand.
"""

from collections.abc import Iterator

from scantling.engine.errors import EngineError
from scantling.engine.survey.room import Opening, Problem, Room, Wall
from scantling.engine.trim.casing import Make, check_casing, derive_casing, derive_sides
from scantling.engine.trim.frame import FlatPiece
from scantling.engine.trim.jambs import Jambs, check_jambs
from scantling.engine.trim.piece import Flag, Piece


def derive_openings(room: Room) -> tuple[list[Piece], list[Problem]]:
    """The casing of every opening in walking order, legs before heads, and the openings that cannot be cased."""
    pieces: list[Piece] = []
    problems: list[Problem] = []
    for wall in room.walls:
        for opening in wall.openings:
            try:
                pieces += _derive_cased(room, wall, opening)
            except EngineError as error:
                problems.append(Problem(wall.id, error.key, f"{opening.name.capitalize()}: {error.message}"))
    return pieces, problems


def _derive_cased(room: Room, wall: Wall, opening: Opening) -> Iterator[Piece]:
    jambs = derive_jambs(opening)
    if jambs is None or opening.kind == "window" or not room.standard.wants("casing"):
        return
    make = derive_make(room)
    warnings = [*check_jambs(jambs), *check_casing(derive_sides(jambs, make), make)]
    for flat in derive_casing(jambs, make):
        yield _lay_on_saw(room, wall, opening, flat, warnings)


def derive_jambs(opening: Opening) -> Jambs | None:
    """The opening as its readings make it, or None while one of the three that casing needs is unread."""
    if opening.width is None or opening.left is None or opening.right is None:
        return None
    return Jambs(opening.width, opening.left, opening.right, opening.left_corner, opening.right_corner)


def derive_make(room: Room) -> Make:
    """How the room's standard has its casing made."""
    standard = room.standard
    return Make(standard.casing_width, standard.casing_width, standard.reveal, standard.head == "mitered")


def _lay_on_saw(room: Room, wall: Wall, opening: Opening, flat: FlatPiece, warnings: list[str]) -> Piece:
    """A board of the frame as it lies at the saw, its outer edge to the fence: an upright one is turned on its side."""
    foot_is_left = flat.upright and flat.part.startswith("left")
    left, right = (flat.second, flat.first) if foot_is_left else (flat.first, flat.second)
    flags = [Flag("opening", warning, attention=False) for warning in (*warnings, *flat.notes)]
    return Piece(
        key=f"{flat.part} {opening.id}",
        part=flat.part,
        place=opening.name,
        profile=room.standard.casing_profile,
        wall=wall.id,
        wall_number=wall.number,
        back=flat.inner,
        left=left,
        right=right,
        plus_minus=flat.plus_minus,
        working=flat.working,
        flags=tuple(flags),
        opening=opening.id,
    )
