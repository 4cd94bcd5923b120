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
from scantling.engine.words import all_of, say, say_counted

SALVAGED = "salvaged"


class SalvageError(EngineError):
    family = "salvage"


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
    return say("there-hint-horned" if piece.left.horn else "there-hint")


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
    size = f"{format_length(found.length, nearest)}{f' × {format_length(found.width, nearest)}' if found.width else ''}"
    if not found.horns:
        return say("there-board", size=size)
    horns = all_of(format_length(horn, nearest) for horn in found.horns)
    return say("there-board-horned", size=size, horns=horns)


def derive_salvaged(piece: Piece, texts: Sequence[str], standard: Standard) -> Piece:
    """The piece with what is there for it: how it is trimmed, or why it will not do. The last that was read stands."""
    if not texts:
        return piece
    try:
        found = parse_salvaged(texts[-1])
        if found.horns and not all(end.horn for end in (piece.left, piece.right)):
            raise SalvageError("horns-only", field="text")
    except EngineError as error:
        return _flagged(piece, "salvage-unread", say("there-unread", refusal=error.message))
    step = Step(say("there-already"), found.length, (texts[-1],))
    fitted = _fit(replace(piece, working=(*piece.working, step)), found)
    return _check_width(fitted, found.width, piece.ripped or width_of(standard, piece)) if fitted.salvaged else fitted


def _check_width(piece: Piece, width: Length | None, wanted: Length | None) -> Piece:
    """What is wider is ripped; what is narrower is told, and by how much."""
    by = width - wanted if width and wanted else ZERO
    if wanted is None or abs(by) < SIXTY_FOURTH:
        return piece
    if by > ZERO:
        said = say("there-wide", wanted=_write(wanted), by=_write(by))
        return _flagged(piece, "salvage-wide", said, attention=False)
    return _flagged(piece, "salvage-narrow", say("there-narrow", by=_write(-by), wanted=_write(wanted)))


def _flagged(piece: Piece, key: str, message: str, *, attention: bool = True) -> Piece:
    return replace(piece, flags=(*piece.flags, Flag(key, message, attention)))


def _does(piece: Piece, found: Salvaged, said: str) -> Piece:
    there = say("there-does", length=_write(found.length), trim=said)
    return replace(_flagged(piece, "salvaged", there, attention=False), salvaged=said)


def _fit(piece: Piece, found: Salvaged) -> Piece:
    if found.horns:
        return _fit_notched(piece, found, found.horns)
    over, ends = found.length - piece.cut, (piece.left, piece.right)
    longs = [end.horn[1] for end in ends if end.horn and end.horn[1]]
    if abs(over) < SIXTY_FOURTH:
        return _does(piece, found, say("trim-nothing"))
    if over > ZERO and len(longs) == 2:
        return _does(piece, found, say("trim-each-end", by=_write(over / 2), horns=_write(longs[0])))
    if over > ZERO:
        return _does(piece, found, say("trim-worse-end", by=show_difference(over, SIXTY_FOURTH)))
    short, spare = abs(over), sum(longs, start=ZERO)
    if short > spare:
        return _flagged(piece, "salvage-short", say("there-short", by=_write(short)))
    left = [long - short * (long.inches / spare.inches) for long in longs]
    key = "trim-leaves" if min(left) else "trim-leaves-nothing"
    return _does(piece, found, say_counted(key, len(left), least=_write(min(left))))


def _fit_notched(piece: Piece, found: Salvaged, horns: tuple[Length, Length]) -> Piece:
    """It lies where its notches are, so the shorter of its horns, past the casing, is what both can be."""
    ends = tuple(end.horn for end in (piece.left, piece.right) if end.horn)
    between = piece.back - sum((begins + long for begins, long in ends), start=ZERO)
    was = found.length - horns[0] - horns[1]
    if abs(was - between) >= SIXTY_FOURTH * 4:
        way = "longer" if was > between else "shorter"
        return _flagged(piece, "salvage-notches", say(f"there-notches-{way}", by=_write(abs(was - between))))
    free = [horn - begins for horn, (begins, _) in zip(horns, ends, strict=True)]
    if min(free) < ZERO:
        return _flagged(piece, "salvage-short", say("there-horn-short", by=_write(-min(free))))
    keep = min(*free, *(long for _, long in ends))
    off = [say(f"horn-off-{side}", by=_write(one - keep)) for side, one in zip(("left", "right"), free, strict=True)
           if one - keep >= SIXTY_FOURTH]  # fmt: skip
    said = say("trim-horns", off=all_of(off), horns=_write(keep)) if off else say("trim-no-horn", horns=_write(keep))
    return _does(piece, found, said)


def _write(length: Length) -> str:
    return format_length(length, SIXTY_FOURTH)
