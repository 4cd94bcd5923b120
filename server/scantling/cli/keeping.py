"""`export`, `backup`, `restore` and `check`: the notebook as a file and back, and whether it is sound."""

from __future__ import annotations

import argparse
import re
from collections.abc import Callable, Iterator
from itertools import count
from pathlib import Path

from scantling.blobs import parse_piece
from scantling.cli.command import REFUSED, CommandError, blobs_of, has_notebook, notebook, pieces_of
from scantling.cli.left_out import LeftOut
from scantling.cli.output import complain, escape_unshown, say, write_text
from scantling.cli.rooms import for_rooms
from scantling.engine.desk import dump
from scantling.engine.questions.cutlist.files import format_all, format_table
from scantling.engine.questions.written import LISTS, join_csv, join_json
from scantling.journal_file.lines import announced, heading, is_piece, read_lines
from scantling.journal_file.restoring import Restored, houses_of, restore
from scantling.store import Database, Store, open_store
from scantling.store.copies import list_copies
from scantling.upkeep import Told, held, look, put_right
from scantling.whole_file import whole_file

SAID_AT_MOST = 20
BESIDE = "--beside"


def add_commands(add: Callable[..., argparse.ArgumentParser]) -> None:
    export = add("export", run_export, "Write the journal, one entry on each line, a list of rooms, or the drawings.")
    what = (
        "a list is a table, with --json all that is known of it: the cut list (pieces), the board plan, the strips of "
        "wallpaper and film, what is to buy, the labels of issued pieces; drawings are SVG"
    )
    export.add_argument("what", choices=["journal", "pieces", *LISTS, "drawings"], help=what)
    export.add_argument("--csv", action="store_true", help="a list as a table for a spreadsheet, as without it")
    where = "a file, which is there whole or not at all; for drawings a folder, for each room's plan and its walls"
    export.add_argument("--room", metavar="NAME", help="of lists or drawings, those of one room, by its name or id")
    export.add_argument("--to", type=Path, metavar="FILE", help=where)
    backup = add("backup", run_backup, "Write the whole notebook into a file, and read it back.")
    backup.add_argument("file", type=Path)
    checking = add("check", run_check, "Read the whole notebook through, and say what is wrong with it.")
    checking.add_argument("--mend", action="store_true", help="make it anew of its copies and of what is readable")
    restoring = add("restore", run_restore, "Bring the entries of a backup or an exported journal into the notebook.")
    restoring.add_argument("file", help="a file, or - for standard input")
    restoring.add_argument(BESIDE, action="store_true", help="also the houses of another notebook, beside those here")


def run_export(chosen: argparse.Namespace) -> int:
    if chosen.what == "pieces":
        answers = for_rooms(chosen.place, chosen.room, "pieces")
        _put([(format_all if chosen.json else format_table)(answers.given)], chosen.to)
        return answers.complain()
    if chosen.what in LISTS:
        answers = for_rooms(chosen.place, chosen.room, "list_files", of=chosen.what)
        kind, join = ("json", join_json) if chosen.json else ("csv", join_csv)
        _put([join(answer[kind] for _, answer in answers.given)], chosen.to)
        return answers.complain()
    if chosen.what == "drawings":
        return _export_drawings(chosen)
    with notebook(chosen.place) as laptop:
        _put(_entry_lines(laptop.store), chosen.to)
    return 0


def _export_drawings(chosen: argparse.Namespace) -> int:
    """A file for the plan of each room and for each of its walls, as the page saves them."""
    if chosen.to is None:
        raise CommandError("no-drawings-folder")
    if chosen.to.exists() and not chosen.to.is_dir():
        raise CommandError("not-a-folder", path=chosen.to)
    answers = for_rooms(chosen.place, chosen.room, "files")
    chosen.to.mkdir(parents=True, exist_ok=True)
    taken: set[str] = set()
    for room, answer in answers.given:
        name = _free_name(room, taken)
        walls = {one["name"]: one["drawing"] for one in answer["walls"]}
        for title, drawing in {"plan": answer["plan"], **walls}.items():
            _put([drawing], chosen.to / f"{name}, {title}.svg")
    return answers.complain()


def _free_name(room: str, taken: set[str]) -> str:
    """A room's name that is no path, and no other room's on a disk that takes capitals for small letters."""
    plain = re.sub(r"[^\w .()-]", "_", room).strip(" .")[:80] or "room"
    names = (plain if number == 1 else f"{plain} {number}" for number in count(1))
    name = next(name for name in names if name.casefold() not in taken)
    taken.add(name.casefold())
    return name


def _entry_lines(store: Store) -> Iterator[str]:
    with store.reading() as ledger:
        for row in ledger.read_all():
            yield escape_unshown(row.text) + "\n"


def _put(texts: Iterator[str] | list[str], to: Path | None) -> None:
    if to is None:
        write_text(texts)
        return
    with whole_file(to) as file:
        for text in texts:
            file.write(text.encode())


def run_backup(chosen: argparse.Namespace) -> None:
    with notebook(chosen.place, chosen.data) as laptop, laptop.store.reading() as ledger:
        count = sum(1 for _ in ledger.read_all())
        blobs = laptop.blobs.whole() if laptop.blobs else []
        with whole_file(chosen.file) as file:
            file.write(dump(heading(count, len(blobs), houses_of(laptop.store))).encode() + b"\n")
            for row in ledger.read_all():
                file.write(escape_unshown(row.text).encode() + b"\n")
            for piece in (piece for blob in blobs if laptop.blobs for piece in laptop.blobs.pieces(blob)):
                file.write(dump(piece.body()).encode() + b"\n")
    _read_back(chosen.file, count)
    attached = f" and {len(blobs)} attachments" if blobs else ""
    say(f"{count} entries{attached} are in {chosen.file}.")


def _read_back(path: Path, count: int) -> None:
    """A backup is one when it can be read: every line of it, each piece by its digest, and as many entries as there
    should be."""
    if path.is_file():
        found = sum(_is_entry(line.parse()) for line in read_lines(pieces_of(str(path))))
        if found != count:
            raise CommandError("not-read-back", path=path, found=found, count=count)


def _is_entry(data: object) -> bool:
    if is_piece(data):
        parse_piece(data)
        return False
    return announced(data) is None


def run_check(chosen: argparse.Namespace) -> int:
    if isinstance(chosen.place, Database):
        raise CommandError("only-a-file")
    if not has_notebook(chosen.place) and not list_copies(chosen.data):
        raise CommandError("no-notebook", path=chosen.data)
    if chosen.mend:
        with held(chosen.data):
            for sentence in put_right(chosen.data):
                say(sentence)
    found = look(chosen.data)
    blobs = blobs_of(chosen.place, chosen.data)
    damaged = blobs.damaged() if blobs else []
    if found.faults:
        for fault in found.faults[:-1]:
            complain(fault.message)
        raise Told("wrong", what=found.faults[-1].message)
    for path in damaged:
        complain(Told("blob", path=path).message)
    if damaged:
        return REFUSED
    copies = list_copies(chosen.data)
    newest = f", the newest {copies[0].name}" if copies else ""
    say(f"Sound: {len(found.sound)} entries, each proved by its marks. {len(copies)} dated copies{newest}.")
    return 0


def run_restore(chosen: argparse.Namespace) -> int:
    aside = LeftOut(chosen.data)
    store = open_store(chosen.place)
    try:
        blobs = blobs_of(chosen.place, chosen.data)
        restored = restore(store, pieces_of(chosen.file), aside.keep, blobs, None if chosen.beside else BESIDE)
    finally:
        store.close()
        kept = aside.close()
    attached = f" {len(restored.added)} attachments were added." if restored.blobs else ""
    say(f"{restored.stored} entries restored, {restored.known} were here already.{attached}")
    return _tell_left_out(restored, kept)


def _tell_left_out(restored: Restored, kept: Path | None) -> int:
    for refusal in restored.refusals[:SAID_AT_MOST]:
        complain(refusal.message)
    if restored.left_out > SAID_AT_MOST:
        complain(f"… and {restored.left_out - SAID_AT_MOST} more.")
    if kept:
        complain(f"Left out: {restored.left_out} lines, kept as they are in {kept}. All others are in the notebook.")
    short = restored.cut_short()
    if short:
        complain(short.message)
    return REFUSED if short or restored.left_out else 0
