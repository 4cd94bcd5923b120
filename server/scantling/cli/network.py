"""`pair`, and what `serve --lan` stands on: this laptop on the network of its house."""

from __future__ import annotations

import argparse
import ipaddress
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

from scantling.cli.command import CommandError, notebook
from scantling.cli.output import complain, say, write_json
from scantling.clock import now_ms, now_utc
from scantling.engine.desk import dump
from scantling.engine.errors import quote
from scantling.lan.identity import EVERYWHERE, PORT, read_identity
from scantling.lan.pairing import show_code

if TYPE_CHECKING:
    from scantling.lan.home import Home
    from scantling.serving import NotebookServer

HERE = ("127.0.0.0/8", "::1")


def add_commands(add: Callable[..., argparse.ArgumentParser]) -> None:
    add("pair", run_pair, "Show a code that lets one device in, once, within ten minutes.")


def add_network_options(command: argparse.ArgumentParser, port: Callable[[str], int]) -> None:
    def option(name: str, **more: Any) -> None:
        command.add_argument(name, **more)

    option("--lan", action="store_true", help="serve paired devices on the house's network, by an own certificate")
    option("--lan-port", type=port, help=f"the port for that ({PORT}); phones know the notebook by it")
    option("--move", action="store_true", help="change that port for good; phones then start anew")
    option("--cert", type=Path, help="serve the network by a certificate of your own, in PEM with its chain")
    option("--key", type=Path, help="the key of that certificate, in PEM")
    option(
        "--behind-proxy",
        action="append",
        nargs="?",
        const="localhost",
        default=[],
        type=_proxy,
        metavar="ADDRESS",
        help="believe Forwarded, or X-Forwarded-For, -Proto and -Host, of the proxy at this address or network (this "
        "machine, if not given); then every device is to be paired",
    )
    option(
        "--allow-origin",
        action="append",
        default=[],
        metavar="ORIGIN",
        help="a page elsewhere, such as https://notes.example.org, that paired devices may sync from",
    )


def _proxy(text: str) -> tuple[ipaddress.IPv4Network | ipaddress.IPv6Network, ...]:
    try:
        return tuple(ipaddress.ip_network(one) for one in (HERE if text == "localhost" else (text,)))
    except ValueError as error:
        said = f"{quote(text)} is no address: give the proxy's own, such as 192.168.7.2 or 172.17.0.0/16"
        raise argparse.ArgumentTypeError(said) from error


def run_pair(chosen: argparse.Namespace) -> None:
    with notebook(chosen.place) as laptop:
        code = show_code(laptop.store, now_ms())
    identity = read_identity(chosen.data)
    link = f"{identity.origin}/#pair={code}" if identity else None
    if chosen.json:
        write_json(dump({"code": code, "link": link}))
        return
    say(f"The code is {code}. It lets one device in, once, within ten minutes.")
    if link:
        from scantling.lan.code import terminal_code

        say(f"Type it on the phone under House, or open {link} there:")
        say(terminal_code(link))


@contextmanager
def at_home(chosen: argparse.Namespace) -> Iterator[Home | None]:
    """The laptop on its network while it serves, or None without --lan."""
    if not chosen.lan:
        yield None
        return
    from scantling.lan.home import Home

    home = Home(chosen.data, chosen.lan_port, _host(chosen), chosen.move)
    try:
        yield home
    finally:
        home.close()


def network_servers(chosen: argparse.Namespace, app: Any, home: Home | None) -> list[NotebookServer]:
    """The servers for the network, each with its address taken: none, one by an own certificate, or two of --lan."""
    from scantling.serving import NotebookServer

    made: list[NotebookServer] = []
    if chosen.cert:
        from scantling.lan.leaf import tls_context
        from scantling.lan.own import check_own

        for trouble in check_own(chosen.cert, None, chosen.name, now_utc()):
            complain(trouble.message)
        tls = tls_context(chosen.cert, chosen.key)
        made = [NotebookServer(app, _host(chosen) or EVERYWHERE, chosen.lan_port or PORT, tls)]
    elif home:
        from scantling.lan.trust import create_trust_app

        trust = create_trust_app(home.identity, home.authority, lambda: home.host_names)
        made = [
            NotebookServer(app, home.listen_at, home.identity.port, home.tls),
            NotebookServer(trust, home.listen_at, home.identity.trust_port),
        ]
    for server in made:
        try:
            server.prepare()
        except OSError as error:
            raise CommandError("no-lan-port", port=server.wanted_port) from error
    return made


def announce_home(home: Home) -> None:
    """Say where phones find the notebook, with a code to read from the screen."""
    from scantling.lan.code import terminal_code

    trouble = home.announce()
    if trouble:
        complain(trouble)
    identity = home.identity
    say(f"On the house's network: {identity.origin}/ for phones that trust this laptop already.")
    say(f"A new phone begins at {identity.trust_address} or http://{home.addresses[0]}:{identity.trust_port}/")
    say(terminal_code(identity.trust_address))
    say(f"Fingerprint to compare: {home.authority.fingerprint}")
    say("Then pair it: scantling pair, or House on this laptop's own page.")


def _host(chosen: argparse.Namespace) -> str | None:
    """The one address of the network to be reached at, where one was named."""
    return None if chosen.host in (None, EVERYWHERE) else str(chosen.host)
