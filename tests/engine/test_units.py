"""Units: exact both ways, refused by name, and no library loaded for feet and inches."""

import subprocess
import sys
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scantling.engine.tape.lengths import parse_length
from scantling.engine.tape.units import LENGTH_UNITS, OTHER_UNITS, UnitError, convert, format_metric, inches_per


def test_sixteen_hundred_millimeters_are_an_exact_fraction_of_inches():
    assert parse_length("1600 mm").inches == Fraction(8000, 127)
    assert parse_length("1600 mm").exact


@pytest.mark.parametrize("unit", sorted(set(LENGTH_UNITS.values())))
def test_every_unit_that_can_be_typed_has_exact_inches(unit):
    assert isinstance(inches_per(unit), Fraction)
    assert inches_per(unit) > 0


def test_no_word_is_both_a_length_and_something_else():
    assert not set(LENGTH_UNITS) & set(OTHER_UNITS)


def test_feet_and_inches_never_load_the_library_of_units():
    # On a slow phone its import is the longest wait there is, and most people never write a millimeter.
    program = (
        "import sys; from scantling.engine.tape.lengths import parse_length as p; p(\"5' 3 1/4\"); p('2 yd');"
        "assert 'pint' not in sys.modules; p('1 mm'); assert 'pint' in sys.modules"
    )
    subprocess.run([sys.executable, "-c", program], check=True)


@given(st.integers(-(10**7), 10**7))
def test_tenths_of_a_millimeter_go_to_inches_and_back_unchanged(tenths):
    inches = convert(Fraction(tenths, 10), "millimeter", "inch")
    whole, digit = divmod(abs(tenths), 10)
    assert format_metric(inches, "millimeter", 1) == f"{'-' if tenths < 0 else ''}{whole}.{digit} mm"


@pytest.mark.parametrize(
    ("mm", "unit", "places", "shown"),
    [
        ("0.5", "millimeter", 0, "0 mm"),
        ("1.5", "millimeter", 0, "2 mm"),
        ("2.5", "millimeter", 0, "2 mm"),
        ("-0.4", "millimeter", 0, "0 mm"),
        ("-1.5", "millimeter", 0, "-2 mm"),
        ("1606.55", "centimeter", 1, "160.7 cm"),
        ("1606.55", "meter", 3, "1.607 m"),
        ("9.996", "millimeter", 2, "10.00 mm"),
    ],
)
def test_metric_text_is_rounded_once_and_a_tie_goes_to_the_even_digit(mm, unit, places, shown):
    assert format_metric(convert(Fraction(mm), "millimeter", "inch"), unit, places) == shown


@pytest.mark.parametrize(
    ("amount", "unit", "into", "key"),
    [
        ("1", "kilogram", "inch", "wrong-measure"),
        ("1", "inch ** 2", "inch", "wrong-measure"),
        ("1", "no_such_unit", "inch", "unknown-unit"),
    ],
)
def test_what_is_not_a_length_is_not_turned_into_one(amount, unit, into, key):
    with pytest.raises(UnitError) as refusal:
        convert(Fraction(amount), unit, into)
    assert refusal.value.key == key
    assert unit in refusal.value.message


def test_inches_are_not_shown_as_metric():
    with pytest.raises(UnitError) as refusal:
        format_metric(Fraction(1), "inch", 1)
    assert refusal.value.key == "not-metric"
