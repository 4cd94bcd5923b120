"""The first minute: a name and six touches to the first reading; a room to look around in; prices where needed."""

import re

import pytest
from playwright.sync_api import Page, expect

from tests.browser.touch import awake, send, title, touch, visit, walked_room

TOUCHES = "addEventListener('pointerdown', () => { globalThis.touched = (globalThis.touched ?? 0) + 1; }, true);"


@pytest.fixture
def page(laptop, used_phone) -> Page:
    page = used_phone().new_page()
    page.add_init_script(TOUCHES)
    page.goto(laptop.url)
    return page


def test_from_an_empty_notebook_to_the_first_reading_in_six_touches_and_a_name(page):
    page.get_by_label("The first room").fill("Pantry")
    touch(page, "Start at the door")
    touch(page, "Read it now")
    for digit in "63":
        page.get_by_role("button", name=digit, exact=True).tap()
    page.locator('[data-mark="1/4"]').tap()
    touch(page, "Save")
    expect(page.get_by_text("wall 1, along the floor: 63 1/4, saved here.").first).to_be_attached()
    assert page.evaluate("touched") <= 6

    visit(page, "survey")
    expect(title(page)).to_have_text("Pantry")
    awake(page)
    page.get_by_label("Year it was built").fill("1936")
    touch(page, "Save the year")
    expect(page.get_by_label("Year it was built")).to_be_hidden()


def test_the_invented_room_is_whole_is_marked_on_every_screen_and_goes_with_one_touch(page):
    touch(page, "Look around in an invented room")
    expect(title(page)).to_have_text("Invented room")
    awake(page)
    expect(page.get_by_role("heading", name="Every wanted reading is here")).to_be_visible()
    for tab in ("pieces", "boards", "house"):
        visit(page, tab)
        expect(page.get_by_text("This room is invented, to look around in.")).to_be_visible()
    visit(page, "boards")
    expect(page.get_by_text(re.compile("^(Cheapest|Within|Not proved)")).first).to_be_visible()
    touch(page, "Strike it")
    visit(page, "survey")
    expect(title(page)).to_have_text("A new notebook")


def test_usual_lengths_are_priced_where_a_plan_first_needs_them(laptop, page):
    send(laptop.url, walked_room(read=True))
    page.reload()
    awake(page)
    visit(page, "boards")
    prices = page.get_by_role("region", name="Prices of base")
    prices.get_by_label("8 ft").fill("9.40")
    prices.get_by_label("16 ft").fill("20.10")
    prices.get_by_role("button", name="Save these prices").tap()
    expect(prices).to_be_hidden()
    expect(page.get_by_role("region", name="base").get_by_text("Cheapest")).to_be_visible()
