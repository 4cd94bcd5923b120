"""Journal entries as a device would write them, for tests of what they add up to."""

from collections.abc import Sequence
from typing import Any

Entry = dict[str, Any]
ASKED = ("survey", "pieces", "needs", "plan")


class Device:
    """A phone or a laptop that writes entries, one second apart by a clock that may start anywhere."""

    def __init__(self, letter: str = "a", clock: int = 1_000_000) -> None:
        self.name = letter * 16
        self.clock = clock
        self.entries: list[Entry] = []

    def say(self, kind: str, /, supersedes: Sequence[str] = (), **body: Any) -> str:
        """Write an entry; gives back its id."""
        seq = len(self.entries) + 1
        self.clock += 1000
        self.entries.append(
            {
                "id": f"{self.clock:08x}-{seq:04x}-7000-8000-{self.name[:12]}",
                "device": self.name,
                "seq": seq,
                "stamp": f"{self.clock:012x}-0000-{self.name}",
                "version": 1,
                "kind": kind,
                "body": body,
                "supersedes": list(supersedes),
            }
        )
        return self.entries[-1]["id"]

    def new(self, kind: str, /, **body: Any) -> str:
        """A new house, room, wall or thing; gives back the id that it goes by."""
        subject = f"{len(self.entries):08x}-0000-4000-8000-{self.name[:12]}"
        self.say(kind, **{kind: subject}, **body)
        return subject

    def read(self, of: str, what: str, *texts: str) -> list[str]:
        return [self.say("reading", of=of, what=what, text=text) for text in texts]


class House(Device):
    """A device with a house and a room in it, closed or not, ready for walls."""

    def __init__(self, closed: bool = True, letter: str = "a") -> None:
        super().__init__(letter)
        self.house = self.new("house", name="the house", built=None)
        self.room = self.new("room", house=self.house, name="the room", closed=closed)
        self.walls: list[str] = []

    def wall(self, *lengths: str, turn: str = "inside", corner: str | None = "90", after: str | None = "") -> str:
        """A wall at the end of the row, or after another."""
        named = (self.walls[-1] if self.walls else None) if after == "" else after
        self.walls.append(self.new("wall", room=self.room, after=named, turn=turn))
        self.read(self.walls[-1], "length", *lengths)
        if corner is not None:
            self.read(self.walls[-1], "corner", corner)
        return self.walls[-1]


def four_walls(**how: Any) -> House:
    """120, 96, 120, 96, all corners square."""
    house = House(**how)
    for length in ("120", "96", "120", "96"):
        house.wall(length)
    return house
