"""The shapes that questions and answers share: lengths in and out, degrees, and refusals from marshmallow as ours.

A length comes in as text, as a person writes it, and goes out three ways at once: inches, exact, shown.
"""

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Any

from marshmallow import EXCLUDE, Schema, ValidationError, fields, validate

from scantling.engine import forms
from scantling.engine.errors import EngineError
from scantling.engine.kept import remembered
from scantling.engine.shown.shown_in import SHOWN_IN
from scantling.engine.tape.angles import parse_degrees
from scantling.engine.tape.figures import parse_figure
from scantling.engine.tape.lengths import SIXTEENTH, SIXTY_FOURTH, Length, format_length, from_decimals, parse_length
from scantling.engine.tape.written import LARGEST
from scantling.engine.words import say, show_quoted


class QuestionError(EngineError):
    family = "question"


def refused(error: EngineError) -> ValidationError:
    """An engine refusal in the form that marshmallow carries up to the door."""
    return ValidationError({"key": error.key, "message": error.message, "at": error.at})


def _parse_exact(text: object) -> Length:
    """The exact form of an answer, which nobody writes off a tape: there "631/4" is 63 1/4 without its space."""
    length = parse_figure(text) if isinstance(text, str) else None
    if length is None or length.inches > LARGEST:
        raise ValidationError(say("ask-exact"))
    return length


class LengthText(fields.Field[Length]):
    """A length as a person writes it: "63 1/4", "5' 3 1/4\\"", "1607 mm"; or as answers do: {"exact": "253/4"}."""

    wants = say("ask-length")

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Length:
        if isinstance(value, Mapping):
            return _parse_exact(value.get("exact"))
        if isinstance(value, bool) or not isinstance(value, str | int | float):
            raise ValidationError(say("ask-length-as-text"))
        try:
            return parse_length(str(value))
        except EngineError as error:
            raise refused(error) from error

    def show(self, value: Length) -> str:
        """A length that it read, as finely as a tape is read."""
        return format_length(value, SIXTY_FOURTH)


class DegreesText(fields.Field[Fraction]):
    """Decimal degrees as text or number: "91.5", 90."""

    wants = say("ask-degrees")

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Fraction:
        if isinstance(value, bool) or not isinstance(value, str | int | float):
            raise ValidationError(say("ask-degrees-as-text"))
        try:
            return parse_degrees(str(value))
        except EngineError as error:
            raise refused(error) from error


class Graduation(LengthText):
    """What figures are shown to: a fraction of an inch between 1/64 and 1, such as "1/16"."""

    wants = say("ask-graduation")

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Length:
        graduation = super()._deserialize(value, attr, data, **kwargs)
        if graduation.inches.numerator != 1 or graduation.inches.denominator not in (1, 2, 4, 8, 16, 32, 64):
            raise ValidationError(say("ask-fraction-of-inch"))
        return graduation


class AskedIn(forms.Schema):
    """What every question has: its name, the graduation its figures are shown to, and what lengths are shown in.

    `shown_in` of a question that names a house, or something in it, is as that house wants it, unless it is said.
    """

    ask = fields.String(required=True)
    nearest = Graduation(load_default=SIXTEENTH)
    shown_in = fields.String(validate=validate.OneOf(SHOWN_IN, error=say("ask-one-of", choices=", ".join(SHOWN_IN))))


class LengthOut(Schema):
    """A length in an answer. `exact` is null where the figure comes from an angle."""

    inches = fields.Float(required=True)
    exact = fields.String(required=True, allow_none=True)
    shown = fields.String(required=True)


def show(length: Length, nearest: Length = SIXTEENTH) -> dict[str, object]:
    """A length as answers give it; shown is rounded once, from the full figure.

    >>> show(Length(Fraction(253, 4)))
    {'inches': 63.25, 'exact': '253/4', 'shown': '63 1/4"'}
    """
    inches, exact = _figure(*length.inches.as_integer_ratio(), length.exact)
    return {"inches": inches, "exact": exact, "shown": format_length(length, nearest)}


@remembered
def _figure(inches: int, part: int, exact: bool) -> tuple[float, str | None]:
    length = Fraction(inches, part)
    return (float(length), str(length)) if exact else (float(from_decimals(float(length))), None)


class DrawingOut(fields.String):
    """An SVG drawing; every name in it is escaped."""


def out(schema: type[Schema], *, many: bool = False, none: bool = False) -> fields.Nested:
    return fields.Nested(schema, many=many, required=True, allow_none=none)


def text_out(*, none: bool = False) -> fields.String:
    return fields.String(required=True, allow_none=none)


def texts_out() -> fields.List[str]:
    return fields.List(fields.String(), required=True)


def one_of(*choices: str) -> validate.OneOf:
    return validate.OneOf(choices, error=say("ask-one-of", choices=", ".join(choices)))


def load(schema: Schema, question: Mapping[str, Any]) -> dict[str, Any]:
    """A question checked by its schema; the first thing wrong with it is raised, by name and place."""
    try:
        loaded: dict[str, Any] = schema.load(question)
    except ValidationError as error:
        raise first_refusal(error.messages) from error
    return loaded


def first_refusal(messages: Any) -> EngineError:
    """The first leaf of marshmallow's nested messages, as one of our refusals."""
    path, leaf = next(_leaves(messages))
    if isinstance(leaf, dict):
        refusal = QuestionError("bad-field", sentence=leaf["message"], field=path, at=leaf["at"])
        refusal.key = leaf["key"]
        return refusal
    return QuestionError("bad-field", sentence=show_quoted(str(leaf)), field=path)


def _leaves(messages: Any) -> Iterator[tuple[str, Any]]:
    waiting: list[tuple[tuple[str, ...], Any]] = [((), messages)]
    while waiting:
        path, found = waiting.pop(0)
        if isinstance(found, dict) and not {"key", "message"} <= found.keys():
            waiting[:0] = [((*path, str(name)), below) for name, below in found.items()]
        elif isinstance(found, list):
            waiting[:0] = [(path, below) for below in found]
        else:
            yield ".".join(part for part in path if part != "_schema"), found


__all__ = [
    "EXCLUDE", "AskedIn", "DegreesText", "DrawingOut", "Graduation", "LengthOut", "LengthText", "QuestionError",
    "fields", "first_refusal", "load", "one_of", "out", "show", "text_out", "texts_out", "validate",
]  # fmt: skip
