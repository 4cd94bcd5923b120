"""What is told of an opening before its casing is cut, sentence by sentence, with the figures worked by hand."""

import pytest

from tests.engine.test_cards import card, lines
from tests.rooms import Facts, ask, oblong, thing

CASED = {"casing__wanted": "yes", "base__wanted": "no"}


def door(at: str | None = "40", **more: object) -> Facts:
    return thing("door", at, "30", **{"left": "80", "right": "80", "head_corners": ["90", "90"], **more})


def window(at: str = "40", **more: object) -> Facts:
    return thing("window", at, "30", **{"left": "48", "right": "48", "head_corners": ["90", "90"], **more})


def told(facts: Facts, *keys: str) -> list[tuple[str, bool, str]]:
    """Which piece it is told of, whether that should not be cut so, and what is told, under these keys."""
    found = ask("pieces", facts)
    assert found["problems"] == []
    return [(piece["part"], flag["attention"], flag["message"]) for piece in found["pieces"] for flag in piece["flags"]
            if flag["key"] in keys]  # fmt: skip


def of_opening(facts: Facts) -> list[str]:
    return [message for _, attention, message in told(facts, "opening") if not attention]


def test_a_leg_by_a_corner_that_nobody_measured_may_want_ripping():
    unread = "How far the next corner is at the {} is not read: the casing may want ripping there."
    facts = oblong(door(), **CASED)
    del facts["walls"][0]["length"]
    assert told(facts, "unread-side") == [("right leg", True, unread.format("right"))]
    assert told(oblong(door(at=None), **CASED), "unread-side") == [
        ("left leg", True, unread.format("left")), ("right leg", True, unread.format("right")),
    ]  # fmt: skip


def test_the_order_that_a_windows_pieces_go_up_in_is_told_and_keeps_none_from_being_cut():
    found = told(oblong(window(sash="4 1/2"), **CASED), "order")
    assert [(part, attention, said.split()[1].strip(":")) for part, attention, said in found] == [
        ("stool", False, "stool"), ("left leg", False, "legs,"), ("apron", False, "apron"),
    ]  # fmt: skip


def test_of_two_legs_that_want_one_corner_one_gives_way_and_says_to_which():
    # 2 1/2 less the other casing's 11/16 less the reveal of 3/16 leaves 1 5/8.
    facts = oblong(door(at="2 1/2"), **CASED)
    facts["walls"][3]["openings"] = [door(at="64", name="other")]
    assert told(facts, "ripped", "gives-way")[:2] == [
        ("left leg", False, '1 5/8" wide: 2 1/2" to the jamb − 11/16" for the casing of the door on wall 4, '
                            '− 3/16" from jamb to casing.'),
        ("left leg", False, "In corner 4 the casing of the door on wall 4 keeps its width, and this leg gives way. "
                            "Turn that with the casing's setting in corners."),
    ]  # fmt: skip
    # At the other's right: 96 − 64 − 30 = 2, less 3/16.
    assert told(facts, "ripped")[1:] == [
        ("right leg", False, '1 13/16" wide: 96" of wall − 64" to the jamb − 30" across, − 3/16" from jamb to casing.'),
    ]  # fmt: skip


def test_a_ripped_leg_keeps_its_miter_and_its_heads_tip_is_cut_off_where_the_wall_leans_from_it():
    # 2 − 3/16 = 1 13/16 of 2 1/4. In a corner of 92 the edge of 11/16 leans 11/16 × tan 2° = 0.024: 1/32 to the 64th.
    facts = oblong(door(at="2"), **CASED)
    for number, corner in ((0, "88"), (3, "92")):
        facts["walls"][number]["corner"]["corner"] = corner
    found = {piece["part"]: card(piece) for piece in ask("pieces", facts)["pieces"]}
    assert found["left leg"][6:] == lines('''
    + at the top, miter, saw 45° from square (point 45°), across 1 13/16" of it: 1 13/16"
    = outer edge: 82"
    .opening: Only 1 13/16" of 2 1/4" is left for the left leg: it is ripped.
    .note: Cut the top at full width, then rip the outer edge to leave 1 13/16".
    .ripped: 1 13/16" wide: 2" to the jamb, − 3/16" from jamb to casing.
    .rip-lean: The corner is 92°: bevel the ripped edge 2°, its face 1/32" wider than its back.
    ''')
    assert [line for line in found["head"][6:] if "not-set" not in line] == lines('''
    + at the left, to the side wall: 1 13/16"
    + at the right, miter, saw 45° from square (point 45°), across the leg: 2 1/4"
    = long point to long point: 34 7/16"
    .note: At the left, miter it first, then cut the tip off plumb, 1 13/16" past the short point.
    .tip-lean: The corner is 92°: where its tip at the left is cut off plumb, bevel that 2°, its face 1/32" longer.
    ''')
    facts["walls"][0]["corner"]["corner"], facts["walls"][3]["corner"]["corner"] = "92", "88"
    found = {piece["part"]: card(piece) for piece in ask("pieces", facts)["pieces"]}
    assert found["left leg"][-1] == ".rip-lean: The corner is 88°: bevel the ripped edge 2°, its back the wider."
    assert (".tip-lean: The corner is 88°: where its tip at the left is cut off plumb, bevel that 2°, "
            'its face 1/32" shorter.') in found["head"]  # fmt: skip


LOWER = "The plinth is lower than the base, which then meets the leg above it: make the plinth taller."
THINNER = "The plinth is thinner than what ends at it: use thicker stock."


@pytest.mark.parametrize(("height", "thickness", "base", "said"), [
    # Base of 5 1/2, and casing of 11/16: as much as either is enough.
    ("5 1/2", "11/16", "yes", []),
    ("5 7/16", "11/16", "yes", [LOWER]),
    ("5 7/16", "11/16", "no", []),
    ("5 1/2", "5/8", "yes", [THINNER]),
])  # fmt: skip
def test_a_plinth_is_no_lower_than_the_base_and_no_thinner_than_what_ends_at_it(height, thickness, base, said):
    made = {"plinth__height": height, "plinth__thickness": thickness, "casing__wanted": "yes", "base__wanted": base}
    assert of_opening(oblong(door(), **made)) == said


def test_a_plinth_under_a_thin_casing_is_no_thinner_than_the_base():
    made = {"plinth__height": "6", "plinth__thickness": "1/2", "casing__thickness": "1/2", "casing__wanted": "yes"}
    assert of_opening(oblong(door(), **made)) == [THINNER]  # the base is 9/16


STRIPS = {
    "corners read twice": (
        {"left": ["1/2", "3/4"], "head": ["9/16", "1/2"]}, "stool", []),
    "a head corner read twice a 16th and more apart": (
        {"left": ["1/2", "5/8", "3/4"], "head": ["5/8", "1/2", "1/2"]}, "stool",
        ['Where left and head meet, 1/2" and 5/8" were read: read both again.']),
    "a sill corner": (
        {"left": ["1/2", "5/8", "3/4"], "sill": ["1/4", "1/2", "1/2"]}, "picture",
        ['Where left and sill meet, 3/4" and 1/4" were read: read both again.']),
    "the corners of the right side": (
        {"right": ["1/2", "5/8", "3/4"], "head": ["1/2", "1/2", "5/8"], "sill": ["1/4", "1/2", "1/2"]}, "picture",
        ['The wall is twisted by 1/8" here: miters gape in front until the casing is packed out.',
         'Where right and head meet, 1/2" and 5/8" were read: read both again.',
         'Where right and sill meet, 3/4" and 1/2" were read: read both again.']),
    "proud by what a plane takes off": (
        {"right": ["-1/8"]}, "stool", ['The right jamb stands proud of the wall by 1/8": plane it flush.']),
    "proud by more": (
        {"right": ["-3/16"]}, "stool",
        ['The right jamb stands proud of the wall by 3/16": bring the wall out, or move the jamb in.']),
    "too thin": (
        {"head": ["1/8"]}, "stool",
        ['The head strip is 1/8" at most and would split: relieve the casing\'s back instead.']),
    "as thin as splits": (
        {"head": ["1/4"]}, "stool",
        ['The head strip is 1/4" at most and would split: relieve the casing\'s back instead.']),
    "thicker than that": ({"head": ["9/32"]}, "stool", []),
    "to nothing": (
        {"left": ["0", "1/2"]}, "stool",
        ["The left strip runs out to nothing: plane the jamb there so that it can end square."]),
    "nothing at all": ({"left": ["0"]}, "stool", []),
    "a sill, on a stool": ({"sill": ["1/8"]}, "stool", []),
    "a sill, in a frame": (
        {"sill": ["1/8"]}, "picture",
        ['The sill strip is 1/8" at most and would split: relieve the casing\'s back instead.']),
    "a twisted wall": (
        {"left": ["1/2", "5/8"], "right": ["1/2", "1/2"]}, "stool",
        ['The wall is twisted by 1/8" here: miters gape in front until the casing is packed out.']),
    "one that is twisted by a 16th": ({"left": ["1/2", "9/16"], "right": ["1/2", "1/2"]}, "stool", []),
}  # fmt: skip


@pytest.mark.parametrize(("depths", "style", "said"), STRIPS.values(), ids=STRIPS)
def test_what_the_depths_say_of_jambs_strips_and_wall(depths, style, said):
    facts = oblong(window(depths=depths, sash="4 1/2"), window__style=style, extension__wanted="yes", **CASED)
    assert [one for one in of_opening(facts) if not one.startswith("No strip yet")] == said


def test_the_sides_without_a_strip_are_those_whose_depth_is_not_read():
    said = "No strip yet at the {}: the depth from jamb to wall is not read there."
    facts = oblong(window(depths={"left": ["1/2"]}, sash="4 1/2"), extension__wanted="yes", **CASED)
    assert of_opening(facts) == [said.format("right and head")]
    facts = oblong(window(depths={"left": ["1/2"]}), window__style="picture", extension__wanted="yes", **CASED)
    assert of_opening(facts) == [said.format("right and head and sill")]


def test_a_stool_without_its_sash_or_without_a_horn_says_so():
    assert of_opening(oblong(window(), **CASED)) == [
        "The stool's width wants one more reading: from the closed sash to the plane of the wall."]  # fmt: skip
    assert of_opening(oblong(window(at="2", sash="4"), **CASED)) == [
        'Only 1 13/16" of 2 1/4" is left for the left leg: it is ripped.',
        "The side wall leaves no horn at the left: the stool ends square against it.",
    ]  # fmt: skip


CORNERS = {
    "neither read": ({"head_corners": [None, None]}, [
        "The head corners are not read, and taken as square: hold a square in each before cutting."]),
    "one read": ({"head_corners": ["90", None], "right": "48 1/4"}, [
        "The other head corner is not read, and taken as square: hold a square in each before cutting.",
        'The sides differ by 1/4": until both corners are read, the foot counts as sloping, not the head.']),
    # 2 × 48 1/2 × sin 1° = 1.69, a 64th less on the slant.
    "both open": ({"left": "48 1/2", "right": ["48 1/2", "48 5/8"], "head_corners": ["91", "91"]}, [
        'Height at the right reads from 48 1/2" to 48 5/8": cut to the largest, for what covers it.',
        "The left head corner is 91°, not 90: try the setting on scrap first.",
        "The right head corner is 91°, not 90: try the setting on scrap first.",
        "The foot is 1° off square to a side: the cuts there follow it.",
        'These head corners would make the opening 1 11/16" wider at the foot: read both again.']),
    "both shut": ({"head_corners": ["89", "89"]}, [
        "The left head corner is 89°, not 90: try the setting on scrap first.",
        "The right head corner is 89°, not 90: try the setting on scrap first.",
        "The foot is 1° off square to a side: the cuts there follow it.",
        'These head corners would make the opening 1 43/64" narrower at the foot: read both again.']),
}  # fmt: skip


@pytest.mark.parametrize(("read", "said"), CORNERS.values(), ids=CORNERS)
def test_what_the_head_corners_and_heights_say_of_the_foot(read, said):
    assert of_opening(oblong(window(**read), window__style="picture", **CASED)) == said


def test_a_mull_wider_than_the_casing_is_ripped_of_flat_stock_and_one_as_wide_is_not_ripped():
    def between(at: str) -> list[tuple[str, bool, str]]:
        first = thing("window", "20", "24", name="one", settings={"window.mulled": "yes"}, left="48", right="48",
                      head_corners=["90", "90"])  # fmt: skip
        second = thing("window", at, "24", name="two", left="48", right="48", head_corners=["90", "90"])
        return [one for one in told(oblong(first, second, **CASED), "note") if one[0] == "shared casing"]

    # 46 5/8 − 44 − 2 × 3/16 = 2 1/4, as wide as the casing.
    assert between("46 5/8") == []
    assert between("47") == [
        ("shared casing", False, "It is wider than the casing: rip it of flat stock, or join two.")]  # fmt: skip


def test_what_nobody_has_set_is_told_on_the_head_alone():
    said = "Common practice until you set it in the standard: {}."
    assert told(oblong(door(), **CASED), "not-set") == [
        ("head", False, said.format("the reveal and the casing's width"))]  # fmt: skip
    assert told(oblong(door(), reveal="1/4", **CASED), "not-set") == [
        ("head", False, said.format("the casing's width"))]  # fmt: skip
    assert told(oblong(door(), reveal="1/4", casing__width="3", **CASED), "not-set") == []


def test_at_a_side_wall_the_apron_ends_square_and_has_no_return():
    # Ripped to 3 − 3/16 = 2 13/16 of 3 1/2; the face 30 3/8 + 2 13/16 + 3 1/2, and behind the right return 11/16 less.
    facts = oblong(window(at="3", sash="4"), casing__width="3 1/2", **CASED)
    found = {piece["part"]: card(piece) for piece in ask("pieces", facts)["pieces"]}
    assert found["apron"][1:9] == lines('''
    left: square; meets the side wall
    right: return, 45°, long at the face; meets its return
    + between the legs, along the stool: 30 3/8"
    + the left leg: 2 13/16"
    + the right leg: 3 1/2"
    = face: 36 11/16"
    − the return at the right: 11/16"
    = back: 36"
    ''')
    assert "+ casing at the left, ripped: 2 13/16\"" in found["stool"]
    assert "apron return, left" not in found


@pytest.mark.parametrize(("of", "unread"), [("one", "right"), ("two", "left"), ("one", "width"), ("two", "width")])
def test_nothing_goes_round_a_row_until_what_stands_between_its_windows_is_read(of, unread):
    facts = {"left": "48", "right": "48", "head_corners": ["90", "90"]}
    first = thing("window", "20", "24", name="one", settings={"window.mulled": "yes"}, **facts)
    second = thing("window", "46 1/2", "24", name="two", **facts)
    del (first if of == "one" else second)[unread]
    answered = ask("pieces", oblong(first, second, **CASED))
    assert (answered["pieces"], answered["problems"]) == ([], [])
