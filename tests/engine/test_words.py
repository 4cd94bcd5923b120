"""What the engine shows, by key: every sentence is in the catalogs, each key asked for is there, none is idle."""

import ast
import re
from collections import Counter
from functools import cache
from pathlib import Path
from string import Formatter

import pytest
from scantling.engine.words import en

ENGINE = Path(__file__).resolve().parents[2] / "server" / "scantling" / "engine"
LANGUAGES = {"en": en}
CODE = sorted(path for path in ENGINE.rglob("*.py") if path.relative_to(ENGINE).parts[0] != "words")
#: Two words beside each other, a word beside a value (\x01), or one that begins as a sentence does.
SENTENCE = re.compile(
    r"[A-Za-z]{2,}[,;:.]? +(?:[a-zA-Z]{2,}|\x01)|\x01[,;:.]? +\(?[a-z]{2,}|^[A-Z][a-z]+[.:]?$"
)
#: No words: markup of a drawing, what is put into it, and the signs of metric units.
SIGNS = re.compile(r"<[^>]*>|\x01 (?:mm|cm|ml)²?(?!\w)")
#: Look like sentences and are none, each with why.
NO_SENTENCE = {
    "feet and inches",  # a setting, as the journal keeps it
    "lengths shown in",  # what a context variable is called
    "paste the wall", "peel and stick",  # settings of a paper
    "to cut",  # the state of a piece
    " of \x01",  # by which a scrap of another room is found
    "tuple[int, Reached] | None",  # a type
    "crown \x01 × \x01", "crown blocking", "jamb stock", "casing head",  # profiles, as boards are found by them
    "\x01 ft",  # and how long boards are
    "\x01 thousand", "\x01 hundred",  # numbers in words, said by the rules that they are read by
    # What pieces and profiles are called where states of pieces and boards are kept by it, and their keys.
    "head cap", "corner block", "\x01 corner block", "\x01 block", "\x01 backband",
    "\x01 leg", "\x01 plinth", "\x01 extension", "apron return, \x01", "shared casing", "shared casing \x01",
    "base cap", "chair rail", "picture rail", "\x01 blocking", "nails \x01",
    "left end", "right end", "\x01 return", "\x01 return \x01", "\x01 reveal \x01", "scarf \x01",
    "\x01 of the toe kick", "\x01 \x01 toe \x01",
    "the \x01",  # by which entries about one thing are found
    "corner \x01",  # where paper may fail to match: a setting, as the journal keeps it
    "\x01, \x01, several rooms",  # what a line to buy is known by once it is ticked off
    "sq ft", "to buy",  # a unit as it is typed; what a file says of a board, which programs read
    # What figures are called in the sums of free pieces, which are kept as they were written, and kinds of things.
    "\x01 width", "\x01 height", "\x01 left height", "\x01 right height", "\x01 from the left", "largest \x01",
    "outlet, switch", "batten \x01 \x01", "free \x01 \x01",
}  # fmt: skip
#: Tables that no person reads, each with what it is.
NO_WORDS = {
    "__all__": "what a module gives out",
    "SAID_AS": "what dictation writes for the name of a figure",
    "WOODS": "what woods are called where they are sold, which is what a setting keeps",
    "MADE": "what stock is called, by which boards are found",
    "SUNDRY_OF": "what supplies are called, by which what was ticked off is found",
    "DEFAULTS": "settings as they are written",
    "SQUARE_INCHES": "units as they are typed",
    "SQUARE_METERS": "units as they are typed",
    "COLUMNS": "what columns of files are called, by which programs find them",
    "SUNDRIES": "what supplies and their packages are called, by which what was ticked off is found",
}
#: How lines and letters of a drawing look: classes of the page's styles, of which one element has several.
LOOKS = {"ink", "pencil", "hand", "red", "thin", "dashed", "small", "strong", "wood", "sheet", "wall", "number",
         "opening", "lay"}  # fmt: skip
#: What they are given is no sentence: a pattern, a name, what a program is told.
SPEAK_TO_THE_PROGRAM = {"compile", "sub", "match", "search", "TypeVar", "ContextVar", "getattr", "cast", "Literal",
                        "about", "derived"}  # fmt: skip
SAY = {"say", "say_counted"}
#: Stands for what is put into a key.
ANY = "\x01"


def name_of(path):
    return path.relative_to(ENGINE).as_posix()


@cache
def nodes(path):
    """Every node of a file, each with the one above it."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    return [(node, above) for above in ast.walk(tree) for node in ast.iter_child_nodes(above)]


def fields_of(text):
    return {name for _, name, _, _ in Formatter().parse(text) if name is not None}


def called(node):
    """By what name a function is called, wherever it comes from."""
    return getattr(node.func, "id", getattr(node.func, "attr", ""))


@cache
def families():
    """The classes of refusals, each with the beginning of its keys."""
    return {
        node.name: one.value.value
        for path in CODE for node, _ in nodes(path) if isinstance(node, ast.ClassDef)
        for one in node.body if isinstance(one, ast.Assign) and ast.unparse(one.targets[0]) == "family"
    }  # fmt: skip


@cache
def asked():
    """Every call that wants a sentence: its file, the call, the keys it may mean, the values given (None: not told)."""
    return list(calls())


def calls():
    for path in CODE:
        for node, _ in nodes(path):
            if not isinstance(node, ast.Call) or not node.args:
                continue
            known = {"field", "at"} if called(node) in families() else set()
            given = [one.arg for one in node.keywords]
            values = None if None in given else set(given) - known
            if called(node) in families():
                keys = [f"{families()[called(node)]}.{key}" for key in keys_in(node.args[0])]
            else:
                keys = keys_in(node.args[0]) if called(node) in SAY else []
            if called(node) == "say_counted":
                keys = [f"{key}.{ANY}" for key in keys]
                values = values if values is None else values | {"count"}
            for key in keys:
                yield name_of(path), ast.unparse(node), matching(key), values


def keys_in(node):
    """The keys that an expression may give, what is put in as ANY; of a name none, which is written elsewhere."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        return [node.value]
    if isinstance(node, ast.JoinedStr):
        return ["".join(one.value if isinstance(one, ast.Constant) else ANY for one in node.values)]
    return [key for one in (node.body, node.orelse) for key in keys_in(one)] if isinstance(node, ast.IfExp) else []


def matching(key):
    """The keys of the catalogs that one with ANY in it may be."""
    if ANY not in key:
        return [key] if key in en.TEXTS else []
    pattern = re.compile(r"[\w-]+".join(map(re.escape, key.split(ANY))))
    return [one for one in en.TEXTS if pattern.fullmatch(one)]


def written():
    """Every text in the code: a key that is handed on by name is one of them."""
    return {node.value for path in CODE for node, _ in nodes(path)
            if isinstance(node, ast.Constant) and isinstance(node.value, str)}  # fmt: skip


def test_no_key_stands_twice():
    twice = Counter(
        node.value for path in (ENGINE / "words").rglob("*.py") for node, above in nodes(path)
        if isinstance(above, ast.Dict) and node in above.keys and path.name != "metric.py"
    )  # fmt: skip
    assert [key for key, count in twice.items() if count > 1] == []


def test_every_language_has_the_same_keys_and_names_no_other_values():
    for language in LANGUAGES.values():
        assert language.TEXTS.keys() == en.TEXTS.keys()
        for key, text in language.TEXTS.items():
            assert fields_of(text) <= fields_of(en.TEXTS[key]), key


def test_keys_are_written_alike():
    assert [key for key in en.TEXTS if not re.fullmatch(r"[a-z][a-z0-9_-]*(\.[a-z0-9_-]+)?", key)] == []


def test_every_key_that_is_asked_for_is_there_and_names_the_values_that_are_given():
    wrong = []
    for path, call, keys, values in asked():
        wrong += [] if keys else [f"{path}: no such key: {call}"]
        for key in keys if values is not None else ():
            names = fields_of(en.TEXTS[key])
            spare = set() if len(keys) > 1 else values - names - {"count"}
            wrong += [f"{path}: {key} names {sorted(names)}: {call}"] if names - values or spare else []
    assert wrong == []


def test_no_sentence_is_idle():
    handed = {key for _, _, keys, _ in asked() for key in keys}
    texts = written()
    by_name = {f"{family}.{text}" for family in families().values() for text in texts}
    ours = {"all-of", "any-of"}  # said by the door itself
    assert en.TEXTS.keys() - handed - texts - by_name - ours == set()


def is_for_the_program(node, above):
    """Whether what is around a text hands it to the program: a docstring, a type, a key, a pattern."""
    if isinstance(above, ast.Expr | ast.Compare | ast.Subscript | ast.AnnAssign | ast.arg | ast.JoinedStr):
        return not (isinstance(above, ast.AnnAssign) and node is above.value)
    if isinstance(above, ast.FormattedValue | ast.MatchValue | ast.FunctionDef):
        return True
    if isinstance(above, ast.Dict):
        return node in above.keys
    return isinstance(above, ast.Call) and called(above) in SPEAK_TO_THE_PROGRAM


def text_of(node):
    """A text with a mark for each value put into it; None for what is no text."""
    if isinstance(node, ast.JoinedStr):
        return "".join(one.value if isinstance(one, ast.Constant) else "\x01" for one in node.values)
    return node.value if isinstance(node, ast.Constant) and isinstance(node.value, str) else None


def tables(path):
    """The texts of tables that no person reads."""
    return {id(node) for table, _ in nodes(path) if isinstance(table, ast.Assign | ast.AnnAssign)
            and ast.unparse(table.targets[0] if isinstance(table, ast.Assign) else table.target) in NO_WORDS
            for node in ast.walk(table)}  # fmt: skip


def sentences_in(path):
    silent = tables(path)
    texts = [(node, text_of(node)) for node, above in nodes(path)
             if id(node) not in silent and not is_for_the_program(node, above)]  # fmt: skip
    return [f"{name_of(path)}:{node.lineno}: {text}" for node, text in texts
            if text and text not in NO_SENTENCE and SENTENCE.search(SIGNS.sub("", text))
            and not (name_of(path).startswith("drawings/") and LOOKS.issuperset(text.strip(ANY).split()))]  # fmt: skip


@pytest.mark.parametrize("path", CODE, ids=name_of)
def test_no_sentence_stands_in_the_code(path):
    assert sentences_in(path) == []


#: By which a text is taken apart, or looked into.
TAKE_APART = {
    "startswith", "endswith", "removeprefix", "removesuffix", "partition", "rpartition", "split", "rsplit",
    "find", "index", "count", "replace", "match", "search", "fullmatch",
}  # fmt: skip
SAY = {"say", "say_counted", "all_of", "any_of"}


def decided_by_a_sentence(path):
    """Where something that is said is compared, or taken apart."""
    for node, above in nodes(path):
        if isinstance(node, ast.Call) and called(node) in SAY:
            verb = called(above) if isinstance(above, ast.Call) else getattr(above, "attr", "")
            if verb in TAKE_APART or isinstance(above, ast.Compare):
                yield f"{name_of(path)}:{node.lineno}: {ast.unparse(above)}"


@pytest.mark.parametrize("path", CODE, ids=name_of)
def test_no_result_hangs_on_a_sentence(path):
    """Another language says it otherwise, and a thing may be called as a sentence begins."""
    assert list(decided_by_a_sentence(path)) == []
