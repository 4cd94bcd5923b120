"""Stools, boards and casing that are there already: what comes off each end, what horn is left, and no board bought."""

import pytest

from tests.covered import ask
from tests.entries import four_walls


def house_with_window():
    """A window 30 wide in the first of four walls. Its stool is 30 + 2 × (3/16 + 2 1/4 + 1/2) = 35 7/8."""
    house = four_walls()
    window = house.new("opening", wall=house.walls[0], kind="window")
    for what, text in (("at", "40"), ("width", "30"), ("left", "48"), ("right", "48")):
        house.read(window, what, text)
    return house


def piece(house, part):
    found = ask(house, "pieces", room=house.room)["pieces"]
    return next(one for one in found if one["part_name"].startswith(part))


def there(house, part, *texts):
    house.read(piece(house, part)["place_of"], "salvaged", *texts)
    found = piece(house, part)
    flags = [flag for flag in found["flags"] if flag["key"].startswith("salvage")]
    return found["salvaged"], flags[0]["message"] if flags else "", flags[0]["attention"] if flags else None


def test_a_stool_that_is_too_long_gives_as_much_at_either_end():
    # 37 1/2 − 35 7/8 = 1 5/8, and 13/16 off each end.
    assert there(house_with_window(), "stool", "37 1/2") == (
        True, 'There already, 37 1/2" long: take 13/16" off each end, and both horns are 1/2".', False)  # fmt: skip


def test_a_stool_that_is_shorter_by_less_than_its_horns_leaves_what_is_left_of_them():
    # 35 3/8 is 1/2 short: each horn of 1/2 loses 1/4.
    assert there(house_with_window(), "stool", "35 3/8")[:2] == (
        True, 'There already, 35 3/8" long: it leaves 1/4" of each horn.')  # fmt: skip


def test_a_stool_without_room_for_the_casing_will_not_do_and_a_board_is_wanted():
    assert there(house_with_window(), "stool", "34 1/2") == (
        False, 'What is there is 1 3/8" short, and will not do here: a board is wanted.', True)  # fmt: skip


def test_a_stool_that_was_notched_before_lies_where_its_notches_are():
    # Casing and reveal take 2 7/16 of each horn: 4 − 2 7/16 = 1 9/16 and 3 1/4 − 2 7/16 = 13/16; kept is 1/2.
    house = house_with_window()
    assert there(house, "stool", "37 1/4, 4, 3 1/4")[1].endswith(
        'take 1 1/16" off the left and 5/16" off the right, and both horns are 1/2".')  # fmt: skip
    # A right horn of 2 5/8 is 3/16 past the casing, and the left is cut to as much: 1 9/16 − 3/16.
    assert there(house, "stool", "36 5/8, 4, 2 5/8")[1].endswith('take 1 3/8" off the left, and both horns are 3/16".')
    assert there(house, "stool", "39, 4, 4")[:2] == (
        False, 'Between its notches it is 1" longer than between the jambs here: it does not lie in this window as it '
        "is.")  # fmt: skip


@pytest.mark.parametrize(("part", "text", "said"), [
    ("base, wall 2", "98", 'There already, 98" long: take 2" off, at the worse end.'),
    ("base, wall 2", "96", 'There already, 96" long: it is as long as its place.'),
    ("left leg", "52", 'There already, 52" long: take 2 5/16" off, at the worse end.'),
])  # fmt: skip
def test_a_board_or_a_leg_that_is_there_is_trimmed(part, text, said):
    # The leg: 48 + 3/16 − 3/4 + 2 1/4 = 49 11/16.
    assert there(house_with_window(), part, text)[1] == said


def test_what_is_there_is_never_bought_until_it_is_struck_and_what_does_not_do_is():
    house = house_with_window()
    stock = [{"length": "8 ft", "price": "10"}]
    house.say("setting", of=house.house, name="stool.stock", value=stock)

    def stools():
        plans = ask(house, "boards_for_room", room=house.room)["plans"]
        return [plan["profile"] for plan in plans if plan["profile"].startswith("stool")]

    assert stools() == ["stool 3/4"]
    there(house, "stool", "37 1/2")
    assert stools() == []
    last = piece(house, "stool")["there"][-1]
    house.say("strike", entry=last["entry"], why="it is cracked")
    assert stools() == ["stool 3/4"]
    there(house, "stool", "20")
    assert stools() == ["stool 3/4"]


@pytest.mark.parametrize("text", ["fish", "0", "58, 3", "6, 3, 3", ""])
def test_what_cannot_be_read_of_it_is_named_and_changes_nothing(text):
    salvaged, message, attention = there(house_with_window(), "stool", text)
    assert (salvaged, message.startswith("What is there already: "), attention) == (False, True, True)


def test_only_a_stool_has_horns():
    assert "Only a stool has horns" in there(house_with_window(), "base, wall 2", "98, 3, 3")[1]


@pytest.mark.parametrize(("part", "text", "key", "said"), [
    # The stool, sash to wall 4 1/2: 4 1/2 − 1/16 + 11/16 + 1/2 = 5 5/8.
    ("stool", "37 1/2 × 6", "salvage-wide", 'Rip it to 5 5/8": it is 3/8" wider.'),
    ("stool", "37 1/2 x 5 5/8", "", ""),
    ("base, wall 2", "98 × 5", "salvage-narrow",
     'It is 1/2" narrower than the 5 1/2" that is wanted here: see whether that will do.'),
    ("left leg", "52 × 2 1/2", "salvage-wide", 'Rip it to 2 1/4": it is 1/4" wider.'),
])  # fmt: skip
def test_its_own_width_is_ripped_or_told(part, text, key, said):
    house = house_with_window()
    window = next(entry["body"]["opening"] for entry in house.entries if entry["kind"] == "opening")
    house.read(window, "sash", "4 1/2")
    assert there(house, part, text)[0] is True
    found = {flag["key"]: flag["message"] for flag in piece(house, part)["flags"]}
    widths = {name: found[name] for name in found if name in ("salvage-wide", "salvage-narrow")}
    assert widths == ({key: said} if key else {})
