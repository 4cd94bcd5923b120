"""What a real job asks besides: grain that runs on, sticks as thick as they are, blocking behind crown."""

import math

import pytest

from tests.rooms import Facts, ask, by_wall, inches, joints, oblong, pieces, room, thing, wall

DOOR = thing("door", "40", "30", left="80", right="80")


def of_part(facts: Facts, part: str) -> list[Facts]:
    return [piece for piece in pieces(facts) if piece["part"] == part]


# ---- grain -----------------------------------------------------------------------------------------------------------


def cut_in_order(**standard: object) -> list[list[str]]:
    stock = [{"length": "40 ft", "price": "40"}]
    facts = oblong(DOOR, casing__wanted="yes", base__stock=stock, casing__stock=stock, **standard)
    names = {piece["letter"]: piece["part_name"] for piece in pieces(facts)}
    plans = ask("boards_for_room", facts)["plans"]
    return [[names[piece["letter"]] for piece in board["pieces"]] for plan in plans for board in plan["boards"]]


def test_for_stain_the_pieces_of_a_board_are_cut_as_they_hang_round_the_opening_and_along_the_walls():
    casing, base = cut_in_order(grain__order="yes")

    assert [name.split(",")[0] for name in casing] == ["left leg", "head", "right leg"]
    assert base == [
        "base, wall 1, left of the door", "base, wall 1, right of the door", "base, wall 2", "base, wall 3",
        "base, wall 4",
    ]  # fmt: skip


def test_otherwise_they_are_cut_as_the_saw_is_set_least_often():
    assert cut_in_order()[1] != cut_in_order(grain__order="yes")[1]


# ---- the stick in the hand -------------------------------------------------------------------------------------------


def two_walls(**settings: str) -> Facts:
    """Two walls round an outside corner of 90, base 9/16 on both, the second's found to be something else."""
    facts = room(wall("w1", "40", "outside"), wall("w2", "30"), closed=False)
    facts["walls"][1]["settings"] = settings
    return facts


def test_a_thicker_stick_round_an_outside_corner_makes_the_other_board_s_face_as_much_longer():
    # At 90 the miter gives each board's face the other's thickness: 17/32 for wall 1, 9/16 for wall 2.
    found = by_wall(two_walls(**{"stick.base": "17/32"}))

    assert inches(found["w1"]["front"]) == 40 + 17 / 32
    assert inches(found["w2"]["front"]) == 30 + 9 / 16
    saw = math.degrees(math.atan((17 / 32) / (9 / 16)))
    assert (found["w1"]["right"]["saw"], found["w2"]["left"]["saw"]) == pytest.approx((saw, 90 - saw), abs=1e-4)


def test_it_is_bought_as_the_same_profile_and_without_it_nothing_changes():
    assert {piece["profile"] for piece in pieces(two_walls(**{"stick.base": "17/32"}))} == {"base 9/16 × 5 1/2"}
    assert pieces(two_walls(**{"stick.base": ""})) == pieces(two_walls())


def test_a_piece_says_by_which_setting_of_its_wall_its_stick_is_told():
    sticks = [piece["stick"] for piece in pieces(two_walls(**{"stick.base": "17/32"}))]

    assert sorted((one["of"], one["name"], one["value"], one["words"]) for one in sticks) == [
        ("w1", "stick.base", "", "Base on wall 1, thickness"),
        ("w2", "stick.base", "17/32", "Base on wall 2, thickness"),
    ]  # fmt: skip
    crown = of_part(oblong(crown__wanted="yes"), "crown")
    assert [piece["stick"] for piece in crown] == [None] * 4


def test_a_cope_reaches_to_the_face_of_the_stick_that_is_up():
    facts = oblong(thing("door", "30", "30 1/8"))
    facts["walls"][2]["settings"] = {"stick.base": "5/8"}  # wall 3 runs through, 2 and 4 are coped to it
    found = {piece["wall"]: piece for piece in pieces(facts)}

    assert joints(found["w2"]) == ("square", "cope")
    assert inches(found["w2"]["front"]) == 96 - 5 / 8


def test_shoe_lies_on_the_face_of_the_stick_behind_it():
    # Between two walls that run through, each 9/16, a shoe is shorter by both; one found 5/8 takes 1/16 more.
    def shoe(**settings: str) -> float:
        facts = oblong(shoe__wanted="yes")
        facts["walls"][0]["settings"] = settings
        return inches(next(one for one in pieces(facts) if one["part"] == "shoe" and one["wall"] == "w2")["back"])

    assert shoe() - shoe(**{"stick.base": "5/8"}) == 1 / 16


@pytest.mark.parametrize("text", ["thick", "0", "4", "1/128"])
def test_what_is_no_thickness_is_a_problem_of_its_wall_and_the_standard_s_counts(text):
    answered = ask("pieces", two_walls(**{"stick.base": text}))

    assert [(one["key"], one["wall"]) for one in answered["problems"]] == [("no-thickness", "w2")]
    assert inches(answered["pieces"][0]["front"]) == pytest.approx(40 + 9 / 16)


# ---- blocking --------------------------------------------------------------------------------------------------------


def test_blocking_is_a_triangle_a_little_behind_the_crown_and_goes_up_before_it():
    # 3 5/8 at 38: 2.8565 down, 2.2318 out, the back 3.625 sin 38 cos 38 = 1.7586 from the corner; 1/4 behind it is
    # 1.5086 away, 0.85784 of that: 2.4505 and 1.9145. It stops 2.2318 short of each end of 96.
    facts = oblong(crown__wanted="yes", blocking__wanted="yes")
    found = pieces(facts)
    names = [piece["part"] for piece in found]
    strip = next(piece for piece in found if piece["part"] == "crown blocking" and piece["wall"] == "w2")

    assert names.index("crown") == names.count("crown blocking") == 4
    assert inches(strip["back"]) == pytest.approx(96 - 2 * 2.231773, abs=1e-5)
    assert 'Rip it to a triangle, 2 29/64" down the wall by 1 59/64" along the ceiling' in strip["flags"][0]["message"]
    assert "leaves the wall at 38°" in strip["flags"][0]["message"]


def test_there_is_no_blocking_unless_it_is_wanted_or_where_no_room_is_for_it():
    assert not of_part(oblong(crown__wanted="yes"), "crown blocking")
    assert not of_part(oblong(blocking__wanted="yes"), "crown blocking")
    assert not of_part(oblong(crown__wanted="yes", blocking__wanted="yes", blocking__gap="1 3/4"), "crown blocking")[4:]
    assert not of_part(oblong(crown__wanted="yes", blocking__wanted="yes", blocking__gap="1 7/8"), "crown blocking")


# ---- the rake of a stair ---------------------------------------------------------------------------------------------


def stairs(rises: str, **standard: object) -> Facts:
    """A wall of 200 with the skirt of a stair of 36 degrees from 80 to 150 along it."""
    skirt = thing("stair skirt", "80", "70", "stops", settings={"thing.rake": "36", "thing.rises": rises})
    return room(wall("w1", "200", things=[skirt]), closed=False, **standard)


def test_base_meets_a_stair_skirt_at_half_its_rake_shorter_at_the_top_below_and_longer_above():
    # tan 18 = 0.324920; 5 1/2 of it 1.787058. Below, the foot is the longer edge, 80; above, the top: 50 and 1.787058.
    below, above = pieces(stairs("right"))

    assert inches(below["back"]) == 80
    assert inches(above["back"]) == pytest.approx(50 + 1.787058, abs=1e-6)
    assert (below["right"]["bevel"], above["left"]["bevel"]) == (18, 18)
    assert [flag["message"] for flag in below["flags"]] == [
        'Its right meets the stair skirt at half its rake: lean the blade 18°, 1 25/32" longer at the foot than at the'
        ' top.',
    ]  # fmt: skip
    assert "longer at the top than at the foot" in above["flags"][0]["message"]


def test_stairs_that_rise_to_the_left_are_met_the_other_way_about():
    above, below = pieces(stairs("left"))

    assert (inches(above["back"]), inches(below["back"])) == (pytest.approx(80 + 1.787058, abs=1e-6), 50)


def test_cap_goes_on_in_the_line_of_the_base_s_joint():
    # Below, the cap's lower edge is 5 1/2 up: 1.787058 less than the base's foot. Above, its top is 5 1/2 and 1 1/8 up.
    caps = [inches(piece["back"]) for piece in of_part(stairs("right", cap__wanted="yes"), "base cap")]

    assert caps == pytest.approx([80 - 1.787058, 50 + 1.787058 + 1.125 * 0.324920], abs=1e-5)


def test_a_skirt_whose_rake_is_not_said_is_met_square_and_a_rake_that_is_none_is_refused():
    facts = stairs("right")
    facts["walls"][0]["obstacles"][0]["settings"] = {}
    assert [inches(piece["back"]) for piece in pieces(facts)] == [80, 50]
    facts["walls"][0]["obstacles"][0]["settings"] = {"thing.rake": "75"}
    assert "no-rake" in [one["key"] for one in ask("pieces", facts)["problems"]]
