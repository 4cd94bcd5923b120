"""Cover, Supplies and House in the hand: the demo house papered, bought for and worked on, with no signal."""

import re

import pytest
from playwright.sync_api import Page, expect

from tests.browser.test_drawn import OUTSIDE, OVERLAPS, pages_of, show_demo, to
from tests.browser.touch import touch

pytestmark = pytest.mark.further


@pytest.fixture
def demo(laptop, used_phone) -> Page:
    """The demo house on a phone 360 px wide, on its screen of what covers the sewing room, the laptop out of reach."""
    page = show_demo(laptop, used_phone(), 360)
    page.context.set_offline(True)
    to(page, "cover", "main a.row")
    return page


def pick(page: Page, words: str) -> None:
    page.locator("label.pick").filter(has_text=re.compile(f"^\\s*{words}\\s*$")).click()


def row(page: Page, words: str):
    return page.locator("main .row", has_text=words).first


def test_a_paper_is_planned_drawn_and_ticked_off_and_its_cautions_put_aside(demo):
    expect(row(demo, "Fern and moth")).to_contain_text("walls 8 to 10")
    row(demo, "Fern and moth").click()
    expect(demo.locator(".money")).to_have_text("2 rolls")
    drawing = demo.locator(".stretch svg")
    assert (drawing.evaluate(OVERLAPS), drawing.evaluate(OUTSIDE)) == ([], [])
    expect(drawing.locator("line.hand")).to_have_count(1)
    strip = row(demo, "1 A:")
    for state in ("cut", "hung"):
        strip.get_by_role("button", name=state).click()
        expect(strip.locator("small", has_text=re.compile(f"^{state}$"))).to_be_visible()
    expect(demo.locator(".wanted")).to_contain_text("1 of 5 up")
    strip.get_by_role("button", name="not yet").click()
    expect(strip.get_by_role("button", name="cut")).to_be_visible()
    # One more wall, and one strip more: what was planned is planned anew.
    demo.get_by_role("button", name="wall 11", exact=True).click()
    expect(demo.locator(".wanted")).to_contain_text("walls 8 to 11")
    expect(demo.locator(".work-list .row").nth(6)).to_be_visible()
    expect(demo.locator(".cautions li")).to_have_count(5)
    touch(demo, "Heard: put them aside")
    expect(demo.locator(".cautions")).to_have_count(0)
    to(demo, "house", "summary")
    demo.get_by_text("Cautions put aside").click()
    demo.get_by_role("button", name="Tell again: Ladder").click()
    expect(demo.get_by_text("Cautions put aside")).to_contain_text("3")


def test_a_ceiling_is_painted_from_its_name_to_its_cans(demo):
    demo.get_by_role("link", name="Cover something").click()
    pick(demo, "Paint")
    demo.get_by_label("Or another, by its name").fill("Ceiling, flat")
    touch(demo, "Go on")
    expect(demo.locator(".now")).to_contain_text("how far it spreads")
    demo.get_by_label("How far it spreads", exact=True).fill("400")
    touch(demo, "Save How far it spreads")
    demo.get_by_label("size, can 1").fill("1 gal")
    demo.get_by_label("price, can 1").fill("30.00")
    touch(demo, "Save the cans")
    # Walls, until something is marked: the ceiling then is all there is.
    demo.get_by_role("button", name="ceiling", exact=True).click()
    expect(demo.get_by_role("button", name="walls", exact=True)).to_have_attribute("aria-pressed", "false")
    # 156.06 sq ft, two coats at 400 a gallon.
    expect(demo.locator(".money")).to_have_text("0.78 gal")
    expect(demo.locator(".to-buy")).to_contain_text("1 of 1 gal")
    touch(demo, "Strike it from this room")
    expect(row(demo, "Ceiling, flat")).to_have_count(0)


def test_the_list_is_ticked_off_in_the_shop_and_a_receipt_held_against_it(demo):
    to(demo, "supplies", ".buy-line")
    lines = demo.locator(".wanted p").nth(1)
    expect(lines).to_contain_text("lines to buy")
    before = int(lines.inner_text().split()[0])
    stool = demo.locator(".good", has_text="stool 3/4")
    stool.get_by_role("button", name="bought").click()
    expect(stool).to_contain_text("on hand: 1 of 6 ft · nothing to buy")
    caulk = demo.locator(".good", has_text="nails 2")
    caulk.get_by_role("button", name="bought").click()
    expect(caulk.get_by_role("button", name="bought")).to_have_text("bought")
    expect(lines).to_contain_text(f"{before - 2} lines to buy")
    demo.locator(".counted-by summary", has_text="Caulk").click()
    demo.get_by_label("Caulk, size of the bead", exact=True).fill("1/2")
    touch(demo, "Save Caulk, size of the bead")
    expect(demo.locator(".good", has_text="caulk").first).to_contain_text("tubes for casing")
    demo.get_by_role("link", name="Enter a receipt").click()
    to(demo, "house/receipt", ".form")
    pick(demo, "Trim, chalk")
    pick(demo, "1 qt")
    demo.get_by_label("How many").fill("2")
    demo.get_by_label("Paid in all").fill("44.10")
    touch(demo, "Save")
    receipts = demo.get_by_role("region", name="Receipts")
    expect(receipts).to_contain_text("2 × Trim, chalk, 1 qt")
    expect(receipts).to_contain_text("$44.10")
    receipts.get_by_role("link", name="2 × Trim, chalk, 1 qt").click()
    expect(demo.get_by_label("Paid in all")).to_have_value("44.10")
    demo.get_by_label("Paid in all").fill("41.40")
    touch(demo, "Save")
    expect(receipts).to_contain_text("$41.40")
    expect(receipts).not_to_contain_text("$44.10")
    to(demo, "supplies", ".buy-line")
    expect(demo.locator(".good", has_text="Trim, chalk")).to_contain_text("nothing to buy")


def test_an_article_is_named_anew_and_struck_and_another_takes_its_place(demo):
    to(demo, "house/stock", ".row")
    labels = demo.get_by_role("region", name="By their labels")
    labels.get_by_role("link", name="Fern and moth").click()
    demo.get_by_label("Its name").fill("Fern without moth")
    touch(demo, "Save")
    expect(demo.get_by_role("heading", level=1)).to_have_text("Fern without moth")
    touch(demo, "Strike it from the house")
    expect(labels).not_to_contain_text("Fern")
    to(demo, "cover", "main a.row")
    row(demo, "Fern without moth").click()
    expect(demo.get_by_text("was struck: choose another")).to_be_visible()
    demo.get_by_text("Another in its place").click()
    touch(demo, "Trim, chalk")
    expect(demo.get_by_role("heading", level=1)).to_have_text("Trim, chalk")


def test_a_step_that_is_done_puts_readings_in_doubt_and_leads_to_them(demo):
    to(demo, "house", "main a")
    demo.get_by_role("link", name="The order of work").click()
    expect(demo.get_by_role("region", name="Today")).to_contain_text("Plaster and board repaired")
    demo.get_by_role("button", name="Floor laid, or blocks as thick as it at every foot: done").click()
    again = demo.get_by_role("region", name="Read again")
    expect(again).to_contain_text("wall 1, door, height at the left")
    again.get_by_role("link", name="height at the left").first.click()
    expect(demo.get_by_role("heading", level=1)).to_contain_text("height at the left")


def test_once_the_casing_is_up_a_place_is_read_from_the_order_of_work_with_no_list_issued(demo):
    to(demo, "house", "main a")
    demo.get_by_role("link", name="The order of work").click()
    demo.get_by_role("button", name="Door casing: done").click()
    in_place = demo.get_by_role("region", name="Read in place")
    first = in_place.get_by_role("link").first
    expect(first).to_be_visible()
    count = in_place.get_by_role("link").count()
    first.click()
    expect(demo.locator(".waiting")).to_contain_text("Once the casing is up: from")
    demo.get_by_label("type it or say it").fill("40")
    touch(demo, "Save")
    expect(demo.locator(".stands")).to_contain_text("its letter is not issued yet; measured in place")
    expect(demo.get_by_role("button", name="Issue the list")).to_be_visible()
    to(demo, "house", "main a")
    demo.get_by_role("link", name="The order of work").click()
    expect(in_place.get_by_role("link")).to_have_count(count - 1)


def test_a_seam_plan_and_a_list_to_buy_by_print_on_one_side(laptop, used_phone, tmp_path):
    demo = show_demo(laptop, used_phone(), 1280)
    to(demo, "cover", "main a.row")
    row(demo, "Fern and moth").click()
    demo.locator(".stretch svg").wait_for()
    assert [pages_of(demo, tmp_path, size) for size in ("Letter", "A4")] == [1, 1]
    to(demo, "supplies", ".buy-line")
    assert [pages_of(demo, tmp_path, size) for size in ("Letter", "A4")] == [1, 1]
    demo.emulate_media(media="print")
    expect(demo.locator(".good", has_text="caulk").first).to_be_visible()
