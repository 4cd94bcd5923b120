"""Spacing against rows worked by hand, and against rows laid out by counting."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scantling.engine.tape.lengths import Length, parse_length
from scantling.engine.trim.own.spacing import SpacingError, derive_spacing, derive_spacing_by_gap


@pytest.mark.parametrize(
    ("span", "width", "count", "ends", "gap", "pitch"),
    [
        ("137 5/16", "2 1/2", 9, "item", Fraction(1837, 128), Fraction(2157, 128)),
        ("96", "1 1/2", 5, "gap", Fraction(59, 4), Fraction(65, 4)),
        ("120", "3 1/2", 6, "item", Fraction(99, 5), Fraction(233, 10)),
        ("96", "1 1/2", 4, "one", Fraction(45, 2), Fraction(24)),
    ],
)
def test_a_row_is_that_worked_by_hand(span, width, count, ends, gap, pitch):
    # Source: worked by hand: (137 5/16 - 22 1/2) / 8, (96 - 7 1/2) / 6, (120 - 21) / 5, (96 - 6) / 4.
    row = derive_spacing(parse_length(span), parse_length(width), count, ends)
    assert (row.gap.inches, row.pitch.inches) == (gap, pitch)


lengths = st.integers(1, 4000).map(lambda n: Length(Fraction(n, 16)))


@given(
    lengths,
    st.integers(0, 200).map(lambda n: Length(Fraction(n, 16))),
    st.integers(1, 40),
    st.sampled_from(["item", "gap", "one"]),
)
def test_laid_out_one_after_another_the_row_fills_its_span(span, width, count, ends):
    # Source: the span itself: items and gaps put down in turn, as with blocks, must reach its end and no farther.
    try:
        row = derive_spacing(span, width, count, ends)
    except SpacingError:
        assert width * count > span or (ends == "item" and count == 1)
        return
    at = row.gap if ends == "gap" else Length(Fraction(0))
    for mark in row.marks:
        assert mark == at
        at = at + row.width + row.gap
    assert at - (row.gap if ends == "item" else Length(Fraction(0))) == span


@given(
    lengths,
    st.integers(0, 80).map(lambda n: Length(Fraction(n, 16))),
    st.integers(16, 640).map(lambda n: Length(Fraction(n, 16))),
    st.sampled_from(["item", "gap", "one"]),
)
def test_the_count_for_a_widest_gap_is_the_first_that_counting_up_finds(span, width, most_gap, ends):
    # Source: trying every count from the least upward.
    found = None
    for count in range(2 if ends == "item" else 1, 400):
        try:
            row = derive_spacing(span, width, count, ends)
        except SpacingError:
            break
        if row.gap <= most_gap:
            found = count
            break
    if found is None:
        with pytest.raises(SpacingError):
            derive_spacing_by_gap(span, width, most_gap, ends)
    else:
        assert derive_spacing_by_gap(span, width, most_gap, ends).count == found
