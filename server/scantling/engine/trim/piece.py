"""A piece of trim: what it is, how long at the back and at the front, what each end is, and why."""

from dataclasses import dataclass

from scantling.engine.lengths import ZERO, Length
from scantling.engine.trim.ends import End


@dataclass(frozen=True, slots=True)
class Step:
    """One line of working: what was taken, added or found, in words, with its figure; `readings` as they were typed."""

    text: str
    value: Length | None = None
    readings: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Flag:
    """Something to know before cutting a piece; `attention` where it should not be cut as it stands."""

    key: str
    message: str
    attention: bool = True


@dataclass(frozen=True, slots=True)
class Piece:
    """`back` lies against the wall, `front` is the face; `cut` is the blank, long point to long point."""

    letter: str
    part: str
    place: str
    profile: str
    wall: str
    wall_number: int
    back: Length
    left: End
    right: End
    plus_minus: Length
    working: tuple[Step, ...]
    flags: tuple[Flag, ...]

    @property
    def front(self) -> Length:
        return self.back + self.left.grows + self.right.grows

    @property
    def cut(self) -> Length:
        return self.back + max(ZERO, self.left.grows) + max(ZERO, self.right.grows)

    @property
    def cut_from(self) -> str:
        """Which edge the cut length is read along."""
        edges = {self.left.long_edge, self.right.long_edge} - {"none"}
        if len(edges) == 2:
            return "long point to long point, across the two edges"
        return {"front": "along the face", "back": "along the back"}.get("".join(edges), "square, either edge")

    @property
    def name(self) -> str:
        place = f", {self.place}" if self.place else ""
        return f"{self.part}, wall {self.wall_number}{place}"


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
