"""Corners and saw settings, by example and by what must hold for every corner."""

import math
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scantling.engine.tape.angles import (
    AngleError,
    Corner,
    cotangent_of_half,
    derive_corner_by_gauge,
    derive_corner_by_sides,
    derive_front_minus_back,
    derive_saw,
    format_degrees,
    parse_degrees,
)
from scantling.engine.tape.lengths import Length, parse_length

GAUGES = st.integers(300, 1500).map(lambda tenths: Fraction(tenths, 10))
TURNS = st.sampled_from(("inside", "outside"))
THICKNESSES = st.integers(1, 24).map(lambda sixteenths: Length(Fraction(sixteenths, 16)))


@pytest.mark.parametrize(
    ("text", "degrees"),
    [
        ("91", 91),
        ("88.5", Fraction(177, 2)),
        ("90.25°", Fraction(361, 4)),
        (" 90 deg ", 90),
        ("45 degrees", 45),
        ("7.", 7),
    ],
    ids=["whole", "decimal", "with its sign", "spaced", "in words", "point at the end"],
)
def test_degrees_are_read_exactly(text, degrees):
    assert parse_degrees(text) == degrees


@pytest.mark.parametrize(
    "text",
    ["", " ", "°", "x", "-90", "1e1", ".5", "9.0.0", "٩٠", "90'", "1/2", "1" * 13, "0x5a", "nan", "inf", "²"],
    ids=["empty", "blank", "sign alone", "letter", "minus", "power", "point first", "two points", "other digits",
         "minutes", "fraction", "too long", "hex", "nan", "inf", "superscript"],
)  # fmt: skip
def test_what_is_not_degrees_is_refused_and_quoted(text):
    with pytest.raises(AngleError) as refusal:
        parse_degrees(text)
    assert refusal.value.key == "not-degrees"
    assert text[:40] in refusal.value.message


@pytest.mark.parametrize("gauge", ["0", "180", "360", "400"], ids=["shut", "straight", "whole turn", "more"])
def test_a_gauge_that_shows_no_corner_is_refused(gauge):
    with pytest.raises(AngleError) as refusal:
        derive_corner_by_gauge("inside", Fraction(gauge), gauge)
    assert refusal.value.key == "no-corner"


def test_a_room_side_angle_where_a_gauge_reading_is_wanted_is_refused_with_what_the_gauge_would_read():
    with pytest.raises(AngleError) as refusal:
        derive_corner_by_gauge("outside", Fraction(269), "269")
    assert refusal.value.key == "wrong-turn"
    assert "91" in refusal.value.message


@pytest.mark.parametrize(
    ("text", "tenths"), [("90", 5), ("90.0", 1), ("90.00", 1), ("90°", 5), ("88.5", 1)],
    ids=["whole degrees are off by half", "a tenth", "finer than a hand holds it", "with its sign", "half a degree"],
)  # fmt: skip
def test_a_reading_is_off_by_half_its_last_place_and_never_less_than_a_tenth(text, tenths):
    assert derive_corner_by_gauge("inside", parse_degrees(text), text).plus_minus == Fraction(tenths, 10)


@given(TURNS, GAUGES)
def test_saw_and_point_make_a_right_angle_and_the_point_is_half_of_what_the_gauge_reads(turn, gauge):
    corner = derive_corner_by_gauge(turn, gauge)
    assert corner.gauge == gauge
    assert corner.saw + corner.point == 90
    assert corner.point == gauge / 2
    assert (corner.degrees > 180) == (turn == "outside")


@given(GAUGES, THICKNESSES)
def test_what_an_inside_corner_takes_off_a_face_an_outside_corner_of_that_gauge_adds(gauge, thickness):
    inside = derive_front_minus_back(thickness, derive_corner_by_gauge("inside", gauge))
    outside = derive_front_minus_back(thickness, derive_corner_by_gauge("outside", gauge))
    assert inside == -outside
    assert outside.inches > 0


@given(TURNS, GAUGES, THICKNESSES, st.integers(2, 9))
def test_a_face_grows_as_the_thickness_does(turn, gauge, thickness, times):
    corner = derive_corner_by_gauge(turn, gauge)
    once, often = (derive_front_minus_back(thickness * count, corner).inches for count in (1, times))
    assert float(often) == pytest.approx(float(once) * times, abs=1e-5)


@given(TURNS, GAUGES, THICKNESSES, THICKNESSES)
def test_miters_of_two_thicknesses_are_of_one_length_and_their_saw_settings_make_up_the_turn(turn, gauge, own, other):
    corner = derive_corner_by_gauge(turn, gauge)
    here, there = derive_front_minus_back(own, corner, other), derive_front_minus_back(other, corner, own)
    # Pythagoras: one cut face lies on the other, so both are as long.
    assert float(own.inches**2 + here.inches**2) == pytest.approx(float(other.inches**2 + there.inches**2), abs=1e-4)
    if here.inches * there.inches > 0:
        saws = derive_saw(own, corner, other) + derive_saw(other, corner, own)
        assert float(saws) == pytest.approx(float(2 * corner.saw), abs=1e-3)


@given(TURNS, GAUGES, THICKNESSES)
def test_a_board_that_meets_one_of_its_own_thickness_is_mitered_as_if_none_was_said(turn, gauge, own):
    corner = derive_corner_by_gauge(turn, gauge)
    assert derive_front_minus_back(own, corner, own) == derive_front_minus_back(own, corner)


@pytest.mark.parametrize(
    ("degrees", "cotangent"), [(90, 1), (180, 0), (270, -1)], ids=["inside", "straight", "outside"]
)
def test_square_corners_stay_exact(degrees, cotangent):
    exact = cotangent_of_half(Fraction(degrees))
    assert isinstance(exact, Fraction)
    assert exact == cotangent


@pytest.mark.parametrize("turn", ["inside", "outside"])
@pytest.mark.parametrize("other", [None, "3/4"], ids=["equal boards", "a thicker one"])
def test_a_square_corner_leaves_a_face_exact_and_any_other_does_not(turn, other):
    own, meets = parse_length("9/16"), other and parse_length(other)
    assert derive_front_minus_back(own, derive_corner_by_gauge(turn, Fraction(90)), meets).exact
    assert not derive_front_minus_back(own, derive_corner_by_gauge(turn, Fraction(91)), meets).exact


TRIANGLES = {
    "flat": ("12", "12", "24"),
    "cannot meet": ("12", "12", "30"),
    "a side of nothing": ("0", "12", "12"),
    "flatter than a millionth of a degree": ("12000", "12000", "0.0001"),
}


@pytest.mark.parametrize("sides", TRIANGLES.values(), ids=TRIANGLES)
def test_sides_that_make_no_corner_are_refused(sides):
    with pytest.raises(AngleError) as refusal:
        derive_corner_by_sides("inside", *map(parse_length, sides))
    assert refusal.value.key == "no-triangle"


@given(st.integers(96, 960), st.integers(96, 960), st.integers(30, 150), TURNS)
def test_three_sides_give_back_the_corner_that_they_were_measured_in(a, b, degrees, turn):
    across = math.sqrt(a * a + b * b - 2 * a * b * math.cos(math.radians(degrees)))
    corner = derive_corner_by_sides(turn, *(parse_length(f"{side:.9f}") for side in (a / 8, b / 8, across / 8)))
    assert float(corner.gauge) == pytest.approx(degrees, abs=1e-4)
    assert corner.turn == turn


@pytest.mark.parametrize(
    ("sides", "degrees"),
    # c·dc / (a·b·sin W) with dc = 1/32: 17/32 / 144 and 34/32 / 576 in radians; with longer sides the tenth of a gauge.
    [(("12", "12", "17"), 0.2114), (("24", "24", "34"), 0.1057), (("48", "48", "68"), 0.1)],
    ids=["short sides tell it badly", "longer ones better", "never better than a gauge"],
)
def test_three_sides_are_off_by_half_a_sixteenth_across(sides, degrees):
    corner = derive_corner_by_sides("inside", *map(parse_length, sides))
    assert float(corner.plus_minus) == pytest.approx(degrees, abs=1e-4)


@pytest.mark.parametrize(
    ("degrees", "shown"),
    [(Fraction(179, 4), "44.8°"), (Fraction(45), "45°"), (Fraction(1, 100), "0°"), (Fraction(999, 10), "99.9°")],
    ids=["to a tenth", "whole", "next to nothing", "just under"],
)
def test_a_saw_setting_is_shown_as_its_scale_shows_it(degrees, shown):
    assert format_degrees(degrees) == shown


def test_a_corner_is_a_value():
    one, other = (derive_corner_by_gauge("inside", Fraction(91)) for _ in range(2))
    assert one == other == Corner("inside", Fraction(91), Fraction(1, 2))
    assert len({one, other}) == 1
