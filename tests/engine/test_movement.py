"""Wood movement as it is asked for: exact change, which way a miter opens, what weakens the figure, what is refused."""

import pytest
from scantling.engine.movement import BY_NAME, WOODS

from tests.asked import ask, refusal


def moved(**more):
    return ask("movement", **{"species": "sugar maple", "cut": "flat", "width": "3 1/2", "from": 8, "to": 5, **more})


def test_the_change_is_exact_and_less_than_nothing_when_wood_dries():
    found = moved()
    assert found["change"]["exact"] == "-7413/200000"
    assert found["change"]["inches"] == -0.037065
    assert found["opens"] == "Drying, the miter opens at its inner edge."


def test_wood_that_swells_grows_and_opens_the_miter_at_its_outer_edge():
    found = moved(**{"from": "6", "to": "9.5 %"})
    assert found["change"]["inches"] > 0
    assert found["opens"] == "Swelling, the miter opens at its outer edge."
    assert found["miter_gap"]["inches"] == pytest.approx(found["change"]["inches"] * 2**0.5, abs=1e-6)


def test_wood_that_stays_as_dry_stays_as_wide():
    found = moved(to=8)
    assert (found["change"]["exact"], found["opens"]) == ("0", "The miter stays as it is.")


def test_wood_just_dry_enough_to_shrink_is_answered():
    assert moved(**{"from": 30, "to": 8})["change"]["inches"] < 0


def test_a_quarter_sawn_board_goes_by_the_radial_coefficient():
    assert (moved()["coefficient"], moved(cut="quarter")["coefficient"]) == (0.00353, 0.00165)


def test_the_working_can_be_followed_with_a_pencil():
    assert moved()["working"] == [
        "change = 3 1/2 × 0.00353 (tangential, per point) × (5 − 8) = -0.0371",
        "miter: 0.0371 × 1.4142 (across a 45) = 0.0524",
    ]


@pytest.mark.parametrize(
    ("start", "end", "warned"), [(8, 6, False), (14, 6, False), (8, "5.9", True), ("14.1", 8, True)]
)
def test_moisture_outside_the_tables_range_is_warned_of(start, end, warned):
    found = moved(**{"from": start, "to": end})
    assert any("6 to 14 %" in told for told in found["warnings"]) == warned


def test_a_coefficient_that_is_not_the_tables_own_says_where_it_comes_from():
    derived, remembered = moved(species="poplar", to=7)["warnings"], moved(species="sugar pine", to=7)["warnings"]
    assert derived[0].endswith("from the shrinkage in the Wood Handbook (FPL-GTR-190), table 4-3.")
    assert remembered[0].endswith("table 4-3, that shrinkage from memory.")
    assert moved(to=7)["warnings"] == []


@pytest.mark.parametrize(
    "name", ["yellow-poplar", "Yellow Poplar", " POPLAR ", "red oak commercial", "Western Red Cedar"]
)
def test_a_wood_is_found_by_any_of_its_names(name):
    assert moved(species=name)["coefficient"]


def test_no_two_woods_share_a_name():
    assert len(BY_NAME) == sum(1 + len(wood.also) for wood in WOODS)


@pytest.mark.parametrize("name", ["oak", "pine", "maple", "teak", "", "fiberboard"])
def test_a_wood_that_is_not_in_the_table_is_refused_by_naming_those_that_are(name):
    key, field, message = refusal("movement", species=name, width="3", **{"from": 8, "to": 6})
    assert (key, field) == ("unknown-wood", "species")
    assert all(wood.name in message for wood in WOODS)


@pytest.mark.parametrize(
    ("more", "key", "field"),
    [
        ({"from": 35}, "green", "from"),
        ({"to": "30.5"}, "green", "to"),
        ({"from": "damp"}, "bad-field", "from"),
        ({"from": "-3"}, "bad-field", "from"),
        ({"from": True}, "bad-field", "from"),
        ({"to": "1e3"}, "bad-field", "to"),
        ({"cut": "rift"}, "bad-field", "cut"),
        ({"width": "0"}, "bad-field", "width"),
    ],
)
def test_what_is_no_movement_is_refused_by_key_and_place(more, key, field):
    question = {"species": "red oak", "width": "3", "from": 8, "to": 6, **more}
    assert refusal("movement", **question)[:2] == (key, field)
