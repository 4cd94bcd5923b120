"""What the pieces of a room use up: the joints to caulk, and where they are nailed, part by part.

Which edges are caulked, and in how many rows a part is nailed: common practice, no source, but for casing in pairs of
nails, outer edge to the stud and inner edge to the jamb, and base by two to a stud: NAVEDTRA 14044, interior finish.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from scantling.engine.supplies.fasteners import BASE, JAMB, STUD
from scantling.engine.survey.room import Room
from scantling.engine.tape.lengths import ZERO, Length
from scantling.engine.trim.own.battens import read_wanted
from scantling.engine.trim.piece import Kind, Piece
from scantling.engine.words import say

CASING = (Kind.LEG, Kind.HEAD, Kind.SILL)
# How many edges of a part meet wall or ceiling where caulk is seen. Shoe and floor are never caulked together.
CAULKED = {Kind.BASE: 1, Kind.CAP: 1, Kind.CHAIR_RAIL: 2, Kind.PICTURE_RAIL: 2, Kind.CROWN: 2, Kind.BATTEN: 2,
           Kind.APRON: 1, **dict.fromkeys(CASING, 1)}  # fmt: skip
ROWS = {Kind.BASE: 2, Kind.CAP: 1, Kind.SHOE: 1, Kind.CHAIR_RAIL: 2, Kind.PICTURE_RAIL: 1, Kind.CROWN: 2,
        Kind.BATTEN: 2, Kind.APRON: 1}  # fmt: skip


@dataclass(frozen=True, slots=True)
class CaulkLine:
    """A line to caulk, all pieces of one part together."""

    name: str
    length: Length


@dataclass(frozen=True, slots=True)
class Nailing:
    """Where a part is nailed: through its own thickness, and `board` where wall lies between, into stud or jamb."""

    name: str
    thick: Length
    board: bool
    into: str
    rows: int
    lengths: tuple[Length, ...]


def derive_joints(pieces: Sequence[Piece]) -> list[CaulkLine]:
    """Every line to caulk, in the order of the pieces. A cap on the base is what meets the wall in its stead."""
    capped = any(piece.kind == Kind.CAP for piece in pieces)
    found: dict[str, Length] = {}
    for piece in _whole(pieces):
        if piece.kind in CAULKED and not (piece.kind == Kind.BASE and capped):
            name = "casing" if piece.kind in CASING else piece.part
            found[name] = found.get(name, ZERO) + _long(piece) * CAULKED[piece.kind]
    return [CaulkLine(say("caulk-to-wall", part=name), length) for name, length in found.items()]


def derive_nailing(room: Room, pieces: Sequence[Piece], crown: Length) -> list[Nailing]:
    """Every way in which parts of the room are nailed, each with the pieces that are; crown by how thick its edges are.

    A return is glued, and a piece of one's own goes by no rule.
    """
    casing = tuple(_long(piece) for piece in _whole(pieces) if piece.kind in CASING)
    thick = room.standard.casing_thickness
    found = [Nailing(say("nails-outer-edge"), thick, True, STUD, 1, casing),
             Nailing(say("nails-inner-edge"), thick, False, JAMB, 1, casing)] if casing else []  # fmt: skip
    alike: dict[tuple[Kind, str, Length], list[Length]] = {}
    for piece in _whole(pieces):
        own = _thickness(room, piece, crown) if piece.kind in ROWS else None
        if own is not None:
            alike.setdefault((piece.kind, piece.part, own), []).append(_long(piece))
    for (kind, part, own), lengths in alike.items():
        on_base = kind == Kind.SHOE and room.standard.wants("base")
        found.append(Nailing(part, own, not on_base, BASE if on_base else STUD, ROWS[kind], tuple(lengths)))
    return found


def _whole(pieces: Sequence[Piece]) -> list[Piece]:
    return [piece for piece in pieces if not piece.returns]


def _long(piece: Piece) -> Length:
    return max(piece.back, piece.front)


def _thickness(room: Room, piece: Piece, crown: Length) -> Length | None:
    """How thick a piece is where a nail goes through it."""
    if piece.kind == Kind.CROWN:
        return crown
    if piece.kind == Kind.APRON:
        return room.standard.apron_size[0]
    if piece.kind == Kind.BATTEN:
        wall = next((one for one in room.walls if one.id == piece.wall), None)
        return read_wanted(wall).thickness if wall else None
    thick: Length = getattr(room.standard, f"{piece.kind}_thickness")
    return thick
