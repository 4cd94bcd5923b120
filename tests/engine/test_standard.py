"""The standard: what a setting may be, what it is until somebody says, and money and stock as they are written."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scantling.engine.errors import EngineError
from scantling.engine.settings import DEFAULTS, SETTINGS, check_setting, derive_standard, dotted, parse_stock
from scantling.engine.standard import Standard, format_price, format_stock, parse_price
from scantling.engine.tape.lengths import Length, format_length, parse_length

ROW = {"length": "8 ft", "price": "10.40"}


def fault(name: str, value: object) -> tuple[str, str]:
    (error,) = check_setting(name, value)
    return error.key, error.field


def test_a_house_that_says_nothing_has_every_default_and_leans_on_them_openly():
    standard = derive_standard({})
    assert standard == Standard()
    assert {standard.source(name) for name in SETTINGS} == {"common practice, until you set it"}


def test_every_default_that_is_shown_is_one_that_may_be_said():
    assert derive_standard(DEFAULTS) == derive_standard({name: DEFAULTS[name] for name in DEFAULTS})
    assert derive_standard(DEFAULTS).source("reveal") == "the standard"
    for name, text in DEFAULTS.items():
        assert check_setting(name, text) == []


def is_length(name: str) -> bool:
    value = getattr(Standard(), name.replace(".", "_"))
    return isinstance(value, Length | None) and not name.startswith(("wood.", "thing.rake"))


@given(st.sampled_from([name for name in DEFAULTS if is_length(name)]), st.integers(1, 400))
def test_a_length_that_is_set_is_the_length_that_is_used(name, sixteenths):
    standard = derive_standard({name: format_length(Length(Fraction(sixteenths, 16)))})
    assert getattr(standard, name.replace(".", "_")) == Length(Fraction(sixteenths, 16))
    assert standard.given == {name}


@pytest.mark.parametrize("name", ["base.height", "base.thickness", "casing.width", "casing.thickness"])
def test_what_has_a_size_cannot_be_nothing(name):
    assert fault(name, "0") == ("not-positive", name)


@pytest.mark.parametrize("name", ["base.height", "base.thickness", "casing.width", "casing.thickness"])
def test_what_has_a_size_has_one_that_a_tape_can_show(name):
    assert fault(name, ".00001") == ("too-thin", name)
    assert derive_standard({name: "1/64"}).given == {name}


@pytest.mark.parametrize("name", ["reveal", "kerf", "end_trim", "hold"])
def test_what_one_may_do_without_may_be_nothing_but_not_less(name):
    assert check_setting(name, "0") == []
    assert fault(name, "-1/8")[1] == name


@pytest.mark.parametrize("name", SETTINGS)
@pytest.mark.parametrize(
    "value", ["", "fish", None, True, 3.5, [], ["x"], [{"a": "b"}], {"a": "b"}, [[]], "\x00", "9" * 500, "²"], ids=repr
)
def test_no_value_does_worse_than_be_refused_by_name(name, value):
    for error in check_setting(name, value):
        assert isinstance(error, EngineError)
        assert error.field == name
        assert error.message.startswith(name)


@pytest.mark.parametrize(("name", "value"), [("base.inside", "glue"), ("head", "round")])
def test_a_joint_that_there_is_not_is_refused_with_those_that_there_are(name, value):
    (error,) = check_setting(name, value)
    assert error.key == "not-a-choice"
    assert "cope" in error.message or "butted" in error.message


def test_a_setting_of_a_newer_engine_is_not_judged():
    assert check_setting("ceiling.color", {"any": ["thing"]}) == []


def test_a_nested_standard_and_a_dotted_one_are_the_same():
    nested = {"base": {"height": "4", "inside": "butt", "stock": [ROW]}, "casing": {"width": "3 1/2"}, "reveal": "1/4"}
    flat = {"base.height": "4", "base.inside": "butt", "base.stock": [ROW], "casing.width": "3 1/2", "reveal": "1/4"}
    assert dotted(nested) == flat
    assert derive_standard(dotted(nested)) == derive_standard(flat)


def test_a_profile_goes_by_its_thickness_and_height():
    standard = derive_standard({"base.height": "3 1/4", "base.thickness": "11/16"})
    assert standard.profile_of("base") == "base 11/16 × 3 1/4"


@pytest.mark.parametrize(
    ("text", "cents"),
    [
        ("19.98", 1998),
        ("$19.98", 1998),
        (" 5 ", 500),
        ("5.", 500),
        ("5.4", 540),
        ("0", 0),
        ("0.01", 1),
        ("1234567.89", 123456789),
    ],
    ids=["plain", "with its sign", "whole", "point at the end", "one place", "free", "a cent", "the most"],
)
def test_money_is_read_exactly_to_the_cent(text, cents):
    assert parse_price(text) == cents


@pytest.mark.parametrize(
    "text", ["", "$", ".5", "-1", "1.234", "1,000", "1e2", "12345678", "٥", "1.²", "1.٣", "ten", "$$1", "1 2"], ids=repr
)
def test_what_is_not_money_is_refused(text):
    with pytest.raises(EngineError) as refusal:
        parse_price(text)
    assert refusal.value.key == "not-money"


@given(st.integers(0, 999_999_999))
def test_a_price_written_reads_back_as_that_price(cents):
    assert parse_price(format_price(cents)) == cents


def test_stock_is_read_row_by_row():
    one, other = parse_stock([{**ROW, "limit": None}, {"length": "38 1/2", "price": "0", "limit": "1"}])
    assert (one.length, one.price_cents, one.limit) == (parse_length("96"), 1040, None)
    assert (other.length, other.price_cents, other.limit) == (parse_length("38 1/2"), 0, 1)


@pytest.mark.parametrize(
    ("rows", "key"),
    [
        ("8 ft", "not-stock"), (["8 ft"], "not-stock"), ([{**ROW, "length": "0"}], "not-positive"),
        ([{"price": "1"}], "empty"), ([{"length": "8 ft"}], "not-money"), ([{**ROW, "limit": "few"}], "not-a-count"),
        ([{**ROW, "limit": "²"}], "not-a-count"),
        ([{**ROW, "limit": "-1"}], "not-a-count"), ([{**ROW, "limit": "1" * 7}], "not-a-count"),
    ],
    ids=["text", "texts", "a board of nothing", "no length", "no price", "a count in words", "superscript", "minus",
         "too many"],
)  # fmt: skip
def test_stock_that_cannot_be_is_refused(rows, key):
    with pytest.raises(EngineError) as refusal:
        parse_stock(rows)
    assert refusal.value.key == key


@pytest.mark.parametrize(("text", "shown"), [("144", "12 ft"), ("38 1/2", '38 1/2"'), ("1/2", '1/2"')])
def test_a_board_is_named_as_it_is_sold_and_an_offcut_in_inches(text, shown):
    assert format_stock(parse_length(text)) == shown
