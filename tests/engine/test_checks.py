"""What of a whole room cannot be, or is not likely: named on the wall it concerns, and every reading stands."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.random_rooms import make_room
from tests.rooms import Facts, ask, oblong, room, thing, wall


def told(facts: Facts) -> dict[str, tuple[str, str]]:
    return {one["key"]: (one["wall"], one["message"]) for one in ask("needs", facts)["problems"]}


def with_heights(*heights: str | None, ceiling: bool = False) -> Facts:
    """A room with a door in each wall of a height, or walls of one."""
    facts = oblong(casing__wanted="yes")
    for each, height in zip(facts["walls"], heights, strict=False):
        if height and ceiling:
            each["height"] = height
        elif height:
            each["openings"] = [thing("door", "30", "30", name=f"door {each['id']}", left=height, right=height)]
    return facts


def test_a_door_an_inch_higher_than_the_last_is_a_burnt_inch():
    (wall_id, message) = told(with_heights("80", "81 1/16"))["height-inch"]
    assert wall_id == "w2"
    assert "1 in mark" in message


def test_a_head_out_of_line_with_its_neighbor_is_told_of_and_a_falling_floor_is_not():
    assert told(with_heights("80", "77"))["height-differs"][0] == "w2"
    assert told(with_heights("80", "80 5/8")) == {}


def test_the_two_sides_of_one_door_are_neighbors():
    facts = with_heights("80")
    facts["walls"][0]["openings"][0]["right"] = "79"
    assert "an inch lower" in told(facts)["height-inch"][1]


def test_a_ceiling_that_jumps_is_told_of():
    assert told(with_heights("96", "90", ceiling=True))["height-differs"][0] == "w2"
    assert told(with_heights("96", "97", ceiling=True))["height-inch"][0] == "w2"


def test_walls_that_would_go_through_each_other_are_named():
    # Three turns right of 20, 30, 20 and on for 60: the fourth wall crosses the first.
    facts = room(wall("w1", "60"), wall("w2", "30"), wall("w3", "40"), wall("w4", "60"), wall("w5", "20"), closed=False)
    assert told(facts)["walls-cross"] == (
        "w4", "Wall 4 would go through wall 1: read both again, and the corners between them.",
    )  # fmt: skip


@given(st.integers(0, 10_000))
def test_nothing_is_told_of_a_room_that_closes(seed):
    assert told(make_room(seed, 30).facts) == {}


def test_a_closed_room_half_walked_is_said_to_be():
    (wall_id, message) = told(room(wall("w1", "120"), wall("w2", "96"), wall("w3", "120")))["half-walked"]
    assert wall_id == "w3"
    assert "270" in message


def test_an_opening_wider_than_its_wall_is_told_of_though_its_place_is_unread():
    assert told(oblong(thing("door", None, "130")))["wider-than-wall"][0] == "w1"


@pytest.mark.parametrize("gauge", ["0", "360", "180"])
def test_a_corner_that_is_none_is_told_of_and_its_walls_still_give_pieces(gauge):
    facts = oblong()
    facts["walls"][1]["corner"]["corner"] = gauge
    answered = ask("pieces", facts)
    assert [(one["wall"], one["key"]) for one in answered["problems"]] == [("w2", "no-corner")]
    assert {piece["wall"] for piece in answered["pieces"]} == {"w1", "w2", "w3", "w4"}
