"""Supplies: tubes shared by joints, nails that hold and do not reach too far, packages, and what cannot be."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scantling.engine.supplies.sundries import SUNDRIES

from tests.asked import ask, refusal

NAIL = {"through": ["9/16", "1/2"], "along": "36 ft"}


def test_joints_that_share_a_tube_are_filled_out_of_the_same_ones():
    # Each of 100 ft is half a tube and a little more: together two, one by one they would be four.
    joints = [{"name": name, "length": "100 ft", "price": "6.00"} for name in ("casing", "base top", "crown")]
    (found,) = ask("supplies", joints=joints)["tubes"]
    assert (found["name"], found["count"], found["cost"]) == ("casing, base top, crown", 2, "12.00")


def test_a_bead_is_what_its_settings_say_and_says_so():
    (found,) = ask("supplies", joints=[{"name": "tub", "length": "15 ft", "shape": "round", "size": "3/8"}])["tubes"]
    assert found["count"] == 2  # 13.75 ft a tube
    assert "(round 3/8" in found["working"][0]
    (all_of_it,) = ask("supplies", joints=[{"length": "194 ft", "waste": "0"}])["tubes"]
    (less,) = ask("supplies", joints=[{"length": "194 ft"}])["tubes"]
    assert (all_of_it["count"], less["count"]) == (1, 2)


def test_the_shortest_nail_that_holds_is_chosen_of_those_at_hand():
    (found,) = ask("supplies", fasteners=[{**NAIL, "lengths": ["1 1/4", "2 1/2", "2 1/4"]}])["boxes"]
    assert found["length"]["shown"] == '2 1/4"'
    assert found["working"][0] == '9/16 + 1/2 + 3/4 into the stud = 1 13/16: 2 1/4"'


def test_a_nail_at_hand_is_judged_both_ways():
    short, right, deep = (ask("supplies", fasteners=[{**NAIL, "length": length}])["boxes"][0]
                          for length in ("1 1/2", "2", "2 1/2"))  # fmt: skip
    assert "take 1 13/16\" or longer" in short["warnings"][0]
    assert right["warnings"] == []
    assert "take a shorter one" in deep["warnings"][0]
    assert [box["deep"] for box in (short, right, deep)] == [False, False, True]


def test_nails_are_counted_by_the_box():
    (found,) = ask("supplies", fasteners=[{**NAIL, "apart": "12", "rows": 1, "box": 30, "price": "4.50"}])["boxes"]
    assert (found["count"], found["boxes"], found["cost"]) == (37, 2, "9.00")


def test_nails_bring_what_to_know_of_what_lies_behind():
    assert "1 1/4 in from a stud" in ask("supplies", fasteners=[NAIL])["cautions"][0]
    assert ask("supplies", joints=[{"length": "9"}])["cautions"] == []
    assert "Fumes" in ask("supplies", beads=[{"length": "9"}])["cautions"][0]


def test_no_nail_as_long_is_told_and_the_rest_is_counted():
    joints = [{"length": "9", "size": "0"}, {"length": "9 ft"}]
    found = ask("supplies", joints=joints, fasteners=[{"through": ["4"], "along": "9"}, NAIL])
    assert [(one["what"], one["item"], one["key"]) for one in found["problems"]] == [
        ("joints", 0, "no-bead"),
        ("fasteners", 0, "no-length"),
    ]
    assert len(found["tubes"]) == len(found["boxes"]) == 1


@pytest.mark.parametrize("name", SUNDRIES)
def test_every_rate_can_be_set_and_says_where_it_comes_from(name):
    (default,) = ask("supplies", sundries=[{"name": name, "amount": "1000"}])["packages"]
    (own,) = ask("supplies", sundries=[{"name": name, "amount": "1000", "covers": "7", "price": "2"}])["packages"]
    assert default["count"] == math.ceil(1000 / SUNDRIES[name].covers)
    assert (own["count"], own["cost"]) == (143, "286.00")
    assert "until you set it" in default["working"][0]
    assert "as you set it" in own["working"][0]


def test_nothing_to_count_is_refused():
    assert refusal("supplies")[0] == "bad-field"
    assert refusal("supplies", sundries=[{"name": "varnish", "amount": 1}])[1] == "sundries.0.name"
    assert refusal("supplies", joints=[{"length": "9", "price": ""}])[0] == "not-money"


@given(st.integers(1, 4000), st.integers(1, 4000))
def test_more_joint_never_takes_fewer_tubes(one, other):
    counts = [ask("supplies", joints=[{"length": f"{feet} ft"}])["tubes"][0]["count"] for feet in sorted((one, other))]
    assert counts[0] <= counts[1]
