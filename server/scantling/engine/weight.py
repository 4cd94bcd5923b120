"""What a question weighs: counted before any work on it starts, so that every answer is bounded in time and size.

The limits are such that no house reaches them. What is over one is refused by name, and nothing of it is worked out.
"""

from collections.abc import Mapping

from scantling.engine.shapes import QuestionError

QUESTIONS_AT_MOST = 2000
VALUES_AT_MOST = 100_000
DEPTH_AT_MOST = 40
# More digits than any figure or price has. Python's own limit on writing whole numbers as text raises far above it.
GREATEST = 10**18


def check_weight(question: Mapping[object, object]) -> None:
    """Raises `QuestionError` for a question that holds too much, or a number greater than anything measured."""
    waiting: list[tuple[str, int, object]] = [("", 0, question)]
    count = 0
    while waiting:
        path, depth, found = waiting.pop()
        below = found.items() if isinstance(found, Mapping) else enumerate(found) if isinstance(found, list) else ()
        count += len(found) if isinstance(found, Mapping | list) else 0
        if count > VALUES_AT_MOST:
            raise QuestionError("too-much", most=f"{VALUES_AT_MOST:,}")
        if depth > DEPTH_AT_MOST:
            raise QuestionError("too-deep", most=DEPTH_AT_MOST)
        if isinstance(found, int | float) and not abs(found) < GREATEST:  # nor is what is no number less
            raise QuestionError("too-great-a-number", field=path)
        for name, held in below:
            waiting.append((f"{path}.{name}" if path else str(name), depth + 1, held))
