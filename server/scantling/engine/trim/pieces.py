"""The pieces of a room: what every rule of the trade gives, in fitting order and lettered.

From the ceiling down, so that nothing finished lies under the ladder: blocking, crown and picture rail. Then casing,
which chair rail and base die into; then chair rail, and base last of the boards, with what lies on it. Common practice,
no source, but for casing before base and rail, which articles on casing all ask for. Battens stand between what is up
by then, and a person's own pieces come last.
"""

from dataclasses import replace

from scantling.engine.survey.room import Problem, Room
from scantling.engine.trim.dressed.every import dress
from scantling.engine.trim.moldings.blocking import derive_blocking
from scantling.engine.trim.moldings.every import ABOVE_CASING, INTO_CASING, derive_all
from scantling.engine.trim.openings.cased import derive_openings
from scantling.engine.trim.own.battens import derive_battens
from scantling.engine.trim.own.free import derive_free
from scantling.engine.trim.piece import Piece, letter
from scantling.engine.trim.runs.toe import derive_toe_kicks


def derive_pieces(room: Room) -> tuple[list[Piece], list[Problem]]:
    """Every piece of wood the room needs, and what of it cannot be made as it was read.

    What hangs on a piece's length is told by `told.every.tell`, once its length is final.
    """
    cased, uncased = derive_openings(room)
    dressed, undressed = dress(room, cased)
    above = derive_all(room, ABOVE_CASING)
    found: tuple[tuple[list[Piece], list[Problem]], ...] = (
        (derive_blocking(room, above[0]), []),
        above,
        (dressed, [*uncased, *undressed]),
        derive_all(room, INTO_CASING),
        derive_toe_kicks(room),
        derive_battens(room),
        derive_free(room),
    )
    pieces = [piece for some, _ in found for piece in some]
    problems = [problem for _, wrong in found for problem in wrong]
    # Casing and what ends at it may find the same thing wrong with an opening: it is told once.
    told = list(dict.fromkeys(problems))
    return [replace(piece, letter=letter(place)) for place, piece in enumerate(pieces)], told
