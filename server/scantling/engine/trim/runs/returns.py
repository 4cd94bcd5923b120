"""Returns: where a run ends in the air its end is mitered, and a small piece turns the profile back to the wall.

The face's long point is where the run ends, and the back stops short of it by the thickness; the return fills the
corner between. Too small to nail: glue it. Cut it from the end of a long board. Common practice, no source.
"""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from scantling.engine.standard import NOTCHED, Standard
from scantling.engine.survey.room import Room
from scantling.engine.tape.angles import SQUARE, Corner
from scantling.engine.tape.lengths import ZERO, Length
from scantling.engine.trim.doubt import Doubt
from scantling.engine.trim.ends import End
from scantling.engine.trim.piece import Flag, Piece, Step
from scantling.engine.trim.runs.course import FLOOR, Course
from scantling.engine.trim.runs.run import AIR, CASING, OPEN, Run, Term
from scantling.engine.trim.runs.working import edge_steps
from scantling.engine.trim.told.tolerance import MARK, NOT_SQUARE
from scantling.engine.words import say

HALF_OF_SQUARE = Fraction(45)
# How far a notched end lies over the edge of casing. Common practice, no source.
LAP = Length(Fraction(1, 2))
# How far a return stays from an arris that it is not square to. Common practice, no source.
HELD_BACK = Length(Fraction(1, 8))


def is_returned(room: Room, kind: str, stands_out: Length) -> bool:
    """Whether a run is returned where it ends at a thing of that kind, standing so far out from the wall."""
    standard = room.standard
    if kind == OPEN:
        return standard.open_end == "returned" and not room.closed
    return kind == AIR or (
        kind == CASING and standard.proud_end == "returned" and stands_out > standard.casing_thickness
    )


def is_notched(standard: Standard, course: Course) -> bool:
    """Whether what stands out past casing is notched to lie over its edge: rails are, a shoe never."""
    return standard.proud_end == NOTCHED and course.level != FLOOR


def lap_over(room: Room, course: Course, run: Run, stands_out: Length) -> Run:
    """The run as far as it laps over the edge of casing that it is notched for."""
    if not is_notched(room.standard, course) or stands_out <= room.standard.casing_thickness:
        return run
    bounds = [
        replace(bound, terms=(*bound.terms, Term(sign, say("run-lap"), LAP))) if bound.kind == CASING else bound
        for sign, bound in ((-1, run.left), (1, run.right))
    ]
    return replace(run, left=bounds[0], right=bounds[1])


def derive_return_end(meets: str, thickness: Length, corner: Corner | None = None) -> End:
    """Mitered for a return square to the wall: the face runs to the end, the back stops a thickness short of it.

    At the arris of a corner that is not square it is square to its own wall all the same, and held back from there.
    """
    held = HELD_BACK if corner and abs(corner.gauge - SQUARE) >= NOT_SQUARE else ZERO
    return End("return", meets, HALF_OF_SQUARE, grows=thickness, taken=thickness + held)


def derive_return(piece: Piece, thickness: Length) -> Iterator[Piece]:
    """The return of each end that has one: a mitered triangle, as long at its face as the piece is thick."""
    for side, end in (("left", piece.left), ("right", piece.right)):
        if end.joint != "return":
            continue
        mitered = End("return", say(f"meets-end-{side}", part=piece.part), end.saw, thickness, edges=end.edges,
                      bevel=end.bevel, nested=end.nested)  # fmt: skip
        square = End("square", say("meets-wall"), edges=end.edges)
        # At the left the return's own right end is the mitered one: it turns back to the wall the other way.
        left, right = (square, mitered) if side == "left" else (mitered, square)
        yield Piece(
            key=f"{piece.key} return {side}",
            kind=piece.kind,
            part=f"{piece.part} return",
            place=", ".join(filter(None, (piece.place, say(f"end-{side}")))),
            profile=piece.profile,
            wall=piece.wall,
            wall_number=piece.wall_number,
            back=ZERO,
            left=left,
            right=right,
            doubt=Doubt.of(MARK),
            working=(Step(say("return-thick"), thickness), *edge_steps(ZERO, left, right)),
            flags=(Flag("glue", say("return-glue"), False),),
            side=side,
            returns=piece.key,
        )
