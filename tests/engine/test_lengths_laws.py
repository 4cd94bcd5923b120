"""Laws of lengths: text and value undo each other, every form agrees with arithmetic, junk is refused and fast."""

import time
from fractions import Fraction

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from scantling.engine.tape.lengths import (
    Length,
    LengthError,
    format_feet,
    format_length,
    parse_length,
    parse_reading,
    round_to,
    say_length,
)

GRADUATIONS = st.sampled_from([Length(Fraction(1, n)) for n in (1, 2, 4, 8, 16, 32, 64)])
ANY_LENGTH = st.fractions(-12_000, 12_000, max_denominator=10**6).map(Length)
DIRECTIONS = st.sampled_from(["even", "up", "down", "half-up"])


@given(st.integers(-64 * 12_000, 64 * 12_000), GRADUATIONS)
def test_text_of_a_length_on_the_graduation_reads_back_as_that_length(steps, graduation):
    length = graduation * steps
    assert parse_length(format_length(length, graduation), allow_negative=True) == length
    assert parse_length(format_feet(length, graduation), allow_negative=True) == length
    assert parse_length(say_length(length, graduation), allow_negative=True) == length


@given(ANY_LENGTH, GRADUATIONS)
def test_text_of_any_length_reads_back_as_its_rounded_length(length, graduation):
    rounded = round_to(length, graduation)
    assert parse_length(format_length(length, graduation), allow_negative=True) == rounded
    assert parse_length(say_length(length, graduation), allow_negative=True) == rounded


@given(ANY_LENGTH, GRADUATIONS, DIRECTIONS)
def test_rounding_lands_on_a_graduation_no_farther_than_it_must_and_stays_there(length, graduation, toward):
    rounded = round_to(length, graduation, toward)
    off = (rounded - length).inches
    assert (rounded.inches / graduation.inches).denominator == 1
    assert round_to(rounded, graduation, toward) == rounded
    if toward in ("even", "half-up"):
        assert abs(off) <= graduation.inches / 2
    assert abs(off) < graduation.inches
    assert off >= 0 if toward == "up" else True
    assert off <= 0 if toward == "down" else True


@given(st.integers(-10_000, 10_000), GRADUATIONS)
def test_midway_goes_to_the_even_graduation_on_both_sides_of_nothing(steps, graduation):
    midway = graduation * (steps + Fraction(1, 2))
    assert (round_to(midway, graduation).inches / graduation.inches) % 2 == 0
    assert round_to(-midway, graduation) == -round_to(midway, graduation)


FORMS = (
    "{f}' {i} {n}/{d}\"", "{f}'{i}-{n}/{d}\"", "{f}-{i}-{n}/{d}", "{f} ft {i} {n}/{d} in", "{f}ft {i} and {n}/{d}",
    "{t} {n}/{d}", "{t}-{n}/{d}\"", "{t} and {n}/{d} inches", "{t} {n} / {d}", "{t} inches and {n}/{d}",
    "{f} foot {i} and {n} {d}ths", "{f} FEET, {i} {n}\u2044{d} INCHES.",
)  # fmt: skip


@given(
    st.integers(0, 500),
    st.integers(0, 11),
    st.sampled_from([2, 4, 8, 16, 32, 64, 3, 10]).flatmap(lambda d: st.tuples(st.integers(0, d - 1), st.just(d))),
    st.sampled_from(FORMS),
)
def test_every_form_means_feet_times_twelve_and_inches_and_the_fraction(feet, inches, fraction, form):
    top, bottom = fraction
    text = form.format(f=feet, i=inches, t=12 * feet + inches, n=top, d=bottom)
    assert parse_length(text).inches == 12 * feet + inches + Fraction(top, bottom)


@given(st.integers(0, 10**6), st.integers(0, 6))
def test_a_decimal_means_its_digits_exactly(digits, places):
    text = f"{digits // 10**places}.{digits % 10**places:0{places}}" if places else str(digits)
    assert parse_length(text).inches == Fraction(digits, 10**places)


MARKS = "0 1 2 3 5 11 12 16 32 63 64 .5 1/4 3/8 5/16 / - + . , ' \" ½ ¼ ( ) * x ÷ \u2013 \u2212 \u2019 \u2033 \u2044"
WORDS = (
    "and a an of the half quarter thirds sixteenths 16th thirty seconds sixty fourths hundred thousand point one three "
    "five twenty foot feet ft inch in mm m yd lb strong shy hair minus plus times divided by fish"
)
PIECES = (*MARKS.split(), *WORDS.split(), " ", "\u00a0", "\u200b")
NEAR_LENGTHS = st.lists(st.sampled_from(PIECES), max_size=12).flatmap(
    lambda pieces: st.sampled_from(["", " "]).map(lambda gap: gap.join(pieces))
)
JUNK = st.one_of(st.text(max_size=220), NEAR_LENGTHS)


@given(JUNK)
@example("a " * 100)
@example("one hundred and " * 12)
@example("thirty second " * 14)
def test_junk_is_refused_with_a_place_in_it_or_read_as_no_less_than_nothing(text):
    reading, refusal = _outcome(text)
    if refusal:
        assert 0 <= refusal.at <= len(text)
    else:
        assert reading.measured.inches >= 0
        assert reading.length.exact


@given(NEAR_LENGTHS)
@example("5 foot,")
def test_capital_letters_and_spaces_at_the_ends_change_nothing(text):
    plain, loud, spaced = (_outcome(each) for each in (text, text.upper(), f" {text} "))
    assert plain[0] == loud[0] == spaced[0]
    assert [refusal and refusal.key for _, refusal in (loud, spaced)] == [plain[1] and plain[1].key] * 2


def _outcome(text):
    """The reading or the refusal; anything else that is raised goes through and fails the test."""
    try:
        return parse_reading(text), None
    except LengthError as refusal:
        return None, refusal


SLOW_FOR_A_CARELESS_READER = {
    "all digits": "1" * 200,
    "all points": "." * 200,
    "digit and point in turn": "1." * 100,
    "slashes": "1/" * 100,
    "dashes": "1-" * 100,
    "spaces": " " * 199 + "x",
    "hundreds": "one hundred and " * 12,
    "divided by, never finished": "divided" + " " * 190,
    "marks": "'\"" * 100,
}


@pytest.mark.parametrize("text", SLOW_FOR_A_CARELESS_READER.values(), ids=SLOW_FOR_A_CARELESS_READER)
def test_no_text_takes_longer_than_a_keystroke(text):
    def seconds() -> float:
        start = time.process_time()
        _outcome(text)
        return time.process_time() - start

    assert min(seconds() for _ in range(3)) < 0.05
