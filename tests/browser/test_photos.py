"""Photos on a wall, an opening and a piece: taken, made smaller, shown, struck, shared; where there is no room for one.

One phone with the demo house for all of them; each test takes its photos of a thing of its own.
"""

import base64
import hashlib
import json
import struct
from collections.abc import Callable, Iterator
from itertools import count
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect
from scantling.blobs import Blobs
from scantling.cli import main
from scantling.demo_house import house_file, load_demo

from tests.browser.conftest import Laptop, poll
from tests.browser.touch import title, touch, visit

#: A picture whose left half is red and whose right half is blue.
DRAWN = """async ([width, height, type]) => {
  const canvas = Object.assign(document.createElement("canvas"), { width, height });
  const pen = canvas.getContext("2d");
  for (const [place, color] of ["red", "blue"].entries()) {
    pen.fillStyle = color;
    pen.fillRect(place * width / 2, 0, width / 2, height);
  }
  const made = await new Promise((done) => canvas.toBlob(done, type));
  return new Uint8Array(await made.arrayBuffer()).toBase64();
}"""
#: A stored picture as it is seen: its size, and the color near its top and its foot.
SEEN = """async (bytes) => {
  const picture = await createImageBitmap(new Blob([Uint8Array.fromBase64(bytes)], { type: "image/jpeg" }));
  const { width, height } = picture;
  const canvas = Object.assign(document.createElement("canvas"), { width, height });
  const pen = canvas.getContext("2d");
  pen.drawImage(picture, 0, 0);
  const color = (y) => [...pen.getImageData(width / 2, y, 1, 1).data].map((one) => Math.round(one / 255)).join("");
  return [width, height, color(10), color(height - 10)];
}"""
LOADED = "() => [...document.querySelectorAll('main img')].every((one) => one.complete && one.naturalWidth)"
RED, BLUE = "1001", "0011"
ENTRIES = json.loads(house_file().read_text(encoding="utf-8"))["entries"]


def bodies(kind: str) -> list[dict[str, Any]]:
    return [one["body"] for one in ENTRIES if one["kind"] == kind]


WIDER = count()
WALLS = [body["wall"] for body in bodies("wall")]


@pytest.fixture(scope="module")
def house(tmp_path_factory: pytest.TempPathFactory) -> Path:
    data = tmp_path_factory.mktemp("photos")
    load_demo(data)
    return data


@pytest.fixture(scope="module")
def laptop(house, site) -> Iterator[Laptop]:
    with Laptop(house, site) as running:
        yield running


@pytest.fixture(scope="module")
def page(laptop, open_once) -> Iterator[Page]:
    with open_once(laptop) as page:
        yield page


@pytest.fixture
def drawn(page) -> Callable[..., bytes]:
    """Makes pictures, no two alike: of one that is known already nothing need be sent."""

    def draw(width: int = 0, height: int = 300, kind: str = "image/jpeg") -> bytes:
        width = width or 300 + next(WIDER)
        return base64.b64decode(page.evaluate(DRAWN, [width, height, kind]))

    return draw


def turned(jpeg: bytes) -> bytes:
    """The same as a camera on its side writes it (Exif 2.3: orientation 6), with a note of where it was."""
    note = b"BEHIND THE CHURCH\0"
    entries = struct.pack(">HHHIHH", 2, 0x0112, 3, 1, 6, 0) + struct.pack(">HHII", 0x010E, 2, len(note), 38)
    exif = b"Exif\0\0MM\0\x2a\0\0\0\x08" + entries + bytes(4) + note
    return jpeg[:2] + b"\xff\xe1" + struct.pack(">H", len(exif) + 2) + exif + jpeg[2:]


def at_wall(page: Page, wall: str) -> None:
    visit(page, "survey", "row", wall, "length")
    expect(page.get_by_label("Take a photo")).to_be_attached()


def take(page: Page, picture: bytes, label: str = "Take a photo", kind: str = "image/jpeg") -> None:
    page.get_by_label(label).set_input_files([{"name": "IMG_1", "mimeType": kind, "buffer": picture}])


def photos(page: Page, of: str = ""):
    return page.locator(".pictures").get_by_role("img", name=f"Photo of {of}")


def attached(laptop: Laptop, of: str) -> list[dict[str, Any]]:
    return [one["body"] for one in laptop.journal() if one["kind"] == "attachment" and one["body"]["of"] == of]


def whole(laptop: Laptop, blob: str) -> bytes | None:
    path = Blobs(laptop.data / "blobs")._path(blob)
    return path.read_bytes() if path.exists() else None


def test_a_photo_is_made_smaller_upright_and_tells_nobody_where_it_was_taken(page, laptop, drawn):
    at_wall(page, WALLS[0])
    original = turned(drawn(2000, 1500))
    assert b"BEHIND THE CHURCH" in original
    take(page, original)
    expect(photos(page, "wall 1, ")).to_have_count(1)
    page.wait_for_function(LOADED)
    (said,) = poll(page, lambda: attached(laptop, WALLS[0]))
    stored = poll(page, lambda: whole(laptop, said["blob"]))
    assert said["type"] == "image/jpeg"
    assert said["blob"] == hashlib.sha256(stored).hexdigest()
    assert b"Exif" not in stored
    assert b"CHURCH" not in stored
    assert page.evaluate(SEEN, base64.b64encode(stored).decode()) == [1200, 1600, RED, BLUE]


def test_one_chosen_is_never_made_larger_and_what_can_be_seen_through_is_white(page, laptop, drawn):
    door = bodies("opening")[0]["opening"]
    visit(page, "survey", "opening", door)
    expect(page.get_by_label("Choose pictures")).to_be_attached()
    take(page, drawn(40, 30, "image/png"), "Choose pictures", "image/png")
    expect(photos(page, "the ")).to_have_count(1)
    (said,) = poll(page, lambda: attached(laptop, door))
    stored = poll(page, lambda: whole(laptop, said["blob"]))
    assert page.evaluate(SEEN, base64.b64encode(stored).decode())[:2] == [40, 30]


def test_a_photo_is_opened_large_struck_and_restored(page, laptop, drawn):
    at_wall(page, WALLS[1])
    take(page, drawn())
    photos(page, "wall 2").tap()
    expect(title(page)).to_contain_text("Photo of wall 2, ")
    expect(page.locator("figure").get_by_role("img", name="Photo of wall 2")).to_be_visible()
    touch(page, "Strike this photo")
    expect(page.get_by_label("Take a photo")).to_be_attached()
    expect(photos(page)).to_have_count(0)
    page.get_by_text("Struck photos").tap()
    touch(page, "Restore: Photo of wall 2")
    expect(photos(page, "wall 2")).to_have_count(1)
    assert len(poll(page, lambda: attached(laptop, WALLS[1]))) == 1


def test_a_piece_has_photos_and_back_leads_to_it(page, drawn):
    visit(page, "pieces", "A")
    touch(page, "Issue the list")  # a letter that is not issued yet may go to another piece
    expect(page.get_by_label("Take a photo")).to_be_attached()
    take(page, drawn())
    photos(page, "piece A, ").tap()
    expect(title(page)).to_contain_text("Photo of piece A, ")
    touch(page, "Back")
    expect(photos(page, "piece A, ")).to_have_count(1)


def test_without_signal_a_photo_says_that_it_is_here_alone_until_it_has_been_sent(page, laptop, drawn):
    page.route("**/api/**", lambda route: route.abort())
    at_wall(page, WALLS[2])
    take(page, drawn())
    expect(photos(page, "wall 3")).to_have_count(1)
    stands = page.locator(".pictures").get_by_text("not on the laptop yet")
    expect(stands).to_be_visible()
    page.unroute("**/api/**")
    page.evaluate("() => dispatchEvent(new Event('online'))")
    expect(stands).to_have_count(0)
    (said,) = attached(laptop, WALLS[2])
    assert whole(laptop, said["blob"])


def test_one_from_elsewhere_keeps_its_place_in_words_until_its_bytes_come(page, laptop, drawn):
    picture = drawn(60, 40)
    named = {"blob": hashlib.sha256(picture).hexdigest(), "size": len(picture), "type": "image/jpeg", "name": "stud"}
    laptop.app.test_client().post(f"/api/of/{WALLS[3]}/attachments", json=named)
    page.evaluate("() => dispatchEvent(new Event('online'))")
    at_wall(page, WALLS[3])
    place = page.locator(".pictures li")
    expect(place).to_contain_text("Photo of wall 4")
    expect(place).to_contain_text("not on this device yet")
    piece = {"blob": named["blob"], "size": len(picture), "at": 0, "digest": named["blob"]}
    said = {**piece, "data": base64.b64encode(picture).decode()}
    assert laptop.app.test_client().post("/api/blobs", json=said).json == {"offset": None}
    page.evaluate("() => dispatchEvent(new Event('online'))")
    expect(page.get_by_role("img", name="Photo of wall 4")).to_have_count(1)
    expect(place).not_to_contain_text("yet")


def test_what_is_no_picture_and_a_device_that_is_full_are_told_in_words(page, drawn):
    at_wall(page, WALLS[4])
    take(page, b"no picture at all")
    expect(page.get_by_role("alert")).to_contain_text("This browser cannot read that picture.")
    page.evaluate("() => { navigator.storage.estimate = async () => ({ quota: 9e7, usage: 8e7 }); }")
    picture = drawn()
    take(page, picture)
    expect(page.get_by_role("alert")).to_contain_text("no room left on this device for photos")
    expect(photos(page)).to_have_count(0)
    page.evaluate("() => { delete navigator.storage.estimate; }")
    take(page, picture)
    expect(photos(page, "wall 5")).to_have_count(1)
    expect(page.get_by_role("alert")).to_have_count(0)


def test_what_is_kept_for_speed_alone_makes_room_for_a_photo(page, drawn):
    at_wall(page, WALLS[7])
    page.evaluate("""async () => {
      await caches.open("snapshot-of-the-engine");
      const isKept = async () => (await caches.keys()).includes("snapshot-of-the-engine");
      navigator.storage.estimate = async () => ({ quota: 9e7, usage: (await isKept()) ? 8e7 : 5e7 });
    }""")
    take(page, drawn())
    expect(photos(page, "wall 8")).to_have_count(1)
    assert page.evaluate("async () => (await caches.keys()).filter((name) => name.startsWith('snapshot-'))") == []
    page.evaluate("() => { delete navigator.storage.estimate; }")


def test_a_reading_is_saved_while_a_photo_is_still_being_made_smaller(page, drawn):
    at_wall(page, WALLS[5])
    page.evaluate("""() => {
      globalThis.decode = createImageBitmap;
      const held = new Promise((go) => { globalThis.goOn = go; });
      globalThis.createImageBitmap = (...given) => held.then(() => decode(...given));
    }""")
    take(page, drawn())
    expect(page.get_by_text("You need not wait for it.")).to_be_visible()
    visit(page, "survey", "read", WALLS[5], "length")
    page.get_by_role("button", name="6", exact=True).tap()
    touch(page, "Save")
    expect(page.get_by_role("heading", level=1)).not_to_contain_text("wall 6, along the floor")
    page.evaluate("() => { globalThis.createImageBitmap = decode; goOn(); }")
    at_wall(page, WALLS[5])
    expect(photos(page, "wall 6")).to_have_count(1)


def test_a_photo_travels_in_the_backup_and_in_the_pages_file(page, laptop, drawn, tmp_path):
    at_wall(page, WALLS[6])
    picture = drawn(200, 100)
    take(page, picture)
    expect(photos(page, "wall 7")).to_have_count(1)
    (said,) = poll(page, lambda: attached(laptop, WALLS[6]))
    stored = poll(page, lambda: whole(laptop, said["blob"]))
    assert main(["--data", str(laptop.data), "backup", str(tmp_path / "backup.ndjson")]) == 0
    visit(page, "house")
    with page.expect_download() as download:
        touch(page, "Save to a file")
    download.value.save_as(tmp_path / "page.ndjson")
    for name in ("backup.ndjson", "page.ndjson"):
        other = tmp_path / name.partition(".")[0]
        assert main(["--data", str(other), "restore", str(tmp_path / name)]) == 0
        assert Blobs(other / "blobs")._path(said["blob"]).read_bytes() == stored
