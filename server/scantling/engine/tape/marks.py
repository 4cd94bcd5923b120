"""Marks: what a person typed or dictated, cut into tokens that remember where they stood.

It knows characters and words, not what they add up to. Every character is first mapped to a plain one, one for one,
so that a place in the plain text is the same place in the typed one. The tables are our own and closed: `str.isdigit`,
`isspace` and `lower` follow the Unicode version of the running Python, and the phone's is not the laptop's.
A character outside the tables is refused, never skipped: "6¤3" must not become 63.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType
from typing import Literal, NoReturn

from scantling.engine.errors import EngineError, quote
from scantling.engine.tape.units import LENGTH_UNITS

MarkKind = Literal[
    "number", "decimal", "fraction", "word", "unit", "lean", "suffix",
    "slash", "dash", "minus", "plus", "times", "divide", "open", "close", "and", "article", "of", "name",
]  # fmt: skip

LONGEST_LENGTH = 200


class LengthError(EngineError):
    """Text that is not a length, or could be two."""

    family = "length"


@dataclass(frozen=True, slots=True)
class Token:
    """One mark or word: `text` in plain lower case, its place in what was typed, and `value` if it counts."""

    kind: MarkKind
    text: str
    at: int
    end: int
    value: Fraction = Fraction(0)


def refuse(key: str, text: str, at: int | None = None, **facts: str) -> NoReturn:
    """Raise the refusal for a typed text, quoted."""
    raise LengthError(key, at=at, text=quote(text), **facts)


def typed(text: str, first: Token, last: Token | None = None) -> str:
    """What was typed from one token to another, quoted."""
    return quote(text[first.at : (last or first).end])


def _each(characters: str, plain: str) -> dict[str, str]:
    return dict.fromkeys(characters, plain)


SPACES = "".join(map(chr, range(0x2000, 0x2010))) + (
    "\t\n\r\v\f\x1c\x1d\x1e\x1f\x85\xa0\u1680\u2028\u2029\u202a\u202c\u202d\u202f\u205f\u2060\u2066\u2067\u2068\u2069"
    "\u3000\ufe0e\ufe0f\ufeff"
)
# Zero-width marks count as spaces and not as nothing: "6", joiner, "3" is refused rather than read as 63.
PLAIN: Mapping[str, str] = MappingProxyType(
    {chr(code + 0xFEE0): chr(code) for code in range(0x21, 0x7F)}  # the full-width forms
    | {chr(code): chr(code + 32) for code in range(ord("A"), ord("Z") + 1)}
    | {chr(code + 0xFEE0): chr(code + 32) for code in range(ord("A"), ord("Z") + 1)}
    | _each(SPACES, " ")
    | _each("\u2018\u2019\u201a\u201b\u2032\u2035\xb4`\u02b9\u02bc\u02bb\u02c8\uff07", "'")
    | _each("\u201c\u201d\u201e\u201f\u2033\u2036\u02ba\u02dd\u02ee\u3003\uff02", '"')
    | _each("\u2010\u2011\u2012\u2013\u2014\u2015\u2212\u207b\ufe58\ufe63\uff0d", "-")
    | _each("\u2044\u2215\u2571\uff0f", "/")
    | _each("\xd7\u2715\u2716\u22c5\xb7\u2219\u2217\uff0a", "*")
    | _each("\xf7\u2797", "÷")
    | _each("[{\uff3b\uff5b", "(")
    | _each("]}\uff3d\uff5d", ")")
)

VULGAR: Mapping[str, Fraction] = MappingProxyType(
    {"½": Fraction(1, 2), "¼": Fraction(1, 4), "¾": Fraction(3, 4), "⅛": Fraction(1, 8), "⅜": Fraction(3, 8)}
    | {"⅝": Fraction(5, 8), "⅞": Fraction(7, 8), "⅓": Fraction(1, 3), "⅔": Fraction(2, 3), "⅕": Fraction(1, 5)}
    | {"⅖": Fraction(2, 5), "⅗": Fraction(3, 5), "⅘": Fraction(4, 5), "⅙": Fraction(1, 6), "⅚": Fraction(5, 6)}
    | {"⅐": Fraction(1, 7), "⅑": Fraction(1, 9), "⅒": Fraction(1, 10)}
)

STRONG = ("strong", "heavy", "full", "over")
SHY = ("shy", "light", "scant", "bare", "under")
WORDS_OF: Mapping[MarkKind, tuple[str, ...]] = MappingProxyType(
    {
        "unit": tuple(LENGTH_UNITS),
        "lean": (*STRONG, *SHY),
        "suffix": ("th", "ths", "nd", "nds", "rd", "rds"),
        "and": ("and",),
        "article": ("a", "an"),
        "of": ("of",),
        "plus": ("plus",),
        "minus": ("minus", "negative"),
        "times": ("times", "x"),
    }
)
WORD_KINDS: Mapping[str, MarkKind] = MappingProxyType(
    {word: kind for kind, words in WORDS_OF.items() for word in words}
)

MARK = re.compile(
    r"""(?P<space>\ +)
    | (?P<decimal>[0-9]*\.[0-9]+)
    | (?P<number>[0-9]+)
    | (?P<divide>÷|divided\ +by\b)
    | (?P<times>\*|multiplied\ +by\b)
    | (?P<word>[a-z]+)
    | (?P<unit>''|"|')
    | (?P<and>&)
    | (?P<slash>/) | (?P<dash>-) | (?P<plus>\+) | (?P<open>\() | (?P<close>\)) | (?P<point>\.) | (?P<comma>,)
    | (?P<vulgar>[½¼¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚⅐⅑⅒])""",
    re.VERBOSE | re.ASCII,
)


def plain_words(text: str) -> str:
    """A name as marks know it: plain lower case, one space between words.

    >>> plain_words("Wall 3,  DOOR width")
    'wall 3, door width'
    """
    return " ".join("".join(PLAIN.get(character, character) for character in text).split())


def name_pattern(names: Iterable[str]) -> re.Pattern[str] | None:
    """What finds any of some names, as `plain_words` gives them, the longest first; a longer word is none of them."""
    longest_first = sorted({name for name in names if name}, key=lambda name: (-len(name), name))
    if not longest_first:
        return None
    either = "|".join(" +".join(map(re.escape, name.split())) for name in longest_first)
    return re.compile(rf"(?<![a-z0-9])(?P<name>{either})(?![a-z0-9])", re.ASCII)


def read_marks(text: str, longest: int = LONGEST_LENGTH, named: re.Pattern[str] | None = None) -> list[Token]:
    """Typed text as tokens, or a refusal that points at the character. `named` finds names that stand for a length.

    >>> [token.text for token in read_marks("63 1/4")]
    ['63', '1', '/', '4']
    """
    if len(text) > longest:
        raise LengthError("too-long", at=longest, length=len(text), limit=longest)
    plain = "".join(PLAIN.get(character, character) for character in text)
    tokens: list[Token] = []
    at = 0
    while at < len(plain):
        match = (named and named.match(plain, at)) or MARK.match(plain, at)
        if match is None:
            refuse("odd-character", text, at, part=quote(text[at]))
        _take(match, text, plain, tokens)
        at = match.end()
    if not tokens:
        raise LengthError("empty", at=0)
    return tokens


def _take(match: re.Match[str], text: str, plain: str, tokens: list[Token]) -> None:
    name, part, at, end = match.lastgroup or "", match.group(), match.start(), match.end()
    before = tokens[-1] if tokens and tokens[-1].end == at else None
    if name == "space":
        return
    if name == "point":
        # The stop of "5 ft. 3 in." or of a dictated sentence is no decimal point.
        if not (before and (part_of_word(before) or not plain[end:].strip(" "))):
            refuse("stray-point", text, at)
    elif name == "comma":
        if not (before and before.kind == "unit" and plain[end : end + 1] == " " and plain[end:].strip(" ")):
            refuse("comma", text, at)
    elif name == "decimal":
        if before and (before.kind in ("number", "decimal") or (part_of_word(before) and part.startswith("."))):
            refuse("stray-point", text, at)
        tokens.append(Token("decimal", part, at, end, decimal_value(part)))
    else:
        tokens.append(_token(name, part, at, end))


def _token(name: str, part: str, at: int, end: int) -> Token:
    if name == "vulgar":
        return Token("fraction", part, at, end, VULGAR[part])
    if name == "number":
        return Token("number", part, at, end, Fraction(int(part)))
    if name == "word":
        return Token(WORD_KINDS.get(part, "word"), part, at, end)
    if name == "unit":
        return Token("unit", '"' if part == "''" else part, at, end)
    return Token(name, part, at, end)  # type: ignore[arg-type]  # the remaining group names of MARK are kinds


def part_of_word(token: Token) -> bool:
    """Whether a token was written in letters.

    >>> part_of_word(read_marks("ft")[0])
    True
    """
    return token.text[:1].isalpha()


def decimal_value(text: str) -> Fraction:
    """Decimal digits as an exact fraction, by our own hand: `Fraction(str)` reads different texts on different Pythons.

    >>> decimal_value("63.25")
    Fraction(253, 4)
    """
    whole, _, decimals = text.partition(".")
    return Fraction(int((whole + decimals) or "0"), 10 ** len(decimals))
