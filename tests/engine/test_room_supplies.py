"""What a room uses up, from its pieces: which edges are caulked, what is nailed with what, and by which settings."""

import pytest
from scantling.engine.questions.supplies.said import DEFAULTS, FIELDS, check_supply

from tests.asked import ask as ask_plainly
from tests.entries import four_walls
from tests.rooms import Facts, ask, oblong, room, thing, wall


def supplies(facts: Facts, **more) -> Facts:
    return ask("supplies", facts, **more)


def nails(found: Facts) -> dict[str, tuple[str, int]]:
    return {box["name"]: (box["length"]["shown"], box["count"]) for box in found["boxes"]}


def test_base_is_caulked_along_its_top_and_nailed_twice_to_each_stud():
    found = supplies(oblong())
    (tube,) = found["tubes"]
    # Two walls of 120 and two of 96, each as its longer edge; 1/128 sq in of bead; a tube holds 18.23 cu in.
    assert tube["name"] == "base to wall"
    assert tube["working"][0].startswith('base to wall: 432"')
    assert tube["count"] == 1
    # 9/16 + 1/2 + 3/4 = 1 13/16, so 2 in; 2 x (floor(120/16) + 1) = 16 and 2 x (96/16 + 1) = 14, twice each.
    assert nails(found) == {"base": ('2"', 60)}
    holes, sheets = found["packages"]
    assert (holes["name"], holes["working"][0][:8]) == ("filler", "60 holes")
    # 432 in x (5 1/2 + 9/16) x 1 1/8 = 2946 sq in, 20.46 sq ft.
    assert (sheets["name"], sheets["working"][0][:11], sheets["count"]) == ("sandpaper", "20.47 sq ft", 2)


def test_a_door_is_nailed_to_its_jamb_and_to_the_stud_behind_the_board():
    facts = oblong(thing("door", "20", "30", left="80", right="80"), casing__wanted="yes", base__wanted="no")
    found = nails(supplies(facts))
    # 11/16 + 1/2 + 3/4 = 1 15/16; 11/16 + 3/4 = 1 7/16. Legs of about 82 in get six, the head of about 35 three.
    assert found == {"casing, outer edge": ('2"', 15), "casing, inner edge": ('1 1/2"', 15)}
    (two, one_and_a_half) = reversed(supplies(facts)["nails"])
    assert (two["count"], one_and_a_half["count"]) == (15, 15)


def test_a_cap_is_caulked_in_the_bases_stead_and_the_shoe_is_nailed_into_it():
    found = supplies(oblong(cap__wanted="yes", shoe__wanted="yes"))
    assert [tube["name"] for tube in found["tubes"]] == ["base cap to wall"]
    # Cap 1/2 + 1/2 + 3/4 to the stud; shoe 1/2 + 3/4 into the base, which no cable is behind.
    assert {name: length for name, (length, _) in nails(found).items()} == {
        "base": '2"', "base cap": '1 3/4"', "shoe": '1 1/4"',
    }  # fmt: skip


def test_nails_of_one_length_come_out_of_the_same_boxes_whatever_they_hold():
    boxes = [{"length": "2", "count": 40, "price": "4.50"}, {"length": "1 1/2", "count": 100, "price": "3.00"}]
    door = thing("door", "20", "30", left="80", right="80")
    found = supplies(oblong(door, casing__wanted="yes", nail__boxes=boxes))
    two = next(one for one in found["nails"] if one["length"]["shown"] == '2"')
    assert two["names"] == "casing, outer edge, base"
    # 15 for the casing; base beside the door about 17 1/2 and 67 1/2 long, 4 and 10; 16 and twice 14 for the rest.
    assert (two["count"], two["boxes"], two["cost"]) == (73, 2, "9.00")
    assert two["working"][-1] == "⌈73 ÷ 40 in a box⌉ = 2"


def test_a_box_too_short_for_what_it_must_hold_is_named_and_the_rest_is_counted():
    found = supplies(oblong(nail__boxes=[{"length": "1", "count": 100}]))
    assert [(one["what"], one["key"]) for one in found["problems"]] == [("fasteners", "no-length")]
    assert found["tubes"][0]["count"] == 1


def test_plaster_on_lath_takes_a_longer_nail_and_none_at_all_a_shorter():
    assert nails(supplies(oblong(nail__board="7/8")))["base"][0] == '2 1/4"'
    assert nails(supplies(oblong(nail__board="0")))["base"][0] == '1 1/2"'


def test_a_nail_that_reaches_too_far_into_the_stud_is_told_of():
    boxes = [{"length": "2 1/2", "count": 100}]
    (base,) = supplies(oblong(nail__boxes=boxes))["boxes"]
    # 2 1/2 - 9/16 - 1/2 = 1 7/16, past the 1 1/4 at which a cable may lie: trade knowledge, section 1.8.
    assert (base["bite"]["shown"], base["deep"]) == ('1 7/16"', True)
    assert "cable" in base["warnings"][0]


def test_what_is_not_wanted_is_not_counted():
    found = supplies(oblong(caulk__wanted="no", nail__wanted="no", sandpaper__wanted="no"))
    assert (found["tubes"], found["boxes"], found["packages"]) == ([], [], [])


def test_what_is_given_beside_a_room_is_counted_with_it():
    tub = {"name": "tub", "length": "15 ft", "shape": "round", "size": "3/8"}
    (tube,) = supplies(oblong(), joints=[tub])["tubes"]
    assert tube["name"] == "tub, base to wall"


def test_a_room_without_pieces_uses_nothing():
    found = supplies(room(wall("a", None), closed=False))
    assert [found[name] for name in ("tubes", "boxes", "nails", "packages", "problems")] == [[], [], [], [], []]


def test_a_setting_that_cannot_be_read_is_named_and_the_usual_stands_in_its_place():
    house = four_walls()
    house.say("setting", of=house.house, name="casing.wanted", value="no")
    house.say("setting", of=house.house, name="nail.board", value="fish")
    house.say("setting", of=house.room, name="nail.apart", value="12")
    from tests.engine.test_notebook import ask as ask_house

    found = ask_house(house, "supplies", room=house.room)
    assert [(one["what"], one["key"]) for one in found["problems"]] == [("nail.board", "unknown-word")]
    # Every 12 in as the room has it: 2 x (10 + 1) = 22 and 2 x (8 + 1) = 18, twice each; 2 in as before.
    assert nails(found) == {"base": ('2"', 80)}


def test_every_default_is_one_that_may_be_said():
    assert [check_supply(name, text) for name, text in DEFAULTS.items()] == [[]] * len(DEFAULTS)
    assert {name for name in FIELDS if not name.endswith((".price", ".boxes"))} == set(DEFAULTS)


@pytest.mark.parametrize(("name", "value"), [("caulk.size", "0x"), ("nail.boxes", [{"length": "2"}]), ("filler.covers",
                         "0"), ("tape.price", "dear"), ("paste.wanted", "maybe")])  # fmt: skip
def test_a_setting_that_cannot_be_is_refused_by_its_name(name, value):
    assert [one.field for one in check_supply(name, value)] == [name]


def test_a_setting_of_the_supplies_is_no_strange_name_in_a_room():
    assert ask("pieces", oblong(caulk__size="3/16"))["warnings"] == []
    assert ask_plainly("pieces", room=oblong(caulks__size="3/16"))["warnings"] != []
