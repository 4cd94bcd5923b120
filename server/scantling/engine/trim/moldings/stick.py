"""The stick in the hand: how thick the boards along one wall really are, where that was measured on them.

Moldings of one profile differ by 1/32 and more from stick to stick; at an outside corner, and where one board is coped
to another, that is seen. Said of a wall, by the molding's name: stick.base. It is the same profile and bought as it;
nothing said, the standard's thickness counts. Common practice, no source.
"""

from fractions import Fraction

from scantling.engine.errors import EngineError, quote
from scantling.engine.standard import MOLDINGS
from scantling.engine.survey.room import Problem, SurveyError, Wall
from scantling.engine.tape.lengths import SIXTY_FOURTH, Length, parse_length

#: What a wall may be told of its boards.
SETTINGS = tuple(f"stick.{molding}" for molding in MOLDINGS)
THICKEST = Length(Fraction(3))


class StickError(SurveyError):
    family = "stick"


def actual_thickness(wall: Wall, molding: str) -> Length | None:
    """How thick a molding's boards along a wall were found; None where nothing readable was said."""
    try:
        return _parse(wall, molding)
    except StickError:
        return None


def check_stick(wall: Wall, molding: str) -> list[Problem]:
    """What was said of them that is no thickness."""
    try:
        _parse(wall, molding)
    except StickError as error:
        return [Problem(wall.id, error.key, error.message)]
    return []


def _parse(wall: Wall, molding: str) -> Length | None:
    text = str(wall.settings.get(f"stick.{molding}") or "").strip()
    if not text:
        return None
    try:
        found = parse_length(text)
    except EngineError as error:
        raise StickError("no-thickness", wall=wall.name.capitalize(), text=quote(text)) from error
    if not SIXTY_FOURTH <= found <= THICKEST:
        raise StickError("no-thickness", wall=wall.name.capitalize(), text=quote(text))
    return found
