"""What was derived of a notebook, kept while nothing that it was derived from has changed.

Entries are gathered in groups, and whoever derives reads them group by group. Each group that is read meanwhile is
noted with how often it has changed, so a derivation knows by itself what it leans on: no list of dependencies that
somebody could forget to lengthen. A room then outlives what is said of its neighbors. Refuses nothing; one thread at a
time.

What follows from a text or a number alone leans on no notebook, and is `remembered` by itself.
"""

from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Any, TypeVar, cast

T = TypeVar("T")
F = TypeVar("F", bound=Callable[..., Any])
Group = tuple[str, str]
# More than the rooms of any house; what was asked for least lately goes first.
AT_MOST = 400
# Some times what a large room has readings and figures, and still less than a megabyte.
REMEMBERED_AT_MOST = 4000


def remembered(function: F) -> F:
    """The function, which does not work out again what it gave for the same texts and whole numbers lately.

    After a reading all others of its room stand as they did: to read and to write them anew is most of a survey. Only
    for what can be changed by nobody and follows from nothing else: not from what lengths are shown in, unless that is
    handed over. What is refused is refused anew.
    """
    return cast(F, lru_cache(maxsize=REMEMBERED_AT_MOST)(function))


@dataclass(slots=True)
class _Derived:
    value: Any
    read: dict[Group, int]
    checked: int


@dataclass(slots=True)
class Kept:
    """Derivations by name and subject. `note` what is read, `change` what is said anew."""

    _changes: Counter[Group] = field(default_factory=Counter)
    _changed: int = 0
    _reading: list[dict[Group, int]] = field(default_factory=list)
    _found: dict[str, dict[str, _Derived]] = field(default_factory=dict)

    def note(self, group: Group) -> None:
        """A group is being read."""
        if self._reading:
            self._reading[-1][group] = self._changes[group]

    def change(self, group: Group) -> None:
        """Something was said of a group, or taken back."""
        self._changes[group] += 1
        self._changed += 1

    def forget(self) -> None:
        """Nothing is known any more: an entry was replaced, and with it what it may have said of anything."""
        self._found.clear()

    def derive(self, what: str, of: str, derive: Callable[[], T], at_most: int = AT_MOST) -> T:
        """What was derived, or what is derived now; `at_most` so many of one name are kept. What raises is not kept."""
        shelf = self._found.setdefault(what, {})
        known = shelf.pop(of, None)
        if known is None or not self._holds(known):
            value, read = self._derive(derive)
            known = _Derived(value, read, self._changed)
        elif self._reading:
            self._reading[-1].update(known.read)
        shelf[of] = known
        if len(shelf) > at_most:
            del shelf[next(iter(shelf))]
        found: T = known.value
        return found

    def _derive(self, derive: Callable[[], T]) -> tuple[T, dict[Group, int]]:
        read: dict[Group, int] = {}
        self._reading.append(read)
        try:
            return derive(), read
        finally:
            self._reading.pop()
            # Also when it raised: whoever catches that leans on what made it raise.
            if self._reading:
                self._reading[-1].update(read)

    def _holds(self, known: _Derived) -> bool:
        if known.checked != self._changed:
            if any(self._changes[group] != count for group, count in known.read.items()):
                return False
            known.checked = self._changed
        return True
