"""Lists as files: tables of comma-separated values as RFC 4180 has them, every cell safe to open in a spreadsheet, and
JSON (RFC 8259) that a person can read too.
"""

import json
from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from typing import Any

from scantling.engine.errors import plain
from scantling.engine.shown.shown_in import to_millimeters
from scantling.engine.tape.lengths import HUNDREDTH

#: What `list_files` writes, by name: here, for to name them must load none of what derives them.
LISTS = ("boards", "strips", "shopping", "labels")
#: A spreadsheet takes a cell that starts with one of these for a formula and runs it; some take the wide forms of them
#: too, and look past spaces before it.
FORMULA_STARTS = ("=", "+", "-", "@", "＝", "＋", "－", "＠")
#: What the columns that a spreadsheet may count with are in.
INCHES, IN_MILLIMETERS = "inches", "millimeters"


def format_csv(heads: Sequence[str], rows: Iterable[Sequence[object]], metric: bool = False) -> str:
    """A table with its header; the columns in inches are in millimeters where lengths are shown so."""
    named = [head.replace(INCHES, IN_MILLIMETERS) if metric else head for head in heads]
    return "".join(",".join(_quote(_safe(cell)) for cell in row) + "\r\n" for row in (named, *rows))


def format_json(rooms: Sequence[Mapping[str, Any]]) -> str:
    return json.dumps(rooms, indent=1, sort_keys=True, allow_nan=False) + "\n"


def join_csv(tables: Iterable[str]) -> str:
    """The tables of rooms as one: a header is said again, after an empty line, only where it is another."""
    text, last = "", ""
    for table in tables:
        head, _, rows = table.partition("\r\n")
        text += rows if head == last else ("\r\n" if text else "") + table
        last = head
    return text


def join_json(lists: Iterable[str]) -> str:
    return format_json([room for text in lists for room in json.loads(text)])


def count_in(length: Mapping[str, Any], metric: bool) -> object:
    """A length to count with: inches, or millimeters to a hundredth."""
    if not metric:
        return length["inches"]
    return float(to_millimeters(Fraction(length["exact"] or str(length["inches"])), HUNDREDTH))


def _safe(cell: object) -> str:
    if not isinstance(cell, str):
        return "" if cell is None else str(cell)
    shown = plain(cell)
    return f"'{shown}" if shown.lstrip().startswith(FORMULA_STARTS) else shown


def _quote(cell: str) -> str:
    doubled = cell.replace('"', '""')
    return f'"{doubled}"' if any(mark in cell for mark in ',"\r\n') else cell
