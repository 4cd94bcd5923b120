"""Forms: schemas whose refusals say what to write. marshmallow's own say only that something is missing, or not valid.

A field of ours says by itself what it `wants`; of marshmallow's fields it is known here.
"""

from typing import Any

import marshmallow
from marshmallow import fields, validate

from scantling.engine.words import say

Field = fields.Field[Any]

# The more special kind first: a whole number is a number too.
WANTS: tuple[tuple[type[Field], str], ...] = (
    (fields.Integer, "ask-a-whole"),
    (fields.Number, "ask-a-number"),
    (fields.Boolean, "ask-a-boolean"),
    (fields.String, "ask-a-text"),
    (fields.List, "ask-a-list"),
    (fields.Nested, "ask-an-object"),
    (fields.Dict, "ask-an-object"),
    (fields.Field, "ask-a-value"),
)


class Schema(marshmallow.Schema):
    """A schema for what comes in."""

    error_messages = {
        "unknown": say("ask-unknown"),
        "type": say("ask-object"),
    }

    def on_bind_field(self, field_name: str, field_obj: Field) -> None:
        """marshmallow's hook: each field is told by which name it is written here."""
        name = field_obj.data_key or field_name
        _tell(field_obj, name, _say_wanted(field_obj))
        if isinstance(field_obj, fields.List):
            _tell(field_obj.inner, name, _say_kind(field_obj.inner))
        if isinstance(field_obj, fields.Dict) and field_obj.key_field:
            _tell(field_obj.key_field, name, _say_kind(field_obj.key_field))


def _tell(field: Field, name: str, wanted: str) -> None:
    said = {
        "required": say("ask-missing", name=name, wanted=wanted),
        "null": say("ask-null", name=name, wanted=wanted),
        **dict.fromkeys(("invalid", "type", "validator_failed"), say("ask-not-this", wanted=wanted)),
    }
    # It formats what it says, so a brace must stand twice; and copies of one field share their messages.
    doubled = {key: words.replace("{", "{{").replace("}", "}}") for key, words in said.items()}
    field.error_messages = {**field.error_messages, **doubled}


def _say_wanted(field: Field) -> str:
    """What is to be written for a field: a list, each a length such as "63 1/4"; and what that is, where that is told.

    >>> _say_wanted(fields.List(fields.Integer(), metadata={"description": "how many of each"}))
    'a list, each a whole number: how many of each'
    """
    wanted = _say_kind(field)
    if isinstance(field, fields.List):
        wanted = say("ask-each", wanted=wanted, one=_say_kind(field.inner))
    told = field.metadata.get("description")
    return f"{wanted}: {str(told).rstrip('.')}" if told else wanted


def _say_kind(field: Field) -> str:
    own = getattr(field, "wants", None)
    if own:
        return str(own)
    choices = [check.choices for check in field.validators if isinstance(check, validate.OneOf)]
    if choices:
        return say("ask-choice", choices=", ".join(choices[0]))
    kind = next(say(words) for sort, words in WANTS if isinstance(field, sort))
    if not isinstance(field, fields.Nested):
        return kind
    needed = [one.data_key or name for name, one in field.schema.fields.items() if one.required]
    many = say("ask-list-of", one=kind) if field.many else kind
    return say("ask-with", wanted=many, fields=", ".join(needed)) if needed else many
