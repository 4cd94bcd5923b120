"""Window: everything round one window, in the order it is put up.

On a stool: stool, jamb extension, legs, head, and the apron last (Carpenters' Guide; NAVEDTRA 14044; a trade journal).
As a picture: extension, then four mitered sides, which all cover the opening, so the largest readings count.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace

from scantling.engine.errors import EngineError
from scantling.engine.standard import STOOL, Standard
from scantling.engine.survey.room import Measure, Place
from scantling.engine.tape.lengths import ZERO, Length
from scantling.engine.trim.doubt import Doubt
from scantling.engine.trim.openings.casing import (
    Make,
    Side,
    check_casing,
    derive_casing,
    derive_mitered_level,
    derive_sides,
    derive_upright_end,
    read_step,
    rip_note,
    said_saw,
    setbacks,
    sign,
    width_step,
)
from scantling.engine.trim.openings.extension import (
    ExtensionStrip,
    check_depths,
    derive_extension_strips,
    derive_twist,
    find_wanted,
)
from scantling.engine.trim.openings.frame import (
    FlatPiece,
    Outline,
    derive_frame_line,
    derive_standing_line,
    flat_end,
    write,
)
from scantling.engine.trim.openings.jambs import Jambs, check_jambs
from scantling.engine.trim.openings.mulled import derive_shared_casing
from scantling.engine.trim.openings.stool import Stool, derive_apron, derive_stool
from scantling.engine.trim.piece import Kind, Step
from scantling.engine.trim.told.tolerance import MARK, READING
from scantling.engine.words import say


class WindowError(EngineError):
    family = "window"


@dataclass(frozen=True, slots=True)
class WindowMake:
    """How a window is trimmed. `make.clearance` is the stool's thickness where heights were read without it."""

    make: Make
    thickness: Length
    style: str = STOOL
    horn: Length = Standard().stool_horn
    apron: bool = True
    apron_thickness: Length | None = None
    strip_thickness: Length = Standard().extension_thickness
    sash: Measure | None = None
    depths: Mapping[Place, Measure] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Window:
    """What is put round a window; the parts stand here in the order they are put up."""

    stool: Stool | None
    strips: tuple[ExtensionStrip, ...]
    casing: tuple[FlatPiece, ...]
    apron: tuple[FlatPiece, ...]
    twist: Length | None
    order: tuple[tuple[str, str], ...]
    warnings: tuple[str, ...]


def derive_window(jambs: Jambs, window: WindowMake) -> Window:
    """Everything round the window. Raises `EngineError` where it cannot be made."""
    if not find_wanted(window.depths):
        window = replace(window, make=replace(window.make, step=ZERO))  # without strips there is nothing to step back
    make, on_stool = window.make, window.style == STOOL
    if not (on_stool or make.mitered):
        raise WindowError("picture-butted", field="head")
    sides = derive_sides(jambs, make)
    strips = derive_extension_strips(
        jambs,
        replace(make, reveal=ZERO),
        _line(jambs, make.step, on_stool),
        window.depths,
        window.strip_thickness,
        on_stool,
    )
    stool, apron = _stool_and_apron(jambs, sides, window) if on_stool else (None, [])
    return Window(
        stool=stool,
        strips=tuple(strips),
        casing=(
            *(derive_casing(jambs, make) if on_stool else derive_picture(jambs, make)),
            *derive_shared_casing(jambs.mulls, make, on_stool=on_stool),
        ),
        apron=tuple(apron),
        twist=derive_twist(window.depths),
        order=tuple(_order(on_stool, bool(strips), bool(apron))),
        warnings=tuple(_check_window(jambs, sides, window, stool)),
    )


def _line(jambs: Jambs, back: Length, on_stool: bool) -> Outline:
    derive = derive_standing_line if on_stool else derive_frame_line
    return derive(jambs.width.largest, jambs.left.smallest, jambs.right.smallest, jambs.corners, back)


def _stool_and_apron(jambs: Jambs, sides: tuple[Side, Side], window: WindowMake) -> tuple[Stool, list[FlatPiece]]:
    stool = derive_stool(jambs, sides, window.make, window.thickness, window.horn, window.sash)
    if window.sash and stool.tongue is not None and stool.tongue.inches <= 0:
        play = window.sash.smallest - stool.tongue
        raise WindowError("no-sash-room", field="sash", sash=write(window.sash.smallest), play=write(play))
    if not window.apron:
        return stool, []
    line = _line(jambs, window.make.back, on_stool=True)
    return stool, derive_apron(sides, line, window.apron_thickness or window.thickness)


def derive_picture(jambs: Jambs, make: Make) -> list[FlatPiece]:
    """Head, legs and sill, mitered all round. The corners at the sill follow from the other readings."""
    line = derive_frame_line(jambs.width.largest, jambs.left.largest, jambs.right.largest, jambs.corners, make.back)
    at_head = derive_sides(jambs, make)
    at_sill = (replace(at_head[0], corner=line.foot_left), replace(at_head[1], corner=line.foot_right))
    return [
        _level(Kind.HEAD, jambs, at_head, make, line.head),
        _picture_leg(jambs.left, at_head[0], at_sill[0], make, line.left),
        _picture_leg(jambs.right, at_head[1], at_sill[1], make, line.right),
        _level(Kind.SILL, jambs, at_sill, make, line.foot),
    ]


def _level(kind: Kind, jambs: Jambs, sides: tuple[Side, Side], make: Make, inner: Length) -> FlatPiece:
    backs = setbacks(make, [(side.name, side.corner) for side in sides])
    working = [width_step(jambs.width, inner, backs), *backs, Step(say("equals-short-points"), inner)]
    return derive_mitered_level(kind, sides, make, inner, working)


def _picture_leg(measure: Measure, top: Side, foot: Side, make: Make, inner: Length) -> FlatPiece:
    working = [
        read_step(say("plus-height", where=say(f"place-{top.name}")), measure, "largest"),
        *setbacks(make, [("top", top.corner), ("foot", foot.corner)]),
        Step(say("equals-short-points"), inner),
    ]
    outer = inner
    cuts = []
    for where, side, meets in (("top", top, "meets-head"), ("foot", foot, "meets-sill")):
        gains, saw = derive_upright_end(side, make)
        outer = outer + gains
        told = say("miter-at", sign=sign(gains), where=say(f"place-{where}"), saw=said_saw("miter", saw))
        working.append(Step(told, abs(gains)))
        cuts.append(flat_end("miter", say(meets), saw, gains))
    working.append(Step(say("equals-long-points"), outer))
    out = Doubt.of(READING, MARK)
    return FlatPiece(
        Kind.LEG, f"{top.name} leg", True, inner, cuts[0], cuts[1], out, tuple(working), rip_note(top), side=top.name
    )


def _order(on_stool: bool, extended: bool, apron: bool) -> Iterator[tuple[str, str]]:
    """The order of assembly: which pieces, and what to do with them."""
    if on_stool:
        yield "stool", say("order-stool")
    if extended:
        yield "extension", say("order-extension")
    if on_stool:
        yield "casing", say("order-casing")
    if apron:
        yield "apron", say("order-apron")
    if not on_stool:
        yield "casing", say("order-picture")


def _check_window(jambs: Jambs, sides: tuple[Side, Side], window: WindowMake, stool: Stool | None) -> Iterator[str]:
    yield from check_jambs(jambs, window.make.leg_width, covers_height=stool is None)
    yield from check_casing(sides, window.make)
    yield from check_depths(window.depths, on_stool=stool is not None)
    if stool is None:
        return
    for side, horn in zip(sides, (stool.left_horn, stool.right_horn), strict=True):
        if horn < window.horn:
            where = say(f"place-{side.name}")
            yield say("stool-horn-short", horn=write(horn), where=where) if horn else say("stool-no-horn", where=where)
    if window.sash is None:
        yield say("stool-sash-unread")
    elif window.sash.spread:
        yield say("stool-sash-differs", by=write(window.sash.spread))
