"""Scarfs: a run longer than any board is made of several, lapped over one another on a stud, at an angle and glued.

The middle of the lap is on the middle of a stud, away from corners; the board nearer the door laps over the one beyond,
so that the open side of the joint faces away from it (a Canadian home expert, on running base). Thirty degrees from
square (a trade journal, on scarfs). Where no stud was read nothing is cut to a guess. Fewest joints; then the shortest
board as long as can be: common practice, no source.
"""

import itertools
from fractions import Fraction

from scantling.engine.angles import scaled, tangent
from scantling.engine.lengths import SIXTY_FOURTH, ZERO, Length, format_length, round_to
from scantling.engine.standard import Standard
from scantling.engine.survey.room import Measure
from scantling.engine.trim.ends import End
from scantling.engine.trim.piece import Piece
from scantling.engine.trim.runs import LEFT, RIGHT, SCARF, Bound, Course, Run, Term, make_run

# A joint nearer a corner than this, or a board shorter, is worse than none. Common practice, no source.
CLEAR = Length(Fraction(24))


def longest_usable(standard: Standard, profile: str) -> Length | None:
    """The longest piece that a board of a profile really gives; None where no board is on the list."""
    return max((row.length - standard.end_trim for row in standard.stock_of(profile)), default=None)


def is_too_long(standard: Standard, piece: Piece) -> bool:
    """Whether a piece is longer than any board on the list."""
    longest = longest_usable(standard, piece.profile)
    return longest is not None and round_to(piece.cut, SIXTY_FOURTH, toward="up") > longest


def derive_lap(thickness: Length, angle: Fraction) -> Length:
    """How far along the board a scarf reaches, from its long point to its short: t·tan."""
    return scaled(thickness, tangent(angle))


def derive_scarf_end(bound: Bound, thickness: Length, angle: Fraction, over: bool) -> End:
    """The end that laps over has its long point at the face; the one under it, at the back."""
    lap = derive_lap(thickness, angle)
    return End("scarf", bound.name, angle, lap if over else -lap)


def split_run(standard: Standard, course: Course, run: Run, piece: Piece, lap: Length, door: str) -> list[Run]:
    """The run in as many as boards and studs allow, from left to right; the run alone where they allow nothing."""
    studs = run.wall.studs
    joints = _choose(standard, run, piece, studs, lap) if studs and piece.start is not None else []
    if not studs or not joints:
        return [run]
    half = lap / 2
    bounds = [run.left]
    for number, stud in enumerate(joints, start=1):
        # Lapped over from the left, the boards' backs meet half a lap before the stud's middle.
        back = Term(-1 if door == LEFT else 1, "half the scarf", half)
        to = Term(1, "to the stud's middle", Measure(studs.name, studs.texts, (stud,)))
        name = f"the scarf at {format_length(stud)}"
        bounds.append(Bound(SCARF, name, (to, back) if half else (to,), f"scarf {number}"))
    bounds.append(run.right)
    return [make_run(run.wall, left, right, course) for left, right in itertools.pairwise(bounds)]


def _choose(standard: Standard, run: Run, piece: Piece, studs: Measure, lap: Length) -> list[Length]:
    """Studs to join on: fewest, then such that the shortest board is longest; none where it cannot be done.

    Worked from the left: the best way to have come to each stud is kept, and no more is needed to go on from it.
    """
    longest = longest_usable(standard, piece.profile)
    assert longest is not None
    assert piece.start is not None
    start = piece.start - max(ZERO, piece.left.grows)
    end = start + piece.cut
    usable = [stud for stud in studs.lengths if start + CLEAR <= stud <= end - CLEAR]
    # By where a board may end: how many boards it took, the shortest of them negated, and the studs joined on.
    ways: list[tuple[Length, tuple[int, Length, list[Length]]]] = [(start, (0, -(end - start), []))]
    half = lap / 2
    for place in [*usable, end]:
        last = place == end
        found = []
        for before, (count, shortest, joints) in ways:
            reach = (place - before) + (ZERO if last else half) + (half if joints else ZERO)
            if place - before >= CLEAR and round_to(reach, SIXTY_FOURTH, toward="up") <= longest:
                on = joints if last else [*joints, place]
                found.append((count + 1, max(shortest, -(place - before)), on))
        if found:
            ways.append((place, min(found)))
        if last:
            return min(found)[2] if found else []
    return []


def fitting_order(parts: list[Run], door: str) -> list[Run]:
    """The board farthest from the door first: each nearer one laps over it."""
    return parts if door == RIGHT else parts[::-1]
