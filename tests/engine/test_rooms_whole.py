"""Whole rooms as a carpenter would have them, every piece expected, worked by hand from the readings beside them."""

from tests.rooms import Facts, ask, room, thing, wall


def listed(facts: Facts, *parts: str) -> list[tuple[str, str, str, str]]:
    """Part and place, cut, and what each end is and meets, of the parts asked for."""
    found = ask("pieces", facts)
    assert found["problems"] == []
    assert ask("needs", facts)["needs"] == []
    rows = [one for one in found["pieces"] if not parts or one["part"] in parts]
    ends = [tuple(f"{one[side]['joint']} {one[side]['meets']}" for side in ("left", "right")) for one in rows]
    return [(one["part_name"], one["cut"]["shown"], *each) for one, each in zip(rows, ends, strict=True)]


def bath() -> Facts:
    """5 by 8: a door 1 1/2 from the corner of the vanity's wall, a tub 30 deep across the far end, a toilet."""
    door = thing("door", "28 1/2", "30", left="80", right="80")
    vanity = thing("vanity", "6", "36", "stops", height="34 1/2", depth="21")
    register = thing("register", "46", "12", "notch", height="4")
    outlet = thing("outlet", "44", "2 3/4", height="44")
    tub = thing("tub", "0", "60", "stops", depth="30", height="20")
    toilet = thing("toilet", "40", "20", "over", depth="28", height="30")
    return room(
        wall("w1", "60", things=[door]), wall("w2", "96", things=[vanity, register, outlet]),
        wall("w3", "60", things=[tub]), wall("w4", "96", things=[toilet]),
        casing__wanted="yes", shoe__wanted="yes",
    )  # fmt: skip


def test_a_bath_with_an_alcove_tub_a_vanity_and_a_tight_door():
    # Wall 4: 96 - 30 - 1/8 of caulk. Wall 2: 11/16 of casing to the vanity at 6; then 42 to 96 - 30 - 1/8. Wall 1: from
    # corner 4 to 28 1/2 - 3/16 - 2 1/4. No base behind the tub, none in the 1 1/2 beside the door.
    assert listed(bath(), "base") == [
        ("base, wall 4", '65 7/8"', "square the tub on wall 3", "square corner 4"),
        ("base, wall 1, left of the door", '26 1/16"', "cope corner 4", "square the door"),
        ("base, wall 2, right of the vanity", '23 7/8"', "square the vanity", "square the tub on wall 3"),
        ("base, wall 2, left of the vanity", '5 5/16"', "square the casing of the door on wall 1", "square the vanity"),
    ]
    # The right leg is what 1 1/2 less a reveal of 3/16 leaves: 1 5/16.
    assert [row[:2] for row in listed(bath(), "left leg", "right leg", "head")] == [
        ("left leg, wall 1, door", '82 7/16"'),
        ("right leg, wall 1, door", '81 1/2"'),
        ("head, wall 1, door", '33 15/16"'),
    ]


def test_shoe_in_that_bath_keeps_out_of_the_register_and_the_toilet():
    # 1/8 is kept clear of each. Wall 4: 30 1/8 to 39 7/8, and 60 1/8 to the base's face at 95 7/16; wall 2: 42 to
    # 45 7/8 and 58 1/8 to 65 7/8.
    assert sorted(listed(bath(), "shoe")) == [
        ("shoe, wall 1, left of the door", '25 1/2"', "cope corner 4", "square the door"),
        ("shoe, wall 2, between the vanity and the register", '3 7/8"', "square the vanity", "return the register"),
        ("shoe, wall 2, left of the vanity", '5 5/16"', "square the casing of the door on wall 1", "square the vanity"),
        ("shoe, wall 2, right of the register", '7 3/4"', "return the register", "square the tub on wall 3"),
        ("shoe, wall 4, left of the toilet", '9 3/4"', "square the tub on wall 3", "return the toilet"),
        ("shoe, wall 4, right of the toilet", '35 5/16"', "return the toilet", "square corner 4"),
    ]


def test_an_l_shaped_bath_with_a_tub_in_its_alcove():
    """8 by 8 less 3 by 3: a tub 30 deep between walls 4 and 6, a vanity in corner 2, a toilet beside the tub."""
    facts = room(
        wall("w1", "96", things=[thing("door", "40", "30", left="80", right="80")]),
        wall("w2", "60", things=[thing("vanity", "20", "40", "stops", height="34 1/2", depth="21")]),
        wall("w3", "36", turn="outside"), wall("w4", "36"),
        wall("w5", "60", things=[thing("tub", "0", "60", "stops", depth="30", height="20")]),
        wall("w6", "96", things=[thing("toilet", "50", "20", "over", depth="28", height="30")]),
        casing__wanted="yes", shoe__wanted="yes",
    )  # fmt: skip
    # Base is 9/16 thick. Wall 3: 36 - 21, and 9/16 to the miter's point; wall 4: 36 - 30 - 1/8 of caulk, and 9/16;
    # wall 6: 96 - 30 1/8; wall 1: to 40 - 2 7/16, and from 70 + 2 7/16 to 96.
    assert listed(facts, "base") == [
        ("base, wall 3", '15 9/16"', "square the vanity on wall 2", "miter corner 3"),
        ("base, wall 4", '6 7/16"', "miter corner 3", "square the tub on wall 5"),
        ("base, wall 2, left of the vanity", '20"', "square corner 1", "square the vanity"),
        ("base, wall 6", '65 7/8"', "square the tub on wall 5", "square corner 6"),
        ("base, wall 1, right of the door", '23 9/16"', "square the door", "cope corner 1"),
        ("base, wall 1, left of the door", '37 9/16"', "cope corner 6", "square the door"),
    ]
    # Shoe is 1/2 thick and lies on the face of the base: 9/16 + 1/2 at corner 3; wall 6 from 30 1/8 to 49 7/8 and from
    # 70 1/8 to 95 7/16; wall 2 from 9/16 to 20; wall 1 from 9/16 to 37 9/16 and from 72 7/16 to 95 7/16.
    assert sorted(listed(facts, "shoe")) == [
        ("shoe, wall 1, left of the door", '37"', "cope corner 6", "square the door"),
        ("shoe, wall 1, right of the door", '23"', "square the door", "cope corner 1"),
        ("shoe, wall 2, left of the vanity", '19 7/16"', "square corner 1", "square the vanity"),
        ("shoe, wall 3", '16 1/16"', "square the vanity on wall 2", "miter corner 3"),
        ("shoe, wall 4", '6 15/16"', "miter corner 3", "square the tub on wall 5"),
        ("shoe, wall 6, left of the toilet", '19 3/4"', "square the tub on wall 5", "return the toilet"),
        ("shoe, wall 6, right of the toilet", '25 5/16"', "return the toilet", "square corner 6"),
    ]
    assert [row[:2] for row in listed(facts, "shoe return", "head", "left leg", "right leg")] == [
        ("left leg, wall 1, door", '82 7/16"'),
        ("right leg, wall 1, door", '82 7/16"'),
        ("head, wall 1, door", '34 7/8"'),
        ("shoe return, wall 6, left of the toilet, right end", '1/2"'),
        ("shoe return, wall 6, right of the toilet, left end", '1/2"'),
    ]


def hall() -> Facts:
    """A hall 40 by 200 with five doors, one close to a corner on each long side."""

    def door(at: str, name: str) -> Facts:
        return thing("door", at, "30", name=name, left="80", right="80")

    return room(
        wall("w1", "200", things=[door("3", "a"), door("80", "b"), door("160", "c")]), wall("w2", "40"),
        wall("w3", "200", things=[door("20", "d"), door("120", "e")]), wall("w4", "40"), casing__wanted="yes",
    )  # fmt: skip


def test_a_hall_with_five_doors():
    # Casing reaches 2 7/16 past each jamb. Wall 1: the door at 3 leaves 9/16 to corner 4, which the base of wall 4 just
    # passes; 35 7/16 to 77 9/16, 112 7/16 to 157 9/16, 192 7/16 to 200. Wall 3: to 17 9/16, from 52 7/16 to 117 9/16,
    # from 152 7/16 on.
    found = ask("pieces", hall())
    backs = sorted((one["wall"], one["back"]["inches"]) for one in found["pieces"] if one["part"] == "base")
    assert [row for row in backs if row[1] > 1] == [
        ("w1", 7.5625), ("w1", 42.125), ("w1", 45.125), ("w2", 40.0), ("w3", 17.5625), ("w3", 47.5625),
        ("w3", 65.125), ("w4", 40.0),
    ]  # fmt: skip
    assert sum(one["part"].endswith("leg") for one in found["pieces"]) == 10


def test_wainscot_with_cap_and_chair_rail_dying_into_casing():
    # A den 100 by 90: rail and cap stop at the door's casing, 37 9/16 and 72 7/16 along wall 1. The rail dies into the
    # window's casing too, at 30 - 2 7/16 and 56 + 2 7/16: its sill, at 30, is below the rail.
    door = thing("door", "40", "30", left="80", right="80")
    window = thing("window", "30", "26", left="40", right="40", sash="3", sill="30")
    facts = room(
        wall("w1", "100", things=[door]), wall("w2", "90", things=[window]), wall("w3", "100"), wall("w4", "90"),
        casing__wanted="yes", cap__wanted="yes", chair_rail__wanted="yes",
    )  # fmt: skip
    rails = {row[0]: row[1] for row in listed(facts, "chair rail")}
    assert rails == {
        "chair rail, wall 1, left of the door": '37 9/16"', "chair rail, wall 1, right of the door": '27 9/16"',
        "chair rail, wall 2, left of the window": '27 9/16"', "chair rail, wall 2, right of the window": '31 9/16"',
        "chair rail, wall 3": '100"', "chair rail, wall 4": '90"',
    }  # fmt: skip
    caps = {row[0]: row[1] for row in listed(facts, "base cap")}
    assert caps == {
        "base cap, wall 1, left of the door": '37 9/16"', "base cap, wall 1, right of the door": '27 9/16"',
        "base cap, wall 2": '90"', "base cap, wall 3": '100"', "base cap, wall 4": '90"',
    }  # fmt: skip
