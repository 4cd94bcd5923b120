"""Boards of several rooms on a phone: planned at once, settled on, and given up again."""

import re

import pytest
from playwright.sync_api import Page, expect

from tests.browser.touch import awake, button, send, touch, visit
from tests.entries import House


@pytest.fixture
def two_rooms(laptop, used_phone) -> Page:
    house = House(closed=False)
    house.say("setting", of=house.house, name="base.stock", value=[{"length": "12 ft", "price": "12.00"}])
    house.wall("70")
    house.room, house.walls = house.new("room", house=house.house, name="the den", closed=False), []
    house.wall("48")
    send(laptop.url, house.entries)
    page = used_phone().new_page()
    page.goto(laptop.url)
    awake(page)
    return page


def test_several_rooms_are_planned_at_once_settled_on_and_planned_apart_again(two_rooms):
    visit(two_rooms, "boards")
    two_rooms.get_by_role("link", name="Plan several rooms at once").tap()
    expect(two_rooms.locator(".money")).to_have_text("$12.00")
    expect(two_rooms.get_by_text(re.compile("1A|2A")).first).to_be_visible()

    button(two_rooms, "2. the den").tap()
    expect(button(two_rooms, "2. the den")).to_have_attribute("aria-pressed", "false")
    expect(button(two_rooms, "1. the room")).to_be_disabled()
    button(two_rooms, "2. the den").tap()
    touch(two_rooms, "Accept this plan")
    expect(two_rooms.get_by_text("Accepted: this plan")).to_be_visible()

    visit(two_rooms, "boards")
    expect(two_rooms.get_by_text("On boards planned for several rooms: A.")).to_be_visible()
    visit(two_rooms, "boards", "house")
    touch(two_rooms, "Plan room by room again")
    visit(two_rooms, "boards")
    expect(two_rooms.locator(".money")).to_have_text("$12.00")
