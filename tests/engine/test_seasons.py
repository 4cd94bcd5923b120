"""What seasons do to wide stock: a note with its figures, only where the house names its wood and its moisture."""

from tests.rooms import Facts, oblong, pieces, thing

OAK = {"wood__species": "red oak", "wood__from": "8", "wood__to": "6"}


def notes(facts: Facts) -> list[Facts]:
    return [flag for piece in pieces(facts) for flag in piece["flags"] if flag["key"] == "movement"]


def test_wide_base_says_how_much_narrower_it_gets():
    # 5 1/2 of flat-sawn red oak: 5.5 * .00369 * 2 = .0406, which is 3/64 to the nearest 64th.
    found = notes(oblong(**OAK))
    assert len(found) == 4
    assert found[0]["message"] == 'Red oak 5 1/2" wide, flat-sawn, from 8 to 6 % moisture: 3/64" narrower.'
    assert found[0]["attention"] is False


def test_mitered_casing_says_how_far_its_miter_opens():
    door = thing("door", "30", "30", left="80", right="80")
    found = notes(oblong(door, casing__wanted="yes", base__wanted="no", casing__width="3 1/2", **OAK))
    # 3.5 * .00369 * 2 = .0258, 1/32 to the nearest 64th; times the root of two .0365, as much.
    assert 'A flat miter across it would open 1/32".' in found[0]["message"]


def test_nothing_is_said_of_a_wood_or_a_moisture_that_was_not_named():
    assert notes(oblong()) == []
    assert notes(oblong(wood__species="red oak", wood__from="8")) == []


def test_a_change_too_small_to_see_is_not_said():
    assert notes(oblong(**{**OAK, "wood__to": "7.9"})) == []
