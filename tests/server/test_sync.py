"""The exchange, request by request: what is acknowledged, refused, handed over, and when one starts again."""

import sqlite3
from contextlib import closing

import pytest
from scantling.engine.errors import EngineError
from scantling.store import FILE_NAME, canonical_text, open_store
from scantling.sync import BYTES_AT_ONCE, ENTRIES_AT_ONCE, ENTRY_BYTES, exchange, keep_lines

PHONE = "a0b1c2d3e4f50617"
OTHER = "ffffffffffffffff"


def ask(store, entries=None, **changed):
    request = {"protocol": 1, "device": PHONE, "database": None, "cursor": 0}
    return exchange(store, {**request, "entries": [] if entries is None else entries, **changed}, "build-1")


def refusal_of(store, **changed):
    with pytest.raises(EngineError) as refusal:
        ask(store, **changed)
    return refusal.value


def test_what_a_phone_sends_is_acknowledged_counted_and_not_sent_back(store, make_entry):
    reply = ask(store, [make_entry(1), make_entry(2)])
    assert reply == {
        "database": ask(store)["database"],
        "acked": [make_entry(1)["id"], make_entry(2)["id"]],
        "rejected": [],
        "entries": [],
        "cursor": 2,
        "more": False,
        "have": {PHONE: 2},
        "build": "build-1",
    }


def test_a_repeat_is_a_success(store, make_entry):
    first, second = ask(store, [make_entry(1)]), ask(store, [make_entry(1)])
    assert second["acked"] == first["acked"]
    assert second["have"] == {PHONE: 1}


def test_a_phone_gets_what_others_wrote_once_it_has_read_on(store, make_entry):
    ask(store, [make_entry(1)])
    reply = ask(store, [make_entry(1, device=OTHER)], device=OTHER, cursor=0)
    assert reply["entries"] == [make_entry(1)]
    assert ask(store, device=OTHER, cursor=reply["cursor"], database=reply["database"])["entries"] == []


def test_its_own_entries_come_back_to_a_phone_that_lost_them(store, make_entry):
    ask(store, [make_entry(1)])
    assert ask(store, cursor=0)["entries"] == [make_entry(1)]


def test_a_bad_entry_is_named_and_the_good_ones_beside_it_are_kept(store, make_entry):
    bad = make_entry(2, kind="reading")
    reply = ask(store, [make_entry(1), bad, make_entry(3)])
    assert reply["acked"] == [make_entry(1)["id"], make_entry(3)["id"]]
    assert [refused["id"] for refused in reply["rejected"]] == [bad["id"]]
    assert reply["rejected"][0]["message"]


@pytest.mark.parametrize(
    ("spoilt", "key"),
    [
        pytest.param(3, "not-an-entry", id="a number"),
        pytest.param(None, "not-an-entry", id="nothing"),
        pytest.param({}, "bad-field", id="an empty object"),
        pytest.param({"id": "x" * 5000}, "bad-field", id="an endless id"),
    ],
)
def test_what_is_no_entry_at_all_is_refused_by_itself(spoilt, key, store, make_entry):
    reply = ask(store, [spoilt, make_entry(1)])
    assert [refused["key"] for refused in reply["rejected"]] == [key]
    assert len(reply["rejected"][0]["id"]) <= 64
    assert reply["acked"] == [make_entry(1)["id"]]


def test_a_lone_surrogate_stops_only_its_own_entry(store, make_entry):
    reply = ask(store, [make_entry(1, "half \ud83e"), make_entry(2)])
    assert [refused["key"] for refused in reply["rejected"]] == ["not-text"]
    assert reply["have"] == {PHONE: 1}


def test_other_content_under_a_known_id_is_refused_and_the_first_stays(store, make_entry):
    ask(store, [make_entry(1)])
    reply = ask(store, [make_entry(1, "changed on the way")])
    assert [refused["key"] for refused in reply["rejected"]] == ["id-taken"]
    assert ask(store)["entries"] == [make_entry(1)]


def test_a_cloned_phone_is_told_by_the_number_that_is_taken(store, make_entry):
    ask(store, [make_entry(1)])
    clone = make_entry(9, seq=1)
    reply = ask(store, [clone])
    assert [(refused["id"], refused["key"]) for refused in reply["rejected"]] == [(clone["id"], "seq-taken")]


def test_an_unknown_kind_and_a_newer_version_travel_unread(store, make_entry):
    foreign = [
        make_entry(1, kind="paper_roll", body={"deep": [{"er": [1, None, True, "½"]}]}),
        make_entry(2, version=7, body={"name": 3}),
    ]
    assert ask(store, foreign)["rejected"] == []
    assert ask(store, device=OTHER)["entries"] == foreign


def test_a_clock_of_another_century_is_no_reason_to_refuse(store, make_entry):
    early, late = make_entry(1, stamp=f"{0:012x}-0000-{PHONE}"), make_entry(2, stamp=f"{2**48 - 1:012x}-ffff-{PHONE}")
    assert len(ask(store, [early, late])["acked"]) == 2


def test_another_database_means_start_again_and_nothing_is_kept(store, make_entry):
    assert ask(store, [make_entry(1)], database="of-another-laptop") == {"database": store.database_id, "reset": True}
    assert ask(store)["have"] == {}


def test_a_cursor_past_what_was_read_means_start_again(store, make_entry):
    database = ask(store, [make_entry(1)])["database"]
    assert ask(store, cursor=2, database=database) == {"database": store.database_id, "reset": True}
    assert ask(store, cursor=1, database=None)["reset"]
    assert "reset" not in ask(store, cursor=1, database=database)


def test_who_has_read_on_may_read_again_from_the_start(store, make_entry):
    database = ask(store, [make_entry(1)])["database"]
    assert ask(store, cursor=0, database=database)["entries"] == [make_entry(1)]


def test_a_laptop_put_back_to_an_old_copy_is_noticed_although_it_has_as_many_rows_again(store, tmp_path, make_entry):
    ask(store, [make_entry(1)])
    old = tmp_path / "old"
    old.mkdir()
    with closing(sqlite3.connect(tmp_path / FILE_NAME)) as connection:
        connection.execute("VACUUM INTO ?", (str(old / FILE_NAME),))
    known = ask(store, [make_entry(2)])
    restored = open_store(old)
    assert restored.database_id == store.database_id
    assert "reset" not in ask(restored, [make_entry(1, device=OTHER)], device=OTHER)
    assert ask(restored, cursor=known["cursor"], database=known["database"])["reset"]
    restored.close()


def test_another_protocol_is_refused_before_its_shape_is_judged(store):
    assert refusal_of(store, protocol=2, something="new").key == "protocol"


@pytest.mark.parametrize(
    ("changed", "field"),
    [
        ({"device": "A0B1"}, "device"),
        ({"cursor": -1}, "cursor"),
        ({"cursor": True}, "cursor"),
        ({"entries": {}}, "entries"),
        ({"database": 3}, "database"),
        ({"surplus": 1}, "surplus"),
        ({"protocol": None}, "protocol"),
    ],
)
def test_a_request_of_the_wrong_shape_names_the_field(changed, field, store):
    assert refusal_of(store, **changed).field == field


@pytest.mark.parametrize("sent", [None, 3, "x", [], [{}]])
def test_a_request_that_is_no_object_is_refused(sent, store):
    with pytest.raises(EngineError):
        exchange(store, sent, "build-1")


def test_too_many_entries_at_once_are_refused_whole(store, make_entry):
    refusal = refusal_of(store, entries=[make_entry(seq) for seq in range(1, ENTRIES_AT_ONCE + 2)])
    assert refusal.key == "too-many-entries"
    assert ask(store)["have"] == {}


def test_a_long_journal_is_handed_over_in_parts_that_leave_nothing_out(store, make_entry):
    keep_many(store, make_entry, ENTRIES_AT_ONCE * 2 + 3)
    replies = [ask(store, device=OTHER)]
    while replies[-1]["more"] and len(replies) < 10:
        replies.append(ask(store, device=OTHER, **{name: replies[-1][name] for name in ("cursor", "database")}))
    got = [entry["seq"] for reply in replies for entry in reply["entries"]]
    assert got == list(range(1, ENTRIES_AT_ONCE * 2 + 4))
    assert len(replies) == 3


def test_a_part_is_also_cut_off_by_its_bytes(store, make_entry):
    large = {"text": "x" * (ENTRY_BYTES - 1000)}
    ask(store, [make_entry(seq, kind="later_kind", body=large) for seq in range(1, 20)])
    reply = ask(store, device=OTHER)
    assert 1 < len(reply["entries"]) <= BYTES_AT_ONCE // (ENTRY_BYTES - 1000)
    assert reply["more"]


def test_an_entry_too_large_to_travel_is_refused_by_itself(store, make_entry):
    large = make_entry(1, kind="later_kind", body={"text": "x" * ENTRY_BYTES})
    reply = ask(store, [large, make_entry(2)])
    assert [refused["key"] for refused in reply["rejected"]] == ["entry-too-large"]
    assert reply["acked"] == [make_entry(2)["id"]]


def test_an_exported_journal_restores_another_notebook_and_twice_is_once(store, tmp_path, make_entry):
    keep_many(store, make_entry, 5)
    with store.reading() as ledger:
        lines = "".join(row.text + "\n" for row in ledger.read_all())
    other = open_store(tmp_path / "other")
    assert keep_lines(other, lines) == (5, 0)
    assert keep_lines(other, lines) == (0, 5)
    other.close()


def test_a_spoilt_line_in_a_journal_names_the_line_and_keeps_none(store, make_entry):
    with pytest.raises(EngineError, match="Line 2"):
        keep_lines(store, canonical_text(make_entry(1)) + '\n{"id":')
    assert ask(store)["have"] == {}


def keep_many(store, make_entry, count):
    keep_lines(store, "\n".join(canonical_text(make_entry(seq)) for seq in range(1, count + 1)))
