"""The order at the saw: boards side by side by how the saw stands, each board in its own order."""

import csv
import io
from fractions import Fraction
from functools import cache
from random import Random
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scantling.engine.boards.case.cuts import Cut, Ends
from scantling.engine.rack.at_saw import count_settings, order_by_board, order_by_setting
from scantling.engine.tape.lengths import Length

from tests.asked import ask
from tests.rooms import oblong, room, thing, wall

SQUARE = Cut()


def miter(degrees: int, face: int = 1) -> Cut:
    return Cut(Fraction(degrees), Length(Fraction(face, 2)))


CUTS = st.sampled_from([SQUARE, miter(45), miter(45, -1), miter(44)])
BOARDS = st.lists(st.lists(st.builds(Ends, CUTS, CUTS), max_size=4), max_size=5)


def test_pieces_of_two_boards_that_are_cut_alike_follow_each_other():
    alike = Ends(miter(45, -1), miter(45))
    boards = [[Ends(), alike], [Ends(), alike]]
    assert order_by_setting(boards) == [(0, 0), (1, 0), (0, 1), (1, 1)]
    assert count_settings(boards, order_by_board(boards)) == 4
    assert count_settings(boards, order_by_setting(boards)) == 2


@given(BOARDS)
def test_every_piece_comes_once_each_board_keeps_its_order_and_no_setting_is_added(boards):
    order = order_by_setting(boards)
    assert sorted(order) == order_by_board(boards)
    for at, board in enumerate(boards):
        assert [place for of, place in order if of == at] == list(range(len(board)))
    assert count_settings(boards, order) <= count_settings(boards, order_by_board(boards))


def fewest(boards: list[list[Ends]]) -> int:
    """The fewest settings of all ways to take boards side by side, each way tried."""
    sets = [[ends.settings for ends in board] for board in boards]

    @cache
    def rest(cut: tuple[int, ...], standing: object) -> int:
        ways = []
        for at, board in enumerate(sets):
            if cut[at] < len(board):
                left, right = board[cut[at]]
                more = (standing != left) + (left != right)
                ways.append(more + rest((*cut[:at], cut[at] + 1, *cut[at + 1 :]), right))
        return min(ways, default=0)

    return rest((0,) * len(sets), None)


@pytest.mark.parametrize("seed", range(60))
def test_of_a_few_boards_no_order_across_them_sets_the_saw_less_often(seed):
    rng = Random(seed)
    cuts = [SQUARE, miter(45), miter(45, -1), miter(44)]
    boards = [[Ends(rng.choice(cuts), rng.choice(cuts)) for _ in range(rng.randint(1, 4))] for _ in range(4)]
    assert count_settings(boards, order_by_setting(boards)) == fewest(boards)


@pytest.mark.parametrize("order", ["board", "setting"])
def test_at_the_saw_every_piece_to_cut_has_its_board_its_drawing_and_its_words(order):
    facts = oblong(thing("door", "30", "30 1/8", left="80 3/16", right="80 1/2", head_corners=["90", "88.5"]),
                   base__stock=[{"length": "12 ft", "price": "14.98"}])  # fmt: skip
    answer = ask("saw", room=facts, order=order)
    listed = ask("piece_rows", room=facts)["rows"]
    assert sorted(one["letter"] for one in answer["pieces"]) == sorted(row["letter"] for row in listed)
    assert {one["key"] for one in answer["orders"]} == {"board", "setting"}
    for one in answer["pieces"]:
        assert one["spoken"].startswith(f"Piece {one['letter']}, {one['part_name']}. ")
        assert one["cut_from"] in one["spoken"]
        assert one["drawing"].startswith("<svg")
        assert one["board"] == "no board planned" or one["board"].startswith("board ")
    assert any(one["board"].startswith("board ") for one in answer["pieces"])


def test_at_the_saw_what_cannot_be_held_is_told_before_all_else():
    facts = room(wall("w1", "4 5/8", corner="89.5"), wall("w2", "60", corner="91"), wall("w3", "60"), closed=False,
                 crown__wanted="yes", base__wanted="no")  # fmt: skip
    short = next(one for one in ask("saw", room=facts)["pieces"] if one["wall"] == "w1")
    assert len(short["notes"]) > 1
    assert short["notes"][0].startswith("Too short to hold at the saw")


def test_a_profile_without_boards_names_its_setting_and_the_usual_lengths():
    answer = ask("boards_for_room", room=oblong(base__stock=[{"length": "12 ft", "price": "9"}]))
    assert answer["unpriced"] == []
    (base,) = ask("boards_for_room", room=oblong())["unpriced"]
    assert (base["profile"], base["setting"]) == ("base 9/16 × 5 1/2", "base.stock")
    assert base["lengths"][0] == "8 ft"
    assert base["lengths"][-1] == "16 ft"
    assert base["words"] in ask("boards_for_room", room=oblong())["missing"]


def test_the_table_is_what_a_reader_of_such_tables_reads_and_the_plan_stands_alone():
    """Read back by the standard library's csv, which is not what wrote it."""
    facts = oblong()
    answer = ask("files", room=facts)
    rows = list(csv.DictReader(io.StringIO(answer["csv"], newline="")))
    pieces = ask("pieces", room=facts)["pieces"]
    assert [(row["letter"], row["cut"]) for row in rows] == [(one["letter"], one["cut"]["shown"]) for one in pieces]
    assert ElementTree.fromstring(answer["plan"])[0].tag.endswith("style")
