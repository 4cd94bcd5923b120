"""At the table: a wide window shows the list and the thing in hand side by side, and everything goes by keyboard."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import Laptop
from tests.browser.test_kept_answers import COUNT
from tests.browser.touch import awake, entity, send, title, visit, walked_room

WALL = entity(1)
DOOR = entity(902)


@pytest.fixture(scope="module")
def table(open_once, site, tmp_path_factory) -> Iterator[Page]:
    """The measured room on a wide screen."""
    with Laptop(tmp_path_factory.mktemp("table"), site) as laptop:
        send(laptop.url, walked_room(read=True))
        with open_once(laptop, viewport={"width": 1440, "height": 900}, is_mobile=False, has_touch=False) as page:
            yield page


def found(page: Page, where: str) -> list[str]:
    """The letters that are marked there as found."""
    return page.eval_on_selector_all(f"{where} [data-found]", "all => all.map((one) => one.dataset.letters)")


def test_a_piece_stands_beside_the_list_and_is_found_on_every_drawing(table, until):
    visit(table, "pieces")
    row = table.locator("a.row").first
    expect(row).to_be_visible()
    expect(table.locator(".beside .plan svg").first).to_be_visible()
    letter = row.locator(".ring").inner_text()

    row.hover()
    until(table, lambda: any(letter in one.split() for one in found(table, ".beside")))
    row.click()
    expect(table.locator(".beside .ring-large")).to_have_text(letter)
    expect(table.get_by_role("img", name="from in front").first).to_be_visible()
    expect(title(table)).to_have_text("Pieces: Sewing room")
    expect(row).to_be_focused()  # the list was not made anew under the keyboard
    sides = [table.locator(one).bounding_box() for one in (".list", ".places", ".beside .one-piece")]
    assert sides[0]["x"] + sides[0]["width"] <= sides[1]["x"] < sides[2]["x"]

    table.locator(".beside svg text[data-letters='B']").first.click()
    expect(table.locator(".beside .ring-large")).to_have_text("B")


def test_everything_is_reached_by_single_keys_and_the_list_of_them_is_on_a_question_mark(table):
    visit(table, "survey")
    expect(title(table)).to_have_text("Sewing room")
    table.keyboard.press("?")
    expect(table.get_by_role("heading", name="Keys")).to_be_visible()
    table.keyboard.press("2")
    expect(title(table)).to_have_text("Sewing room")  # not under the list
    table.keyboard.press("Escape")
    expect(table.get_by_role("heading", name="Keys")).to_be_hidden()

    table.keyboard.press("2")
    expect(title(table)).to_have_text("Pieces: Sewing room")
    table.locator("a.row").first.wait_for()
    table.keyboard.press("l")
    table.keyboard.press("ArrowDown")
    expect(table.locator("a.row").nth(1)).to_be_focused()
    table.keyboard.press("Enter")
    letter = table.locator("a.row").nth(1).locator(".ring").inner_text()
    expect(table.locator(".beside .ring-large")).to_have_text(letter)
    table.keyboard.press("Escape")
    expect(table.locator(".beside .ring-large")).to_have_count(0)
    table.keyboard.press("n")
    expect(table.get_by_role("button", name="Issue the list")).to_be_focused()


def test_the_last_touch_is_taken_back_by_strikes_and_nothing_is_lost(table):
    table.reload()  # what another test wrote on this page could be taken back too
    awake(table)
    visit(table, "survey", "read", WALL, "length")
    expect(table.get_by_label("type it or say it")).to_be_visible()
    table.keyboard.type("147")  # at a tape a digit is a digit, without touching the field first
    expect(table.get_by_label("type it or say it")).to_have_value("147")
    table.keyboard.press("Enter")
    visit(table, "survey", "row", WALL, "length")
    expect(table.get_by_role("button", name="Strike 147")).to_be_visible()
    title(table).click()

    table.keyboard.press("Control+z")

    expect(table.get_by_role("button", name="Restore 147")).to_be_visible()
    expect(table.get_by_role("status").filter(has_text="taken back")).to_be_visible()
    table.keyboard.press("Control+z")
    expect(table.get_by_text("Nothing that was written on this page")).to_be_visible()


def stand_beside(page: Page) -> None:
    """The list at the left and the thing at the right, neither wider than the window."""
    sides = [page.locator(one).first.bounding_box() for one in (".list", ".beside")]
    assert sides[0]["x"] + sides[0]["width"] <= sides[1]["x"]
    assert sides[1]["x"] + sides[1]["width"] <= 1440
    assert sides[1]["width"] > 480


def test_what_covers_the_room_stands_beside_the_list_of_it(table):
    visit(table, "cover")
    table.get_by_role("link", name="Cover something").click()
    beside = table.locator(".beside")
    beside.get_by_role("radio", name="Paint").check()
    beside.get_by_label("Its name").fill("Walls, oat")
    beside.get_by_role("button", name="Go on").click()
    row = table.locator(".list a.row", has_text="Walls, oat")
    expect(row).to_have_attribute("aria-current", "true")
    expect(beside.get_by_role("heading", name="Walls, oat")).to_be_visible()
    stand_beside(table)
    visit(table, "cover")  # with nothing chosen a line is open all the same
    expect(beside.get_by_role("heading", name="Walls, oat")).to_be_visible()
    expect(title(table)).to_have_text("Cover: Sewing room")


def test_what_is_to_buy_stands_beside_what_it_comes_to(table):
    visit(table, "supplies")
    expect(table.locator(".list .good").first).to_be_visible()
    expect(table.locator(".beside .money")).to_be_visible()
    expect(table.locator(".beside").get_by_role("heading", name="What the amounts go by")).to_be_visible()
    stand_beside(table)


def test_the_places_of_the_house_stand_beside_its_rooms(table):
    visit(table, "house")
    beside = table.locator(".beside")
    expect(beside.get_by_role("heading", name="This notebook")).to_be_visible()
    for link, heading in (("Money", "Money"), ("On hand", "On hand"), ("The order of work", "Work: Sewing room")):
        table.locator(".list").get_by_role("link", name=link).click()
        expect(beside.get_by_role("heading", name=heading, exact=True)).to_be_visible()
        expect(table.locator(".list [aria-current]")).to_contain_text(link)
        expect(table.locator(".list").get_by_role("button", name="Sewing room")).to_be_visible()
        stand_beside(table)
    table.locator(".list").get_by_role("link", name="This notebook").click()
    expect(beside.get_by_role("heading", name="This notebook")).to_be_visible()


def test_rooms_stand_side_by_side_in_a_table(table):
    visit(table, "house", "rooms")
    row = table.locator(".beside table tbody tr", has_text="Sewing room")
    expect(row).to_be_visible()
    headings = table.locator(".beside table thead th").all_inner_texts()
    cells = dict(zip(headings[1:], row.locator("td").all_inner_texts(), strict=True))
    assert cells["To cut"] != "0"
    assert cells["Spent"] == "$0.00"
    stand_beside(table)


BESIDE_THE_ROOM = {
    "walk": f"walk/{WALL}", "something in the way": f"thing/{WALL}", "an opening": f"opening/{DOOR}",
    "battens": f"battens/{WALL}", "a wall said": f"say/{WALL}", "a reading": f"read/{WALL}/length",
}  # fmt: skip


@pytest.mark.parametrize("place", BESIDE_THE_ROOM.values(), ids=BESIDE_THE_ROOM)
def test_what_is_written_of_a_wall_stands_beside_the_plan_with_that_wall_marked(table, place):
    visit(table, "survey", *place.split("/"))
    view = table.get_by_role("complementary", name="Where it is")
    plan = view.get_by_role("img", name="Plan of Sewing room", exact=True)
    expect(plan.locator("line.hand")).to_have_attribute("data-wall", WALL)
    expect(plan.locator("text.hand")).to_have_text("1")
    expect(view.get_by_role("img", name="Wall 1 from in front", exact=True)).to_be_visible()
    expect(table.get_by_role("img", name="Plan of Sewing room", exact=True)).to_have_count(1)
    main, aside = table.locator("main").bounding_box(), view.bounding_box()
    assert main["x"] + main["width"] <= aside["x"]
    assert aside["width"] > 480


def test_a_wall_that_is_pointed_at_or_come_to_by_keyboard_is_found_on_the_plan(table, until):
    def on_plan() -> list[str]:
        return table.eval_on_selector_all(".plan .wall[data-found]", "all => all.map((one) => one.dataset.wall)")

    visit(table, "survey")
    expect(table.locator(".plan svg")).to_be_visible()
    table.get_by_role("link", name="wall 3, along the floor").hover()
    until(table, lambda: on_plan() == [entity(3)])
    table.get_by_role("link", name="wall 5, along the floor").focus()
    until(table, lambda: on_plan() == [entity(5)])
    table.locator(f".plan line[data-wall='{entity(6)}']").hover(force=True)
    until(table, lambda: on_plan() == [entity(6)])
    expect(table.locator("li[data-found]").filter(has_text="wall 6")).not_to_have_count(0)


def test_what_is_written_is_not_lost_when_the_window_becomes_narrow_and_the_view_goes(table):
    visit(table, "survey", "thing", WALL)
    view = table.get_by_role("complementary", name="Where it is")
    expect(view.locator(".plan svg").first).to_be_visible()
    table.get_by_label("or in your own words").fill("a boiler")
    try:
        for width, height in ((390, 844), (999, 700)):
            table.set_viewport_size({"width": width, "height": height})
            expect(view).to_have_count(0)
            expect(table.get_by_label("or in your own words")).to_have_value("a boiler")
    finally:
        table.set_viewport_size({"width": 1440, "height": 900})
    expect(view.locator(".plan svg").first).to_be_visible()


def test_the_survey_is_not_asked_for_again_for_what_stands_beside_a_form(table):
    visit(table, "survey", "walk", WALL)
    expect(table.locator(".in-view .plan svg").first).to_be_visible()
    table.evaluate(COUNT)
    for place in ("thing", "say", "battens"):
        visit(table, "survey", place, entity(2))
        expect(table.locator(".in-view line.hand")).to_have_attribute("data-wall", entity(2))
    visit(table, "survey", "rooms")
    expect(table.locator(".in-view .plan svg")).to_be_visible()
    assert "survey" not in [one["ask"] for one in table.evaluate("() => asked")]


def test_what_is_done_with_a_piece_stands_beside_where_it_goes(table):
    view = table.get_by_role("complementary", name="Where it is")
    marked = view.locator("text.hand")
    for place in ("fit/B", "B/place", "saw/B/spoiled"):
        visit(table, "pieces", *place.split("/"))
        expect(view.get_by_role("heading", name="Where they go")).to_be_visible()
        expect(view.get_by_role("img", name="Wall 1 from in front").locator("text.hand")).to_have_text("B")
        expect(marked).to_have_count(2)  # on the plan its letter stands in the ring of its door
    visit(table, "pieces", "fit", "B")
    row = table.locator("main ol a.row", has_text="left leg")
    expect(row).to_be_visible()
    sides = [box.bounding_box()["x"] for box in (table.locator(".now-up"), row, view)]
    assert sides == sorted(sides)
