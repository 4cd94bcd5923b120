"""Leftovers: what stands on the rack when a room is planned, from the other rooms of the house and from spoilt boards.

A board that was bought for a room is done with when everything planned from it is cut; what is left of it, if it can
still be held at the saw, is for any room of the house. It is used once: the plan that takes it names it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from scantling.engine.boards.case.case import Case
from scantling.engine.cutlist.letters import id_of, piece_id
from scantling.engine.cutlist.listed import Scrap
from scantling.engine.cutlist.states import derive_state
from scantling.engine.notebook import Notebook
from scantling.engine.rack.accepted import derive_accepted
from scantling.engine.rack.of_house import house_of, is_house
from scantling.engine.rack.progress import Progress, mark_progress
from scantling.engine.rack.stick import SCRAP, Stick, derive_left


def derive_leftovers(notebook: Notebook, of: str, profile: str, case: Case) -> list[Stick]:
    """What is left of boards of a profile that were not planned for this room, as sticks that cost nothing more.

    `of` may be a house: then of the boards that were planned for one of its rooms alone.
    """
    house = house_of(notebook, of)
    owners = [*(room for room, _, _ in notebook.children("room", house)), house]
    others = [owner for owner in owners if owner != of]
    sticks = {owner: derive_marked(notebook, owner, profile) for owner in owners}
    used = {stick.source for found in sticks.values() for stick in found if stick.source}
    return [
        left for other in others for stick in sticks[other] if stick.board not in used for left in _left_of(case, stick)
    ]


def derive_house_leftovers(notebook: Notebook, house: str, cases: Mapping[str, Case]) -> list[tuple[str, str, Stick]]:
    """Every leftover of a house's boards that no plan has taken: the room it was bought for, its profile, the stick.

    A board that was planned for several rooms at once is of the house.

    `cases` are the saw and the least to hold of each room, with no pieces in them.
    """
    sticks = [
        (room, profile, stick)
        for room in (*(room for room, _, _ in notebook.children("room", house)), house)
        for profile in derive_accepted(notebook, room)
        for stick in derive_marked(notebook, room, profile)
    ]
    used = {stick.source for _, _, stick in sticks if stick.source}
    return [
        (room, profile, left)
        for room, profile, stick in sticks
        if stick.board not in used
        for left in _left_of(cases[room], stick)
    ]


def derive_marked(notebook: Notebook, of: str, profile: str) -> list[Stick]:
    """The sticks accepted for a room, or for a house at once, with what was cut of them."""
    accepted = derive_accepted(notebook, of).get(profile)
    if accepted is None:
        return []
    keys = {line.key for stick in accepted.sticks for line in stick.lines}
    whole = is_house(notebook, of)
    states = {key: derive_state(notebook, id_of(key) if whole else piece_id(of, key)) for key in keys}
    made = {key: Progress(state.is_cut, len(state.spoilt)) for key, state in states.items()}
    return mark_progress(accepted.sticks, made)


def _left_of(case: Case, stick: Stick) -> Iterator[Stick]:
    left = derive_left(case, stick)
    if stick.bought and stick.fixed and not stick.open and left >= case.hold:
        yield Stick(left, stick.price_cents, bought=True, source=stick.board)


def derive_scraps(scraps: Sequence[Scrap], accepted: Sequence[Stick], case: Case) -> list[Stick]:
    """Boards of this room that were spoilt or are not wanted any more, long enough to be cut again."""
    used = {stick.source for stick in accepted}
    named = [
        Stick(scrap.length, 0, bought=True, source=f"{SCRAP}{scrap.letter} {number}")
        for number, scrap in enumerate(scraps, 1)
        if scrap.length >= case.hold
    ]
    return [stick for stick in named if stick.source not in used]
