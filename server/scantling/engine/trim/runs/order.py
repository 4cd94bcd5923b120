"""Fitting order along the walls: from the run farthest from the door, outward both ways, as far as joints allow.

At an inside corner the board that runs through goes up before the one that is coped to it (`chains`), and the front of
a breast before its returns. Of several doors the first walked counts: a survey starts at the door one comes in by.
Common practice, no source.
"""

import heapq
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from scantling.engine.survey.room import Room, Wall
from scantling.engine.trim.footprint import LEFT, RIGHT
from scantling.engine.trim.runs.chains import derive_through, find_fronts, find_light_side, find_unlit
from scantling.engine.trim.runs.course import Course, may_yet_reach
from scantling.engine.trim.runs.run import CORNER, Run


@dataclass(frozen=True, slots=True)
class Placed:
    """A run in fitting order; at each end, whether a board comes round the corner, and whether it is up already.

    `door` is the side on which one comes in: what lies nearer the door laps over what lies farther from it.
    Without a door it is the side that the light comes from, where one can say: `lit`.
    `turn_left` and `turn_right`: what to say of the corner to turn its joint round, nothing where no joint is.
    `unlit`: the sides on which its joint is turned away from the light.
    """

    run: Run
    joins_left: bool
    joins_right: bool
    left_is_up: bool
    right_is_up: bool
    door: str
    lit: bool = False
    turn_left: str = ""
    turn_right: str = ""
    unlit: frozenset[str] = frozenset()

    @property
    def coped_twice(self) -> bool:
        """Whether both ends meet a board that is up already."""
        return self.left_is_up and self.right_is_up


def derive_order(runs: list[Run], room: Room, course: Course) -> list[Placed]:
    """Every run of one molding, in the order in which they are fitted."""
    after = {index: right for index in range(len(runs)) if (right := _round_the_corner(runs, index, room)) is not None}
    before = {right: left for left, right in after.items()}
    walk, far = _walk(runs, before, room)
    order = sorted(range(len(walk)), key=lambda place: (abs(place - far), -place))
    rank = {walk[place]: turn for turn, place in enumerate(order)}
    door = {walk[place]: LEFT if place <= far else RIGHT for place in range(len(walk))}
    through = derive_through(runs, after, room, rank)
    has_door = any(opening.kind in ("door", "cased") for wall in room.walls for opening in wall.openings)
    lit = {} if has_door else {index: side for index in rank if (side := find_light_side(room, runs[index]))}
    unlit = find_unlit(runs, after, room, rank, through)
    return [
        Placed(
            run=runs[index],
            joins_left=index in before or unread_round(room, runs[index], LEFT, course) is not None,
            joins_right=index in after or unread_round(room, runs[index], RIGHT, course) is not None,
            left_is_up=index in before and through.get(before[index]) == LEFT,
            right_is_up=through.get(index) == RIGHT,
            door=lit.get(index, door[index]),
            lit=index in lit,
            turn_left=_other(through.get(before[index])) if index in before else "",
            turn_right=_other(through.get(index)),
            unlit=frozenset([RIGHT] * (index in unlit) + [LEFT] * (before.get(index) in unlit)),
        )
        for index in _fit(rank, _needs(runs, after, through))
    ]


def _other(side: str | None) -> str:
    return {None: "", LEFT: RIGHT, RIGHT: LEFT}[side]


def _needs(runs: list[Run], after: Mapping[int, int], through: Mapping[int, str]) -> Iterable[tuple[int, int]]:
    """Which run is up before which."""
    for left, side in through.items():
        yield (left, after[left]) if side == LEFT else (after[left], left)
    before = {right: left for left, right in after.items()}
    fronts = set(find_fronts(runs, after))
    for front in fronts:
        yield from ((front, beside) for beside in (before[front], after[front]) if beside not in fronts)


def _fit(rank: Mapping[int, int], needs: Iterable[tuple[int, int]]) -> list[int]:
    """The runs by rank, each after all that it needs to be up."""
    later: dict[int, list[int]] = {index: [] for index in rank}
    wants = dict.fromkeys(rank, 0)
    for first, second in needs:
        later[first].append(second)
        wants[second] += 1
    ready = [(rank[index], index) for index, count in wants.items() if not count]
    heapq.heapify(ready)
    order = []
    while ready:
        _, index = heapq.heappop(ready)
        order.append(index)
        for second in later[index]:
            wants[second] -= 1
            if not wants[second]:
                heapq.heappush(ready, (rank[second], second))
    return order


def _round_the_corner(runs: list[Run], index: int, room: Room) -> int | None:
    """Which run starts in the corner that this one ends in."""
    follows = (index + 1) % len(runs)
    meets = runs[index].right.kind == CORNER and runs[follows].left.kind == CORNER
    return follows if meets and runs[follows].wall is room.after(runs[index].wall) else None


def unread_round(room: Room, run: Run, side: str, course: Course) -> Wall | None:
    """The wall round the corner, if a board may yet come from there: its joint is then allowed for.

    A board cut square to an outside corner is too short to be mitered when the wall beyond has been read.
    """
    at_left = side == LEFT
    wall = room.before(run.wall) if at_left else room.after(run.wall)
    if (run.left if at_left else run.right).kind != CORNER or wall is None:
        return None
    return wall if may_yet_reach(wall, RIGHT if at_left else LEFT, course) else None


def _walk(runs: list[Run], before: dict[int, int], room: Room) -> tuple[list[int], int]:
    """The runs from the door round to the door, and the place among them of the one farthest from it.

    Without a door from another break, or from an outside corner, by the first that comes after the door's wall.
    """
    loose = [index for index in range(len(runs)) if index not in before]
    after_door = [index for index in loose if _starts_at_a_door(runs[index])]
    after_outside = [index for index, left in before.items() if runs[left].wall.turn == "outside"]
    past = _past_the_door(runs, room)
    start = next(iter([*after_door, *sorted(loose, key=past), *sorted(after_outside, key=past)]), None)
    if start is not None:
        walk = [*range(start, len(runs)), *range(start)]
        return walk, _farthest(walk, runs)
    if not runs:
        return [], 0
    # All inside corners and nothing to stop at: the board over the door is fitted last, and without a door the longest
    # runs through, as far from the end as can be.
    half = len(runs) // 2
    longest = max(range(len(runs)), key=lambda index: (runs[index].back, -index))
    over_door = next((index for index, run in enumerate(runs) if _has_door(run.wall)), None)
    start = (longest - half) % len(runs) if over_door is None else over_door
    return [*range(start, len(runs)), *range(start)], half


def _starts_at_a_door(run: Run) -> bool:
    return any(opening.kind == "door" and opening.id == run.left.of for opening in run.wall.openings)


def _has_door(wall: Wall) -> bool:
    return any(opening.kind == "door" for opening in wall.openings)


def _past_the_door(runs: list[Run], room: Room) -> "Past":
    doors = [wall.number for wall in room.walls if _has_door(wall)]
    return Past(runs, doors[0] if doors else 0)


@dataclass(frozen=True, slots=True)
class Past:
    """Sorts runs by how many walls they are past the door's, the walls before it last."""

    runs: list[Run]
    door: int

    def __call__(self, index: int) -> tuple[bool, int]:
        number = self.runs[index].wall.number
        return (number <= self.door, index)


def _farthest(walk: list[int], runs: list[Run]) -> int:
    """The place in the middle of the walk; of the two in the middle, the longer board's."""
    middle = len(walk) // 2
    if len(walk) % 2 or not walk:
        return middle
    return middle if runs[walk[middle]].back > runs[walk[middle - 1]].back else middle - 1
