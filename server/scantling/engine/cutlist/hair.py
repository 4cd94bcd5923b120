"""A piece held to its place that wants a hair off, or a hair more: what to write down, and which pieces that moves.

A board that is cut and wants a hair off is trimmed: it is the same board, read anew. One that wants a hair more cannot
be had from it: its place is read longer by that, and it is cut again. A piece still to cut is cut to its place, read a
hair otherwise. What follows is the list's own to say, as if that were written.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from scantling.engine.cutlist.change import BEARS
from scantling.engine.cutlist.follow import MATCHING, derive_ties
from scantling.engine.cutlist.listed import CutList, Listed, Supposed
from scantling.engine.cutlist.states import CUT, FITTED, RECUT, Made, State
from scantling.engine.shown.shown_in import format_decimal, is_metric, to_millimeters
from scantling.engine.tape.lengths import (
    FINEST_SHOWN,
    SIXTY_FOURTH,
    THIRTY_SECOND,
    ZERO,
    Length,
    format_inches,
    format_length,
    parse_length,
)
from scantling.engine.trim.piece import Step
from scantling.engine.words import all_of, say, say_counted

OFF, MORE = "off", "more"
#: What a plane or a blade takes that barely touches; what is more is read with the tape. Common practice, no source.
HAIRS = (SIXTY_FOURTH, THIRTY_SECOND)
#: Of a millimeter: every mark of a tape in inches comes out even.
MILLIONTH = Fraction(1, 10**6)


@dataclass(frozen=True, slots=True)
class Hair:
    """What a hair comes to. `text` is the reading to write: of the board where it is `trimmed`, else of its place."""

    trimmed: bool
    text: str
    supposed: Supposed
    working: tuple[Step, ...]


def derive_hair(one: Listed, by: Length, way: str, follows: Length = ZERO) -> Hair | None:
    """A hair off a piece or more of it; None where it would leave nothing.

    `follows`: how much of its figure comes of a board that it makes up for. The list adds that to what is read.
    """
    board = one.state.made.length if one.state.is_cut and one.state.made else None
    if way == OFF and board is not None:
        return _trimmed(one, board, by)
    return _read_anew(one, by, way, follows)


def _trimmed(one: Listed, board: Length, by: Length) -> Hair | None:
    if board <= by:
        return None
    after = as_written(board - by)
    text = write_length(after)
    made = replace(one.state.made, text=text, as_cut=after, refusal=None) if one.state.made else None
    state = replace(one.state, name=CUT, made=made)
    steps = (
        Step(say("hair-board", letter=one.letter), board),
        Step(say("a-hair-off"), by),
        Step(say("hair-trimmed"), after),
    )
    return Hair(True, text, Supposed(states={one.piece.key: state}), steps)


def _read_anew(one: Listed, by: Length, way: str, follows: Length) -> Hair | None:
    back = one.piece.back
    after = back - by if way == OFF else back + by
    place = after - follows
    if min(place, after, after + one.piece.left.grows + one.piece.right.grows) <= ZERO:
        return None
    text = write_length(place)
    states = {one.piece.key: _to_be_recut(one.state)} if one.state.is_cut else {}
    steps = (
        Step(say("hair-place", letter=one.letter), back),
        Step(say(f"a-hair-{way}"), by),
        Step(say("hair-read-so"), after),
    )
    return Hair(False, text, Supposed(states=states, texts={one.piece.key: (text,)}), steps)


def write_length(length: Length) -> str:
    """A length as text that reads back as it: a fraction where a tape has one, else decimals to a millionth.

    In millimeters where lengths are shown so, or a bare 56.131130 would stand among them.

    Rounded to the tape, a hair of a figure from an angle would be half as much again, or half as much.

    >>> write_length(parse_length("63 17/64")), write_length(Length.approximate(56.13113))
    ('63 17/64"', '56.131130')
    """
    if is_metric():
        return f"{format_decimal(to_millimeters(length.inches, MILLIONTH))} mm"
    on_mark = FINEST_SHOWN % length.inches.denominator == 0
    return format_inches(length, SIXTY_FOURTH) if on_mark else f"{float(length.inches):.6f}"


def as_written(length: Length) -> Length:
    return parse_length(write_length(length))


def _to_be_recut(state: State) -> State:
    spoilt: tuple[Made, ...] = (*state.spoilt, state.made) if state.made else state.spoilt
    return replace(state, name=RECUT, made=None, spoilt=spoilt)


@dataclass(frozen=True, slots=True)
class Moved:
    """A neighbour that a hair moves: as it was and as it would be."""

    before: Listed
    after: Listed


def derive_moved(before: CutList, after: CutList, key: str) -> list[Moved]:
    """The other pieces that would be cut otherwise, or of whose boards something else would be said."""
    return [
        Moved(was, now)
        for was, now in zip(before.listed, after.listed, strict=True)
        if was.piece.key != key and _is_said(was) != _is_said(now)
    ]


def _is_said(one: Listed) -> tuple[object, ...]:
    return one.piece.back, one.piece.front, one.change


def say_moved(cut_list: CutList, one: Listed, moved: Sequence[Moved]) -> str:
    """What becomes of its neighbours, in a sentence."""
    if moved:
        return say_counted("hair-moves", len(moved), letters=_listed([each.after.letter for each in moved]))
    by_key = {each.piece.key: each for each in cut_list.listed}
    ties = [tie for tie in derive_ties(cut_list.pieces) if tie.of == one.piece.key]
    if not ties:
        return say("hair-moves-none", letter=one.letter)
    follower = by_key[ties[0].follows]
    if follower.state.is_cut:
        return say(f"hair-would-move-{follower.state.name}", letter=follower.letter)
    most = format_length(BEARS, SIXTY_FOURTH)
    if ties[0].way == MATCHING and one.state.name != FITTED:
        return say("hair-matched", letter=follower.letter, other=one.letter, most=most)
    return say("hair-made-up", letter=follower.letter, most=most)


def _listed(letters: Sequence[str]) -> str:
    return all_of(filter(None, (", ".join(letters[:-1]), letters[-1])))
