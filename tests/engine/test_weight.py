"""Bounds: nothing that is asked raises or runs away; what no house reaches is counted first, and named."""

import json
import random
import time
from typing import Any

import pytest
from marshmallow import Schema, fields
from scantling.engine.desk import QUESTIONS, Desk, answer
from scantling.engine.weight import QUESTIONS_AT_MOST

from tests.entries import House
from tests.rooms import Facts, room, thing, wall

BOARDS: Facts = {"ask": "boards", "kerf": "0", "pieces": ["20"], "stock": [{"length": "96", "price": "1"}]}


def crowded(walls: int, things: int) -> Facts:
    doors = [thing("door", str(10 + 60 * place), "30", left="80", right="80", name=f"d{place}")
             for place in range(things)]  # fmt: skip
    return room(*(wall(f"w{place}", "3000", things=doors) for place in range(walls)), casing__wanted="yes")


TOO_MUCH: dict[str, tuple[Facts, str]] = {
    "5,000 digits as a length": ({"ask": "spacing", "span": 10**5000, "width": "1", "count": 3}, "too-great-a-number"),
    "5,000 digits as text": ({"ask": "read", "text": "9" * 5000}, "too-long"),
    "5,000 digits as an angle": (
        {"ask": "corner", "turn": "inside", "corner": 10**5000, "thickness": "1"}, "too-great-a-number",
    ),
    "a price of 10^4000": (
        BOARDS | {"price_unit": "cent", "stock": [{"length": "96", "price": 10**4000}]}, "too-great-a-number",
    ),
    "a number without end": (BOARDS | {"time_limit": float("inf")}, "too-great-a-number"),
    "no number": (BOARDS | {"time_limit": float("nan")}, "too-great-a-number"),
    "more walls than a room has": ({"ask": "pieces", "room": crowded(201, 0)}, "bad-field"),
    "more doors than a room has": ({"ask": "plan", "room": crowded(20, 11)}, "too-many-things"),
    "a million values": ({"ask": "sum", "text": "1", "more": [0] * 1_000_000}, "too-much"),
}  # fmt: skip


@pytest.mark.parametrize(("question", "key"), TOO_MUCH.values(), ids=TOO_MUCH)
def test_what_no_house_reaches_is_counted_first_and_named(question, key):
    began = time.process_time()
    assert answer(question)["error"]["key"] == key
    assert time.process_time() - began < 2


def test_four_times_the_walls_are_no_more_than_about_four_times_the_work():
    """Each wall of 250 ft, with its studs: what is tried for one must not grow with the others."""
    spent = []
    for walls in (10, 40):
        facts = crowded(walls, 1)
        facts["standard"] |= {"base.wanted": "yes", "base.stock": [{"length": "96", "price": "8.00", "limit": None}]}
        facts["walls"] = [{**each, "studs": "7 1/2, every 16"} for each in facts["walls"]]
        began = time.process_time()
        assert "answer" in answer({"ask": "plan", "room": facts})
        spent.append(time.process_time() - began)
    assert spent[1] < 8 * spent[0]


def test_what_was_spent_in_a_house_is_told_although_one_of_its_rooms_holds_more_than_a_room_does():
    house = House()
    for _ in range(201):
        house.wall("96")
    house.new("lot", of=house.room, article=None, name="caulk", count="1", price="4.50", date="", note="")
    room = house.new("room", house=house.house, name="closet", closed=False)
    house.new("lot", of=room, article=None, name="tape", count="1", price="2.00", date="", note="")
    desk = Desk(house.entries)
    spent = desk.answer({"ask": "spent", "house": house.house})["answer"]
    assert (spent["spent"], [one["name"] for one in spent["rooms"]]) == ("6.50", ["the room", "closet"])
    rough = desk.answer({"ask": "next_rooms", "house": house.house})["answer"]
    for answered in (spent, rough):
        assert [(one["name"], one["key"]) for one in answered["problems"]] == [("the room", "too-many-walls")]
    stock = desk.answer({"ask": "stock", "house": house.house})["answer"]
    assert [lot["name"] for lot in stock["lots"]] == ["caulk", "tape"]
    assert desk.answer({"ask": "spent", "room": house.room})["error"]["key"] == "too-many-walls"


def issued(lists: int) -> House:
    """Lists of 200 pieces each, all of which two hundred devices gave one letter in good faith."""
    house = House()
    for place in range(lists):
        pieces = [{"piece": f"{place:08x}-{row:04x}-4000-8000-000000000000", "key": f"{place} {row}", "letter": "A",
                   "name": "base", "profile": "base", "cut": "1", "shown": "1"} for row in range(200)]  # fmt: skip
        house.say("issue", list=f"{place:08x}-0000-4000-8000-000000000000", room=house.room, pieces=pieces)
    return house


def test_four_times_the_letters_that_collided_are_no_more_than_about_four_times_the_work():
    least = []  # of three: what the collector clears of other tests falls on any one
    for lists in (8, 32):
        house, spent = issued(lists), []
        for _ in range(3):
            began = time.process_time()
            found = Desk(house.entries).answer({"ask": "pieces", "room": house.room})["answer"]["gone"]
            spent.append(time.process_time() - began)
        least.append(min(spent))
        assert len({one["letter"] for one in found}) == len(found) == 200 * lists
    assert least[1] < 8 * least[0]


def test_what_is_nested_without_end_is_refused():
    deep: Any = []
    for _ in range(5000):
        deep = [deep]
    assert answer({"ask": "sum", "text": "1", "more": deep})["error"]["key"] == "too-deep"


def nested(deep: int = 5000) -> Any:
    found: Any = []
    for _ in range(deep):
        found = [found]
    return found


ODD_ENTRIES: dict[str, Facts] = {
    "5,000 digits for an id": {"id": 10**5000},
    "an id nested without end": {"id": nested()},
    "an id of nothing": {"id": None},
    "a house nested without end": {"body": {"house": nested()}},
    "a strike of what is nested without end": {"kind": "strike", "body": {"entry": nested(), "why": ""}},
    "5,000 digits in a body": {"body": {"house": 10**5000}},
    "5,000 digits for a number": {"seq": 10**5000},
    "what is nested without end, of a newer kind": {"kind": "newer", "body": {"it": nested()}},
}


@pytest.mark.parametrize("ask", ["take", "check"])
@pytest.mark.parametrize("odd", ODD_ENTRIES.values(), ids=ODD_ENTRIES)
def test_no_entry_stops_the_engine_and_those_beside_it_are_taken(odd, ask):
    house = House()
    sound, room = house.entries
    entries = [{**room, **odd}, sound, {**room, **odd, "device": "0" * 16}, room]
    desk = Desk()
    answered = desk.answer({"ask": ask, "entries": entries})["answer"]
    json.dumps(answered)
    assert all(len(one["id"]) <= 64 and one["id"] != "None" for one in answered["refused"])
    if ask == "take":
        (found,) = desk.answer({"ask": "notebook"})["answer"]["houses"]
        assert (found["name"], [one["name"] for one in found["rooms"]]) == ("the house", ["the room"])


def test_more_questions_at_once_than_any_page_asks_are_refused_together():
    few = json.dumps([1] * QUESTIONS_AT_MOST)
    many = json.dumps([1] * 600_000)
    assert len(json.loads(Desk().answer_text(few))) == QUESTIONS_AT_MOST
    assert json.loads(Desk().answer_text(many))["error"]["key"] == "too-many-questions"


def test_a_room_that_came_by_sync_with_more_than_a_room_holds_is_named_and_the_others_stand():
    house = House()
    for _ in range(21):
        house.wall("600")
        for place in range(10):
            house.read(house.new("opening", wall=house.walls[-1], kind="door"), "at", str(50 * place))
    desk = Desk(house.entries)
    assert desk.answer({"ask": "pieces", "room": house.room})["error"]["key"] == "too-many-things"
    (shown,) = desk.answer({"ask": "notebook"})["answer"]["houses"][0]["rooms"]
    assert (shown["walls"], shown["problems"]) == (21, 1)


def test_a_room_that_came_by_sync_with_more_walls_than_a_room_has_is_named_as_the_room():
    house = House()
    for _ in range(201):
        house.wall()
    refused = Desk(house.entries).answer({"ask": "survey", "room": house.room})["error"]
    assert (refused["key"], refused["where"]["field"]) == ("too-many-walls", "room")


def test_more_studs_than_a_wall_has_are_named():
    facts = room(wall("w1", "1000"), closed=False)
    facts["walls"][0]["studs"] = "3, every 3"
    (problem,) = answer({"ask": "pieces", "room": facts})["answer"]["problems"]
    assert "more than 120 studs" in problem["message"]


TEXTS = ("63 1/4", "631/4", "a 0nd", "0", "-1", "9" * 300, "every 3", "1e400", "", " ", "\x00", "\ud800", "٦٣", "90.5",
         "24, 24, 34", "½ of", "((((", "wall 1 ÷ 0", "12 ft", "1607 mm", "90°", "inside", "none", "²")  # fmt: skip
ODD: tuple[Any, ...] = (None, True, 0, -1, 10**30, 1e308, float("nan"), 0.1, [], {}, [[]], {"exact": "1/0"}, [None])


def made(chance: random.Random, field: fields.Field[Any], deep: int) -> Any:
    """A value for a field: mostly of its kind, now and then of none."""
    if chance.random() < 0.12:
        return chance.choice(ODD)
    if isinstance(field, fields.Nested):
        return question_of(chance, field.schema, deep + 1)
    if isinstance(field, fields.List):
        return [made(chance, field.inner, deep + 1) for _ in range(chance.choice((0, 1, 2, 3)))]
    if isinstance(field, fields.Boolean):
        return chance.random() < 0.5
    if isinstance(field, fields.Number):
        return chance.choice((-1, 0, 1, 2, 7, 40, 10**9))
    if isinstance(field, fields.Dict):
        return {chance.choice(("base.height", "battens.count", "casing", "x")): chance.choice(TEXTS + ODD)}
    choices = [choice for check in field.validators for choice in getattr(check, "choices", ())]
    return chance.choice(choices) if choices and chance.random() < 0.9 else chance.choice(TEXTS)


def question_of(chance: random.Random, schema: Schema, deep: int = 0) -> Facts:
    given = schema.fields.items() if deep < 8 else ()
    return {field.data_key or name: made(chance, field, deep) for name, field in given
            if chance.random() < (0.95 if field.required else 0.5)}  # fmt: skip


@pytest.mark.parametrize("name", QUESTIONS)
def test_whatever_is_asked_is_answered_or_refused_in_little_time(name):
    chance = random.Random(name)
    desk = Desk()
    until = time.process_time() + 0.5
    for _ in range(150):
        asked = {**question_of(chance, QUESTIONS[name].takes()), "ask": name}
        if "time_limit" in asked:
            asked["time_limit"] = 0.01
        found = desk.answer(asked)
        assert found.keys() in ({"answer"}, {"error"}), asked
        json.dumps(found, allow_nan=False)
        if time.process_time() > until:
            break


LETTERS = ("0", "1", "3", "16", "64", " ", " ", "/", "-", "'", '"', ".", ",", "and", "a", "half", "nd", "th",
           "in", "×", "(", ")", "+", "of", "sixty", "hundred", "quarter", "strong", "½", "point", "zero")  # fmt: skip


@pytest.mark.parametrize("name", ["read", "sum"])
def test_whatever_is_typed_is_read_or_refused(name):
    chance = random.Random(name)
    for _ in range(4000):
        text = "".join(chance.choice(LETTERS) + chance.choice(("", " ")) for _ in range(chance.randint(1, 7)))
        found = answer({"ask": name, "text": text})
        assert found.keys() in ({"answer"}, {"error"}), text
