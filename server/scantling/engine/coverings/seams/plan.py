"""The seam plan: strips numbered as they are hung, each with its pieces and the rolls they are cut from.

Numbered to the right from the start, then to the left of it. Rolls are those that are enough for certain.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from scantling.engine.coverings.seams.cutting import Cutting, cut_rolls, order_of
from scantling.engine.coverings.seams.hang import CornerWalk, Paper, RollCut, Strip, cuts_of
from scantling.engine.coverings.seams.search import Hung
from scantling.engine.coverings.seams.stretch import Hole, Part, Stretch

STRIPS_AT_MOST = 2000


@dataclass(frozen=True, slots=True)
class Where:
    """Part of a strip on one wall: from and to along that wall."""

    part: Part
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class PieceOf:
    """A piece of paper: what of a strip it is, and where it is cut: roll, place on it, and from how far down."""

    what: str
    hole: Hole | None
    cut: RollCut
    roll: int
    place: int
    at: int


@dataclass(frozen=True, slots=True)
class ListedStrip:
    """A strip of the list. `used` of its width hangs; `shares` is the strip out of whose width this one is cut too."""

    number: int
    strip: Strip
    used: int
    walls: tuple[Where, ...]
    pieces: tuple[PieceOf, ...]
    shares: int | None = None


@dataclass(frozen=True, slots=True)
class SeamPlan:
    """Everything hung, stretch by stretch, out of one set of rolls. None where a strip is longer than a roll gives."""

    lists: tuple[tuple[ListedStrip, ...], ...]
    cutting: Cutting | None
    labeled: Cutting | None


def plan_seams(stretches: Sequence[Stretch], hung: Sequence[Hung], paper: Paper) -> SeamPlan:
    """The strips of every stretch in the order they hang, and what each roll is cut into."""
    wanted: list[RollCut] = []
    for stretch, one in zip(stretches, hung, strict=True):
        for strip in one.strips:
            if not (one.shared and strip.order == one.shared[1]):
                wanted += [cut for _, _, cut in cuts_of(stretch, paper, strip.order, strip.left, strip.right)]
    cutting = cut_rolls(wanted, paper.sure, paper.repeat)
    labeled = cut_rolls(wanted, paper.labeled, paper.repeat)
    slots = order_of(cutting.rolls, paper.repeat) if cutting else {}
    number = 0
    lists = []
    for stretch, one in zip(stretches, hung, strict=True):
        listed = list(_list(stretch, one, paper, slots, number))
        number += len(listed)
        lists.append(tuple(listed))
    return SeamPlan(tuple(lists), cutting, labeled)


def _list(
    stretch: Stretch, hung: Hung, paper: Paper, slots: dict[RollCut, list[tuple[int, int, int]]], number: int
) -> Iterator[ListedStrip]:
    walks = {mirrored: CornerWalk(stretch, paper, mirrored) for mirrored in (False, True)}
    numbers = {strip.order: number + place for place, strip in enumerate(hung.strips, start=1)}
    made: dict[int, tuple[PieceOf, ...]] = {}
    for strip in hung.strips:
        ends = (strip.left, strip.right) if strip.order >= 0 else (-strip.right, -strip.left)
        used = walks[strip.order < 0].used(*ends)
        second = hung.shared is not None and strip.order == hung.shared[1]
        if second and hung.shared:
            made[strip.order] = made[hung.shared[0]]
        else:
            made[strip.order] = tuple(_pieces(stretch, paper, strip, slots))
        shares = numbers[hung.shared[0]] if second and hung.shared else None
        walls = tuple(_walls(stretch, strip))
        yield ListedStrip(numbers[strip.order], strip, used, walls, made[strip.order], shares)


def _pieces(
    stretch: Stretch, paper: Paper, strip: Strip, slots: dict[RollCut, list[tuple[int, int, int]]]
) -> Iterator[PieceOf]:
    for what, hole, cut in cuts_of(stretch, paper, strip.order, strip.left, strip.right):
        roll, place, at = slots[cut].pop(0) if slots.get(cut) else (0, 0, 0)
        yield PieceOf(what, hole, cut, roll, place, at)


def _walls(stretch: Stretch, strip: Strip) -> Iterator[Where]:
    for part in stretch.parts_over(strip.left, strip.right):
        start, end = max(strip.left, part.start), min(strip.right, part.end)
        yield Where(part, part.base + start - part.start, part.base + end - part.start)
