"""Leftovers: what stands on the rack when a room is planned, from the other rooms of the house and from spoilt boards.

A board that was bought for a room is done with when everything planned from it is cut; what is left of it, if it can
still be held at the saw, is for any room of the house. It is used once: the plan that takes it names it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from scantling.engine.boards.case import Case
from scantling.engine.cutlist.letters import piece_id
from scantling.engine.cutlist.listed import Scrap
from scantling.engine.cutlist.states import derive_state
from scantling.engine.notebook import Notebook
from scantling.engine.rack.accepted import derive_accepted
from scantling.engine.rack.progress import Made, mark_progress
from scantling.engine.rack.stick import Stick, derive_left
from scantling.engine.survey.facts import find_room


def derive_leftovers(notebook: Notebook, room: str, profile: str, case: Case) -> list[Stick]:
    """What is left of other rooms' boards of a profile, as sticks that cost nothing more."""
    house = find_room(notebook, room).body["house"]
    others = [other for other, _, _ in notebook.children("room", house) if other != room]
    sticks = {other: _marked(notebook, other, profile) for other in (*others, room)}
    used = {stick.source for found in sticks.values() for stick in found if stick.source}
    return [
        left for other in others for stick in sticks[other] if stick.board not in used for left in _left_of(case, stick)
    ]


def _marked(notebook: Notebook, room: str, profile: str) -> list[Stick]:
    """The sticks accepted for a room, with what was cut of them."""
    accepted = derive_accepted(notebook, room).get(profile)
    if accepted is None:
        return []
    keys = {line.key for stick in accepted.sticks for line in stick.lines}
    states = {key: derive_state(notebook, piece_id(room, key)) for key in keys}
    made = {key: Made(state.is_cut, len(state.spoilt)) for key, state in states.items()}
    return mark_progress(accepted.sticks, made)


def _left_of(case: Case, stick: Stick) -> Iterator[Stick]:
    left = derive_left(case, stick)
    if stick.bought and stick.fixed and not stick.open and left >= case.hold:
        yield Stick(left, stick.price_cents, bought=True, source=stick.board)


def derive_scraps(scraps: Sequence[Scrap], accepted: Sequence[Stick], case: Case) -> list[Stick]:
    """Boards of this room that were spoilt or are not wanted any more, long enough to be cut again."""
    used = {stick.source for stick in accepted}
    named = [
        Stick(scrap.length, 0, bought=True, source=f"spoilt {scrap.letter} {number}")
        for number, scrap in enumerate(scraps, 1)
        if scrap.length >= case.hold
    ]
    return [stick for stick in named if stick.source not in used]
