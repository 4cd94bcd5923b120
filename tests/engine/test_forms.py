"""Forms: whatever is left out or written wrong, a question or an entry says what to write there, by its own name."""

from collections.abc import Iterator
from typing import Any

import marshmallow
import pytest
from marshmallow import fields
from scantling.engine.bodies import BODIES
from scantling.engine.desk import QUESTIONS, answer
from scantling.engine.forms import Schema
from scantling.engine.journal import EntrySchema

FORMS = {
    **{f"ask {name}": question.takes for name, question in QUESTIONS.items()},
    **{f"say {kind}": body for kind, body in BODIES.items()},
    "an entry": EntrySchema,
}
#: How marshmallow's own sentences begin and end, which say what is wrong and not what to do.
LIBRARY = (
    "Missing data", "Not a valid", "Unknown field", "Invalid input", "Invalid value", "Invalid type", "may not be null",
)  # fmt: skip


def forms_in(form: marshmallow.Schema) -> Iterator[marshmallow.Schema]:
    """A form, and every form that is held in it, however deep."""
    waiting = [form]
    while waiting:
        found = waiting.pop()
        yield found
        for field in found.fields.values():
            inner = field.inner if isinstance(field, fields.List) else field
            if isinstance(inner, fields.Nested):
                waiting.append(inner.schema)


def messages(found: Any) -> Iterator[str]:
    waiting = [found]
    while waiting:
        one = waiting.pop()
        if isinstance(one, dict) and "message" not in one:
            waiting += one.values()
        elif isinstance(one, list):
            waiting += one
        else:
            yield one if isinstance(one, str) else one["message"]


@pytest.mark.parametrize("form", FORMS.values(), ids=FORMS)
def test_what_is_missing_or_of_another_sort_is_told_by_what_to_write(form):
    for each in forms_in(form()):
        assert isinstance(each, Schema)
        needed = {field.data_key or name for name, field in each.fields.items() if field.required}
        missing = each.validate({})
        assert needed <= missing.keys()
        for name in needed:
            assert any(f'"{name}" is missing: write ' in words for words in messages(missing[name]))
        names = [field.data_key or name for name, field in each.fields.items()]
        for instead in (None, {}, [], True, "", [None], {"no such": 1}, 3.5):
            said = [*messages(each.validate(dict.fromkeys(names, instead))), *messages(each.validate({"no such": 1}))]
            assert [words for words in said if any(theirs in words for theirs in LIBRARY)] == []
        assert not any(theirs in words for words in messages(each.validate([])) for theirs in LIBRARY)


def test_the_sentence_names_the_field_and_gives_one_to_follow():
    error = answer({"ask": "casing", "reveal": "3/16", "leg_width": "2 1/4", "opening": {"left": "80", "right": "80"}})
    assert error["error"]["where"]["field"] == "opening.width"
    assert error["error"]["message"] == (
        '"width" is missing: write a reading as text, such as "63 1/4", or a list of them: along the head, from jamb to'
        " jamb."
    )
    wrong = answer({"ask": "boards", "stock": [{}], "pieces": []})["error"]
    assert (wrong["where"]["field"], wrong["message"]) == (
        "stock.0.length", '"length" is missing: write a length as text, such as "63 1/4".'
    )  # fmt: skip
    assert answer({"ask": "casing"})["error"]["message"] == (
        '"opening" is missing: write an object with width, left, right.'
    )
