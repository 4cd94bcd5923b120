"""Photos drawn and pinned on, and the tape of sums, as a finger does it, with the demo house on the laptop."""

import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Locator, Page, expect
from scantling.demo_house import house_file

from tests.browser.conftest import Laptop, poll
from tests.browser.touch import button, title, touch, visit
from tests.look.places import PHOTO, fill

ENTRIES = json.loads(house_file().read_text(encoding="utf-8"))["entries"]
WALL = next(one["body"]["wall"] for one in ENTRIES if one["kind"] == "wall")
FIGURE = "wall 1, along the floor"
#: Lines, and pins, that the photo has before a test: one of each, of another figure.
DRAWN = PINNED = 1
LOADED = "() => document.querySelector('.large img')?.naturalWidth > 0"
#: A finger's way over the photo, in parts of its sides, as the browser itself tells a page.
FINGER = """([points, end]) => {
  const sheet = document.querySelector(".over-touched");
  const { left, top, width, height } = sheet.getBoundingClientRect();
  const tell = (type, [x, y]) => sheet.dispatchEvent(new PointerEvent(type, { bubbles: true, pointerId: 1, buttons: 1,
    pointerType: "touch", clientX: left + x * width, clientY: top + y * height }));
  sheet.setPointerCapture = () => {};
  tell("pointerdown", points[0]);
  points.forEach((point) => tell("pointermove", point));
  tell(end, points.at(-1));
}"""


@pytest.fixture(scope="module")
def laptop(tmp_path_factory, site) -> Iterator[Laptop]:
    data: Path = tmp_path_factory.mktemp("marked")
    fill(data)
    with Laptop(data, site) as running:
        yield running


@pytest.fixture(scope="module")
def page(laptop, open_once) -> Iterator[Page]:
    with open_once(laptop) as page:
        yield page


@pytest.fixture
def photo(page) -> Page:
    visit(page, "survey")
    visit(page, "photo", PHOTO, "survey", "row", WALL, "length")
    page.wait_for_function(LOADED)
    return page


def bodies(laptop: Laptop, kind: str) -> list[dict[str, Any]]:
    return [one["body"] for one in laptop.journal() if one["kind"] == kind]


def draw(page: Page, *points: tuple[float, float], end: str = "pointerup") -> None:
    page.evaluate(FINGER, [points, end])


def lines(page: Page) -> Locator:
    return page.locator(".over polyline.line")


def test_lines_are_drawn_taken_back_and_brought_back_and_reach_the_laptop(photo, laptop):
    touch(photo, "Draw on it")
    draw(photo, (0.1, 0.1), (0.2, 0.3), (0.5, 0.5))
    expect(lines(photo)).to_have_count(DRAWN + 1)
    draw(photo, (0.9, 0.9), (1.4, -0.4))
    expect(lines(photo)).to_have_count(DRAWN + 2)
    draw(photo, (0.3, 0.3), (0.4, 0.4), end="pointercancel")
    draw(photo, (0.6, 0.6))
    assert poll(photo, lambda: len(bodies(laptop, "stroke")) == DRAWN + 2)
    first, second = (body["points"] for body in bodies(laptop, "stroke")[DRAWN:])
    assert all(abs(one - wanted) < 40 for one, wanted in zip(first[0], (1000, 1000), strict=True))
    assert second[-1] == [10_000, 0]
    touch(photo, "Take back the last line")
    expect(lines(photo)).to_have_count(DRAWN + 1)
    touch(photo, "Bring a line back")
    expect(lines(photo)).to_have_count(DRAWN + 2)
    expect(button(photo, "Bring a line back")).to_have_count(0)
    touch(photo, "Done")
    photo.reload()
    expect(lines(photo)).to_have_count(DRAWN + 2)


def test_a_long_line_is_kept_short_of_what_an_entry_holds(photo, laptop):
    touch(photo, "Draw on it")
    before = len(bodies(laptop, "stroke"))
    zigzag = [(place % 2, place / 900) for place in range(900)]
    draw(photo, *zigzag)
    assert poll(photo, lambda: len(bodies(laptop, "stroke")) == before + 1)
    points = bodies(laptop, "stroke")[-1]["points"]
    assert 100 <= len(points) <= 200
    assert points[-1][1] > 9900
    touch(photo, "Take back the last line")


def test_a_pin_shows_what_its_figure_is_now_is_moved_struck_and_restored(photo, laptop):
    touch(photo, "Pin a figure")
    draw(photo, (0.25, 0.75))
    photo.get_by_role("button", name=FIGURE).tap()
    pinned = photo.get_by_role("list", name="Figures pinned on it")
    expect(pinned).to_contain_text(FIGURE)
    label = photo.locator(".pin text").nth(PINNED)
    expect(label).to_have_text(re.compile(r'"$'))
    (body,) = poll(photo, lambda: bodies(laptop, "pin")[PINNED:])
    assert (body["of"], body["what"]) == (WALL, "length")
    assert abs(body["x"] - 2500) < 40
    assert abs(body["y"] - 7500) < 40

    said = {"of": WALL, "what": "length", "text": "9 1/8"}
    room = next(one["body"]["room"] for one in ENTRIES if one["kind"] == "wall")
    assert laptop.app.test_client().post(f"/api/rooms/{room}/readings", json=said).status_code == 201
    photo.evaluate("() => dispatchEvent(new Event('online'))")
    expect(label).to_have_text('9 1/8"')

    touch(photo, f"Move the pin: {FIGURE}")
    spot = photo.get_by_role("application")
    for _ in range(3):
        spot.press("ArrowRight")
    spot.press("ArrowUp")
    touch(photo, "Keep it here")
    expect(photo.locator(".pin circle").nth(PINNED)).to_have_attribute("cx", f"{(body['x'] + 300) / 100:g}%")
    assert poll(photo, lambda: bodies(laptop, "pin")[PINNED + 1 :])[0]["y"] == body["y"] - 100

    touch(photo, f"Strike the pin: {FIGURE}")
    expect(label).to_have_count(0)
    photo.get_by_text("Struck pins").tap()
    touch(photo, f"Restore the pin: {FIGURE}")
    expect(label).to_have_text('9 1/8"')


def test_a_caption_is_kept_with_the_photo(photo, laptop):
    photo.get_by_role("textbox", name="Caption").fill("crack at the sill")
    touch(photo, "Save the caption")
    expect(title(photo)).to_contain_text("crack at the sill")
    touch(photo, "Back")
    expect(photo.locator(".pictures")).to_contain_text("crack at the sill")
    assert poll(photo, lambda: [one["name"] for one in bodies(laptop, "attachment")][1:]) == ["crack at the sill"]


KEPT = "63 1/4 - 2*(3 1/2 + 3/16)"


def sum_field(page: Page) -> Locator:
    return page.get_by_label("a sum", exact=True)


def keep(page: Page, text: str) -> None:
    visit(page, "sums")
    sum_field(page).fill(text)
    touch(page, "Keep it")
    expect(sum_field(page)).to_have_value("")


def test_a_kept_sum_stands_on_the_tape_and_goes_into_a_reading_in_two_touches(page, laptop):
    keep(page, "9 1/8 + 1/2")
    assert poll(page, lambda: [one["text"] for one in bodies(laptop, "sum")][1:]) == ["9 1/8 + 1/2"]
    tape = page.get_by_role("list", name="Sums kept, the newest first").get_by_role("link")
    expect(tape).to_have_count(2)
    expect(tape.first).to_contain_text("9 1/8 + 1/2")
    expect(tape.last).to_contain_text(KEPT)
    expect(tape.last).to_contain_text("between the casings")
    tape.first.tap()
    row = page.locator("button.row", has_text="wall 2, along the floor")
    expect(row).to_be_visible()
    row.tap()
    expect(title(page)).to_have_text("wall 2, along the floor")
    assert poll(page, lambda: [one["text"] for one in bodies(laptop, "reading") if one["text"] == '9 5/8"'])


def test_a_reading_and_a_result_are_brought_into_a_sum_and_worked_by_the_engine(page):
    visit(page, "sums")
    sum_field(page).fill("2 × ")
    page.get_by_role("link", name="Bring a reading").tap()
    row = page.locator("button.row", has_text="wall 3, along the floor")
    expect(row).to_have_count(1)
    row.tap()
    expect(sum_field(page)).to_have_value(re.compile('^2 × [0-9 /]+"$'))
    begun = sum_field(page).input_value()
    page.get_by_role("link", name=KEPT).tap()
    touch(page, 'Bring 55 7/8" into a sum')
    expect(sum_field(page)).to_have_value(f'{begun} + 55 7/8"')
    expect(page.locator(".answer .figure .heard")).to_contain_text(" in")
    touch(page, "Clear")


def test_a_sum_that_is_begun_stays_and_one_that_is_kept_is_used_again(page):
    visit(page, "sums")
    sum_field(page).fill("9 +")
    page.reload()
    expect(sum_field(page)).to_have_value("9 +")
    page.get_by_role("link", name=KEPT).tap()
    touch(page, "Use it again")
    expect(sum_field(page)).to_have_value(KEPT)
    touch(page, "Clear")


def test_a_sum_has_a_note_is_struck_and_comes_back(page, laptop):
    keep(page, "half of 9")
    page.get_by_role("link", name="half of 9").tap()
    expect(page.locator(".hero .heard")).to_have_text("4 1/2 in")
    page.get_by_role("textbox", name="Note").fill("the shelf")
    touch(page, "Save the note")
    expect(button(page, "Save the note")).to_be_disabled()
    touch(page, "Strike this sum")
    expect(page.get_by_role("link", name="half of 9")).to_have_count(0)
    page.get_by_role("link", name="The whole tape").tap()
    page.get_by_text("Struck sums").tap()
    touch(page, "Restore half of 9")
    expect(page.get_by_role("link", name="half of 9")).to_contain_text("the shelf")
    assert poll(page, lambda: [one["note"] for one in bodies(laptop, "sum") if one["text"] == "half of 9"][1:])


def test_a_long_tape_is_shown_in_parts(page, laptop):
    client = laptop.app.test_client()
    for place in range(40):
        assert client.post("/api/sums", json={"text": f"{place} + 1/4"}).status_code == 201
    page.evaluate("() => dispatchEvent(new Event('online'))")
    visit(page, "sums", "tape")
    lines = page.get_by_role("list", name="Sums kept, the newest first").get_by_role("link")
    expect(lines.first).to_contain_text("39 + 1/4")
    expect(lines).to_have_count(30)
    touch(page, "Older sums")
    expect(lines.first).to_contain_text("9 + 1/4")
    expect(lines.last).to_contain_text(KEPT)
    touch(page, "Newer sums")
    expect(lines.first).to_contain_text("39 + 1/4")


def test_what_is_typed_while_a_sum_is_being_kept_is_the_next_sum_s(page):
    visit(page, "sums")
    sum_field(page).fill("6 + 1/2")
    expect(button(page, "Keep it")).to_be_enabled()
    page.evaluate(
        """() => {
          const { add } = IDBObjectStore.prototype;
          IDBObjectStore.prototype.add = function (...given) {
            IDBObjectStore.prototype.add = add;
            const field = document.querySelector("input[aria-label='a sum']");
            field.value = "12 +";
            field.dispatchEvent(new Event("input", { bubbles: true }));
            return add.apply(this, given);
          };
        }"""
    )
    touch(page, "Keep it")
    expect(page.get_by_role("link", name="6 + 1/2")).to_be_visible()
    page.wait_for_timeout(300)
    expect(sum_field(page)).to_have_value("12 +")
    touch(page, "Clear")
