"""A question about one room, by its name or from a file, or about every room of the notebook; its answers, printed."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from scantling.cli.command import REFUSED, CommandError, Refused, answer_of, notebook, read_json
from scantling.cli.output import complain, say, write_json
from scantling.engine.desk import Desk, dump
from scantling.engine.errors import quote
from scantling.laptop import Laptop

Form = Callable[[str, Mapping[str, Any]], str]


@dataclass(frozen=True, slots=True)
class Answers:
    """The answers by room, and what was refused: one room that cannot be must not keep the others back."""

    given: list[tuple[str, dict[str, Any]]]
    refused: list[tuple[str, Refused]]

    def complain(self) -> int:
        """Name what was refused, and where: the exit status."""
        for name, refusal in self.refused:
            complain(f"{name}: {refusal}")
        return REFUSED if self.refused else 0


def for_rooms(data: Path, room: str | None, ask: str, **more: str) -> Answers:
    """The answers to a question about one room, from a file or by name, or about every room of the notebook.

    `more` is what else the question says.
    """
    if room and Path(room).is_file():
        said = read_json(room)
        name = said.get("name", room) if isinstance(said, dict) else room
        return _ask_each(Desk(), {"ask": ask, **more}, [(said, str(name))])
    with notebook(data) as laptop:
        return _ask_each(laptop, {"ask": ask, **more}, _rooms(laptop, room))


def _ask_each(desk: Desk | Laptop, asked: dict[str, str], rooms: Sequence[tuple[Any, str]]) -> Answers:
    answers = Answers([], [])
    for room, name in rooms:
        try:
            answers.given.append((name, answer_of(desk, {**asked, "room": room})))
        except Refused as refusal:
            answers.refused.append((name, refusal))
    return answers


def _rooms(laptop: Laptop, wanted: str | None) -> list[tuple[str, str]]:
    houses = answer_of(laptop, {"ask": "notebook"})["houses"]
    rooms = [(room["id"], room["name"]) for house in houses for room in house["rooms"]]
    if wanted is None:
        return rooms
    found = [room for room in rooms if wanted.casefold() in (room[0], room[1].casefold())]
    if not found:
        raise CommandError("no-such-room", name=quote(wanted), names=", ".join(name for _, name in rooms) or "none yet")
    if len(found) > 1:
        raise CommandError("two-rooms", count=len(found), name=quote(wanted), ids=", ".join(key for key, _ in found))
    return found


def print_answers(as_json: bool, answers: Answers, form: Form) -> int:
    """Print them, and complain of what was refused: the exit status."""
    if as_json:
        refused = [{"room": name, "error": refusal.error} for name, refusal in answers.refused]
        write_json(dump([*({"room": name, **answer} for name, answer in answers.given), *refused]))
    elif answers.given or not answers.refused:
        say("\n\n".join(form(name, answer) for name, answer in answers.given) or "No rooms yet.")
    return answers.complain()
