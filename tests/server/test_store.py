"""The journal on disk: written once, never changed, whole after anything."""

import hashlib
import json
import sqlite3
import threading
import time
from collections import Counter

import pytest
from scantling.store import FILE_NAME, MIGRATIONS, StoreError, canonical_text, digest_of, open_store, sqlite, sum_of
from scantling.store.ledger import next_mark


def keep(store, *entries):
    with store.writing() as ledger:
        return [ledger.append(entry) for entry in entries]


def stranger(tmp_path):
    """Someone else's connection, with none of our pragmas."""
    connection = sqlite3.connect(tmp_path / FILE_NAME, isolation_level=None)
    connection.execute("PRAGMA recursive_triggers = OFF")
    return connection


def test_an_entry_comes_back_as_it_was_written(store, make_entry):
    written = make_entry(1, "küche – 63 ¼ 🪚")
    keep(store, written)
    with store.reading() as ledger:
        assert ledger.read_entry(written["id"]) == written


def test_the_same_entry_again_is_no_second_row(store, make_entry):
    assert keep(store, make_entry(1), make_entry(1)) == [True, False]
    with store.reading() as ledger:
        assert ledger.last_row() == 1


def test_the_order_of_the_keys_is_not_content(store, make_entry):
    written = make_entry(1)
    assert keep(store, written, dict(reversed(written.items()))) == [True, False]


def test_a_whole_number_written_with_a_point_is_the_same_number(store, make_entry):
    first, second = (make_entry(1, kind="later_kind", body={"built": built}) for built in (1936, 1936.0))
    assert keep(store, first, second) == [True, False]


@pytest.mark.parametrize("number", [2**53, -(2**53), 1e300, float("nan"), float("inf")])
def test_a_number_that_a_phone_would_change_is_refused(number, make_entry):
    with pytest.raises(StoreError) as refusal:
        canonical_text(make_entry(1, kind="later_kind", body={"n": [number]}))
    assert refusal.value.key == "not-carriable"


def test_the_same_id_with_other_content_is_refused_and_the_first_stays(store, make_entry):
    keep(store, make_entry(1))
    with pytest.raises(StoreError) as refusal:
        keep(store, make_entry(1, "another name"))
    assert refusal.value.key == "id-taken"
    with store.reading() as ledger:
        assert ledger.read_entry(make_entry(1)["id"]) == make_entry(1)


def test_a_number_that_a_device_gave_twice_is_recorded_and_refuses_nothing(store, make_entry):
    assert keep(store, make_entry(1), make_entry(2, seq=1), make_entry(3)) == [True, True, True]
    with store.reading() as ledger:
        assert ledger.numbers_taken_twice() == [("a0b1c2d3e4f50617", 1)]
        assert [row.entry["id"] for row in ledger.read_all()] == [make_entry(number)["id"] for number in (1, 2, 3)]


def test_an_entry_that_was_numbered_anew_is_still_that_entry_and_the_first_number_stays(store, make_entry):
    keep(store, make_entry(1))
    assert keep(store, make_entry(1, seq=7), make_entry(1) | {"device": "ffffffffffffffff"}) == [False, False]
    with store.reading() as ledger:
        assert ledger.read_entry(make_entry(1)["id"]) == make_entry(1)


def test_of_many_at_once_each_is_told_what_became_of_it(store, make_entry):
    keep(store, make_entry(1))
    with store.writing() as ledger:
        told = ledger.append_all([make_entry(2), make_entry(1), make_entry(1, "other"), make_entry(3), make_entry(3)])
    assert [(kept.new, kept.same) for kept in told] == [
        (True, True), (False, True), (False, False), (True, True), (False, True),
    ]  # fmt: skip
    assert told[2].entry == make_entry(1)
    with store.reading() as ledger:
        assert [row.entry for row in ledger.read_all()] == [make_entry(1), make_entry(2), make_entry(3)]


def test_each_row_sums_up_the_digests_to_it_and_the_order_does_not_matter(store, tmp_path, make_entry):
    entries = [make_entry(seq) for seq in range(1, 6)]
    other = open_store(tmp_path / "other")
    keep(store, *entries)
    for entry in reversed(entries):
        keep(other, entry)
    with store.reading() as ledger, other.reading() as another:
        assert ledger.total() == another.total() == sum_of(digest_of(canonical_text(entry)) for entry in entries)
        assert sorted(ledger.digests()) == sorted(another.digests())
        assert ledger.mark_at(5) != another.mark_at(5)
    other.close()


def test_a_mark_is_of_all_rows_up_to_it_and_not_of_the_last_alone(store, tmp_path, make_entry):
    copied = open_store(tmp_path / "copied")
    keep(store, make_entry(1), make_entry(2), make_entry(9))
    keep(copied, make_entry(1), make_entry(3), make_entry(9))
    with store.reading() as ledger, copied.reading() as another:
        assert ledger.row_of(another.mark_at(3)) is None
        assert next_mark(ledger.mark_at(2), canonical_text(make_entry(9))) == ledger.mark_at(3)
        assert next_mark(another.mark_at(2), canonical_text(make_entry(9))) != ledger.mark_at(3)
    copied.close()


def test_a_digest_laid_into_a_sum_twice_is_out_of_it_again():
    one, other = "f0" + "0" * 30, "90" + "0" * 30
    assert sum_of([one, other]) == "60" + "0" * 30
    assert sum_of([one, other, one]) == other
    assert sum_of([]) == "0" * 32


def test_an_empty_journal_sums_up_to_nothing(store):
    with store.reading() as ledger:
        assert ledger.total() == "0" * 32


def test_entries_are_found_by_their_digests(store, make_entry):
    keep(store, *(make_entry(seq) for seq in range(1, 6)))
    wanted = [digest_of(canonical_text(make_entry(seq))) for seq in (4, 2)]
    with store.reading() as ledger:
        assert [row.entry["seq"] for row in ledger.read_by_digest([*wanted, "f" * 32])] == [2, 4]


OLD_JOURNAL = """CREATE TABLE journal (
  "row" INTEGER PRIMARY KEY AUTOINCREMENT, id TEXT NOT NULL UNIQUE, device TEXT NOT NULL, seq INTEGER NOT NULL,
  entry TEXT NOT NULL, mark TEXT NOT NULL UNIQUE, UNIQUE (device, seq))"""
FORBID = """
CREATE TRIGGER journal_no_update BEFORE UPDATE ON journal BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;
CREATE TRIGGER journal_no_delete BEFORE DELETE ON journal BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;
CREATE TRIGGER journal_no_replace BEFORE INSERT ON journal
  WHEN EXISTS (SELECT 1 FROM journal WHERE id = NEW.id OR (device = NEW.device AND seq = NEW.seq)
               OR mark = NEW.mark OR "row" = NEW."row")
  BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;
"""
#: What each older version left on the disk, as SQL of its own: the steps of today's code must not have a say in it.
OLDER = {
    "001 journal": OLD_JOURNAL,
    "002 database id": "CREATE TABLE identity (database_id TEXT PRIMARY KEY); INSERT INTO identity VALUES ('start')",
    "003 append-only": FORBID,
}


def write_as_of(path, version, entries):
    """A notebook as the version whose last step is this one would have left it."""
    connection = sqlite3.connect(path, isolation_level=None)
    connection.execute("CREATE TABLE migration (name TEXT PRIMARY KEY)")
    for name, statements in list(OLDER.items())[: list(OLDER).index(version) + 1]:
        connection.executescript(statements)
        connection.execute("INSERT INTO migration VALUES (?)", (name,))
    mark = "start"
    connection.execute("BEGIN")
    for entry in entries:
        text = canonical_text(entry)
        mark = hashlib.sha256(f"{mark} {text}".encode()).hexdigest()
        values = (entry["id"], entry["device"], entry["seq"], text, mark)
        connection.execute("INSERT INTO journal (id, device, seq, entry, mark) VALUES (?, ?, ?, ?, ?)", values)
    connection.execute("COMMIT")
    connection.close()
    return mark


@pytest.mark.parametrize("version", OLDER)
def test_a_notebook_of_any_older_version_is_brought_here_with_its_rows_and_marks(version, tmp_path, make_entry):
    entries = [make_entry(seq, f"entry {seq}") for seq in range(1, 2300)]
    mark = write_as_of(tmp_path / FILE_NAME, version, entries)
    store = open_store(tmp_path)
    with store.reading() as ledger:
        assert [row.entry for row in ledger.read_all()] == entries
        assert (ledger.last_row(), ledger.row_of(mark)) == (2299, 2299)
        assert ledger.total() == sum_of(digest_of(canonical_text(entry)) for entry in entries)
    assert keep(store, make_entry(2300, seq=1), entries[0]) == [True, False]
    with store.reading() as ledger:
        assert ledger.read_since(2299, 9)[0].row == 2300
    store.close()
    connection = stranger(tmp_path)
    for statement in REWRITINGS.values():
        with pytest.raises(sqlite3.IntegrityError, match="append-only"):
            connection.execute(statement)
    assert connection.execute("SELECT name FROM sqlite_master WHERE name LIKE '%number%'").fetchall() == []
    connection.close()


def test_a_row_number_is_never_given_again_after_the_rows_were_moved(tmp_path, make_entry):
    write_as_of(tmp_path / FILE_NAME, "003 append-only", [make_entry(1), make_entry(2)])
    open_store(tmp_path).close()
    connection = stranger(tmp_path)
    assert connection.execute("SELECT name, seq FROM sqlite_sequence").fetchall() == [("journal", 2)]
    connection.close()


def test_a_writing_that_fails_keeps_nothing_of_it(store, make_entry):
    keep(store, make_entry(1))
    with pytest.raises(StoreError):
        keep(store, make_entry(2), make_entry(1, "another name"))
    with store.reading() as ledger:
        assert ledger.last_row() == 1


INTO = "INTO journal (id, device, seq, entry, digest, total, mark) SELECT"
REWRITINGS = {
    "update": "UPDATE journal SET entry = '{}'",
    "update or replace": "UPDATE OR REPLACE journal SET id = 'x'",
    "delete": "DELETE FROM journal",
    "replace by id": f"INSERT OR REPLACE {INTO} id, 'd', 9, '{{}}', '', '', 'm' FROM journal",
    "replace by mark": f"INSERT OR REPLACE {INTO} 'x', 'd', 9, '{{}}', '', '', mark FROM journal",
    "replace by row": "INSERT OR REPLACE INTO journal SELECT \"row\", 'x', 'd', 9, '{}', '', '', 'm' FROM journal",
    "upsert": f"INSERT {INTO} id, '', 9, '', '', '', 'm' FROM journal WHERE 1 ON CONFLICT DO UPDATE SET entry = ''",
}


@pytest.mark.parametrize("statement", REWRITINGS.values(), ids=REWRITINGS)
def test_no_statement_rewrites_the_journal_not_even_a_strangers(statement, store, tmp_path, make_entry):
    keep(store, make_entry(1))
    connection = stranger(tmp_path)
    with pytest.raises(sqlite3.IntegrityError, match="append-only"):
        connection.execute(statement)
    connection.close()
    with store.reading() as ledger:
        assert [row.entry for row in ledger.read_all()] == [make_entry(1)]


def test_a_commit_is_on_the_disk_before_it_is_acknowledged(store):
    with store.reading() as ledger:
        pragmas = {
            name: ledger._connection.exec_driver_sql(f"PRAGMA {name}").scalar_one()
            for name in ("journal_mode", "synchronous", "recursive_triggers")
        }
    assert pragmas == {"journal_mode": "wal", "synchronous": 2, "recursive_triggers": 1}


def test_rows_are_read_in_order_and_from_where_one_stopped(store, make_entry):
    keep(store, *(make_entry(seq) for seq in range(1, 8)))
    with store.reading() as ledger:
        assert [row.row for row in ledger.read_since(2, 3)] == [3, 4, 5]
        assert [row.row for row in ledger.read_since(7, 3)] == []


def test_a_reading_sees_nothing_of_what_is_written_meanwhile(store, make_entry):
    keep(store, make_entry(1))
    with store.reading() as ledger:
        assert ledger.last_row() == 1
        keep(store, make_entry(2))
        assert ledger.last_row() == 1


def test_a_database_keeps_its_name_and_another_has_another(store, tmp_path):
    again, other = open_store(tmp_path), open_store(tmp_path / "other")
    assert again.database_id == store.database_id != other.database_id
    again.close()
    other.close()


def test_two_writers_at_once_both_get_through(store, make_entry):
    threads = [
        threading.Thread(target=lambda d=device: [keep(store, make_entry(s, device=d * 16)) for s in range(1, 21)])
        for device in "abcd"
    ]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    with store.reading() as ledger:
        kept = Counter(row.entry["device"] for row in ledger.read_all())
    assert kept == {device * 16: 20 for device in "abcd"}


def test_in_a_crowd_of_writers_none_waits_in_vain(tmp_path, make_entry, monkeypatch):
    """Each holds the journal longer than SQLite would wait for it."""
    monkeypatch.setattr(sqlite, "BUSY_SECONDS", 0.05)
    store, done = open_store(tmp_path), []

    def write(number):
        with store.writing() as ledger:
            ledger.append(make_entry(number))
            time.sleep(0.1)
        done.append(number)

    threads = [threading.Thread(target=write, args=(number,)) for number in range(1, 7)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert sorted(done) == list(range(1, 7))
    store.close()


def test_a_migration_that_fails_leaves_nothing_of_any_step(tmp_path, monkeypatch):
    def fail(connection):
        connection.exec_driver_sql("CREATE TABLE half (x)")
        raise RuntimeError("cut off")

    monkeypatch.setitem(MIGRATIONS, "009 fails", fail)
    with pytest.raises(RuntimeError):
        open_store(tmp_path)
    connection = stranger(tmp_path)
    assert connection.execute("SELECT name FROM sqlite_master").fetchall() == []
    connection.close()


def test_a_notebook_of_a_newer_scantling_is_not_touched(store, tmp_path):
    connection = stranger(tmp_path)
    connection.execute("INSERT INTO migration VALUES ('099 tomorrow')")
    connection.close()
    with pytest.raises(StoreError) as refusal:
        open_store(tmp_path)
    assert refusal.value.key == "newer-store"
    assert "099 tomorrow" in refusal.value.message


def test_a_file_that_is_no_notebook_is_named_and_left_alone(tmp_path):
    (tmp_path / FILE_NAME).write_text("groceries: bread, milk and a long enough line to be no database")
    with pytest.raises(StoreError) as refusal:
        open_store(tmp_path)
    assert refusal.value.key == "not-a-store"
    assert (tmp_path / FILE_NAME).read_text().startswith("groceries")


def test_a_folder_that_is_a_file_is_refused_in_a_sentence(tmp_path):
    (tmp_path / "taken").write_text("")
    with pytest.raises(StoreError) as refusal:
        open_store(tmp_path / "taken")
    assert refusal.value.key == "no-folder"


def test_a_full_disk_is_said_and_nothing_is_half_kept(store, make_entry):
    keep(store, make_entry(1))

    def fill():
        with store.writing() as ledger:
            pages = ledger._connection.exec_driver_sql("PRAGMA page_count").scalar_one()
            ledger._connection.exec_driver_sql(f"PRAGMA max_page_count = {pages}")
            for seq in range(2, 400):
                ledger.append(make_entry(seq, "x" * 2000))

    with pytest.raises(StoreError) as refusal:
        fill()
    assert refusal.value.key == "disk"
    with store.reading() as ledger:
        assert [json.loads(row.text)["seq"] for row in ledger.read_all()] == [1]
