"""Windows as they are asked for: what is put up in which order, what a side wall does, and what is told or refused."""

from fractions import Fraction

import pytest

from tests.asked import ask, refusal
from tests.engine.test_casing import shown, signed

WINDOW = {
    "opening": {"width": ["32"], "left": "54", "right": "54", "head_corners": ["90", "90"]},
    "reveal": "1/4",
    "casing": {"width": "3 1/2", "thickness": "3/4"},
    "horn": "1/4",
    "sash": "4 7/16",
}


def window(opening=None, **more):
    return {**WINDOW, "opening": {**WINDOW["opening"], **(opening or {})}, **more}


def pieces(question):
    return {piece["part"]: piece for piece in ask("window", **question)["pieces"]}


def test_a_window_on_a_stool_is_listed_in_the_order_it_is_put_up():
    depths = {"left": ["1/2"], "right": ["1/2"], "head": ["1/2"], "sill": ["1/2"]}
    found = ask("window", **window(depths=depths))
    assert [piece["part"] for piece in found["pieces"]] == [
        "stool", "left extension", "right extension", "head extension", "left leg", "right leg", "head",
        "apron", "apron return, left", "apron return, right",
    ]  # fmt: skip
    assert found["order"][0].startswith("The stool")
    assert found["order"][-1].startswith("The apron last")


def test_stool_legs_head_and_apron_come_to_the_figures_worked_by_hand():
    found = pieces(window())
    assert shown(found["stool"]) == ('40"', '40"')
    assert shown(found["left leg"]) == ('54 1/4"', '57 3/4"')
    assert shown(found["head"]) == ('32 1/2"', '39 1/2"')
    assert shown(found["apron"]) == ('38"', '39 1/2"')
    assert (found["apron"]["saw_left"], found["apron"]["first"]["shown"]) == (45.0, "return, 45°, long at the face")
    assert found["apron return, left"]["long"]["shown"] == '3/4"'


def test_the_stool_is_as_wide_as_sash_to_wall_less_play_and_as_far_past_the_casing_as_its_horns():
    stool = ask("window", **window())["stool"]
    assert {name: length["shown"] for name, length in stool.items()} == {
        "between": '32"', "front": '1"', "left_horn": '1/4"', "right_horn": '1/4"',
        "tongue": '4 3/8"', "width": '5 3/8"',
    }  # fmt: skip


def test_the_stool_is_ripped_to_the_least_that_was_read_from_sash_to_wall():
    found = ask("window", **window(sash=["4 1/2", "4 7/16", "4 9/16"]))
    assert found["stool"]["tongue"]["shown"] == '4 3/8"'
    assert 'The depth from sash to wall differs by 1/8": the least counts, scribe the rest.' in found["warnings"]


def test_without_the_sash_the_stools_width_is_asked_for():
    unread = {name: value for name, value in window().items() if name != "sash"}
    found = ask("window", **unread)
    assert found["stool"]["tongue"] is found["stool"]["width"] is None
    assert "from the closed sash to the plane of the wall" in found["warnings"][-1]


def test_the_stool_covers_the_widest_reading_and_goes_between_the_jambs_at_the_least():
    found = ask("window", **window({"width": ["32", "32 1/8"]}))
    assert found["pieces"][0]["long"]["shown"] == '40 1/8"'
    assert found["stool"]["between"]["shown"] == '32"'


def test_heights_read_without_the_stool_lose_its_thickness():
    assert shown(pieces(window(stool_thickness="3/4"))["left leg"]) == ('53 1/2"', '57"')


def test_a_picture_frame_stands_on_no_stool_and_loses_nothing_to_one():
    depths = {"left": ["1/2"], "right": ["1/2"]}
    plain, with_stool = (window(style="picture", depths=depths, stool_thickness=thick) for thick in ("0", "3/4"))
    assert ask("window", **with_stool) == ask("window", **plain)


def test_a_side_wall_stops_the_horn_before_it_rips_the_casing():
    found = ask("window", **window(right_stop="3 7/8"))
    by_part = {piece["part"]: piece for piece in found["pieces"]}
    assert shown(by_part["stool"]) == ('39 7/8"', '39 7/8"')
    assert found["stool"]["right_horn"]["shown"] == '1/8"'
    assert shown(by_part["right leg"]) == shown(by_part["left leg"])
    assert 'The side wall leaves 1/8" of the horn at the right: the stool ends square against it.' in found["warnings"]


def test_a_side_wall_nearer_than_the_casing_rips_the_leg_and_ends_the_apron_square():
    found = ask("window", **window(right_stop="3"))
    by_part = {piece["part"]: piece for piece in found["pieces"]}
    assert shown(by_part["stool"]) == ('39"', '39"')
    assert shown(by_part["right leg"]) == ('54 1/4"', '57"')
    assert by_part["right leg"]["notes"] == ['Cut the top at full width, then rip the outer edge to leave 2 3/4".']
    assert shown(by_part["apron"]) == ('38"', '38 3/4"')
    assert (by_part["apron"]["saw_left"], by_part["apron"]["saw_right"]) == (45.0, 0.0)
    assert "apron return, right" not in by_part
    assert by_part["stool"]["plus_minus"]["inches"] > pieces(window())["stool"]["plus_minus"]["inches"]


def test_a_picture_frame_has_four_mitered_sides_that_cover_the_largest_readings():
    found = pieces(window({"width": ["32", "32 1/16"], "left": ["54", "54 1/8"], "right": "54 1/8"}, style="picture"))
    assert list(found) == ["head", "left leg", "right leg", "sill"]
    assert shown(found["head"]) == shown(found["sill"]) == ('32 9/16"', '39 9/16"')
    assert shown(found["left leg"]) == ('54 5/8"', '61 5/8"')
    assert (found["left leg"]["saw_top"], found["left leg"]["foot"]) == (45.0, 45.0)
    last = found["left leg"]["working"][-1]
    assert (last["text"], last["value"]["shown"]) == ("= long point to long point", '61 5/8"')
    assert ask("window", **window(style="picture"))["stool"] is None


def test_a_picture_frames_sill_follows_from_the_other_three_sides():
    found = pieces(window({"left": "54", "right": "54 1/2", "head_corners": ["90", "90"]}, style="picture"))
    first = found["sill"]["working"][0]
    assert first["text"] == "+ width at the sill, which follows from head, sides and corners"
    assert first["value"]["inches"] == pytest.approx((32**2 + 0.5**2) ** 0.5, abs=2e-6)
    assert found["sill"]["saw_left"] != 45.0


def test_a_wide_head_changes_only_what_it_meets():
    found = pieces(window(casing={"width": "3 1/2", "thickness": "3/4", "head_width": "5"}))
    assert shown(found["head"]) == ('32 1/2"', '39 1/2"')
    assert shown(found["left leg"]) == ('54 1/4"', '59 1/4"')


def test_casing_may_be_given_by_its_width_alone():
    assert ask("window", **window(casing="3 1/2"))["stool"]["front"]["shown"] == '15/16"'


@pytest.mark.parametrize("style", ["stool", "picture"])
@pytest.mark.parametrize(
    "more",
    [
        {},
        {"right_stop": "3"},
        {"depths": {"left": ["1/2", "3/4"], "right": "5/8", "head": "1/2", "sill": "1/2"}, "extension_step": "3/16"},
        {"opening": {"width": ["31 1/4"], "left": "53 7/8", "right": "54 1/2", "head_corners": ["91.2", "89.1"]}},
    ],
)
def test_every_working_adds_up_to_the_figure_it_leads_to(style, more):
    for piece in ask("window", **{**WINDOW, "style": style, **more})["pieces"]:
        for total, claimed in signed(piece["working"]):
            assert abs(total - claimed) <= Fraction(1, 60), piece["part"]


def test_an_escape_window_is_cautioned_of_and_the_saw():
    cautions = ask("window", **window())["cautions"]
    assert cautions[0].startswith("Escape:")
    assert cautions[-1].startswith("General information")


REFUSED = {
    "a butted picture frame": (window(style="picture", head="butted"), "picture-butted", "head"),
    "a sash at the wall": (window(sash="1/16"), "no-sash-room", "sash"),
    "a style that is none": (window(style="shutter"), "bad-field", "style"),
    "a depth that is no length": (window(depths={"left": ["1/2", "fish"]}), "unknown-word", "depths.left.1"),
    "no room for any casing": (window(right_stop="1/4"), "no-room", "right_stop"),
    "a casing of no width": (window(casing={"width": "0"}), "bad-field", "casing.width"),
    "legs shorter than nothing": (window(stool_thickness="60"), "nothing-left", ""),
}


@pytest.mark.parametrize(("question", "key", "field"), REFUSED.values(), ids=REFUSED)
def test_what_cannot_be_made_is_refused_by_key_and_place(question, key, field):
    found_key, found_field, message = refusal("window", **question)
    assert (found_key, found_field) == (key, field)
    assert "{" not in message
