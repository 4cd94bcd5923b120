"""Rake: where base meets the skirt of a stair, which rises or falls from there at the stairs' angle.

Boards as high as each other are mitered there, each at half the rake: at the foot of the stairs the base is shorter at
its top, at their head longer. The blade leans; the length is that of the longer edge. The survey's figure is where the
joint meets the floor. What lies on the base goes on in the same line. Geometry; common practice, no source.
"""

import math
from dataclasses import replace
from fractions import Fraction

from scantling.engine.survey.room import Obstacle
from scantling.engine.tape.angles import rounded, scaled
from scantling.engine.tape.lengths import ZERO, Length
from scantling.engine.trim.ends import End
from scantling.engine.trim.footprint import LEFT, RIGHT
from scantling.engine.trim.runs.course import FLOOR, Course
from scantling.engine.trim.runs.run import OBSTACLE, Bound, Run, Term
from scantling.engine.words import say


def find_skirt(run: Run, side: str, course: Course) -> Obstacle | None:
    """The stair skirt that a run comes to at one end, where its rake was said."""
    bound = _bound(run, side)
    if course.level != FLOOR or bound.kind != OBSTACLE:
        return None
    return next((thing for thing in run.wall.obstacles if thing.id == bound.of and thing.rake is not None), None)


def _bound(run: Run, side: str) -> Bound:
    return run.left if side == LEFT else run.right


def derive_rake_reach(skirt: Obstacle, side: str) -> float:
    """How much farther out the joint is for each inch up, at that end of a run.

    A run that ends there at its right stands at the foot of stairs that rise to the right, at the head of others.
    """
    assert skirt.rake is not None
    half = math.tan(math.radians(float(skirt.rake) / 2))
    return -half if skirt.rises == side else half


def meet_rake(run: Run, course: Course, height: Length) -> Run:
    """The run to the longer edge of each end that meets a skirt; `height` is how high the molding itself is."""
    for side in (LEFT, RIGHT):
        skirt = find_skirt(run, side, course)
        if skirt is None:
            continue
        reach = derive_rake_reach(skirt, side)
        by = scaled(course.up, reach) + max(ZERO, scaled(height, reach))
        out = 1 if side == RIGHT else -1
        term = Term(out if by > ZERO else -out, say("run-on-rake", what=_bound(run, side).name), abs(by))
        bound = replace(_bound(run, side), terms=(*_bound(run, side).terms, term)) if by else _bound(run, side)
        run = replace(run, left=bound) if side == LEFT else replace(run, right=bound)
    return run


def rake_end(end: End, skirt: Obstacle, side: str, height: Length) -> End:
    """The end with the blade leaned by half the rake."""
    assert skirt.rake is not None
    taper = scaled(height, derive_rake_reach(skirt, side))
    return replace(end, taper=taper, bevel=rounded(float(Fraction(skirt.rake) / 2)), raked=True)
