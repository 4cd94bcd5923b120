"""Names by which the things in one wall are told apart: a wall with two windows has a left and a right one."""

from collections.abc import Sequence

from scantling.engine.tape.lengths import Length

ORDER = {2: ("left", "right"), 3: ("left", "middle", "right")}
COUNTED = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth")


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
            names[place] = f"{_turn_of(turn, len(alike))} {name}"
    return names


def _turn_of(turn: int, count: int) -> str:
    words = ORDER.get(count, COUNTED)
    return words[turn] if turn < len(words) else _ordinal(turn + 1)


def _ordinal(place: int) -> str:
    """Which one it is, in figures.

    >>> _ordinal(11), _ordinal(21), _ordinal(32), _ordinal(43)
    ('11th', '21st', '32nd', '43rd')
    """
    ending = "th" if place % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(place % 10, "th")
    return f"{place}{ending}"
