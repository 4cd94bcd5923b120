"""Leftovers: what stands on the rack when a room, or several, are planned, from other rooms and from spoilt boards.

What is left of a board that was bought for a room, if it can still be held at the saw, is for any room of the house. It
is used once: the plan that takes it names it, and from then on its own room plans from the rest alone. Before all is
cut that was settled on of it, only so much is lent as is certain: what the plan leaves, by the longest that its pieces
were or are now, less the slack that they may use up.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from scantling.engine.boards.case.case import Case
from scantling.engine.cutlist.letters import id_of, piece_id
from scantling.engine.cutlist.listed import Scrap
from scantling.engine.cutlist.states import derive_state
from scantling.engine.notebook import Notebook
from scantling.engine.rack.accepted import derive_accepted
from scantling.engine.rack.of_house import house_of, is_house
from scantling.engine.rack.progress import Progress, mark_progress
from scantling.engine.rack.stick import SCRAP, Stick, derive_left
from scantling.engine.tape.lengths import ZERO, Length

#: How much each piece of a room, or of a house, that is to be cut takes of a board now, by its key.
Takes = Callable[[str], Mapping[str, Length]]


def derive_leftovers(
    notebook: Notebook, of: str, profile: str, case: Case, planned: WantedElsewhere, idle_of: Collection[str] = ()
) -> list[Stick]:
    """What is left of boards of a profile that were not planned for this room, as sticks that cost nothing more.

    `of` may be a house: then of the boards that were planned for one of its rooms alone; and of the rooms `idle_of`,
    those that are planned now, the boards that were bought and nothing is to be cut from.
    """
    house = house_of(notebook, of)
    owners = [*(room for room, _, _ in notebook.children("room", house)), house]
    others = [owner for owner in owners if owner != of]
    sticks = {owner: derive_marked(notebook, owner, profile) for owner in owners}
    used = {stick.source for found in sticks.values() for stick in found if stick.source}
    standing = [(other, stick) for other in others for stick in sticks[other] if stick.board not in used]
    idle = [replace(stick, board=None, source=stick.board, why="")
            for other, stick in standing if other in idle_of and stick.bought and not stick.lines]  # fmt: skip
    left = [left for _, stick in standing for left in _left_of(case, stick)]
    lent = [left for owner, stick in standing for left in planned.left_of(case, owner, stick)]
    return [*left, *lent, *idle]


def derive_house_leftovers(notebook: Notebook, house: str, cases: Mapping[str, Case]) -> list[tuple[str, str, Stick]]:
    """Every leftover of a house's boards that no plan has taken: the room it was bought for, its profile, the stick.

    A board that was planned for several rooms at once is of the house.

    `cases` are the saw and the least to hold of each room, with no pieces in them; a room that has none is left out.
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
        if stick.board not in used and room in cases
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


@dataclass(frozen=True, slots=True)
class WantedElsewhere:
    """What other rooms want of boards that are not cut up yet: `takes` by owner, and the slack of each board."""

    takes: Takes
    slack: Length

    def left_of(self, case: Case, owner: str, stick: Stick) -> Iterator[Stick]:
        """What its plan leaves of a bought board, for certain."""
        if not (stick.bought and stick.open):
            return
        now = self.takes(owner)
        left = derive_left(case, stick) - self.slack
        for line in stick.open:
            left = left - max(line.takes, now.get(line.key, ZERO)) - case.kerf
        if left >= case.hold:
            yield Stick(left, stick.price_cents, bought=True, source=stick.board)


def find_uncut(notebook: Notebook, of: str, profile: str) -> frozenset[str]:
    """The boards of other rooms, by name, of which something is still to be cut: what they leave is not there yet."""
    house = house_of(notebook, of)
    owners = (*(room for room, _, _ in notebook.children("room", house)), house)
    sticks = (stick for owner in owners if owner != of for stick in derive_marked(notebook, owner, profile))
    return frozenset(stick.board for stick in sticks if stick.open and stick.board)


def mark_lent(notebook: Notebook, of: str, profile: str, sticks: Iterable[Stick]) -> tuple[Stick, ...]:
    """The accepted boards of a room, or of a house, with what plans of others count on."""
    house = house_of(notebook, of)
    owners = (*(room for room, _, _ in notebook.children("room", house)), house)
    plans = [derive_accepted(notebook, owner).get(profile) for owner in owners if owner != of]
    lent = {stick.source: stick.length for plan in plans if plan for stick in plan.sticks if stick.source}
    return tuple(replace(stick, lent=lent.get(stick.board or "", ZERO)) for stick in sticks)


def derive_scraps(scraps: Sequence[Scrap], used: Collection[str], case: Case) -> list[Stick]:
    """Boards of a room that were spoilt or are not wanted any more, long enough to be cut again, and not `used`."""
    named = [
        Stick(scrap.length, 0, bought=True, source=f"{SCRAP}{scrap.letter} {number}")
        for number, scrap in enumerate(scraps, 1)
        if scrap.length >= case.hold
    ]
    return [stick for stick in named if stick.source not in used]


def find_used_scraps(notebook: Notebook, room: str, profile: str) -> set[str]:
    """The scraps of a room that a plan counts on already, its own or that of several rooms."""
    house = house_of(notebook, room)
    own, shared = (_sources(notebook, of, profile) for of in (room, house))
    return own | {source.removesuffix(_of(room)) for source in shared if source.endswith(_of(room))}


def find_lent(notebook: Notebook, room: str, profile: str) -> set[str]:
    """The names of the boards that a plan of several rooms took over, from whatever room."""
    return _sources(notebook, house_of(notebook, room), profile)


def name_scrap(room: str, stick: Stick) -> Stick:
    """A scrap of a room, named so that it stands among those of other rooms."""
    return replace(stick, source=f"{stick.source}{_of(room)}")


def _of(room: str) -> str:
    return f" of {room}"


def _sources(notebook: Notebook, of: str, profile: str) -> set[str]:
    accepted = derive_accepted(notebook, of).get(profile)
    return {stick.source for stick in (accepted.sticks if accepted else ()) if stick.source}
