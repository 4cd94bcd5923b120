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


def test_a_wall_too_short_for_a_molding_is_named_with_the_molding_and_what_there_is():
    # The casing begins 1 1/2 from the corner: less than a thick shoe's miter takes, past the base's 9/16.
    facts = oblong(thing("door", "3 15/16", "30"), shoe__wanted="yes", shoe__thickness="15/16", shoe__inside="miter")
    assert [one["message"] for one in ask("pieces", facts)["problems"]] == [
        'Shoe: between corner 4 and the door is only 15/16" of wall, which its joints take up. Fill it by hand.',
    ]


def test_wall_that_the_next_boards_end_closes_off_is_named_once_for_all_that_runs_there():
    # The casing begins 1/2 from the corner: the base round it, 9/16 thick, stops at the casing's face.
    answered = ask("pieces", oblong(thing("door", "2 15/16", "30"), shoe__wanted="yes"))
    assert [one["message"] for one in answered["problems"]] == [
        'Between corner 4 and the door is only 1/2" of wall, and no board goes there. Fill it by hand.',
    ]


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
    # Coped at both ends, it is a sixteenth long to spring in.
    assert inches(by_name(facts, "crown")["wall 3"]["back"]) == 119.625 + 1 / 16
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
    # One note and one blank for both: 12 to hold, and for each 1/8 of kerf and 9/16.
    assert left["blank"]["shown"] == '13 3/8"'
    assert flags(left)["returns"] == (
        "Glue them: they are too small to nail. Cut both returns of this profile off the end of one blank of "
        '13 3/8" or more.'
    )
    assert (right["blank"], flags(right)) == (None, {})


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


STOCK = [{"length": "8 ft", "price": "1"}]  # 96 less 1/2 trimmed: 95 1/2 usable
DOOR = thing("door", "30", "30 1/8")


def joined(studs: str | list[str] | None, length: str = "120", **standard: object) -> Facts:
    """The base of a wall without openings, door across from it, of 8 ft boards."""
    facts = oblong(DOOR, base__stock=STOCK, **{"scarf__place": "even", **standard})
    facts["walls"][2]["length"] = facts["walls"][0]["length"] = length
    if studs is not None:
        facts["walls"][2]["studs"] = studs
    return facts


def test_a_run_longer_than_any_board_is_scarfed_on_the_stud_that_leaves_the_shortest_board_longest():
    # Studs at 14 1/2, 30 1/2, 46 1/2, 62 1/2 … of 120: joined at 62 1/2 the shorter is 57 1/2, at 46 1/2 but 46 1/2.
    # The lap is 9/16 * tan 30 = 0.324760, half of it 0.162380. The door is across the room, to the left of the walk.
    found = by_name(joined("14 1/2, every 16"), "base")
    left, right = found['wall 3, left of the scarf at 62 1/2"'], found['wall 3, right of the scarf at 62 1/2"']
    half = 0.162380
    assert inches(left["back"]) == pytest.approx(62.5 - half, abs=2e-6)
    assert inches(left["front"]) == inches(left["cut"]) == pytest.approx(62.5 + half, abs=2e-6)
    assert inches(right["back"]) == inches(right["cut"]) == pytest.approx(57.5 + half, abs=2e-6)
    assert inches(right["front"]) == pytest.approx(57.5 - half, abs=2e-6)
    assert (left["right"]["shown"], right["left"]["shown"]) == (
        "scarf, 30°, long at the face", "scarf, 30°, long at the back",
    )  # fmt: skip


def scarfs(facts: Facts, part: str) -> set[str]:
    return {piece["part_name"].rpartition(" at ")[2] for piece in of_part(facts, part) if "scarf" in piece["part_name"]}


STACKED = {"cap__wanted": "yes", "shoe__wanted": "yes", "cap__stock": STOCK, "shoe__stock": STOCK}


def test_base_cap_and_shoe_are_joined_on_studs_of_their_own():
    facts = joined("14 1/2, every 16", **STACKED)
    assert [scarfs(facts, part) for part in ("base", "base cap", "shoe")] == [{'62 1/2"'}, {'46 1/2"'}, {'78 1/2"'}]
    # With one stud for all it is better to join there than not at all.
    assert [scarfs(joined("62 1/2", **STACKED), part) for part in ("base", "base cap", "shoe")] == [{'62 1/2"'}] * 3


def test_joints_may_be_set_where_the_longest_offcut_is_left():
    # At 94 1/2 the shorter board is 25 1/2 and the lap: 95 1/2 less that leaves 69 7/8; at 62 1/2 only 37 7/8.
    assert scarfs(joined("14 1/2, every 16", scarf__place="offcut"), "base") == {'94 1/2"'}


def test_crown_has_the_lines_to_snap_on_wall_and_ceiling_in_its_working():
    # 3 5/8 cos 38 = 2.856539 down the wall, 3 5/8 sin 38 = 2.231773 out along the ceiling.
    last = of_part(oblong(crown__wanted="yes"), "crown")[0]["working"][-1]
    assert last["text"] == (
        'lines to snap: 2 55/64" down the wall from the ceiling, 2 15/64" out along the ceiling'
    )  # fmt: skip


def test_the_board_nearer_the_door_laps_over_and_is_fitted_after_the_one_beyond():
    # Wall 2 is walked to from the door, wall 4 back towards it.
    facts = oblong(DOOR, base__stock=STOCK)
    for place in (1, 3):
        facts["walls"][place] |= {"length": "110", "studs": "55"}
    found = [piece for piece in of_part(facts, "base") if "scarf" in piece["part_name"]]
    over = {piece["part_name"]: piece["right" if "left of" in piece["part_name"] else "left"]["long_edge"]
            for piece in found}  # fmt: skip
    assert over == {
        'base, wall 2, left of the scarf at 55"': "front", 'base, wall 2, right of the scarf at 55"': "back",
        'base, wall 4, left of the scarf at 55"': "back", 'base, wall 4, right of the scarf at 55"': "front",
    }  # fmt: skip
    names = [piece["part_name"] for piece in found]
    for wall_number, near, far in ((2, "left", "right"), (4, "right", "left")):
        lapped, under = (f'base, wall {wall_number}, {side} of the scarf at 55"' for side in (near, far))
        assert names.index(under) < names.index(lapped)


def test_as_many_boards_as_it_takes_and_no_more():
    # 250 of boards of 95 1/2 takes three; studs every 16 from 14 1/2 are at 78 1/2 and 174 1/2, 94 1/2 and 158 1/2 …
    found = [name for name in by_name(joined("14 1/2, every 16", "250"), "base") if name.startswith("wall 3")]
    assert len(found) == 3


@pytest.mark.parametrize(
    "studs", [None, "10", "110", "1, 2, 3"], ids=["unread", "too near a corner", "too near the other", "all too near"]
)
def test_without_a_stud_to_join_on_the_run_stays_whole_and_says_so(studs):
    found = by_name(joined(studs), "base")
    assert inches(found["wall 3"]["back"]) == 120
    assert "longer-than-stock" in flags(found["wall 3"])
    assert ("read where the studs" in flags(found["wall 3"])["longer-than-stock"]) == (studs is None)


def test_studs_are_asked_for_only_where_a_run_is_longer_than_the_boards_on_the_list():
    asked = [(one["of"], one["what"]) for one in ask("needs", joined(None))["needs"]]
    assert asked == [("w2", "studs"), ("w3", "studs"), ("w4", "studs")]
    assert ask("needs", oblong(DOOR))["needs"] == []
    assert ("w3", "studs") not in [(one["of"], one["what"]) for one in ask("needs", joined("62 1/2"))["needs"]]


@pytest.mark.parametrize(
    ("studs", "key"),
    [
        ("every 16", "every-from-what"),
        ("14, every 1", "too-close"),
        ("14, 130", "past-the-end"),
        ("oak", "unknown-word"),
    ],
)
def test_studs_that_cannot_be_are_a_problem_on_their_wall_and_cost_no_other_piece(studs, key):
    answered = ask("pieces", joined(studs))
    (problem,) = answered["problems"]
    assert problem["wall"] == "w3"
    assert problem["key"] == key
    assert len([piece for piece in answered["pieces"] if piece["part"] == "base"]) == 5


def test_a_short_piece_names_the_blank_to_cut_it_from():
    # 12 to hold, 1/8 kerf and 8: 20 1/8.
    (piece,) = of_part(room(wall("w1", "8"), closed=False), "base")
    assert piece["blank"]["shown"] == '20 1/8"'
    assert '20 1/8"' in flags(piece)["short"]
    (long,) = of_part(room(wall("w1", "80"), closed=False), "base")
    assert long["blank"] is None


def test_a_piece_whose_readings_leave_more_than_its_joints_bear_is_to_be_measured_in_place():
    # Right of the door: three readings and the mark, 1.96 · 1/32 · √(4/3) = 0.071. A joint bears 1/16, or as it is set.
    assert not any("measure-in-place" in flags(piece) for piece in of_part(oblong(DOOR), "base"))
    told = flags(by_name(oblong(DOOR, joint__gap="1/32"), "base")["wall 1, right of the door"])
    assert told["measure-in-place"] == (
        'Measure this one in place: its joints bear 1/32", and the readings leave ± 1/16".'
    )


def test_a_piece_with_a_free_end_need_not_be_measured_in_place():
    facts = room(wall("w1", "90", things=[DOOR]), closed=False)
    assert "measure-in-place" not in flags(by_name(facts, "base")["wall 1, right of the door"])


def test_a_closed_room_half_walked_does_not_join_its_last_wall_to_its_first():
    # Three walls of four: they turn by 270 where a room turns by 360.
    facts = room(wall("w1", "120"), wall("w2", "96"), wall("w3", "120"))
    found = by_name(facts, "base")
    assert (found["wall 1"]["left"]["meets"], found["wall 3"]["right"]["meets"]) == (
        "where the walk began", "where the walk has come to",
    )  # fmt: skip
    assert "not-walked-round" in flags(found["wall 1"])
    assert "not-walked-round" in flags(found["wall 3"])
    assert "not-walked-round" not in flags(found["wall 2"])


def test_the_last_corner_of_a_room_half_walked_is_asked_for_all_the_same():
    facts = room(wall("w1", "120"), wall("w2", "96", corner=None))
    assert [one["title"] for one in ask("needs", facts)["needs"]] == ["corner 2, inside"]


def test_in_a_corner_out_of_plumb_the_end_is_longer_at_its_top_and_the_blade_leans():
    # Wall 2 stands 1/4 off a 24 in level at the top: it leans away, 5 1/2 * 1/4 / 24 = 0.057292 over the base's height;
    # the blade leans atan(1/96) = 0.6 degrees. The board on wall 2 itself, square to its neighbors, is not touched.
    facts = oblong(DOOR)
    facts["walls"][1]["plumb"] = "1/4 top"
    found = by_name(facts, "base")
    end = found["wall 3"]["left"]
    assert (end["bevel_shown"], end["nested"]) == ("0.6°", None)
    assert flags(found["wall 3"])["out-of-plumb"] == (
        'Its left corner is out of plumb: 1/16" longer at the top than at the foot. Lean the blade 0.6°.'
    )
    assert "out-of-plumb" not in flags(found["wall 2"])
    facts["walls"][1]["plumb"] = "1/4 foot"
    assert "longer at the foot" in flags(by_name(facts, "base")["wall 3"])["out-of-plumb"]


def test_a_wall_all_but_plumb_changes_nothing():
    facts = oblong(DOOR)
    facts["walls"][1]["plumb"] = ["1/32 top", "0"]
    assert not any("out-of-plumb" in flags(piece) for piece in of_part(facts, "base"))


@pytest.mark.parametrize(("text", "key"), [("1/4", "which-end"), ("9 top", "leans-too-far"), ("top", "empty")])
def test_a_lean_that_cannot_be_read_is_a_problem_on_its_wall(text, key):
    facts = oblong(DOOR)
    facts["walls"][1]["plumb"] = text
    (problem,) = ask("pieces", facts)["problems"]
    assert problem["wall"] == "w2"
    assert problem["key"] == key
