"""The notebook: the house that the entries add up to.

A fold that only ever collects: entries go into sets by subject, and order is made when the set is read, from stamps and
ids that every device agrees on. So the arrival order and repeats cannot matter, and adding one entry costs one entry.
"""

import json
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any, TypeVar

from scantling.engine.errors import EngineError
from scantling.engine.journal import Entry, admit_entry, fits, name_entry
from scantling.engine.kept import AT_MOST, Kept
from scantling.engine.shown.shown_in import shown_in

T = TypeVar("T")
# Kinds that say something of a thing by its id, which stands in their body under the kind's own name.
SUBJECTS = ("house", "room", "wall", "opening", "obstacle", "free", "article", "covering", "lot", "attachment", "pin",
            "sum")  # fmt: skip
PARENT = {"room": "house", "wall": "room", "opening": "wall", "obstacle": "wall", "free": "room", "article": "house",
          "covering": "room", "lot": "of", "attachment": "of", "pin": "attachment"}  # fmt: skip
# What names the group in which entries of a kind are read; none where all of a kind are one group.
GATHERED = {**PARENT, "house": "", "device": "", "sum": "", "reading": "of", "setting": "of", "issue": "room",
            "state": "piece", "plan": "of", "tick": "of", "stroke": "attachment",
            "test_cut": "of"}  # fmt: skip


@dataclass(slots=True)
class Notebook:
    """Entries by what they are about. Read it through the methods; `take` is the only way in."""

    entries: dict[str, Entry] = field(default_factory=dict)
    _about: dict[tuple[str, str], dict[str, Entry]] = field(default_factory=lambda: defaultdict(dict))
    _strikes: dict[str, list[str]] = field(default_factory=lambda: defaultdict(list))
    _fit: dict[str, bool] = field(default_factory=dict)
    #: By group, in order, as they were read last: a room is asked for a figure at a time.
    _in_order: dict[tuple[str, str], list[Entry]] = field(default_factory=dict)
    _unfollowed: list[str] = field(default_factory=list)
    _kept: Kept = field(default_factory=Kept)

    def take(self, entries: Iterable[Mapping[str, Any]]) -> dict[str, Any]:
        """Add entries; the same entry twice is one entry. What is not an entry at all is named and left out."""
        taken, refused = 0, []
        for data in entries:
            try:
                taken += self._add(admit_entry(data))
            except EngineError as error:
                refused.append({"id": name_entry(data), "key": error.key, "message": error.message})
        return {"taken": taken, "refused": refused, "kept_unread": self.kept_unread}

    def _add(self, entry: Entry) -> int:
        known = self.entries.get(entry.id)
        if known is not None:
            # By their texts, for Python holds 1 and True to be equal, and a schema does not.
            if _canonical(known) <= _canonical(entry):
                return 0
            self._forget(known)  # two devices gave one id to two texts: all must keep the same one, in any order
        self.entries[entry.id] = entry
        for group in _groups(entry):
            self._about[group][entry.id] = entry
            self._in_order.pop(group, None)
            self._kept.change(group)
        if entry.kind == "strike":
            self._strikes[_named(entry, "entry")].append(entry.id)
            self._unfollowed.append(entry.id)
        return known is None

    def _forget(self, entry: Entry) -> None:
        self._fit.pop(entry.id, None)
        self._kept.forget()
        for group in _groups(entry):
            del self._about[group][entry.id]
            self._in_order.pop(group, None)
        if entry.kind == "strike":
            self._strikes[_named(entry, "entry")].remove(entry.id)

    def derived(self, what: str, of: str, derive: Callable[[], T], at_most: int = AT_MOST) -> T:
        """What was derived, derived again only when something that it was derived from has been said since.

        Texts are derived too, so each is kept under what lengths were shown in.
        """
        self._follow_strikes()
        return self._kept.derive(f"{what}, {shown_in()}", of, derive, at_most)

    def _follow_strikes(self) -> None:
        """New strikes change what is known of whatever they come to, through strikes of strikes."""
        followed: set[str] = set()
        for strike in self._unfollowed:
            while strike not in followed and (entry := self.entries.get(strike)):
                followed.add(strike)
                for group in _groups(entry):
                    self._kept.change(group)
                strike = _named(entry, "entry") if entry.kind == "strike" else ""
        self._unfollowed.clear()

    @property
    def kept_unread(self) -> int:
        """How many entries a newer engine wrote, that this one keeps and passes on."""
        return sum(not entry.known for entry in self.entries.values())

    def about(self, kind: str, subject: str) -> list[Entry]:
        """Every readable entry of a kind about a subject, struck ones too, in order.

        Children by parent: about("room", house), about("wall", room), about("reading", wall), about("setting", house),
        about("issue", room), about("state", piece), about("plan", room), about("tick", room).
        """
        self._kept.note((kind, subject))
        known = self._in_order.get((kind, subject))
        # What nobody ever spoke of is not kept: anything may be asked about.
        if known is None and (found := self._about.get((kind, subject))):
            fit = (entry for entry in found.values() if self._is_fit(entry))
            known = self._in_order[kind, subject] = sorted(fit, key=lambda entry: entry.order)
        return list(known or ())

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
        strikers = self._strikers(entry_id)
        open_yet = {strike: len(found) for strike, found in strikers.items()}
        force: dict[str, bool] = {}
        settled = [strike for strike in strikers if not open_yet[strike]]
        while settled:
            strike = settled.pop()
            force[strike] = not any(force[other] for other in strikers[strike])
            struck = self.entries[strike].body["entry"]
            if struck in open_yet:
                open_yet[struck] -= 1
                if not open_yet[struck]:
                    settled.append(struck)
        return min((strike for strike in self._strikes[entry_id] if force.get(strike)), default=None)

    def _strikers(self, entry_id: str) -> dict[str, list[str]]:
        """Every strike that bears on an entry, with those that bear on it directly."""
        reached: dict[str, list[str]] = {}
        waiting = self._fit_strikes(entry_id)
        while waiting:
            strike = waiting.pop()
            if strike not in reached:
                reached[strike] = self._fit_strikes(strike)
                waiting += reached[strike]
        return reached

    def _fit_strikes(self, entry_id: str) -> list[str]:
        return [strike for strike in self._strikes.get(entry_id, ()) if self._is_fit(self.entries[strike])]

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
        for subject in dict.fromkeys(entry.body[kind] for entry in self.about(kind, parent)):
            # Every statement about it, wherever it was said to be: a door said to be on another wall has left this one.
            heads = self.heads(self.about(f"the {kind}", subject))
            if heads and _is_in(heads[-1], parent):
                yield subject, heads[-1], heads

    def settings(self, of: str) -> dict[str, tuple[Entry, list[Entry]]]:
        """The settings of a house or room by name: the one to use (the latest) and all in force."""
        return self._in_force_by("name", self.about("setting", of))

    def ticks(self, of: str, which: str) -> dict[str, tuple[Entry, list[Entry]]]:
        """What is ticked off on a list of a house, room or covering, by the line's key, as `settings` gives them."""
        return self._in_force_by("key", (entry for entry in self.about("tick", of) if entry.body["list"] == which))

    def _in_force_by(self, name: str, said: Iterable[Entry]) -> dict[str, tuple[Entry, list[Entry]]]:
        by_name: dict[str, list[Entry]] = {}
        for entry in said:
            by_name.setdefault(entry.body[name], []).append(entry)
        headed = {key: self.heads(statements) for key, statements in sorted(by_name.items())}
        return {key: (heads[-1], heads) for key, heads in headed.items() if heads}

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
    if entry.kind in GATHERED:
        named = GATHERED[entry.kind]
        yield entry.kind, _named(entry, named) if named else ""
    if entry.kind in SUBJECTS:
        yield f"the {entry.kind}", _named(entry, entry.kind)


def _named(entry: Entry, name: str) -> str:
    """What a body names; no text is nothing that anybody asks about, and may be too deep to be made one."""
    value = entry.body.get(name)
    return value if isinstance(value, str) else ""


def _as_data(entry: Entry) -> dict[str, Any]:
    names = ("id", "device", "seq", "stamp", "version", "kind", "body")
    return {**{name: getattr(entry, name) for name in names}, "supersedes": list(entry.supersedes)}


# After any text in JSON, which begins with a brace: of two entries under one id the one that can be written stands.
UNWRITABLE = "\uffff"


def _canonical(entry: Entry) -> str:
    try:
        return json.dumps(_as_data(entry), sort_keys=True, default=str)
    except (RecursionError, ValueError):  # nested, or with a number, beyond what can be written anywhere
        return UNWRITABLE
