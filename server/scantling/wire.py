"""JSON from outside, before anything looks into it: UTF-8, bounded in depth and brackets, its numbers JSON's own."""

from __future__ import annotations

import itertools
import json
import re
from array import array
from collections.abc import Mapping
from typing import Any, ClassVar

from scantling.engine.errors import EngineError

DEPTH = 64
# As many as the largest entry has bytes: nothing that is kept holds so many.
BRACKETS = 100_000


class WireError(EngineError):
    sentences: ClassVar[Mapping[str, str]] = {
        "not-json": "{subject} is not JSON: {why}.",
        "too-many-brackets": "{subject} opens more than {limit} brackets: send it in parts.",
        "too-deep": "{subject} is nested more than {limit} deep: flatten it.",
    }


def parse_text(data: bytes, subject: str = "The body") -> str:
    """Bytes as text. Raises WireError."""
    try:
        return data.decode()
    except UnicodeDecodeError as error:
        raise WireError("not-json", subject=subject, why=f"byte {error.start} is not UTF-8") from error


def parse_json(text: str, subject: str = "The body") -> Any:
    """Text as JSON. Python's reader recurses, and makes an object of every bracket: both are bounded before it starts.

    Raises WireError.
    """
    if text.count("[") + text.count("{") > DEPTH:
        _check_brackets(text, subject)
    try:
        return json.loads(text, parse_constant=_refuse_constant)
    except json.JSONDecodeError as error:
        raise WireError("not-json", subject=subject, at=error.pos, why=error.msg) from error
    except ValueError as error:
        raise WireError("not-json", subject=subject, why=str(error)) from error


def _refuse_constant(name: str) -> None:
    raise ValueError(f"{name} is not a JSON number")


_STRING = re.compile(r'"[^"\\]*(?:\\.[^"\\]*)*"?', re.DOTALL)
# An opening bracket as one more level, a closing one as one less.
_LEVELS = bytes.maketrans(b"[{]}", b"\x01\x01\xff\xff")
_NO_BRACKET = bytes(set(range(256)) - set(b"[{]}"))


def _check_brackets(text: str, subject: str) -> None:
    """How many brackets there are and how deep they are nested, those within strings not counted.

    Without a loop of Python's own: a file of 64 megabytes may be all brackets.
    """
    outside = _STRING.sub("", text).encode("utf-8", "surrogatepass")
    levels = array("b", outside.translate(_LEVELS, _NO_BRACKET))
    if levels.count(1) > BRACKETS:
        raise WireError("too-many-brackets", subject=subject, limit=f"{BRACKETS:,}")
    if max(itertools.accumulate(levels), default=0) > DEPTH:
        raise WireError("too-deep", subject=subject, limit=DEPTH)
