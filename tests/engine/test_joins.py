"""Where the boards of a long run are joined: by the plan of all boards, held against a plan for each stud alone."""

import pytest
from scantling.engine.rack import joins

from tests.cut_lists import ask as ask_notebook
from tests.cut_lists import issue, listed
from tests.entries import House, four_walls
from tests.rooms import Facts, ask, oblong, thing

STUDS = ("14 1/2", "30 1/2", "46 1/2", "62 1/2", "78 1/2", "94 1/2", "110 1/2", "126 1/2", "142 1/2", "158 1/2",
         "174 1/2", "190 1/2", "206 1/2")  # fmt: skip
THREE = [{"length": "8 ft", "price": "8"}, {"length": "12 ft", "price": "11"}, {"length": "16 ft", "price": "16"}]
EIGHT = [{"length": "8 ft", "price": "1"}]


def long_room(studs: str, length: str = "220", stock: list[Facts] = THREE, **standard: object) -> Facts:
    facts = oblong(thing("door", "30", "30 1/8"), base__stock=stock, **standard)
    facts["walls"][2]["length"] = facts["walls"][0]["length"] = length
    facts["walls"][2]["studs"] = studs
    return facts


def joined_at(facts: Facts) -> set[str]:
    names = (piece["part_name"] for piece in ask("pieces", facts)["pieces"])
    return {name.rpartition(" at ")[2] for name in names if "scarf" in name}


def working(facts: Facts) -> str:
    steps = [step["text"] for piece in ask("pieces", facts)["pieces"] for step in piece["working"]]
    return next(text for text in steps if text.startswith("joined on"))


def cost(facts: Facts) -> float:
    return float(ask("boards_for_room", facts)["total"])


def test_boards_are_joined_on_the_stud_that_makes_all_boards_cheapest():
    # Each stud alone, as if there were no other: what the boards come to then is what a person could find by hand.
    alone = {}
    for stud in STUDS:
        answered = ask("boards_for_room", long_room(stud))
        if not answered["missing"]:
            alone[stud] = float(answered["total"])
    cheapest = min(alone.values())
    assert cheapest < alone["110 1/2"]  # the middle one would be dearer: there is something to choose
    facts = long_room(", ".join(STUDS))
    assert cost(facts) == cheapest
    (stud,) = joined_at(facts)
    assert alone[stud.rstrip('"')] == cheapest
    assert working(facts) == (
        'joined on the stud at 30 1/2": of 11 ways to join it, the best: the boards cost $54.00, '
        'on the stud at 110 1/2" they would cost $60.00'
    )  # fmt: skip


def test_where_every_stud_costs_the_same_the_longest_board_is_left():
    # At 94 1/2 the shorter board is 25 1/2 and half the lap: of 95 1/4 with its slack, 69 1/2 and some is left of it.
    facts = long_room("14 1/2, every 16", "120", EIGHT)
    assert joined_at(facts) == {'94 1/2"'}
    assert working(facts).endswith(
        'the boards cost the same, and 69 7/16" is left of one, on the stud at 62 1/2" 37 5/8"'
    )


@pytest.mark.parametrize(("place", "stud"), [("even", '110 1/2"'), ("offcut", '190 1/2"')])
def test_a_person_s_own_place_wins(place, stud):
    facts = long_room(", ".join(STUDS), scarf__place=place)
    assert joined_at(facts) == {stud}
    assert "so the " in working(facts)


def test_one_stud_is_the_only_way():
    assert working(long_room("110 1/2")) == 'joined on the stud at 110 1/2": the only way to join it'


def scarfed() -> House:
    """A wall of 120 of 8 ft boards, whose other walls are read anew later."""
    house = four_walls()
    house.read(house.walls[0], "studs", "14 1/2, every 16")
    house.say("setting", of=house.house, name="base.stock", value=THREE[:1])
    return house


def joints_of(house: House) -> set[str]:
    names = (one["part_name"] for one in listed(house.entries, house.room).values())
    return {name.rpartition(" at ")[2] for name in names if "scarf" in name}


def test_a_joint_stays_where_its_boards_were_lettered_whatever_the_boards_cost_by_then():
    house = scarfed()
    house.say("setting", of=house.house, name="scarf.place", value="even")
    before = joints_of(house)
    issue(house, house.room)
    house.say("setting", of=house.house, name="scarf.place", value="plan")
    assert joints_of(house) == before

    house.say("setting", of=house.house, name="scarf.place", value="offcut")
    assert joints_of(house) != before  # but a person's own word moves it
    house.say("setting", of=house.house, name="scarf.place", value="plan")
    house.entries = [entry for entry in house.entries if entry["kind"] != "issue"]
    assert joints_of(house) != before  # and without a letter it goes where the plan is best


def test_a_joint_stays_where_a_plan_was_accepted_for_it():
    house = scarfed()
    house.say("setting", of=house.house, name="scarf.place", value="even")
    before = joints_of(house)
    (plan,) = ask_notebook(house.entries, {"ask": "boards_for_room", "room": house.room})["plans"]
    body = plan["accept"]["body"]
    for number, board in enumerate(body["boards"]):
        board["board"] = f"00000000-0000-4000-8000-{number:012x}"
    house.say("plan", [], **body)
    house.say("setting", of=house.house, name="scarf.place", value="plan")
    assert joints_of(house) == before


def test_a_room_of_many_long_walls_tries_no_more_plans_than_it_may(monkeypatch):
    tried = []
    real = joins.plan_boards
    monkeypatch.setattr(joins, "plan_boards", lambda *asked: tried.append(asked) or real(*asked))
    every = {f"{name}__wanted": "yes" for name in ("cap", "shoe", "chair_rail", "crown")}
    stock = {f"{name}__stock": THREE for name in ("cap", "shoe", "chair_rail", "crown")}
    facts = long_room("14 1/2, every 16", **every, **stock)
    for each in facts["walls"]:
        each |= {"length": "220", "studs": "14 1/2, every 16"}
    assert len(ask("pieces", facts)["pieces"]) > 30
    assert 20 < len(tried) <= joins.PLANS_AT_MOST
