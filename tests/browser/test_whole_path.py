"""The whole path: a room measured with no signal becomes a cut list, and the laptop has the same house after it."""

import json
from urllib.request import urlopen

from playwright.sync_api import Page, expect

from tests.browser.touch import awake, button, current, read_everything, start_house, touch, visit, walk


def give_a_board(page: Page, length: str, price: str) -> None:
    """One length with its price, into the standard of the house."""
    visit(page, "house", "standard")
    page.get_by_label("length, board 1").fill(length)
    page.get_by_label("price, board 1").fill(price)
    touch(page, "Save the boards")
    expect(button(page, "Save the boards").first).to_be_disabled()


def listed(page: Page) -> list[tuple[str, str]]:
    """The pieces on the screen: letter and figure, in order."""
    visit(page, "pieces")
    rows = page.locator("a.row:has(.ring)")
    expect(rows.first).to_be_visible()
    current(page)  # a board that was given may move a joint
    return [
        (row.locator(".ring").inner_text(), row.locator(".figure .heard").first.inner_text().removesuffix(" in"))
        for row in rows.all()
    ]


def test_a_room_measured_with_no_signal_is_the_same_house_on_the_laptop(
    laptop, profile, warm, desktop, opened, until
):
    context = profile.open()
    warm(context)
    page = opened(context, laptop.url)
    awake(page)
    laptop.stop()
    profile.close()

    # The browser starts again with nothing to reach, and everything below happens on what it kept.
    page = profile.open().new_page()
    page.goto(laptop.url)
    start_house(page)
    walk(page)
    read_everything(page)
    give_a_board(page, "16 ft", "21.95")
    on_the_phone = listed(page)
    visit(page, "boards")
    expect(page.locator(".money")).to_be_visible()
    price = page.locator(".money").inner_text()
    saved = page.evaluate("location.href")

    # Once more the browser is shut before anything was shared: what was saved is there.
    profile.close()
    page = profile.open().new_page()
    page.goto(saved)
    until(page, lambda: listed(page) == on_the_phone)

    laptop.start()
    visit(page, "house")
    touch(page, "Sync now")
    expect(page.locator(".status")).to_contain_text("shared")

    with urlopen(f"{laptop.url}api/houses") as reply:
        houses = json.load(reply)
    room = houses["houses"][0]["rooms"][0]["id"]
    with urlopen(f"{laptop.url}api/rooms/{room}/pieces") as reply:
        pieces = json.load(reply)["pieces"]
    assert [(piece["letter"], piece["cut"]["shown"].removesuffix('"')) for piece in pieces] == on_the_phone

    second = desktop.new_page()
    second.goto(laptop.url)
    until(second, lambda: second.get_by_role("heading", name="Sewing room").count())
    until(second, lambda: listed(second) == on_the_phone)
    visit(second, "boards")
    expect(second.locator(".money")).to_have_text(price)
