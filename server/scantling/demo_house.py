"""The invented house: its entries, as they come with the program, put into a notebook."""

from __future__ import annotations

import hashlib
import json
from pathlib import Path

from scantling.store import open_store
from scantling.sync import keep_entry

PACKAGE = Path(__file__).resolve().parent


def house_file() -> Path:
    """The house in the installed package, or beside it in a checkout."""
    installed = PACKAGE / "demo" / "house.json"
    return installed if installed.is_file() else PACKAGE.parents[1] / "demo" / "house.json"


def edition() -> str:
    """A name for this house as it is: entries never change, so a house that was written anew wants a new notebook."""
    return hashlib.sha256(house_file().read_bytes()).hexdigest()[:12]


def load_demo(folder: Path) -> int:
    """Put the house into a notebook folder; the number of entries that were new. A second time nothing is."""
    entries = json.loads(house_file().read_text(encoding="utf-8"))["entries"]
    store = open_store(folder)
    try:
        with store.writing() as ledger:
            return sum(keep_entry(ledger, entry) for entry in entries)
    finally:
        store.close()
