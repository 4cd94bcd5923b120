"""The certificates: this laptop's authority and what it signed, or one of the owner's own."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from pathlib import Path

from scantling.doctor.finding import Finding, good, refused, wrong
from scantling.lan.addresses import Address
from scantling.lan.authority import FOLDER, find_authority
from scantling.lan.identity import Identity
from scantling.lan.leaf import leaf_path, read_leaf, why_renew
from scantling.lan.own import check_own, read_own
from scantling.lan.refusals import LanError


def look_at_authority(
    folder: Path, identity: Identity, addresses: Sequence[Address], now: dt.datetime, on_network: bool
) -> Iterator[Finding]:
    try:
        authority = find_authority(folder)
    except LanError as error:
        yield refused("certificate", error)
        return
    if authority is None:
        return  # made at the next start
    ends = authority.certificate.not_valid_after_utc
    said = {"ends": f"{ends:%Y-%m-%d}", "name": identity.name, "folder": folder / FOLDER}
    if now > ends:
        yield wrong("certificate", "authority-over", **said)
    elif identity.name not in authority.names:
        yield wrong("certificate", "authority-name", **said)
    else:
        yield good("certificate", "authority-good", **said)
    try:
        leaf = read_leaf(leaf_path(folder))
    except LanError as error:
        yield refused("certificate", error)
        return
    why = why_renew(leaf, authority, identity.name, addresses, now)
    if why is None and leaf:
        yield good("certificate", "leaf-good", ends=f"{leaf.not_valid_after_utc:%Y-%m-%d}")
    elif on_network:
        yield wrong("certificate", "leaf-stale", why=why)
    else:
        yield good("certificate", "leaf-next", why=why)


def look_at_own(certificate: Path, key: Path | None, names: Sequence[str], now: dt.datetime) -> Iterator[Finding]:
    found = check_own(certificate, key, names, now)
    yield from (refused("certificate", error) for error in found)
    if not found:
        ends = read_own(certificate).not_valid_after_utc
        yield good("certificate", "own-good", path=certificate, ends=f"{ends:%Y-%m-%d}")
