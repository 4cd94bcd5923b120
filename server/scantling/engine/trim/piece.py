"""A piece of trim: what it is, how long along each of its two edges, what each end is, and why.

Base, crown and rails stand against a wall, and their edges are back and face. Casing lies flat round an opening; its
edges are the one at the opening and the outer one. Both are cut with the edge named first on the far side: see `Piece`.
"""

from dataclasses import dataclass
from enum import StrEnum

from scantling.engine.tape.lengths import Length, add_up
from scantling.engine.trim.doubt import Doubt
from scantling.engine.trim.ends import End, say_edge
from scantling.engine.words import say


class Kind(StrEnum):
    """What a piece is, whatever it is called; of what runs along walls, its name among the settings."""

    BASE = "base"
    CAP = "cap"
    SHOE = "shoe"
    CHAIR_RAIL = "chair_rail"
    PICTURE_RAIL = "picture_rail"
    CROWN = "crown"
    BLOCKING = "blocking"
    LEG = "leg"
    HEAD = "head"
    SILL = "sill"
    PLINTH = "plinth"
    BLOCK = "block"
    BUILT_UP = "built_up"
    BACKBAND = "backband"
    STOOL = "stool"
    APRON = "apron"
    EXTENSION = "extension"
    BATTEN = "batten"
    FREE = "free"


@dataclass(frozen=True, slots=True)
class Step:
    """One line of working: what was taken, added or found, in words, with its figure; `readings` as they were typed.

    `of_end` where it tells how an end is cut, which is so whatever the length comes to.
    """

    text: str
    value: Length | None = None
    readings: tuple[str, ...] = ()
    of_end: bool = False


@dataclass(frozen=True, slots=True)
class Flag:
    """Something to know before cutting a piece; `attention` where it should not be cut as it stands."""

    key: str
    message: str
    attention: bool = True


@dataclass(frozen=True, slots=True)
class Piece:
    """`back` lies against the wall, `front` is the face; `cut` is the blank, long point to long point.

    Of a flat piece `back` is the edge at the opening and `front` the outer one. `left` and `right` are as it lies at
    the saw: its back, or its outer edge, to the fence and its face to the person. `key` says which piece it is,
    whatever its letter and its length; `opening` is the id of the door or window it belongs to; `start`, of what hangs
    along a wall, how far along it the back begins; `blank`, of what is too short to hold, what to cut it from;
    `measured` where its length was read in its place; `salvaged`, of one that is there already, how it is trimmed;
    `ripped` is how wide it is made, of what no setting says the width; `too_long` is the key of the sentence that no
    board is so long. `part` and `place` are what it is called, `kind` and `side` what it is; `returns` is the key of
    the piece whose end it turns back to the wall.
    """

    key: str
    kind: Kind
    part: str
    place: str
    profile: str
    wall: str
    wall_number: int
    back: Length
    left: End
    right: End
    doubt: Doubt
    working: tuple[Step, ...]
    flags: tuple[Flag, ...]
    opening: str | None = None
    start: Length | None = None
    blank: Length | None = None
    letter: str = ""
    measured: bool = False
    too_long: str = "longer-than-stock"
    side: str = ""
    returns: str = ""
    salvaged: str = ""
    ripped: Length | None = None

    @property
    def front(self) -> Length:
        return add_up((self.back, self.left.grows, self.right.grows))

    @property
    def cut(self) -> Length:
        longer = (end.grows for end in (self.left, self.right) if end.grows.inches.numerator > 0)
        return add_up((self.back, *longer))

    @property
    def cut_from(self) -> str:
        """Which edge the cut length is read along."""
        edges = {end.long_edge for end in (self.left, self.right) if end.leans}
        if len(edges) == 2:
            return say("cut-from-long-points")
        return say("cut-from-edge", edge=say_edge(edges.pop())) if edges else say("cut-from-either")

    @property
    def name(self) -> str:
        wall = say("wall", number=self.wall_number) if self.wall_number else ""
        return ", ".join(word for word in (self.part, wall, self.place) if word)


def letter(index: int) -> str:
    """The letter of the piece at a place in the list: A … Z, AA, AB …

    >>> letter(0), letter(25), letter(26)
    ('A', 'Z', 'AA')
    """
    letters = ""
    index += 1
    while index:
        index, place = divmod(index - 1, 26)
        letters = chr(ord("A") + place) + letters
    return letters
