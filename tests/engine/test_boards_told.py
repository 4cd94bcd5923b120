"""What is told of a board that came out otherwise, was measured in its place, or is there already: whole sentences."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from scantling.engine.cutlist.follow import derive_followers
from scantling.engine.cutlist.hair import Moved, say_moved
from scantling.engine.cutlist.listed import CutList, Listed
from scantling.engine.cutlist.states import CUT, FITTED, Made, State
from scantling.engine.tape.lengths import Length, format_length
from scantling.engine.trim.ends import End
from scantling.engine.trim.piece import Kind, Piece

from tests.asked import ask as ask_alone
from tests.covered import ask
from tests.cut_lists import listed, mark
from tests.engine.test_cut_list import add_door, board, in_place, issued
from tests.engine.test_fit import hair
from tests.engine.test_salvage import house_with_window, piece, there
from tests.entries import House, four_walls

SCARF, SQUARE = End("scarf", "the scarf at 80", at="w1 80"), End("square", "corner")
MITER = End("miter", "the head")


def made(inches: Fraction | float, name: str = CUT) -> State:
    return State(name, Made("an entry", Length(Fraction(inches)), None, None, None, None))


def leg(key: str, side: str) -> Piece:
    return replace(board(key, Kind.LEG, SQUARE, MITER, "door"), side=side)


def steps(one: Piece) -> list[tuple[str, str]]:
    return [(step.text, format_length(step.value)) for step in one.working if step.value]


def told(found: dict[str, Any] | Piece) -> list[tuple[str, str, bool]]:
    if isinstance(found, Piece):
        return [(flag.key, flag.message, flag.attention) for flag in found.flags]
    return [(flag["key"], flag["message"], flag["attention"]) for flag in found["flags"]]


# ---- one follows another ---------------------------------------------------------------------------------------------


def test_what_a_scarfed_board_lacks_the_other_makes_up_and_its_working_says_so():
    pieces = [board("a", Kind.BASE, SQUARE, SCARF), board("b", Kind.BASE, SCARF, SQUARE)]
    short, long = (derive_followers(pieces, {"a": made(at), "b": State()}).pieces[1] for at in (59.875, 60.125))
    assert steps(short) == [('+ A came out 1/8" short: made up for here', '1/8"'), ("= cut to that", '60 1/8"')]
    assert told(short) == [("follows", 'A came out 1/8" short: made up for here.', True)]
    assert steps(long) == [('− A came out 1/8" long: made up for here', '1/8"'), ("= cut to that", '59 7/8"')]


def test_a_leg_that_matches_its_fellow_says_so():
    legs = [leg("a", "left"), leg("b", "right")]
    right = derive_followers(legs, {"a": made(60.125, FITTED), "b": State()}).pieces[1]
    assert steps(right) == [('+ A came out 1/8" long: the same here', '1/8"'), ("= cut to that", '60 1/8"')]
    assert told(right) == [("follows", 'A came out 1/8" long: the same here.', True)]


@pytest.mark.parametrize(("came_out", "follows"), [("1919/32", False), ("3837/64", True)],
                         ids=["a 32nd, which a joint bears", "a 64th more"])  # fmt: skip
def test_a_board_is_followed_once_it_is_off_by_more_than_a_joint_bears(came_out, follows):
    pieces = [board("a", Kind.BASE, SQUARE, SCARF), board("b", Kind.BASE, SCARF, SQUARE)]
    followed = derive_followers(pieces, {"a": made(Fraction(came_out)), "b": State()})
    assert (followed.pieces[1].back != pieces[1].back, followed.taken_up) == (follows, {"a": "B"} if follows else {})


@pytest.mark.parametrize(("came_out", "said"), [
    (120, 'A came out 60" long, more than B can make up for: recut A.'),
    (119.875, 'A came out 59 7/8" long: made up for here.'),
])  # fmt: skip
def test_a_board_makes_up_for_no_more_than_it_has(came_out, said):
    pieces = [board("a", Kind.BASE, SQUARE, SCARF), board("b", Kind.BASE, SCARF, SQUARE)]
    assert told(derive_followers(pieces, {"a": made(came_out), "b": State()}).pieces[1])[-1][1] == said


# ---- a hair ----------------------------------------------------------------------------------------------------------


def say(pieces: list[Piece], states: dict[str, State], moved: Sequence[str] = ()) -> str:
    """What is said of the first piece's neighbours, where these letters move with it."""
    found = [Listed(one, state=states.get(one.key, State())) for one in pieces]
    by_letter = {one.letter: one for one in found}
    return say_moved(CutList(tuple(found)), found[0], [Moved(by_letter[one], by_letter[one]) for one in moved])


def test_what_a_hair_moves_is_said_by_letter():
    scarfed = [board(key, Kind.BASE, SCARF, SCARF) for key in "abc"]
    assert say(scarfed, {}, ["B"]) == "B goes with it, as below."
    assert say(scarfed, {}, ["B", "C"]) == "B and C go with it, as below."
    assert say(scarfed, {}, ["A", "B", "C"]) == "A, B and C go with it, as below."
    assert say([board("a", Kind.BASE, SQUARE, SQUARE)], {}) == "No other piece is cut by the length of A."


def test_a_fellow_that_a_hair_does_not_move_is_said_to_stay_or_to_be_held_again():
    scarfed = [board("a", Kind.BASE, SQUARE, SCARF), board("b", Kind.BASE, SCARF, SQUARE)]
    assert say(scarfed, {}) == 'B stays: it makes up for what is over 1/32" off.'
    for name in (CUT, FITTED):
        assert say(scarfed, {"b": made(60, name)}) == (
            f"B would go with it, and is {name}: hold it to its place again.")  # fmt: skip
    legs = [leg("a", "left"), leg("b", "right")]
    match = 'B is cut to match A once that is fitted, where it is over 1/32" off.'
    assert say(legs, {"a": made(60)}) == match
    assert say(legs, {"a": made(60, FITTED)}) == 'B stays: it makes up for what is over 1/32" off.'


def test_the_working_of_a_hair_has_its_figures():
    house = issued()
    assert [(step["text"], step["value"]["shown"]) for step in hair(house, "A", "1/32", "more")["working"]][-3:] == [
        ("A where it goes", '120"'), ("+ a hair", '1/32"'), ("= its place, read so", '120 1/32"'),
    ]  # fmt: skip
    mark(house, house.room, "A", "cut")
    assert [(step["text"], step["value"]["shown"]) for step in hair(house, "A", "1/32", "off")["working"]] == [
        ("A as its board is", '120"'), ("− a hair", '1/32"'), ("= the board, trimmed", '119 31/32"'),
    ]  # fmt: skip


# ---- measured in place -----------------------------------------------------------------------------------------------


PLACES = {
    "a 32nd less": ("95 31/32", [("in-place-stands", 'Measured in place 1/32" less than the room\'s readings give: '
                                                     "the place stands.", False)]),
    "within what both are out": ("95 29/32", [("in-place-stands", 'Measured in place 1/8" less than the room\'s '
                                                                  "readings give: the place stands.", False)]),
    "beyond it": ("96 1/8", [("in-place-differs", 'Measured in place 1/8" more than the room\'s readings give: '
                                                  "read one of them again.", True)]),
    "finer than a 64th": ("95.99", []),
    "as nothing": ("0", [("in-place-nothing", "Measured in place as nothing: strike that and measure again.", True)]),
    "less than its cope": ("1/2", [("in-place-nothing", 'Measured in place 1/2", which its ends take up: strike that '
                                                        "and measure again.", True)]),
}  # fmt: skip


@pytest.mark.parametrize(("text", "said"), PLACES.values(), ids=PLACES)
def test_a_place_is_told_by_how_much_it_is_otherwise_than_the_room(text, said):
    # One reading and one mark in either figure: 0.05 and 0.05, so that 3/32 is within both, and 1/8 is not.
    assert told(in_place(issued(), text)) == said


def test_a_place_that_cannot_be_read_is_told_with_what_was_typed():
    ((key, message, attention),) = told(in_place(issued(), "fish"))
    assert (key, attention) == ("in-place-unread", True)
    assert message.startswith("Measured in place: ")
    assert "fish" in message


def test_a_place_that_was_read_more_than_once_says_which_reading_stands():
    found = [(step["text"], step["value"] and step["value"]["shown"]) for step in in_place(issued(), "96", "95 15/16")
             ["working"]]  # fmt: skip
    assert found[:2] == [
        ("by the room's readings the back would be", '96"'),
        ("measured in place, the smallest of 2 readings: this stands", '95 15/16"'),
    ]
    assert found[-2:] == [("= back", '95 15/16"'), ("= face", '95 3/8"')]


def test_where_to_hold_the_tape_is_told_and_what_must_be_up_first():
    house = house_with_window()
    add_door(house, house.walls[2])
    hints = {one["part_name"]: one["place_hint"] for one in listed(house.entries, house.room).values()}
    assert hints["base, wall 2"] == "Hold the tape where the back will lie, end to end."
    assert hints["left leg, wall 1, window"] == "Hold the tape where the inner edge will lie, end to end."
    assert hints["base, wall 3, left of the door"] == (
        "Once the casing is up: from corner 2 to the casing of the door, where the back will lie.")  # fmt: skip


# ---- there already ---------------------------------------------------------------------------------------------------


def test_what_to_read_of_a_board_that_is_there_is_told_and_how_it_is_read():
    whole = "How long it is, end to end; its width too, as 58 1/4 × 5 1/2."
    notched = " One that is notched: its horns too, from notch to end, as 58 1/4, 3 1/4, 3."
    house = house_with_window()
    assert piece(house, "base, wall 2")["there_hint"] == whole
    assert piece(house, "stool")["there_hint"] == whole + notched
    texts = ("58 1/4", "58 1/4 × 5 1/2", "58 1/4, 3 1/4, 3")
    assert [ask_alone("behind", what="salvaged", text=text)["words"] for text in texts] == [
        'a board of 58 1/4"', 'a board of 58 1/4" × 5 1/2"', 'a board of 58 1/4", with horns of 3 1/4" and 3"',
    ]  # fmt: skip


# The stool is 35 7/8: 30 between its notches, and at each end 2 7/16 of casing and reveal and a horn of 1/2.
NO_BOARD = "A horn of what is there ends 1/16\" before the casing does: a board is wanted."
THERE = {
    "no horn left": ("34 7/8", "salvaged", 'There already, 34 7/8" long: it leaves nothing of each horn.'),
    "a 64th short of that": ("34 55/64", "salvage-short",
                             'What is there is 1 1/64" short, and will not do here: a board is wanted.'),
    "as long": ("35 7/8", "salvaged", 'There already, 35 7/8" long: it is as long as its place.'),
    "its notches in place": ("35 7/8, 2 15/16, 2 15/16", "salvaged",
                             'There already, 35 7/8" long: it is as long as its place, and both horns are 1/2".'),
    "notches 3/64 apart": ("35 59/64, 2 15/16, 2 15/16", "salvaged",
                           'There already, 35 59/64" long: it is as long as its place, and both horns are 1/2".'),
    "notches 1/16 apart": ("35 15/16, 2 15/16, 2 15/16", "salvage-notches",
                           'Between its notches it is 1/16" longer than between the jambs here: it does not lie in '
                           "this window as it is."),
    "notches closer": ("35 1/4, 2 15/16, 2 15/16", "salvage-notches",
                       'Between its notches it is 5/8" shorter than between the jambs here: it does not lie in this '
                       "window as it is."),
    "a horn behind the casing": ("35 5/16, 2 15/16, 2 3/8", "salvage-short", NO_BOARD),
    "a horn as far as the casing": ("35 3/8, 2 15/16, 2 7/16", "salvaged",
                                    'There already, 35 3/8" long: take 1/2" off the left, and both horns are 0".'),
    "no length": ("0", "salvage-unread",
                  "What is there already: A piece that is there is longer than nothing: measure it again."),
    "one horn": ("58, 3", "salvage-unread",
                 "What is there already: Write how long it is, or how long and wide, as 58 1/4 × 5 1/2; of a stool "
                 "that is notched already, with its horns from notch to end, left and right: 58 1/4, 3 1/4, 3."),
    "three sizes": ("58 × 3 × 1", "salvage-unread",
                    "What is there already: Write how long it is, or how long and wide, as 58 1/4 × 5 1/2; of a stool "
                    "that is notched already, with its horns from notch to end, left and right: 58 1/4, 3 1/4, 3."),
}  # fmt: skip


@pytest.mark.parametrize(("text", "key", "said"), THERE.values(), ids=THERE)
def test_a_stool_that_is_there_is_told_by_its_length_its_notches_and_its_horns(text, key, said):
    house = house_with_window()
    salvaged, message, attention = there(house, "stool", text)
    found = [flag for flag in piece(house, "stool")["flags"] if flag["key"].startswith("salvage")]
    assert (message, [flag["key"] for flag in found]) == (said, [key])
    assert (salvaged, attention) == (key == "salvaged", key != "salvaged")
    if key != "salvage-unread":
        last = piece(house, "stool")["working"][-1]
        assert last["text"] == "there already: it is trimmed to that, and no board is bought"
        assert last["readings"] == [text]


def test_only_a_stool_is_read_with_horns_and_the_last_reading_stands():
    house = house_with_window()
    assert there(house, "base, wall 2", "98, 3, 3")[1] == (
        "What is there already: Only a stool has horns: write how long it is, and no more.")  # fmt: skip
    assert there(house, "base, wall 2", "97", "98")[1] == 'There already, 98" long: take 2" off, at the worse end.'


def test_a_stool_with_a_horn_at_one_end_alone_gives_way_there():
    # 2 3/8 from the jamb to the side wall leaves no horn at the left: 2 3/8 + 30 + 2 15/16 = 35 5/16.
    house = four_walls()
    window = house.new("opening", wall=house.walls[0], kind="window")
    for what, text in (("at", "2 3/8"), ("width", "30"), ("left", "48"), ("right", "48")):
        house.read(window, what, text)
    assert there(house, "stool", "36")[1] == 'There already, 36" long: take 11/16" off, at the worse end.'
    assert there(house, "stool", "35")[1] == 'There already, 35" long: it leaves 3/16" of the horn.'


def test_a_board_that_is_narrower_by_less_than_a_64th_is_as_wide():
    # Base is 5 1/2 wide.
    house: House = house_with_window()
    widths = {text: there(house, "base, wall 2", f"98 × {text}") and [
        flag["message"] for flag in piece(house, "base, wall 2")["flags"] if flag["key"].startswith("salvage-")]
        for text in ("5.49", "5 31/64", "5 33/64")}  # fmt: skip
    assert list(widths.values()) == [
        [], ['It is 1/64" narrower than the 5 1/2" that is wanted here: see whether that will do.'],
        ['Rip it to 5 1/2": it is 1/64" wider.'],
    ]  # fmt: skip


# ---- after the cut ---------------------------------------------------------------------------------------------------


def test_an_end_that_would_be_cut_otherwise_now_is_told_with_both_cuts():
    house = issued()
    mark(house, house.room, "B", "cut")
    (corner, *_) = [entry for entry in house.entries if entry["body"].get("what") == "corner"
                    and entry["body"]["of"] == house.walls[0]]  # fmt: skip
    house.say("strike", entry=corner["id"], why="the gauge slipped")
    house.read(house.walls[0], "corner", "96")
    assert listed(house.entries, house.room)["B"]["change"]["message"] == (
        "The left end of B was cut as cope, 45°; it is now cope, 42°. Try it in place before cutting that end anew."
    )


def test_a_length_as_cut_that_cannot_be_read_is_told_with_what_was_typed():
    house = issued()
    mark(house, house.room, "B", "cut", as_cut="fish")
    ((key, message, attention),) = told(listed(house.entries, house.room)["B"])
    assert (key, attention) == ("as-cut-unread", True)
    assert message.startswith("As cut: ")
    assert "fish" in message


def test_a_fitted_piece_that_is_not_wanted_any_more_is_told_to_hang():
    house = issued()
    letter = next(letter for letter, one in listed(house.entries, house.room).items() if one["wall_number"] == 3)
    mark(house, house.room, letter, "cut")
    mark(house, house.room, letter, "fitted")
    add_door(house, house.walls[2])
    gone = ask(house, "pieces", room=house.room)["gone"]
    assert [one["message"] for one in gone] == [
        f"{letter}, base, wall 3: no longer wanted as the room reads now. It is fitted."]  # fmt: skip
