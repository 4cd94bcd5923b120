"""The journal as a file: what is sound goes in, whatever else is in the file."""

import gzip
import json
import threading
import tracemalloc

import pytest
from scantling.engine.errors import EngineError
from scantling.journal_file.lines import FORMAT, LINE_AT_MOST, heading, read_lines
from scantling.journal_file.restoring import INVENTED, LEFT_OUT_AT_MOST, restore
from scantling.site import web_folder
from scantling.store import canonical_text, open_store

LINES = "application/x-ndjson"


def texts(make_entry, count):
    return [canonical_text(make_entry(seq, f"küche {seq} ¼ 🪚")) for seq in range(1, count + 1)]


def ids_of(store):
    with store.reading() as ledger:
        return [row.entry["id"] for row in ledger.read_all()]


def bring(store, *lines, left_out=lambda line: None):
    return restore(store, ["\n".join(lines).encode()], left_out)


@pytest.mark.parametrize("size", [1, 2, 3, 7, 64, 10**6])
@pytest.mark.parametrize("ending", ["\n", "\r\n"])
@pytest.mark.parametrize("coding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "utf-32"])
def test_a_journal_is_read_in_every_encoding_and_in_pieces_of_any_size(coding, ending, size, make_entry):
    written = texts(make_entry, 3)
    data = ending.join(written).encode(coding)
    pieces = [data[start : start + size] for start in range(0, len(data), size)]
    assert [line.text for line in read_lines(pieces)] == written


@pytest.mark.parametrize("coding", ["utf-16-le", "utf-16-be"])
def test_a_byte_lost_from_utf_16_costs_no_entry_before_it(coding, store, make_entry):
    first, second = texts(make_entry, 2)
    data = f"{first}\n{second}".encode(coding)[:-1]
    restored = restore(store, [data])
    assert (restored.stored, restored.left_out) == (1, 1)


DAMAGES = {
    "cut off": lambda line: line[:-20],
    "cut off at its start": lambda line: line[20:],
    "not text": lambda line: line[:40] + b"\xff\xfe" + line[42:],
    "a byte of a letter lost": lambda line: line.replace("ü".encode(), "ü".encode()[:1]),
    "zeros": lambda line: line[:30] + bytes(30) + line[60:],
    "noise": lambda line: b"groceries: bread",
    "a number": lambda line: b"12",
    "an object of something else": lambda line: b'{"wall": 12}',
    "a field more": lambda line: line[:-1] + b',"more":1}',
    "a field less": lambda line: line.replace(b'"supersedes":[],', b""),
    "too deep": lambda line: b"[" * 100_000,
    "too long": lambda line: b'"' + b"x" * (LINE_AT_MOST + 1),
    "infinite": lambda line: line.replace(b'"version":1', b'"version":Infinity'),
    "half a character": lambda line: line.replace("ü".encode(), b"\\ud83d"),
    "two on a line": lambda line: line + line,
}


@pytest.mark.parametrize("damage", DAMAGES.values(), ids=DAMAGES)
def test_a_damaged_line_is_named_by_its_number_and_kept_and_the_others_go_in(damage, store, make_entry):
    lines = [text.encode() for text in texts(make_entry, 5)]
    lines[2] = damage(lines[2])
    kept = []
    restored = restore(store, [b"\n".join(lines)], kept.append)

    assert (restored.stored, restored.known, restored.left_out) == (4, 0, 1)
    assert [error.message[:6] for error in restored.refusals] == ["Line 3"]
    assert kept[0].number == 3
    assert kept[0].raw == lines[2] or len(lines[2]) > LINE_AT_MOST
    assert ids_of(store) == [json.loads(text)["id"] for number, text in enumerate(texts(make_entry, 5)) if number != 2]


def test_the_same_file_twice_is_once(store, make_entry):
    lines = texts(make_entry, 5)
    assert [(one.stored, one.known) for one in (bring(store, *lines), bring(store, *lines))] == [(5, 0), (0, 5)]


def test_what_a_heading_says_and_is_not_there_is_told(store, make_entry):
    head = json.dumps(heading(5))
    lines = texts(make_entry, 5)
    assert bring(store, head, *lines).cut_short() is None
    short = bring(store, head, *lines[:3]).cut_short()
    assert "5 entries" in short.message
    assert "3 do" in short.message


@pytest.mark.parametrize("entries", ["many", None, [], 1.5])
def test_a_heading_that_makes_no_sense_is_no_reason_to_leave_anything_out(entries, store, make_entry):
    restored = bring(store, json.dumps({"format": FORMAT, "entries": entries}), *texts(make_entry, 2))
    assert (restored.stored, restored.left_out, restored.cut_short()) == (2, 0, None)


def test_two_backups_one_behind_the_other_are_one_file(store, make_entry):
    lines = texts(make_entry, 6)
    restored = bring(store, json.dumps(heading(3)), *lines[:3], json.dumps(heading(3)), *lines[3:])
    assert (restored.stored, restored.left_out, restored.cut_short()) == (6, 0, None)


def test_a_disk_that_fills_up_on_the_way_says_how_far_it_came(store, make_entry):
    import sqlalchemy

    def limit(connection, *_):
        connection.execute("PRAGMA max_page_count = 300")

    sqlalchemy.event.listen(store._engine, "connect", limit)
    store._engine.dispose()
    with pytest.raises(EngineError, match=r"Before that, \d+ entries of the file were added"):
        bring(store, *(canonical_text(make_entry(seq, "x" * 1000)) for seq in range(1, 4000)))
    assert len(ids_of(store)) % 500 == 0
    assert ids_of(store)


def test_the_invented_house_is_the_pages_and_stands_in_nobodys_way(store, make_entry):
    page = (web_folder() / "notebook" / "write.js").read_text()
    assert f'INVENTED = "{INVENTED}"' in page

    def house(number, which):
        return make_entry(number, kind="house", body={"house": which, "name": "a house", "built": None})

    for number, which in enumerate([INVENTED, "0190bbbb-0000-7000-8000-00000000000b"], start=1):
        assert restore(store, [json.dumps(house(number, which)).encode()], beside="…").stored == 1
    with pytest.raises(EngineError, match="another notebook"):
        restore(store, [json.dumps(house(3, "0190cccc-0000-7000-8000-00000000000c")).encode()], beside="…")


def test_a_file_of_nothing_but_noise_is_given_up(store, make_entry):
    with pytest.raises(EngineError, match="it is no journal"):
        bring(store, *["groceries"] * (LEFT_OUT_AT_MOST + 1))


@pytest.fixture
def post(client):
    def send(data, **headers):
        return client.post("/api/journal", data=data, content_type=LINES, headers=headers)

    return send


def test_the_api_takes_what_is_sound_and_names_the_rest(post, make_entry):
    lines = texts(make_entry, 3)
    told = post("\n".join([lines[0], "torn", *lines[1:]])).json
    assert (told["stored"], told["left_out"]) == (3, 1)
    assert told["refused"][0]["message"].startswith("Line 2 ")


def test_a_file_with_nothing_sound_in_it_is_refused(post):
    refused = post("groceries: bread\nand milk")
    assert (refused.status_code, refused.json["error"]["key"]) == (400, "not-json")


def test_64_megabytes_of_packed_blank_lines_cost_next_to_no_memory(post, make_entry):
    packed = gzip.compress(b"\n" * 60_000_000 + canonical_text(make_entry(1)).encode())
    tracemalloc.start()
    told = post(packed, **{"Content-Encoding": "gzip"})
    most = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert told.json["stored"] == 1
    assert most < 10_000_000


def test_what_unpacks_to_more_than_the_limit_is_refused(post):
    refused = post(gzip.compress(b"\n" * 65_000_000), **{"Content-Encoding": "gzip"})
    assert (refused.status_code, refused.json["error"]["key"]) == (413, "too-large")


@pytest.mark.parametrize("spoil", [lambda data: data[:-9], lambda data: data + b"x", lambda data: b"x" + data])
def test_gzip_that_is_not_whole_is_refused(spoil, post, make_entry):
    packed = spoil(gzip.compress("\n".join(texts(make_entry, 3)).encode()))
    refused = post(packed, **{"Content-Encoding": "gzip"})
    assert (refused.status_code, refused.json["error"]["key"]) == (400, "not-gzip")


def test_others_write_while_a_long_journal_comes_in(store, tmp_path, make_entry):
    """3,000 entries here; the pauses between the batches are what lets the others in, not the number of batches."""
    other, written = open_store(tmp_path), []

    def write():
        for seq in range(1, 21):
            with other.writing() as ledger:
                written.append(ledger.append(make_entry(seq, device="f" * 16)))

    writer = threading.Thread(target=write)
    lines = [canonical_text(make_entry(seq)).encode() + b"\n" for seq in range(1, 3_001)]
    writer.start()
    restored = restore(store, lines)
    writer.join()
    other.close()
    assert (restored.stored, sum(written)) == (3_000, 20)
