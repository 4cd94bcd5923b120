"""Spoken numbers: words to figures and back, as a phone's dictation writes them and its screen reader says them.

It knows counting words and the names of fractions. Where words could be two numbers ("sixty three quarters": 60 3/4,
or 63 quarters?) the larger run is taken, and the grammar then refuses it as improper, so nobody's guess becomes a
length. "Thirty seconds" and "sixty fourths" are parts of an inch, not thirty of anything.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from types import MappingProxyType

from scantling.engine.tape.marks import Token, decimal_value, refuse, typed
from scantling.engine.words import any_of, say

_SMALL = (
    *("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"),
    *("eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"),
)
_TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
UNITS: Mapping[str, int] = MappingProxyType({word: value for value, word in enumerate(_SMALL)})
TENS: Mapping[str, int] = MappingProxyType({word: 10 * value for value, word in enumerate(_TENS, 2)} | {"fourty": 40})
SCALES: Mapping[str, int] = MappingProxyType({"hundred": 100, "thousand": 1000})

_PARTS = {
    2: "half", 3: "third", 4: "quarter", 5: "fifth", 6: "sixth", 7: "seventh", 8: "eighth", 9: "ninth", 10: "tenth",
    11: "eleventh", 12: "twelfth", 16: "sixteenth", 20: "twentieth", 100: "hundredth",
}  # fmt: skip
PARTS: Mapping[str, int] = MappingProxyType(
    {name: size for size, name in _PARTS.items()}
    | {name + "s": size for size, name in _PARTS.items()}
    | {"halves": 2, "fourth": 4, "fourths": 4}
)
BARE_PARTS = frozenset(_PARTS.values())
COMPOUND_PARTS: Mapping[tuple[str, str], int] = MappingProxyType(
    {("thirty", "second"): 32, ("thirty", "seconds"): 32, ("sixty", "fourth"): 64, ("sixty", "fourths"): 64}
)


# What a tape, a rule or a person divides by. The others are slips: "1/43" for 1/4, "3/161" for 3/16.
DIVISIONS = frozenset((*range(2, 13), 16, 20, 32, 50, 64, 100, 128))


def gather_numbers(tokens: Sequence[Token], text: str) -> list[Token]:
    """The same tokens with every run of number words made one number, decimal or fraction."""
    marks = _without_hyphens(tokens)
    gathered: list[Token] = []
    at = 0
    while at < len(marks):
        token, at = _next_number(marks, at, text)
        gathered.append(token)
    return gathered


def _without_hyphens(tokens: Sequence[Token]) -> list[Token]:
    # A hyphen inside "sixty-three" or "five-eighths" joins; between figures it may be a minus, and is left to stand.
    kept: list[Token] = []
    for i, token in enumerate(tokens):
        if token.kind == "dash" and 0 < i < len(tokens) - 1:
            before, after = tokens[i - 1], tokens[i + 1]
            if before.end == token.at and token.end == after.at and _hyphenated(before, after):
                continue
        kept.append(token)
    return kept


def _hyphenated(before: Token, after: Token) -> bool:
    if "and" in (before.kind, after.kind) or "article" in (before.kind, after.kind):
        return True
    if after.text in PARTS or (before.text, after.text) in COMPOUND_PARTS or after.text in SCALES:
        return before.kind in ("word", "number")
    return before.text in SCALES or (before.text in TENS and 0 < UNITS.get(after.text, 0) < 10)


def _next_number(marks: Sequence[Token], at: int, text: str) -> tuple[Token, int]:
    first = marks[at]
    if first.kind == "number" and at and marks[at - 1].kind == "slash" and marks[at - 1].end == first.at:
        return first, at + 1  # the 16 of "5/16ths" stands under its slash, and the grammar joins them
    part = _part_at(marks, at)
    if part:
        return _bare_part(marks, at, part, text)
    if first.kind == "article":
        part = _part_at(marks, at + 1)
        if part:
            size, end = part
            return _joined(marks, at, end, proper(Fraction(1), size, text, marks[at + 1], marks[end - 1])), end
    if first.kind == "number":
        return _numbered(marks, at, at + 1, first.value, text)
    if first.text == "point":
        return _pointed(marks, at, at, Fraction(0), text)
    value, after = _cardinal_at(marks, at)
    if after == at:
        return first, at + 1
    return _numbered(marks, at, after, Fraction(value), text)


def _bare_part(marks: Sequence[Token], at: int, part: tuple[int, int], text: str) -> tuple[Token, int]:
    size, after = part
    if marks[at].text not in BARE_PARTS or after != at + 1:
        refuse("no-numerator", text, marks[at].at, part=typed(text, marks[at], marks[after - 1]))
    return _joined(marks, at, after, Fraction(1, size)), after


def _numbered(marks: Sequence[Token], at: int, after: int, value: Fraction, text: str) -> tuple[Token, int]:
    part = _part_at(marks, after)
    if part:
        size, end = part
        return _joined(marks, at, end, proper(value, size, text, marks[at], marks[end - 1])), end
    if after < len(marks) and marks[after].text == "point":
        return _pointed(marks, at, after, value, text)
    return (marks[at] if after == at + 1 and marks[at].kind == "number" else _whole(marks, at, after, value)), after


def proper(top: Fraction, bottom: int, text: str, first: Token, last: Token, *, alone: bool = False) -> Fraction:
    """A written fraction's value; refused unless it is one that a tape or rule could carry.

    `alone`: no whole number stands before it, so its own may have run into it.

    >>> size = Token("number", "16", 2, 4)
    >>> proper(Fraction(5), 16, "5/16", Token("number", "5", 0, 1), size)
    Fraction(5, 16)
    """
    if bottom == 0:
        refuse("zero-denominator", text, first.at)
    if bottom not in DIVISIONS:
        refuse("odd-denominator", text, first.at, part=typed(text, first, last))
    if top >= bottom:
        refuse("improper", text, first.at, part=typed(text, first, last), instead=_instead(top, bottom, alone))
    return top / bottom


def _instead(top: Fraction, bottom: int, alone: bool) -> str:
    """How to write what is not less than one: 631/4 with the space that was left out, or as so many fourths."""
    if not alone or top.denominator != 1:
        return say("length-in-front")
    digits = str(top.numerator)
    split = [
        f"{digits[:place]} {digits[place:]}/{bottom}"
        for place in range(len(digits) - 1, 0, -1)
        if digits[place] != "0" and int(digits[place:]) < bottom
    ]
    whole, rest = divmod(top, bottom)
    value = " ".join([str(whole), *([str(rest / bottom)] if rest else [])])
    return any_of([*split, value])


def _pointed(marks: Sequence[Token], at: int, point: int, value: Fraction, text: str) -> tuple[Token, int]:
    # "sixty three point two five" says its digits one by one; "point twenty five" says them all at once.
    digits, after = _digits_at(marks, point + 1)
    while len(digits) == after - point - 1:
        digit, end = _digits_at(marks, after)
        if len(digit) != 1:
            break
        digits, after = digits + digit, end
    if not digits:
        refuse("dangling", text, marks[point].end, part=typed(text, marks[point]))
    return replace(_joined(marks, at, after, value + decimal_value("." + digits)), kind="decimal"), after


def _digits_at(marks: Sequence[Token], at: int) -> tuple[str, int]:
    if at < len(marks) and marks[at].kind == "number":
        return marks[at].text, at + 1
    number, after = _cardinal_at(marks, at, hundreds=False)
    return (str(number), after) if after > at else ("", at)


def _joined(marks: Sequence[Token], at: int, after: int, value: Fraction) -> Token:
    text = " ".join(mark.text for mark in marks[at:after])
    return Token("fraction", text, marks[at].at, marks[after - 1].end, value)


def _whole(marks: Sequence[Token], at: int, after: int, value: Fraction) -> Token:
    return replace(_joined(marks, at, after, value), kind="number")


def _part_at(marks: Sequence[Token], at: int) -> tuple[int, int] | None:
    """The size of the part named at a place ("sixteenths": 16) and where it ends."""
    words = [mark.text for mark in marks[at : at + 2]]
    if len(words) == 2 and (words[0], words[1]) in COMPOUND_PARTS:
        return COMPOUND_PARTS[words[0], words[1]], at + 2
    if len(words) == 2 and marks[at].kind == "number" and marks[at + 1].kind == "suffix":
        return (int(words[0]), at + 2) if marks[at].end == marks[at + 1].at else None
    if words and words[0] in PARTS:
        return PARTS[words[0]], at + 1
    return None


def _cardinal_at(marks: Sequence[Token], at: int, hundreds: bool = True) -> tuple[int, int]:
    """A counting number in words and where it ends; it ends where it began if there is none.

    `room` is what the next word must stay below or at: "twenty" leaves room for "three" but not for "thirteen".
    """
    total, group, room, i = 0, 0, 1000, at
    while i < len(marks):
        word = marks[i].text
        if word in TENS and room > 99:
            group, room = group + TENS[word], 9
        elif word in UNITS and room >= max(UNITS[word], 1) and (UNITS[word] or i == at):
            group, room = group + UNITS[word], 0
        elif word == "hundred" and hundreds and 0 < group < 100:
            group, room = group * 100, 100
        elif word == "thousand" and hundreds and 0 < group < 1000 and not total:
            total, group, room = group * 1000, 0, 1000
        elif marks[i].kind == "article" and i == at and _scale_at(marks, i + 1) and hundreds:
            group = 1
        elif marks[i].kind == "and" and _counts_on(marks, i, at):
            pass
        else:
            break
        i += 1
    return total + group, i


def _scale_at(marks: Sequence[Token], at: int) -> bool:
    return at < len(marks) and marks[at].text in SCALES


def _counts_on(marks: Sequence[Token], at: int, start: int) -> bool:
    # "one hundred and four" is one number, but in "one hundred and five sixteenths" the five belongs to the fraction.
    if at == start or marks[at - 1].text not in SCALES:
        return False
    _, after = _cardinal_at(marks, at + 1, hundreds=False)
    return after > at + 1 and not _part_at(marks, after)


def say_number(value: Fraction) -> str:
    """A number of inches in words, without the unit; thousands of inches are as far as words go.

    >>> say_number(Fraction(1013, 16))
    'sixty-three and five sixteenths'
    """
    whole, rest = divmod(abs(value), 1)
    words = [say_count(int(whole))] if whole or not rest else []
    if rest:
        words.append(say_part(rest))
    return ("minus " if value < 0 else "") + " and ".join(words)


def say_part(part: Fraction) -> str:
    """A proper fraction in words.

    >>> say_part(Fraction(3, 64))
    'three sixty-fourths'
    """
    names = _PARTS | {32: "thirty-second", 64: "sixty-fourth"}
    if part.denominator not in names:
        return f"{part.numerator}/{part.denominator}"
    name = names[part.denominator]
    return f"{say_count(part.numerator)} {name}{'s' if part.numerator > 1 else ''}"


def say_count(count: int) -> str:
    """A counting number in words, below a million; beyond that its digits, which a screen reader says anyway.

    >>> say_count(104)
    'one hundred four'
    """
    if count >= 10**6:
        return str(count)
    thousands, rest = divmod(count, 1000)
    words = [f"{_say_hundreds(thousands)} thousand"] if thousands else []
    if rest or not words:
        words.append(_say_hundreds(rest))
    return " ".join(words)


def _say_hundreds(count: int) -> str:
    hundreds, rest = divmod(count, 100)
    words = [f"{_SMALL[hundreds]} hundred"] if hundreds else []
    if rest >= 20:
        tens, ones = divmod(rest, 10)
        words.append(_TENS[tens - 2] + (f"-{_SMALL[ones]}" if ones else ""))
    elif rest or not words:
        words.append(_SMALL[rest])
    return " ".join(words)
