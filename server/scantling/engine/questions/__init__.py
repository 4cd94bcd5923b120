"""One list of questions. The OpenAPI page and the command line are drawn from it; each names its shapes in and out."""

from scantling.engine.questions import (
    behind,
    boards,
    casing,
    compound,
    corner,
    cut_list,
    free,
    journal,
    lengths,
    movement,
    pieces,
    room,
    room_boards,
    spacing,
    window,
)
from scantling.engine.questions.question import Question

QUESTIONS: dict[str, Question] = {
    question.name: question
    for module in (
        lengths,
        corner,
        room,
        pieces,
        cut_list,
        boards,
        room_boards,
        journal,
        casing,
        window,
        compound,
        spacing,
        movement,
        free,
        behind,
    )
    for question in module.QUESTIONS
}
