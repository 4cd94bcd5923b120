"""The command line and the world around it: encodings, full and vanished disks, hostile names, failures of our own."""

import csv
import io
import json
import os
import re
import subprocess
import sys
from xml.etree import ElementTree

import pytest
from scantling.cli import main
from scantling.cli.keeping import _free_name
from scantling.demo_house import load_demo
from scantling.engine.questions.cutlist.files import format_table
from scantling.engine.questions.written import FORMULA_STARTS
from scantling.store import open_store
from scantling.sync import keep_entry

from tests.program import only_for_root, run_as_nobody

ODD = "küche – 63 ¼ 🪚 ″"
HOSTILE = "\x1b[2Jbath\x07\x00\x9b31m\u202e\x7f"
OBEYED = set(HOSTILE) - set("[2Jbath31m")


@pytest.fixture
def folder(tmp_path):
    load_demo(tmp_path / "notebook")
    return tmp_path / "notebook"


@pytest.fixture
def run(capfdbinary, folder):
    def command(*arguments):
        status = main(["--data", str(folder), *map(str, arguments)])
        out, err = capfdbinary.readouterr()
        return status, out.decode(), err.decode()

    return command


def program(folder, *arguments, out=subprocess.PIPE, **environment):
    """The command in a process of its own, in an environment of its own."""
    return subprocess.run(
        [sys.executable, "-m", "scantling", "--data", str(folder), *map(str, arguments)],
        stdout=out, stderr=subprocess.PIPE, env={**os.environ, **environment}, check=False, timeout=60,
    )  # fmt: skip


def add(folder, entry):
    store = open_store(folder)
    with store.writing() as ledger:
        keep_entry(ledger, entry)
    store.close()


def demo_house(folder):
    store = open_store(folder)
    with store.reading() as ledger:
        found = {row.entry["kind"]: row.entry["body"] for row in ledger.read_all()}
    store.close()
    return found


def refused(answer):
    status, out, err = answer
    assert (status, out) == (2, "")
    assert err.startswith("scantling: ")
    assert err.count("\n") == 1
    return err


@pytest.mark.parametrize("coding", ["cp1252", "ascii", "utf-16"])
def test_a_journal_is_exported_in_utf_8_whatever_the_systems_encoding(coding, folder, make_entry):
    add(folder, make_entry(1, ODD))
    done = program(folder, "export", "journal", PYTHONIOENCODING=coding)
    assert (done.returncode, done.stderr) == (0, b"")
    assert ODD in done.stdout.decode()
    assert all(json.loads(line) for line in done.stdout.decode().splitlines())


@pytest.mark.parametrize("command", [["pieces"], ["sum", "10 mm / 3"], ["boards"], ["--help"]])
def test_a_terminal_that_has_not_every_letter_still_gets_its_lines(command, folder):
    done = program(folder, *command, PYTHONIOENCODING="ascii")
    assert (done.returncode, done.stderr) == (0, b"")


def test_a_file_is_written_beside_and_moved_into_place(run, tmp_path):
    assert run("export", "journal", "--to", tmp_path / "journal.ndjson") == (0, "", "")
    assert (tmp_path / "journal.ndjson").read_text() == run("export", "journal")[1]
    assert sorted(path.name for path in tmp_path.iterdir()) == ["journal.ndjson", "notebook"]


def test_drawings_are_the_plan_and_the_walls_of_each_room_as_the_page_saves_them(run, tmp_path):
    assert run("export", "drawings", "--to", tmp_path / "drawn") == (0, "", "")
    written = {path.name: path.read_text(encoding="utf-8") for path in (tmp_path / "drawn").iterdir()}
    rooms = json.loads(run("pieces", "--json")[1])
    assert len(rooms) > 1
    for room in rooms:
        assert written[f"{room['room']}, plan.svg"].startswith("<svg")
        assert len([name for name in written if name.startswith(f"{room['room']}, wall ")]) > 3
    for drawing in written.values():
        ElementTree.fromstring(drawing)


def test_a_name_that_is_a_path_names_no_place_but_the_folder(tmp_path):
    taken = set()
    names = [_free_name(room, taken) for room in ("../../up", "Bath", "bath", "", "a/b\\c", ".", "küche 63")]
    assert names == ["_.._up", "Bath", "bath 2", "room", "a_b_c", "room 2", "küche 63"]


def test_drawings_want_a_folder(run, tmp_path):
    assert run("export", "drawings")[0] == 2
    (tmp_path / "there").write_text("a file")
    status, _, err = run("export", "drawings", "--to", tmp_path / "there")
    assert (status, "is a file" in err) == (2, True)


@pytest.mark.parametrize("what", [["export", "journal", "--to"], ["export", "pieces", "--to"], ["backup"]])
@pytest.mark.parametrize("place", ["gone/journal.ndjson", "/dev/full", "notebook/notebook.sqlite3/below"])
def test_a_full_or_vanished_target_is_a_sentence(place, what, run, tmp_path):
    assert "could not be written" in refused(run(*what, tmp_path / place))


@pytest.mark.skipif(not os.path.exists("/dev/full"), reason="this system has no device that is always full")
@pytest.mark.parametrize("command", [["export", "journal"], ["export", "pieces"], ["pieces"], ["sum", "1"]])
def test_a_full_device_is_a_sentence_and_no_traceback(command, folder):
    with open("/dev/full", "wb") as full:
        done = program(folder, *command, out=full)
    assert done.returncode == 2
    assert done.stderr.decode().startswith("scantling: It could not be done (No space left on device)")
    assert done.stderr.count(b"\n") == 1


def test_what_stood_in_a_file_stays_when_the_new_one_cannot_be_written(run, folder, tmp_path, monkeypatch):
    target = tmp_path / "journal.ndjson"
    target.write_text("yesterday's")
    monkeypatch.setattr(os, "fsync", lambda handle: (_ for _ in ()).throw(OSError(28, "No space left on device")))
    assert "No space left on device" in refused(run("export", "journal", "--to", target))
    assert target.read_text() == "yesterday's"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["journal.ndjson", "notebook"]


def test_a_backup_restores_another_notebook_and_says_what_it_added(run, tmp_path, folder):
    backup = tmp_path / "backup.ndjson"
    status, out, _ = run("backup", backup)
    count = len(backup.read_text().splitlines()) - 1
    assert (status, out) == (0, f"{count} entries are in {backup}.\n")
    assert json.loads(backup.read_text().splitlines()[0]) == {
        "entries": count, "format": "scantling journal", "version": 1,
        "houses": [demo_house(folder)["house"]["house"]],
    }  # fmt: skip
    other = tmp_path / "other"
    assert run("restore", backup, "--data", other) == (0, f"{count} entries restored, 0 were here already.\n", "")
    assert run("restore", backup, "--data", other) == (0, f"0 entries restored, {count} were here already.\n", "")
    assert run("export", "journal", "--data", other) == run("export", "journal")


@pytest.mark.parametrize("first", ["heading", "house"])
def test_a_file_of_another_notebook_is_let_in_only_when_that_is_said(first, run, tmp_path, folder, make_entry):
    body = {"house": "0190bbbb-0000-7000-8000-00000000000b", "name": "next door", "built": None}
    house = make_entry(1, kind="house", body=body)
    given = tmp_path / "given.ndjson"
    head = {"format": "scantling journal", "version": 1, "entries": 1, "houses": [body["house"]]}
    given.write_text("".join(json.dumps(line) + "\n" for line in ([head, house] if first == "heading" else [house])))
    before = run("export", "journal")
    status, out, err = run("restore", given)
    assert (status, out) == (2, "")
    assert "another notebook" in err
    assert "--beside" in err
    assert run("export", "journal") == before
    assert run("restore", given, "--beside") == (0, "1 entries restored, 0 were here already.\n", "")
    assert run("restore", given) == (0, "0 entries restored, 1 were here already.\n", "")


def test_what_is_new_in_a_notebook_is_of_it_also_where_no_line_tells_of_a_house(run, tmp_path, folder, make_entry):
    given = tmp_path / "given.ndjson"
    head = {"format": "scantling journal", "version": 1, "entries": 1, "houses": [demo_house(folder)["house"]["house"]]}
    given.write_text(json.dumps(head) + "\n" + json.dumps(make_entry(1)) + "\n")
    assert run("restore", given) == (0, "1 entries restored, 0 were here already.\n", "")


def test_restore_keeps_what_it_leaves_out_in_a_file_and_names_it(run, tmp_path, folder, make_entry):
    torn = b'{"id": "to\xffrn'
    given = tmp_path / "given.ndjson"
    given.write_bytes(json.dumps(make_entry(1)).encode() + b"\r\n" + torn + b"\r\n")
    status, out, err = run("restore", given)
    assert (status, out) == (2, "1 entries restored, 0 were here already.\n")
    (kept,) = folder.glob("left-out-*.ndjson")
    assert kept.read_bytes() == torn + b"\n"
    assert "Line 2" in err
    assert str(kept) in err
    run("restore", given)
    assert list(folder.glob("*left-out-*")) == [kept]


def test_a_backup_cut_short_is_told_and_what_is_left_of_it_goes_in(run, tmp_path):
    backup = tmp_path / "backup.ndjson"
    run("backup", backup)
    lines = backup.read_text().splitlines(keepends=True)
    backup.write_text("".join(lines[:-3]))
    status, out, err = run("restore", backup, "--data", tmp_path / "other")
    assert status == 2
    assert out.startswith(f"{len(lines) - 4} entries restored")
    assert "cut short" in err


def test_nothing_that_a_terminal_obeys_comes_out_of_any_command(run, folder, make_entry):
    room, house = demo_house(folder)["room"], demo_house(folder)["house"]
    renamed = {"room": room["room"], "house": house["house"], "name": HOSTILE, "closed": room["closed"]}
    add(folder, make_entry(1, kind="room", body=renamed, stamp=f"ffffffffffff-0000-{'a' * 16}"))
    add(folder, make_entry(2, HOSTILE))
    for command in (["pieces"], ["boards"], ["pieces", "--json"], ["export", "pieces"], ["export", "journal"],
                    ["pieces", HOSTILE.replace("\x00", "") + "?"], ["sum", "\x1b[2J"], ["ask", "\x1b"]):  # fmt: skip
        _, out, err = run(*command)
        assert not OBEYED & set(out + err), command
    assert "bath" in run("pieces")[1]
    last = json.loads(run("export", "journal")[1].splitlines()[-1])
    assert last["body"]["name"] == HOSTILE


CELLS = [f"{before}{start}1+2" for start in FORMULA_STARTS for before in ("", " ", "\t", "\u3000", "\xa0 ", "\n")]


def test_no_cell_of_a_table_is_taken_for_a_formula(run):
    (answer,) = json.loads(run("pieces", "--json", "Back stair hall")[1])
    table = format_table((name, answer) for name in CELLS)
    named = [row["room"] for row in csv.DictReader(io.StringIO(table, newline=""))]
    assert len(named) == len(CELLS) * len(answer["pieces"])
    assert [cell for cell in named if not cell.startswith(("'", "·"))] == []


def test_a_setting_that_cannot_be_is_named_in_its_room_and_stops_no_list(run, folder, make_entry):
    bodies = [json.loads(line)["body"] for line in run("export", "journal")[1].splitlines()]
    names = {body["room"]: body["name"] for body in bodies if set(body) == {"room", "house", "name", "closed"}}
    (first, of_first), *_ = names.items()
    add(folder, make_entry(1, kind="setting", body={"of": first, "name": "casing.width", "value": "-3"}))
    status, out, _ = run("pieces")
    assert status == 0
    lists = dict(zip(re.findall("Cut list: (.*)", out), out.split("Cut list: ")[1:], strict=True))
    assert lists.keys() == set(names.values())
    assert [name for name, text in lists.items() if "casing.width" in text] == [of_first]


@pytest.mark.parametrize("port", ["99999", "-1", "70000000000000", "８０", "65536"])
@pytest.mark.parametrize("command", ["serve", "demo"])
def test_a_port_that_is_none_is_a_sentence(command, port, run):
    assert "65535" in refused(run(command, f"--port={port}"))


def test_the_version_is_said(run):
    with pytest.raises(SystemExit):
        run("--version")


def test_the_version_is_the_one_that_is_installed(folder):
    done = program(folder, "--version")
    assert done.stdout.decode().split() == ["scantling", "0.1.0"]


@only_for_root
@pytest.mark.parametrize("command", ["export journal", "pieces", "backup /dev/null", "restore /dev/null", "serve"])
def test_a_folder_that_may_not_be_read_is_a_sentence(command, folder):
    folder.chmod(0o700)
    done = run_as_nobody(folder, *command.split())
    assert (done.returncode, done.stdout) == (2, "")
    assert str(folder) in done.stderr
    assert done.stderr.count("\n") == 1


def test_a_fault_of_our_own_is_a_sentence_too(run, monkeypatch):
    import scantling.cli.rooms

    monkeypatch.setattr(scantling.cli.rooms, "_rooms", lambda *_: {}["walls"])
    assert "KeyError" in refused(run("pieces"))
