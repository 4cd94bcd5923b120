"""Studs behind a wall, as a person finds and writes them: how far each is from the wall's left corner.

"14 1/2, 30 1/2, 46" names each; "14 1/2, every 16" goes on from the last one named to the wall's end, or until another
is named. Where a stud was doubted or a pipe runs, it is left out of the list.
"""

from scantling.engine.errors import EngineError, quote
from scantling.engine.tape.lengths import Length, parse_length

EVERY = "every"
# Closer than this no two studs stand, but a jack beside its king, which is as good as one. Common practice, no source.
APART = Length.approximate(3)
# As far as a tape reaches: a row that goes on to the end of a wall not yet read ends there.
FARTHEST = Length.approximate(1200)
# A hundred feet of studs a foot apart, and some.
STUDS_AT_MOST = 120


class StudsError(EngineError):
    family = "studs"


def parse_studs(text: str, end: Length | None = None) -> tuple[Length, ...]:
    """Where the studs are, from left to right, up to the wall's `end`. Raises `StudsError` or `LengthError`.

    >>> [str(stud.inches) for stud in parse_studs("14 1/2, every 16", parse_length("60"))]
    ['29/2', '61/2', '93/2']
    """
    end = min(end, FARTHEST) if end else FARTHEST
    found: list[Length] = []
    step: Length | None = None
    for part in (one.strip() for one in text.replace(";", ",").split(",")):
        word, _, rest = part.partition(" ")
        if word.lower() == EVERY:
            step = _step(text, rest, found)
            continue
        stud = parse_length(part)
        found += _row(found, step, stud) if step else []
        found.append(stud)
        step = None
    found += _row(found, step, end) if step else []
    if len(found) > STUDS_AT_MOST:
        raise StudsError("too-many", text=quote(text), most=STUDS_AT_MOST)
    if not found:
        raise StudsError("no-stud", text=quote(text))
    return tuple(sorted(set(found)))


def _step(text: str, rest: str, found: list[Length]) -> Length:
    if not found:
        raise StudsError("every-from-what", text=quote(text))
    step = parse_length(rest)
    if step < APART:
        raise StudsError("too-close", text=quote(text))
    return step


def _row(found: list[Length], step: Length, end: Length) -> list[Length]:
    """On from the last stud by so much, short of the end."""
    start, count = found[-1], 1
    row: list[Length] = []
    while (stud := start + step * count) < end:
        row.append(stud)
        count += 1
    return row
