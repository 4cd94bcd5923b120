"""Attachments on the laptop: piece by piece, cut off and gone on with, killed in the middle, by file and back."""

import hashlib
import json
import os
import random
import subprocess
import sys
import time

import pytest
from scantling.blobs import BlobError, Blobs, Piece, keep, parse_piece
from scantling.blobs.piece import BLOB_BYTES, PIECE_BYTES
from scantling.cli import main
from scantling.engine.errors import EngineError
from scantling.store import open_store

STEP = 100_000


def photo(seed=1, size=450_000):
    return random.Random(seed).randbytes(size)


def name_of(data):
    return hashlib.sha256(data).hexdigest()


def pieces(data, start=0, step=STEP, name=None):
    for at in range(start, len(data), step):
        yield Piece(name or name_of(data), len(data), at, data[at : at + step])


@pytest.fixture
def blobs(tmp_path):
    return Blobs(tmp_path / "blobs")


def refused(key, work):
    with pytest.raises(BlobError) as error:
        work()
    assert error.value.key == key
    return error.value


def test_a_blob_comes_in_pieces_and_is_whole_with_the_last_of_them(blobs):
    data = photo()
    assert blobs.offset(name_of(data)) == 0
    assert [blobs.receive(piece) for piece in pieces(data)] == [100_000, 200_000, 300_000, 400_000, None]
    assert blobs.offset(name_of(data)) is None
    assert blobs.whole() == [name_of(data)]
    assert b"".join(piece.data for piece in blobs.pieces(name_of(data))) == data


def test_it_goes_on_where_it_was_cut_off_also_in_another_process_and_from_any_byte(blobs, tmp_path):
    data = photo()
    first, second, *_ = pieces(data)
    blobs.receive(first)
    blobs.receive(second)
    again = Blobs(tmp_path / "blobs")
    assert again.offset(name_of(data)) == 200_000
    # What a process that was killed in the middle of a piece leaves: any number of bytes.
    (path,) = (tmp_path / "blobs" / "coming").iterdir()
    path.write_bytes(data[:234_567])
    assert again.offset(name_of(data)) == 234_567
    for piece in pieces(data, start=234_567):
        last = again.receive(piece)
    assert last is None


def test_a_piece_that_came_already_is_no_fault_and_one_too_far_says_where_to_go_on(blobs):
    data = photo()
    first, second, third, *_ = pieces(data)
    blobs.receive(first)
    assert blobs.receive(first) == 100_000
    refusal = refused("blob-elsewhere", lambda: blobs.receive(third))
    assert "100000" in refusal.message
    blobs.receive(second)
    assert blobs.receive(Piece(name_of(data), len(data), 150_000, data[150_000:350_000])) == 350_000
    blobs.receive(Piece(name_of(data), len(data), 350_000, data[350_000:]))
    assert blobs.receive(first) is None


def test_what_is_not_what_its_name_says_is_thrown_away_and_may_come_again(blobs):
    data = photo()
    wrong = [*pieces(data[:-1] + b"?", name=name_of(data))]
    for piece in wrong[:-1]:
        blobs.receive(piece)
    refused("blob-damaged", lambda: blobs.receive(wrong[-1]))
    assert (blobs.whole(), blobs.offset(name_of(data))) == ([], 0)
    assert [*map(blobs.receive, pieces(data))][-1] is None


def test_a_torn_end_that_has_the_right_length_does_not_hold_the_blob_up(blobs, tmp_path):
    """A power cut may leave zeros, or all bytes and no new name."""
    data = photo()
    blobs.receive(next(pieces(data)))
    (path,) = (tmp_path / "blobs" / "coming").iterdir()
    path.write_bytes(data)
    last = [*pieces(data)][-1]
    assert blobs.receive(last) is None
    assert blobs.whole() == [name_of(data)]


def test_who_asks_after_one_that_has_all_its_bytes_and_no_name_yet_is_told_that_it_is_whole(blobs, tmp_path):
    """Its sender would be asked for the piece after the last, and has none."""
    data = photo()
    blobs.receive(next(pieces(data)))
    (path,) = (tmp_path / "blobs" / "coming").iterdir()
    path.write_bytes(data)
    assert Blobs(tmp_path / "blobs").offset(name_of(data)) is None
    assert blobs.whole() == [name_of(data)]


def test_one_that_has_all_its_bytes_and_a_wrong_one_among_them_is_asked_for_from_its_start(blobs, tmp_path):
    data = photo()
    blobs.receive(next(pieces(data)))
    (path,) = (tmp_path / "blobs" / "coming").iterdir()
    path.write_bytes(data[:-1] + b"?")
    assert blobs.offset(name_of(data)) == 0
    assert [*map(blobs.receive, pieces(data))][-1] is None


@pytest.mark.parametrize(("change", "key"), [
    ({"digest": "0" * 64}, "piece-damaged"), ({"data": "AAAA"}, "piece-damaged"), ({"data": "*"}, "piece-damaged"),
    ({"data": ""}, "piece-damaged"), ({"data": "é"}, "piece-damaged"), ({"at": 449_999}, "piece-outside"),
    ({"size": BLOB_BYTES + 1}, "bad-field"), ({"size": 0}, "bad-field"), ({"at": -1}, "bad-field"),
    ({"blob": "../../etc/passwd"}, "bad-field"), ({"blob": "A" * 64}, "bad-field"), ({"more": 1}, "bad-field"),
    ({"data": "A" * (PIECE_BYTES * 4 // 3 + 8)}, "bad-field"),
    ({"size": 1.5}, "bad-field"), ({"blob": None}, "bad-field"),
], ids=str)  # fmt: skip
def test_a_piece_that_is_none_is_refused_by_name(change, key):
    with pytest.raises(EngineError) as refusal:
        parse_piece({**next(pieces(photo())).body(), **change})
    assert refusal.value.key == key


def test_so_many_and_so_much_and_no_more(blobs, monkeypatch):
    monkeypatch.setattr(keep, "COMING_AT_MOST", 2)
    monkeypatch.setattr(keep, "BLOBS_AT_MOST", 3)
    begun = [photo(seed) for seed in range(4)]
    for data in begun[:2]:
        blobs.receive(next(pieces(data)))
    refused("too-many-coming", lambda: blobs.receive(next(pieces(begun[2]))))
    later = Blobs(blobs._folder, lambda: time.time() + keep.FORGOTTEN_SECONDS + 60)
    assert later.receive(next(pieces(begun[2]))) == STEP  # in the place of one that did not go on for a month
    for data in begun[1:3]:
        assert [*map(blobs.receive, pieces(data, start=blobs.offset(name_of(data))))][-1] is None
    assert [*map(blobs.receive, pieces(begun[0]))][-1] is None
    refused("too-many-blobs", lambda: blobs.receive(next(pieces(begun[3]))))
    monkeypatch.setattr(keep, "FREE_BYTES", 10**18)
    refused("no-room", lambda: blobs.receive(next(pieces(begun[3]))))


def test_what_is_asked_for_and_is_not_here_is_said(blobs):
    refused("no-such-blob", lambda: blobs.read("0" * 64, 0))
    refused("no-such-blob", lambda: blobs.read("../notebook.sqlite3", 0))
    data = photo(size=10)
    blobs.receive(next(pieces(data)))
    refused("piece-outside", lambda: blobs.read(name_of(data), 10))


def test_a_device_asks_what_is_lacking_brings_it_and_another_fetches_it(client):
    here, coming, away = photo(1), photo(2), photo(3)
    for piece in pieces(here):
        assert client.post("/api/blobs", json=piece.body()).status_code == 200
    assert client.post("/api/blobs", json=next(pieces(coming)).body()).json == {"offset": STEP}
    named = [name_of(data) for data in (here, coming, away)]
    assert client.post("/api/blobs/lacking", json={"blobs": named}).json == {
        "lacking": [{"blob": named[1], "offset": STEP}, {"blob": named[2], "offset": 0}]
    }
    read, at = b"", 0
    while at < len(here):
        piece = parse_piece(client.get(f"/api/blobs/{named[0]}?at={at}").json)
        read, at = read + piece.data, at + len(piece.data)
    assert read == here
    assert client.get(f"/api/blobs/{named[1]}").status_code == 404
    ahead = [*pieces(coming)][2].body()
    assert client.post("/api/blobs", json=ahead).status_code == 409
    assert client.post("/api/blobs", json={**ahead, "digest": "0" * 64}).status_code == 422


def test_one_that_the_disk_has_spoilt_is_not_handed_out_and_comes_again_from_who_has_it(client, tmp_path):
    data = photo(1)
    for piece in pieces(data):
        client.post("/api/blobs", json=piece.body())
    blob = name_of(data)
    path = tmp_path / "blobs" / blob[:2] / blob
    path.write_bytes(path.read_bytes()[:-1] + b"?")
    assert client.get(f"/api/blobs/{blob}").status_code == 404
    assert (tmp_path / "blobs" / "spoilt" / blob).read_bytes()[-1:] == b"?"
    assert client.post("/api/blobs/lacking", json={"blobs": [blob]}).json == {"lacking": [{"blob": blob, "offset": 0}]}
    for piece in pieces(data):
        client.post("/api/blobs", json=piece.body())
    assert path.read_bytes() == data


def test_an_attachment_names_its_bytes_and_goes_with_something(client):
    house = client.post("/api/houses", json={"name": "the house", "built": None}).json["entry"]["body"]["house"]
    said = {"blob": "0f" * 32, "size": 3, "type": "image/jpeg", "name": "behind the plaster"}
    made = client.post(f"/api/of/{house}/attachments", json=said).json["entry"]["body"]
    (listed,) = client.get(f"/api/of/{house}/attachments").json["attachments"]
    assert (listed["attachment"], listed["blob"], listed["size"]) == (made["attachment"], "0f" * 32, 3)
    client.put(f"/api/attachments/{made['attachment']}", json={**said, "name": "the stud"})
    (listed,) = client.get(f"/api/of/{house}/attachments").json["attachments"]
    assert listed["name"] == "the stud"
    client.post(f"/api/entries/{listed['entries'][0]}/strike", json={"why": ""})


@pytest.fixture
def kept(tmp_path, make_entry):
    """A notebook with two entries and two attachments."""
    folder = tmp_path / "kept"
    store = open_store(folder)
    with store.writing() as ledger:
        ledger.append_all([make_entry(1), make_entry(2)])
    store.close()
    for seed in (1, 2):
        [*map(Blobs(folder / "blobs").receive, pieces(photo(seed)))]
    return folder


def run(folder, *arguments):
    return main(["--data", str(folder), *map(str, arguments)])


def test_a_backup_holds_the_attachments_and_restore_brings_them_into_another_notebook(kept, tmp_path, capsys):
    assert run(kept, "backup", tmp_path / "file.ndjson") == 0
    assert "2 entries and 2 attachments are in" in capsys.readouterr().out
    assert run(tmp_path / "other", "restore", tmp_path / "file.ndjson") == 0
    assert capsys.readouterr().out == "2 entries restored, 0 were here already. 2 attachments were added.\n"
    assert Blobs(tmp_path / "other" / "blobs").whole() == sorted(name_of(photo(seed)) for seed in (1, 2))
    assert run(tmp_path / "other", "restore", tmp_path / "file.ndjson") == 0
    assert capsys.readouterr().out == "0 entries restored, 2 were here already. 0 attachments were added.\n"


def test_a_backup_cut_off_in_an_attachment_says_so_and_the_whole_one_goes_on_from_there(kept, tmp_path, capsys):
    run(kept, "backup", tmp_path / "file.ndjson")
    lines = (tmp_path / "file.ndjson").read_bytes().splitlines(keepends=True)
    (tmp_path / "short.ndjson").write_bytes(b"".join(lines[:-1]))
    capsys.readouterr()
    assert run(tmp_path / "other", "restore", tmp_path / "short.ndjson") == 2
    assert "2 attachments follow, and 1 are whole" in capsys.readouterr().err
    assert run(tmp_path / "other", "restore", tmp_path / "file.ndjson") == 0
    assert "1 attachments were added" in capsys.readouterr().out


def test_a_damaged_line_of_an_attachment_is_named_and_the_others_go_in(kept, tmp_path, capsys):
    run(kept, "backup", tmp_path / "file.ndjson")
    lines = (tmp_path / "file.ndjson").read_text().splitlines()
    piece = json.loads(lines[3])
    lines[3] = json.dumps({**piece, "data": piece["data"][:-8] + "AAAAAAA="})
    (tmp_path / "spoilt.ndjson").write_text("\n".join(lines))
    capsys.readouterr()
    assert run(tmp_path / "other", "restore", tmp_path / "spoilt.ndjson") == 2
    err = capsys.readouterr().err
    assert "Line 4" in err
    assert len(Blobs(tmp_path / "other" / "blobs").whole()) == 1


def test_check_says_which_attachment_is_no_longer_what_it_was(kept, capsys):
    assert run(kept, "check") == 0
    blob = name_of(photo(1))
    path = kept / "blobs" / blob[:2] / blob
    path.write_bytes(path.read_bytes()[:-1] + b"?")
    assert run(kept, "check") == 2
    assert str(path) in capsys.readouterr().err


#: Takes pieces for ever, as a laptop does; the test ends it in the middle.
ENDLESS = """
import sys
sys.path.insert(0, sys.argv[2])
from pathlib import Path
from scantling.blobs import Blobs
from tests.server.test_blobs import photo, pieces
blobs = Blobs(Path(sys.argv[1]))
for piece in pieces(photo(9, 4_000_000), start=blobs.offset(next(pieces(photo(9, 4_000_000))).blob) or 0, step=7_000):
    print(blobs.receive(piece), flush=True)
"""


def test_a_process_killed_while_it_writes_has_what_it_acknowledged_and_the_next_goes_on(tmp_path):
    root = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
    data, chance, folder = photo(9, 4_000_000), random.Random(4), tmp_path / "blobs"
    for _ in range(2):
        process = subprocess.Popen([sys.executable, "-c", ENDLESS, folder, root], stdout=subprocess.PIPE, text=True)
        said = 0
        for _ in range(chance.randrange(5, 90)):
            said = int(process.stdout.readline())
        process.kill()
        rest = [line for line in process.communicate()[0].splitlines(keepends=True) if line.endswith("\n")]
        said = int(rest[-1]) if rest else said
        assert said <= Blobs(folder).offset(name_of(data)) < len(data)
    blobs = Blobs(folder)
    assert [*map(blobs.receive, pieces(data, start=blobs.offset(name_of(data))))][-1] is None
    assert b"".join(piece.data for piece in blobs.pieces(name_of(data))) == data
