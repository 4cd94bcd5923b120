"""A wall said in one breath: each part is shown, what is in doubt is asked, and only a touch saves it."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import Laptop
from tests.browser.touch import button, send, title, touch, walked_room


@pytest.fixture(scope="module")
def room(open_once, site, tmp_path_factory) -> Iterator[Page]:
    with Laptop(tmp_path_factory.mktemp("breath"), site) as laptop:
        send(laptop.url, walked_room())
        with open_once(laptop) as page:
            yield page


def test_a_wall_is_said_in_one_breath_and_what_is_in_doubt_is_answered_before_it_is_saved(room):
    room.get_by_role("link", name="Say all of wall 1 in one breath").tap()
    expect(title(room)).to_have_text("Say the wall")
    said = room.get_by_label("What you read, in one breath")
    said.fill("wall one one hundred forty three and seven eighths, door at thirty and a quarter, 32 1/8, fish")
    expect(room.get_by_role("status").filter(has_text="2 of 4 understood; 2 to look at.")).to_be_visible()
    expect(room.get_by_text("wall 1, left corner to the door", exact=True).first).to_be_visible()
    save = button(room, "Save 2 readings")
    expect(save).to_be_disabled()

    touch(room, "wall 1, door, jamb to jamb")
    touch(room, "Leave out fish")
    expect(button(room, "Save 3 readings")).to_be_enabled()
    touch(room, "Save 3 readings")
    expect(title(room)).to_have_text("Sewing room")
    for shown in ("143 7/8", "30 1/4", "32 1/8"):
        expect(room.locator(".row-read .figure .heard", has_text=shown)).to_be_attached()


def test_nothing_is_saved_of_what_is_only_said(room):
    before = room.locator(".row-read").count()
    room.get_by_role("link", name="in one breath").first.tap()
    room.get_by_label("What you read, in one breath").fill("wall three 42 1/8")
    expect(button(room, "Save 1 reading")).to_be_enabled()
    touch(room, "Back")
    expect(title(room)).to_have_text("Sewing room")
    expect(room.locator(".row-read")).to_have_count(before)
