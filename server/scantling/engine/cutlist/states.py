"""States: what a person said of a piece, and what its board was cut to.

To cut, cut, fitted, recut. Each saying names the ones it follows; two devices apart may leave two in force, and then
the later is used and both are shown. A cut remembers the figure it was made to, so that a changed reading can be told.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from scantling.engine.cutlist.remembered import parse_end
from scantling.engine.errors import EngineError
from scantling.engine.journal import Entry
from scantling.engine.notebook import Notebook
from scantling.engine.tape.figures import parse_figure
from scantling.engine.tape.lengths import Length, parse_length
from scantling.engine.words import say

TO_CUT, CUT, FITTED, RECUT = "to cut", "cut", "fitted", "recut"
STATES = (TO_CUT, CUT, FITTED, RECUT)


@dataclass(frozen=True, slots=True)
class Made:
    """A board as it was cut: the figure it was to be, how its ends were to be cut, and what it was found to be.

    `refusal` says why what a person read off the board cannot be understood; the text is kept.
    """

    entry: str
    cut_to: Length | None
    left: tuple[str, Fraction] | None
    right: tuple[str, Fraction] | None
    text: str | None
    as_cut: Length | None
    refusal: str | None = None

    @property
    def length(self) -> Length | None:
        """How long the board is, as far as is known."""
        return self.as_cut if self.as_cut is not None else self.cut_to


@dataclass(frozen=True, slots=True)
class Said:
    """One saying about a piece; `strike` is the one in force against it."""

    entry: Entry
    strike: str | None


@dataclass(frozen=True, slots=True)
class State:
    """How a piece stands. `heads` are the sayings in force, `spoilt` the boards that were to be cut anew."""

    name: str = TO_CUT
    made: Made | None = None
    heads: tuple[Entry, ...] = ()
    said: tuple[Said, ...] = ()
    spoilt: tuple[Made, ...] = ()

    @property
    def is_cut(self) -> bool:
        return self.name in (CUT, FITTED)


def derive_state(notebook: Notebook, piece: str) -> State:
    """How a piece stands by all that was said of it; to cut, when nothing was."""
    entries = notebook.about("state", piece)
    said = tuple(Said(entry, notebook.strike_of(entry.id)) for entry in entries)
    heads = tuple(notebook.heads(entries))
    if not heads:
        return State(said=said)
    shown = heads[-1]
    standing = [one.entry for one in said if one.strike is None and one.entry.order <= shown.order]
    made, spoilt = _boards(standing)
    return State(shown.body["state"], made, heads, said, spoilt)


def _boards(standing: Sequence[Entry]) -> tuple[Made | None, tuple[Made, ...]]:
    """The board that stands, and those before it that were to be cut anew, from the sayings in order."""
    made: Made | None = None
    spoilt: list[Made] = []
    for entry in standing:
        if entry.body["state"] == CUT:
            made = _read_made(entry)
        elif entry.body["state"] == RECUT and made:
            spoilt.append(made)
            made = None
        elif entry.body["state"] == TO_CUT:
            made = None  # it was never cut: nothing is lying about
    return made, tuple(spoilt)


def say_state(name: str) -> str:
    """A state as a sentence names it; the journal keeps its own word."""
    return say(f"piece-state-{name.replace(' ', '-')}")


def _read_made(entry: Entry) -> Made:
    body = entry.body
    as_cut, refusal = None, None
    if body["as_cut"] is not None:
        try:
            as_cut = parse_length(body["as_cut"])
        except EngineError as error:
            refusal = error.message
    return Made(
        entry=entry.id,
        cut_to=parse_figure(body["cut_to"]) if body["cut_to"] is not None else None,
        left=parse_end(body["left"]) if body["left"] is not None else None,
        right=parse_end(body["right"]) if body["right"] is not None else None,
        text=body["as_cut"],
        as_cut=as_cut,
        refusal=refusal,
    )
