"""Where a tape, a gauge or a level is held for a reading: a small picture of each, from in front, above or the side.

Drawn, not derived: no room's own figures, and none is taken from here.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence

from scantling.engine.drawings import svg
from scantling.engine.survey.room import OPENINGS
from scantling.engine.words import say

WIDTH, HEIGHT = 200.0, 104.0
LEFT, RIGHT, CEILING, FLOOR = 12.0, 188.0, 10.0, 94.0
MIDDLE = (LEFT + RIGHT) / 2
# What stands in the middle of the wall: from its left to its right side, and down from its top.
SIDES = (76.0, 124.0)
DOOR, WINDOW, SILL, THING = 34.0, 30.0, 64.0, 58.0
# The wall from above, and how far what stands there comes out of it; a window's jambs in it, and its sash.
BACK, DEEP, JAMB, SASH, FACE = 20.0, 54.0, 46.0, 36.0, 64.0
FROM, CORNER = 36.0, 152.0
TICK = 5.0
CORNERS = ("corner", "ceiling_corner", "sides")

Lines = Sequence[tuple[svg.Point, svg.Point]]


def draw_held(of: str, what: str, turn: str = "inside") -> str:
    """The picture of a reading of a wall, a door, a window, a cased opening or a thing in the way; empty without one.

    `turn` is that of the corner at a wall's right end.
    """
    readings = _OUTSIDE if turn == "outside" and what in CORNERS else _OF["opening" if of in OPENINGS else of]
    if what not in readings:
        return ""
    scene, held, key = readings[what](of)
    return svg.drawing(WIDTH, HEIGHT, say(key), [*scene, *(one for line in held for one in _tape(*line))])


def _tape(start: svg.Point, end: svg.Point) -> Iterator[str]:
    """A line in hand, ended across as a dimension is."""
    yield svg.line(start, end, "hand")
    flat = start[1] == end[1]
    for x, y in (start, end):
        across = ((x, y - TICK), (x, y + TICK)) if flat else ((x - TICK, y), (x + TICK, y))
        yield svg.line(*across, "hand")


def _box(left: float, top: float, right: float, foot: float, classes: str) -> str:
    return svg.polygon([(left, top), (right, top), (right, foot), (left, foot)], classes)


def _front(of: str = "") -> list[str]:
    """A wall from in front, and in it what the reading is of."""
    inside = {"door": (DOOR, FLOOR), "cased": (DOOR, FLOOR), "window": (WINDOW, SILL), "thing": (THING, FLOOR)}
    tops = [_box(SIDES[0], top, SIDES[1], foot, "ink wood") for top, foot in [inside[of]]] if of in inside else []
    return [_box(LEFT, CEILING, RIGHT, FLOOR, "ink"), *tops]


def _above(thing: bool = False) -> list[str]:
    """Two walls from above, which meet at the right, and a thing at the first of them."""
    walls = svg.polyline([(FROM, BACK), (CORNER, BACK), (CORNER, FLOOR)], "ink")
    return [walls, *([_box(SIDES[0], BACK, SIDES[1], DEEP, "ink wood")] if thing else [])]


def _jambs(turned: bool = False) -> tuple[list[str], Callable[[float, float], svg.Point]]:
    """A wall cut through at a window, from above; or from the side, where head and sill are seen so."""
    def at(along: float, out: float) -> svg.Point:
        return (out + 30, along / 2 + 2) if turned else (along, out)

    def box(left: float, top: float, right: float, foot: float, classes: str) -> str:
        return svg.polygon([at(left, top), at(right, top), at(right, foot), at(left, foot)], classes)

    walls = [box(LEFT, BACK, 60, FACE, "ink"), box(140, BACK, RIGHT, FACE, "ink")]
    jambs = [box(60, BACK, 68, JAMB, "ink wood"), box(132, BACK, 140, JAMB, "ink wood")]
    return [*walls, *jambs, svg.line(at(68, SASH), at(132, SASH), "ink")], at


#: What is drawn of the room, where the tape is, and the key of what is said of both.
Held = tuple[Sequence[str], Lines, str]


def _level(y: float, key: str, *, rail: bool = False) -> Callable[[str], Held]:
    dashed = [svg.line((LEFT, y - 4), (RIGHT, y - 4), "pencil dashed")] if rail else []
    return lambda of: ([*_front(), *dashed], [((LEFT, y), (RIGHT, y))], key)


def _corner(key: str, *, outside: bool = False) -> Callable[[str], Held]:
    """A gauge lies in an inside corner, and round an outside one."""
    x, y = (124.0, 64.0) if outside else (CORNER - 4, BACK + 4)
    solid = [svg.polyline([(FROM, y - 4), (x - 4, y - 4), (x - 4, CEILING)], "ink")]
    gauge = svg.polyline([(x - 44, y), (x, y), (x, y - 44 if outside else y + 44)], "hand")
    return lambda of: ([*(solid if outside else _above()), gauge], [], key)


def _sides(of: str) -> Held:
    at = (CORNER, BACK)
    far, down = (at[0] - 60, at[1]), (at[0], at[1] + 50)
    return _above(), [(at, far), (at, down), (far, down)], "held-sides"


def _studs(of: str) -> Held:
    marks = (40.0, 75.0, 110.0, 145.0)
    dashed = [svg.line((x, CEILING), (x, FLOOR), "pencil dashed") for x in marks]
    return [*_front(), *dashed], [((LEFT, 52), (x, 52)) for x in marks], "held-studs"


def _plumb(of: str) -> Held:
    lean = svg.polyline([(40, FLOOR), (MIDDLE, FLOOR), (MIDDLE - 14, CEILING)], "ink")
    level = ((MIDDLE, FLOOR), (MIDDLE, CEILING + 6))
    gap = ((MIDDLE - 13, CEILING + 6), (MIDDLE, CEILING + 6))
    return [lean], [level, gap], "held-plumb"


def _bow(of: str) -> Held:
    hump = svg.polyline([(LEFT, 40), (MIDDLE - 30, 40), (MIDDLE, 56), (MIDDLE + 30, 40), (RIGHT, 40)], "ink")
    string = ((LEFT, 62), (RIGHT, 62))
    return [hump], [string, ((LEFT + 6, 40), (LEFT + 6, 62))], "held-bow"


def _fall(of: str) -> Held:
    floor = svg.polyline([(LEFT, CEILING), (LEFT, FLOOR), (RIGHT, FLOOR - 16), (RIGHT, CEILING)], "ink")
    return [floor], [((LEFT, FLOOR - 16), (RIGHT, FLOOR - 16)), ((LEFT, FLOOR - 16), (LEFT, FLOOR))], "held-fall"


def _along(of: str) -> float:
    return 50.0 if of == "window" else 80.0


def _at(of: str) -> Held:
    y = _along(of)
    return _front(of), [((LEFT, y), (SIDES[0], y))], "held-at"


def _wide(of: str) -> Held:
    y = _along(of)
    return _front(of), [((SIDES[0], y), (SIDES[1], y))], "held-thing-width" if of == "thing" else "held-width"


def _upright(x: float, key: str) -> Callable[[str], Held]:
    def held(of: str) -> Held:
        top, foot = (WINDOW, SILL) if of == "window" else (DOOR, FLOOR)
        return _front(of), [((x, foot), (x, top))], key

    return held


def _head(x: float, way: float, key: str) -> Callable[[str], Held]:
    def held(of: str) -> Held:
        left, top = x + 4 * way, (WINDOW if of == "window" else DOOR) + 4
        gauge = svg.polyline([(left + 18 * way, top), (left, top), (left, top + 22)], "hand")
        return [*_front(of), gauge], [], key

    return held


def _sill(of: str) -> Held:
    return _front(of), [((MIDDLE, FLOOR), (MIDDLE, SILL))], "held-sill"


def _sash(of: str) -> Held:
    scene, at = _jambs()
    plane = svg.line(at(60, FACE), at(140, FACE), "pencil dashed")
    return [*scene, plane], [(at(100, SASH), at(100, FACE))], "held-sash"


def _depth(along: float, key: str, *, turned: bool = False) -> Callable[[str], Held]:
    def held(of: str) -> Held:
        scene, at = _jambs(turned)
        plane = svg.line(at(60, FACE), at(140, FACE), "pencil dashed")
        return [*scene, plane], [(at(along, JAMB), at(along, FACE))], key

    return held


def _tall(of: str) -> Held:
    return _front(of), [((MIDDLE, FLOOR), (MIDDLE, THING))], "held-thing-height"


def _deep(of: str) -> Held:
    return _above(thing=True), [((MIDDLE, BACK), (MIDDLE, DEEP))], "held-thing-depth"


_OF: Mapping[str, Mapping[str, Callable[[str], Held]]] = {
    "wall": {
        "length": _level(88, "held-length"),
        "ceiling": _level(16, "held-ceiling"),
        "chair_rail": _level(64, "held-rail", rail=True),
        "picture_rail": _level(26, "held-rail", rail=True),
        "height": lambda of: (_front(), [((MIDDLE, FLOOR), (MIDDLE, CEILING))], "held-height"),
        "corner": _corner("held-corner"),
        "ceiling_corner": _corner("held-ceiling-corner"),
        "sides": _sides,
        "studs": _studs,
        "plumb": _plumb,
        "bow": _bow,
        "fall": _fall,
    },
    "opening": {
        "at": _at,
        "width": _wide,
        "left": _upright(SIDES[0] + 6, "held-left"),
        "right": _upright(SIDES[1] - 6, "held-right"),
        "left_corner": _head(SIDES[0], 1, "held-left-corner"),
        "right_corner": _head(SIDES[1], -1, "held-right-corner"),
        "sill": _sill,
        "sash": _sash,
        "depth_left": _depth(64, "held-depth-left"),
        "depth_right": _depth(136, "held-depth-right"),
        "depth_head": _depth(64, "held-depth-head", turned=True),
        "depth_sill": _depth(136, "held-depth-sill", turned=True),
    },
    "thing": {"at": _at, "width": _wide, "height": _tall, "depth": _deep},
}
#: Of a wall that turns outward at its right end, what is read there.
_OUTSIDE: Mapping[str, Callable[[str], Held]] = {
    "corner": _corner("held-round-corner", outside=True),
    "ceiling_corner": _corner("held-round-ceiling-corner", outside=True),
}
