"""Backband: a molding wrapped round the outer edge of mitered casing, mitered in the same corners.

Its inner edge is as long as the outer edge of the casing that it lies against; what its miter gains is its own width
by the corner, w·cot(th/2). Base and rails then end at its outer edge, and in a corner at its face (`reach`). Off until
it is wanted, and only round mitered casing; beside a wall that leaves no room for it there is none, which is told.
Geometry.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from scantling.engine.standard import Standard
from scantling.engine.survey.room import Opening, Problem, Room, SurveyError, Wall
from scantling.engine.tape.angles import scaled, tangent
from scantling.engine.tape.lengths import Length
from scantling.engine.trim.ends import End
from scantling.engine.trim.openings.casing import sign, step_if_seen
from scantling.engine.trim.openings.frame import flat_end
from scantling.engine.trim.openings.reach import asks_for_band, find_banded
from scantling.engine.trim.piece import Kind, Piece, Step
from scantling.engine.words import say


class BandError(SurveyError):
    family = "band"


BANDED = (Kind.LEG, Kind.HEAD, Kind.SILL)


def check_band(room: Room, wall: Wall, opening: Opening) -> list[Problem]:
    """Why the band that is asked for cannot go round an opening; nothing where it can, or none is asked for."""
    standard = opening.standard
    if standard is None or not asks_for_band(standard) or opening.id in find_banded(room):
        return []
    key = "uneven-band" if standard.head_width != standard.casing_width else "no-room-for-band"
    return [Problem(wall.id, key, BandError(key, what=opening.name).message)]


def wrap(standard: Standard, pieces: Sequence[Piece]) -> list[Piece]:
    """The pieces of one opening, with the band that goes round them last."""
    return [*pieces, *_bands(standard, pieces)]


def _bands(standard: Standard, pieces: Sequence[Piece]) -> Iterator[Piece]:
    # Of a row of windows the casing between has no outer edge, and is no left or right leg.
    casing = [piece for piece in pieces if piece.kind in BANDED and (piece.kind != Kind.LEG or piece.side)]
    head = next((piece for piece in casing if piece.kind == Kind.HEAD), None)
    if not asks_for_band(standard) or head is None or head.left.joint != "miter":
        return
    for piece in casing:
        ends = tuple(_end(standard.backband_width, end) for end in (piece.left, piece.right))
        gains = [Step(say("band-miter"), end.grows) for end in ends if end.joint == "miter"]
        gains += [step_if_seen(say("band-foot", sign=sign(end.grows)), end.grows)
                  for end in ends if end.joint != "miter" and end.grows]  # fmt: skip
        yield replace(
            piece,
            key=f"{piece.key} backband",
            kind=Kind.BACKBAND,
            part=f"{piece.part} backband",
            profile=standard.backband_profile,
            back=piece.front,
            left=ends[0],
            right=ends[1],
            working=(Step(say("band-from", part=piece.part), piece.front), *gains,
                     Step(say("band-outer-edge"), piece.front + ends[0].grows + ends[1].grows)),
            flags=(),
        )  # fmt: skip


def _end(width: Length, end: End) -> End:
    # Of casing whose head is as wide as its legs the saw is 90 − th/2, and w·tan of that is w·cot(th/2).
    slant = scaled(width, tangent(end.saw))
    return flat_end(end.joint, end.meets, end.saw, slant if end.grows.inches > 0 else -slant)
