"""Moldings by example: shoe, cap, rails, crown and returns, the reckoning beside each."""

import math

import pytest

from tests.rooms import Facts, ask, inches, joints, oblong, room, thing, wall

BASE, SHOE = 9 / 16, 1 / 2


def of_part(facts: Facts, part: str) -> list[Facts]:
    return [piece for piece in ask("pieces", facts)["pieces"] if piece["part"] == part]


def by_name(facts: Facts, part: str) -> dict[str, Facts]:
    return {piece["part_name"].removeprefix(f"{part}, "): piece for piece in of_part(facts, part)}


def flags(piece: Facts) -> dict[str, str]:
    return {flag["key"]: flag["message"] for flag in piece["flags"]}


def test_only_base_and_casing_are_wanted_until_a_person_asks_for_more():
    parts = {piece["part"] for piece in ask("pieces", oblong())["pieces"]}
    assert parts == {"base"}


def test_pieces_come_from_the_ceiling_down_with_casing_before_what_dies_into_it():
    door = thing("door", "30", "30", left="80", right="80")
    every = {f"{name}__wanted": "yes" for name in ("cap", "shoe", "chair_rail", "picture_rail", "crown", "casing")}
    parts = [piece["part"] for piece in ask("pieces", oblong(door, **every))["pieces"]]
    assert list(dict.fromkeys(parts)) == [
        "crown", "picture rail", "left leg", "right leg", "head", "chair rail", "base", "base cap", "shoe",
    ]  # fmt: skip


def test_the_back_of_a_shoe_is_as_long_as_the_face_of_the_base_it_lies_on():
    # 120 between two inside corners of 90: the base's face line is 120 - 2 * 9/16 = 118 7/8. Coped once, the shoe's
    # own face is 1/2 shorter.
    found = by_name(oblong(thing("door", "30", "30 1/8"), shoe__wanted="yes"), "shoe")
    assert inches(found["wall 3"]["back"]) == 120 - 2 * BASE
    assert joints(found["wall 3"]) == ("square", "square")
    assert inches(found["wall 2"]["back"]) == 96 - 2 * BASE
    assert inches(found["wall 2"]["front"]) == 96 - 2 * BASE - SHOE


def test_round_an_outside_corner_a_shoe_is_longer_by_what_the_base_gives():
    # Breast of 40: base face 40 + 2 * 9/16 = 41 1/8, which is the shoe's back; its face 1/2 longer at each end.
    facts = room(
        wall("w1", "30"), wall("w2", "15", "outside"), wall("w3", "40", "outside"), wall("w4", "15"), wall("w5", "30"),
        closed=False, shoe__wanted="yes",
    )  # fmt: skip
    found = by_name(facts, "shoe")
    assert inches(found["wall 3"]["back"]) == 41.125
    assert inches(found["wall 3"]["front"]) == 42.125
    # The return of 15: inside corner takes 9/16, outside corner gives 9/16.
    assert inches(found["wall 2"]["back"]) == 15


def test_without_base_a_shoe_lies_on_the_wall():
    found = by_name(oblong(shoe__wanted="yes", base__wanted="no"), "shoe")
    assert inches(found["wall 3"]["back"]) == 120


def test_a_shoe_that_stands_out_past_the_casing_is_eased_back_to_it_by_a_figure():
    # 9/16 + 1/2 - 11/16 = 3/8.
    found = by_name(oblong(thing("door", "30", "30 1/8"), shoe__wanted="yes"), "shoe")
    assert flags(found["wall 1, left of the door"])["proud"] == (
        'It stands 3/8" out past the casing: ease its right end back to it.'
    )


def test_a_shoe_may_be_returned_at_casing_instead():
    # The run along the base: 30 - 3/16 - 2 1/4 - 9/16 (the corner) = 27; the back stops 1/2 short, the face reaches it.
    facts = oblong(thing("door", "30", "30 1/8"), shoe__wanted="yes", proud_end="returned")
    piece = by_name(facts, "shoe")["wall 1, left of the door"]
    assert (piece["right"]["joint"], piece["right"]["saw"], piece["right"]["long_edge"]) == ("return", 45, "front")
    assert inches(piece["back"]) == 26.5
    # Coped at its left end, the face loses 1/2 there and gains 1/2 here.
    assert inches(piece["front"]) == 26.5
    returns = of_part(facts, "shoe return")
    assert len(returns) == 2
    assert {(inches(one["back"]), inches(one["front"])) for one in returns} == {(0, 0.5)}


def test_a_shoe_is_returned_on_both_sides_of_what_the_base_goes_over():
    register = thing("register", "40", "12", "over")
    found = by_name(oblong(register, shoe__wanted="yes"), "shoe")
    left, right = found["wall 1, left of the register"], found["wall 1, right of the register"]
    # 40 - 9/16 to the face's long point, the back 1/2 shorter; at the other side 120 - 52 - 9/16 - 1/2.
    assert inches(left["back"]) == 40 - BASE - SHOE
    assert left["right"]["joint"] == right["left"]["joint"] == "return"
    assert inches(right["back"]) == 68 - BASE - SHOE
    hands = {one["part_name"]: joints(one) for one in of_part(oblong(register, shoe__wanted="yes"), "shoe return")}
    assert hands == {
        "shoe return, wall 1, left of the register, right end": ("return", "square"),
        "shoe return, wall 1, right of the register, left end": ("square", "return"),
    }


def test_a_cap_runs_along_the_wall_like_the_base_under_it():
    found = by_name(oblong(cap__wanted="yes", cap__thickness="3/8"), "base cap")
    assert inches(found["wall 3"]["back"]) == 120
    assert inches(found["wall 2"]["front"]) == 96 - 3 / 8


def test_a_chair_rail_stops_at_windows_too_and_only_at_what_is_as_tall():
    # Window from 38 to 68; its casing with reveal takes 2 7/16 on both sides.
    things = (
        thing("window", "38", "30"), thing("bench", "2", "20", "stops", height="18"),
        thing("cabinet", "90", "20", "stops", height="72"),
    )  # fmt: skip
    found = by_name(oblong(*things, chair_rail__wanted="yes"), "chair rail")
    assert set(found) == {
        "wall 1, left of the window", "wall 1, between the window and the cabinet", "wall 1, right of the cabinet",
        "wall 2", "wall 3", "wall 4",
    }  # fmt: skip
    assert inches(found["wall 1, left of the window"]["back"]) == 38 - 2.4375
    assert inches(found["wall 1, between the window and the cabinet"]["back"]) == 90 - 68 - 2.4375


def test_a_chair_rail_waits_for_the_height_of_what_stands_in_its_way():
    facts = oblong(thing("cabinet", "90", "20", "stops"), chair_rail__wanted="yes")
    assert not [name for name in by_name(facts, "chair rail") if name.startswith("wall 1")]
    assert [(one["what"], one["title"]) for one in ask("needs", facts)["needs"]] == [
        ("height", "wall 1, cabinet, how tall")
    ]


def test_nothing_breaks_a_picture_rail_but_what_was_read_to_be_as_tall():
    things = (thing("door", "10", "30"), thing("cabinet", "60", "20", "stops"))
    assert len(of_part(oblong(*things, picture_rail__wanted="yes"), "picture rail")) == 4
    tall = (things[0], thing("cabinet", "60", "20", "stops", height="96"))
    assert len(of_part(oblong(*tall, picture_rail__wanted="yes"), "picture rail")) == 5


def test_crown_is_broken_only_by_what_reaches_into_it():
    # 3 5/8 at a spring of 38 comes 3.625 * cos 38 = 2.857 down the wall.
    cabinet = thing("cabinet", "60", "20", "stops", height="93 1/2")
    facts = oblong(cabinet, crown__wanted="yes")
    facts["walls"][0]["height"] = "96"
    assert len(of_part(facts, "crown")) == 5
    facts["walls"][0]["height"] = "97"
    assert len(of_part(facts, "crown")) == 4


def test_crown_is_as_long_at_the_wall_as_the_wall_and_its_ceiling_edge_follows():
    # Projection 3.625 * sin 38 = 2.231773; coped at one inside corner of 90 the ceiling edge is shorter by that.
    projection = 3.625 * math.sin(math.radians(38))
    found = by_name(oblong(thing("door", "30", "30"), crown__wanted="yes"), "crown")
    piece = found["wall 2"]
    assert piece["edges"] == ["wall edge", "ceiling edge"]
    assert inches(piece["back"]) == 96
    assert inches(piece["front"]) == pytest.approx(96 - projection, abs=2e-6)
    assert piece["cut_from"] == "along the wall edge"
    end = piece["right"]
    assert (end["joint"], end["saw_shown"], end["bevel_shown"], end["nested_shown"]) == (
        "cope",
        "31.6°",
        "33.9°",
        "45°",
    )
    assert end["shown"] == "cope, 31.6° with bevel 33.9°"
    # The last one up is over the door, where one does not see it on coming in.
    assert [one["wall"] for one in of_part(oblong(thing("door", "30", "30"), crown__wanted="yes"), "crown")] == [
        "w3", "w4", "w2", "w1",
    ]  # fmt: skip


def test_crown_goes_by_the_ceiling_where_it_was_read_there():
    facts = oblong(crown__wanted="yes")
    facts["walls"][2]["ceiling"] = "119 5/8"
    assert inches(by_name(facts, "crown")["wall 3"]["back"]) == 119.625
    assert inches(by_name(facts, "base")["wall 3"]["back"]) == 120


def test_an_end_that_does_not_lean_has_no_bevel():
    (piece, *_) = of_part(oblong(), "base")
    assert {(end["bevel"], end["nested"]) for end in (piece["left"], piece["right"])} == {(None, None)}


def test_work_overhead_is_cautioned_of_where_there_is_some_and_only_there():
    assert len(ask("pieces", oblong(crown__wanted="yes"))["cautions"]) == 3
    assert len(ask("pieces", oblong())["cautions"]) == 2


def test_an_open_end_is_returned_where_a_person_says_so():
    # 40 to the face's long point at the open end, the back 9/16 short of it.
    facts = room(wall("w1", "40"), wall("w2", "30"), closed=False, open_end="returned")
    piece = by_name(facts, "base")["wall 1"]
    assert (inches(piece["back"]), inches(piece["front"])) == (40 - BASE, 40)
    assert piece["left"]["shown"] == "return, 45°, long at the face"
    (left, right) = of_part(facts, "base return")
    assert (left["part_name"], joints(left)) == ("base return, wall 1, left end", ("square", "return"))
    assert (right["part_name"], joints(right)) == ("base return, wall 2, right end", ("return", "square"))
    assert "glue" in flags(left)


def test_base_that_ends_at_an_outside_corner_with_nothing_beyond_is_returned_there():
    # Wall 2 is all door: casing from 0 to 36.
    door = thing("door", "2 7/16", "31 1/8")
    found = by_name(room(wall("w1", "40", "outside"), wall("w2", "36", things=[door]), closed=False), "base")
    assert found["wall 1"]["right"]["joint"] == "return"
    assert (inches(found["wall 1"]["back"]), inches(found["wall 1"]["front"])) == (40 - BASE, 40)


def test_a_thicker_board_is_a_profile_of_its_own():
    facts = room(wall("w1", "50", "outside", meets="3/4"), wall("w2", "36"), closed=False)
    assert {piece["wall"]: piece["profile"] for piece in of_part(facts, "base")} == {
        "w1": "base 9/16 × 5 1/2", "w2": "base 3/4 × 5 1/2",
    }  # fmt: skip
