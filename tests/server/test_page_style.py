"""How the page's code is written, as far as a grammar can tell."""

from collections.abc import Iterator
from pathlib import Path

import pytest
import tree_sitter_javascript
from tree_sitter import Language, Node, Parser

WEB = Path(__file__).resolve().parents[2] / "web"
PARSER = Parser(Language(tree_sitter_javascript.language()))
FILES = sorted(path for path in WEB.rglob("*.js") if "vendor" not in path.relative_to(WEB).parts)
#: What is written by itself, whatever it stands in: a part of a template, a function that is handed over.
APART = {"template_substitution", "arrow_function", "function_expression"}


def nested_choices(code: str) -> Iterator[tuple[int, str]]:
    """Each `a ? b : c` that stands in another, with its line."""
    waiting: list[tuple[Node, bool]] = [(PARSER.parse(code.encode()).root_node, False)]
    while waiting:
        node, inside = waiting.pop()
        is_choice = node.type == "ternary_expression"
        if is_choice and inside:
            yield node.start_point[0] + 1, (node.text or b"").decode()
        within = (inside or is_choice) and node.type not in APART
        waiting += [(child, within) for child in node.children]


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.relative_to(WEB).as_posix())
def test_no_choice_of_the_page_stands_in_another(path):
    """Whoever reads one has to hold both in mind; a name for the inner one, or an early return, says which is meant."""
    assert list(nested_choices(path.read_text(encoding="utf-8"))) == []


@pytest.mark.parametrize(
    ("code", "count"),
    [
        ("a ? b : c ? d : e", 1), ("a ? (b ? c : d) : e ? f : g", 2), ("(a ? b : c) ? d : e", 1),
        ("f(a ? b : g(c ? d : e))", 1),
        ("a ? b : c; d ? e : f", 0), ("a ? html`${b ? c : d}` : e", 0), ("a ? (x) => (x ? b : c) : d", 0),
    ],
)  # fmt: skip
def test_the_reader_of_choices_sees_each_that_stands_in_another(code, count):
    assert len(list(nested_choices(code))) == count
