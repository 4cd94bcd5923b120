"""Seasons: what dry winters and damp summers do to wide stock, as a note on the piece with its figures.

Said only where the house names its wood and the moisture it goes from and to; nothing is guessed of either. Never a
correction: a length does not change with moisture, and the width is the saw's no more.
"""

from dataclasses import replace

from scantling.engine.movement import check_movement, derive_movement, find_wood
from scantling.engine.standard import Standard
from scantling.engine.tape.lengths import SIXTY_FOURTH, Length, format_length
from scantling.engine.trim.piece import Flag, Kind, Piece
from scantling.engine.words import say


def note_movement(standard: Standard, piece: Piece) -> Piece:
    """The piece with a note of how its width will change, where that is known and is a 64th or more."""
    width = width_of(standard, piece)
    from_percent, to_percent = standard.wood_from, standard.wood_to
    if width is None or not standard.wood_species or from_percent is None or to_percent is None:
        return piece
    wood = find_wood(standard.wood_species)
    moved = derive_movement(wood, standard.wood_cut, width, from_percent, to_percent)
    if abs(moved.change) < SIXTY_FOURTH:
        return piece
    wide, change, gap = (format_length(abs(one), SIXTY_FOURTH) for one in (width, moved.change, moved.miter_gap))
    said = [
        say("movement-wider" if moved.change.inches > 0 else "movement-narrower", wood=wood.name.capitalize(),
            sawn=say(f"sawn-{standard.wood_cut}"), first=float(from_percent), last=float(to_percent), width=wide,
            change=change),
        *([say("movement-miter-opens", gap=gap)] if _is_mitered_flat(piece) else []),
        *check_movement(wood, from_percent, to_percent),
    ]  # fmt: skip
    return replace(piece, flags=(*piece.flags, Flag("movement", " ".join(said), attention=False)))


def width_of(standard: Standard, piece: Piece) -> Length | None:
    """How wide a piece is across its grain, where its profile is one of the standard's flat ones."""
    if piece.kind == Kind.BASE and not piece.returns:
        return standard.base_height
    return standard.casing_width if piece.profile == standard.casing_profile else None


def _is_mitered_flat(piece: Piece) -> bool:
    return any(end.joint == "miter" and end.corner is None for end in (piece.left, piece.right))
