"""Five more whole rooms: a bay, a hall of five doors, a stair hall, a falling floor, a wainscot. Every piece expected.

Worked by hand. Casing of 2 1/4 and a reveal of 3/16 take 2 7/16 beside a jamb, base is 9/16 × 5 1/2. Round an opening
80 high a leg is 80 + 3/16 + 2 1/4 = 82 7/16 and a head the width + 4 7/8; of a window 48 high a leg is 48 +
3/16 − 3/4 + 2 1/4 = 49 11/16, its stool the width + 5 7/8, its apron as long as the head.
"""

import json

from scantling.demo_house import house_file
from scantling.engine.desk import Desk

from tests.engine.test_rooms_whole import listed
from tests.rooms import Facts, ask, room, thing, wall

UP = {"left": "80", "right": "80", "head_corners": ["90", "90"]}
LIGHT = {"left": "48", "right": "48", "head_corners": ["90", "90"], "sash": "4 1/2"}
CASING = ("left leg", "right leg", "head", "stool", "apron")


def door(at: str, width: str = "30", name: str = "d", **more: object) -> Facts:
    return thing("door", at, width, name=name, **{**UP, **more})


def window(name: str, at: str, width: str, **more: str) -> Facts:
    return thing("window", at, width, name=name, **{**LIGHT, **more})


def cased(facts: Facts) -> dict[str, tuple[str, ...]]:
    """What goes round each opening: legs, head, and of a window stool and apron; each as long as its board."""
    found: dict[str, tuple[str, ...]] = {}
    for part, cut, _, _ in listed(facts, *CASING):
        place = part.partition(", ")[2]
        found[place] = (*found.get(place, ()), cut)
    return found


OF_DOOR = ('82 7/16"', '82 7/16"', '34 7/8"')


def bay() -> Facts:
    """12 ft by 10, a bay of three windows in the far wall: 36, 33 15/16 on the slant, 24, 33 15/16, 36.

    36 + 33 15/16 × cos 45 + 24 + 33 15/16 × cos 45 + 36 = 143.995, as the door's wall is 144.
    """
    return room(
        wall("w1", "144", things=[door("57")]), wall("w2", "120"), wall("w3", "36", "outside", corner="135"),
        wall("w4", "33 15/16", corner="135", things=[window("right", "7", "20")]),
        wall("w5", "24", corner="135", things=[window("middle", "4", "16")]),
        wall("w6", "33 15/16", "outside", corner="135", things=[window("left", "7", "20")]),
        wall("w7", "36"), wall("w8", "120"), casing__wanted="yes",
    )  # fmt: skip


def test_a_bay():
    # Round the arris of a bay the miter is 22.5: its face is 9/16 × tan 22.5 = 0.233 longer, so 36 and 33 15/16 become
    # 36 1/4 and 34 3/16. In the bay's own corners the slants are coped to the middle, at 22.5. Beside the door:
    # 57 − 2 7/16, and 144 − 87 − 2 7/16.
    assert listed(bay(), "base") == [
        ("base, wall 5", '24"', "square corner 4", "square corner 5"),
        ("base, wall 6", '34 3/16"', "cope corner 5", "miter corner 6"),
        ("base, wall 4", '34 3/16"', "miter corner 3", "cope corner 4"),
        ("base, wall 8", '120"', "square corner 7", "square corner 8"),
        ("base, wall 7", '36 1/4"', "miter corner 6", "cope corner 7"),
        ("base, wall 2", '120"', "square corner 1", "square corner 2"),
        ("base, wall 3", '36 1/4"', "cope corner 2", "miter corner 3"),
        ("base, wall 1, left of the door", '54 9/16"', "cope corner 8", "square the door"),
        ("base, wall 1, right of the door", '54 9/16"', "square the door", "cope corner 1"),
    ]
    # Between the middle window's casing and the slants is 4 − 2 7/16 = 1 9/16: room for a horn of 1/2.
    assert cased(bay()) == {
        "wall 1, door": OF_DOOR,
        "wall 4, window": ('25 7/8"', '49 11/16"', '49 11/16"', '24 7/8"', '24 7/8"'),
        "wall 5, window": ('21 7/8"', '49 11/16"', '49 11/16"', '20 7/8"', '20 7/8"'),
        "wall 6, window": ('25 7/8"', '49 11/16"', '49 11/16"', '24 7/8"', '24 7/8"'),
    }
    assert len(listed(bay())) == 9 + 3 + 3 * (5 + 2)  # two returns to each apron


def hall() -> Facts:
    """12 ft by 3 ft 6, two doors along either side and one across the end."""
    return room(
        wall("w1", "144", things=[door("12", name="d1"), door("96", name="d2")]),
        wall("w2", "42", things=[door("6", name="d3")]),
        wall("w3", "144", things=[door("20", name="d4"), door("90", name="d5")]), wall("w4", "42"),
        casing__wanted="yes",
    )  # fmt: skip


def test_a_hall_with_five_doors():
    # Wall 1: 12 − 2 7/16; 96 − 42 − 4 7/8; 144 − 126 − 2 7/16. Wall 2: 6 − 2 7/16 either side, too short to cope, so
    # their neighbors are coped to them. Wall 3: 20 − 2 7/16; 90 − 50 − 4 7/8; 144 − 120 − 2 7/16.
    assert sorted(listed(hall(), "base")) == [
        ("base, wall 1, between the left door and the right door", '49 1/8"',
         "square the left door", "square the right door"),
        ("base, wall 1, left of the left door", '9 9/16"', "cope corner 4", "square the left door"),
        ("base, wall 1, right of the right door", '15 9/16"', "square the right door", "cope corner 1"),
        ("base, wall 2, left of the door", '3 9/16"', "square corner 1", "square the door"),
        ("base, wall 2, right of the door", '3 9/16"', "square the door", "square corner 2"),
        ("base, wall 3, between the left door and the right door", '35 1/8"',
         "square the left door", "square the right door"),
        ("base, wall 3, left of the left door", '17 9/16"', "cope corner 2", "square the left door"),
        ("base, wall 3, right of the right door", '21 9/16"', "square the right door", "square corner 3"),
        ("base, wall 4", '42"', "cope corner 3", "square corner 4"),
    ]  # fmt: skip
    places = ("wall 1, left door", "wall 1, right door", "wall 2, door", "wall 3, left door", "wall 3, right door")
    assert cased(hall()) == dict.fromkeys(places, OF_DOOR)
    assert len(listed(hall())) == 9 + 5 * 3
    # The three too short to hold, two of 3 9/16 and one of 9 9/16, have their blank: 12 + 1/8 and what they are.
    blanks = [one["blank"]["shown"] for one in ask("pieces", hall())["pieces"] if one["blank"]]
    assert sorted(blanks) == ['15 11/16"', '15 11/16"', '21 11/16"']


def stair_hall() -> Facts:
    """A front door, a stair 36 deep along the far half of the next wall, and an opening without casing opposite."""
    bare = thing("cased", "40", "48", name="o", left="84", right="84", settings={"casing.wanted": "none"})
    return room(
        wall("w1", "100", things=[door("32", "36")]),
        wall("w2", "150", things=[thing("stair", "60", "90", "stops", depth="36")]), wall("w3", "100"),
        wall("w4", "150", things=[bare]), casing__wanted="yes", shoe__wanted="yes",
    )  # fmt: skip


def test_a_stair_hall():
    # The stair fills corner 2: wall 3 begins at its face, 36 in. Wall 1: 32 − 2 7/16 and 100 − 68 − 2 7/16. Wall 4 ends
    # at the arrises: 40, and 150 − 88.
    assert sorted(listed(stair_hall(), "base")) == [
        ("base, wall 1, left of the door", '29 9/16"', "cope corner 4", "square the door"),
        ("base, wall 1, right of the door", '29 9/16"', "square the door", "cope corner 1"),
        ("base, wall 2, left of the stair", '60"', "square corner 1", "square the stair"),
        ("base, wall 3", '64"', "square the stair on wall 2", "square corner 3"),
        ("base, wall 4, left of the arris of the cased opening", '40"', "cope corner 3",
         "square the arris of the cased opening"),
        ("base, wall 4, right of the arris of the cased opening", '62"', "square the arris of the cased opening",
         "square corner 4"),
    ]  # fmt: skip
    # Shoe lies on the base: at each corner that is left it is a base's thickness, 9/16, shorter.
    assert sorted(row[:2] for row in listed(stair_hall(), "shoe")) == [
        ("shoe, wall 1, left of the door", '29"'),
        ("shoe, wall 1, right of the door", '29"'),
        ("shoe, wall 2, left of the stair", '59 7/16"'),
        ("shoe, wall 3", '63 7/16"'),
        ("shoe, wall 4, left of the arris of the cased opening", '39 7/16"'),
        ("shoe, wall 4, right of the arris of the cased opening", '61 7/16"'),
    ]
    assert cased(stair_hall()) == {"wall 1, door": ('82 7/16"', '82 7/16"', '40 7/8"')}
    assert len(listed(stair_hall())) == 6 + 6 + 3


def falling(**standard: str) -> Facts:
    """10 ft by 8, its floor 1/2 lower at the right end of the door's wall, and so at the left of the one opposite."""
    door_wall = wall("w1", "120", things=[door("45", right="80 1/8")])
    return room({**door_wall, "fall": "1/2 right"}, wall("w2", "96"), {**wall("w3", "120"), "fall": "1/2 left"},
                wall("w4", "96"), casing__wanted="yes", **standard)  # fmt: skip


def of_floor(facts: Facts) -> dict[str, list[str]]:
    keys = ("floor-falls", "out-of-plumb")
    return {
        one["part_name"]: [flag["message"] for flag in one["flags"] if flag["key"] in keys]
        for one in ask("pieces", facts)["pieces"]
        if any(flag["key"] in keys for flag in one["flags"])
    }


def test_a_floor_that_falls():
    # Along the door's wall it falls 1/2 in 120, and 1/8 in the 30 of the door: the right leg is as much longer. Base
    # beside it: 45 − 2 7/16 and 120 − 75 − 2 7/16.
    assert cased(falling()) == {"wall 1, door": ('82 7/16"', '82 9/16"', '34 7/8"')}
    assert sorted(listed(falling(), "base")) == [
        ("base, wall 1, left of the door", '42 9/16"', "cope corner 4", "square the door"),
        ("base, wall 1, right of the door", '42 9/16"', "square the door", "cope corner 1"),
        ("base, wall 2", '96"', "square corner 1", "cope corner 2"),
        ("base, wall 3", '120"', "square corner 2", "square corner 3"),
        ("base, wall 4", '96"', "cope corner 3", "square corner 4"),
    ]
    # 42 9/16 / 240 = 0.177 of fall along each; over 5 1/2 of base an end that is plumb is 5 1/2 / 240 = 0.023 off
    # square, atan(1/240) = 0.24 degrees, which is said for it is more than 1/64.
    ends = [
        "Its left end is cut plumb on the falling floor: 1/64\" longer at the {} than at the {}. Lean the blade 0.2°.",
        "Its right end is cut plumb on the falling floor: 1/64\" longer at the {} than at the {}. Lean the blade 0.2°.",
    ]
    right = [ends[0].format("top", "foot"), ends[1].format("foot", "top")]
    left = [ends[0].format("foot", "top"), ends[1].format("top", "foot")]
    lies = 'The floor falls {} along it: it lies on the floor, its top out of level by as much.'
    assert of_floor(falling()) == {
        "base, wall 1, left of the door": [*right, lies.format('3/16" to the right')],
        "base, wall 1, right of the door": [*right, lies.format('3/16" to the right')],
        "base, wall 3": [*left, lies.format('1/2" to the left')],
    }


def test_on_that_floor_base_may_be_level_and_scribed_or_ripped():
    # Level, its ends are square; what comes off its foot is at the high end.
    assert of_floor(falling(base__floor="scribe"))["base, wall 3"] == [
        'The floor falls 1/2" to the left along it: set it level and scribe its foot: 1/2" off at the right, nothing '
        "at the left."
    ]
    assert of_floor(falling(base__floor="taper"))["base, wall 1, left of the door"] == [
        'The floor falls 3/16" to the right along it: rip its foot in a straight line, 3/16" off at the left to '
        "nothing at the right."
    ]


def wainscot() -> Facts:
    """11 ft by 9: base and cap, a chair rail at 32. One window's sill is at 30, the other's at 50."""
    return room(
        wall("w1", "132", things=[door("40", "32")]), wall("w2", "108", things=[window("low", "38", "30", sill="30")]),
        wall("w3", "132", things=[window("high", "50", "30", sill="50")]), wall("w4", "108"),
        casing__wanted="yes", cap__wanted="yes", chair_rail__wanted="yes",
    )  # fmt: skip


def test_a_wainscot_whose_cap_and_chair_rail_die_into_casings():
    # The rail, 32 to 34 1/2 up, breaks at the low window: 38 − 2 7/16, and 108 − 68 − 2 7/16. It passes under the high
    # one, whose apron ends at 50 − 3/4 − 2 1/4 = 47. At the door: 40 − 2 7/16, and 132 − 72 − 2 7/16.
    assert sorted(listed(wainscot(), "chair rail")) == [
        ("chair rail, wall 1, left of the door", '37 9/16"', "cope corner 4", "square the door"),
        ("chair rail, wall 1, right of the door", '57 9/16"', "square the door", "square corner 1"),
        ("chair rail, wall 2, left of the window", '35 9/16"', "cope corner 1", "square the window"),
        ("chair rail, wall 2, right of the window", '37 9/16"', "square the window", "cope corner 2"),
        ("chair rail, wall 3", '132"', "square corner 2", "square corner 3"),
        ("chair rail, wall 4", '108"', "cope corner 3", "square corner 4"),
    ]
    # Base and the cap on it pass under both windows, and stop at the door.
    for part in ("base", "base cap"):
        assert sorted(listed(wainscot(), part)) == [
            (f"{part}, wall 1, left of the door", '37 9/16"', "cope corner 4", "square the door"),
            (f"{part}, wall 1, right of the door", '57 9/16"', "square the door", "cope corner 1"),
            (f"{part}, wall 2", '108"', "square corner 1", "cope corner 2"),
            (f"{part}, wall 3", '132"', "square corner 2", "square corner 3"),
            (f"{part}, wall 4", '108"', "cope corner 3", "square corner 4"),
        ]
    assert cased(wainscot()) == {
        "wall 1, door": ('82 7/16"', '82 7/16"', '36 7/8"'),
        "wall 2, window": ('35 7/8"', '49 11/16"', '49 11/16"', '34 7/8"', '34 7/8"'),
        "wall 3, window": ('35 7/8"', '49 11/16"', '49 11/16"', '34 7/8"', '34 7/8"'),
    }
    assert len(listed(wainscot())) == 6 + 5 + 5 + 3 + 2 * (5 + 2)


def test_no_more_than_one_piece_in_ten_of_these_rooms_asks_for_attention():
    found = [one for facts in (bay(), hall(), stair_hall(), falling(), wainscot())
             for one in ask("pieces", facts)["pieces"]]  # fmt: skip
    flagged = [one for one in found if any(flag["attention"] for flag in one["flags"])]
    assert len(flagged) * 10 <= len(found), [(one["part_name"], one["flags"]) for one in flagged]


def test_no_more_than_one_piece_in_ten_of_the_demo_house_asks_for_attention():
    desk = Desk(json.loads(house_file().read_text(encoding="utf-8"))["entries"])
    rooms = [one["id"] for one in desk.answer({"ask": "notebook"})["answer"]["houses"][0]["rooms"]]
    found = [one for room in rooms for one in desk.answer({"ask": "pieces", "room": room})["answer"]["pieces"]]
    assert len(rooms) == 3
    flagged = [one for one in found if any(flag["attention"] for flag in one["flags"])]
    assert len(flagged) * 10 <= len(found), [(one["part_name"], one["flags"]) for one in flagged]
