"""`serve` and `demo`: the page and the API until stopped."""

from __future__ import annotations

import argparse
import socket
from collections.abc import Callable, Sequence
from contextlib import nullcontext
from ipaddress import ip_address
from typing import TYPE_CHECKING, Any

from scantling.cli.command import CommandError
from scantling.cli.network import add_network_options, announce_home, at_home, network_servers
from scantling.cli.output import complain, say
from scantling.cli.rooms import for_rooms, print_answers
from scantling.engine.errors import quote
from scantling.lan.identity import ONLY_HERE
from scantling.printed import format_boards, format_pieces
from scantling.store import Database
from scantling.upkeep import Told, kept

if TYPE_CHECKING:
    from scantling.serving import NotebookServer

PORT = 8017
DEMO_PORT = 8018
LAST_PORT = 65535


def add_commands(add: Callable[..., argparse.ArgumentParser]) -> None:
    serving = add("serve", run_serve, "Serve the page and the API until stopped.")
    _add_address(serving, PORT)
    add_network_options(serving, port_of)
    said = "Load an invented house into a notebook of its own, print it, serve it."
    _add_address(add("demo", run_demo, said, folder="scantling-demo"), DEMO_PORT)


def _add_address(command: argparse.ArgumentParser, port: int) -> None:
    command.add_argument(
        "--host", help="the address to listen on: this machine only, or with --lan every private one, if not given"
    )
    command.add_argument(
        "--port", type=port_of, default=port, help=f"the port to listen on ({port}); 0 for any that is free"
    )
    command.add_argument("--name", action="append", default=[], help="another name that this server is reached by")


def port_of(text: str) -> int:
    if not (text.isascii() and text.isdecimal() and int(text[:6]) <= LAST_PORT):
        raise argparse.ArgumentTypeError(f"{quote(text)} is no port: give a number from 0 to {LAST_PORT}")
    return int(text)


def run_serve(chosen: argparse.Namespace) -> None:
    # Imported here: Flask takes a third of a second, and a sum should not wait for it.
    from scantling.api import Config, create_app

    _check_ways(chosen)
    networked = chosen.lan or chosen.cert
    own_host = ONLY_HERE if networked or chosen.host is None else chosen.host
    # A database is kept by itself, and several servers may stand on it.
    keeping = nullcontext() if isinstance(chosen.place, Database) else kept(chosen.data, complain)
    with keeping, at_home(chosen) as home:
        names = (*_names_of(chosen.host), *chosen.name)
        proxies = tuple(network for one in chosen.behind_proxy for network in one)
        origins = tuple(chosen.allow_origin)
        app = create_app(Config(chosen.place, names, home=home, origins=origins, proxies=proxies, beside=chosen.data))
        _tell_only_read(app)
        beside = network_servers(chosen, app, home)

        def announce(address: str) -> None:
            print(address, flush=True)
            if home:
                announce_home(home)

        _run(app, own_host, [chosen.port], announce, beside)


def _tell_only_read(app: Any) -> None:
    only_read = app.extensions["scantling"].store.only_read
    if only_read:
        complain(Told("only-read", why=only_read).message)


def _run(
    app: Any, host: str, ports: list[int], announce: Callable[[str], None], beside: Sequence[NotebookServer] = ()
) -> None:
    from scantling.serving import serve

    try:
        serve(app, host, ports, announce, beside)
    except OSError as error:
        raise CommandError("no-port", port=ports[0], host=host) from error


def _check_ways(chosen: argparse.Namespace) -> None:
    """One way onto the network, or none; a network address without one is refused."""
    if bool(chosen.cert) != bool(chosen.key):
        raise CommandError("half-certificate")
    ways = [way for way in (chosen.lan, chosen.cert, chosen.behind_proxy) if way]
    if len(ways) > 1:
        raise CommandError("two-ways")
    if chosen.host is not None and not ways and not _is_own(chosen.host):
        raise CommandError("on-the-network", host=quote(chosen.host))


def _names_of(host: str | None) -> tuple[str, ...]:
    """The host as a request may name it. Loopback's names are the door's matter: they count on loopback alone."""
    if host is None or _is_own(host):
        return ()
    return (f"[{host}]" if ":" in host else host,)


def _is_own(host: str) -> bool:
    """Whether a host is this machine and nobody else: every address that its name stands for.

    No host at all is every address there is.
    """
    if not host:
        return False
    try:
        found = socket.getaddrinfo(host, None, type=socket.SOCK_STREAM)
    except (OSError, UnicodeError) as error:
        raise CommandError("no-host", host=quote(host)) from error
    return all(ip_address(str(address[0]).partition("%")[0]).is_loopback for *_, address in found)


def run_demo(chosen: argparse.Namespace) -> None:
    from scantling.demo_house import edition, load_demo

    chosen.data = chosen.data / edition()
    load_demo(chosen.data)
    for ask, form in (("pieces", format_pieces), ("boards_for_room", format_boards)):
        print_answers(chosen.json, for_rooms(chosen.data, None, ask), form)
        say("")
    if chosen.host is not None and not _is_own(chosen.host):
        raise CommandError("on-the-network", host=quote(chosen.host))
    from scantling.api import Config, create_app

    with kept(chosen.data, complain):
        app = create_app(Config(chosen.data, tuple(chosen.name)))
        _tell_only_read(app)
        _run(app, chosen.host or ONLY_HERE, [chosen.port, 0], lambda address: print(address, flush=True))
