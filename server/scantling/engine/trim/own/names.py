"""Names: the figures of a room that a sum may call by name, in the words that the screens use for them.

Of several readings the smallest counts, for what goes between; where they differ the largest has a name too, for what
must cover. Common practice, no source. Two things of one name along one wall are numbered from its left.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from scantling.engine.survey.room import Measure, Obstacle, Opening, Room
from scantling.engine.tape.lengths import Length
from scantling.engine.tape.marks import plain_words
from scantling.engine.trim.piece import Step
from scantling.engine.words import say

#: What of the standard a sum may name, by its setting.
OF_STANDARD = ("base.height", "base.thickness", "casing.width", "casing.thickness", "reveal", "kerf")


@dataclass(frozen=True, slots=True)
class NamedFigure:
    """A figure by its name, with the step that says in a working where it comes from."""

    name: str
    length: Length
    step: Step


def derive_names(room: Room) -> dict[str, NamedFigure]:
    """Every figure of the room by its name in plain words, in walking order, and then the standard's."""
    found: dict[str, NamedFigure] = {}
    for named in (*_of_walls(room), *_of_standard(room)):
        found.setdefault(plain_words(named.name), named)
    return found


def _of_walls(room: Room) -> Iterator[NamedFigure]:
    for wall in room.walls:
        yield from _named(wall.name, wall.length)
        things: list[Opening | Obstacle] = [*wall.openings, *wall.obstacles]
        for thing in things:
            name = f"{wall.name} {thing.name}"
            yield from _named(f"{name} width", thing.width)
            yield from _named(f"{name} from the left", thing.at)
            if isinstance(thing, Opening):
                yield from _named(f"{name} left height", thing.left)
                yield from _named(f"{name} right height", thing.right)
            else:
                yield from _named(f"{name} height", thing.height)


def _named(name: str, measure: Measure | None) -> Iterator[NamedFigure]:
    if measure is None:
        return
    count = len(measure.texts)
    said = say("named-smallest", name=name, count=count) if count > 1 else name
    yield NamedFigure(name, measure.smallest, Step(said, measure.smallest, measure.texts))
    if measure.spread:
        said = say("named-largest", name=name, count=count)
        yield NamedFigure(f"largest {name}", measure.largest, Step(said, measure.largest, measure.texts))


def _of_standard(room: Room) -> Iterator[NamedFigure]:
    for setting in OF_STANDARD:
        name = setting.replace(".", " ")
        length: Length = getattr(room.standard, setting.replace(".", "_"))
        yield NamedFigure(name, length, Step(f"{name} ({room.standard.source(setting)})", length))
