"""Fitting: what is left, in order; and a hair off a piece or more of it, with what that moves."""

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scantling.engine.desk import Desk
from scantling.engine.tape.lengths import parse_length

from tests.cut_lists import ask, issue, listed, mark
from tests.entries import House, four_walls

Answer = dict[str, Any]
HAIRS = st.lists(st.tuples(st.sampled_from(["1/64", "1/32"]), st.sampled_from(["off", "more"])), max_size=4)


def issued() -> House:
    house = four_walls()
    issue(house, house.room)
    return house


def scarfed() -> House:
    """Boards of 6 ft at most: the base of each wall is in two parts, scarfed over a stud."""
    house = four_walls()
    for wall in house.walls:
        house.read(wall, "studs", "16, 32, 48, 64, 80")
    house.say("setting", of=house.house, name="base.stock", value=[{"length": "80", "price": "9"}])
    issue(house, house.room)
    return house


def fit(house: House) -> Answer:
    return ask(house.entries, {"ask": "fit", "room": house.room})


def hair(house: House, letter: str, by: str, way: str) -> Answer:
    return ask(house.entries, {"ask": "hair", "room": house.room, "piece": letter, "by": by, "way": way})


def write(house: House, entries: list[Answer]) -> None:
    """As a page does: a state takes the place of the one in force."""
    for entry in entries:
        heads = []
        if entry["kind"] == "state":
            pieces = listed(house.entries, house.room).values()
            heads = next(one["entries"] for one in pieces if one["id"] == entry["body"]["piece"])
        house.say(entry["kind"], heads, **entry["body"])


def two_scarfed(house: House) -> tuple[str, str]:
    pieces = listed(house.entries, house.room)
    first = next(letter for letter, one in pieces.items() if one["right"]["joint"] == "scarf")
    at = pieces[first]["wall"]
    other = next(letter for letter, one in pieces.items() if one["wall"] == at and one["left"]["joint"] == "scarf")
    return first, other


def test_what_is_left_stands_in_fitting_order_and_a_fitted_piece_leaves_it():
    house = issued()
    assert [one["letter"] for one in fit(house)["left"]] == list(listed(house.entries, house.room))
    assert fit(house)["words"] == "0 of 4 fitted, 0 cut and waiting, 4 to cut."
    mark(house, house.room, "A", "cut")
    assert fit(house)["words"] == "0 of 4 fitted, 1 cut and waiting, 3 to cut."
    mark(house, house.room, "A", "fitted")
    answer = fit(house)
    assert [one["letter"] for one in answer["left"]] == ["B", "C", "D"]
    assert [one["letter"] for one in answer["fitted"]] == ["A"]
    for letter in "BCD":
        mark(house, house.room, letter, "fitted")
    assert fit(house)["words"] == "Every piece is fitted."


def test_a_hair_off_a_board_that_is_cut_is_the_same_board_trimmed():
    house = issued()
    mark(house, house.room, "A", "cut")
    before = listed(house.entries, house.room)["A"]
    answer = hair(house, "A", "1/64", "off")
    assert answer["length"]["inches"] == before["cut"]["inches"] - 1 / 64
    assert [step["text"] for step in answer["working"]] == ["A as its board is", "− a hair", "= the board, trimmed"]
    assert answer["neighbours"] == "No other piece is cut by the length of A."
    write(house, answer["entries"])
    after = listed(house.entries, house.room)["A"]
    assert (after["state"], after["change"]) == ("cut", None)
    assert after["cut"] == before["cut"]
    assert after["as_cut"]["length"]["inches"] == answer["length"]["inches"]
    assert after["cut_to"] == before["cut"]


@pytest.mark.parametrize("way", ["off", "more"])
def test_a_metric_house_writes_a_hair_as_it_reads_and_means_the_same_by_it(way):
    told = []
    for lengths in ("inches", "millimeters"):
        house = issued()
        house.say("setting", of=house.house, name="lengths", value=lengths)
        mark(house, house.room, "A", "cut", "119 7/8 in")
        told.append(hair(house, "A", "1/64", way))
    what = {"off": "as_cut", "more": "text"}[way]
    inches, metric = (one["body"][what] for answer in told for one in answer["entries"] if what in one["body"])
    assert metric.endswith(" mm")
    assert told[0]["length"]["exact"] == told[1]["length"]["exact"]
    assert parse_length(metric) == parse_length(inches)


def test_a_hair_more_than_a_board_has_is_read_of_its_place_and_the_board_cut_again():
    house = issued()
    mark(house, house.room, "A", "cut")
    before = listed(house.entries, house.room)["A"]
    answer = hair(house, "A", "1/32", "more")
    write(house, answer["entries"])
    after = listed(house.entries, house.room)["A"]
    assert (after["state"], after["in_place"]) == ("recut", True)
    assert after["cut"]["inches"] == answer["length"]["inches"] == before["cut"]["inches"] + 1 / 32


def test_a_piece_still_to_cut_is_cut_a_hair_otherwise_however_often_it_is_said():
    house = issued()
    before = listed(house.entries, house.room)["B"]
    for by, way in (("1/32", "off"), ("1/64", "more"), ("1/32", "more")):
        write(house, hair(house, "B", by, way)["entries"])
    after = listed(house.entries, house.room)["B"]
    assert after["state"] == "to cut"
    assert after["back"]["inches"] == pytest.approx(before["back"]["inches"] + 1 / 64, abs=1 / 128)
    assert [one["struck"] for one in after["places"]] == [True, True, False]


def test_what_a_scarfed_board_lacks_its_fellow_still_to_cut_makes_up_once_it_is_more_than_a_joint_bears():
    house = scarfed()
    first, other = two_scarfed(house)
    mark(house, house.room, first, "cut")
    was = listed(house.entries, house.room)[other]["cut"]["inches"]
    answer = hair(house, first, "1/32", "off")
    assert answer["moved"] == []
    assert answer["neighbours"].startswith(f"{other} stays")
    write(house, answer["entries"])
    answer = hair(house, first, "1/64", "off")
    (moved,) = [one for one in answer["moved"] if one["letter"] == other]
    assert moved["after"]["inches"] == pytest.approx(was + 3 / 64)
    assert any("came out" in step["text"] for step in moved["working"])
    write(house, answer["entries"])
    follower = listed(house.entries, house.room)[other]
    assert follower["cut"]["inches"] == pytest.approx(was + 3 / 64)
    # What it makes up for stands in its figure already: a hair off it is a hair, and no more.
    answer = hair(house, other, "1/64", "off")
    write(house, answer["entries"])
    assert listed(house.entries, house.room)[other]["cut"]["inches"] == pytest.approx(was + 2 / 64)


@pytest.mark.parametrize(
    ("doing", "letter", "key"),
    [("cut", "Z", "no-such-piece"), ("fitted", "A", "fitted"), (None, "A", "not-issued")],
    ids=["no such letter", "it hangs", "its letter may change yet"],
)
def test_a_hair_is_refused_with_what_to_do(doing, letter, key):
    house = issued() if doing else four_walls()
    if doing:
        mark(house, house.room, "A", doing)
    question = {"ask": "hair", "room": house.room, "piece": letter, "by": "1/64", "way": "off"}
    assert Desk(house.entries).answer(question)["error"]["key"] == key


@settings(max_examples=12)
@given(HAIRS)
def test_hairs_add_up_and_what_is_told_before_is_what_is_there_after(hairs):
    house = issued()
    mark(house, house.room, "A", "cut")
    for by, way in hairs:
        told = hair(house, "A", by, way)
        write(house, told["entries"])
        piece = listed(house.entries, house.room)["A"]
        stands = piece["as_cut"]["length"] if piece["as_cut"] and piece["state"] == "cut" else piece["cut"]
        assert stands["inches"] == told["length"]["inches"]
        if piece["state"] == "recut":
            mark(house, house.room, "A", "cut")
