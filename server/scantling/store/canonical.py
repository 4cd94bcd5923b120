"""The one spelling of an entry, and its digest: two entries are the same when their texts are.

`web/journal/digest.js` writes the same spelling on the phone; a test holds the two equal.
"""

import hashlib
import json
import math
from collections.abc import Iterable, Mapping
from typing import Any

from scantling.store.refusals import StoreError

SAFE_INTEGER = 2**53 - 1
DIGEST_DIGITS = 32
NOTHING = "0" * DIGEST_DIGITS

NUMBERING = ("device", "seq")

EntryData = dict[str, Any]


def canonical_text(entry: Mapping[str, Any]) -> str:
    """The one spelling of an entry, so that "same id, same bytes" is a comparison of two texts.

    A phone writes 1936.0 as 1936 and rounds beyond 2**53: the first is made equal here, the second refused, or an entry
    that went to a phone and back would no longer be the same.
    """
    try:
        text = json.dumps(_plain(entry), sort_keys=True, separators=(",", ":"), ensure_ascii=False, allow_nan=False)
        text.encode()
    except (TypeError, ValueError) as error:
        raise StoreError("not-carriable") from error
    return text


def _plain(value: Any) -> Any:
    """The same JSON with every whole number as an integer. Depth is bounded at the door, where JSON is read."""
    if isinstance(value, str):
        return value
    if isinstance(value, Mapping):
        return {key: _plain(inner) for key, inner in value.items()}
    if isinstance(value, list):
        return [_plain(inner) for inner in value]
    if isinstance(value, float) and math.isfinite(value) and value.is_integer():
        value = int(value)
    if isinstance(value, int) and abs(value) > SAFE_INTEGER:
        raise ValueError(value)
    return value


def says_the_same(text: str, other: str) -> bool:
    """Whether two spellings of an entry differ in nothing but the number that its device gave it, and under what name.

    Older devices numbered an entry anew to have it accepted: it is one entry still.
    """
    return text == other or _unnumbered(text) == _unnumbered(other)


def _unnumbered(text: str) -> str:
    return canonical_text({name: value for name, value in json.loads(text).items() if name not in NUMBERING})


def digest_of(text: str) -> str:
    """What stands for an entry where two journals are compared: 128 bits of its text's SHA-256, as hex digits."""
    return hashlib.sha256(text.encode()).hexdigest()[:DIGEST_DIGITS]


def sum_of(digests: Iterable[str]) -> str:
    """What stands for a set of entries: their digests, one laid over the other bit by bit, in whatever order."""
    total = 0
    for digest in digests:
        total ^= int(digest, 16)
    return f"{total:0{DIGEST_DIGITS}x}"
