"""Sums: tape arithmetic, read by a small reader of our own and worked exactly.

It takes + - × ÷ in signs or words, brackets, lengths in every written form, and "half of", "3 of". It keeps units
honest. A figure without a unit is inches where it meets a length in + and -, a plain number where it multiplies or
divides one, and the answer says which it was; where nothing has a unit the answer is inches. A length times a length
is an area, a length over a length a plain number; a length plus an area is refused.

Two marks mean two things. A slash with a figure hard against both sides is a fraction (63 1/4), any other divides
(63 1/4 / 2). A dash always takes away, and where it could as well join (63-1/4, 5'-3") it is refused: the same text
must never be one length as a reading and another as a sum.

A sum about a room may name its figures: wall 3 − 1/4. Names are words without any mark round them, for square brackets
already are brackets here; one that a figure follows without a sign, or a mark hard against it, is refused.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType
from typing import NoReturn

from scantling.engine.errors import EngineError, quote
from scantling.engine.tape.lengths import SIXTEENTH, Length, Reading, format_unrounded, round_to
from scantling.engine.tape.marks import LengthError, MarkKind, Token, name_pattern, plain_words, read_marks, typed
from scantling.engine.tape.quantities import BARE, INCHES, MILLIMETERS, Quantity, Sign, UnlikeQuantities, combine
from scantling.engine.tape.written import count_words, join_fractions, read_length
from scantling.engine.words import say

LONGEST_SUM = 1000
LARGEST = 10**12

SIGN_OF: Mapping[MarkKind, Sign] = MappingProxyType(
    {"plus": "+", "dash": "-", "minus": "-", "times": "×", "slash": "÷", "divide": "÷", "of": "of"}
)
BINDS: Mapping[str, int] = MappingProxyType({"(": 0, "+": 1, "-": 1, "×": 2, "÷": 2, "negative": 3, "of": 4})


class SumError(EngineError):
    """A sum that cannot be worked, or could be worked in two ways."""

    family = "sum"


@dataclass(frozen=True, slots=True)
class SumStep:
    """One line of the working: two quantities, the sign between them, and what they came to."""

    left: Quantity
    sign: str
    right: Quantity
    value: Quantity

    @property
    def text(self) -> str:
        """The line as it is shown, up to its answer."""
        return _line(self.left, self.sign, self.right)

    @property
    def scales(self) -> bool:
        """Whether one side was a count of the other, or of nothing at all."""
        return self.sign not in ("+", "-")


@dataclass(frozen=True, slots=True)
class SumResult:
    """What a sum came to: a length, a plain number or an area, with how its figures were taken and the working."""

    value: Quantity
    taken: tuple[str, ...]
    steps: tuple[SumStep, ...]
    #: Where each figure without a unit ends in the text, and whether any figure but a part of something has a fraction.
    bare_ends: tuple[int, ...] = ()
    has_fraction: bool = False

    @property
    def length(self) -> Length | None:
        """The answer if it is a length."""
        return Length(self.value.amount) if self.value.sort == "length" else None

    @property
    def number(self) -> Fraction | None:
        """The answer if it is a plain number."""
        return self.value.amount if self.value.sort == "number" else None

    @property
    def area(self) -> Fraction | None:
        """The answer, in square inches, if it is an area."""
        return self.value.amount if self.value.sort == "area" else None


@dataclass(frozen=True, slots=True)
class _Pending:
    """A sign or an open bracket waiting for its right side, and where it stood."""

    sign: str
    at: int


def evaluate_sum(
    text: str, names: Mapping[str, Length] = MappingProxyType({}), bare: str = INCHES
) -> SumResult:
    """The exact answer to a sum of lengths, plain numbers and named lengths. Raises `SumError` or `LengthError`.

    Names are given in the plain form of `plain_words`; `bare` is what lengths without a unit are in.

    >>> evaluate_sum("63 1/4 - 2*(3 1/2 + 3/16)").length
    Length(inches=Fraction(447, 8), exact=True)
    >>> evaluate_sum("half of wall 3 + 2", {"wall 3": Length(Fraction(63))}).length
    Length(inches=Fraction(67, 2), exact=True)
    >>> evaluate_sum("a third of 7' 8 5/8").steps[0].text
    '1/3 of 92 5/8"'
    """
    counted = count_words(read_marks(text, LONGEST_SUM, name_pattern(names)), text)
    try:
        tokens = join_fractions(counted, text, spaced=False)
    except LengthError as error:
        if error.key not in ("improper", "odd-denominator"):
            raise
        raise SumError("fraction-or-division", at=error.at, text=quote(text)) from None
    return _Working(text, tokens, names, bare).work()


WRITTEN = MappingProxyType({INCHES: '"', MILLIMETERS: " mm"})


def write_units(
    text: str, names: Mapping[str, Length] = MappingProxyType({}), bare: str = MILLIMETERS
) -> str:
    """A sum with its unit written where a figure without one is a length in it; raises as `evaluate_sum`.

    So it comes to the same wherever it is read, and for ever. Where millimeters are left out, one with a fraction in it
    is in inches, and stays.

    >>> write_units("1607 - 2 × 89"), write_units("63 1/4 - 2"), write_units("1607 mm / 3")
    ('1607 mm - 2 × 89 mm', '63 1/4 - 2', '1607 mm / 3')
    >>> write_units("63 1/4 - 2*(3 1/2 + 3/16)", bare=INCHES)
    '63 1/4" - 2*(3 1/2" + 3/16")'
    """
    wanted = evaluate_sum(text, names, bare)
    for end in () if wanted.has_fraction and bare == MILLIMETERS else reversed(wanted.bare_ends):
        tried = f"{text[:end]}{WRITTEN[bare]}{text[end:]}"
        try:
            alike = evaluate_sum(tried, names, bare).value == wanted.value
        except EngineError:  # a count that would be a length, so that an area is added to one
            continue
        text = tried if alike else text
    return text


class _Working:
    """Two stacks and no recursion: brackets may nest as deep as the text is long, on a phone's small stack."""

    __slots__ = ("bare", "bare_ends", "has_fraction", "names", "pending", "steps", "taken", "text", "tokens", "values")

    def __init__(self, text: str, tokens: Sequence[Token], names: Mapping[str, Length], bare: str) -> None:
        self.text = text
        self.bare = bare
        self.bare_ends: list[int] = []
        self.has_fraction = False
        self.tokens = tokens
        self.names = names
        self.values: list[Quantity] = []
        self.pending: list[_Pending] = []
        self.taken: list[str] = []
        self.steps: list[SumStep] = []

    def work(self) -> SumResult:
        wants_value, at = True, 0
        while at < len(self.tokens):
            wants_value, at = self._read_one(at, wants_value)
        if wants_value:
            self._refuse("missing-number", len(self.text))
        self._settle(1)
        if self.pending:
            self._refuse("open-bracket", self.pending[-1].at)
        value = self.values[-1]
        if value.sort == "figure":
            scales = any(step.scales for step in self.steps)
            bare = say(f"taken-as-{self.bare}")
            self._note(say("sum-all-figures" if scales else "sum-all-lengths", bare=bare))
            value = Quantity("length", value.amount * BARE[self.bare])
        return SumResult(value, tuple(self.taken), tuple(self.steps), tuple(self.bare_ends), self.has_fraction)

    def _read_one(self, at: int, wants_value: bool) -> tuple[bool, int]:
        token = self.tokens[at]
        if token.kind == "close":
            return self._close(token, wants_value), at + 1
        if token.kind in SIGN_OF:
            return self._sign(at, wants_value), at + 1
        if not wants_value:
            self._refuse("missing-sign", token.at, part=typed(self.text, token))
        if token.kind == "name":
            self._named(at)
            return False, at + 1
        if token.kind == "open":
            self.pending.append(_Pending("(", token.at))
            return True, at + 1
        after = at
        while after < len(self.tokens) and not _parts_phrases(self.tokens[after]):
            after += 1
        part_of = after < len(self.tokens) and self.tokens[after].kind == "of"
        self.has_fraction |= not part_of and any(token.kind == "fraction" for token in self.tokens[at:after])
        self._phrase(self.tokens[at:after])
        return False, after

    def _phrase(self, tokens: Sequence[Token]) -> None:
        written = read_length(tokens, self.text)
        value = Quantity("figure" if written.bare and not written.lean else "length", written.amount)
        if written.lean:
            value = Quantity("length", Reading(Length(written.amount), written.lean).measured.inches)
            self._note(say("sum-lean", figure=typed(self.text, tokens[0], tokens[-1]), taken=value.show()))
        elif written.bare:
            self.bare_ends.append(tokens[-1].end)
        self.values.append(value)

    def _named(self, at: int) -> None:
        token = self.tokens[at]
        after = self.tokens[at + 1] if at + 1 < len(self.tokens) else None
        if after and after.at == token.end and after.kind != "close":
            self._refuse("name-and-mark", token.at, part=typed(self.text, token))
        self.values.append(Quantity("length", self.names[plain_words(token.text)].inches))

    def _close(self, token: Token, wants_value: bool) -> bool:
        if all(pending.sign != "(" for pending in self.pending):
            self._refuse("close-bracket", token.at)
        if wants_value:
            self._refuse("missing-number", token.at)
        self._settle(1)
        self.pending.pop()
        return False

    def _sign(self, at: int, wants_value: bool) -> bool:
        token = self.tokens[at]
        if wants_value:
            if token.kind not in ("dash", "minus"):
                self._refuse("missing-number", token.at)
            self.pending.append(_Pending("negative", token.at))
            return True
        self._check_joining(at)
        sign = SIGN_OF[token.kind]
        self._settle(BINDS[sign])
        self.pending.append(_Pending(sign, token.at))
        return True

    def _check_joining(self, at: int) -> None:
        """Refuse a dash or slash hard between two figures that the grammar of a length would read otherwise."""
        if not 0 < at < len(self.tokens) - 1:
            return
        before, token, after = self.tokens[at - 1 : at + 2]
        if before.end != token.at or token.end != after.at:
            return
        if token.kind == "dash" and (before.kind == "unit" or (before.kind, after.kind) == ("number", "fraction")):
            self._refuse("dash-or-minus", token.at)
        if token.kind == "slash" and before.kind == "fraction":
            self._refuse("two-slashes", token.at)

    def _settle(self, binding: int) -> None:
        """Work every waiting sign that binds at least so strongly, back to the last open bracket."""
        while self.pending and BINDS[self.pending[-1].sign] >= binding:
            waiting = self.pending.pop()
            right = self.values.pop()
            if waiting.sign == "negative":
                self.values.append(Quantity(right.sort, -right.amount))
                continue
            self._combine(self.values.pop(), waiting, right)

    def _combine(self, left: Quantity, waiting: _Pending, right: Quantity) -> None:
        try:
            value, notes = combine(left, waiting.sign, right, self.bare)
        except UnlikeQuantities as unlike:
            self._refuse(unlike.args[0], waiting.at, sum=quote(_line(left, waiting.sign, right)))
        if abs(value.amount) > LARGEST:
            self._refuse("too-great", waiting.at)
        for note in notes:
            self._note(note)
        self.steps.append(SumStep(left, waiting.sign, right, value))
        self.values.append(value)

    def _note(self, sentence: str) -> None:
        if sentence not in self.taken:
            self.taken.append(sentence)

    def _refuse(self, key: str, at: int, **facts: str) -> NoReturn:
        raise SumError(key, at=at, text=quote(self.text), **facts)


def _line(left: Quantity, sign: str, right: Quantity) -> str:
    return f"{left.show()} {sign} {right.show()}"


def _parts_phrases(token: Token) -> bool:
    return token.kind in SIGN_OF or token.kind in ("open", "close", "name")


def derive_remainder(length: Length, nearest: Length = SIXTEENTH) -> Length:
    """What rounding to the nearest graduation of a tape in inches leaves off: more than nothing past the mark.

    >>> derive_remainder(Length(Fraction(65, 64))).inches
    Fraction(1, 64)
    """
    return length - round_to(length, nearest)


def say_remainder(remainder: Length) -> str:
    """A remainder in a few words, to stand beside the shown figure.

    >>> say_remainder(derive_remainder(Length(Fraction(65, 64))))
    '1/64" over the mark'
    """
    if not remainder:
        return say("on-the-mark")
    over = remainder.inches > 0
    return say("over-the-mark" if over else "under-the-mark", off=format_unrounded(abs(remainder).inches))
