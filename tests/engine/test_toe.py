"""Toe kicks: what runs below a cabinet, and how far base and shoe beside it go. Figures worked by hand beside them."""

import re

import pytest
from scantling.engine.desk import Desk

from tests.entries import four_walls
from tests.rooms import Facts, ask, room, thing, wall

TOE = {"toe__height": "4", "toe__depth": "3"}


def corner(**standard: str) -> Facts:
    """Walls 120 / 100 / 120 / 100; in the first one's right corner a cabinet 36 wide, 24 deep and 34 1/2 high."""
    cabinet = thing("cabinet", "84", "36", "stops", name="c", depth="24", height="34 1/2")
    return room(wall("w1", "120", things=[cabinet]), wall("w2", "100"), wall("w3", "120"), wall("w4", "100"),
                **standard)  # fmt: skip


def backs(facts: Facts) -> dict[str, str]:
    return {piece["part_name"]: piece["back"]["shown"] for piece in ask("pieces", facts)["pieces"]}


def test_without_a_toe_kick_nothing_runs_below_and_all_stops_at_the_face():
    found = backs(corner(shoe__wanted="yes"))
    assert (found["base, wall 2"], "base of the toe kick, wall 1, cabinet" in found) == ('76"', False)  # 100 − 24


def test_base_higher_than_the_toe_kick_stops_at_the_face_and_shoe_goes_on_below():
    # Base of 5 1/2 stops at 24. The shoe of 3/4 goes 3 farther, to 21; at its other end it begins at the base's face.
    found = backs(corner(shoe__wanted="yes", **TOE))
    assert found["base, wall 2"] == '76"'
    assert found["shoe, wall 2"] == '78 7/16"'  # 100 − 21 − 9/16


def test_base_lower_than_the_toe_kick_goes_on_to_what_is_set_back():
    assert backs(corner(base__height="3 1/2", **TOE))["base, wall 2"] == '79"'  # 100 − (24 − 3)


def test_below_the_cabinet_run_base_ripped_to_the_toe_kick_and_shoe():
    pieces = {piece["part_name"]: piece for piece in ask("pieces", corner(shoe__wanted="yes", **TOE))["pieces"]}
    base, shoe = (pieces[f"{kind} of the toe kick, wall 1, cabinet"] for kind in ("base", "shoe"))
    assert (base["cut"]["shown"], shoe["cut"]["shown"], base["profile"]) == ('36"', '36"', "base 9/16 × 5 1/2")
    assert [flag["message"] for flag in base["flags"]] == ['Rip it to 4", the height of the toe kick.']
    assert shoe["flags"] == [] or "Rip" not in shoe["flags"][0]["message"]


def test_only_cabinets_have_the_houses_toe_kick_and_any_thing_one_of_its_own():
    facts = corner(**TOE)
    facts["walls"][0]["obstacles"][0]["kind"] = "tub"
    assert not any("toe kick" in name for name in backs(facts))
    facts["walls"][0]["obstacles"][0]["settings"] = {"toe.height": "3 1/2"}
    assert any("toe kick" in name for name in backs(facts))
    cabinet = corner(**TOE)
    cabinet["walls"][0]["obstacles"][0]["settings"] = {"toe.height": "none"}
    assert not any("toe kick" in name for name in backs(cabinet))


def test_a_toe_kick_said_of_one_thing_of_the_notebook_is_its_own():
    house = four_walls()
    tub = house.new("obstacle", wall=house.walls[0], kind="tub", base="stops")
    for what, text in (("at", "84"), ("width", "36"), ("depth", "24"), ("height", "20")):
        house.read(tub, what, text)
    for name, value in (("toe.height", "4"), ("toe.depth", "3")):
        house.say("setting", of=tub, name=name, value=value)
    found = Desk(house.entries).answer({"ask": "pieces", "room": house.room})["answer"]["pieces"]
    assert "base of the toe kick, wall 1, tub" in {piece["part_name"] for piece in found}


def test_a_toe_kick_that_its_cabinet_cannot_have_is_a_problem_on_its_wall_and_the_rest_answers():
    for name, value, key in (("toe__height", "36", "toe-too-high"), ("toe__depth", "24", "toe-too-deep")):
        answered = ask("pieces", corner(**{**TOE, name: value}))
        ((wall_of, told, message),) = [(one["wall"], one["key"], one["message"]) for one in answered["problems"]]
        assert (wall_of, told, message.partition(": ")[2]) == ("w1", key, "read one again.")
        assert any(piece["part_name"] == "base, wall 2" for piece in answered["pieces"])


def test_the_room_is_drawn_with_them():
    facts = corner(shoe__wanted="yes", **TOE)
    assert "<svg" in ask("plan", facts)["drawing"]
    assert "<svg" in ask("elevation", facts, wall="w1")["drawing"]
    for piece in ask("pieces", facts)["pieces"]:
        assert "<svg" in ask("drawn", facts, piece=piece["key"])["hanging"]


def boxes(drawing: str) -> list[list[tuple[float, float]]]:
    """Of a wall from in front, the lettered boards, each as its corners."""
    found = re.findall(r'<polygon[^>]*points="([^"]*)"[^>]*data-letters', drawing)
    return [[tuple(map(float, point.split(","))) for point in one.split()] for one in found]


def test_the_strips_below_a_cabinet_are_drawn_below_it_and_no_higher_than_its_toe_kick():
    plain = boxes(ask("elevation", corner(shoe__wanted="yes"), wall="w1")["drawing"])
    drawn = boxes(ask("elevation", corner(shoe__wanted="yes", **TOE), wall="w1")["drawing"])
    strips = [one for one in drawn if one not in plain]
    assert len(drawn) == len(plain) + 2
    base, shoe = sorted(strips, key=lambda one: min(y for _, y in one))
    across = [(max(x for x, _ in one) - min(x for x, _ in one)) for one in (base, shoe)]
    tall = [(max(y for _, y in one) - min(y for _, y in one)) for one in (base, shoe)]
    # 36 across and 4 up, 36 and 3/4: one scale for both.
    assert across[0] == pytest.approx(across[1])
    assert across[0] / tall[0] == pytest.approx(9, rel=0.01)
    assert tall[0] / tall[1] == pytest.approx(16 / 3, rel=0.05)
