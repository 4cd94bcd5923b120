"""Casing dressed: corner blocks, a head built up, a backband round it; each off until it is asked for."""

import math

import pytest

from tests.rooms import Facts, ask, inches, oblong, pieces, thing

# Legs 80 + 3/16, 2 1/4 wide; between them 30 + 3/8; a butted head 30 3/8 + 4 1/2 = 34 7/8; a mitered leg's outer edge
# 80 3/16 + 2 1/4 = 82 7/16.
DOOR = thing("door", "40", "30", left="80", right="80", head_corners=["90", "90"])


def dressed(*things: Facts, **standard: str) -> dict[str, Facts]:
    facts = oblong(*(things or (DOOR,)), casing__wanted="yes", **standard)
    return {piece["part_name"].partition(",")[0]: piece for piece in pieces(facts)}


def test_corner_blocks_stand_past_leg_and_head_by_as_much_on_every_side():
    # Blocks of 2 1/2 on legs of 2 1/4 stand 1/8 past them: legs 80 3/16 - 1/8, head 30 3/8 - 2/8.
    found = dressed(head="butted", block__size="2 1/2")

    assert inches(found["left leg"]["back"]) == inches(found["right leg"]["back"]) == 80 + 1 / 16
    assert inches(found["head"]["back"]) == 30 + 1 / 8
    assert inches(found["left corner block"]["back"]) == 2.5
    assert found["left corner block"]["profile"] == "corner block 15/16 × 2 1/2"
    stock = [{"length": "4 ft", "price": "9.99"}]
    facts = oblong(DOOR, casing__wanted="yes", head="butted", block__size="2 1/2", block__stock=stock)
    assert "corner block 15/16 × 2 1/2" in [plan["profile"] for plan in ask("boards_for_room", facts)["plans"]]
    assert list(found)[:5] == ["left leg", "left corner block", "right leg", "right corner block", "head"]


def test_a_head_is_built_up_of_a_fillet_under_it_and_a_cap_on_it():
    # 34 7/8 and twice 1/4; and twice 3/4.
    found = dressed(head="butted", fillet__thickness="1/2", head_cap__thickness="3/4")

    assert inches(found["fillet"]["back"]) == 35 + 3 / 8
    assert inches(found["head cap"]["back"]) == 36 + 3 / 8
    assert list(found)[2:5] == ["fillet", "head", "head cap"]
    assert (found["fillet"]["profile"], found["head cap"]["profile"]) == ("fillet 1/2", "head cap 3/4")


def test_a_backband_is_as_long_inside_as_the_casing_outside_and_base_ends_at_it():
    # 82 7/16 and, at the miter, its own 1 1/8; the head 34 7/8 and twice that. Base: 40 - 3/16 - 2 1/4 - 1 1/8.
    found = dressed(backband__width="1 1/8")
    leg, head = found["left leg backband"], found["head backband"]

    assert (inches(leg["back"]), inches(leg["front"])) == (82 + 7 / 16, 83 + 9 / 16)
    assert (inches(head["back"]), inches(head["front"])) == (34 + 7 / 8, 37 + 1 / 8)
    assert (head["left"]["saw"], head["right"]["saw"]) == (45, 45)
    assert (leg["front"]["exact"], head["front"]["exact"]) == ("1337/16", "297/8")  # nothing is rounded where square
    base = next(piece for name, piece in found.items() if name == "base" and piece["wall"] == "w1")
    assert inches(base["back"]) in (40 - 57 / 16, 50 - 57 / 16)
    facts = oblong(DOOR, casing__wanted="yes", backband__width="1 1/8")
    beside = next(one for one in pieces(facts) if one["part_name"] == "base, wall 1, left of the door")
    assert inches(beside["back"]) == 40 - 3 / 16 - 2.25 - 1.125


def test_at_a_head_corner_that_is_not_square_the_band_gains_by_the_cotangent_of_half_of_it():
    # A corner of 88: 1 1/8 cot 44 = 1.164972; the casing's own outer edge leads.
    door = thing("door", "40", "30", left="80", right="80", head_corners=["88", "90"])
    found = dressed(door, backband__width="1 1/8")
    leg, casing = found["left leg backband"], found["left leg"]

    assert inches(leg["back"]) == inches(casing["front"])
    ends = {end["joint"]: end for end in (leg["left"], leg["right"])}
    assert ends["miter"]["saw"] == 46
    at_foot = inches(leg["front"]) - inches(leg["back"]) - 1.164972
    assert abs(at_foot) == pytest.approx(1.125 * math.tan(math.radians(ends["foot"]["saw"])), abs=1e-5)


def test_on_a_floor_that_falls_the_foot_of_a_band_leans_as_its_leg_does():
    # 1/4 to the right in the 30 3/8 between the legs: across 1 1/8 a band gains 1 1/8 / 121 1/2 = 0.009259 at its outer
    # edge beside the right leg, and loses it beside the left one. The miter at its head gains the 1 1/8.
    door = thing("door", "40", "30", left="80", right="80 1/4", head_corners=["90", "90"])
    found = dressed(door, backband__width="1 1/8")
    gains = {side: inches(found[f"{side} leg backband"]["front"]) - inches(found[f"{side} leg backband"]["back"])
             for side in ("left", "right")}  # fmt: skip

    assert gains == pytest.approx({"left": 1.125 - 0.009259, "right": 1.125 + 0.009259}, abs=1e-5)


@pytest.mark.parametrize("setting", ["block__size", "fillet__thickness", "head_cap__thickness"])
def test_blocks_and_a_built_up_head_want_a_butted_head_and_a_band_a_mitered_one(setting):
    assert list(dressed(**{setting: "2 1/2"})) == list(dressed())
    assert list(dressed(head="butted", backband__width="1")) == list(dressed(head="butted"))


def test_a_band_that_cannot_be_is_a_problem_of_its_wall_and_the_casing_stands_without_it():
    facts = oblong(DOOR, casing__wanted="yes", backband__width="1", casing__head_width="3 1/2")
    answered = ask("pieces", facts)
    assert [(one["key"], one["wall"]) for one in answered["problems"]] == [("uneven-band", "w1")]
    tight = thing("door", "1 1/2", "30", left="80", right="80", head_corners=["90", "90"])
    answered = ask("pieces", oblong(tight, casing__wanted="yes", backband__width="1"))
    assert ("no-room-for-band", "w1") in [(one["key"], one["wall"]) for one in answered["problems"]]
    assert not [piece for piece in answered["pieces"] if "backband" in piece["part"]]


def corner(at: str, *second: Facts, **standard: str) -> Facts:
    """A door of 30 along the first of walls of 120 and 96, and what stands along the second."""
    facts = oblong(thing("door", at, "30", name="a", left="80", right="80"), casing__wanted="yes", **standard)
    facts["walls"][1]["openings"] = list(second)
    return facts


def of_part(facts: Facts, part: str, on: str) -> list[float]:
    found = ask("pieces", facts)["pieces"]
    return [inches(one["back"]) for one in found if one["part"] == part and one["wall"] == on]


def test_base_of_the_next_wall_stops_at_the_face_of_a_band_in_the_corner():
    # The jamb is 4 from the corner, the casing's edge 4 - 2 7/16 = 1 9/16, the band's 7/16: within the base's 9/16. It
    # stops there at the band's face, 1; without a band it passes.
    assert of_part(corner("86", backband__width="1 1/8"), "base", "w2") == [95]
    assert of_part(corner("86"), "base", "w2") == [96]


def test_a_leg_that_gives_way_stops_at_the_band_of_the_one_that_keeps_its_width():
    # A leg 1 1/2 from the same corner: less the band's 1 and the reveal's 3/16, 5/16 of it is left; without a band
    # 1 5/16. It has no room for a band of its own.
    second = thing("door", "1 1/2", "30", name="b", left="80", right="80")
    said = {}
    for width in ("1 1/8", "0"):
        found = ask("pieces", corner("86", second, backband__width=width))
        flags = [flag for one in found["pieces"] for flag in one["flags"] if flag["key"] == "ripped"]
        said[width] = flags[0]["message"]
        problems = [(one["key"], one["wall"]) for one in found["problems"] if "band" in one["key"]]
        assert problems == ([("no-room-for-band", "w2")] if width != "0" else [])
    assert (said["1 1/8"][:10], said["0"][:12]) == ('5/16" wide', '1 5/16" wide')


def test_a_leg_with_room_for_itself_alone_takes_no_band():
    # 3 less 2 7/16 leaves 9/16 for a band of 1 1/8; 3 9/16 is just enough.
    answers = [ask("pieces", corner(at, backband__width="1 1/8")) for at in ("87", "86 7/16")]
    keys = [[one["key"] for one in answered["problems"]] for answered in answers]
    assert ["no-room-for-band" in some for some in keys] == [True, False]


@pytest.mark.parametrize(
    ("standard", "rail", "backs"),
    [
        # A cap from 82 15/16 to 83 11/16, 3/4 past the legs; a block up to 82 9/16 and 1/8 past; a band up to 83 9/16.
        ({"head": "butted", "fillet__thickness": "1/2", "head_cap__thickness": "3/4"}, "83", [36.8125, 46.8125]),
        ({"head": "butted", "fillet__thickness": "1/2"}, "82 3/4", [37.5625, 47.5625]),
        ({"head": "butted", "block__size": "2 1/2"}, "82 1/2", [37.4375, 47.4375]),
        ({"head": "butted", "casing__overhang": "1/2"}, "82", [37.0625, 47.0625]),
        ({"backband__width": "1 1/8"}, "83", [36.4375, 46.4375]),
        ({}, "82 1/2", [120]),
    ],
    ids=["cap", "fillet", "block", "overhang", "band", "plain"],
)  # fmt: skip
def test_a_picture_rail_stops_at_what_is_put_on_a_head(standard, rail, backs):
    facts = oblong(DOOR, casing__wanted="yes", picture_rail__wanted="yes", picture_rail__height=rail, **standard)
    assert of_part(facts, "picture rail", "w1") == backs


def test_a_picture_rail_runs_on_over_a_door_that_has_no_room_for_the_band_it_asks_for():
    # The casing reaches 82 7/16; the band that there is no room for beside the leg would reach 83 7/16.
    tight = thing("door", "1 1/2", "30", left="80", right="80", head_corners=["90", "90"])
    rail = {"picture_rail__wanted": "yes", "picture_rail__height": "83"}
    facts = oblong(tight, casing__wanted="yes", backband__width="1", **rail)
    assert of_part(facts, "picture rail", "w1") == [120]


def test_crown_that_meets_what_a_head_is_built_up_to_is_named():
    # Crown comes down to 86 - 2.857, about 83 9/64; the head reaches 82 7/16, and with fillet and cap 83 11/16.
    said = []
    for more in ({}, {"fillet__thickness": "1/2", "head_cap__thickness": "3/4"}):
        facts = oblong(DOOR, casing__wanted="yes", crown__wanted="yes", head="butted", **more)
        facts["walls"][0]["height"] = "86"
        said.append([one["message"] for one in ask("pieces", facts)["problems"] if one["key"] == "crown-on-casing"])
    assert said[0] == []
    assert '83 9/64"' in said[1][0]
    assert '83 11/16"' in said[1][0]


def test_every_dressed_piece_is_drawn():
    facts = oblong(DOOR, casing__wanted="yes", head="butted", block__size="2 1/2", fillet__thickness="1/2")
    letters = [piece["letter"] for piece in pieces(facts)]
    for letter in letters:
        assert ask("drawn", facts, piece=letter)
    assert ask("elevation", facts, wall="w1")
    for piece in pieces(oblong(DOOR, casing__wanted="yes", backband__width="1")):
        assert ask("drawn", oblong(DOOR, casing__wanted="yes", backband__width="1"), piece=piece["letter"])
