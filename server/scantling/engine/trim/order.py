"""Fitting order along the walls: from the run farthest from the door, outward both ways.

At an inside corner the later board meets the earlier. So the board one faces from the door runs through, those beside
it are coped to it, joints open away from the door, and none is coped at both ends; only a ring of inside corners with
nothing to stop at leaves one that is. Of several doors the first walked counts: a survey starts at the door one comes
in by. Common practice, no source.
"""

from dataclasses import dataclass

from scantling.engine.survey.room import Room, Wall
from scantling.engine.trim.runs import CORNER, LEFT, RIGHT, Course, Run, may_yet_reach


@dataclass(frozen=True, slots=True)
class Placed:
    """A run in fitting order; at each end, whether a board comes round the corner, and whether it is up already.

    `door` is the side on which one comes in: what lies nearer the door laps over what lies farther from it.
    """

    run: Run
    joins_left: bool
    joins_right: bool
    left_is_up: bool
    right_is_up: bool
    door: str


def derive_order(runs: list[Run], room: Room, course: Course) -> list[Placed]:
    """Every run of one molding, in the order in which they are fitted."""
    after = {index: right for index in range(len(runs)) if (right := _round_the_corner(runs, index, room)) is not None}
    before = {right: left for left, right in after.items()}
    walk, far = _walk(runs, before, room)
    order = sorted(range(len(walk)), key=lambda place: (abs(place - far), -place))
    rank = {walk[place]: turn for turn, place in enumerate(order)}
    door = {walk[place]: LEFT if place <= far else RIGHT for place in range(len(walk))}
    return [
        Placed(
            run=runs[index],
            joins_left=index in before or unread_round(room, runs[index], LEFT, course) is not None,
            joins_right=index in after or unread_round(room, runs[index], RIGHT, course) is not None,
            left_is_up=index in before and rank[before[index]] < rank[index],
            right_is_up=index in after and rank[after[index]] < rank[index],
            door=door[index],
        )
        for index in sorted(rank, key=rank.__getitem__)
    ]


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
