"""Counting words: both ways, and the places where two careful people would hear two numbers."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scantling.engine.tape.marks import LengthError, read_marks
from scantling.engine.tape.spoken import DIVISIONS, gather_numbers, say_count, say_number


def counted(text):
    """The numbers that a text comes to, in order."""
    return [token.value for token in gather_numbers(read_marks(text), text) if token.kind in ("number", "fraction")]


SAID = {
    0: "zero",
    1: "one",
    13: "thirteen",
    20: "twenty",
    21: "twenty-one",
    90: "ninety",
    100: "one hundred",
    104: "one hundred four",
    119: "one hundred nineteen",
    999: "nine hundred ninety-nine",
    1000: "one thousand",
    1001: "one thousand one",
    12_340: "twelve thousand three hundred forty",
    999_999: "nine hundred ninety-nine thousand nine hundred ninety-nine",
    10**6: "1000000",
}


@pytest.mark.parametrize(("count", "words"), SAID.items())
def test_a_count_is_said_in_american_words(count, words):
    assert say_count(count) == words


@given(st.integers(0, 2 * 10**6))
def test_a_count_that_is_said_counts_back(count):
    assert counted(say_count(count)) == [count]


@given(st.integers(1, 999), st.sampled_from(sorted(DIVISIONS)), st.data())
def test_a_number_with_any_fraction_that_is_said_counts_back(whole, bottom, data):
    part = Fraction(data.draw(st.integers(1, bottom - 1)), bottom)
    said = say_number(whole + part)
    if "/" not in said:  # a fraction without a name is said in figures, and the grammar of lengths joins those
        assert counted(said) == [whole, part]


HEARD = {
    "tens and ones": ("sixty three", [63]),
    "a hyphen joins tens and ones": ("sixty-three", [63]),
    "a hyphen joins nothing else": ("ten-four", [10, 4]),
    "a hundred and something": ("a hundred and four", [104]),
    "a hundred, and a fraction": ("a hundred and four sixteenths", [100, Fraction(1, 4)]),
    "twelve hundred": ("twelve hundred", [1200]),
    "ones do not follow ones": ("six three", [6, 3]),
    "tens do not follow ones": ("five twenty", [5, 20]),
    "nought stands alone": ("twenty zero", [20, 0]),
    "thirty and seconds are two words apart": ("thirty one thirty seconds", [Fraction(31, 32)]),
    "a thirty-second": ("a thirty-second", [Fraction(1, 32)]),
    "one sixty fourth": ("one sixty fourth", [Fraction(1, 64)]),
    "a part in figures": ("1 eighth", [Fraction(1, 8)]),
    "parts in figures twice": ("5 16ths", [Fraction(5, 16)]),
    "a half": ("a half", [Fraction(1, 2)]),
    "halves of nothing": ("half", [Fraction(1, 2)]),
    "a misspelled forty": ("fourty", [40]),
}


@pytest.mark.parametrize(("text", "numbers"), HEARD.values(), ids=HEARD)
def test_words_are_counted_as_they_are_heard(text, numbers):
    assert counted(text) == numbers


@pytest.mark.parametrize(
    "text", ["sixty three quarters", "twenty eighths", "two halves", "one hundred four sixteenths", "63 half"]
)
def test_a_run_that_could_end_in_two_places_is_taken_whole_and_so_refused(text):
    with pytest.raises(LengthError) as refusal:
        counted(text)
    assert refusal.value.key == "improper"


@pytest.mark.parametrize("text", ["sixteenths", "sixty fourths", "and 16th", "thirty seconds"])
def test_parts_that_nobody_counted_are_refused(text):
    with pytest.raises(LengthError) as refusal:
        counted(text)
    assert refusal.value.key == "no-numerator"
