"""`doctor`: what is wrong with all that a notebook stands on, in sentences."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from dataclasses import asdict
from pathlib import Path

from scantling.cli.command import REFUSED, CommandError, blobs_of
from scantling.cli.output import say, write_json
from scantling.cli.serving import PORT, port_of
from scantling.engine.desk import dump
from scantling.store import Database


def add_commands(add: Callable[..., argparse.ArgumentParser]) -> None:
    said = "Look at all that the notebook stands on, change nothing, and say what is wrong."
    doctor = add("doctor", run_doctor, said)
    doctor.add_argument("--port", type=port_of, default=PORT, help=f"the port that serve is given ({PORT})")
    doctor.add_argument("--cert", type=Path, help="the certificate of your own that serve is given")
    doctor.add_argument("--key", type=Path, help="the key of that certificate")
    doctor.add_argument("--name", action="append", default=[], help="a name that phones reach this server by")


def run_doctor(chosen: argparse.Namespace) -> int:
    # Imported here: certificates and the network take a third of a second, and a sum should not wait for them.
    from scantling.doctor import Asked, look_at_all

    if chosen.key and not chosen.cert:
        raise CommandError("half-certificate")
    database = chosen.place if isinstance(chosen.place, Database) else None
    blobs = blobs_of(chosen.place, chosen.data)
    asked = Asked(chosen.data, chosen.port, database, blobs, chosen.cert, chosen.key, chosen.name)
    found = []
    for finding in look_at_all(asked):
        found.append(finding)
        if not chosen.json:
            say(f"{'WRONG' if finding.wrong else '     '}  {finding.message}")
    wrong = sum(finding.wrong for finding in found)
    if chosen.json:
        write_json(dump({"findings": [asdict(finding) for finding in found], "wrong": wrong}))
    else:
        say(f"{wrong} of these are wrong." if wrong else "Nothing is wrong.")
    return REFUSED if wrong else 0
