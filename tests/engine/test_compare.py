"""Rooms compared: counts that the survey, the cut list, the boards and the receipts of each room say by themselves."""

from scantling.engine.desk import Desk

from tests.cut_lists import ask, issue, mark
from tests.engine.test_living_plan import STOCK
from tests.entries import four_walls


def test_each_room_is_told_by_what_its_own_lists_say():
    house = four_walls()
    house.say("setting", of=house.house, name="base.stock", value=STOCK)
    issue(house, house.room)
    mark(house, house.room, "A", "cut")
    mark(house, house.room, "B", "cut")
    mark(house, house.room, "B", "fitted")
    other = "0000000f-0000-4000-8000-000000000001"
    house.say("room", room=other, house=house.house, name="Attic", closed=False)
    house.say("lot", lot="0000000e-0000-4000-8000-000000000001", of=house.room, article=None, name="caulk", count="2",
              price="9.50", date="", note="")  # fmt: skip
    rooms = {one["id"]: one for one in ask(house.entries, {"ask": "compare", "house": house.house})["rooms"]}
    told, empty = rooms[house.room], rooms[other]

    spent = ask(house.entries, {"ask": "spent", "house": house.house})
    plans = ask(house.entries, {"ask": "boards_for_room", "room": house.room})["plans"]
    needs = ask(house.entries, {"ask": "needs", "room": house.room})["needs"]
    assert (told["to_cut"], told["cut"], told["fitted"]) == (2, 1, 1)
    assert told["boards"] == sum(line["count"] for plan in plans for line in plan["buy"])
    assert (told["planned"], told["spent"]) == (spent["rooms"][0]["planned"], "9.50")
    assert (told["walls"], told["read"], told["wanted"]) == (4, 8, len(needs))
    assert told["doubts"] == 0
    assert (empty["closed"], empty["read"], empty["to_cut"], empty["planned"]) == (False, 0, 0, "0.00")


def test_a_house_that_is_not_there_is_refused():
    assert "error" in Desk(four_walls().entries).answer({"ask": "compare", "house": "nowhere"})
