"""The desk: the only door to the engine. A question goes in as a dict, an answer or a refusal comes out.

The phone's worker, `POST /api/ask` and the command line pass the same JSON through it, so they cannot disagree.
"""

import json
from collections.abc import Iterable, Mapping
from typing import Any

from scantling.engine.errors import EngineError
from scantling.engine.notebook import Notebook
from scantling.engine.questions import QUESTIONS
from scantling.engine.questions.question import Clock, Context
from scantling.engine.shapes import QuestionError, load

__all__ = ["QUESTIONS", "Desk", "answer"]


class Desk:
    """One notebook, and the questions that may be asked of it. `clock`, in seconds, may only cut a search off."""

    def __init__(self, entries: Iterable[Mapping[str, Any]] = (), clock: Clock | None = None) -> None:
        self.context = Context(Notebook(), clock)
        self.take(entries)

    def take(self, entries: Iterable[Mapping[str, Any]]) -> dict[str, Any]:
        """Add entries to the notebook; repeats and arrival order do not matter.

        >>> Desk().take([])
        {'taken': 0, 'refused': [], 'kept_unread': 0}
        """
        return self.context.notebook.take(entries)

    def answer(self, question: object) -> dict[str, Any]:
        """`{"answer": {…}}` or `{"error": {"key", "message", "where"}}`; never raises for what a person typed.

        >>> Desk().answer({"ask": "read", "text": "5' 3 1/4"})["answer"]["length"]["shown"]
        '63 1/4"'
        """
        try:
            if not isinstance(question, Mapping) or not isinstance(question.get("ask"), str):
                raise QuestionError("not-a-question", field="ask")
            name = question["ask"]
            if name not in QUESTIONS:
                raise QuestionError("no-such-question", field="ask", name=name[:40], names=", ".join(QUESTIONS))
            asked = QUESTIONS[name]
            return {"answer": asked.answer(load(asked.loader, question), self.context)}
        except EngineError as refusal:
            return {"error": refusal.body()}

    def answer_text(self, text: str) -> str:
        """The same in JSON; a list of questions gives a list of answers. Pure ASCII, one form on every machine."""
        try:
            asked = json.loads(text)
        except (ValueError, RecursionError) as error:
            why = "it is nested too deep" if isinstance(error, RecursionError) else str(error)
            return dump({"error": QuestionError("not-json", why=why).body()})
        return dump([self.answer(one) for one in asked] if isinstance(asked, list) else self.answer(asked))


def dump(answered: object) -> str:
    return json.dumps(answered, separators=(",", ":"), sort_keys=True, allow_nan=False)


def answer(question: object) -> dict[str, Any]:
    """One question to a desk with an empty notebook."""
    return Desk().answer(question)
