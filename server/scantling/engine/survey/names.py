"""Names by which the things in one wall are told apart: a wall with two windows has a left and a right one."""

from collections.abc import Sequence

from scantling.engine.tape.lengths import Length
from scantling.engine.words import ordinal, say

ORDER = {2: ("left", "right"), 3: ("left", "middle", "right")}
COUNTED = range(1, 11)


def name_things(things: Sequence[tuple[str, Length | None]]) -> list[str]:
    """Names by which the things in one wall are told apart: by their places, or till all are read as they were walked.

    >>> from fractions import Fraction
    >>> name_things([("window", Length(Fraction(60))), ("door", None), ("window", Length(Fraction(8)))])
    ['right window', 'door', 'left window']
    """
    names = [name for name, _ in things]
    for name in set(names):
        alike = [place for place, (other, _) in enumerate(things) if other == name]
        where = {place: things[place][1] for place in alike}
        if all(at is not None for at in where.values()):
            alike.sort(key=lambda place: (where[place], place))
        for turn, place in enumerate(alike) if len(alike) > 1 else ():
            names[place] = say("thing-of-some", which=_turn_of(turn, len(alike)), thing=name)
    return names


def _turn_of(turn: int, count: int) -> str:
    words = ORDER.get(count, COUNTED)
    return say(f"which-{words[turn]}") if turn < len(words) else ordinal(turn + 1)
