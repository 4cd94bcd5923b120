"""Photos drawn and pinned on, and the tape of sums, over REST alone."""

import json

import pytest

from tests.entries import four_walls


def written(response, status=201):
    assert response.status_code == status, response.json
    return response.json["entry"]["body"]


def refused(response):
    return response.status_code, response.json["error"]["key"], response.json["error"]["where"]["field"]


@pytest.fixture
def house(client):
    made = four_walls()
    lines = "".join(json.dumps(entry) + "\n" for entry in made.entries)
    client.post("/api/journal", data=lines, content_type="application/x-ndjson")
    return made


@pytest.fixture
def photo(client, house):
    said = {"blob": "0f" * 32, "size": 3, "type": "image/jpeg", "name": ""}
    return written(client.post(f"/api/of/{house.walls[0]}/attachments", json=said))["attachment"]


def test_a_photo_is_drawn_on_pinned_captioned_and_each_is_taken_back(client, house, photo):
    address = f"/api/attachments/{photo}"
    written(client.put(f"{address}/caption", json={"name": "the crack by the sill"}), 200)
    line = client.post(f"{address}/strokes", json={"points": [[0, 0], [10_000, 10_000]]}).json["entry"]
    figure = {"of": house.walls[0], "what": "length"}
    pin = written(client.post(f"{address}/pins", json={**figure, "x": 2500, "y": 9000}))["pin"]
    written(client.put(f"{address}/pins/{pin}", json={**figure, "x": 2600, "y": 9100}), 200)
    marks = client.get(f"{address}/marks").json
    assert (marks["caption"], marks["of"]) == ("the crack by the sill", house.walls[0])
    assert marks["strokes"] == [{"entry": line["id"], "points": [[0, 0], [10_000, 10_000]]}]
    assert [(one["pin"], one["x"], one["y"], one["shown"]) for one in marks["pins"]] == [(pin, 2600, 9100, '120"')]
    attached = client.get(f"/api/of/{house.walls[0]}/attachments").json["attachments"]
    assert [(one["name"], one["blob"], one["size"]) for one in attached] == [("the crack by the sill", "0f" * 32, 3)]
    written(client.post(f"/api/entries/{line['id']}/strike", json={}))
    assert client.get(f"{address}/marks").json["strokes"] == []


@pytest.mark.parametrize(
    ("change", "status", "key", "field"),
    [
        pytest.param({"x": 10_001}, 422, "bad-field", "x", id="off the photo"),
        pytest.param({"y": 0.5}, 422, "bad-field", "y", id="part of a part"),
        pytest.param({"what": "girth"}, 422, "bad-field", "what", id="a figure of no name"),
        pytest.param({"what": "sill"}, 404, "no-such-figure", "", id="a figure that a wall has not"),
        pytest.param({"of": "00000000-0000-4000-8000-000000000000"}, 404, "no-such-figure", "", id="of nobody"),
    ],
)
def test_a_pin_that_could_show_nothing_is_refused_and_not_kept(client, house, photo, change, status, key, field):
    before = client.get("/api/journal").data
    said = {"of": house.walls[0], "what": "length", "x": 1, "y": 2} | change
    assert refused(client.post(f"/api/attachments/{photo}/pins", json=said)) == (status, key, field)
    assert client.get("/api/journal").data == before


def test_what_is_no_line_and_what_is_no_photo_are_refused(client, photo):
    wrong = client.post(f"/api/attachments/{photo}/strokes", json={"points": [[0, 0], [0, 10_001]]})
    assert refused(wrong) == (422, "bad-field", "points")
    assert "ten-thousandths" in wrong.json["error"]["message"]
    for way in ("strokes", "pins"):
        said = {"points": [[0, 0], [1, 1]]} if way == "strokes" else {"of": photo, "what": "cut", "x": 1, "y": 1}
        assert refused(client.post(f"/api/attachments/nobody/{way}", json=said))[:2] == (404, "no-such-attachment")
    assert client.get("/api/attachments/nobody/marks").status_code == 404
    said = {"of": photo, "what": "cut", "x": 1, "y": 1}
    assert refused(client.put(f"/api/attachments/{photo}/pins/nobody", json=said))[:2] == (404, "no-such-pin")


def test_sums_are_kept_noted_told_in_parts_and_struck(client, house):
    first = client.post("/api/sums", json={"text": "63 1/4 - 2*(3 1/2 + 3/16)", "of": house.room}).json["entry"]
    kept = first["body"]["sum"]
    said = {"text": "63 1/4 - 2*(3 1/2 + 3/16)", "of": house.room, "note": "the shelf"}
    written(client.put(f"/api/sums/{kept}", json=said), 200)
    written(client.post("/api/sums", json={"text": "half of 9"}))
    tape = client.get("/api/sums").json
    assert [(one["text"], one["note"], one["room"], one["reading"]) for one in tape["sums"]] == [
        ("half of 9", "", "", '4 1/2"'), ("63 1/4 - 2*(3 1/2 + 3/16)", "the shelf", "the room", '55 7/8"'),
    ]  # fmt: skip
    assert [one["sum"] for one in client.get("/api/sums?most=1&skip=1").json["sums"]] == [kept]
    for entry in tape["sums"][1]["entries"]:
        written(client.post(f"/api/entries/{entry}/strike", json={}))
    assert [one["text"] for one in client.get("/api/sums").json["sums"]] == ["half of 9", "63 1/4 - 2*(3 1/2 + 3/16)"]
    written(client.post(f"/api/entries/{first['id']}/strike", json={}))
    tape = client.get("/api/sums").json
    assert ([one["text"] for one in tape["sums"]], [one["sum"] for one in tape["struck"]]) == (["half of 9"], [kept])


@pytest.mark.parametrize(
    ("said", "status", "key"),
    [
        pytest.param({"text": "63 1/4 - fish"}, 422, "unknown-word", id="words of nobody"),
        pytest.param({"text": "1 / 0"}, 422, "nothing-under", id="by nothing"),
        pytest.param({"text": " "}, 422, "bad-field", id="no sum"),
        pytest.param({"text": "9", "of": "nobody"}, 404, "no-such-room", id="in no room"),
    ],
)
def test_a_sum_that_cannot_be_worked_is_refused_and_not_kept(client, house, said, status, key):
    before = client.get("/api/journal").data
    assert refused(client.post("/api/sums", json=said))[:2] == (status, key)
    assert client.get("/api/journal").data == before
    assert client.put("/api/sums/nobody", json={"text": "9"}).status_code == 404
