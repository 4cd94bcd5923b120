"""English: the catalogs of all floors as one table, the forms that numbers have, and what is put in metric, and how."""

from collections.abc import Mapping

from scantling.engine.words.en import tape
from scantling.engine.words.en.metric import EXAMPLES as EXAMPLES

FLOORS = (tape,)
TEXTS = {key: text for floor in FLOORS for key, text in floor.TEXTS.items()}
#: Texts whose figures are rules and no examples, each with the table that says what they are in metric.
IN_METRIC: Mapping[str, Mapping[str, str]] = {}


def plural(count: int) -> str:
    """Which form of a text goes with a number."""
    return "one" if count == 1 else "other"
