"""The working of a piece that runs along a wall: each figure as it was read or set, and what the ends do to it."""

from fractions import Fraction

from scantling.engine.tape.angles import format_degrees
from scantling.engine.tape.lengths import SIXTY_FOURTH, Length, format_plain
from scantling.engine.trim.ends import EDGE_WORDS, End
from scantling.engine.trim.piece import Step
from scantling.engine.trim.runs.run import Run, Term


def derive_working(run: Run, left: End, right: End) -> tuple[Step, ...]:
    """Steps that add up, with a pencil, to the lengths along the piece's two edges."""
    steps = [
        Step(_term_text(term), term.value, term.readings) for term in run.terms
    ]
    if len(steps) > 1:
        steps.append(Step("= along the wall", run.back))
    for side, end in (("left", left), ("right", right)):
        if end.taken:
            gone = "what the return takes" if end.joint == "return" else "the board it butts"
            steps.append(Step(f"− {gone}, at the {side}", end.taken))
        if end.corner or end.saw or end.joint in ("return", "scarf"):
            steps.append(_end_step(side, end))
    return (*steps, *edge_steps(run.back - left.taken - right.taken, left, right))


def edge_steps(back: Length, left: End, right: End) -> tuple[Step, Step]:
    """The lengths along the two edges, the fixed one first."""
    first, second = (EDGE_WORDS[edge] for edge in left.edges)
    return Step(f"= {first}", back), Step(f"= {second}", back + left.grows + right.grows)


def _term_text(term: Term) -> str:
    which = f" ({'smallest' if term.sign > 0 else 'largest'} of {len(term.readings)} readings)"
    return f"{'+' if term.sign > 0 else '−'} {term.name}{which if len(term.readings) > 1 else ''}"


def _end_step(side: str, end: End) -> Step:
    corner = end.corner
    where = f"{side} end"
    if corner:
        where += f", {corner.turn} corner, gauge {format_degrees(corner.gauge)}"
    if not end.grows:
        return Step(f"{where}: square", of_end=True)
    gives = "longer" if end.grows.inches > 0 else "shorter"
    if not end.leans:
        square = f"square, for it is under {format_plain(SIXTY_FOURTH)}"
        said = f"{where}: {square}; {EDGE_WORDS[end.edges[1]]} {gives} by"
        return Step(said, abs(end.grows), of_end=True)
    setting = f"saw {format_degrees(end.setting)} from square (point {format_degrees(end.point)})"
    if end.nested is not None:
        setting = f"{say_flat(end)}; nested, saw {format_degrees(end.nested)}"
    return Step(f"{where}: {end.joint}, {setting}; {EDGE_WORDS[end.edges[1]]} {gives} by", abs(end.grows), of_end=True)


def say_flat(end: End) -> str:
    """The two settings of a leaning molding lying flat on the saw."""
    return f"flat, miter {format_degrees(end.saw)} and bevel {format_degrees(end.bevel or Fraction(0))}"
