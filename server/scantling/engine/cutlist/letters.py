"""Letters for ever: which piece has which, from the lists that were issued.

A letter is pencilled on a board, so it stays with its piece: it is never given to another in the room, not even when
the piece is gone or its list was struck. Two devices that issue apart may give one letter twice: the earlier stamp
keeps it, and the other piece takes the next free one. Later entries never change that: a letter once settled stays.
"""

import hashlib
from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from scantling.engine.notebook import Notebook
from scantling.engine.trim.piece import letter as letter_at


@dataclass(frozen=True, slots=True)
class Lettered:
    """A piece that was once on a list: how it was named when last issued; `others` are letters it was also given."""

    id: str
    key: str
    letter: str
    named: str
    profile: str
    others: tuple[str, ...] = ()
    issued: bool = True


@dataclass(slots=True)
class Letters:
    """Every letter of a room. `by_key` finds a piece by what it is, `taken` holds all that were ever given."""

    by_key: dict[str, Lettered] = field(default_factory=dict)
    taken: set[str] = field(default_factory=set)
    #: Every letter before this place is taken, for ever: begun at A for each piece, long lists would take minutes.
    _first: int = 0

    def free(self) -> Iterator[str]:
        """The letters that come next, in order, each given once."""
        while letter_at(self._first) in self.taken:
            self._first += 1
        place = self._first
        while True:
            if (following := letter_at(place)) not in self.taken:
                yield following
            place += 1


def piece_id(room: str, key: str) -> str:
    """The id of a piece for ever. It follows from what the piece is, so two devices apart speak of one piece.

    >>> piece_id("r", "base w1")
    '6778e824-3117-8f4d-8ba2-c59bbca4ccff'
    """
    return id_of(whole_key(room, key))


def whole_key(room: str, key: str) -> str:
    """What a piece is, said so that it stands among pieces of other rooms."""
    return f"{room} {key}"


def room_of_key(whole: str) -> str:
    """The room of a piece, from such a key."""
    return whole.partition(" ")[0]


def id_of(whole: str) -> str:
    """The id of a piece by such a key."""
    digest = hashlib.sha256(whole.encode()).hexdigest()
    return f"{digest[:8]}-{digest[8:12]}-8{digest[13:16]}-8{digest[17:20]}-{digest[20:32]}"


def derive_letters(notebook: Notebook, room: str) -> Letters:
    """The letters of a room, the same in whatever order its lists arrived."""
    letters = Letters()
    for entry in notebook.about("issue", room):
        stands = notebook.strike_of(entry.id) is None
        rows = entry.body["pieces"]
        # All that this list gives, before any of it is settled: a letter that is pencilled on one of its boards must
        # not be given to another of them.
        given = {row["letter"] for row in rows}
        for row in rows:
            _settle(letters, row, given, stands)
        letters.taken |= given
    return letters


def _settle(letters: Letters, row: dict[str, str], given: set[str], stands: bool) -> None:
    known, wanted = letters.by_key.get(row["key"]), row["letter"]
    if known is None:
        got = wanted if wanted not in letters.taken else next(one for one in letters.free() if one not in given)
        letters.taken.add(got)
        others = () if got == wanted else (wanted,)
        known = Lettered(row["piece"], row["key"], got, row["name"], row["profile"], others, stands)
    elif stands:
        known = replace(known, named=row["name"], profile=row["profile"], issued=True)
    if wanted not in (known.letter, *known.others):
        known = replace(known, others=(*known.others, wanted))
    letters.by_key[row["key"]] = known
