"""What the network side refuses, in sentences."""

from __future__ import annotations

from collections.abc import Mapping
from typing import ClassVar

from scantling.engine.errors import EngineError


class LanError(EngineError):
    sentences: ClassVar[Mapping[str, str]] = {
        "key-open": "Others on this machine can read the file {path}: make it yours alone with chmod 600 {path}.",
        "key-broken": "The file {path} cannot be used ({why}): put back a copy, or move the folder {folder} "
        "away; every phone then has to trust a new certificate.",
        "identity-broken": "The file {path} cannot be read ({why}): put back a copy of it, or phones will look "
        "for this notebook under a name that is gone.",
        "other-port": "Phones know this notebook as {origin}; under port {port} each would start an empty one. "
        "Leave the port out; or move for good with --move, and bring what a phone alone has by file.",
        "no-network": "This machine has no address on a private network: join one, then start again.",
        "folder": "The folder {path} cannot be used for certificates ({why}): choose another with --data.",
        "own-certificate": "The certificate {path} cannot be used ({why}): give it and its key, both in PEM.",
        "own-not-yet": "The certificate {path} begins on {begins}: set the clock of this machine, or renew it.",
        "own-over": "The certificate {path} ended on {ends}, and phones refuse it: renew it where you had it from.",
        "own-soon": "The certificate {path} ends on {ends}: renew it before that.",
        "own-name": "The certificate {path} is for {named} and not for {name}: phones refuse it under that name.",
    }
