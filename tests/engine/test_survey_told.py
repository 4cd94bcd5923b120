"""What is told of a room as it was read: every figure by its name, what does not close, what is seen of a wall."""

from typing import Any

import pytest

from tests.engine.test_checks import with_heights
from tests.engine.test_openings_told import told
from tests.rooms import Facts, ask, oblong, room, thing, wall


def problems(facts: Facts, question: str = "needs") -> list[tuple[str, str]]:
    return [(one["wall"], one["message"]) for one in ask(question, facts)["problems"]]


def names(facts: Facts) -> list[str]:
    """What the figures are called that cannot be understood."""
    return [message.partition(": “")[0] for _, message in problems(facts)]


FIGURES = {
    "length": "wall 2", "studs": "studs of wall 2", "plumb": "wall 2, out of plumb", "bow": "bow of wall 2",
    "fall": "floor along wall 2", "height": "wall 2, to the ceiling", "ceiling": "wall 2, along the ceiling",
    "chair_rail": "wall 2, along the chair rail", "ceiling_corner": "corner 2 at the ceiling",
}  # fmt: skip


@pytest.mark.parametrize(("figure", "name"), FIGURES.items())
def test_a_figure_of_a_wall_that_cannot_be_understood_is_told_by_its_name(figure, name):
    facts = oblong()
    facts["walls"][1][figure] = "fish"
    ((of, message),) = problems(facts)
    assert (of, message.partition(": “")[0]) == ("w2", name)
    assert "fish" in message


def test_every_figure_of_a_door_that_cannot_be_understood_is_told_by_its_name():
    door = thing("door", "fish", "30 fish", left="fish", right="fish", head_corners=["fish", "fish"], depth="fish",
                 sill="fish", sash="fish", depths={"left": ["fish"]})  # fmt: skip
    assert names(oblong(door)) == [
        "door, depth at the left", "door from the left", "door width", "door height at the left",
        "door height at the right", "door, left corner of the head", "door, right corner of the head",
        "door, sash to wall", "door, floor to its sill", "door, depth of its reveal",
    ]  # fmt: skip


def test_every_figure_of_a_cabinet_that_cannot_be_understood_is_told_by_its_name():
    cabinet = thing("cabinet", "fish", "fish", "stops", depth="fish", height="fish")
    assert names(oblong(cabinet)) == ["cabinet from the left", "cabinet width", "cabinet height", "cabinet depth"]
    facts = oblong()
    facts["walls"][1]["corner"]["corner"] = "fish"
    assert names(facts) == ["corner 2"]


def sized(*lengths: str) -> Facts:
    facts = oblong()
    for one, length in zip(facts["walls"], lengths, strict=True):
        one["length"] = length
    return facts


def test_a_room_that_misses_itself_says_by_how_much_and_which_readings_may_be_wrong():
    # 2 along and 1 across: √(2² + 1²) = 2.236, and no one wall makes it good.
    assert problems(sized("119", "98", "120", "96"), "pieces") == [
        ("w4", 'The room misses itself by 2 1/4". Measure walls and corners again.')]  # fmt: skip
    # An oblong of 120 by 96 may be 4 out along its shorter walls: either of them, one the other way.
    assert problems(sized("120", "100", "120", "96"), "pieces") == [
        ("w2", 'The room misses itself by 4". Wall 2 may be read 4" too long: measure it again. '
               'Or: Wall 4 may be read 4" too short: measure it again.')]  # fmt: skip


def test_a_room_whose_corners_do_not_come_to_360_says_by_how_many_degrees():
    facts = oblong()
    for one in facts["walls"]:
        one["corner"]["corner"] = "91"
    assert problems(facts, "pieces") == [
        ("w1", "The room misses itself by 4°. Corner 1 may be read 4° too wide: measure it again. "
               "Or: Corner 2 may be read 4° too wide: measure it again.")]  # fmt: skip


HEIGHTS: dict[str, tuple[dict[str, Any], list[str]]] = {
    "a head 3 lower": ({"heights": ("80", "77")}, [
        'The head of the door in wall 2 is 3" lower than the head of the door in wall 1: read both again.']),
    "an inch and a 16th higher": ({"heights": ("80", "81 1/16")}, [
        "The head of the door in wall 2 is an inch higher than the head of the door in wall 1: was the tape held at "
        "its 1 in mark?"]),
    "a ceiling 6 lower": ({"heights": ("96", "90"), "ceiling": True}, [
        'The ceiling in wall 2 is 6" lower than the ceiling in wall 1: read both again.']),
}  # fmt: skip


@pytest.mark.parametrize(("read", "said"), HEIGHTS.values(), ids=HEIGHTS)
def test_heights_out_of_line_are_told_with_both_places(read, said):
    facts = with_heights(*read["heights"], ceiling=read.get("ceiling", False))
    assert problems(facts) == [("w2", message) for message in said]


def test_the_two_sides_of_a_door_are_told_of_as_its_sides():
    facts = with_heights("80")
    facts["walls"][0]["openings"][0]["right"] = "79"
    assert problems(facts) == [
        ("w1", "The head of the door in wall 1 is an inch lower than at its other side: was the tape held at its 1 in "
               "mark?")]  # fmt: skip


# ---- what is seen of a wall ------------------------------------------------------------------------------------------


def test_what_is_still_to_read_is_told_on_the_boards_that_it_may_change():
    half = room(wall("w1", "60"), wall("w2", "40"), wall("w3", None), closed=True)
    assert told(half, "not-walked-round", "neighbor-unread") == [
        ("base", True, "The room has not been walked round yet: do not cut the end that nothing is known beyond."),
        ("base", True, "Wall 3 is still to read: what comes from there may change this."),
    ]  # fmt: skip
    assert told(oblong(thing("cabinet", "84", "36", "stops")), "depth-unread") == [
        ("base", True, "The cabinet round its left corner may stand in the way here: read how deep it is."),
    ]  # fmt: skip
    facts = oblong()
    del facts["walls"][3]["corner"]["corner"]
    assert told(facts, "corner-unread") == [
        ("base", True, "Corner 4 has not been read and is taken as square: read it before cutting.")] * 2  # fmt: skip


def test_plates_and_notches_are_told_by_where_they_come_along_the_board():
    things = (thing("outlet", "20", "3", "over", height="6"), thing("niche", "50", ["3", "3 1/4"], "notch", height="4"))
    # The plate hangs 4 1/2 down from 6, so base of 5 1/2 crosses it.
    assert told(oblong(*things), "plate", "notch") == [
        ("base", True, 'It crosses the plate of the outlet, 20" to 23" from the left: move one of them, or notch it.'),
        ("base", False, 'Notch it for the niche: 50" to 53 1/4" from the left along its back, 4" up, and 1/8" wider '
                        "each way."),
    ]  # fmt: skip
    assert told(oblong(*things, base__height="1 1/2"), "plate") == []
    facts = oblong(thing("post", None, "3", "notch"))
    assert told(facts, "notch") == [("base", False, "Notch it for the post, once it is read where that stands.")]


@pytest.mark.parametrize(("how", "said"), [
    ("eased", "ease its {} end back to it."), ("butted", "its {} end is butted, and stays proud."),
])  # fmt: skip
def test_what_stands_out_past_the_casing_is_told_with_what_is_done_with_it(how, said):
    # Base of 9/16 and shoe of 3/4 are 1 5/16, 5/8 more than casing of 11/16.
    door = thing("door", "40", "30", left="80", right="80", head_corners=["90", "90"])
    made = {"casing__wanted": "yes", "shoe__wanted": "yes", "shoe__thickness": "3/4", "proud_end": how}
    assert [one[2] for one in told(oblong(door, **made), "proud")] == [
        f'It stands 5/8" out past the casing: {said.format(side)}' for side in ("right", "left")]  # fmt: skip


def test_a_rail_that_stands_out_past_the_casing_is_notched_to_lie_over_it():
    door = thing("door", "40", "30", left="80", right="80", head_corners=["90", "90"])
    made = {"casing__wanted": "yes", "chair_rail__wanted": "yes", "chair_rail__thickness": "1", "proud_end": "notched"}
    assert [one[2] for one in told(oblong(door, **made), "proud")] == [
        f'It stands 5/16" out past the casing: notch the back of its {side} end, 1/2" along and 11/16" deep, to lie '
        "over its edge." for side in ("right", "left")]  # fmt: skip
    rail = next(piece for piece in ask("pieces", oblong(door, **made))["pieces"] if piece["kind"] == "chair_rail"
                and "left of the door" in piece["part_name"])  # fmt: skip
    assert [step["text"] for step in rail["working"]][:4][-1] == "+ lap over the casing"


def test_what_no_board_is_long_enough_for_says_where_it_could_be_joined():
    facts = oblong(base__stock=[{"length": "8 ft", "price": "1"}])
    facts["walls"][2]["studs"] = "5"
    said = [one[2] for one in told(facts, "longer-than-stock")]
    assert ('Longer than any board on the list, 95 1/2" usable: read where the studs of wall 1 are, to join it on '
            "one.") in said  # fmt: skip
    assert ('Longer than any board on the list, 95 1/2" usable, and no stud of wall 3 is where boards so long could be '
            "joined.") in said  # fmt: skip


def test_a_board_coped_at_both_ends_waits_for_both_its_neighbors():
    assert told(oblong(), "coped-twice") == [
        ("base", False, "Coped at both ends: fit it when both its neighbors are up.")]  # fmt: skip
