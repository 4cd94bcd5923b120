"""The laptop on a bad day: killed while it writes, a damaged file, a flood. What was acknowledged is never lost."""

import shutil
import subprocess
import sys
import threading
import time

import pytest
from scantling.api import Config, create_app
from scantling.cli import main
from scantling.site import Site
from scantling.store import FILE_NAME, StoreError, open_store
from scantling.sync import PROTOCOL

PHONE = "a0b1c2d3e4f50617"
#: Writes entries as fast as it can, and says each number after the store has acknowledged it.
WRITER = """
import sys
from pathlib import Path
from scantling.clock import mint_id
from scantling.store import open_store

store, device = open_store(Path(sys.argv[1])), sys.argv[2]
for seq in range(1, int(sys.argv[3])):
    with store.writing() as ledger:
        ledger.append({"id": mint_id(seq), "device": device, "seq": seq, "stamp": f"{seq:012x}-0000-{device}",
                       "version": 1, "kind": "device", "body": {"name": "x" * 500}, "supersedes": []})
    print(seq, flush=True)
sys.stdin.read()
"""
#: As many as a log holds: one that was begun anew would end in what was written before.
FEW = 30


def begin_writing(folder, device, entries):
    command = [sys.executable, "-c", WRITER, folder, device, str(entries + 1)]
    return subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)


def write_few(folder):
    """A writer that is killed while it waits."""
    process = begin_writing(folder, PHONE, FEW)
    assert [process.stdout.readline() for _ in range(FEW)] == [f"{seq}\n" for seq in range(1, FEW + 1)]
    process.kill()
    process.communicate()


def write_until_killed(folder, device, milliseconds):
    """Start a writer, kill it, and return the last number that it had acknowledged."""
    process = begin_writing(folder, device, 100_000)
    assert process.stdout.readline() == "1\n"
    time.sleep(milliseconds / 1000)
    process.kill()
    out, _ = process.communicate()
    return max([1, *(int(line) for line in out.split("\n")[:-1])])


def kept_by(folder, device=PHONE):
    store = open_store(folder)
    with store.reading() as ledger:
        numbers = [row.entry["seq"] for row in ledger.read_all() if row.entry["device"] == device]
        whole = ledger._connection.exec_driver_sql("PRAGMA integrity_check").scalar_one()
    store.close()
    assert whole == "ok"
    return numbers


@pytest.mark.parametrize("milliseconds", [0, 7, 40, 150, 400])
def test_a_laptop_killed_while_it_writes_has_every_entry_that_it_acknowledged(milliseconds, tmp_path):
    acknowledged = write_until_killed(tmp_path, PHONE, milliseconds)
    kept = kept_by(tmp_path)
    assert kept == list(range(1, len(kept) + 1))
    assert acknowledged <= len(kept) <= acknowledged + 1


def test_two_programs_on_one_notebook_keep_the_entries_of_both(tmp_path):
    devices = [letter * 16 for letter in "abc"]
    told = {}
    threads = [
        threading.Thread(target=lambda d=device: told.update({d: write_until_killed(tmp_path, d, 500)}))
        for device in devices
    ]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert all(len(kept_by(tmp_path, device)) >= told[device] for device in devices)


def test_a_journal_torn_in_its_last_bytes_opens_with_all_whole_entries_before_them(tmp_path):
    write_few(tmp_path)
    torn = tmp_path / "torn"
    torn.mkdir()
    for name in (FILE_NAME, FILE_NAME + "-wal"):
        shutil.copy(tmp_path / name, torn / name)
    whole = len(kept_by(tmp_path))
    wal = torn / (FILE_NAME + "-wal")
    wal.write_bytes(wal.read_bytes()[:-700])
    kept = kept_by(torn)
    assert kept == list(range(1, len(kept) + 1))
    assert whole - 2 <= len(kept) < whole


@pytest.fixture
def damaged(tmp_path):
    """A notebook whose pages after the first are noise."""
    write_few(tmp_path)
    kept_by(tmp_path)
    path = tmp_path / FILE_NAME
    content = path.read_bytes()
    path.write_bytes(content[:8192] + bytes(len(content) - 8192))
    return tmp_path


def test_a_damaged_file_is_said_in_one_sentence_and_not_made_anew(damaged, capsys):
    before = (damaged / FILE_NAME).read_bytes()
    assert main(["--data", str(damaged), "export", "journal"]) == 2
    err = capsys.readouterr().err
    assert err.startswith("scantling: The")
    assert err.count("\n") == 1
    assert (damaged / FILE_NAME).read_bytes()[8192:] == before[8192:]


def test_a_file_cut_off_at_its_start_is_refused(tmp_path):
    open_store(tmp_path).close()
    (tmp_path / FILE_NAME).write_bytes((tmp_path / FILE_NAME).read_bytes()[:5000])
    with pytest.raises(StoreError):
        open_store(tmp_path)


@pytest.fixture
def app(tmp_path):
    made = create_app(Config(tmp_path, site=Site()))
    yield made
    made.extensions["scantling"].store.close()


def test_many_phones_at_once_all_get_through_and_to_the_same_end(app):
    def share(number):
        device, client, entries = f"{number:016x}", app.test_client(), []
        for seq in range(1, 21):
            entries.append({
                "id": f"0190aaaa-{seq:04x}-7000-8000-{number:012x}", "device": device, "seq": seq, "version": 1,
                "stamp": f"{seq:012x}-0000-{device}", "kind": "device", "body": {"name": device}, "supersedes": [],
            })  # fmt: skip
            request = {"protocol": PROTOCOL, "device": device, "database": None, "cursor": 0, "entries": entries[-1:]}
            statuses.append(client.post("/api/sync", json=request).status_code)
            client.get("/api/houses")

    statuses = []
    threads = [threading.Thread(target=share, args=(number,)) for number in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert statuses == [200] * 160
    found = app.test_client().get("/api/houses").json
    assert {one["device"]: one["entries"] for one in found["devices"]} == {f"{n:016x}": 20 for n in range(8)}


def test_a_full_disk_answers_507_keeps_nothing_of_the_request_and_reads_on(app):
    client = app.test_client()
    assert client.post("/api/houses", json={"name": "before"}).status_code == 201
    store = app.extensions["scantling"].store
    fill(store)
    request = {"protocol": PROTOCOL, "device": PHONE, "database": None, "cursor": 0}
    entries = [
        {
            "id": f"0190aaaa-{seq:04x}-7000-8000-000000000000", "device": PHONE, "seq": seq, "version": 1,
            "stamp": f"{seq:012x}-0000-{PHONE}", "kind": "device", "body": {"name": "x" * 2000}, "supersedes": [],
        }
        for seq in range(1, 200)
    ]  # fmt: skip
    refused = client.post("/api/sync", json={**request, "entries": entries})
    assert (refused.status_code, refused.json["error"]["key"]) == (507, "disk")
    assert [one["name"] for one in client.get("/api/houses").json["houses"]] == ["before"]
    with store.reading() as ledger:
        assert PHONE not in {row.entry["device"] for row in ledger.read_all()}


def fill(store):
    """Let no connection of this store take one more page."""
    import sqlalchemy

    def limit(connection, *_):
        pages = connection.execute("PRAGMA page_count").fetchone()[0]
        connection.execute(f"PRAGMA max_page_count = {pages}")

    sqlalchemy.event.listen(store._engine, "connect", limit)
    store._engine.dispose()
