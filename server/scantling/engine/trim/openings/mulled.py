"""Mulled windows: two or more side by side, with one casing between each two, one head, one stool and one apron.

Said on each but the last, `window.mulled`: that it shares a casing with the next window to its right. The row is
trimmed as one window as wide as they are together; between two of them stands a board as wide as the gap less a reveal
at either jamb, cut square from stool to head. Common practice, no source.
"""

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from scantling.engine.standard import NO, YES
from scantling.engine.survey.room import Measure, Opening, Wall
from scantling.engine.tape.lengths import ONE_INCH, ZERO, Length
from scantling.engine.trim.doubt import Doubt
from scantling.engine.trim.openings.casing import CasingError, Make, read_step
from scantling.engine.trim.openings.frame import FlatPiece, flat_end, write
from scantling.engine.trim.openings.jambs import Mull
from scantling.engine.trim.piece import Kind, Step
from scantling.engine.trim.told.tolerance import MARK, READING
from scantling.engine.words import say

# Heads, or sills, that are farther apart are not of one row: no head casing hides more.
APART = ONE_INCH


class MullError(CasingError):
    family = "mull"


@dataclass(frozen=True, slots=True)
class MulledRow:
    """Mulled windows from left to right, as one: `opening` has the first one's id, and their sashes together."""

    windows: tuple[Opening, ...]

    @property
    def opening(self) -> Opening:
        first, last = self.windows[0], self.windows[-1]
        sashes = [one.sash for one in self.windows if one.sash]
        sash = replace(
            sashes[0],
            texts=tuple(text for one in sashes for text in one.texts),
            lengths=tuple(length for one in sashes for length in one.lengths),
        ) if len(sashes) == len(self.windows) else None  # fmt: skip
        standard = first.standard and replace(first.standard, extension_wanted=NO)
        name = say("row-of", first=first.name, last=last.name)
        return replace(first, name=name, right=last.right, right_corner=last.right_corner, sash=sash, depths={},
                       standard=standard)  # fmt: skip


def is_mulled(opening: Opening) -> bool:
    """Whether an opening is a window that is to share a casing with the next to its right."""
    return opening.kind == "window" and opening.standard is not None and opening.standard.window_mulled == YES


def waits_for_row(wall: Wall, opening: Opening) -> bool:
    """Whether a window may be one of a row, and it is not known yet: a place on its wall is not read."""
    unplaced = any(one.at is None for one in wall.openings)
    return opening.kind == "window" and unplaced and any(map(is_mulled, wall.openings))


def find_row(wall: Wall, opening: Opening) -> MulledRow | None:
    """The row that a window stands in; None where it stands by itself, or the places on its wall are not all read.

    Raises `MullError` where it is to share a casing with a window that is not there.
    """
    placed = sorted((one for one in wall.openings if one.at), key=lambda one: one.at.smallest if one.at else ZERO)
    if opening not in placed or len(placed) < len(wall.openings):
        return None
    first = last = placed.index(opening)
    while first and is_mulled(placed[first - 1]) and placed[first].kind == "window":
        first -= 1
    while is_mulled(placed[last]) and last + 1 < len(placed) and placed[last + 1].kind == "window":
        last += 1
    if is_mulled(placed[last]):
        raise MullError("mull-alone")
    return MulledRow(tuple(placed[first : last + 1])) if last > first else None


def find_joined(wall: Wall) -> set[tuple[str, str]]:
    """The ids of each two windows of a wall that share a casing, the left one's first: nothing runs between them."""
    placed = sorted((one for one in wall.openings if one.at), key=lambda one: one.at.smallest if one.at else ZERO)
    return {(one.id, other.id) for one, other in itertools.pairwise(placed)
            if is_mulled(one) and other.kind == "window"}  # fmt: skip


def derive_width(row: MulledRow) -> tuple[Length, list[Step]] | None:
    """From the first jamb to the last, for what covers it, with its working; None while a place or width is unread."""
    first, last = row.windows[0], row.windows[-1]
    if first.at is None or last.at is None or last.width is None:
        return None
    width = last.at.largest + last.width.largest - first.at.smallest
    return width, [
        read_step(say("row-to-last", what=last.name), last.at, "largest"),
        read_step(say("row-last", what=last.name), last.width, "largest"),
        read_step(say("row-to-first", what=first.name), first.at, "smallest"),
    ]


def derive_mulls(row: MulledRow, make: Make) -> tuple[Mull, ...] | None:
    """What stands between each two of a row; None while a figure of it is unread. Raises `MullError`."""
    found = []
    for one, other in itertools.pairwise(row.windows):
        _check_alike(one, other)
        if not (one.at and one.width and other.at and one.right and other.left):
            return None
        assert row.windows[0].at
        gap = other.at.smallest - one.at.largest - one.width.largest
        if gap <= make.back * 2:
            raise MullError("mull-narrow", other=other.name, gap=write(max(ZERO, gap)), taken=write(make.back * 2))
        height = min((one.right, other.left), key=lambda measure: measure.smallest)
        start = one.at.smallest + one.width.largest - row.windows[0].at.smallest
        between = (say("the-thing", thing=one.name), say("the-thing", thing=other.name))
        readings = (*one.at.texts, *one.width.texts, *other.at.texts)
        found.append(Mull(start, gap, height, between, readings))
    return tuple(found)


def _check_alike(one: Opening, other: Opening) -> None:
    ours, theirs = (each.standard and replace(each.standard, window_mulled=NO) for each in (one, other))
    if ours is None or theirs is None or not ours.is_but_for_stock(theirs):
        raise MullError("mull-unlike", other=other.name)
    for what, first, second in (("head", one.right, other.left), ("sill", one.sill, other.sill)):
        by = _apart(first, second)
        if by > APART:
            raise MullError("mull-apart", what=say(f"side-{what}"), other=other.name, by=write(by))


def _apart(one: Measure | None, other: Measure | None) -> Length:
    return abs(one.smallest - other.smallest) if one and other else ZERO


def derive_shared_casing(mulls: Sequence[Mull], make: Make, *, on_stool: bool) -> Iterator[FlatPiece]:
    """The casing between each two: from the stool, or the sill's casing, to the head, as wide as the reveals leave."""
    for count, mull in enumerate(mulls, start=1):
        wide = mull.gap - make.back * 2
        ends = make.back if on_stool else make.back * 2
        length = mull.height.smallest + ends - make.clearance
        working = [
            read_step(say("shared-height"), mull.height, "smallest"),
            Step(say("shared-head" if on_stool else "by-reveal-setback-both"), ends),
            *([Step(say(make.clearance_for), make.clearance)] if make.clearance else []),
            Step(say("equals-either"), length),
            Step(say("shared-gap", first=mull.between[0], last=mull.between[1]), mull.gap, mull.readings),
            Step(say("shared-reveals"), make.back * 2),
            Step(say("equals-width"), wide),
        ]
        name = "shared casing" if len(mulls) == 1 else f"shared casing {count}"
        how = say("shared-wide") if wide > make.leg_width else say("shared-rip", width=write(wide))
        foot = flat_end("square", say(make.stands_on if on_stool else "meets-sill"))
        yield FlatPiece(
            Kind.LEG, name, True, length, flat_end("butt", say("meets-head")), foot, Doubt.of(READING, MARK),
            tuple(working), () if wide == make.leg_width else (how,), wide=wide,
        )  # fmt: skip


def check_heads(row: MulledRow) -> Iterator[str]:
    """Heads that are not quite as high: one head lies along them all, and the reveal takes up the rest."""
    for one, other in itertools.pairwise(row.windows):
        by = _apart(one.right, other.left)
        if by:
            yield say("heads-apart", one=one.name, other=other.name, by=write(by))
