"""A surveyed room: walls from left to right as one stands inside facing them, with what was read of each.

Every reading is kept as typed. One that cannot be understood, or a survey that cannot be, is a problem on the wall it
concerns; the other walls stand.
"""

from collections.abc import Callable, Hashable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import Any, Literal, TypeVar

from scantling.engine.errors import EngineError
from scantling.engine.standard import Standard
from scantling.engine.survey.bow import Bow
from scantling.engine.survey.kinds import is_laid, is_plate
from scantling.engine.tape.angles import (
    SQUARE,
    STRAIGHT,
    Corner,
)
from scantling.engine.tape.lengths import ZERO, Length, format_length
from scantling.engine.words import say

T = TypeVar("T")

TURNS = ("inside", "outside")
OPENINGS = ("door", "window", "cased")
SIDES = ("left", "right")
# Where depths of jamb to wall are read, each at several points: sides from the top down, head and sill from the left.
Place = Literal["left", "right", "head", "sill"]
PLACES: tuple[Place, ...] = ("left", "right", "head", "sill")
# No room has so many. Every answer about one is bounded by these, whether it was asked in full or came by sync.
WALLS_AT_MOST = 200
THINGS_AT_MOST = 200
# Rails along which a wall may be read again, for it is not as long there as at the floor.
RAILS = ("chair_rail", "picture_rail")
BASE_AT = ("stops", "notch", "over")


class SurveyError(EngineError):
    family = "survey"


@dataclass(frozen=True, slots=True)
class Measure:
    """Every reading of one figure, as typed and as understood, in the order they were taken."""

    name: str
    texts: tuple[str, ...]
    lengths: tuple[Length, ...]

    @property
    def smallest(self) -> Length:
        """For what goes between. Common practice, no source."""
        return min(self.lengths)

    @property
    def largest(self) -> Length:
        """For what must cover, or be kept clear of. Common practice, no source."""
        return max(self.lengths)

    @property
    def spread(self) -> Length:
        return self.largest - self.smallest


@dataclass(frozen=True, slots=True)
class Problem:
    """What is wrong, on which wall, and a sentence that ends in what to do."""

    wall: str
    key: str
    message: str


@dataclass(frozen=True, slots=True)
class Opening:
    """`left` and `right` are its heights up either side; the two corners are those of its head, seen from inside it.

    `sill`: from the floor to a window's stool or sill; `sash`: from its closed sash to the plane of the wall; `depths`:
    from the jamb's edge to that, by place; `depth`: of one without casing, how far its reveal goes in.
    `standard`: the room's, with what this opening differs in; None where that cannot be, and nothing is cut to it.
    `banded`: whether a backband goes round it, None until that is settled for the whole room.
    """

    id: str
    kind: str
    name: str
    at: Measure | None
    width: Measure | None
    left: Measure | None
    right: Measure | None
    left_corner: Corner | None
    right_corner: Corner | None
    sash: Measure | None
    depths: Mapping[str, Measure]
    standard: Standard | None
    sill: Measure | None = None
    depth: Measure | None = None
    banded: bool | None = None


@dataclass(frozen=True, slots=True)
class Obstacle:
    """`height` is from the floor to its top, `depth` from the wall to its face. `clearance` is kept between it and what
    ends there, unless that is `scribed` to it. `toe`: how high its toe kick is, and how far back that goes. `rake`: of
    a stair's skirt, in degrees, and to which side it `rises`. `foot`: how high its lower edge is, of what hangs there.
    `hides`: whether the wall behind it is neither papered nor painted.
    """

    id: str
    kind: str
    name: str
    base: str
    at: Measure | None
    width: Measure | None
    height: Measure | None = None
    depth: Measure | None = None
    clearance: Length = ZERO
    scribed: bool = False
    toe: tuple[Length, Length] | None = None
    rake: Fraction | None = None
    rises: str = "right"
    foot: Measure | None = None
    hides: bool = False

    @property
    def hangs(self) -> bool:
        """Whether the base runs past it because it hangs above, or is tile that begins there: nothing comes to it."""
        above = self.base == "over" or is_laid(self.kind)
        return above and self.foot is not None and self.foot.smallest > ZERO

    @property
    def stands(self) -> bool:
        """Whether it stands on the floor: plates of outlets and switches are on the wall, and tile is part of it."""
        return not (is_plate(self.kind) or is_laid(self.kind))


@dataclass(frozen=True, slots=True)
class Wall:
    """`corner` is the one at the wall's right end, None where it has not been read; `turn` is known all the same.

    `studs` are from its left corner; `leans` is how far out of the room it goes for each inch up;
    `ceiling_corner` the same corner, read up there; `falls` how far the floor goes down for each inch to the right;
    `bows` where it is off a straight line, a place for each reading;
    `at_rails` its length read again as high as a rail runs, by the rail's name.
    """

    id: str
    number: int
    turn: str
    length: Measure | None
    corner: Corner | None
    corner_texts: tuple[str, ...]
    meets: Length | None
    openings: tuple[Opening, ...]
    obstacles: tuple[Obstacle, ...]
    height: Measure | None = None
    ceiling: Measure | None = None
    settings: Mapping[str, Any] = field(default_factory=dict)
    studs: Measure | None = None
    leans: Fraction = Fraction(0)
    plumb_texts: tuple[str, ...] = ()
    ceiling_corner: Corner | None = None
    falls: Fraction = Fraction(0)
    bows: tuple[Bow, ...] = ()
    bow_texts: tuple[str, ...] = ()
    at_rails: Mapping[str, Measure] = field(default_factory=dict)

    @property
    def name(self) -> str:
        return say("wall", number=self.number)

    @property
    def corner_or_square(self) -> Corner:
        """The corner at its right end; square until it has been read, which pieces are flagged with."""
        return self.corner or Corner(self.turn, SQUARE if self.turn == "inside" else 3 * SQUARE, Fraction(1))


@dataclass(frozen=True, slots=True)
class Free:
    """A piece that no rule gives: any run of stock, its length a sum as typed that may name figures of the room."""

    id: str
    name: str
    profile: str
    text: str
    count: int


@dataclass(frozen=True, slots=True)
class Joined:
    """On which studs, from the wall's left end, the boards of a run are joined, and why there."""

    studs: tuple[Length, ...]
    why: str


@dataclass(frozen=True, slots=True)
class Room:
    """`closed`: the last wall's right end is the first wall's left end.

    `comes_round`: its walls turn once right round. A closed room whose walls do not is still being walked, and nobody
    knows yet what its last wall meets. `joined`: by the key of a whole piece, where its boards are joined, as far as
    that was chosen with all boards in view.
    """

    name: str
    closed: bool
    standard: Standard
    walls: tuple[Wall, ...]
    problems: tuple[Problem, ...]
    free: tuple[Free, ...] = ()
    comes_round: bool = True
    joined: Mapping[str, Joined] = field(default_factory=dict)
    #: No field of the room: what rules made of it, which more than one of them asks for. It goes when the room goes.
    _derived: dict[Hashable, Any] = field(default_factory=dict, init=False, repr=False, compare=False)

    def derived(self, what: Hashable, derive: Callable[[], T]) -> T:
        """What follows from the room alone, derived once; whoever is given it must not change it."""
        if what not in self._derived:
            self._derived[what] = derive()
        found: T = self._derived[what]
        return found

    def join(self, key: str, joined: Joined) -> "Room":
        """The room with the boards of one piece joined so; what was derived of it stands."""
        room = replace(self, joined={**self.joined, key: joined})
        room._derived.update(self._derived)
        return room

    def after(self, wall: Wall) -> Wall | None:
        """The wall to the right, round the corner."""
        if wall.number < len(self.walls):
            return self.walls[wall.number]
        return self.walls[0] if self.comes_round and len(self.walls) > 1 else None

    def before(self, wall: Wall) -> Wall | None:
        """The wall to the left, round the corner: the one whose `corner` and `meets` tell of this wall's left end."""
        if wall.number > 1:
            return self.walls[wall.number - 2]
        return self.walls[-1] if self.comes_round and len(self.walls) > 1 else None


def derive_turned(walls: Sequence[Wall]) -> Fraction | None:
    """How far the walls turn to the right in all, where that cannot be once round; an unread corner counts as square.

    Half of a square corner is let pass, for a corner read wrong is told of by closure; and as much for each unread.
    """
    square = {"inside": SQUARE, "outside": 3 * SQUARE}
    corners = [wall.corner.degrees if wall.corner else square[wall.turn] for wall in walls]
    turned = sum((STRAIGHT - corner for corner in corners), start=Fraction(0))
    unread = sum(wall.corner is None for wall in walls)
    return turned if abs(turned - 2 * STRAIGHT) >= (1 + unread) * SQUARE / 2 else None


@dataclass(frozen=True, slots=True)
class _Span:
    name: str
    start: Length
    end: Length
    is_thing: bool


def check_along(wall: Wall) -> list[Problem]:
    """What cannot be along one wall: something past its end, or two things in one place."""
    problems = []
    things: list[Opening | Obstacle] = [*wall.openings, *wall.obstacles]
    if not things:
        return []
    for thing in things:
        if wall.length and thing.width and not thing.at and thing.width.smallest > wall.length.largest:
            by = format_length(thing.width.smallest - wall.length.largest)
            problems.append(SurveyError("wider-than-wall", what=say("this-thing", thing=thing.name), by=by))
    for span in _spans(things):
        if wall.length and span.end > wall.length.largest:
            past = format_length(span.end - wall.length.largest)
            problems.append(SurveyError("past-the-end", what=span.name.capitalize(), by=past))
    for left, right in _in_one_place(wall):
        by = format_length(min(left.end, right.end) - right.start)
        key = "overlap-things" if left.is_thing and right.is_thing else "overlap"
        problems.append(SurveyError(key, what=left.name.capitalize(), other=right.name, by=by))
    return [Problem(wall.id, error.key, error.message) for error in problems]


def _in_one_place(wall: Wall) -> list[tuple[_Span, _Span]]:
    """What lies over each other: under a window anything may stand, and what the base runs past hangs over it.

    Such a thing, or one that lies in the floor, is in the way of a door alone.
    """
    doors: list[Opening | Obstacle] = [opening for opening in wall.openings if opening.kind != "window"]
    standing = [thing for thing in wall.obstacles if thing.stands]
    on_floor = [*doors, *(thing for thing in standing if thing.base != "over")]
    hung = ([*doors, thing] for thing in standing if thing.base == "over")
    pairs = (pair for things in (wall.openings, on_floor, *hung) for pair in _overlaps(_spans(things)))
    return list(dict.fromkeys(pairs))


def _spans(things: Sequence[Opening | Obstacle]) -> list[_Span]:
    found = (
        _Span(say("the-thing", thing=thing.name), thing.at.largest, thing.at.largest + thing.width.largest,
              isinstance(thing, Obstacle))
        for thing in things
        if thing.at and thing.width
    )  # fmt: skip
    return sorted(found, key=lambda span: (span.start, span.end, span.name))


def _overlaps(spans: list[_Span]) -> Iterator[tuple[_Span, _Span]]:
    """Each span that begins before the one that has reached farthest so far ends, behind that one."""
    farthest: _Span | None = None
    for span in spans:
        if farthest and farthest.end > span.start:
            yield farthest, span
        if farthest is None or span.end > farthest.end:
            farthest = span
