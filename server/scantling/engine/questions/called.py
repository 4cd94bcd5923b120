"""What stock and nails are called where lengths are shown: base 9/16 × 5 1/2 is base 14.5 × 139.5 mm.

Boards, plans and receipts are found by the name in inches, whatever lengths are shown in; this is that name as it is
read. A name of a person's own, such as 1x6, comes through as it is: only those that the engine makes are known here.
"""

import re

from scantling.engine.shown.shown_in import is_metric
from scantling.engine.tape.lengths import format_bare, format_length, parse_length

MADE = (
    "base", "cap", "shoe", "chair rail", "picture rail", "crown", "casing", "casing head", "flat", "plinth", "backband",
    "stool", "apron", "jamb stock", "corner block", "fillet", "head cap", "batten",
)  # fmt: skip
_SIZE = r"(?:\d+ )?\d+(?:/\d+)?"
_STOCK = re.compile(rf"({'|'.join(MADE)}) ({_SIZE})(?: × ({_SIZE}))?( × [\d.]+°)?")
_NAILS = re.compile(rf'nails ({_SIZE})"')


def call_stock(name: str) -> str:
    """A name as it is read; a size that was typed in whole or half millimeters comes out as it was.

    >>> from scantling.engine.shown.shown_in import MILLIMETERS, showing
    >>> with showing(MILLIMETERS): call_stock("base 9/16 × 5 33/64"), call_stock("crown 3 5/8 × 38°"), call_stock("1x6")
    ('base 14.5 × 140 mm', 'crown 92 mm × 38°', '1x6')
    """
    if not is_metric():
        return name
    if nails := _NAILS.fullmatch(name):
        return f"nails {format_length(parse_length(nails[1]))}"
    if not (made := _STOCK.fullmatch(name)):
        return name
    sizes = " × ".join(format_bare(parse_length(size)) for size in made.group(2, 3) if size)
    return f"{made[1]} {sizes} mm{made[4] or ''}"
