"""Questions through the desk: what is answered must have the shape that the question's schema promises."""

from typing import Any

from scantling.engine.desk import QUESTIONS, answer
from scantling.engine.errors import EngineError
from scantling.engine.words.en import TEXTS


def ask(name: str, **question: Any) -> dict[str, Any]:
    """The answer, checked against the question's own schema; fails where it is refused."""
    found = answer({"ask": name, **question})
    assert "answer" in found, found
    assert QUESTIONS[name].gives().validate(found["answer"]) == {}
    return found["answer"]


def refusal(name: str, **question: Any) -> tuple[str, str, str]:
    """Key, field and sentence of a refusal; fails where the question is answered."""
    error = answer({"ask": name, **question}).get("error")
    assert error is not None, "it was answered"
    return error["key"], error["where"]["field"], error["message"]


def keys_of(refusals: type[EngineError]) -> set[str]:
    """Every key that a kind of refusal has a sentence for."""
    return {key.partition(".")[2] for key in TEXTS if key.startswith(f"{refusals.family}.")}


def without(question: dict[str, Any], *names: str) -> dict[str, Any]:
    return {name: value for name, value in question.items() if name not in names}
