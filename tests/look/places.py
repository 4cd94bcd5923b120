"""Every screen of the page by its address, over the demo house: walked by a test, and photographed by `tests look`."""

import hashlib
import json
import struct
import zlib
from pathlib import Path
from typing import Any

from playwright.sync_api import Page
from scantling.blobs import Blobs, Piece
from scantling.cli import main
from scantling.cli.command import answer_of, notebook
from scantling.demo_house import house_file, load_demo

#: A small phone, a phone, a tablet, a table.
SIZES = ((360, 740), (390, 844), (768, 1024), (1440, 900))
SCHEMES = ("light", "dark")
#: Nothing on the page is still being worked out, and its letters are there.
SETTLED = """async (place) => {
  await document.fonts.ready;
  return location.hash === `#/${place}` && document.querySelectorAll("main *").length > 2
    && !/being worked out|engine waking|when the engine is awake/i.test(document.body.textContent)
    && !document.querySelector(".plan:empty, .large-piece:empty");
}"""


PHOTO = "0190aaaa-0000-7000-8000-000000000001"
PIN = "0190aaaa-0000-7000-8000-000000000009"


def fill(data: Path) -> None:
    """The demo house in a notebook of a folder, its list issued, a photo of a wall, drawn and pinned on, and a sum."""
    data.mkdir(parents=True, exist_ok=True)
    load_demo(data)
    with notebook(data) as laptop:
        asked = {"ask": "issue", "room": first_of_each()["room"]["room"], "list": PIN}
        issued = [("issue", body) for body in answer_of(laptop, asked)["bodies"]]
    photo = plaster(300, 200)
    blob = hashlib.sha256(photo).hexdigest()
    wall, name = first_of_each()["wall"]["wall"], "the wall before it was papered"
    body = {"attachment": PHOTO, "of": wall, "blob": blob, "size": len(photo), "type": "image/png", "name": name}
    said = [
        ("attachment", body),
        ("stroke", {"attachment": PHOTO, "points": [[1000, 4000], [3000, 3000], [5000, 4000]]}),
        ("pin", {"pin": PIN, "attachment": PHOTO, "of": wall, "what": "corner", "x": 6000, "y": 8000}),
        ("sum", {"sum": PIN, "of": None, "text": "63 1/4 - 2*(3 1/2 + 3/16)", "note": "between the casings"}),
        *issued,
    ]
    entries = [
        {"id": f"{PHOTO[:-1]}{seq}", "device": "00000000000000d2", "seq": seq, "version": 1, "kind": kind, "body": body,
         "stamp": f"019cebd70be{seq}-0000-00000000000000d2", "supersedes": []}
        for seq, (kind, body) in enumerate(said, start=1)
    ]  # fmt: skip
    file = data / "photo.ndjson"
    file.write_text("\n".join(map(json.dumps, entries)), encoding="utf-8")
    main(["--data", str(data), "restore", str(file)])
    Blobs(data / "blobs").receive(Piece(blob, len(photo), 0, photo))


def plaster(width: int, height: int) -> bytes:
    """A wall of one color, as PNG (ISO/IEC 15948)."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    rows = (b"\0" + bytes((196, 178, 150)) * width) * height
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(rows)) + chunk(b"IEND", b"")


def first_of_each() -> dict[str, Any]:
    """The first entry's body of each kind in the demo house."""
    first: dict[str, Any] = {}
    for entry in json.loads(house_file().read_text(encoding="utf-8"))["entries"]:
        first.setdefault(entry["kind"], entry["body"])
    return first


def places() -> dict[str, str]:
    """The address of each screen by a name for it; of one wall, opening or covering the first that there is."""
    first = first_of_each()
    wall, opening, room = first["wall"]["wall"], first["opening"]["opening"], first["room"]["room"]
    covering = first["covering"]["covering"]
    return {
        "survey": "survey",
        "walk": "survey/walk",
        "wall": f"survey/walk/{wall}",
        "thing": f"survey/thing/{wall}",
        "said in one breath": f"survey/say/{wall}",
        "opening": f"survey/opening/{opening}",
        "battens": f"survey/battens/{wall}",
        "reading a length": f"survey/read/{wall}/length",
        "reading a corner": f"survey/read/{wall}/corner",
        "readings of a figure": f"survey/row/{wall}/length",
        "photo": f"photo/{PHOTO}/survey/row/{wall}/length",
        "rooms": "survey/rooms",
        "pieces": "pieces",
        "piece": "pieces/A",
        "piece in place": "pieces/A/place",
        "at the saw": "pieces/saw/A",
        "spoiled": "pieces/saw/A/spoiled",
        "test cuts": "pieces/saw/S/test-cuts",
        "piece of one's own": "pieces/free/new",
        "fit": "pieces/fit",
        "labels": "pieces/labels",
        "walls from in front": "pieces/walls",
        "boards": "boards",
        "boards of several rooms": "boards/house",
        "cover": "cover",
        "covering": f"cover/{covering}",
        "supplies": "supplies",
        "sums": "sums",
        "tape of sums": "sums/tape",
        "a sum kept": f"sums/line/{PIN}",
        "a reading for a sum": "sums/bring",
        "house": "house",
        "work": f"house/work/{room}",
        "rooms compared": "house/rooms",
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
