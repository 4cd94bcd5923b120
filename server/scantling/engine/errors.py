"""Refusals: how the engine says no. A key for screens and tests, a sentence for people, and the place.

Each module that refuses something subclasses `EngineError` and keeps its sentences in a table beside it.
A sentence quotes what was given and ends in what to do instead; it is read on a phone, so it stays short.
"""

from collections.abc import Mapping
from typing import ClassVar

QUOTE_AT_MOST = 48


def quote(text: str) -> str:
    """What was typed, fit to stand in a sentence: no control characters, and never longer than a line.

    >>> quote("63 1/")
    '“63 1/”'
    """
    printable = "".join(c if c.isprintable() else "·" for c in text[: QUOTE_AT_MOST + 1])
    return f"“{printable[:QUOTE_AT_MOST]}{'…' if len(text) > QUOTE_AT_MOST else ''}”"


class EngineError(Exception):
    """A refusal: `key` stays for ever, `message` may be reworded, `field` and `at` say where.

    `field` is the dotted name of what was wrong in the question ("walls.2.length"); `at` the character in its text.
    """

    sentences: ClassVar[Mapping[str, str]] = {}

    def __init__(self, key: str, *, field: str = "", at: int | None = None, **facts: object) -> None:
        self.key = key
        self.field = field
        self.at = at
        self.message = self.sentences[key].format(**facts)
        super().__init__(self.message)

    def body(self) -> dict[str, object]:
        """The one error body that every door gives back."""
        return {"key": self.key, "message": self.message, "where": {"field": self.field, "at": self.at}}
