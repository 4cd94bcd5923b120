"""A good: one thing that a room wants bought, what of it is on hand, and what is still to buy, line by line."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from scantling.engine.questions.called import call_stock

BOARDS, SUPPLIES = "boards", "supplies"


@dataclass(frozen=True, slots=True)
class Buy:
    """A line to tick off in the shop: so many of a size. `cents` for all of them; None where no price was said.

    `boards` are the places of its boards in the plan that the good accepts.
    """

    key: str
    words: str
    cents: int | None
    each: int | None = None
    boards: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Good:
    """`planned` is what it costs with what is on hand elsewhere put in first, whatever was bought for the room since.

    `need` is what the room wants in all and `here` what of that is on hand, in words; `of` is the profile, the article
    or the prefix of the settings that it is counted by; `seen` the oldest day on which a price of it was written;
    `accept` what to write to settle on its boards.
    """

    name: str
    sort: str
    of: str
    need: str
    here: str
    planned: int | None
    seen: str
    working: tuple[str, ...]
    buy: tuple[Buy, ...]
    accept: Mapping[str, Any] | None = None

    @property
    def shown(self) -> str:
        """Its name as it is read: an article's is a person's own."""
        return call_stock(self.name) if self.sort in (BOARDS, SUPPLIES) else self.name

    @property
    def to_pay(self) -> int:
        return sum(line.cents or 0 for line in self.buy)

    @property
    def unpriced(self) -> bool:
        return self.planned is None or any(line.cents is None for line in self.buy)
