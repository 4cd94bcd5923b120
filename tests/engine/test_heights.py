"""What is higher up: windows by their sills, heads by their casing, and walls that lean as far up as a rail runs."""

import pytest

from tests.asked import ask as ask_alone
from tests.rooms import Facts, ask, inches, oblong, thing


def of_part(facts: Facts, part: str, on: str = "w1") -> list[Facts]:
    return [one for one in ask("pieces", facts)["pieces"] if one["part"] == part and one["wall"] == on]


def keys(facts: Facts) -> list[tuple[str, str]]:
    return [(one["wall"], one["key"]) for one in ask("pieces", facts)["problems"]]


def needs(facts: Facts) -> list[tuple[str, str]]:
    return [(one["of"], one["what"]) for one in ask("needs", facts)["needs"]]


def railed(*things: Facts, **more: str) -> Facts:
    return oblong(*things, base__wanted="no", chair_rail__wanted="yes", **more)


def window(**more: str) -> Facts:
    return thing("window", "40", "30", name="win", left="40", right="40", **more)


def test_a_chair_rail_passes_under_a_high_window_and_stops_at_the_casing_of_a_low_one():
    # By hand: casing is 2 1/4 + 3/16 past the jamb. Above a sill of 60 less stool and apron a rail of 34 1/2 is clear.
    assert [inches(one["back"]) for one in of_part(railed(window(sill="60")), "chair rail")] == [120]
    assert [inches(one["back"]) for one in of_part(railed(window(sill="20")), "chair rail")] == [37.5625, 47.5625]


def test_over_tile_a_stool_has_no_apron_and_its_casing_ends_under_the_stool():
    # From a sill of 36 3/4 stool and apron reach down 3/4 + 2 1/4 to 33 3/4, into a rail from 32 to 34 1/2; the stool
    # alone to 36, which is clear of it.
    facts = railed(window(sill="36 3/4"), casing__wanted="yes")
    tiled = railed(window(sill="36 3/4"), casing__wanted="yes", apron__wanted="no")
    assert [len(of_part(one, "chair rail")) for one in (facts, tiled)] == [2, 1]
    parts = [{piece["part"] for piece in ask("pieces", one)["pieces"]} for one in (facts, tiled)]
    assert parts[0] - parts[1] == {"apron", "apron return, left", "apron return, right"}
    assert "stool" in parts[1]


def test_where_a_rail_meets_the_stool_it_stops_at_its_horn():
    # A sill at 33: the rail, from 32 to 34 1/2, meets the stool, whose horn is 1/2 longer than the casing.
    backs = [inches(one["back"]) for one in of_part(railed(window(sill="33")), "chair rail")]
    assert backs == [37.0625, 47.0625]


def test_an_unread_sill_is_in_the_rails_way_and_its_row_says_so():
    facts = railed(window())
    assert [inches(one["back"]) for one in of_part(facts, "chair rail")] == [37.5625, 47.5625]


def test_high_base_stops_at_a_window_that_comes_down_to_it():
    low = oblong(window(sill="10"), base__height="7 1/4")
    assert len(of_part(low, "base")) == 2
    assert len(of_part(oblong(window(sill="20"), base__height="7 1/4"), "base")) == 1


@pytest.mark.parametrize(("height", "backs"), [("78", [37.5625, 47.5625]), ("84", [120])])
def test_a_picture_rail_stops_at_casing_that_reaches_up_to_it(height, backs):
    # A door of 80: its head casing ends at 80 + 3/16 + 2 1/4 = 82 7/16.
    door = thing("door", "40", "30", left="80", right="80")
    facts = oblong(door, base__wanted="no", picture_rail__wanted="yes", picture_rail__height=height)
    assert [inches(one["back"]) for one in of_part(facts, "picture rail")] == backs


def test_crown_that_meets_a_head_casing_is_named_with_both_figures():
    facts = oblong(thing("door", "40", "30", left="80", right="80"), base__wanted="no", crown__wanted="yes")
    facts["walls"][0]["height"] = "84"
    (problem,) = ask("pieces", facts)["problems"]
    # Drop of 3 5/8 at 38 degrees: 2.857; 84 - 2.857 = 81.143, about 81 9/64.
    assert problem["key"] == "crown-on-casing"
    assert '81 9/64"' in problem["message"]
    assert '82 7/16"' in problem["message"]
    assert len(of_part(facts, "crown")) == 1
    facts["walls"][0]["height"] = "96"
    assert keys(facts) == []


def test_a_rail_above_the_ceiling_is_named_on_its_wall_and_the_others_have_theirs():
    facts = oblong(base__wanted="no", picture_rail__wanted="yes")
    facts["walls"][0]["height"] = "85"
    assert keys(facts) == [("w1", "above-ceiling")]
    assert of_part(facts, "picture rail") == []
    assert len(of_part(facts, "picture rail", "w2")) == 1


def leaning(text: str = "1/4 top", **standard: str) -> Facts:
    facts = oblong(base__wanted="no", **standard)
    facts["walls"][1]["plumb"] = text
    return facts


@pytest.mark.parametrize(
    ("rail", "longer"), [("chair_rail", 30 / 96), ("picture_rail", 82 / 96)], ids=["at 32", "at 84"]
)
def test_a_wall_that_leans_away_lengthens_what_runs_higher_on_its_neighbors(rail, longer):
    # By hand: 1/4 in 24 is 1/96 an inch; the tape was 2 up, so 30/96 = 5/16 at 32, and 82/96, about 27/32, at 84.
    facts = leaning(**{f"{rail}__wanted": "yes"})
    name = rail.replace("_", " ")
    for on in ("w1", "w3"):
        (piece,) = of_part(facts, name, on)
        assert inches(piece["back"]) == pytest.approx(120 + longer, abs=1e-6)
        assert any("wall 2 leans away" in step["text"] for step in piece["working"])
    (across,) = of_part(facts, name, "w2")
    assert inches(across["back"]) == 96
    plain = of_part(leaning("0", **{f"{rail}__wanted": "yes"}), name)[0]
    assert inches(of_part(facts, name)[0]["plus_minus"]) > inches(plain["plus_minus"])


def test_a_wall_that_leans_in_shortens_them():
    (piece,) = of_part(leaning("1/4 foot", chair_rail__wanted="yes"), "chair rail")
    assert inches(piece["back"]) == 119.6875


def test_crown_measured_at_the_ceiling_takes_nothing_from_the_lean():
    facts = leaning(crown__wanted="yes")
    facts["walls"][0] |= {"height": "96", "ceiling": "120 7/8"}
    assert inches(of_part(facts, "crown")[0]["back"]) == 120.875


def test_crown_is_cut_to_the_corner_read_at_the_ceiling_and_says_where_only_the_floors_is():
    facts = oblong(base__wanted="no", crown__wanted="yes", crown__inside="miter")
    (before,) = of_part(facts, "crown")
    assert "corner-at-floor" in [flag["key"] for flag in before["flags"]]
    for one in facts["walls"]:
        one["ceiling_corner"] = "92"
    (piece,) = of_part(facts, "crown")
    assert piece["right"]["nested"] == 44
    assert "corner-at-floor" not in [flag["key"] for flag in piece["flags"]]


def test_a_rail_or_high_base_that_crosses_an_outlets_plate_says_so():
    outlet = thing("outlet", "30", "2 3/4", name="o", height="34")
    (rail,) = of_part(railed(outlet), "chair rail")
    (flag,) = [flag for flag in rail["flags"] if flag["key"] == "plate"]
    assert '30" to 32 3/4" from the left' in flag["message"]
    low = of_part(railed(thing("outlet", "30", "2 3/4", height="16")), "chair rail")[0]
    assert "plate" not in [flag["key"] for flag in low["flags"]]


def test_an_outlet_breaks_nothing_and_nothing_is_asked_of_it():
    facts = oblong(thing("outlet", "30", "2 3/4", name="o"), shoe__wanted="yes", cap__wanted="yes")
    assert needs(facts) == []
    assert [len(of_part(facts, part)) for part in ("base", "base cap", "shoe")] == [1, 1, 1]


def test_a_register_lower_than_the_base_is_under_the_cap_and_the_shoe_keeps_out_of_it():
    facts = oblong(thing("register", "30", "12", "notch", height="4"), shoe__wanted="yes", cap__wanted="yes")
    (base,) = of_part(facts, "base")
    (notch,) = [flag["message"] for flag in base["flags"] if flag["key"] == "notch"]
    assert notch == (
        'Notch it for the register: 30" to 42" from the left along its back, 4" up, and 1/8" wider each way.'
    )
    (cap,) = of_part(facts, "base cap")
    assert "notch" not in [flag["key"] for flag in cap["flags"]]
    assert len(of_part(facts, "shoe")) == 2


@pytest.mark.parametrize(
    ("how", "backs", "said"),
    [
        ("eased", [37.5625, 47.5625], "ease its right end back to it"),
        ("notched", [38.0625, 48.0625], 'notch the back of its right end, 1/2" along and 11/16" deep'),
        ("butted", [37.5625, 47.5625], "its right end is butted, and stays proud"),
    ],
)
def test_a_rail_thicker_than_casing_ends_at_it_as_was_set(how, backs, said):
    door = thing("door", "40", "30", left="80", right="80")
    facts = railed(door, chair_rail__thickness="1", proud_end=how)
    rails = of_part(facts, "chair rail")
    assert [inches(one["back"]) for one in rails] == backs
    flags = {flag["key"]: flag["message"] for one in rails for flag in one["flags"] if flag["key"] == "proud"}
    assert any(said in flag["message"] for one in rails for flag in one["flags"])
    assert flags["proud"].startswith('It stands 5/16" out past the casing')


def test_the_wall_from_in_front_draws_a_window_where_its_sill_is():
    low, high = (ask("elevation", oblong(window(sill=sill)), wall="w1")["drawing"] for sill in ("20", "40"))
    assert low != high


def falling(fall: str, **standard: str) -> Facts:
    facts = oblong(thing("door", "40", "30"), **standard)
    facts["walls"][0]["fall"] = fall
    return facts


def test_base_on_a_falling_floor_is_cut_plumb_against_casing_where_that_moves_an_edge_a_64th():
    # By hand: 1/2 in 120 is 1/240 an inch, over 5 1/2 of base 0.0229; the board left of the door tilts to the
    # right, so its right end is so much shorter at the top. A fall of 1/4 moves an edge 0.0115, less than 1/64.
    left, right = sorted(of_part(falling("1/2 right"), "base"), key=lambda one: one["part_name"])
    assert "left of the door" in left["part_name"]
    plumb = [flag["message"] for flag in left["flags"] if flag["key"] == "out-of-plumb"]
    assert plumb[1] == (
        'Its right end is cut plumb on the falling floor: 1/64" longer at the foot than at the top. '
        "Lean the blade 0.2°."
    )
    assert left["right"]["bevel"] == pytest.approx(0.23873, abs=1e-5)
    assert any(flag["key"] == "out-of-plumb" and "left end" in flag["message"] for flag in right["flags"])
    plain = of_part(falling("1/4 right"), "base")
    assert not any(flag["key"] == "out-of-plumb" for one in plain for flag in one["flags"])


@pytest.mark.parametrize(
    ("how", "said"),
    [
        ("follow", "it lies on the floor, its top out of level by as much."),
        ("scribe", 'set it level and scribe its foot: 1/2" off at the left, nothing at the right.'),
        ("taper", 'rip its foot in a straight line, 1/2" off at the left to nothing at the right.'),
    ],
)
def test_what_is_done_on_a_falling_floor_is_told_with_its_figures(how, said):
    # By hand: 1 1/2 in 120 falls 37 9/16 / 80, about 1/2, along the board left of the door.
    boards = of_part(falling("1 1/2 right", base__floor=how), "base")
    left = next(one for one in boards if "left of" in one["part_name"])
    told = [flag["message"] for flag in left["flags"] if flag["key"] == "floor-falls"]
    assert told == [f'The floor falls 1/2" to the right along it: {said}']
    assert (left["right"]["bevel"] is None) == (how != "follow")


@pytest.mark.parametrize(("fall", "key"), [("1/2", "which-way"), ("20 right", "falls-too-far")])
def test_a_fall_that_cannot_be_is_named_on_its_wall_and_every_board_is_there(fall, key):
    facts = falling(fall)
    assert keys(facts) == [("w1", key)]
    assert len(of_part(facts, "base")) == 2


def test_a_wall_read_where_the_rail_runs_is_as_long_as_it_was_read_there():
    facts = leaning(chair_rail__wanted="yes")
    facts["walls"][0]["chair_rail"] = "120 3/8"
    (piece,) = of_part(facts, "chair rail")
    assert inches(piece["back"]) == 120.375
    assert piece["working"][0]["text"] == "+ wall 1, along the chair rail"
    assert not any("leans" in step["text"] for step in piece["working"])


def test_the_wall_from_in_front_draws_a_plate_on_the_wall_and_not_from_the_floor():
    outlet, box = (
        ask("elevation", oblong(thing(kind, "30", "3", "over", height="16")), wall="w1")["drawing"]
        for kind in ("outlet", "crate")
    )
    assert outlet != box


def bowed(text: str, *things: Facts, **standard: str) -> list[str]:
    facts = oblong(*things, **standard)
    facts["walls"][0]["bow"] = text
    assert ("w1", "bow") not in needs(facts)
    flags = [flag for part in ("base", "shoe", "chair rail") for one in of_part(facts, part) for flag in one["flags"]]
    return [flag["message"] for flag in flags if flag["key"] == "bow"]


@pytest.mark.parametrize(
    ("text", "standard", "said"),
    [
        # By hand: 48 from one end of 120 and 72 from the other, 1/8 in 8 ft is 1/8 · 1 · 3/2 = 3/16.
        ("3/8 hump at 48", {}, 'a hump of 3/8" behind it, 48" from its left, and it springs 3/16": set it straight, '
         'with shims of 3/8" behind its ends.'),
        ("3/8 hollow at 48", {}, 'and it springs 3/16": set it straight, with shims of 3/8" behind it there.'),
        ("3/16 hump at 48", {}, 'from its left: spring it over, and nail it there and at both ends.'),
        ("3/16 hollow at 48", {}, "from its left: spring it in, and nail it there."),
        ("1/4 hump at 48", {"bow__beyond": "scribe"}, 'plane 1/4" off its back at that place, to nothing at its ends.'),
        ("1/4 hollow at 48", {"bow__beyond": "scribe"}, 'plane 1/4" off its back at its ends, to nothing there.'),
        # More than half of 9/16 leaves too little of the board.
        ("3/8 hump at 48", {"bow__beyond": "scribe"}, 'with shims of 3/8" behind its ends.'),
        ("3/8 hump at 48", {"bow__spring": "1/4"}, "spring it over"),
    ],
)  # fmt: skip
def test_what_is_done_with_a_board_on_a_wall_that_bows_is_told_with_its_figures(text, standard, said):
    (message,) = bowed(text, shoe__wanted="yes", **standard)
    assert said in message


def test_a_shorter_board_is_less_off_and_one_beside_the_place_not_at_all():
    # By hand: 40 - 2 7/16 = 37 9/16 of board. At its right end the wall is 1/2 · 82 7/16 / 100 = 0.41219 off, so 20
    # along it is off the board by 1/2 - 0.41219 · 20 / 37.5625 = 0.28053: 9/32. It springs 1/8 · 20 · 17.5625 / 48².
    (message,) = bowed("1/2 hollow at 20", thing("door", "40", "30"))
    assert 'a hollow of 9/32" behind it, 20" from its left, and it springs 1/64"' in message
    assert bowed("0") == bowed("1/32 hump at 60") == []


@pytest.mark.parametrize(
    ("text", "said"),
    [
        # Caulk fills 1/8: common practice, no source. All of 120 is off by the whole bow, wherever that is.
        ("1/8 hollow at 48", 'a hollow of 1/8" behind it, 48" from its left: set it straight to its line, and caulk '
         'the gap of 1/8" there, at its wall edge.'),
        ("1/8 hump at 48", 'and caulk the gap of 1/8" at both ends, at its wall edge.'),
        ("1/4 hollow at 48", 'the gap of 1/4" there, at its wall edge, is too wide for caulk: scribe that edge, '
         '1/4" off it at its ends, to nothing there.'),
        ("1/4 hump at 48", 'the gap of 1/4" at both ends, at its wall edge, is too wide for caulk: scribe that edge, '
         '1/4" off it at that place, to nothing at its ends.'),
    ],
)  # fmt: skip
def test_crown_is_not_sprung_to_a_bow_and_the_gap_to_caulk_or_scribe_is_told(text, said):
    facts = oblong(crown__wanted="yes", bow__spring="1")
    facts["walls"][0]["bow"] = text
    told = {one["wall"]: [flag["message"] for flag in one["flags"] if flag["key"] == "bow"]
            for one in of_part(facts, "crown")}  # fmt: skip
    (message,) = told.pop("w1")
    assert said in message
    assert message.endswith("Hold a string under the ceiling first: the wall may bow otherwise there.")
    assert not any(told.values())


@pytest.mark.parametrize(
    ("text", "key"),
    [("1/4", "which-way"), ("1/4 hump", "which-way"), ("9 hump at 4", "bows-too-far"),
     ("1/4 hump at 200", "past-the-end")],
)  # fmt: skip
def test_a_bow_that_cannot_be_is_a_problem_of_its_wall_and_the_pieces_stand(text, key):
    facts = oblong()
    facts["walls"][0]["bow"] = text
    assert keys(facts) == [("w1", key)]
    assert len(ask("pieces", facts)["pieces"]) == 4


def test_a_bow_is_said_as_it_was_understood_and_none_is_a_straight_wall():
    texts = ("3/8 Hump, 48 1/2", "0 hump at 48", "0")
    said = [ask_alone("behind", what="bow", text=text)["words"] for text in texts]
    assert said == ['a hump of 3/8" at 48 1/2"', "straight", "straight"]
    assert bowed("0 hump at 48") == []
