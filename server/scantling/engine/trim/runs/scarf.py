"""Scarfs: a run longer than any board is made of several, lapped over one another on a stud, at an angle and glued.

The middle of the lap is on the middle of a stud, away from corners; the board nearer the door laps over the one beyond,
so that the open side of the joint faces away from it (a Canadian home expert, on running base). Thirty degrees from
square (a trade journal, on scarfs). Where no stud was read nothing is cut to a guess. Fewest joints; then none on a
stud that a joint of what lies beside it is on ("stagger joints in adjacent trim", a master specification of finish
carpentry); then the shortest board as long as can be, or the longest offcut as long: common practice, no source. Where
a room's boards are planned, any stud by the same rules may be tried (`move_joint`).
"""

import itertools
from collections.abc import Sequence, Set
from fractions import Fraction

from scantling.engine.standard import OFFCUT, Standard
from scantling.engine.survey.room import Measure
from scantling.engine.tape.angles import scaled, tangent
from scantling.engine.tape.lengths import SIXTY_FOURTH, ZERO, Length, format_length, round_to
from scantling.engine.trim.ends import End
from scantling.engine.trim.footprint import LEFT, RIGHT
from scantling.engine.trim.piece import Piece
from scantling.engine.trim.runs.course import Course
from scantling.engine.trim.runs.run import SCARF, Bound, Run, Term, make_run
from scantling.engine.trim.told.stock import longest_usable
from scantling.engine.words import all_of, say, say_counted

# A joint nearer a corner than this, or a board shorter, is worse than none. Common practice, no source.
CLEAR = Length(Fraction(24))


def derive_lap(thickness: Length, angle: Fraction) -> Length:
    """How far along the board a scarf reaches, from its long point to its short: t·tan."""
    return scaled(thickness, tangent(angle))


def derive_scarf_end(run: Run, side: str, thickness: Length, angle: Fraction, over: bool) -> End:
    """The end that laps over has its long point at the face; the one under it, at the back."""
    lap = derive_lap(thickness, angle)
    bound = run.left if side == LEFT else run.right
    return End("scarf", bound.name, angle, lap if over else -lap, at=f"{run.wall.id} {bound.terms[0].value.inches}")


def split_run(
    course: Course, run: Run, joints: Sequence[Length], lap: Length, door: str
) -> list[Run]:
    """The run in parts, joined on these studs, from left to right; the run alone where there are none."""
    studs = run.wall.studs
    if not studs:
        return [run]
    half = lap / 2
    bounds = [run.left]
    for number, stud in enumerate(joints, start=1):
        # Lapped over from the left, the boards' backs meet half a lap before the stud's middle.
        back = Term(-1 if door == LEFT else 1, say("run-scarf-half"), half)
        to = Term(1, say("run-to-stud"), Measure(studs.name, studs.texts, (stud,)))
        name = say("scarf-at", at=format_length(stud))
        bounds.append(Bound(SCARF, name, (to, back) if half else (to,), f"scarf {number}"))
    bounds.append(run.right)
    return [make_run(run.wall, left, right, course) for left, right in itertools.pairwise(bounds)]


ScarfWay = tuple[int, int, Length, list[Length]]


def choose_studs(standard: Standard, run: Run, piece: Piece, lap: Length, taken: Set[Length]) -> tuple[Length, ...]:
    """Studs to join on: fewest, fewest of them taken, then such that the shortest board, or the longest offcut, is as
    long as can be; none where it cannot be done.

    `taken` are the studs that what it lies on is joined on: another is chosen where one would do as well. Worked from
    the left: the best way to have come to each stud is kept, and no more is needed to go on from it.
    """
    longest = longest_usable(standard, piece.profile)
    if longest is None or run.wall.studs is None or piece.start is None:
        return ()
    start, end = _reach(piece)
    usable = _usable(run, start, end)
    # By where a board may end: how many boards it took, how many taken studs, how good it is, the less the better (the
    # shortest board, or the longest offcut, below nothing), and the studs joined on.
    by_offcut = standard.scarf_place == OFFCUT
    ways: list[tuple[Length, ScarfWay]] = [(start, (0, 0, ZERO if by_offcut else -(end - start), []))]
    half = lap / 2
    for place in [*usable, end]:
        last = place == end
        found = []
        for before, (count, clashes, good, joints) in reversed(ways):
            if place - before > longest:
                break
            reach = (place - before) + (ZERO if last else half) + (half if joints else ZERO)
            if place - before >= CLEAR and round_to(reach, SIXTY_FOURTH, toward="up") <= longest:
                on = joints if last else [*joints, place]
                better = min(good, -_offcut(standard, piece, reach)) if by_offcut else max(good, -(place - before))
                found.append((count + 1, clashes + (not last and place in taken), better, on))
        if found:
            ways.append((place, min(found)))
        if last:
            return tuple(min(found)[-1]) if found else ()
    return ()


def move_joint(
    standard: Standard, run: Run, piece: Piece, lap: Length, taken: Set[Length], joints: tuple[Length, ...], number: int
) -> list[tuple[Length, ...]]:
    """The same joints with one of them on every other stud that is as good by the rules, from left to right."""
    start, end = _reach(piece)
    longest = longest_usable(standard, piece.profile)
    clashes = sum(stud in taken for stud in joints)
    found = []
    for stud in _usable(run, start, end):
        moved = (*joints[:number], stud, *joints[number + 1 :])
        spans = list(itertools.pairwise((start, *moved, end)))
        laps = [lap / 2 if place in (0, len(joints)) else lap for place in range(len(spans))]
        boards = [right - left + laid for (left, right), laid in zip(spans, laps, strict=True)]
        fit = longest is not None and all(round_to(board, SIXTY_FOURTH, toward="up") <= longest for board in boards)
        far = all(right - left >= CLEAR for left, right in spans)
        if stud not in joints and fit and far and sum(one in taken for one in moved) <= clashes:
            found.append(moved)
    return found


def _reach(piece: Piece) -> tuple[Length, Length]:
    """From where to where along its wall a whole piece would be cut."""
    start = (piece.start or ZERO) - max(ZERO, piece.left.grows)
    return start, start + piece.cut


def _usable(run: Run, start: Length, end: Length) -> list[Length]:
    """The studs that are not too near an end."""
    return [stud for stud in (run.wall.studs.lengths if run.wall.studs else ()) if start + CLEAR <= stud <= end - CLEAR]


def _offcut(standard: Standard, piece: Piece, board: Length) -> Length:
    """What is left of the shortest board on the list that gives so much."""
    gives = (row.length - standard.end_trim for row in standard.stock_of(piece.profile))
    return min((left for usable in gives if (left := usable - board) >= ZERO), default=ZERO)


def fitting_order(parts: list[Run], door: str) -> list[Run]:
    """The board farthest from the door first: each nearer one laps over it."""
    return parts if door == RIGHT else parts[::-1]


def say_studs(joints: Sequence[Length]) -> str:
    """Where boards are joined, in words."""
    return say_counted("on-stud", len(joints), places=all_of(map(format_length, joints)))


def say_rule(standard: Standard) -> str:
    """Why there, where no plan was asked."""
    return say("joined-for-offcut" if standard.scarf_place == OFFCUT else "joined-for-board")
