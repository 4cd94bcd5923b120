"""The journal on disk: written once, never changed, whole after anything."""

import json
import sqlite3
import threading

import pytest
from scantling.store import FILE_NAME, MIGRATIONS, StoreError, canonical_text, open_store


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


def test_a_number_of_a_device_is_given_once(store, make_entry):
    keep(store, make_entry(1))
    with pytest.raises(StoreError) as refusal:
        keep(store, make_entry(2, seq=1))
    assert refusal.value.key == "seq-taken"


def test_a_writing_that_fails_keeps_nothing_of_it(store, make_entry):
    keep(store, make_entry(1))
    with pytest.raises(StoreError):
        keep(store, make_entry(2), make_entry(1, "another name"))
    with store.reading() as ledger:
        assert ledger.last_row() == 1


INTO = "INTO journal (id, device, seq, entry, mark) SELECT"
REWRITINGS = {
    "update": "UPDATE journal SET entry = '{}'",
    "update or replace": "UPDATE OR REPLACE journal SET id = 'x'",
    "delete": "DELETE FROM journal",
    "replace by id": f"INSERT OR REPLACE {INTO} id, 'd', 9, '{{}}', 'm' FROM journal",
    "replace by number": f"INSERT OR REPLACE {INTO} 'x', device, seq, '{{}}', 'm' FROM journal",
    "replace by mark": f"INSERT OR REPLACE {INTO} 'x', 'd', 9, '{{}}', mark FROM journal",
    "replace by row": "INSERT OR REPLACE INTO journal SELECT \"row\", 'x', 'd', 9, '{}', 'm' FROM journal",
    "upsert": f"INSERT {INTO} id, 'd', 9, '', 'm' FROM journal WHERE true ON CONFLICT (id) DO UPDATE SET entry = ''",
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


def test_rows_are_counted_by_device(store, make_entry):
    keep(store, make_entry(1), make_entry(2), make_entry(1, device="ffffffffffffffff"))
    with store.reading() as ledger:
        assert ledger.counts() == {"a0b1c2d3e4f50617": 2, "ffffffffffffffff": 1}


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
        assert ledger.counts() == {device * 16: 20 for device in "abcd"}


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
