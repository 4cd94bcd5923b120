"""The board planner by hand: the convention, the order at the saw, and what is refused."""

from fractions import Fraction

import pytest
from scantling.engine.boards.case.case import Case, PlannedBoard, Stock
from scantling.engine.boards.case.cuts import Cut, Ends, saved_between
from scantling.engine.boards.case.marks import derive_marks
from scantling.engine.boards.case.saw import derive_board, set_in_order
from scantling.engine.tape.lengths import ZERO, Length

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
        ({"stock": [{"length": "96", "price": "1", "limit": 0}]}, "no-board-left"),
        ({"end_trim": "96"}, "no-board-left"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_a_case_without_an_answer_is_refused_by_name(wrong, key):
    assert refusal("boards", **{**PLAIN, "pieces": ["10"], **wrong})[0] == key


def test_a_piece_that_no_board_is_long_enough_for_is_named_with_the_scarf_it_would_take():
    # 300 1/2 out of boards of 96: four of them with three laps between, and no fewer.
    *_, message = refusal("boards", **PLAIN, pieces=["10", "300 1/2"])

    assert all(said in message for said in ("Piece 2", '300 1/2"', '204 1/2"', "scarf", "4 boards"))


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


SQUARE = {"saw": "0"}
AT_FACE = {"saw": "45", "long_edge": "front", "gains": "9/16"}
AT_BACK = {"saw": "45", "long_edge": "back", "gains": "9/16"}


def test_a_mitered_end_takes_its_slanted_kerf_of_the_board():
    # A 1/8 blade at 45 takes 1/8 / cos 45 = 0.177 along the board, 0.052 more than the kerf: 1/16 to the next 64th.
    # So 47 7/8 + 1/16 + 1/8 + 48 is a sixteenth more than 96.
    square = [{"left": SQUARE, "right": SQUARE}] * 2
    mitered = [{"left": SQUARE, "right": AT_FACE}] * 2

    assert ask("boards", **PLAIN, pieces=["47 7/8", "48"], ends=square)["count"] == 1
    assert ask("boards", **PLAIN, pieces=["47 7/8", "48"], ends=mitered)["count"] == 2
    assert ask("boards", **PLAIN, pieces=["47 3/4", "47 7/8"], ends=mitered)["count"] == 1


def test_of_orders_that_are_as_safe_the_saw_is_set_anew_least_often():
    # By length 20, 21, 22 the blade would go 0 +45, 0 0, +45 0: four times. Two of them lean alike, side by side.
    ends = [
        {"left": SQUARE, "right": AT_FACE},
        {"left": SQUARE, "right": SQUARE},
        {"left": AT_BACK, "right": SQUARE},
    ]
    (board,) = ask("boards", **PLAIN, pieces=["20", "21", "22"], ends=ends)["boards"]

    assert board["settings"] == 2


def test_a_board_begins_with_the_saw_as_the_board_before_left_it():
    # Alone, the second board would begin with 41, the shorter, at square; but the first leaves the blade at 45.
    face, back = (Cut(Fraction(45), Length(Fraction(sign * 9, 16))) for sign in (1, -1))
    ends = (Ends(), Ends(right=face), Ends(), Ends(left=back, right=face))
    lengths = tuple(Length(Fraction(inches)) for inches in (40, 50, 41, 49))
    case = Case(ZERO, ZERO, (Stock(Length(Fraction(96)), 1000),), lengths, ZERO, ends)
    first, second = derive_board(case, 0, (0, 1)), derive_board(case, 0, (2, 3))

    assert [board.pieces for board in set_in_order(case, [second])] == [(2, 3)]
    assert [board.pieces for board in set_in_order(case, [first, second])] == [(0, 1), (3, 2)]


def test_boards_are_cut_in_the_order_that_sets_the_saw_least_often():
    mitered = Ends(Cut(Fraction(45), Length(Fraction(9, 16))), Cut(Fraction(45), Length(Fraction(9, 16))))
    ends = (Ends(), mitered, Ends(), mitered)
    lengths = tuple(Length(Fraction(inches)) for inches in (90, 91, 92, 93))
    case = Case(ZERO, ZERO, (Stock(Length(Fraction(96)), 1000),), lengths, ZERO, ends)
    boards = [derive_board(case, 0, (place,)) for place in range(4)]

    assert [board.pieces for board in set_in_order(case, boards)] == [(0,), (2,), (1,), (3,)]


def test_two_ends_that_lean_alike_share_a_cut_where_that_is_asked_for():
    # 30 and 40 with the slanted kerf between them, lying 9/16 in each other, leave that much more.
    ends = [{"left": SQUARE, "right": AT_FACE}, {"left": AT_BACK, "right": SQUARE}]
    case = {**PLAIN, "pieces": ["30", "40"], "ends": ends}
    (apart,), (shared,) = (ask("boards", **case, shared_miters=said)["boards"] for said in (False, True))

    assert (apart["shared"], shared["shared"], shared["pieces"]) == ([], [1], [0, 1])
    assert shared["offcut"]["inches"] - apart["offcut"]["inches"] == 9 / 16


def test_ends_that_lean_apart_never_share_a_cut():
    ends = [{"left": SQUARE, "right": AT_FACE}, {"left": AT_FACE, "right": SQUARE}]
    (board,) = ask("boards", **PLAIN, pieces=["30", "40"], ends=ends, shared_miters=True)["boards"]

    assert board["shared"] == []


def test_marks_count_the_slanted_kerf_and_what_lies_in_each_other():
    # 30; its kerf and a sixteenth more; the next starts 9/16 before that: 30 + 1/16 + 1/8 - 9/16 + 40 = 69 5/8.
    eighth = Length(Fraction(1, 8))
    face, back = (Cut(Fraction(45), Length(Fraction(sign * 9, 16))) for sign in (1, -1))
    beyond = (Length(Fraction(1, 16)), ZERO)
    lengths = (Length(30 + Fraction(1, 16)), Length(Fraction(40)))
    ends = (Ends(right=face), Ends(left=back))
    case = Case(eighth, ZERO, (Stock(Length(Fraction(96)), 1000),), lengths, ZERO, ends, beyond, shared_miters=True)
    board = derive_board(case, 0, (0, 1))

    assert [mark.inches for mark in derive_marks(case, board)] == [30, Fraction(557, 8)]


def test_a_piece_that_no_order_makes_safe_is_told_with_the_blank_it_needs():
    short = [{"length": "11", "price": "1", "limit": None}]
    found = ask("boards", **{**PLAIN, "hold": "12", "stock": short}, pieces=["5"])

    assert [(blank["piece"], blank["length"]["shown"]) for blank in found["blanks"]] == [(0, '17 1/8"')]


def test_safe_to_hold_comes_before_few_settings():
    # The square piece is short: it must come while the board is long, whatever the saw's setting.
    ends = [{"left": AT_FACE, "right": AT_FACE}, {"left": SQUARE, "right": SQUARE}, {"left": AT_FACE, "right": AT_FACE}]
    stock = [{"length": "38", "price": "1", "limit": None}]
    found = ask("boards", **{**PLAIN, "hold": "12", "stock": stock}, pieces=["13", "3", "18"], ends=ends)

    assert found["unsafe"] == []
    assert found["boards"][0]["pieces"][-1] != 1


@pytest.mark.parametrize(
    ("wrong", "key"),
    [
        ({"ends": [{"left": SQUARE, "right": SQUARE}] * 2}, "ends-not-matched"),
        ({"ends": [{"left": SQUARE, "right": {"saw": "90"}}]}, "no-such-cut"),
    ],
)
def test_ends_that_cannot_be_are_refused(wrong, key):
    assert refusal("boards", **PLAIN, pieces=["10"], **wrong)[0] == key


def test_a_shared_cut_saves_what_the_lesser_of_its_two_ends_gains():
    before = Ends(right=Cut(Fraction(45), Length(Fraction(9, 16))))
    after = Ends(left=Cut(Fraction(45), Length(Fraction(-1, 2))))
    assert saved_between(before, after) == Length(Fraction(1, 2))
