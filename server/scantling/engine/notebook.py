"""The notebook: the house that the entries add up to.

A fold that only ever collects: entries go into sets by subject, and order is made when the set is read, from stamps and
ids that every device agrees on. So the arrival order and repeats cannot matter, and adding one entry costs one entry.
"""

import json
from collections import Counter, defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any, TypeVar

from scantling.engine.errors import EngineError
from scantling.engine.journal import Entry, admit_entry, fits

T = TypeVar("T")
SUBJECT = {"house": "house", "room": "room", "wall": "wall", "opening": "opening", "obstacle": "obstacle",
           "free": "free"}  # fmt: skip
PARENT = {"room": "house", "wall": "room", "opening": "wall", "obstacle": "wall", "free": "room"}


@dataclass(slots=True)
class Notebook:
    """Entries by what they are about. Read it through the methods; `take` is the only way in."""

    entries: dict[str, Entry] = field(default_factory=dict)
    _about: dict[tuple[str, str], dict[str, Entry]] = field(default_factory=lambda: defaultdict(dict))
    _strikes: dict[str, list[str]] = field(default_factory=lambda: defaultdict(list))
    _fit: dict[str, bool] = field(default_factory=dict)
    _kinds: Counter[str] = field(default_factory=Counter)
    _forgotten: int = 0
    _derived: dict[tuple[str, str], tuple[object, Any]] = field(default_factory=dict)

    def take(self, entries: Iterable[Mapping[str, Any]]) -> dict[str, Any]:
        """Add entries; the same entry twice is one entry. What is not an entry at all is named and left out."""
        taken, refused = 0, []
        for data in entries:
            try:
                taken += self._add(admit_entry(data))
            except EngineError as error:
                shown = data.get("id") if isinstance(data, Mapping) else None
                refused.append({"id": str(shown), "key": error.key, "message": error.message})
        return {"taken": taken, "refused": refused, "kept_unread": self.kept_unread}

    def _add(self, entry: Entry) -> int:
        known = self.entries.get(entry.id)
        if known is not None:
            # By their texts, for Python holds 1 and True to be equal, and a schema does not.
            if _canonical(known) <= _canonical(entry):
                return 0
            self._forget(known)  # two devices gave one id to two texts: all must keep the same one, in any order
        self.entries[entry.id] = entry
        self._kinds[entry.kind] += 1
        for group in _groups(entry):
            self._about[group][entry.id] = entry
        if entry.kind == "strike":
            self._strikes[str(entry.body.get("entry"))].append(entry.id)
        return known is None

    def _forget(self, entry: Entry) -> None:
        self._fit.pop(entry.id, None)
        self._forgotten += 1
        for group in _groups(entry):
            del self._about[group][entry.id]
        if entry.kind == "strike":
            self._strikes[str(entry.body.get("entry"))].remove(entry.id)

    def derived(self, what: str, room: str, derive: Callable[[], T]) -> T:
        """What was derived of a room, derived again only when an entry about it has come since."""
        revision = self._revision(room)
        known = self._derived.get((what, room))
        if known is None or known[0] != revision:
            known = self._derived[what, room] = (revision, derive())
        found: T = known[1]
        return found

    def _revision(self, room: str) -> tuple[int, ...]:
        # The sets only grow, so their sizes tell whether anything came. All but readings are few, and counted by kind:
        # a wall or a door may be said to be in another room, which says something of this one too.
        walls = self._subjects("wall", room)
        things = [thing for wall in walls for kind in ("opening", "obstacle") for thing in self._subjects(kind, wall)]
        about = self._about
        readings = sum(len(about[group]) for of in (*walls, *things) if (group := ("reading", of)) in about)
        few = (self._kinds[kind] for kind in (*SUBJECT, "setting", "issue", "state", "strike"))
        return readings, *few, self._forgotten

    def _subjects(self, kind: str, parent: str) -> set[str]:
        return {str(entry.body.get(SUBJECT[kind])) for entry in self._about.get((kind, parent), {}).values()}

    @property
    def kept_unread(self) -> int:
        """How many entries a newer engine wrote, that this one keeps and passes on."""
        return sum(not entry.known for entry in self.entries.values())

    def about(self, kind: str, subject: str) -> list[Entry]:
        """Every readable entry of a kind about a subject, struck ones too, in order.

        Children by parent: about("room", house), about("wall", room), about("reading", wall), about("setting", house),
        about("issue", room), about("state", piece), about("plan", room).
        """
        found = self._about.get((kind, subject), {})
        return sorted((entry for entry in found.values() if self._is_fit(entry)), key=lambda entry: entry.order)

    def _is_fit(self, entry: Entry) -> bool:
        if entry.id not in self._fit:
            self._fit[entry.id] = fits(entry)
        return self._fit[entry.id]

    def strike_of(self, entry_id: str) -> str | None:
        """The strike that is in force against an entry, or None. Striking a strike restores what it struck.

        Two strikes that strike each other, which no honest device makes, are both without force.
        """
        if entry_id not in self._strikes:
            return None
        reached = self._strikers(entry_id)
        force: dict[str, bool] = {}
        changed = True
        while changed:
            changed = False
            for strike in reached:
                strikers = [other for other in self._strikes.get(strike, ()) if other in reached]
                against = [other for other in strikers if force.get(other, True)]
                settled = all(other in force for other in against)
                if strike not in force and settled:
                    force[strike] = not against
                    changed = True
        return min((strike for strike in self._strikes.get(entry_id, ()) if force.get(strike)), default=None)

    def _strikers(self, entry_id: str) -> list[str]:
        reached: list[str] = []
        waiting = sorted(self._strikes.get(entry_id, ()))
        while waiting:
            strike = waiting.pop()
            if strike not in reached and self._is_fit(self.entries[strike]):
                reached.append(strike)
                waiting += sorted(self._strikes.get(strike, ()))
        return reached

    def heads(self, statements: Iterable[Entry]) -> list[Entry]:
        """The statements in force: neither struck nor superseded by one in force. More than one is a conflict."""
        live = [entry for entry in statements if self.strike_of(entry.id) is None]
        gone = {older for entry in live for older in entry.supersedes if older != entry.id}
        # A ring of entries that supersede each other would leave none: then all of them stand.
        return [entry for entry in live if entry.id not in gone] or live

    def houses(self) -> Iterator[tuple[str, Entry, list[Entry]]]:
        """Each house in force: its id, the statement to show (the latest), and all statements in force."""
        return self._in_force("house", "")

    def children(self, kind: str, parent: str) -> Iterator[tuple[str, Entry, list[Entry]]]:
        """The rooms of a house, the walls of a room, the openings of a wall …, as `houses` gives them."""
        return self._in_force(kind, parent)

    def _in_force(self, kind: str, parent: str) -> Iterator[tuple[str, Entry, list[Entry]]]:
        for subject in dict.fromkeys(entry.body[SUBJECT[kind]] for entry in self.about(kind, parent)):
            # Every statement about it, wherever it was said to be: a door said to be on another wall has left this one.
            heads = self.heads(self.about(f"the {kind}", subject))
            if heads and _is_in(heads[-1], parent):
                yield subject, heads[-1], heads

    def settings(self, of: str) -> dict[str, tuple[Entry, list[Entry]]]:
        """The settings of a house or room by name: the one to use (the latest) and all in force."""
        by_name: dict[str, list[Entry]] = {}
        for entry in self.about("setting", of):
            by_name.setdefault(entry.body["name"], []).append(entry)
        headed = {name: self.heads(statements) for name, statements in sorted(by_name.items())}
        return {name: (heads[-1], heads) for name, heads in headed.items() if heads}

    def walls(self, room: str) -> list[tuple[str, Entry, list[Entry]]]:
        """The walls of a room from left to right: each stands after the one it names; of two, the later first."""
        said: dict[str, list[Entry]] = {}
        for entry in self.about("wall", room):
            said.setdefault(entry.body["wall"], []).append(entry)
        # A struck wall keeps its place in the row, unseen: otherwise those after it would lose theirs.
        # So does one that was said to be in another room.
        heads = {wall: self.heads(self.about("the wall", wall)) for wall in said}
        here = {wall: [entry for entry in heads[wall] if _is_in(entry, room)] for wall in said}
        after = {wall: (here[wall] or said[wall])[-1].body["after"] for wall in said}
        return [
            (wall, heads[wall][-1], heads[wall])
            for wall in _row(after)
            if heads[wall] and _is_in(heads[wall][-1], room)
        ]


def _is_in(entry: Entry, parent: str) -> bool:
    return entry.kind not in PARENT or bool(entry.body[PARENT[entry.kind]] == parent)


def _row(after: Mapping[str, str | None]) -> list[str]:
    following: dict[str | None, list[str]] = defaultdict(list)
    for wall, named in after.items():
        following[named if named in after and named != wall else None].append(wall)
    placed: dict[str, None] = {}
    waiting = list(following[None])
    while waiting or len(placed) < len(after):
        # Walls that only follow each other in a ring have no start: the first of them is taken for one.
        wall = waiting.pop() if waiting else next(left for left in after if left not in placed)
        if wall not in placed:
            placed[wall] = None
            waiting += following[wall]
    return list(placed)


def fold(entries: Iterable[Mapping[str, Any]]) -> Notebook:
    """Entries to the notebook they add up to.

    >>> len(fold([]).entries)
    0
    """
    notebook = Notebook()
    notebook.take(entries)
    return notebook


def _groups(entry: Entry) -> Iterator[tuple[str, str]]:
    body = entry.body
    parent = {"house": "", "room": body.get("house"), "wall": body.get("room"), "opening": body.get("wall"),
              "obstacle": body.get("wall"), "reading": body.get("of"), "setting": body.get("of"),
              "issue": body.get("room"), "state": body.get("piece"), "free": body.get("room"),
              "plan": body.get("of"),
              "device": ""}  # fmt: skip
    if entry.kind in parent:
        yield entry.kind, str(parent[entry.kind])
    if entry.kind in SUBJECT:
        yield f"the {entry.kind}", str(body.get(SUBJECT[entry.kind]))


def _as_data(entry: Entry) -> dict[str, Any]:
    names = ("id", "device", "seq", "stamp", "version", "kind", "body")
    return {**{name: getattr(entry, name) for name in names}, "supersedes": list(entry.supersedes)}


def _canonical(entry: Entry) -> str:
    return json.dumps(_as_data(entry), sort_keys=True, default=str)
