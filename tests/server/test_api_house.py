"""A house built over REST alone: the sewing room of the tests, from its first wall to its cut list."""

import csv
import io
import re

import pytest
from scantling.engine.bodies import BODIES, ReadingBody
from scantling.engine.bodies import FIGURES as FIGURES_THERE_ARE
from scantling.engine.questions.settable import SETTABLE
from scantling.engine.survey.facts import READINGS
from scantling.site import web_folder

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


def test_the_corner_of_a_wall_is_understood_as_the_wall_turns(client, room):
    for turn, corner in (("inside", 88), ("outside", 272)):
        wall = written(client.post(f"/api/rooms/{room}/walls", json={"turn": turn}))["wall"]
        said = {"of": wall, "what": "corner", "text": "88"}
        assert client.post(f"/api/rooms/{room}/readings", json=said).json["understood"]["corner"] == corner
        # A head's corner is inside the opening, whichever way its wall turns.
        door = written(client.post(f"/api/rooms/{room}/openings", json={"wall": wall, "kind": "door"}))["opening"]
        head = {"of": door, "what": "left_corner", "text": "90.5"}
        assert client.post(f"/api/rooms/{room}/readings", json=head).json["understood"]["corner"] == 90.5


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
    sent = {"protocol": 2, "device": "a0b1c2d3e4f50617", "database": None, "cursor": 0}
    client.post("/api/sync", json={**sent, "entries": [make_entry(1, kind="room", body=body)]})
    (found,) = client.get("/api/houses").json["houses"]
    assert [room["name"] for room in found["rooms"]] == ["stair hall"]


def test_an_entry_written_after_a_phones_is_stamped_after_it_although_the_laptops_clock_is_slow(client, make_entry):
    ahead = "01ffffffffff"  # in the year 2039; further than a day ahead is not followed
    laptop = client.application.extensions["scantling"]
    laptop._clock = lambda: int(ahead, 16) - 3_600_000
    stamp = f"{ahead}-0000-a0b1c2d3e4f50617"
    sent = {"protocol": 2, "device": "a0b1c2d3e4f50617", "database": None, "cursor": 0}
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


FIGURES = {
    "length": "96", "ceiling": "96 1/8", "height": "95", "corner": "90.5", "ceiling_corner": "90.5",
    "sides": "24, 24, 34", "studs": "14 1/2, every 16", "plumb": "1/4 top", "fall": "1/2 right",
    "bow": "1/4 hump at 48",
    "chair_rail": "96 1/4", "picture_rail": "96 3/8",
}  # fmt: skip
OF_OPENING = {
    "at": "20", "width": "30", "left": "80", "right": "80", "left_corner": "90.5", "right_corner": "89.5", "sash": "3",
    "sill": "24", "depth_left": "1/2, 5/8, -1/8", "depth_right": "1/2", "depth_head": "1/2, 1/2", "depth_sill": "1/2",
}  # fmt: skip


def test_every_figure_that_the_page_takes_is_taken_by_rest(client, room, walls, read_room):
    window = written(client.post(f"/api/rooms/{room}/openings", json={"wall": walls[1], "kind": "window"}))["opening"]
    cabinet = {"wall": walls[2], "kind": "cabinet", "base": "stops"}
    thing = written(client.post(f"/api/rooms/{room}/obstacles", json=cabinet))["obstacle"]
    said = [(walls[0], *figure) for figure in FIGURES.items()]
    said += [(window, *figure) for figure in OF_OPENING.items()]
    said += [(thing, "depth", "12")]
    client.post(f"/api/rooms/{room}/pieces/issue")
    piece = client.get(f"/api/rooms/{room}/pieces").json["pieces"][0]
    said += [(piece["id"], "in_place", "95 1/2"), (piece["id"], "salvaged", "98")]
    for of, what, text in said:
        reply = client.post(f"/api/rooms/{room}/readings", json={"of": of, "what": what, "text": text})
        assert reply.status_code == 201, (what, reply.json)
    wanted = ReadingBody().fields["what"].validators[0].choices
    assert {what for _, what, _ in said} == set(wanted)


def test_degrees_at_the_corner_of_a_head_are_degrees_and_no_length(client, room, walls):
    door = written(client.post(f"/api/rooms/{room}/openings", json={"wall": walls[1], "kind": "door"}))["opening"]
    said = {"of": door, "what": "left_corner", "text": "90.5"}
    assert client.post(f"/api/rooms/{room}/readings", json=said).json["understood"]["corner"] == 90.5


MISPLACED = {
    "a height of a wall's jamb": ("wall", "left"), "a corner of a door": ("opening", "corner"),
    "the sash of a cabinet": ("obstacle", "sash"), "the depth of a wall": ("wall", "depth"),
}  # fmt: skip


@pytest.fixture
def things(client, room, walls):
    """A wall, an opening and a thing in the way, by their sort."""
    door = {"wall": walls[1], "kind": "door"}
    cabinet = {"wall": walls[2], "kind": "cabinet", "base": "stops"}
    return {
        "wall": walls[0],
        "opening": written(client.post(f"/api/rooms/{room}/openings", json=door))["opening"],
        "obstacle": written(client.post(f"/api/rooms/{room}/obstacles", json=cabinet))["obstacle"],
    }


@pytest.mark.parametrize(("sort", "what"), MISPLACED.values(), ids=MISPLACED)
def test_a_figure_that_is_not_read_of_such_a_thing_is_named_and_not_kept(sort, what, client, room, things):
    said = {"of": things[sort], "what": what, "text": "80"}
    error = client.post(f"/api/rooms/{room}/readings", json=said).json["error"]
    assert (error["key"], error["where"]["field"]) == ("no-such-reading", "what")
    assert f"“{what}” of this {sort}" in error["message"]
    assert all(row["what"] != what for row in client.get(f"/api/rooms/{room}").json["rows"] if row["readings"])


def test_every_figure_is_read_of_something():
    pieces = {"in_place", "salvaged"}
    assert {what for figures in READINGS.values() for what in figures} | pieces == set(FIGURES_THERE_ARE)


UNSETTABLE = {
    "a typing slip": ("houses/{house}", "base.heigth", "base.height"),
    "what is a room's, of an opening": ("rooms/{room}/things/{opening}", "base.height", "plinth.height"),
    "what is an opening's, of a wall": ("rooms/{room}/things/{wall}", "casing.width", "battens.width"),
    "what is a wall's, of a house": ("houses/{house}", "battens.count", ""),
    "what is a whole house's, of a room": ("rooms/{room}", "lengths", ""),
    "what is paper's, of a room": ("rooms/{room}", "paper.width", "apron.width"),
    "what is paper's, of a paint": ("houses/{house}/articles/{paint}", "paper.width", ""),
    "what is an article's, of a covering": ("rooms/{room}/coverings/{covering}", "paint.coats", ""),
}


@pytest.mark.parametrize(("where", "name", "nearest"), UNSETTABLE.values(), ids=UNSETTABLE)
def test_a_setting_that_such_a_thing_has_not_is_named_with_the_nearest(
    where, name, nearest, client, house, room, things
):
    paint = {"sort": "paint", "name": "chalk"}
    article = written(client.post(f"/api/houses/{house}/articles", json=paint))["article"]
    over = written(client.post(f"/api/rooms/{room}/coverings", json={"article": article}))["covering"]
    of = where.format(house=house, room=room, paint=article, covering=over, **things)
    response = client.put(f"/api/{of}/settings/{name}", json={"value": "3"})
    assert (response.status_code, response.json["error"]["key"]) == (404, "no-such-setting")
    assert f"“{name}”" in response.json["error"]["message"]
    assert nearest in response.json["error"]["message"]


def test_whatever_the_page_offers_to_set_may_be_set_by_rest_of_something():
    written_there = "".join(path.read_text(encoding="utf-8") for path in (web_folder() / "settings").glob("*.js"))
    offered = re.findall(r'(?<!say\()"([a-z_]+\.[a-z_.]+)"', written_there)
    # Some are called otherwise on the screen of a thing, or of a wall that is painted: those are keys of sentences.
    names = {name for name in offered if not name.startswith(("here.", "painted."))}
    assert len(names) > 90
    assert names <= frozenset().union(*SETTABLE.values())


def test_a_wall_is_put_after_one_of_its_room_and_a_lot_is_of_an_article_of_its_house(client, house, room, walls):
    other = written(client.post(f"/api/houses/{house}/rooms", json={"name": "bath"}))["room"]
    for response in (
        client.post(f"/api/rooms/{other}/walls", json={"turn": "inside", "after": walls[0]}),
        client.put(f"/api/rooms/{room}/walls/{walls[0]}", json={"turn": "inside", "after": other}),
    ):
        assert (response.status_code, response.json["error"]["key"]) == (404, "no-such-wall")
    said = {"article": room, "name": "fern", "count": "3"}
    lot = written(client.post(f"/api/rooms/{room}/lots", json={**said, "article": None}))["lot"]
    for response in (
        client.post(f"/api/houses/{house}/lots", json=said), client.post(f"/api/rooms/{room}/lots", json=said),
        client.put(f"/api/lots/{lot}", json=said),
    ):  # fmt: skip
        assert (response.status_code, response.json["error"]["key"]) == (404, "no-such-article")


def test_a_length_in_place_of_a_piece_that_was_not_issued_is_refused(client, room, walls):
    said = {"of": walls[0], "what": "in_place", "text": "90"}
    refused = client.post(f"/api/rooms/{room}/readings", json=said)
    assert (refused.status_code, refused.json["error"]["key"]) == (404, "no-such-piece")


def test_an_opening_and_a_thing_are_said_anew_and_go_to_another_wall_of_the_room(client, house, room, walls):
    door = written(client.post(f"/api/rooms/{room}/openings", json={"wall": walls[1], "kind": "door"}))["opening"]
    tub = {"wall": walls[2], "kind": "tub", "base": "stops"}
    thing = written(client.post(f"/api/rooms/{room}/obstacles", json=tub))["obstacle"]
    written(client.put(f"/api/rooms/{room}/openings/{door}", json={"wall": walls[3], "kind": "window"}), 200)
    vanity = {"wall": walls[0], "kind": "vanity", "base": "over"}
    written(client.put(f"/api/rooms/{room}/obstacles/{thing}", json=vanity), 200)
    found = client.get(f"/api/rooms/{room}").json["walls"]
    assert [[one["kind"] for one in wall["openings"] + wall["obstacles"]] for wall in found] == [
        ["vanity"], [], [], ["window"]
    ]  # fmt: skip
    other = written(client.post(f"/api/houses/{house}/rooms", json={"name": "bath"}))["room"]
    away = client.put(f"/api/rooms/{other}/openings/{door}", json={"wall": walls[3], "kind": "door"})
    assert (away.status_code, away.json["error"]["key"]) == (404, "no-such-wall")


def test_a_wall_said_anew_keeps_its_place_unless_that_is_said_too(client, room, walls):
    written(client.put(f"/api/rooms/{room}/walls/{walls[1]}", json={"turn": "outside"}), 200)
    found = client.get(f"/api/rooms/{room}").json["walls"]
    assert [(wall["id"], wall["turn"]) for wall in found][:2] == [(walls[0], "inside"), (walls[1], "outside")]
    written(client.put(f"/api/rooms/{room}/walls/{walls[3]}", json={"turn": "inside", "after": walls[0]}), 200)
    assert [wall["id"] for wall in client.get(f"/api/rooms/{room}").json["walls"]][:2] == [walls[0], walls[3]]


def test_of_two_places_that_a_wall_was_said_to_have_the_later_is_kept(client, room, walls, make_entry):
    earlier = make_entry(1, kind="wall", body={"room": room, "wall": walls[3], "after": None, "turn": "inside"})
    sent = {"protocol": 2, "device": earlier["device"], "database": None, "cursor": 0, "entries": [earlier]}
    assert client.post("/api/sync", json=sent).status_code == 200
    said = written(client.put(f"/api/rooms/{room}/walls/{walls[3]}", json={"turn": "outside"}), 200)
    assert said["after"] == walls[2]


def test_what_has_an_id_of_its_own_can_be_said_anew(client):
    ways = {rule.rule for rule in client.application.url_map.iter_rules() if "PUT" in rule.methods}
    own = {kind for kind, body in BODIES.items() if kind in body().fields} - {"state"}  # a word, and no id
    assert own == {"house", "room", "wall", "opening", "obstacle", "free", "article", "covering", "lot", "attachment",
                   "pin", "sum"}  # fmt: skip
    for kind in own:
        assert any(way.endswith(f"<{kind}>") for way in ways), kind


def test_free_pieces_plans_and_settings_of_a_thing_have_a_way_by_rest(client, house, room, walls, read_room):
    shelf = {"name": "shelf", "profile": "shelf 3/4", "text": "wall 1 - 1/4", "count": "1"}
    free = written(client.post(f"/api/rooms/{room}/free", json=shelf))["free"]
    written(client.put(f"/api/rooms/{room}/free/{free}", json={**shelf, "count": "2"}), 200)
    found = client.get(f"/api/rooms/{room}/pieces").json["pieces"]
    assert [piece["part"] for piece in found].count("shelf") == 2
    address = f"/api/rooms/{room}/things/{walls[0]}/settings/battens.count"
    assert written(client.put(address, json={"value": "4"}), 200)["of"] == walls[0]
    said = client.post(f"/api/rooms/{room}/obstacles", json={"wall": walls[1], "kind": "cabinet", "base": "stops"})
    toe = f"/api/rooms/{room}/things/{written(said)['obstacle']}/settings/toe.height"
    for value in ("4", "3 1/2"):  # said, and said otherwise later
        written(client.put(toe, json={"value": value}), 200)
    found = client.get(f"/api/rooms/{room}").json["walls"]
    shown = next(one for one in found if one["id"] == walls[1])["obstacles"][-1]
    assert shown["settings"] == {"toe.height": "3 1/2"}
    stock = [{"length": "144", "price": "19.98", "limit": None}]
    written(client.put(f"/api/houses/{house}/settings/base.stock", json={"value": stock}), 200)
    client.post(f"/api/rooms/{room}/pieces/issue")
    (plan,) = client.get(f"/api/rooms/{room}/boards").json["plans"]
    body = {name: value for name, value in plan["accept"]["body"].items() if name != "of"}
    assert written(client.post(f"/api/rooms/{room}/boards/plans", json=body))["profile"] == plan["profile"]


def test_tile_has_a_way_by_rest_and_whether_the_wall_behind_a_thing_is_covered(client, room, walls, read_room):
    tile = {"wall": walls[0], "kind": "tile", "base": "stops"}
    thing = written(client.post(f"/api/rooms/{room}/obstacles", json=tile))["obstacle"]
    for what, text in (("at", "10"), ("width", "30"), ("height", "72"), ("sill", "12")):
        said = {"of": thing, "what": what, "text": text}
        written(client.post(f"/api/rooms/{room}/readings", json=said))
    behind = f"/api/rooms/{room}/things/{thing}/settings/thing.behind"
    question = {"ask": "paint_areas", "room": room, "height": "96"}
    areas = []
    for value in ("bare", "covered", "usual"):
        written(client.put(behind, json={"value": value}), 200)
        areas.append(client.post("/api/ask", json=question).json["answer"]["surfaces"][0]["square_feet"])
    assert [areas[1] - area for area in areas] == [30 * 60 / 144, 0, 30 * 60 / 144]
    assert client.put(behind, json={"value": "painted"}).status_code == 422


def test_several_rooms_are_planned_at_once_by_rest(client, house, read_room):
    stock = [{"length": "144", "price": "19.98", "limit": None}]
    written(client.put(f"/api/houses/{house}/settings/base.stock", json={"value": stock}), 200)
    client.post(f"/api/rooms/{read_room}/pieces/issue")
    answer = client.get(f"/api/houses/{house}/boards?room={read_room}").json
    body = {name: value for name, value in answer["plans"][0]["accept"]["body"].items() if name != "of"}

    assert [room["chosen"] for room in answer["rooms"]].count(True) == 1
    assert written(client.post(f"/api/houses/{house}/boards/plans", json=body))["of"] == house
    assert client.get(f"/api/houses/{house}/boards").json["plans"][0]["accepted"]
    assert client.get(f"/api/houses/{house}/boards?room=nobody").status_code == 404


def test_what_covers_a_room_is_written_by_rest_and_what_its_label_cannot_say_is_refused(client, house, room, walls):
    def post(address: str, status: int = 201, **said: object) -> dict:
        return written(client.post(f"/api/{address}", json=said), status)

    paper = post(f"houses/{house}/articles", sort="paper", name="fern")["article"]
    address = f"/api/houses/{house}/articles/{paper}"
    assert written(client.put(f"{address}/settings/paper.width", json={"value": "20 1/2"}), 200)["of"] == paper
    for name, value in (("paper.width", "0"), ("paper.match", "tartan"), ("paper.price", "a lot")):
        refused = client.put(f"{address}/settings/{name}", json={"value": value})
        assert (refused.status_code, refused.json["error"]["where"]["field"]) == (422, name)
    written(client.put(address, json={"sort": "paper", "name": "fern on cream"}), 200)
    over = post(f"rooms/{room}/coverings", article=paper)["covering"]
    said = client.put(f"/api/rooms/{room}/coverings/{over}/settings/cover.walls", json={"value": [{"wall": walls[0]}]})
    assert written(said, 200)["of"] == over
    written(client.put(f"/api/rooms/{room}/coverings/{over}", json={"article": paper}), 200)
    lot = post(f"rooms/{room}/lots", article=paper, name="fern", count="3", price="115.50", date="2026-03-21")["lot"]
    assert post(f"houses/{house}/lots", name="caulk", count="2")["price"] == ""
    assert written(client.put(f"/api/lots/{lot}", json={"name": "fern", "count": "2"}), 200)["of"] == room
    for where, which, key, state in (
        (f"houses/{house}", "cautions", "Saw", "dismissed"), (f"rooms/{room}", "work", "strip", "done"),
        (f"rooms/{room}/coverings/{over}", "strips", "3", "hung"),
    ):  # fmt: skip
        first = client.post(f"/api/{where}/ticks", json={"list": which, "key": key, "state": state}).json["entry"]
        again = client.post(f"/api/{where}/ticks", json={"list": which, "key": key, "state": state}).json["entry"]
        assert again["supersedes"] == [first["id"]]
    for address in (
        f"rooms/{room}/coverings", f"rooms/{room}/coverings/{over}", f"rooms/{room}/shopping", f"rooms/{room}/work",
        f"houses/{house}/money", f"houses/{house}/next-rooms", f"houses/{house}/stock",
    ):  # fmt: skip
        reply = client.get(f"/api/{address}")
        assert (address, reply.status_code) == (address, 200), reply.json
    assert client.get(f"/api/rooms/{room}/coverings/{over}").json["article"]["name"] == "fern on cream"
    assert client.get(f"/api/rooms/{room}/work").json["steps"][1]["state"] == "early"
    other = post(f"houses/{house}/articles", sort="paper", name="moth")["article"]
    written(client.put(f"/api/rooms/{room}/coverings/{over}", json={"article": other}), 200)
    assert client.get(f"/api/rooms/{room}/coverings/{over}").json["article"]["name"] == "moth"
    gone = client.post(f"/api/rooms/{room}/coverings", json={"article": room})
    assert (gone.status_code, gone.json["error"]["key"]) == (404, "no-such-article")


def test_every_kind_of_entry_has_a_way_by_rest_and_a_line_in_the_api_page(client):
    ways = {
        "house": "/api/houses", "room": "/api/houses/{house}/rooms", "wall": "/api/rooms/{room}/walls",
        "opening": "/api/rooms/{room}/openings", "obstacle": "/api/rooms/{room}/obstacles",
        "reading": "/api/rooms/{room}/readings", "setting": "/api/rooms/{room}/things/{thing}/settings/{name}",
        "issue": "/api/rooms/{room}/pieces/issue", "state": "/api/rooms/{room}/pieces/{piece}/state",
        "test_cut": "/api/rooms/{room}/corners/{wall}/test-cuts",
        "free": "/api/rooms/{room}/free", "plan": "/api/rooms/{room}/boards/plans",
        "article": "/api/houses/{house}/articles", "covering": "/api/rooms/{room}/coverings",
        "lot": "/api/rooms/{room}/lots", "tick": "/api/rooms/{room}/ticks",
        "strike": "/api/entries/{entry}/strike", "attachment": "/api/of/{thing}/attachments",
        "stroke": "/api/attachments/{attachment}/strokes", "pin": "/api/attachments/{attachment}/pins",
        "sum": "/api/sums",
    }  # fmt: skip
    assert set(BODIES) - set(ways) == {"device"}  # the laptop names itself
    page = client.get("/api/").text
    for kind, way in ways.items():
        assert way in page, kind
