"""How a long list is gone through: by opening and wall, and by the words a person looks for."""

from scantling.engine.questions.called import call_stock
from scantling.engine.trim.piece import Kind, Piece

#: What a British hand looks for.
BRITISH = {
    Kind.BASE: "skirting",
    Kind.LEG: "architrave",
    Kind.HEAD: "architrave",
    Kind.SILL: "architrave",
    Kind.STOOL: "window board",
    Kind.CHAIR_RAIL: "dado rail",
    Kind.CROWN: "coving cornice",
}


def tell_group(piece: Piece) -> dict[str, str]:
    """Which opening or wall it belongs to, what that is called, and what the piece is called there."""
    wall = f"wall {piece.wall_number}" if piece.wall_number else ""
    if piece.opening:
        return {"group": piece.opening, "group_name": ", ".join(filter(None, (wall, piece.place))), "short": piece.part}
    if not wall:
        return {"group": "own", "group_name": "of your own", "short": piece.name}
    return {"group": piece.wall, "group_name": wall, "short": ", ".join(filter(None, (piece.part, piece.place)))}


def tell_found_by(piece: Piece) -> str:
    """All words that find it, small."""
    called = dict.fromkeys((piece.profile, call_stock(piece.profile)))
    return f"{piece.name} {' '.join(called)} {BRITISH.get(piece.kind, '')}".casefold().strip()


def tell_ends(piece: Piece) -> str:
    """Both ends in the fewest words that a drawing beside them does not say: square; cope 45.5° · square.

    Said once where both are alike.
    """
    ends = [piece.left.brief, piece.right.brief]
    return ends[0] if ends[0] == ends[1] else " · ".join(ends)
