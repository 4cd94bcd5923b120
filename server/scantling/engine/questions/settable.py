"""What may be set of each sort of thing, by name. What else is said of one counts for nothing there.

A notebook keeps such a name all the same, for a newer engine may have written it; whoever writes with this one is told.
"""

from collections.abc import Mapping

from scantling.engine.bodies import SORTS
from scantling.engine.questions.costs.of_house import FIELDS as OF_MONEY
from scantling.engine.questions.covered.said import COVER
from scantling.engine.questions.covered.said import FIELDS as OF_LABELS
from scantling.engine.questions.facts import OF_WALL
from scantling.engine.questions.shown_in import SETTING as SHOWN_IN
from scantling.engine.questions.supplies.said import FIELDS as OF_SUPPLIES
from scantling.engine.settings import OF_OPENING, OF_THING, SETTINGS


def _beginning(names: Mapping[str, object], *prefixes: str) -> frozenset[str]:
    return frozenset(name for name in names if name.startswith(prefixes))


# An article is known by its sort. Lengths are shown alike in a whole house.
SETTABLE: Mapping[str, frozenset[str]] = {
    "house": frozenset({*SETTINGS, *OF_SUPPLIES, *OF_MONEY}),
    "room": frozenset({*SETTINGS, *OF_SUPPLIES}) - {SHOWN_IN},
    "wall": frozenset(OF_WALL),
    "opening": _beginning(SETTINGS, *OF_OPENING),
    "obstacle": _beginning(SETTINGS, *OF_THING),
    "covering": _beginning(OF_LABELS, f"{COVER}."),
    **{sort: _beginning(OF_LABELS, f"{sort}.") for sort in SORTS},
}
