"""The exchange, request by request: what is acknowledged, refused, handed over, and when one starts again."""

import sqlite3
from contextlib import closing

import pytest
from scantling import sync
from scantling.engine.errors import EngineError
from scantling.journal_file.restoring import restore
from scantling.store import FILE_NAME, canonical_text, digest_of, open_store, sqlite, sum_of
from scantling.sync import BYTES_AT_ONCE, ENTRIES_AT_ONCE, ENTRY_BYTES, PROTOCOL, compare, exchange, fetch

PHONE = "a0b1c2d3e4f50617"
OTHER = "ffffffffffffffff"


def ask(store, entries=None, **changed):
    request = {"protocol": PROTOCOL, "device": PHONE, "database": None, "cursor": 0}
    return exchange(store, {**request, "entries": [] if entries is None else entries, **changed}, "build-1")


def total(*entries):
    return sum_of(digest_of(canonical_text(entry)) for entry in entries)


def kept_in(store):
    with store.reading() as ledger:
        return [row.entry for row in ledger.read_all()]


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
        "instead": [],
        "entries": [],
        "cursor": 2,
        "left": 0,
        "total": total(make_entry(1), make_entry(2)),
        "build": "build-1",
    }


def test_who_brings_nothing_does_not_wait_for_one_who_writes(store, make_entry, monkeypatch):
    monkeypatch.setattr(sqlite, "BUSY_SECONDS", 0.05)
    with store.writing() as ledger:
        ledger.append(make_entry(1))
        assert ask(store)["cursor"] == 0
    assert ask(store)["cursor"] == 1


def test_a_repeat_is_a_success(store, make_entry):
    first, second = ask(store, [make_entry(1)]), ask(store, [make_entry(1)])
    assert second["acked"] == first["acked"]
    assert kept_in(store) == [make_entry(1)]


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
    assert kept_in(store) == [make_entry(2)]


def test_other_content_under_a_known_id_is_refused_and_the_first_stays(store, make_entry):
    ask(store, [make_entry(1)])
    reply = ask(store, [make_entry(1, "changed on the way")])
    assert [refused["key"] for refused in reply["rejected"]] == ["id-taken"]
    assert reply["instead"] == ask(store)["entries"] == [make_entry(1)]


def test_a_number_that_two_entries_have_refuses_neither(store, make_entry):
    ask(store, [make_entry(1)])
    clone = make_entry(9, seq=1)
    reply = ask(store, [clone])
    assert (reply["acked"], reply["rejected"]) == ([clone["id"]], [])
    assert kept_in(store) == [make_entry(1), clone]


def test_an_entry_that_was_numbered_anew_is_acknowledged_and_told_under_which_number_it_stands(store, make_entry):
    ask(store, [make_entry(1)])
    reply = ask(store, [make_entry(1, seq=40)])
    assert (reply["acked"], reply["rejected"], reply["instead"]) == ([make_entry(1)["id"]], [], [make_entry(1)])


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


def test_who_read_another_journal_is_not_read_to_from_the_start_but_told_the_total(store, make_entry):
    ask(store, [make_entry(1)])
    for changed in (
        {"database": "of-another-laptop"},
        {"cursor": 9},
        {"database": ask(store)["database"], "cursor": 2},
    ):
        reply = ask(store, [make_entry(2)], **changed)
        assert (reply["entries"], reply["cursor"], reply["left"]) == ([], 2, 0)
        assert reply["acked"] == [make_entry(2)["id"]]
        assert reply["total"] == total(make_entry(1), make_entry(2))


def test_a_mark_is_taken_for_what_was_read_up_to_it(store, make_entry):
    first = ask(store, [make_entry(1)])
    ask(store, [make_entry(2)])
    assert ask(store, database=first["database"], cursor=1)["entries"] == [make_entry(2)]


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
    ask(restored, [make_entry(1, device=OTHER)], device=OTHER)
    reply = ask(restored, cursor=known["cursor"], database=known["database"])
    assert (reply["entries"], reply["total"]) == ([], total(make_entry(1), make_entry(1, device=OTHER)))
    restored.close()


def compared(store, *held):
    sums = {}
    for digest in (digest_of(canonical_text(entry)) for entry in held):
        sums[digest[:2]] = sum_of((sums.get(digest[:2], "0"), digest))
    return compare(store, {"protocol": PROTOCOL, "device": PHONE, "sums": sums})


def test_two_that_hold_the_same_differ_nowhere(store, make_entry):
    entries = [make_entry(seq) for seq in range(1, 60)]
    ask(store, entries)
    assert compared(store, *reversed(entries)) == {"differ": {}, "more": False}


def test_where_two_differ_all_that_the_laptop_has_there_is_named(store, make_entry):
    entries = [make_entry(seq) for seq in range(1, 400)]
    ask(store, entries)
    theirs = make_entry(900)
    digests = [digest_of(canonical_text(entry)) for entry in entries]
    places = {digests[0][:2], digest_of(canonical_text(theirs))[:2]}
    reply = compared(store, *entries[1:], theirs)
    assert reply["differ"] == {place: sorted(one for one in digests if one[:2] == place) for place in places}


def test_a_comparison_of_much_is_told_in_parts(store, make_entry, monkeypatch):
    monkeypatch.setattr(sync, "DIGESTS_AT_ONCE", 50)
    entries = [make_entry(seq) for seq in range(1, 300)]
    ask(store, entries)
    reply = compared(store)
    assert reply["more"]
    assert 0 < sum(map(len, reply["differ"].values())) <= 50


def test_a_part_with_more_digests_than_fit_is_told_all_the_same(store, make_entry, monkeypatch):
    monkeypatch.setattr(sync, "DIGESTS_AT_ONCE", 0)
    ask(store, [make_entry(seq) for seq in range(1, 30)])
    reply = compared(store)
    assert reply["more"]
    assert len(reply["differ"]) == 1


def test_entries_are_fetched_by_digest_and_what_is_not_here_is_left_out(store, make_entry):
    ask(store, [make_entry(1), make_entry(2)])
    digests = [digest_of(canonical_text(make_entry(number))) for number in (2, 3)]
    assert fetch(store, {"protocol": PROTOCOL, "device": PHONE, "digests": digests}) == {"entries": [make_entry(2)]}


@pytest.mark.parametrize("wrong", [{"sums": {"zz": "0" * 32}}, {"sums": {"00": "0"}}, {"sums": []}, {}])
def test_a_comparison_of_the_wrong_shape_is_refused(wrong, store):
    with pytest.raises(EngineError):
        compare(store, {"protocol": PROTOCOL, "device": PHONE, **wrong})


@pytest.mark.parametrize("wrong", [["x"], {}, "x", ["0" * 32] * (ENTRIES_AT_ONCE + 1)])
def test_a_list_of_digests_of_the_wrong_shape_is_refused(wrong, store):
    with pytest.raises(EngineError):
        fetch(store, {"protocol": PROTOCOL, "device": PHONE, "digests": wrong})


def test_another_protocol_is_refused_before_its_shape_is_judged(store):
    assert refusal_of(store, protocol=PROTOCOL + 1, something="new").key == "protocol"


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
    assert kept_in(store) == []


def test_a_long_journal_is_handed_over_in_parts_that_leave_nothing_out(store, make_entry):
    keep_many(store, make_entry, ENTRIES_AT_ONCE * 2 + 3)
    replies = [ask(store, device=OTHER)]
    while replies[-1]["left"] and len(replies) < 10:
        replies.append(ask(store, device=OTHER, **{name: replies[-1][name] for name in ("cursor", "database")}))
    got = [entry["seq"] for reply in replies for entry in reply["entries"]]
    assert got == list(range(1, ENTRIES_AT_ONCE * 2 + 4))
    assert len(replies) == 3


def test_a_part_is_also_cut_off_by_its_bytes(store, make_entry):
    large = {"text": "x" * (ENTRY_BYTES - 1000)}
    ask(store, [make_entry(seq, kind="later_kind", body=large) for seq in range(1, 20)])
    reply = ask(store, device=OTHER)
    assert 1 < len(reply["entries"]) <= BYTES_AT_ONCE // (ENTRY_BYTES - 1000)
    assert reply["left"] == 19 - len(reply["entries"])


def test_an_entry_too_large_to_travel_is_refused_by_itself(store, make_entry):
    large = make_entry(1, kind="later_kind", body={"text": "x" * ENTRY_BYTES})
    reply = ask(store, [large, make_entry(2)])
    assert [refused["key"] for refused in reply["rejected"]] == ["entry-too-large"]
    assert reply["acked"] == [make_entry(2)["id"]]


def keep_many(store, make_entry, count):
    restore(store, ["\n".join(canonical_text(make_entry(seq)) for seq in range(1, count + 1)).encode()])
