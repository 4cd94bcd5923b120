"""What the questions say, a table for a folder of them; `asked` is what those who write programs read."""

from scantling.engine.words.en.questions import (
    amounts,
    asked,
    boards,
    covered,
    coverings,
    cutlist,
    shopping,
    survey,
    tape,
)

TABLES = (amounts, asked, boards, covered, coverings, cutlist, shopping, survey, tape)
