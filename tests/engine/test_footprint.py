"""What stands in a room takes up room: boards stop at the face of what fills the corner, casing included."""

import pytest

from tests.rooms import Facts, ask, inches, pieces, room, thing, wall


def flags(piece: Facts) -> dict[str, str]:
    return {flag["key"]: flag["message"] for flag in piece["flags"]}


def needs(facts: Facts) -> list[tuple[str, str]]:
    return [(one["of"], one["what"]) for one in ask("needs", facts)["needs"]]


def along(facts: Facts, wall_id: str, part: str = "base") -> list[Facts]:
    found = ask("pieces", facts)
    assert {problem["key"] for problem in found["problems"]} <= {"closed-off"}
    return [piece for piece in found["pieces"] if piece["wall"] == wall_id and piece["part"] == part]


def oblong(*on_first: Facts, second: tuple[Facts, ...] = (), **standard: object) -> Facts:
    """Walls of 120, 100, 120, 100."""
    return room(
        wall("w1", "120", things=on_first), wall("w2", "100", things=second), wall("w3", "120"), wall("w4", "100"),
        **standard,
    )  # fmt: skip


def cabinet(**more: str) -> Facts:
    return thing("cabinet", "84", "36", "stops", **{"depth": "24", **more})


def test_base_on_the_next_wall_begins_at_the_face_of_what_fills_the_corner():
    # By hand: 100 - 24 = 76 of wall 2, from the cabinet's face to the corner.
    (base,) = along(oblong(cabinet()), "w2")
    assert inches(base["back"]) == 76
    assert base["left"] == {**base["left"], "joint": "square", "meets": "the cabinet on wall 1", "saw": 0}
    assert "− depth of the cabinet on wall 1" in [step["text"] for step in base["working"]]


def test_a_thing_in_the_corner_is_asked_how_deep_it_is_and_till_then_the_next_board_says_so():
    facts = oblong(thing("cabinet", "84", "36", "stops", name="c"))
    assert needs(facts) == [("c", "depth")]
    (base,) = along(facts, "w2")
    assert "read how deep it is" in flags(base)["depth-unread"]
    away = oblong(thing("cabinet", "60", "36", "stops", name="c"))
    assert needs(away) == []
    assert "depth-unread" not in flags(along(away, "w2")[0])


def alcove(**more: str) -> Facts:
    """A bath: a tub 30 deep fills wall 1 from side to side, and stands against walls 4 and 2."""
    tub = thing("tub", "0", "60", "stops", **{"depth": "30", "height": "20", **more})
    return room(wall("w1", "60", things=[tub]), wall("w2", "96"), wall("w3", "60"), wall("w4", "96"))


def test_an_alcove_tub_is_said_once_and_stops_the_base_of_all_three_walls():
    # Common practice, no source: 1/8 is left at a tub for the caulk. 96 - 30 - 1/8 = 65 7/8.
    found = {(piece["wall"], inches(piece["back"])) for piece in pieces(alcove())}
    assert found == {("w2", 65.875), ("w3", 60.0), ("w4", 65.875)}


def test_how_much_is_kept_clear_of_a_thing_is_a_setting_of_the_room_and_of_the_thing():
    facts = alcove()
    facts["standard"]["thing.clearance"] = "1/4"
    assert inches(along(facts, "w2")[0]["back"]) == 65.75
    facts["walls"][0]["obstacles"][0]["settings"] = {"thing.clearance": "0"}
    assert inches(along(facts, "w2")[0]["back"]) == 66


def test_an_end_may_be_scribed_to_a_thing():
    facts = alcove()
    facts["walls"][0]["obstacles"][0]["settings"] = {"thing.end": "scribed"}
    (base,) = along(facts, "w2")
    assert (inches(base["back"]), base["left"]["joint"]) == (66, "scribe")


def test_a_thing_that_fills_a_whole_wall_stops_the_boards_of_both_others_at_its_face():
    filled = thing("cabinet", "0", "120", "stops", name="c", depth="24", height="84")
    found = {piece["wall"]: piece for piece in pieces(oblong(filled))}
    assert "w1" not in found
    assert [found[name]["back"]["shown"] for name in ("w2", "w3", "w4")] == ['76"', '120"', '76"']  # 100 less 24


def test_a_sliver_of_wall_between_a_thing_and_the_corner_takes_no_board():
    # 1/4 of wall 1 is left beside the cabinet: less than the base round the corner is thick, which stops at its face.
    facts = oblong(thing("cabinet", "83 3/4", "36", "stops", depth="24"))
    answered = ask("pieces", facts)
    assert [problem["key"] for problem in answered["problems"]] == ["closed-off"]
    backs = {wall: [inches(one["back"]) for one in answered["pieces"] if one["wall"] == wall] for wall in ("w1", "w2")}
    assert backs == {"w1": [83.75], "w2": [76.0]}


def test_base_passes_before_a_thing_that_stands_farther_from_the_corner_than_it_is_thick():
    facts = oblong(thing("cabinet", "83", "36", "stops", depth="24"))
    assert inches(along(facts, "w2")[0]["back"]) == 100
    assert len(along(facts, "w1")) == 2


def test_shoe_stops_at_what_the_base_behind_it_passes():
    # 3/4 of wall is left beside the cabinet: more than the base's 9/16, less than base and shoe, 1 1/16.
    facts = oblong(thing("cabinet", "83 1/4", "36", "stops", depth="24"), shoe__wanted="yes")
    assert inches(along(facts, "w2")[0]["back"]) == 100
    assert inches(along(facts, "w2", "shoe")[0]["back"]) == 76 - 0.5625


def test_shoe_stops_at_the_cabinet_and_not_at_what_hangs_over_it_or_is_hidden_behind_it():
    # By hand: 120 - 30 = 90 of wall 1 beside the cabinet, less 9/16 of base on wall 2; what hangs over it ends at 23.
    vanity = thing("cabinet", "0", "30", "stops", depth="21 1/4", height="34 1/2")
    mirror = thing("medicine cabinet", "7", "16", "over")
    shoe = {"shoe__wanted": "yes", "base__inside": "butt", "shoe__inside": "butt"}
    plain, hung = (along(oblong(*things, **shoe), "w1", "shoe") for things in ([vanity], [vanity, mirror]))
    assert [(one["back"], one["left"]) for one in hung] == [(one["back"], one["left"]) for one in plain]
    # 100 - 21 1/4 = 78 3/4 of wall 4, to the face of the cabinet on wall 1; a pipe at 92 to 93 3/8 stands within it.
    behind = oblong(vanity, **shoe)
    behind["walls"][3]["obstacles"] = [thing("pipe", "92", "1 3/8", "notch")]
    plain, hidden = (along(facts, "w4", "shoe") for facts in (oblong(vanity, **shoe), behind))
    assert [(one["back"], one["right"]) for one in hidden] == [(one["back"], one["right"]) for one in plain]


def test_a_shoe_runs_below_what_hangs_and_a_rail_as_high_as_that_stops_at_it():
    # A mirror from 40 to 64 along a wall of 120, its lower edge 30 up, its top at 60: shoe and crown pass, a rail at 32
    # ends at 40 on its left, and begins at 64 on its right: 120 - 64 = 56.
    wanted = {"shoe__wanted": "yes", "chair_rail__wanted": "yes", "base__inside": "butt", "shoe__inside": "butt"}
    mirror = thing("mirror", "40", "24", "over", name="m")
    assert needs(oblong(mirror, **wanted)) == [("m", "sill")]
    hung = oblong({**mirror, "sill": "30", "height": "60"}, **wanted)
    assert len(along(hung, "w1", "shoe")) == 1
    rails = along(hung, "w1", "chair rail")
    assert sorted(inches(one["back"]) for one in rails) == [40, 56]
    assert along(hung, "w1", "chair rail return") == []
    assert len(along(oblong({**mirror, "sill": "40", "height": "60"}, **wanted), "w1", "chair rail")) == 1
    # What lies in the floor is in the way of the shoe, as before.
    assert len(along(oblong({**mirror, "sill": "0"}, **wanted), "w1", "shoe")) == 2


def test_a_low_thing_is_under_a_rail():
    low = oblong(cabinet(height="30"), base__wanted="no", chair_rail__wanted="yes")
    assert inches(along(low, "w2", "chair rail")[0]["back"]) == 100
    tall = oblong(cabinet(height="36"), base__wanted="no", chair_rail__wanted="yes")
    assert inches(along(tall, "w2", "chair rail")[0]["back"]) == 76


@pytest.mark.parametrize(("gauge", "along_wall"), [("89", 24.0037), ("91", 23.9963)])
def test_in_a_corner_not_square_a_board_begins_where_the_things_face_comes_to_its_wall(gauge, along_wall):
    # By hand: at 89 the face of a thing 24 deep comes to the wall 24/sin 89 from the corner, and its end follows that
    # face; at 91 the face ends 0.42 short of the wall, 24·sin 91 along it.
    facts = oblong(cabinet())
    facts["walls"][0]["corner"]["corner"] = gauge
    (base,) = along(facts, "w2")
    assert inches(base["back"]) == pytest.approx(100 - along_wall, abs=1e-4)
    assert base["left"]["saw"] == (1 if gauge == "89" else 0)


def test_base_on_the_next_wall_stops_at_the_face_of_a_casing_leg_in_the_corner():
    # A door 1 1/2 from the corner: 1 1/2 - 3/16 leaves 1 5/16 for its leg, 11/16 thick: 100 - 11/16 = 99 5/16.
    facts = oblong(thing("door", "88 1/2", "30"))
    (base,) = along(facts, "w2")
    assert inches(base["back"]) == 99.3125
    assert base["left"]["meets"] == "the casing of the door on wall 1"
    assert len(along(facts, "w1")) == 1


def test_base_shoe_and_cap_each_stop_by_their_own_depth():
    # The door ends 3 from the corner: 3 - 3/16 - 2 1/4 = 9/16 is left beside its leg: 1/2 of base passes.
    facts = oblong(thing("door", "87", "30"), shoe__wanted="yes", cap__wanted="yes", base__thickness="1/2",
                   cap__thickness="3/4")  # fmt: skip
    assert inches(along(facts, "w2")[0]["back"]) == 100
    assert inches(along(facts, "w2", "base cap")[0]["back"]) == 99.3125
    assert inches(along(facts, "w2", "shoe")[0]["back"]) == 99.3125 - 0.5


def two_doors(**settings: str) -> Facts:
    heights = {"left": "80", "right": "80"}
    first = thing("door", "88 1/2", "30", name="d1", **heights)
    second = thing("door", "1 1/2", "30", name="d2", **heights)
    return oblong(first, second=(second,), casing__wanted="yes", base__wanted="no", **settings)


def leg_width(facts: Facts, opening: str, part: str) -> str:
    (leg,) = [piece for piece in pieces(facts) if piece["opening"] == opening and piece["part"] == part]
    return ripped_to(leg)


def ripped_to(leg: Facts) -> str:
    return flags(leg)["ripped"].partition(" wide")[0]


def test_of_two_legs_in_one_corner_one_keeps_its_width_and_the_other_gets_what_is_left_beside_it():
    # By hand: 1 1/2 - 3/16 = 1 5/16; 1 1/2 - 11/16 - 3/16 = 5/8.
    facts = two_doors()
    assert leg_width(facts, "d1", "right leg") == '1 5/16"'
    assert leg_width(facts, "d2", "left leg") == '5/8"'


def test_which_of_two_legs_gives_way_can_be_turned():
    facts = two_doors()
    facts["walls"][0]["openings"][0]["settings"] = {"casing.corner": "yields"}
    assert leg_width(facts, "d1", "right leg") == '5/8"'
    assert leg_width(facts, "d2", "left leg") == '1 5/16"'
    assert leg_width(two_doors(casing__corner="yields"), "d1", "right leg") == '5/8"'


def test_a_leg_beside_a_tall_thing_is_ripped_and_beside_a_low_one_notched_round_it():
    # A door 26 from the corner of wall 2, and 24 of cabinet: 2 - 3/16 = 1 13/16 for a leg of 2 1/4.
    door = thing("door", "26", "30", name="d", left="80", right="80")
    tall = oblong(cabinet(height="84"), second=(door,), casing__wanted="yes", base__wanted="no")
    assert leg_width(tall, "d", "left leg") == '1 13/16"'
    low = oblong(cabinet(height="34 1/2"), second=(door,), casing__wanted="yes", base__wanted="no")
    (leg,) = [piece for piece in pieces(low) if piece["part"] == "left leg"]
    assert "ripped" not in flags(leg)
    assert '7/16" deep and 34 1/2" up' in flags(leg)["notch"]


@pytest.mark.parametrize(("side", "at"), [("left", "11"), ("right", "73")])
def test_a_leg_beside_what_stands_on_its_own_wall_is_ripped_or_notched_too(side, at):
    # A door from 42 to 72 and 30 of vanity 1 off its jamb: 1 − 3/16 = 13/16 for a leg of 2 1/4, 1 7/16 too much.
    door = thing("door", "42", "30", name="d", left="80", right="80")
    found = {}
    for high in ("84", "34 1/2"):
        facts = oblong(thing("vanity", at, "30", "stops", name="v", depth="21", height=high), door,
                       casing__wanted="yes")  # fmt: skip
        assert problems(facts) == []
        (found[high],) = [piece for piece in pieces(facts) if piece["part"] == f"{side} leg"]
        assert not {piece["part_name"] for piece in pieces(facts)} & {
            "base, wall 1, between the vanity and the door", "base, wall 1, between the door and the vanity"
        }  # fmt: skip
    assert ripped_to(found["84"]) == '13/16"'
    assert "rip-lean" not in flags(found["84"])
    assert "ripped" not in flags(found["34 1/2"])
    assert flags(found["34 1/2"])["notch"] == (
        'Notch its outer edge round the vanity: 1 7/16" deep and 34 1/2" up from the floor.'
    )


@pytest.mark.parametrize("tall", ["0", "9 1/2"], ids=["farther off", "nearer"])
def test_a_leg_is_notched_round_a_low_thing_though_a_tall_one_stands_beyond_it(tall):
    # Between the tall cabinet and the jamb at 42, a vanity that ends 1 off it: 3/16 + 2 1/4 − 1 is cut out.
    door = thing("door", "42", "30", name="d", left="80", right="80")
    things = (thing("cabinet", tall, "10", "stops", name="c", depth="21", height="84"),
              thing("vanity", "20", "21", "stops", name="v", depth="21", height="34 1/2"))  # fmt: skip
    (leg,) = [piece for piece in pieces(oblong(*things, door, casing__wanted="yes")) if piece["part"] == "left leg"]
    assert "ripped" not in flags(leg)
    assert flags(leg)["notch"].startswith('Notch its outer edge round the vanity: 1 7/16" deep')


def test_how_tall_a_thing_beside_a_leg_is_is_asked_for_and_until_it_is_read_the_leg_is_told_of():
    door = thing("door", "42", "30", name="d", left="80", right="80")
    far, near = (oblong(thing("vanity", at, "30", "stops", name="v", depth="21"), door, casing__wanted="yes")
                 for at in ("9", "11"))  # fmt: skip
    assert [("v", "height") in needs(facts) for facts in (far, near)] == [False, True]
    (leg,) = [piece for piece in pieces(near) if piece["part"] == "left leg"]
    assert ripped_to(leg) == '13/16"'
    assert flags(leg)["taken-tall"].startswith("How tall the vanity is has not been read")


def test_what_a_leg_on_its_own_wall_is_ripped_to_is_no_corner_and_has_its_clearance():
    # The corner is 80, and the edge beside the tub is square all the same; 1 − 1/8 − 3/16 = 11/16.
    door = thing("door", "42", "30", name="d", left="80", right="80")
    tub = thing("tub", "11", "30", "stops", name="v", depth="21", height="84", settings={"thing.clearance": "1/8"})
    facts = oblong(second=(tub, door), casing__wanted="yes")
    facts["closed"], facts["walls"][0]["corner"] = False, {"turn": "inside", "corner": ["80"]}
    (leg,) = [piece for piece in pieces(facts) if piece["part"] == "left leg"]
    assert ripped_to(leg) == '11/16"'
    assert "rip-lean" not in flags(leg)
    assert flags(leg)["ripped"].endswith('42" to the jamb − 41" to the end of the tub − 1/8" kept clear of it, '
                                         '− 3/16" from jamb to casing.')  # fmt: skip


def problems(facts: Facts) -> list[tuple[str, str]]:
    return [(one["wall"], one["key"]) for one in ask("pieces", facts)["problems"]]


BAD = {
    "deeper than the room": (oblong(cabinet(depth="130")), "through-wall"),
    "before a door round the corner": (oblong(cabinet(), second=(thing("door", "10", "30"),)), "before-opening"),
    "two things in one corner": (
        oblong(cabinet(), second=(thing("shelf", "0", "30", "stops", depth="12"),)), "in-one-place",
    ),
}  # fmt: skip


@pytest.mark.parametrize(("facts", "key"), BAD.values(), ids=BAD)
def test_a_thing_that_cannot_stand_there_is_named_on_its_wall_and_the_others_give_pieces(facts, key):
    assert ("w1", key) in problems(facts)
    assert {"w3", "w4"} <= {piece["wall"] for piece in ask("pieces", facts)["pieces"]}


def test_one_tub_written_on_two_walls_is_told_as_one():
    on_second = thing("tub", "0", "30", "stops", depth="60", height="20", name="again")
    facts = room(wall("w1", "60", things=[thing("tub", "0", "60", "stops", depth="30")]),
                 wall("w2", "96", things=[on_second]), wall("w3", "60"), wall("w4", "96"))  # fmt: skip
    (problem,) = ask("pieces", facts)["problems"]
    assert problem["message"] == (
        "The tub is on wall 1 and on wall 2, in one place: if it is one, strike it on one of the two; how deep it is "
        "tells the walls beside it."
    )


def test_a_cabinet_written_on_two_walls_is_told_as_one_also_where_another_stands_beside_it():
    beside = thing("cabinet", "10", "30", "stops", depth="24", name="beside")
    again = thing("Cabinet", "0", "24", "stops", depth="36", name="again")
    assert problems(oblong(beside, cabinet(), second=(again,))) == [("w1", "one-twice")]


def test_cabinets_that_meet_in_a_corner_are_no_problem():
    assert problems(oblong(cabinet(), second=(thing("cabinet", "24", "30", "stops", depth="24"),))) == []


def test_the_plan_draws_a_thing_as_deep_as_it_was_read():
    shallow, deep = (ask("plan", oblong(cabinet(depth=depth)))["drawing"] for depth in ("12", "24"))
    assert shallow != deep


def bare(**more: str) -> Facts:
    opening = thing("cased", "40", "30", name="o", settings={"casing.wanted": "none", **more})
    return oblong(opening, shoe__wanted="yes")


def test_base_ends_at_the_arris_of_an_opening_without_casing():
    left, right = along(bare(), "w1")
    assert (inches(left["back"]), left["right"]["meets"]) == (40, "the arris of the cased opening")
    assert (inches(right["back"]), right["left"]["joint"]) == (50, "square")
    assert needs(bare()) == []


def test_base_wrapped_into_an_opening_is_mitered_round_the_arris_and_goes_on_as_deep_as_that_is():
    facts = bare(**{"casing.arris": "wrapped"})
    assert needs(facts) == [("o", "depth")]
    left = next(one for one in along(facts, "w1") if one["left"]["meets"] == "corner 4")
    assert "reveal-unread" in flags(left)
    facts["walls"][0]["openings"][0]["depth"] = "4 1/2"
    found = along(facts, "w1")
    # By hand: 40 at the back, 9/16 more at the face; into the opening 4 1/2, and 9/16 more at the face too.
    at_left = next(one for one in found if one["left"]["meets"] == "corner 4")
    assert (inches(at_left["back"]), inches(at_left["cut"]), at_left["right"]["joint"]) == (40, 40.5625, "miter")
    reveals = [one for one in found if "in the reveal" in one["part_name"]]
    assert [(inches(one["back"]), inches(one["cut"])) for one in reveals] == [(4.5, 5.0625)] * 2
    # The shoe lies on the face of the base, 9/16 farther round both.
    shoes = along(facts, "w1", "shoe")
    assert sorted(inches(one["back"]) for one in shoes)[:2] == [5.0625, 5.0625]
