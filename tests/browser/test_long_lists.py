"""Lists that scale: fifty rooms and the demo house's pieces, searched, grouped, with what is done folded away."""

import json
import re
from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Page, expect
from scantling.demo_house import house_file, load_demo

from tests.browser.conftest import Laptop
from tests.browser.touch import OTHER_PHONE, entity, send, touch, visit

ROOMS = 50


def attic(house: str, number: int) -> dict[str, Any]:
    stamp = f"{0x19A00000000 + number:012x}-0000-{OTHER_PHONE}"
    body = {"room": entity(8000 + number), "house": house, "name": f"Attic {number}", "closed": False}
    return {"id": entity(7000 + number), "device": OTHER_PHONE, "seq": number, "stamp": stamp, "version": 1,
            "kind": "room", "supersedes": [], "body": body}  # fmt: skip


@pytest.fixture(scope="module")
def long(open_once, site, tmp_path_factory) -> Iterator[Page]:
    data = tmp_path_factory.mktemp("long")
    load_demo(data)
    entries = json.loads(house_file().read_text())["entries"]
    house = next(one["body"]["house"] for one in entries if one["kind"] == "house")
    with Laptop(data, site) as laptop:
        send(laptop.url, [attic(house, number) for number in range(1, ROOMS)])
        with open_once(laptop) as page:
            visit(page, "survey", "rooms")
            touch(page, "Sewing room: open")
            yield page


def letters(page: Page) -> list[str]:
    return page.locator("a.row .ring").all_inner_texts()


def test_pieces_are_found_by_letter_and_by_words_american_or_british(long):
    visit(long, "pieces")
    find = long.get_by_label("Find a piece")
    expect(find).to_be_visible()
    everything = letters(long)
    find.fill("ac")
    expect(long.locator("a.row .ring")).to_have_text(["AC"])
    find.fill("skirting")
    expect(long.locator("a.row .ring").first).to_have_text("S")
    base = letters(long)
    find.fill("base")
    expect(long.locator("a.row .ring")).to_have_text(base)
    assert base != everything
    find.fill("wall 2, window")
    expect(long.locator("a.row .ring").first).to_have_text("D")
    find.fill("nowhere")
    expect(long.get_by_text("Nothing here is called that.")).to_be_visible()
    find.fill("w")
    find.press("Enter")
    expect(long.locator(".ring-large")).to_have_text("W")


def test_pieces_of_one_opening_stand_under_its_name_and_what_is_done_is_folded_away(long):
    visit(long, "pieces")
    expect(long.locator(".of").first).to_have_text("wall 1, door")
    row = long.locator("a.row").first
    expect(row).to_contain_text("wall 1, door, left leg")  # heard in full, seen in brief
    assert "wall 1" not in row.locator(".row-words > span").first.inner_text().splitlines()[-1]
    touch(long, "Issue the list")
    expect(long.get_by_role("button", name="At the saw")).to_be_visible()
    visit(long, "pieces", "S")
    touch(long, "Mark it cut")
    expect(long.get_by_role("button", name="Mark it fitted")).to_be_visible()
    visit(long, "pieces")
    done = long.get_by_role("region", name="Cut", exact=True)
    expect(done.locator("summary")).to_contain_text("1")
    expect(done.locator("a.row")).to_be_hidden()
    done.locator("summary").click()
    expect(done.locator("a.row")).to_be_visible()


def test_one_of_fifty_rooms_is_found_by_its_name(long):
    for place in (("house",), ("survey", "rooms")):
        visit(long, *place)
        long.get_by_label("Find a room").first.fill("attic 37")
        expect(long.locator("section .row", has_text="Attic")).to_have_count(1)


def test_fifty_rooms_are_jumped_through_by_letter_and_those_that_want_nothing_are_folded_away(long):
    visit(long, "house")
    done = long.locator("details", has_text="Nothing wanted")
    expect(done.locator("summary")).to_contain_text("3")
    expect(done.get_by_text("Sewing room")).to_be_hidden()
    letters = long.get_by_role("navigation", name="Jump to a letter").get_by_role("button")
    expect(letters).to_have_text(["A", "B", "S"])
    letters.last.tap()
    row = done.locator("button", has_text="Sewing room")
    expect(row).to_be_focused()
    expect(row).to_be_in_viewport()
    letters.first.tap()
    expect(long.locator("button", has_text="Attic 1").first).to_be_focused()
    expect(long.locator("section .row", has_text="Attic").nth(9)).to_contain_text("Attic 10")  # not after Attic 1


def test_rooms_compared_are_a_list_on_the_phone(long):
    visit(long, "house", "rooms")
    room = long.locator(".compared-room", has=long.get_by_role("heading", name="Sewing room"))
    expect(room).to_be_visible()
    expect(room.locator("div", has_text="To cut").locator("dd")).not_to_have_text("0")
    expect(long.locator(".compared-room")).to_have_count(52)
    assert long.evaluate("document.documentElement.scrollWidth") <= long.viewport_size["width"]


def test_a_long_survey_is_folded_by_wall_and_searched_by_the_number_of_a_wall(long):
    visit(long, "survey")
    rows = long.locator(".taken a.row")
    wall = long.locator(".folds > details", has=long.get_by_text("wall 2", exact=True))
    expect(wall).to_be_visible()
    expect(long.locator(".folds > details")).to_have_count(16)
    expect(rows.first).to_be_hidden()
    wall.locator("summary").tap()
    expect(wall.get_by_text("window, jamb to jamb")).to_be_visible()
    wall.locator("a.row").first.tap()
    long.get_by_role("button", name="Back").tap()
    expect(wall.get_by_text("window, jamb to jamb")).to_be_visible()  # as one left it

    find = long.get_by_label("Find a reading")
    find.fill("wall 1 corner")
    expect(rows.first).to_contain_text("left corner to the door")
    expect(long.locator(".taken")).not_to_contain_text("corner 11")
    find.fill("register")
    expect(rows).to_have_count(2)
    find.fill("wall 17")
    expect(long.get_by_text("Nothing here is called that.")).to_be_visible()
    find.fill("")


def test_a_reading_that_wants_a_look_stands_before_all_others(long):
    visit(long, "survey")
    long.get_by_label("Find a reading").fill("wall 2 along the floor")
    long.locator(".taken a.row").first.tap()
    long.get_by_role("button", name="Read it again").tap()
    long.get_by_label("type it or say it").fill("99")
    long.get_by_role("button", name="Save").tap()
    visit(long, "survey")
    first = long.get_by_role("region", name="Look at these first")
    expect(first.locator("a.row").first).to_contain_text("along the floor")
    expect(first.locator("a.row")).to_have_count(1)


def test_the_list_the_plan_and_each_wall_are_saved_as_files(long, tmp_path):
    visit(long, "pieces")
    long.get_by_text("Save as a file").tap()
    for name, begins in (("CSV", "room,letter,part"), ("JSON", "["), ("SVG", "<svg")):
        with long.expect_download() as given:
            long.get_by_role("button", name=re.compile(f"^{name}")).tap()
        assert given.value.suggested_filename == f"Sewing room.{name.lower()}"
        given.value.save_as(tmp_path / name)
        assert (tmp_path / name).read_text().startswith(begins)
    with long.expect_download() as given:
        long.get_by_role("button", name="Wall 3 as SVG").tap()
    assert given.value.suggested_filename == "Sewing room, wall 3.svg"
    given.value.save_as(tmp_path / "wall")
    assert "<title>Wall 3 from in front" in (tmp_path / "wall").read_text()
