"""Corner blocks: a square block where leg and head meet, a little larger than both; leg and head butt it.

A block stands past the casing by as much on every side: (block − leg) / 2. So the leg stops that much short of where
a head would lie on it, and the head is as much shorter at each end than the legs stand apart. Off until a size is set,
and only where the head is butted. Common practice, no source.
"""

from collections.abc import Sequence
from dataclasses import replace

from scantling.engine.standard import Standard, profile_name
from scantling.engine.tape.lengths import Length
from scantling.engine.trim.doubt import Doubt
from scantling.engine.trim.openings.frame import flat_end
from scantling.engine.trim.openings.heads import derive_past
from scantling.engine.trim.piece import Flag, Kind, Piece, Step
from scantling.engine.trim.told.tolerance import MARK
from scantling.engine.words import say


def set_blocks(standard: Standard, pieces: Sequence[Piece]) -> list[Piece]:
    """The pieces of one opening with blocks in its corners, where they are wanted."""
    size = standard.block_size
    head = next((piece for piece in pieces if piece.kind == Kind.HEAD), None)
    if size is None or head is None or any(end.joint == "miter" for end in (head.left, head.right)):
        return list(pieces)
    past = derive_past(standard)
    set_in: list[Piece] = []
    for piece in pieces:
        if piece.kind == Kind.LEG:
            set_in += [_shorter(piece, past, say("block-past-leg")), _block(standard, piece, size)]
        elif piece.kind == Kind.HEAD:
            legs = standard.casing_width + standard.casing_overhang
            short = _shorter(piece, legs * 2, say("block-legs"))
            set_in.append(_shorter(short, past * 2, say("block-past-legs")))
        else:
            set_in.append(piece)
    return set_in


def _shorter(piece: Piece, by: Length, why: str) -> Piece:
    steps = (Step(why, by), Step(say("block-so-long"), piece.back - by)) if by else ()
    return replace(piece, back=piece.back - by, working=(*piece.working, *steps))


def _block(standard: Standard, leg: Piece, size: Length) -> Piece:
    square = flat_end("square", say("meets-casing"))
    return replace(
        leg,
        key=f"{leg.key} block",
        kind=Kind.BLOCK,
        part=f"{leg.side} corner block".strip(),
        profile=profile_name("corner block", standard.block_thickness, size),
        back=size,
        left=square,
        right=square,
        doubt=Doubt.of(MARK),
        working=(Step(say("block-size"), size),),
        flags=(Flag("block", say("block-grain"), False),),
    )
