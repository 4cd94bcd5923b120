"""A notebook on a bad disk: read-only, full, moved away, served twice, damaged while it is served. Each by its name."""

import json
import os
import shutil
import signal
import sqlite3
import subprocess
import tempfile
import urllib.request
from contextlib import suppress
from pathlib import Path

import pytest
from scantling.api import Config, create_app
from scantling.cli import main
from scantling.demo_house import load_demo
from scantling.site import Site
from scantling.store import FILE_NAME, StoreError, open_store
from scantling.store.copies import KEPT, list_copies, make_copy
from scantling.upkeep import held, judge, put_right

from tests.program import Program, only_for_root, run_as_nobody

PATIENCE = 60


@pytest.fixture
def folder(tmp_path):
    load_demo(tmp_path / "notebook")
    return tmp_path / "notebook"


@pytest.fixture(scope="module")
def page():
    return Site()


@pytest.fixture
def client(folder, page):
    app = create_app(Config(folder, site=page))
    yield app.test_client()
    app.extensions["scantling"].store.close()


@pytest.fixture
def run(capsys, folder):
    def command(*arguments):
        status = main(["--data", str(folder), *map(str, arguments)])
        out, err = capsys.readouterr()
        return status, out, err

    return command


def add(client, name="attic"):
    return client.post("/api/houses", json={"name": name})


def texts(folder):
    store = open_store(folder)
    with store.reading() as ledger:
        found = [row.text for row in ledger.read_all()]
    store.close()
    return found


class Serving:
    """A server in a process of its own: its address, and what it said on standard error."""

    def __init__(self, folder, *, nobody=False):
        self.process = Program(folder, "serve", "--port", "0", nobody=nobody)
        self.address = self.process.stdout.readline().strip().replace("localhost", "127.0.0.1")

    def ask(self, path, body=None):
        data = None if body is None else json.dumps(body).encode()
        request = urllib.request.Request(self.address + path, data, {"Content-Type": "application/json"})
        try:
            with urllib.request.urlopen(request, timeout=PATIENCE) as reply:
                return reply.status, reply.read()
        except urllib.error.HTTPError as refusal:
            return refusal.code, refusal.read()

    def stop(self):
        self.process.send_signal(signal.SIGTERM)
        try:
            _, err = self.process.communicate(timeout=PATIENCE)
        finally:
            self.process.kill()
        return self.process.returncode, err


# ---- what a file is called ------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("change", "word"),
    [
        pytest.param(lambda data: b"", "is empty", id="0 bytes"),
        pytest.param(lambda data: data[:9000], "is cut off", id="cut off"),
        pytest.param(lambda data: data[:16], "is cut off", id="hardly begun"),
        pytest.param(lambda data: b"groceries: bread and milk", "is not a Scantling notebook", id="groceries"),
        pytest.param(lambda data: data.replace(b"3/16", b"5/16"), "is not what was written there", id="other readings"),
    ],
)
def test_a_file_is_called_what_it_is(change, word, folder, run):
    path = folder / FILE_NAME
    path.write_bytes(change(path.read_bytes()))
    status, out, err = run("check")
    assert (status, out) == (2, "")
    assert word in err


def test_a_strangers_file_is_left_alone_by_check_and_serve(folder, run):
    (folder / FILE_NAME).unlink()
    connection = sqlite3.connect(folder / FILE_NAME)
    connection.execute("CREATE TABLE groceries (bread)")
    connection.close()
    before = (folder / FILE_NAME).read_bytes()
    for command in (["check"], ["check", "--mend"], ["serve", "--port", "0"]):
        status, out, err = run(*command)
        assert (status, out) == (2, "")
        assert "is not a Scantling notebook" in err
    assert (folder / FILE_NAME).read_bytes() == before


def test_a_sound_notebook_is_called_sound_with_its_count(folder, run):
    make_copy(folder, "2026-08-01", judge)
    status, out, err = run("check")
    assert (status, err) == (0, "")
    assert out == (
        f"Sound: {len(texts(folder))} entries, each proved by its marks. "
        "1 dated copies, the newest notebook-2026-08-01.sqlite3.\n"
    )


def test_what_a_command_refuses_it_says_how_to_mend_and_that_mends_it(folder, run):
    before = texts(folder)
    make_copy(folder, "2026-08-01", judge)
    path = folder / FILE_NAME
    path.write_bytes(path.read_bytes().replace(b"54 5/16", b"64 5/16"))
    for command in (["pieces"], ["export", "journal"], ["boards"], ["check"]):
        status, out, err = run(*command)
        assert (status, out) == (2, ""), command
        assert "scantling check --mend" in err
    assert run("check", "--mend")[0] == 0
    assert sorted(texts(folder)) == sorted(before)
    assert list((folder / "damaged").glob(f"*/{FILE_NAME}"))


def test_rows_that_cannot_be_proved_lie_in_a_file_that_restore_reads(folder, run, tmp_path):
    path = folder / FILE_NAME
    path.write_bytes(path.read_bytes().replace(b'"text":"54 5/16"', b'"text":"64 5/16"'))
    assert "could not be proved" in run("check", "--mend")[1]
    (doubtful,) = folder.glob("damaged/*/doubtful.ndjson")
    assert "64 5/16" in doubtful.read_text()
    assert "64 5/16" not in run("export", "journal")[1]
    status, out, _ = run("restore", doubtful)
    assert (status, out.split()[0]) == (0, str(len(doubtful.read_text().splitlines())))


def test_a_disk_that_fills_up_while_mending_leaves_everything_as_it_was(folder, monkeypatch):
    make_copy(folder, "2026-08-01", judge)
    path = folder / FILE_NAME
    path.write_bytes(path.read_bytes()[:9000])
    before = path.read_bytes()
    monkeypatch.setattr("scantling.store.mend.open_store", lambda *_: (_ for _ in ()).throw(OSError(28, "No space")))
    with pytest.raises(Exception, match="No space"):
        put_right(folder)
    assert path.read_bytes() == before
    assert not (folder / "damaged").exists()


# ---- copies ---------------------------------------------------------------------------------------------------------


def test_copies_are_few_and_the_newest_stay(folder):
    days = [f"2026-08-{day:02}" for day in range(1, KEPT + 4)]
    for day in days:
        assert make_copy(folder, day, judge)
    assert [path.stem[-10:] for path in list_copies(folder)] == days[: -KEPT - 1 : -1]
    assert sorted(path.name for path in (folder / "copies").iterdir()) == sorted(p.name for p in list_copies(folder))


def test_the_copy_of_a_day_is_made_again_only_when_something_came(folder, client):
    assert make_copy(folder, "2026-08-01", judge)
    assert make_copy(folder, "2026-08-01", judge) is None
    add(client)
    assert make_copy(folder, "2026-08-01", judge)


def test_a_damaged_notebook_takes_no_copys_place(folder):
    (copy,) = [make_copy(folder, "2026-08-01", judge)]
    before = copy.read_bytes()
    connection = sqlite3.connect(folder / FILE_NAME, isolation_level=None)
    connection.execute("DROP TRIGGER journal_no_update")
    connection.execute("UPDATE journal SET entry = replace(entry, '3/16', '5/16')")
    connection.execute("DROP TRIGGER journal_no_delete")
    connection.execute('DELETE FROM journal WHERE "row" = 3')
    connection.close()
    with pytest.raises(StoreError, match="No copy"):
        make_copy(folder, "2026-08-01", judge)
    assert copy.read_bytes() == before
    assert list((folder / "copies").iterdir()) == [copy]


def test_a_copy_is_one_file_that_opens_by_itself(folder, tmp_path):
    copy = make_copy(folder, "2026-08-01", judge)
    (tmp_path / "alone").mkdir()
    shutil.copy(copy, tmp_path / "alone" / FILE_NAME)
    assert texts(tmp_path / "alone") == texts(folder)


# ---- while it is served ---------------------------------------------------------------------------------------------


def test_a_server_mends_what_it_finds_says_so_and_copies_each_day(folder):
    before = texts(folder)
    make_copy(folder, "2026-08-01", judge)
    (folder / FILE_NAME).write_bytes((folder / FILE_NAME).read_bytes()[:20_000])
    server = Serving(folder)
    status, body = server.ask("/api/journal")
    assert status == 200
    assert sorted(body.decode().splitlines()) == sorted(before)
    status, err = server.stop()
    assert status == 0
    assert "is cut off" in err
    assert "was made anew" in err
    assert len(list_copies(folder)) == 2


def test_a_second_server_on_one_folder_is_refused_and_the_first_goes_on(folder, run):
    server = Serving(folder)
    try:
        status, out, err = run("serve", "--port", "0")
        assert (status, out) == (2, "")
        assert "Another Scantling serves the notebook" in err
        assert "Another Scantling" in run("check", "--mend")[2]
        assert server.ask("/api/houses")[0] == 200
    finally:
        assert server.stop()[0] == 0
    with held(folder):
        pass


def test_the_folder_of_a_server_that_was_killed_is_free(folder):
    server = Serving(folder)
    server.process.kill()
    server.process.communicate()
    with held(folder):
        pass


def test_a_folder_deleted_under_a_server_takes_nothing_more_and_still_gives_all(client, folder):
    add(client)
    before = client.get("/api/journal").data
    shutil.rmtree(folder)
    refused = add(client, "cellar")
    assert (refused.status_code, refused.json["error"]["key"]) == (507, "gone")
    assert client.get("/api/journal").data == before
    assert client.get("/api/houses").status_code == 200
    assert not folder.exists()


@pytest.mark.parametrize("put_back", [True, False])
def test_a_file_taken_away_under_a_server_is_not_made_anew(client, folder, put_back):
    before = client.get("/api/journal").data
    (folder / FILE_NAME).rename(folder / "elsewhere")
    client.application.extensions["scantling"].store._engine.pool.dispose()
    assert add(client).status_code in (500, 507)
    if put_back:
        (folder / "elsewhere").rename(folder / FILE_NAME)
        assert add(client).status_code == 201
        assert client.get("/api/journal").data.startswith(before)
    else:
        assert not (folder / FILE_NAME).exists()


def test_a_file_replaced_under_a_server_takes_nothing_of_it(client, folder):
    add(client)
    shutil.copy(folder / FILE_NAME, folder / "other")
    os.replace(folder / "other", folder / FILE_NAME)
    assert add(client).json["error"]["key"] == "gone"


def test_a_journal_damaged_under_a_server_is_no_answer_that_breaks_off(client, folder):
    connection = sqlite3.connect(folder / FILE_NAME, isolation_level=None)
    connection.execute("DROP TRIGGER journal_no_update")
    connection.execute("""UPDATE journal SET entry = '{"body":' WHERE "row" = (SELECT max("row") FROM journal)""")
    connection.close()
    for path in ("/api/journal", "/api/houses"):
        answer = client.get(path)
        assert (answer.status_code, answer.json["error"]["key"]) == (500, "damaged")
        assert "check --mend" in answer.json["error"]["message"]


# ---- a disk that will not be written --------------------------------------------------------------------------------


def reads_of(place):
    """Commands that only read the notebook, and write what they write into a place open to all."""
    wide = place / "wide"
    wide.mkdir(exist_ok=True)
    wide.chmod(0o777)
    return [["pieces"], ["boards"], ["export", "journal"], ["export", "pieces"], ["backup", wide / "b"], ["check"],
            ["export", "journal", "--to", wide / "j"]]  # fmt: skip


@pytest.fixture
def open_place():
    """A folder that every user may enter: pytest's own are closed to others, and closed again at each of its starts."""
    place = Path(tempfile.mkdtemp(prefix="scantling-"))
    place.chmod(0o755)
    yield place
    shutil.rmtree(place)


@pytest.fixture(params=["folder", "folder with a log", "file"])
def only_read(request, open_place):
    """A notebook that nobody may read and not write; in one case the newest entries lie in its log."""
    folder = open_place / "notebook"
    load_demo(folder)
    if request.param == "folder with a log":
        store = open_store(folder)
        with store.writing() as ledger:
            ledger.append({**json.loads(texts(folder)[0]), "id": "0190aaaa-0001-7000-8000-000000000001"})
        aside = open_place / "aside"
        shutil.copytree(folder, aside)
        store.close()
        (aside / f"{FILE_NAME}-shm").unlink()
        shutil.rmtree(folder)
        aside.rename(folder)
    for path in folder.iterdir():
        path.chmod(0o444)
    folder.chmod(0o777 if request.param == "file" else 0o555)
    return folder


@only_for_root
def test_what_cannot_be_written_can_be_read_and_exported(only_read, open_place):
    for command in reads_of(open_place):
        done = run_as_nobody(only_read, *command)
        assert (done.returncode, done.stderr) == (0, ""), (command, done.stderr)
    assert (open_place / "wide" / "j").read_text().splitlines() == texts(only_read)


@only_for_root
def test_what_cannot_be_written_is_served_to_read_and_called_by_its_name(only_read):
    server = Serving(only_read, nobody=True)
    status, body = server.ask("/api/houses", {"name": "attic"})
    assert (status, json.loads(body)["error"]["key"]) == (507, "read-only")
    assert server.ask("/api/houses")[0] == 200
    assert server.ask("/api/journal")[0] == 200
    status, err = server.stop()
    assert status == 0
    assert "can be read and exported, and not written" in err


@pytest.fixture
def full_disk(tmp_path):
    """A disk of a megabyte without a byte free, with a notebook on it."""
    place = tmp_path / "disk"
    place.mkdir()
    command = ["mount", "-t", "tmpfs", "-o", "size=1m", "tmpfs", place]
    if subprocess.run(command, capture_output=True, check=False).returncode:
        pytest.skip("no disk of our own can be mounted here")
    try:
        load_demo(place / "notebook")
        fill(place / "ballast")
        yield place / "notebook"
    finally:
        subprocess.run(["umount", "--lazy", place], check=True)


def fill(ballast):
    """Write until the disk takes nothing more."""
    with ballast.open("wb", buffering=0) as file, suppress(OSError):
        for _ in range(10_000):
            file.write(bytes(512))


@only_for_root
def test_a_disk_without_a_byte_free_is_read_and_exported(full_disk, tmp_path, capsys):
    for command in reads_of(tmp_path):
        status = main(["--data", str(full_disk), *map(str, command)])
        assert (status, capsys.readouterr().err) == (0, ""), command
    assert main(["--data", str(full_disk), "export", "journal", "--to", str(full_disk / "j")]) == 2
    assert "No space left on device" in capsys.readouterr().err
    assert not (full_disk / "j").exists()


@only_for_root
def test_a_disk_without_a_byte_free_is_served_and_called_by_its_name(full_disk):
    server = Serving(full_disk)
    status, body = server.ask("/api/houses", {"name": "attic"})
    assert (status, json.loads(body)["error"]["key"]) in {(507, "read-only"), (507, "disk")}
    assert server.ask("/api/journal")[0] == 200
    status, err = server.stop()
    assert status == 0
    assert "not written" in err or "No copy" in err
