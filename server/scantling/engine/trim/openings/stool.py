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
from scantling.engine.trim.openings.casing import Make, Side, which
from scantling.engine.trim.openings.frame import FlatPiece, Outline, derive_across, flat_end, write
from scantling.engine.trim.openings.jambs import Jambs
from scantling.engine.trim.piece import Kind, Step
from scantling.engine.trim.told.tolerance import MARK, READING

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
        _end_at_wall(corner, thickness + horn) if stopped else End("square", "a free end", edges=FLAT, open=True)
        for corner, stopped in zip(corners, stops, strict=True)
    ]
    cuts = [replace(cut, horn=(reach - horn, horn)) for cut, reach, horn in zip(cuts, reaches, horns, strict=True)]
    working = (*_stool_steps(jambs, sides, make, horns), Step("= end to end", length))
    notes = (f"Between the jambs it is {write(jambs.width.smallest)} long; the horns begin at the plane of the wall.",)
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
    cuts = " and ".join(f"{write(reach)} along at the {side.name}" for side, reach in zip(sides, reaches, strict=True))
    scribe = "; scribe that to the wall" if sash.spread else ""
    yield f"Notch its back corners for the wall: {cuts}, {write(deep)} deep from the edge at the sash{scribe}."


def _notches_between(jambs: Jambs, reach: Length, sash: Measure | None) -> Iterator[str]:
    """Of a row of windows, the notch for the wall between each two, from the stool's left end."""
    for mull in jambs.mulls:
        near, far = write(reach + mull.start), write(reach + mull.start + mull.gap)
        deep = f", {write(sash.largest - SASH_PLAY)} deep" if sash else ""
        yield f"Notch it between {mull.between[0]} and {mull.between[1]}: {near} to {far} from its left end{deep}."


def _end_at_wall(corner: Fraction, front: Length) -> End:
    """A horn's end along the side wall: its length is at the plane of the wall, its front edge's by the corner."""
    if corner == SQUARE:
        return flat_end("square", "the side wall")
    grows = -scaled(front, 1 / math.tan(math.radians(corner)))
    return flat_end("square", "the side wall", abs(SQUARE - corner), grows)


def _ripping(sash: Measure | None, thickness: Length, horn: Length) -> Iterator[Step]:
    """The working of the stool's width, as far as it is known."""
    if sash is None:
        return
    yield Step(f"+ closed sash to the wall{which(sash, 'smallest')}", sash.smallest, sash.texts)
    yield Step("− play at the sash", SASH_PLAY)
    yield Step("+ the casing's thickness", thickness)
    yield Step("+ past the casing in front, as a horn is long", horn)
    yield Step("= rip it so wide", sash.smallest - SASH_PLAY + thickness + horn)


def _with_stops(sides: tuple[Side, Side], make: Make) -> Iterator[tuple[Side, Length]]:
    """Each side with the distance from jamb to side wall; where none is near, farther than any horn reaches."""
    for side in sides:
        yield side, Length(Fraction(10**6)) if side.room is None else side.room + make.back


def _stool_steps(jambs: Jambs, sides: tuple[Side, Side], make: Make, horns: list[Length]) -> Iterator[Step]:
    yield Step(f"+ width between the jambs{which(jambs.width, 'largest')}", jambs.width.largest, jambs.width.texts)
    if make.step:
        yield Step("+ the extension's step, at both ends", make.step * 2)
    if make.reveal:
        yield Step("+ reveal, at both ends", make.reveal * 2)
    for side, horn in zip(sides, horns, strict=True):
        yield Step(f"+ casing at the {side.name}{', ripped' * side.ripped}", side.width)
        if horn:
            yield Step(f"+ horn at the {side.name}", horn)


def derive_apron(sides: tuple[Side, Side], line: Outline, thickness: Length) -> list[FlatPiece]:
    """The apron and its returns. Its face is as long as the casing is wide outside, along the foot of the frame."""
    widths = [
        derive_across(side.width, corner) for side, corner in zip(sides, (line.foot_left, line.foot_right), strict=True)
    ]
    face = line.foot + widths[0] + widths[1]
    free = [side for side in sides if not side.ripped]
    back = face - thickness * len(free)
    working = [Step("+ between the legs, along the stool", line.foot)]
    working += [Step(f"+ the {side.name} leg", width) for side, width in zip(sides, widths, strict=True)]
    working.append(Step("= face", face))
    working += [Step(f"− the return at the {side.name}", thickness) for side in free]
    working.append(Step("= back", back))
    cuts = [
        End("return", "its return", RETURN_SAW, thickness) if side in free else End("square", "the side wall")
        for side in sides
    ]
    apron = FlatPiece(Kind.APRON, "apron", False, back, cuts[0], cuts[1], Doubt.of(READING, MARK), tuple(working))
    return [apron, *(_return(side, thickness) for side in free)]


def _return(side: Side, thickness: Length) -> FlatPiece:
    miter, square = End("return", "the apron", RETURN_SAW, thickness), End("square", "the wall")
    first, second = (square, miter) if side.name == "left" else (miter, square)
    return FlatPiece(
        Kind.APRON, f"apron return, {side.name}", False, ZERO, first, second, Doubt.of(MARK),
        (Step("+ the apron's thickness", thickness),),
        ("Cut it off the end of a long board, and glue it: it is too small to hold or to nail.",),
        side=side.name, returns="apron",
    )  # fmt: skip
