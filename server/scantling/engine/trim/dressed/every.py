"""The casing of every opening, dressed as the room asks: blocks, a built-up head, a band."""

from collections.abc import Sequence
from itertools import groupby

from scantling.engine.survey.room import Problem, Room
from scantling.engine.trim.dressed.backband import check_band, wrap
from scantling.engine.trim.dressed.blocks import set_blocks
from scantling.engine.trim.dressed.built_up import build_up
from scantling.engine.trim.piece import Piece


def dress(room: Room, pieces: Sequence[Piece]) -> tuple[list[Piece], list[Problem]]:
    """The pieces of casing with what is put on them, opening by opening, and where that cannot be."""
    dressed: list[Piece] = []
    problems: list[Problem] = []
    found = {one.id: (wall, one) for wall in room.walls for one in wall.openings}
    for of, some in groupby(pieces, key=lambda piece: piece.opening):
        group = list(some)
        wall, opening = found.get(of or "", (None, None))
        standard = opening.standard if opening else None
        if wall is None or opening is None or standard is None:
            dressed += group
            continue
        wrong = check_band(room, wall, opening)
        problems += wrong
        built = build_up(standard, set_blocks(standard, group))
        dressed += built if wrong else wrap(standard, built)
    return dressed, problems
