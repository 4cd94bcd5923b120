"""Progress: what was cut of an accepted plan, and whether what is still to be cut comes out of it as it stands."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from scantling.engine.boards.case.case import Case
from scantling.engine.cutlist.states import TO_CUT
from scantling.engine.rack.stick import DONE, SPOILT, Stick, StickLine, derive_own
from scantling.engine.tape.lengths import ZERO
from scantling.engine.words import say, say_counted


@dataclass(frozen=True, slots=True)
class Progress:
    """How far a piece has come: whether its board is cut, and how many boards for it were spoilt before."""

    is_cut: bool = False
    spoilt: int = 0


NOT_YET = Progress()


def mark_progress(sticks: Sequence[Stick], made: Mapping[str, Progress]) -> list[Stick]:
    """The sticks with what was cut of them, and what was spoilt since the plan was accepted."""
    known: dict[str, int] = {}
    for stick in sticks:
        for line in stick.lines:
            known[line.key] = known.get(line.key, 0) + (line.state == SPOILT)
    return [replace(stick, lines=tuple(_mark(line, made, known) for line in stick.lines)) for stick in sticks]


def _mark(line: StickLine, made: Mapping[str, Progress], known: Mapping[str, int]) -> StickLine:
    now = made.get(line.key, NOT_YET)
    if line.state == SPOILT or now.spoilt > known[line.key]:
        return replace(line, state=SPOILT)
    return replace(line, state=DONE if now.is_cut else TO_CUT)


def derive_standing(case: Case, sticks: Sequence[Stick], letters: Mapping[str, str]) -> tuple[list[Stick], list[str]]:
    """The sticks with the open pieces as they measure now, and why they cannot stand: nothing, if they can.

    `letters` are those of the case's pieces, by key, in its order; what is no longer wanted is left out, and leaves its
    board longer.
    """
    places = {key: place for place, key in enumerate(letters)}
    standing: list[Stick] = []
    reasons: list[str] = []
    for stick in sticks:
        lines = [
            _renewed(case, line, places, letters) for line in stick.lines if line.state != TO_CUT or line.key in places
        ]
        renewed = replace(stick, lines=tuple(lines))
        if stick.lines and not lines and not stick.is_here:
            continue  # nothing is cut from it any more, and it was not bought yet
        standing.append(renewed)
        if not _fits(case, renewed):
            reasons.append(say("plan-not-one-board", letters=_listed(line.letter for line in renewed.open)))
    held = {line.key for stick in standing for line in stick.open}
    homeless = [letter for key, letter in letters.items() if key not in held]
    if homeless:
        reasons.append(say_counted("plan-no-board", len(homeless), letters=_listed(homeless)))
    return standing, reasons


def _listed(letters: Iterable[str]) -> str:
    return ", ".join(letters)


def _renewed(case: Case, line: StickLine, places: Mapping[str, int], letters: Mapping[str, str]) -> StickLine:
    if line.state != TO_CUT:
        return line
    return replace(line, takes=case.pieces[places[line.key]], letter=letters[line.key])


def _fits(case: Case, stick: Stick) -> bool:
    if not stick.open:
        return True
    left = derive_own(case, stick) + case.kerf
    for line in stick.open:
        left = left - line.takes - case.kerf
    return left >= ZERO
