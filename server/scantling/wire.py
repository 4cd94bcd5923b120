"""JSON from outside, before anything looks into it: UTF-8, of bounded depth, with no number that JSON does not have."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from typing import Any, ClassVar

from scantling.engine.errors import EngineError

DEPTH = 64


class WireError(EngineError):
    sentences: ClassVar[Mapping[str, str]] = {
        "not-json": "{subject} is not JSON: {why}.",
        "too-deep": "{subject} is nested more than {limit} deep: flatten it.",
    }


def parse_text(data: bytes, subject: str = "The body") -> str:
    """Bytes as text. Raises WireError."""
    try:
        return data.decode()
    except UnicodeDecodeError as error:
        raise WireError("not-json", subject=subject, why=f"byte {error.start} is not UTF-8") from error


def parse_json(text: str, subject: str = "The body") -> Any:
    """Text as JSON. Python's reader recurses, so the depth is measured before it starts. Raises WireError."""
    if _measure_depth(text) > DEPTH:
        raise WireError("too-deep", subject=subject, limit=DEPTH)
    try:
        return json.loads(text, parse_constant=_refuse_constant)
    except json.JSONDecodeError as error:
        raise WireError("not-json", subject=subject, at=error.pos, why=error.msg) from error
    except ValueError as error:
        raise WireError("not-json", subject=subject, why=str(error)) from error


def _refuse_constant(name: str) -> None:
    raise ValueError(f"{name} is not a JSON number")


_STRING_OR_BRACKET = re.compile(r'"[^"\\]*(?:\\.[^"\\]*)*"?|[\[\]{}]', re.DOTALL)


def _measure_depth(text: str) -> int:
    """The deepest nesting, brackets within strings not counted."""
    depth = deepest = 0
    for found in _STRING_OR_BRACKET.finditer(text):
        if found[0] in ("[", "{"):
            depth += 1
            deepest = max(deepest, depth)
        elif found[0] in ("]", "}"):
            depth -= 1
    return deepest
