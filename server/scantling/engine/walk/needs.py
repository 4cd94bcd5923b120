"""What is still to be read: the figures that the wanted pieces use and the survey lacks, in walking order.

Never one that nothing uses: a window does not break the base, so base asks nothing of it. What a person reads of it all
the same is kept and drawn. A head corner may be read, and is square until it is: nothing waits for it.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.standard import STOOL, WRAPPED
from scantling.engine.survey.kinds import hangs, is_laid, is_plate, is_wet
from scantling.engine.survey.room import Measure, Obstacle, Opening, Room, Wall
from scantling.engine.tape.lengths import ZERO, Length, format_length
from scantling.engine.trim.footprint import LEFT, RIGHT, from_corner, wall_round
from scantling.engine.trim.moldings.every import derive_longer_than_stock, wanted_moldings
from scantling.engine.trim.moldings.molding import Molding, runs_of
from scantling.engine.trim.openings.beside import find_things_at_legs
from scantling.engine.trim.openings.cased import is_cased
from scantling.engine.trim.openings.mulled import is_mulled
from scantling.engine.trim.piece import Kind
from scantling.engine.trim.runs.course import FLOOR, HEAD, WAIST, Course, may_yet_reach, stops_at
from scantling.engine.trim.runs.run import CORNER, FACE, Run
from scantling.engine.walk.figure import Figure
from scantling.engine.walk.openings import figures_of_casing
from scantling.engine.words import say

# Base so high may meet a low window. Common practice, no source.
HIGH_BASE = Length(Fraction(10))


def derive_figures(room: Room) -> list[Figure]:
    """Every figure that can be read of the room, in walking order: along each wall, then the corner at its right."""
    return list(room.derived("figures", lambda: _derive_figures(room)))


def _derive_figures(room: Room) -> list[Figure]:
    moldings = wanted_moldings(room.standard)
    ends = {one.course: _Ends(one.course, runs_of(room, one)[0]) for one in moldings}
    longer = derive_longer_than_stock(room)
    return [figure for wall in room.walls for figure in _figures_of(room, wall, moldings, list(ends.values()), longer)]


def derive_needs(room: Room) -> list[Figure]:
    """The figures still wanted."""
    return [figure for figure in derive_figures(room) if figure.wanted]


@dataclass(frozen=True, slots=True)
class _Ends:
    """Whether a molding comes to the end of a wall, or may yet. A door's casing in a corner keeps it away."""

    course: Course
    runs: tuple[Run, ...]

    def comes(self, wall: Wall, side: str) -> bool:
        ends = ((run.left if side == LEFT else run.right) for run in self.runs if run.wall is wall)
        return any(end.kind in (CORNER, FACE) for end in ends) or may_yet_reach(wall, side, self.course)

    def meet(self, wall: Wall, after: Wall) -> bool:
        """Whether what is cut at the corner of two walls depends on its angle."""
        ends = (self.comes(wall, RIGHT), self.comes(after, LEFT))
        return all(ends) if wall.turn == "outside" else any(ends)


def _figures_of(
    room: Room, wall: Wall, moldings: list[Molding], ends: list[_Ends], longer: set[str]
) -> Iterator[Figure]:
    things: list[Opening | Obstacle] = [*wall.openings, *wall.obstacles]
    for thing in sorted(things, key=_where):
        yield from _figures_of_thing(room, wall, thing, moldings)
    cased = (opening for opening in wall.openings if is_cased(opening) and room.after(wall))
    beside = next((_beside(room, wall, opening) for opening in cased), "")
    yield Figure(
        wall.id, "length", wall.id, wall.number, say("walk-along-floor"),
        say("walk-along-floor-how"),
        say("walk-for-all", of=_and(moldings)) if moldings else beside or say("walk-for-drawing"),
        used=bool(moldings or beside), read=wall.length is not None,
    )  # fmt: skip
    yield from _figures_overhead(wall, [one for one in moldings if one.course.level == HEAD])
    if moldings:
        yield from _figures_behind(wall, wall.id in longer)
    if _has(moldings, Kind.BASE):
        yield _fall_figure(wall)
    for part, rail in ((one.part, one.course.rail) for one in moldings if one.course.rail):
        yield Figure(
            wall.id, rail, wall.id, wall.number, say("walk-along-rail", rail=part),
            say("walk-along-rail-how", rail=part), say("walk-for-this-wall", of=part),
            used=True, read=rail in wall.at_rails, assumed=say("walk-as-floor-and-lean"),
        )  # fmt: skip
    after = room.after(wall)
    if after:
        yield _corner_figure(wall, any(one.meet(wall, after) for one in ends))
    elif room.closed and len(room.walls) > 1:
        # Not round yet: what is beyond its last corner is to come, but the corner is there to be read.
        yield _corner_figure(wall, bool(moldings))


def _figures_behind(wall: Wall, longer: bool) -> Iterator[Figure]:
    """Its studs, where something along it is longer than a board; whether it leans or bows, which nothing waits for."""
    if longer:
        yield Figure(
            wall.id, "studs", wall.id, wall.number, say("walk-studs"),
            say("walk-studs-how"), say("walk-studs-why"),
            used=True, read=wall.studs is not None,
        )  # fmt: skip
    yield Figure(
        wall.id, "plumb", wall.id, wall.number, say("walk-plumb"),
        say("walk-plumb-how"), say("walk-plumb-why"),
        used=True, read=bool(wall.plumb_texts), assumed=say("wall-plumb"),
    )  # fmt: skip
    yield Figure(
        wall.id, "bow", wall.id, wall.number, say("walk-bow"), say("walk-bow-how"), say("walk-bow-why"),
        used=True, read=bool(wall.bow_texts), assumed=say("wall-straight"),
    )  # fmt: skip


def _fall_figure(wall: Wall) -> Figure:
    return Figure(
        wall.id, "fall", wall.id, wall.number, say("walk-fall"),
        say("walk-fall-how"), say("walk-fall-why"),
        used=True, read=bool(wall.falls), assumed=say("floor-level"),
    )  # fmt: skip


def _figures_overhead(wall: Wall, moldings: list[Molding]) -> Iterator[Figure]:
    """What may be read again up there, where walls are not as long as at the floor: nothing waits for it."""
    if moldings:
        yield Figure(
            wall.id, "ceiling", wall.id, wall.number, say("walk-ceiling"),
            say("walk-ceiling-how"), say("walk-for-this-wall", of=_and(moldings)),
            used=True, read=wall.ceiling is not None, assumed=say("walk-along-floor"),
        )  # fmt: skip
    if _has(moldings, Kind.CROWN):
        yield Figure(
            wall.id, "ceiling_corner", wall.id, wall.number, say("walk-ceiling-corner", number=wall.number),
            say("walk-ceiling-corner-how"), say("walk-ceiling-corner-why", number=wall.number),
            used=True, read=wall.ceiling_corner is not None, assumed=say("walk-as-at-floor"), at_corner=True,
        )  # fmt: skip
    if _has(moldings, Kind.CROWN) and any(thing.height for thing in wall.obstacles):
        yield Figure(
            wall.id, "height", wall.id, wall.number, say("walk-height"),
            say("walk-height-how"), say("walk-height-why"),
            used=True, read=wall.height is not None, assumed=say("walk-above-all"),
        )  # fmt: skip


def _has(moldings: list[Molding], kind: Kind) -> bool:
    return any(one.kind == kind for one in moldings)


def _and(moldings: Iterable[Molding]) -> str:
    *most, last = (one.part for one in moldings)
    return say("all-of", one=", ".join(most), other=last) if most else last


def _where(thing: Opening | Obstacle) -> tuple[bool, Length, str]:
    # One not yet placed comes after those that are: asked for before them, it would be passed over by whoever has just
    # read where another stands and goes on from there.
    return (thing.at is None, thing.at.smallest if thing.at else ZERO, thing.id)


def _figures_of_thing(
    room: Room, wall: Wall, thing: Opening | Obstacle, moldings: list[Molding]
) -> Iterator[Figure]:
    base = _use_along(wall, thing, moldings) or (say("walk-for-covering") if _is_laid(thing) else "")
    casing = say("walk-for-casing", thing=thing.name) if isinstance(thing, Opening) and is_cased(thing) else ""
    beside = casing and _beside(room, wall, thing)
    of = "opening" if isinstance(thing, Opening) else "thing"
    across = "hung" if isinstance(thing, Obstacle) and (thing.base == "over" or _is_laid(thing)) else of
    figures: tuple[tuple[str, Measure | None, str, str, str], ...] = (
        ("at", thing.at, say("walk-at", thing=thing.name), say(f"walk-at-how-{of}"), base or beside),
        ("width", thing.width, say(f"walk-width-{across}", thing=thing.name), say(f"walk-width-how-{across}"),
         base or casing),
    )  # fmt: skip
    for what, measure, title, hint, use in figures:
        yield Figure(
            thing.id, what, wall.id, wall.number, title, hint, use or say("walk-for-drawing"),
            used=bool(use), read=measure is not None,
        )  # fmt: skip
    if isinstance(thing, Obstacle):
        yield from _height_figure(room, wall, thing, moldings)
        if thing.base == "stops" and thing.stands:
            yield _depth_figure(room, wall, thing)
    if isinstance(thing, Opening) and thing.kind != "window" and thing.standard and thing.standard.is_bare:
        wrapped = bool(moldings) and thing.standard.casing_arris == WRAPPED
        yield Figure(
            thing.id, "depth", wall.id, wall.number, say("walk-reveal", thing=thing.name),
            say("walk-reveal-how"), say("walk-reveal-why", of=_and(moldings)) if wrapped else say("walk-for-drawing"),
            used=wrapped, read=thing.depth is not None,
        )  # fmt: skip
    if isinstance(thing, Opening) and thing.kind == "window":
        yield from _sill_figure(wall, thing, moldings)
    if isinstance(thing, Opening) and casing:
        yield from figures_of_casing(wall, thing, casing)


def _beside(room: Room, wall: Wall, thing: Opening | Obstacle) -> str:
    """What the place of an opening tells its casing: how much room there is to the corner on either side."""
    ends = room.before(wall) or room.after(wall)
    if isinstance(thing, Opening) and thing.kind == "window" and any(map(is_mulled, wall.openings)):
        return say("walk-for-shared")
    return say("walk-for-beside", thing=thing.name) if ends else ""


def _use_along(wall: Wall, thing: Opening | Obstacle, moldings: list[Molding]) -> str:
    """Which moldings need a thing's place and width; none for what they do not come to."""
    broken = [one for one in moldings if thing in stops_at(wall, one.course)]
    if broken:
        return say("walk-for-sides", of=_and(broken), thing=thing.name)
    if isinstance(thing, Obstacle) and thing.base == "notch":
        notched = any(one.course.reaches(wall, thing) for one in moldings)
        return say("walk-for-notch", thing=thing.name) if notched else ""
    return ""


def _height_figure(room: Room, wall: Wall, thing: Obstacle, moldings: list[Molding]) -> Iterator[Figure]:
    """How tall a thing is, for what runs as high: a chair rail waits for it, what runs over heads does not. And for a
    leg of casing beside it.
    """
    reached = [one for one in moldings if one.course.level != FLOOR and thing.base in one.course.obstacles]
    if is_plate(thing.kind):
        yield from _plate_figure(wall, thing, moldings)
        return
    if _is_laid(thing):
        yield from _laid_figures(wall, thing)
        return
    if thing.base == "over":
        found = list(_hung_figures(wall, thing, moldings))
        yield from found
        yield from _hidden_figures(wall, thing, *(one.what for one in found))
        return
    notched = [one for one in moldings if one.course.level == FLOOR and one.course.reaches(wall, thing)]
    if thing.base == "notch" and notched:
        yield Figure(
            thing.id, "height", wall.id, wall.number, say("walk-tall", thing=thing.name),
            say("walk-tall-how"), say("walk-tall-notched", of=_and(notched)),
            used=True, read=thing.height is not None, assumed=say("walk-taller", of=_and(notched)),
        )  # fmt: skip
        return
    if reached:
        waits = any(one.course.level == WAIST for one in reached)
        why, assumed = say("walk-breaks", of=_and(reached)), "" if waits else say("walk-lower", of=_and(reached))
    elif thing.id in find_things_at_legs(room):
        why, assumed = say("walk-tall-leg"), ""
    else:
        yield from _hidden_figures(wall, thing, "sill")
        return
    yield Figure(
        thing.id, "height", wall.id, wall.number, say("walk-tall", thing=thing.name),
        say("walk-tall-how-wet" if is_wet(thing.kind) else "walk-tall-how"), why,
        used=True, read=thing.height is not None, assumed=assumed,
    )  # fmt: skip


def _hung_figures(wall: Wall, thing: Obstacle, moldings: list[Molding]) -> Iterator[Figure]:
    """Where what the base runs past hangs on the wall: a shoe runs below it, and a rail as high as it stops there."""
    near = [one for one in moldings if one.course.level != FLOOR or "over" in one.course.obstacles]
    above = [one for one in near if one.course.level != FLOOR]
    if near:
        yield Figure(
            thing.id, "sill", wall.id, wall.number, say("walk-hangs", thing=thing.name),
            say("walk-hangs-how"), say("walk-hangs-why", of=_and(near)),
            used=True, read=thing.foot is not None, assumed="" if hangs(thing.kind) else say("walk-not-hung"),
        )  # fmt: skip
    if above and thing.hangs:
        yield Figure(
            thing.id, "height", wall.id, wall.number, say("walk-tall", thing=thing.name),
            say("walk-tall-how"), say("walk-breaks", of=_and(above)),
            used=True, read=thing.height is not None, assumed=say("walk-clear", of=_and(above)),
        )  # fmt: skip


def _is_laid(thing: Opening | Obstacle) -> bool:
    return isinstance(thing, Obstacle) and is_laid(thing.kind)


def _laid_figures(wall: Wall, thing: Obstacle) -> Iterator[Figure]:
    """How high a stretch of tile or paneling goes, and from where: paper and paint end there, and rails stop at it."""
    yield Figure(
        thing.id, "height", wall.id, wall.number, say("walk-tall", thing=thing.name),
        say("walk-tall-how"), say("walk-for-covering"), used=True, read=thing.height is not None,
    )  # fmt: skip
    yield Figure(
        thing.id, "sill", wall.id, wall.number, say("walk-hangs", thing=thing.name),
        say("walk-laid-how"), say("walk-for-covering"),
        used=True, read=thing.foot is not None, assumed=say("walk-from-floor"),
    )  # fmt: skip


def _hidden_figures(wall: Wall, thing: Obstacle, *but: str) -> Iterator[Figure]:
    """From where to where what is built in hides its wall, of what no board asked: until then it is covered behind."""
    hang, tall = say("walk-hangs", thing=thing.name), say("walk-tall", thing=thing.name)
    how = say("walk-tall-how-wet" if is_wet(thing.kind) else "walk-tall-how")
    for what, title, hint, read in (
        ("sill", hang, say("walk-hangs-how"), thing.foot), ("height", tall, how, thing.height),
    ):  # fmt: skip
        if thing.hides and what not in but:
            yield Figure(
                thing.id, what, wall.id, wall.number, title, hint, say("walk-for-covering"),
                used=True, read=read is not None, assumed=say("walk-covered-behind"),
            )  # fmt: skip


def _plate_figure(wall: Wall, plate: Obstacle, moldings: list[Molding]) -> Iterator[Figure]:
    """How high a plate is, for a rail or a high base that may cross it: nothing waits for it."""
    near = [one for one in moldings
            if one.course.level == WAIST or (one.course.level == FLOOR and one.course.tall >= HIGH_BASE)]  # fmt: skip
    if near:
        yield Figure(
            plate.id, "height", wall.id, wall.number, say("walk-plate", thing=plate.name),
            say("walk-plate-how"), say("walk-plate-why", of=_and(near)),
            used=True, read=plate.height is not None, assumed=say("walk-clear", of=_and(near)),
        )  # fmt: skip


def _sill_figure(wall: Wall, window: Opening, moldings: list[Molding]) -> Iterator[Figure]:
    """How high a window's sill is, for what may run as high: a chair rail, a picture rail, a high base."""
    rails = [one for one in moldings if one.course.rail]
    high = [one for one in moldings
            if one.course.level == FLOOR and one.course.up + one.course.tall >= HIGH_BASE]  # fmt: skip
    if rails or high:
        assumed = say("walk-in-the-way", of=_and(rails)) if rails else say("walk-above", of=_and(high))
        yield Figure(
            window.id, "sill", wall.id, wall.number, say("walk-sill", thing=window.name),
            _say_sill(window), say("walk-breaks", of=_and([*rails, *high])),
            used=True, read=window.sill is not None, assumed=assumed,
        )  # fmt: skip


def _say_sill(window: Opening) -> str:
    """Where there is no stool yet, its top is so much above what it will lie on."""
    standard = window.standard
    if standard is None or not is_cased(window) or standard.window_style != STOOL:
        return say("walk-sill-how")
    return say("walk-sill-how-stool", thickness=format_length(standard.stool_thickness))


def _depth_figure(room: Room, wall: Wall, thing: Obstacle) -> Figure:
    """How deep a thing is: for the next wall, where it stands in the corner; anywhere else for the drawing."""
    used = any(_is_in_corner(room, wall, thing, side) for side in (LEFT, RIGHT))
    return Figure(
        thing.id, "depth", wall.id, wall.number, say("walk-deep", thing=thing.name),
        say("walk-deep-how"), say("walk-deep-why" if used else "walk-for-drawing"),
        used=used, read=thing.depth is not None,
    )  # fmt: skip


def _is_in_corner(room: Room, wall: Wall, thing: Obstacle, side: str) -> bool:
    """Whether a thing stands so near the corner at one end of its wall that what runs along the next comes to it."""
    found = wall_round(room, wall, side)
    other_side = RIGHT if side == LEFT else LEFT
    reach = from_corner(wall, other_side, thing.at, thing.width) if found and thing.at and thing.width else None
    if found is None or reach is None:
        return False
    deepest = [molding.stands_out(room, found[0]) for molding in wanted_moldings(room.standard)]
    return reach[0] < max([*deepest, room.standard.casing_thickness])


def _corner_figure(wall: Wall, used: bool) -> Figure:
    hint = say(f"walk-corner-how-{wall.turn}")
    why = say(f"walk-corner-why-{wall.turn}", number=wall.number) if used else say("walk-for-drawing")
    title = say(f"walk-corner-{wall.turn}", number=wall.number)
    return Figure(
        wall.id, "corner", wall.id, wall.number, title, hint, why,
        used=used, read=wall.corner is not None, at_corner=True,
    )  # fmt: skip
