"""The openings of a room: each door, cased opening and window to the pieces round it, as pieces of the room.

An opening is cased once its width and both its heights are read; the head corners count as square until they are. What
cannot be cased as it was read is a problem on its wall, and the others stand.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from typing import cast

from scantling.engine.angles import SQUARE, format_degrees
from scantling.engine.errors import EngineError
from scantling.engine.standard import STOOL, Standard
from scantling.engine.survey.room import Measure, Opening, Problem, Room, Wall, check_along
from scantling.engine.trim.casing import CasingError, Make, check_casing, derive_casing, derive_sides
from scantling.engine.trim.extension import Place, Strip
from scantling.engine.trim.frame import FlatPiece, said
from scantling.engine.trim.jambs import Jambs, check_jambs
from scantling.engine.trim.piece import Flag, Piece, Step
from scantling.engine.trim.reach import SIDES, derive_make, find_beside, find_stop, problem_of
from scantling.engine.trim.stool import Stool
from scantling.engine.trim.window import Window, WindowMake, derive_window


class OpeningError(CasingError):
    sentences = {
        "casings-meet": "Between it and the {other} there is only {room}, and their casings come to {wanted}: read both"
        " places again, or choose narrower casing for these.",
    }


def derive_openings(room: Room) -> tuple[list[Piece], list[Problem]]:
    """What goes round every opening in walking order, and the openings that cannot be cased."""
    pieces: list[Piece] = []
    problems: list[Problem] = []
    for wall in room.walls:
        # Openings that cannot lie as they were read are problems of the survey, and any of their figures may be wrong.
        for opening in wall.openings if not check_along(replace(wall, obstacles=())) else ():
            try:
                pieces += _derive_cased(room, wall, opening)
            except EngineError as error:
                problems.append(problem_of(wall, opening, error))
    return pieces, problems


def is_cased(opening: Opening) -> bool:
    """Whether casing is wanted round an opening."""
    return opening.standard is not None and opening.standard.wants("casing")


def _derive_cased(room: Room, wall: Wall, opening: Opening) -> list[Piece]:
    if opening.standard is None or not is_cased(opening):
        return []
    make = derive_make(opening.standard, opening)
    jambs = derive_jambs(room, wall, opening, make)
    if jambs is None:
        return []
    _check_neighbors(room, wall, opening, make)
    if opening.kind == "window":
        pieces = _window_pieces(opening.standard, opening, jambs, make)
    else:
        pieces = _door_pieces(opening.standard, opening, jambs, make)
    beside = list(_beside_flags(room, wall, opening, make))
    found = []
    for piece in _told_once(pieces):
        flags = [flag for side, flag in beside if piece.part == f"{side} leg"]
        flags = [*piece.flags, *flags, *_unset_flags(opening.standard, piece)]
        found.append(replace(piece, wall=wall.id, wall_number=wall.number, flags=tuple(flags)))
    return found


def _told_once(pieces: Iterable[Piece]) -> Iterator[Piece]:
    """What is told of the opening, or of the order its pieces go up in, on the first piece that it is told of."""
    told: set[Flag] = set()
    for piece in pieces:
        yield replace(piece, flags=tuple(flag for flag in piece.flags if flag not in told))
        told.update(flag for flag in piece.flags if flag.key in ("opening", "order"))


def derive_jambs(room: Room, wall: Wall, opening: Opening, make: Make) -> Jambs | None:
    """The opening as its readings make it, or None while one of the three that casing needs is unread."""
    if opening.width is None or opening.left is None or opening.right is None:
        return None
    stops = [find_stop(room, wall, opening, side, make) for side in SIDES]
    return Jambs(opening.width, opening.left, opening.right, opening.left_corner, opening.right_corner, *stops)


def _check_neighbors(room: Room, wall: Wall, opening: Opening, make: Make) -> None:
    """Two openings whose casings would lie over each other cannot be cased as they were read."""
    for other in wall.openings:
        if other is opening or not is_cased(other) or not (opening.at and opening.width and other.at and other.width):
            continue
        assert other.standard is not None
        theirs = derive_make(other.standard, other)
        between = max(
            other.at.smallest - opening.at.smallest - opening.width.smallest,
            opening.at.smallest - other.at.smallest - other.width.smallest,
        )
        wanted = make.back + make.leg_width + theirs.back + theirs.leg_width
        if between < wanted:
            raise OpeningError("casings-meet", other=other.name, room=said(between), wanted=said(wanted))


def _door_pieces(standard: Standard, opening: Opening, jambs: Jambs, make: Make) -> Iterator[Piece]:
    warnings = [*check_jambs(jambs), *check_casing(derive_sides(jambs, make), make), *_check_plinth(standard)]
    for flat in derive_casing(jambs, make):
        yield _lay_on_saw(opening, flat, _profile_of(standard, flat), warnings)


def _check_plinth(standard: Standard) -> Iterator[str]:
    if standard.plinth_height is None:
        return
    if standard.wants("base") and standard.plinth_height < standard.base_height:
        yield "The plinth is lower than the base, which then meets the leg above it: make the plinth taller."
    if standard.plinth_thickness < max(standard.casing_thickness, standard.base_thickness):
        yield "The plinth is thinner than what ends at it: use thicker stock."


def _window_pieces(standard: Standard, opening: Opening, jambs: Jambs, make: Make) -> Iterator[Piece]:
    extended = standard.wants("extension")
    window = derive_window(jambs, derive_window_make(standard, opening, make))
    put_up = dict(window.order)
    warnings = (*window.warnings, *_unread_depths(standard, opening, window))
    if window.stool:
        yield from _told(put_up.get("stool"), [_stool_piece(standard, opening, window.stool, warnings)])
    yield from _told(
        put_up.get("extension"),
        (_strip_piece(standard, opening, strip, warnings) for strip in window.strips if extended),
    )
    casing = (_lay_on_saw(opening, flat, _profile_of(standard, flat), warnings) for flat in window.casing)
    yield from _told(put_up.get("casing"), casing)
    apron = (_lay_on_saw(opening, flat, standard.apron_profile, warnings) for flat in window.apron)
    yield from _told(put_up.get("apron"), apron)


def _unread_depths(standard: Standard, opening: Opening, window: Window) -> Iterator[str]:
    if standard.wants("extension"):
        wanted = [place for place in places_of(standard) if place not in opening.depths]
        if wanted:
            yield f"No strip yet at the {' and '.join(wanted)}: the depth from jamb to wall is not read there."


def places_of(standard: Standard) -> tuple[Place, ...]:
    """Where a jamb extension lies: on a stool there is none at the sill."""
    return ("left", "right", "head") if standard.window_style == STOOL else ("left", "right", "head", "sill")


def derive_window_make(standard: Standard, opening: Opening, make: Make) -> WindowMake:
    """How a window is trimmed to its standard."""
    depths = cast(Mapping[Place, Measure], opening.depths) if standard.wants("extension") else {}
    return WindowMake(
        make=make,
        thickness=standard.casing_thickness,
        style=standard.window_style,
        horn=standard.stool_horn,
        apron_thickness=standard.apron_size[0],
        strip_thickness=standard.extension_thickness,
        sash=opening.sash,
        depths=depths,
    )


def _told(sentence: str | None, pieces: Iterable[Piece]) -> Iterator[Piece]:
    """Pieces with the order they are put up in told on each."""
    for piece in pieces:
        flag = (Flag("order", sentence, attention=False),) if sentence else ()
        yield replace(piece, flags=(*flag, *piece.flags))


def _stool_piece(standard: Standard, opening: Opening, stool: Stool, warnings: Iterable[str]) -> Piece:
    piece = _lay_on_saw(opening, stool.board, standard.stool_profile, warnings)
    return replace(piece, working=(*piece.working, *stool.ripping))


def _strip_piece(standard: Standard, opening: Opening, strip: Strip, warnings: Iterable[str]) -> Piece:
    piece = _lay_on_saw(opening, strip.board, standard.extension_profile, warnings)
    ripping = Flag("ripping", strip.ripping, attention=False)
    widths = [Step(f"wide at point {count}", width) for count, width in enumerate(strip.widths, start=1)]
    return replace(piece, working=(*piece.working, *widths), flags=(ripping, *piece.flags))


def _profile_of(standard: Standard, flat: FlatPiece) -> str:
    if flat.part.endswith("plinth"):
        return standard.plinth_profile
    return standard.casing_profile if flat.upright else standard.head_profile


def _beside_flags(room: Room, wall: Wall, opening: Opening, make: Make) -> Iterator[tuple[str, Flag]]:
    """What is known of the wall beside each leg, by side: how a ripped one's width was found, how its edge leans."""
    for side in SIDES:
        beside = find_beside(room, wall, opening, side)
        if beside is None:
            if room.before(wall) if side == "left" else room.after(wall):
                yield side, Flag("unread-side", f"How far the next corner is at the {side} is not read: the casing may "
                                 "want ripping there.")  # fmt: skip
        elif beside.turn == "inside" and beside.distance.smallest < make.back + make.leg_width:
            left = beside.distance.smallest - make.back
            yield side, Flag("ripped", f"{said(left)} wide: {beside.working}, − {said(make.back)} from jamb to casing.",
                             attention=False)  # fmt: skip
            yield from _lean_flags(room, wall, side)


def _lean_flags(room: Room, wall: Wall, side: str) -> Iterator[tuple[str, Flag]]:
    """In a corner tighter than square the side wall leans over the casing's face: its edge is cut to lean too."""
    at = room.before(wall) if side == "left" else wall
    corner = at.corner if at else None
    if corner and corner.degrees < SQUARE:
        lean = format_degrees(SQUARE - corner.degrees)
        yield side, Flag("rip-lean", f"The corner is {format_degrees(corner.degrees)}: bevel the ripped edge {lean}, "
                         "its back the wider.", attention=False)  # fmt: skip


def _unset_flags(standard: Standard, piece: Piece) -> Iterator[Flag]:
    """The settings that nobody has chosen yet, told on the head."""
    if piece.part == "head":
        names = {"reveal": "the reveal", "casing.width": "the casing's width"}
        unset = [words for name, words in names.items() if name not in standard.given]
        if unset:
            told = f"Common practice until you set it in the standard: {' and '.join(unset)}."
            yield Flag("not-set", told, attention=False)


def _lay_on_saw(opening: Opening, flat: FlatPiece, profile: str, warnings: Iterable[str]) -> Piece:
    """A board of the frame as it lies at the saw, its outer edge to the fence.

    An upright one is turned on its side, and the sill of a picture frame head over heels.
    """
    swapped = flat.part == "sill" or (flat.upright and flat.part.startswith("left"))
    left, right = (flat.second, flat.first) if swapped else (flat.first, flat.second)
    return Piece(
        key=f"{flat.part} {opening.id}",
        part=flat.part,
        place=opening.name,
        profile=profile,
        wall="",
        wall_number=0,
        back=flat.inner,
        left=left,
        right=right,
        plus_minus=flat.plus_minus,
        working=flat.working,
        flags=(
            *(Flag("opening", told, attention=False) for told in warnings),
            *(Flag("note", told, attention=False) for told in flat.notes),
        ),
        opening=opening.id,
    )
