"""The one origin that phones know this notebook by: a name with random letters and a port, kept in the data folder.

A browser keeps its data under scheme, name and port. If any of them changed, a phone would open an empty notebook and
could not reach its old one; so they are chosen once. The letters are random because mDNS does not keep two machines
from taking one name, and because the laptop's own name belongs to the system.
"""

from __future__ import annotations

import json
import re
import secrets
from dataclasses import dataclass
from pathlib import Path

from scantling.lan.private_file import write_private
from scantling.lan.refusals import LanError

FILE_NAME = "network.json"
PORT = 8117
#: Where a server listens: for this machine alone, or for all that its networks bring.
ONLY_HERE, EVERYWHERE = "127.0.0.1", "0.0.0.0"
LETTERS = "abcdefghjkmnpqrstuvwxyz23456789"
NAME = re.compile(r"scantling-[a-z0-9]{4,20}\.local")


@dataclass(frozen=True, slots=True)
class Identity:
    """`name` is a host name; `port` is that of the page over TLS, and the trust page is served at the one before."""

    name: str
    port: int

    @property
    def origin(self) -> str:
        return f"https://{self.name}:{self.port}"

    @property
    def trust_address(self) -> str:
        return f"http://{self.name}:{self.trust_port}/"

    @property
    def trust_port(self) -> int:
        return self.port - 1


def read_identity(folder: Path) -> Identity | None:
    """The identity that a data folder has, or None. Raises LanError when its file is damaged."""
    path = folder / FILE_NAME
    try:
        kept = json.loads(path.read_text(encoding="utf-8"))
        name, port = kept["name"], kept["port"]
        if not (isinstance(name, str) and NAME.fullmatch(name) and isinstance(port, int) and 1 < port < 65536):
            raise ValueError("a name or a port that cannot be")
    except FileNotFoundError:
        return None
    except (OSError, ValueError, KeyError, TypeError) as error:
        raise LanError("identity-broken", path=path, why=error) from error
    return Identity(name, port)


def take_identity(folder: Path, port: int | None = None, move: bool = False) -> Identity:
    """The identity of a data folder, chosen at the first call. Raises LanError when the port would change unasked."""
    kept = read_identity(folder)
    if kept and (port in (None, kept.port)):
        return kept
    if kept and not move:
        raise LanError("other-port", origin=kept.origin, port=port)
    letters = "".join(secrets.choice(LETTERS) for _ in range(5))
    made = Identity(kept.name if kept else f"scantling-{letters}.local", port or PORT)
    text = json.dumps({"name": made.name, "port": made.port}) + "\n"
    write_private(folder / FILE_NAME, text.encode())
    return made
