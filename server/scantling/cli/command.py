"""What commands stand on: a file read, the notebook opened, the desk asked, and a refusal in one sentence."""

from __future__ import annotations

import sys
from collections.abc import Iterator, Mapping
from contextlib import contextmanager, nullcontext
from pathlib import Path
from typing import Any, ClassVar

from scantling.blobs import Blobs
from scantling.engine.desk import Desk
from scantling.engine.errors import EngineError
from scantling.households import blobs_beside
from scantling.laptop import Laptop
from scantling.store import FILE_NAME, Database, open_store
from scantling.wire import parse_json, parse_text

REFUSED = 2
PIECE_BYTES = 1 << 16


class CommandError(EngineError):
    sentences: ClassVar[Mapping[str, str]] = {
        "no-file": "The file {path} cannot be read: {why}.",
        "no-folder": "The folder {path} cannot be read: {why}.",
        "no-notebook": "There is no notebook in {path} yet: start one with scantling serve, or choose with --data.",
        "no-such-room": "There is no room called {name} in the notebook; there are: {names}.",
        "two-rooms": "There are {count} rooms called {name}: name the one you mean by its id, {ids}.",
        "on-the-network": "{host} is an address of the network, where anybody could read this notebook: "
        "use scantling serve --lan, which lets paired devices in and no others.",
        "no-host": "There is no address {host} here: leave --host out, or give an address of this machine.",
        "no-lan-port": "Port {port} is taken by another program, and phones know this notebook by it: end that one, "
        "or move for good with --lan-port and --move.",
        "only-a-file": "A notebook's file is checked and mended here; a database has means of its own for that.",
        "two-ways": "Give either --lan, or --cert and --key, or --behind-proxy.",
        "half-certificate": "A certificate goes with its key: give both --cert and --key.",
        "no-drawings-folder": "Drawings go into a folder, one file each: name it with --to.",
        "not-a-folder": "{path} is a file: name a folder for the page.",
        "folder-in-use": "{path} holds files that scantling page did not write: name a new or an empty folder.",
        "no-origin": "“{url}” is no address of a laptop: write it as https://name:port, without a path.",
        "no-port": "Port {port} on {host} cannot be used, perhaps another program has it: choose one with --port.",
        "not-read-back": "The backup {path} holds {found} entries and should hold {count}: make another elsewhere.",
        "system": "It could not be done ({why}): look at the disk and at where the output goes, then try again.",
        "failed": "Scantling itself failed ({what}): the notebook is as it was. Please report it with the command.",
        "usage": "{what}. See scantling --help.",
    }


class Refused(Exception):
    """A refusal as the desk gave it, with the text that it is about."""

    def __init__(self, error: Mapping[str, Any], text: str = "") -> None:
        super().__init__(error["message"])
        self.error = error
        self.at = error["where"]["at"]
        self.text = text


def answer_of(desk: Desk | Laptop, question: Mapping[str, Any], text: str = "") -> dict[str, Any]:
    answered = desk.answer(question)
    if "error" in answered:
        raise Refused(answered["error"], text)
    answer: dict[str, Any] = answered["answer"]
    return answer


def has_notebook(place: Path | Database) -> bool:
    try:
        return isinstance(place, Database) or (place / FILE_NAME).exists()
    except OSError as error:
        raise CommandError("no-folder", path=place, why=error.strerror) from error


@contextmanager
def notebook(place: Path | Database, beside: Path | None = None) -> Iterator[Laptop]:
    """`beside`: the folder of attachments, where the journal is in a database."""
    if not has_notebook(place):
        raise CommandError("no-notebook", path=place)
    store = open_store(place)
    try:
        yield Laptop(store, blobs=blobs_of(place, beside))
    finally:
        store.close()


def blobs_of(place: Path | Database, beside: Path | None) -> Blobs | None:
    """Where a notebook's attachments lie."""
    return blobs_beside(beside, place.household) if isinstance(place, Database) else blobs_beside(place)


def read_file(path: str) -> str:
    return parse_text(b"".join(pieces_of(path)), f"The file {path}")


def pieces_of(path: str) -> Iterator[bytes]:
    """A file's bytes, some at a time; standard input for a dash."""
    try:
        with nullcontext(sys.stdin.buffer) if path == "-" else Path(path).open("rb") as file:
            while piece := file.read(PIECE_BYTES):
                yield piece
    except OSError as error:
        raise CommandError("no-file", path=path, why=error.strerror) from error


def read_json(path: str) -> Any:
    return parse_json(read_file(path), f"The file {path}")
