"""Accepted: the boards of a room's profile that a person settled on, as the journal remembers them.

The last plan accepted is shown from then on at both ends; two that were accepted apart are both in force until one
supersedes the other, and the later is shown. Boards have names of their own, so that what is left of one can be used
in another room, once.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from scantling.engine.cutlist.states import TO_CUT
from scantling.engine.journal import Entry
from scantling.engine.notebook import Notebook
from scantling.engine.rack.stick import SPOILT, Stick, StickLine
from scantling.engine.tape.figures import format_figure, parse_figure
from scantling.engine.tape.lengths import ZERO, Length

DIGITS = "0123456789"


@dataclass(frozen=True, slots=True)
class Accepted:
    """The sticks of the plan in force, and the entries that a new one supersedes."""

    sticks: tuple[Stick, ...]
    entries: tuple[str, ...]


def derive_accepted(notebook: Notebook, room: str) -> dict[str, Accepted]:
    """By profile, what was accepted for a room."""
    by_profile: dict[str, list[Entry]] = {}
    for entry in notebook.about("plan", room):
        by_profile.setdefault(entry.body["profile"], []).append(entry)
    headed = {profile: notebook.heads(entries) for profile, entries in by_profile.items()}
    return {
        profile: Accepted(tuple(_sticks(heads[-1])), tuple(entry.id for entry in heads))
        for profile, heads in headed.items()
        if heads
    }


def _sticks(entry: Entry) -> Iterator[Stick]:
    for row in entry.body["boards"]:
        lines = tuple(
            StickLine(line["key"], line["letter"], _figure(line["takes"]), SPOILT if line["spoilt"] else TO_CUT)
            for line in row["pieces"]
        )
        yield Stick(_figure(row["length"]), int(row["cents"]), lines, row["board"], row["bought"], row["source"])


def _figure(text: str) -> Length:
    return parse_figure(text) or ZERO


def format_body(room: str, profile: str, sticks: Iterable[Stick]) -> Mapping[str, Any]:
    """The body of the entry that accepts these sticks. Whoever writes it names the boards that have no name yet.

    Letters go without the number of their room: rooms may be listed in another order by then.
    """
    return {
        "of": room,
        "profile": profile,
        "boards": [
            {
                "board": stick.board,
                "source": stick.source,
                "length": format_figure(stick.length),
                "cents": str(stick.price_cents),
                "bought": stick.bought,
                "pieces": [
                    {
                        "key": line.key,
                        "letter": line.letter.lstrip(DIGITS),
                        "takes": format_figure(line.takes),
                        "spoilt": line.state == SPOILT,
                    }
                    for line in stick.lines
                ],
            }
            for stick in sticks
        ],
    }
