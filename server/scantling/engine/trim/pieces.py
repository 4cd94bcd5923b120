"""The pieces of a room: what every rule of the trade gives, in fitting order and lettered.

From the ceiling down, so that nothing finished lies under the ladder: crown and picture rail. Then casing, which chair
rail and base die into; then chair rail, and base last of the boards, with what lies on it. Common practice, no source,
but for casing before base and rail, which articles on casing all ask for. Battens stand between what is up by then,
and a person's own pieces come last.
"""

from dataclasses import replace

from scantling.engine.standard import Standard
from scantling.engine.survey.room import Problem, Room
from scantling.engine.trim.battens import derive_battens
from scantling.engine.trim.free import derive_free
from scantling.engine.trim.moldings import ABOVE_CASING, INTO_CASING, derive_all
from scantling.engine.trim.openings import derive_openings
from scantling.engine.trim.piece import Piece, letter
from scantling.engine.trim.seasons import note_movement
from scantling.engine.trim.short import mark_short
from scantling.engine.trim.tolerance import mark_in_place


def derive_pieces(room: Room) -> tuple[list[Piece], list[Problem]]:
    """Every piece of wood the room needs, and what of it cannot be made as it was read."""
    found = (
        derive_all(room, ABOVE_CASING),
        derive_openings(room),
        derive_all(room, INTO_CASING),
        derive_battens(room),
        derive_free(room),
    )
    pieces = [_marked(room.standard, piece) for some, _ in found for piece in some]
    problems = [problem for _, wrong in found for problem in wrong]
    # Casing and what ends at it may find the same thing wrong with an opening: it is told once.
    told = list(dict.fromkeys(problems))
    return [replace(piece, letter=letter(place)) for place, piece in enumerate(pieces)], told


def _marked(standard: Standard, piece: Piece) -> Piece:
    """A piece with what is to be known of any: what its ± means, how it is held at the saw, what seasons do to it."""
    return note_movement(standard, mark_short(mark_in_place(piece, standard), standard))
