"""The boards of several rooms planned at once: one board may serve two rooms, and none is bought twice."""

import copy
import itertools

import pytest

from tests.cut_lists import ask, issue, mark
from tests.entries import House

TEN = [{"length": "10 ft", "price": "10.00"}]


def add_room(house: House, name: str, *lengths: str) -> str:
    """A room whose walls are read, one after the other, and do not come round."""
    room = house.new("room", house=house.house, name=name, closed=False)
    before, house.room = house.room, room
    walls, house.walls = house.walls, []
    for length in lengths:
        house.wall(length)
    house.room, house.walls = before, walls
    issue(house, room)
    return room


@pytest.fixture
def house() -> House:
    """A hall with a wall of 70 and a den with one of 48: each wants a board of 120, and one does for both."""
    made = House(closed=False)
    made.say("setting", of=made.house, name="base.stock", value=TEN)
    made.hall, made.den = add_room(made, "Hall", "70"), add_room(made, "Den", "48")
    return made


def plan_of(house: House, **more: object) -> dict:
    (plan,) = ask(house.entries, {"ask": "boards_for_house", "house": house.house, **more})["plans"]
    return plan


def of_room(house: House, room: str) -> dict:
    return ask(house.entries, {"ask": "boards_for_room", "room": room})


def accept(house: House, plan: dict, bought: bool = False) -> None:
    said = copy.deepcopy(plan["accept"])
    names = itertools.count(1)
    for board in said["body"]["boards"]:
        board["board"] = board["board"] or f"{len(house.entries):08x}-0000-4000-8000-{next(names):012x}"
        board["bought"] = board["bought"] or bought
    house.say("plan", said["supersedes"], **said["body"])


def letters(plan: dict) -> list[list[str]]:
    return [[piece["letter"] for piece in board["pieces"]] for board in plan["boards"]]


def test_one_board_serves_two_rooms_where_each_alone_would_buy_one(house):
    alone = [of_room(house, room)["total"] for room in (house.hall, house.den)]
    plan = plan_of(house)

    assert alone == ["10.00", "10.00"]
    assert (plan["cost"], sorted(letters(plan)[0])) == ("10.00", ["2A", "3A"])


def test_only_the_rooms_that_are_chosen_are_planned(house):
    answer = ask(house.entries, {"ask": "boards_for_house", "house": house.house, "rooms": [house.den]})

    assert [letters(plan) for plan in answer["plans"]] == [[["3A"]]]
    assert [(room["mark"], room["chosen"], room["to_cut"]) for room in answer["rooms"]] == [
        ("1", False, 0), ("2", False, 0), ("3", True, 1),
    ]  # fmt: skip


def test_an_accepted_plan_of_the_house_is_shown_and_its_rooms_buy_nothing_for_it(house):
    accept(house, plan_of(house))

    assert plan_of(house)["accepted"]
    hall = of_room(house, house.hall)
    assert (hall["plans"], hall["elsewhere"], hall["missing"]) == ([], ["A"], [])


def test_the_money_of_a_shared_board_is_told_once_with_the_room_that_takes_most_of_it(house):
    accept(house, plan_of(house))
    totals = [ask(house.entries, {"ask": "shopping", "room": room}) for room in (house.hall, house.den)]
    costs = [[line["cost"] for good in one["goods"] if good["sort"] == "boards" for line in good["lines"]]
             for one in totals]  # fmt: skip

    assert costs == [["10.00"], []]


def test_a_piece_cut_in_its_room_is_cut_on_the_board_of_the_house(house):
    house.say("setting", of=house.house, name="base.stock", value=[{"length": "16 ft", "price": "16.00"}])
    accept(house, plan_of(house), bought=True)
    mark(house, house.hall, "A", "cut")
    states = {piece["letter"]: piece["state"] for board in plan_of(house)["boards"] for piece in board["pieces"]}

    assert states == {"2A": "cut", "3A": "to cut"}
    mark(house, house.den, "A", "cut")
    (left,) = ask(house.entries, {"ask": "stock", "house": house.house})["boards"]
    assert left["room"] == "the house"


def test_what_is_left_of_a_board_of_the_house_is_used_by_a_room(house):
    house.say("setting", of=house.house, name="base.stock", value=[{"length": "16 ft", "price": "16.00"}])
    accept(house, plan_of(house), bought=True)
    for room in (house.hall, house.den):
        mark(house, room, "A", "cut")
    late = add_room(house, "Bath", "60")

    assert of_room(house, late)["total"] == "0.00"


def test_a_board_bought_for_one_room_stays_with_it(house):
    (plan,) = of_room(house, house.hall)["plans"]
    accept(house, plan, bought=True)

    assert letters(plan_of(house)) == [["3A"]]


def test_a_board_that_a_room_was_to_buy_is_not_bought_beside_the_house_s(house):
    (plan,) = of_room(house, house.hall)["plans"]
    accept(house, plan)
    accept(house, plan_of(house))

    assert (of_room(house, house.hall)["plans"], plan_of(house)["total"]) == ([], "10.00")


def test_a_reading_that_takes_a_piece_off_its_board_is_told_at_the_house(house):
    accept(house, plan_of(house))
    wall = next(entry["body"]["wall"] for entry in house.entries if entry["body"].get("room") == house.hall
                and entry["kind"] == "wall")  # fmt: skip
    house.entries = [entry for entry in house.entries if entry["body"].get("text") != "70"]
    house.read(wall, "length", "100")
    plan = plan_of(house)

    assert not plan["accepted"]
    assert "no longer come out of one board" in plan["reasons"][0]


def test_a_house_or_a_room_that_is_not_there_is_named(house):
    from scantling.engine.desk import Desk

    desk = Desk()
    desk.answer({"ask": "take", "entries": house.entries})
    for asked in ({"house": "nowhere"}, {"house": house.house, "rooms": ["nowhere"]}):
        answered = desk.answer({"ask": "boards_for_house", **asked})
        assert answered["error"]["key"].startswith("no-such-")


def spoil(house: House, room: str, letter: str, read: str | None = None) -> None:
    mark(house, room, letter, "cut", read)
    mark(house, room, letter, "recut")


def test_a_piece_spoilt_of_a_board_bought_for_its_room_is_planned_again_with_the_others(house):
    (plan,) = of_room(house, house.hall)["plans"]
    accept(house, plan, bought=True)
    spoil(house, house.hall, "A")

    assert sorted(itertools.chain(*letters(plan_of(house)))) == ["2A", "3A"]


def test_what_was_spoilt_in_one_room_is_cut_from_for_another_and_once_alone(house):
    # The hall's 70 lies spoilt; the bath's 60 comes out of it, where the 49 1/2 left of its board is too short.
    (plan,) = of_room(house, house.hall)["plans"]
    accept(house, plan, bought=True)
    spoil(house, house.hall, "A", "70")
    bath = add_room(house, "Bath", "60")
    chosen = {"rooms": [house.hall, bath]}
    plan = plan_of(house, **chosen)

    assert (plan["total"], sorted(letters(plan))) == ("10.00", [["2A"], ["4A"]])
    (scrap,) = (board for board in plan["boards"] if board["length_shown"] == '70"')
    assert scrap["why"] == "left of spoilt 2A 1"
    accept(house, plan)
    assert plan_of(house, **chosen)["total"] == "10.00"
    late = add_room(house, "Closet", "58")
    (alone,) = (one for one in ask(house.entries, {"ask": "boards_for_house", "house": house.house,
                                                   "rooms": [house.hall, bath, late]})["plans"])  # fmt: skip
    assert sum(board["length_shown"] == '70"' for board in alone["boards"]) == 1
    shown = of_room(house, house.hall)
    assert not [board for one in shown["plans"] for board in one["boards"] if board["why"].startswith("left of")]


def test_a_spare_board_bought_for_one_room_is_used_before_another_is_bought(house):
    house.say("setting", of=house.house, name="spare_sticks", value="1")
    (plan,) = of_room(house, house.hall)["plans"]
    assert [board["why"] for board in plan["boards"]] == ["", "spare"]
    accept(house, plan, bought=True)
    house.say("setting", of=house.house, name="spare_sticks", value="0")
    plan = plan_of(house)

    assert (plan["total"], letters(plan)) == ("0.00", [["3A"]])
    # It is no spare any more once something is cut from it.
    assert [board["why"] for board in plan["boards"]] == ["left of another room's board"]
    accept(house, plan)
    assert letters(of_room(house, house.hall)["plans"][0]) == [["A"]]
