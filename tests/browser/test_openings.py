"""Windows on the page: what differs at one, what is read of its jambs; and a room that differs from its house."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.touch import awake, button, entity, press, send, title, touch, unfold, visit, walked_room

WINDOW, CABINET = entity(950), entity(903)


@pytest.fixture
def windowed(laptop, used_phone) -> Page:
    """The measured room, with a window in its third wall that has been read but for its jambs' depths."""
    entries = walked_room(read=True)
    last = entries[-1]

    def entry(said, **body):
        seq = len(entries) + 1
        stamp = last["stamp"].replace(last["stamp"][:12], f"{int(last['stamp'][:12], 16) + seq:012x}", 1)
        entries.append({**last, "id": entity(1000 + seq), "seq": seq, "stamp": stamp, "kind": said, "body": body})

    entry("opening", opening=WINDOW, wall=entity(3), kind="window")
    for what, text in (("at", "8 1/2"), ("width", "26"), ("left", "48"), ("right", "48"), ("sash", "4")):
        entry("reading", of=WINDOW, what=what, text=text)
    send(laptop.url, entries)
    page = used_phone().new_page()
    page.goto(laptop.url)
    expect(title(page)).to_have_text("Sewing room")
    awake(page)
    return page


def expect_pieces(page: Page, there: str, gone: str) -> None:
    visit(page, "pieces")
    rows = page.locator("a.row:has(.ring)")
    expect(rows.filter(has_text=f"wall 3, window, {there}")).to_be_visible()
    expect(rows.filter(has_text=f"wall 3, window, {gone}")).to_be_hidden()


def test_one_window_is_framed_as_a_picture_and_has_a_stool_again(windowed):
    expect_pieces(windowed, "stool", "sill")
    visit(windowed, "survey", "walk", entity(3))
    touch(windowed, "What differs at the window")
    windowed.get_by_role("radio", name="framed as a picture").tap()
    expect(button(windowed, "Windows, below: as in the room")).to_be_visible()
    expect_pieces(windowed, "sill", "stool")

    visit(windowed, "survey", "opening", WINDOW)
    touch(windowed, "Windows, below: as in the room")
    expect(windowed.get_by_role("radio", name="stool and apron")).to_be_checked()
    expect_pieces(windowed, "stool", "sill")


def test_a_cabinet_is_given_another_toe_kick_after_it_was_added(windowed):
    visit(windowed, "survey", "walk", entity(2))
    touch(windowed, "What differs at the cabinet")
    field = windowed.get_by_label("Toe kick, height", exact=True)
    field.fill("4")
    touch(windowed, "Save Toe kick, height")
    expect(button(windowed, "Toe kick, height: as in the room")).to_be_visible()
    visit(windowed, "pieces")
    strip = windowed.locator("a.row:has(.ring)").filter(has_text="base of the toe kick, wall 2, cabinet")
    expect(strip).to_be_visible()

    visit(windowed, "survey", "opening", CABINET)
    touch(windowed, "Toe kick, height: as in the room")
    expect(field).to_have_value("")
    visit(windowed, "pieces")
    expect(windowed.locator("a.row:has(.ring)").first).to_be_visible()
    expect(strip).to_be_hidden()


def test_tile_is_asked_how_high_it_goes_and_paint_ends_there_until_it_is_covered_too(windowed):
    page = windowed
    visit(page, "survey", "walk", entity(8))
    touch(page, "Cabinet, tub, tile or other thing")
    page.get_by_role("radio", name="tile").tap()
    expect(page.get_by_role("radio", name="stops at it")).to_be_checked()
    expect(page.get_by_text("Paper and paint end at its top.")).to_be_visible()
    touch(page, "Save")
    expect(button(page, "Strike the tile")).to_be_visible()
    visit(page, "survey")
    touch(page, "Read it")
    for what, text in (("left corner to the tile", "10"), ("tile, from edge to edge", "30"), ("tile, how tall", "72")):
        expect(title(page)).to_have_text(f"wall 8, {what}")
        press(page, text)
        touch(page, "Save")
    visit(page, "cover")
    page.get_by_role("link", name="Cover something").tap()
    page.get_by_role("radio", name="Paint").tap()
    page.get_by_label("Its name").fill("Walls, oat")
    touch(page, "Go on")
    page.get_by_label("How far it spreads", exact=True).fill("400")
    touch(page, "Save How far it spreads")
    page.get_by_label("size, can 1").fill("1 gal")
    page.get_by_label("price, can 1").fill("30.00")
    touch(page, "Save the cans")
    # Wall 8 alone, 96 high: 119 7/8 by 96 in, less tile of 30 by 72.
    touch(page, "wall 8")
    page.get_by_label("Floor to ceiling", exact=True).fill("96")
    touch(page, "Save Floor to ceiling")
    area = page.locator("li.row:has(b)", has_text="walls")
    expect(area).to_contain_text("65 sq ft")
    visit(page, "survey", "walk", entity(8))
    touch(page, "What differs at the tile")
    page.get_by_role("radio", name="covered").tap()
    visit(page, "cover")
    page.locator("a.row", has_text="Walls, oat").tap()
    expect(area).to_contain_text("80 sq ft")


def test_depths_of_a_jamb_are_read_point_after_point(windowed):
    visit(windowed, "house", "standard", entity(901))
    windowed.get_by_text("Jamb extension of windows").tap()
    windowed.get_by_role("group", name="Jamb extension, wanted").get_by_role("radio", name="yes").tap()
    expect(button(windowed, "Jamb extension, wanted: as in the house")).to_be_visible()

    visit(windowed, "survey")
    expect(windowed.get_by_role("heading", name="Next: wall 3, window, depth of the jamb at the left")).to_be_visible()
    touch(windowed, "Read it")
    press(windowed, "0 1/2")
    touch(windowed, "next point")
    press(windowed, "0 5/8")
    touch(windowed, "Save")
    expect(title(windowed)).to_have_text("wall 3, window, depth of the jamb at the right")
    touch(windowed, "Back")
    row = windowed.get_by_role("link", name="window, depth of the jamb at the left")
    unfold(windowed, "wall 3", row)
    expect(row).to_contain_text("5/8")
    expect(row).to_contain_text("read once")


def test_a_room_differs_from_its_house_and_keeps_its_own_boards(windowed):
    visit(windowed, "house", "standard", entity(901))
    windowed.get_by_text("Casing", exact=True).tap()
    width = windowed.get_by_label("Casing, width", exact=True)
    expect(width).to_have_attribute("placeholder", "2 1/4, in the house")
    width.fill("3 1/2")
    touch(windowed, "Save Casing, width")
    windowed.get_by_label("length, board 1 of casing", exact=True).fill("8 ft")
    windowed.get_by_label("price, board 1 of casing", exact=True).fill("10")
    button(windowed, "Save the boards of casing").first.tap()
    visit(windowed, "boards")
    expect(windowed.get_by_role("heading", name="casing 11/16 × 3 1/2")).to_be_visible()


def test_boards_of_any_other_profile_are_given_with_its_name(windowed):
    visit(windowed, "pieces", "free", "new")
    windowed.get_by_label("What it is").fill("shelf")
    windowed.get_by_label("Its stock").fill("pine 3/4 × 9 1/4")
    windowed.get_by_label("Its length").fill("31 1/2")
    touch(windowed, "Save")
    expect(title(windowed)).to_have_text("Pieces: Sewing room")
    visit(windowed, "boards")
    expect(windowed.get_by_text("No stock lengths yet for pine 3/4 × 9 1/4")).to_be_visible()
    visit(windowed, "house", "standard")
    windowed.get_by_text("Other profiles", exact=True).tap()
    for cell, text in (("profile", "pine 3/4 × 9 1/4"), ("length", "6 ft"), ("price", "9")):
        windowed.get_by_label(f"{cell}, board 1 of other profiles", exact=True).fill(text)
    touch(windowed, "Save the boards of other profiles")
    expect(button(windowed, "Save the boards of other profiles")).to_be_disabled()
    visit(windowed, "boards")
    expect(windowed.get_by_role("heading", name="pine 3/4 × 9 1/4")).to_be_visible()


def test_a_head_corner_is_read_by_the_gauge(windowed):
    visit(windowed, "survey", "read", WINDOW, "left_corner")
    touch(windowed, "square, 90")
    expect(windowed.locator(".hero")).to_have_text("90°")
    touch(windowed, "Save")
    expect(title(windowed)).to_have_text("Sewing room")
    visit(windowed, "survey", "row", WINDOW, "left_corner")
    expect(windowed.get_by_role("list", name="Every reading, as typed")).to_contain_text("90.0 degrees")


def test_a_room_is_struck_and_had_back_with_all_that_was_read_in_it(windowed):
    visit(windowed, "survey", "rooms")
    windowed.get_by_text("Another name for Sewing room, or strike it").tap()
    touch(windowed, "Strike Sewing room")
    windowed.get_by_text("Struck", exact=True).tap()
    touch(windowed, "Restore Sewing room")
    expect(button(windowed, "Sewing room: open")).to_be_visible()
    expect_pieces(windowed, "stool", "sill")


def test_a_house_is_struck_and_had_back(windowed):
    visit(windowed, "house")
    windowed.get_by_text("Name and year, or strike it").tap()
    touch(windowed, "Strike Alder Street")
    visit(windowed, "survey")
    expect(title(windowed)).to_have_text("A new notebook")
    windowed.get_by_text("Struck", exact=True).tap()
    touch(windowed, "Restore Alder Street")
    expect(title(windowed)).to_have_text("Sewing room")
