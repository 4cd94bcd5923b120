"""Measured in place: where a piece is to go, a tape was held, and what it says stands before what the room says.

The reading is of the edge that the place fixes: the back of what goes along a wall, the inner edge of what goes round
an opening. The rest of the piece follows from it, and its ± is that of one reading and one mark.
"""

from collections.abc import Sequence
from dataclasses import replace

from scantling.engine.cutlist.change import show_difference
from scantling.engine.errors import EngineError
from scantling.engine.journal import Entry
from scantling.engine.notebook import Notebook
from scantling.engine.tape.lengths import SIXTEENTH, SIXTY_FOURTH, ZERO, Length, format_length, parse_length
from scantling.engine.trim.doubt import Doubt
from scantling.engine.trim.ends import say_edge
from scantling.engine.trim.piece import Flag, Piece, Step
from scantling.engine.trim.told.tolerance import MARK, READING
from scantling.engine.words import say, say_counted

IN_PLACE = "in_place"
# One reading, and one mark.
OF_PLACE = Doubt.of(READING, MARK)


def place_readings(notebook: Notebook, piece: str) -> list[Entry]:
    """Every reading of a piece's place, struck ones too, in order."""
    return [entry for entry in notebook.about("reading", piece) if entry.body["what"] == IN_PLACE]


def standing_texts(notebook: Notebook, readings: Sequence[Entry]) -> list[str]:
    return [entry.body["text"] for entry in readings if notebook.strike_of(entry.id) is None]


def hint_in_place(piece: Piece) -> str:
    """Where to hold the tape; of what dies into casing, that this must be up."""
    edge = say_edge(piece.left.edges[0])
    ends = (piece.left, piece.right)
    if dies_into_casing(piece) and not any(end.open or end.joint == "scarf" for end in ends):
        left, right = (say("casing-of", opening=end.meets) if end.into_casing else end.meets for end in ends)
        return say("measured-hint-casing", left=left, right=right, edge=edge)
    return say("measured-hint", edge=edge)


def dies_into_casing(piece: Piece) -> bool:
    """Whether a piece has an end that stands against casing: then what is up is a better thing to read than the sum."""
    return piece.left.into_casing or piece.right.into_casing


def read_in_place(texts: Sequence[str]) -> tuple[Length | None, list[Flag]]:
    """The length that stands, and what is wrong with the other texts.

    Between things, as everything that goes in a place, the smallest counts. Common practice, no source.
    """
    read: list[Length] = []
    refused: list[Flag] = []
    for text in texts:
        try:
            read.append(parse_length(text))
        except EngineError as error:
            refused.append(Flag("in-place-unread", say("measured-unread", refusal=error.message)))
    if read and not min(read):
        refused.append(Flag("in-place-nothing", say("measured-nothing")))
    return min((length for length in read if length), default=None), refused


def derive_in_place(piece: Piece, texts: Sequence[str]) -> Piece:
    """The piece to what was read where it goes; one that nothing readable was read for is as it was."""
    if not texts:
        return piece
    back, refused = read_in_place(texts)
    if back is not None and back + piece.left.grows + piece.right.grows <= ZERO:
        said = say("measured-taken-up", length=format_length(back))
        back, refused = None, [*refused, Flag("in-place-nothing", said)]
    flags = (*piece.flags, *refused)
    if back is None:
        return replace(piece, flags=flags)
    measured = replace(piece, back=back, doubt=OF_PLACE, measured=True, flags=(*flags, *_differs(piece, back)))
    return replace(measured, working=_working(piece, measured, tuple(texts)))


def _differs(piece: Piece, back: Length) -> list[Flag]:
    """By how much the place is otherwise than the sum; doubted where that is more than the ± of both."""
    by = abs(back - piece.back)
    if by < SIXTY_FOURTH:
        return []
    more = "more" if back > piece.back else "less"
    is_doubted = by > piece.doubt.plus_minus + OF_PLACE.plus_minus
    what = "differs" if is_doubted else "stands"
    said = say(f"in-place-{what}-{more}", by=show_difference(by, SIXTEENTH))
    return [Flag(f"in-place-{what}", said, attention=is_doubted)]


def _working(piece: Piece, measured: Piece, texts: tuple[str, ...]) -> tuple[Step, ...]:
    first, second = (say_edge(edge) for edge in piece.left.edges)
    ends = [step for step in piece.working if step.of_end]
    return (
        Step(say("by-the-readings", edge=first), piece.back),
        Step(say_counted("measured-in-place", len(texts)), measured.back, texts),
        *ends,
        Step(f"= {first}", measured.back),
        Step(f"= {second}", measured.front),
    )
