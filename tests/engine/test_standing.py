"""Walls that are tiled, paneled, or hidden by what is built in: paper and paint end there, and the pattern runs on."""

from collections import Counter

import pytest
from scantling.engine.survey.read import read_room
from scantling.engine.walk.needs import derive_figures

from tests.asked import ask
from tests.rooms import oblong, pieces, room, thing, wall

PLAIN = {"width": "20", "length": "400", "tolerance": 0}
ROLL = {"width": "20 1/2", "length": "33 ft", "repeat": "21", "match": "half-drop"}
TILE = thing("tile", "40", "50", "stops", height="72", name="tile")
VANITY = thing("vanity", "40", "30", "stops", height="34", depth="21", name="vanity")


def seams(facts, roll=PLAIN, **more):
    return ask("seams", room=facts, roll=roll, **{"height": "96", "from_floor": "0", **more})


def cut_along(found, which="w1"):
    """What is cut for each strip on a wall, from left to right: how long, and over or under what."""
    strips = [strip for stretch in found["stretches"] for strip in stretch["strips"]]
    here = [(part["start"]["inches"], strip) for strip in strips for part in strip["walls"] if part["wall"] == which]
    return [[(piece["what"], piece["over"], piece["cut"]["inches"]) for piece in strip["pieces"]]
            for _, strip in sorted(here, key=lambda one: one[0])]  # fmt: skip


def from_left(facts, roll=PLAIN, **more):
    return seams(facts, roll, walls=["w1"], start={"of": "w1", "at": "0"}, **more)


def painted(facts, **more):
    (found, *_) = ask("paint_areas", room=facts, **{"height": "96", **more})["surfaces"]
    return found


def alcove(*more):
    """Walls of 60 and 96, a tub along wall 3, tiled to 72 round it and 2 in past it on either side."""
    far = thing("tile", "0", "60", "stops", height="72", name="tile of 3")
    tub = thing("tub", "0", "60", "stops", height="18", depth="30", name="tub")
    left, right = (thing("tile", at, "32", "stops", height="72", name=f"tile at {at}") for at in ("0", "64"))
    return room(wall("w1", "60", things=more), wall("w2", "96", things=[right]), wall("w3", "60", things=[tub, far]),
                wall("w4", "96", things=[left]))  # fmt: skip


def test_above_tile_hang_short_strips_and_beside_it_whole_ones():
    whole, above = [("whole", "", 100)], [("over", "tile", 96 - 72 + 4)]
    # Tiled from 40 to 90: two strips of 20 lie on it in full, the third has wall beside it.
    found = from_left(oblong(TILE))
    assert cut_along(found) == [whole, whole, above, above, whole, whole]
    assert found["working"][1] == 'wall 1, over the tile: 24" + 4" trim = 28"'
    assert not any("tile" in line for line in from_left(oblong(TILE), from_floor="72")["working"])


def test_above_tile_the_pattern_stands_as_it_does_beside_it():
    plain, tiled = (from_left(oblong(*some), ROLL) for some in ((), (TILE,)))
    marks = [[(strip["number"], strip["letter"], strip["mark"]["exact"]) for strip in found["stretches"][0]["strips"]]
             for found in (plain, tiled)]  # fmt: skip
    assert marks[0] == marks[1]
    assert any(piece[0] == "over" for strip in cut_along(tiled) for piece in strip)


def test_a_strip_that_turns_the_corner_of_an_alcove_is_as_short_on_both_walls():
    found = seams(alcove())
    strips = [strip for strip in found["stretches"][0]["strips"] if strip["turns"]]
    turned = [strip for strip in strips if {part["wall"] for part in strip["walls"]} in ({"w2", "w3"}, {"w3", "w4"})]
    assert turned
    assert {(piece["what"], piece["cut"]["inches"]) for strip in turned for piece in strip["pieces"]} == {("over", 28)}


def test_a_seam_over_tile_and_in_the_corner_of_an_alcove_shows_above_the_tile_alone():
    found = seams(alcove(), mismatch="corner 3")["stretches"][0]["mismatch"]
    assert found["seen"]["inches"] == 24
    assert found["said"].startswith("The pattern does not match in corner 3")


def test_between_a_vanity_and_a_cabinet_above_it_hangs_a_piece_of_its_own():
    upper = thing("wall cabinet", "40", "40", "over", sill="54", height="84", depth="12", name="upper")
    base = thing("vanity", "40", "40", "stops", height="34", depth="21", name="vanity")
    short = [("over", "wall cabinet", 96 - 84 + 4), ("under", "wall cabinet", 54 - 34 + 4)]
    assert cut_along(from_left(oblong(base, upper)))[2:4] == [short, short]


def test_a_strip_on_things_of_different_height_is_cut_to_the_lower_one():
    low = thing("vanity", "30", "20", "stops", height="34", depth="21", name="vanity")
    tall = thing("cabinet", "50", "30", "stops", height="84", depth="21", name="tall")
    cuts = cut_along(from_left(oblong(low, tall)))
    assert cuts[2] == [("over", "vanity", 96 - 34 + 4)]  # from 40 to 60, over both
    assert cuts[3] == [("over", "cabinet", 96 - 84 + 4)]


def test_tile_to_the_ceiling_leaves_nothing_to_cut():
    found = from_left(oblong(thing("tile", "40", "50", "stops", height="96")))
    assert cut_along(found)[2] == []
    said = [strip["said"] for strip in found["stretches"][0]["strips"]]
    assert any(one.endswith("nothing, what is there takes it all") for one in said)


def test_what_is_not_all_read_is_covered_over_and_of_tile_that_is_told():
    tile, vanity = ({**one, "height": []} for one in (TILE, {**VANITY, "at": "2"}))
    found = from_left(oblong(tile, vanity))
    assert {piece[0] for strip in cut_along(found) for piece in strip} == {"whole"}
    assert [one["key"] for one in found["problems"]] == ["unread-thing"]
    assert found["said"][-1] == (
        "wall 1: behind the vanity it is papered too, until you read where that begins and ends."
    )
    area = painted(oblong(tile, vanity))
    assert area["square_feet"] == 288
    assert area["missing"] == ["tile: not taken off, for its size is not read"]
    assert area["working"][1] == "vanity: the wall behind it is counted, for its size is not read"


def test_of_several_readings_those_count_that_leave_more_to_cover():
    # It begins at 41 rather than 40, and goes up to 71 rather than 72; it ends at 40 + 49.
    tile = thing("tile", ["40", "41"], ["50", "49"], "stops", sill=["12", "13"], height=["72", "71"], name="tile")
    assert painted(oblong(tile))["square_feet"] == pytest.approx(288 - (89 - 41) * (71 - 13) / 144)


@pytest.mark.parametrize(
    ("kind", "base", "behind", "hidden"),
    [
        ("vanity", "stops", "usual", True),
        ("vanity", "stops", "covered", False),
        ("toilet", "stops", "usual", False),
        ("toilet", "stops", "bare", True),
        ("medicine cabinet", "over", "usual", False),
        ("radiator", "over", "usual", False),
        ("beadboard", "over", "usual", True),
        ("wall cabinet", "over", "usual", False),
        ("tile backsplash", "over", "usual", True),
    ],
    ids=["built in", "built in later", "paper goes on", "a box round it", "off its hook", "goes on behind it",
         "runs along its face", "where it begins is unread", "stands on nothing"],
)  # fmt: skip
def test_behind_what_stands_there_it_is_covered_as_is_usual_or_as_a_person_says(kind, base, behind, hidden):
    it = thing(kind, "40", "30", base, height="34", depth="21", name="it", settings={"thing.behind": behind})
    assert ([("over", kind, 66)] in cut_along(from_left(oblong(it)))) is hidden
    assert painted(oblong(it))["square_feet"] == pytest.approx(288 - hidden * 30 * 34 / 144)


def test_the_side_of_what_stands_in_a_corner_hides_as_much_of_the_next_wall():
    # A vanity 21 deep and 34 high ends at the right corner of wall 1, 120 long: it stands against wall 2 as well.
    facts = oblong({**VANITY, "at": "90"})
    found = seams(facts, walls=["w2"], start={"of": "w2", "at": "0"})
    assert cut_along(found, "w2")[0] == [("over", "vanity", 66)]
    assert painted(facts)["square_feet"] == pytest.approx(288 - (30 + 21) * 34 / 144)
    (left, right) = (room(wall("w1", "60"), wall("w2", "60", things=[{**VANITY, "at": at}]), wall("w3", "60"),
                          wall("w4", "60")) for at in ("0", "30"))  # fmt: skip
    for facts in (left, right):
        assert painted(facts)["square_feet"] == pytest.approx((4 * 60 * 96 - (30 + 21) * 34) / 144)
    tiled = painted(oblong({**TILE, "at": "70", "depth": "1/2"}))  # tile has no side to speak of
    assert tiled["square_feet"] == pytest.approx(288 - 50 * 72 / 144)
    away, wide = oblong({**VANITY, "at": "80"}), oblong({**VANITY, "at": "90"})
    wide["walls"][0]["corner"]["corner"] = "100"  # there the wall is seen past its side
    for facts in (away, wide):
        assert painted(facts)["square_feet"] == pytest.approx(288 - 30 * 34 / 144)


def test_a_tub_that_stands_before_tile_need_not_be_read_how_tall_it_is():
    tub = thing("tub", "42", "40", "stops", depth="30", name="tub")
    before = oblong(TILE, tub)
    assert not any("tub" in line for line in [*from_left(before)["said"], *painted(before)["working"]])
    for facts in (oblong(TILE, tub | {"width": "60"}), oblong(TILE | {"sill": "16"}, tub)):
        assert any("behind the tub" in line for line in from_left(facts)["said"])


def test_a_window_in_tile_is_taken_off_once():
    window = thing("window", "50", "20", left="30", right="30", sill="50", name="window")
    found = painted(oblong(TILE, window))
    # The window reaches from 50 to 80, 8 above the tile of 50 by 72.
    assert found["square_feet"] == pytest.approx(288 - (50 * 72 + 20 * 8) / 144)
    assert found["working"][1:3] == ["− window: 4 1/6 sq ft", "− tile: 21 17/18 sq ft"]


def test_paper_begins_above_the_chair_rail_unless_it_is_said_where():
    facts = oblong(chair_rail__wanted="yes", chair_rail__height="36", chair_rail__width="2 1/2")
    lengths = [ask("seams", room=facts, roll=PLAIN, height="96", **said)["stretches"][0]["strips"][0]["pieces"][0]
               ["cut"]["inches"] for said in ({}, {"from_floor": "5 1/2"})]  # fmt: skip
    assert lengths == [96 - 38.5 + 4, 96 - 5.5 + 4]


def test_paint_above_a_wainscot_takes_off_what_is_above_it_alone():
    door = thing("door", "4", "30", left="80", right="80", name="door")
    window = thing("window", "100", "20", left="30", right="30", name="its sill unread")
    found = painted(oblong(door, TILE, window), from_floor="40", from_ceiling="6")
    assert found["square_feet"] == pytest.approx((432 * 50 - 30 * 40 - 50 * 32 - 20 * 30) / 144)
    unplaced = painted(oblong({**door, "at": []}), from_floor="40", from_ceiling="6")
    assert unplaced["square_feet"] == pytest.approx((432 * 50 - 30 * 50) / 144)


def test_tile_is_asked_how_high_it_goes_and_nothing_waits_for_where_it_begins():
    facts = oblong(thing("tile", "40", "50", "stops", name="tile"), {**VANITY, "at": "2", "height": []},
                   base__wanted="no")  # fmt: skip
    assert [need["what"] for need in ask("needs", room=facts)["needs"]] == ["height"]
    # Of what is built in it may be read, each figure once, whether or not a rail asks for it.
    upper = thing("wall cabinet", "40", "40", "over", depth="12", name="upper")
    for rail in ("no", "yes"):
        read = read_room(oblong(VANITY | {"at": "2", "height": []}, upper, chair_rail__wanted=rail))
        asked = Counter((figure.of, figure.what) for figure in derive_figures(read))
        assert asked["vanity", "height"] == asked["upper", "sill"] == asked["upper", "height"] == 1
    unplaced = oblong(thing("tile", None, None, "stops", name="tile"), base__wanted="no")
    assert [need["what"] for need in ask("needs", room=unplaced)["needs"]] == ["at", "width", "height"]


def test_tile_round_a_tub_is_no_second_thing_in_its_place_and_base_and_rail_stop_at_it():
    facts = alcove()
    assert ask("pieces", room=facts)["problems"] == []
    base = {piece["wall"]: piece["back"]["inches"] for piece in pieces(facts)}
    assert (base["w2"], base["w4"]) == (64, 64)
    facts["standard"] |= {"chair_rail.wanted": "yes", "chair_rail.height": "36"}
    rails = [piece for piece in ask("pieces", room=facts)["pieces"] if piece["part"] == "chair rail"]
    assert {piece["wall"]: piece["back"]["inches"] for piece in rails} == {"w1": 60, "w2": 64, "w4": 64}
    assert not any(flag["key"] == "plate" for piece in rails for flag in piece["flags"])


def test_from_in_front_tile_is_drawn_with_its_joints_and_a_wainscot_with_its_own():
    # Joints every 6 in: of tile 50 by 72 eight upright and eleven level, of a wainscot 50 by 36 the upright ones alone.
    boarded = thing("wainscot", "40", "50", "over", height="36", name="wainscot")
    counts = [ask("elevation", room=oblong(some), wall="w1")["drawing"].count("pencil thin")
              for some in (TILE, boarded, VANITY)]  # fmt: skip
    assert counts == [8 + 11, 8, 0]
    from_foot = ask("elevation", room=oblong({**TILE, "sill": "36"}), wall="w1")["drawing"]
    assert from_foot.count("pencil thin") == 8 + 5


def test_what_a_strip_lies_on_is_drawn_in_pencil_and_an_opening_is_not():
    found = from_left(oblong(TILE))
    for drawing in (found["drawings"][0]["drawing"], found["stretches"][0]["drawing"]):
        assert drawing.count("opening pencil") == 1
    assert ">tile</text>" in found["stretches"][0]["drawing"]


@pytest.mark.parametrize("base", ["stops", "over"])
def test_below_tile_that_begins_above_a_counter_the_base_runs_on_and_a_rail_as_high_stops_at_it(base):
    splash = thing("tile", "70", "50", base, sill="34", height="40", name="tile")
    facts = oblong(splash, chair_rail__wanted="yes", chair_rail__height="36")
    found = {(piece["part"], piece["wall"]): piece["back"]["inches"] for piece in ask("pieces", room=facts)["pieces"]}
    assert (found["base", "w1"], found["chair rail", "w1"]) == (120, 70)


def test_a_wainscot_from_corner_to_corner_is_no_second_thing_and_base_and_rail_run_along_it():
    boarded = thing("wainscot", "0", "120", "", height="36", name="wainscot")
    door = thing("door", "20", "30", left="80", right="80", name="door")
    facts = oblong(boarded, door, VANITY | {"at": "70"}, chair_rail__wanted="yes", chair_rail__height="36")
    found = ask("pieces", room=facts)
    assert found["problems"] == []
    rails = [piece["back"]["inches"] for piece in found["pieces"] if piece["part"] == "chair rail"]
    # A rail dies into the casing on either side of the door, 2 7/16 with its reveal.
    assert sorted(rails) == [17.5625, 67.5625, 96, 96, 120]
    # The wainscot, and of the door what is above it; the vanity stands before the wainscot.
    assert painted(facts)["square_feet"] == pytest.approx(288 - (120 * 36 + 30 * 44) / 144)
    boarded["height"] = "37"  # a rail across it is no rail across a plate
    assert not any(flag["key"] == "plate" for piece in ask("pieces", room=facts)["pieces"] for flag in piece["flags"])
