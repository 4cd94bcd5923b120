"""Rooms that close, made at random from a seed: the facts as a survey gives them, and where the corners truly lie.

A convex outline of three to eight walls, into or out of whose walls bays, breasts, niches and posts are built. Inside
corners of 60 to 150 degrees, outside ones of 210 to 300, in tenths, as a gauge reads them; lengths to a millionth of an
inch, so that what a tape would lose does not count against a joint. No two walls that share no corner come within CLEAR
of each other: boards of the sizes used here meet only in corners.
"""

import copy
import itertools
import math
from dataclasses import dataclass, field
from random import Random

from scantling.engine.tape.lengths import parse_length
from shapely import Polygon, distance, linestrings

from tests.rooms import Facts, room, thing, wall

SHORTEST = 6.0
CLEAR = 4.0
GAP = 3.0  # base between a corner and a casing: enough wood for a joint at its one end
THICKNESSES = ("1/2", "9/16", "5/8", "11/16", "3/4")
Point = tuple[float, float]


@dataclass
class Made:
    """A room made: its facts, its corners in inches (y up, walking with the room on the right), boards by wall."""

    facts: Facts
    corners: list[Point]
    angles: list[float]
    thickness: list[float]
    casing: float
    reveal: float
    casing_thickness: float
    breaks: list[list[tuple[float, float, Facts]]] = field(default_factory=list)


@dataclass
class _Leg:
    """A wall being made: its length, and by how many tenths of a degree one turns right at its end."""

    length: float
    turn: int


def make_room(seed: int, most_walls: int = 24) -> Made:
    """The room of a seed: a convex one, built out as often as it stays clear of itself and under so many walls."""
    rng = Random(seed)
    legs = _convex(rng)
    wanted = rng.randint(len(legs), most_walls)
    for _ in range(40):
        place = rng.randrange(len(legs))
        feature = _feature(rng, legs[place])
        built = [*legs[:place], *feature, *legs[place + 1 :]] if feature else legs
        if len(legs) < len(built) <= wanted and _is_clear(_corners(built)):
            legs = built
    return _furnished(rng, legs, _corners(legs))


def _convex(rng: Random) -> list[_Leg]:
    count = rng.choice((3, 4, 4, 5, 6, 7, 8))
    while True:
        # Every corner turns at least 30 degrees; what is left of the whole turn is cut at random among them.
        # No corner turns more than 120, which leaves three walls no choice.
        cuts = [900, 1800] if count == 3 else sorted(rng.randint(0, 3600 - 300 * count) for _ in range(count - 1))
        turns = [300 + end - start for start, end in itertools.pairwise([0, *cuts, 3600 - 300 * count])]
        if max(turns) > 1200:
            continue
        lengths = _lengths_round(rng, turns)
        if min(lengths) >= 30:
            return [_Leg(length, turn) for length, turn in zip(lengths, turns, strict=True)]


def _lengths_round(rng: Random, turns: list[int]) -> list[float]:
    """Walls that all touch a circle more or less: each corner is where two neighbors' lines cross."""
    heading, lines = 0.0, []
    for turn in turns:
        normal = math.radians(heading + 90)
        lines.append((math.cos(normal), math.sin(normal), rng.uniform(70, 110)))
        heading -= turn / 10
    crossings = [_crossing(lines[place - 1], lines[place]) for place in range(len(lines))]
    lengths = []
    for place, (nx, ny, _) in enumerate(lines):
        start, end = crossings[place], crossings[(place + 1) % len(lines)]
        lengths.append((end[0] - start[0]) * ny - (end[1] - start[1]) * nx)
    return lengths


def _crossing(one: tuple[float, float, float], other: tuple[float, float, float]) -> Point:
    (a, b, e), (c, d, f) = one, other
    area = a * d - b * c
    return ((e * d - b * f) / area, (a * f - e * c) / area)


def _feature(rng: Random, leg: _Leg) -> list[_Leg] | None:
    """A breast or a niche of three walls, or a post or a bay of two, along a wall; None where it does not fit."""
    into = rng.choice((1, -1))
    first, last = rng.randint(300, 1200), rng.randint(300, 1200)
    if rng.random() < 0.3:
        turns, sides = [first, -(first + last), last], [rng.uniform(SHORTEST, 24)]
    else:
        # As many as are built square are not.
        first, last = rng.choice(((first, last), (900, 900)))
        second = rng.choice((first, rng.randint(300, 1200)))
        turns = [first, -second, second - first - last, last]
        sides = [rng.uniform(SHORTEST, 24), rng.uniform(10, 50)]
    if not all(300 <= abs(turn) <= 1200 for turn in turns) or (len(turns) == 4 and turns[2] > 0):
        return None
    heading, along, out = 0.0, 0.0, 0.0
    for turn, side in zip(turns, sides, strict=False):
        heading += math.radians(turn / 10)
        along, out = along + side * math.cos(heading), out + side * math.sin(heading)
    back = out / math.sin(math.radians(last / 10))
    along += back * math.cos(math.radians(last / 10))
    rest = leg.length - along
    if back < SHORTEST or along < 1 or rest < 2 * SHORTEST:
        return None
    before = rng.uniform(SHORTEST, rest - SHORTEST)
    lengths = [before, *sides, back, rest - before]
    turns = [*(into * turn for turn in turns), leg.turn]
    return [_Leg(length, turn) for length, turn in zip(lengths, turns, strict=True)]


def _corners(legs: list[_Leg]) -> list[Point]:
    at, heading, corners = (0.0, 0.0), 0, []
    for leg in legs:
        corners.append(at)
        angle = math.radians(heading / 10)
        at = (at[0] + leg.length * math.cos(angle), at[1] + leg.length * math.sin(angle))
        heading -= leg.turn
    return corners


def _is_clear(corners: list[Point]) -> bool:
    if not Polygon(corners).is_valid:
        return False
    sides = linestrings(list(zip(corners, corners[1:] + corners[:1], strict=True)))
    apart = [(a, b) for a, b in itertools.combinations(range(len(sides)), 2) if b - a not in (1, len(sides) - 1)]
    return all(distance(sides[[a for a, _ in apart]], sides[[b for _, b in apart]]) >= CLEAR)


def _furnished(rng: Random, legs: list[_Leg], corners: list[Point]) -> Made:
    casing, reveal = rng.choice((2.25, 3.5)), rng.choice((0.0, 0.1875, 0.25))
    made = Made({}, corners, [180 - leg.turn / 10 for leg in legs], [], casing, reveal, 0.6875)
    own = rng.choice(THICKNESSES)
    meets: dict[int, str] = {}
    if rng.random() < 0.25:
        meets = {place: rng.choice(THICKNESSES) for place in range(len(legs)) if rng.random() < 0.3}
    inside = rng.choice(("cope", "miter", "butt"))
    walls = []
    for place, leg in enumerate(legs):
        things, breaks = _things(rng, place, leg, made)
        made.breaks.append(breaks)
        made.thickness.append(_inches(meets.get((place - 1) % len(legs), own)))
        turn = "inside" if leg.turn > 0 else "outside"
        more = {"meets": meets[place]} if place in meets else {}
        gauge = f"{180 - abs(leg.turn) / 10:.1f}"
        walls.append(wall(f"w{place + 1}", f"{leg.length:.6f}", turn, gauge, things, **more))
    made.facts = room(*walls, base__inside=inside, base__thickness=own, casing__width=str(casing), reveal=str(reveal))
    return made


def _inches(fraction: str) -> float:
    above, below = fraction.split("/")
    return int(above) / int(below)


def _things(rng: Random, place: int, leg: _Leg, made: Made) -> tuple[list[Facts], list[tuple[float, float, Facts]]]:
    """At most two things that stop the base along a wall, clear of each other, and at times one that does not."""
    found: list[Facts] = []
    breaks: list[tuple[float, float, Facts]] = []
    free = 0.0
    for kind in rng.sample(("door", "cased", "cabinet"), rng.choice((0, 0, 1, 1, 2))):
        trim = 0.0 if kind == "cabinet" else made.casing + made.reveal
        width = rng.uniform(10, 36)
        start = free + rng.uniform(GAP, 30)
        end = start + width + 2 * trim
        if end + GAP > leg.length:
            continue
        base = "stops" if kind == "cabinet" else ""
        made_thing = thing(kind, f"{start + trim:.6f}", f"{width:.6f}", base, name=f"{kind} {place + 1}")
        found.append(made_thing)
        breaks.append((start, end, made_thing))
        free = end
    if rng.random() < 0.2 and leg.length - free > 8:
        base = rng.choice(("notch", "over"))
        found.append(thing("register", f"{free + 2:.6f}", "4", base, name=f"register {place + 1}"))
    return found, breaks


TEXTS = ("63 1/4", "5' 3 1/4\"", "1607 mm", "63 1/", "0", "-4", "", "forty", "63 1/4 shy", "1", "900", "12 feet 3")
GAUGES = ("90", "89.5", "91.5°", "0", "180", "x", "45", "135", "179.99")
SIDES = ("24, 24, 34 1/4", "24; 24; 33 15/16", "24, 24", "a, b, c", "900, 900, 0.000001", "1, 1, 2")


def odd_room(rng: Random, most_walls: int = 6) -> Facts:
    """A room as people leave it: half read, not closing, with readings that cannot be."""
    walls = [_odd_wall(rng, number) for number in range(1, rng.randint(0, most_walls) + 1)]
    return room(*walls, closed=rng.random() < 0.7, base__inside=rng.choice(("cope", "miter", "butt")))


def _odd_wall(rng: Random, number: int) -> Facts:
    things = []
    for place in range(rng.choice((0, 0, 1, 1, 2))):
        base = rng.choice(("", "", "stops", "notch", "over"))
        kind = "shelf" if base else rng.choice(("door", "window", "cased"))
        things.append(thing(kind, _some(rng, TEXTS), _some(rng, TEXTS), base, name=f"{number}.{place}"))
    sides = [[side.strip() for side in three.split(",")] for three in _some(rng, SIDES)]
    turn = rng.choice(("inside", "outside"))
    return wall(f"w{number}", _some(rng, TEXTS), turn, _some(rng, GAUGES), things, sides=sides[0] if sides else [])


def _some(rng: Random, texts: tuple[str, ...]) -> list[str]:
    return [rng.choice(texts) for _ in range(rng.choice((0, 1, 1, 1, 2, 3)))]


def mirrored(facts: Facts) -> Facts:
    """The room as in a mirror: walls in the other order, what stood from the left end stands from the right."""
    seen = copy.deepcopy(facts)
    seen["walls"].reverse()
    corners = [each["corner"] for each in seen["walls"]]
    for place, each in enumerate(seen["walls"]):
        each["corner"] = corners[(place + 1) % len(corners)]
        for one in (*each["openings"], *each["obstacles"]):
            length, at, width = (parse_length(text).inches for text in (each["length"], one["at"], one["width"]))
            one["at"] = f"{float(length - at - width):.6f}"
    return seen
