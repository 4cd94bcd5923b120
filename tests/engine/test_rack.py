"""The rack by itself: boards beyond the plan, what stands of a plan, and what a joint stays for. Figures by hand."""

from dataclasses import replace
from fractions import Fraction

import pytest
from scantling.engine.boards.case.case import Case, Stock
from scantling.engine.boards.case.cuts import Cut, Ends
from scantling.engine.desk import Desk
from scantling.engine.rack.extra import Extra, derive_extras
from scantling.engine.rack.joins import _say as say_why
from scantling.engine.rack.joins import known_lengths
from scantling.engine.rack.leftovers import mark_lent
from scantling.engine.rack.progress import Progress, derive_standing, mark_progress
from scantling.engine.rack.stick import DONE, SPOILT, TO_CUT, Stick, StickLine, lay_out_stick
from scantling.engine.tape.lengths import ZERO, Length, format_length, parse_length

from tests.cut_lists import issue, listed, mark
from tests.entries import House, four_walls


def inches(*figures: str) -> tuple[Length, ...]:
    return tuple(parse_length(figure) for figure in figures)


def case(pieces: tuple[str, ...], *stock: tuple[str, int, int | None], trim: str = "1/2", kerf: str = "1/8") -> Case:
    """Pieces, and boards as length, price and how many there are."""
    boards = tuple(Stock(parse_length(length), cents, limit) for length, cents, limit in stock)
    return Case(*inches(kerf, trim), boards, inches(*pieces))


# ---- boards beyond the plan ------------------------------------------------------------------------------------------

EIGHT, TWELVE = ("96", 1000, None), ("144", 1400, None)


def test_a_spare_is_the_cheapest_board_that_the_longest_piece_comes_out_of():
    assert derive_extras(case(("95 1/2",), TWELVE, EIGHT), 2, Fraction(0)) == [Extra("spare", (1, 1))]
    assert derive_extras(case(("95 3/4", "20"), TWELVE, EIGHT), 1, Fraction(0)) == [Extra("spare", (0,))]
    assert derive_extras(case(("150",), TWELVE, EIGHT), 1, Fraction(0)) == []
    # Of two that cost the same, the one that stands first on the list.
    assert derive_extras(case(("20",), ("144", 1000, None), EIGHT), 1, Fraction(0)) == [Extra("spare", (0,))]


def test_no_spare_is_a_board_that_is_here_already_or_that_there_are_few_of():
    assert derive_extras(case(("20",), ("96", 0, None), ("96", 500, 3), TWELVE), 1, Fraction(10)) == [
        Extra("spare", (2,)), Extra("overage", (2,)),
    ]  # fmt: skip
    assert derive_extras(case(("20",), ("96", 0, None)), 1, Fraction(10)) == []
    assert derive_extras(case(("20",), TWELVE), 0, Fraction(0)) == []


@pytest.mark.parametrize(("pieces", "share", "boards", "cost"), [
    # 10 % of 955 is 95 1/2: an 8 ft board gives 95 whole inches after its trim, so a 12 ft one is wanted.
    pytest.param("955", "10", (1,), 1400, id="half an inch more than one gives"),
    pytest.param("950", "10", (0,), 1000, id="just what one gives"),
    pytest.param("960", "10", (1,), 1400, id="more than that"),
    # 20 % of 960 is 192: two of 8 ft give 190, one of each 238 for 24.00, two of 12 ft 286 for 28.00.
    pytest.param("960", "20", (0, 1), 2400, id="one of each"),
    pytest.param("950", "20", (0, 0), 2000, id="two of the cheaper"),
])  # fmt: skip
def test_overage_is_so_much_of_all_pieces_in_the_boards_that_give_it_for_least(pieces, share, boards, cost):
    asked = case((pieces,), EIGHT, TWELVE)
    (extra,) = derive_extras(asked, 0, Fraction(share))
    assert (extra, extra.cost(asked)) == (Extra("overage", boards), cost)


# ---- what stands of a plan -------------------------------------------------------------------------------------------


def stick(*lines: StickLine, length: str = "96", **more: object) -> Stick:
    return Stick(*inches(length), 1000, lines, **more)


def line(key: str, takes: str = "40", state: str = TO_CUT) -> StickLine:
    return StickLine(key, key.upper(), *inches(takes), state)


def standing(asked: Case, keys: str, *sticks: Stick) -> tuple[list[list[str]], list[str]]:
    kept, reasons = derive_standing(asked, list(sticks), {key: key.upper() for key in keys})
    return [[f"{one.letter} {format_length(one.takes)}" for one in each.lines] for each in kept], reasons


def test_a_plan_stands_while_its_pieces_come_out_of_their_boards_and_says_which_do_not():
    # 96 − 1/2 of trim is 95 1/2: two of 47 11/16 and the kerf between them fill it.
    planned = stick(line("a"), line("b"))
    assert standing(case(("47 11/16", "47 11/16")), "ab", planned) == ([['A 47 11/16"', 'B 47 11/16"']], [])
    assert standing(case(("47 11/16", "47 3/4")), "ab", planned)[1] == ["A, B no longer come out of one board."]


def test_a_piece_on_no_board_of_the_plan_is_named_and_one_not_wanted_any_more_leaves_its_board():
    planned = stick(line("a"), line("b"))
    assert standing(case(("40",)), "a", planned) == ([['A 40"']], [])
    assert standing(case(("40", "20", "20")), "abc", planned)[1] == ["C is not on any board of it."]
    assert standing(case(("40", "20", "20", "10")), "abcd", planned)[1] == ["C, D are not on any board of it."]


def test_a_piece_on_an_accepted_board_goes_by_the_letter_that_it_has_now():
    # Accepted while its letter was provisional, A; its list was issued as C.
    ((kept,), _) = derive_standing(case(("40",)), [stick(line("a"))], {"a": "C"})
    assert [one.letter for one in kept.lines] == ["C"]


def test_a_board_that_nothing_is_cut_from_any_more_goes_unless_it_is_here():
    gone, bought = stick(line("x")), stick(line("y"), bought=True)
    kept = standing(case(("40",)), "a", gone, bought, stick(line("a")), stick())
    assert kept == ([[], ['A 40"'], []], [])  # the bought one, and the spare that nothing was planned from
    assert standing(case(("40",)), "a", stick(line("z", state=DONE), line("a")))[0] == [['Z 40"', 'A 40"']]


def test_what_was_spoilt_before_a_plan_was_accepted_is_not_spoilt_of_it_again():
    planned = [stick(line("a", state=SPOILT), line("b")), stick(line("a"))]

    def states(**made: Progress) -> list[str]:
        return [one.state for each in mark_progress(planned, made) for one in each.lines]

    assert states(a=Progress(is_cut=True, spoilt=1)) == [SPOILT, TO_CUT, DONE]
    assert states(a=Progress(spoilt=2), b=Progress(is_cut=True)) == [SPOILT, DONE, SPOILT]
    assert states() == [SPOILT, TO_CUT, TO_CUT]


def test_what_lies_on_a_board_that_is_begun_lies_past_what_was_cut_and_a_shared_cut_leaves_more():
    # Of 95 1/2 in use 20 are cut, and a kerf. The next ends in a miter that runs 9/16 over its face and takes 1/16 of
    # slant: 30 1/16, the kerf, and 40 that begins 9/16 before that. 75 3/8 - 30 3/16 - 40 1/8 + 9/16 = 5 5/8 is left.
    face, back = (Cut(Fraction(45), Length(Fraction(sign * 9, 16))) for sign in (1, -1))
    asked = replace(
        case(("30 1/16", "40")), ends=(Ends(right=face), Ends(left=back)), beyond=inches("1/16", "0"),
        shared_miters=True,
    )  # fmt: skip
    lines = line("z", "20", DONE), line("a", "30 1/16"), line("b", "40")
    laid = lay_out_stick(asked, {"a": 0, "b": 1}, stick(*lines))

    assert [(one.line, one.start, one.end) for one in laid.laid] == [
        (lines[0], *inches("0", "20")), (lines[1], *inches("20 1/8", "50 1/8")),
        (lines[2], *inches("49 3/4", "89 3/4")),
    ]  # fmt: skip
    # What is to cut is marked from the last cut made, and the shared cut is one setting.
    assert [one.mark for one in laid.laid] == [None, *inches("30", "69 5/8")]
    assert [one.shares_cut for one in laid.laid] == [False, False, True]
    assert (laid.offcut, laid.settings) == (*inches("5 5/8"), 2)
    apart = lay_out_stick(replace(asked, shared_miters=False), {"a": 0, "b": 1}, stick(*lines))
    assert apart.offcut == inches("5 1/16")[0]


# ---- why boards are joined there -------------------------------------------------------------------------------------

RULE, OTHER = inches("62 1/2"), inches("94 1/2")


@pytest.mark.parametrize(("rule", "best", "said"), [
    ((900, 2, ZERO), (800, 2, ZERO), 'the boards cost $8.00, on the stud at 62 1/2" they would cost $9.00'),
    ((900, 3, ZERO), (900, 2, ZERO), 'it takes 2 boards, on the stud at 62 1/2" it would take 3'),
    ((900, 2, ZERO), (900, 2, -inches("20")[0]),
     'the boards cost the same, and 20" is left of one, on the stud at 62 1/2" nothing to keep'),
    ((900, 2, -inches("15")[0]), (900, 2, -inches("20")[0]),
     'the boards cost the same, and 20" is left of one, on the stud at 62 1/2" 15"'),
])  # fmt: skip
def test_a_joint_says_what_its_stud_gains_over_the_rule(rule, best, said):
    assert say_why({RULE: rule, OTHER: best}, RULE, OTHER) == f"of 2 ways to join it, the best: {said}"
    assert say_why({RULE: rule, OTHER: best}, RULE, RULE) == (
        "of 2 ways to join it, none is cheaper or leaves more of a board")  # fmt: skip


# ---- what a joint stays for ------------------------------------------------------------------------------------------


def name(board: int) -> str:
    return f"00000000-0000-4000-8000-{board:012x}"


def plan(
    house: House, of: str, key: str, takes: str, board: int = 1, source: int | None = None, profile: str = "base"
) -> None:
    row = {"key": key, "letter": "A", "takes": takes, "spoilt": False}
    one = {"board": name(board), "source": source and name(source), "length": "144", "cents": "900", "bought": True}
    house.say("plan", of=of, profile=profile, boards=[{**one, "pieces": [row]}])


def known(house: House) -> dict[str, Fraction]:
    desk = Desk(house.entries)
    return {key: length.inches for key, length in known_lengths(desk.context.notebook, house.room).items()}


def test_a_length_is_known_as_planned_then_as_lettered_then_as_cut():
    house = four_walls()
    key = next(one["key"] for one in listed(house.entries, house.room).values() if one["wall"] == house.walls[1])
    assert known(house) == {}
    plan(house, house.house, f"{house.room} {key}", "90")
    plan(house, house.house, f"{name(9)} base w9", "50", profile="cap")
    assert known(house) == {key: 90}  # the house's plan, and of it this room's piece alone
    plan(house, house.room, key, "91")
    assert known(house) == {key: 91}
    listing = issue(house, house.room)
    lettered = known(house)
    assert lettered[key] == 96
    assert len(lettered) == 4
    letter = next(letter for letter, one in listed(house.entries, house.room).items() if one["key"] == key)
    house.read(house.walls[1], "length", "95 1/2")
    mark(house, house.room, letter, "cut")
    assert known(house)[key] == Fraction(191, 2)  # the figure it was cut to, not that of its list
    for entry in listing:
        house.say("strike", entry=entry, why="issued too early")
    assert known(house) == {key: Fraction(191, 2)}  # what was lettered by mistake is not known


# ---- what is lent ----------------------------------------------------------------------------------------------------


def test_a_board_is_marked_with_what_another_room_takes_of_it_and_the_others_with_nothing():
    house = four_walls()
    closet = house.new("room", house=house.house, name="closet", closed=False)
    plan(house, house.room, "base w1", "40", board=1)
    plan(house, closet, "base c1", "60", board=2, source=1)
    notebook = Desk(house.entries).context.notebook
    found = mark_lent(notebook, house.room, "base", [stick(board=name(1)), stick(board=name(3)), stick()])
    assert [one.lent for one in found] == [*inches("144"), ZERO, ZERO]
    assert [one.lent for one in mark_lent(notebook, closet, "base", [stick(board=name(1))])] == [ZERO]
    assert [one.lent for one in mark_lent(notebook, house.room, "crown", [stick(board=name(1))])] == [ZERO]
