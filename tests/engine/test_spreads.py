"""What was read more than once, and did not agree: which of the readings counts, and how much the rest leave open."""

import math

import pytest

from tests.cut_lists import ask as ask_notebook
from tests.entries import House
from tests.rooms import ask, inches, oblong, room, thing, wall

CASED = {"casing__wanted": "yes", "base__wanted": "no"}
WHOLE = 0.5  # what a corner is out by that was read to a whole degree


def messages(piece):
    return {flag["key"]: flag["message"] for flag in piece["flags"]}


def problems(facts):
    return [(one["wall"], one["key"]) for one in ask("pieces", facts)["problems"]]


def corner_room(*things, length=("54", "54 1/8")):
    """A wall of readings apart, an inside corner at its right, and another wall."""
    return room(wall("w1", list(length), things=things), wall("w2", "96", corner=None), closed=False, **CASED)


def test_beside_a_corner_the_casing_gets_the_least_wall_that_the_readings_leave():
    # 54 of wall − 22 1/4 to the jamb − 30 1/8 across = 1 5/8; less the reveal of 3/16, 1 7/16.
    door = thing("door", ["22", "22 1/4"], ["30", "30 1/8"], left="80", right="80")
    legs = [piece for piece in ask("pieces", corner_room(door))["pieces"] if piece["part"] == "right leg"]
    assert messages(legs[0])["ripped"].startswith('1 7/16" wide')


def test_battens_keep_clear_of_an_outlet_as_wide_as_its_readings_may_make_it():
    # The second of nine battens in 137 5/16 starts at 16.8516; the outlet ends at 13 + 3 1/4 + 3/4 = 17.
    facts = oblong(thing("outlet", ["13", "13 3/4"], ["3", "3 1/4"], "over"))
    facts["walls"][0]["length"] = "137 5/16"
    wants = {"count": "9", "width": "2 1/2", "height": "60", "thickness": "3/4", "ends": "item"}
    facts["walls"][0]["settings"] = {f"battens.{name}": value for name, value in wants.items()}
    (row,) = ask("battens", facts)["rows"]
    (clash,) = row["clashes"]
    assert (clash["item"], inches(clash["over"])) == (2, pytest.approx(17 - 16.8515625))


def leaning(width, *corners):
    window = thing("cased", "20", width, left="80", right="80", head_corners=corners or ["90.5", "90.5"])
    return [
        flag["message"]
        for piece in ask("pieces", corner_room(window, length=["96"]))["pieces"]
        for flag in piece["flags"]
        if "at the foot: read both again" in flag["message"]
    ]


def test_head_corners_that_lean_the_sides_are_doubted_beyond_what_the_width_was_read_to_vary():
    # 2 · 80 · sin 0.5° = 1.396 at the foot; two readings, and two gauges of 0.1° over 80, allow 0.34.
    assert 2 * 80 * math.sin(math.radians(0.5)) > 1.39
    assert leaning(["30"]) != []
    assert leaning(["30", "31 1/8"]) == []
    # 80 · (sin 0.1° + sin 0.12°) = 0.307: more than the gauges leave open, and not more than with the two readings.
    assert leaning(["30"], "90.1", "90.12") == []
    assert leaning(["30"], "90.1", "90.15") != []


def test_a_notch_reaches_from_the_nearest_to_the_farthest_that_was_read():
    pipe = thing("pipe", ["40", "40 1/2"], ["2", "2 1/4"], "notch")
    (piece,) = (one for one in ask("pieces", oblong(pipe))["pieces"] if one["wall"] == "w1")
    assert '40" to 42 3/4" from the left' in messages(piece)["notch"]


def jogged(first="120"):
    """Walls of 120, 40, 15, 30, 105, 70 round an L: the third goes back the way that the first came."""
    lengths = {"w1": first, "w2": "40", "w3": "15", "w4": "30", "w5": "105", "w6": "70"}
    turns = {"w3": ("outside", "90")}
    return room(*(wall(name, length, *turns.get(name, ("inside", "90"))) for name, length in lengths.items()))


def test_the_room_that_closes_is_not_doubted():
    assert ask("closure", jogged())["closes"] is True


@pytest.mark.parametrize(("first", "told"), [("160", {"w1", "w5"}), ("149", {"w1", "w3", "w5"})])
def test_a_wall_is_not_suspected_of_being_out_by_more_than_twice_what_it_was_read_as(first, told):
    suspects = ask("closure", jogged(first))["suspects"]  # out by 40, or by 29; the third wall was read as 15
    assert {one["wall"] for one in suspects} == told


def allowed(*plus_minus):
    """2.807 standard deviations: a gauge is out by 0.1°, and anywhere within its ± is as likely."""
    return 2.807 * math.hypot(*(math.hypot(0.1, each / math.sqrt(3)) for each in plus_minus))


def test_the_mean_of_a_corners_readings_counts_and_half_of_how_far_they_lie_apart():
    once, apart = (
        ask("closure", room(*(wall(f"w{n}", "96", corner=corner) for n, corner in enumerate(corners))))
        for corners in (("90",) * 4, (["89", "91"], "90", "90", "90"))
    )
    assert once["angle_allowed"] == pytest.approx(allowed(*(WHOLE,) * 4), abs=1e-5)
    assert apart["angle"] == 0
    assert apart["angle_allowed"] == pytest.approx(allowed(1, *(WHOLE,) * 3), abs=1e-5)


OFF_ROUND = {
    "by half a square corner": (("90", "90", "90", "135"), ["half-walked"]),
    "by less": (("90", "90", "90", "134"), []),
    "by half of one, with one unread": ((None, "90", "90", "135"), []),
    "by a whole one, with one unread": ((None, "90", "135", "135"), ["half-walked"]),
}


@pytest.mark.parametrize(("corners", "told"), OFF_ROUND.values(), ids=OFF_ROUND)
def test_a_closed_room_is_still_being_walked_from_half_a_square_corner_on_and_as_much_for_each_unread(corners, told):
    walls = [wall(f"w{n}", "96", corner=corner) for n, corner in enumerate(corners, 1)]
    asked = ask("needs", room(*walls))
    assert [one["key"] for one in asked["problems"] if one["key"] == "half-walked"] == told


WIDTHS = {
    "as wide as the wall": ("48", ["48"], []),
    "wider by one reading only": (["45", "48"], ["50", "40"], []),
    "wider than the wall by one of its readings only": (["45", "48"], ["46", "47"], []),
    "wider by every reading": (["45", "48"], ["50", "49"], [("w1", "wider-than-wall")]),
}


@pytest.mark.parametrize(("length", "width", "told"), WIDTHS.values(), ids=WIDTHS)
def test_a_thing_is_wider_than_its_wall_only_when_all_that_was_read_says_so(length, width, told):
    facts = oblong(thing("door", None, width))
    facts["walls"][0]["length"] = length
    assert [one for one in problems(facts) if one[1] == "wider-than-wall"] == told


def test_a_depth_is_told_by_its_deepest_reading_and_a_length_by_its_shortest():
    house = House()
    wall_id = house.wall("96", "96 1/8")
    window = house.new("opening", wall=wall_id, kind="window")
    house.read(window, "width", "30", "30 1/4")
    house.read(window, "at", "20")
    for side in ("left", "right"):
        house.read(window, side, "40")
    house.read(window, "depth_left", "1/2, 5/8", "3/4, 1/2")
    house.say("setting", of=house.house, name="extension.wanted", value="yes")
    rows = ask_notebook(house.entries, {"ask": "survey", "room": house.room})["rows"]
    figures = {row["what"]: row["figure"]["shown"] for row in rows if row["figure"]}
    assert (figures["depth_left"], figures["width"], figures["length"]) == ('3/4"', '30"', '96"')
