"""What a question is: a name, a sentence, a shape in, a shape out, and the function that answers it."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from marshmallow import Schema

from scantling.engine.notebook import Notebook

Asked = dict[str, Any]
#: A question, or a part of one, as it comes: nothing of it is read yet.
Raw = dict[str, Any]
Answer = dict[str, Any]
Clock = Callable[[], float]


@dataclass(frozen=True, slots=True)
class Context:
    """What a question is asked of: a notebook, and a clock in seconds where the caller has one to cut searches off."""

    notebook: Notebook
    clock: Clock | None = None


@dataclass(frozen=True)
class Question:
    """`answer` takes the question as loaded by `takes`, and gives what `gives` describes.

    `kept`: it follows from the notebook alone, and is long to make; never one that writes, or that a clock cuts short.
    `of_entries`: it brings a journal, whose size has other bounds than a question's.
    """

    name: str
    doc: str
    takes: type[Schema]
    gives: type[Schema]
    answer: Callable[[Asked, Context], Answer]
    kept: bool = False
    of_entries: bool = False

    @cached_property
    def loader(self) -> Schema:
        # One instance for good: marshmallow copies every field of a schema each time it is made.
        return self.takes()
