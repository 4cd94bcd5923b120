"""Every screen of the page by its address, over the demo house: walked by a test, and photographed by `tests look`."""

import json
from pathlib import Path
from typing import Any

from playwright.sync_api import Page
from scantling.demo_house import house_file, load_demo

#: A small phone, a phone, a tablet, a table.
SIZES = ((360, 740), (390, 844), (768, 1024), (1440, 900))
SCHEMES = ("light", "dark")
#: Nothing on the page is still being worked out, and its letters are there.
SETTLED = """async (place) => {
  await document.fonts.ready;
  return location.hash === `#/${place}` && document.querySelectorAll("main *").length > 2
    && !/being worked out|engine waking|Engine waking/.test(document.body.textContent);
}"""


def fill(data: Path) -> None:
    """The demo house in a notebook of a folder."""
    data.mkdir(parents=True, exist_ok=True)
    load_demo(data)


def places() -> dict[str, str]:
    """The address of each screen by a name for it; of one wall, opening or covering the first that there is."""
    first: dict[str, Any] = {}
    for entry in json.loads(house_file().read_text(encoding="utf-8"))["entries"]:
        first.setdefault(entry["kind"], entry["body"])
    wall, opening, room = first["wall"]["wall"], first["opening"]["opening"], first["room"]["room"]
    covering = first["covering"]["covering"]
    return {
        "survey": "survey",
        "walk": "survey/walk",
        "wall": f"survey/walk/{wall}",
        "thing": f"survey/thing/{wall}",
        "opening": f"survey/opening/{opening}",
        "battens": f"survey/battens/{wall}",
        "reading a length": f"survey/read/{wall}/length",
        "reading a corner": f"survey/read/{wall}/corner",
        "readings of a figure": f"survey/row/{wall}/length",
        "rooms": "survey/rooms",
        "pieces": "pieces",
        "piece": "pieces/A",
        "piece in place": "pieces/A/place",
        "at the saw": "pieces/saw/A",
        "piece of one's own": "pieces/free/new",
        "fit": "pieces/fit",
        "labels": "pieces/labels",
        "boards": "boards",
        "boards of several rooms": "boards/house",
        "cover": "cover",
        "covering": f"cover/{covering}",
        "supplies": "supplies",
        "sums": "sums",
        "house": "house",
        "work": "house/work",
        "money": "house/money",
        "stock": "house/stock",
        "standard": "house/standard",
        "standard of a room": f"house/standard/{room}",
    }


def go_to(page: Page, place: str) -> None:
    """Shows a screen, and waits until there is nothing more to come."""
    page.evaluate("place => { location.hash = place; }", f"#/{place}")
    for _ in range(600):
        if page.evaluate(SETTLED, place):
            return
        page.wait_for_timeout(50)
    raise AssertionError(f"{place} is never done")
