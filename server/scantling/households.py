"""Households: who asks belongs to one of them, and is answered from its journal alone.

A notebook in a folder is one household without a name. In a database there may be several, each with a journal and a
register of its own; a token begins with the name of the household that its device was let into.
"""

from __future__ import annotations

from pathlib import Path
from threading import Lock

from scantling.blobs import Blobs
from scantling.lan.pairing import PairingError, knows_code, pair, recognize, refuse_code
from scantling.laptop import Laptop
from scantling.store import Database, PairedDevice, open_store
from scantling.store.postgresql import list_households

NAMELESS = ""


def blobs_beside(folder: Path | None, household: str = NAMELESS) -> Blobs | None:
    """Where a household's attachments lie: in a folder of their own, for nobody else's token opens them."""
    return Blobs(folder / (f"blobs-{household}" if household else "blobs")) if folder else None


class Households:
    """The laptops of all households at one place; `own` is the one whose owner sits at this machine.

    Raises StoreError when that one cannot be opened.
    """

    def __init__(self, place: Path | Database, beside: Path | None = None) -> None:
        """`beside`: the folder that attachments lie in, where that is not the journal's own."""
        self._place = place
        self._beside = place if isinstance(place, Path) else beside
        self._lock = Lock()
        self._name = place.household if isinstance(place, Database) else NAMELESS
        self.own = self._open(place, self._name)
        self._laptops = {self._name: self.own}

    def recognize(self, token: str, now_ms: int) -> tuple[Laptop, PairedDevice]:
        """The device whose token this is, and its household's laptop. Raises PairingError."""
        name, _, secret = token.rpartition(".")
        laptop = self._laptop_of(name)
        if laptop is None:
            raise PairingError("not-paired")
        return laptop, recognize(laptop.store, secret, now_ms)

    def pair(self, code: str, device_name: str, now_ms: int) -> tuple[str, PairedDevice]:
        """Let a device into the household that shows this code: the token, and the device. Raises PairingError."""
        there = [(name, laptop) for name in self._names() if (laptop := self._laptop_of(name))]
        for name, laptop in there:
            if knows_code(laptop.store, code):
                token, device = pair(laptop.store, code, device_name, now_ms)
                return (f"{name}.{token}" if name else token), device
        for _, laptop in there:  # whoever guesses does not say at whose
            refuse_code(laptop.store, now_ms)
        raise PairingError("wrong-code", field="code")

    def close(self) -> None:
        for laptop in self._laptops.values():
            laptop.store.close()

    def _open(self, place: Path | Database, name: str) -> Laptop:
        return Laptop(open_store(place), blobs=blobs_beside(self._beside, name))

    def _names(self) -> list[str]:
        return list_households(self._place) if isinstance(self._place, Database) else [NAMELESS]

    def _laptop_of(self, name: str) -> Laptop | None:
        """Opened when first asked for; None where there is no such household, and none is begun by asking."""
        with self._lock:
            if name not in self._laptops and isinstance(self._place, Database) and name in self._names():
                self._laptops[name] = self._open(Database(self._place.url, name), name)
            return self._laptops.get(name)
