"""Test cuts: what scraps showed in a corner, told wherever a board is cut to it.

Two scraps are cut at the setting and held together in the corner before a board is: common practice, no source. What
they showed is a note in a person's words. It changes no figure: whoever stands at the saw reads it and sets the saw.
"""

from dataclasses import dataclass

from scantling.engine.notebook import Notebook
from scantling.engine.trim.piece import Kind, Piece
from scantling.engine.words import say

CEILING, FLOOR = "ceiling_corner", "corner"


@dataclass(frozen=True, slots=True)
class Tried:
    """A corner that an end of a piece is cut to. `text` is what scraps showed there, nothing while none was tried.

    `of` and `what` are the corner's, as an entry names it; `side` is the end as the piece lies at the saw.
    """

    of: str
    what: str
    side: str
    name: str
    text: str

    @property
    def words(self) -> str:
        """What is told at the saw: left end, corner 2: 45.5 fits."""
        return say(f"tried-{self.side}", corner=self.name, text=self.text)


def derive_tried(notebook: Notebook, piece: Piece) -> list[Tried]:
    """The corners that a piece is cut to, left end first, each with what scraps showed there."""
    what = CEILING if piece.kind == Kind.CROWN else FLOOR
    ends = (("left", piece.left), ("right", piece.right))
    return [
        Tried(end.at, what, side, end.meets, _said(notebook, end.at, what))
        for side, end in ends
        if end.corner and end.at
    ]


def _said(notebook: Notebook, of: str, what: str) -> str:
    """What was said last; where two devices said it apart, both."""
    entries = [entry for entry in notebook.about("test_cut", of) if entry.body["what"] == what]
    return "; ".join(dict.fromkeys(entry.body["text"].strip() for entry in notebook.heads(entries)))
