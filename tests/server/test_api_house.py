"""A house built over REST alone: the sewing room of the tests, from its first wall to its cut list."""

import csv
import io

import pytest

WALLS = (("132 1/4", "inside"), ("96 1/2", "inside"), ("132 1/4", "inside"), ("96 1/2", "inside"))


def written(response, status=201):
    assert response.status_code == status, response.json
    return response.json["entry"]["body"]


@pytest.fixture
def house(client):
    return written(client.post("/api/houses", json={"name": "the bungalow", "built": 1936}))["house"]


@pytest.fixture
def room(client, house):
    return written(client.post(f"/api/houses/{house}/rooms", json={"name": "sewing room"}))["room"]


@pytest.fixture
def walls(client, room):
    return [written(client.post(f"/api/rooms/{room}/walls", json={"turn": turn}))["wall"] for _, turn in WALLS]


@pytest.fixture
def read_room(client, room, walls):
    """The room with every wall and corner read, and closed."""
    for wall, (length, _) in zip(walls, WALLS, strict=True):
        for what, text in (("length", length), ("corner", "90")):
            written(client.post(f"/api/rooms/{room}/readings", json={"of": wall, "what": what, "text": text}))
    written(client.put(f"/api/rooms/{room}", json={"name": "sewing room", "closed": True}), 200)
    return room


def test_walls_follow_each_other_in_the_order_of_saying(client, room, walls):
    assert [wall["id"] for wall in client.get(f"/api/rooms/{room}").json["walls"]] == walls


def test_a_wall_can_be_put_between_two_others(client, room, walls):
    between = written(client.post(f"/api/rooms/{room}/walls", json={"turn": "outside", "after": walls[0]}))["wall"]
    found = [wall["id"] for wall in client.get(f"/api/rooms/{room}").json["walls"]]
    assert found == [walls[0], between, *walls[1:]]


def test_a_read_room_has_a_piece_of_base_for_every_wall(client, read_room):
    pieces = client.get(f"/api/rooms/{read_room}/pieces").json["pieces"]
    assert sorted(piece["wall_number"] for piece in pieces) == [1, 2, 3, 4]
    assert all(piece["working"] for piece in pieces)


def test_a_list_is_issued_once_and_its_pieces_are_marked(client, read_room):
    address = f"/api/rooms/{read_room}/pieces"
    assert all(piece["provisional"] for piece in client.get(address).json["pieces"])
    (entry,) = client.post(f"{address}/issue").json["entries"]
    assert [row["letter"] for row in entry["body"]["pieces"]] == ["A", "B", "C", "D"]
    assert client.post(f"{address}/issue").json == {"entries": []}
    piece = client.get(address).json["pieces"][1]
    first = written(client.post(f"{address}/{piece['id']}/state", json={"state": "cut", "as_cut": "95"}))
    assert first["cut_to"] == piece["remember"]["cut_to"]
    written(client.post(f"{address}/{piece['id']}/state", json={"state": "fitted"}))
    marked = client.get(address).json["pieces"][1]
    assert (marked["letter"], marked["state"], marked["as_cut"]["text"]) == ("B", "fitted", "95")
    assert len(marked["entries"]) == 1  # the second saying follows the first


@pytest.mark.parametrize(
    ("said", "status", "key"),
    [
        pytest.param({"state": "sawn"}, 422, "bad-field", id="a state of nobody"),
        pytest.param({"state": "cut", "cut_to": "63"}, 422, "bad-field", id="a figure that the engine is to say"),
        pytest.param({}, 422, "bad-field", id="no state"),
        pytest.param({"state": "cut"}, 404, "not-issued", id="a piece that was not issued"),
    ],
)
def test_what_cannot_be_said_of_a_piece_is_refused(client, read_room, said, status, key):
    response = client.post(f"/api/rooms/{read_room}/pieces/{read_room}/state", json=said)
    assert (response.status_code, response.json["error"]["key"]) == (status, key)


def test_the_table_of_pieces_says_how_they_stand(client, read_room):
    address = f"/api/rooms/{read_room}/pieces"
    client.post(f"{address}/issue")
    piece = client.get(address).json["pieces"][1]
    written(client.post(f"{address}/{piece['id']}/state", json={"state": "cut", "as_cut": "=95"}))
    rows = list(csv.DictReader(io.StringIO(client.get(f"{address}.csv").text, newline="")))
    assert [row["state"] for row in rows] == ["to cut", "cut", "to cut", "to cut"]
    assert (rows[1]["cut to"], rows[1]["as cut"]) == (piece["cut"]["shown"], "'=95")


def test_what_is_not_read_yet_is_still_wanted(client, room, walls, read_room):
    assert client.get(f"/api/rooms/{room}/needs").json["needs"] == []
    written(client.post(f"/api/rooms/{room}/walls", json={"turn": "inside"}))
    assert client.get(f"/api/rooms/{room}/needs").json["needs"]


def test_the_boards_of_a_room_are_planned_from_the_houses_stock(client, house, read_room):
    stock = [{"length": "144", "price": "19.98", "limit": None}]
    setting = client.put(f"/api/houses/{house}/settings/base.stock", json={"value": stock})
    written(setting, 200)
    (plan,) = client.get(f"/api/rooms/{read_room}/boards").json["plans"]
    assert plan["cost"] == "79.92"
    assert sorted(piece["letter"] for board in plan["boards"] for piece in board["pieces"]) == ["A", "B", "C", "D"]


def test_a_reading_comes_back_as_it_was_understood(client, room, walls):
    said = {"of": walls[0], "what": "length", "text": "sixty three and a quarter"}
    reply = client.post(f"/api/rooms/{room}/readings", json=said).json
    assert reply["understood"]["length"]["shown"] == '63 1/4"'
    assert reply["entry"]["body"]["text"] == "sixty three and a quarter"


def test_three_sides_of_a_corner_are_understood_as_degrees(client, room, walls):
    said = {"of": walls[0], "what": "sides", "text": "24, 24, 34"}
    assert client.post(f"/api/rooms/{room}/readings", json=said).json["understood"]["corner"] == pytest.approx(
        90.2, abs=0.1
    )


def test_a_reading_of_a_window_is_understood_in_the_wall_it_is_in(client, room, walls):
    window = written(client.post(f"/api/rooms/{room}/openings", json={"wall": walls[1], "kind": "window"}))["opening"]
    said = {"of": window, "what": "width", "text": "32 3/8"}
    assert client.post(f"/api/rooms/{room}/readings", json=said).status_code == 201


def test_a_reading_that_cannot_be_understood_is_refused_with_its_place_and_not_kept(client, room, walls):
    before = client.get("/api/journal").data
    said = {"of": walls[0], "what": "length", "text": "63 1/4 x"}
    refused = client.post(f"/api/rooms/{room}/readings", json=said)
    assert refused.status_code == 422
    assert refused.json["error"]["where"]["field"] == "text"
    assert "63 1/4 x" in refused.json["error"]["message"]
    assert client.get("/api/journal").data == before


def test_a_struck_reading_is_wanted_again_and_restored_by_striking_the_strike(client, room, walls, read_room):
    entries = [row["readings"][0]["entry"] for row in client.get(f"/api/rooms/{room}").json["rows"] if row["readings"]]
    strike = client.post(f"/api/entries/{entries[0]}/strike", json={"why": "read off the wrong mark"}).json["entry"]
    assert len(client.get(f"/api/rooms/{room}/needs").json["needs"]) == 1
    client.post(f"/api/entries/{strike['id']}/strike", json={})
    assert client.get(f"/api/rooms/{room}/needs").json["needs"] == []


def test_saying_a_name_anew_supersedes_what_was_said_and_leaves_no_conflict(client, house):
    for name in ("the cottage", "the bungalow on the hill"):
        written(client.put(f"/api/houses/{house}", json={"name": name, "built": None}), 200)
    found = client.get("/api/houses").json
    assert [one["name"] for one in found["houses"]] == ["the bungalow on the hill"]
    assert found["conflicts"] == []


def test_a_room_keeps_what_is_not_said_anew(client, read_room):
    written(client.put(f"/api/rooms/{read_room}", json={"name": "studio"}), 200)
    found = client.get(f"/api/rooms/{read_room}").json["room"]
    assert (found["name"], found["closed"]) == ("studio", True)


def test_a_setting_said_twice_stands_once_and_a_room_may_differ(client, house, room):
    for value in ("1/2", "9/16"):
        written(client.put(f"/api/houses/{house}/settings/base.thickness", json={"value": value}), 200)
    written(client.put(f"/api/rooms/{room}/settings/base.thickness", json={"value": "3/4"}), 200)
    found = client.get("/api/houses").json
    assert found["houses"][0]["settings"] == {"base.thickness": "9/16"}
    assert found["conflicts"] == []


def test_a_setting_that_cannot_be_is_refused_and_not_kept(client, house):
    refused = client.put(f"/api/houses/{house}/settings/base.inside", json={"value": "glue"})
    assert refused.status_code == 422
    assert "glue" in refused.json["error"]["message"]
    assert client.get("/api/houses").json["houses"][0]["settings"] == {}


@pytest.mark.parametrize(
    ("method", "path", "body"),
    [
        ("put", "/api/houses/{nobody}", {"name": "x"}),
        ("post", "/api/houses/{nobody}/rooms", {"name": "x"}),
        ("put", "/api/houses/{nobody}/settings/reveal", {"value": "1/4"}),
        ("get", "/api/rooms/{nobody}", None),
        ("get", "/api/rooms/{nobody}/needs", None),
        ("get", "/api/rooms/{nobody}/pieces", None),
        ("get", "/api/rooms/{nobody}/pieces.csv", None),
        ("post", "/api/rooms/{nobody}/pieces/issue", None),
        ("post", "/api/rooms/{nobody}/pieces/{nobody}/state", {"state": "cut"}),
        ("get", "/api/rooms/{nobody}/boards", None),
        ("put", "/api/rooms/{nobody}", {"name": "x"}),
        ("put", "/api/rooms/{nobody}/settings/reveal", {"value": "1/4"}),
        ("post", "/api/rooms/{nobody}/walls", {"turn": "inside"}),
        ("post", "/api/rooms/{room}/openings", {"wall": "{nobody}", "kind": "door"}),
        ("post", "/api/rooms/{room}/obstacles", {"wall": "{nobody}", "kind": "tub", "base": "stops"}),
        ("post", "/api/rooms/{room}/readings", {"of": "{nobody}", "what": "length", "text": "5"}),
        ("put", "/api/rooms/{room}/walls/{nobody}", {"turn": "inside"}),
        ("post", "/api/entries/{nobody}/strike", {}),
        ("get", "/api/entries/{nobody}", None),
    ],
)
def test_what_is_not_there_is_404_and_nothing_is_written(method, path, body, client, room):
    nobody = "0190aaaa-0000-7000-8000-000000000000"
    body = body and {name: value.replace("{nobody}", nobody) for name, value in body.items()}
    before = client.get("/api/journal").data
    response = getattr(client, method)(path.format(nobody=nobody, room=room), json=body)
    assert response.status_code == 404, response.json
    assert response.json["error"]["key"].startswith("no-such-")
    assert client.get("/api/journal").data == before


def test_every_entry_the_laptop_writes_is_one_that_a_phone_accepts(client, read_room):
    entries = [line for line in client.get("/api/journal").data.decode().split("\n") if line]
    checked = client.post(
        "/api/ask", json={"ask": "check", "entries": [client.application.json.loads(e) for e in entries]}
    )
    assert checked.json["answer"]["refused"] == []
    assert len(entries) > 10


def test_what_a_phone_brings_is_in_the_next_answer(client, house, make_entry):
    body = {"room": "0190aaaa-0001-7000-8000-000000000001", "house": house, "name": "stair hall", "closed": False}
    sent = {"protocol": 1, "device": "a0b1c2d3e4f50617", "database": None, "cursor": 0}
    client.post("/api/sync", json={**sent, "entries": [make_entry(1, kind="room", body=body)]})
    (found,) = client.get("/api/houses").json["houses"]
    assert [room["name"] for room in found["rooms"]] == ["stair hall"]


def test_an_entry_written_after_a_phones_is_stamped_after_it_although_the_laptops_clock_is_slow(client, make_entry):
    ahead = "01ffffffffff"  # in the year 2039; further than a day ahead is not followed
    laptop = client.application.extensions["scantling"]
    laptop._clock = lambda: int(ahead, 16) - 3_600_000
    stamp = f"{ahead}-0000-a0b1c2d3e4f50617"
    sent = {"protocol": 1, "device": "a0b1c2d3e4f50617", "database": None, "cursor": 0}
    client.post("/api/sync", json={**sent, "entries": [make_entry(1, stamp=stamp)]})
    entry = client.post("/api/houses", json={"name": "the bungalow"}).json["entry"]
    assert entry["stamp"] > stamp
    assert entry["stamp"][:12] == ahead


def test_the_table_of_pieces_opens_in_a_spreadsheet_without_running_anything(client, house):
    name = '=HYPERLINK("http://localhost/","+1")'
    room = written(client.post(f"/api/houses/{house}/rooms", json={"name": name}))["room"]
    wall = written(client.post(f"/api/rooms/{room}/walls", json={"turn": "inside"}))["wall"]
    for what, text in (("length", "96"), ("corner", "90")):
        client.post(f"/api/rooms/{room}/readings", json={"of": wall, "what": what, "text": text})
    response = client.get(f"/api/rooms/{room}/pieces.csv")
    rows = list(csv.reader(io.StringIO(response.text, newline="")))
    assert len(rows) == 2
    assert rows[1][0] == "'" + name
    assert response.content_type == "text/csv; charset=utf-8"
    assert not [cell for row in rows for cell in row if cell.startswith(("=", "+", "-", "@"))]


def test_the_laptop_writes_under_a_new_name_in_every_run(client, tmp_path, page):
    from scantling.api import Config, create_app

    first = client.post("/api/houses", json={"name": "one"}).json["entry"]
    again = create_app(Config(tmp_path, site=page))
    second = again.test_client().post("/api/houses", json={"name": "two"}).json["entry"]
    again.extensions["scantling"].store.close()
    assert first["device"] != second["device"]
    assert second["seq"] == 2
