"""The cut list: letters that stay, states, what a changed reading means for a board, and what is measured in place."""

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from scantling.engine.cutlist.change import derive_change
from scantling.engine.cutlist.follow import derive_followers
from scantling.engine.cutlist.letters import derive_letters
from scantling.engine.cutlist.states import CUT, Made, State, derive_state
from scantling.engine.desk import Desk
from scantling.engine.tape.lengths import SIXTEENTH, ZERO, Length, format_length
from scantling.engine.trim.ends import End
from scantling.engine.trim.piece import Kind, Piece

from tests.cut_lists import Answer, ask, issue, listed, mark
from tests.entries import Device, House, four_walls


def letters(entries: list[Answer], room: str) -> dict[str, str]:
    """Letters by what the piece is."""
    return {piece["key"]: letter for letter, piece in listed(entries, room).items()}


def issued() -> House:
    """Four walls of base, A to D: A and D run through, B and C are coped between; all issued."""
    house = four_walls()
    issue(house, house.room)
    return house


def both(one: Device, other: Device) -> list[Answer]:
    return [*one.entries, *other.entries]


def second_phone(house: House, later: int = 500) -> Device:
    return Device("b", house.clock + later)


def add_door(house: House, wall: str) -> str:
    door = house.new("opening", wall=wall, kind="door")
    house.read(door, "at", "30")
    house.read(door, "width", "30")
    return door


# ---- letters ---------------------------------------------------------------------------------------------------------


def test_letters_are_provisional_until_the_list_is_issued():
    house = four_walls()
    before = listed(house.entries, house.room)
    assert [(letter, one["provisional"], one["id"]) for letter, one in before.items()] == [
        (letter, True, None) for letter in "ABCD"
    ]
    issue(house, house.room)
    after = listed(house.entries, house.room)
    assert list(after) == list("ABCD")
    assert not any(one["provisional"] for one in after.values())
    assert len({one["id"] for one in after.values()}) == 4


def test_what_issuing_does_is_said_before_it_is_done():
    house = four_walls()
    answer = ask(house.entries, {"ask": "pieces", "room": house.room})
    assert (answer["to_issue"], answer["issue_words"]) == (4, "Gives 4 pieces their letters for good: A to D.")
    issue(house, house.room)
    answer = ask(house.entries, {"ask": "pieces", "room": house.room})
    assert (answer["to_issue"], answer["issue_words"]) == (0, "")
    assert issue(house, house.room) == []


def test_a_piece_keeps_its_letter_when_the_fitting_order_changes():
    house = issued()
    before = letters(house.entries, house.room)
    add_door(house, house.walls[2])  # turns the order of fitting round, and makes two runs of one
    after = letters(house.entries, house.room)
    stayed = before.keys() & after.keys()
    assert len(stayed) == 3
    assert {key: after[key] for key in stayed} == {key: before[key] for key in stayed}


def test_a_new_piece_gets_the_next_letter_and_never_one_of_a_piece_that_is_gone():
    house = issued()
    before = letters(house.entries, house.room)
    add_door(house, house.walls[2])
    after = letters(house.entries, house.room)
    assert {letter for key, letter in after.items() if key not in before} == {"E", "F"}
    gone = ask(house.entries, {"ask": "pieces", "room": house.room})["gone"]
    assert [one["letter"] for one in gone] == [letter for key, letter in before.items() if key not in after]


def test_a_piece_that_is_gone_is_told_with_its_state_and_comes_back_under_its_letter():
    house = issued()
    first = listed(house.entries, house.room)
    wall_3 = next(letter for letter, one in first.items() if one["wall_number"] == 3)
    mark(house, house.room, wall_3, "cut")
    door = house.new("opening", wall=house.walls[2], kind="door")
    house.read(door, "at", "30")
    width = house.read(door, "width", "30")
    gone = ask(house.entries, {"ask": "pieces", "room": house.room})["gone"]
    assert [(one["letter"], one["state"]) for one in gone] == [(wall_3, "cut")]
    assert gone[0]["message"] == (
        f"{wall_3}, base, wall 3: no longer wanted as the room reads now. It is cut: keep it for another piece."
    )
    said = next(entry["id"] for entry in house.entries if entry["kind"] == "opening")
    for entry in (said, *width):
        house.say("strike", entry=entry, why="no door here")
    back = listed(house.entries, house.room)
    assert (back[wall_3]["state"], back[wall_3]["wall_number"]) == ("cut", 3)


def test_a_list_that_is_struck_is_not_issued_but_its_letters_stay_taken():
    house = four_walls()
    (entry,) = issue(house, house.room)
    before = letters(house.entries, house.room)
    strike = house.say("strike", entry=entry, why="too soon")
    assert all(one["provisional"] for one in listed(house.entries, house.room).values())
    add_door(house, house.walls[2])
    after = letters(house.entries, house.room)
    assert {key: after[key] for key in before.keys() & after.keys()}.items() <= before.items()
    assert {letter for key, letter in after.items() if key not in before} == {"E", "F"}
    house.say("strike", entry=strike, why="not too soon")
    assert sum(one["provisional"] for one in listed(house.entries, house.room).values()) == 2


def test_two_devices_that_issue_the_same_pieces_apart_agree():
    house = four_walls()
    other = second_phone(house)
    known = list(house.entries)
    issue(house, house.room)
    issue(other, house.room, known)
    found = listed(both(house, other), house.room)
    assert list(found) == list("ABCD")
    assert not any(flag["key"] == "other-letter" for one in found.values() for flag in one["flags"])


def test_of_two_pieces_given_one_letter_apart_the_earlier_keeps_it_and_the_other_is_told():
    house = issued()
    known = list(house.entries)
    other = second_phone(house, later=60_000)
    add_door(house, house.walls[2])
    issue(house, house.room)  # E and F left and right of a door in wall 3, on the first phone
    there = other.new("opening", wall=house.walls[0], kind="door")
    for what in ("at", "width"):
        other.read(there, what, "30")
    issue(other, house.room, [*known, *other.entries])  # E and F in wall 1, on the second
    found = listed(both(house, other), house.room)
    assert [(letter, found[letter]["wall_number"]) for letter in "EFGH"] == [("E", 3), ("F", 3), ("G", 1), ("H", 1)]
    told = {letter: [flag["message"] for flag in one["flags"] if flag["key"] == "other-letter"]
            for letter, one in found.items()}  # fmt: skip
    assert told["E"] == told["F"] == []
    assert told["G"] == ["Another device lettered it E, apart from this list: it is G, so pencil that on it."]
    assert told["H"] == ["Another device lettered it F, apart from this list: it is H, so pencil that on it."]


def test_a_settled_letter_is_not_moved_by_a_list_that_comes_later():
    house = issued()
    known = list(house.entries)
    second, third = second_phone(house, 60_000), Device("c", house.clock + 120_000)
    add_door(house, house.walls[2])
    issue(house, house.room)
    for phone, wall in ((second, house.walls[0]), (third, house.walls[1])):
        door = phone.new("opening", wall=wall, kind="door")
        for what in ("at", "width"):
            phone.read(door, what, "30")
        issue(phone, house.room, [*known, *phone.entries])
    two = letters(both(house, second), house.room)
    three = letters([*both(house, second), *third.entries], house.room)
    stayed = two.keys() & three.keys()
    assert {key: three[key] for key in stayed} == {key: two[key] for key in stayed}
    assert len(set(three.values())) == len(three)


def row(key: str, letter: str) -> Answer:
    piece = f"{int.from_bytes(key.encode()):08x}-0000-8000-8000-000000000000"
    return {"piece": piece, "key": key, "letter": letter, "name": key, "profile": "base", "cut": "10", "shown": "10"}


def test_a_letter_that_is_pencilled_on_another_devices_board_is_not_given_again():
    """Two devices letter one piece A and B; a third, which knew of neither, has B for another piece."""
    said = (("a", 0, row("one", "A")), ("b", 60_000, row("one", "B")), ("c", 120_000, row("two", "B")))
    entries, room = [], "0000000f-0000-4000-8000-000000000000"
    for number, (name, later, one) in enumerate(said):
        device = Device(name, 1_000_000 + later)
        device.say("issue", list=f"{number:08x}-0000-4000-8000-000000000000", room=room, pieces=[one])
        entries += device.entries
    notebook = Desk(entries).context.notebook
    known = derive_letters(notebook, room).by_key
    assert (known["one"].letter, known["one"].others) == ("A", ("B",))
    assert known["two"].letter == "C"


def test_a_piece_is_called_as_its_last_list_that_stands_called_it_and_a_struck_list_counts_again_when_said_anew():
    room, device = "0000000f-0000-4000-8000-000000000000", Device()

    def said(number: int, profile: str) -> str:
        listing = f"{number:08x}-0000-4000-8000-000000000000"
        return device.say("issue", list=listing, room=room, pieces=[{**row("one", "A"), "profile": profile}])

    def known() -> tuple[str, str, bool]:
        one = derive_letters(Desk(device.entries).context.notebook, room).by_key["one"]
        return one.letter, one.profile, one.issued

    device.say("strike", entry=said(1, "base 1/2 × 4"), why="too soon")
    assert known() == ("A", "base 1/2 × 4", False)
    second = said(2, "base 9/16 × 5 1/2")
    assert known() == ("A", "base 9/16 × 5 1/2", True)
    device.say("strike", entry=second, why="too soon again")
    assert known()[-1] is False


def test_a_board_that_was_never_cut_after_all_is_not_lying_about():
    house = issued()
    for state in ("cut", "to cut", "recut"):
        mark(house, house.room, "A", state)
    piece = listed(house.entries, house.room)["A"]["id"]
    assert derive_state(Desk(house.entries).context.notebook, piece).spoilt == ()


def test_a_room_of_sixty_walls_is_issued_in_entries_that_can_be_exchanged():
    house = House()
    for _ in range(60):
        house.wall("40", corner="174" if len(house.walls) else "90")
    entries = issue(house, house.room)
    assert len(listed(house.entries, house.room)) == 60
    assert [len(entry["body"]["pieces"]) for entry in house.entries[-len(entries) :]] == [60]
    assert list(listed(house.entries, house.room))[25:28] == ["Z", "AA", "AB"]
    answered = Desk().answer({"ask": "check", "entries": house.entries})
    assert answered["answer"]["refused"] == []


def test_a_room_that_a_question_brings_in_full_has_provisional_letters():
    walls = [{"id": f"w{number}", "length": "96", "corner": {"corner": "90"}} for number in range(4)]
    pieces = ask([], {"ask": "pieces", "room": {"walls": walls, "standard": {"casing.wanted": "no"}}})["pieces"]
    assert [(one["letter"], one["provisional"], one["state"]) for one in pieces] == [
        (letter, True, "to cut") for letter in "ABCD"
    ]


# ---- states ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("states", ["cut", "cut, fitted", "cut, recut", "cut, recut, cut", "to cut"])
def test_the_last_thing_said_of_a_piece_is_how_it_stands(states):
    house = issued()
    for state in states.split(", "):
        mark(house, house.room, "B", state)
    assert listed(house.entries, house.room)["B"]["state"] == state


def test_striking_what_was_said_of_a_piece_brings_back_what_was_said_before():
    house = issued()
    mark(house, house.room, "B", "cut")
    fitted = mark(house, house.room, "B", "fitted")
    strike = house.say("strike", entry=fitted, why="wrong piece")
    found = listed(house.entries, house.room)["B"]
    assert (found["state"], found["cut_to"]["shown"]) == ("cut", '96"')
    assert [(one["shown"], one["struck"]) for one in found["said"]] == [("cut", False), ("fitted", True)]
    house.say("strike", entry=strike, why="it was right")
    assert listed(house.entries, house.room)["B"]["state"] == "fitted"


def test_two_states_said_apart_are_both_shown_and_the_later_is_used():
    house = issued()
    other = second_phone(house, later=60_000)
    known = list(house.entries)
    mark(house, house.room, "B", "cut")
    mark(other, house.room, "B", "recut", known=known)
    found = listed(both(house, other), house.room)["B"]
    assert found["state"] == "recut"
    assert [flag["message"] for flag in found["flags"] if flag["key"] == "two-states"] == [
        "Two devices said cut and recut while apart: recut is used. Say which it is."
    ]
    (conflict,) = ask(both(house, other), {"ask": "notebook"})["conflicts"]
    assert (conflict["name"], [one["shown"] for one in conflict["choices"]]) == ("piece B", ["cut", "recut"])


def test_a_state_settles_a_conflict_when_it_is_said_with_both_in_sight():
    house = issued()
    other = second_phone(house, later=60_000)
    known = list(house.entries)
    mark(house, house.room, "B", "cut")
    mark(other, house.room, "B", "recut", known=known)
    house.entries += other.entries
    house.clock = other.clock
    mark(house, house.room, "B", "cut")
    assert ask(house.entries, {"ask": "notebook"})["conflicts"] == []


def test_only_a_piece_that_was_issued_can_be_marked():
    house = four_walls()
    piece = "00000000-0000-4000-8000-000000000000"
    asked = {"ask": "mark", "room": house.room, "piece": piece, "state": "cut"}
    assert Desk(house.entries).answer(asked)["error"]["key"] == "not-issued"


# ---- what a changed reading means ------------------------------------------------------------------------------------


# B is 96 along its back, between two walls that run through; its cut length is that, for its left end is coped.
@pytest.mark.parametrize(
    ("reading", "advice", "message"),
    [
        ("95 7/8", "trim", 'B is 1/8" long: trim 1/8".'),
        ("95 15/16", "trim", 'B is 1/16" long: trim 1/16".'),
        ("95 31/32", None, None),
        ("95 1/2", "trim", 'B is 1/2" long: trim 1/2".'),
        ("60", "doubt", 'B is 36" long, more than a reading is out by: is the reading the wrong one, or the board? '
         "Read both again before you cut."),
    ],
)
def test_a_smaller_reading_after_the_cut_is_told_as_what_to_trim(reading, advice, message):
    house = issued()
    mark(house, house.room, "B", "cut")
    wall = listed(house.entries, house.room)["B"]["wall"]
    house.read(wall, "length", reading)  # of two, the smaller counts between walls
    change = listed(house.entries, house.room)["B"]["change"]
    assert (change and change["advice"], change and change["message"]) == (advice, message)


def test_a_larger_reading_after_the_cut_is_told_as_short():
    house = issued()
    mark(house, house.room, "B", "cut")
    wall = listed(house.entries, house.room)["B"]["wall"]
    old = next(entry for entry in house.entries if entry["body"].get("of") == wall)
    house.read(wall, "length", "96 1/8")
    house.say("strike", entry=old["id"], why="misread")
    found = listed(house.entries, house.room)["B"]
    assert found["change"]["message"] == 'B is 1/8" short: recut.'
    assert found["change"]["by"]["exact"] == "-1/8"
    assert (found["cut_to"]["shown"], found["cut"]["shown"], found["letter"]) == ('96"', '96 1/8"', "B")


def test_a_difference_that_the_tape_would_hide_is_still_told():
    house = issued()
    mark(house, house.room, "B", "cut", as_cut="96 3/64")
    answer = ask(house.entries, {"ask": "pieces", "room": house.room, "nearest": "1/8"})
    found = next(one for one in answer["pieces"] if one["letter"] == "B")
    assert found["change"]["message"] == 'B is 3/64" long: trim 3/64".'


def test_a_corner_read_again_after_the_cut_is_told_of_the_end_it_changes():
    house = issued()
    mark(house, house.room, "B", "cut")
    corner = next(entry for entry in house.entries if entry["body"].get("what") == "corner")
    house.read(house.walls[0], "corner", "92")
    house.say("strike", entry=corner["id"], why="the gauge slipped")
    # A cope at 92 is cut with the setting of one at 90.
    assert listed(house.entries, house.room)["B"]["change"] is None
    (read,) = (entry for entry in house.entries if entry["body"].get("text") == "92")
    house.read(house.walls[0], "corner", "96")
    house.say("strike", entry=read["id"], why="it slipped again")
    change = listed(house.entries, house.room)["B"]["change"]
    assert change["advice"] == "end"
    assert change["message"].startswith("The left end of B was cut as cope, 45°; it is now cope, 42°.")


def test_a_fitted_piece_is_not_judged_by_readings_that_come_later():
    house = issued()
    mark(house, house.room, "B", "cut")
    mark(house, house.room, "B", "fitted")
    house.read(listed(house.entries, house.room)["B"]["wall"], "length", "95")
    found = listed(house.entries, house.room)["B"]
    assert (found["change"], found["cut_to"]["shown"]) == (None, '96"')


def test_the_length_that_a_board_was_found_to_be_stands_before_the_figure_it_was_cut_to():
    house = issued()
    mark(house, house.room, "B", "cut", as_cut="95 13/16 strong")
    found = listed(house.entries, house.room)["B"]
    assert found["as_cut"]["length"]["exact"] == "3067/32"  # 95 13/16 and a hair, 1/32
    assert found["change"]["by"]["exact"] == "-5/32"
    assert found["change"]["message"] == 'B is 1/8" short: recut.'  # 5/32, midway on the tape: to the even mark


def test_a_length_as_cut_that_cannot_be_read_is_kept_and_named():
    house = issued()
    mark(house, house.room, "B", "cut", as_cut="ninety-fish")
    found = listed(house.entries, house.room)["B"]
    assert (found["as_cut"]["text"], found["as_cut"]["length"]) == ("ninety-fish", None)
    assert [flag["key"] for flag in found["flags"]] == ["as-cut-unread"]
    assert found["cut_to"]["shown"] == '96"'


def test_a_board_cut_anew_is_judged_by_itself():
    house = issued()
    mark(house, house.room, "B", "cut", as_cut="95")
    mark(house, house.room, "B", "recut")
    assert listed(house.entries, house.room)["B"]["change"] is None
    mark(house, house.room, "B", "cut")
    assert listed(house.entries, house.room)["B"]["change"] is None


# ---- measured in place -----------------------------------------------------------------------------------------------


def in_place(house: House, *texts: str) -> dict[str, Any]:
    house.read(listed(house.entries, house.room)["B"]["id"], "in_place", *texts)
    return listed(house.entries, house.room)["B"]


def test_a_reading_in_place_stands_before_what_the_room_says_and_says_so_in_the_working():
    found = in_place(issued(), "95 15/16")
    # The back as read; the face is a cope's 9/16 shorter, as before: 95 15/16 - 9/16 = 95 3/8.
    assert (found["back"]["shown"], found["front"]["shown"], found["in_place"]) == ('95 15/16"', '95 3/8"', True)
    assert [step["text"] for step in found["working"]][:2] == [
        "by the room's readings the back would be",
        "measured in place: this stands",
    ]
    assert found["working"][1]["readings"] == ["95 15/16"]
    assert found["plus_minus"]["shown"] == '1/16"'  # one reading and one mark, a 32nd each


def test_a_place_is_read_before_a_list_is_issued_and_stays_read_when_it_is():
    house = four_walls()
    before = listed(house.entries, house.room)["B"]
    assert before["id"] is None
    house.read(before["place_of"], "in_place", "95 15/16")
    read = listed(house.entries, house.room)["B"]
    assert (read["back"]["shown"], read["in_place"], read["provisional"]) == ('95 15/16"', True, True)
    issue(house, house.room)
    after = listed(house.entries, house.room)["B"]
    assert (after["id"], after["back"]["shown"], len(after["places"])) == (before["place_of"], '95 15/16"', 1)


def test_a_reading_in_place_says_by_how_much_the_rooms_readings_were_otherwise():
    flags = [(flag["key"], flag["message"], flag["attention"]) for flag in in_place(issued(), "95 15/16")["flags"]]
    said = "Measured in place 1/16\" less than the room's readings give: the place stands."
    assert flags == [("in-place-stands", said, False)]
    assert in_place(issued(), "96")["flags"] == []


def test_of_several_readings_in_place_the_smallest_stands_and_a_struck_one_does_not_count():
    house = issued()
    found = in_place(house, "96", "95 15/16")
    assert (found["back"]["shown"], len(found["places"])) == ('95 15/16"', 2)
    house.say("strike", entry=found["places"][1]["entry"], why="held it slack")
    assert listed(house.entries, house.room)["B"]["back"]["shown"] == '96"'


def test_a_reading_in_place_far_from_the_rooms_readings_asks_to_read_again():
    found = in_place(issued(), "95")
    assert [flag["message"] for flag in found["flags"]] == [
        "Measured in place 1\" less than the room's readings give: read one of them again."
    ]


@pytest.mark.parametrize("text", ["fish", "0", "-3", ""])
def test_a_reading_in_place_that_gives_no_length_is_named_and_changes_nothing(text):
    found = in_place(issued(), text)
    assert (found["back"]["shown"], found["in_place"], len(found["flags"])) == ('96"', False, 1)


def keys(piece: dict[str, Any]) -> set[str]:
    return {flag["key"] for flag in piece["flags"]}


def shortened(length: str, **settings: str) -> House:
    """Four walls, the second of another length, issued; settings of the house by name, with __ for the dot."""
    house = House()
    for each in ("120", length, "120", length):
        house.wall(each)
    for name, value in settings.items():
        house.say("setting", of=house.house, name=name.replace("__", "."), value=value)
    issue(house, house.room)
    return house


def test_what_is_measured_in_place_as_too_short_to_hold_is_told_so_with_its_blank():
    found = in_place(shortened("13"), "11 1/2")
    # 12 to hold, 1/8 kerf and 11 1/2: 23 5/8.
    assert (found["blank"]["shown"], "short" in keys(found)) == ('23 5/8"', True)


def test_what_is_measured_in_place_as_long_enough_to_hold_is_not_told_to_be_short():
    house = shortened("11 1/2")
    assert "short" in keys(listed(house.entries, house.room)["B"])
    found = in_place(house, "14")
    assert (found["blank"], "short" in keys(found)) == (None, False)


def test_what_is_measured_in_place_as_longer_than_any_board_is_told_so_and_as_shorter_is_not():
    house = shortened("96")
    stock = [{"length": "8 ft 1 in", "price": "1"}]
    house.say("setting", of=house.house, name="base.stock", value=stock)
    assert "longer-than-stock" not in keys(listed(house.entries, house.room)["B"])
    assert "longer-than-stock" in keys(in_place(house, "98"))
    assert "longer-than-stock" not in keys(in_place(house, "96"))


def test_what_was_measured_in_place_is_not_asked_to_be_measured_in_place():
    house = shortened("96", joint__gap="1/32")
    assert "measure-in-place" in keys(listed(house.entries, house.room)["B"])
    assert "measure-in-place" not in keys(in_place(house, "96"))


def test_a_reading_in_place_that_the_ends_take_up_is_named_and_changes_nothing():
    found = in_place(issued(), "1/2")  # the cope takes 9/16 of the face
    assert (found["back"]["shown"], found["in_place"], keys(found)) == ('96"', False, {"in-place-nothing"})


# ---- pieces that follow others ---------------------------------------------------------------------------------------


def cased(height: str = "80") -> House:
    """A door with mitered casing, issued, beside the base."""
    house = four_walls()
    door = add_door(house, house.walls[0])
    for side in ("left", "right"):
        house.read(door, side, height)
    issue(house, house.room)
    return house


def part(house: House, name: str) -> dict[str, Any]:
    return next(one for one in listed(house.entries, house.room).values() if one["part"] == name)


def test_a_leg_still_to_cut_matches_its_fellow_once_that_is_fitted_as_it_came_out():
    house = cased()
    left, right = part(house, "left leg"), part(house, "right leg")
    mark(house, house.room, left["letter"], "cut", as_cut=f"{left['cut']['inches'] - 0.125}")
    assert part(house, "left leg")["change"]["advice"] == "recut"
    assert part(house, "right leg")["cut"] == right["cut"]  # the left one may yet be cut again
    mark(house, house.room, left["letter"], "fitted")
    shorter = part(house, "right leg")
    assert shorter["cut"]["inches"] == right["cut"]["inches"] - 0.125
    assert shorter["flags"][-1]["message"] == f'{left["letter"]} came out 1/8" short: the same here.'
    assert shorter["working"][-2]["text"] == f'− {left["letter"]} came out 1/8" short: the same here'


def test_a_leg_that_is_cut_follows_nothing():
    house = cased()
    left, right = part(house, "left leg"), part(house, "right leg")
    mark(house, house.room, right["letter"], "cut")
    mark(house, house.room, left["letter"], "cut", as_cut="70")
    mark(house, house.room, left["letter"], "fitted")
    assert part(house, "right leg")["cut"] == right["cut"]


def test_what_follows_another_board_is_told_to_be_short_by_what_it_comes_to():
    house = cased("13")
    left = part(house, "left leg")
    assert "short" not in keys(part(house, "right leg"))
    mark(house, house.room, left["letter"], "cut", as_cut="11 1/2")
    mark(house, house.room, left["letter"], "fitted")
    found = part(house, "right leg")
    # 12 to hold, 1/8 kerf and 11 1/2: 23 5/8.
    assert (found["cut"]["shown"], found["blank"]["shown"], "short" in keys(found)) == ('11 1/2"', '23 5/8"', True)


def board(key: str, kind: Kind, left: End, right: End, opening: str | None = None) -> Piece:
    made = Piece(key, kind, kind, "", "stock", "w1", 1, Length(Fraction(60)), left, right, ZERO, (), (), opening)
    return replace(made, letter=key.upper(), side="left")


def cut(length: int) -> State:
    """A board that was cut to so many sixteenths."""
    return State(CUT, Made("an entry", Length(Fraction(length, 16)), None, None, None, None))


def test_of_a_scarfed_run_the_board_still_to_cut_makes_up_for_the_one_that_is_off():
    scarf, square = End("scarf", "the scarf at 80", at="w1 80"), End("square", "corner")
    # In fitting order, the right one first.
    pieces = [board("b", Kind.BASE, scarf, square), board("a", Kind.BASE, square, scarf)]
    followed = derive_followers(pieces, {"a": cut(958), "b": State()})  # 59 7/8: an eighth short
    assert [format_length(piece.back) for piece in followed.pieces] == ['60 1/8"', '60"']
    assert followed.taken_up == {"a": "B"}
    change = derive_change(followed.pieces[1], cut(958).made, SIXTEENTH, "B")
    assert (change.advice, change.message) == ("taken-up", 'A is 1/8" short: B, still to cut, makes up for it.')
    assert change.by == Length(Fraction(-1, 8))


def test_a_leg_makes_up_for_its_plinth_and_a_plinth_for_no_leg():
    end = End("square", "the leg")
    pieces = [board("p", Kind.PLINTH, end, end, "door"), board("l", Kind.LEG, end, end, "door")]
    tall = derive_followers(pieces, {"p": cut(962), "l": State()})
    assert [format_length(piece.back) for piece in tall.pieces] == ['60"', '59 7/8"']
    assert derive_followers(pieces, {"p": State(), "l": cut(962)}).pieces == pieces


def test_a_board_that_is_off_by_more_than_another_has_is_to_be_cut_again():
    scarf, square = End("scarf", "the scarf at 80", at="w1 80"), End("square", "corner")
    pieces = [board("a", Kind.BASE, square, scarf), board("b", Kind.BASE, scarf, square)]
    followed = derive_followers(pieces, {"a": cut(16 * 130), "b": State()})
    assert followed.pieces[1].back == pieces[1].back
    assert followed.pieces[1].flags[-1].key == "cannot-follow"
    assert followed.taken_up == {}
