"""Drawings on the page and on paper, and the screens of a person's own pieces and of battens."""

import json
import re
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect
from scantling.cli import main

from tests.browser.conftest import Laptop
from tests.browser.touch import awake, send
from tests.parity_questions import DEMO

pytestmark = pytest.mark.further

#: Lines of text that lie over each other by more than the rim of a letter, as the browser itself measures them.
OVERLAPS = """(svg) => {
  const boxes = [...svg.querySelectorAll("text")].map((text) => [text.textContent, text.getBoundingClientRect()]);
  const meet = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 &&
    Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 5;
  return boxes.flatMap(([one, a], at) =>
    boxes.slice(at + 1).filter(([, b]) => meet(a, b)).map(([other]) => `${one} / ${other}`));
}"""
OUTSIDE = """(svg) => {
  const sheet = svg.getBoundingClientRect();
  return [...svg.querySelectorAll("text")].filter((text) => {
    const box = text.getBoundingClientRect();
    return box.left < sheet.left - 1 || box.right > sheet.right + 1;
  }).map((text) => text.textContent);
}"""


@pytest.fixture
def demo(laptop, used_phone) -> Page:
    """The demo house on a phone 360 px wide."""
    return show_demo(laptop, used_phone(), 360)


def show_demo(laptop: Laptop, context: BrowserContext, wide: int) -> Page:
    """The demo house in a window that is so wide."""
    send(laptop.url, json.loads(DEMO.read_text(encoding="utf-8"))["entries"])
    page = context.new_page()
    page.set_viewport_size({"width": wide, "height": 800})
    page.goto(laptop.url)
    page.get_by_role("heading", name="Sewing room", level=1).wait_for()
    awake(page)  # before any test takes the laptop out of its reach
    return page


def to(page: Page, place: str, shows: str) -> None:
    page.evaluate("(place) => { location.hash = place; }", f"#/{place}")
    page.locator(shows).first.wait_for()


def pages_of(page: Page, folder: Path, size: str) -> int:
    page.pdf(path=folder / "sheet.pdf", format=size)
    return len(re.findall(rb"/Type\s*/Page\b", (folder / "sheet.pdf").read_bytes()))


def test_every_piece_of_the_demo_house_is_drawn_at_the_saw_and_as_it_hangs_and_reads_at_360_px(demo):
    to(demo, "pieces", ".places svg")
    letters = demo.locator("main .row .ring").all_inner_texts()
    assert len(letters) > 10
    for letter in letters[:6]:
        to(demo, f"pieces/{letter}", ".drawn svg")
        for drawing in demo.locator(".drawn svg").all():
            assert drawing.evaluate(OVERLAPS) == []
            assert drawing.evaluate(OUTSIDE) == []
        expect(demo.locator(".drawn figcaption")).to_have_text(["At the saw", "As it hangs"])


def test_the_plan_of_the_demo_house_reads_at_360_px(demo):
    to(demo, "pieces", ".places svg")
    plan = demo.locator(".places svg")
    assert plan.evaluate(OVERLAPS) == []
    assert plan.evaluate(OUTSIDE) == []


def test_pieces_with_their_plan_print_on_one_side_before_they_are_issued(laptop, used_phone, tmp_path):
    demo = show_demo(laptop, used_phone(), 1280)
    to(demo, "pieces", ".places svg")
    assert [pages_of(demo, tmp_path, size) for size in ("Letter", "A4")] == [1, 1]
    demo.emulate_media(media="print")
    expect(demo.locator(".tabs")).to_be_hidden()


def test_boards_of_every_profile_share_pages_and_labels_fill_a_sheet_of_them(laptop, used_phone, tmp_path):
    demo = show_demo(laptop, used_phone(), 1280)
    to(demo, "boards", ".plan-of-boards svg")
    profiles = demo.locator(".plan-of-boards").count()
    pages = [pages_of(demo, tmp_path, size) for size in ("Letter", "A4")]
    assert profiles >= 4
    assert max(pages) <= 2 < profiles
    to(demo, "pieces", "a.row .ring")
    demo.get_by_role("button", name="Issue the list").first.click()
    to(demo, "pieces/labels", ".labels .ring")
    labels = demo.locator(".labels li")
    assert labels.count() > 30
    assert pages_of(demo, tmp_path, "Letter") == 2  # thirty to a sheet
    demo.emulate_media(media="print")
    box = labels.first.bounding_box()
    assert (round(box["width"] / 96, 3), round(box["height"] / 96, 3)) == (2.625, 1)
    assert labels.evaluate_all("all => all.filter((one) => one.scrollHeight > one.clientHeight + 1).length") == 0
    to(demo, "boards", ".plan-of-boards svg")
    expect(demo.locator(".on-paper")).to_contain_text("Sewing room")
    expect(demo.locator(".on-paper")).to_contain_text("revision")


def test_a_piece_of_ones_own_is_written_with_a_figure_touched_and_struck_again(demo):
    demo.context.set_offline(True)
    to(demo, "pieces/free/new", ".field input")
    demo.get_by_label("What it is").fill("shelf")
    demo.get_by_label("Its stock").fill("shelf 3/4 × 9 1/2")
    demo.get_by_text("Figures of this room").click()
    demo.get_by_role("button", name="wall 2 41 5/8").click()
    length = demo.get_by_label("Its length")
    length.press("End")
    length.press_sequentially(" - 1/4")
    expect(demo.locator(".hero")).to_contain_text("41 3/8 in")
    demo.get_by_role("button", name="Save", exact=True).click()
    line = demo.get_by_role("link", name="shelf")
    expect(line).to_contain_text("41 3/8 in")
    line.click()
    demo.get_by_role("link", name="Change or strike this piece").click()
    demo.get_by_role("button", name="Strike it").click()
    demo.get_by_role("link", name="Add a piece of your own").wait_for()
    expect(line).to_have_count(0)


def test_battens_of_a_wall_are_marked_on_its_screen(demo):
    to(demo, "survey/walk", "main h2")
    demo.get_by_role("link", name="Battens on this wall").click()
    for label, text in (("Width of a batten", "2 1/2"), ("Height", "40"), ("Widest gap", "14")):
        demo.get_by_label(label, exact=True).fill(text)
        demo.get_by_role("button", name=f"Save {label}").click()
    expect(demo.get_by_role("heading", name="6 battens")).to_be_visible()
    # (75 1/4 - 6 * 2 1/2) / 5 = 12.05 between; the second stands 14.55 in.
    expect(demo.locator("main ol.rows li").nth(1)).to_contain_text("14 9/16")


def saved(page: Page, kind: str) -> bytes:
    with page.expect_download() as given:
        page.get_by_role("button", name=re.compile(f"^{kind}")).click()
    return given.value.path().read_bytes()


def exported(laptop: Laptop, to: Path, *words: str) -> bytes:
    """What the command line writes of the sewing room; nothing where that is a folder."""
    assert main(["--data", str(laptop.data), "export", *words, "--room", "Sewing room", "--to", str(to)]) == 0
    return b"" if to.is_dir() else to.read_bytes()


def test_what_the_page_saves_of_a_room_the_command_line_writes_byte_for_byte(laptop, used_phone, tmp_path):
    demo = show_demo(laptop, used_phone(), 360)
    to(demo, "pieces", "a.row .ring")
    demo.get_by_text("Save as a file").click()
    out = tmp_path / "out"
    assert saved(demo, "CSV") == exported(laptop, out, "pieces")
    whole = saved(demo, "JSON")
    assert whole == exported(laptop, out, "pieces", "--json")
    assert [room["room"] for room in json.loads(whole)] == ["Sewing room"]
    exported(laptop, tmp_path / "drawn", "drawings")
    assert saved(demo, "SVG") == (tmp_path / "drawn" / "Sewing room, plan.svg").read_bytes()


def test_every_list_that_the_page_saves_the_command_line_writes_byte_for_byte(laptop, used_phone, tmp_path):
    demo = show_demo(laptop, used_phone(), 360)
    to(demo, "pieces", "a.row .ring")
    demo.get_by_role("button", name="Issue the list").first.click()
    expect(demo.get_by_role("button", name="At the saw").first).to_be_visible()
    expect(demo.locator(".status")).to_contain_text("shared")
    for place, of in (("boards", "boards"), ("cover", "strips"), ("supplies", "shopping"), ("pieces/labels", "labels")):
        to(demo, place, "summary:text('Save as a file')")
        demo.get_by_text("Save as a file").click()
        table = saved(demo, "CSV")
        assert table == exported(laptop, tmp_path / of, of, "--csv")
        assert len(table.splitlines()) > 5
        assert saved(demo, "JSON") == exported(laptop, tmp_path / of, of, "--json")
