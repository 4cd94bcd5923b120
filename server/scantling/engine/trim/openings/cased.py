"""The openings of a room: each door, cased opening and window to the pieces round it, as pieces of the room.

An opening is cased once its width and both its heights are read; the head corners count as square until they are. What
cannot be cased as it was read is a problem on its wall, and the others stand.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from typing import cast

from scantling.engine.errors import EngineError
from scantling.engine.standard import STOOL, Standard
from scantling.engine.survey.room import SIDES, Measure, Opening, Place, Problem, Room, Wall, check_along
from scantling.engine.tape.angles import SQUARE
from scantling.engine.tape.lengths import SIXTEENTH, ZERO, format_plain
from scantling.engine.trim.doubt import Doubt
from scantling.engine.trim.openings.beside import Of, OpeningsBeside, derive_beside_flags, derive_notch_flags
from scantling.engine.trim.openings.casing import CasingError, Make, check_casing, derive_casing, derive_sides
from scantling.engine.trim.openings.extension import ExtensionStrip
from scantling.engine.trim.openings.frame import FlatPiece, write
from scantling.engine.trim.openings.jambs import Jambs, check_jambs
from scantling.engine.trim.openings.mulled import (
    MulledRow,
    check_heads,
    derive_mulls,
    derive_width,
    find_row,
    waits_for_row,
)
from scantling.engine.trim.openings.reach import derive_make, edge_round, find_stop, problem_of
from scantling.engine.trim.openings.stool import Stool
from scantling.engine.trim.openings.window import Window, WindowMake, derive_window
from scantling.engine.trim.piece import Flag, Kind, Piece, Step
from scantling.engine.trim.told.tolerance import READING
from scantling.engine.words import all_of, say

# What a strip is ripped too wide, to be planed flush. Common practice, no source.
PLANED = SIXTEENTH


class OpeningError(CasingError):
    family = "opening"


def derive_openings(room: Room) -> tuple[list[Piece], list[Problem]]:
    """What goes round every opening in walking order, and the openings that cannot be cased."""
    pieces: list[Piece] = []
    problems: list[Problem] = []
    for wall in room.walls:
        # Openings that cannot lie as they were read are problems of the survey, and any of their figures may be wrong.
        for opening in wall.openings if wall.openings and not check_along(replace(wall, obstacles=())) else ():
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
    row = find_row(wall, opening)
    ends = {"left": opening, "right": opening} if row is None else {"left": row.windows[0], "right": row.windows[-1]}
    if row and opening is not row.windows[0]:
        return _placed(opening, wall, _strips_of(room, wall, opening), [])
    if waits_for_row(wall, opening):
        return []
    for one in row.windows if row else (opening,):
        _check_neighbors(wall, one, make, row.windows if row else ())
    if row:
        pieces = _row_pieces(room, wall, row, make)
    else:
        jambs = derive_jambs(room, wall, ends, make)
        if jambs is None:
            return []
        derive = _window_pieces if opening.kind == "window" else _door_pieces
        pieces = derive(opening.standard, opening, jambs, make)
    beside = [*derive_beside_flags(room, wall, ends, make), *derive_notch_flags(room, wall, ends, make)]
    return _placed(opening, wall, pieces, beside)


def _placed(
    opening: Opening, wall: Wall, pieces: Iterable[Piece], beside: Sequence[tuple[Of, Flag]]
) -> list[Piece]:
    """Pieces on their wall, with what is told of them there."""
    assert opening.standard
    found = []
    for piece in _told_once(pieces):
        flags = [flag for of, flag in beside if of == (piece.kind, piece.side)]
        flags = [*piece.flags, *flags, *_unset_flags(opening.standard, piece)]
        found.append(replace(piece, wall=wall.id, wall_number=wall.number, flags=tuple(flags)))
    return found


def _told_once(pieces: Iterable[Piece]) -> Iterator[Piece]:
    """What is told of the opening, or of the order its pieces go up in, on the first piece that it is told of."""
    told: set[Flag] = set()
    for piece in pieces:
        flags = tuple(flag for flag in piece.flags if flag not in told)
        yield piece if flags == piece.flags else replace(piece, flags=flags)
        told.update(flag for flag in piece.flags if flag.key in ("opening", "order"))


def derive_jambs(
    room: Room, wall: Wall, ends: OpeningsBeside, make: Make, width: Measure | None = None
) -> Jambs | None:
    """What stands between its `ends` as readings make it, or None while one of the three that casing needs is unread.

    Of a row of windows the ends are its first and last, and `width` is from jamb to jamb.
    """
    first, last = ends["left"], ends["right"]
    width = width or first.width
    if width is None or first.left is None or last.right is None:
        return None
    left_stop, right_stop = (find_stop(room, wall, ends[side], side, make) for side in SIDES)
    corners = [edge_round(room, wall, ends[side], side) for side in SIDES]
    left_wall, right_wall = (corner.degrees if corner else SQUARE for corner in corners)
    return Jambs(
        width, first.left, last.right, first.left_corner, last.right_corner, left_stop, right_stop, left_wall,
        right_wall,
    )  # fmt: skip


def _row_pieces(room: Room, wall: Wall, row: MulledRow, make: Make) -> Iterator[Piece]:
    """What goes round a row of windows, and the first one's strips."""
    found, mulls = derive_width(row), derive_mulls(row, make)
    if found is None or mulls is None:
        return
    width, steps = found
    ends = {"left": row.windows[0], "right": row.windows[-1]}
    jambs = derive_jambs(room, wall, ends, make, Measure("", (), (width,)))
    one = row.opening
    if jambs is None or one.standard is None:
        return
    told = tuple(Flag("opening", said, attention=False) for said in check_heads(row))
    make = replace(make, reveal=make.back, step=ZERO)  # its strips are each window's own
    for place, piece in enumerate(_window_pieces(one.standard, one, replace(jambs, mulls=mulls), make)):
        spans = piece.kind in (Kind.HEAD, Kind.SILL, Kind.STOOL)
        doubt = piece.doubt + Doubt.of(READING, READING) if spans or piece.kind == Kind.APRON else piece.doubt
        yield replace(
            piece, working=(*steps, *piece.working) if spans else piece.working, flags=(*told, *piece.flags),
            doubt=piece.doubt if piece.returns else doubt,
        )  # fmt: skip
        if not place:
            yield from _strips_of(room, wall, row.windows[0])


def _strips_of(room: Room, wall: Wall, opening: Opening) -> Iterator[Piece]:
    """A window's own extension strips: all that is its own in a row."""
    if opening.standard is None:
        return
    make = derive_make(opening.standard, opening)
    jambs = derive_jambs(room, wall, dict.fromkeys(SIDES, opening), make)
    for piece in _window_pieces(opening.standard, opening, jambs, make) if jambs else ():
        if piece.kind == Kind.EXTENSION:
            yield piece


def _check_neighbors(wall: Wall, opening: Opening, make: Make, row: Sequence[Opening]) -> None:
    """Two openings whose casings would lie over each other cannot be cased as they were read."""
    for other in wall.openings:
        if other is opening or not is_cased(other) or not (opening.at and opening.width and other.at and other.width):
            continue
        if other in row:
            continue
        assert other.standard is not None
        theirs = derive_make(other.standard, other)
        between = max(
            other.at.smallest - opening.at.smallest - opening.width.smallest,
            opening.at.smallest - other.at.smallest - other.width.smallest,
        )
        wanted = make.back + make.leg_width + theirs.back + theirs.leg_width
        if between < wanted:
            raise OpeningError("casings-meet", other=other.name, room=write(between), wanted=write(wanted))


def _door_pieces(standard: Standard, opening: Opening, jambs: Jambs, make: Make) -> Iterator[Piece]:
    warnings = [*check_jambs(jambs, make.leg_width), *check_casing(derive_sides(jambs, make), make)]
    warnings += _check_plinth(standard)
    for flat in derive_casing(jambs, make):
        yield _lay_on_saw(opening, flat, _profile_of(standard, flat), warnings)


def _check_plinth(standard: Standard) -> Iterator[str]:
    if standard.plinth_height is None:
        return
    if standard.wants("base") and standard.plinth_height < standard.base_height:
        yield say("plinth-low")
    if standard.plinth_thickness < max(standard.casing_thickness, standard.base_thickness):
        yield say("plinth-thin")


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
            yield say("unread-depths", places=all_of(say(f"side-{place}") for place in wanted))


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
        apron=standard.wants("apron"),
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
    return replace(piece, working=(*piece.working, *stool.ripping), ripped=stool.width)


def _strip_piece(standard: Standard, opening: Opening, strip: ExtensionStrip, warnings: Iterable[str]) -> Piece:
    piece = _lay_on_saw(opening, strip.board, standard.extension_profile, warnings)
    ripping = Flag("ripping", strip.ripping, attention=False)
    widths = [Step(say("strip-wide-at", count=count), width) for count, width in enumerate(strip.widths, start=1)]
    widths.append(Step(say("strip-blank", by=format_plain(PLANED)), max(strip.widths) + PLANED))
    return replace(piece, working=(*piece.working, *widths), flags=(ripping, *piece.flags), ripped=strip.blank)


def _profile_of(standard: Standard, flat: FlatPiece) -> str:
    if flat.kind == Kind.PLINTH:
        return standard.plinth_profile
    if flat.wide is not None:
        return standard.shared_profile(flat.wide)
    return standard.casing_profile if flat.upright else standard.head_profile


def _unset_flags(standard: Standard, piece: Piece) -> Iterator[Flag]:
    """The settings that nobody has chosen yet, told on the head."""
    if piece.kind == Kind.HEAD:
        unset = [name for name in ("reveal", "casing.width") if name not in standard.given]
        if unset:
            names = all_of(say(f"not-set-{name.partition('.')[0]}") for name in unset)
            yield Flag("not-set", say("unset-in-standard", names=names), attention=False)


def _lay_on_saw(opening: Opening, flat: FlatPiece, profile: str, warnings: Iterable[str]) -> Piece:
    """A board of the frame as it lies at the saw, its outer edge to the fence.

    An upright one is turned on its side, and the sill of a picture frame head over heels.
    """
    swapped = flat.kind == Kind.SILL or (flat.upright and flat.side == "left")
    left, right = (flat.second, flat.first) if swapped else (flat.first, flat.second)
    return Piece(
        key=f"{flat.part} {opening.id}",
        kind=flat.kind,
        part=flat.part,
        place=opening.name,
        profile=profile,
        wall="",
        wall_number=0,
        back=flat.inner,
        left=left,
        right=right,
        doubt=flat.doubt,
        working=flat.working,
        flags=(
            *(Flag("opening", told, attention=False) for told in warnings),
            # What is to know of returns is told of them all together.
            *(Flag("note", told, attention=False) for told in flat.notes if not flat.returns),
        ),
        opening=opening.id,
        side=flat.side,
        returns=flat.returns and f"{flat.returns} {opening.id}",
    )
