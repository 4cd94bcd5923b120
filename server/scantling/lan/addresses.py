"""This machine's addresses on private networks: what a phone in the same house can reach.

Private are 10/8, 172.16/12, 192.168/16 (RFC 1918), 169.254/16 (RFC 3927) and fc00::/7 (RFC 4193). Link-local IPv6 is
left out: its addresses need a zone, which no certificate and no link can carry.
"""

from __future__ import annotations

from ipaddress import IPv4Address, IPv4Network, IPv6Address, IPv6Network, ip_address, ip_network

import ifaddr

Address = IPv4Address | IPv6Address

LOOPBACK = (ip_network("127.0.0.0/8"), ip_network("::1/128"))
PRIVATE: tuple[IPv4Network | IPv6Network, ...] = (
    ip_network("10.0.0.0/8"),
    ip_network("172.16.0.0/12"),
    ip_network("192.168.0.0/16"),
    ip_network("169.254.0.0/16"),
    ip_network("fc00::/7"),
)


def is_private(address: Address) -> bool:
    """Whether an address is one of a private network, or of this machine itself."""
    return any(address.version == net.version and address in net for net in (*PRIVATE, *LOOPBACK))


def private_addresses() -> list[Address]:
    """The addresses of this machine on private networks, in a fixed order; loopback is not among them."""
    found = {
        ip_address(each.ip if isinstance(each.ip, str) else each.ip[0])
        for adapter in ifaddr.get_adapters()
        for each in adapter.ips
    }
    kept = [one for one in found if is_private(one) and not one.is_loopback]
    return sorted(kept, key=lambda one: (one.version, one.is_link_local, int(one)))
