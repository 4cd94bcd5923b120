"""What the page says, by key: every sentence is in the catalogs, each key that is asked for is there, none is idle."""

import re
from functools import cache
from html.parser import HTMLParser
from pathlib import Path

import pytest
import tree_sitter_javascript
from fluent.syntax import FluentParser
from fluent.syntax.visitor import Visitor
from scantling.site import imported
from tree_sitter import Language, Parser, Query, QueryCursor

WEB = Path(__file__).resolve().parents[2] / "web"
WORDS = WEB / "words"
PACKAGE = WEB.parent / "server" / "scantling"
LANGUAGES = sorted(folder.name for folder in WORDS.iterdir() if folder.is_dir())
JS = Language(tree_sitter_javascript.language())

#: Speak to no person: what they have to tell goes to the page as a key.
SILENT = {"vendor", "words", "sw.js"}
PAGE = sorted(path for path in WEB.rglob("*.js") if path.relative_to(WEB).parts[0] not in SILENT)
#: Attributes that people read or are read.
READ = {
    "label", "title", "aside", "legend", "hint", "placeholder", "holds", "what", "words", "next", "alt", "aria-label",
    "head",
}  # fmt: skip
SENTENCE = re.compile(r"[A-Za-z]{2,}[,;:.]? +[a-zA-Z]{2,}|^[A-Z][a-z]+[.:]?$")
#: Look like sentences and are none, each with why.
NO_SENTENCE = {
    "struck by hand",  # kept in the journal beside the entry, as the reason
    "restored by hand",
    "stair skirt", "medicine cabinet",  # what the journal calls a thing in the way
    "no longer set",
    "taken back",
    "brought back",
    "to cut",  # a piece's state
    "feet and inches",  # settings, as the journal keeps them
    "paste the wall",
    "peel and stick",
    "half of ",  # as the engine reads it in a sum
}
#: How what is kept in the browser is called, and how a selector may begin: no sentence begins so.
NAMES = re.compile(r"scantling |[.#]\w")
#: What the engine's worker hands to Python: programs of many lines, and an import.
PYTHON = re.compile(r"\n|from \w+(\.\w+)+ import ")
#: What they are given is a selector, a name in the browser, or for its console.
SPEAK_TO_THE_BROWSER = {
    "closest", "has", "matches", "querySelector", "querySelectorAll", "seen", "set", "mark", "get", "append", "request",
    "addEventListener", "includes", "startsWith", "postMessage", "warn", "matchMedia", "replaceSync",
}  # fmt: skip
#: What they are given besides is the reason, kept in the journal with the strike.
GIVE_A_REASON = {"strike", "strikeAll", "strikeOut"}
SAME = {"===", "!==", "in"}


@cache
def tree(path):
    return Parser(JS).parse(path.read_bytes()).root_node


def found(path, what):
    captures = QueryCursor(Query(JS, what)).captures(tree(path))
    return captures.get("it", [])


def text(node):
    return node.text.decode()


class Catalog(Visitor):
    """The messages of a language, or of some rooms: key -> the values it names, and those of messages it leads to."""

    def __init__(self, language, rooms=("*",)):
        self.values, self.junk, self._doubled = {}, [], []
        for path in sorted(path for room in rooms for path in (WORDS / language).glob(f"{room}.ftl")):
            self.visit(FluentParser().parse(path.read_text(encoding="utf-8")))

    def visit_Junk(self, node):
        self.junk.append(node.content)

    def visit_Message(self, node):
        parts = {node.id.name: node.value, **{f"{node.id.name}.{one.id.name}": one.value for one in node.attributes}}
        for key, pattern in parts.items():
            if pattern:
                self._doubled += [key] if key in self.values else []
                self.values[key] = named(pattern)


class Named(Visitor):
    def __init__(self):
        self.names, self.leads = set(), set()

    def visit_VariableReference(self, node):
        self.names.add(node.id.name)

    def visit_MessageReference(self, node):
        self.leads.add(node.id.name + (f".{node.attribute.name}" if node.attribute else ""))


def named(pattern):
    visitor = Named()
    visitor.visit(pattern)
    return visitor


@cache
def catalog(language):
    return Catalog(language)


def values_of(key, language):
    """All values that a sentence names, by way of those it leads to."""
    known = catalog(language).values
    one = known[key]
    return one.names.union(*(values_of(lead, language) for lead in one.leads))


CALL = """(call_expression function: (identifier) @name arguments: (arguments . (_) @key)
            (#match? @name "^(say|sayWith)$")) @it"""


def asked():
    """Every call of `say` in the page: file, its text, the key (or a pattern of keys), the values (None: not told)."""
    for path in PAGE:
        for call in found(path, CALL) if "words/words.js" in text(tree(path)) else ():
            key, *more = call.child_by_field_name("arguments").named_children
            values = set()
            for given in more:
                values = told(given, values)
            for one in keys_of(key):
                yield name_of(path), text(call), one, values


def told(given, values):
    if values is None or given.type != "object" or any(one.type == "spread_element" for one in given.named_children):
        return None
    names = (one.child_by_field_name("key") if one.type == "pair" else one for one in given.named_children)
    return values | {text(name) for name in names}


def keys_of(node):
    """The keys that an expression may give, each as a pattern."""
    if node.type == "string":
        return [re.escape(text(node)[1:-1])]
    if node.type == "template_string":
        parts = [
            re.escape(text(one)) if one.type == "string_fragment" else r"[\w-]+" for one in node.named_children
        ]
        return ["".join(parts)]
    if node.type == "ternary_expression":
        return [key for side in ("consequence", "alternative") for key in keys_of(node.child_by_field_name(side))]
    if node.type == "parenthesized_expression":
        return keys_of(node.named_children[0])
    return []  # a name: its key is written where the name is given its value


def written():
    """Texts in the page's code that may be keys handed on by name."""
    return {text(node) for path in PAGE for node in found(path, "(string_fragment) @it")}


def test_every_language_has_the_same_keys_with_the_same_values():
    for language in LANGUAGES:
        assert catalog(language).junk == []
        assert catalog(language)._doubled == []
        assert catalog(language).values.keys() == catalog("en").values.keys()
        for key in catalog("en").values:
            assert values_of(key, language) == values_of(key, "en"), key


def test_every_key_that_the_page_asks_for_is_there_with_the_values_it_names():
    known = catalog("en").values
    wrong = []
    for path, call, pattern, values in asked():
        keys = [key for key in known if re.fullmatch(pattern, key)]
        if not keys:
            wrong.append(f"{path}: no such key: {call}")
        wrong += [
            f"{path}: {key} names {sorted(values_of(key, 'en'))}: {call}"
            for key in keys
            if values is not None and not values_of(key, "en") <= values
        ]
    assert wrong == []


def test_every_key_that_is_handed_on_is_there():
    """What the journal and the engine have to tell is no call of `say`: its key goes by a beginning of its own."""
    handed = {
        text(node)
        for path in PAGE if path.relative_to(WEB).parts[0] in {"journal", "engine"}
        for node in found(path, "(string_fragment) @it")
        if re.fullmatch(r"(aside|attachment|engine|file|laptop|sync)-[a-z-]+(\.[a-z]+)?", text(node))
    }  # fmt: skip
    assert len(handed) > 10
    assert handed - catalog("en").values.keys() == set()


def test_no_sentence_is_idle():
    wanted = re.compile("|".join({pattern for _, _, pattern, _ in asked()}))
    known = catalog("en").values
    leads = {lead for one in known.values() for lead in one.leads}
    used = {key for key in known if key in leads or wanted.fullmatch(key)}
    assert known.keys() - used - written() == set()


class Read(HTMLParser):
    """The texts and the read attributes of a template, and in which attribute each value is put."""

    def __init__(self):
        super().__init__()
        self.texts = []

    def handle_data(self, data):
        self.texts.append(data.strip())

    def handle_starttag(self, tag, attrs):
        self.texts += [value for name, value in attrs if name in READ and value]


def is_page(call):
    return call.type == "call_expression" and text(call.child_by_field_name("function")) == "html"


def chunks(template):
    """The text of a template with a mark for each value put in, and the values put into an attribute nobody reads."""
    whole, silent = "", []
    for one in template.named_children:
        if one.type != "template_substitution":
            whole += text(one)
            continue
        attribute = re.search(r"""([\w-]+)=["']?[^"'<>=]*$""", whole)
        if attribute and attribute[1] not in READ and not attribute[1].startswith("on"):
            silent.append(one)
        whole += "\u0001"
    return whole, silent


def is_for_the_program(above):
    """Whether what is around a text hands it to the program or the browser: an error of its own, a selector, a key."""
    if above.type == "binary_expression":
        return text(above.child_by_field_name("operator")) in SAME
    if above.type in {"import_statement", "export_statement", "subscript_expression", "switch_case"}:
        return True
    if above.type != "arguments":
        return False
    called = above.parent.child_by_field_name("function")
    return called is None or text(called).rpartition(".")[2] in SPEAK_TO_THE_BROWSER | GIVE_A_REASON


def sentences_in_code(path):
    silent, loud = [], []
    for call in found(path, "(call_expression arguments: (template_string)) @it"):
        if is_page(call):
            template = call.child_by_field_name("arguments")
            whole, quiet = chunks(template)
            silent += [template, *quiet]
            read = Read()
            read.feed(re.sub(r"<(/?)\u0001", r"<\1c", whole).replace("<//>", "</c>"))
            read.close()
            loud += [one for one in read.texts if re.search("[A-Za-z]{2}", one)]
    for node in found(path, "[(string) (template_string)] @it"):
        above = node.parent
        within = any(quiet.start_byte <= node.start_byte and node.end_byte <= quiet.end_byte for quiet in silent
                     if quiet.type == "template_substitution")  # fmt: skip
        if node in silent or within or is_for_the_program(above):
            continue
        said = "".join(text(one) if one.type != "template_substitution" else "x" for one in node.named_children)
        if SENTENCE.search(said) and said not in NO_SENTENCE and not (NAMES.match(said) or PYTHON.match(said)):
            loud.append(said)
    return loud


def name_of(path):
    return path.relative_to(WEB).as_posix()


@pytest.mark.parametrize("path", PAGE, ids=name_of)
def test_no_sentence_stands_in_the_code(path):
    assert sentences_in_code(path) == []


def rooms(name):
    """A list of catalogs by its name in words.js."""
    what = f'((variable_declarator name: (_) @name value: (array) @it) (#eq? @name "{name}"))'
    return [text(one)[1:-1] for one in found(WORDS / "words.js", what)[0].named_children]


@pytest.mark.parametrize("folder", [WEB, PACKAGE], ids=["page", "engine and shell"])
def test_an_apostrophe_is_straight(folder):
    """As the sign for feet is, and as it is typed: of two kinds side by side one looks like a slip."""
    told = [path for kind in ("ftl", "js", "html", "py") for path in folder.rglob(f"*.{kind}")]
    told = [path for path in told if "vendor" not in path.parts]
    assert [path.name for path in told if re.search("[\u2018\u2019]", path.read_text(encoding="utf-8"))] == []


def test_every_catalog_is_taken_and_those_of_the_first_paint_are_asked_for_at_once():
    first = rooms("FIRST")
    assert sorted([*first, *rooms("OTHERS")]) == [path.stem for path in sorted((WORDS / "en").glob("*.ftl"))]
    page = (WEB / "index.html").read_text()
    assert re.findall(r'as="fetch" crossorigin href="\S+/words/en/(\w+)\.ftl"', page) == first


def test_what_is_imported_before_the_first_paint_has_its_sentences_by_then():
    early = Catalog("en", rooms("FIRST")).values
    imported_by_then = imported({name_of(path): path.read_text() for path in WEB.rglob("*.js")}, "app.js")
    late = catalog("en").values.keys() - early.keys()
    said = [
        f"{path}: {call}" for path, call, pattern, _ in asked()
        if path in imported_by_then and any(re.fullmatch(pattern, key) for key in late)
    ]  # fmt: skip
    handed = [
        f"{name_of(path)}: {text(node)}" for path in PAGE if name_of(path) in imported_by_then
        for node in found(path, "(string_fragment) @it") if "-" in text(node) and text(node) in late
    ]  # fmt: skip
    assert said + handed == []
    assert {lead for one in early.values() for lead in one.leads} <= early.keys()
