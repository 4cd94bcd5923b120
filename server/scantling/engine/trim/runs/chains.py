"""Chains: which board of two that meet in an inside corner runs through, and which is coped to it.

The boards from one outside corner, casing or thing to the next are a chain, and are settled together: what a person
said of a corner; then nothing shorter than 8 in (a setting) is coped whose neighbor can be; none is coped at both ends,
but for one in a ring of inside corners, the one over the door; the returns of a breast are coped to the boards of its
alcoves; then the longer board runs through, and no joint is looked into from the door; then not from where the light
comes; and of what is left, what lies farther from the door runs through. All common practice, no source.

A joint is looked into along the face of the board that runs through: it is hidden from whoever looks along the other.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.standard import WINDOWS
from scantling.engine.survey.outline import DrawnWall, derive_outline
from scantling.engine.survey.room import Opening, Room, Wall
from scantling.engine.trim.footprint import LEFT, RIGHT
from scantling.engine.trim.runs.run import Run

THROUGH = "corner.through"
# A board counts as longer from half as much again, so that a reading taken again turns no joint.
LONGER = Fraction(3, 2)
# How much more a look goes along one wall than along the other, for its joint to be seen: a look at 45 tells nothing.
CLEARLY = 1.2

ChainToll = tuple[int, ...]
Look = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Joint:
    """Two runs that meet in an inside corner, at the right end of the left one's wall."""

    left: int
    right: int
    wall: Wall


def derive_through(
    runs: Sequence[Run], after: Mapping[int, int], room: Room, rank: Mapping[int, int]
) -> dict[int, str]:
    """For each inside corner, by its left run, the side whose board runs through; `rank` has the farthest from the
    door first."""
    weigh = Weights(runs, after, room, rank)
    found: dict[int, str] = {}
    for chain in _chains(runs, after):
        ring = chain[-1].right == chain[0].left
        found |= dict(zip((joint.left for joint in chain), _settle(chain, ring, weigh), strict=True))
    return found


def find_unlit(
    runs: Sequence[Run], after: Mapping[int, int], room: Room, rank: Mapping[int, int], through: Mapping[int, str]
) -> set[int]:
    """The inside corners, by their left runs, where the light falls less into the joint than if it were turned."""
    weigh = Weights(runs, after, room, rank)
    return {left for left, side in through.items() if weigh.is_unlit(Joint(left, after[left], runs[left].wall), side)}


def _chains(runs: Sequence[Run], after: Mapping[int, int]) -> Iterator[list[Joint]]:
    """The inside corners that hang together, each chain from its left end; a ring from anywhere."""
    inside = {left: right for left, right in after.items() if runs[left].wall.turn == "inside"}
    ends_in = set(inside.values())
    waiting = [*(left for left in inside if left not in ends_in), *inside]
    seen: set[int] = set()
    for at in waiting:
        chain = []
        while at in inside and at not in seen:
            seen.add(at)
            chain.append(Joint(at, inside[at], runs[at].wall))
            at = inside[at]
        if chain:
            yield chain


def _settle(chain: list[Joint], ring: bool, weigh: Weights) -> tuple[str, ...]:
    """The choices of least toll, corner by corner: the best way to each choice is all that the next one needs.

    Round a ring they are not all alike: of boards each coped to the one before, none could be the first.
    """
    best: dict[tuple[str, str, bool], tuple[ChainToll, tuple[str, ...]]] = {
        (side, side, True): (weigh.of_joint(chain[0], side), (side,)) for side in (RIGHT, LEFT)
    }
    for joint in chain[1:]:
        longer: dict[tuple[str, str, bool], tuple[ChainToll, tuple[str, ...]]] = {}
        for (first, last, alike), (toll, sides) in best.items():
            for side in (RIGHT, LEFT):
                more = add(toll, weigh.of_joint(joint, side), weigh.of_board(joint.left, last == LEFT, side == RIGHT))
                key = (first, side, alike and side == first)
                if key not in longer or more < longer[key][0]:
                    longer[key] = (more, (*sides, side))
        best = longer
    ways = []
    for (first, last, alike), (toll, sides) in best.items():
        if ring and not alike:
            ways.append((add(toll, weigh.of_board(chain[0].left, last == LEFT, first == RIGHT)), sides))
        elif not ring:
            ways.append((toll, sides))
    return min(ways)[1]


def add(*tolls: ChainToll) -> ChainToll:
    """The tolls together, part by part."""
    return tuple(map(sum, zip(*tolls, strict=True)))


class Weights:
    """What each choice costs, the gravest first, as the head of the file has it."""

    NOTHING: ChainToll = (0,) * 7

    def __init__(self, runs: Sequence[Run], after: Mapping[int, int], room: Room, rank: Mapping[int, int]) -> None:
        self._runs, self._rank, self._least = runs, rank, room.standard.cope_least
        self._returns = set(_returns(runs, after))
        sides = room.derived("outline", lambda: derive_outline(room))
        self._sides = sides if all(side.known for side in sides) else []
        doors = [one for kind in ("door", "cased") for one in _looks(self._sides, kind)]
        self._doors, self._lights = doors[:1], find_lights(room, self._sides)
        self._over_door = next((wall.id for wall in room.walls if _has(wall, "door")), None)

    def of_joint(self, joint: Joint, through: str) -> ChainToll:
        """What it costs that the board on that side of the corner runs through, and the other is coped to it."""
        stays, coped = (joint.left, joint.right) if through == LEFT else (joint.right, joint.left)
        wanted = joint.wall.settings.get(THROUGH)
        tiny = self._runs[coped].back < self._least <= self._runs[stays].back
        back_to_front = stays in self._returns and coped not in self._returns
        longer = self._runs[coped].back > self._runs[stays].back * LONGER
        return (
            int(wanted in (LEFT, RIGHT) and wanted != through),
            int(tiny),
            0,
            int(back_to_front),
            int(longer) + sum(self._is_seen(look, joint, through) for look in self._doors),
            sum(self._is_seen(look, joint, through) for look in self._lights),
            int(self._rank[coped] < self._rank[stays]),
        )

    def of_board(self, board: int, coped_left: bool, coped_right: bool) -> ChainToll:
        """What it costs that a board is coped at both ends: least where it hangs over the door."""
        if not (coped_left and coped_right):
            return self.NOTHING
        return (0, 0, 1 if self._runs[board].wall.id == self._over_door else 2, 0, 0, 0, 0)

    def is_unlit(self, joint: Joint, through: str) -> bool:
        """Whether fewer lights look into the joint than if the other board ran through."""
        other = LEFT if through == RIGHT else RIGHT
        own, turned = (sum(self._is_seen(look, joint, side) for look in self._lights) for side in (through, other))
        return own < turned

    def _is_seen(self, look: Look, joint: Joint, through: str) -> bool:
        """Whether one looks from there into the joint: more along the board that runs through than along the other."""
        before = self._sides[joint.wall.number - 1]
        beyond = self._sides[joint.wall.number % len(self._sides)]
        sight = (before.end[0] - look[0], before.end[1] - look[1])
        along_left, along_right = (abs(_dot(sight, side.heading)) for side in (before, beyond))
        own, other = (along_left, along_right) if through == LEFT else (along_right, along_left)
        return own > CLEARLY * other


def find_lights(room: Room, sides: Sequence[DrawnWall]) -> list[Look]:
    """Where the light comes from: the wall that was set, or every window."""
    said = room.standard.light_from
    if said == WINDOWS:
        return list(_looks(sides, "window"))
    return [side.point(side.length / 2) for side in sides if str(side.wall.number) == said]


def find_light_side(room: Room, run: Run) -> str:
    """To which side along a run the light comes from, as far as one can say; empty where it comes from in front."""
    sides = room.derived("outline", lambda: derive_outline(room))
    if not all(side.known for side in sides):
        return ""
    side = sides[run.wall.number - 1]
    middle = side.point(float((run.start + run.back / 2).inches))
    sights = [(look[0] - middle[0], look[1] - middle[1]) for look in find_lights(room, sides)]
    # What comes in through the wall itself goes out from it, and tells nothing.
    along = sum(_dot(sight, side.heading) for sight in sights if abs(_dot(sight, side.heading + 90.0)) > 1)
    return "" if abs(along) < float(run.back.inches) / 4 else RIGHT if along > 0 else LEFT


def find_fronts(runs: Sequence[Run], after: Mapping[int, int]) -> Iterator[int]:
    """The boards between two outside corners: mitered at both ends, they go up before what is fitted to them."""
    before = {right: left for left, right in after.items()}
    for run in range(len(runs)):
        if run in after and run in before and "inside" not in (runs[run].wall.turn, runs[before[run]].wall.turn):
            yield run


def _returns(runs: Sequence[Run], after: Mapping[int, int]) -> Iterator[int]:
    """The boards on either side of such a front."""
    before = {right: left for left, right in after.items()}
    for front in find_fronts(runs, after):
        yield from (before[front], after[front])


def _looks(sides: Sequence[DrawnWall], kind: str) -> Iterator[Look]:
    """Where one stands, or the light comes from: the middle of each opening of a kind."""
    for side in sides:
        for one in side.wall.openings:
            if one.kind == kind and one.at and one.width:
                yield side.point(_middle(one))


def _middle(opening: Opening) -> float:
    assert opening.at is not None
    assert opening.width is not None
    return float(opening.at.smallest.inches) + float(opening.width.smallest.inches) / 2


def _has(wall: Wall, kind: str) -> bool:
    return any(opening.kind == kind for opening in wall.openings)


def _dot(sight: Look, heading: float) -> float:
    turn = math.radians(heading)
    return sight[0] * math.cos(turn) + sight[1] * math.sin(turn)
