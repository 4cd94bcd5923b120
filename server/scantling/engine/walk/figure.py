"""A figure of the survey: something to read in a room, where to hold the tape, and what wants it."""

from dataclasses import dataclass

from scantling.engine.words import say


@dataclass(frozen=True, slots=True)
class Figure:
    """One figure of the survey that pieces use: what it is, where to hold the tape, why, and what was read of it.

    `short` is what it is called under the name of its wall.
    """

    of: str
    what: str
    wall: str
    number: int
    short: str
    hint: str
    why: str
    used: bool
    read: bool
    #: What is taken in its place until it is read; nothing, where a piece has to wait for it.
    assumed: str = ""
    #: It names the corner that it is read at, and needs no wall before that.
    at_corner: bool = False

    @property
    def title(self) -> str:
        if self.at_corner:
            return self.short
        return say("walk-figure", wall=say("wall", number=self.number), title=self.short)

    @property
    def wanted(self) -> bool:
        return self.used and not self.read and not self.assumed
