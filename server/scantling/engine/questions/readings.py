"""Readings as a question brings them, one text or a list of them, and the working as an answer shows it."""

from collections.abc import Iterable, Mapping
from typing import Any

from marshmallow import Schema, ValidationError, fields

from scantling.engine.errors import EngineError
from scantling.engine.questions.question import Answer
from scantling.engine.shapes import LengthOut, LengthText, out, refused, show, text_out, texts_out
from scantling.engine.survey.room import Measure, Problem
from scantling.engine.tape.angles import Corner, derive_corner_by_gauge, parse_degrees
from scantling.engine.tape.lengths import SIXTY_FOURTH, Length, parse_length
from scantling.engine.trim.piece import Step
from scantling.engine.words import say

READINGS_AT_MOST = 100


class Positive(LengthText):
    """A length as a person writes it, more than nothing: "2 1/4"."""

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Length:
        length = super()._deserialize(value, attr, data, **kwargs)
        if not length:
            raise ValidationError(say("more-than-nothing"))
        return length


class Readings(fields.Field[Measure]):
    """One reading as text, such as "63 1/4", or a list of them, each of which is looked at."""

    wants = say("wants-readings")

    def __init__(self, *, signed: bool = False, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self.signed = signed

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Measure:
        many = value if isinstance(value, list) else [value]
        if not 1 <= len(many) <= READINGS_AT_MOST:
            raise ValidationError(say("write-a-reading-or-list", most=READINGS_AT_MOST))
        lengths = [self._read(one, place if isinstance(value, list) else None) for place, one in enumerate(many)]
        return Measure(attr or "", tuple(str(one) for one in many), tuple(lengths))

    def _read(self, one: Any, place: int | None) -> Length:
        if isinstance(one, bool) or not isinstance(one, str | int | float):
            raise _placed(ValidationError(say("write-a-reading")), place)
        try:
            return parse_length(str(one), allow_negative=self.signed)
        except EngineError as error:
            raise _placed(refused(error), place) from error


def _placed(error: ValidationError, place: int | None) -> ValidationError:
    return error if place is None else ValidationError({str(place): error.messages})


class Gauged(fields.Field[Corner]):
    """A corner in degrees as a gauge read it, inside the opening: "90.5"."""

    wants = say("wants-gauged")

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Corner:
        if isinstance(value, bool) or not isinstance(value, str | int | float):
            raise ValidationError(say("angle-in-degrees"))
        try:
            return derive_corner_by_gauge("inside", parse_degrees(str(value)), str(value))
        except EngineError as error:
            raise refused(error) from error


class StepOut(Schema):
    text = text_out()
    value = out(LengthOut, none=True)
    readings = texts_out()


class ProblemOut(Schema):
    wall, key, message = text_out(), text_out(), text_out()


def problems_out(problems: Iterable[Problem]) -> list[Answer]:
    return [{"wall": one.wall, "key": one.key, "message": one.message} for one in problems]


def show_working(steps: Iterable[Step], nearest: Length) -> list[Answer]:
    """Working is followed with a pencil: a figure that the wanted graduation would hide is shown to a 64th."""
    return [
        {
            "text": step.text,
            "value": None if step.value is None else show(step.value, _fine(step.value, nearest)),
            "readings": list(step.readings),
        }
        for step in steps
    ]


def _fine(length: Length, nearest: Length) -> Length:
    return nearest if (length.inches / nearest.inches).denominator == 1 else SIXTY_FOURTH
