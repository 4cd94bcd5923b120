"""What is told of a piece only where it is worth a word: bevels, copes, scrap tests, returns, steep miters."""

from fractions import Fraction

import pytest
from scantling.engine.standard import Standard
from scantling.engine.tape.lengths import Length
from scantling.engine.trim.doubt import Doubt
from scantling.engine.trim.ends import End
from scantling.engine.trim.piece import Kind, Piece
from scantling.engine.trim.told.short import mark_short

from tests.rooms import Facts, ask, by_wall, oblong, pieces, room, thing, wall


def told(piece: Facts, key: str) -> list[str]:
    return [flag["message"] for flag in piece["flags"] if flag["key"] == key]


@pytest.mark.parametrize(("gauge", "shown", "leans"), [
    # The board that runs through a corner tighter than square is cut along the wall: 9/16 × tan(90° − W).
    ("88.4", "square, beveled 1.6°, long at the back", True),  # 0.01571, more than 1/64
    ("88.5", "square", False),  # 0.01473
])  # fmt: skip
def test_a_bevel_is_said_where_it_moves_an_edge_by_a_64th(gauge, shown, leans):
    end = by_wall(room(wall("w1", "40", corner=gauge), wall("w2", "30"), closed=False))["w1"]["right"]
    assert (end["shown"], end["leans"]) == (shown, leans)


@pytest.mark.parametrize(("gauge", "said"), [("90", "45°"), ("86", "45°"), ("94", "45°"), ("94.2", "42.9°")])
def test_copes_within_two_degrees_of_45_are_one_setting(gauge, said):
    # A corner of 86 wants 47 from square, 94 wants 43; one of 94.2 wants 42.9, which is another setting.
    coped = by_wall(room(wall("w1", "40", corner=gauge), wall("w2", "30"), closed=False))["w2"]["left"]
    assert (coped["joint"], coped["shown"].removeprefix("cope, "), coped["saw_shown"]) == ("cope", said, said)


def test_a_run_that_nothing_comes_round_to_meet_ends_an_eighth_before_an_arris_not_square():
    def face(corner: str) -> str:
        blocked = thing("cabinet", "0", "30", "stops", name="c")
        facts = room(wall("w1", "50", "outside", corner=corner), wall("w2", "30", things=[blocked]), closed=False)
        piece = next(piece for piece in ask("pieces", facts)["pieces"] if piece["part_name"] == "base, wall 1")
        assert (piece["right"]["joint"], piece["right"]["saw"]) == ("return", 45)
        return piece["front"]["shown"]

    assert (face("90"), face("88")) == ('50"', '49 7/8"')


def test_a_miter_past_the_saws_range_is_warned_of_and_told_how_to_cut():
    # An outside corner of 70 wants 55 from square.
    facts = room(wall("w1", "50", "outside", corner="70"), wall("w2", "50"), closed=False)
    said = [told(piece, "steep") for piece in pieces(facts)]
    assert said == [
        ["Its right end wants 55° on the saw, which turns to 50°: clamp it along a wedge of 15° at the fence and set "
         "40°."],
        ["Its left end wants 55° on the saw, which turns to 50°: clamp it along a wedge of 15° at the fence and set "
         "40°."],
    ]  # fmt: skip
    facts["standard"]["saw.range"] = "60"
    assert [told(piece, "steep") for piece in pieces(facts)] == [[], []]


def test_casing_of_two_widths_may_be_too_steep_and_an_inside_miter_may_be_coped():
    # A head of 4 over legs of 2 1/4: the legs are cut at atan(4 / 2 1/4) = 60.6.
    door = thing("door", "40", "30", left="80", right="80", head_corners=["90", "90"])
    facts = oblong(door, casing__wanted="yes", base__wanted="no", casing__head_width="4")
    steep = {piece["part"]: told(piece, "steep") for piece in ask("pieces", facts)["pieces"]}
    assert [len(steep[part]) for part in ("left leg", "right leg", "head")] == [1, 1, 0]
    inside = room(wall("w1", "50", corner="70"), wall("w2", "50"), closed=False, base__inside="miter")
    assert all("or cope it" in told(piece, "steep")[0] for piece in pieces(inside))


def test_the_blank_of_a_piece_mitered_at_both_ends_counts_the_tip_of_what_is_held():
    half = Length(Fraction(1, 2))
    miter, square = (End(joint, "", Fraction(45), grows) for joint, grows in (("miter", half), ("square", half * 0)))

    def blank(left: End, right: End) -> Length | None:
        made = Piece("k", Kind.BASE, "base", "", "base", "w", 1, Length(Fraction(4)), left, right, Doubt(()), (), ())
        return mark_short(made, Standard()).blank

    # 12 held, 1/8 kerf, 4 and 1/2 a tip; at both ends 4 + 1/2 + 1/2, and 1/2 on what is held.
    assert blank(miter, square) == Length(Fraction(133, 8))
    assert blank(miter, miter) == Length(Fraction(141, 8))


def test_a_door_too_near_an_outside_corner_says_what_is_left_out():
    door = thing("door", "68", "30", left="80", right="80")
    facts = room(wall("w1", "100", "outside", things=[door]), wall("w2", "50"), closed=False, casing__wanted="yes")
    answered = ask("pieces", facts)
    (problem,) = answered["problems"]
    assert problem["key"] == "past-corner"
    assert problem["message"].endswith("Until then its casing is left out, and so is what runs along that wall to it.")
    assert {piece["wall_number"] for piece in answered["pieces"]} == {2}
