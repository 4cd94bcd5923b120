"""Refusals: how the engine says no. A key for screens and tests, a sentence for people, and the place.

Each module that refuses something subclasses `EngineError` with a `family`, under which its sentences stand in
`words/`: "family.key". The shell, whose sentences are none of the engine's, keeps them in a table beside it.
A sentence quotes what was given and ends in what to do instead; it is read on a phone, so it stays short.
"""

import re
from collections.abc import Mapping
from typing import ClassVar

from scantling.engine.words import say

QUOTE_AT_MOST = 48
# Controls, marks that turn the direction of text, lone surrogates. Named here, because what Python calls printable
# differs between the versions that two devices run, and they must answer alike.
UNSHOWN = re.compile("[\x00-\x1f\x7f-\x9f\xad\u200b-\u200f\u2028-\u202e\u2060-\u206f\ud800-\udfff\ufeff\ufff9-\uffff]")


def plain(text: str, instead: str = "·") -> str:
    """Text with nothing in it that a sentence, a drawing or a log line cannot hold.

    >>> plain("63\\x001/4")
    '63·1/4'
    """
    return UNSHOWN.sub(instead, text)


def quote(text: str) -> str:
    """What was typed, fit to stand in a sentence: no control characters, and never longer than a line.

    >>> quote("63 1/")
    '“63 1/”'
    """
    return f"“{plain(text[:QUOTE_AT_MOST])}{'…' if len(text) > QUOTE_AT_MOST else ''}”"


class EngineError(Exception):
    """A refusal: `key` stays for ever, `message` may be reworded, `field` and `at` say where.

    `field` is the dotted name of what was wrong in the question ("walls.2.length"); `at` the character in its text.
    """

    family: ClassVar[str] = ""
    sentences: ClassVar[Mapping[str, str]] = {}

    def __init__(self, key: str, *, field: str = "", at: int | None = None, **facts: object) -> None:
        self.key = key
        self.field = field
        self.at = at
        own = self.sentences.get(key)
        self.message = own.format(**facts) if own else say(f"{self.family}.{key}", **facts)
        super().__init__(self.message)

    def body(self) -> dict[str, object]:
        """The one error body that every door gives back."""
        return {"key": self.key, "message": self.message, "where": {"field": self.field, "at": self.at}}
