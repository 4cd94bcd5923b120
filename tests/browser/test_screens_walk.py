"""The most important afternoon: a room with a chimney breast is recorded by touch, with the laptop switched off."""

import pytest
from playwright.sync_api import expect

from tests.browser.touch import (
    READ,
    awake,
    button,
    entity,
    read_everything,
    send,
    start_house,
    title,
    touch,
    visit,
    walk,
    walked_room,
)  # fmt: skip

EVERY_KIND = {"house": 1, "room": 2, "wall": 10, "opening": 1, "obstacle": 1, "reading": 22}
#: Where the buttons stand that the next thing or wall is put by.
STAND = """() => [...document.querySelectorAll(".now > .side-by-side > .button-side, .now > .button, .now .pick")]
  .map((one) => [one.textContent, one.getBoundingClientRect().top + scrollY])"""


def test_a_room_is_recorded_by_touch_with_the_server_stopped(laptop, keeper, opened, until):
    page = opened(keeper(), laptop.url)
    laptop.stop()

    start_house(page)
    walk(page)
    awake(page)
    asked = read_everything(page)

    expect(page.get_by_role("heading", name="Every wanted reading is here")).to_be_visible()
    expect(page.locator(".status")).to_contain_text(f"{sum(EVERY_KIND.values())} saved here")
    assert len(asked) == len(set(asked)) == EVERY_KIND["reading"], "each wanted figure was asked for once"

    # The breast's front by hand: 59 7/8 between two square outside corners, and 9/16 of board round each: 61.
    visit(page, "pieces")
    front = page.get_by_role("link", name="base, wall 5")
    expect(front).to_contain_text("45°")
    expect(front.locator(".figure .heard")).to_have_text("61 in")

    laptop.start()
    visit(page, "house")
    touch(page, "Sync now")
    until(page, lambda: len(laptop.journal()) == sum(EVERY_KIND.values()))
    kinds = [entry["kind"] for entry in laptop.journal()]
    assert {kind: kinds.count(kind) for kind in EVERY_KIND} == EVERY_KIND
    texts = {entry["body"]["text"] for entry in laptop.journal() if entry["kind"] == "reading"}
    assert texts == set(READ.values()), "every reading arrived as it was typed"


def test_recording_needs_no_engine_at_all(laptop, keeper, opened):
    phone = keeper()
    page = opened(phone, laptop.url)
    page.close()
    laptop.stop()
    # The worker never answers: the page must not care.
    page = phone.new_page()
    page.add_init_script("globalThis.Worker = class extends EventTarget { postMessage() {} terminate() {} };")
    page.goto(laptop.url)

    start_house(page)
    walk(page)
    expect(page.locator(".status")).to_contain_text("engine waking")
    touch(page, "Read it")
    page.get_by_role("button", name="6", exact=True).tap()
    expect(page.get_by_text("Engine waking: this will be saved as typed.")).to_be_visible()
    touch(page, "Back")
    asked = read_everything(page)

    assert len(asked) == EVERY_KIND["reading"]
    row = page.get_by_role("link", name="wall 5, along the floor")
    expect(row).to_contain_text("59 7/8")
    page.reload()
    expect(title(page)).to_have_text("Sewing room")
    expect(row).to_contain_text("59 7/8")


def test_a_wall_that_cannot_be_reached_is_left_and_stays_wanted(laptop, used_phone):
    page = used_phone().new_page()
    page.goto(laptop.url)
    start_house(page)
    walk(page)
    awake(page)
    ahead = page.get_by_role("heading", name="Next: ")
    expect(ahead).to_have_text("Next: wall 1, left corner to the door")

    touch(page, "Can't reach")

    expect(ahead).to_have_text("Next: wall 1, door, jamb to jamb")
    expect(page.get_by_role("link", name="wall 1, left corner to the door")).to_contain_text("not read yet")


@pytest.mark.parametrize(("width", "height"), [(390, 844), (360, 740)])
def test_what_is_put_in_a_wall_moves_no_button_from_under_the_thumb(laptop, used_phone, width, height):
    send(laptop.url, walked_room(read=True))
    page = used_phone().new_page()
    page.set_viewport_size({"width": width, "height": height})
    page.goto(laptop.url)
    awake(page)
    visit(page, "survey", "walk", entity(4))
    expect(page.locator(".both-views svg")).to_have_count(2)
    within = page.locator(".faced p")
    expect(within).to_have_text("nothing in it")
    stood = page.evaluate(STAND)

    touch(page, "Window in this wall")
    expect(within).to_have_text("window")
    touch(page, "Cabinet, tub")
    touch(page, "Save")

    expect(within).to_have_text("window, cabinet")
    expect(button(page, "Strike the cabinet")).to_be_visible()
    assert len(stood) == 8
    assert page.evaluate(STAND) == stood


def test_the_wall_in_hand_is_drawn_from_in_front_as_it_fills(laptop, used_phone):
    entries = walked_room(read=True)
    send(laptop.url, [one for one in entries if one["kind"] != "reading"])
    page = used_phone().new_page()
    page.goto(laptop.url)
    awake(page)
    visit(page, "survey", "walk", entity(1))
    front = page.get_by_role("img", name="Wall 1 from in front")
    expect(front.locator("line.dashed")).to_have_count(3)  # the top and both ends: nothing is read yet
    expect(front.locator("polygon")).to_have_count(0)

    send(laptop.url, [one for one in entries if one["kind"] == "reading"])
    page.reload()
    awake(page)

    expect(front.locator("line.dashed")).to_have_count(1)
    expect(front.locator("polygon")).not_to_have_count(0)
