"""At the saw: one piece fills the first screen of a small phone, large enough for gloves, and is marked there."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import Laptop
from tests.browser.touch import button, current, send, title, touch, visit, walked_room

STUB = """
globalThis.said = [];
Object.defineProperty(globalThis, "speechSynthesis", { value: {
  cancel() {}, speak(one) { globalThis.said.push(one.text); } } });
globalThis.lights = 0;
Object.defineProperty(navigator, "wakeLock", { value: { request: async () => {
  globalThis.lights += 1;
  return { release: async () => { globalThis.lights -= 1; } };
} } });
"""
BELOW = """() => [...document.querySelectorAll("main *, .bar *")]
  .filter((one) => !one.closest(".saw-notes") && one.getBoundingClientRect().bottom > innerHeight + 0.5).length"""
SMALL = """() => [...document.querySelectorAll(".gloved .button")].map((one) => one.getBoundingClientRect())
  .filter((box) => box.height < 48 || box.width < 48).length"""


@pytest.fixture(scope="module")
def saw(open_once, site, tmp_path_factory) -> Iterator[Page]:
    with Laptop(tmp_path_factory.mktemp("saw"), site) as laptop:
        send(laptop.url, walked_room(read=True))
        with open_once(laptop, STUB, viewport={"width": 360, "height": 740}) as page:
            visit(page, "pieces")
            touch(page, "Issue the list")
            yield page


def letter(page: Page) -> str:
    return page.locator(".ring-large").inner_text()


def test_all_that_is_needed_to_cut_is_on_the_first_screen_and_the_next_piece_follows(saw):
    visit(saw, "pieces")
    touch(saw, "At the saw")
    expect(title(saw)).to_have_text("At the saw")
    expect(button(saw, "Cut, but at")).to_be_visible()
    first = letter(saw)
    saw.wait_for_function(f"() => ({BELOW})() === 0")
    assert saw.evaluate(SMALL) == 0
    saw.wait_for_function("() => lights === 1")

    touch(saw, "Read aloud")
    saw.wait_for_function("(begins) => said[0]?.startsWith(begins)", arg=f"Piece {first}, ")
    touch(saw, "Later")
    expect(saw.locator(".ring-large")).not_to_have_text(first)
    visit(saw, "pieces", "saw", first)
    expect(saw.locator(".ring-large")).to_have_text(first)
    saw.get_by_role("button", name="Cut then").tap()
    expect(saw.locator(".ring-large")).not_to_have_text(first)

    second = letter(saw)
    touch(saw, "Cut, but at")
    saw.get_by_label("type it or say it").fill("40 1/8")
    touch(saw, "Save")
    expect(saw.locator(".ring-large")).not_to_have_text(second)
    visit(saw, "pieces", second)
    expect(saw.locator(".stands")).to_contain_text("cut")
    expect(saw.locator(".stands")).to_contain_text("read as 40 1/8")
    saw.wait_for_function("() => lights === 0")


def test_the_order_is_chosen_by_board_or_by_setting_and_kept(saw):
    visit(saw, "pieces", "saw")
    saw.get_by_role("button", name="By setting").tap()
    expect(saw.get_by_role("button", name="By setting")).to_have_attribute("aria-pressed", "true")
    visit(saw, "pieces")
    visit(saw, "pieces", "saw")
    expect(saw.get_by_role("button", name="By setting")).to_have_attribute("aria-pressed", "true")


def test_a_test_cut_is_noted_at_the_saw_and_told_with_both_boards_of_the_corner(saw):
    visit(saw, "pieces", "saw", "H")  # which has a corner at either end, in whatever order the list is
    expect(title(saw)).to_have_text("At the saw")
    saw.get_by_role("link", name="Note a test cut").tap()
    field = saw.get_by_label("What scraps showed: corner").first
    field.fill("45.5 fits")
    saw.get_by_role("button", name="Save").first.tap()
    expect(saw.get_by_role("button", name="Saved")).to_be_visible()
    touch(saw, "Back")
    expect(saw.get_by_role("link", name="45.5 fits")).to_be_visible()
    saw.wait_for_function(f"() => ({BELOW})() === 0")
    told = []
    for one in "ABCDEFGHIJK":
        visit(saw, "pieces", one)
        expect(saw.locator(".ring-large")).to_have_text(one)
        expect(saw.locator(".drawn svg").first).to_be_visible()
        current(saw)
        told += [one] * saw.locator("main .said-of", has_text="45.5 fits").count()
    assert len(told) == 2


def test_a_piece_spoiled_at_the_saw_says_what_that_uses_up_and_is_cut_again(saw):
    visit(saw, "pieces", "saw")
    expect(title(saw)).to_have_text("At the saw")
    one = letter(saw)
    visit(saw, "pieces", "saw", one)
    touch(saw, "Spoiled")
    expect(title(saw)).to_have_text(f"{one} spoiled")
    expect(saw.get_by_text("is used up.")).to_be_visible()
    expect(saw.get_by_text("Nothing of it stands on the rack.")).to_be_visible()
    saw.get_by_label("What can still be used of it").fill("20")
    expect(saw.get_by_text('20" of it stands on the rack')).to_be_visible()
    touch(saw, "Cut it again")
    expect(title(saw)).to_have_text("At the saw")
    expect(saw.locator(".ring-large")).to_have_text(one)
    expect(saw.locator(".stands")).to_contain_text("recut")
    saw.wait_for_function(f"() => ({BELOW})() === 0")
