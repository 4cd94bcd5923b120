"""The commands by name. Each group of commands adds its own; what all of them take is added here."""

from __future__ import annotations

import argparse
import os
from collections.abc import Callable, Sequence
from importlib.metadata import version
from pathlib import Path
from typing import Any, NoReturn

import platformdirs

from scantling.cli import asking, keeping, listing, looking, network, page, serving
from scantling.cli.command import CommandError
from scantling.store import Database

Run = Callable[[argparse.Namespace], int | None]

OWN_FOLDER = "scantling"
GROUPS = (serving, network, page, asking, listing, keeping, looking)


class OneSentenceParser(argparse.ArgumentParser):
    """argparse prints its usage before every refusal; here a refusal is one sentence."""

    def error(self, message: str) -> NoReturn:
        raise CommandError("usage", what=message[:1].upper() + message[1:])


def parse_command(arguments: Sequence[str] | None) -> argparse.Namespace:
    """The command as given, `run` to run it with, and `data`, its notebook's folder. `place`, where its journal is.

    Raises EngineError.
    """
    chosen = build_parser().parse_args(arguments)
    chosen.data = chosen.data or platformdirs.user_data_path(chosen.folder, appauthor=False)
    chosen.place = Database(chosen.database, chosen.household) if chosen.database else chosen.data
    return chosen


def build_parser() -> argparse.ArgumentParser:
    parser = OneSentenceParser(prog="scantling", description="A room notebook for finish carpentry.")
    _add_shared(parser)
    parser.add_argument("--version", action="version", version=f"scantling {version('scantling')}")
    parser.set_defaults(data=None, json=False, database=os.environ.get("SCANTLING_DATABASE"), household="home")
    commands = parser.add_subparsers(title="commands", metavar="COMMAND", required=True)

    def add(name: str, run: Run, said: str, *, folder: str = OWN_FOLDER, **more: Any) -> argparse.ArgumentParser:
        command = commands.add_parser(name, help=said, description=said, **more)
        _add_shared(command)
        command.set_defaults(run=run, folder=folder)
        return command

    for group in GROUPS:
        group.add_commands(add)
    return parser


def _add_shared(parser: argparse.ArgumentParser) -> None:
    """Options that may stand before or after the command; SUPPRESS, or one after it would undo the one before."""
    parser.add_argument("--data", type=Path, metavar="DIR", default=argparse.SUPPRESS, help="the notebook's folder")
    parser.add_argument(
        "--database",
        metavar="URL",
        default=argparse.SUPPRESS,
        help="a journal in PostgreSQL, not the folder's (postgresql+psycopg://user@host/name), or $SCANTLING_DATABASE",
    )
    parser.add_argument(
        "--household", metavar="NAME", default=argparse.SUPPRESS, help='whose journal in that database ("home")'
    )
    parser.add_argument("--json", action="store_true", default=argparse.SUPPRESS, help="answers as JSON, for machines")
