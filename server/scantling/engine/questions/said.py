"""What is said beside a question: settings by name, each read by the field of the question that it goes into.

So what a person writes down once is understood, and refused, in the words of the question that is asked with it.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from marshmallow import Schema, ValidationError, fields

from scantling.engine.errors import EngineError
from scantling.engine.forms import Field
from scantling.engine.questions.readings import Readings
from scantling.engine.shapes import first_refusal


@dataclass(frozen=True, slots=True)
class Wrong:
    """A setting that cannot be read, by its name; what was said otherwise stands."""

    name: str
    error: EngineError


def fields_of(prefix: str, schema: type[Schema], *names: str, **renamed: str) -> dict[str, Field]:
    """Fields of a question's schema by the names of settings: prefix.name."""
    known = schema().fields
    return {f"{prefix}.{name}": known[of] for name, of in {**{one: one for one in names}, **renamed}.items()}


def check_by(known: Mapping[str, Field], name: str, value: object) -> list[EngineError]:
    """What is wrong with a setting: nothing, or the refusal by its name. A name that is not known is not judged."""
    if name not in known:
        return []
    try:
        known[name].deserialize(as_asked(known[name], value))
    except ValidationError as error:
        refusal = first_refusal(error.messages)
        refusal.field = name
        return [refusal]
    return []


def show_by(known: Mapping[str, Field], defaults: Mapping[str, str]) -> dict[str, str]:
    """What is usual, as text, each as its field would show it: a field of a measure has a `show` for what it read."""
    shows = {name: getattr(known.get(name), "show", None) for name in defaults}
    return {name: show(known[name].deserialize(text)) if (show := shows[name]) else text
            for name, text in defaults.items()}  # fmt: skip


def collect(
    known: Mapping[str, Field], settings: Mapping[str, object], prefix: str
) -> tuple[dict[str, Any], list[Wrong]]:
    """Settings of a prefix as a question carries them, by name without it; and those that cannot be read, left out."""
    said: dict[str, Any] = {}
    wrong: list[Wrong] = []
    for name, value in settings.items():
        if name not in known or not name.startswith(f"{prefix}."):
            continue
        refused = check_by(known, name, value)
        wrong += (Wrong(name, error) for error in refused)
        if not refused and value not in ("", []):
            said[name.removeprefix(f"{prefix}.")] = as_asked(known[name], value)
    return said, wrong


def as_asked(field: Field, value: object) -> Any:
    """A setting's texts as a question would carry them: counts as numbers, rows without their empty cells."""
    if isinstance(field, fields.List):
        rows = value if isinstance(value, list) else [value]
        return [_row(field.inner, row) for row in rows]
    if isinstance(field, fields.Nested):
        # One thing with several facts is written as a list of one row.
        (row, *more) = value if isinstance(value, list) and value else [value]
        return value if more else _row(field, row)
    return _cell(field, value)


def _row(field: Field, row: object) -> Any:
    if not isinstance(row, Mapping):
        return row
    if not isinstance(field, fields.Nested):
        return next((cell for cell in row.values() if cell), "")
    known = field.schema.fields
    cells = {name: cell for name, cell in row.items() if cell not in (None, "") and name in known}
    return {name: _cell(known[name], cell) for name, cell in cells.items()}


def _cell(field: Field, value: object) -> Any:
    if not isinstance(value, str):
        return value
    text = value.strip()
    if isinstance(field, Readings) and "," in text:
        return [one.strip() for one in text.split(",")]
    if isinstance(field, fields.Integer) and text.isascii() and text.isdigit() and len(text) <= 6:
        return int(text)
    return text
