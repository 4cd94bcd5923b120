"""The cut list of a room: its pieces with their letters for ever, how each stands, and what became of those before.

What was issued and is not wanted any more is told with its state, never dropped; what is new gets the next letters,
which are provisional until a person issues them.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from scantling.engine.cutlist.change import Change, derive_change
from scantling.engine.cutlist.follow import derive_followers
from scantling.engine.cutlist.letters import Lettered, derive_letters, piece_id
from scantling.engine.cutlist.place import derive_in_place, place_readings, standing_texts
from scantling.engine.cutlist.salvage import derive_salvaged, salvage_readings
from scantling.engine.cutlist.states import CUT, FITTED, State, derive_state, say_state
from scantling.engine.journal import Entry
from scantling.engine.notebook import Notebook
from scantling.engine.standard import Standard
from scantling.engine.tape.lengths import SIXTEENTH, Length
from scantling.engine.trim.piece import Flag, Piece
from scantling.engine.trim.told.every import tell_all
from scantling.engine.words import all_of, say


@dataclass(frozen=True, slots=True)
class Listed:
    """A piece on the list. `id` is None, and the letter provisional, until it is issued.

    `of` is the id it has then, by which its place may be read before: it follows from what the piece is.
    """

    piece: Piece
    id: str | None = None
    of: str | None = None
    state: State = field(default_factory=State)
    change: Change | None = None
    places: tuple[tuple[Entry, str | None], ...] = ()
    in_place: bool = False
    there: tuple[tuple[Entry, str | None], ...] = ()

    @property
    def letter(self) -> str:
        return self.piece.letter

    @property
    def provisional(self) -> bool:
        return self.id is None


@dataclass(frozen=True, slots=True)
class Gone:
    """A piece that was issued and is not wanted as the room reads now."""

    lettered: Lettered
    state: State

    @property
    def boards(self) -> tuple[Length | None, ...]:
        """How long its boards are that are lying about; a fitted one hangs."""
        standing = (self.state.made.length,) if self.state.made and self.state.name == CUT else ()
        return (*(made.as_cut for made in self.state.spoilt), *standing)

    @property
    def message(self) -> str:
        key = {CUT: "gone-cut", FITTED: "gone-fitted"}.get(self.state.name, "gone")
        return say(key, letter=self.lettered.letter, name=self.lettered.named)


@dataclass(frozen=True, slots=True)
class Scrap:
    """A board that was cut and is not used: the letter pencilled on it, and how long it is."""

    letter: str
    length: Length


@dataclass(frozen=True, slots=True)
class Supposed:
    """What the list is asked to take for said, by a piece's key: how it stands, and what its place was read as."""

    states: Mapping[str, State] = field(default_factory=dict)
    texts: Mapping[str, Sequence[str]] = field(default_factory=dict)


NOTHING_SUPPOSED = Supposed()


@dataclass(frozen=True, slots=True)
class CutList:
    """Pieces in fitting order, then what is gone. What a board plan has to know is in `to_cut`, `cut` and `scraps`."""

    listed: tuple[Listed, ...]
    gone: tuple[Gone, ...] = ()

    @property
    def pieces(self) -> list[Piece]:
        return [one.piece for one in self.listed]

    @property
    def to_issue(self) -> list[Listed]:
        """Pieces whose letters are provisional."""
        return [one for one in self.listed if one.provisional]

    @property
    def to_cut(self) -> list[Listed]:
        """Pieces that still want wood: what is there already wants none."""
        return [one for one in self.listed if not (one.state.is_cut or one.piece.salvaged)]

    @property
    def cut(self) -> list[Listed]:
        """Pieces that are cut or fitted; their boards' lengths are in `state.made`."""
        return [one for one in self.listed if one.state.is_cut]

    def scraps(self, profile: str) -> list[Scrap]:
        """Boards of a profile that were spoilt or are not wanted any more: a piece may be cut anew from one.

        Of one that was to be cut again only what was read of it: it may be split, and its own cut is spent.
        """
        found = [(one.letter, made.as_cut) for one in self.listed if one.piece.profile == profile
                 for made in one.state.spoilt]  # fmt: skip
        found += [(one.lettered.letter, length) for one in self.gone if one.lettered.profile == profile
                  for length in one.boards]  # fmt: skip
        return [Scrap(letter, length) for letter, length in found if length is not None]


@dataclass(frozen=True, slots=True)
class _Told:
    """What the notebook tells of one piece: its letter and id, how it stands, what was read of its place and of it."""

    lettered: Lettered | None
    of: str
    state: State
    places: Sequence[Entry]
    there: Sequence[Entry]

    @property
    def is_issued(self) -> bool:
        return self.lettered is not None and self.lettered.issued


def derive_list(
    notebook: Notebook,
    room: str,
    pieces: Sequence[Piece],
    standard: Standard,
    nearest: Length = SIXTEENTH,
    supposed: Supposed = NOTHING_SUPPOSED,
) -> CutList:
    """A room's list from the notebook and the pieces that the room needs now; differences are told to `nearest`."""
    letters = derive_letters(notebook, room)
    told = {piece.key: _tell(notebook, room, piece.key, letters.by_key.get(piece.key)) for piece in pieces}
    told |= {key: replace(told[key], state=state) for key, state in supposed.states.items() if key in told}
    texts: dict[str, Sequence[str]] = {key: standing_texts(notebook, one.places) for key, one in told.items()}
    texts |= supposed.texts
    measured = [derive_in_place(piece, texts[piece.key]) for piece in _letter_all(pieces, told, letters.free())]
    followed = derive_followers(measured, {key: one.state for key, one in told.items()})
    listed = []
    for piece in tell_all(followed.pieces, standard):
        one = told[piece.key]
        change = _change(piece, one.state, nearest, followed.taken_up.get(piece.key, ""))
        salvaged = derive_salvaged(piece, standing_texts(notebook, one.there), standard)
        listed.append(_list(notebook, _flagged(salvaged, one.lettered, one.state), one, change, piece.measured))
    unwanted = (found for key, found in letters.by_key.items() if key not in told and found.issued)
    return CutList(tuple(listed), tuple(Gone(found, derive_state(notebook, found.id)) for found in unwanted))


def _tell(notebook: Notebook, room: str, key: str, lettered: Lettered | None) -> _Told:
    of = lettered.id if lettered else piece_id(room, key)
    state = derive_state(notebook, of) if lettered and lettered.issued else State()
    return _Told(lettered, of, state, place_readings(notebook, of), salvage_readings(notebook, of))


def _list(notebook: Notebook, piece: Piece, told: _Told, change: Change | None, in_place: bool) -> Listed:
    return Listed(
        piece=piece,
        id=told.of if told.is_issued else None,
        of=told.of,
        state=told.state,
        change=change,
        places=_with_strikes(notebook, told.places),
        in_place=in_place,
        there=_with_strikes(notebook, told.there),
    )


def _with_strikes(notebook: Notebook, readings: Sequence[Entry]) -> tuple[tuple[Entry, str | None], ...]:
    return tuple((entry, notebook.strike_of(entry.id)) for entry in readings)


def _letter_all(pieces: Sequence[Piece], told: Mapping[str, _Told], free: Iterator[str]) -> Iterator[Piece]:
    """Each with its letter; one that never had any takes the next that is free."""
    for piece in pieces:
        lettered = told[piece.key].lettered
        yield _letter(piece, lettered.letter if lettered else next(free))


def _letter(piece: Piece, letter: str) -> Piece:
    return piece if piece.letter == letter else replace(piece, letter=letter)


def _change(piece: Piece, state: State, nearest: Length, taken_up_by: str) -> Change | None:
    return derive_change(piece, state.made, nearest, taken_up_by) if state.name == CUT else None


def _flagged(piece: Piece, known: Lettered | None, state: State) -> Piece:
    """What a person must know before believing the pencil: another letter, two states, a length that cannot be read."""
    flags = []
    if known and known.others and state.name != FITTED:
        flags.append(Flag("other-letter", say("other-letter", others=all_of(known.others), letter=piece.letter)))
    names = list(dict.fromkeys(head.body["state"] for head in state.heads))
    if len(names) > 1:
        said = say("two-states", states=all_of(map(say_state, names)), state=say_state(state.name))
        flags.append(Flag("two-states", said))
    if state.made and state.made.refusal:
        flags.append(Flag("as-cut-unread", say("as-cut-unread", refusal=state.made.refusal)))
    return replace(piece, flags=(*piece.flags, *flags)) if flags else piece
