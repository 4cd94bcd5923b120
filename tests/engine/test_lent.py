"""What will be left of a bought board is lent to other rooms before it is cut, so far as that is certain."""

import pytest

from tests.cut_lists import accept, issue, mark, plan_of
from tests.entries import House

TWELVE = [{"length": "12 ft", "price": "15.00"}]
OTHERS = "left of another room's board, once that is cut"


@pytest.fixture
def house() -> House:
    """A hall of 96, out of a board of 144: 1/2 off the end, a kerf of 1/8 and 1/4 of slack leave 47 1/8."""
    made = House(closed=False)
    made.say("setting", of=made.house, name="base.stock", value=TWELVE)
    made.wall("96")
    issue(made, made.room)
    return made


def add_room(house: House, length: str) -> str:
    room = house.new("room", house=house.house, name="closet", closed=False)
    house.read(house.new("wall", room=room, after=None, turn="inside"), "length", length)
    return room


def read_anew(house: House, text: str) -> None:
    """The hall's wall, read again in place of all that was read of it."""
    for one in [one for one in house.entries if one["kind"] == "reading" and one["body"]["of"] == house.walls[0]]:
        house.say("strike", entry=one["id"], why="misread")
    house.read(house.walls[0], "length", text)


def of_closet(house: House, length: str) -> tuple[str, list[str]]:
    plan = plan_of(house, add_room(house, length))
    return plan["total"], [board["why"] for board in plan["boards"]]


@pytest.mark.parametrize(
    ("length", "told"),
    [
        # The leftover is trimmed by 1/2 in its turn, and keeps its own 1/4.
        pytest.param("46 1/4", ("0.00", [OTHERS]), id="as much as is certain"),
        pytest.param("46 1/2", ("15.00", [""]), id="more than that"),
    ],
)
def test_the_rest_of_a_bought_board_is_for_another_room_before_its_pieces_are_cut(house, length, told):
    accept(house, house.room, bought=True)
    assert of_closet(house, length) == told


def test_a_board_that_is_not_bought_or_not_settled_on_is_lent_to_nobody(house):
    assert of_closet(house, "20") == ("15.00", [""])
    accept(house, house.room)
    assert of_closet(house, "20") == ("15.00", [""])


def test_of_a_board_that_is_begun_no_more_is_lent_than_what_is_still_to_be_cut_of_it_leaves(house):
    house.wall("40")
    issue(house, house.room)
    accept(house, house.room, bought=True)
    mark(house, house.room, "A", "cut")
    # 144 less the end, a board of 96 and its kerf is 47 3/8; that of 40 and its own leave too little to hold.
    assert of_closet(house, "20") == ("15.00", [""])


def test_what_is_left_of_a_board_that_nobody_bought_is_lent_to_nobody_although_it_was_cut(house):
    accept(house, house.room)
    mark(house, house.room, "A", "cut")
    assert of_closet(house, "20") == ("15.00", [""])


def test_a_spare_board_is_lent_to_nobody(house):
    house.say("setting", of=house.room, name="spare_sticks", value="1")
    accept(house, house.room, bought=True)
    assert of_closet(house, "90") == ("15.00", [""])


def test_what_a_piece_wants_more_than_when_its_plan_was_settled_on_is_not_lent(house):
    accept(house, house.room, bought=True)
    read_anew(house, "120")
    assert plan_of(house, house.room)["accepted"]
    assert of_closet(house, "46") == ("15.00", [""])
    assert of_closet(house, "22") == ("0.00", [OTHERS])


@pytest.mark.parametrize(
    ("read", "stands"), [("96 1/4", True), ("96 3/8", False)], ids=["up to its slack", "beyond it"]
)
def test_a_board_of_which_something_is_lent_bears_its_own_pieces_and_their_slack(house, read, stands):
    accept(house, house.room, bought=True)
    accept(house, add_room(house, "46"), bought=True)
    read_anew(house, read)
    plan = plan_of(house, house.room)
    assert plan["accepted"] == stands
    assert plan["total"] == ("0.00" if stands else "15.00")


def test_what_is_lent_is_lent_once_and_stays_so_when_the_board_is_cut(house):
    accept(house, house.room, bought=True)
    closet = add_room(house, "40")
    accept(house, closet, bought=True)
    assert of_closet(house, "20") == ("15.00", [""])
    mark(house, house.room, "A", "cut")
    assert of_closet(house, "20") == ("15.00", [""])
    assert [board["why"] for board in plan_of(house, closet)["boards"]] == ["left of another room's board"]


def test_no_piece_of_its_own_room_is_planned_from_what_was_lent(house):
    accept(house, house.room, bought=True)
    mark(house, house.room, "A", "cut")
    accept(house, add_room(house, "40"), bought=True)
    house.wall("40")
    assert plan_of(house, house.room)["total"] == "15.00"
