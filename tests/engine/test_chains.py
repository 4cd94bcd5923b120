"""Which board runs through in each corner: by length, by the door, by the light, and by what a person says."""

import pytest

from tests.asked import refusal
from tests.entries import four_walls
from tests.rooms import Facts, ask, by_wall, inches, joints, oblong, pieces, room, thing, wall

THROUGH, BOTH = ("square", "square"), ("cope", "cope")


def row(*lengths: str, **standard: str) -> Facts:
    """Walls one after the other, inside corners between them, open at both ends."""
    return room(*(wall(f"w{n}", length) for n, length in enumerate(lengths, start=1)), closed=False, **standard)


def test_a_long_board_runs_through_and_the_short_ones_beside_it_are_coped_to_it():
    found = by_wall(row("40", "100", "40"))

    assert [joints(found[name]) for name in ("w1", "w2", "w3")] == [("square", "cope"), THROUGH, ("cope", "square")]


def test_a_short_board_between_two_long_ones_is_coped_to_one_and_not_at_both_ends():
    found = by_wall(row("100", "40", "100"))

    assert joints(found["w2"]) in (("cope", "square"), ("square", "cope"))


def test_a_board_under_eight_inches_is_not_coped_where_its_neighbors_can_be():
    found = by_wall(row("60", "5", "60"))
    assert [joints(found[name]) for name in ("w1", "w2", "w3")] == [("square", "cope"), THROUGH, ("cope", "square")]
    # Between two such boards a long one is coped at both ends rather than either of them.
    found = by_wall(row("60", "5", "60", "6", "60"))
    assert [joints(found[name]) for name in ("w2", "w3", "w4")] == [THROUGH, BOTH, THROUGH]
    # Both too short: one of them has to be.
    assert sum("cope" in joints(piece) for piece in pieces(row("5", "6"))) == 1


def test_how_short_is_too_short_to_cope_is_a_setting():
    assert joints(by_wall(row("60", "12", "60", cope__least="13"))["w2"]) == THROUGH
    assert joints(by_wall(row("60", "12", "60"))["w2"]) != THROUGH


def test_the_light_of_a_window_turns_joints_away_where_there_is_no_door():
    # Light from wall 1 falls along walls 2 and 4, so those are coped to wall 3, which faces it; and along wall 1 itself
    # into its corners, so that is coped to them.
    found = by_wall(oblong(thing("window", "40", "30")))

    assert joints(found["w3"]) == THROUGH
    assert (joints(found["w2"]), joints(found["w4"])) == (("square", "cope"), ("cope", "square"))


def test_a_piece_that_is_coped_away_from_the_light_says_so():
    def told(facts: Facts) -> dict[str, list[str]]:
        return {name: [flag["message"] for flag in piece["flags"] if flag["key"] == "light"]
                for name, piece in by_wall(facts).items()}  # fmt: skip

    found = told(oblong(thing("window", "40", "30")))
    assert found == {
        "w1": ["Its left and right ends are coped, so that the joints are turned away from the light."],
        "w2": ["Its right end is coped, so that the joint is turned away from the light."],
        "w3": [],
        "w4": ["Its left end is coped, so that the joint is turned away from the light."],
    }  # fmt: skip
    assert not any(told(oblong(light__from="none")).values())
    # Nobody looks into a miter, and what a person turned towards the light is not turned away from it.
    assert not any(told(oblong(thing("window", "40", "30"), base__inside="miter")).values())
    facts = oblong(thing("window", "40", "30"))
    facts["walls"][1]["settings"] = {"corner.through": "left"}
    assert (told(facts)["w2"], told(facts)["w3"]) == ([], [])


def test_where_the_light_comes_from_may_be_said():
    found = by_wall(oblong(light__from="3"))
    assert (joints(found["w1"]), joints(found["w2"]), joints(found["w4"])) == (
        THROUGH, ("cope", "square"), ("square", "cope"),
    )  # fmt: skip
    window = thing("window", "40", "30")
    assert by_wall(oblong(window, light__from="none")) == by_wall(oblong(light__from="none"))
    said = {part: refusal("pieces", room=oblong(light__from=part))[0] for part in ("the sun", "0", "1.5")}
    assert set(said.values()) == {"no-light"}


@pytest.mark.parametrize(
    ("things", "light", "over"),
    [
        # Walls 2 and 4 run away from wall 1 and back to it: what lies nearer to the light laps over.
        ([thing("window", "40", "30")], "windows", {"w2": "left", "w4": "right"}),
        ([], "1", {"w2": "left", "w4": "right"}),
        ([thing("window", "40", "30")], "3", {"w2": "right", "w4": "left"}),
        # One comes in by the door of wall 1, whatever the light does.
        ([thing("door", "40", "30")], "3", {"w2": "left", "w4": "right"}),
    ],
)
def test_the_laps_of_scarfs_open_away_from_the_light_where_there_is_no_door(things, light, over):
    facts = oblong(*things, light__from=light, base__stock=[{"length": "8 ft", "price": "1"}])
    for place in (1, 3):
        facts["walls"][place] |= {"length": "110", "studs": "55"}
    found = [one for one in ask("pieces", facts)["pieces"] if "scarf" in one["part_name"] and one["wall"] in over]
    assert len(found) == 4
    for one in found:
        side, end = ("left", one["right"]) if "left of the scarf" in one["part_name"] else ("right", one["left"])
        assert end["long_edge"] == ("front" if side == over[one["wall"]] else "back")
        (message,) = (flag["message"] for flag in one["flags"] if flag["key"] == "scarf")
        assert message.endswith("It opens away from the light.") == (not things or things[0]["kind"] == "window")


def test_the_front_of_a_breast_is_up_before_its_returns_which_are_coped_to_the_alcoves():
    walls = (("30", "inside"), ("15", "outside"), ("40", "outside"), ("15", "inside"), ("30", "inside"))
    facts = room(*(wall(f"w{n}", *each) for n, each in enumerate(walls, start=1)), closed=False)
    order = [piece["wall"] for piece in pieces(facts)]

    for alcove, beside in (("w1", "w2"), ("w5", "w4")):
        assert max(order.index(alcove), order.index("w3")) < order.index(beside)


def test_crown_round_a_closed_room_is_coped_at_both_ends_over_the_door_and_a_16th_long_to_spring_in():
    found = by_wall_of(oblong(thing("door", "30", "30"), crown__wanted="yes"), "crown")
    over = found["w1"]

    assert joints(over) == BOTH
    assert inches(over["back"]) == 120 + 1 / 16
    assert [step["text"] for step in over["working"]].count("+ to spring in") == 1
    assert [(flag["key"], flag["attention"]) for flag in over["flags"] if flag["key"] == "coped-twice"] == [
        ("coped-twice", False)
    ]
    assert joints(found["w3"]) == THROUGH
    assert all(inches(found[name]["back"]) == 96 for name in ("w2", "w4"))


def by_wall_of(facts: Facts, part: str) -> dict[str, Facts]:
    return {piece["wall"]: piece for piece in pieces(facts) if piece["part"] == part}


@pytest.mark.parametrize("said", ["left", "right"])
def test_a_person_turns_a_corner_and_may_turn_it_back(said):
    facts = oblong(thing("door", "30", "30 1/8"))
    facts["walls"][1]["settings"] = {"corner.through": said}  # where walls 2 and 3 meet
    found = by_wall_all(facts)

    assert found["w2"]["right"]["joint"] == ("square" if said == "left" else "cope")
    assert found["w3"]["left"]["joint"] == ("cope" if said == "left" else "square")
    other = "right" if said == "left" else "left"
    for piece, side in ((found["w2"], "right"), (found["w3"], "left")):
        turns = piece[side]["turns"]
        assert (turns["of"], turns["name"], turns["value"]) == ("w2", "corner.through", other)


def by_wall_all(facts: Facts) -> dict[str, Facts]:
    return {piece["wall"]: piece for piece in pieces(facts)}


def test_an_end_at_casing_or_in_the_open_has_nothing_to_turn():
    facts = oblong(thing("door", "30", "30 1/8"))
    beside = next(piece for piece in pieces(facts) if piece["part_name"].endswith("left of the door"))
    assert beside["right"]["turns"] is None
    assert beside["left"]["turns"]["words"] == "At corner 4 run this board through, the other to it"
    assert pieces(row("40"))[0]["left"]["turns"] is None


def test_corners_turned_in_a_ring_leave_one_board_to_begin_with():
    facts = oblong()
    for each in facts["walls"]:
        each["settings"] = {"corner.through": "left"}

    assert [joints(piece) for piece in pieces(facts)].count(THROUGH) == 1


def test_a_turned_corner_is_an_entry_of_its_wall_like_any_setting():
    from tests.cut_lists import ask

    house = four_walls()
    before = {piece["wall"]: piece for piece in ask(house.entries, {"ask": "pieces", "room": house.room})["pieces"]}
    end = before[house.walls[0]]["right"]["turns"]
    house.say("setting", of=end["of"], name=end["name"], value=end["value"])
    after = {piece["wall"]: piece for piece in ask(house.entries, {"ask": "pieces", "room": house.room})["pieces"]}

    joint = {"cope": "square", "square": "cope"}[before[house.walls[0]]["right"]["joint"]]
    assert after[house.walls[0]]["right"]["joint"] == joint
