"""The board planner by hand: the convention, the order at the saw, and what is refused."""

from fractions import Fraction

import pytest
from scantling.engine.boards.case import Case, PlannedBoard, Stock
from scantling.engine.boards.marks import derive_marks
from scantling.engine.lengths import ZERO, Length

from tests.asked import ask, refusal

PLAIN = {"kerf": "1/8", "end_trim": "0", "hold": "0", "stock": [{"length": "96", "price": "10.00", "limit": None}]}


def test_four_24_inch_pieces_do_not_come_out_of_96_for_the_kerfs():
    # 4 x 24 + 3 x 1/8 = 96 3/8, three eighths too much; three of them leave 96 - 72 - 3/8 = 23 5/8.
    found = ask("boards", **PLAIN, pieces=["24"] * 4)

    assert (found["count"], found["cost"], found["proven"]) == (2, "20.00", True)
    assert sorted(len(board["pieces"]) for board in found["boards"]) == [1, 3]


def test_pieces_that_fill_a_board_to_the_last_sixty_fourth_fit_it():
    found = ask("boards", **PLAIN, pieces=["47 7/8", "48"])  # 47 7/8 + 1/8 + 48 = 96

    assert found["count"] == 1
    assert found["boards"][0]["offcut"]["inches"] == 0


def test_an_offcut_on_hand_is_taken_before_money_is_spent():
    stock = [*PLAIN["stock"], {"length": "50", "price": "0", "limit": 1}]
    found = ask("boards", **{**PLAIN, "stock": stock}, pieces=["48", "90"])

    assert (found["cost"], found["count"]) == ("10.00", 2)


def test_a_case_in_cents_is_answered_in_cents():
    stock = [{"length": "96", "price": 1000, "limit": None}]
    found = ask("boards", **{**PLAIN, "stock": stock, "price_unit": "cent"}, pieces=["95"])

    assert (found["cost"], found["bound"]) == (1000, 1000)


def test_a_piece_that_no_order_leaves_enough_to_hold_is_named():
    # From 96 there is always a foot left to hold; from a stick of 11 there is neither before the cut nor after.
    short = [{"length": "11", "price": "1", "limit": None}]

    assert ask("boards", **{**PLAIN, "hold": "12"}, pieces=["5", "4", "3"])["unsafe"] == []
    assert ask("boards", **{**PLAIN, "hold": "12", "stock": short}, pieces=["5"])["unsafe"] == [0]


@pytest.mark.parametrize(
    ("wrong", "key"),
    [
        ({"stock": []}, "no-stock"),
        ({"pieces": []}, "no-pieces"),
        ({"pieces": ["97"]}, "piece-too-long"),
        ({"pieces": ["0"]}, "piece-not-positive"),
        ({"pieces": ["-3"]}, "negative"),
        ({"pieces": ["1"] * 2000}, "too-many-pieces"),
        ({"stock": [{"length": "0", "price": "1", "limit": None}]}, "stock-not-positive"),
        ({"stock": [{"length": "96", "price": "-1", "limit": None}]}, "not-money"),
        ({"stock": [{"length": "96", "price": "1", "limit": 1}], "pieces": ["90", "90"]}, "not-enough-stock"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_a_case_without_an_answer_is_refused_by_name(wrong, key):
    assert refusal("boards", **{**PLAIN, "pieces": ["10"], **wrong})[0] == key


def test_the_same_case_has_the_same_plan_every_time():
    pieces = ["63 1/4", "14 3/16", "54 5/16", "44 11/16", "40 1/8", "75 1/4", "27 7/8", "9 3/8", "36 1/8"]
    first, second = (ask("boards", **PLAIN, pieces=pieces) for _ in range(2))

    assert first == second


def test_marks_run_from_the_fresh_end_and_count_the_kerfs_between():
    # 20; then 20 + 1/8 + 30 = 50 1/8; then 50 1/8 + 1/8 + 10 = 60 1/4.
    lengths = tuple(Length(Fraction(inches)) for inches in (20, 30, 10))
    case = Case(Length(Fraction(1, 8)), ZERO, (Stock(Length(Fraction(96)), 1000),), lengths)

    marks = derive_marks(case, PlannedBoard(0, (0, 1, 2), ZERO))

    assert [mark.inches for mark in marks] == [20, Fraction(401, 8), Fraction(241, 4)]
