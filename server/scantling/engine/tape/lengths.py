"""Lengths: exact and signed, a Fraction of an inch.

No binary float enters but by `Length.approximate`, for figures that come from an angle; such a length says so for
ever (`exact` is False) and so does every length made from it. Rounding happens once, on the way out, and the caller
names it.
The grammar of a written length is in `written`, its characters in `marks`, its words in `spoken`.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal, overload

from scantling.engine.kept import remembered
from scantling.engine.shown.shown_in import (
    FEET,
    FINE,
    INCHES,
    MILLIMETERS,
    MILLIMETERS_PER_INCH,
    TO_CUT,
    format_decimal,
    shown_in,
    to_millimeters,
)
from scantling.engine.tape.marks import LengthError as LengthError
from scantling.engine.tape.marks import Token, read_marks, refuse
from scantling.engine.tape.spoken import say_number
from scantling.engine.tape.written import Lean, Written, count_words, join_fractions, read_length
from scantling.engine.words import say, say_counted

Toward = Literal["even", "up", "down", "half-up"]


@dataclass(frozen=True, slots=True)
class Length:
    """A signed length in inches.

    >>> Length(Fraction(253, 4)) - Length(Fraction(17, 4))
    Length(inches=Fraction(59, 1), exact=True)
    """

    inches: Fraction
    exact: bool = field(default=True, compare=False)

    @classmethod
    def approximate(cls, inches: float) -> Length:
        """A length from trigonometry, carried to a millionth of an inch so that every machine agrees on it."""
        return cls(from_decimals(inches), exact=False)

    def __add__(self, other: Length) -> Length:
        return Length(self.inches + other.inches, self.exact and other.exact)

    def __sub__(self, other: Length) -> Length:
        return Length(self.inches - other.inches, self.exact and other.exact)

    def __neg__(self) -> Length:
        return Length(-self.inches, self.exact)

    def __abs__(self) -> Length:
        return Length(abs(self.inches), self.exact)

    def __mul__(self, factor: int | Fraction) -> Length:
        return Length(self.inches * factor, self.exact)

    __rmul__ = __mul__

    @overload
    def __truediv__(self, divisor: Length) -> Fraction: ...
    @overload
    def __truediv__(self, divisor: int | Fraction) -> Length: ...
    def __truediv__(self, divisor: Length | int | Fraction) -> Fraction | Length:
        if isinstance(divisor, Length):
            return self.inches / divisor.inches
        return Length(self.inches / divisor, self.exact)

    def __bool__(self) -> bool:
        return bool(self.inches.numerator)

    # In whole numbers and by hand: rooms are derived by tens of thousands of comparisons, and those that a dataclass
    # would write make two tuples for each, and compare their Fractions twice.
    def __lt__(self, other: Length) -> bool:
        mine, part = self.inches.as_integer_ratio()
        its, of_its = other.inches.as_integer_ratio()
        return mine * of_its < its * part

    def __gt__(self, other: Length) -> bool:
        mine, part = self.inches.as_integer_ratio()
        its, of_its = other.inches.as_integer_ratio()
        return mine * of_its > its * part

    def __le__(self, other: Length) -> bool:
        return not other < self

    def __ge__(self, other: Length) -> bool:
        return not self < other


def add_up(lengths: Iterable[Length]) -> Length:
    """The sum of some lengths, brought to its lowest terms once and not at each step.

    >>> add_up([Length(Fraction(1, 2)), Length(Fraction(-1, 4))]).inches
    Fraction(1, 4)
    """
    inches, part, exact = 0, 1, True
    for length in lengths:
        more, of = length.inches.as_integer_ratio()
        inches, part = (inches + more, part) if of == part else (inches * of + more * part, part * of)
        exact = exact and length.exact
    return Length(Fraction(inches, part), exact)


def from_decimals(number: float) -> Fraction:
    """A figure from trigonometry to the millionth that is carried of it.

    >>> from_decimals(-0.0625)
    Fraction(-1, 16)
    """
    # Not by Fraction(text), which takes a grammar of numbers apart for each.
    return Fraction(int(f"{number:.6f}".replace(".", "")), 10**6)


ZERO = Length(Fraction(0))
ONE = Length(Fraction(1))
HALF = Length(Fraction(1, 2))
ONE_INCH = Length(Fraction(1))
SIXTEENTH = Length(Fraction(1, 16))
THIRTY_SECOND = Length(Fraction(1, 32))
SIXTY_FOURTH = Length(Fraction(1, 64))

FINEST_SHOWN = 64  # "63 34/127" would be exact, but no tape can be held to it
HUNDREDTH = Fraction(1, 100)  # of a millimeter, in the working: finer than a length can be read
LEAN = THIRTY_SECOND  # what "strong" and "shy" are worth: common practice, no source


@dataclass(frozen=True, slots=True)
class Reading:
    """A length as it was read: the figure on the tape, and whether the mark lay a hair past it ("strong") or short."""

    length: Length
    lean: Lean | None

    @property
    def measured(self) -> Length:
        """The figure with its lean counted in."""
        if self.lean is None:
            return self.length
        return self.length + LEAN if self.lean == "strong" else self.length - LEAN


@remembered
def parse_reading(text: str) -> Reading:
    """A tape reading as a person writes or says it; a figure without a unit is inches. Raises `LengthError`.

    >>> parse_reading("63 1/4 strong").measured.inches
    Fraction(2025, 32)
    >>> parse_reading("five foot three and one eighth").length.inches
    Fraction(505, 8)
    """
    tokens = _tokens(text)
    if tokens[0].kind in ("dash", "minus") and len(tokens) > 1:
        refuse("negative", text, tokens[0].at)
    reading = _reading(read_length(tokens, text))
    if reading.measured < ZERO:
        refuse("negative", text, 0)
    return reading


@remembered
def parse_length(text: str, *, allow_negative: bool = False) -> Length:
    """A length as written, its lean counted in. With `allow_negative` one minus may lead. Raises `LengthError`.

    >>> parse_length("-1/2", allow_negative=True).inches
    Fraction(-1, 2)
    """
    tokens = _tokens(text) if allow_negative else []
    if not tokens or tokens[0].kind not in ("dash", "minus"):
        return parse_reading(text).measured
    if len(tokens) == 1:
        refuse("no-number", text, 0)
    return -_reading(read_length(tokens[1:], text)).measured


def _tokens(text: str) -> list[Token]:
    return join_fractions(count_words(read_marks(text), text), text, spaced=True)


def _reading(written: Written) -> Reading:
    return Reading(Length(written.amount), written.lean)


def round_to(length: Length, graduation: Length, toward: Toward = "even") -> Length:
    """The length at a graduation of the tape, rounded once and in a named direction.

    "even": to the nearest, and from midway to the even graduation (NIST Handbook 44, section 10.3). "half-up": to the
    nearest, and from midway to the greater. "up" and "down": to the next graduation above or below.

    >>> round_to(parse_length("63 5/32"), SIXTEENTH).inches == Fraction(505, 8)
    True
    """
    # In whole numbers: every figure shown comes through here, and a Fraction finds a common divisor at each step.
    (inches, part), (mark, marks) = length.inches.as_integer_ratio(), graduation.inches.as_integer_ratio()
    whole = part * mark
    steps, over = divmod(inches * marks, whole)
    up = {
        "up": over > 0,
        "down": False,
        "half-up": 2 * over >= whole,
        "even": 2 * over > whole or (2 * over == whole and steps % 2 == 1),
    }[toward]
    return Length(Fraction(mark * (steps + up), marks), length.exact)


def format_length(length: Length, nearest: Length = SIXTEENTH) -> str:
    """A length as it is shown to a person, rounded once: to the nearest graduation, or in millimeters to a half of one,
    to a tenth where the graduation is finer than a sixteenth.

    >>> format_length(parse_length("5' 3.25"))
    '63 1/4"'
    >>> from scantling.engine.shown.shown_in import showing
    >>> with showing(MILLIMETERS): format_length(parse_length("5' 3.25"))
    '1606.5 mm'
    """
    return _format(*length.inches.as_integer_ratio(), *nearest.inches.as_integer_ratio(), shown_in())


@remembered
def _format(inches: int, part: int, mark: int, marks: int, shown: str) -> str:
    length, nearest = Length(Fraction(inches, part)), Length(Fraction(mark, marks))
    if shown == MILLIMETERS:
        return f"{_in_millimeters(length, nearest)} mm"
    if shown == FEET and abs(round_to(length, nearest).inches) >= 12:
        return format_feet(length, nearest)
    return f'{_rounded(length, nearest)}"'


def format_bare(length: Length, nearest: Length = SIXTEENTH) -> str:
    """The same without its unit, where that is plain: 63 1/4, or 1606.5; feet keep theirs."""
    shown = format_length(length, nearest)
    return shown if shown_in() == FEET else shown.removesuffix(" mm").rstrip('"')


def format_plain(length: Length) -> str:
    """The same as it stands in a sentence: 1/64, or 0.4 mm."""
    return format_length(length, SIXTY_FOURTH).rstrip('"')


def derive_shown(length: Length, nearest: Length = SIXTEENTH) -> Length:
    """The length that is shown in place of one, rounded as `format_length` does."""
    if shown_in() != MILLIMETERS:
        return round_to(length, nearest)
    return Length(Fraction(_in_millimeters(length, nearest)) / MILLIMETERS_PER_INCH, length.exact)


def _in_millimeters(length: Length, nearest: Length) -> str:
    return format_decimal(to_millimeters(length.inches, FINE if nearest < SIXTEENTH else TO_CUT))


def format_inches(length: Length, nearest: Length = SIXTEENTH) -> str:
    """Inches and a fraction, whatever lengths are shown in: for names, and for what is read back.

    >>> format_inches(parse_length("5' 3.25"))
    '63 1/4"'
    """
    return _format(*length.inches.as_integer_ratio(), *nearest.inches.as_integer_ratio(), INCHES)


def _rounded(length: Length, nearest: Length) -> str:
    inches = round_to(length, nearest).inches
    return f"{'-' if inches < 0 else ''}{_mixed(abs(inches))}"


def format_feet(length: Length, nearest: Length = SIXTEENTH) -> str:
    """Feet, inches and a fraction, rounded once to the nearest graduation.

    >>> format_feet(parse_length("63 5/16"))
    '5\\' 3 5/16"'
    """
    inches = round_to(length, nearest).inches
    feet, rest = divmod(abs(inches), 12)
    return f"{'-' if inches < 0 else ''}{feet}' {_mixed(rest)}\""


def _mixed(inches: Fraction) -> str:
    whole, part = divmod(inches, 1)
    if not part:
        return str(whole)
    return f"{whole} {part}" if whole else str(part)


def format_exact(amount: Fraction) -> str:
    """An amount unrounded, for the working: as a fraction where a tape has a name for it, else as "about" a decimal.

    >>> format_exact(Fraction(127, 3)), format_exact(Fraction(8000, 127) / 3)
    ('42 1/3', 'about 20.9974')
    """
    sign = "-" if amount < 0 else ""
    if amount.denominator <= FINEST_SHOWN:
        return sign + _mixed(abs(amount))
    whole, decimals = divmod(int(round_to(Length(abs(amount) * 10**4), ONE).inches), 10**4)
    return say("about", figure=f"{sign}{whole}.{decimals:04}")


def format_working(inches: Fraction) -> str:
    """A length unrounded, without its unit, as it stands in a line of working.

    >>> from scantling.engine.shown.shown_in import showing
    >>> with showing(MILLIMETERS): format_working(Fraction(63)), format_working(Fraction(505, 8))
    ('1600.2', 'about 1603.38')
    """
    if shown_in() != MILLIMETERS:
        return format_exact(inches)
    millimeters = to_millimeters(inches, HUNDREDTH)
    shown = format_decimal(millimeters)
    return shown if millimeters == inches * MILLIMETERS_PER_INCH else say("about", figure=shown)


def format_unrounded(inches: Fraction) -> str:
    """The same with its unit."""
    return format_working(inches) + (" mm" if shown_in() == MILLIMETERS else '"')


def format_reading(length: Length) -> str | None:
    """A length as a person would write it off a tape: exactly, where that can be written, else to its nearest 1/64, or
    in millimeters to a tenth.

    None where there is nothing that a tape could read: no more than nothing, or less than its finest mark.

    >>> format_reading(parse_length("55 7/8")), format_reading(Length(Fraction(253, 256)))
    ('55 7/8"', '63/64"')
    >>> from scantling.engine.shown.shown_in import showing
    >>> with showing(MILLIMETERS): format_reading(parse_length("1607 mm")), format_reading(parse_length("55 7/8"))
    ('1607 mm', '1419.225 mm')
    """
    exact = f'{format_exact(length.inches)}"' if length.inches.denominator <= FINEST_SHOWN else ""
    written: tuple[str, ...] = (exact, format_inches(length, SIXTY_FOURTH))
    if shown_in() == MILLIMETERS:
        written = (_exact_millimeters(length), exact, format_length(length, SIXTY_FOURTH))
    text = next((text for text in written if _reads_as_something(text)), None)
    return text if length > ZERO else None


def _exact_millimeters(length: Length) -> str:
    """As many decimals as it has, up to a millionth; every fraction on a tape comes out even."""
    millimeters = length.inches * MILLIMETERS_PER_INCH
    return f"{format_decimal(millimeters)} mm" if 10**6 % millimeters.denominator == 0 else ""


def _reads_as_something(text: str) -> bool:
    try:
        return parse_length(text) > ZERO
    except LengthError:
        return False


def say_length(length: Length, nearest: Length = SIXTEENTH) -> str:
    """The length in words, for a screen reader, rounded once as it is shown.

    >>> say_length(parse_length("63 5/16"))
    'sixty-three and five sixteenths inches'
    >>> from scantling.engine.shown.shown_in import showing
    >>> with showing(MILLIMETERS): say_length(parse_length("63 5/16"))
    'one thousand six hundred eight millimeters'
    """
    return _say(*length.inches.as_integer_ratio(), *nearest.inches.as_integer_ratio(), shown_in())


@remembered
def _say(inches: int, part: int, mark: int, marks: int, shown: str) -> str:
    length, nearest = Length(Fraction(inches, part)), Length(Fraction(mark, marks))
    if shown == MILLIMETERS:
        return _say_millimeters(_in_millimeters(length, nearest))
    rounded = round_to(length, nearest).inches
    if shown == FEET and abs(rounded) >= 12:
        feet, rest = divmod(abs(rounded), 12)
        words = _signed(say_counted("said-feet", int(feet), number=say_number(Fraction(feet))), rounded < 0)
        return f"{words} {_say_inches(rest)}" if rest else words
    return _say_inches(rounded)


def _say_millimeters(shown: str) -> str:
    whole, _, tenth = shown.removeprefix("-").partition(".")
    words = say_number(Fraction(int(whole)))
    if tenth:
        words = say("said-point", whole=words, tenth=say_number(Fraction(int(tenth))))
    key = "said-millimeter" if shown.lstrip("-") == "1" else "said-millimeters"
    return _signed(say(key, number=words), shown.startswith("-"))


def _signed(words: str, is_negative: bool) -> str:
    return say("said-minus", number=words) if is_negative else words


def _say_inches(inches: Fraction) -> str:
    size = abs(inches)
    if size < 1 and size.numerator > 1:
        return say("said-part-of-inch", number=say_number(inches))
    return say("said-inch" if 0 < size <= 1 else "said-inches", number=say_number(inches))
