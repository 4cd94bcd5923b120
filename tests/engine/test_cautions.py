"""Cautions: there where people can be hurt, once, deferring to manuals, codes and trades; never a promise."""

import pytest
from scantling.engine.cautions import TAIL, cautions_for_cutting, cautions_for_survey

from tests.engine.test_notebook import ask as ask_house
from tests.entries import four_walls
from tests.rooms import ask, oblong, room


@pytest.mark.parametrize(
    ("built", "warned"), [(None, True), (1900, True), (1977, True), (1978, False), (2020, False)],
    ids=["year unknown", "old", "last year before the ban", "year of the ban", "new"],
)  # fmt: skip
def test_old_paint_is_told_of_where_the_house_is_old_or_nobody_knows(built, warned):
    found = cautions_for_survey(built)
    assert any("lead" in line for line in found) is warned
    assert found[-1:] == ([TAIL] if warned else [])


def test_the_survey_of_a_house_warns_by_the_year_it_was_built():
    house = four_walls()
    assert any("lead" in line for line in ask_house(house, "survey", room=house.room)["cautions"])
    house.say("house", [house.entries[0]["id"]], house=house.house, name="the house", built=2001)
    assert ask_house(house, "survey", room=house.room)["cautions"] == []


@pytest.mark.parametrize("name", ["pieces", "boards_for_room"])
def test_wherever_there_is_something_to_cut_the_saw_is_told_of_once(name):
    found = ask(name, oblong())["cautions"]
    assert sum("12 in" in line for line in found) == 1
    assert found[-1] == TAIL
    assert ask(name, room())["cautions"] == []


def test_every_list_of_cautions_defers_at_its_end_and_promises_nothing():
    for lines in (cautions_for_cutting(), cautions_for_survey(None)):
        assert lines[-1] == TAIL
        assert "manual" in TAIL
        assert "code" in TAIL
        assert "licensed" in TAIL
        text = " ".join(lines).lower()
        assert not any(word in text for word in ("safe", "guarantee", "no risk", "harmless"))
