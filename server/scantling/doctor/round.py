"""The round: everything in turn, what it is asked about given from outside, so that a test can have any machine."""

from __future__ import annotations

import datetime as dt
import sys
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from scantling.clock import now_ms
from scantling.doctor.attachments import Kept, look_at_attachments
from scantling.doctor.certificates import look_at_authority, look_at_own
from scantling.doctor.clocks import look_at_clock
from scantling.doctor.finding import Finding, good, refused
from scantling.doctor.firewall import UFW, Run, look_at_firewall, run_command
from scantling.doctor.keeping import look_at_database, look_at_disk, look_at_folder, look_at_notebook
from scantling.doctor.network import Resolve, is_free, look_at_name, look_at_network_port, look_at_port
from scantling.lan.addresses import Address, private_addresses
from scantling.lan.announce import find_addresses
from scantling.lan.identity import EVERYWHERE, read_identity
from scantling.lan.refusals import LanError
from scantling.store import Database
from scantling.upkeep import is_held


@dataclass(frozen=True, slots=True)
class Asked:
    """What to look at, and the machine as it is: clock, commands, network; `blobs` where attachments are kept."""

    folder: Path
    port: int
    database: Database | None = None
    blobs: Kept | None = None
    certificate: Path | None = None
    key: Path | None = None
    names: Sequence[str] = ()
    clock: Callable[[], int] = now_ms
    run: Run = run_command
    resolve: Resolve = find_addresses
    addresses: Callable[[], list[Address]] = field(default=private_addresses)
    ufw: Path = UFW
    platform: str = sys.platform


def look_at_all(asked: Asked) -> Iterator[Finding]:
    """Every finding, as it comes. Raises nothing that it could say."""
    folder = asked.folder
    served = is_held(folder)
    yield from look_at_folder(folder, served)
    yield from look_at_disk(folder)
    notebook, texts = None, list[str]()
    if asked.database:
        told, texts = look_at_database(asked.database)
    else:
        told, notebook = look_at_notebook(folder)
        texts = list(notebook.sound.values()) if notebook else []
    yield from told
    if asked.blobs:
        yield from look_at_attachments(asked.blobs, texts, folder if asked.database else None)
    yield from look_at_clock(folder, notebook, asked.clock(), asked.run)
    yield look_at_port(asked.port, served or asked.database is not None)
    if asked.certificate:
        yield from look_at_own(asked.certificate, asked.key, asked.names, _date_of(asked.clock()))
    else:
        yield from _look_at_lan(asked, served)


def _look_at_lan(asked: Asked, served: bool) -> Iterator[Finding]:
    try:
        identity = read_identity(asked.folder)
    except LanError as error:
        yield refused("name", error)
        return
    if identity is None:
        yield good("name", "lan-none")
        return
    addresses = asked.addresses()
    ports = (identity.port, identity.trust_port)
    on_network = served and not is_free(EVERYWHERE, identity.port)
    yield from look_at_name(identity, addresses, on_network, asked.resolve)
    for port in ports:
        yield look_at_network_port(port, served)
    yield from look_at_authority(asked.folder, identity, addresses, _date_of(asked.clock()), on_network)
    yield from look_at_firewall(ports, asked.run, asked.ufw, asked.platform)


def _date_of(ms: int) -> dt.datetime:
    """A clock beyond any calendar is the clock's own finding."""
    try:
        return dt.datetime.fromtimestamp(ms // 1000, dt.UTC)
    except (OverflowError, OSError, ValueError):
        return dt.datetime.max.replace(tzinfo=dt.UTC)
