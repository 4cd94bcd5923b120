"""The working of a piece that runs along a wall: each figure as it was read or set, and what the ends do to it."""

from fractions import Fraction

from scantling.engine.tape.angles import format_degrees
from scantling.engine.tape.lengths import SIXTY_FOURTH, Length, format_plain
from scantling.engine.trim.ends import End, say_edge
from scantling.engine.trim.piece import Step
from scantling.engine.trim.runs.run import Run, Term
from scantling.engine.words import say


def derive_working(run: Run, left: End, right: End) -> tuple[Step, ...]:
    """Steps that add up, with a pencil, to the lengths along the piece's two edges."""
    steps = [
        Step(_term_text(term), term.value, term.readings) for term in run.terms
    ]
    if len(steps) > 1:
        steps.append(Step(say("equals-along-wall"), run.back))
    for side, end in (("left", left), ("right", right)):
        steps += _taken(side, end)
        if end.corner or end.saw or end.joint in ("return", "scarf"):
            steps.append(_end_step(side, end))
    return (*steps, *edge_steps(run.back - left.taken - right.taken, left, right))


def _taken(side: str, end: End) -> list[Step]:
    """What an end stops short of its wall's corner by: a return takes what its face grows by, and may be held back."""
    if not end.taken:
        return []
    if end.joint != "return":
        return [Step(say(f"minus-butted-{side}"), end.taken)]
    held = end.taken - end.grows
    back = [Step(say(f"minus-held-back-{side}"), held)] if held else []
    return [Step(say(f"minus-return-{side}"), end.grows), *back]


def edge_steps(back: Length, left: End, right: End) -> tuple[Step, Step]:
    """The lengths along the two edges, the fixed one first."""
    first, second = (say(f"equals-{edge}") for edge in left.edges)
    return Step(first, back), Step(second, back + left.grows + right.grows)


def _term_text(term: Term) -> str:
    text, count = f"{'+' if term.sign > 0 else '−'} {term.name}", len(term.readings)
    if count > 1:
        return f"{text} {say('reading-smallest' if term.sign > 0 else 'reading-largest', count=count)}"
    return text


def _end_step(side: str, end: End) -> Step:
    corner = end.corner
    where = say(f"end-{side}")
    if corner:
        where = say(f"in-{corner.turn}-corner", end=where, gauge=format_degrees(corner.gauge))
    if not end.grows:
        return Step(say("cut-square", end=where), of_end=True)
    gives = "longer" if end.grows.inches > 0 else "shorter"
    if not end.leans:
        said = say(f"{gives}-by-sliver", end=where, least=format_plain(SIXTY_FOURTH), edge=say_edge(end.edges[1]))
        return Step(said, abs(end.grows), of_end=True)
    if end.nested is None:
        saw = say("saw-from-square", saw=format_degrees(end.setting), point=format_degrees(end.point))
    else:
        saw = say("saw-flat-or-nested", flat=say_flat(end), saw=format_degrees(end.nested))
    said = say(f"{gives}-by-cut", end=where, joint=say(f"joint-{end.joint}"), saw=saw, edge=say_edge(end.edges[1]))
    return Step(said, abs(end.grows), of_end=True)


def say_flat(end: End) -> str:
    """The two settings of a leaning molding lying flat on the saw."""
    return say("saw-flat", miter=format_degrees(end.saw), bevel=format_degrees(end.bevel or Fraction(0)))
