"""Every way of writing a length, the ways that are refused, rounding in a named direction, and the way back to text."""

import math
from fractions import Fraction

import pytest
from scantling.engine.desk import answer
from scantling.engine.tape.lengths import (
    HALF,
    SIXTEENTH,
    SIXTY_FOURTH,
    THIRTY_SECOND,
    ZERO,
    Length,
    LengthError,
    Reading,
    format_exact,
    format_feet,
    format_length,
    parse_length,
    parse_reading,
    round_to,
    say_length,
)

from tests.asked import keys_of

SIXTY_THREE_AND_A_QUARTER = Length(Fraction(253, 4))

# Each is a way that a person writes or a phone's keyboard or dictation spells the same 63 1/4 in.
ONE_LENGTH = {
    "inches and a fraction": "63 1/4",
    "a hyphen before the fraction": "63-1/4",
    "an inch mark": '63 1/4"',
    "the unit in letters": "63 1/4 in",
    "the unit in full, with a stop": "63 1/4 inches.",
    "a decimal": "63.25",
    "a decimal with its unit": "63.25in",
    "feet and inches": "5' 3 1/4\"",
    "feet and inches without a space": "5'3-1/4\"",
    "feet and inches without the inch mark": "5' 3 1/4",
    "a hyphen after the feet": "5'-3 1/4\"",
    "all hyphens": "5-3-1/4",
    "all hyphens and an inch mark": '5-3-1/4"',
    "unit letters, run together": "5ft 3 1/4in",
    "unit letters with stops": "5 ft. 3 1/4 in.",
    "two apostrophes for an inch mark": "5' 3 1/4''",
    "decimal inches beside feet": "5' 3.25\"",
    "a comma after the feet, as dictated": "5 feet, 3 1/4 inches",
    "capital letters": "5 FT 3 1/4 IN",
    "a vulgar fraction": "63¼",
    "a vulgar fraction after a space": "63 ¼",
    "curly marks from a phone": "5\u2019 3 1/4\u201d",
    "true primes": "5\u2032 3\xbc\u2033",
    "a fraction slash": "63 1\u20444",
    "an en dash": "63\u20131/4",
    "a no-break space": "63\xa01/4",
    "a thin space": "63\u20091/4",
    "full-width figures": "\uff16\uff13 \uff11\uff0f\uff14",
    "spaces around the slash, as dictated": "63 1 / 4",
    "spaces at both ends": "  63 1/4  ",
    "equal parts in 64ths": "63 16/64",
    "words": "sixty three and a quarter",
    "hyphened words": "sixty-three and one-quarter",
    "words with their unit": "sixty-three and one fourth inches",
    "words in feet": "five foot three and a quarter",
    "words in feet, no and": "five feet three and one quarter inches",
    "figures and words": "5 foot 3 and 1 quarter",
    "the fraction after the unit": "63 inches and a quarter",
    "a decimal in words": "sixty three point two five",
    "a decimal in pairs": "sixty three point twenty five",
    "the point in letters": "63 point 25",
    "quarters counted": "sixty-three and 1 4th",
    "an ampersand": "63 & 1/4",
    "whole inches of nothing": "5' 3\" 1/4",
    "yards, feet and inches": "1 yd 2 ft 3 1/4 in",
    "a metric length that is no tape fraction of a millimeter": "1606.55 mm",
    "centimeters": "160.655 cm",
    "meters": "1.60655 m",
    "meters and millimeters": "1 m 606.55 mm",
}


@pytest.mark.parametrize("text", ONE_LENGTH.values(), ids=ONE_LENGTH)
def test_every_way_of_writing_one_length_gives_that_length(text):
    assert parse_length(text) == SIXTY_THREE_AND_A_QUARTER
    assert parse_length(text).exact


# Text, the inches it means, and why it is here.
PARTICULAR = {
    "nothing is a length": ("0", "0"),
    "nothing in feet": ("0' 0\"", "0"),
    "a bare fraction": ("1/2", "1/2"),
    "a point without a nought": (".5", "1/2"),
    "a stop at the end of a sentence": ("63.", "63"),
    "an inch mark of two apostrophes is not two feet": ("5''", "5"),
    "half": ("half an inch", "1/2"),
    "half of a foot is six inches": ("half a foot", "6"),
    "a part of an inch": ("three quarters of an inch", "3/4"),
    "three quarters alone": ("three quarters", "3/4"),
    "a foot": ("a foot", "12"),
    "four foot": ("four foot", "48"),
    "two foot six": ("two foot six", "30"),
    "a foot and a half": ("a foot and a half", "18"),
    "an inch and a half, the an left out": ("inch and a half", "3/2"),
    "feet with their own fraction": ("five and a half feet", "66"),
    "feet as a decimal": ("5.25 ft", "63"),
    "feet, and a fraction with its mark": ("5' 1/2\"", "121/2"),
    "a bare number after feet is inches": ("5ft 3", "63"),
    "a dictated foot mark and the eighth after it": ("5'3\" and an eighth", "505/8"),
    "five and a half is inches": ("five and a half", "11/2"),
    "a hundred and four": ("one hundred and four and five sixteenths", "1669/16"),
    "the and of a hundred belongs to the fraction": ("one hundred and five sixteenths", "1605/16"),
    "a hundred and a half": ("a hundred and a half", "201/2"),
    "hundreds and thousands": ("one thousand two hundred and six", "1206"),
    "thirty seconds are parts": ("five thirty seconds", "5/32"),
    "many thirty seconds": ("six and twenty-five thirty-seconds", "217/32"),
    "sixty fourths are parts": ("three sixty fourths", "3/64"),
    "a sixteenth in figures": ("63 and a 16th", "1009/16"),
    "sixteenths in figures": ("63 and 5 16ths", "1013/16"),
    "a fraction with letters after it": ("63 5/16ths", "1013/16"),
    "number, then words for a fraction": ("sixty three one quarter", "253/4"),
    "thirds are exact": ("1/3", "1/3"),
    "tenths are exact": ("63 3/10", "633/10"),
    "British spelling": ("1270 millimetres", "50"),
    "two yards": ("2 yd", "72"),
    "half a meter": ("half a meter", "2500/127"),
    "point five": ("point five", "1/2"),
    "point oh said as zero": ("six point zero six two five", "97/16"),
    "a point and figures one by one": ("6 point 2 5", "25/4"),
    "part of a yard": ("a yard and a half", "54"),
}


@pytest.mark.parametrize(("text", "inches"), PARTICULAR.values(), ids=PARTICULAR)
def test_a_length_that_could_be_misread_is_read_as_meant(text, inches):
    assert parse_length(text).inches == Fraction(inches)


# Text, key, and the character that the refusal points at.
REFUSED = {
    "nothing": ("", "empty", 0),
    "only spaces": ("   ", "empty", 0),
    "no length at all": ("fish", "unknown-word", 0),
    "a hundred of nothing is not 0": ("hundred", "unknown-word", 0),
    "a thousand too many": ("one thousand two thousand", "unknown-word", 17),
    "a word after a length": ("63 1/4 inches long", "unknown-word", 14),
    "a spaced slash after feet": ("5' 3 / 4", "loose-slash", 5),
    "a spaced slash before a unit": ("3 / 4 in", "loose-slash", 2),
    "a spaced slash after a hyphen": ("63-1 / 4", "loose-slash", 5),
    "a nought under the slash": ("47 3/0", "zero-denominator", 3),
    "nothing under the slash": ("1/", "no-denominator", 1),
    "a decimal under the slash": ("1/2.5", "no-denominator", 1),
    "three in a row": ("1/2/4", "no-denominator", 3),
    "an and with nothing after it": ("47 and", "dangling", 6),
    "feet, and nothing": ("5 feet and", "dangling", 10),
    "a point with nothing after it": ("sixty point", "dangling", 11),
    "two fractions": ("47 3/8 1/2", "two-fractions", 7),
    "a fraction after part of an inch": ('63 1/4" 1/2', "two-fractions", 8),
    "two numbers, feet or a fraction begun": ("5 3", "two-numbers", 2),
    "a fraction begun": ("63 1", "two-numbers", 3),
    "feet, inches and a fraction with no mark": ("5 3 1/4", "two-numbers", 2),
    "digits said one by one": ("six three", "two-numbers", 4),
    "two whole numbers with and": ("63 and 5", "two-numbers", 3),
    "a zero-width mark between digits is not 63": ("6\u200b3", "two-numbers", 2),
    "a decimal and a fraction": ("63.5 1/4", "decimal-and-fraction", 5),
    "a fraction not less than one": ("63 5/4", "improper", 3),
    "a fraction of one exactly": ("3 16/16", "improper", 2),
    "a whole and a fraction run together": ("631/4", "improper", 0),
    "one digit of a whole run into its fraction": ("35/16", "improper", 0),
    "an improper fraction": ("253/4", "improper", 0),
    "nought parts": ("a 0nd", "zero-denominator", 2),
    "sixty three quarters, or sixty and three": ("sixty three quarters", "improper", 0),
    "a figure too many": ("5' 1/43", "odd-denominator", 3),
    "a quarter of one foot, or of an inch": ("a foot and a quarter", "feet-and-part", 11),
    "a sixteenth of no foot": ("a foot and a sixteenth", "feet-and-part", 11),
    "a finger too many": ("63 3/161", "odd-denominator", 3),
    "a decimal comma": ("63,25", "comma", 2),
    "a comma for thousands": ("1,607", "comma", 1),
    "two points": ("1.2.3", "stray-point", 3),
    "a point in the middle": ("63 . 25", "stray-point", 3),
    "a point after letters": ("5ft.3", "stray-point", 3),
    "feet and inches or a subtraction": ("5-3", "loose-dash", 1),
    "a hyphen and then a space": ("5-3 1/4", "loose-dash", 1),
    "three spaced dashes": ("5 - 3 - 1/4", "loose-dash", 2),
    "a comma at the end": ("5 feet,", "comma", 6),
    "a hundred and thirty of something": ("one hundred and thirty seconds", "not-a-length", 23),
    "a spaced dash": ("63 - 1/4", "loose-dash", 3),
    "a lone dash": ("-", "loose-dash", 0),
    "twelve inches beside feet": ("5' 12\"", "too-many", 3),
    "thirteen inches beside feet": ("5' 13\"", "too-many", 3),
    "too many inches between hyphens": ("5-13-1/4", "too-many", 2),
    "part of a foot, then inches": ("5.5 ft 3 in", "broken-unit", 7),
    "part of a foot, or of an inch": ("five feet and a half", "feet-and-part", 14),
    "part of a foot, in words": ("five foot three quarters", "feet-and-part", 10),
    "half of one foot, or half an inch more": ("1 ft and 1/2", "feet-and-part", 9),
    "parts counted in figures": ("5 foot 3 quarters", "feet-and-part", 7),
    "a number and an article": ("3 a foot", "two-numbers", 2),
    "decimals said in two ways at once": ("point five thirty", "two-numbers", 11),
    "the same unit twice": ("5 ft 3 ft", "unit-order", 5),
    "the smaller unit first": ("3 in 5 ft", "unit-order", 5),
    "two systems at once": ("5 ft 30 mm", "unit-order", 5),
    "a number without its unit": ("1 m 60", "unit-missing", 4),
    "a weight": ("30 lb", "not-a-length", 3),
    "kilograms": ("3 kg", "not-a-length", 2),
    "an area": ("30 sq ft", "not-a-length", 3),
    "an angle": ("45 degrees", "not-a-length", 3),
    "a unit alone": ("inches", "no-number", 0),
    "a mark alone": ("'", "no-number", 0),
    "parts not counted": ("sixty-three and sixteenths", "no-numerator", 16),
    "a lean that mm do not have": ("1607 mm strong", "lean-on-metric", 8),
    "less than nothing": ("-5", "negative", 0),
    "less than nothing in words": ("minus five", "negative", 0),
    "a hair less than nothing": ("0 shy", "negative", 0),
    "a sum": ("63 + 2", "odd-character", 3),
    "a bracket": ("(63)", "odd-character", 0),
    "a character of no use": ("63°", "odd-character", 2),
    "digits of another script, which not every Python knows alike": ("\u0666\u0663", "odd-character", 0),
    "sixteen miles": ("9999999", "too-great", 0),
}


@pytest.mark.parametrize(("text", "key", "at"), REFUSED.values(), ids=REFUSED)
def test_text_that_is_no_length_or_could_be_two_is_refused_by_key_and_place(text, key, at):
    with pytest.raises(LengthError) as refusal:
        parse_length(text)
    assert (refusal.value.key, refusal.value.at) == (key, at)


@pytest.mark.parametrize("text", [case[0] for case in REFUSED.values() if case[0].strip()])
def test_a_refusal_quotes_what_was_typed_and_says_what_to_write(text):
    with pytest.raises(LengthError) as refusal:
        parse_length(text)
    shown = "".join(character if character.isprintable() else "·" for character in text)
    assert f"“{shown}”" in refusal.value.message
    assert len(refusal.value.message) < 160


def test_every_refusal_has_been_seen():
    # A sentence that nothing can raise would be a promise about a check that is not there.
    seen = {key for _, key, _ in REFUSED.values()} | {"too-long"}
    assert seen == keys_of(LengthError)


@pytest.mark.parametrize("text", ["1" * 201, "9" * 10**5, "sixty " * 5000, "(" * 10**6])
def test_a_text_too_long_to_be_a_length_is_refused_unread(text):
    with pytest.raises(LengthError) as refusal:
        parse_length(text)
    assert refusal.value.key == "too-long"


def test_two_hundred_digits_are_refused_as_a_length_and_not_as_a_crash():
    with pytest.raises(LengthError) as refusal:
        parse_length("9" * 200)
    assert refusal.value.key == "too-great"


# Lean: what a tape reader adds in a word or a sign. 1/32 over or under is common practice, no source.
STRONG = ["strong", "heavy", "full", "+", " +", "plus", "a hair over", "STRONG"]
SHY = ["shy", "light", "scant", "bare", "-", " -", "\u2212", "minus", "a hair under", "a hair shy"]


@pytest.mark.parametrize(("words", "lean"), [(w, "strong") for w in STRONG] + [(w, "shy") for w in SHY])
@pytest.mark.parametrize("form", ["63 1/4{}", '63 1/4"{}', "5' 3 1/4\"{}", "sixty three and a quarter{}"])
def test_a_lean_is_kept_beside_the_figure_and_counted_in_the_length(form, words, lean):
    text = form.format(words if words[0] in "+- \u2212" else " " + words)
    assert parse_reading(text) == Reading(SIXTY_THREE_AND_A_QUARTER, lean)
    by = THIRTY_SECOND if lean == "strong" else -THIRTY_SECOND
    assert parse_length(text) == SIXTY_THREE_AND_A_QUARTER + by


def test_a_lean_may_stand_before_the_unit():
    assert parse_reading("63 1/4 strong inches") == Reading(SIXTY_THREE_AND_A_QUARTER, "strong")


@pytest.mark.parametrize(
    "text", ["-63 1/4", "\u221263 1/4", "\u201363.25", "minus 63 1/4", "negative sixty three and a quarter"]
)
def test_one_minus_may_lead_where_it_is_allowed(text):
    assert parse_length(text, allow_negative=True) == -SIXTY_THREE_AND_A_QUARTER
    with pytest.raises(LengthError):
        parse_length(text)


@pytest.mark.parametrize("text", ["--5", "-", "minus", "- -5", "5' -3\""])
def test_a_second_minus_or_a_minus_inside_is_refused_even_there(text):
    with pytest.raises(LengthError):
        parse_length(text, allow_negative=True)


def test_a_dash_behind_is_a_lean_even_where_a_minus_may_lead():
    assert parse_length("5-", allow_negative=True) == Length(Fraction(5)) - THIRTY_SECOND
    assert parse_length("-5-", allow_negative=True) == THIRTY_SECOND - Length(Fraction(5))


# Rounding. Exact text in, graduation, direction, and the inches that come out.
ROUNDED = [
    ("3/32", SIXTEENTH, "even", "1/8"),
    ("5/32", SIXTEENTH, "even", "1/8"),
    ("5/32", SIXTEENTH, "half-up", "3/16"),
    ("3/32", SIXTEENTH, "half-up", "1/8"),
    ("1/32", SIXTEENTH, "even", "0"),
    ("1/32", SIXTEENTH, "half-up", "1/16"),
    ("1/64", SIXTEENTH, "up", "1/16"),
    ("3/64", SIXTEENTH, "down", "0"),
    ("3/64", SIXTEENTH, "even", "1/16"),
    ("1/16", SIXTEENTH, "up", "1/16"),
    ("1/16", SIXTEENTH, "down", "1/16"),
    ("-3/32", SIXTEENTH, "even", "-1/8"),
    ("-1/32", SIXTEENTH, "even", "0"),
    ("-3/64", SIXTEENTH, "up", "0"),
    ("-1/64", SIXTEENTH, "down", "-1/16"),
    ("-1/32", SIXTEENTH, "half-up", "0"),
]


@pytest.mark.parametrize(("text", "graduation", "toward", "inches"), ROUNDED)
def test_rounding_goes_where_it_is_told(text, graduation, toward, inches):
    assert round_to(parse_length(text, allow_negative=True), graduation, toward).inches == Fraction(inches)


def test_a_figure_is_rounded_once_and_not_by_way_of_a_finer_graduation():
    # 63 19/128 lies nearer 63 1/8; by way of the 32nds, and then half up, it would have become 63 3/16.
    length = Length(63 + Fraction(19, 128))
    assert format_length(length) == '63 1/8"'
    twice = round_to(round_to(length, THIRTY_SECOND), SIXTEENTH, "half-up")
    assert format_length(twice) == '63 3/16"'


FORMATTED = [
    ("63 1/4", '63 1/4"', "5' 3 1/4\"", "sixty-three and one quarter inches"),
    ("63 5/16", '63 5/16"', "5' 3 5/16\"", "sixty-three and five sixteenths inches"),
    ("0", '0"', "0' 0\"", "zero inches"),
    ("1", '1"', "0' 1\"", "one inch"),
    ("1/2", '1/2"', "0' 1/2\"", "one half inch"),
    ("3/4", '3/4"', "0' 3/4\"", "three quarters of an inch"),
    ("12", '12"', "1' 0\"", "twelve inches"),
    ("104 5/16", '104 5/16"', "8' 8 5/16\"", "one hundred four and five sixteenths inches"),
    ("-3/4", '-3/4"', "-0' 3/4\"", "minus three quarters of an inch"),
    ("-63 1/4", '-63 1/4"', "-5' 3 1/4\"", "minus sixty-three and one quarter inches"),
    ("-1/64", '0"', "0' 0\"", "zero inches"),
    ("11 63/64", '12"', "1' 0\"", "twelve inches"),
]


@pytest.mark.parametrize(("text", "inches", "feet", "words"), FORMATTED)
def test_a_length_is_shown_in_inches_in_feet_and_in_words(text, inches, feet, words):
    length = parse_length(text, allow_negative=True)
    assert format_length(length) == inches
    assert format_feet(length) == feet
    assert say_length(length) == words


def test_a_finer_graduation_is_shown_where_it_is_asked():
    length = parse_length("63 17/64")
    assert format_length(length, SIXTY_FOURTH) == '63 17/64"'
    assert format_length(length, HALF) == '63 1/2"'
    assert say_length(length, SIXTY_FOURTH) == "sixty-three and seventeen sixty-fourths inches"


@pytest.mark.parametrize(
    ("amount", "shown"),
    [
        (Fraction(127, 3), "42 1/3"),
        (Fraction(1, 48), "1/48"),
        (Fraction(1, 64), "1/64"),
        (Fraction(1, 128), "about 0.0078"),
        (Fraction(8000, 127), "about 62.9921"),
        (Fraction(-8000, 127), "about -62.9921"),
        (Fraction(0), "0"),
    ],
)
def test_the_working_shows_a_fraction_or_owns_to_a_decimal(amount, shown):
    assert format_exact(amount) == shown


def test_an_inexact_length_makes_everything_it_touches_inexact():
    exact, guess = Length(Fraction(3)), Length.approximate(math.sqrt(2))
    for made in (
        exact + guess,
        guess - exact,
        -guess,
        abs(guess),
        guess * 2,
        2 * guess,
        guess / 3,
        round_to(guess, HALF),
    ):
        assert not made.exact
    assert (exact + exact).exact
    assert guess.inches == Fraction(1414214, 10**6)


def test_a_length_over_a_length_is_a_number_and_over_a_number_a_length():
    assert parse_length("96") / parse_length("2 1/4") == Fraction(128, 3)
    assert parse_length("92 5/8") / 3 == parse_length("30 7/8")
    assert not ZERO
    assert sorted([HALF, ZERO, SIXTEENTH]) == [ZERO, SIXTEENTH, HALF]


INSTEAD = {
    "631/4": "63 1/4 or 157 3/4",
    "35/16": "3 5/16 or 2 3/16",
    "5' 35/16": "3 5/16 or 2 3/16",
    "6311/16": "631 1/16 or 63 11/16 or 394 7/16",
    "600/16": "37 1/2",
    "16/16": "1 6/16 or 1",
    "8/4": "2",
    "63 5/4": "63 1/4, with the whole inches in front",
}


@pytest.mark.parametrize(("text", "instead"), INSTEAD.items(), ids=INSTEAD)
def test_a_fraction_that_is_not_less_than_one_is_refused_with_every_way_it_may_have_been_meant(text, instead):
    with pytest.raises(LengthError) as refused:
        parse_length(text)
    assert refused.value.message.endswith(f"is not less than one: write {instead}.")


CASING = {"ask": "casing", "opening": {"width": "30", "left": "80", "right": "80"}, "reveal": "3/16"}


def test_the_exact_form_of_an_answer_has_its_own_way_in():
    written = answer({**CASING, "leg_width": "2 1/4"})
    assert "answer" in written
    assert answer({**CASING, "leg_width": {"exact": "9/4"}}) == written


@pytest.mark.parametrize("exact", ["2 1/4", "-1/2", "1/0", None, 4, "9" * 30, ["1/4"]])
def test_what_no_answer_gives_is_no_exact_length(exact):
    error = answer({**CASING, "leg_width": {"exact": exact}})["error"]
    assert (error["where"]["field"], "253/4" in error["message"]) == ("leg_width", True)
