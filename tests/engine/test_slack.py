"""Slack: what each board of a room's plan keeps to spare; what it costs; and what may still change is cut last."""

from dataclasses import replace
from fractions import Fraction

import pytest
from scantling.engine.boards.case.case import Case, Stock
from scantling.engine.boards.case.cuts import Cut, Ends
from scantling.engine.boards.search.plan import plan_boards
from scantling.engine.tape.lengths import ZERO, Length

from tests.cut_lists import ask, issue
from tests.entries import House, four_walls

EIGHT, TWELVE = {"length": "8 ft", "price": "10.00"}, {"length": "12 ft", "price": "15.00"}


@pytest.fixture
def house() -> House:
    made = four_walls()
    issue(made, made.room)
    return made


def inch(figure: int) -> Length:
    return Length(Fraction(figure))


def plan_of(house: House, stock: list, **settings: str) -> dict:
    house.say("setting", of=house.house, name="base.stock", value=stock)
    for name, value in settings.items():
        house.say("setting", of=house.house, name=name, value=value)
    (plan,) = ask(house.entries, {"ask": "boards_for_room", "room": house.room})["plans"]
    return plan


def lengths_of(plan: dict) -> list[str]:
    return sorted(board["length_shown"] for board in plan["boards"])


def test_each_board_keeps_a_quarter_inch_to_spare_and_what_that_costs_is_told(house):
    # walls of 120 and 96: 96 and 96 with the kerf come out of 192 3/4 with 1/2 trimmed off, and leave no 1/4
    plan = plan_of(house, [{"length": "192 3/4", "price": "20"}, {"length": "10 ft 1 in", "price": "12"}])
    bare = plan_of(house, [{"length": "192 3/4", "price": "20"}, {"length": "10 ft 1 in", "price": "12"}], slack="0")

    assert (plan["cost"], len(plan["boards"])) == ("48.00", 4)
    assert (bare["cost"], len(bare["boards"]), bare["slack"]) == ("44.00", 3, "")
    assert plan["slack"] == 'Each board keeps 1/4" to spare. Without that you would save $4.00 and 1 board.'


def test_where_slack_costs_nothing_that_is_told_too(house):
    plan = plan_of(house, [{"length": "10 ft 6 in", "price": "12"}])

    assert plan["slack"] == 'Each board keeps 1/4" to spare. Without that you would save nothing.'


def test_a_piece_as_long_as_the_longest_board_gives_is_cut_from_it_without_slack(house):
    plan = plan_of(house, [{"length": "120 5/8", "price": "12"}])

    assert plan["cost"] == "48.00"
    assert plan["slack"].startswith('Each board keeps 1/4" to spare, but for A, D: each fills its board.')


def test_a_plan_that_stands_may_use_its_slack_up(house):
    stock = [{"length": "120 3/4", "price": "12"}]
    said = plan_of(house, stock)["accept"]
    for number, board in enumerate(said["body"]["boards"]):
        board["board"] = f"{number:08x}-0000-4000-8000-000000000000"
    house.say("plan", said["supersedes"], **said["body"])
    house.entries = [entry for entry in house.entries if entry["body"].get("text") != "120"]
    for wall in (house.walls[0], house.walls[2]):
        house.read(wall, "length", "120 1/8")

    assert plan_of(house, stock)["accepted"]


def test_what_another_length_would_change_is_compared_with_slack_on_both_sides(house):
    rows = [{"length": "192 3/4", "price": "20"}, {"length": "10 ft 1 in", "price": "12"}]
    plan = plan_of(house, rows)
    asked = {"ask": "boards_if", "room": house.room, "profile": plan["profile"]}

    assert ask(house.entries, asked)["cost"] == plan["cost"]


def test_what_may_still_change_is_cut_last_of_its_board():
    mitered = Ends(Cut(Fraction(45), Length(Fraction(1))), Cut(Fraction(45), Length(Fraction(-1))))
    case = Case(
        Length(Fraction(1, 8)), ZERO, (Stock(inch(240), 100),), (inch(40), inch(50), inch(60)),
        ends=(Ends(), mitered, mitered),
    )  # fmt: skip

    assert plan_boards(case).boards[0].pieces == (0, 1, 2)
    assert plan_boards(replace(case, last=frozenset({0}))).boards[0].pieces == (1, 2, 0)
    assert plan_boards(replace(case, ends=(), last=frozenset({1}))).boards[0].pieces == (0, 2, 1)


def test_a_piece_to_be_measured_in_place_is_last_and_said_to_be(house):
    house.say("setting", of=house.house, name="joint.gap", value="1/64")
    plan = plan_of(house, [{"length": "20 ft", "price": "20"}])
    flagged = {piece["letter"] for board in plan["boards"] for piece in board["pieces"] if piece["uncertain"]}

    assert flagged == {"A", "B", "C", "D"}  # every ± is more than so tight a joint bears
