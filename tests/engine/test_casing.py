"""Casing as it is asked for: which reading counts, what is told and refused, and the working of each figure."""

from fractions import Fraction

import pytest

from tests.asked import ask, refusal

DOOR = {
    "opening": {"width": ["30 1/8"], "left": "80 3/16", "right": "80 3/16", "head_corners": ["90", "90"]},
    "reveal": "3/16",
    "leg_width": "2 1/4",
    "head_width": "2 1/4",
    "thickness": "11/16",
}


def door(opening=None, **more):
    return {**DOOR, "opening": {**DOOR["opening"], **(opening or {})}, **more}


def pieces(question):
    return {piece["part"]: piece for piece in ask("casing", **question)["pieces"]}


def shown(piece):
    return piece["short"]["shown"], piece["long"]["shown"]


def test_a_plain_door_gives_two_legs_and_a_head():
    found = pieces(door())
    assert list(found) == ["left leg", "right leg", "head"]
    assert shown(found["left leg"]) == shown(found["right leg"]) == ('80 3/8"', '82 5/8"')
    assert shown(found["head"]) == ('30 1/2"', '35"')
    leg, head = found["left leg"], found["head"]
    assert (leg["saw_top"], leg["foot"], leg["saw_left"]) == (45.0, 0.0, None)
    assert (head["saw_left"], head["saw_right"], head["foot"]) == (45.0, 45.0, None)
    assert leg["first"]["shown"] == "miter, 45°, long at the outer edge"
    assert leg["long"]["exact"] == "661/8"


def test_a_plain_door_with_its_corners_read_warns_of_nothing():
    assert ask("casing", **door())["warnings"] == []


def test_the_head_goes_over_the_widest_reading_and_a_leg_between_the_least():
    found = ask("casing", **door({"width": ["30", "30 1/8", "30 1/16"], "left": ["80 3/16", "80 1/4"]}))
    by_part = {piece["part"]: piece for piece in found["pieces"]}
    assert shown(by_part["head"]) == ('30 1/2"', '35"')
    assert shown(by_part["left leg"]) == ('80 3/8"', '82 5/8"')
    assert found["warnings"] == [
        'Width reads from 30" to 30 1/8": cut to the largest, for what covers it.',
        'Height at the left reads from 80 3/16" to 80 1/4": cut to the smallest, for what stands between.',
    ]


def test_the_working_adds_up_and_names_the_readings():
    head = pieces(door({"width": ["30", "30 1/8"]}))["head"]
    assert [(step["text"], step["value"]["shown"]) for step in head["working"]] == [
        ("+ width between the jambs (largest of 2 readings)", '30 1/8"'),
        ("+ reveal, at both ends", '3/8"'),
        ("= short point to short point", '30 1/2"'),
        ("+ at the left, miter, saw 45° from square (point 45°), across the leg", '2 1/4"'),
        ("+ at the right, miter, saw 45° from square (point 45°), across the leg", '2 1/4"'),
        ("= long point to long point", '35"'),
    ]
    assert head["working"][0]["readings"] == ["30", "30 1/8"]


def signed(steps):
    """What a piece's working adds up to before each line that says so, and what that line says."""
    total = Fraction(0)
    for step in steps:
        if step["value"] is None:
            continue
        value = Fraction(str(step["value"]["inches"]))
        if step["text"].startswith("="):
            yield total, value
        else:
            total += value if step["text"].startswith("+") else -value


CROOKED = {"width": ["31 1/4"], "left": "79 7/8", "right": "80 1/2", "head_corners": ["91.2", "89.1"]}


@pytest.mark.parametrize(
    "question",
    [
        door(),
        door(CROOKED, head_width="3 1/2"),
        door(CROOKED, plinth="6", clearance="3/4"),
        door(CROOKED, head="butted", overhang="1/2"),
        door(CROOKED, left_stop="2"),
        door(CROOKED, head="butted", overhang="1/2", right_stop="2"),
        door({"left": "80", "right": "80 5/8"}, plinth={"height": "6", "width": "2 1/2"}),
    ],
)
def test_every_working_adds_up_to_the_figure_it_leads_to(question):
    for piece in ask("casing", **question)["pieces"]:
        for total, claimed in signed(piece["working"]):
            assert abs(total - claimed) <= Fraction(1, 60), piece["part"]
        if "plinth" not in piece["part"]:
            last = piece["working"][-1]["value"]["inches"]
            assert last in (piece["long"]["inches"], piece["short"]["inches"])


def test_a_head_wider_than_the_legs_has_its_own_settings():
    found = pieces(door(head_width="4 1/2"))
    assert shown(found["head"]) == ('30 1/2"', '35"')
    assert shown(found["left leg"]) == ('80 3/8"', '84 7/8"')
    assert found["head"]["saw_left"] == pytest.approx(26.565051)
    assert found["left leg"]["saw_top"] == pytest.approx(63.434949)


def test_each_leg_goes_by_its_own_height_and_its_foot_by_the_floor():
    found = pieces(door({"left": "80", "right": "80 1/2"}))
    assert found["left leg"]["short"]["exact"] == "1283/16"
    assert found["right leg"]["short"]["exact"] == "1291/16"
    assert found["left leg"]["foot"] == found["right leg"]["foot"] == pytest.approx(0.939, abs=0.001)
    # The floor falls to the right: toward the left leg's inner edge, away from the right leg's.
    assert found["left leg"]["second"]["long_edge"] == "inner"
    assert found["right leg"]["second"]["long_edge"] == "outer"


def test_a_floor_still_to_come_is_kept_clear_of():
    assert shown(pieces(door(clearance="3/4"))["left leg"]) == ('79 5/8"', '81 7/8"')


@pytest.mark.parametrize("plinth", ["6 1/2", {"height": "6 1/2"}, {"height": "6 1/2", "width": "2 1/2"}])
def test_a_plinth_takes_its_height_from_the_leg(plinth):
    found = pieces(door(plinth=plinth))
    assert list(found) == ["left plinth", "right plinth", "left leg", "right leg", "head"]
    assert shown(found["left plinth"]) == ('6 1/2"', '6 1/2"')
    assert shown(found["left leg"]) == ('73 7/8"', '76 1/8"')
    assert '− the plinth it stands on' in [step["text"] for step in found["left leg"]["working"]]


def test_a_leg_goes_by_the_smallest_height_and_says_so():
    found = pieces(door({"left": ["80 1/8", "80"], "right": "80"}))["left leg"]["working"]
    assert (found[0]["text"], found[0]["value"]["shown"]) == ("+ height at the left (smallest of 2 readings)", '80"')


def test_on_a_sloping_floor_the_plinth_is_beveled_and_the_leg_stands_square():
    found = pieces(door({"left": "80", "right": "80 1/2"}, plinth="6"))
    assert found["left leg"]["foot"] == 0
    assert found["left plinth"]["foot"] == pytest.approx(0.939, abs=0.001)
    assert found["left plinth"]["saw_top"] == 0


def test_a_plinth_is_no_wider_than_the_side_wall_leaves_room_for():
    question = door({"left": "80", "right": "80 1/2"}, plinth={"height": "6", "width": "2 1/2"}, right_stop="2")
    step = pieces(question)["right plinth"]["working"][-1]
    assert (step["text"], step["value"]["shown"]) == ('+ at the foot, across 1 13/16"', '1/32"')


def test_a_butted_head_lies_over_the_legs_with_its_overhang():
    found = pieces(
        door(
            {"width": "32", "left": "81 1/2", "right": "81 1/2"},
            reveal="1/4",
            leg_width="3 1/2",
            head="butted",
            overhang="1/2",
        )
    )
    assert shown(found["head"]) == ('40 1/2"', '40 1/2"')
    assert shown(found["left leg"]) == ('81 3/4"', '81 3/4"')
    assert found["left leg"]["saw_top"] == 0


def test_beside_a_side_wall_the_leg_is_ripped_after_its_miter():
    found = ask("casing", **door(left_stop=["2", "1 15/16"]))
    by_part = {piece["part"]: piece for piece in found["pieces"]}
    assert shown(by_part["left leg"]) == ('80 3/8"', '82 1/8"')
    assert by_part["left leg"]["saw_top"] == 45
    assert by_part["left leg"]["notes"] == ['Cut the top at full width, then rip the outer edge to leave 1 3/4".']
    assert shown(by_part["head"]) == ('30 1/2"', '34 1/2"')
    assert 'Only 1 3/4" of 2 1/4" is left for the left leg: it is ripped.' in found["warnings"]


def test_a_side_wall_farther_off_changes_nothing():
    assert ask("casing", **door(left_stop="2 7/16", right_stop="9")) == ask("casing", **door())


def test_a_side_wall_stops_the_overhang_of_a_butted_head():
    full, stopped = (
        pieces(door(head="butted", overhang="1/2", **more))["head"] for more in ({}, {"right_stop": "2 5/8"})
    )
    assert (shown(full)[1], shown(stopped)[1]) == ('36"', '35 11/16"')


def test_corners_that_were_not_read_are_taken_as_square_and_told():
    unread = door()
    del unread["opening"]["head_corners"]
    assert ask("casing", **unread)["pieces"] == ask("casing", **door())["pieces"]
    told = "The head corners are not read, and taken as square: hold a square in each before cutting."
    assert ask("casing", **unread)["warnings"] == [told]
    assert "other head corner" in ask("casing", **door({"head_corners": ["90", None]}))["warnings"][0]


def test_heights_that_differ_under_unread_corners_are_told_as_a_guess():
    warnings = ask("casing", **door({"left": "80", "right": "80 1/2", "head_corners": [None, None]}))["warnings"]
    assert (
        'The sides differ by 1/2": until both corners are read, the foot counts as sloping, not the head.' in warnings
    )


def test_a_corner_out_of_square_asks_for_a_test_cut():
    warnings = ask("casing", **door({"head_corners": ["90.3", "89.7"]}))["warnings"]
    assert warnings[0] == "The left head corner is 90.3°, not 90: try the setting on scrap first."


def test_a_corner_within_a_quarter_degree_of_square_is_told_to_nobody():
    assert not any("scrap" in told for told in ask("casing", **door({"head_corners": ["90.2", "89.8"]}))["warnings"])


def test_corners_that_lean_the_sides_together_are_caught():
    warnings = ask("casing", **door({"head_corners": ["88", "88"]}))["warnings"]
    assert 'These head corners would make the opening 5 19/32" narrower at the foot: read both again.' in warnings


def test_sides_that_lean_no_more_than_the_gauge_may_be_out_are_let_be():
    assert not any(
        "at the foot: read" in told for told in ask("casing", **door({"head_corners": ["90.1", "90"]}))["warnings"]
    )


def test_sides_that_lean_no_more_than_the_widths_differ_are_let_be():
    leaning = {"head_corners": ["89.8", "89.8"]}
    assert "narrower at the foot: read" in " ".join(ask("casing", **door(leaning))["warnings"])
    differing = ask("casing", **door({**leaning, "width": ["30 1/8", "29 5/8"]}))["warnings"]
    assert "narrower at the foot: read" not in " ".join(differing)


@pytest.mark.parametrize(("right", "is_told"), [("80 3/16", False), ("80 1/4", True)])
def test_a_foot_off_square_is_told_where_it_moves_an_edge_of_the_leg_by_a_64th(right, is_told):
    # Over 30 1/2 of head the sides differ by 3/16: 0.35 degrees, and over 2 1/4 of casing 0.0138; by 1/4, 0.0184.
    warnings = ask("casing", **door({"head_corners": ["90", "90"], "left": "80", "right": right}))["warnings"]
    assert any("off square to a side" in said for said in warnings) == is_told


def test_a_miter_steeper_than_many_saws_turn_is_told():
    steep = door({"head_corners": ["70", "110"], "left": "60", "right": "49"})
    told = "Head: its left end wants 55° on the saw, which turns to 50°: clamp it along a wedge of 15° at the fence " \
        "and set 40°."
    assert told in ask("casing", **steep)["warnings"]


def test_an_overhang_on_a_mitered_head_is_named_as_not_used():
    assert ask("casing", **door(overhang="1/2"))["warnings"] == [
        "Not used: overhang, which a mitered head has none of."
    ]


def test_a_length_is_as_sure_as_one_reading_and_one_mark():
    found = pieces(door(plinth="6"))
    assert found["head"]["plus_minus"]["shown"] == '1/16"'
    assert found["left leg"]["plus_minus"]["inches"] == pytest.approx(1.96 / 32, abs=1e-6)  # and the mark of the plinth
    assert found["left plinth"]["plus_minus"]["shown"] == '1/32"'


REFUSED = {
    "a width of nothing": (door({"width": "0"}), "no-opening", "opening.width"),
    "a width of less than nothing": (door({"width": ["30", "-30"]}), "negative", "opening.width.1"),
    "a height of nothing": (door({"left": "0"}), "no-opening", "opening.left"),
    "a width that is no length": (door({"width": ["30", "fish"]}), "unknown-word", "opening.width.1"),
    "no reading at all": (door({"width": []}), "bad-field", "opening.width"),
    "a head corner that cannot be": (door({"head_corners": ["200", "90"]}), "wrong-turn", "opening.head_corners.0"),
    "a head corner no frame has": (door({"head_corners": ["20", "90"]}), "no-frame", ""),
    "one head corner": (door({"head_corners": ["90"]}), "bad-field", "opening.head_corners"),
    "heights that cannot both be": (door({"left": "80", "right": "8"}), "steep-foot", ""),
    "sides that meet": (door({"head_corners": ["60", "60"]}), "sides-meet", ""),
    "no room for any casing": (door(left_stop="3/16"), "no-room", "left_stop"),
    "a plinth taller than the leg": (door(plinth="90"), "nothing-left", ""),
    "a casing of no width": (door(leg_width="0"), "bad-field", "leg_width"),
    "a joint that is none": (door(head="coped"), "bad-field", "head"),
    "a head too wide to miter": (door({"head_corners": ["150", "90"]}, head_width="12"), "no-miter", ""),
    "a name that nothing reads": (door(haed="mitered"), "bad-field", "haed"),
}


@pytest.mark.parametrize(("question", "key", "field"), REFUSED.values(), ids=REFUSED)
def test_what_cannot_be_made_is_refused_by_key_and_place(question, key, field):
    found_key, found_field, message = refusal("casing", **question)
    assert (found_key, found_field) == (key, field)
    assert "{" not in message
