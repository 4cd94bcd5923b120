"""A house that shows its lengths in millimeters, from the setting to the saw; readings stay what was read."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.touch import awake, button, entity, send, title, touch, visit, walked_room

pytestmark = pytest.mark.further


@pytest.fixture
def page(laptop, used_phone) -> Page:
    send(laptop.url, walked_room(read=True))
    page = used_phone().new_page()
    page.goto(laptop.url)
    awake(page)
    return page


def show_in(page: Page, lengths: str) -> None:
    visit(page, "house", "standard")
    choice = page.get_by_role("radio", name=lengths, exact=True)
    page.locator("summary", has_text="How lengths are shown").tap()
    choice.tap(force=True)
    expect(choice).to_be_checked()


def first_cut(page: Page):
    visit(page, "pieces")
    return page.locator("a.row:has(.ring) .figure .heard").first


def test_from_the_setting_to_the_saw_and_back(page):
    expect(first_cut(page)).to_have_text("82 5/8 in")
    show_in(page, "millimeters")
    expect(first_cut(page)).to_have_text("2099 mm")
    visit(page, "pieces", "A")
    expect(page.locator(".hero .heard")).to_have_text("2099 mm")
    expect(page.locator(".said-of")).to_contain_text(" mm")
    visit(page, "pieces", "saw", "A")
    expect(page.locator(".hero .heard")).to_have_text("2099 mm")
    expect(page.locator(".drawing text", has_text="2099 mm").first).to_be_visible()
    show_in(page, "feet and inches")
    expect(first_cut(page)).to_have_text("6 ft 10 5/8 in")
    show_in(page, "inches")
    expect(first_cut(page)).to_have_text("82 5/8 in")


def test_a_reading_is_touched_together_in_millimeters_and_is_kept_with_its_unit(laptop, page, until):
    show_in(page, "millimeters")
    wall = entity(1)
    visit(page, "survey", "read", wall, "length")
    expect(title(page)).to_have_text("wall 1, along the floor")
    expect(page.locator(".inch")).to_have_count(0)
    for digit in "3654":
        page.get_by_role("button", name=digit, exact=True).tap()
    touch(page, "point")
    page.get_by_role("button", name="5", exact=True).tap()
    expect(page.locator(".hero .heard")).to_have_text("3654.5 mm")
    expect(page.locator(".echo")).to_have_text("three thousand six hundred fifty-four point five millimeters")
    touch(page, "Save")
    until(page, lambda: any(one["body"].get("text") == "3654.5 mm" for one in laptop.journal()))
    visit(page, "survey", "row", wall, "length")
    expect(page.get_by_text("3654.5 mm").first).to_be_visible()
    expect(page.get_by_text("143 7/8").first).to_be_visible()


@pytest.mark.parametrize(
    ("typed", "kept"),
    [("3654", "3654 mm"), ("3654.5", "3654.5 mm"), ("143 7/8", "143 7/8"), ("12'", "12'"), ("3.65 m", "3.65 m")],
)
def test_what_is_typed_with_no_unit_is_in_millimeters_and_what_has_one_is_not_touched(laptop, page, until, typed, kept):
    show_in(page, "millimeters")
    visit(page, "survey", "read", entity(2), "length")
    page.get_by_label("type it or say it").fill(typed)
    touch(page, "Save")
    until(page, lambda: [one for one in laptop.journal() if one["body"].get("text") == kept])


def test_sums_have_keys_for_millimeters_and_no_inch(page):
    show_in(page, "millimeters")
    visit(page, "sums")
    page.get_by_label("a sum", exact=True).fill("1607 mm − 2 × 89 mm")
    expect(page.locator(".answer .heard")).to_have_text("1429 mm")
    expect(button(page, "millimeters")).to_be_visible()
    expect(page.locator(".inch")).to_have_count(0)


def test_a_sum_of_bare_figures_is_in_millimeters_and_is_kept_with_them(laptop, page, until):
    show_in(page, "millimeters")
    visit(page, "sums")
    page.get_by_label("a sum", exact=True).fill("1607 − 2 × 89")
    expect(page.locator(".answer .heard")).to_have_text("1429 mm")
    touch(page, "Keep it")
    until(page, lambda: any(one["body"].get("text") == "1607 mm − 2 × 89 mm" for one in laptop.journal()))
    show_in(page, "inches")
    visit(page, "sums", "tape")
    expect(page.get_by_role("link", name="1607 mm − 2 × 89 mm")).to_be_visible()


def kept(laptop, name: str) -> list:
    return [one["body"]["value"] for one in laptop.journal() if one["body"].get("name") == name]


def test_boards_are_priced_by_metric_lengths_and_called_so(laptop, page, until):
    show_in(page, "millimeters")
    visit(page, "pieces", "A")
    expect(page.locator("header")).to_contain_text("casing 17.5 × 57 mm")
    visit(page, "house", "standard")
    height = page.get_by_label("Base, height", exact=True)
    expect(height).to_have_attribute("placeholder", "139.7 mm, until you set it")
    height.fill("140")
    touch(page, "Save Base, height")
    until(page, lambda: "140 mm" in kept(laptop, "base.height"))
    page.get_by_label("length, board 1 of base", exact=True).fill("2400")
    page.get_by_label("price, board 1 of base", exact=True).fill("9")
    button(page, "Save the boards of base").first.tap()
    until(page, lambda: any(rows[0]["length"] == "2400 mm" for rows in kept(laptop, "base.stock")))


def test_what_goes_by_areas_and_volumes_is_kept_with_its_metric_unit(laptop, page, until):
    show_in(page, "millimeters")
    visit(page, "house", "standard")
    page.get_by_text("Drop cloths", exact=True).tap()
    page.get_by_label("Drop cloths, one does", exact=True).fill("10")
    expect(page.get_by_text("square meters of floor; a cloth")).to_be_visible()
    touch(page, "Save Drop cloths, one does")
    until(page, lambda: "10 m2" in kept(laptop, "cloth.covers"))
