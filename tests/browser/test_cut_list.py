"""The cut list on phones: issued, boards marked with no signal, a reading changed afterwards, and two phones apart."""

import json
from typing import Any
from urllib.request import urlopen

import pytest
from playwright.sync_api import Page, expect

from tests.browser.touch import awake, button, entity, send, title, touch, visit, walked_room

#: Whether the list shows these letters and no other, in whatever order.
LETTERED = """letters => {
  const shown = Array.from(document.querySelectorAll("a.row .ring"), (ring) => ring.innerText);
  return shown.sort().join() === letters.join();
}"""


@pytest.fixture
def house(laptop):
    """The invented room, read, on the laptop; gives back its address and the room's id."""
    entries = walked_room(read=True)
    send(laptop.url, entries)
    return laptop.url, next(entry["body"]["room"] for entry in entries if entry["kind"] == "room")


def pieces(url: str, room: str) -> list[dict[str, Any]]:
    with urlopen(f"{url}api/rooms/{room}/pieces") as reply:
        return json.load(reply)["pieces"]


def of_wall(url: str, room: str, number: int) -> dict[str, Any]:
    return next(one for one in pieces(url, room) if (one["part"], one["wall_number"]) == ("base", number))


def arrive(page: Page) -> None:
    awake(page)
    visit(page, "pieces")
    expect(page.locator("a.row .ring").first).to_be_visible()


def issue(page: Page) -> None:
    touch(page, "Issue the list")
    expect(button(page, "Issue the list")).to_have_count(0)


def shared(page: Page) -> None:
    visit(page, "house")
    touch(page, "Sync now")
    expect(page.locator(".status")).to_contain_text("shared")


def read_again(page: Page, wall: str, text: str) -> None:
    """One more reading of a wall's length."""
    visit(page, "survey", "read", wall, "length")
    page.get_by_label("type it or say it").fill(text)
    touch(page, "Save")
    expect(page.get_by_label("type it or say it")).to_have_count(0)


def test_a_board_cut_with_no_signal_is_told_to_be_trimmed_after_a_new_reading_and_the_laptop_says_the_same(
    house, keeper, desktop, opened
):
    url, room = house
    phone = keeper()
    page = opened(phone, url)
    arrive(page)
    expect(page.get_by_text("may change until the list is issued")).to_be_visible()
    issue(page)
    letter, wall = (of_wall(url, room, 3)[name] for name in ("letter", "wall"))

    phone.set_offline(True)
    visit(page, "pieces", letter)
    touch(page, "Mark it cut")
    expect(button(page, "Mark it fitted")).to_be_visible()
    expect(page.locator(".stands")).to_have_text("cut to 42 1/8")
    read_again(page, wall, "42")
    visit(page, "pieces", letter)
    expect(page.locator(".wrong")).to_have_text(f'{letter} is 1/8" long: trim 1/8".')
    visit(page, "pieces")
    expect(page.get_by_role("region", name="Look at these first")).to_contain_text("trim 1/8")

    phone.set_offline(False)
    shared(page)
    found = of_wall(url, room, 3)
    assert (found["letter"], found["state"], found["change"]["advice"]) == (letter, "cut", "trim")
    second = desktop.new_page()
    second.goto(url)
    arrive(second)
    expect(second.get_by_role("region", name="Look at these first")).to_contain_text(f'{letter} is 1/8" long')


def test_what_was_said_of_a_piece_can_be_struck_and_restored(house, used_phone):
    page = used_phone().new_page()
    page.goto(house[0])
    arrive(page)
    issue(page)
    visit(page, "pieces", "A")
    touch(page, "Mark it cut")
    touch(page, "Recut it")
    expect(page.locator(".stands")).to_have_text("recut")
    page.get_by_text("What was said of it").tap()
    button(page, "Strike marked recut").tap()
    expect(page.locator(".stands")).to_contain_text("cut to")
    button(page, "Restore marked recut").tap()
    expect(page.locator(".stands")).to_have_text("recut")


def test_a_length_as_cut_and_one_measured_in_place_are_entered_at_the_piece(house, used_phone):
    url, room = house
    page = used_phone().new_page()
    page.goto(url)
    arrive(page)
    issue(page)
    letter = of_wall(url, room, 3)["letter"]
    visit(page, "pieces", letter)
    touch(page, "Measure in place")
    expect(title(page)).to_have_text(f"{letter} in place")
    expect(page.locator(".waiting")).to_contain_text("where the back will lie")
    hanging = page.get_by_role("img", name=f"Piece {letter} as it hangs")
    expect(hanging.locator("text", has_text=letter).first).to_be_visible()
    page.get_by_label("type it or say it").fill("42 1/16")
    touch(page, "Save")
    expect(page.locator(".stands")).to_have_text("to cut; measured in place")
    expect(page.locator(".working")).to_contain_text("measured in place: this stands")
    touch(page, "Mark it cut")
    touch(page, "Enter its length as cut")
    page.get_by_label("type it or say it").fill("41 15/16")
    touch(page, "Save")
    expect(page.locator(".stands")).to_contain_text("read as 41 15/16")
    expect(page.locator(".wrong")).to_have_text(f'{letter} is 1/8" short: recut.')


def door_in(wall: str) -> list[dict[str, Any]]:
    """A door in a wall, as the phone that walked the room would find it later."""
    last = walked_room(read=True)[-1]
    door = entity(990)
    said = [("opening", {"opening": door, "wall": wall, "kind": "door"})]
    said += [("reading", {"of": door, "what": what, "text": "20"}) for what in ("at", "width")]
    return [
        {**last, "id": entity(2000 + place), "seq": last["seq"] + place, "kind": kind, "body": body,
         "stamp": last["stamp"].replace("-0000-", f"-{place:04x}-")}
        for place, (kind, body) in enumerate(said, start=1)
    ]  # fmt: skip


def test_two_phones_that_issue_apart_give_no_letter_twice_and_the_second_is_told(house, keeper, opened, until):
    url, room = house
    wall = of_wall(url, room, 5)["wall"]
    first = opened(keeper(), url)
    arrive(first)
    first.context.set_offline(True)
    send(url, door_in(wall))  # which the first phone does not hear of before it issues
    second = opened(keeper(), url)
    arrive(second)
    second.context.set_offline(True)
    issue(first)
    issue(second)
    for page in (first, second, first):
        page.context.set_offline(False)
        shared(page)

    found = pieces(url, room)
    letters = [one["letter"] for one in found]
    assert len(set(letters)) == len(letters)
    assert not any(one["provisional"] for one in found)
    told = next(one["letter"] for one in found if any(flag["key"] == "other-letter" for flag in one["flags"]))
    for page in (first, second):
        visit(page, "pieces")
        expect(page.get_by_role("region", name="No longer wanted")).to_contain_text("base, wall 5")
        until(page, LETTERED, sorted(letters))
        visit(page, "pieces", told)
        expect(page.locator(".flag", has_text="Another device lettered it")).to_contain_text(f"it is {told}")


def test_a_board_is_marked_while_the_engine_sleeps(house, used_phone, new_sleeper, until):
    url, room = house
    page = used_phone().new_page()
    page.goto(url)
    arrive(page)
    issue(page)
    shared(page)
    sleeper = new_sleeper().new_page()
    sleeper.goto(url)
    visit(sleeper, "pieces")
    rows = sleeper.get_by_role("region", name="As issued").get_by_role("listitem")
    expect(rows).to_have_count(len(pieces(url, room)))
    first = pieces(url, room)[0]
    expect(rows.first.locator(".ring")).to_have_text(first["letter"])
    button(sleeper, f"Mark {first['letter']} cut").tap()
    expect(button(sleeper, f"Mark {first['letter']} fitted")).to_be_visible()
    visit(sleeper, "house")
    touch(sleeper, "Sync now")
    until(sleeper, lambda: pieces(url, room)[0]["state"] == "cut")
    assert pieces(url, room)[0]["cut_to"] == first["cut"]
