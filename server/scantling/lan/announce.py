"""The name on the network, by multicast DNS (RFC 6762), with the service that stands behind it (RFC 6763).

It does not defend the name: zeroconf takes one that another machine has. The random letters in it do that.
"""

from __future__ import annotations

from collections.abc import Sequence

from zeroconf import EventLoopBlocked, InterfaceChoice, ServiceInfo, Zeroconf

from scantling.lan.addresses import Address
from scantling.lan.identity import Identity

SERVICE = "_https._tcp.local."
ANSWER_MS = 3000


def find_addresses(identity: Identity, only: str | None = None) -> list[str]:
    """What the network answers to a name; nothing where nobody does, or where multicast cannot be had."""
    try:
        asking = Zeroconf(interfaces=[only] if only else InterfaceChoice.All)
    except OSError:
        return []
    try:
        found = asking.get_service_info(SERVICE, _service_name(identity), timeout=ANSWER_MS)
    except EventLoopBlocked:
        return []
    finally:
        asking.close()
    return found.parsed_addresses() if found and found.server == f"{identity.name}." else []


def _service_name(identity: Identity) -> str:
    return f"{identity.name.removesuffix('.local')}.{SERVICE}"


class Announcement:
    """A name announced until `close()`; `move()` when the machine has other addresses."""

    def __init__(self, identity: Identity, addresses: Sequence[Address], only: str | None = None) -> None:
        """`only`: speak on the network of this address alone.

        Raises OSError where multicast cannot be had, TimeoutError (an OSError) where this machine is too busy for it.
        """
        self._identity = identity
        self._zeroconf = Zeroconf(interfaces=[only] if only else InterfaceChoice.All)
        self._service = self._describe(addresses)
        try:
            self._zeroconf.register_service(self._service, allow_name_change=False)
        except EventLoopBlocked as error:
            self._zeroconf.close()
            raise TimeoutError("the machine was too busy to announce it") from error

    def move(self, addresses: Sequence[Address]) -> None:
        self._service = self._describe(addresses)
        self._zeroconf.update_service(self._service)

    def close(self) -> None:
        self._zeroconf.close()

    def _describe(self, addresses: Sequence[Address]) -> ServiceInfo:
        return ServiceInfo(
            SERVICE,
            _service_name(self._identity),
            port=self._identity.port,
            server=f"{self._identity.name}.",
            addresses=[address.packed for address in addresses],
        )
