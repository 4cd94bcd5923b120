"""Free pieces: a sum of a person's own that names figures of the room, told well when it comes to no length."""

import pytest
from scantling.engine.desk import Desk
from scantling.engine.survey.read import read_room
from scantling.engine.trim.own.names import derive_names

from tests.asked import ask as ask_checked
from tests.entries import House, four_walls
from tests.rooms import Facts, ask, inches, oblong, room, thing, wall

SHELF = {"id": "f1", "name": "shelf", "profile": "shelf 3/4 × 9 1/2", "text": "wall 2 - 1/4", "count": "2"}


def with_free(*free: Facts, facts: Facts | None = None) -> Facts:
    return {**(facts or oblong(base__wanted="no")), "free": list(free)}


def test_a_free_piece_is_as_long_as_its_sum_and_as_many_as_are_wanted():
    answered = ask_checked("pieces", room=with_free(SHELF))
    assert [piece["part_name"] for piece in answered["pieces"]] == ["shelf, 1 of 2", "shelf, 2 of 2"]
    assert {inches(piece["cut"]) for piece in answered["pieces"]} == {95.75}
    assert answered["problems"] == []
    assert answered["pieces"][0]["wall"] is None


def test_its_working_says_where_each_figure_comes_from_and_what_was_made_of_it():
    facts = room(wall("w1", ["96", "96 1/8"]), wall("w2", "40"), closed=False, base__wanted="no")
    (piece,) = ask("pieces", with_free({**SHELF, "text": "half of wall 1 + wall 2", "count": "1"}, facts=facts))[
        "pieces"
    ]
    steps = [(step["text"], step["value"] and step["value"]["shown"]) for step in piece["working"]]
    assert steps == [
        ("wall 1, smallest of 2 readings", '96"'),
        ("wall 2", '40"'),
        ('1/2 of 96"', '48"'),
        ('48" + 40"', '88"'),
        ("= length", '88"'),
        ('± 1/16" 19 times in 20; 3/32" were all 3 readings and marks out at once', None),
    ]
    assert piece["working"][0]["readings"] == ["96", "96 1/8"]
    # Two figures read off the tape and one pencil mark, a 32nd each: 1.96 · 1/32 · √(3/3).
    assert inches(piece["plus_minus"]) == pytest.approx(1.96 / 32, abs=1e-6)


def test_the_largest_reading_has_a_name_of_its_own_where_readings_differ():
    facts = room(wall("w1", ["96", "96 1/8"]), closed=False, base__wanted="no")
    (piece,) = ask("pieces", with_free({**SHELF, "text": "largest wall 1", "count": "1"}, facts=facts))["pieces"]
    assert inches(piece["cut"]) == 96.125


def test_every_figure_is_named_as_the_screens_name_it():
    facts = oblong(
        thing("door", "10", "30", left="80", right="80 1/8"), thing("window", "50", "20"),
        thing("window", "80", "22", name="b"), thing("cabinet", "104", "10", "stops"),
    )  # fmt: skip
    names = derive_names(read_room(facts))
    assert [name for name in names if name.startswith("wall 1")] == [
        "wall 1", "wall 1 door width", "wall 1 door from the left", "wall 1 door left height",
        "wall 1 door right height", "wall 1 left window width", "wall 1 left window from the left",
        "wall 1 right window width", "wall 1 right window from the left", "wall 1 cabinet width",
        "wall 1 cabinet from the left",
    ]  # fmt: skip
    assert "reveal" in names
    assert names["base thickness"].step.text == "base thickness (common practice, until you set it)"


WRONG = {
    "an area": ("wall 1 × wall 2", "not-a-length"),
    "a plain number": ("wall 1 / wall 2", "not-a-length"),
    "nothing": ("wall 1 - wall 3", "no-length"),
    "less than nothing": ("wall 2 - wall 1", "no-length"),
    "a figure not read": ("wall 9 - 1/4", "no-such-figure"),
    "a mark hard against a name": ("wall 2-1/4", "name-and-mark"),
    "half a sum": ("wall 2 - ", "missing-number"),
    "no sum": (" ", "empty"),
}


@pytest.mark.parametrize(("text", "key"), WRONG.values(), ids=WRONG)
def test_a_sum_that_comes_to_no_length_is_a_problem_by_name_and_the_others_stand(text, key):
    answered = ask("pieces", with_free({**SHELF, "name": "ledger", "id": "f2", "text": text}, SHELF))
    assert [piece["part"] for piece in answered["pieces"]] == ["shelf", "shelf"]
    (problem,) = answered["problems"]
    assert problem["key"] == key
    assert problem["message"].startswith("ledger: ")


def test_more_free_pieces_than_a_list_can_hold_are_refused_by_name():
    many = [{**SHELF, "id": f"f{number}", "count": "200"} for number in range(3)]
    answered = ask("pieces", with_free(*many))
    assert len(answered["pieces"]) == 400
    assert [problem["key"] for problem in answered["problems"]] == ["too-many"]


def test_its_boards_are_those_of_its_profile_by_name():
    rows = [{"profile": "shelf 3/4 × 9 1/2", "length": "10 ft", "price": "20"},
            {"profile": "another", "length": "20 ft", "price": "1"}]  # fmt: skip
    facts = with_free(SHELF, facts=oblong(base__wanted="no", other__stock=rows))
    (plan,) = ask("boards_for_room", facts)["plans"]
    assert (plan["profile"], plan["cost"]) == ("shelf 3/4 × 9 1/2", "40.00")


def test_boards_of_other_profiles_without_a_profile_are_refused():
    answered = Desk().answer({"ask": "pieces", "room": oblong(other__stock=[{"length": "8 ft", "price": "1"}])})
    assert answered["error"]["key"] == "no-profile"


def test_a_sum_is_tried_before_it_is_kept():
    facts = oblong()
    tried = ask_checked("free", room=facts, text="wall 1 - 2 × reveal")["trial"]
    assert inches(tried["length"]) == 119.625
    wrong = ask_checked("free", room=facts, text="wall 1 - fish")["trial"]
    assert (wrong["length"], wrong["at"]) == (None, 9)
    assert ask_checked("free", room=facts)["trial"] is None
    assert "wall 4" in [named["name"] for named in ask_checked("free", room=facts)["names"]]


def house_with_a_shelf() -> tuple[House, str]:
    house = four_walls()
    said = {"room": house.room, "name": "shelf", "profile": "shelf", "text": "wall 1 - 1", "count": "1"}
    return house, house.new("free", **said)


def test_in_the_notebook_a_free_piece_is_said_again_struck_and_restored():
    house, shelf = house_with_a_shelf()
    first = house.entries[-1]["id"]
    desk = Desk(house.entries)

    def shown() -> list[str]:
        pieces = desk.answer({"ask": "pieces", "room": house.room})["answer"]["pieces"]
        return [piece["cut"]["shown"] for piece in pieces if piece["part"] == "shelf"]

    assert shown() == ['119"']
    body = {"free": shelf, "room": house.room, "name": "shelf", "profile": "shelf", "text": "wall 1 - 2", "count": "2"}
    house.say("free", supersedes=[first], **body)
    desk.take(house.entries)
    assert shown() == ['118"', '118"']
    (line,) = desk.answer({"ask": "free", "room": house.room})["answer"]["free"]
    assert line["entries"] == [house.entries[-1]["id"]]
    assert len(line["all"]) == 2
    strikes = [house.say("strike", entry=entry, why="not wanted") for entry in line["all"]]
    desk.take(house.entries)
    assert shown() == []
    for strike in strikes:
        house.say("strike", entry=strike, why="wanted after all")
    desk.take(house.entries)
    assert shown() == ['118"', '118"']


def test_a_reading_of_a_wall_changes_the_piece_that_names_it():
    house, _ = house_with_a_shelf()
    desk = Desk(house.entries)
    house.read(house.walls[0], "length", "119 7/8")
    desk.take(house.entries)
    pieces = desk.answer({"ask": "pieces", "room": house.room})["answer"]["pieces"]
    assert [piece["cut"]["shown"] for piece in pieces if piece["part"] == "shelf"] == ['118 7/8"']
