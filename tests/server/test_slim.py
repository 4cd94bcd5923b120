"""What goes over the wire says the same as what is written: held against the trees of a grammar, leaf by leaf."""

import re

import pytest
import tree_sitter_javascript
from scantling.site import Site, read_web, web_folder
from scantling.site.slim import slim, slim_module
from tree_sitter import Language, Parser

JS = Language(tree_sitter_javascript.language())
WRITTEN = {name: body for name, body in read_web(web_folder()).items() if not name.startswith("vendor/pyodide/")}
MODULES = [name for name in WRITTEN if name.endswith(".js")]


def leaves(body):
    """Every leaf but comments: what it is, under what, its bytes, and its line."""
    waiting, found = [Parser(JS).parse(body).root_node], []
    while waiting:
        node = waiting.pop()
        if node.type != "comment":
            waiting += node.children
            found.append((node.type, None if node.children else (node.start_point.row, node.text)))
    return found


@pytest.mark.parametrize("name", MODULES)
def test_a_module_is_served_as_the_tree_that_is_written_with_every_word_on_its_line(name):
    assert leaves(slim_module(WRITTEN[name])) == leaves(WRITTEN[name])


def test_the_page_serves_its_code_so_and_everything_else_as_it_is(page: Site):
    folder = f"/v/{page.build}/"
    served = {path.removeprefix(folder): file.body for path, file in page.files.items() if path.startswith(folder)}
    assert {name: slim(name, body) for name, body in WRITTEN.items() if name in served} == {
        name: body for name, body in served.items() if name != "engine.zip"
    }
    changed = {name.rpartition(".")[2] for name, body in served.items() if WRITTEN.get(name, body) != body}
    assert changed == {"js", "css"}
    assert not re.search(rb"^ *//", served["app.js"], re.MULTILINE)


@pytest.mark.parametrize(
    ("written", "served"),
    [
        pytest.param(b"a = 1; // one\nb", b"a = 1;\nb", id="a comment"),
        pytest.param(b"/** @type {x} */ (a)", b" (a)", id="a type"),
        pytest.param(b"return /* one\ntwo */ a", b"return\na", id="a statement that ended within a comment still does"),
        pytest.param(b"'a // b  c'\n  + /a  \\/* b/", b"'a // b  c'\n+ /a  \\/* b/", id="what only looks like one"),
        pytest.param(b"html`<p>\n  // a ${ b /* c */ }  ${`\n  d`}</p>`", b"html`<p>\n  // a ${ b }  ${`\n  d`}</p>`",
                     id="a template within a template"),
        pytest.param(b"a = `x\\\n   y`", b"a = `x\\\n   y`", id="a line that goes on"),
        pytest.param(b"/*! of another */\n  a", b"/*! of another */\na", id="whose it is"),
        pytest.param(b"// Copyright of another\n  a", b"// Copyright of another\na", id="whose it is, in a line"),
        pytest.param(b"  a = (; // broken", b"  a = (; // broken", id="what the grammar cannot read"),
        pytest.param(b"  '\0' // a", b"  '\0' // a", id="what holds the mark that stands for what is kept"),
    ],
)
def test_of_a_module_only_comments_and_spaces_go(written, served):
    assert slim("a.js", written) == served


@pytest.mark.parametrize(
    ("written", "served"),
    [
        pytest.param(b".a {\n  b: c; /* d\n  e */\n}", b".a {\nb: c;\n\n}", id="a comment"),
        pytest.param(b".a/* of it */.b /* c */ .d {}", b".a/* of it */.b .d {}", id="one between two that are one"),
        pytest.param(b"a { content: '/*  '; b: url(c/*  d) }", b"a { content: '/*  '; b: url(c/*  d) }", id="a text"),
    ],
)
def test_of_a_style_only_comments_and_spaces_go(written, served):
    assert slim("a.css", written) == served
