"""A written length: the grammar that gives tokens a meaning in inches, or refuses them.

What it accepts: one number (whole, decimal, fraction, or whole and fraction) with its unit or with none; several,
each in a smaller unit than the last; `5-3-1/4` for feet, inches and fraction; and a word for a hair over or under.
What it refuses on purpose: anything two careful people could read as two lengths ("5 3", "63,25", "5-3",
"five feet and a half"), a fraction that is not less than one ("63 5/4", a slip of the finger), and twelve inches or
more beside feet (5' 13": more likely a misheard 5' 3" or 5' 1 3/8" than a sum left to the reader).
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise
from typing import Literal

from scantling.engine.tape.marks import STRONG, Token, part_of_word, refuse, typed
from scantling.engine.tape.spoken import gather_numbers, proper
from scantling.engine.tape.units import CUSTOMARY, FOOT, INCH, LENGTH_UNITS, OTHER_UNITS, inches_per
from scantling.engine.words import say

Lean = Literal["strong", "shy"]
LARGEST = Fraction(10**6)
HALF = Fraction(1, 2)


@dataclass(frozen=True, slots=True)
class Written:
    """What a phrase amounts to: inches when it named a unit or `bare` figures when it did not, and the lean it had."""

    amount: Fraction
    bare: bool
    lean: Lean | None = None


@dataclass(frozen=True, slots=True)
class _Term:
    """One number and its unit; `after_and` when the word "and" came before it."""

    token: Token
    amount: Fraction
    unit: str | None
    after_and: bool


def count_words(marks: Sequence[Token], text: str) -> list[Token]:
    """Tokens with their number words counted and their articles settled."""
    return _with_articles_settled(gather_numbers(marks, text))


def _with_articles_settled(tokens: Sequence[Token]) -> list[Token]:
    # "half an inch", "three quarters of an inch": the article counts nothing; in "a foot" and "an inch" it is the one.
    settled: list[Token] = []
    for i, token in enumerate(tokens):
        following = tokens[i + 1].kind if i + 1 < len(tokens) else ""
        if token.kind == "article" and following == "unit":
            if [kept.kind for kept in settled[-2:]] == ["fraction", "of"]:
                settled.pop()
            if not (settled and settled[-1].kind == "fraction"):
                settled.append(Token("number", token.text, token.at, token.end, Fraction(1)))
            continue
        if token.kind == "unit" and following == "and" and part_of_word(token) and not settled:
            settled.append(Token("number", "", token.at, token.at, Fraction(1)))  # "inch and a half"
        settled.append(token)
    return settled


def join_fractions(tokens: Sequence[Token], text: str, *, spaced: bool) -> list[Token]:
    """Tokens with each `1`, `/`, `4` made one fraction; across spaces only where no slash can divide."""
    joined: list[Token] = []
    at = 0
    while at < len(tokens):
        fraction, after = _fraction_at(tokens, at, text, spaced)
        joined.append(fraction or tokens[at])
        at = after
    return joined


def _fraction_at(tokens: Sequence[Token], at: int, text: str, spaced: bool) -> tuple[Token | None, int]:
    if [token.kind for token in tokens[at : at + 3]] != ["number", "slash", "number"]:
        return None, at + 1
    top, slash, bottom = tokens[at : at + 3]
    tight = top.end == slash.at and slash.end == bottom.at
    if not tight:
        if not spaced:
            return None, at + 1
        _check_spaced_slash(tokens, at, text)
    alone = not at or tokens[at - 1].kind != "number"
    value = proper(top.value, int(bottom.value), text, top, bottom, alone=alone)
    after, end = at + 3, bottom.end
    if after < len(tokens) and tokens[after].kind == "suffix" and tokens[after].at == end:  # "5/16ths"
        after, end = after + 1, tokens[after].end
    return Token("fraction", text[top.at : end], top.at, end, value), after


def _check_spaced_slash(tokens: Sequence[Token], at: int, text: str) -> None:
    """Dictation writes "63 1 / 4"; but in "5' 3 / 4" and "3 / 4 in" a sum would divide, and the two must agree."""
    alone = at == 0 and len(tokens) == 3
    if not alone and not (at and tokens[at - 1].kind in ("number", "and")):
        refuse("loose-slash", text, tokens[at + 1].at)


def read_length(tokens: Sequence[Token], text: str) -> Written:
    """The meaning of a whole phrase of prepared tokens.

    >>> from scantling.engine.tape.marks import read_marks
    >>> words = "five foot three and a quarter"
    >>> read_length(count_words(read_marks(words), words), words)
    Written(amount=Fraction(253, 4), bare=False, lean=None)
    """
    kept, lean = _without_lean(tokens, text)
    terms = _hyphenated_feet(kept) or _read_terms(kept, text)
    written = _add_terms(terms, text)
    if written.amount > LARGEST:
        refuse("too-great", text, terms[0].token.at)
    if lean is None:
        return written
    if any(term.unit not in (*CUSTOMARY, None) for term in terms):
        refuse("lean-on-metric", text, lean.at, part=typed(text, lean))
    return replace(written, lean="strong" if lean.text in (*STRONG, "+", "plus") else "shy")


def _without_lean(tokens: Sequence[Token], text: str) -> tuple[list[Token], Token | None]:
    kept = list(tokens)
    unit = kept.pop() if len(kept) > 1 and kept[-1].kind == "unit" and kept[-2].kind == "lean" else None
    lean = kept.pop() if len(kept) > 1 and kept[-1].kind in ("lean", "plus", "dash", "minus") else None
    if lean and [token.text for token in kept[-2:]] == ["a", "hair"]:
        del kept[-2:]
    if unit:
        kept.append(unit)
    if not kept:
        refuse("no-number", text, 0)
    return kept, lean


def _hyphenated_feet(tokens: Sequence[Token]) -> list[_Term]:
    """`5-3-1/4`: the one form where dashes part feet, inches and fraction."""
    kinds = [token.kind for token in tokens]
    if kinds[:5] != ["number", "dash", "number", "dash", "fraction"]:
        return []
    if len(kinds) > 5 and not (len(kinds) == 6 and LENGTH_UNITS.get(tokens[5].text) == INCH):
        return []
    if any(one.end != two.at for one, two in pairwise(tokens[:5])):
        return []
    feet, _, inches, _, part = tokens[:5]
    return [_Term(feet, feet.value, FOOT, False), _Term(inches, inches.value + part.value, INCH, False)]


def _read_terms(tokens: Sequence[Token], text: str) -> list[_Term]:
    terms: list[_Term] = []
    at = 0
    while at < len(tokens):
        joiner = tokens[at]
        after_and = joiner.kind == "and" and bool(terms)
        if after_and or (terms and terms[-1].unit and _tight_dash(tokens, at)):
            at += 1
        if at == len(tokens):
            refuse("dangling", text, joiner.end, part=typed(text, joiner))
        term, at = _read_term(tokens, at, text, after_and)
        terms.append(term)
    return terms


def _tight_dash(tokens: Sequence[Token], at: int) -> bool:
    if tokens[at].kind != "dash" or not 0 < at < len(tokens) - 1:
        return False
    return tokens[at - 1].end == tokens[at].at and tokens[at].end == tokens[at + 1].at


def _read_term(tokens: Sequence[Token], at: int, text: str, after_and: bool) -> tuple[_Term, int]:
    first = tokens[at]
    if first.kind not in ("number", "decimal", "fraction"):
        _refuse_token(first, text)
    amount, at = first.value, at + 1
    part_at = at + 1 if at < len(tokens) and (tokens[at].kind == "and" or _tight_dash(tokens, at)) else at
    if first.kind == "number" and part_at < len(tokens) and tokens[part_at].kind == "fraction":
        amount, at = amount + tokens[part_at].value, part_at + 1
    unit = None
    if at < len(tokens) and tokens[at].kind == "unit":
        unit, at = LENGTH_UNITS[tokens[at].text], at + 1
    _check_next(tokens, at, first, unit, text)
    return _Term(first, amount, unit, after_and), at


def _check_next(tokens: Sequence[Token], at: int, first: Token, unit: str | None, text: str) -> None:
    """Refuse what may not follow a number, each in its own words, before anyone adds it up."""
    if at == len(tokens):
        return
    after, last = tokens[at], tokens[at - 1]
    if after.kind == "and" and at + 1 == len(tokens):
        refuse("dangling", text, after.end, part=typed(text, after))
    if unit or after.kind not in ("number", "decimal", "fraction", "and"):
        return
    if "decimal" in (first.kind, after.kind) and "fraction" in (first.kind, after.kind):
        refuse("decimal-and-fraction", text, after.at)
    if last.kind == "fraction" and after.kind == "fraction":
        refuse("two-fractions", text, after.at)
    refuse("two-numbers", text, after.at)


def _refuse_token(token: Token, text: str) -> None:
    if token.text in OTHER_UNITS:
        measures = say(f"unit-of-{OTHER_UNITS[token.text]}")
        refuse("not-a-length", text, token.at, part=typed(text, token), measures=measures)
    if token.kind == "slash":
        refuse("no-denominator", text, token.at)
    if token.kind == "dash":
        refuse("loose-dash", text, token.at)
    if token.kind == "unit":
        refuse("no-number", text, token.at)
    refuse("unknown-word" if part_of_word(token) else "odd-character", text, token.at, part=typed(text, token))


def _add_terms(terms: Sequence[_Term], text: str) -> Written:
    first = terms[0]
    if len(terms) == 1 and first.unit is None:
        return Written(first.amount, bare=True)
    total, unit = Fraction(0), None
    for i, term in enumerate(terms):
        unit = _unit_of(terms[i - 1], unit, term, text) if i else term.unit
        if unit is None:
            refuse("two-numbers", text, terms[1].token.at)
        total += term.amount * inches_per(unit)
    return Written(total, bare=False)


def _unit_of(larger: _Term, larger_unit: str | None, term: _Term, text: str) -> str:
    """The unit of a term from the one before it: its own, or the one that people leave out."""
    part_alone = term.token.kind == "fraction" and term.unit is None
    if larger_unit is None:
        refuse("two-numbers", text, term.token.at)
    if larger.amount.denominator != 1:
        refuse("two-fractions" if part_alone else "broken-unit", text, term.token.at)
    spelled = term.token.text[-1:].isalpha()
    # "five inches and a half"; "a foot and a half", which is 18 in to everyone. "A foot and a quarter" is not.
    the_half = term.after_and and spelled and larger.amount == 1 and term.amount == HALF
    if part_alone and (larger_unit == INCH or the_half):
        return larger_unit
    if part_alone and larger_unit == FOOT and (term.after_and or spelled):
        refuse("feet-and-part", text, term.token.at)
    unit = term.unit or (INCH if larger_unit == FOOT else None)
    if unit is None:
        refuse("unit-missing", text, term.token.at, part=typed(text, term.token))
    if (unit in CUSTOMARY) != (larger_unit in CUSTOMARY) or inches_per(unit) >= inches_per(larger_unit):
        refuse("unit-order", text, term.token.at, part=typed(text, term.token))
    if term.amount * inches_per(unit) >= inches_per(larger_unit):
        refuse("too-many", text, term.token.at, part=typed(text, term.token), larger=larger_unit)
    return unit
