"""The day on which something was written down, from the stamp of its entry: for a price, the day it was seen.

By the device's clock, in universal time: late in an American evening it may be the next day.
"""

from collections.abc import Iterator, Sequence

from scantling.engine.journal import Entry

DAY_MS = 24 * 60 * 60 * 1000
MONTHS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)


def date_of(stamp: str) -> str:
    """The date of a stamp, whose first part counts milliseconds since 1970.

    >>> date_of("019cec1e0840-0000-70686f6e65000001")
    '2026-03-14'
    """
    days, year = int(stamp[:12], 16) // DAY_MS, 1970
    while days >= (long := 366 if _is_leap(year) else 365):
        days, year = days - long, year + 1
    month = 0
    while days >= (long := MONTHS[month] + (month == 1 and _is_leap(year))):
        days, month = days - long, month + 1
    return f"{year}-{month + 1:02d}-{days + 1:02d}"


def _is_leap(year: int) -> bool:
    return year % 4 == 0 and (year % 100 != 0 or year % 400 == 0)


def derive_seen(statements: Sequence[Entry]) -> dict[tuple[str, str], str]:
    """Of a list of prices, said anew as a whole each time, the day since which each row stands as it does now.

    By the row's size as written and its price: another price is seen on another day, the same one said again is not.
    """
    seen: dict[tuple[str, str], str] = {}
    for entry in statements:
        day = date_of(entry.stamp)
        seen = {row: seen.get(row, day) for row in _rows(entry.body["value"])}
    return seen


def _rows(value: object) -> Iterator[tuple[str, str]]:
    for row in value if isinstance(value, list) else ():
        size = row.get("length") or row.get("size") or ""
        yield str(size).strip(), str(row.get("price") or "").strip()
