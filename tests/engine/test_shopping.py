"""One list of all that a room wants bought: what is on hand is not bought again, what is ticked off is remembered."""

from typing import Any

import pytest
from scantling.engine.desk import Desk
from scantling.engine.questions.shopping.supplies import PREFIX_OF, say_packages
from scantling.engine.shown.shown_in import SHOWN_IN, showing
from scantling.engine.supplies.sundries import SUNDRIES

from tests.covered import PAINT, PAPER, article, ask, cover, lot, walls, write
from tests.entries import House, four_walls

STOCK = [{"length": "12 ft", "price": "15.60", "limit": None}]


@pytest.fixture
def house() -> House:
    """A room of 120, 96, 120, 96, each 96 high, its base out of 12 ft boards."""
    house = four_walls()
    write(house, house.house, {"casing.wanted": "no", "base.stock": STOCK, "caulk.price": "5.40"})
    for wall in house.walls:
        house.read(wall, "height", "96")
    return house


def goods(house: House, **about: Any) -> dict[str, dict[str, Any]]:
    return {good["name"]: good for good in ask(house, "shopping", **about)["goods"]}


def lines(good: dict[str, Any]) -> list[tuple[str, str | None]]:
    return [(line["words"], line["cost"]) for line in good["lines"]]


def papered(house: House, room: str | None = None, wall: str | None = None) -> tuple[str, str]:
    known = [one["id"] for one in ask(house, "coverings")["articles"]]
    paper = known[0] if known else article(house, "paper", "fern", PAPER)
    return paper, cover(house, paper, {"cover.walls": walls(wall or house.walls[0]), "cover.height": "96"}, room)


def other_room(house: House) -> tuple[str, str]:
    """A second room with one wall of 120."""
    room = house.new("room", house=house.house, name="pantry", closed=False)
    wall = house.new("wall", room=room, after=None, turn="inside")
    house.read(wall, "length", "120")
    return room, wall


def test_boards_coverings_and_supplies_stand_on_one_list_with_what_they_come_to(house):
    papered(house)
    found = ask(house, "shopping")
    by_name = {good["name"]: good for good in found["goods"]}
    assert [good["sort"] for good in found["goods"]][:2] == ["boards", "paper"]
    # Base: 120, 120, 96, 96 out of boards of 144: four. Paper: two rolls at 40. One tube at 5.40.
    assert lines(by_name["base 9/16 × 5 1/2"]) == [("4 of 12 ft", "62.40")]
    assert lines(by_name["fern"]) == [("2 rolls", "80.00")]
    assert lines(by_name["caulk"]) == [("1 tube", "5.40")]
    assert found["total"] == "147.80"
    assert {'nails 2"', "filler", "paste"} <= set(found["unpriced"])
    assert by_name["paste"]["need"] == "1 gallon"


def test_boards_bought_from_the_list_stand_in_the_plan_and_are_not_bought_again(house):
    base = goods(house)["base 9/16 × 5 1/2"]
    (line,) = base["lines"]
    assert line["boards"] == [0, 1, 2, 3]
    body = base["accept"]["body"]
    named = [{**row, "board": f"{place:08x}-0000-4000-8000-000000000000"} for place, row in enumerate(body["boards"])]
    for place in line["boards"][:3]:
        named[place]["bought"] = True
    house.say("plan", **{**body, "boards": named})
    bought = goods(house)["base 9/16 × 5 1/2"]
    assert bought["here"] == "3 of 12 ft"
    assert [(one["words"], one["boards"]) for one in bought["lines"]] == [("1 of 12 ft", [3])]


def test_what_is_on_hand_is_not_bought_again(house):
    paper, _ = papered(house)
    lot(house, house.house, 1, article=paper)
    assert (lines(goods(house)["fern"]), goods(house)["fern"]["here"]) == ([("1 roll", "40.00")], "1 roll")
    lot(house, house.room, 1, article=paper, price="41.00")
    assert (lines(goods(house)["fern"]), goods(house)["fern"]["here"]) == ([], "2 rolls")
    lot(house, house.house, 3, name="Caulk")
    assert lines(goods(house)["caulk"]) == []


def test_another_room_lends_only_what_it_does_not_want_itself(house):
    paper, _ = papered(house)
    room, wall = other_room(house)
    lot(house, room, 3, article=paper)
    assert lines(goods(house)["fern"]) == []  # nothing in the other room is papered
    over = papered(house, room, wall)[1]
    assert lines(goods(house)["fern"]) == [("1 roll", "40.00")]  # two of its three are for itself
    house.say("strike", entry=next(e["id"] for e in house.entries if e["body"].get("covering") == over), why="not now")
    assert lines(goods(house)["fern"]) == []


def test_two_walls_of_one_paint_are_painted_out_of_the_same_cans(house):
    paint = article(house, "paint", "oat", PAINT)
    both = [cover(house, paint, {"cover.walls": walls(wall)}) for wall in house.walls[:2]]
    # 80 and 64 sq ft, two coats at 350: 0.46 and 0.37 gal, each by itself two quarts at 15; together 0.82, a gallon.
    assert [ask(house, "covering", covering=one)["cost"] for one in both] == ["30.00", "30.00"]
    assert lines(goods(house)["oat"]) == [("1 of 1 gal", "40.00")]
    lot(house, house.house, 2, article=paint, name="1 qt")
    assert (lines(goods(house)["oat"]), goods(house)["oat"]["here"]) == ([("2 of 1 qt", "30.00")], "0.50 gal")
    lot(house, house.room, 1, article=paint, name="1 gal", price="40.00")
    assert lines(goods(house)["oat"]) == []


def test_paint_without_a_price_is_wanted_all_the_same(house):
    paint = article(house, "paint", "oat", {**PAINT, "paint.cans": [{"size": "1 gal"}]})
    cover(house, paint, {})
    found = ask(house, "shopping")
    assert lines(goods(house)["oat"]) == [("1.65 gal", None)]
    assert "oat" in found["unpriced"]


def test_a_line_that_is_ticked_off_says_what_it_was_where_that_has_changed(house):
    (line,) = goods(house)["base 9/16 × 5 1/2"]["lines"]
    house.say("tick", of=house.room, list="supplies", key=line["key"], state="bought", remember=line["words"])
    (ticked,) = goods(house)["base 9/16 × 5 1/2"]["lines"]
    assert (ticked["state"], ticked["changed"]) == ("bought", "")
    house.wall("100")
    (ticked,) = goods(house)["base 9/16 × 5 1/2"]["lines"]
    assert ticked["changed"] == "Ticked off as 4 of 12 ft, and now it is 5 of 12 ft."


def test_boards_that_are_bought_are_off_the_list_and_the_list_agrees_with_the_plan(house):
    (plan,) = ask(house, "boards_for_room")["plans"]
    boards = [{**board, "board": f"0000000b-0000-4000-8000-{place:012x}", "bought": place < 3}
              for place, board in enumerate(plan["accept"]["body"]["boards"])]  # fmt: skip
    house.say("plan", **{**plan["accept"]["body"], "boards": boards})
    assert lines(goods(house)["base 9/16 × 5 1/2"]) == [("1 of 12 ft", "15.60")]


def test_a_setting_of_the_supplies_counts_at_once_and_a_room_may_differ(house):
    write(house, house.house, {"caulk.size": "1/2"})
    # 432 in of fillet 1/2: 54 cu in, and a tube gives 16.4.
    assert lines(goods(house)["caulk"]) == [("4 tubes", "21.60")]
    write(house, house.room, {"caulk.wanted": "no"})
    assert "caulk" not in goods(house)
    write(house, house.room, {"caulk.shape": "star"})
    (found,) = ask(house, "notebook")["houses"]
    assert (found["settings"]["caulk.size"], found["defaults"]["caulk.size"]) == ("1/2", "1/8")
    assert "caulk.shape" in found["rooms"][0]["setting_errors"]


def test_panels_are_glued_by_beads_up_each_of_them(house):
    sheet = article(house, "sheet", "beadboard", {"sheet.width": "48", "sheet.length": "96"})
    cover(house, sheet, {"cover.sheets": [{"widths": "30", "heights": "32", "count": "3"}]})
    found = goods(house)["adhesive"]
    # Up each edge and no more than 16 in apart: three beads of 32 in on each of three panels, 288 in.
    assert found["working"][0].startswith('beadboard: 288"')


def test_what_is_missing_for_a_plan_is_asked_for(house):
    cover(house, article(house, "paper", "fern", {}), {})
    write(house, house.room, {"shoe.wanted": "yes"})
    missing = ask(house, "shopping")["missing"]
    assert any(line.startswith("No stock lengths yet for shoe") for line in missing)
    assert "fern: the roll's width, the roll's length." in missing


def test_a_room_that_is_not_there_is_refused_on_every_list():
    for name in ("shopping", "coverings"):
        assert Desk().answer({"ask": name, "room": "none"})["error"]["key"] == "no-such-room"


@pytest.mark.parametrize("lengths", SHOWN_IN)
def test_packages_are_counted_in_the_words_by_which_what_was_ticked_off_is_found(lengths):
    with showing(lengths):
        for name, sundry in SUNDRIES.items():
            assert say_packages(2, PREFIX_OF[name]) == f"2 {sundry.called}s"
