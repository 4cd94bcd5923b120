"""Crown as it is asked for: both ways to name an outside corner, the edges, and what is refused."""

import pytest

from tests.asked import ask, refusal


def test_a_square_corner_has_the_settings_printed_on_many_saws():
    found = ask("compound", spring=38, corner=90)
    assert (f"{found['miter']:.1f}", f"{found['bevel']:.1f}", found["nested"]) == ("31.6", "33.9", 45.0)


def test_an_outside_corner_may_be_given_room_side_or_as_the_gauge_reads_it():
    room_side = ask("compound", spring=38, corner=268.5)
    assert room_side == ask("compound", spring=38, corner="91.5", turn="outside")
    assert room_side == ask("compound", spring=38, corner="268.5", turn="outside")
    assert room_side["corner"] == 268.5


def test_an_outside_corner_has_the_settings_of_the_inside_one_that_a_gauge_reads_alike():
    inside, outside = ask("compound", spring=45, corner=88), ask("compound", spring=45, corner=272)
    assert [inside[name] for name in ("miter", "bevel", "nested")] == [
        outside[name] for name in ("miter", "bevel", "nested")
    ]


def test_a_joint_straight_on_is_cut_square():
    found = ask("compound", spring=38, corner=180)
    assert (found["miter"], found["bevel"], found["nested"]) == (0.0, 0.0, 0.0)


def test_standing_upright_it_is_base_and_lying_on_the_ceiling_it_is_a_flat_frame():
    upright, flat = ask("compound", spring=0, corner=90), ask("compound", spring=90, corner=90)
    assert (upright["miter"], upright["bevel"]) == (0.0, 45.0)
    assert (flat["miter"], flat["bevel"]) == (45.0, 0.0)


@pytest.mark.parametrize(("corner", "difference", "longer"), [(90, '-2 5/8"', "wall"), (270, '2 5/8"', "ceiling")])
def test_the_edges_tell_which_is_longer(corner, difference, longer):
    found = ask("compound", spring=38, corner=corner, width="4 1/4")
    assert {name: length["shown"] for name, length in found["edges"].items()} == {
        "projection": '2 5/8"', "drop": '3 3/8"', "ceiling_minus_wall": difference,
    }  # fmt: skip
    assert f"the {longer} edge is the long one" in found["working"][-1]


def test_no_width_means_no_edges():
    assert ask("compound", spring=38, corner=90)["edges"] is None


def test_the_working_holds_both_settings_and_the_other_name_of_the_spring():
    working = " / ".join(ask("compound", spring=38, corner=90)["working"])
    for part in ("38° from the wall (52° from the ceiling)", "= 31.62°", "= 33.86°", "saw 45°, no bevel"):
        assert part in working


def test_work_overhead_and_at_the_saw_is_cautioned_of():
    cautions = ask("compound", spring=38, corner=90)["cautions"]
    assert [line.partition(":")[0] for line in cautions] == ["Overhead", "Saw", "General information"]


REFUSED = {
    "a spring past the ceiling": ({"spring": 91, "corner": 90}, "no-spring", "spring"),
    "a corner of nothing": ({"spring": 38, "corner": 0}, "no-room-side", "corner"),
    "a corner all the way round": ({"spring": 38, "corner": 360}, "no-room-side", "corner"),
    "an outside angle called inside": ({"spring": 38, "corner": 270, "turn": "inside"}, "wrong-turn", "turn"),
    "no angle": ({"spring": "steep", "corner": 90}, "not-degrees", "spring"),
    "no corner": ({"spring": 38}, "bad-field", "corner"),
    "a width of nothing": ({"spring": 38, "corner": 90, "width": "0"}, "bad-field", "width"),
}


@pytest.mark.parametrize(("question", "key", "field"), REFUSED.values(), ids=REFUSED)
def test_what_is_no_crown_is_refused_by_key_and_place(question, key, field):
    assert refusal("compound", **question)[:2] == (key, field)
