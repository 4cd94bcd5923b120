"""The pieces of a room: what every rule of the trade gives, in fitting order and lettered.

From the ceiling down, so that nothing finished lies under the ladder: crown and picture rail. Then casing, which chair
rail and base die into; then chair rail, and base last of the boards, with what lies on it. Common practice, no source,
but for casing before base and rail, which articles on casing all ask for. Battens stand between what is up by then,
and a person's own pieces come last.
"""

from dataclasses import replace

from scantling.engine.survey.room import Problem, Room
from scantling.engine.trim.base import derive_base
from scantling.engine.trim.battens import derive_battens
from scantling.engine.trim.cap import derive_cap
from scantling.engine.trim.cornice import derive_crown
from scantling.engine.trim.free import derive_free
from scantling.engine.trim.openings import derive_openings
from scantling.engine.trim.piece import Piece, letter
from scantling.engine.trim.rail import derive_chair_rail, derive_picture_rail
from scantling.engine.trim.seasons import note_movement
from scantling.engine.trim.shoe import derive_shoe

RULES = (
    derive_crown, derive_picture_rail, derive_openings, derive_chair_rail, derive_base, derive_cap, derive_shoe,
    derive_battens, derive_free,
)  # fmt: skip


def derive_pieces(room: Room) -> tuple[list[Piece], list[Problem]]:
    """Every piece of wood the room needs, and what of it cannot be made as it was read."""
    pieces: list[Piece] = []
    problems: list[Problem] = []
    for derive in RULES:
        found, wrong = derive(room)
        pieces += found
        problems += wrong
    noted = (note_movement(room.standard, piece) for piece in pieces)
    return [replace(piece, letter=letter(place)) for place, piece in enumerate(noted)], problems
