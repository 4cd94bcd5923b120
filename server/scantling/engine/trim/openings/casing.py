"""Casing: the boards round an opening, from the jambs as they were read to two legs and a head with their working.

The head goes over the opening, so the largest width counts; a leg stands between floor and head, so the smallest height
does. The leg is measured "from the floor to the horizontal reveal line", which is its short point (a housing handbook's
chapter on interior trim): heights are read where the leg's inner edge will stand. Molded casing must be mitered,
square-edged casing may be butted (NAVEDTRA 14044).
"""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.errors import EngineError
from scantling.engine.survey.room import Measure
from scantling.engine.tape.angles import SQUARE, cotangent_of_half, format_degrees, scaled
from scantling.engine.tape.lengths import SIXTY_FOURTH, ZERO, Length, format_plain
from scantling.engine.trim.doubt import Doubt
from scantling.engine.trim.ends import End
from scantling.engine.trim.openings.frame import (
    FlatPiece,
    Outline,
    derive_crossed,
    derive_meeting,
    derive_offset,
    derive_slant,
    derive_standing_line,
    flat_end,
    write,
)
from scantling.engine.trim.openings.jambs import Jambs
from scantling.engine.trim.piece import Kind, Step
from scantling.engine.trim.told.tolerance import MARK, READING
from scantling.engine.words import say


class CasingError(EngineError):
    family = "casing"


@dataclass(frozen=True, slots=True)
class Plinth:
    """The block that a leg stands on; its width is the leg's where none is given."""

    height: Length
    width: Length | None = None


@dataclass(frozen=True, slots=True)
class Make:
    """How the casing is made. `step` is how far a jamb extension, where there is one, stands back from the jamb.
    `stands_on` is the key of what its feet meet, `clearance_for` of what is taken off for it.

    `clearance` is kept free under the legs, for a floor still to come or the stool that the heights were read without.
    """

    leg_width: Length
    head_width: Length
    reveal: Length
    mitered: bool = True
    overhang: Length = ZERO
    plinth: Plinth | None = None
    clearance: Length = ZERO
    clearance_for: str = "minus-floor"
    stands_on: str = "meets-floor"
    step: Length = ZERO

    @property
    def back(self) -> Length:
        """How far the casing's inner edge stands back from the jamb."""
        return self.reveal + self.step


@dataclass(frozen=True, slots=True)
class Side:
    """One side of an opening: its height, its head corner, and how much of the casing's width there is room for."""

    name: str
    height: Measure
    corner: Fraction
    width: Length
    ripped: bool
    room: Length | None


def derive_casing(jambs: Jambs, make: Make) -> list[FlatPiece]:
    """Plinths if there are any, legs, and head. Raises `EngineError` where they cannot be made.

    >>> one = lambda inches: Measure("", (inches,), (Length(Fraction(inches)),))
    >>> jambs = Jambs(width=one("30.125"), left=one("80.1875"), right=one("80.1875"))
    >>> make = Make(leg_width=Length(Fraction(9, 4)), head_width=Length(Fraction(9, 4)), reveal=Length(Fraction(3, 16)))
    >>> [write(piece.long) for piece in derive_casing(jambs, make)]
    ['82 5/8"', '82 5/8"', '35"']
    """
    sides = derive_sides(jambs, make)
    line = derive_standing_line(
        jambs.width.largest, jambs.left.smallest, jambs.right.smallest, jambs.corners, make.back
    )
    feet = (SQUARE - line.foot_left, SQUARE - line.foot_right)
    pieces = [derive_plinth(side, make, off) for side, off in zip(sides, feet, strict=True) if make.plinth]
    for side, height, off in zip(sides, (line.left, line.right), feet, strict=True):
        pieces.append(derive_leg(side, make, height, off))
    return [*pieces, derive_head(jambs, sides, make, line)]


def derive_sides(jambs: Jambs, make: Make) -> tuple[Side, Side]:
    """Both sides, each with the casing's width that fits between the reveal and a side wall. Raises `CasingError`."""
    return (
        _side("left", jambs.left, jambs.corners[0], jambs.left_stop, make),
        _side("right", jambs.right, jambs.corners[1], jambs.right_stop, make),
    )


@dataclass(frozen=True, slots=True)
class Fit:
    """What there is room for of a board's width between reveal and side wall: all of it where `room` is None."""

    width: Length
    ripped: bool
    room: Length | None


def derive_fit(name: str, wide: Length, stop: Measure | None, make: Make) -> Fit:
    """How wide a leg, or a plinth, can be: base dies into just that. Raises `CasingError` where nothing fits."""
    if stop is None:
        return Fit(wide, ripped=False, room=None)
    room = stop.smallest - make.back
    if room.inches <= 0:
        room_told, reveal = write(stop.smallest), write(make.back)
        raise CasingError("no-room", field=f"{name}_stop", room=room_told, jamb=say(f"jamb-{name}"), reveal=reveal)
    return Fit(min(room, wide), ripped=room < wide, room=room)


def _side(name: str, height: Measure, corner: Fraction, stop: Measure | None, make: Make) -> Side:
    fit = derive_fit(name, make.leg_width, stop, make)
    return Side(name, height, corner, fit.width, fit.ripped, fit.room)


def derive_leg(side: Side, make: Make, height: Length, off: Fraction) -> FlatPiece:
    """One leg. `height` is its inner edge from floor to short point, `off` how far the floor is from square to it.

    A ripped leg keeps the miter of the full width and is ripped after, so that the profiles still meet.
    """
    plinth = make.plinth
    inner = height - make.clearance - (plinth.height if plinth else ZERO)
    top, saw = derive_upright_end(side, make)
    foot = _foot(side.width, *(("meets-plinth", Fraction(0)) if plinth else (make.stands_on, off)))
    outer = inner + top + foot.grows
    joint = "miter" if make.mitered else "butt"
    working = [
        read_step(say("plus-height", where=say(f"place-{side.name}")), side.height, "smallest"),
        *setbacks(make, [(side.name, side.corner)]),
        *_stands_on(make),
        Step(say("equals-inner" if inner != outer else "equals-either"), inner),
        *_slant_steps(side, make, joint, top, saw, Fraction(0) if plinth else off),
        *([Step(say("equals-outer"), outer)] if inner != outer else []),
    ]
    return FlatPiece(
        Kind.LEG, f"{side.name} leg", True, inner, flat_end(joint, say("meets-head"), saw, top), foot,
        Doubt.of(READING, MARK, MARK if plinth else ZERO), tuple(working), rip_note(side), side=side.name,
    )  # fmt: skip


def derive_upright_end(side: Side, make: Make) -> tuple[Length, Fraction]:
    """What a leg's outer edge gains on its inner one where it meets a level board, and the saw."""
    if make.mitered:
        meeting = derive_meeting(make.leg_width, make.head_width, side.corner)
        return scaled(meeting.grows, side.width / make.leg_width), meeting.saw
    return derive_slant(side.width, SQUARE - side.corner), abs(SQUARE - side.corner)


def _foot(width: Length, stands_on: str, off: Fraction) -> End:
    return flat_end("foot", say(stands_on), abs(off), derive_slant(width, off))


def _stands_on(make: Make) -> Iterator[Step]:
    if make.clearance:
        yield Step(say(make.clearance_for), make.clearance)
    if make.plinth:
        yield Step(say("minus-plinth"), make.plinth.height)


def _slant_steps(side: Side, make: Make, joint: str, top: Length, saw: Fraction, foot: Fraction) -> Iterator[Step]:
    if top:
        across = say("meets-head" if make.mitered else "meets-leg")
        across = say("part-of-it", width=write(side.width)) if side.ripped else across
        yield Step(say("slant-top", sign=sign(top), saw=said_saw(joint, saw), across=across), abs(top))
    if foot:
        gains = derive_slant(side.width, foot)
        yield step_if_seen(say("slant-foot", sign=sign(gains), degrees=format_degrees(abs(foot))), gains)


def derive_plinth(side: Side, make: Make, off: Fraction) -> FlatPiece:
    """The block under a leg: level on top for the leg to stand square on, its foot to the floor."""
    plinth = make.plinth
    assert plinth is not None
    width = plinth.width or side.width
    if side.room is not None:
        width = min(width, side.room)
    foot = _foot(width, make.stands_on, off)
    working = [Step(say("plus-plinth"), plinth.height)]
    if off:
        working.append(step_if_seen(say("slant-plinth", sign=sign(foot.grows), width=write(width)), foot.grows))
    top = flat_end("square", say("meets-leg"))
    part = f"{side.name} plinth"
    return FlatPiece(Kind.PLINTH, part, True, plinth.height, top, foot, Doubt.of(MARK), tuple(working), side=side.name)


def derive_head(jambs: Jambs, sides: tuple[Side, Side], make: Make, line: Outline) -> FlatPiece:
    """The head, mitered to the legs or lying on them."""
    backs = setbacks(make, [(side.name, side.corner) for side in sides])
    reached = "equals-short-points" if make.mitered else "equals-between-legs"
    working = [width_step(jambs.width, line.head, backs), *backs, Step(say(reached), line.head)]
    if not make.mitered:
        return _butted_head(sides, make, line, working)
    return derive_mitered_level(Kind.HEAD, sides, make, line.head, working)


def derive_mitered_level(
    kind: Kind, sides: tuple[Side, Side], make: Make, inner: Length, working: list[Step]
) -> FlatPiece:
    """A head or sill mitered at both ends; `working` leads to its inner edge."""
    outer = inner
    cuts = []
    for side in sides:
        gains, saw, how = derive_level_end(side, make)
        outer = outer + gains
        told = say("miter-at", sign=sign(gains), where=say(f"place-{side.name}"), saw=how)
        working.append(Step(told, abs(gains)))
        cuts.append(flat_end("miter", say(f"meets-leg-{side.name}"), saw, gains))
    working.append(Step(say("equals-long-points"), outer))
    notes = tuple(
        say("rip-tip", where=say(f"place-{side.name}"), width=write(side.width)) for side in sides if side.ripped
    )
    return FlatPiece(kind, str(kind), False, inner, cuts[0], cuts[1], Doubt.of(READING, MARK), tuple(working), notes)


def derive_level_end(side: Side, make: Make) -> tuple[Length, Fraction, str]:
    """What a level board's outer edge gains on its inner one where it miters with a leg, the saw, and how it is said.

    Where a side wall has the leg ripped, the tip that would lie past the wall is cut off.
    """
    meeting = derive_meeting(make.head_width, make.leg_width, side.corner)
    if side.ripped:
        return derive_offset(make.head_width, side.width, side.corner), meeting.saw, say("to-the-side-wall")
    return meeting.grows, meeting.saw, say("across-the-leg", saw=said_saw("miter", meeting.saw))


def _butted_head(sides: tuple[Side, Side], make: Make, line: Outline, working: list[Step]) -> FlatPiece:
    length = line.head
    for side in sides:
        leg = derive_crossed(side.width, side.corner)
        past = make.overhang if side.room is None else min(make.overhang, side.room - side.width)
        length = length + leg + past
        working.append(Step(say(f"plus-leg-{side.name}"), leg))
        if past:
            working.append(Step(say("plus-overhang", where=say(f"place-{side.name}")), past))
    working.append(Step(say("equals-end-to-end"), length))
    ends = [flat_end("square", say(f"meets-leg-{side.name}")) for side in sides]
    return FlatPiece(Kind.HEAD, "head", False, length, ends[0], ends[1], Doubt.of(READING, MARK), tuple(working))


def setbacks(make: Make, corners: list[tuple[str, Fraction]]) -> list[Step]:
    """The steps for the reveal, and a jamb extension's own, at each corner that a length runs into."""
    steps = []
    for name, back in (("reveal", make.reveal), ("step", make.step)):
        if not back:
            continue
        if len(corners) > 1 and all(corner == SQUARE for _, corner in corners):
            steps.append(Step(say(f"by-{name}-setback-both"), back * len(corners)))
        else:
            steps += [Step(_setback_said(name, where, c), scaled(back, cotangent_of_half(c))) for where, c in corners]
    return steps


def width_step(width: Measure, inner: Length, backs: list[Step]) -> Step:
    """The first step to a level board's inner edge: the width as read; at a foot that is not square, as found."""
    start = inner
    for step in backs:
        start = start - (step.value or ZERO)
    # Reveal and step are each rounded by themselves, so a head may miss the width by a hair; it would pass for a sill.
    if abs(start - width.largest) < SIXTY_FOURTH / 64:
        return read_step(say("plus-width"), width, "largest")
    return Step(say("plus-sill"), start)


def _setback_said(name: str, where: str, corner: Fraction) -> str:
    if corner == SQUARE:
        return say(f"by-{name}-setback")
    return say(f"by-{name}-setback-at", where=say(f"place-{where}"), degrees=format_degrees(corner))


def read_step(text: str, measure: Measure, one: str) -> Step:
    """A step by what was read, the smallest or the largest of it; of several readings, that it is that one."""
    if len(measure.lengths) > 1:
        text = f"{text} {say(f'reading-{one}', count=len(measure.lengths))}"
    return Step(text, measure.smallest if one == "smallest" else measure.largest, measure.texts)


def step_if_seen(text: str, gains: Length) -> Step:
    """A step by what an angle gives; where that is finer than the working's 64ths, in words."""
    if abs(gains) >= SIXTY_FOURTH / 2:
        return Step(text, abs(gains))
    return Step(say("unseen", step=text, least=format_plain(SIXTY_FOURTH)))


def sign(gains: Length) -> str:
    return "−" if gains.inches < 0 else "+"


def said_saw(joint: str, saw: Fraction) -> str:
    point = format_degrees(SQUARE - saw)
    return say("saw-set", joint=say(f"joint-{joint}"), saw=format_degrees(saw), point=point)


def rip_note(side: Side) -> tuple[str, ...]:
    return (say("rip-leg", width=write(side.width)),) if side.ripped else ()


def check_casing(sides: tuple[Side, Side], make: Make) -> list[str]:
    """Where a side wall leaves no room for the whole width of the casing, and what was asked for that is not used."""
    unused = [say("unused-overhang")] if make.mitered and make.overhang else []
    ripped = [side for side in sides if side.ripped]
    return [*(say("leg-is-ripped", left=write(side.width), whole=write(make.leg_width),
                  leg=say(f"meets-leg-{side.name}")) for side in ripped), *unused]  # fmt: skip
