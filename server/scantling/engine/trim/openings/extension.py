"""Jamb extension: strips that carry the jambs out to the plane of the wall, ripped to what was read at many points.

Depths are read from the jamb's edge to the plane of the wall, each side from the top down, head and sill from the left;
a jamb that stands proud of the wall reads less than nothing. Head and sill strips lie over the ends of the side strips.
Set back from the jamb's face by a step rather than flush (a trade journal, on jamb extensions).
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.survey.room import PLACES, Measure, Place
from scantling.engine.tape.angles import SQUARE
from scantling.engine.tape.lengths import SIXTEENTH, SIXTY_FOURTH, THIRTY_SECOND, ZERO, Length
from scantling.engine.trim.doubt import Doubt
from scantling.engine.trim.ends import End
from scantling.engine.trim.openings.casing import Make, read_step, setbacks, width_step
from scantling.engine.trim.openings.frame import FlatPiece, Outline, derive_crossed, derive_slant, flat_end, write
from scantling.engine.trim.openings.jambs import Jambs
from scantling.engine.trim.piece import Kind, Step
from scantling.engine.trim.told.tolerance import MARK, READING
from scantling.engine.words import all_of, say

OPPOSITE: tuple[tuple[Place, Place], ...] = (("left", "right"), ("head", "sill"))

# Two depths that differ less were read alike. Common practice, no source: what one reading may be out.
ALIKE = THIRTY_SECOND
# A home improvement article: a jamb proud by no more than this can be planed, one back by more than THIN wants a strip.
PLANED, THIN = Length(Fraction(1, 8)), Length(Fraction(1, 4))


@dataclass(frozen=True, slots=True)
class ExtensionStrip:
    """A strip: its board, how wide it is at each point that was read, in their order, and how those widths run.

    `taper` is the last width less the first; `bow` how far the widths leave the straight line between the two.
    """

    board: FlatPiece
    widths: tuple[Length, ...]
    taper: Length
    bow: Length

    @property
    def blank(self) -> Length:
        """What to rip before tapering."""
        return max(self.widths)

    @property
    def stands(self) -> tuple[Length, ...]:
        """How proud of the wall the strip stands at each point once it is ripped; less than nothing is shy of it."""
        last = max(1, len(self.widths) - 1)
        line = [self.widths[0] + self.taper * Fraction(place, last) for place in range(len(self.widths))]
        if self.bow and abs(self.bow) > ALIKE:
            line = list(self.widths)  # planed to the marks
        elif abs(self.taper) <= ALIKE:
            line = [self.blank] * len(self.widths)
        return tuple(ripped - width for ripped, width in zip(line, self.widths, strict=True))

    @property
    def ripping(self) -> str:
        """What to do at the saw, in words, and how it stands to the wall then."""
        stands = [say("strip-proud" if by > ZERO else "strip-shy", by=write(abs(by)), place=place)
                  for place, by in enumerate(self.stands, start=1) if abs(by) >= SIXTY_FOURTH]  # fmt: skip
        return say("strip-stands", rip=self._rip, stands=all_of(stands)) if stands else self._rip

    @property
    def _rip(self) -> str:
        blank, first, last = write(self.blank), write(self.widths[0]), write(self.widths[-1])
        if self.bow and abs(self.bow) > ALIKE:
            return say("strip-rip-marks", blank=blank)
        if abs(self.taper) > ALIKE:
            return say("strip-rip-taper", blank=blank, first=first, last=last)
        return say("strip-rip-parallel", blank=blank)


def derive_taper(depths: tuple[Length, ...]) -> Length:
    """The last depth less the first. Exact.

    >>> depths = tuple(map(Length, map(Fraction, ("0.5", "0.75", "0.875"))))
    >>> derive_taper(depths).inches, derive_bow(depths).inches
    (Fraction(3, 8), Fraction(1, 16))
    """
    return depths[-1] - depths[0]


def derive_bow(depths: tuple[Length, ...]) -> Length:
    """The farthest that a depth leaves the straight line from first to last, the points evenly spaced. Exact."""
    last = len(depths) - 1
    off = [depths[place] - depths[0] - derive_taper(depths) * Fraction(place, last) for place in range(1, last)]
    return max(off, key=abs, default=ZERO)


def derive_twist(depths: Mapping[Place, Measure]) -> Length | None:
    """(top left + bottom right) − (top right + bottom left): nothing where the four corners lie in one plane. Exact.

    From the sides where both were read at top and bottom, else from head and sill; None where neither pair was.
    """
    for first, second in OPPOSITE:
        one, other = depths.get(first), depths.get(second)
        if one and other and min(len(one.lengths), len(other.lengths)) > 1:
            return one.lengths[0] + other.lengths[-1] - other.lengths[0] - one.lengths[-1]
    return None


def derive_extension_strips(
    jambs: Jambs, make: Make, line: Outline, depths: Mapping[Place, Measure], thickness: Length, on_stool: bool
) -> list[ExtensionStrip]:
    """The strips in the order they are put up: sides, then sill and head. `line` is that of their inner faces.

    A side where the jamb already reaches the wall gets none. On a stool there is none at the sill either.
    """
    wanted = find_wanted(depths)
    upright = [_upright(place, jambs, make, line, thickness, on_stool) for place in PLACES[:2] if place in wanted]
    head = [_level("head", jambs, make, line, thickness, wanted)] if "head" in wanted else []
    sill = [_level("sill", jambs, make, line, thickness, wanted)] if "sill" in wanted and not on_stool else []
    return [_strip(board, depths[place]) for place, board in (*upright, *sill, *head)]


def find_wanted(depths: Mapping[Place, Measure]) -> set[Place]:
    """Where the jamb lies back from the wall, somewhere at least, and so wants a strip."""
    return {place for place in PLACES if place in depths and depths[place].largest.inches > 0}


def _strip(board: FlatPiece, depth: Measure) -> ExtensionStrip:
    widths = tuple(max(ZERO, one) for one in depth.lengths)
    return ExtensionStrip(board, widths, derive_taper(widths), derive_bow(widths))


def _level(
    place: Place, jambs: Jambs, make: Make, line: Outline, thickness: Length, wanted: set[Place]
) -> tuple[Place, FlatPiece]:
    at_head = place == "head"
    corners = (line.head_left, line.head_right) if at_head else (line.foot_left, line.foot_right)
    length = line.head if at_head else line.foot
    backs = _steps(make, corners)
    working = [width_step(jambs.width, length, backs), *backs, Step(say("equals-between-strips"), length)]
    for side, corner in zip(PLACES[:2], corners, strict=True):
        if side in wanted:
            over = derive_crossed(thickness, corner)
            length = length + over
            working.append(Step(say("plus-over-strip", strip=say(f"extension-{side}")), over))
    working.append(Step(say("equals-end-to-end"), length))
    cut = flat_end("square", say("meets-jamb"))
    part, out = f"{place} extension", Doubt.of(READING, MARK)
    return place, FlatPiece(Kind.EXTENSION, part, False, length, cut, cut, out, tuple(working), _notes(), side=place)


def _upright(
    place: Place, jambs: Jambs, make: Make, line: Outline, thickness: Length, on_stool: bool
) -> tuple[Place, FlatPiece]:
    left = place == "left"
    measure, length = (jambs.left, line.left) if left else (jambs.right, line.right)
    top, foot = (line.head_left, line.foot_left) if left else (line.head_right, line.foot_right)
    working = [read_step(say("plus-height", where=say(f"place-{place}")), measure, "smallest")]
    working += _steps(make, (top,) if on_stool else (top, foot))
    if make.clearance:
        working.append(Step(say(make.clearance_for), make.clearance))
    inner = length - make.clearance
    working.append(Step(say("equals-inner-face"), inner))
    return place, FlatPiece(
        Kind.EXTENSION,
        f"{place} extension",
        True,
        inner,
        _end(thickness, top),
        _end(thickness, foot),
        Doubt.of(READING, MARK),
        tuple(working),
        _notes(),
        side=place,
    )


def _end(thickness: Length, corner: Fraction) -> End:
    # The strip stands with its face to the opening: the corner leans its end across the thickness.
    if corner == SQUARE:
        return flat_end("square", say("meets-jamb"))
    return flat_end("butt", say("meets-jamb"), abs(SQUARE - corner), derive_slant(thickness, SQUARE - corner))


def _steps(make: Make, corners: tuple[Fraction, ...]) -> list[Step]:
    return setbacks(make, [("end", corner) for corner in corners])


def _notes() -> tuple[str, ...]:
    return (say("strip-solid"),)  # the same journal


def check_depths(depths: Mapping[Place, Measure], on_stool: bool) -> Iterator[str]:
    """What the depths say: twist, corners read twice that differ, jambs proud of the wall, strips too thin."""
    twist = derive_twist(depths)
    if twist and abs(twist) > SIXTEENTH:
        yield say("depths-twist", by=write(abs(twist)))
    yield from _check_corners(depths)
    for place in PLACES[:3] if on_stool else PLACES:
        if place not in depths:
            continue
        least, most = depths[place].smallest, depths[place].largest
        if least.inches < 0:
            far = "depths-proud" if -least <= PLANED else "depths-far-proud"
            yield say(far, jamb=say(f"jamb-{place}"), by=write(-least))
        elif ZERO < most <= THIN:
            yield say("strip-thin", strip=say(f"extension-{place}"), most=write(most))
        elif not least and most:
            yield say("strip-runs-out", strip=say(f"extension-{place}"))


def _check_corners(depths: Mapping[Place, Measure]) -> Iterator[str]:
    """Where a side and head or sill were both read at a corner, they should agree."""
    for side in PLACES[:2]:
        for level in PLACES[2:]:
            if all(place in depths and len(depths[place].lengths) > 1 for place in (side, level)):
                one = depths[side].lengths[0 if level == "head" else -1]
                other = depths[level].lengths[0 if side == "left" else -1]
                if abs(one - other) > SIXTEENTH:
                    meet = {"side": say(f"side-{side}"), "level": say(f"side-{level}")}
                    yield say("depths-differ", **meet, one=write(one), other=write(other))
