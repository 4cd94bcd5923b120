"""Toe kicks: below a cabinet that is set back there a strip of base, as wide as the cabinet, and of shoe if wanted.

Base and shoe beside it that are lower than the toe kick go on under the cabinet, to what is set back; higher ones stop
at its face (`footprint.things_round`). Common practice, no source.
"""

from collections.abc import Iterator

from scantling.engine.errors import EngineError
from scantling.engine.standard import Standard
from scantling.engine.survey.room import Obstacle, Problem, Room, Wall
from scantling.engine.tape.lengths import SIXTY_FOURTH, Length, format_length
from scantling.engine.trim.doubt import Doubt
from scantling.engine.trim.ends import End
from scantling.engine.trim.piece import Flag, Kind, Piece, Step
from scantling.engine.trim.told.tolerance import MARK, READING
from scantling.engine.words import say


class ToeError(EngineError):
    family = "toe"


def derive_toe_kicks(room: Room) -> tuple[list[Piece], list[Problem]]:
    """A strip of each that runs along the floor, below every cabinet with a toe kick."""
    pieces: list[Piece] = []
    problems: list[Problem] = []
    for wall in room.walls:
        for thing in wall.obstacles:
            if thing.toe is None or thing.base != "stops":
                continue
            wrong = [Problem(wall.id, error.key, error.message) for error in check_toe(thing)]
            problems += wrong
            pieces += [] if wrong else _strips(room.standard, wall, thing)
    return pieces, problems


def find_above(wall: Wall, piece: Piece) -> Obstacle | None:
    """The thing that a strip runs below; None for any other piece."""
    things = (thing for thing in wall.obstacles if piece.key == _key(piece.kind, wall, thing))
    return next(things, None)


def _key(kind: str, wall: Wall, thing: Obstacle) -> str:
    return f"{kind} {wall.id} toe {thing.id}"


def check_toe(thing: Obstacle) -> Iterator[ToeError]:
    """A toe kick that is no part of its cabinet."""
    if thing.toe is None:
        return
    high, back = thing.toe
    if thing.height and high >= thing.height.smallest:
        yield ToeError("toe-too-high", what=thing.name, toe=_write(high), tall=_write(thing.height.smallest))
    if thing.depth and back >= thing.depth.smallest:
        yield ToeError("toe-too-deep", what=thing.name, toe=_write(back), deep=_write(thing.depth.smallest))


def _strips(standard: Standard, wall: Wall, thing: Obstacle) -> Iterator[Piece]:
    if thing.width is None or thing.toe is None:
        return
    for kind, tall in ((Kind.BASE, standard.base_height), (Kind.SHOE, standard.shoe_height)):
        if standard.wants(kind):
            end = End("square", say("meets-side-of", thing=thing.name), open=True)
            rip = say("toe-rip", high=_write(thing.toe[0])) if tall > thing.toe[0] else ""
            yield Piece(
                key=_key(kind, wall, thing),
                kind=kind,
                part=f"{kind} of the toe kick",
                place=thing.name,
                profile=standard.profile_of(kind),
                wall=wall.id,
                wall_number=wall.number,
                back=thing.width.smallest,
                left=end,
                right=end,
                doubt=Doubt.of(READING, MARK),
                working=(Step(say("toe-along", thing=thing.name), thing.width.smallest, thing.width.texts),),
                flags=(Flag("toe", rip, attention=False),) if rip else (),
            )


def _write(length: Length) -> str:
    return format_length(length, SIXTY_FOURTH)
