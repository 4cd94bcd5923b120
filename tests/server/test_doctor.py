"""The doctor: each thing that may be wrong is found by its key, and a machine on which all is well is told so."""

import datetime as dt
import hashlib
import json
import os
import shutil
import socket
import sqlite3
import tempfile
import threading
from contextlib import closing
from http.server import BaseHTTPRequestHandler, HTTPServer
from ipaddress import ip_address
from pathlib import Path

import pytest
from scantling.blobs import Blobs, Piece
from scantling.cli import main
from scantling.clock import DAY_MS, now_ms
from scantling.doctor import Asked, look_at_all
from scantling.lan.authority import FOLDER, load_authority
from scantling.lan.identity import take_identity
from scantling.lan.leaf import keep_leaf, leaf_path
from scantling.store import FILE_NAME, Database, open_store
from scantling.upkeep import held

from tests.ports import free_port
from tests.program import only_for_root, run_as_nobody

HOUSE_ID = "0190aaaa-0000-7000-8000-00000000000a"
HOME = ip_address("192.168.7.20")
NOW = dt.datetime(2026, 5, 4, tzinfo=dt.UTC)


@pytest.fixture(scope="module")
def kept(tmp_path_factory):
    folder = tmp_path_factory.mktemp("kept")
    open_store(folder).close()
    return folder


@pytest.fixture
def folder(kept, tmp_path):
    made = tmp_path / "notebook"
    shutil.copytree(kept, made)
    made.chmod(0o700)
    return made


@pytest.fixture
def look(folder, tmp_path):
    """The findings by key, on a machine where nothing but what a test makes so is wrong."""

    def ask(**different):
        machine = {
            "folder": folder, "port": free_port(), "run": lambda command: None, "resolve": lambda identity: [str(HOME)],
            "addresses": lambda: [HOME], "ufw": tmp_path / "no ufw", "platform": "linux",
        }  # fmt: skip
        found = list(look_at_all(Asked(**{**machine, **different})))
        assert all(finding.message.endswith(".") for finding in found)
        return {finding.key: finding for finding in found}

    return ask


def wrong(found):
    return {key for key, finding in found.items() if finding.wrong}


@pytest.fixture
def on_network(folder):
    """The notebook as it is once it was on the house's network, now."""
    identity = take_identity(folder, free_port())
    now = dt.datetime.now(dt.UTC)
    keep_leaf(folder, load_authority(folder, identity.name, now), identity.name, [HOME], now)
    return identity


def test_where_all_is_well_nothing_is_wrong_and_what_was_looked_at_is_told(look, on_network):
    found = look()
    assert wrong(found) == set()
    assert {"folder-good", "disk-good", "notebook-good", "clock-good", "port-free", "name-kept", "addresses-good",
            "authority-good", "leaf-good", "firewall-none", "not-served"} <= found.keys()  # fmt: skip


def test_it_makes_nothing_where_there_is_nothing(look, tmp_path):
    found = look(folder=tmp_path / "new")
    assert wrong(found) == set()
    assert {"folder-none", "lan-none"} <= found.keys()
    assert not (tmp_path / "new").exists()


def test_it_leaves_the_notebook_as_it_was(look, folder, on_network):
    before = {path: path.read_bytes() for path in folder.rglob("*") if path.is_file()}
    look()
    after = {path: path.read_bytes() for path in folder.rglob("*") if path.is_file()}
    assert {path: after[path] for path in before} == before


@only_for_root
def test_a_folder_that_may_not_be_written_is_said(kept):
    with tempfile.TemporaryDirectory() as parent:
        os.chmod(parent, 0o755)
        shutil.copytree(kept, Path(parent) / "notebook")
        (Path(parent) / "notebook").chmod(0o555)
        done = run_as_nobody(Path(parent) / "notebook", "doctor", "--port", free_port())
    assert (done.returncode, done.stderr) == (2, "")
    assert "cannot be written (Permission denied)" in done.stdout


def test_a_folder_that_cannot_be_read_is_said(look, tmp_path):
    (tmp_path / "file").write_text("")
    assert "folder-closed" in wrong(look(folder=tmp_path / "file"))


def test_a_folder_that_others_can_read_is_told_and_is_no_fault(look, folder):
    assert wrong(found := look()) == set()
    assert "folder-open" not in found
    os.chmod(folder, 0o755)
    assert wrong(found := look()) == set()
    assert "chmod 700" in found["folder-open"].message


def test_a_disk_that_is_nearly_full_is_said(look, monkeypatch):
    usage = type("Usage", (), {"free": 30_000_000})
    monkeypatch.setattr("shutil.disk_usage", lambda path: usage)
    found = look()
    assert wrong(found) == {"disk-full"}
    assert "Only 30 MB" in found["disk-full"].message


def test_another_server_on_the_folder_is_told(look, folder):
    with held(folder):
        assert "served" in look()
    assert "not-served" in look()


def test_a_damaged_notebook_is_said_with_what_mends_it(look, folder):
    path = folder / FILE_NAME
    path.write_bytes(path.read_bytes()[:3000])
    found = look()
    assert wrong(found) == {"notebook-bad"}
    assert "scantling check --mend" in found["notebook-bad"].message


@pytest.mark.parametrize(("change", "key", "is_wrong"), [
    ("INSERT INTO migration VALUES ('999 attic')", "newer-store", True),
    ("DELETE FROM migration WHERE name > '004'", "notebook-older", False),
])  # fmt: skip
def test_a_notebook_of_another_version_is_said(change, key, is_wrong, look, folder):
    with closing(sqlite3.connect(folder / FILE_NAME)) as connection:
        connection.execute(change)
        connection.commit()
    found = look()
    assert found[key].wrong == is_wrong
    assert wrong(found) == ({key} if is_wrong else set())


@pytest.mark.parametrize("at", [0, 86_400_000, 2**45], ids=["1970", "a day of 1970", "far"])
def test_a_clock_that_cannot_be_right_is_said(at, look):
    assert "clock-off" in wrong(look(clock=lambda: at))


def test_a_clock_before_the_notebook_was_written_is_said(look, folder):
    then = now_ms() + 3 * DAY_MS
    os.utime(folder / FILE_NAME, ns=(then * 1_000_000, then * 1_000_000))
    assert wrong(look()) == {"clock-behind"}


def test_entries_from_a_time_that_is_not_yet_are_said_with_their_device(look, folder, make_entry):
    from tests.server.test_cli_files import add

    then = now_ms() + 400 * DAY_MS
    add(folder, make_entry(1, stamp=f"{then:012x}-0000-a0b1c2d3e4f50617"))
    found = look()
    assert wrong(found) == {"clock-ahead"}
    assert "a0b1c2d3e4f50617" in found["clock-ahead"].message


def test_a_clock_that_is_set_by_no_other_is_told_and_is_no_fault(look):
    found = look(run=lambda command: "no\n" if command[0] == "timedatectl" else None)
    assert "clock-alone" in found
    assert wrong(found) == set()


class Answers(BaseHTTPRequestHandler):
    def do_GET(self):
        self.send_response(200)
        self.end_headers()
        self.wfile.write(b'{"name": "Scantling"}' if self.server.ours else b"hello")

    def log_message(self, *_):
        pass


@pytest.fixture
def taken():
    """A port at which a program answers, as another Scantling or as a stranger."""
    server = HTTPServer(("127.0.0.1", 0), Answers)
    thread = threading.Thread(target=server.serve_forever, args=[0.02], daemon=True)
    thread.start()
    yield server
    server.shutdown()
    server.server_close()


@pytest.mark.parametrize(("ours", "served", "key"), [
    (False, False, "port-taken"), (False, True, "port-taken"), (True, False, "port-other"), (True, True, None),
])  # fmt: skip
def test_a_port_that_another_has_is_said_and_who_has_it(ours, served, key, look, folder, taken):
    taken.ours = ours
    if served:
        with held(folder):
            found = look(port=taken.server_port)
    else:
        found = look(port=taken.server_port)
    assert wrong(found) == ({key} if key else set())
    assert key or "port-ours" in found


def test_a_port_of_the_network_that_another_has_is_said(look, on_network):
    with socket.create_server(("0.0.0.0", on_network.port)):
        found = look()
    assert wrong(found) == {"port-taken"}
    assert "--lan-port" in found["port-taken"].message


@pytest.mark.parametrize(("answered", "key"), [
    ([], "name-silent"), ([str(HOME)], None), (["192.168.7.99"], "name-taken"),
    ([str(HOME), "192.168.7.99"], "name-taken"),
])  # fmt: skip
def test_what_the_network_answers_to_the_name_is_held_against_this_machine(answered, key, look, folder, on_network):
    with held(folder), socket.create_server(("0.0.0.0", on_network.port)):
        found = look(resolve=lambda identity: answered)
    assert wrong(found) == ({key} if key else set())
    assert key or "name-good" in found


def test_a_machine_on_no_network_is_said(look, on_network):
    assert wrong(look(addresses=list)) == {"addresses-none"}


def test_a_damaged_identity_is_said(look, folder, on_network):
    (folder / "network.json").write_text("{")
    assert wrong(look()) == {"identity-broken"}


def later(days):
    return lambda: now_ms() + days * DAY_MS


@pytest.mark.parametrize(("days", "shown", "keys"), [
    (400, False, set()), (400, True, {"leaf-stale"}), (3700, False, {"authority-over"}),
])  # fmt: skip
def test_a_certificate_that_is_over_is_wrong_where_it_is_shown(days, shown, keys, look, folder, on_network):
    os.utime(folder / FILE_NAME, ns=(0, 0))
    if shown:
        with held(folder), socket.create_server(("0.0.0.0", on_network.port)):
            found = look(clock=later(days))
    else:
        found = look(clock=later(days))
    assert wrong(found) == keys
    assert shown or "leaf-next" in found


def test_an_authority_for_another_name_is_said(look, folder, on_network):
    (folder / "network.json").write_text(json.dumps({"name": "scantling-zzzzz.local", "port": on_network.port}))
    assert wrong(look()) == {"authority-name"}


@pytest.mark.skipif(os.name != "posix", reason="Windows keeps no such bits")
@pytest.mark.parametrize("name", ["authority.pem", "server.pem"])
def test_a_key_that_others_can_read_is_said(name, look, folder, on_network):
    os.chmod(folder / FOLDER / name, 0o644)
    assert wrong(look()) == {"key-open"}


@pytest.mark.parametrize(("name", "days", "key"), [
    ("shed.home.arpa", 0, None), ("192.168.7.20", 0, None), ("kitchen.home.arpa", 0, "own-name"),
    ("192.168.7.21", 0, "own-name"), ("shed.home.arpa", 390, "own-soon"), ("shed.home.arpa", 400, "own-over"),
    ("shed.home.arpa", -30, "own-not-yet"),
])  # fmt: skip
def test_a_certificate_of_ones_own_is_held_against_names_and_clock(name, days, key, look, folder, tmp_path):
    now = dt.datetime.now(dt.UTC)
    keep_leaf(tmp_path, load_authority(tmp_path, "shed.home.arpa", now), "shed.home.arpa", [HOME], now)
    both = leaf_path(tmp_path)
    os.utime(folder / FILE_NAME, ns=(0, 0))
    stamps = {"clock-ahead"} if days < 0 else set()
    found = look(certificate=both, key=both, names=[name], clock=later(days))
    assert wrong(found) - stamps == ({key} if key else set())
    assert key or "own-good" in found


def test_a_certificate_of_ones_own_that_is_for_another_name_is_said_when_serving_begins(folder, tmp_path, capsys):
    """The port is taken, so that nothing is served in the end."""
    now = dt.datetime.now(dt.UTC)
    keep_leaf(tmp_path, load_authority(tmp_path, "shed.home.arpa", now), "shed.home.arpa", [HOME], now)
    both = str(leaf_path(tmp_path))
    with socket.create_server(("0.0.0.0", 0)) as taken:
        port = str(taken.getsockname()[1])
        way = ["--cert", both, "--key", both, "--name", "kitchen.home.arpa", "--lan-port", port]
        assert main(["--data", str(folder), "serve", "--port", "0", *way]) == 2
    err = capsys.readouterr().err
    assert "is for shed.home.arpa, 192.168.7.20 and not for kitchen.home.arpa" in err
    assert f"Port {port} is taken" in err


@pytest.mark.parametrize("text", [b"", b"hello", b"-----BEGIN CERTIFICATE-----\nAAAA\n-----END CERTIFICATE-----\n"])
def test_a_certificate_that_is_none_is_said(text, look, tmp_path):
    (tmp_path / "own.pem").write_bytes(text)
    assert wrong(look(certificate=tmp_path / "own.pem", key=tmp_path / "own.pem")) == {"own-certificate"}


def firewall_cmd(allowed):
    def run(command):
        if command == ("firewall-cmd", "--state"):
            return "running\n"
        if command[0] == "firewall-cmd":
            return "yes\n" if command[1].partition("=")[2].partition("/")[0] in allowed else "no\n"
        return None

    return run


def test_a_firewall_that_can_be_asked_is_asked(look, on_network):
    assert "firewall-open" in look(run=firewall_cmd({str(on_network.port), str(on_network.trust_port)}))
    found = look(run=firewall_cmd({str(on_network.port)}))
    assert wrong(found) == {"firewall-closed"}
    assert f"--add-port={on_network.trust_port}/tcp" in found["firewall-closed"].message


@pytest.mark.parametrize(("rules", "key", "is_wrong"), [
    (None, "firewall-perhaps", False), ("", "firewall-closed", True),
    ("### tuple ### allow tcp {0} 0.0.0.0/0 any 0.0.0.0/0 in\n### tuple ### allow any {1} ::/0 any ::/0 in\n",
     "firewall-open", False),
])  # fmt: skip
def test_a_firewall_whose_rules_are_hidden_is_a_guess_and_no_fault(rules, key, is_wrong, look, on_network, tmp_path):
    (tmp_path / "ufw").mkdir()
    (tmp_path / "ufw" / "ufw.conf").write_text("# of the tests\nENABLED=yes\n")
    if rules is not None:
        (tmp_path / "ufw" / "user.rules").write_text(rules.format(on_network.port, on_network.trust_port))
    found = look(ufw=tmp_path / "ufw")
    assert found[key].wrong == is_wrong
    assert wrong(found) == ({key} if is_wrong else set())


@pytest.mark.parametrize(("platform", "said"), [
    ("darwin", "Firewall is enabled. (State = 1)"), ("win32", "State                                 ON"),
])  # fmt: skip
def test_a_firewall_of_another_system_is_a_guess(platform, said, look, on_network):
    assert "firewall-perhaps" in look(platform=platform, run=lambda command: said)
    assert "firewall-none" in look(platform=platform, run=lambda command: "State off, disabled")


def test_a_database_that_does_not_answer_is_said(look):
    assert wrong(look(database=Database("postgresql+psycopg://nobody@127.0.0.1:1/none"))) == {"no-database"}


def test_the_command_says_each_finding_and_its_status_whether_one_is_wrong(folder, capsys, taken):
    taken.ours = False
    command = ["--data", str(folder), "doctor"]
    assert main([*command, "--port", str(free_port())]) == 0
    assert capsys.readouterr().out.endswith("\nNothing is wrong.\n")
    assert main([*command, "--port", str(taken.server_port)]) == 2
    out = capsys.readouterr().out
    assert "WRONG  Port" in out
    assert out.endswith("\n1 of these are wrong.\n")
    assert main([*command, "--port", str(taken.server_port), "--json"]) == 2
    told = json.loads(capsys.readouterr().out)
    assert told["wrong"] == 1
    assert {"about": "port", "key": "port-taken", "wrong": True} in [
        {key: value for key, value in finding.items() if key != "message"} for finding in told["findings"]
    ]


PHOTO = b"a photo of the bay"


def digest_of(data):
    return hashlib.sha256(data).hexdigest()


@pytest.fixture
def photo(folder, make_entry):
    """An entry that names a photo, and the blobs beside the notebook, which have it not yet."""
    from tests.server.test_cli_files import add

    named = {"attachment": HOUSE_ID, "of": HOUSE_ID, "blob": digest_of(PHOTO), "size": len(PHOTO), "type": "image/jpeg"}
    add(folder, make_entry(1, kind="attachment", body={**named, "name": ""}))
    return Blobs(folder / "blobs")


def bring(blobs, data, upto=None):
    blobs.receive(Piece(digest_of(data), len(data), 0, data[:upto]))


def test_attachments_that_are_all_here_are_proved_and_told(look, photo):
    bring(photo, PHOTO)
    assert wrong(found := look(blobs=photo)) == set()
    assert "All 1 attachments" in found["blobs-good"].message


def test_an_attachment_that_is_named_and_is_not_here_is_said_with_who_brings_it(look, photo):
    assert wrong(found := look(blobs=photo)) == {"blobs-missing"}
    assert digest_of(PHOTO)[:12] in found["blobs-missing"].message
    assert "scantling restore" in found["blobs-missing"].message
    assert "blobs-good" not in found


def test_one_that_is_still_coming_is_told_and_is_no_fault(look, photo):
    bring(photo, PHOTO, upto=5)
    assert wrong(found := look(blobs=photo)) == set()
    assert "blobs-coming" in found
    assert "blobs-good" not in found


def test_one_that_the_disk_has_spoilt_is_said_by_its_file_until_it_is_whole_again(look, photo, folder):
    bring(photo, PHOTO)
    path = folder / "blobs" / digest_of(PHOTO)[:2] / digest_of(PHOTO)
    path.write_bytes(b"A" + PHOTO[1:])
    assert wrong(found := look(blobs=photo)) == {"blob-spoilt"}
    assert str(path) in found["blob-spoilt"].message
    photo.prove(digest_of(PHOTO))
    assert wrong(found := look(blobs=photo)) == {"blobs-missing"}
    assert str(folder / "blobs" / "spoilt") in found["blobs-aside"].message
    bring(photo, PHOTO)
    assert wrong(found := look(blobs=photo)) == set()
    assert {"blobs-good", "blobs-aside"} <= found.keys()


def test_one_that_no_entry_names_is_told_and_is_no_fault(look, photo):
    bring(photo, PHOTO)
    bring(photo, b"of nothing")
    assert wrong(found := look(blobs=photo)) == set()
    assert digest_of(b"of nothing")[:12] in found["blobs-unnamed"].message
    assert digest_of(PHOTO)[:12] not in found["blobs-unnamed"].message


def test_attachments_that_cannot_be_read_are_said(look, photo, monkeypatch):
    monkeypatch.setattr(Blobs, "damaged", lambda blobs: Path("/").read_bytes())
    assert wrong(look(blobs=photo)) == {"blobs-closed"}


def test_the_command_looks_at_the_attachments_beside_its_notebook(photo, folder, capsys):
    main(["--data", str(folder), "--json", "doctor", "--port", str(free_port())])
    keys = {finding["key"] for finding in json.loads(capsys.readouterr().out)["findings"]}
    assert "blobs-missing" in keys
