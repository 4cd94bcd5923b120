"""Returns: where a run ends in the air its end is mitered, and a small piece turns the profile back to the wall.

The face's long point is where the run ends, and the back stops short of it by the thickness; the return fills the
corner between. Too small to nail: glue it. Cut it from the end of a long board. Common practice, no source.
"""

from collections.abc import Iterator
from fractions import Fraction

from scantling.engine.lengths import ZERO, Length
from scantling.engine.survey.room import Room
from scantling.engine.trim.ends import End
from scantling.engine.trim.piece import Flag, Piece, Step
from scantling.engine.trim.runs import AIR, CASING, OPEN
from scantling.engine.trim.tolerance import MARK
from scantling.engine.trim.working import edge_steps

HALF_OF_SQUARE = Fraction(45)


def is_returned(room: Room, kind: str, stands_out: Length) -> bool:
    """Whether a run is returned where it ends at a thing of that kind, standing so far out from the wall."""
    standard = room.standard
    if kind == OPEN:
        return standard.open_end == "returned" and not room.closed
    return kind == AIR or (
        kind == CASING and standard.proud_end == "returned" and stands_out > standard.casing_thickness
    )


def derive_return_end(meets: str, thickness: Length) -> End:
    """Mitered for a return square to the wall: the face runs to the end, the back stops a thickness short of it."""
    return End("return", meets, HALF_OF_SQUARE, grows=thickness, taken=thickness)


def derive_return(piece: Piece, thickness: Length) -> Iterator[Piece]:
    """The return of each end that has one: a mitered triangle, as long at its face as the piece is thick."""
    for side, end in (("left", piece.left), ("right", piece.right)):
        if end.joint != "return":
            continue
        mitered = End("return", f"the {side} end of its {piece.part}", end.saw, thickness, edges=end.edges,
                      bevel=end.bevel, nested=end.nested)  # fmt: skip
        square = End("square", "the wall", edges=end.edges)
        # At the left the return's own right end is the mitered one: it turns back to the wall the other way.
        left, right = (square, mitered) if side == "left" else (mitered, square)
        yield Piece(
            key=f"{piece.key} return {side}",
            part=f"{piece.part} return",
            place=", ".join(filter(None, (piece.place, f"{side} end"))),
            profile=piece.profile,
            wall=piece.wall,
            wall_number=piece.wall_number,
            back=ZERO,
            left=left,
            right=right,
            plus_minus=MARK,
            working=(Step("thickness of the stock", thickness), *edge_steps(ZERO, left, right)),
            flags=(Flag("glue", "Glue it: it is too small to nail.", False),),
        )
