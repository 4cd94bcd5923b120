"""Boards along walls and what is put on casing told whole, as they are read at the saw. Figures by hand."""

from tests.engine.test_cards import card, lines
from tests.engine.test_footprint import bare
from tests.rooms import Facts, ask, oblong, room, thing, wall

DOOR = thing("door", "40", "30", left="80", right="80", head_corners=["90", "90"])


def cards(facts: Facts) -> dict[str, list[str]]:
    """By what each is called; without its ± at the end of the first line, which test_cards holds."""
    found = {piece["part_name"]: card(piece)[1:] for piece in ask("pieces", facts)["pieces"]}
    return {name: [line for line in told if not line.startswith(".not-set")] for name, told in found.items()}


def alcove() -> dict[str, list[str]]:
    """Walls of 120, 100, 60 and 50, with a cabinet in the first corner; the third is outside."""
    cabinet = thing("cabinet", "84", ["36", "35 15/16"], "stops", name="c", depth="24", height="34 1/2")
    walls = (wall("w1", "120", things=[{**DOOR, "at": "20"}, cabinet]), wall("w2", "100", corner="91"),
             wall("w3", "60", turn="outside"), wall("w4", "50", corner="89"))  # fmt: skip
    facts = room(*walls, closed=False, toe__height="4", toe__depth="3", shoe__wanted="yes", crown__wanted="yes")
    return cards(facts)


def test_base_is_told_by_what_it_ends_at_and_what_its_cope_takes():
    # 100 − 24. In a corner of 91 a face of 9/16 loses 9/16 × cot 45.5° = 0.5528: 35/64.
    assert alcove()["base, wall 2"] == lines('''
    left: square; meets the cabinet on wall 1
    right: cope, 45°; meets corner 2
    + wall 2: 100" as 100
    − depth of the cabinet on wall 1: 24" as 24
    = along the wall: 76"
    right end, inside corner, gauge 91°: cope, saw 45° from square (point 45°); face shorter by: 35/64"
    = back: 76"
    = face: 75 29/64"
    ± 1/16" 19 times in 20; 3/32" were all 3 readings and marks out at once:
    ''')


def test_base_round_an_outside_corner_gains_its_own_thickness_at_the_face():
    assert alcove()["base, wall 3"] == lines('''
    left: square; meets corner 2
    right: outside miter, 45°; meets corner 3
    + wall 3: 60" as 60
    left end, inside corner, gauge 91°: square:
    right end, outside corner, gauge 90°: miter, saw 45° from square (point 45°); face longer by: 9/16"
    = back: 60"
    = face: 60 9/16"
    ± 1/16" 19 times in 20; 1/16" were all 3 readings and marks out at once:
    ''')


def test_shoe_is_told_by_the_face_of_the_base_that_it_begins_at_and_the_toe_kick_that_it_ends_at():
    # 24 deep less 3; 100 − 0.5528 − 21.
    assert alcove()["shoe, wall 2"] == lines('''
    left: square; meets the toe kick of the cabinet on wall 1
    right: cope, 45°; meets corner 2
    + wall 2: 100" as 100
    − the face of the base in corner 2: 35/64"
    − depth of the toe kick of the cabinet on wall 1: 21" as 24
    = along the wall: 78 29/64"
    right end, inside corner, gauge 91°: cope, saw 45° from square (point 45°); face shorter by: 31/64"
    = back: 78 29/64"
    = face: 77 61/64"
    ± 1/16" 19 times in 20; 3/32" were all 3 readings and marks out at once:
    ''')


def test_the_strip_below_a_cabinet_is_told_by_its_sides():
    assert alcove()["base of the toe kick, wall 1, cabinet"] == lines('''
    left: square; the side of the cabinet
    right: square; the side of the cabinet
    the cabinet, side to side: 35 15/16" as 36 | 35 15/16
    .toe: Rip it to 4", the height of the toe kick.
    ''')
    assert not any(line.startswith(".toe") for line in alcove()["shoe of the toe kick, wall 1, cabinet"])


def test_crown_is_told_by_both_ways_to_set_the_saw_and_the_lines_to_snap():
    # At 38° a crown of 3 5/8 stands 3 5/8 × sin 38° = 2.2318 out and 3 5/8 × cos 38° = 2.8565 down; in a corner of 91
    # the ceiling edge loses 2.2318 × cot 45.5° = 2.1932.
    assert alcove()["crown, wall 3"] == lines('''
    left: cope, 31.2° with bevel 33.5°; meets corner 2
    right: outside miter, 31.6° with bevel 33.9°; meets corner 3
    + wall 3: 60" as 60
    left end, inside corner, gauge 91°: cope, flat, miter 31.2° and bevel 33.5°; nested, saw 44.5°; ceiling edge shorter
      by: 2 3/16"
    right end, outside corner, gauge 90°: miter, flat, miter 31.6° and bevel 33.9°; nested, saw 45°; ceiling edge longer
      by: 2 15/64"
    = wall edge: 60"
    = ceiling edge: 60 1/32"
    lines to snap: 2 55/64" down the wall from the ceiling, 2 15/64" out along the ceiling:
    ± 1/16" 19 times in 20; 5/64" were all 3 readings and marks out at once:
    .corner-at-floor: Corner 2 was read at the floor, and that stands in for the ceiling's.
    .corner-at-floor: Corner 3 was read at the floor, and that stands in for the ceiling's.
    ''')


def test_the_two_boards_of_a_scarf_are_told_with_the_stud_and_which_lies_under():
    # A face of 9/16 at 30° laps 9/16 × tan 30° = 0.3248, half of it 0.1624 either way of the stud.
    facts = oblong(thing("door", "30", "30 1/8"), base__stock=[{"length": "8 ft", "price": "1"}])
    facts["walls"][2]["studs"] = "14 1/2, every 16"
    found = cards(facts)
    assert found['base, wall 3, right of the scarf at 94 1/2"'] == lines('''
    left: scarf, 30°, long at the back; meets the scarf at 94 1/2"
    right: square; meets corner 3
    + wall 3: 120" as 120
    − to the stud's middle: 94 1/2" as 14 1/2, every 16
    + half the scarf: 5/32"
    = along the wall: 25 21/32"
    left end: scarf, saw 30° from square (point 60°); face shorter by: 21/64"
    right end, inside corner, gauge 90°: square:
    = back: 25 21/32"
    = face: 25 11/32"
    joined on the stud at 94 1/2": of 5 ways to join it, the best: the boards cost the same, and 69 7/16" is left of
      one, on the stud at 62 1/2" 37 5/8":
    ± 1/16" 19 times in 20; 3/32" were all 3 readings and marks out at once:
    .scarf: Its left end lies under: on the stud. Glue it, and nail it to the stud.
    ''')
    assert found['base, wall 3, left of the scarf at 94 1/2"'][-1] == (
        ".scarf: Its right end laps over the board beyond, which is up: cut it to what is left. "
        "Glue it, and nail it to the stud."
    )


def test_a_run_that_ends_in_the_air_is_told_with_its_return():
    facts = room(wall("w1", "60", things=[{**DOOR, "at": "20"}]), wall("w2", "40"), closed=False, casing__wanted="yes",
                 open_end="returned")  # fmt: skip
    found = cards(facts)
    assert found["base, wall 1, left of the door"] == lines('''
    left: return, 45°, long at the face; meets a free end
    right: square; meets the door
    + to the door: 20" as 20
    − reveal (common practice, until you set it): 3/16"
    − casing (common practice, until you set it): 2 1/4"
    = along the wall: 17 9/16"
    − what the return takes, at the left: 9/16"
    left end: return, saw 45° from square (point 45°); face longer by: 9/16"
    = back: 17"
    = face: 17 9/16"
    ''')
    assert found["base return, wall 1, left of the door, left end"] == lines('''
    left: square; meets the wall
    right: return, 45°, long at the face; meets the left end of its base
    thickness of the stock: 9/16"
    = back: 0"
    = face: 9/16"
    .returns: Glue them: they are too small to nail. Cut both returns of this profile off the end of one blank of
      13 3/8" or more.
    ''')
    assert found["base return, wall 2, right end"][:2] == [
        "left: return, 45°, long at the face; meets the right end of its base", "right: square; meets the wall",
    ]  # fmt: skip


def test_a_return_held_back_from_a_corner_that_is_not_square_says_by_how_much_apart_from_what_it_takes():
    # By hand: 40 - 9/16 - 1/8 = 39 5/16 along the back; 39 5/16 + 9/16 = 39 7/8 along the face.
    tub = thing("tub", "0", "30", "stops", height="20")
    facts = room(wall("w1", "40", "outside", "89.5"), wall("w2", "30", things=[tub]), closed=False)
    assert cards(facts)["base, wall 1"][2:] == lines('''
    + wall 1: 40" as 40
    − what the return takes, at the right: 9/16"
    − held back from the corner, which is not square, at the right: 1/8"
    right end: return, saw 45° from square (point 45°); face longer by: 9/16"
    = back: 39 5/16"
    = face: 39 7/8"
    ''')


def test_base_and_shoe_that_are_wrapped_into_an_opening_are_told_in_its_reveal():
    facts = bare(**{"casing.arris": "wrapped"})
    assert cards(facts)["base, wall 1, left of the arris of the cased opening"][-1] == (
        "!reveal-unread: How deep the cased opening is, is not read: the piece that goes on into it waits for that."
    )
    facts["walls"][0]["openings"][0]["depth"] = ["4 1/2", "4 9/16"]
    found = cards(facts)
    # Into it 4 1/2, and the shoe 9/16 more, for it lies on the base.
    assert found["base, wall 1, in the reveal of the cased opening, its left side"][:5] == lines('''
    left: miter, 45°, long at the face; meets the base on wall 1
    right: square; meets its end
    + depth of the reveal: 4 1/2" as 4 1/2 | 4 9/16
    = back: 4 1/2"
    = face: 5 1/16"
    ''')
    assert found["shoe, wall 1, in the reveal of the cased opening, its right side"][:5] == lines('''
    left: square; meets its end
    right: miter, 45°, long at the face; meets the shoe on wall 1
    + depth of the reveal: 4 1/2" as 4 1/2 | 4 9/16
    + what it lies on, round the arris: 9/16"
    = back: 5 1/16"
    ''')


def test_a_butted_head_with_blocks_fillet_and_cap_is_told_by_what_each_stands_past():
    # Blocks of 2 1/2 on legs of 2 1/4 stand (2 1/2 − 2 1/4)/2 = 1/8 past them; overhangs of 1/2 are theirs to cover.
    built = {"block__size": "2 1/2", "fillet__thickness": "1/2", "head_cap__thickness": "3/4"}
    found = cards(oblong(DOOR, casing__wanted="yes", head="butted", casing__overhang="1/2", **built))
    assert found["left leg, wall 1, door"] == lines('''
    left: foot; meets the floor
    right: butt; meets the head
    + height at the left: 80" as 80
    + reveal: 3/16"
    = either edge: 80 3/16"
    − what its block stands past it: 1/8"
    = with corner blocks: 80 1/16"
    ''')
    assert found["left corner block, wall 1, door"] == lines('''
    left: square; meets the casing
    right: square; meets the casing
    corner block, as it is set: 2 1/2"
    .block: As wide as it is long: its grain runs with the leg's.
    .short: Too short to hold at the saw: cut it from the end of a blank of 14 5/8" or more.
    ''')
    assert found["head, wall 1, door"][6:] == lines('''
    + overhang at the left: 1/2"
    + the right leg: 2 1/4"
    + overhang at the right: 1/2"
    = end to end: 35 7/8"
    − the legs and overhangs that the blocks stand over: 5 1/2"
    = with corner blocks: 30 3/8"
    − what the two blocks stand past the legs: 1/4"
    = with corner blocks: 30 1/8"
    ''')
    assert found["head cap, wall 1, door"] == lines('''
    left: square; meets nothing: it stands past the head
    right: square; meets nothing: it stands past the head
    + the head, end to end: 30 1/8"
    + overhang, at both ends: 1 1/2"
    = end to end: 31 5/8"
    ''')


def test_a_backband_is_told_from_the_outer_edge_that_it_lies_on_and_its_working_adds_up():
    # 1 1/8 × cot 44° = 1.1650 at the head; the floor is 2.1° off the left leg: 1 1/8 × tan 2.1° = 0.041 less.
    door = thing("door", "40", "30", left="80", right="80", head_corners=["88", "90"])
    found = cards(oblong(door, casing__wanted="yes", backband__width="1 1/8"))
    assert found["left leg backband, wall 1, door"] == lines('''
    left: foot, 2.1°, long at the inner edge; meets the floor
    right: miter, 46°, long at the outer edge; meets the head
    outer edge of the left leg: 82 7/16"
    + its miter across the band: 1 11/64"
    − at its foot, across the band: 3/64"
    = outer edge of the band: 83 9/16"
    ''')
    assert found["head backband, wall 1, door"][2:] == lines('''
    outer edge of the head: 34 31/32"
    + its miter across the band: 1 11/64"
    + its miter across the band: 1 1/8"
    = outer edge of the band: 37 1/4"
    ''')
    assert '− backband: 1 1/8"' in found["base, wall 1, left of the door"]


def test_blocking_is_told_by_the_triangle_to_rip_and_how_far_it_stops_short():
    # 96 less twice the 2.2318 that the crown stands out.
    found = cards(oblong(crown__wanted="yes", blocking__wanted="yes"))
    assert found["crown blocking, wall 2"] == lines('''
    left: square; nothing: it stops short
    right: square; nothing: it stops short
    + wall edge of its crown: 96"
    − short of its left end, as far as the crown stands out: 2 15/64"
    − short of its right end, as far as the crown stands out: 2 15/64"
    = blocking: 91 17/32"
    .rip: Rip it to a triangle, 2 29/64" down the wall by 1 59/64" along the ceiling: its face leaves the wall at 38°.
      Screw it to studs and joists before the crown goes up.
    ''')


def test_a_batten_is_told_by_its_gap_its_mark_and_what_it_would_lie_over():
    # (137 5/16 − 9 × 2 1/2) ÷ 8 = 14.3516; the second stands at 14.3516 + 2 1/2 and ends 2.3516 past the 17.
    facts = oblong(thing("outlet", "17", "3", "over"))
    facts["walls"][0] |= {"length": "137 5/16", "settings": {
        "battens.count": "9", "battens.width": "2 1/2", "battens.height": "40"}}  # fmt: skip
    assert cards(facts)["batten, wall 1, 2 of 9"] == lines('''
    left: square; meets the floor side
    right: square; meets the ceiling side
    height, as this wall's battens are wanted: 40"
    stretch of wall for 9 battens: 137 5/16"
    gap: (137 5/16 − 9 × 2 1/2) ÷ 8: 14 11/32"
    its left edge, from the left end of the stretch, ± 1/16": 16 27/32"
    !clash: It would lie 2 11/32" over the outlet. 11 or 7 or 12 or 6 battens would clear it.
    ''')
