"""Stool and apron: the board that a window's casing stands on, and the one below it.

Length of the stool = jamb width + 2 × (casing + reveal + horn): with casing of 3 1/2 and 1/4 for both reveal and horn
that is the width + 8 (a trade journal, on jamb extensions). The apron is as long as the casing is wide from outside to
outside, its ends returned (NAVEDTRA 14044). Between stool and sash 1/16 is left free (the same two, and others).
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from scantling.engine.survey.room import Measure
from scantling.engine.tape.angles import SQUARE, scaled
from scantling.engine.tape.lengths import SIXTEENTH, ZERO, Length
from scantling.engine.trim.doubt import Doubt
from scantling.engine.trim.ends import FLAT, End
from scantling.engine.trim.openings.casing import Make, Side, read_step
from scantling.engine.trim.openings.frame import FlatPiece, Outline, derive_crossed, flat_end, write
from scantling.engine.trim.openings.jambs import Jambs
from scantling.engine.trim.piece import Kind, Step
from scantling.engine.trim.told.tolerance import MARK, READING
from scantling.engine.words import all_of, say

SASH_PLAY = SIXTEENTH
RETURN_SAW = Fraction(45)


@dataclass(frozen=True, slots=True)
class Stool:
    """The stool's blank: its length, what goes in between the jambs, and its width from sash to front edge.

    `tongue` runs from the sash to the plane of the wall, where the horns begin; it and the width want the sash read.
    """

    board: FlatPiece
    between: Length
    front: Length
    tongue: Length | None
    left_horn: Length
    right_horn: Length
    ripping: tuple[Step, ...]

    @property
    def width(self) -> Length | None:
        return None if self.tongue is None else self.tongue + self.front


def derive_stool(
    jambs: Jambs, sides: tuple[Side, Side], make: Make, thickness: Length, horn: Length, sash: Measure | None
) -> Stool:
    """`thickness` is the casing's, `sash` readings from the closed sash to the plane of the wall.

    In front the stool stands past the casing's face by as much as a horn does at its end.
    """
    reaches = [min(make.back + side.width + horn, stop) for side, stop in _with_stops(sides, make)]
    horns = [reach - make.back - side.width for side, reach in zip(sides, reaches, strict=True)]
    length = jambs.width.largest + reaches[0] + reaches[1]
    stops = [reach < make.back + make.leg_width + horn for reach in reaches]
    corners = (jambs.left_wall, jambs.right_wall)
    cuts = [
        _end_at_wall(corner, thickness + horn) if stopped
        else End("square", say("meets-free-end"), edges=FLAT, open=True)
        for corner, stopped in zip(corners, stops, strict=True)
    ]  # fmt: skip
    cuts = [replace(cut, horn=(reach - horn, horn)) for cut, reach, horn in zip(cuts, reaches, horns, strict=True)]
    working = (*_stool_steps(jambs, sides, make, horns), Step(say("equals-end-to-end"), length))
    notes = (say("stool-between", length=write(jambs.width.smallest)),)
    notches = (*_notches(sides, reaches, sash), *_notches_between(jambs, reaches[0], sash))
    board = FlatPiece(
        Kind.STOOL, "stool", False, length, cuts[0], cuts[1], Doubt.of(*[READING] * (1 + sum(stops)), MARK), working,
        (*notes, *notches),
    )  # fmt: skip
    tongue = None if sash is None else sash.smallest - SASH_PLAY
    ripping = tuple(_ripping(sash, thickness, horn))
    return Stool(board, jambs.width.smallest, thickness + horn, tongue, horns[0], horns[1], ripping)


def _notches(sides: tuple[Side, Side], reaches: list[Length], sash: Measure | None) -> Iterator[str]:
    """The two cuts that let each horn out past its jamb: along the stool, and deep from its edge at the sash."""
    if sash is None:
        return
    deep = sash.largest - SASH_PLAY
    cuts = all_of(say("stool-notch-along", along=write(reach), where=say(f"place-{side.name}"))
                  for side, reach in zip(sides, reaches, strict=True))  # fmt: skip
    yield say("stool-notch-scribe" if sash.spread else "stool-notch", cuts=cuts, deep=write(deep))


def _notches_between(jambs: Jambs, reach: Length, sash: Measure | None) -> Iterator[str]:
    """Of a row of windows, the notch for the wall between each two, from the stool's left end."""
    for mull in jambs.mulls:
        one, other = mull.between
        known = {"one": one, "other": other, "near": write(reach + mull.start)}
        known["far"] = write(reach + mull.start + mull.gap)
        deep = sash and write(sash.largest - SASH_PLAY)
        yield say("stool-notch-between-deep", deep=deep, **known) if deep else say("stool-notch-between", **known)


def _end_at_wall(corner: Fraction, front: Length) -> End:
    """A horn's end along the side wall: its length is at the plane of the wall, its front edge's by the corner."""
    if corner == SQUARE:
        return flat_end("square", say("meets-side-wall"))
    grows = -scaled(front, 1 / math.tan(math.radians(corner)))
    return flat_end("square", say("meets-side-wall"), abs(SQUARE - corner), grows)


def _ripping(sash: Measure | None, thickness: Length, horn: Length) -> Iterator[Step]:
    """The working of the stool's width, as far as it is known."""
    if sash is None:
        return
    yield read_step(say("stool-sash"), sash, "smallest")
    yield Step(say("stool-play"), SASH_PLAY)
    yield Step(say("stool-casing-thick"), thickness)
    yield Step(say("stool-past-casing"), horn)
    yield Step(say("equals-width"), sash.smallest - SASH_PLAY + thickness + horn)


def _with_stops(sides: tuple[Side, Side], make: Make) -> Iterator[tuple[Side, Length]]:
    """Each side with the distance from jamb to side wall; where none is near, farther than any horn reaches."""
    for side in sides:
        yield side, Length(Fraction(10**6)) if side.room is None else side.room + make.back


def _stool_steps(jambs: Jambs, sides: tuple[Side, Side], make: Make, horns: list[Length]) -> Iterator[Step]:
    yield read_step(say("plus-width"), jambs.width, "largest")
    if make.step:
        yield Step(say("by-step-setback-both"), make.step * 2)
    if make.reveal:
        yield Step(say("by-reveal-setback-both"), make.reveal * 2)
    for side, horn in zip(sides, horns, strict=True):
        where = say(f"place-{side.name}")
        yield Step(say("stool-casing-ripped" if side.ripped else "stool-casing", where=where), side.width)
        if horn:
            yield Step(say("stool-horn", where=where), horn)


def derive_apron(sides: tuple[Side, Side], line: Outline, thickness: Length) -> list[FlatPiece]:
    """The apron and its returns. Its face is as long as the casing is wide outside, along the foot of the frame."""
    widths = [
        derive_crossed(side.width, corner)
        for side, corner in zip(sides, (line.foot_left, line.foot_right), strict=True)
    ]
    face = line.foot + widths[0] + widths[1]
    free = [side for side in sides if not side.ripped]
    back = face - thickness * len(free)
    working = [Step(say("apron-between"), line.foot)]
    working += [Step(say(f"plus-leg-{side.name}"), width) for side, width in zip(sides, widths, strict=True)]
    working.append(Step(say("equals-front"), face))
    working += [Step(say("apron-minus-return", where=say(f"place-{side.name}")), thickness) for side in free]
    working.append(Step(say("equals-back"), back))
    cuts = [
        End("return", say("meets-return"), RETURN_SAW, thickness) if side in free
        else End("square", say("meets-side-wall"))
        for side in sides
    ]  # fmt: skip
    apron = FlatPiece(Kind.APRON, "apron", False, back, cuts[0], cuts[1], Doubt.of(READING, MARK), tuple(working))
    return [apron, *(_return(side, thickness) for side in free)]


def _return(side: Side, thickness: Length) -> FlatPiece:
    miter, square = End("return", say("meets-apron"), RETURN_SAW, thickness), End("square", say("meets-wall"))
    first, second = (square, miter) if side.name == "left" else (miter, square)
    return FlatPiece(
        Kind.APRON, f"apron return, {side.name}", False, ZERO, first, second, Doubt.of(MARK),
        (Step(say("apron-thick"), thickness),),
        (say("apron-return-small"),),
        side=side.name, returns="apron",
    )  # fmt: skip
