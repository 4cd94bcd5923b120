"""Damaged notebook files of every kind that came to mind, and of kinds that chance brings.

Of each: it is noticed, unless every entry is still there and proved; nothing but what was written is ever passed on;
and mending brings back all that a copy holds, and all that the file itself still proves.
"""

import json
import random
import shutil
import sqlite3

import pytest
from scantling.cli import main
from scantling.store import FILE_NAME, StoreError, canonical_text, digest_of, open_store
from scantling.store.copies import make_copy
from scantling.store.ledger import next_mark
from scantling.upkeep import judge, look, put_right

PHONE = "a0b1c2d3e4f50617"
IN_OLDER, IN_COPY, ENTRIES = 60, 100, 160
SEED = 20_260_801


def entry(number):
    """Readings as a phone writes them; every twentieth so long that it fills pages of its own."""
    text = f"{number % 90 + 10} 3/16" + " shy" * (1500 if number % 20 == 0 else 0)
    return {
        "id": f"0190aaaa-{number:04x}-7000-8000-{PHONE[:12]}", "device": PHONE, "seq": number, "version": 1,
        "stamp": f"0190aaaa{number:04x}-0000-{PHONE}", "kind": "reading", "supersedes": [],
        "body": {"of": "0190aaaa-0000-7000-8000-000000000001", "what": "length", "text": text},
    }  # fmt: skip


TEXTS = [canonical_text(entry(number)) for number in range(1, ENTRIES + 1)]


def fill(folder, first, last):
    store = open_store(folder)
    with store.writing() as ledger:
        ledger.append_all([entry(number) for number in range(first, last + 1)])
    return store


@pytest.fixture(scope="module")
def sound(tmp_path_factory):
    """A notebook with a dated copy of its first hundred entries, an older file of sixty, and the log of the rest."""
    folder = tmp_path_factory.mktemp("sound")
    fill(folder, 1, IN_OLDER).close()
    shutil.copy(folder / FILE_NAME, folder / "older")
    fill(folder, IN_OLDER + 1, IN_COPY).close()
    make_copy(folder, "2026-08-01", judge)
    store = fill(folder, IN_COPY + 1, ENTRIES)
    shutil.copy(folder / f"{FILE_NAME}-wal", folder / "log")
    shutil.copy(folder / FILE_NAME, folder / "before-the-log")
    store.close()
    return folder


# ---- kinds of damage: each takes the folder -------------------------------------------------------------------------


def rewrite(change, name=FILE_NAME):
    def damage(folder):
        path = folder / name
        path.write_bytes(change(bytearray(path.read_bytes())))

    return damage


def flip(data, at, bit=0):
    data[at] ^= 1 << bit
    return data


def flip_in(find, offset=0, bit=0):
    """Flip a bit where a text stands."""
    return rewrite(lambda data: flip(data, data.index(find) + offset, bit))


def flip_by_chance(seed):
    chance = random.Random(SEED + seed)
    return rewrite(lambda data: flip(data, chance.randrange(len(data)), chance.randrange(8)))


def scribble_by_chance(seed):
    chance = random.Random(SEED + seed)

    def change(data):
        at, length = chance.randrange(len(data)), chance.choice([2, 20, 300, 5000])
        data[at : at + length] = chance.randbytes(len(data[at : at + length]))
        return data

    return rewrite(change)


def page(number, fill_with):
    def change(data):
        data[(number - 1) * 4096 : number * 4096] = fill_with(4096)
        return data

    return rewrite(change)


def last_page(fill_with):
    return rewrite(lambda data: data[:-4096] + fill_with(4096))


def swap(one, other):
    def change(data):
        first, second = slice((one - 1) * 4096, one * 4096), slice((other - 1) * 4096, other * 4096)
        data[first], data[second] = data[second], data[first]
        return data

    return rewrite(change)


def cut(size):
    return rewrite(lambda data: data[:size])


def head(at, value):
    def change(data):
        data[at : at + len(value)] = value
        return data

    return rewrite(change)


def said(*statements):
    """A stranger's statements, with the triggers out of the way."""

    def damage(folder):
        connection = sqlite3.connect(folder / FILE_NAME, isolation_level=None)
        for name in ("update", "delete", "replace"):
            connection.execute(f"DROP TRIGGER IF EXISTS journal_no_{name}")
        for statement in statements:
            connection.execute(statement)
        connection.close()

    return damage


def put(**files):
    """The notebook's file, its log and its index from what was set by, or noise, or gone."""

    def damage(folder):
        for place, name in (("file", FILE_NAME), ("log", f"{FILE_NAME}-wal"), ("index", f"{FILE_NAME}-shm")):
            found = files.get(place)
            if isinstance(found, bytes):
                (folder / name).write_bytes(found)
            elif found:
                shutil.copy(folder / found, folder / name)

    return damage


def both(*damages):
    def damage(folder):
        for one in damages:
            one(folder)

    return damage


def forge(text):
    """A row with all its marks right, whose text is no entry."""

    def damage(folder):
        connection = sqlite3.connect(folder / FILE_NAME, isolation_level=None)
        mark, total = connection.execute('SELECT mark, total FROM journal ORDER BY "row" DESC LIMIT 1').fetchone()
        digest = digest_of(text)
        laid = f"{int(total, 16) ^ int(digest, 16):032x}"
        connection.execute(
            "INSERT INTO journal (id, device, seq, entry, digest, total, mark) VALUES ('x', 'x', 1, ?, ?, ?, ?)",
            (text, digest, laid, next_mark(mark, text)),
        )
        connection.close()

    return damage


NOISE = random.Random(SEED).randbytes
MIDDLE = TEXTS[30].encode()

DAMAGES = {
    **{f"a bit anywhere {seed}": flip_by_chance(seed) for seed in range(24)},
    **{f"noise anywhere {seed}": scribble_by_chance(seed) for seed in range(16)},
    "63 read as 73": rewrite(lambda data: data.replace(b'"63 3/16', b'"73 3/16')),
    "a letter of a reading": flip_in(MIDDLE, MIDDLE.index(b"3/16")),
    "a letter that is none any more": flip_in(MIDDLE, MIDDLE.index(b"3/16"), 7),
    "a bracket": flip_in(MIDDLE),
    "an id in the entry": flip_in(MIDDLE, MIDDLE.index(b'"id":"') + 8),
    "a digest": flip_in(digest_of(TEXTS[30]).encode()),
    "a total": flip_in(digest_of(TEXTS[30]).encode(), 40),
    "a mark": flip_in(digest_of(TEXTS[30]).encode(), 70),
    "the last mark": flip_in(digest_of(TEXTS[-1]).encode(), 70),
    "the id of a row": flip_in(MIDDLE, -30),
    "the device of a row": flip_in(MIDDLE, -4),
    "a step of the migrations": flip_in(b"003 append-only", 5),
    "the name of a table": flip_in(b"journal", 3),
    **{f"page {number} of zeros": page(number, bytes) for number in (1, 2, 3, 4, 5, 8, 13, 20)},
    **{f"page {number} of noise": page(number, NOISE) for number in (1, 2, 3, 4, 5, 8, 13, 20)},
    "the last page of zeros": last_page(bytes),
    "the last page of noise": last_page(NOISE),
    "two pages the wrong way round": swap(6, 12),
    "the first two pages the wrong way round": swap(1, 2),
    **{f"cut to {size} bytes": cut(size) for size in (0, 1, 15, 16, 50, 99, 100, 512, 4095, 4096, 8192, 40_000)},
    "a byte short": cut(-1),
    "a page short": cut(-4096),
    "a page and a half short": cut(-6000),
    "zeros behind it": rewrite(lambda data: data + bytes(9000)),
    "noise behind it": rewrite(lambda data: data + NOISE(9000)),
    "zeros before it": rewrite(lambda data: bytes(4096) + data),
    "another file": rewrite(lambda _: b"groceries: bread and milk, and enough of it to be longer than a head" * 20),
    "all zeros": rewrite(lambda data: bytes(len(data))),
    "its magic word": head(0, b"SQLITE format 3"),
    "its size of page": head(16, b"\x20\x00"),
    "no size of page": head(16, b"\x00\x00"),
    "its way of writing": head(18, b"\x09\x09"),
    "its reserved bytes": head(20, b"\x40"),
    "its count of pages": head(28, b"\x00\x00\x00\x03"),
    "its free pages": head(32, b"\x00\x00\x00\x05\x00\x00\x00\x07"),
    "its schema's format": head(44, b"\x00\x00\x00\x63"),
    "its encoding": head(56, b"\x00\x00\x00\x02"),
    "an older file": put(file="older"),
    "an older file beside a newer log": put(file="older", log="log"),
    "a newer file beside an older log": put(log="log"),
    "a log cut off": both(
        put(file="before-the-log", log="log"), rewrite(lambda data: data[:-3000], f"{FILE_NAME}-wal")
    ),
    "a log with a flipped bit": both(
        put(file="before-the-log", log="log"), rewrite(lambda data: flip(data, 30_000), f"{FILE_NAME}-wal")
    ),
    "a log of noise": both(put(file="before-the-log"), put(log=NOISE(20_000))),
    "an index of noise": put(index=NOISE(32_768)),
    "a file cut off beside a log": both(put(file="before-the-log", log="log"), cut(5000)),
    "no file": lambda folder: (folder / FILE_NAME).unlink(),
    "a text changed": said("UPDATE journal SET entry = replace(entry, '3/16', '5/16') WHERE \"row\" = 31"),
    "two texts the wrong way round": said(
        'UPDATE journal SET entry = CASE "row" WHEN 40 THEN (SELECT entry FROM journal WHERE "row" = 41) '
        'ELSE (SELECT entry FROM journal WHERE "row" = 40) END WHERE "row" IN (40, 41)'
    ),
    "a row taken out": said('DELETE FROM journal WHERE "row" = 70'),
    "the first rows taken out": said('DELETE FROM journal WHERE "row" < 5'),
    "the last rows taken out": said(f'DELETE FROM journal WHERE "row" > {ENTRIES - 5}'),
    "every row taken out": said("DELETE FROM journal"),
    "rows given other numbers": said('UPDATE journal SET "row" = "row" + 1000 WHERE "row" > 150'),
    "a text that is a number": said('UPDATE journal SET entry = 12 WHERE "row" = 31'),
    "a text that is bytes": said("UPDATE journal SET entry = x'ff00ff' WHERE \"row\" = 31"),
    "no journal": said("DROP TABLE journal"),
    "no name": said("DROP TABLE identity"),
    "a name taken out": said("DELETE FROM identity"),
    "another name": said("UPDATE identity SET database_id = 'another'"),
    "no numbering": said("DELETE FROM sqlite_sequence"),
    "broken JSON": forge('{"body":'),
    "JSON that is no entry": forge("[1, 2]"),
    "an object that is no entry": forge('{"wall": 12}'),
}  # fmt: skip
#: Nothing is lost or changed by these, though the file is not as it was.
HARMLESS = {"no numbering", "an index of noise", "zeros behind it", "noise behind it"}


def test_there_are_enough_kinds_of_damage():
    assert len(DAMAGES) >= 100


@pytest.fixture
def damaged(request, sound, tmp_path):
    folder = tmp_path / "notebook"
    shutil.copytree(sound, folder)
    DAMAGES[request.param](folder)
    return folder


def texts_served(folder):
    """What a program reads that opens the notebook without a look at it first; None when it refuses."""
    try:
        store = open_store(folder)
    except StoreError:
        return None
    try:
        with store.reading() as ledger:
            return [json.loads(row.text) and row.text for row in ledger.read_all()]
    except (StoreError, ValueError):
        return None
    finally:
        store.close()


@pytest.mark.parametrize("damaged", DAMAGES, indirect=True)
def test_a_damaged_notebook_is_noticed_never_passed_on_and_mended(damaged, capsys, request):
    proved = {text for text in look_or_nothing(damaged) if text in TEXTS}
    status = main(["--data", str(damaged), "check"])
    _, err = capsys.readouterr()
    assert status in (0, 2)
    assert all(line.startswith("scantling: ") for line in err.splitlines()), err
    if status == 0:
        assert proved == set(TEXTS), "it passed for sound and is not"
    name = request.node.callspec.params["damaged"]
    if name in HARMLESS:
        assert proved == set(TEXTS)

    told = put_right(damaged)
    assert bool(told) == (status == 2)
    served = texts_served(damaged)
    assert set(served) <= set(TEXTS), "something was passed on that nobody wrote"
    assert set(served) >= {*TEXTS[:IN_COPY], *proved}, "something is lost that a copy or the file still holds"
    assert look(damaged).faults == []
    assert put_right(damaged) == []


def look_or_nothing(folder):
    try:
        return look(folder).sound.values()
    except StoreError:
        return []


@pytest.mark.parametrize("damaged", [name for name in DAMAGES if "anywhere" not in name], indirect=True)
def test_what_reads_a_damaged_notebook_without_a_look_at_it_passes_on_nothing_that_nobody_wrote(damaged):
    served = texts_served(damaged)
    assert served is None or set(served) <= {*TEXTS, "[1, 2]", '{"wall": 12}'}
