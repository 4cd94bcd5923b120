"""How the notebook is reached: the laptop's own port, and on the network of the house its name, addresses and ports."""

from __future__ import annotations

import socket
import urllib.request
from collections.abc import Callable, Iterator, Sequence

from scantling.doctor.finding import Finding, good, wrong
from scantling.lan.addresses import Address
from scantling.lan.identity import EVERYWHERE, ONLY_HERE, Identity

ANSWER_SECONDS = 2
ANSWER_BYTES = 4096

#: Gives the addresses that the network has for a name, none where nobody answers.
Resolve = Callable[[Identity], Sequence[str]]


def look_at_port(port: int, served: bool) -> Finding:
    """The port of the laptop's own page."""
    if is_free(ONLY_HERE, port):
        return good("port", "port-free", port=port)
    if not is_ours(port):
        return wrong("port", "port-taken", port=port, option="--port")
    return good("port", "port-ours", port=port) if served else wrong("port", "port-other", port=port, option="--port")


def look_at_network_port(port: int, served: bool) -> Finding:
    if is_free(EVERYWHERE, port):
        return good("port", "port-free", port=port)
    return (
        good("port", "port-ours", port=port) if served else wrong("port", "port-taken", port=port, option="--lan-port")
    )


def look_at_name(
    identity: Identity, addresses: Sequence[Address], on_network: bool, resolve: Resolve
) -> Iterator[Finding]:
    """`on_network`: whether it is served there now."""
    own = [str(one) for one in addresses]
    if own:
        yield good("name", "addresses-good", addresses=", ".join(own))
    else:
        yield wrong("name", "addresses-none")
    if not on_network:
        yield good("name", "name-kept", origin=identity.origin)
        return
    found = resolve(identity)
    strange = sorted(set(found) - set(own))
    if strange:
        yield wrong("name", "name-taken", name=identity.name, addresses=", ".join(strange))
    elif found:
        yield good("name", "name-good", origin=identity.origin)
    else:
        yield wrong("name", "name-silent", name=identity.name)


def is_free(host: str, port: int) -> bool:
    try:
        socket.create_server((host, port)).close()
    except OSError:
        return False
    return True


def is_ours(port: int) -> bool:
    """Whether a Scantling answers there."""
    address = f"http://{ONLY_HERE}:{port}/manifest.webmanifest"
    direct = urllib.request.build_opener(urllib.request.ProxyHandler({}))
    try:
        with direct.open(address, timeout=ANSWER_SECONDS) as answer:
            return b'"Scantling"' in answer.read(ANSWER_BYTES)
    except (OSError, ValueError):
        return False
