"""How a long list is gone through: by opening and wall, and by the words a person looks for."""

from scantling.engine.questions.called import call_stock
from scantling.engine.trim.piece import Kind, Piece
from scantling.engine.words import say

#: Under what else a piece is looked for, by the key of the words.
ALSO = {
    Kind.BASE: "also-base",
    Kind.LEG: "also-casing",
    Kind.HEAD: "also-casing",
    Kind.SILL: "also-casing",
    Kind.STOOL: "also-stool",
    Kind.CHAIR_RAIL: "also-chair-rail",
    Kind.CROWN: "also-crown",
}


def tell_group(piece: Piece) -> dict[str, str]:
    """Which opening or wall it belongs to, what that is called, and what the piece is called there."""
    wall = say("wall", number=piece.wall_number) if piece.wall_number else ""
    if piece.opening:
        return {"group": piece.opening, "group_name": ", ".join(filter(None, (wall, piece.place))), "short": piece.part}
    if not wall:
        return {"group": "own", "group_name": say("group-of-your-own"), "short": piece.name}
    return {"group": piece.wall, "group_name": wall, "short": ", ".join(filter(None, (piece.part, piece.place)))}


def tell_found_by(piece: Piece) -> str:
    """All words that find it, small."""
    called = dict.fromkeys((piece.profile, call_stock(piece.profile)))
    also = [say(ALSO[piece.kind])] if piece.kind in ALSO else []
    return " ".join((piece.name, *called, *also)).casefold().strip()


def tell_ends(piece: Piece) -> str:
    """Both ends in the fewest words that a drawing beside them does not say: square; cope 45.5° · square.

    Said once where both are alike.
    """
    ends = [piece.left.brief, piece.right.brief]
    return ends[0] if ends[0] == ends[1] else " · ".join(ends)
