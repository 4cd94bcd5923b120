"""Pieces round an opening told whole, as they are read at the saw: ends, working, what is told. Figures by hand."""

from tests.rooms import Facts, ask, oblong, thing

CASED = {"casing__wanted": "yes", "base__wanted": "no"}
SQUARE = {"head_corners": ["90", "90"]}


def card(piece: Facts) -> list[str]:
    """What a person reads of a piece: what it is cut from, how far it may be out, its ends, its working, its flags."""
    out = piece["plus_minus"]["inches"]
    said = [f"{piece['part_name']}: {piece['cut']['shown']} of {piece['profile_shown']}, {piece['cut_from']}, ± {out}"]
    said += [f"{end}: {piece[end]['shown']}; {piece[end]['said']}" for end in ("left", "right")]
    for step in piece["working"]:
        value = f" {step['value']['shown']}" if step["value"] else ""
        said.append(f"{step['text']}:{value}{' as ' * bool(step['readings'])}{' | '.join(step['readings'])}")
    return said + [f"{'!' if flag['attention'] else '.'}{flag['key']}: {flag['message']}" for flag in piece["flags"]]


def lines(text: str) -> list[str]:
    """What is expected, a line each; one that is indented goes on with the one before."""
    return text.replace("\n      ", " ").strip().replace("\n    ", "\n").splitlines()


def cards(facts: Facts) -> dict[str, list[str]]:
    found = {piece["part"]: card(piece) for piece in ask("pieces", facts)["pieces"]}
    return {part: [line for line in told if not line.startswith(".not-set")] for part, told in found.items()}


def by_a_side_wall() -> dict[str, list[str]]:
    """A window 2 7/8 from a side wall whose corner is 92, its heights and its sash read twice."""
    window = thing("window", "2 7/8", "30", left=["48", "48 1/8"], right="48", sash=["4 1/2", "4 5/8"], **SQUARE)
    facts = oblong(window, reveal="1/4", **CASED)
    facts["walls"][3]["corner"]["corner"] = "92"
    return cards(facts)


def test_a_stool_is_told_by_its_horns_its_notches_and_the_side_wall_that_it_ends_at():
    # At the left it ends at the wall, 2 7/8 from the jamb: 3/8 past casing and reveal. 2 7/8 + 30 + 1/4 + 2 1/4 + 1/2.
    # Its front edge, 11/16 + 1/2 before the wall, reaches 1 3/16 × tan 2° = 0.041 farther.
    # Ripped: 4 1/2 − 1/16 + 1 3/16.
    # Two readings and a mark, a 32nd each: 1.96/32 × √(3/3) = 0.06125.
    assert by_a_side_wall()["stool"] == lines('''
    stool, wall 1, window: 35 15/16" of stool 3/4, along the outer edge, ± 0.06125
    left: square, 2°, long at the outer edge; meets the side wall
    right: square; a free end
    + width between the jambs: 30" as 30
    + reveal, at both ends: 1/2"
    + casing at the left: 2 1/4"
    + horn at the left: 3/8"
    + casing at the right: 2 1/4"
    + horn at the right: 1/2"
    = end to end: 35 7/8"
    + closed sash to the wall (smallest of 2 readings): 4 1/2" as 4 1/2 | 4 5/8
    − play at the sash: 1/16"
    + the casing's thickness: 11/16"
    + past the casing in front, as a horn is long: 1/2"
    = rip it so wide: 5 5/8"
    ± 1/16" 19 times in 20; 3/32" were all 3 readings and marks out at once:
    .order: The stool: extension and legs stand on it.
    .opening: Height at the left reads from 48" to 48 1/8": cut to the smallest, for what stands between.
    .opening: The side wall leaves 3/8" of the horn at the left: the stool ends square against it.
    .opening: The depth from sash to wall differs by 1/8": the least counts, scribe the rest.
    .note: Between the jambs it is 30" long; the horns begin at the plane of the wall.
    .note: Notch its back corners for the wall: 2 7/8" along at the left and 3" along at the right, 4 9/16" deep from
      the edge at the sash; scribe that to the wall.
    ''')


def test_legs_and_head_on_a_stool_are_told_with_what_they_stand_on_and_meet():
    found = by_a_side_wall()
    assert found["left leg"] == lines('''
    left leg, wall 1, window: 49 3/4" of casing 11/16 × 2 1/4, along the outer edge, ± 0.05001
    left: foot; meets the stool
    right: miter, 45°, long at the outer edge; meets the head
    + height at the left (smallest of 2 readings): 48" as 48 | 48 1/8
    + reveal: 1/4"
    − the stool it stands on: 3/4"
    = inner edge: 47 1/2"
    + at the top, miter, saw 45° from square (point 45°), across the head: 2 1/4"
    = outer edge: 49 3/4"
    .order: The legs, and the head to fit them.
    ''')
    assert found["right leg"][1:4] == [
        "left: miter, 45°, long at the outer edge; meets the head", "right: foot; meets the stool",
        '+ height at the right: 48" as 48',
    ]  # fmt: skip
    assert found["head"] == lines('''
    head, wall 1, window: 35" of casing 11/16 × 2 1/4, along the outer edge, ± 0.05001
    left: miter, 45°, long at the outer edge; meets the left leg
    right: miter, 45°, long at the outer edge; meets the right leg
    + width between the jambs: 30" as 30
    + reveal, at both ends: 1/2"
    = short point to short point: 30 1/2"
    + at the left, miter, saw 45° from square (point 45°), across the leg: 2 1/4"
    + at the right, miter, saw 45° from square (point 45°), across the leg: 2 1/4"
    = long point to long point: 35"
    ''')


def test_an_apron_is_told_by_its_face_and_its_returns_by_what_they_meet():
    found = by_a_side_wall()
    # As wide as the casing outside: 30 1/2 + 2 × 2 1/4 = 35; behind each return it is 11/16 shorter.
    assert found["apron"] == lines('''
    apron, wall 1, window: 35" of casing 11/16 × 2 1/4, along the face, ± 0.05001
    left: return, 45°, long at the face; meets its return
    right: return, 45°, long at the face; meets its return
    + between the legs, along the stool: 30 1/2"
    + the left leg: 2 1/4"
    + the right leg: 2 1/4"
    = face: 35"
    − the return at the left: 11/16"
    − the return at the right: 11/16"
    = back: 33 5/8"
    .order: The apron last, as long as the casing is wide.
    ''')
    # One pencil mark, a 32nd. The blank: two returns of 11/16, a kerf of 1/8 to each, and 12 to hold.
    assert found["apron return, left"] == lines('''
    apron return, left, wall 1, window: 11/16" of casing 11/16 × 2 1/4, along the face, ± 0.03125
    left: square; meets the wall
    right: return, 45°, long at the face; meets the apron
    + the apron's thickness: 11/16"
    .returns: Glue them: they are too small to nail. Cut both returns of this profile off the end of one blank of
      13 5/8" or more.
    ''')
    assert found["apron return, right"][1:] == [
        "left: return, 45°, long at the face; meets the apron", "right: square; meets the wall",
        '+ the apron\'s thickness: 11/16"',
    ]  # fmt: skip


def framed() -> dict[str, list[str]]:
    """A window framed on four sides, its right head corner 89.5 and the right side 1/4 higher."""
    window = thing("window", "20", ["30", "30 1/8"], left="48", right="48 1/4", head_corners=["90", "89.5"],
                   depths={"left": ["1/2", "5/8"], "right": ["1/2"], "head": ["1/2"]})  # fmt: skip
    return cards(oblong(window, window__style="picture", extension__wanted="yes", **CASED))


def test_the_strips_of_a_framed_window_are_told_with_their_widths_and_the_side_that_is_not_read():
    found = framed()
    assert found["left extension"] == lines('''
    left extension, wall 1, window: 48 3/8" of jamb stock 3/4, square, either edge, ± 0.05001
    left: butt; meets the jamb
    right: square; meets the jamb
    + height at the left: 48" as 48
    + the extension's step: 3/16"
    + the extension's step at an end, in a corner of 90.5°: 3/16"
    = inner face, end to end: 48 3/8"
    wide at point 1: 1/2"
    wide at point 2: 5/8"
    blank to rip, with 1/16 to plane off: 11/16"
    .order: The extension: side strips first, then those that lie over their ends.
    .ripping: Rip to 5/8", then taper in a straight line from 1/2" to 5/8".
    .opening: Width reads from 30" to 30 1/8": cut to the largest, for what covers it.
    .opening: The right head corner is 89.5°, not 90: try the setting on scrap first.
    .opening: The foot is 0.5° off square to a side: the cuts there follow it.
    .opening: No strip yet at the sill: the depth from jamb to wall is not read there.
    .note: Use solid wood: the edge of fiberboard splits when it is nailed.
    ''')
    # 30 1/8 + 2 × 3/16 = 30 1/2 between the sides, and 3/4 over each.
    assert found["head extension"] == lines('''
    head extension, wall 1, window: 32" of jamb stock 3/4, square, either edge, ± 0.05001
    left: square; meets the jamb
    right: square; meets the jamb
    + width between the jambs (largest of 2 readings): 30 1/8" as 30 | 30 1/8
    + the extension's step: 3/16"
    + the extension's step at an end, in a corner of 89.5°: 3/16"
    = between the side strips: 30 1/2"
    + over the left strip: 3/4"
    + over the right strip: 3/4"
    = end to end: 32"
    wide at point 1: 1/2"
    blank to rip, with 1/16 to plane off: 9/16"
    .ripping: Rip to 1/2", parallel.
    .note: Use solid wood: the edge of fiberboard splits when it is nailed.
    ''')


def test_the_head_of_a_frame_is_told_from_the_width_that_was_read_and_its_sill_from_the_other_sides():
    # The head: 30 1/8 + 2 × 3/8, and at the corner of 89.5 the leg's 2 1/4 × cot 44.75° = 2.2697.
    # The sill: 30 1/8 − 48 1/4 × cos 89.5° = 29.704 on the run, and the 1/4 that the right side is longer.
    found = framed()
    assert found["head"] == lines('''
    head, wall 1, window: 35 3/8" of casing 11/16 × 2 1/4, along the outer edge, ± 0.05001
    left: miter, 45°, long at the outer edge; meets the left leg
    right: miter, 45.2°, long at the outer edge; meets the right leg
    + width between the jambs (largest of 2 readings): 30 1/8" as 30 | 30 1/8
    + reveal: 3/16"
    + reveal at the right, in a corner of 89.5°: 3/16"
    + the extension's step: 3/16"
    + the extension's step at the right, in a corner of 89.5°: 3/16"
    = short point to short point: 30 7/8"
    + at the left, miter, saw 45° from square (point 45°), across the leg: 2 1/4"
    + at the right, miter, saw 45.2° from square (point 44.8°), across the leg: 2 17/64"
    = long point to long point: 35 25/64"
    .order: The head, the legs to meet it, and the sill to close the frame.
    ''')
    assert found["sill"][1:6] == lines('''
    left: miter, 45°, long at the outer edge; meets the right leg
    right: miter, 44.8°, long at the outer edge; meets the left leg
    + width at the sill, which follows from head, sides and corners: 29 45/64"
    + reveal at the left, in a corner of 90.5°: 3/16"
    + reveal at the right, in a corner of 90°: 3/16"
    ''')


def test_the_legs_of_a_frame_are_told_with_the_miters_at_top_and_foot():
    # At the foot, in a corner of 90.5: 2 1/4 × cot 45.25° = 2.2305.
    assert framed()["left leg"] == lines('''
    left leg, wall 1, window: 53 1/4" of casing 11/16 × 2 1/4, along the outer edge, ± 0.05001
    left: miter, 44.8°, long at the outer edge; meets the sill
    right: miter, 45°, long at the outer edge; meets the head
    + height at the left: 48" as 48
    + reveal: 3/16"
    + reveal at the foot, in a corner of 90.5°: 3/16"
    + the extension's step: 3/16"
    + the extension's step at the foot, in a corner of 90.5°: 3/16"
    = short point to short point: 48 3/4"
    + at the top, miter, saw 45° from square (point 45°): 2 1/4"
    + at the foot, miter, saw 44.8° from square (point 45.2°): 2 15/64"
    = long point to long point: 53 15/64"
    ''')


def on_plinths() -> dict[str, list[str]]:
    """A door 2 1/4 from a side wall, its right head corner 91 and the right side 1/2 higher; butted, on plinths."""
    door = thing("door", "2 1/4", "30", left="80", right="80 1/2", head_corners=["90", "91"])
    return cards(oblong(door, plinth__height="6", head="butted", casing__overhang="1/2", **CASED))


def test_plinths_are_told_by_their_feet_and_the_blank_to_cut_them_from():
    # Ripped to 2 1/4 − 3/16 = 2 1/16; the floor is 0.9° off at the left and 1.9° at the right: × tan is 1/32 and 5/64.
    found = on_plinths()
    assert found["left plinth"] == lines('''
    left plinth, wall 1, door: 6" of plinth 1 × 2 1/4, along the inner edge, ± 0.03125
    left: foot, 0.9°, long at the inner edge; meets the floor
    right: square; meets the leg
    + height of the plinth: 6"
    − at the foot, across 2 1/16": 1/32"
    .opening: The right head corner is 91°, not 90: try the setting on scrap first.
    .opening: The foot is 1.9° off square to a side: the cuts there follow it.
    .opening: Only 2 1/16" of 2 1/4" is left for the left leg: it is ripped.
    .short: Too short to hold at the saw: cut it from the end of a blank of 18 1/8" or more.
    ''')
    assert found["right plinth"] == lines('''
    right plinth, wall 1, door: 6 1/16" of plinth 1 × 2 1/4, along the outer edge, ± 0.03125
    left: square; meets the leg
    right: foot, 1.9°, long at the outer edge; meets the floor
    + height of the plinth: 6"
    + at the foot, across 2 1/4": 5/64"
    .short: Too short to hold at the saw: cut it from the end of a blank of 18 1/4" or more.
    ''')


def test_butted_legs_and_their_head_are_told_with_the_side_wall_and_the_overhang():
    # Right leg: 80 1/2 + 3/16 × cot 45.5° − 6 = 74.684, and 2 1/4 × tan 1° = 0.039 less outside. The head's overhang
    # is 1/2, but no board goes past a side wall, and the other wall is far: 30 3/8 + 2 1/16 + 2 1/4 + 1/2.
    found = on_plinths()
    assert found["left leg"] == lines('''
    left leg, wall 1, door: 74 3/16" of casing 11/16 × 2 1/4, square, either edge, ± 0.06125
    left: foot; meets the plinth
    right: butt; meets the head
    + height at the left: 80" as 80
    + reveal: 3/16"
    − the plinth it stands on: 6"
    = either edge: 74 3/16"
    ± 1/16" 19 times in 20; 3/32" were all 3 readings and marks out at once:
    .note: Cut the top at full width, then rip the outer edge to leave 2 1/16".
    .ripped: 2 1/16" wide: 2 1/4" to the jamb, − 3/16" from jamb to casing.
    ''')
    assert found["right leg"] == lines('''
    right leg, wall 1, door: 74 11/16" of casing 11/16 × 2 1/4, along the inner edge, ± 0.06125
    left: butt, 1°, long at the inner edge; meets the head
    right: foot; meets the plinth
    + height at the right: 80 1/2" as 80 1/2
    + reveal at the right, in a corner of 91°: 3/16"
    − the plinth it stands on: 6"
    = inner edge: 74 11/16"
    − at the top, butt, saw 1° from square (point 89°), across the leg: 3/64"
    = outer edge: 74 41/64"
    ± 1/16" 19 times in 20; 3/32" were all 3 readings and marks out at once:
    ''')
    assert found["head"] == lines('''
    head, wall 1, door: 35 3/16" of casing 11/16 × 2 1/4, square, either edge, ± 0.05001
    left: square; meets the left leg
    right: square; meets the right leg
    + width between the jambs: 30" as 30
    + reveal: 3/16"
    + reveal at the right, in a corner of 91°: 3/16"
    = between the legs: 30 3/8"
    + the left leg: 2 1/16"
    + the right leg: 2 1/4"
    + overhang at the right: 1/2"
    = end to end: 35 3/16"
    ''')


def row(**standard: str) -> dict[str, list[str]]:
    """Two windows of 24 that share a casing, 2 1/2 between them, or 1/16 less by the other reading."""
    strips = {place: ["1/2"] for place in ("left", "right", "head", "sill")}
    shares = {"window.mulled": "yes"}
    first = thing("window", ["20", "20 1/16"], "24", name="one", settings=shares, left="48", right=["48", "48 1/8"],
                  depths=strips, **SQUARE)  # fmt: skip
    second = thing("window", "46 1/2", "24", name="two", left="48 1/4", right="48", depths=strips, **SQUARE)
    return cards(oblong(first, second, extension__wanted="yes", **standard, **CASED))


def test_the_head_and_the_sill_of_a_row_are_told_from_its_first_jamb_to_its_last():
    # 46 1/2 + 24 − 20 = 50 1/2, and 3/16 of reveal and of step at either end.
    # Three readings and a mark: 1.96/32 × √(4/3).
    found = row(window__style="picture")
    head = lines('''
    head, wall 1, left window to right window: 55 3/4" of casing 11/16 × 2 1/4, along the outer edge, ± 0.070725
    left: miter, 45°, long at the outer edge; meets the left leg
    right: miter, 45°, long at the outer edge; meets the right leg
    + to the right window: 46 1/2" as 46 1/2
    + the right window: 24" as 24
    − to the left window (smallest of 2 readings): 20" as 20 | 20 1/16
    + width between the jambs: 50 1/2"
    + reveal, at both ends: 3/4"
    = short point to short point: 51 1/4"
    + at the left, miter, saw 45° from square (point 45°), across the leg: 2 1/4"
    + at the right, miter, saw 45° from square (point 45°), across the leg: 2 1/4"
    = long point to long point: 55 3/4"
    ± 1/16" 19 times in 20; 1/8" were all 4 readings and marks out at once:
    .opening: The heads of the left window and the right window are 1/4" apart: the reveal takes that up.
    .order: The head, the legs to meet it, and the sill to close the frame.
    ''')
    assert found["head"] == head
    assert found["sill"] == [
        head[0].replace("head", "sill"), head[1].replace("left leg", "right leg"),
        head[2].replace("right leg", "left leg"), *head[3:13],
    ]  # fmt: skip


def test_the_casing_between_two_windows_is_told_by_the_height_beside_it_and_the_gap_it_fills():
    # 48 + 2 × 3/8 long; 46 1/2 − 20 1/16 − 24 = 2 7/16 less 2 × 3/8 wide.
    assert row(window__style="picture")["shared casing"] == lines('''
    shared casing, wall 1, left window to right window: 48 3/4" of casing 11/16 × 2 1/4, square, either edge, ± 0.05001
    left: butt; meets the head
    right: square; meets the sill
    + height beside it (smallest of 2 readings): 48" as 48 | 48 1/8
    + reveal, at both ends: 3/4"
    = either edge: 48 3/4"
    gap from the left window to the right window: 2 7/16" as 20 | 20 1/16 | 24 | 46 1/2
    − reveal, at both jambs: 3/4"
    = rip it so wide: 1 11/16"
    .note: Rip it to 1 11/16", as much off either edge.
    ''')


def test_on_a_stool_the_casing_between_two_windows_stands_on_it_and_has_one_reveal():
    # 48 + 3/8 − 3/4.
    assert row()["shared casing"][1:6] == lines('''
    left: butt; meets the head
    right: square; meets the stool
    + height beside it (smallest of 2 readings): 48" as 48 | 48 1/8
    + reveal at the head: 3/8"
    − the stool it stands on: 3/4"
    ''')


def test_the_strips_of_a_window_in_a_row_are_its_own():
    # The sides are 48 1/4 and 48: √(24² + 1/4²) = 24.001 along the sill, 0.6° off square.
    found = row(window__style="picture")
    assert found["sill extension"][:10] == lines('''
    sill extension, wall 1, right window: 25 7/8" of jamb stock 3/4, square, either edge, ± 0.05001
    left: square; meets the jamb
    right: square; meets the jamb
    + width at the sill, which follows from head, sides and corners: 24"
    + the extension's step at an end, in a corner of 89.4°: 3/16"
    + the extension's step at an end, in a corner of 90.6°: 3/16"
    = between the side strips: 24 3/8"
    + over the left strip: 3/4"
    + over the right strip: 3/4"
    = end to end: 25 7/8"
    ''')
