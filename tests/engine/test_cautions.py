"""Cautions: there where people can be hurt, once, deferring to manuals, codes and trades; never a promise."""

import re

import pytest
from scantling.engine import cautions
from scantling.engine.cautions import (
    EVERY,
    cautions_for_cutting,
    cautions_for_film,
    cautions_for_fixing,
    cautions_for_paint,
    cautions_for_paper,
    cautions_for_sheets,
    cautions_for_survey,
    cautions_for_work,
    derive_lead_length,
    word_of,
)
from scantling.engine.tape.lengths import parse_length
from scantling.engine.words import say
from scantling.engine.words.en import TEXTS

from tests.covered import ask as ask_house
from tests.entries import four_walls
from tests.rooms import ask, oblong, room, thing

ESCAPE, FIREPLACE, OVERHEAD, TAIL = map(say, (cautions.ESCAPE, cautions.FIREPLACE, cautions.OVERHEAD, cautions.TAIL))


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


def test_what_a_piece_of_ones_own_is_called_puts_nothing_overhead():
    facts = oblong() | {"free": [{"id": "f", "name": "crown for the shelf", "profile": "pine 3/4", "text": "30"}]}
    assert OVERHEAD not in ask("pieces", facts)["cautions"]
    assert OVERHEAD in ask("pieces", oblong(crown__wanted="yes"))["cautions"]


def test_an_escape_window_is_spoken_of_where_its_opening_may_grow_smaller_and_nowhere_else():
    window = thing("window", "40", "30", left="48", right="48", sill="30")
    facts = oblong(window, casing__wanted="yes", crown__wanted="yes")
    assert ESCAPE in ask("pieces", facts)["cautions"]
    warned = {True: set(), False: set()}
    for piece in ask("pieces", facts)["pieces"]:
        cautions = ask("pieces", facts, piece=piece["key"])["cautions"]
        warned[ESCAPE in cautions].add(piece["part"])
        assert (OVERHEAD in cautions) is (piece["part"] == "crown")
        assert cautions[-1] == TAIL
    assert warned[True] == {"left leg", "right leg", "head", "stool"}
    assert warned[False] == {"base", "crown", "apron", "apron return, left", "apron return, right"}


def test_glass_is_spoken_of_where_a_window_is_cased_in_a_room_with_a_tub():
    # Glass within 60 in of a tub: International Residential Code, R308.4.5.
    window, tub = thing("window", "40", "30", left="48", right="48", sill="44"), thing("tub", "0", "30", "stops")
    glass = say(cautions.GLASS)
    assert glass in ask("pieces", oblong(window, tub, casing__wanted="yes"))["cautions"]
    assert glass not in ask("pieces", oblong(window, casing__wanted="yes"))["cautions"]
    assert glass not in ask("pieces", oblong(tub))["cautions"]


def test_a_fireplace_is_spoken_of_on_the_pieces_of_its_wall():
    facts = oblong(thing("brick hearth", "40", "30", "stops", depth="12"))
    warned = {piece["wall"] for piece in ask("pieces", facts)["pieces"]
              if FIREPLACE in ask("pieces", facts, piece=piece["key"])["cautions"]}
    assert warned == {"w1"}


def test_every_list_of_cautions_defers_at_its_end_and_promises_nothing():
    base = parse_length("5 1/2")
    for lines in (
        cautions_for_cutting(windows=True, overhead=True, fireplace=True, long=True), cautions_for_survey(None),
        cautions_for_fixing(nails=True, adhesive=True), cautions_for_paper(), cautions_for_paint(oil=True),
        cautions_for_film(), cautions_for_sheets(), cautions_for_work(None, base),
    ):  # fmt: skip
        assert lines[-1] == TAIL
        assert "manual" in TAIL
        assert "code" in TAIL
        assert "licensed" in TAIL
        text = " ".join(lines).lower()
        # Safety glazing is what the code calls a kind of glass.
        assert not re.search(r"\b(safe|safely|guarantee|no risk|harmless)\b", text)


def test_every_caution_is_known_by_a_word_of_its_own():
    words = [word_of(say(key)) for key in vars(cautions).values() if isinstance(key, str) and key in TEXTS]
    assert len(words) > 15
    assert len(set(words)) == len(words)
    assert all(1 <= len(word.split()) <= 3 for word in words)


# 40 CFR 745.83: 6 sq ft of painted surface in a room. The lengths are arithmetic: 864 sq in over the height.
@pytest.mark.parametrize(("height", "feet"), [("5 1/2", 13.09), ("3 1/4", 22.15), ("7 1/4", 9.93)])
def test_the_lead_rule_begins_at_six_square_feet_of_trim(height, feet):
    assert float(derive_lead_length(parse_length(height)).inches) / 12 == pytest.approx(feet, abs=0.005)


def test_old_trim_is_told_of_by_the_rule_and_new_is_not():
    base = parse_length("5 1/2")
    assert any("13 ft 1 1/16" in line for line in cautions_for_work(1936, base))
    assert not any("Lead rule" in line or "asbestos" in line for line in cautions_for_work(1990, base))
    assert any("asbestos" in line for line in cautions_for_work(1980, base))


def test_every_caution_can_be_put_aside_by_its_word_and_is_kept_in_a_list():
    house = four_walls()
    told = {
        *cautions_for_cutting(windows=True, overhead=True, fireplace=True, long=True), *cautions_for_survey(None),
        *cautions_for_fixing(nails=True, adhesive=True), *cautions_for_paper(), *cautions_for_paint(oil=True),
        *cautions_for_film(), *cautions_for_sheets(), *cautions_for_work(None, parse_length("5 1/2")),
    }  # fmt: skip
    assert {word_of(line) for line in told} == {*(word_of(say(key)) for key in EVERY), word_of(TAIL)}
    for word in ("Saw", "Lead rule", "Of a newer engine"):
        house.say("tick", of=house.house, list="cautions", key=word, state="dismissed", remember="")
    aside = {one["word"]: one["words"] for one in ask_house(house, "cautions", house=house.house)["aside"]}
    assert aside["Saw"].startswith("Saw: keep at least 12 in")
    assert set(aside) == {"Saw", "Lead rule", "Of a newer engine"}
