"""The laptop's own pen: which statement it goes by, and that a write asked for again is one write."""

import threading

import pytest
from scantling.clock import HybridClock, name_id
from scantling.engine.journal import check_entry
from scantling.laptop import Laptop
from scantling.store import open_store

NOW = 1_795_000_000_000
YEAR = 31_557_600_000


def written(response, status=201):
    assert response.status_code == status, response.json
    return response.json["entry"]


@pytest.fixture
def house(client):
    return written(client.post("/api/houses", json={"name": "the bungalow"}))["body"]["house"]


@pytest.fixture
def rooms(client, house):
    asked = (client.post(f"/api/houses/{house}/rooms", json={"name": name}) for name in ("a", "b"))
    return [written(one)["body"]["room"] for one in asked]


@pytest.fixture
def wall(client, rooms):
    return written(client.post(f"/api/rooms/{rooms[0]}/walls", json={"turn": "inside"}))["body"]["wall"]


def move(client, entry, room):
    """What a phone says of a wall that belongs in another room."""
    laptop = client.application.extensions["scantling"]
    (said,) = laptop.in_force("wall", wall=entry)
    return laptop.write("wall", {**said.body, "room": room}, [said.id])


def test_a_wall_that_was_moved_to_another_room_takes_no_readings_through_the_first(client, rooms, wall):
    first, second = rooms
    move(client, wall, second)
    said = {"of": wall, "what": "length", "text": "63 1/4"}
    refused = client.post(f"/api/rooms/{first}/readings", json=said)
    assert (refused.status_code, refused.json["error"]["key"]) == (404, "no-such-wall")
    written(client.post(f"/api/rooms/{second}/readings", json=said))
    for add, body in (("openings", {"kind": "door"}), ("obstacles", {"kind": "radiator", "base": "stops"})):
        assert client.post(f"/api/rooms/{first}/{add}", json={"wall": wall, **body}).status_code == 404
        written(client.post(f"/api/rooms/{second}/{add}", json={"wall": wall, **body}))
    assert client.put(f"/api/rooms/{first}/walls/{wall}", json={"turn": "outside"}).status_code == 404


def test_of_two_statements_in_force_the_later_stamp_comes_last_whichever_came_first(tmp_path, make_entry):
    house = make_entry(1)["id"]
    body = {"house": house, "name": "x", "built": None}
    late = make_entry(7, kind="house", body=body | {"name": "late"})
    early = make_entry(3, kind="house", body=body | {"name": "early"})
    for number, order in enumerate(((late, early), (early, late))):
        store = open_store(tmp_path / str(number))
        with store.writing() as ledger:
            ledger.append_all(order)
        found = Laptop(store, lambda: NOW).in_force("house", house=house)
        assert [entry.body["name"] for entry in found] == ["early", "late"]
        store.close()


def once(client, address, said, key, method="post"):
    return getattr(client, method)(address, json=said, headers={"Idempotency-Key": key})


def test_a_reading_sent_again_under_its_key_is_one_reading(client, rooms, wall):
    address, said = f"/api/rooms/{rooms[0]}/readings", {"of": wall, "what": "length", "text": "63 1/4"}
    first, again = once(client, address, said, "k-1"), once(client, address, said, "k-1")
    assert first.status_code == again.status_code == 201
    assert first.json == again.json
    assert check_entry(first.json["entry"]) == []
    assert readings(client, rooms[0]) == 1
    other = once(client, address, said, "k-2")
    assert other.json["entry"]["id"] != first.json["entry"]["id"]
    assert readings(client, rooms[0]) == 2


def readings(client, room):
    (house,) = client.get("/api/houses").json["houses"]
    return next(one["readings"] for one in house["rooms"] if one["id"] == room)


def test_things_that_are_named_by_the_laptop_keep_their_name_when_asked_for_again(client, house):
    address = f"/api/houses/{house}/rooms"
    first, again = (once(client, address, {"name": "c"}, "k") for _ in range(2))
    assert first.json == again.json
    assert len(client.get("/api/houses").json["houses"][0]["rooms"]) == 1


def test_a_statement_asked_for_again_does_not_supersede_itself(client, house):
    said = {"name": "the cottage"}
    first, again = (once(client, f"/api/houses/{house}", said, "k", "put") for _ in range(2))
    assert first.json == again.json
    assert first.json["entry"]["supersedes"]


def test_one_key_for_two_different_writes_loses_neither(client, house):
    address = f"/api/houses/{house}/rooms"
    names = [once(client, address, {"name": name}, "k").json["entry"]["body"]["name"] for name in ("c", "d", "c")]
    assert names == ["c", "d", "c"]
    assert [room["name"] for room in client.get("/api/houses").json["houses"][0]["rooms"]] == ["c", "d"]


def test_a_write_is_still_one_after_the_laptop_was_put_back_and_the_entry_came_home(client, tmp_path, page, house):
    from scantling.api import Config, create_app

    address, said = "/api/houses", {"name": "another"}
    first = once(client, address, said, "k").json["entry"]
    app = create_app(Config(tmp_path / "other", site=page))
    laptop = app.extensions["scantling"]
    with laptop.store.writing() as ledger:
        ledger.append(first)
    assert once(app.test_client(), address, said, "k").json["entry"] == first
    laptop.store.close()


@pytest.mark.parametrize("key", ["", "x" * 256])
def test_a_key_that_is_none_is_refused_and_nothing_is_written(client, key):
    refused = once(client, "/api/houses", {"name": "x"}, key)
    assert (refused.status_code, refused.json["error"]["key"]) == (400, "wrong-key")
    assert client.get("/api/houses").json["houses"] == []


def test_many_who_ask_for_the_same_write_at_once_get_the_same_entry(client):
    got = []
    ask = lambda: got.append(once(client.application.test_client(), "/api/houses", {"name": "x"}, "k").json)  # noqa: E731
    threads = [threading.Thread(target=ask) for _ in range(6)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert got == [got[0]] * 6
    assert len(client.get("/api/houses").json["houses"]) == 1


def test_an_id_that_follows_from_a_text_is_a_uuid_of_version_8():
    import uuid

    found = uuid.UUID(name_id("a text"))
    assert (found.version, found.variant) == (8, uuid.RFC_4122)
    assert name_id("a text") == str(found) != name_id("another")


@pytest.mark.parametrize("at", [-60 * YEAR, 0, NOW - 20 * YEAR, NOW, NOW + 20 * YEAR, 2**48 + 5, 10**15])
def test_a_laptop_whose_clock_is_wrong_by_any_years_writes_entries_that_all_devices_take(at, tmp_path):
    store = open_store(tmp_path)
    laptop = Laptop(store, lambda: at)
    for name in ("a", "b"):
        laptop.write("device", {"name": name})
    with store.reading() as ledger:
        entries = [row.entry for row in ledger.read_all()]
    assert [check_entry(entry) for entry in entries] == [[]] * 3
    assert [entry["stamp"] for entry in entries] == sorted({entry["stamp"] for entry in entries})
    store.close()


def test_a_clock_that_ran_away_does_not_keep_what_is_written_after_it_was_set_right():
    clock = HybridClock()
    ahead, after = clock.stamp(NOW + 20 * YEAR, "a" * 16), clock.stamp(NOW, "a" * 16)
    assert int(after[:12], 16) == NOW < int(ahead[:12], 16)


def test_a_clock_that_is_decades_slow_goes_by_the_stamps_that_it_sees():
    clock = HybridClock()
    clock.see(f"{NOW:012x}-0000-{'b' * 16}", NOW - 20 * YEAR)
    assert clock.stamp(NOW - 20 * YEAR, "a" * 16) == f"{NOW:012x}-0001-{'a' * 16}"
