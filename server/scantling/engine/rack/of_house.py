"""Of the house: boards that were planned for several rooms at once, and what of them is one room's.

Such a plan is accepted for the house; its lines name pieces by whole keys, the room's id before the key. A piece that
lies on one of its boards is on no board of its room's own plan.
"""

from __future__ import annotations

from collections.abc import Iterator

from scantling.engine.cutlist.letters import room_of_key
from scantling.engine.notebook import Notebook
from scantling.engine.rack.accepted import derive_accepted
from scantling.engine.rack.stick import Stick
from scantling.engine.survey.facts import find_room
from scantling.engine.tape.lengths import ZERO, Length


def is_house(notebook: Notebook, of: str) -> bool:
    """Whether an id is a house's."""
    return bool(notebook.about("the house", of))


def house_of(notebook: Notebook, of: str) -> str:
    """The house of a room, or the house itself. Raises `FactsError`."""
    return of if is_house(notebook, of) else str(find_room(notebook, of).body["house"])


def find_held(notebook: Notebook, house: str) -> dict[str, set[str]]:
    """By profile, the whole keys of the pieces that lie on boards planned for the house."""
    accepted = derive_accepted(notebook, house)
    return {
        profile: {line.key for stick in plan.sticks for line in stick.lines} for profile, plan in accepted.items()
    }


def home_of(stick: Stick) -> str:
    """The room that a board of the house counts as bought for: the one that takes most of it."""
    takes: dict[str, Length] = {}
    for line in stick.lines:
        room = room_of_key(line.key)
        takes[room] = takes.get(room, ZERO) + line.takes
    return max(takes, key=lambda room: (takes[room], room), default="")


def derive_home_sticks(notebook: Notebook, room: str) -> Iterator[tuple[str, Stick]]:
    """The boards planned for the house that count as bought for a room, each with its profile."""
    for profile, plan in derive_accepted(notebook, house_of(notebook, room)).items():
        for stick in plan.sticks:
            if home_of(stick) == room:
                yield profile, stick
