"""Spoiled at the saw: the piece comes back, its board is used up, and only what is good of it is used again."""

from typing import Any

import pytest
from scantling.engine.desk import Desk

from tests.cut_lists import ask, issue, listed, mark
from tests.engine.test_fit import write
from tests.engine.test_living_plan import STOCK, accept, plan_of
from tests.entries import House, four_walls

Answer = dict[str, Any]


@pytest.fixture
def house() -> House:
    made = four_walls()
    made.say("setting", of=made.house, name="base.stock", value=STOCK)
    issue(made, made.room)
    return made


def spoiled(house: House, letter: str, left: str | None = None) -> Answer:
    return ask(house.entries, {"ask": "spoiled", "room": house.room, "piece": letter, "left": left})


def sources(house: House) -> list[str]:
    return [board["why"] for board in plan_of(house)["boards"] if board["pieces"] and board["why"]]


def test_the_board_is_used_up_and_another_is_bought_for_the_piece(house):
    accept(house, bought=True)
    told = spoiled(house, "A")
    assert told["board"].startswith('120 1/8" of board ')  # 120 in. of base, and a kerf of 1/8
    assert told["board"].endswith(", 12 ft, is used up.")
    assert [step["value"]["shown"] for step in told["working"]] == ['120"', '1/8"', '120 1/8"']
    assert told["cost"] == "That is $15.00 more to buy."

    write(house, told["entries"])
    assert listed(house.entries, house.room)["A"]["state"] == "recut"
    plan = plan_of(house)
    assert plan["total"] == "15.00"  # as it was told
    states = sorted(piece["state"] for board in plan["boards"] for piece in board["pieces"] if piece["letter"] == "A")
    assert states == ["spoilt", "to cut"]


@pytest.mark.parametrize(("left", "used"), [(None, []), ("110", ["left of spoilt A 1"])], ids=["none good", "110 good"])
def test_nothing_is_planned_from_what_is_spoiled_unless_some_of_it_is_good(house, left, used):
    house.read(house.walls[1], "length", "80")  # shorter than what is good of it
    write(house, spoiled(house, "A", left)["entries"])
    assert sources(house) == used


def test_a_piece_that_was_cut_is_one_spoiled_board_and_not_two(house):
    accept(house, bought=True)
    mark(house, house.room, "A", "cut")
    write(house, spoiled(house, "A", "30")["entries"])
    lines = [piece for board in plan_of(house)["boards"] for piece in board["pieces"] if piece["letter"] == "A"]
    assert sorted(piece["state"] for piece in lines) == ["spoilt", "to cut"]
    shown = [one["shown"] for one in listed(house.entries, house.room)["A"]["said"]]
    assert shown == ["cut", "cut, read as 30", "recut"]


@pytest.mark.parametrize(
    ("as_cut", "used"), [(None, []), ("119", ["left of spoilt A 1"])], ids=["never read", "read as 119"]
)
def test_a_piece_that_was_cut_and_is_recut_leaves_its_board_only_where_that_was_read(house, as_cut, used):
    mark(house, house.room, "A", "cut", as_cut)
    mark(house, house.room, "A", "recut")
    house.read(house.walls[1], "length", "80")  # shorter than what may be left of it
    assert sources(house) == used


@pytest.mark.parametrize(
    ("piece", "left", "key"),
    [("Q", None, "no-such-piece"), ("A", "fish", "not-read"), ("A", "12 ft", "longer")],
    ids=["not of this room", "not a length", "longer than the piece was to be"],
)
def test_what_cannot_be_is_refused(house, piece, left, key):
    question = {"ask": "spoiled", "room": house.room, "piece": piece, "left": left}
    assert Desk(house.entries).answer(question)["error"]["key"] == key


def test_a_piece_that_hangs_is_not_spoiled_at_the_saw(house):
    mark(house, house.room, "A", "cut")
    mark(house, house.room, "A", "fitted")
    question = {"ask": "spoiled", "room": house.room, "piece": "A"}
    assert Desk(house.entries).answer(question)["error"]["key"] == "fitted"


def test_what_scraps_showed_is_told_with_every_piece_cut_to_that_corner(house):
    house.say("test_cut", of=house.walls[0], what="corner", text="45.5 fits")
    saw = {one["letter"]: one for one in ask(house.entries, {"ask": "saw", "room": house.room})["pieces"]}
    told = {letter: [(each["side"], each["name"], each["text"]) for each in one["tried"] if each["text"]]
            for letter, one in saw.items()}  # fmt: skip
    noted = [each for each in told.values() if each]
    assert noted == [[("right", "corner 1", "45.5 fits")], [("left", "corner 1", "45.5 fits")]]
    one = next(letter for letter, each in told.items() if each)
    assert saw[one]["spoken"].endswith("end, corner 1: 45.5 fits.")
    assert listed(house.entries, house.room)[one]["tried"] == [f"{told[one][0][0]} end, corner 1: 45.5 fits"]


def test_a_later_test_cut_takes_the_place_of_the_one_before_and_a_corner_at_the_ceiling_is_another(house):
    first = house.say("test_cut", of=house.walls[0], what="corner", text="45.5 open at the face")
    house.say("test_cut", [first], of=house.walls[0], what="corner", text="45.7 fits")
    house.say("test_cut", of=house.walls[0], what="ceiling_corner", text="31.6 fits")
    saw = ask(house.entries, {"ask": "saw", "room": house.room})["pieces"]
    assert {each["text"] for one in saw for each in one["tried"]} == {"", "45.7 fits"}
