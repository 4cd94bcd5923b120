"""The door: every way of asking badly gets the one error body, and nothing bad gets through it."""

import gzip
import json
import logging
import re

import pytest
from scantling.api.door import BODY_BYTES
from scantling.engine.desk import QUESTIONS, Desk
from scantling.wire import DEPTH

JSON = "application/json"
SURPRISES = {
    "nothing": "",
    "half": '{"ask": "read"',
    "not utf-8": b'{"ask": "\xff"}',
    "nan": '{"n": NaN}',
    "two": "{} {}",
    "a string without end": '{"ask": "',
}


def error_of(response, status):
    assert response.status_code == status, response.data
    assert response.content_type == JSON
    assert set(response.json) == {"error"}
    error = response.json["error"]
    assert set(error) == {"key", "message", "where"}
    assert set(error["where"]) == {"field", "at"}
    assert error["message"]
    assert "\n" not in error["message"]
    return error


@pytest.mark.parametrize("path", ["/api/ask", "/api/sync", "/api/houses"])
@pytest.mark.parametrize("body", SURPRISES.values(), ids=SURPRISES)
def test_a_body_that_is_not_json_is_400_at_every_door(body, path, client):
    assert error_of(client.post(path, data=body, content_type=JSON), 400)["key"] == "not-json"


@pytest.mark.parametrize("path", ["/api/ask", "/api/sync", "/api/houses"])
@pytest.mark.parametrize("unit", ["[", '{"a":', '[{"a":['], ids=["lists", "objects", "both"])
def test_json_nested_without_end_is_400_and_not_a_crash(unit, path, client):
    error = error_of(client.post(path, data=unit * 30_000, content_type=JSON), 400)
    assert error["key"] == "too-deep"


@pytest.mark.parametrize("path", ["/api/ask", "/api/sync", "/api/houses"])
def test_json_of_brackets_without_end_is_413_and_nothing_is_read(path, client):
    assert error_of(client.post(path, data="[]" * 200_000, content_type=JSON), 413)["key"] == "too-many-brackets"


def test_json_as_deep_as_allowed_is_read(client):
    deep = {"ask": "check", "entries": json.loads("[" * (DEPTH - 2) + "]" * (DEPTH - 2))}
    assert client.post("/api/ask", json=deep).status_code == 200


def test_brackets_within_a_text_are_no_depth(client):
    answered = client.post("/api/ask", json={"ask": "read", "text": '[{"' * 100})
    assert answered.status_code == 200
    assert "error" in answered.json


@pytest.mark.parametrize("path", ["/api/ask", "/api/sync", "/api/houses"])
@pytest.mark.parametrize("kind", ["text/plain", "application/x-www-form-urlencoded", "multipart/form-data", ""])
def test_what_a_form_of_another_site_could_send_is_415(kind, path, client):
    assert error_of(client.post(path, data="{}", content_type=kind), 415)["key"] == "wrong-type"


@pytest.mark.parametrize("name", [[], {}, [["boards"]], None, 3, True], ids=repr)
def test_a_question_whose_name_is_no_text_is_refused_as_one(name, client):
    answered = client.post("/api/ask", json=[{"ask": name}, {"ask": "read", "text": "3"}])
    assert answered.status_code == 200
    assert [sorted(one) for one in answered.json] == [["error"], ["answer"]]


def test_another_encoding_is_415(client):
    refused = client.post("/api/sync", data=b"x", content_type=JSON, headers={"Content-Encoding": "br"})
    assert error_of(refused, 415)["key"] == "wrong-encoding"


@pytest.mark.parametrize("path", ["/api/ask", "/api/sync", "/api/houses"])
def test_a_body_over_the_limit_is_413(path, client):
    assert error_of(client.post(path, data=" " * (BODY_BYTES + 1), content_type=JSON), 413)["key"] == "too-large"


def test_more_entries_than_an_exchange_takes_are_413(client, make_entry):
    sent = {"protocol": 2, "device": "a0b1c2d3e4f50617", "database": None, "cursor": 0}
    refused = client.post("/api/sync", json={**sent, "entries": [make_entry(seq) for seq in range(1, 502)]})
    assert error_of(refused, 413)["key"] == "too-many-entries"


def packed(client, data):
    return client.post("/api/ask", data=data, content_type=JSON, headers={"Content-Encoding": "gzip"})


def test_a_packed_body_is_read(client):
    answered = packed(client, gzip.compress(b'{"ask": "read", "text": "63 1/4"}'))
    assert answered.json["answer"]["length"]["inches"] == 63.25


def test_a_small_body_that_unpacks_to_a_flood_is_413(client):
    flood = gzip.compress(b" " * 200_000_000)
    assert len(flood) < BODY_BYTES
    assert error_of(packed(client, flood), 413)["key"] == "too-large"


@pytest.mark.parametrize(
    "spoil",
    [
        pytest.param(lambda data: data[:-4], id="cut off"),
        pytest.param(lambda data: b"{}", id="not packed at all"),
        pytest.param(lambda data: data[:12] + b"\0\0\0" + data[15:], id="damaged"),
        pytest.param(lambda data: data + b"more", id="something after it"),
        pytest.param(lambda data: b"", id="empty"),
    ],
)
def test_a_body_that_cannot_be_unpacked_is_400(spoil, client):
    assert error_of(packed(client, spoil(gzip.compress(b'{"ask": "read"}'))), 400)["key"] == "not-gzip"


@pytest.mark.parametrize(
    "path", ["/api/nowhere", "/nowhere", "/api/houses/", "/v/x/y.js", "/../etc/passwd", "/api/rooms"]
)
def test_an_address_where_nothing_is_is_404(path, client):
    assert error_of(client.get(path), 404)["key"] == "no-such-address"


@pytest.mark.parametrize(
    ("method", "path"), [("get", "/api/ask"), ("delete", "/api/houses"), ("post", "/api/openapi.json")]
)
def test_a_method_that_an_address_does_not_take_is_405_and_says_which_it_takes(method, path, client):
    refused = getattr(client, method)(path)
    assert error_of(refused, 405)["key"] == "wrong-method"
    assert refused.headers["Allow"]


def test_a_field_that_nobody_knows_is_422_by_name(client):
    error = error_of(client.post("/api/houses", json={"name": "x", "colour": "red"}), 422)
    assert error["where"]["field"] == "colour"


@pytest.mark.parametrize("body", [[], "x", 3, None, {"name": 3}, {"name": "x" * 3000}, {"name": "x", "built": "1936"}])
def test_a_house_of_the_wrong_shape_is_422_and_not_written(body, client):
    error_of(client.post("/api/houses", data=json.dumps(body), content_type=JSON), 422)
    assert client.get("/api/houses").json["houses"] == []


def test_a_lone_surrogate_in_a_name_is_422_and_not_a_crash(client):
    error_of(client.post("/api/houses", data='{"name": "\\ud83e"}', content_type=JSON), 422)


def test_another_protocol_of_the_exchange_is_409(client):
    assert error_of(client.post("/api/sync", json={"protocol": 99}), 409)["key"] == "protocol"


def test_other_content_under_a_known_id_in_a_journal_file_is_left_out_and_named(client, make_entry):
    def bring(*entries):
        lines = "\n".join(json.dumps(entry) for entry in entries)
        return client.post("/api/journal", data=lines, content_type="application/x-ndjson")

    assert bring(make_entry(1)).json == {"stored": 1, "known": 0, "left_out": 0, "refused": []}
    told = bring(make_entry(2), make_entry(1, "changed")).json
    assert (told["stored"], told["known"], told["left_out"]) == (1, 0, 1)
    assert [(one["key"], one["message"].partition(":")[0]) for one in told["refused"]] == [("id-taken", "Line 2")]
    assert error_of(bring(make_entry(1, "changed")), 409)["key"] == "id-taken"
    assert client.get("/api/journal").data.count(b"\n") == 2


HOSTS = (
    "evil.example",
    "evil.example:8017",
    "localhost.evil.example",
    "127.0.0.1.evil.example",
    "",
    "localhost:80:80",
    "[::2]",
)


@pytest.mark.parametrize("host", HOSTS)
@pytest.mark.parametrize("path", ["/", "/api/houses", "/api/nowhere"])
def test_a_name_that_is_not_ours_gets_nothing_even_on_loopback(path, host, client):
    assert error_of(client.get(path, headers={"Host": host}), 421)["key"] == "wrong-host"


@pytest.mark.parametrize("host", ["localhost", "LOCALHOST:8017", "127.0.0.1:1", "[::1]:8017", "[::1]"])
def test_the_names_of_loopback_are_ours(host, client):
    assert client.get("/api/houses", headers={"Host": host}).status_code == 200


def test_no_answer_sets_a_cookie_or_may_be_kept_by_a_cache(client):
    for path in ("/api/houses", "/api/nowhere", "/api/openapi.json", "/api/"):
        response = client.get(path)
        assert "Set-Cookie" not in response.headers
        assert response.headers["Cache-Control"] == "no-store"
        assert response.headers["X-Content-Type-Options"] == "nosniff"


def test_a_failure_of_ours_says_nothing_of_its_inside_and_one_line_in_the_log_stays_one_line(
    client, caplog, monkeypatch
):
    def fail(*_):
        raise RuntimeError("secret of the house")

    monkeypatch.setattr(client.application.extensions["scantling"], "in_force", fail)
    with caplog.at_level(logging.ERROR):
        refused = client.get("/api/rooms/x%0AERROR%20forged%20line")
    assert error_of(refused, 500)["key"] == "failed"
    assert "secret" not in refused.text
    assert "\n" not in caplog.records[0].getMessage()


def test_the_door_answers_in_the_desks_own_bytes(client):
    questions = [
        {"ask": "read", "text": "5' 3 1/4\""},
        {"ask": "read", "text": "no length"},
        {"ask": "sum", "text": "1+1/2"},
    ]
    assert client.post("/api/ask", json=questions).text == Desk().answer_text(json.dumps(questions))
    assert client.post("/api/ask", json=questions[0]).text == Desk().answer_text(json.dumps(questions[0]))


def test_entries_taken_in_a_question_are_not_in_the_next_answer(client, make_entry):
    take = {"ask": "take", "entries": [make_entry(1)]}
    taken, notebook = client.post("/api/ask", json=[take, {"ask": "notebook"}]).json
    assert (taken["answer"]["taken"], notebook["answer"]["entries"]) == (1, 1)
    assert client.post("/api/ask", json={"ask": "notebook"}).json["answer"]["entries"] == 0


def test_the_specification_holds_every_question_and_every_address(client):
    spec = client.get("/api/openapi.json").json
    rules = {str(rule).replace("<", "{").replace(">", "}") for rule in client.application.url_map.iter_rules()}
    drawn = {"/api/openapi.json", "/api/", "/api/reference.css"}
    assert set(spec["paths"]) == {rule for rule in rules if rule.startswith("/api/")} - drawn
    schemas = spec["components"]["schemas"]
    assert len(schemas["Question"]["anyOf"]) == len({question.takes for question in QUESTIONS.values()})
    assert len(schemas["Answered"]["oneOf"][0]["properties"]["answer"]["anyOf"]) == len(
        {q.gives for q in QUESTIONS.values()}
    )
    assert all(operation["summary"] for path in spec["paths"].values() for operation in list_operations(path))


def list_operations(path):
    return [operation for method, operation in path.items() if method != "parameters"]


def test_whatever_a_body_leaves_out_is_told_by_what_to_write(client):
    spec = client.get("/api/openapi.json").json
    taking = [
        (method, re.sub(r"{\w+}", "any", path))
        for path, methods in spec["paths"].items()
        for method in ("post", "put")
        if path != "/api/ask" and JSON in methods.get(method, {}).get("requestBody", {}).get("content", {})
    ]
    answers = {path: client.open(path, method=method, json={}) for method, path in taking}
    assert len(answers) > 20
    # These need no word: there the entry or the piece alone is looked for.
    for path in ("/api/entries/any/strike", "/api/rooms/any/pieces/any/spoiled"):
        assert answers.pop(path).status_code == 404
    for path, answered in answers.items():
        assert re.match(r'"\w+" is missing: write ', error_of(answered, 422)["message"]), path


def test_every_reference_in_the_specification_leads_somewhere(client):
    spec = client.get("/api/openapi.json").json
    text = json.dumps(spec)
    wanted = {part.split('"')[0] for part in text.split('"$ref": "#/components/')[1:]}
    assert len(wanted) > 20
    assert wanted <= {f"{kind}/{name}" for kind, held in spec["components"].items() for name in held}


def test_the_page_of_the_api_stands_on_its_own_and_names_every_question(client):
    page = client.get("/api/")
    assert page.content_type == "text/html; charset=utf-8"
    assert "script-src 'self'" in page.headers["Content-Security-Policy"]
    assert "<script" not in page.text
    assert "style=" not in page.text
    assert "://" not in page.text
    assert all(f'"ask": "{name}"' in page.text for name in QUESTIONS)
    assert "data:" not in page.text  # the page's own policy lets nothing in but files of this server
    for address in re.findall(r'<link[^>]* href="([^"]*)"', page.text):
        assert client.get(address).status_code == 200, address
    assert client.get("/api/reference.css").content_type == "text/css; charset=utf-8"
