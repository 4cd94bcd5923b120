"""Pairing: a code shown on the laptop lets one device in, once, within ten minutes; the device gets a token of its own.

Neither code nor token is kept: only their SHA-256. A code is forty bits; five wrong ones close every code that is
open, so that guessing finds nothing. A token is 256 bits. A used code and one that has run out are told apart from a
mistyped one, for whoever knows them had them from the laptop.
"""

from __future__ import annotations

import hashlib
import secrets
from collections.abc import Mapping
from typing import ClassVar

from scantling.engine.errors import EngineError
from scantling.store import PairedDevice, Store

#: No letter or digit that is taken for another.
LETTERS = "ABCDEFGHJKMNPQRSTUVWXYZ23456789"
LETTERS_OF_CODE = 8
CODE_MS = 10 * 60_000
WRONG_CODES = 5
#: "Seen" is written at most this often, or each request would write to the disk.
SEEN_MS = 60 * 60_000


class PairingError(EngineError):
    sentences: ClassVar[Mapping[str, str]] = {
        "wrong-code": "This code is not one that the laptop shows: read it again, or have it show a new one.",
        "used-code": "This code has let a device in already: have the laptop show a new one.",
        "old-code": "This code is older than ten minutes: have the laptop show a new one.",
        "closed-code": "Too many wrong codes were tried, and the laptop closed this one: have it show a new one.",
        "not-paired": "This device is not paired with the laptop: pair it under House, with a code from the laptop.",
        "struck-device": "This device was struck off on the laptop: what it holds stays on it; pair it again to share.",
        "no-such-device": "There is no such device among those that were paired.",
    }


def show_code(store: Store, now_ms: int) -> str:
    """A new code, in two groups as it is shown: "ABCD-EFGH"."""
    code = "".join(secrets.choice(LETTERS) for _ in range(LETTERS_OF_CODE))
    with store.register(writes=True) as register:
        register.add_code(_digest(code), now_ms, now_ms + CODE_MS)
    return f"{code[:4]}-{code[4:]}"


def pair(store: Store, code: str, name: str, now_ms: int) -> tuple[str, PairedDevice]:
    """Let a device in: its token, which is said this once, and how it is listed. Raises PairingError."""
    plain = _plain(code)
    token = secrets.token_urlsafe(32)
    with store.register(writes=True) as register:
        found = register.find_code(_digest(plain))
        key = _why_not(found, now_ms)
        if key is None:
            register.use_code(_digest(plain), now_ms)
            return token, register.add_device(secrets.token_hex(8), name, _digest(token), now_ms)
        if found is None:
            register.count_wrong_code(now_ms)
    raise PairingError(key, field="code")


def knows_code(store: Store, code: str) -> bool:
    """Whether this code was shown here, still good or not."""
    with store.register() as register:
        return register.find_code(_digest(_plain(code))) is not None


def refuse_code(store: Store, now_ms: int) -> None:
    """Count a code that nobody has shown."""
    with store.register(writes=True) as register:
        register.count_wrong_code(now_ms)


def _plain(code: str) -> str:
    return "".join(letter for letter in code.upper() if letter.isalnum())


def _why_not(found: Mapping[str, int | None] | None, now_ms: int) -> str | None:
    if found is None:
        return "wrong-code"
    if found["used_ms"] is not None:
        return "used-code"
    # A clock that was set back must not make a code last.
    if not (found["made_ms"] or 0) - CODE_MS <= now_ms < (found["ends_ms"] or 0):
        return "old-code"
    return "closed-code" if (found["wrong"] or 0) >= WRONG_CODES else None


def recognize(store: Store, token: str, now_ms: int) -> PairedDevice:
    """The device whose token this is. Raises PairingError."""
    with store.register() as register:
        device = register.find_device(_digest(token))
    if device is None:
        raise PairingError("not-paired")
    if device.struck_ms is not None:
        raise PairingError("struck-device")
    if abs(now_ms - device.seen_ms) > SEEN_MS:
        with store.register(writes=True) as register:
            register.see_device(device.id, now_ms)
    return device


def strike_device(store: Store, device_id: str, now_ms: int) -> None:
    """From now on the token of this device opens nothing. Raises PairingError."""
    with store.register(writes=True) as register:
        if not register.strike_device(device_id, now_ms):
            raise PairingError("no-such-device")


def _digest(secret: str) -> str:
    return hashlib.sha256(secret.encode()).hexdigest()
