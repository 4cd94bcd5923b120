"""Reveals: where an opening has no casing, base ends at its arris or is wrapped round it into the opening.

Wrapped, the board is mitered at the arris as at an outside corner, and goes on as a piece as long as the reveal is
deep: by its reading, for nothing is cut to a guess. Common practice, no source.
"""

from collections.abc import Iterator
from fractions import Fraction

from scantling.engine.standard import WRAPPED
from scantling.engine.survey.room import Opening
from scantling.engine.tape.lengths import Length
from scantling.engine.trim.doubt import Doubt
from scantling.engine.trim.ends import End
from scantling.engine.trim.footprint import LEFT, RIGHT
from scantling.engine.trim.piece import Flag, Piece, Step
from scantling.engine.trim.runs.run import ARRIS, Bound, Run
from scantling.engine.trim.runs.working import edge_steps
from scantling.engine.trim.told.tolerance import MARK, READING
from scantling.engine.words import say

SAW = Fraction(45)


def find_bare(run: Run, side: str) -> Opening | None:
    """The opening without casing that a run comes to at one end, where the base is to be wrapped into it."""
    bound: Bound = run.left if side == LEFT else run.right
    openings = (one for one in run.wall.openings if bound.kind == ARRIS and one.id == bound.of)
    opening = next(openings, None)
    wrapped = opening and opening.standard and opening.standard.casing_arris == WRAPPED
    return opening if wrapped else None


def derive_arris_end(run: Run, side: str, thickness: Length) -> End:
    """Square at the arris, or mitered round it."""
    bound = run.left if side == LEFT else run.right
    if find_bare(run, side) is None:
        return End("square", bound.name)
    return End("miter", bound.name, SAW, thickness)


def derive_reveals(run: Run, piece: Piece, thickness: Length, behind: Length) -> Iterator[Piece]:
    """The piece that goes on into each opening that a board is wrapped into; `behind` is what it lies on, if any."""
    for side, end in ((LEFT, piece.left), (RIGHT, piece.right)):
        opening = find_bare(run, side)
        if opening is None or opening.depth is None or end.joint != "miter":
            continue
        meets = say("the-thing-on-wall", thing=piece.part, wall=run.wall.name)
        mitered, square = End("miter", meets, SAW, thickness), End("square", say("meets-its-end"))
        # Into the opening at the right of a board its own left end is the mitered one.
        left, right = (square, mitered) if side == LEFT else (mitered, square)
        back = opening.depth.smallest + behind
        steps = [Step(say("arris-depth"), opening.depth.smallest, opening.depth.texts)]
        steps += [Step(say("arris-behind"), behind)] if behind else []
        yield Piece(
            key=f"{piece.key} reveal {side}",
            kind=piece.kind,
            part=piece.part,
            place=say(f"arris-place-{RIGHT if side == LEFT else LEFT}", thing=opening.name),
            profile=piece.profile,
            wall=piece.wall,
            wall_number=piece.wall_number,
            back=back,
            left=left,
            right=right,
            doubt=Doubt.of(READING, MARK),
            working=(*steps, *edge_steps(back, left, right)),
            flags=(),
        )


def flag_reveals(run: Run) -> Iterator[Flag]:
    """That a reveal a board is wrapped into is not read."""
    for side in (LEFT, RIGHT):
        opening = find_bare(run, side)
        if opening and opening.depth is None:
            yield Flag("reveal-unread", say("arris-unread", thing=opening.name))
