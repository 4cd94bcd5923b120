"""This laptop on the network of its house, kept up to date while the server runs: name, addresses, certificate.

A laptop wakes in another room with another address; a certificate nears its end. Both are looked after every half
minute, and nobody has to start anything again. What does not work is said in sentences and ends nothing.
"""

from __future__ import annotations

import datetime as dt
import logging
import ssl
import threading
from collections.abc import Callable
from ipaddress import ip_address
from pathlib import Path

from scantling.clock import now_utc
from scantling.lan.addresses import Address, private_addresses
from scantling.lan.announce import Announcement
from scantling.lan.authority import load_authority
from scantling.lan.identity import EVERYWHERE, take_identity
from scantling.lan.leaf import keep_leaf, leaf_path, tls_context
from scantling.lan.refusals import LanError

LOOK_SECONDS = 30

log = logging.getLogger(__name__)


class Home:
    """`host`: the one address to be reached at; None for all private ones that the machine has."""

    def __init__(
        self,
        folder: Path,
        port: int | None = None,
        host: str | None = None,
        move: bool = False,
        clock: Callable[[], dt.datetime] = now_utc,
    ) -> None:
        self._folder = folder
        self._host = host
        self._clock = clock
        self.identity = take_identity(folder, port, move)
        self.addresses = self._find_addresses()
        if not self.addresses:
            raise LanError("no-network")
        self.authority = load_authority(folder, self.identity.name, clock())
        self._keep_leaf()
        self.tls: ssl.SSLContext = tls_context(leaf_path(folder))
        self._announcement: Announcement | None = None
        self._announcing = False
        self._over = threading.Event()

    @property
    def listen_at(self) -> str:
        return self._host or EVERYWHERE

    @property
    def host_names(self) -> frozenset[str]:
        """What a request may call this server."""
        literal = {f"[{one}]" if one.version == 6 else str(one) for one in self.addresses}
        return frozenset({self.identity.name, *literal})

    def announce(self) -> str | None:
        """Put the name on the network and look after everything from then on; a sentence when that cannot be yet."""
        self._announcing = True
        try:
            self._announce()
        except OSError as error:
            return (
                f"The name {self.identity.name} could not be announced ({error}): phones may reach this laptop by its "
                "address only. It is tried again every half minute."
            )
        finally:
            threading.Thread(target=self._look_after, daemon=True).start()
        return None

    def close(self) -> None:
        self._over.set()
        if self._announcement:
            self._announcement.close()

    def look(self) -> bool:
        """Look at addresses, certificate and name again; True when the certificate was renewed.

        Raises OSError when the name still cannot be announced.
        """
        found = self._find_addresses()
        moved = found != self.addresses and bool(found)
        if moved:
            self.addresses = found
        renewed = self._keep_leaf()
        if renewed:
            # The context is the one that the server holds: the next handshake shows the new certificate.
            self.tls.load_cert_chain(leaf_path(self._folder))
        if self._announcing and not self._announcement:
            self._announce()
        elif moved and self._announcement:
            self._announcement.move(found)
        return renewed

    def _announce(self) -> None:
        self._announcement = Announcement(self.identity, self.addresses, self._host)

    def _look_after(self) -> None:
        while not self._over.wait(LOOK_SECONDS):
            try:
                self.look()
            except (LanError, OSError) as error:
                log.warning("the network could not be looked after: %s", error)

    def _find_addresses(self) -> list[Address]:
        return [ip_address(self._host)] if self._host else private_addresses()

    def _keep_leaf(self) -> bool:
        return keep_leaf(self._folder, self.authority, self.identity.name, self.addresses, self._clock())
