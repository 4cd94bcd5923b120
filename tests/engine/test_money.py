"""Money in the notebook: receipts against the plan, room by room and for the house, and what the next may cost."""

from typing import Any

import pytest
from scantling.engine.desk import Desk

from tests.covered import PAPER, article, ask, cover, lot, walls, write
from tests.entries import House, four_walls

STOCK = [{"length": "12 ft", "price": "15.60", "limit": None}]
ONLY_BASE = {"casing.wanted": "no", "base.stock": STOCK, "caulk.wanted": "no", "nail.wanted": "no",
             "sandpaper.wanted": "no"}  # fmt: skip


@pytest.fixture
def house() -> House:
    """A room with four boards of base to buy, 62.40, and nothing else."""
    house = four_walls()
    write(house, house.house, ONLY_BASE)
    return house


def line(found: dict[str, Any], name: str) -> tuple[str, str, str | None]:
    one = next(one for one in found["lines"] if one["name"] == name)
    return one["planned"], one["spent"], one["over"]


BASE = "base 9/16 × 5 1/2"


def test_a_room_costs_what_its_list_comes_to_and_a_receipt_is_held_against_it(house):
    found = ask(house, "spent")
    assert (found["planned"], found["spent"], found["expected"]) == ("62.40", "0.00", "62.40")
    assert line(found, BASE) == ("62.40", "0.00", None)
    lot(house, house.room, 4, name=BASE, price="64.10", date="2026-03-21")
    found = ask(house, "spent")
    assert (line(found, BASE), found["expected"]) == (("62.40", "64.10", "1.70"), "64.10")
    assert [(one["name"], one["price"], one["date"]) for one in found["lots"]] == [(BASE, "64.10", "2026-03-21")]


def test_rolls_that_are_bought_leave_the_rest_to_be_paid(house):
    paper = article(house, "paper", "fern", PAPER)
    cover(house, paper, {"cover.walls": walls(house.walls[0]), "cover.height": "96"})
    write(house, house.house, {"paste.wanted": "no", "cloth.wanted": "no"})
    lot(house, house.room, 1, article=paper, price="44.00")
    found = ask(house, "spent")
    # Two rolls planned at 40; one was bought for 44, the other is still to be paid.
    assert line(found, "fern") == ("80.00", "44.00", "-36.00")
    assert found["expected"] == "146.40"


def test_what_lies_on_the_shelf_was_no_cost_of_this_room(house):
    paper = article(house, "paper", "fern", PAPER)
    cover(house, paper, {"cover.walls": walls(house.walls[0]), "cover.height": "96"})
    lot(house, house.house, 1, article=paper)
    assert line(ask(house, "spent"), "fern") == ("40.00", "0.00", None)


def test_a_house_is_its_rooms_and_what_was_bought_for_all_of_them(house):
    first = house.room
    house.walls, house.room = [], house.new("room", house=house.house, name="pantry", closed=True)
    for _ in range(4):
        house.wall("60")
    lot(house, first, 4, name=BASE, price="60.00")
    lot(house, house.house, 1, name="saw blade", price="22.50")
    found = ask(house, "spent", house=house.house)
    # The pantry takes two boards of 144, which wait; only the first room's are held against its receipt.
    assert [(one["name"], one["planned"], one["spent"], one["expected"]) for one in found["rooms"]] == [
        ("the room", "62.40", "60.00", "60.00"), ("pantry", "31.20", "0.00", "31.20"),
    ]  # fmt: skip
    assert line(found, BASE) == ("93.60", "60.00", "-2.40")
    assert line(found, "saw blade") == ("0.00", "22.50", "22.50")
    assert (found["spent"], found["expected"]) == ("82.50", "113.70")
    assert [one["where"] for one in found["lots"]] == ["the room", "the house"]


def test_what_has_no_price_and_a_price_that_is_none_are_told(house):
    write(house, house.house, {"caulk.wanted": "yes"})
    lot(house, house.room, 1, name="caulk", price="cheap")
    found = ask(house, "spent")
    assert found["unpriced"] == ["caulk"]
    assert [one["key"] for one in found["problems"]] == ["not-money"]
    assert found["spent"] == "0.00"


def test_a_lot_keeps_the_name_of_its_article_when_that_is_called_anew(house):
    paper = article(house, "paper", "fern", PAPER)
    lot(house, house.room, 1, name="fern", article=paper, price="44.00")
    said = next(entry["id"] for entry in house.entries if entry["kind"] == "article")
    house.say("article", [said], article=paper, house=house.house, sort="paper", name="fern on cream")
    assert line(ask(house, "spent"), "fern on cream") == ("0.00", "44.00", "44.00")


def test_the_next_rooms_are_told_from_those_that_are_measured_and_planned(house):
    rows = [{"name": "attic", "perimeter": "36 ft", "openings": "0"}]
    write(house, house.house, {"next.rooms": rows})
    found = ask(house, "next_rooms", house=house.house)
    # 432 in round are 36 ft for 62.40, and one room checks nothing: half of it either way.
    assert [(one["low"], one["high"]) for one in found["rooms"]] == [("31.20", "93.60")]
    assert "one room" in found["said"]
    open_yet = house.new("room", house=house.house, name="porch", closed=False)
    assert ask(house, "next_rooms", house=house.house) == found, open_yet


def test_what_covers_the_walls_goes_by_their_area_and_trim_by_the_foot():
    asked = [{"name": "a", "perimeter": "40 ft", "height": "8 ft", "cost": "300.00", "covering": "200.00"}]
    coming = [{"name": "b", "perimeter": "40 ft", "height": "4 ft"}, {"name": "c", "perimeter": "40 ft"}]
    found = Desk().answer({"ask": "next_rooms", "measured": asked, "coming": coming})["answer"]["rooms"]
    # 100 by the foot and 200 by 320 sq ft: 100 + 100 at half the height, 100 where no height is known; half either way.
    assert [(one["low"], one["high"]) for one in found] == [("100.00", "300.00"), ("50.00", "150.00")]
    assert found[0]["working"].endswith("40 × 4 ft = 160 sq ft")


def test_rooms_to_come_that_cannot_be_read_are_named_and_with_none_nothing_is_told(house):
    assert ask(house, "next_rooms", house=house.house)["said"] == "No room to come is written down yet."
    write(house, house.house, {"next.rooms": [{"name": "attic", "perimeter": "wide"}]})
    found = ask(house, "next_rooms", house=house.house)
    assert [one["name"] for one in found["problems"]] == ["next.rooms"]


@pytest.mark.parametrize("name", ["spent", "next_rooms", "stock"])
def test_a_house_that_is_not_there_is_refused(name):
    assert Desk().answer({"ask": name, "house": "none"})["error"]["key"] == "no-such-house"


def test_the_shelf_tells_what_came_what_is_up_and_what_is_over(house):
    paper = article(house, "paper", "fern", PAPER)
    over = cover(house, paper, {"cover.walls": walls(house.walls[0]), "cover.height": "96"})
    lot(house, house.room, 3, article=paper, price="120.00")
    (found,) = ask(house, "stock", house=house.house)["shelf"]
    assert (found["came"], found["used"], found["wanted"], found["over"]) == ("3 rolls", "", "2 rolls", "1 roll")
    for row in ask(house, "covering", covering=over)["list"]:
        house.say("tick", of=over, list="strips", key=row["key"], state="hung", remember="")
    (found,) = ask(house, "stock", house=house.house)["shelf"]
    assert (found["used"], found["wanted"], found["over"]) == ("2 rolls", "", "1 roll")


def test_a_board_that_is_cut_leaves_what_can_be_held_on_the_rack(house):
    house.wall("40")
    house.say("room", [house.entries[1]["id"]], room=house.room, house=house.house, name="the room", closed=False)
    asked = {"ask": "issue", "room": house.room, "list": "00000000-1111-4000-8000-000000000000"}
    for body in Desk(house.entries).answer(asked)["answer"]["bodies"]:
        house.say("issue", **body)
    (plan,) = ask(house, "boards_for_room")["plans"]
    boards = [{**board, "board": f"0000000b-0000-4000-8000-{place:012x}", "bought": True}
              for place, board in enumerate(plan["accept"]["body"]["boards"])]  # fmt: skip
    house.say("plan", **{**plan["accept"]["body"], "boards": boards})
    assert ask(house, "stock", house=house.house)["boards"] == []
    for piece in ask(house, "pieces")["pieces"]:
        marked = {"ask": "mark", "room": house.room, "piece": piece["id"], "state": "cut"}
        house.say("state", **Desk(house.entries).answer(marked)["answer"]["body"])
    found = ask(house, "stock", house=house.house)["boards"]
    assert found
    assert {one["room"] for one in found} == {"the room"}
    assert all(one["length"]["inches"] >= 12 for one in found)
