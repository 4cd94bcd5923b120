"""A certificate of the owner's own: what phones would have against it, in sentences, before they say it in theirs."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from ipaddress import ip_address
from pathlib import Path

from cryptography import x509

from scantling.lan.leaf import tls_context
from scantling.lan.refusals import LanError

SOON = dt.timedelta(days=14)


def read_own(path: Path) -> x509.Certificate:
    """The first certificate of a file, which is the server's. Raises LanError."""
    try:
        return x509.load_pem_x509_certificates(path.read_bytes())[0]
    except OSError as error:
        raise LanError("own-certificate", path=path, why=error.strerror) from error
    except ValueError as error:
        raise LanError("own-certificate", path=path, why="it is not PEM") from error


def check_own(path: Path, key: Path | None, names: Sequence[str], now: dt.datetime) -> list[LanError]:
    """Everything that is wrong with it; `names` are the names that phones will use."""
    try:
        if key:
            tls_context(path, key)
        certificate = read_own(path)
    except LanError as error:
        return [error]
    begins, ends = certificate.not_valid_before_utc, certificate.not_valid_after_utc
    found = []
    if now < begins:
        found.append(LanError("own-not-yet", path=path, begins=f"{begins:%Y-%m-%d}"))
    elif now > ends:
        found.append(LanError("own-over", path=path, ends=f"{ends:%Y-%m-%d}"))
    elif now > ends - SOON:
        found.append(LanError("own-soon", path=path, ends=f"{ends:%Y-%m-%d}"))
    named = _names_in(certificate)
    for name in names:
        if not any(_matches(name.lower(), one) for one in named):
            found.append(LanError("own-name", path=path, name=name, named=", ".join(named) or "nothing"))
    return found


def _names_in(certificate: x509.Certificate) -> list[str]:
    try:
        said = certificate.extensions.get_extension_for_class(x509.SubjectAlternativeName).value
    except (x509.ExtensionNotFound, ValueError):
        return []
    return [*said.get_values_for_type(x509.DNSName), *map(str, said.get_values_for_type(x509.IPAddress))]


def _matches(name: str, said: str) -> bool:
    """As RFC 9525, section 6.3, has it: a star stands for the whole of the first label."""
    try:
        return str(ip_address(name.strip("[]"))) == said
    except ValueError:
        first, _, rest = name.partition(".")
        return name == said.lower() or (bool(first) and said.lower() == f"*.{rest}")
