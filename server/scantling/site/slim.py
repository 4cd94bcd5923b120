"""The page's code as it goes over the wire: without comments and indentation, which a browser has no use for.

Knows: which bytes of a module or of a style only a person reads. Of a module a grammar says so, for `//` may stand in a
template, a string or a pattern; in a style nothing looks like one but what stands in a string or an address.
Keeps: every name, every template byte for byte, every line on its line, so that a stack trace names the line in web/;
and a comment that holds a licence. A module that the grammar cannot read goes out as it is written.
"""

import re
from collections.abc import Iterable, Iterator

import tree_sitter_javascript
from tree_sitter import Language, Parser, Query, QueryCursor

JAVASCRIPT = Language(tree_sitter_javascript.language())
#: What is said is kept to the byte; what stands in a template's `${}` is code like any other.
PARTS = Query(
    JAVASCRIPT,
    "(comment) @comment [(string) (regex)] @said (template_string [(string_fragment) (escape_sequence)] @said)",
)
#: A comment that touches what is before it is kept: `.a/**/.b` is one thing, and `.a .b` one within another.
STYLE = re.compile(
    rb"""(?P<comment>(?<!\S)/\*.*?\*/)|/\*.*?\*/|"(?:\\.|[^"\\])*"|'(?:\\.|[^'\\])*'|url\([^)]*\)""", re.DOTALL
)
LICENCE = re.compile(rb"/\*!|@licen[cs]e|@preserve|copyright", re.IGNORECASE)
#: Stands for what is kept while the spaces around it go; a file that holds it goes out as it is.
MARK = b"\0"
SPACES = re.compile(rb"[ \t\r]*\n[ \t]*|[ \t]+")

#: Where something begins and ends, and whether it is a comment.
Span = tuple[int, int, bool]


def slim(name: str, body: bytes) -> bytes:
    """A file of the page as it is served, by what its name says that it is."""
    if MARK in body:
        return body
    if name.endswith(".js"):
        return slim_module(body)
    return _without_comments(body, _spans_of_style(body)) if name.endswith(".css") else body


def slim_module(body: bytes) -> bytes:
    """The module that runs as this one does, line for line; the same bytes where the grammar finds it broken."""
    root = Parser(JAVASCRIPT).parse(body).root_node
    if root.has_error:
        return body
    found = QueryCursor(PARTS).captures(root)
    spans = ((node.start_byte, node.end_byte, what == "comment") for what, nodes in found.items() for node in nodes)
    return _without_comments(body, sorted(spans))


def _spans_of_style(body: bytes) -> Iterator[Span]:
    for found in STYLE.finditer(body):
        yield *found.span(), found["comment"] is not None


def _without_comments(body: bytes, spans: Iterable[Span]) -> bytes:
    """`spans` in their order, none within another. A comment leaves its line breaks, for a statement may end at one."""
    code, kept, last = [], [], 0
    for start, end, is_comment in spans:
        part = body[start:end]
        code.append(body[last:start])
        if is_comment and not LICENCE.search(part):
            code.append(b"\n" * part.count(b"\n") or b" ")
        else:
            kept.append(part)
            code.append(MARK)
        last = end
    code.append(body[last:])
    thin = SPACES.sub(lambda spaces: b"\n" if b"\n" in spaces[0] else b" ", b"".join(code))
    first, *others = thin.split(MARK)
    return first + b"".join(part + after for part, after in zip(kept, others, strict=True))
