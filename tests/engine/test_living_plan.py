"""A plan that lives: shown once accepted, with what is cut and bought left where it is when readings change."""

import copy
from xml.etree import ElementTree

import pytest
from scantling.engine.desk import Desk
from scantling.engine.drawings.boards import BAR

from tests.cut_lists import accept, ask, issue, listed, mark, plan_of
from tests.entries import House, four_walls

STOCK = [{"length": "8 ft", "price": "10.00"}, {"length": "12 ft", "price": "15.00"}]


@pytest.fixture
def house() -> House:
    made = four_walls()
    made.say("setting", of=made.house, name="base.stock", value=STOCK)
    issue(made, made.room)
    return made


def cuts_of(plan: dict) -> list[tuple[str, list[str]]]:
    return [(board["length_shown"], [piece["letter"] for piece in board["pieces"]]) for board in plan["boards"]]


def test_a_plan_is_a_proposal_until_it_is_accepted_and_shown_from_then_on(house):
    proposed = plan_of(house)
    accept(house)
    accepted = plan_of(house)

    assert (proposed["accepted"], proposed["reasons"], accepted["accepted"]) == (False, [], True)
    assert cuts_of(accepted) == cuts_of(proposed)
    assert (accepted["total"], accepted["proof"][:8]) == (proposed["total"], "Accepted")


def test_cheaper_boards_on_sale_do_not_move_an_accepted_plan(house):
    accept(house)
    before = plan_of(house)
    house.say("setting", of=house.house, name="base.stock", value=[{"length": "16 ft", "price": "0.01"}])

    assert cuts_of(plan_of(house)) == cuts_of(before)


def test_a_reading_that_leaves_every_piece_on_its_board_leaves_the_plan(house):
    accept(house)
    house.read(house.walls[1], "length", "95 15/16")

    assert plan_of(house)["accepted"]


def test_a_piece_that_no_longer_comes_out_of_its_board_is_named_and_planned_anew(house):
    house.say("setting", of=house.house, name="base.stock", value=[*STOCK, {"length": "16 ft", "price": "21"}])
    accept(house)
    house.entries = [entry for entry in house.entries if entry["body"].get("text") != "96"]
    for wall in (house.walls[1], house.walls[3]):
        house.read(wall, "length", "170")
    plan = plan_of(house)

    assert not plan["accepted"]
    assert any("no longer come" in reason for reason in plan["reasons"])
    assert sorted(letter for _, letters in cuts_of(plan) for letter in letters) == ["A", "B", "C", "D"]


def test_boards_that_are_bought_cost_nothing_more_and_are_used_first(house):
    accept(house, bought=True)
    bought = plan_of(house)
    house.read(house.walls[0], "length", "143")  # too long for what it was planned from, with another reading before
    changed = plan_of(house)

    assert (bought["total"], bought["paid"]) == ("0.00", "60.00")
    assert len(changed["boards"]) >= len(bought["boards"])
    assert sum(board["bought"] for board in changed["boards"]) == len(bought["boards"])


def test_a_piece_that_is_cut_stays_on_its_board(house):
    accept(house, bought=True)
    board = next(cut for cut in cuts_of(plan_of(house)) if "A" in cut[1])
    mark(house, house.room, "A", "cut")
    house.read(house.walls[1], "length", "20")
    house.read(house.walls[2], "length", "143")
    plan = plan_of(house)

    held = [one for one in plan["boards"] if any(p["letter"] == "A" for p in one["pieces"])]
    assert [(one["length_shown"], one["pieces"][0]["state"]) for one in held] == [(board[0], "cut")]


def test_a_recut_asks_first_for_what_stands_on_the_rack(house):
    house.say("setting", of=house.house, name="spare_sticks", value="1")
    accept(house, bought=True)
    mark(house, house.room, "A", "cut")
    mark(house, house.room, "A", "recut")
    house.say("setting", of=house.house, name="spare_sticks", value="0")  # it is what the spare was for
    plan = plan_of(house)

    assert plan["total"] == "0.00"
    states = [(p["letter"], p["state"]) for board in plan["boards"] for p in board["pieces"] if p["letter"] == "A"]
    assert sorted(states) == [("A", "spoilt"), ("A", "to cut")]


def test_an_accepted_recut_stands_until_it_is_spoilt_again(house):
    house.say("setting", of=house.house, name="spare_sticks", value="1")
    accept(house, bought=True)
    mark(house, house.room, "A", "cut")
    mark(house, house.room, "A", "recut")
    accept(house)

    assert plan_of(house)["accepted"]


def test_a_spare_is_bought_beyond_the_plan_and_said_to_be_one(house):
    before = plan_of(house)
    house.say("setting", of=house.house, name="spare_sticks", value="1")
    plan = plan_of(house)

    assert plan["cost"] == before["cost"]
    assert [(line["count"], line["why"]) for line in plan["buy"] if line["why"]] == [(1, "spare")]
    assert (
        float(plan["total"]) - float(before["total"]) == 15.0
    )  # the cheapest board that the longest piece comes out of


def test_overage_is_the_cheapest_boards_that_give_so_much(house):
    # 432 in of base, 10 per cent of it 43.2 in: one 8 ft board gives that for least.
    before = plan_of(house)
    house.say("setting", of=house.house, name="overage", value="10")
    plan = plan_of(house)

    assert [(line["count"], line["length"]) for line in plan["buy"] if line["why"] == "overage"] == [(1, "8 ft")]
    assert float(plan["total"]) - float(before["total"]) == 10.0


def test_what_is_left_of_a_board_goes_to_the_next_room_once(house):
    accept(house, bought=True)
    for letter in "ABCD":
        mark(house, house.room, letter, "cut")
    left = max(board["offcut"]["inches"] for board in plan_of(house)["boards"])
    rooms = [house.new("room", house=house.house, name=name, closed=False) for name in ("closet", "hall")]
    for room in rooms:
        wall = house.new("wall", room=room, after=None, turn="inside")
        house.read(wall, "length", "14")
    first = plan_of(house, rooms[0])
    accept(house, room=rooms[0])

    assert left >= 14.5
    assert (first["total"], first["boards"][0]["why"]) == ("0.00", "left of another room's board")
    used = {stick["source"] for room in rooms for stick in plan_of(house, room)["accept"]["body"]["boards"]}
    assert len(used) == 2


def test_a_leftover_that_is_just_long_enough_to_hold_is_offered_to_another_room():
    house = House()
    for name, value in {"base.stock": STOCK[:1], "kerf": "0", "end_trim": "0", "hold": "12"}.items():
        house.say("setting", of=house.house, name=name, value=value)
    for _ in range(4):
        house.wall("84")  # 12 is left of each board of 8 ft
    issue(house, house.room)
    accept(house, bought=True)
    for letter in "ABCD":
        mark(house, house.room, letter, "cut")
    closet = house.new("room", house=house.house, name="closet", closed=False)
    house.read(house.new("wall", room=closet, after=None, turn="inside"), "length", "10")
    assert plan_of(house, closet)["total"] == "0.00"


def test_the_spare_is_long_enough_for_the_longest_piece():
    house = House(closed=False)
    house.say("setting", of=house.house, name="base.stock", value=STOCK)
    house.wall("20")
    house.wall("100")
    before = plan_of(house)
    house.say("setting", of=house.house, name="spare_sticks", value="1")
    assert float(plan_of(house)["total"]) - float(before["total"]) == 15.0


def test_two_plans_accepted_apart_are_one_on_every_device(house):
    said = copy.deepcopy(plan_of(house)["accept"])
    accept(house)
    other = House(letter="b")
    for number, board in enumerate(said["body"]["boards"]):
        board["board"] = f"0000000b-0000-4000-8000-{number:012x}"
    other.say("plan", said["supersedes"], **said["body"])
    entries = [*house.entries, other.entries[-1]]

    answers = [ask(list(order), {"ask": "boards_for_room", "room": house.room}) for order in (entries, entries[::-1])]
    assert answers[0] == answers[1]


@pytest.mark.parametrize("spoil", [
    lambda body: body["boards"][0].update(cents="-1"),
    lambda body: body["boards"][0].update(board="x"),
    lambda body: body["boards"][0]["pieces"][0].update(takes=5),
    lambda body: body["boards"][0].pop("source"),
    lambda body: body.update(boards="all"),
])  # fmt: skip
def test_a_plan_that_cannot_be_read_is_refused_and_never_shown(house, spoil):
    before = plan_of(house)
    accept(house)
    spoil(house.entries[-1]["body"])

    refused = Desk().answer({"ask": "check", "entries": [house.entries[-1]]})["answer"]["refused"]
    assert len(refused) == 1
    assert plan_of(house) == before


def test_what_another_choice_of_lengths_would_change_is_told(house):
    asked = {"ask": "boards_if", "room": house.room, "profile": plan_of(house)["profile"]}
    found = ask(house.entries, {**asked, "length": "20 ft", "price": "1.00"})

    assert [one["cost"] for one in found["single"]] == [None, "60.00"]
    assert found["more"]["words"].endswith("less.")


def test_a_profile_that_the_room_has_none_of_is_refused(house):
    asked = {"ask": "boards_if", "room": house.room, "profile": "base 1 × 1"}

    assert Desk(house.entries).answer(asked)["error"]["key"] == "no-such-profile"


def test_boards_that_were_bought_stay_in_view_when_no_piece_is_of_their_profile_any_more(house):
    accept(house, bought=True)
    before = plan_of(house)
    house.say("setting", of=house.house, name="base.wanted", value="no")
    after = plan_of(house)

    assert after["profile"] == before["profile"]
    assert [board["length_shown"] for board in after["boards"]] == [board["length_shown"] for board in before["boards"]]
    assert (after["paid"], after["total"]) == (before["paid"], "0.00")
    assert all(board["bought"] and not board["pieces"] for board in after["boards"])


def test_a_piece_that_has_no_room_for_its_letter_has_it_over_the_board(house):
    house.read(house.walls[1], "length", "2")  # a sliver, of a board of 12 ft drawn 340 wide
    sliver = next(one["letter"] for one in listed(house.entries, house.room).values() if one["wall_number"] == 2)
    board = next(
        board for board in plan_of(house)["boards"] if any(piece["letter"] == sliver for piece in board["pieces"])
    )
    drawing = ElementTree.fromstring(board["drawing"])
    bars = [one for one in drawing.iter() if "dashed" in (one.get("class") or "").split()]
    upper = min(float(point.partition(",")[2]) for point in (bars[0].get("points") or "").split())
    lettered = (one for one in drawing.iter() if "letter" in (one.get("class") or "").split())
    letters = {one.text: float(one.get("y") or 0) for one in lettered}
    on_board = {height for letter, height in letters.items() if letter != sliver}
    assert len(on_board) == 1
    assert letters[sliver] < upper < on_board.pop() < upper + BAR
