"""Whether two lines say the same, where one shows its lengths in another unit than the other.

What a person ticked off is kept in the words that stood there. A house that shows its lengths otherwise since has not
changed its plan.
"""

import re

from scantling.engine.tape.lengths import SIXTEENTH, Length, LengthError, parse_length

#: A length as `format_length` writes it.
LENGTH = re.compile(r"""(?:\d+'\ )?(?:\d+\ )?(?:\d+/)?\d+"|\d+(?:\.\d+)?\ mm\b|\d+\ ft\b""", re.VERBOSE)


def find_lengths(text: str) -> list[Length]:
    """The lengths that stand in a line.

    >>> [str(length.inches) for length in find_lengths('C is 1/16" long of 5\\' 3 1/4"')]
    ['1/16', '253/4']
    """
    return [length for found in LENGTH.findall(text) if (length := _read(found))]


def _read(found: str) -> Length | None:
    try:
        return parse_length(found)
    except LengthError:  # a person's own words may stand in a line: 1/48"
        return None


def is_alike(was: str, now: str) -> bool:
    """Whether it is one line, but for what its lengths are shown in; each may be rounded as far as a sixteenth off.

    >>> is_alike('pane: 20" × 31 1/2"', "pane: 508 mm × 800 mm"), is_alike('pane: 20"', 'pane: 20 1/16"')
    (True, False)
    """
    if was == now or _units(was) == _units(now) or LENGTH.sub("", was) != LENGTH.sub("", now):
        return was == now
    old, new = find_lengths(was), find_lengths(now)
    return len(old) == len(new) and all(abs(one - other) <= SIXTEENTH for one, other in zip(old, new, strict=True))


def _units(text: str) -> set[str]:
    return {mark for found in LENGTH.findall(text) for mark in ("mm", "'", '"', "ft") if mark in found}
