"""Base by example: rooms worked by hand, the reckoning beside each."""

from typing import Any

import pytest
from scantling.engine.desk import QUESTIONS
from scantling.engine.questions.facts import RoomField

from tests.rooms import Facts, ask, by_wall, inches, joints, oblong, pieces, room, thing, wall

# The standard of these rooms, where none is said: base 9/16 thick, casing 2 1/4, reveal 3/16.
T = 9 / 16


def figures(piece: Facts) -> tuple[float, float, float]:
    return inches(piece["back"]), inches(piece["front"]), inches(piece["cut"])


def flags(piece: Facts) -> set[str]:
    return {flag["key"] for flag in piece["flags"]}


def places(facts: Facts) -> list[tuple[str, str, str]]:
    """Name and joints of every piece, in fitting order."""
    return [(piece["part_name"], *joints(piece)) for piece in pieces(facts)]


def test_a_plain_room_with_a_door_is_fitted_from_the_wall_facing_it_outward():
    # The door is in wall 1. Wall 3 faces it and runs through; 2 and 4 are coped to it, and the runs beside the door to
    # those.
    assert places(oblong(thing("door", "30", "30 1/8"))) == [
        ("base, wall 3", "square", "square"),
        ("base, wall 4", "cope", "square"),
        ("base, wall 2", "square", "cope"),
        ("base, wall 1, left of the door", "cope", "square"),
        ("base, wall 1, right of the door", "square", "cope"),
    ]


def test_the_lengths_of_a_plain_room_with_a_door():
    found = pieces(oblong(thing("door", "30", "30 1/8")))
    # Through: 120 back and face. Coped once: the face is shorter by 9/16.
    # Left of the door: 30 - 3/16 - 2 1/4 = 27 9/16 at the back, 27 at the face.
    # Right of it: 120 - 30 - 30 1/8 - 3/16 - 2 1/4 = 57 7/16, 56 7/8.
    assert [figures(piece) for piece in found] == [
        (120, 120, 120),
        (96, 96 - T, 96),
        (96, 96 - T, 96),
        (27.5625, 27, 27.5625),
        (57.4375, 56.875, 57.4375),
    ]
    assert [piece["letter"] for piece in found] == list("ABCDE")
    assert {piece["profile"] for piece in found} == {"base 9/16 × 5 1/2"}


def test_a_chimney_breast_is_mitered_outside_and_its_returns_are_coped_to_the_alcoves():
    # Wall 3 of 40 stands 15 into the room between walls 2 and 4. In walking order: inside corner, 15, outside, 40,
    # outside, 15, inside. Each outside miter of 90 makes a face longer by 9/16.
    found = by_wall(
        room(
            wall("w1", "30"), wall("w2", "15", "outside"), wall("w3", "40", "outside"), wall("w4", "15"),
            wall("w5", "30"),
            closed=False,
        )
    )  # fmt: skip
    assert figures(found["w3"]) == (40, 40 + 2 * T, 40 + 2 * T)
    assert joints(found["w3"]) == ("miter", "miter")
    # What the face gains at the miter it loses at the cope.
    assert figures(found["w2"]) == figures(found["w4"]) == (15, 15, 15 + T)
    assert joints(found["w2"]) == ("cope", "miter")
    assert joints(found["w4"]) == ("miter", "cope")
    # Walls 1 and 5, in the alcoves, run through.
    assert figures(found["w1"]) == figures(found["w5"]) == (30, 30, 30)


def test_a_bay_of_135_takes_and_gives_by_the_tangent_of_its_saw_setting():
    # Inside corner of 135: saw (180 - 135) / 2 = 22.5; a mitered face is shorter by 9/16 * tan 22.5 = 0.232995.
    # Outside with a gauge of 135: saw 22.5 too, and longer by as much.
    found = by_wall(
        room(
            wall("w1", "40", corner="135"), wall("w2", "30", "outside", "135"), wall("w3", "50"),
            closed=False, base__inside="miter",
        )
    )  # fmt: skip
    by = 0.232995
    assert figures(found["w1"])[1] == pytest.approx(40 - by, abs=1e-6)
    assert figures(found["w2"])[1] == pytest.approx(30 - by + by, abs=2e-6)
    assert figures(found["w3"])[1] == pytest.approx(50 + by, abs=1e-6)
    assert {found[name][side]["saw"] for name, side in (("w1", "right"), ("w2", "left"), ("w2", "right"))} == {22.5}


def test_butted_base_stops_at_the_face_of_the_board_that_is_up():
    # Walls 2 and 4 stop 9/16 short of wall 3, and wall 1 is 9/16 short at both ends: 120 - 1 1/8 = 118 7/8.
    found = by_wall(oblong(base__inside="butt"))
    assert {name: figures(piece)[:2] for name, piece in found.items()} == {
        "w1": (120, 120), "w2": (96 - T, 96 - T), "w3": (120 - 2 * T, 120 - 2 * T), "w4": (96 - T, 96 - T),
    }  # fmt: skip


def test_mitered_base_keeps_its_back_and_loses_at_its_face_at_both_ends():
    assert {figures(piece) for piece in pieces(oblong(base__inside="miter"))} == {
        (120, 120 - 2 * T, 120), (96, 96 - 2 * T, 96),
    }  # fmt: skip


def test_in_a_corner_tighter_than_square_the_board_that_runs_through_is_beveled_to_lie_on_the_wall():
    # 85 inside: the end is cut 90 - 85 = 5 from square, long at the back; the face loses 9/16 * tan 5 = 0.049212.
    found = by_wall(room(wall("w1", "40", corner="85"), wall("w2", "30"), closed=False))
    through, coped = found["w1"], found["w2"]
    assert through["right"] | {"meets": "", "turns": None} == {
        "said": "meets corner 1",
        "joint": "square", "meets": "", "long_edge": "back", "shown": "square, beveled 5°, long at the back",
        "turn": "inside", "leans": True, "saw": 5.0, "point": 85.0, "saw_shown": "5°", "point_shown": "85°",
        "bevel": None, "bevel_shown": None, "nested": None, "nested_shown": None, "turns": None,
        "at_saw": None,
    }  # fmt: skip
    assert inches(through["front"]) == pytest.approx(40 - 0.049212, abs=1e-6)
    # Coped: saw (180 - 85) / 2 = 47.5, face shorter by 9/16 * tan 47.5 = 0.613861.
    assert coped["left"]["saw"] == 47.5
    assert inches(coped["front"]) == pytest.approx(30 - 0.613861, abs=1e-6)


def test_in_a_corner_wider_than_square_the_board_that_runs_through_stays_square():
    # 100 inside: coped at saw 40, face shorter by 9/16 * tan 40 = 0.471994.
    found = by_wall(room(wall("w1", "40", corner="100"), wall("w2", "30"), closed=False))
    assert (found["w1"]["right"]["saw"], found["w1"]["right"]["long_edge"]) == (0, "none")
    assert inches(found["w2"]["front"]) == pytest.approx(30 - 0.471994, abs=1e-6)


@pytest.mark.parametrize(
    ("corner", "back", "front"),
    # Back: 30 - (9/16) / sin W; face: that, less (9/16) * cot W.
    [("85", 30 - 0.564649, 30 - 0.564649 - 0.049212), ("100", 30 - 0.571178, 30 - 0.571178 + 0.099184)],
    ids=["tight: long at the back", "wide: long at the face"],
)
def test_a_butted_end_follows_the_face_it_stands_against(corner, back, front):
    found = by_wall(room(wall("w1", "40", corner=corner), wall("w2", "30"), closed=False, base__inside="butt"))
    assert figures(found["w2"])[:2] == pytest.approx((back, front), abs=2e-6)
    assert found["w2"]["left"]["long_edge"] == ("back" if corner == "85" else "front")


def test_a_bevel_that_no_saw_can_be_set_to_is_a_square_end():
    # 24, 24, 33 15/16 is a corner of 89.988: a hundredth of a degree. The face of 9/16 would gain or lose 0.0001.
    found = by_wall(room(wall("w1", "40", corner=None, sides=["24", "24", "33 15/16"]), wall("w2", "30"), closed=False))
    assert found["w1"]["right"]["shown"] == "square"
    assert figures(found["w1"]) == (40, 40, 40)
    assert found["w1"]["cut_from"] == "square, either edge"


def test_boards_of_two_thicknesses_are_mitered_each_at_its_own_angle():
    # 1/2 meets 3/4 at an outside corner of 90: each face is longer by the other's thickness; saws atan(3/4 / 1/2) =
    # 56.31 and atan(1/2 / 3/4) = 33.69. Wall 2's board is 3/4 at its other end too, and so is longer by 1/2 there.
    found = by_wall(
        room(
            wall("w1", "50", "outside", meets="3/4"), wall("w2", "36", "outside"), wall("w3", "20"),
            closed=False, base__thickness="1/2",
        )
    )  # fmt: skip
    assert [inches(found[name]["front"]) for name in ("w1", "w2", "w3")] == [50.75, 37, 20.75]
    saws = [
        found["w1"]["right"]["saw"],
        found["w2"]["left"]["saw"],
        found["w2"]["right"]["saw"],
        found["w3"]["left"]["saw"],
    ]
    assert saws == pytest.approx([56.309932, 33.690068, 33.690068, 56.309932], abs=1e-6)


def test_a_coped_board_reaches_to_the_face_of_a_thicker_one():
    # 1/2 coped to 3/4 at 90: the face is shorter by 3/4.
    facts = room(wall("w1", "20", meets="3/4"), wall("w2", "50"), wall("w3", "20"), closed=False, base__thickness="1/2")
    assert inches(by_wall(facts)["w1"]["front"]) == 19.25


def test_a_room_without_a_door_has_one_board_coped_at_both_ends_which_is_fitted_last():
    found = pieces(oblong())
    assert [joints(piece) for piece in found] == [
        ("square", "square"), ("cope", "square"), ("square", "cope"), ("cope", "cope"),
    ]  # fmt: skip
    assert figures(found[3]) == (120, 120 - 2 * T, 120)
    assert [flags(piece) for piece in found] == [set(), set(), set(), {"coped-twice"}]


def test_an_outside_corner_gives_a_room_without_a_door_a_place_to_begin():
    # An L: inside, inside, inside, inside, outside, inside. No board is coped at both ends.
    turns = ("inside", "inside", "inside", "inside", "outside", "inside")
    lengths = ("100", "80", "140", "40", "40", "40")
    found = pieces(room(*(wall(f"w{n}", *each) for n, each in enumerate(zip(lengths, turns, strict=True), start=1))))
    assert ("cope", "cope") not in [joints(piece) for piece in found]
    assert len(found) == 6


def test_an_open_room_ends_square_where_it_is_open():
    found = by_wall(room(wall("w1", "40"), wall("w2", "30"), closed=False))
    assert (found["w1"]["left"]["joint"], found["w1"]["left"]["meets"]) == ("square", "a free end")
    assert (found["w2"]["right"]["joint"], found["w2"]["right"]["meets"]) == ("square", "a free end")
    assert found["w1"]["left"]["turn"] is None
    assert [found["w1"][end]["said"] for end in ("left", "right")] == ["a free end", "meets corner 1"]


def test_the_first_wall_of_a_room_is_a_board_by_itself():
    (piece,) = pieces(room(wall("w1", "63 1/4", corner="80")))
    assert figures(piece) == (63.25, 63.25, 63.25)
    assert joints(piece) == ("square", "square")


def test_base_stops_at_a_cabinet_without_reveal_or_casing():
    found = {piece["part_name"]: piece for piece in pieces(oblong(thing("cabinet", "24 1/2", "22 3/8", "stops")))}
    left, right = found["base, wall 1, left of the cabinet"], found["base, wall 1, right of the cabinet"]
    assert (inches(left["back"]), left["right"]["meets"]) == (24.5, "the cabinet")
    # 120 - 24 1/2 - 22 3/8 = 73 1/8
    assert inches(right["back"]) == 73.125


def test_base_runs_over_a_register_and_under_a_window_as_if_they_were_not_there():
    things = (thing("register", "40", "12", "over"), thing("window", "38", "30"))
    # Where the light comes from turns joints, and breaks nothing.
    assert sorted(name for name, *_ in places(oblong(*things))) == sorted(name for name, *_ in places(oblong()))


def test_a_notch_is_told_of_with_its_place_along_the_board_it_is_in_and_on_no_other():
    # The door ends at 20 + 30 + 3/16 + 2 1/4 = 52 7/16; a pipe at 60 is 7 9/16 along the board to the right of it.
    things = (thing("door", "20", "30"), thing("pipe", "60", "1 1/4", "notch"))
    told = {piece["part_name"]: [flag["message"] for flag in piece["flags"]] for piece in pieces(oblong(*things))}
    assert told["base, wall 1, left of the door"] == []
    assert told["base, wall 1, right of the door"] == [
        'Notch it for the pipe: 7 9/16" to 8 13/16" from the left along its back, and 1/8" wider each way.',
    ]


def test_a_notch_whose_place_is_not_read_is_told_of_on_every_board_it_may_be_in():
    things = (thing("door", "20", "30"), thing("pipe", None, None, "notch"))
    found = ask("pieces", oblong(*things))["pieces"]
    assert [flags(piece) for piece in found if piece["wall"] == "w1"] == [
        {"notch"}, {"notch"},
    ]  # fmt: skip


CORNERED: dict[str, tuple[str, list[str], list[str]]] = {
    # The casing reaches 3/16 + 2 1/4 = 2 7/16 to each side of the door.
    "casing flush in the corner": ("2 7/16", ["base, wall 1, right of the door"], []),
    "casing ripped to lie flush": ("2", ["base, wall 1, right of the door"], []),
    "no room for any casing": ("1/8", [], ["no-room"]),
    "less wall than the joint takes": ("2 15/16", ["base, wall 1, right of the door"], ["closed-off"]),
    "more wall than the joint takes": (
        "3 1/16",
        ["base, wall 1, left of the door", "base, wall 1, right of the door"],
        [],
    ),
}


@pytest.mark.parametrize(("at", "names", "keys"), CORNERED.values(), ids=CORNERED)
def test_a_door_at_a_corner_leaves_what_it_leaves(at, names, keys):
    answered = ask("pieces", oblong(thing("door", at, "30")))
    assert [piece["part_name"] for piece in answered["pieces"] if piece["wall"] == "w1"] == names
    assert [problem["key"] for problem in answered["problems"]] == keys
    assert [piece["letter"] for piece in answered["pieces"]] == list("ABCDE")[: 3 + len(names)]


@pytest.mark.parametrize("inside", ["cope", "miter", "butt"])
@pytest.mark.parametrize("length", ["1/8", "9/16", "1", "1 1/8", "1 3/16"])
def test_no_piece_has_a_back_or_a_face_of_less_than_nothing(inside, length):
    answered = ask(
        "pieces", room(wall("w1", length), wall("w2", "96"), wall("w3", length), wall("w4", "96"), base__inside=inside)
    )
    assert all(min(figures(piece)) > 0 for piece in answered["pieces"])
    short = {problem["wall"] for problem in answered["problems"] if problem["key"] == "too-short"}
    assert short | {piece["wall"] for piece in answered["pieces"]} == {"w1", "w2", "w3", "w4"}


def test_between_two_doors_a_board_needs_no_wall_length():
    # From 20 + 30 + 2 7/16 = 52 7/16 to 80 - 2 7/16 = 77 9/16: 25 1/8.
    things = [thing("door", "20", "30", name="a"), thing("cased", "80", "20", name="b")]
    found = ask("pieces", room(wall("w1", None, things=things), wall("w2", "50"), closed=False))["pieces"]
    between = next(piece for piece in found if piece["part_name"].endswith("between the door and the cased opening"))
    assert figures(between) == (25.125, 25.125, 25.125)


def test_what_a_run_is_made_of_counts_small_and_what_is_taken_off_it_counts_large():
    # 119 15/16, smallest of two; at 30 1/16 and 30 1/8 wide, largest. Left of the door the place itself counts small.
    door = thing("door", ["30", "30 1/16"], ["30", "30 1/8"])
    facts = oblong(door)
    facts["walls"][0]["length"] = ["120", "119 15/16"]
    found = {piece["part_name"]: piece for piece in pieces(facts)}
    assert inches(found["base, wall 1, left of the door"]["back"]) == 30 - 2.4375
    right = found["base, wall 1, right of the door"]
    assert inches(right["back"]) == 119.9375 - 30.0625 - 30.125 - 2.4375
    said = [step["text"] for step in right["working"]]
    assert said[:3] == [
        "+ wall 1 (smallest of 2 readings)",
        "− to the door (largest of 2 readings)",
        "− the door (largest of 2 readings)",
    ]


def test_the_working_of_a_board_beside_a_door_as_a_person_reads_it():
    found = pieces(oblong(thing("door", "30", "30 1/8"), reveal="3/16"))
    steps = [(step["text"], step["value"] and step["value"]["shown"], step["readings"]) for step in found[4]["working"]]
    assert steps == [
        ("+ wall 1", '120"', ["120"]),
        ("− to the door", '30"', ["30"]),
        ("− the door", '30 1/8"', ["30 1/8"]),
        ("− reveal (the standard)", '3/16"', []),
        ("− casing (common practice, until you set it)", '2 1/4"', []),
        ("= along the wall", '57 7/16"', []),
        ("right end, inside corner, gauge 90°: cope, saw 45° from square (point 45°); face shorter by", '9/16"', []),
        ("= back", '57 7/16"', []),
        ("= face", '56 7/8"', []),
        ('± 1/16" 19 times in 20; 1/8" were all 4 readings and marks out at once', None, []),
    ]


@pytest.mark.parametrize(
    ("lacking", "expected"),
    [("length", "neighbor-unread"), ("corner", "corner-unread")],
)
def test_what_is_not_read_round_a_corner_is_told_of_and_allowed_for(lacking, expected):
    # An outside corner: while wall 2 is unread its board may yet come, and wall 1's must have wood for a miter.
    holder = wall("w1", "50", "outside", "90" if lacking == "length" else None)
    facts = room(holder, wall("w2", None if lacking == "length" else "20"), closed=False)
    first = next(piece for piece in pieces(facts) if piece["wall"] == "w1")
    assert expected in flags(first)
    assert figures(first) == (50, 50 + T, 50 + T)


def test_a_corner_taken_as_square_for_want_of_a_reading_asks_to_be_read_before_cutting():
    facts = room(wall("w1", "50", corner=None), wall("w2", "20"), closed=False)
    messages = {flag["message"] for piece in pieces(facts) for flag in piece["flags"] if flag["key"] == "corner-unread"}
    assert messages == {"Corner 1 has not been read and is taken as square: read it before cutting."}


# Casing begins at 40 - 3/16 - 2 1/4 = 37 9/16: 1/4 of wall is left beside one cabinet, 3/4 beside the other.
BESIDE = [oblong(thing("cabinet", "0", width, "stops"), thing("door", "40", "30"), casing__wanted="yes")
          for width in ("37 5/16", "36 13/16")]  # fmt: skip
FLAGS: dict[str, tuple[Facts, str]] = {
    "a gap and no wall": (BESIDE[0], "narrow"),
    "short": (room(wall("w1", "11 15/16")), "short"),
    "an outside corner out of square": (
        room(wall("w1", "50", "outside", corner="89"), wall("w2", "50"), closed=False), "not-square",
    ),
    "longer than any board": (
        room(wall("w1", "200"), base__stock=[{"length": "16 ft", "price": "1"}]),
        "longer-than-stock",
    ),
}


@pytest.mark.parametrize(("facts", "key"), FLAGS.values(), ids=FLAGS)
def test_what_a_person_should_know_before_cutting_is_flagged(facts, key):
    assert any(key in flags(piece) for piece in pieces(facts))


UNFLAGGED: dict[str, tuple[Facts, str]] = {
    "as much wall as a board is thick": (BESIDE[1], "narrow"),
    "just long enough to hold": (room(wall("w1", "12")), "short"),
    "a cope": (room(wall("w1", "50", corner="87"), wall("w2", "50"), closed=False), "not-square"),
    "less than a degree out": (
        room(wall("w1", "50", "outside", corner="89.1"), wall("w2", "50"), closed=False), "not-square",
    ),
    "as long as a board less its trim": (
        room(wall("w1", "191 1/2"), base__stock=[{"length": "16 ft", "price": "1"}]), "longer-than-stock",
    ),
}  # fmt: skip


@pytest.mark.parametrize(("facts", "key"), UNFLAGGED.values(), ids=UNFLAGGED)
def test_what_nobody_needs_to_know_is_not_flagged(facts, key):
    assert not any(key in flags(piece) for piece in pieces(facts))


def test_plus_minus_counts_every_reading_and_the_mark():
    # Common practice: 1/32 for each reading and for the pencil mark; together by JCGM 100: 1.96 · 1/32 · √(n/3).
    found = {piece["part_name"]: piece["plus_minus"] for piece in pieces(oblong(thing("door", "30", "30")))}
    assert inches(found["base, wall 3"]) == pytest.approx(1.96 / 32 * (2 / 3) ** 0.5, abs=1e-6)
    assert inches(found["base, wall 1, right of the door"]) == pytest.approx(1.96 / 32 * (4 / 3) ** 0.5, abs=1e-6)
    assert {one["shown"] for one in found.values()} == {'1/16"'}


def test_plus_minus_adds_what_the_gauge_may_be_off_where_the_face_is_the_longer():
    # t / (2 sin² 45) * 0.5 degrees in radians = 9/16 * 0.008727 = 0.004909, beside two of 1/32.
    (mitered, _) = (
        by_wall(room(wall("w1", "50", "outside", "90"), wall("w2", "30"), closed=False))[n] for n in ("w1", "w2")
    )
    assert inches(mitered["plus_minus"]) == pytest.approx(1.96 * ((2 / 32**2 + 0.004909**2) / 3) ** 0.5, abs=1e-6)


@pytest.mark.parametrize(
    ("nearest", "shown"),
    [("1/16", '55 7/16"'), ("1/64", '55 7/16"'), ("1", '55"')],
    ids=["sixteenths", "64ths", "whole"],
)
def test_figures_are_shown_to_the_graduation_that_was_asked_for(nearest, shown):
    # 54 5/16 with a miter at both ends: + 9/16 + 9/16 = 55 7/16.
    facts = room(wall("w1", "20", "outside"), wall("w2", "54 5/16", "outside"), wall("w3", "20"), closed=False)
    found = {piece["wall"]: piece for piece in ask("pieces", facts, nearest=nearest)["pieces"]}
    assert found["w2"]["front"]["shown"] == shown


def test_an_odd_figure_that_the_graduation_would_hide_is_shown_finer_in_the_working():
    facts = room(wall("w1", "54 5/16", "outside", "91"), wall("w2", "30"), closed=False)
    found = by_wall(facts)["w1"]["working"]
    by: Any = next(step for step in found if step["text"].startswith("right end"))
    # 9/16 * cot(45.5) = 0.552766, which is 35/64 and a bit.
    assert by["value"]["shown"] == '35/64"'


def test_what_nothing_reads_is_named():
    facts = oblong(base__glue="hide")
    facts["color"] = "blue"
    facts["walls"][1]["mood"] = "good"
    assert ask("pieces", facts)["warnings"] == [
        "Not used: color.",
        "Not used: standard.base.glue.",
        "Not used: walls.1.mood.",
    ]


MISPLACED = {
    "of a corner": (lambda wall: wall["corner"].update(sids="24, 24, 34"), "walls.0.corner.sids"),
    "of a depth": (lambda wall: wall["openings"][0].update(depths={"top": "1/2"}), "walls.0.openings.0.depths.top"),
    "of an opening's settings": (
        lambda wall: wall["openings"][0].update(settings={"base.height": "4"}),
        "walls.0.openings.0.settings.base.height",
    ),
    "of a wall's settings": (
        lambda wall: wall.update(settings={"battens": {"cuont": "4"}}), "walls.0.settings.battens.cuont",
    ),
}  # fmt: skip


@pytest.mark.parametrize(("spoil", "name"), MISPLACED.values(), ids=MISPLACED)
def test_a_field_that_nothing_reads_is_named_however_deep(spoil, name):
    facts = oblong(thing("door", "30", "30"))
    spoil(facts["walls"][0])
    assert ask("pieces", facts)["warnings"] == [f"Not used: {name}."]


#: What else each question about a room must be told; the drawings of a few of its pieces have no sentences at all, and
#: files hold the answer to `pieces`.
BESIDES = {
    "elevation": {"wall": "w1"}, "boards_if": {"profile": "base 9/16 × 5 1/2"},
    "seams": {"roll": {"width": "20 1/2", "length": "33 ft"}, "height": "96"},
}  # fmt: skip
OF_A_ROOM = [
    name for name, question in QUESTIONS.items()
    if isinstance(question.takes().fields.get("room"), RoomField) and "warnings" in question.gives().fields
]  # fmt: skip


@pytest.mark.parametrize("name", OF_A_ROOM)
def test_a_field_that_nothing_reads_is_named_whatever_is_asked_of_the_room(name):
    facts = oblong(base__stock=[{"length": "16 ft", "price": "20.00"}], caulk__sise="1/8")
    facts["walls"][0]["corner"]["corers"] = "90"
    told = [f"Not used: {field}." for field in ("walls.0.corner.corers", "standard.caulk.sise")]
    # What a room uses up is counted by one question alone, which knows those names.
    assert ask(name, facts, **BESIDES.get(name, {}))["warnings"] == told[: 2 if name == "supplies" else 1]


def test_a_field_of_a_free_piece_that_nothing_reads_is_named():
    facts = oblong()
    facts["free"] = [{"id": "f1", "name": "shelf", "profile": "shelf", "text": "20", "cuont": "2"}]
    assert ask("pieces", facts)["warnings"] == ["Not used: free.0.cuont."]
