"""The survey: readings that agree and do not, figures that cannot be, and each problem on the wall that it concerns."""

from typing import Any

import pytest

from tests.engine.test_notebook import ask as ask_house
from tests.engine.test_notebook import row, survey
from tests.entries import House, four_walls
from tests.rooms import Facts, ask, inches, oblong, room, thing, wall


def problems(facts: Facts) -> list[tuple[str, str]]:
    return [(one["wall"], one["key"]) for one in ask("pieces", facts)["problems"]]


def cut_walls(facts: Facts) -> set[str]:
    return {piece["wall"] for piece in ask("pieces", facts)["pieces"]}


NOT_LENGTHS = (
    "",
    " ",
    "fish",
    "63 1/",
    "63 1/0",
    "-4",
    "1/2/3",
    "63 1/4 1/8",
    "sixty fish",
    "12..5",
    "5' 6' 7",
    "\x00",
    "9" * 40,
)


@pytest.mark.parametrize("text", NOT_LENGTHS, ids=[f"nonsense {n}" for n in range(len(NOT_LENGTHS))])
@pytest.mark.parametrize("where", ["length", "at", "width"])
def test_what_cannot_be_understood_is_a_problem_and_never_a_figure(text, where):
    door = thing("door", "30", "30")
    facts = oblong(door)
    (facts["walls"][0] if where == "length" else door)[where] = text
    answered = ask("pieces", facts)
    (problem,) = answered["problems"]
    assert problem["wall"] == "w1"
    # Nothing on that wall is cut by a guess: with its length unread the run up to the door still stands, by itself.
    on_wall = [piece for piece in answered["pieces"] if piece["wall"] == "w1"]
    assert [inches(piece["back"]) for piece in on_wall] == ([30 - 3 / 16 - 2.25] if where == "length" else [])
    assert {piece["wall"] for piece in answered["pieces"]} >= {"w2", "w3", "w4"}


@pytest.mark.parametrize("text", NOT_LENGTHS, ids=[f"nonsense {n}" for n in range(len(NOT_LENGTHS))])
def test_beside_readings_that_are_understood_one_that_is_not_is_only_a_problem(text):
    facts = oblong()
    facts["walls"][0]["length"] = ["120", text, "119 15/16"]
    answered = ask("pieces", facts)
    assert [problem["wall"] for problem in answered["problems"]] == ["w1"]
    assert inches(next(piece for piece in answered["pieces"] if piece["wall"] == "w1")["back"]) == 119.9375


@pytest.mark.parametrize("where", ["length", "width"])
def test_a_size_of_nothing_is_measured_again(where):
    door = thing("door", "30", "30")
    facts = oblong(door)
    (facts["walls"][0] if where == "length" else door)[where] = "0"
    assert problems(facts) == [("w1", "no-length")]


@pytest.mark.parametrize("text", ["", "x", "-90", "0", "180", "269", "90,5"], ids=repr)
def test_a_corner_that_cannot_be_understood_is_a_problem_on_its_wall_and_taken_as_unread(text):
    facts = oblong()
    facts["walls"][1]["corner"]["corner"] = text
    answered = ask("pieces", facts)
    assert [problem["wall"] for problem in answered["problems"]] == ["w2"]
    flagged = {
        piece["wall"] for piece in answered["pieces"] for flag in piece["flags"] if flag["key"] == "corner-unread"
    }
    assert flagged == {"w2", "w3"}


SIDES: dict[str, tuple[Any, str | None]] = {
    "a list of three": (["24", "24", "33 15/16"], None),
    "one text": ("24, 24, 33 15/16", None),
    "one text with semicolons": ("24; 24; 33 15/16", None),
    "two sides": (["24", "24"], "three-sides"),
    "four sides": ("24, 24, 24, 24", "three-sides"),
    "a number": (5, "three-sides"),
    "no triangle": (["24", "24", "48"], "no-triangle"),
    "words": (["24", "24", "fish"], "unknown-word"),
    "nothing": ([], None),
}


@pytest.mark.parametrize(("sides", "key"), SIDES.values(), ids=SIDES)
def test_three_sides_make_a_corner_or_a_problem_on_their_wall(sides, key):
    facts = oblong()
    facts["walls"][1]["corner"] = {"turn": "inside", "sides": sides}
    assert problems(facts) == ([("w2", key)] if key else [])


def test_gauge_and_sides_of_one_corner_are_taken_together():
    # 24, 24, 34 1/4 is a corner of 91.0476 degrees; with 90 by gauge the mean is 90.5238, and the saw half of the rest.
    facts = room(wall("w1", "50", corner="90", sides=["24", "24", "34 1/4"]), wall("w2", "40"), closed=False)
    (coped,) = (piece for piece in ask("pieces", facts)["pieces"] if piece["left"]["joint"] == "cope")
    assert coped["left"]["saw"] == pytest.approx((180 - 90.5238) / 2, abs=1e-4)


PAST: dict[str, tuple[list[Facts], str]] = {
    "door past the end": ([thing("door", "100", "30")], "past-the-end"),
    "cabinet past the end": ([thing("cabinet", "110", "20", "stops")], "past-the-end"),
    "door wider than the wall": ([thing("door", "0", "130")], "past-the-end"),
    "two doors in one place": ([thing("door", "30", "30", name="a"), thing("cased", "50", "30", name="b")], "overlap"),
    "a door in a cabinet": ([thing("door", "30", "30"), thing("cabinet", "40", "10", "stops")], "overlap"),
}


@pytest.mark.parametrize(("things", "key"), PAST.values(), ids=PAST)
def test_a_wall_whose_figures_contradict_each_other_is_named_and_nothing_is_cut_for_it(things, key):
    assert problems(oblong(*things)) == [("w1", key)]
    assert cut_walls(oblong(*things)) == {"w2", "w3", "w4"}
    told = {one["wall"] for one in ask("pieces", oblong(*things))["pieces"] for flag in one["flags"]
            if flag["key"] == "neighbor-unread"}  # fmt: skip
    assert told == {"w2", "w4"}


BESIDE: dict[str, tuple[list[Facts], str]] = {
    "a window past the end": ([thing("window", "110", "20")], "past-the-end"),
    "a register past the end": ([thing("register", "110", "20", "over")], "past-the-end"),
    "a door in a window": ([thing("door", "30", "30"), thing("window", "40", "10")], "overlap"),
    "a door in a register": ([thing("door", "30", "30"), thing("register", "40", "10", "over")], "overlap"),
}


@pytest.mark.parametrize(("things", "key"), BESIDE.values(), ids=BESIDE)
def test_what_base_does_not_go_by_is_named_too_and_stops_no_piece(things, key):
    assert problems(oblong(*things)) == [("w1", key)]
    assert cut_walls(oblong(*things)) == {"w1", "w2", "w3", "w4"}


STANDS: dict[str, list[Facts]] = {
    "a radiator under a window": [thing("window", "30", "40"), thing("radiator", "32", "36", "stops")],
    "a register under a window": [thing("window", "30", "40"), thing("register", "32", "12", "over")],
    "a pipe under a window": [thing("window", "30", "40"), thing("pipe", "32", "1", "notch")],
    "a door to the very end": [thing("door", "87 9/16", "30")],
    "a medicine cabinet over a vanity": [thing("cabinet", "0", "30", "stops"), thing("mirror", "7", "16", "over")],
    "things that touch": [thing("cabinet", "30", "10", "stops"), thing("shelf", "40", "10", "stops")],
}


@pytest.mark.parametrize("things", STANDS.values(), ids=STANDS)
def test_what_can_stand_so_is_no_problem(things):
    assert problems(oblong(*things)) == []


def test_a_problem_is_told_with_what_to_do():
    (problem,) = ask("pieces", oblong(thing("door", "100", "30")))["problems"]
    assert problem["message"] == 'The door ends 10" past the end of the wall: measure both again.'


def test_readings_that_agree_are_read_and_said_how_often():
    house = House()
    once, twice, thrice = house.wall("63"), house.wall("63", "63 1/16"), house.wall("63", "63", "63 1/8")
    said = [(row(house, each)["state"], row(house, each)["note"]) for each in (once, twice, thrice)]
    assert said == [("read", "read once"), ("read", "read twice, agree"), ("read", "read 3 times, agree")]


@pytest.mark.parametrize(
    ("other", "said"),
    [("63 3/16", '3/16"'), ("63 1/2", '1/2"'), ("64", "an inch"), ("62 1/16", "an inch"), ("65", '2"')],
    ids=["three sixteenths", "half an inch", "an inch burnt", "an inch and a hair", "two inches"],
)  # fmt: skip
def test_readings_that_do_not_agree_are_to_be_looked_at_again_and_told_by_how_much(other, said):
    house = House()
    each = house.wall("63", other)
    assert row(house, each)["state"] == "check"
    assert f"readings differ by {said}" in row(house, each)["note"]
    assert row(house, each)["note"].lower().endswith("read again")


def test_a_corner_read_twice_and_differently_is_checked():
    house = four_walls()
    house.read(house.walls[0], "corner", "88.5")
    assert row(house, house.walls[0], "corner")["note"] == "readings differ by 1.5°: read again"


def test_a_corner_sharper_than_walls_meet_is_looked_at_again():
    house = House()
    found = row(house, house.wall("63", corner="9"), "corner")
    assert (found["state"], found["note"]) == ("check", "9.0° is sharper than walls meet: strike it and read again")


def test_a_reading_that_cannot_be_understood_is_shown_as_typed_with_why():
    house = House()
    each = house.wall("63 1/")
    (taken,) = row(house, each)["readings"]
    assert (taken["text"], taken["shown"], row(house, each)["figure"]) == ("63 1/", "", None)
    assert "63 1/" in taken["error"]
    assert row(house, each)["state"] == "check"


def test_a_lean_and_a_fall_are_told_in_words_beside_how_often_they_were_read():
    house = four_walls()
    house.read(house.walls[0], "plumb", "1/4 foot")
    house.read(house.walls[0], "fall", "1/2 right")
    notes = {one["what"]: one["note"] for one in survey(house)["rows"] if one["of"] == house.walls[0]}
    assert notes["plumb"] == 'leans in, 1/4" in 24, read once'
    assert notes["fall"].endswith("read once")
    assert '1/2"' in notes["fall"]


def test_a_lean_may_be_read_off_a_longer_level():
    # 1/4 in 48 is 1/8 in 24.
    house = four_walls()
    house.read(house.walls[0], "plumb", "1/4 in 48 top")
    assert 'leans away, 1/8" in 24' in row(house, house.walls[0], "plumb")["note"]


def test_what_is_next_is_the_first_figure_wanted_and_nothing_when_all_is_read():
    house = four_walls()
    assert (survey(house)["next"], survey(house)["wanted"]) == (None, 0)
    fifth = house.wall(corner=None)
    shown = survey(house)
    assert (shown["next"], shown["wanted"]) == (f"{fifth} length", 2)
    house.read(fifth, "length", "10")
    assert survey(house)["next"] == f"{fifth} corner"


@pytest.mark.parametrize("places", [("0", "33", "60"), ("60", "33", "0"), ("33", "0", "60")])
def test_whoever_reads_on_from_row_to_row_leaves_no_thing_behind_on_a_wall(places):
    house = four_walls()
    wall_id = house.wall(corner=None)
    things = [house.new("obstacle", wall=wall_id, kind=kind, base="stops") for kind in ("cabinet", "hearth", "tub")]
    read, here = dict(zip(things, places, strict=True)), -1
    asked: list[tuple[str, str]] = []
    while wanted := [one for one in survey(house)["rows"][here + 1 :] if one["state"] == "wanted"]:
        of, what = wanted[0]["of"], wanted[0]["what"]
        asked.append((of, what))
        house.read(of, what, read.get(of, "90") if what == "at" else "90" if what in ("length", "corner") else "9")
        here = next(at for at, one in enumerate(survey(house)["rows"]) if (one["of"], one["what"]) == (of, what))
    assert survey(house)["wanted"] == 0
    assert [what for _, what in asked][-2:] == ["length", "corner"]


def test_a_survey_names_every_wall_thing_and_entry_that_a_screen_would_strike():
    house = four_walls()
    door = house.new("opening", wall=house.walls[0], kind="door")
    pipe = house.new("obstacle", wall=house.walls[0], kind="pipe", base="notch")
    first = survey(house)["walls"][0]
    assert [(one["id"], one["kind"]) for one in (*first["openings"], *first["obstacles"])] == [
        (door, "door"),
        (pipe, "pipe"),
    ]
    kept = {entry["id"] for entry in house.entries}
    assert {entry for one in (first, *first["openings"], *first["obstacles"]) for entry in one["entries"]} <= kept


def test_what_a_thing_in_the_way_differs_in_is_shown_with_it():
    house = four_walls()
    cabinet = house.new("obstacle", wall=house.walls[0], kind="cabinet", base="stops")
    house.say("setting", of=cabinet, name="toe.height", value="4")
    house.say("setting", of=cabinet, name="toe.depth", value="far")
    (found,) = survey(house)["walls"][0]["obstacles"]
    assert (found["name"], found["settings"]) == ("cabinet", {"toe.height": "4", "toe.depth": "far"})
    assert list(found["setting_errors"]) == ["toe.depth"]


def test_the_notebook_counts_what_stands_what_is_wanted_and_what_is_wrong():
    house = four_walls()
    door = house.new("opening", wall=house.walls[0], kind="door")
    house.read(door, "at", "100")
    house.read(door, "width", "30", "30")
    house.say("strike", entry=house.entries[-1]["id"], why="")
    (line,) = ask_house(house, "notebook")["houses"][0]["rooms"]
    assert {name: line[name] for name in ("walls", "readings", "wanted", "problems")} == {
        "walls": 4, "readings": 10, "wanted": 2, "problems": 1,
    }  # fmt: skip


def test_a_reading_that_nothing_asks_for_is_shown_all_the_same():
    house = four_walls()
    house.read(house.walls[0], "height", "96 1/2")
    house.read(house.walls[0], "studs", "14, 30, 46")
    shown = {found["what"]: found for found in survey(house)["rows"] if found["of"] == house.walls[0]}

    assert shown["height"]["state"] == shown["studs"]["state"] == "spare"
    assert shown["height"]["figure"]["inches"] == 96.5
    assert (shown["studs"]["readings"][0]["shown"], shown["studs"]["readings"][0]["text"]) == ("3 studs", "14, 30, 46")


def test_things_in_one_place_are_told_by_how_much_and_what_to_do_if_one_hangs_above_the_other():
    # From 7 to 23 within 0 to 30: by 16, though the one goes on for 7 more. Of 40 to 50 and 0 to 60 it is 10.
    shelf = thing("shelf", "7", "16", "stops")
    (problem,) = ask("pieces", oblong(thing("cabinet", "0", "30", "stops"), shelf))["problems"]
    assert problem["message"] == (
        'The cabinet and the shelf lie over each other by 16": measure both again; if one hangs above the other, say '
        "that the base runs past it."
    )
    trunk, far = thing("trunk", "0", "60", "stops"), thing("chest", "40", "10", "stops")
    told = [one["message"] for one in ask("pieces", oblong(trunk, shelf, far))["problems"]]
    assert [message[: message.index(":")] for message in told] == [
        'The trunk and the shelf lie over each other by 16"', 'The trunk and the chest lie over each other by 10"',
    ]  # fmt: skip


def test_a_room_of_which_it_is_not_said_comes_round():
    said = oblong()
    unsaid = {name: value for name, value in said.items() if name != "closed"}
    assert ask("pieces", unsaid)["pieces"] == ask("pieces", said)["pieces"]
