"""Salvaged: a piece that is there already, with its own length. It is trimmed to its place, and never bought.

What is too long gives way at the ends, as much at either so that both horns of a stool are equal; what is too short
may do where a horn only gets shorter. One that will not do is told, and its place wants a board after all. A stool that
was notched before lies where its notches are: then each horn is read too, from its notch to its end. Common practice,
no source.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from scantling.engine.cutlist.change import show_difference
from scantling.engine.errors import EngineError
from scantling.engine.journal import Entry
from scantling.engine.notebook import Notebook
from scantling.engine.standard import Standard
from scantling.engine.survey.points import parse_points
from scantling.engine.tape.lengths import SIXTY_FOURTH, ZERO, Length, format_length, parse_length
from scantling.engine.trim.piece import Flag, Piece, Step
from scantling.engine.trim.told.seasons import width_of
from scantling.engine.words import show_examples

SALVAGED = "salvaged"


class SalvageError(EngineError):
    sentences = {
        "not-salvaged": "Write how long it is, or how long and wide, as 58 1/4 × 5 1/2; of a stool that is notched "
        "already, with its horns from notch to end, left and right: 58 1/4, 3 1/4, 3.",
        "no-board": "A piece that is there is longer than nothing: measure it again.",
        "horns-only": "Only a stool has horns: write how long it is, and no more.",
    }


@dataclass(frozen=True, slots=True)
class Salvaged:
    """What is there: its length, its width where that was read, and of a stool that was notched before, how far each
    end is from its notch.
    """

    length: Length
    horns: tuple[Length, Length] | None = None
    width: Length | None = None


def salvage_readings(notebook: Notebook, piece: str) -> list[Entry]:
    """Every reading of a board that is there for a piece, struck ones too, in order."""
    return [entry for entry in notebook.about("reading", piece) if entry.body["what"] == SALVAGED]


def hint_there(piece: Piece) -> str:
    """What to read of what is there."""
    horns = " One that is notched: its horns too, from notch to end, as 58 1/4, 3 1/4, 3."
    whole = "How long it is, end to end; its width too, as 58 1/4 × 5 1/2."
    return show_examples(f"{whole}{horns if piece.left.horn else ''}")


def parse_salvaged(text: str) -> Salvaged:
    """Raises `SalvageError` or `LengthError`.

    >>> parse_salvaged("58 1/4, 3 1/4, 3").horns[0].inches
    Fraction(13, 4)
    """
    size, *more = parse_points(text)
    first, *widths = (parse_length(part) for part in size.lower().replace("x", "×").split("×"))
    horns = [parse_length(part) for part in more]
    if len(horns) not in (0, 2) or len(widths) > 1:
        raise SalvageError("not-salvaged", field="text")
    if first <= sum(horns, start=ZERO):
        raise SalvageError("no-board", field="text")
    return Salvaged(first, (horns[0], horns[1]) if horns else None, widths[0] if widths else None)


def say_salvaged(found: Salvaged, nearest: Length) -> str:
    """In words: a board of 58 1/4, with horns of 3 1/4 and 3."""
    horns = " and ".join(format_length(horn, nearest) for horn in found.horns or ())
    size = f"{format_length(found.length, nearest)}{f' × {format_length(found.width, nearest)}' if found.width else ''}"
    return f"a board of {size}{f', with horns of {horns}' if horns else ''}"


def derive_salvaged(piece: Piece, texts: Sequence[str], standard: Standard) -> Piece:
    """The piece with what is there for it: how it is trimmed, or why it will not do. The last that was read stands."""
    if not texts:
        return piece
    try:
        found = parse_salvaged(texts[-1])
        if found.horns and not all(end.horn for end in (piece.left, piece.right)):
            raise SalvageError("horns-only", field="text")
    except EngineError as error:
        return _flagged(piece, "salvage-unread", f"What is there already: {error.message}")
    step = Step("there already: it is trimmed to that, and no board is bought", found.length, (texts[-1],))
    fitted = _fit(replace(piece, working=(*piece.working, step)), found)
    return _check_width(fitted, found.width, piece.ripped or width_of(standard, piece)) if fitted.salvaged else fitted


def _check_width(piece: Piece, width: Length | None, wanted: Length | None) -> Piece:
    """What is wider is ripped; what is narrower is told, and by how much."""
    by = width - wanted if width and wanted else ZERO
    if wanted is None or abs(by) < SIXTY_FOURTH:
        return piece
    if by > ZERO:
        said = f"Rip it to {_write(wanted)}: it is {_write(by)} wider."
        return _flagged(piece, "salvage-wide", said, attention=False)
    said = f"It is {_write(-by)} narrower than the {_write(wanted)} that is wanted here: see whether that will do."
    return _flagged(piece, "salvage-narrow", said)


def _flagged(piece: Piece, key: str, message: str, *, attention: bool = True) -> Piece:
    return replace(piece, flags=(*piece.flags, Flag(key, message, attention)))


def _does(piece: Piece, found: Salvaged, said: str) -> Piece:
    there = f"There already, {_write(found.length)} long: {said}"
    return replace(_flagged(piece, "salvaged", there, attention=False), salvaged=said)


def _fit(piece: Piece, found: Salvaged) -> Piece:
    if found.horns:
        return _fit_notched(piece, found, found.horns)
    over, ends = found.length - piece.cut, (piece.left, piece.right)
    longs = [end.horn[1] for end in ends if end.horn and end.horn[1]]
    if abs(over) < SIXTY_FOURTH:
        return _does(piece, found, "it is as long as its place.")
    if over > ZERO and len(longs) == 2:
        each = _write(over / 2)
        return _does(piece, found, f"take {each} off each end, and both horns are {_write(longs[0])}.")
    if over > ZERO:
        return _does(piece, found, f"take {show_difference(over, SIXTY_FOURTH)} off, at the worse end.")
    short, spare = abs(over), sum(longs, start=ZERO)
    if short > spare:
        said = f"What is there is {_write(short)} short, and will not do here: a board is wanted."
        return _flagged(piece, "salvage-short", said)
    left = [long - short * (long.inches / spare.inches) for long in longs]
    which = "each horn" if len(left) > 1 else "the horn"
    return _does(piece, found, f"it leaves {_write(min(left)) if min(left) else 'nothing'} of {which}.")


def _fit_notched(piece: Piece, found: Salvaged, horns: tuple[Length, Length]) -> Piece:
    """It lies where its notches are, so the shorter of its horns, past the casing, is what both can be."""
    ends = tuple(end.horn for end in (piece.left, piece.right) if end.horn)
    between = piece.back - sum((begins + long for begins, long in ends), start=ZERO)
    was = found.length - horns[0] - horns[1]
    if abs(was - between) >= SIXTY_FOURTH * 4:
        way = "longer" if was > between else "shorter"
        said = f"Between its notches it is {_write(abs(was - between))} {way} than between the jambs here"
        return _flagged(piece, "salvage-notches", f"{said}: it does not lie in this window as it is.")
    free = [horn - begins for horn, (begins, _) in zip(horns, ends, strict=True)]
    if min(free) < ZERO:
        said = f"A horn of what is there ends {_write(-min(free))} before the casing does: a board is wanted."
        return _flagged(piece, "salvage-short", said)
    keep = min(*free, *(long for _, long in ends))
    off = [f"{_write(one - keep)} off the {side}" for side, one in zip(("left", "right"), free, strict=True)
           if one - keep >= SIXTY_FOURTH]  # fmt: skip
    take = f"take {' and '.join(off)}" if off else "it is as long as its place"
    return _does(piece, found, f"{take}, and both horns are {_write(keep)}.")


def _write(length: Length) -> str:
    return format_length(length, SIXTY_FOURTH)
