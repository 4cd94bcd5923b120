"""JSON from outside: what is too deep, or all brackets, is refused by name before Python's reader begins on it."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scantling.journal_file.lines import read_lines
from scantling.wire import BRACKETS, DEPTH, WireError, parse_json


def refusal(text):
    with pytest.raises(WireError) as refused:
        parse_json(text)
    return refused.value.key


def nested(deep):
    return "[" * deep + "]" * deep


def test_a_text_may_be_as_deep_as_the_limit_and_no_deeper():
    assert parse_json(f"[{nested(DEPTH - 1)}, {nested(DEPTH - 1)}]")
    assert refusal(nested(DEPTH + 1)) == "too-deep"
    assert refusal('{"a":' * (DEPTH + 1) + "1" + "}" * (DEPTH + 1)) == "too-deep"
    assert refusal(f"[{nested(3)}, {nested(DEPTH)}]") == "too-deep"


def test_a_text_may_open_as_many_brackets_as_the_limit_and_no_more():
    assert len(parse_json(f"[{','.join(['{}'] * (BRACKETS - 1))}]")) == BRACKETS - 1
    assert refusal(f"[{','.join(['{}'] * BRACKETS)}]") == "too-many-brackets"
    assert refusal("[]" * (BRACKETS + 1)) == "too-many-brackets"


@pytest.mark.parametrize(
    "words",
    ["[" * 2 * BRACKETS, '\\"[{' * BRACKETS, "\\\\", "]" * 200, '"' + "{" * 200],
    ids=["brackets alone", "after a quote", "a backslash at the end", "closing ones", "a quote first"],
)
def test_brackets_within_a_string_are_words_and_are_not_counted(words):
    text = json.dumps([words, [], words])
    assert parse_json(text) == [words, [], words]
    assert refusal(json.dumps([words]) + nested(DEPTH + 1)) == "too-deep"


@pytest.mark.parametrize("text", ["[" * DEPTH, "]" * 99, '"' * 99, "", "[NaN]", '["\\'], ids=repr)
def test_what_is_no_json_is_told_so_whatever_its_brackets(text):
    assert refusal(text) == "not-json"


@given(st.recursive(st.text('[]{}"\\ab'), lambda inner: st.lists(inner) | st.dictionaries(st.text('[]{}"\\'), inner)))
def test_whatever_is_written_as_json_and_is_not_deep_is_read_back(value):
    assert parse_json(json.dumps([[], value, *[[]] * DEPTH])) == [[], value, *[[]] * DEPTH]


@pytest.mark.parametrize("text", ["[" * 600_000, "[]" * 300_000, "[" * (DEPTH + 1)], ids=["deep", "flat", "just deep"])
def test_what_is_refused_for_its_brackets_never_comes_to_pythons_reader(text, monkeypatch):
    monkeypatch.setattr(json, "loads", None)
    assert refusal(text) in ("too-many-brackets", "too-deep")
    (line,) = read_lines([text.encode()])
    with pytest.raises(WireError, match=r"^Line 1 "):
        line.parse()
