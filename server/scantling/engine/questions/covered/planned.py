"""A covering of the notebook planned: what is said of it and of its article, and what the question made of it answers.

What cannot be read is named and left out; what is still to be said is asked for; the rest is answered all the same.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from scantling.engine.bodies import FILM, SHEET
from scantling.engine.coverings.paint.surfaces import Surface
from scantling.engine.errors import EngineError
from scantling.engine.notebook import Notebook
from scantling.engine.questions.covered.composed import Article, Composing, CoveringError
from scantling.engine.questions.covered.said import COVER, NEEDED, collect_said
from scantling.engine.questions.coverings import paint, panes, seams, sheets
from scantling.engine.questions.facts import pieces_of, room_of
from scantling.engine.questions.question import Answer, Context, Raw
from scantling.engine.questions.said import Wrong
from scantling.engine.shapes import load
from scantling.engine.survey.facts import find_room
from scantling.engine.words import say

ANSWERING = {one.name: one for module in (seams, panes, sheets, paint) for one in module.QUESTIONS}
#: What is to be covered, where no walls are: the setting, and the key of the words that ask for it.
WANTED = {FILM: ("panes", "wanted-panes"), SHEET: ("sheets", "wanted-panels")}


@dataclass(frozen=True, slots=True)
class PlannedCovering:
    """`question` and what it answered, None where too little is said; `missing`, in words, what is still to be said.

    `wrong` are settings that cannot be read; `surfaces`, of paint, what it goes on.
    """

    id: str
    room: str
    article: Article
    cover: Raw
    wrong: tuple[Wrong, ...] = ()
    missing: tuple[str, ...] = ()
    question: Raw | None = None
    answer: Answer | None = None
    problems: tuple[EngineError, ...] = ()
    surfaces: tuple[Surface, ...] = ()


def derive_planned(context: Context, covering: str) -> PlannedCovering:
    """A covering of the notebook, planned once for all who ask. Raises `CoveringError`."""
    return context.notebook.derived("covering", covering, lambda: _derive(context, covering))


def coverings_of(context: Context, room: str) -> list[PlannedCovering]:
    """Every covering of a room, in the order in which they were first said."""
    return [derive_planned(context, covering) for covering, _, _ in context.notebook.children("covering", room)]


def find_article(notebook: Notebook, article: str) -> tuple[Article, list[Wrong]]:
    """An article of the notebook, and what of its label cannot be read."""
    said = notebook.about("the article", article)
    heads = notebook.heads(said)
    if not said:
        return Article(article, "", "", {}, struck=True), []
    body = (heads or said)[-1].body
    facts, wrong = collect_said(notebook, article, body["sort"])
    return Article(article, body["name"], body["sort"], facts, struck=not heads), wrong


def _derive(context: Context, covering: str) -> PlannedCovering:
    notebook = context.notebook
    heads = notebook.heads(notebook.about("the covering", covering))
    if not heads:
        raise CoveringError("no-such-covering", field="covering", covering=covering[:40])
    body = heads[-1].body
    find_room(notebook, body["room"])
    article, wrong = find_article(notebook, body["article"])
    cover, more = collect_said(notebook, covering, COVER)
    planned = PlannedCovering(covering, body["room"], article, cover, (*wrong, *more))
    if article.struck:
        return replace(planned, problems=(CoveringError("no-article"),))
    missing = list(_missing(article, cover))
    return replace(planned, missing=tuple(missing)) if missing else _ask(context, planned)


def _missing(article: Article, cover: Raw) -> Sequence[str]:
    needed = {name.removeprefix(f"{article.sort}."): key for name, key in NEEDED[article.sort].items()}
    missing = [say(key) for name, key in needed.items() if name not in article.facts]
    wanted, key = WANTED.get(article.sort, ("", ""))
    return [*missing, say(key)] if wanted and not cover.get(wanted) else missing


def _ask(context: Context, planned: PlannedCovering) -> PlannedCovering:
    notebook, room = context.notebook, planned.room
    composing = Composing(planned.id, room_of(notebook, room), lambda: pieces_of(notebook, room)[0], planned.article,
                          planned.cover)  # fmt: skip
    question = composing.compose()
    answer = None
    if question is not None:
        asked = ANSWERING[question["ask"]]
        question = {**question, "room": room} if asked.name == "seams" else question
        try:
            answer = asked.answer(load(asked.loader, question), context)
        except EngineError as refusal:
            composing.problems.append(refusal)
    return replace(planned, question=question, answer=answer, problems=tuple(composing.problems),
                   surfaces=tuple(composing.surfaces))  # fmt: skip
