"""One list of questions. The OpenAPI page and the command line are drawn from it; each names its shapes in and out."""

from scantling.engine.questions import boards, corner, journal, lengths, room
from scantling.engine.questions.question import Question

QUESTIONS: dict[str, Question] = {
    question.name: question
    for module in (lengths, corner, room, boards, journal)
    for question in module.QUESTIONS
}
