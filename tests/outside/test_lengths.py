"""Lengths against tables, standards and a library that know nothing of this engine; each check names its source."""

import json
from decimal import ROUND_HALF_EVEN, Decimal
from fractions import Fraction
from pathlib import Path

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scantling.engine.tape.lengths import (
    SIXTEENTH,
    SIXTY_FOURTH,
    Length,
    format_length,
    parse_length,
    round_to,
)
from scantling.engine.tape.sums import evaluate_sum
from scantling.engine.tape.units import LENGTH_UNITS, convert, format_metric, inches_per

TABLE = json.loads((Path(__file__).parent / "sixty_fourths.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize(("fraction", "inches", "millimeters"), TABLE["rows"], ids=[row[0] for row in TABLE["rows"]])
def test_a_sixty_fourth_is_its_printed_decimal_and_its_printed_millimeters(fraction, inches, millimeters):
    # Source: sixty_fourths.json, which says how its figures were come by.
    assert parse_length(fraction) == parse_length(inches) == parse_length(f"{millimeters} mm")
    assert format_length(parse_length(f"{millimeters} mm"), SIXTY_FOURTH) == f'{fraction}"'
    assert format_metric(parse_length(fraction).inches, "millimeter", 6) == f"{Decimal(millimeters):.6f} mm"


def test_the_table_has_every_sixty_fourth_to_the_inch():
    assert [Fraction(row[0]) for row in TABLE["rows"]] == [Fraction(n, 64) for n in range(1, 65)]


@pytest.mark.parametrize(
    ("unit", "millimeters"),
    [
        ("inch", "25.4"),
        ("foot", "304.8"),
        ("yard", "914.4"),
        ("centimeter", "10"),
        ("meter", "1000"),
        ("millimeter", "1"),
    ],
)
def test_a_unit_is_exactly_its_defined_millimeters(unit, millimeters):
    # Source: NIST SP 811, Appendix B.8, exact factors (from memory): 1 in = 25.4 mm, 1 ft = 0.3048 m, 1 yd = 0.9144 m.
    assert inches_per(unit) * Fraction("25.4") == Fraction(millimeters)


def test_a_gallon_is_two_hundred_and_thirty_one_cubic_inches():
    # Source: NIST Handbook 44, Appendix C (from memory): 1 US gallon = 231 in3, 1 fluid ounce = 1.8046875 in3, exact.
    assert convert(Fraction(1), "gallon", "inch ** 3") == 231
    assert convert(Fraction(1), "fluid_ounce", "inch ** 3") == Fraction("1.8046875")


FLOATS = pint.UnitRegistry()


@given(st.integers(0, 10**8), st.sampled_from(["mm", "cm", "m", "ft", "yd", "in"]))
def test_every_unit_agrees_with_the_library_in_floats(amount, unit):
    # Source: pint's own registry of definitions, in binary floats, made afresh and told nothing of our factors.
    largest = {"mm": 10**7, "cm": 10**6, "m": 10**4, "ft": 10**4, "yd": 10**4, "in": 10**5}[unit]
    value = Fraction(amount % (largest * 100), 100)
    ours = parse_length(f"{int(value)}.{int(value * 100) % 100:02} {unit}")
    theirs = FLOATS.Quantity(float(value), unit).to("inch").magnitude
    assert float(ours.inches) == pytest.approx(theirs, rel=1e-12, abs=1e-12)


def test_every_name_of_a_unit_means_to_the_library_what_it_means_here():
    # Source: pint's registry of unit names.
    for name, unit in LENGTH_UNITS.items():
        if name.isalpha() and name not in ("ins", "yds"):
            assert FLOATS.Unit(name) == FLOATS.Unit(unit), name


@pytest.mark.parametrize(
    ("midway", "sixteenths"),
    [("1/32", 0), ("3/32", 2), ("5/32", 2), ("7/32", 4), ("63 31/32", 1024)],
)
def test_a_reading_exactly_midway_goes_to_the_even_graduation(midway, sixteenths):
    # Source: NIST Handbook 44, section 10.3, rounding off: exactly midway, to the even of the two (read as quoted).
    assert round_to(parse_length(midway), SIXTEENTH) == SIXTEENTH * sixteenths


@given(st.integers(-(10**7), 10**7))
def test_metric_rounding_agrees_with_decimal_arithmetic(ten_thousandths):
    # Source: Python's decimal module, ROUND_HALF_EVEN, which rounds by the same rule.
    inches = Fraction(ten_thousandths, 10**4)
    exact = Decimal(ten_thousandths) / 10**4 * Decimal("25.4")
    shown = exact.quantize(Decimal("0.1"), ROUND_HALF_EVEN)
    assert format_metric(inches, "millimeter", 1) == f"{shown if shown else abs(shown)} mm"


@pytest.mark.parametrize(
    ("text", "answer"),
    [
        ("7' 8 5/16\" + 3' 4 15/16\"", "11' 1 1/4\""),
        ("10' 0\" - 2' 7 3/8\"", "7' 4 5/8\""),
        ('92 5/8" / 3', '30 7/8"'),
        ("5' 3 1/8\" x 4", "21' 0 1/2\""),
        ("11 ft 4 5/8 in", "136.625"),
        ("11 ft 4 5/8 in", "3470.275 mm"),
        ("8' 1\"", "2463.8 mm"),
    ],
)
def test_tape_arithmetic_agrees_with_sums_worked_apart(text, answer):
    # Source: worked by hand and with exact fractions, apart from this engine; no publication.
    assert evaluate_sum(text).length == parse_length(answer)


@pytest.mark.parametrize(("mm", "shown"), [("2440", '96 1/16"'), ("1200", '47 1/4"'), ("1607", '63 1/4"')])
def test_a_metric_board_is_shown_at_its_nearest_sixteenth(mm, shown):
    # Source: worked by hand from 25.4 mm: 2440 mm = 96.062992 in, 1200 mm = 47.244094 in, 1607 mm = 63.267717 in.
    assert format_length(parse_length(f"{mm} mm")) == shown


def test_a_length_from_a_float_is_the_float_to_a_millionth():
    # Source: the square root of two, 1.41421356…, to be found in any table of roots (from memory).
    assert Length.approximate(1.4142135623730951).inches == Fraction(1414214, 10**6)
