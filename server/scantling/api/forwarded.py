"""What a proxy says of who asked: `Forwarded` (RFC 7239) or X-Forwarded-For, -Proto, -Host, from a named proxy alone.

Anybody can write these headers, so they count only where the connection comes from an address that the owner named, and
of a list only the last element, which that proxy itself has added. Both kinds on one request are refused: a proxy that
writes one of them mostly passes the other on as a stranger wrote it.
"""

from __future__ import annotations

import ipaddress
import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import Any

from werkzeug.middleware.proxy_fix import ProxyFix

from scantling.api.refusals import DoorError
from scantling.engine.errors import quote

Network = ipaddress.IPv4Network | ipaddress.IPv6Network
Address = ipaddress.IPv4Address | ipaddress.IPv6Address

#: What this middleware leaves for the visitor: whether the named proxy asks, and why it cannot be understood.
BY_PROXY, REFUSAL = "scantling.by_proxy", "scantling.refusal"

#: RFC 7239, section 4: pairs parted by semicolons, elements by commas; a value is a token or a quoted string.
_TOKEN = r"[!#$%&'*+.^_`|~0-9A-Za-z-]+"
_PAIR = re.compile(rf'({_TOKEN})=({_TOKEN}|"(?:[^"\\]|\\.)*")[ \t]*(?=[,;]|\Z)')
_PROTO = re.compile(r"https?\Z", re.IGNORECASE)
_HOST = re.compile(r"(\[[0-9A-Fa-f:.]+\]|[0-9A-Za-z._-]+)(:\d{1,5})?\Z")


def parse_address(text: str | None) -> Address | None:
    """An address as itself, also where IPv6 carries one of IPv4; None for what is no address."""
    try:
        found = ipaddress.ip_address(text or "")
    except ValueError:
        return None
    return getattr(found, "ipv4_mapped", None) or found


def parse_forwarded(text: str) -> dict[str, str]:
    """The last element of a Forwarded header by its names in small letters. Raises DoorError for what is none.

    >>> parse_forwarded('for=192.0.2.60, for="[2001:db8::1]:80";proto=https;host=shed.example')
    {'for': '[2001:db8::1]:80', 'proto': 'https', 'host': 'shed.example'}
    """
    element: dict[str, str] = {}
    at, closed = 0, False
    while at < len(text):
        if text[at] in ",; \t":  # empty pairs and elements are allowed, and mean nothing (RFC 9110, section 5.6.1.2)
            closed = closed or text[at] == ","
            at += 1
            continue
        pair = _PAIR.match(text, at)
        if closed:
            element, closed = {}, False
        if not pair or pair.group(1).lower() in element:
            raise DoorError("wrong-forwarded", what=quote(text))
        element[pair.group(1).lower()] = _unquoted(pair.group(2))
        at = pair.end()
    return element


def _unquoted(value: str) -> str:
    return re.sub(r"\\(.)", r"\1", value[1:-1]) if value.startswith('"') else value


def address_of(node: str) -> str | None:
    """The address of a node (RFC 7239, section 6) without its port; None for one that is unknown or hidden.

    >>> address_of("[2001:db8:cafe::17]:4711"), address_of("192.0.2.43:47011"), address_of("_hidden")
    ('2001:db8:cafe::17', '192.0.2.43', None)
    """
    bare = re.sub(r"\A\[(.*)\](:\S*)?\Z", r"\1", node) if node.startswith("[") else node.partition(":")[0]
    return bare if parse_address(bare) else None


class ForwardedFix:
    """A WSGI app that sees who asked the proxy, where the proxy is one of those named."""

    def __init__(self, app: Callable[..., Iterable[bytes]], proxies: Sequence[Network]) -> None:
        self._direct = app
        self._proxied = ProxyFix(app, x_for=1, x_proto=1, x_host=1)
        self._proxies = proxies

    def __call__(self, environ: dict[str, Any], start_response: Any) -> Iterable[bytes]:
        peer = parse_address(environ.get("REMOTE_ADDR"))
        environ[BY_PROXY] = peer is not None and any(peer in network for network in self._proxies)
        if not environ[BY_PROXY]:
            return self._direct(environ, start_response)
        try:
            environ.update(_said(environ))
        except DoorError as error:
            environ[REFUSAL] = error
            return self._direct(environ, start_response)
        return self._proxied(environ, start_response)


def _said(environ: Mapping[str, Any]) -> dict[str, str]:
    """What the proxy says, in the headers that ProxyFix reads. Raises DoorError where that is not one plain thing."""
    names = {"for": "HTTP_X_FORWARDED_FOR", "proto": "HTTP_X_FORWARDED_PROTO", "host": "HTTP_X_FORWARDED_HOST"}
    others = {part: environ[name].rpartition(",")[2].strip() for part, name in names.items() if environ.get(name)}
    standard = environ.get("HTTP_FORWARDED")
    if standard and others:
        raise DoorError("two-forwardings")
    said = parse_forwarded(standard) if standard else others
    for part, pattern in (("proto", _PROTO), ("host", _HOST)):
        if part in said and not pattern.match(said[part]):
            raise DoorError("wrong-forwarded", what=quote(said[part]))
    node = address_of(said["for"]) if "for" in said else None
    told = {**said, "for": node or environ["REMOTE_ADDR"]}
    return {name: told[part] for part, name in names.items() if part in told}
