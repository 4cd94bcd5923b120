"""The register of who may enter: devices that were paired, and codes that let one in. Digests alone, never a secret.

It stands beside the journal and is no part of it: a token travels with no sync, and no export carries it.
"""

from collections.abc import Mapping
from dataclasses import dataclass

import sqlalchemy as sa

from scantling.store.catalog import code_table, device_table


@dataclass(frozen=True, slots=True)
class PairedDevice:
    """Times in ms since 1970; `struck_ms` is None while the device may enter."""

    id: str
    name: str
    paired_ms: int
    seen_ms: int
    struck_ms: int | None


class Register:
    """The register within one transaction."""

    def __init__(self, connection: sa.Connection) -> None:
        self._connection = connection

    def add_code(self, digest: str, made_ms: int, ends_ms: int) -> None:
        values = {"digest": digest, "made_ms": made_ms, "ends_ms": ends_ms, "wrong": 0}
        self._connection.execute(sa.insert(code_table).values(values))

    def find_code(self, digest: str) -> Mapping[str, int | None] | None:
        found = self._connection.execute(sa.select(code_table).where(code_table.c.digest == digest)).mappings().first()
        return {name: found[name] for name in ("made_ms", "ends_ms", "used_ms", "wrong")} if found else None

    def use_code(self, digest: str, now_ms: int) -> None:
        self._connection.execute(sa.update(code_table).where(code_table.c.digest == digest).values(used_ms=now_ms))

    def count_wrong_code(self, now_ms: int) -> None:
        """A wrong code counts against every one that is open: whoever guesses does not say at which."""
        still = sa.and_(code_table.c.used_ms.is_(None), code_table.c.ends_ms > now_ms)
        self._connection.execute(sa.update(code_table).where(still).values(wrong=code_table.c.wrong + 1))

    def add_device(self, device_id: str, name: str, digest: str, now_ms: int) -> PairedDevice:
        device = PairedDevice(device_id, name, now_ms, now_ms, None)
        values = {"id": device_id, "name": name, "digest": digest, "paired_ms": now_ms, "seen_ms": now_ms}
        self._connection.execute(sa.insert(device_table).values(values))
        return device

    def find_device(self, digest: str) -> PairedDevice | None:
        found = self._connection.execute(_listed().where(device_table.c.digest == digest)).first()
        return _device(found) if found else None

    def devices(self) -> list[PairedDevice]:
        """Every device that was ever paired, the first one first."""
        return [_device(row) for row in self._connection.execute(_listed().order_by(device_table.c.paired_ms))]

    def see_device(self, device_id: str, now_ms: int) -> None:
        self._connection.execute(
            sa.update(device_table).where(device_table.c.id == device_id).values(seen_ms=now_ms)
        )

    def strike_device(self, device_id: str, now_ms: int) -> bool:
        """False when there is none of this id; one that is struck already stays struck since then."""
        wanted = device_table.c.id == device_id
        if self._connection.execute(sa.select(device_table.c.id).where(wanted)).first() is None:
            return False
        still = sa.and_(wanted, device_table.c.struck_ms.is_(None))
        self._connection.execute(sa.update(device_table).where(still).values(struck_ms=now_ms))
        return True


def _device(row: sa.Row[tuple[str, str, int, int, int | None]]) -> PairedDevice:
    return PairedDevice(row.id, row.name, row.paired_ms, row.seen_ms, row.struck_ms)


def _listed() -> sa.Select[tuple[str, str, int, int, int | None]]:
    c = device_table.c
    return sa.select(c.id, c.name, c.paired_ms, c.seen_ms, c.struck_ms)
