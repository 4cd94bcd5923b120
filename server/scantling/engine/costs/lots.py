"""Lots: what came together, bought for a room or on hand for the house; what was paid, and how many there are."""

from collections.abc import Iterator
from dataclasses import dataclass

from scantling.engine.errors import EngineError
from scantling.engine.notebook import Notebook
from scantling.engine.standard import parse_price


@dataclass(frozen=True, slots=True)
class Lot:
    """`cents` is what was paid in all; None where it was just there, or its price cannot be read: `wrong` says so."""

    id: str
    of: str
    article: str | None
    name: str
    count: int
    cents: int | None
    date: str
    note: str
    wrong: str = ""


def derive_lots(notebook: Notebook, of: str) -> list[Lot]:
    """The lots of a house or a room, in the order in which they were first written down."""
    return list(_lots(notebook, of))


def _lots(notebook: Notebook, of: str) -> Iterator[Lot]:
    for lot, shown, _ in notebook.children("lot", of):
        body = shown.body
        cents, wrong = None, ""
        if body["price"].strip():
            try:
                cents = parse_price(body["price"])
            except EngineError as error:
                wrong = error.message
        yield Lot(lot, of, body["article"], body["name"], int(body["count"]), cents, body["date"], body["note"], wrong)
