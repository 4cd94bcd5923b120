"""Windows side by side with one casing between: one head, one stool, one apron. Figures worked by hand beside them."""

import pytest

from tests.rooms import ask, oblong, thing

CASED = {"casing__wanted": "yes", "base__wanted": "no"}
#: It shares a casing with the next window to its right.
SHARES = {"window.mulled": "yes"}


def window(name, at, width="24", settings=None, **more):
    heights = {"left": "48", "right": "48", "head_corners": ["90", "90"]}
    return thing("window", at, width, name=name, settings=settings or {}, **{**heights, **more})


def pair(at="46 1/2", **second):
    """Two windows of 24, the second so far along; 46 1/2 leaves 46 1/2 − 20 − 24 = 2 1/2 between them."""
    return window("one", "20", settings=SHARES), window("two", at, **second)


def parts(*windows, **standard):
    answered = ask("pieces", oblong(*windows, **{**CASED, **standard}))
    assert answered["problems"] == []
    return {piece["part"]: piece for piece in answered["pieces"]}


def cuts(*windows, **standard):
    return {name: piece["cut"]["shown"] for name, piece in parts(*windows, **standard).items()}


def told(piece, key):
    return [flag["message"] for flag in piece["flags"] if flag["key"] == key]


def problems(*windows, **standard):
    answered = ask("pieces", oblong(*windows, **{**CASED, **standard}))
    return [(one["key"], one["message"]) for one in answered["problems"]]


def test_two_windows_have_one_head_one_stool_one_apron_and_one_casing_between():
    # From the first jamb to the last: 46 1/2 + 24 − 20 = 50 1/2.
    # Head: 50 1/2 + 2 × 3/16 = 50 7/8 short, + 2 × 2 1/4 = 55 3/8 long; the apron as long.
    # Stool: 50 1/2 + 2 × (3/16 + 2 1/4 + 1/2) = 56 3/8. Legs: 48 + 3/16 − 3/4 = 47 7/16, + 2 1/4 at the long point.
    # Between: 47 7/16 long, and 2 1/2 − 2 × 3/16 = 2 1/8 wide.
    assert cuts(*pair()) == {
        "stool": '56 3/8"', "left leg": '49 11/16"', "right leg": '49 11/16"', "head": '55 3/8"',
        "shared casing": '47 7/16"', "apron": '55 3/8"',
        "apron return, left": '11/16"', "apron return, right": '11/16"',
    }  # fmt: skip
    shared = parts(*pair())["shared casing"]
    assert told(shared, "note") == ['Rip it to 2 1/8", as much off either edge.']
    assert shared["profile"] == 'casing 11/16 × 2 1/4'
    assert (shared["left"]["joint"], shared["right"]["joint"]) == ("butt", "square")


def test_the_stool_is_notched_for_the_wall_between_the_windows():
    stool = parts(*pair(sash="4 1/2"))["stool"]
    # Its left end is 1/2 + 2 1/4 + 3/16 = 2 15/16 before the first jamb: 2 15/16 + 24 = 26 15/16, and 2 1/2 on.
    assert any('26 15/16" to 29 7/16" from its left end' in said for said in told(stool, "note"))
    # It is ripped once every sash is read; until then it waits for the other.
    assert told(stool, "opening")[0].startswith("The stool's width wants one more reading")
    one, two = window("one", "20", settings=SHARES, sash="4 3/4"), window("two", "46 1/2", sash="4 1/2")
    working = {step["text"]: step["value"] for step in parts(one, two)["stool"]["working"]}
    assert working["= rip it so wide"]["shown"] == '5 5/8"'  # 4 1/2 − 1/16 + 11/16 + 1/2


def test_the_head_says_what_it_follows_from_and_counts_every_reading_in_its_plus_or_minus():
    head, alone = parts(*pair())["head"], parts(window("one", "20"))["head"]
    assert [step["text"] for step in head["working"]][:3] == [
        "+ to the right window", "+ the right window", "− to the left window"]  # fmt: skip
    assert head["plus_minus"]["inches"] > alone["plus_minus"]["inches"]


def test_three_windows_have_two_casings_between_and_one_that_is_too_wide_is_of_flat_stock():
    one, two = window("one", "10", settings=SHARES), window("two", "37", settings=SHARES)
    three = window("three", "63")
    found = parts(one, two, three)
    # Gaps 37 − 34 = 3 and 63 − 61 = 2; less 3/8: 2 5/8, wider than the casing, and 1 5/8.
    assert [found[f"shared casing {count}"]["profile"] for count in (1, 2)] == [
        "flat 11/16 × 2 5/8", 'casing 11/16 × 2 1/4']  # fmt: skip
    assert found["head"]["cut"]["shown"] == '81 7/8"'  # 63 + 24 − 10 = 77, + 3/8 + 4 1/2
    assert "wider than the casing" in told(found["shared casing 1"], "note")[0]


def test_framed_as_pictures_they_have_one_sill_and_the_casing_between_stands_from_it_to_the_head():
    found = cuts(*pair(), window__style="picture")
    # 48 + 2 × 3/16 between head and sill.
    assert (found["sill"], found["shared casing"]) == ('55 3/8"', '48 3/8"')


def test_each_window_keeps_its_own_extension_strips():
    depths = {"left": "1/2", "right": "1/2", "head": "1/2"}
    one, two = window("one", "20", settings=SHARES, depths=depths), window("two", "46 1/2", depths=depths)
    answered = ask("pieces", oblong(one, two, **CASED, extension__wanted="yes"))
    strips = [(piece["part"], piece["opening"]) for piece in answered["pieces"] if "extension" in piece["part"]]
    assert strips == [(f"{side} extension", of) for of in ("one", "two") for side in ("left", "right", "head")]
    # The step of 3/16 widens both reveals: 2 1/2 − 2 × 3/8 between, and no strip goes with the whole row.
    shared = next(piece for piece in answered["pieces"] if piece["part"] == "shared casing")
    assert shared["working"][-1]["value"]["shown"] == '1 3/4"'


def test_a_rail_that_breaks_at_them_does_not_run_between_them():
    windows = pair(sill="30")
    windows[0]["sill"] = "30"
    answered = ask("pieces", oblong(*windows, casing__wanted="yes", chair_rail__wanted="yes", base__wanted="no"))
    assert answered["problems"] == []
    rails = [piece["part_name"] for piece in answered["pieces"] if piece["part"] == "chair rail"]
    assert [name for name in rails if "wall 1" in name] == [
        "chair rail, wall 1, left of the left window", "chair rail, wall 1, right of the right window"]  # fmt: skip


@pytest.mark.parametrize(("first", "second"), [("48 1/4", "48"), ("48", "48 1/4")], ids=["right", "left"])
def test_the_casing_between_goes_by_the_lower_of_the_two_heads(first, second):
    # 48 + 3/16 of reveal - 3/4 of stool, whichever window is the lower one: more would not go in.
    one = window("one", "20", settings=SHARES, left=first, right=first)
    found = parts(one, window("two", "46 1/2", left=second, right=second))
    assert found["shared casing"]["cut"]["shown"] == '47 7/16"'
    assert found["shared casing"]["working"][0]["value"]["shown"] == '48"'


def test_heads_a_little_apart_are_told_and_far_apart_refused():
    assert any('1/4" apart' in said for said in told(parts(*pair(left="48 1/4"))["stool"], "opening"))
    (key, said), *_ = problems(*pair(left="60"))
    assert (key, '12" apart' in said) == ("mull-apart", True)


@pytest.mark.parametrize(
    ("windows", "key"),
    [
        ((window("one", "20", settings=SHARES),), "mull-alone"),
        ((window("one", "20", settings=SHARES), thing("door", "60", "30", left="80", right="80")), "mull-alone"),
        (pair(at="44 3/8"), "mull-narrow"),
        (pair(settings={"casing.width": "3 1/2"}), "mull-unlike"),
        (pair(settings={"window.style": "picture"}), "mull-unlike"),
    ],
    ids=["no other window", "a door beside it", "as close as two reveals", "other casing", "another style"],
)
def test_a_row_that_cannot_be_is_a_problem_on_its_wall_and_the_rest_still_answers(windows, key):
    facts = oblong(*windows, casing__wanted="yes")
    answered = ask("pieces", facts)
    assert key in {one["key"] for one in answered["problems"]}
    assert {one["wall"] for one in answered["problems"]} == {"w1"}
    assert {piece["wall_number"] for piece in answered["pieces"]} >= {2, 3, 4}


def test_a_row_waits_until_every_place_in_it_is_read():
    one, two = pair()
    del two["at"]
    assert [piece["part"] for piece in ask("pieces", oblong(one, two, **CASED))["pieces"]] == []
    wanted = [(one["of"], one["what"]) for one in ask("needs", oblong(one, two, **CASED))["needs"]]
    # Who walks on passes none over: what is not placed comes after what is.
    assert [of for of, _ in wanted] == sorted(of for of, _ in wanted)
    assert ("two", "at") in wanted


def test_a_window_alone_that_was_said_to_share_nothing_is_as_it_was():
    assert cuts(window("one", "20")) == cuts(window("one", "20", settings={"window.mulled": "no"}))


def test_a_band_goes_round_the_whole_row_and_not_round_the_casing_between():
    # Head 55 3/8 outside, and 1 at either miter: 57 3/8; legs 49 11/16 and 1.
    found = {name: cut for name, cut in cuts(*pair(), backband__width="1").items() if "backband" in name}
    assert found == {
        "left leg backband": '50 11/16"', "right leg backband": '50 11/16"', "head backband": '57 3/8"',
    }  # fmt: skip


@pytest.mark.parametrize("tight", [("3", "30"), ("63", "93")], ids=["left", "right"])
def test_a_row_that_has_no_room_for_a_band_at_one_end_has_none_at_all(tight):
    # 3 from the jamb to the corner: the reveal, the leg and a band of 1 are 3 7/16.
    row = window("one", tight[0], settings=SHARES), window("two", tight[1])
    answered = ask("pieces", oblong(*row, **CASED, backband__width="1"))
    assert [one["key"] for one in answered["problems"]] == ["no-room-for-band"]
    assert not [piece for piece in answered["pieces"] if "backband" in piece["part"]]


def test_base_beside_a_row_without_a_band_goes_to_its_casing():
    # Base goes by windows that come down to it: 30 less 3/16 and 2 1/4, whichever end of the row wants the room.
    for ends, base in ((("3", "30"), "w1"), (("63", "93"), "w1")):
        row = [window(name, at, settings=settings, sill="6") for name, at, settings in
               (("one", ends[0], SHARES), ("two", ends[1], {}))]  # fmt: skip
        facts = oblong(*row, casing__wanted="yes", backband__width="1", window__style="picture", base__height="5 1/2")
        found = [piece["back"]["shown"] for piece in ask("pieces", facts)["pieces"]
                 if piece["part"] == "base" and piece["wall"] == base]  # fmt: skip
        bare = oblong(*row, casing__wanted="yes", window__style="picture", base__height="5 1/2")
        assert found == [piece["back"]["shown"] for piece in ask("pieces", bare)["pieces"]
                         if piece["part"] == "base" and piece["wall"] == base]  # fmt: skip
