"""Seam plans of surveyed rooms: starts, turned corners, openings, where the pattern stands, and what cannot be."""

import itertools
import re
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.asked import ask, refusal
from tests.rooms import inches, oblong, room, thing, wall

ROLL = {"width": "20 1/2", "length": "33 ft", "repeat": "21", "match": "half-drop"}
PLAIN = {"width": "20", "length": "400", "tolerance": 0}
DOOR = thing("door", "20", "30", left="80", right="80", name="door")
WINDOW = thing("window", "70", "30", left="40", right="40", sill="30", name="window")


def seams(facts, roll=PLAIN, **more):
    return ask("seams", room=facts, roll=roll, **{"height": "96", "from_floor": "0", **more})


def strips(found):
    return [strip for stretch in found["stretches"] for strip in stretch["strips"]]


def on(found, which):
    """From and to of every strip part on a wall, from left to right."""
    parts = [part for strip in strips(found) for part in strip["walls"] if part["wall"] == which]
    return sorted((part["start"]["inches"], part["end"]["inches"]) for part in parts)


def test_one_wall_with_a_seam_on_its_middle():
    found = seams(oblong(), walls=["w1"], start={"of": "w1", "how": "seam"})
    assert on(found, "w1") == [(0, 20), (20, 40), (40, 60), (60, 80), (80, 100), (100, 120)]
    assert found["stretches"][0]["start"] == "A seam stands on the middle of wall 1."
    assert [strip["number"] for strip in strips(found)] == [1, 2, 3, 4, 5, 6]
    assert strips(found)[3]["walls"][0]["end"]["inches"] == 60  # to the left of the start once the right is hung


def test_one_wall_with_a_strip_on_its_middle():
    found = seams(oblong(), walls=["w1"], start={"of": "w1", "how": "strip"})
    assert on(found, "w1") == [(0, 10), (10, 30), (30, 50), (50, 70), (70, 90), (90, 110), (110, 120)]
    # The two ends are 10 in each: one strip is cut for both, and none is spent on the second.
    assert [strip["beside"] for strip in strips(found)] == [None] * 6 + [4]
    assert found["rolls"]["nominal"] == 2
    assert sum(len(roll["pieces"]) for roll in found["cutting"]) == 6


def test_a_plumb_start_stands_where_it_was_marked():
    found = seams(oblong(), walls=["w1"], start={"of": "w1", "at": "7 1/2"})
    assert on(found, "w1")[:2] == [(0, 7.5), (7.5, 27.5)]


def test_a_strip_may_stand_on_the_middle_of_an_opening():
    found = seams(oblong(WINDOW), walls=["w1"], start={"of": "window", "how": "strip"})
    assert (75, 95) in on(found, "w1")


def test_what_turns_an_inside_corner_is_lost_under_the_next_part():
    found = seams(oblong(), start={"of": "w1", "at": "3"}, turn="1/2")
    turned = next(strip for strip in strips(found) if strip["turns"])
    first, second = (part["end"]["inches"] - part["start"]["inches"] for part in turned["walls"])
    assert first + second + 0.5 == 20
    assert "on wall 1, then" in turned["turns"][0]


def test_an_outside_corner_is_wrapped_and_loses_nothing():
    facts = room(wall("a", "50", turn="outside"), wall("b", "50"), closed=False)
    found = seams(facts, start={"of": "a", "at": "0"})
    wrapped = next(strip for strip in strips(found) if strip["turns"])
    assert sum(part["end"]["inches"] - part["start"]["inches"] for part in wrapped["walls"]) == 20


def test_over_and_under_a_window_only_short_pieces_are_cut():
    found = seams(oblong(WINDOW), walls=["w1"], start={"of": "window", "how": "strip"})
    (strip,) = (strip for strip in strips(found) if len(strip["pieces"]) == 2)
    # 96 to the ceiling less the window's top at 70 is 26, under its sill 30: each with 4 of trim.
    assert [(piece["what"], piece["cut"]["inches"]) for piece in strip["pieces"]] == [("over", 30), ("under", 34)]
    assert [piece["over"] for piece in strip["pieces"]] == ["window", "window"]


def test_casing_takes_its_part_of_the_wall():
    facts = oblong(WINDOW | {"head_corners": ["90", "90"]}, casing__wanted="yes", casing__width="2 1/4", reveal="1/4")
    found = seams(facts, walls=["w1"], start={"of": "window", "how": "strip"})
    (strip,) = (strip for strip in strips(found) if len(strip["pieces"]) == 2)
    # Read from where the stool will lie, 3/4 below its top at 30: the head is at 69 1/4, and casing ends at 69 1/4
    # + 1/4 + 2 1/4 = 71 3/4, as far up as the legs take it that stand on the stool, 41 3/4 long.
    legs = [piece for piece in ask("pieces", room=facts)["pieces"] if piece["part"] == "left leg"]
    assert [max(inches(leg["back"]), inches(leg["front"])) for leg in legs] == [41.75]
    assert strip["pieces"][0]["cut"]["inches"] == 96 - (30 + 41.75) + 4


def test_paper_ends_at_the_foot_of_crown_unless_it_is_said_where():
    # Crown of 3 5/8 at 38° comes down 3.625 x cos 38° = 2.857, a sixteenth less at most: 2 13/16.
    plain, crowned = (oblong(**more) for more in ({}, {"crown__wanted": "yes"}))
    cuts = [strips(seams(facts, walls=["w1"], **said))[0]["pieces"][0]["cut"]["inches"]
            for facts, said in ((plain, {}), (crowned, {}), (crowned, {"from_ceiling": "5"}))]  # fmt: skip
    assert cuts == [96 + 4, 96 - 2.8125 + 4, 96 - 5 + 4]


def test_pieces_over_openings_come_from_what_is_left_of_a_roll():
    # Three strips of 100 leave 100 of a roll of 400, less what the pattern and the shorter pieces take.
    found = seams(oblong(DOOR, WINDOW), walls=["w1"], start={"of": "window", "how": "strip"})
    short = [piece for strip in strips(found) for piece in strip["pieces"] if piece["what"] != "whole"]
    assert short
    assert all(piece["place"] > 1 for piece in short)
    assert found["proven"]


def test_on_a_roll_every_piece_lies_where_the_pattern_stands_as_it_must():
    found = seams(oblong(DOOR, WINDOW), roll=ROLL | {"match": "drop", "drop": 3})
    by_number = {strip["number"]: strip for strip in strips(found)}
    for roll in found["cutting"]:
        tops = []
        for piece in roll["pieces"]:
            strip = by_number[piece["strip"]]
            # From the piece's top edge down to the mark: an under-piece's top is at 96 − 30 down, less half its trim.
            below = 0 if piece["what"] != "under" else 96 - 30
            mark = Fraction(strip["mark"]["exact"]) - below
            tops.append((Fraction(piece["down"]["exact"]) + mark) % 21)
        assert len(set(tops)) == 1, roll


def test_letters_follow_the_strips_as_they_hang():
    found = seams(oblong(), roll=ROLL, walls=["w1"], start={"of": "w1", "how": "seam"})
    in_place = sorted(strips(found), key=lambda strip: strip["walls"][0]["start"]["inches"])
    letters = "".join(strip["letter"] for strip in in_place)
    assert letters in ("ABABAB", "BABABA")
    assert {strip["letter"]: strip["mark"]["shown"] for strip in in_place} == {"A": '2"', "B": '12 1/2"'}


def test_round_a_room_the_ends_meet_over_the_door_where_the_seam_is_shortest():
    found = seams(oblong(DOOR))
    mismatch = found["stretches"][0]["mismatch"]
    assert mismatch["of"] == "door"
    assert mismatch["seen"]["inches"] == 16
    assert "does not match at the door" in mismatch["said"]


def test_the_mismatch_goes_where_it_is_wanted():
    found = seams(oblong(DOOR), mismatch="corner 3")
    mismatch = found["stretches"][0]["mismatch"]
    assert (mismatch["of"], mismatch["seen"]["inches"]) == ("corner 3", 96)
    refused = refusal("seams", room=oblong(DOOR), roll=PLAIN, height="96", mismatch="stove")
    assert refused[:2] == ("no-such-start", "mismatch")


def test_no_seam_stands_within_two_inches_of_a_corner_where_that_can_be():
    # Five strips of 20 on 100 begin in the corner unless somebody looks: a seam 20 from it is free, at 1 it is not.
    near = {"start": {"of": "w1", "at": "1"}}
    best, chosen = (seams(oblong(), **more)["stretches"][0]["slivers"] for more in ({}, near))
    assert best == 0
    assert chosen > 0


def test_walls_that_are_not_papered_part_the_stretch():
    found = seams(oblong(), walls=["w1", "w3"])
    for stretch, which in zip(found["stretches"], ("w1", "w3"), strict=True):
        assert {part["wall"] for strip in stretch["strips"] for part in strip["walls"]} == {which}
    assert [stretch["mismatch"] for stretch in found["stretches"]] == [None, None]
    numbers = [strip["number"] for strip in strips(found)]
    assert numbers == list(range(1, len(numbers) + 1))


def test_walls_over_the_first_corner_are_one_stretch():
    (stretch,) = seams(oblong(), walls=["w4", "w1"])["stretches"]
    assert {part["wall"] for strip in stretch["strips"] for part in strip["walls"]} == {"w4", "w1"}


def test_panels_between_rails_are_hung_each_by_itself_out_of_the_same_rolls():
    panel = {"wall": "w1", "width": "30", "bottom": "35", "top": "80"}
    found = seams(oblong(), panels=[{**panel, "at": "10"}, {**panel, "at": "50", "name": "middle"}])
    assert len(found["stretches"]) == 2
    assert {piece["cut"]["inches"] for strip in strips(found) for piece in strip["pieces"]} == {49}
    assert on(found, "w1")[0][0] == 10
    assert found["rolls"]["guaranteed"] == 1
    assert [one["name"] for one in found["drawings"]] == ["panel 1", "middle"]


def test_a_narrow_panel_has_the_name_that_a_person_gave_it_and_a_narrow_wall_its_number():
    panel = {"wall": "w1", "at": "10", "width": "5", "bottom": "35", "top": "90", "name": "wall art"}
    hung = seams(oblong(), panels=[panel])["stretches"][0]["drawing"]
    assert re.findall(r"small pencil[^>]*>([^<]+)<", hung) == ["wall art"]
    narrow = seams(room(*(wall(f"w{n}", "6") for n in range(1, 5))))["stretches"][0]["drawing"]
    assert re.findall(r"small pencil[^>]*>([^<]+)<", narrow) == ["1", "2", "3", "4"]


def test_a_panel_past_its_wall_is_told_and_the_others_are_hung():
    panel = {"wall": "w1", "width": "30", "bottom": "35", "top": "80"}
    found = seams(oblong(), panels=[{**panel, "at": "10"}, {**panel, "at": "100"}])
    assert [(one["wall"], one["key"]) for one in found["problems"]] == [("w1", "past-the-end")]
    assert len(found["stretches"]) == 1


def test_paper_that_laps_covers_less_with_each_strip():
    plain, lapped = (len(strips(seams(oblong(), PLAIN | more, walls=["w1"], start={"of": "w1", "at": "0"})))
                     for more in ({}, {"hanging": "peel and stick"}))  # fmt: skip
    assert (plain, lapped) == (6, 7)


def test_paper_begins_above_the_base_unless_told_otherwise():
    facts = oblong(base__height="6")
    (cut,) = {piece["cut"]["inches"] for strip in strips(ask("seams", room=facts, roll=PLAIN, height="96"))
              for piece in strip["pieces"]}  # fmt: skip
    assert cut == 94
    found = seams(facts, from_floor="36", from_ceiling="10")
    assert {piece["cut"]["inches"] for strip in strips(found) for piece in strip["pieces"]} == {54}


def test_a_roll_shorter_than_a_strip_is_told_and_the_strips_are_still_listed():
    found = seams(oblong(), PLAIN | {"length": "90"})
    assert [one["key"] for one in found["problems"]] == ["no-strip"]
    assert (found["rolls"], found["proven"]) == ({"nominal": None, "guaranteed": None}, False)
    assert found["strips"] >= 22
    assert found["cutting"] == []


def test_a_repeat_longer_than_the_roll_gives_no_strip_for_certain():
    found = seams(oblong(), PLAIN | {"match": "straight", "repeat": "401"})
    assert [one["key"] for one in found["problems"]] == ["no-strip"]
    assert found["rolls"]["nominal"] is not None


def test_what_was_not_read_is_told_and_papered_over():
    facts = oblong(thing("door", "20", "30", name="door"))
    facts["walls"][1].pop("length")
    found = seams(facts)
    assert sorted(one["key"] for one in found["problems"]) == ["no-length", "unread-opening"]
    assert all(piece["what"] == "whole" for strip in strips(found) for piece in strip["pieces"])
    assert len(found["stretches"]) == 1  # from wall 3 round to wall 1


def test_a_wall_without_height_is_as_tall_as_the_tallest_and_told():
    facts = oblong()
    facts["walls"][0]["height"] = ["95", "96"]
    found = ask("seams", room=facts, roll=PLAIN, from_floor="0")
    assert {one["key"] for one in found["problems"]} == {"no-height"}
    assert {piece["cut"]["inches"] for strip in strips(found) for piece in strip["pieces"]} == {100}


@pytest.mark.parametrize(
    ("more", "key", "field"),
    [
        ({"walls": ["w9"]}, "no-such-wall", "walls"),
        ({"start": {"of": "stove"}}, "no-such-start", "start.of"),
        ({"roll": {"width": "1/64", "length": "400"}}, "too-many", "roll.width"),
        ({"height": "5", "from_floor": "6"}, "no-walls", "room"),
        ({"panels": [{"wall": "w9", "at": "0", "width": "9", "bottom": "0", "top": "9"}]}, "no-such-wall", "panels"),
    ],
)
def test_what_cannot_be_planned_is_refused(more, key, field):
    assert refusal("seams", **{"room": oblong(), "roll": PLAIN, "height": "96", **more})[:2] == (key, field)


def test_the_list_is_said_to_cut_by_and_walls_are_drawn():
    found = seams(oblong(DOOR), roll=ROLL)
    assert strips(found)[0]["said"].startswith('1 A: 100" from roll ')
    assert len(found["drawings"]) == 4
    assert all(one["drawing"].startswith("<svg") for one in found["drawings"])
    assert found["said"][0].endswith("cannot be cut from fewer.")


@pytest.mark.parametrize(("match", "letters"), [("half-drop", {"A", "B"}), ("straight", set())])
def test_where_the_pattern_drops_each_strip_is_drawn_with_its_letter(match, letters):
    found = seams(oblong(), roll=ROLL | {"match": match})
    flat = "".join(one["drawing"] for one in found["stretches"])
    assert set(re.findall(r">([A-L])<", flat)) == letters
    assert set(re.findall(r">\d+ ([A-L])<", found["drawings"][0]["drawing"])) == letters


lengths = st.integers(30 * 4, 150 * 4).map(lambda n: str(n / 4))
rolls = st.sampled_from([PLAIN, ROLL, ROLL | {"match": "straight"}, ROLL | {"match": "drop", "drop": 3}])


@given(lengths, lengths, rolls, st.booleans(), st.sampled_from(["w0", "w1", "w2"]))
def test_every_inch_of_every_wall_is_covered_once(one, other, roll, outside, start):
    facts = room(*(wall(f"w{n}", length) for n, length in enumerate((one, other, one, other))))
    if outside:
        facts = room(wall("w0", one, turn="outside"), wall("w1", other), wall("w2", one), closed=False)
    found = seams(facts, roll, start={"of": start})
    for each in facts["walls"]:
        parts = on(found, each["id"])
        assert parts[0][0] == 0
        assert parts[-1][1] == pytest.approx(float(Fraction(each["length"])))
        for before, after in itertools.pairwise(parts):
            assert after[0] == before[1]
    area = sum(Fraction(each["length"]) for each in facts["walls"]) * 96
    assert found["rolls"]["guaranteed"] >= found["rolls"]["nominal"]
    assert found["rolls"]["nominal"] * Fraction(41, 2) * 400 >= area


def two_walls_apart(**more):
    return seams(oblong(), walls=["w1", "w3"], roll={**ROLL, "match": "straight"}, **more)


def test_each_stretch_may_be_told_its_start_and_the_others_are_still_searched():
    found = two_walls_apart(starts=[{"of": "w3", "how": "strip"}])
    assert [stretch["tried"] > 1 for stretch in found["stretches"]] == [True, False]
    assert found["stretches"][1]["start"] == "A strip stands on the middle of wall 3."
    assert refusal("seams", room=oblong(), roll=PLAIN, height="96", walls=["w1"], starts=[{"of": "w3"}])[:2] == (
        "no-such-start", "start.of",
    )  # fmt: skip


def test_a_start_that_is_kept_gives_the_same_strips_again():
    found = two_walls_apart()
    again = two_walls_apart(starts=[stretch["keep"] for stretch in found["stretches"]])
    assert [stretch["tried"] for stretch in again["stretches"]] == [1, 1]
    assert strips(again) == strips(found)
    round_the_room = seams(oblong(DOOR, WINDOW), roll=ROLL)
    kept = seams(oblong(DOOR, WINDOW), roll=ROLL, starts=[round_the_room["stretches"][0]["keep"]])
    assert strips(kept) == strips(round_the_room)
