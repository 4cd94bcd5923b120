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
from scantling.engine.questions.shown_in import find_shown_in
from scantling.engine.shapes import QuestionError, load
from scantling.engine.shown.shown_in import showing
from scantling.engine.weight import QUESTIONS_AT_MOST, check_weight
from scantling.engine.words import say

__all__ = ["QUESTIONS", "Desk", "answer"]

# Texts of answers: a survey for each wall of the room in hand, and what its other screens show.
TEXTS_AT_MOST = 40
QUESTION_AT_MOST = 300


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
            with showing(find_shown_in(question, self.context.notebook)):
                asked = QUESTIONS[name]
                if not asked.of_entries:
                    check_weight(question)
                return {"answer": asked.answer(load(asked.loader, question), self.context)}
        except EngineError as refusal:
            return {"error": refusal.body()}

    def answer_text(self, text: str) -> str:
        """The same in JSON; a list of questions gives a list of answers. Pure ASCII, one form on every machine."""
        try:
            asked = json.loads(text)
        except (ValueError, RecursionError) as error:
            why = say("question-nested") if isinstance(error, RecursionError) else str(error)
            return dump({"error": QuestionError("not-json", why=why).body()})
        if isinstance(asked, list) and len(asked) > QUESTIONS_AT_MOST:
            refusal = QuestionError("too-many-questions", count=len(asked), most=QUESTIONS_AT_MOST)
            return dump({"error": refusal.body()})
        return f"[{','.join(map(self._text, asked))}]" if isinstance(asked, list) else self._text(asked)

    def _text(self, question: object) -> str:
        """One answer as text; asked again with nothing new to say, the very same text."""
        if not _is_kept(question) or len(named := json.dumps(question, sort_keys=True)) > QUESTION_AT_MOST:
            return dump(self.answer(question))
        derived = self.context.notebook.derived
        return derived("answer", named, lambda: dump(self.answer(question)), TEXTS_AT_MOST)


def _is_kept(question: object) -> bool:
    if not isinstance(question, Mapping) or not all(isinstance(question.get(one), str) for one in ("ask", "room")):
        return False
    return question["ask"] in QUESTIONS and QUESTIONS[question["ask"]].kept


def dump(answered: object) -> str:
    return json.dumps(answered, separators=(",", ":"), sort_keys=True, allow_nan=False)


def answer(question: object) -> dict[str, Any]:
    """One question to a desk with an empty notebook."""
    return Desk().answer(question)
