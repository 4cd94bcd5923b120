"""Words: every sentence that the engine shows, by key, from the catalogs of one language; the only door to them.

The code holds rules and figures; what people read stands in `words/en/`, a file a floor, each a table of key and text
whose `{names}` are the values that `say` is given. Another language is one more folder with the same keys. A sentence
with an example in it is shown with a metric one where lengths are; where they are in inches that costs nothing.
A key or a value that is missing raises: `tests/engine/test_words.py` reads every call.
"""

from collections.abc import Iterable
from fractions import Fraction
from functools import cache, reduce

from scantling.engine.shown.shown_in import is_metric
from scantling.engine.words.en import EXAMPLES, IN_METRIC, TEXTS, ordinal, plural

__all__ = ["all_of", "any_of", "ordinal", "say", "say_counted"]


def say(key: str, /, **values: object) -> str:
    """The sentence of a key, its values put in.

    >>> say("length.too-great", text="“99999 ft”")
    '“99999 ft” is over 15 miles: check the figure.'
    >>> from scantling.engine.shown.shown_in import MILLIMETERS, showing
    >>> with showing(MILLIMETERS): say("length.empty")
    'Nothing was given: write a length such as 1607 mm.'
    """
    return (_in_metric(key) if is_metric() else TEXTS[key]).format(**values)


def say_counted(key: str, count: int | Fraction, /, **values: object) -> str:
    """One of the forms that a language has for numbers, in English "key.one" and "key.other", with `{count}`."""
    return say(f"{key}.{plural(count)}", count=count, **values)


def all_of(parts: Iterable[str]) -> str:
    """A few things that all hold: this and that."""
    return reduce(lambda one, other: say("all-of", one=one, other=other), parts)


def any_of(parts: Iterable[str]) -> str:
    """A few things to choose of: this or that."""
    return reduce(lambda one, other: say("any-of", one=one, other=other), parts)


@cache
def _in_metric(key: str) -> str:
    """A text with each of its figures as those who use millimeters would write it."""
    text: str = TEXTS[key]
    for figure, metric in IN_METRIC.get(key, EXAMPLES).items():
        text = text.replace(figure, metric)
    return text


def show_quoted(text: str) -> str:
    """Examples in metric where what was typed may stand beside one: those in straight quotes alone, which ours are."""
    return text.replace('"63 1/4"', '"1607 mm"').replace('"2 1/4"', '"57 mm"') if is_metric() else text
