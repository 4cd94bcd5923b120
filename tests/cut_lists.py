"""Lists issued and pieces marked, as a page does it: it asks the desk what to write, and writes that."""

import copy
import itertools
from typing import Any

from scantling.engine.desk import Desk

from tests.entries import Device, House

Answer = dict[str, Any]


def ask(entries: list[Answer], question: Answer) -> Answer:
    answered = Desk(entries).answer(question)
    assert "answer" in answered, answered
    return answered["answer"]


def issue(device: Device, room: str, known: list[Answer] | None = None) -> list[str]:
    """The device issues the room's list by what it knows; gives back the ids of the entries."""
    made = f"{len(device.entries):08x}-1111-4000-8000-{device.name[:12]}"
    bodies = ask(known or device.entries, {"ask": "issue", "room": room, "list": made})["bodies"]
    return [device.say("issue", **body) for body in bodies]


def listed(entries: list[Answer], room: str) -> dict[str, Answer]:
    """The pieces of a room by letter."""
    return {piece["letter"]: piece for piece in ask(entries, {"ask": "pieces", "room": room})["pieces"]}


def mark(
    device: Device, room: str, letter: str, state: str, as_cut: str | None = None, known: list[Answer] | None = None
) -> str:
    """The device marks a piece by what it knows; gives back the id of the entry."""
    entries = known or device.entries
    piece = listed(entries, room)[letter]["id"]
    said = ask(entries, {"ask": "mark", "room": room, "piece": piece, "state": state, "as_cut": as_cut})
    return device.say("state", said["supersedes"], **said["body"])


def plan_of(house: House, room: str | None = None) -> Answer:
    """The one board plan of a room, as it is shown."""
    (plan,) = ask(house.entries, {"ask": "boards_for_room", "room": room or house.room})["plans"]
    return plan


def accept(house: House, room: str | None = None, bought: bool = False) -> None:
    """As the page does it: a board that has no name yet is given one."""
    said = copy.deepcopy(plan_of(house, room)["accept"])
    names = itertools.count(1)
    for board in said["body"]["boards"]:
        board["board"] = board["board"] or f"{len(house.entries):08x}-0000-4000-8000-{next(names):012x}"
        board["bought"] = board["bought"] or bought
    house.say("plan", said["supersedes"], **said["body"])
