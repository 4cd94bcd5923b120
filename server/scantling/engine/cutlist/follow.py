"""Which pieces follow another that came out otherwise than its figure, while they are still to cut.

Two ways, and no others. *Making up*: pieces that share one length, so that what one lacks the other must have: the
parts of a run that is scarfed, a leg on its plinth. *Matching*: pieces that must come out alike for a third to lie
true: the legs under a mitered head, opposite sides of a picture frame. One is matched only when its fellow is fitted:
until then that one can be trimmed or cut again.

Nothing else follows. Legs stand on their reveals and not on the head's length; base, shoe and rails end at walls and
casing, whose places are read and not cut; a butted or coped board depends on the other's thickness, not on its length.
Common practice, no source.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from scantling.engine.cutlist.change import BEARS, show_difference
from scantling.engine.cutlist.states import FITTED, State
from scantling.engine.tape.lengths import SIXTEENTH, ZERO, Length
from scantling.engine.trim.footprint import LEFT, RIGHT
from scantling.engine.trim.piece import Flag, Kind, Piece, Step
from scantling.engine.words import say

MATCHING, MAKING_UP = 1, -1
# Opposite sides of a frame, and a leg with what it stands on. The plinth is not cut to suit its leg: plinths match.
FELLOWS = (((Kind.LEG, LEFT), (Kind.LEG, RIGHT)), ((Kind.HEAD, ""), (Kind.SILL, "")))
STANDING = tuple(((Kind.PLINTH, side), (Kind.LEG, side)) for side in (LEFT, RIGHT))


@dataclass(frozen=True, slots=True)
class Tie:
    """One piece that follows another: by as much, or by as much the other way."""

    of: str
    follows: str
    way: int


def derive_ties(pieces: Sequence[Piece]) -> Iterator[Tie]:
    """Which piece follows which, by their keys."""
    scarfed = {(piece.kind, piece.right.at): piece for piece in pieces if piece.right.joint == "scarf"}
    for piece in pieces:
        before = scarfed.get((piece.kind, piece.left.at)) if piece.left.joint == "scarf" else None
        if before:
            yield from (Tie(before.key, piece.key, MAKING_UP), Tie(piece.key, before.key, MAKING_UP))
    flat = {(piece.opening, (piece.kind, piece.side)): piece for piece in pieces if piece.opening}
    for opening in dict.fromkeys(opening for opening, _ in flat):
        for fellows in FELLOWS:
            pair = [flat[opening, one] for one in fellows if (opening, one) in flat]
            if len(pair) == 2 and all(map(_is_mitered, pair)):
                yield from (Tie(one.key, other.key, MATCHING) for one, other in (pair, pair[::-1]))
        for under, leg in STANDING:
            if (opening, under) in flat and (opening, leg) in flat:
                yield Tie(flat[opening, under].key, flat[opening, leg].key, MAKING_UP)


def _is_mitered(piece: Piece) -> bool:
    return "miter" in (piece.left.joint, piece.right.joint)


def derive_off(piece: Piece, state: State) -> Length:
    """How much longer a board is than its figure; nothing where that is not known, or within what joints bear."""
    if not state.is_cut or state.made is None or state.made.length is None:
        return ZERO
    by = state.made.length - piece.cut
    return by if abs(by) > BEARS else ZERO


@dataclass(frozen=True, slots=True)
class Followed:
    """The pieces as they are to be cut, and by the key of a board that is off, the letter of what makes up for it."""

    pieces: list[Piece]
    taken_up: Mapping[str, str]


def derive_followers(pieces: Sequence[Piece], states: Mapping[str, State]) -> Followed:
    """The pieces still to cut, changed by what the boards they follow came out as. States are by key."""
    by_key = {piece.key: piece for piece in pieces}
    taken_up: dict[str, str] = {}
    for tie in derive_ties(pieces):
        leader, follower = by_key[tie.of], by_key[tie.follows]
        off = derive_off(leader, states[tie.of])
        if not off or states[tie.follows].is_cut or (tie.way == MATCHING and states[tie.of].name != FITTED):
            continue
        by_key[tie.follows] = _changed(follower, leader, off, tie.way)
        if tie.way == MAKING_UP and by_key[tie.follows].back != follower.back:
            taken_up[tie.of] = follower.letter
    return Followed([by_key[piece.key] for piece in pieces], taken_up)


def _changed(piece: Piece, leader: Piece, off: Length, way: int) -> Piece:
    by, shown = off * way, show_difference(abs(off), SIXTEENTH)
    came = "long" if off > ZERO else "short"
    back = piece.back + by
    if min(back, piece.front + by) <= ZERO:
        said = say(f"cannot-follow-{came}", letter=leader.letter, by=shown, other=piece.letter)
        return replace(piece, flags=(*piece.flags, Flag("cannot-follow", said)))
    why = say(f"follows-{'same' if way == MATCHING else 'made-up'}-{came}", letter=leader.letter, by=shown)
    steps = (Step(f"{'+' if by > ZERO else '−'} {why}", abs(by)), Step(say("cut-to-that"), back))
    return replace(piece, back=back, working=(*piece.working, *steps), flags=(*piece.flags, Flag("follows", f"{why}.")))
