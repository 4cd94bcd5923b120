"""The room's outline on paper: walls laid end to end by their lengths and corners, and by how much they fail to close.

A wall not yet read is drawn as long as a middling one, and marked so; nothing is derived from where it then lies.
"""

import math
from dataclasses import dataclass

from scantling.engine.survey.room import Room, Wall

UNREAD = 96.0


@dataclass(frozen=True, slots=True)
class DrawnWall:
    """A wall as drawn: start and end (x, y) in inches, y down, walking clockwise; `known` where its length was read."""

    wall: Wall
    start: tuple[float, float]
    end: tuple[float, float]
    heading: float
    known: bool

    def point(self, along: float, inward: float = 0.0) -> tuple[float, float]:
        """A point so far along the wall from its left end, and so far into the room."""
        turn = math.radians(self.heading)
        x = self.start[0] + along * math.cos(turn) - inward * math.sin(turn)
        return (x, self.start[1] + along * math.sin(turn) + inward * math.cos(turn))

    @property
    def length(self) -> float:
        return math.dist(self.start, self.end)


def derive_outline(room: Room) -> list[DrawnWall]:
    """The walls in order, each starting where the one before ended."""
    known = sorted(float(wall.length.smallest.inches) for wall in room.walls if wall.length)
    middling = known[len(known) // 2] if known else UNREAD
    sides: list[DrawnWall] = []
    at, heading = (0.0, 0.0), 0.0
    for wall in room.walls:
        length = float(wall.length.smallest.inches) if wall.length else middling
        turn = math.radians(heading)
        end = (at[0] + length * math.cos(turn), at[1] + length * math.sin(turn))
        sides.append(DrawnWall(wall, at, end, heading, wall.length is not None))
        square = 90.0 if wall.turn == "inside" else 270.0
        heading += 180.0 - (float(wall.corner.degrees) if wall.corner else square)
        at = end
    return sides
