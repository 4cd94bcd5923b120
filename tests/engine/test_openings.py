"""Doors, cased openings and windows in rooms: side walls, plinths, what one opening differs in, what cannot be."""

import pytest
from scantling.engine.desk import Desk

from tests.entries import four_walls
from tests.rooms import ask, oblong, room, thing, wall

CASED = {"casing__wanted": "yes", "base__wanted": "no"}


def opening(kind, at="40", width="30", **more):
    return thing(kind, at, width, **{"left": "80", "right": "80", "head_corners": ["90", "90"], **more})


def parts(facts, **asked):
    answered = ask("pieces", facts, **asked)
    return {f"{piece['part']} {piece['opening']}": piece for piece in answered["pieces"] if piece["opening"]}


def cuts(facts):
    return {name.rpartition(" the ")[0]: piece["cut"]["shown"] for name, piece in parts(facts).items()}


def told(piece, key):
    return [flag["message"] for flag in piece["flags"] if flag["key"] == key]


def test_a_door_gives_legs_and_a_head_by_the_trade_s_own_example():
    # 30 1/8 wide, 80 3/16 high, reveal 3/16, casing 2 1/4: head 30 1/2 to 35, legs 80 3/8 to 82 5/8.
    door = opening("door", width="30 1/8", left="80 3/16", right="80 3/16")
    assert cuts(oblong(door, **CASED)) == {"left leg": '82 5/8"', "right leg": '82 5/8"', "head": '35"'}


def test_the_smallest_height_and_the_largest_width_count():
    door = opening("door", width=["30", "30 1/8"], left=["80 1/8", "80"], right="80")
    found = cuts(oblong(door, **CASED))
    assert (found["left leg"], found["head"]) == ('82 7/16"', '35"')


def test_a_window_on_a_stool_gives_everything_in_the_order_it_is_put_up():
    window = opening("window", width="30", left="48", right="48", sash="4 1/2")
    found = cuts(oblong(window, **CASED))
    # Stool: 30 + 2 × (3/16 + 2 1/4 + 1/2); legs stand on it: 48 + 3/16 − 3/4, and 2 1/4 more at the long point.
    assert found == {
        "stool": '35 7/8"', "left leg": '49 11/16"', "right leg": '49 11/16"', "head": '34 7/8"', "apron": '34 7/8"',
        "apron return, left": '11/16"', "apron return, right": '11/16"',
    }  # fmt: skip
    assert next(iter(found)) == "stool"
    # Rip it: 4 1/2 − 1/16 of play + 11/16 of casing + 1/2 in front.
    stool = parts(oblong(window, **CASED))["stool the only window"]
    assert stool["working"][-1]["value"]["shown"] == '5 5/8"'
    assert (stool["left"]["said"], stool["right"]["said"]) == ("a free end", "a free end")


def test_an_apron_of_a_thickness_of_its_own_is_returned_by_as_much():
    window = opening("window", width="30", left="48", right="48", sash="4 1/2")
    found = cuts(oblong(window, apron__thickness="1/2", **CASED))
    assert (found["apron return, left"], found["apron return, right"]) == ('1/2"', '1/2"')


def test_one_window_may_be_framed_while_the_others_have_stools():
    left = opening("window", at="10", width="24", left="48", right="48", name="the first")
    right = opening("window", at="70", width="24", left="48", right="48", name="the second",
                    settings={"window.style": "picture"})  # fmt: skip
    answered = ask("pieces", oblong(left, right, **CASED))
    assert answered["problems"] == []
    by = {of: [piece["part"] for piece in answered["pieces"] if piece["opening"] == of] for of in
          ("the first", "the second")}  # fmt: skip
    assert by["the first"][0] == "stool"
    assert by["the second"] == ["head", "left leg", "right leg", "sill"]
    assert {piece["part_name"] for piece in answered["pieces"]} >= {"stool, wall 1, left window",
                                                                   "sill, wall 1, right window"}  # fmt: skip


def test_extension_strips_are_ripped_to_what_was_read_at_their_points():
    depths = {"left": ["1/2", "5/8"], "right": "1/2, 1/2", "head": [["3/8", "1/2"], ["1/2", "1/2"]]}
    window = opening("window", width="30", left="48", right="48", sash="4", depths=depths)
    found = parts(oblong(window, **CASED, extension__wanted="yes"))
    left, right, head = (found[f"{side} extension the only window"] for side in ("left", "right", "head"))
    assert told(left, "ripping") == ['Rip to 5/8", then taper in a straight line from 1/2" to 5/8".']
    assert told(right, "ripping") == ['Rip to 1/2", parallel.']
    assert left["working"][-1]["text"] == "blank to rip, with 1/16 to plane off"
    assert left["working"][-1]["value"]["shown"] == '11/16"'
    assert told(head, "ripping") == ['Rip to 1/2", parallel.']  # of two readings of a point the deeper counts
    # Strips step back 3/16 from the jamb, and the casing's reveal starts there.
    assert head["cut"]["shown"] == '31 7/8"'
    assert found["head the only window"]["short"]["shown"] == '30 3/4"'


def test_a_strip_says_how_proud_or_shy_of_the_wall_it_stands_once_it_is_ripped():
    # Parallel at 1/2, where 31/64 was read at the top: 1/64 proud there. From 1/2 to 5/8 in a straight line the middle
    # is 9/16: where 37/64 was read it stands 1/64 shy.
    depths = {"left": "31/64, 1/2", "right": "1/2, 37/64, 5/8", "head": "1/2, 5/8, 1/2"}
    window = opening("window", width="30", left="48", right="48", sash="4", depths=depths)
    found = parts(oblong(window, **CASED, extension__wanted="yes"))
    said = [told(found[f"{side} extension the only window"], "ripping")[0] for side in ("left", "right", "head")]
    assert said[0] == 'Rip to 1/2", parallel. It then stands 1/64" proud at point 1.'
    assert said[1].endswith('from 1/2" to 5/8". It then stands 1/64" shy at point 2.')
    assert said[2].endswith("and plane to the marks.")  # those leave nothing


def test_depths_that_were_read_at_other_points_are_named_and_not_mixed():
    window = opening("window", depths={"left": [["1/2", "5/8"], ["1/2"]]})
    answered = ask("pieces", oblong(window, **CASED, extension__wanted="yes"))
    assert [problem["key"] for problem in answered["problems"]] == ["other-points"]
    assert answered["pieces"]


# Side walls


def test_a_leg_in_an_inside_corner_is_ripped_flush_and_base_leaves_it_nothing():
    facts = oblong(opening("door", at="2"), casing__wanted="yes")
    found = parts(facts)
    # 2 from corner to jamb, less the reveal of 3/16, leaves 1 13/16 of 2 1/4.
    assert told(found["left leg the only door"], "ripped") == [
        '1 13/16" wide: 2" to the jamb, − 3/16" from jamb to casing.'
    ]
    assert found["head the only door"]["cut"]["shown"] == '34 7/16"'  # 30 3/8 + 1 13/16 + 2 1/4
    base = [piece["part_name"] for piece in ask("pieces", facts)["pieces"] if piece["wall"] == "w1"]
    assert base == ["base, wall 1, right of the door"]


def test_the_room_at_the_right_follows_from_wall_place_and_width():
    found = parts(oblong(opening("door", at="88"), **CASED))
    assert told(found["right leg the only door"], "ripped") == [
        '1 13/16" wide: 120" of wall − 88" to the jamb − 30" across, − 3/16" from jamb to casing.'
    ]


def test_a_ripped_leg_leans_where_the_corner_is_tight():
    facts = oblong(opening("door", at="88"), **CASED)
    facts["walls"][0]["corner"]["corner"] = "88"
    leg = parts(facts)["right leg the only door"]
    assert told(leg, "rip-lean") == ["The corner is 88°: bevel the ripped edge 2°, its back the wider."]


def test_at_a_wall_that_opens_away_a_legs_edge_and_a_stools_end_follow_it():
    # A window 2 from a corner of 135: by hand, 11/16 · tan 45 = 11/16 more at the leg's face than at its back; the
    # stool stands 11/16 + 1/2 before the wall, and its front edge is as much longer than at the wall, cut 45.
    window = opening("window", at="2", width="30", left="48", right="48", sash="4")
    facts = oblong(window, **CASED)
    facts["walls"][3]["corner"]["corner"], facts["walls"][1]["corner"]["corner"] = "135", "45"
    found = parts(facts)
    assert told(found["left leg the only window"], "rip-lean") == [
        'The corner is 135°: bevel the ripped edge 45°, its face 11/16" wider than its back.'
    ]
    assert told(found["head the only window"], "tip-lean") == [
        'The corner is 135°: where its tip at the left is cut off plumb, bevel that 45°, its face 11/16" longer.'
    ]
    stool = found["stool the only window"]
    assert (stool["left"]["saw"], stool["left"]["long_edge"], stool["right"]["saw"]) == (45, "outer", 0)
    assert stool["front"]["inches"] - stool["back"]["inches"] == pytest.approx(1.1875, abs=1e-6)


def test_a_stool_is_notched_at_both_sides_to_the_deeper_reading():
    # By hand: 3/16 + 2 1/4 + 1/2 = 2 15/16 past each jamb; the wall is 4 to 4 1/8 from the sash, less 1/16 of play.
    window = opening("window", at="40", width="30", left="48", right="48", sash=["4", "4 1/8"])
    stool = parts(oblong(window, **CASED))["stool the only window"]
    assert [note for note in told(stool, "note") if note.startswith("Notch")] == [
        'Notch its back corners for the wall: 2 15/16" along at the left and 2 15/16" along at the right, 4 1/16" deep '
        "from the edge at the sash; scribe that to the wall."
    ]


def test_casing_past_an_outside_corner_is_a_problem_told_once_and_other_walls_stand():
    facts = room(
        wall("w1", "120", turn="outside", things=[opening("door", at="89")]), wall("w2", "96"), wall("w3", "120"),
        casing__wanted="yes",
    )  # fmt: skip
    answered = ask("pieces", facts)
    assert [problem["key"] for problem in answered["problems"]] == ["past-corner"]
    assert answered["problems"][0]["message"].startswith('Door: From the right jamb to outside corner 1 there is 1"')
    assert {piece["wall"] for piece in answered["pieces"]} == {"w2", "w3"}


@pytest.mark.parametrize(("at", "jamb", "corner"), [("1", "left", 1), ("65", "right", 2)])
def test_a_door_too_near_an_outside_corner_at_either_hand_names_that_corner(at, jamb, corner):
    # Wall 2 is 96: 1 from its left corner to the jamb, or 96 - 65 - 30 = 1 from the jamb to its right one.
    middle = wall("w2", "96", turn="outside", things=[opening("door", at=at)])
    facts = room(wall("w1", "120", turn="outside"), middle, wall("w3", "120"), closed=False, casing__wanted="yes")
    (problem,) = ask("pieces", facts)["problems"]
    assert problem["message"].startswith(f'Door: From the {jamb} jamb to outside corner {corner} there is 1"')


@pytest.mark.parametrize(
    ("style", "sill", "boards"),
    [
        # A picture frame comes 3/16 + 2 1/4 under its sill: base of 5 1/2 passes under one at 8, and not at 7 7/8.
        ("picture", "8", 1), ("picture", "7 7/8", 2),
        # A stool of 3/4 and an apron of 2 1/4 come to 3: it passes under 8 5/8, and not 8 3/8.
        ("stool", "8 5/8", 1), ("stool", "8 3/8", 2),
    ],
)  # fmt: skip
def test_base_passes_under_a_window_whose_casing_ends_above_it(style, sill, boards):
    window = opening("window", at="40", width="30", left="48", right="48", sill=sill)
    found = ask("pieces", oblong(window, casing__wanted="yes", window__style=style))["pieces"]
    assert len([piece for piece in found if piece["part"] == "base" and piece["wall"] == "w1"]) == boards


def test_an_overhang_is_of_butted_heads_and_changes_nothing_of_mitered_ones():
    plain, over = (oblong(opening("door"), **CASED, casing__overhang=text) for text in ("0", "1/2"))
    assert ask("pieces", over)["pieces"] == ask("pieces", plain)["pieces"]
    assert ask("elevation", over, wall="w1") == ask("elevation", plain, wall="w1")
    butted = cuts(oblong(opening("door"), **CASED, head="butted", casing__overhang="1/2"))
    assert butted["head"] == '35 7/8"'  # 30 + 3/8 of reveals, 4 1/2 of legs, and 1/2 past each


def test_casings_that_would_lie_over_each_other_are_a_problem_of_both():
    facts = oblong(opening("window", at="20"), opening("door", at="54"), **CASED)
    problems = ask("pieces", facts)["problems"]
    assert [problem["key"] for problem in problems] == ["casings-meet"] * 2
    assert not parts(facts)


# Plinths and floors


def test_base_dies_into_the_plinth_and_the_leg_stands_on_it():
    plinth = {"plinth__height": "6", "plinth__width": "2 3/4"}
    facts = oblong(opening("door", at="40"), casing__wanted="yes", **plinth)
    found = {piece["part_name"]: piece for piece in ask("pieces", facts)["pieces"]}
    # 40 − 3/16 − 2 3/4, where casing alone would leave 1/2 more.
    assert found["base, wall 1, left of the door"]["back"]["shown"] == '37 1/16"'
    assert found["left leg, wall 1, door"]["short"]["shown"] == '74 3/16"'
    assert found["left plinth, wall 1, door"]["profile"] == "plinth 1 × 2 3/4"


def test_a_plinth_lower_than_the_base_is_told_of():
    facts = oblong(opening("door"), casing__wanted="yes", plinth__height="5")
    told = [key for key, piece in parts(facts).items() for flag in piece["flags"] if "lower than" in flag["message"]]
    assert told == ["left plinth the only door"]


def test_feet_follow_a_sloping_floor():
    leg = parts(oblong(opening("door", left="80", right="80 5/8"), **CASED))["right leg the only door"]
    foot = next(end for end in (leg["left"], leg["right"]) if end["joint"] == "foot")
    assert foot["saw"] == pytest.approx(1.18, abs=0.02)  # atan(5/8 ÷ 30 3/8)


# What one opening differs in


def test_an_opening_may_have_its_own_casing_and_base_stops_at_that():
    own = opening("door", at="40", settings={"casing.width": "3 1/2"})
    facts = oblong(own, casing__wanted="yes", casing__stock=[{"length": "8 ft", "price": "9"}])
    found = {piece["part_name"]: piece for piece in ask("pieces", facts)["pieces"]}
    assert found["base, wall 1, left of the door"]["back"]["shown"] == '36 5/16"'  # 40 − 3/16 − 3 1/2
    assert found["head, wall 1, door"]["profile"] == "casing 11/16 × 3 1/2"
    # Boards of 2 1/4 are not boards of 3 1/2.
    missing = ask("boards_for_room", facts)["missing"]
    assert any("No stock lengths yet for casing 11/16 × 3 1/2" in words for words in missing)


def test_boards_that_were_said_for_that_opening_count():
    stock = [{"length": "8 ft", "price": "9"}]
    own = opening("door", settings={"casing.width": "3 1/2", "casing.stock": stock})
    assert not any("3 1/2" in words for words in ask("boards_for_room", oblong(own, **CASED))["missing"])


def test_a_setting_of_one_opening_that_cannot_be_is_its_walls_problem_and_nothing_is_cut_to_a_guess():
    facts = oblong(opening("door", settings={"casing.width": "wide"}), casing__wanted="yes")
    answered = ask("pieces", facts)
    assert answered["problems"]
    assert {problem["wall"] for problem in answered["problems"]} == {"w1"}
    assert "w1" not in {piece["wall"] for piece in answered["pieces"]}
    assert not parts(facts)


# What is asked for


def wanted(facts):
    return [need["what"] for need in ask("needs", facts)["needs"]]


def test_a_window_is_asked_for_what_its_style_uses():
    bare = thing("window", "40", "30")
    assert wanted(oblong(bare, **CASED)) == ["left", "right", "sash"]
    assert wanted(oblong(bare, **CASED, window__style="picture")) == ["left", "right"]
    depths = ["depth_left", "depth_right", "depth_head"]
    assert wanted(oblong(bare, **CASED, extension__wanted="yes")) == ["left", "right", "sash", *depths]
    assert wanted(oblong(bare, **CASED, window__style="picture", extension__wanted="yes")) == [
        "left", "right", *depths, "depth_sill"
    ]  # fmt: skip
    assert wanted(oblong(bare)) == []


@pytest.mark.parametrize("kind", ["door", "cased", "window"])
def test_nothing_is_wanted_of_an_opening_that_is_read(kind):
    read = opening(kind, sash="4")
    assert wanted(oblong(read, casing__wanted="yes")) == []
    assert ask("pieces", oblong(read, casing__wanted="yes"))["problems"] == []


def test_escape_is_warned_of_once_and_only_for_windows():
    def escapes(kind):
        cautions = ask("pieces", oblong(opening(kind), **CASED))["cautions"]
        return sum(words.startswith("Escape") for words in cautions)

    assert [escapes(kind) for kind in ("window", "door")] == [1, 0]


def test_what_was_said_of_an_opening_and_read_of_its_jambs_comes_out_of_the_notebook():
    house = four_walls()
    window = house.new("opening", wall=house.walls[0], kind="window")
    house.say("setting", of=house.house, name="extension.wanted", value="yes")
    house.say("setting", of=window, name="window.style", value="picture")
    for what, text in (("at", "40"), ("width", "30"), ("left", "48"), ("right", "48"), ("depth_left", "1/2, 5/8"),
                       ("depth_right", "-1/16, 1/2"), ("depth_head", "1/2, 1/2"), ("depth_sill", "1/2")):  # fmt: skip
        house.read(window, what, text)
    desk = Desk(house.entries)
    survey = desk.answer({"ask": "survey", "room": house.room})["answer"]
    (told_of,) = survey["walls"][0]["openings"]
    assert (told_of["name"], told_of["settings"]) == ("window", {"window.style": "picture"})
    rows = {row["what"]: row for row in survey["rows"] if row["of"] == window}
    assert rows["depth_left"]["figure"]["shown"] == '5/8"'
    assert rows["depth_right"]["readings"][0]["shown"] == '-1/16", 1/2"'
    assert {row["state"] for row in rows.values()} == {"read", "spare"}
    pieces = desk.answer({"ask": "pieces", "room": house.room})["answer"]["pieces"]
    framed = [piece["part"] for piece in pieces if piece["opening"] == window]
    assert framed == ["left extension", "right extension", "sill extension", "head extension", "head", "left leg",
                      "right leg", "sill"]  # fmt: skip


def test_base_round_the_corner_stops_at_a_plinth_that_is_wider_than_its_leg():
    # From the jamb to the side wall 3 1/16: reveal 3/16 and a leg of 2 1/4 leave 5/8, past which base of 9/16 goes; a
    # plinth of 2 5/8 leaves 1/4, and the base stops at its face, 1 from the wall.
    door = opening("door", at="86 15/16")
    for wide, beyond in (("2 1/4", '96"'), ("2 5/8", '95"')):
        given = {**CASED, "base__wanted": "yes", "plinth__height": "6", "plinth__width": wide}
        found = {one["part_name"]: one["back"]["shown"] for one in ask("pieces", oblong(door, **given))["pieces"]}
        assert found["base, wall 2"] == beyond
