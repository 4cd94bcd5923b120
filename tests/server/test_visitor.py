"""Who asks: a page of another site, a name that is not ours, a neighbour who writes "localhost" get nothing."""

import pytest

from tests.server.test_api_door import error_of

NEIGHBOUR = {"REMOTE_ADDR": "192.168.7.20"}
FOREIGN = ("https://evil.example", "null", "http://localhost:9", "https://localhost", "http://localhost.evil.example")


@pytest.fixture
def room(client):
    house = client.post("/api/houses", json={"name": "the house of nobody else"}).json["entry"]["body"]["house"]
    return client.post(f"/api/houses/{house}/rooms", json={"name": "hall"}).json["entry"]["body"]["room"]


def entries(client):
    return client.get("/api/journal").data.count(b"\n")


@pytest.mark.parametrize("kind", ["text/plain", "application/x-www-form-urlencoded", "multipart/form-data; boundary=x"])
def test_a_form_of_another_site_issues_no_list(kind, client, room):
    before = entries(client)
    sent = client.post(f"/api/rooms/{room}/issue", data="x=1", content_type=kind)
    assert error_of(sent, 415)["key"] == "wrong-type"
    assert entries(client) == before


@pytest.mark.parametrize("origin", FOREIGN)
@pytest.mark.parametrize("method", ["get", "post", "put", "delete", "options"])
def test_a_page_of_another_site_reads_and_writes_nothing(method, origin, client, room):
    before = entries(client)
    for path in ("/api/houses", f"/api/rooms/{room}/issue", "/api/journal", "/api/ask", "/api/nowhere"):
        sent = getattr(client, method)(path, headers={"Origin": origin})
        assert error_of(sent, 403)["key"] == "wrong-origin"
        assert "Access-Control-Allow-Origin" not in sent.headers
        assert "nobody else" not in sent.text
    assert entries(client) == before


@pytest.mark.parametrize("site", ["cross-site", "same-site"])
def test_what_a_browser_calls_of_another_site_is_refused_without_an_origin_too(site, client):
    assert error_of(client.get("/api/journal", headers={"Sec-Fetch-Site": site}), 403)["key"] == "wrong-origin"


def test_our_own_page_and_a_program_are_let_in(client, room):
    own = {"Origin": "http://localhost", "Sec-Fetch-Site": "same-origin"}
    assert client.post("/api/houses", json={"name": "x"}, headers=own).status_code == 201
    assert client.post("/api/houses", json={"name": "x"}).status_code == 201
    assert client.get("/api/houses", headers={"Sec-Fetch-Site": "none"}).status_code == 200


@pytest.mark.parametrize("host", ["localhost", "127.0.0.1", "[::1]", "0.0.0.0", "localhost:8017", "[::]"])
@pytest.mark.parametrize("address", ["192.168.7.20", "203.0.113.9", "fe80::1", "2001:db8::1", ""])
def test_the_names_of_loopback_open_nothing_to_a_neighbour(host, address, client, room):
    for path in ("/", "/api/houses", "/sw.js"):
        sent = client.get(path, headers={"Host": host}, environ_base={"REMOTE_ADDR": address})
        assert error_of(sent, 421)["key"] == "wrong-host"


def test_this_machine_is_known_by_either_family_of_addresses(client):
    for address in ("127.0.0.1", "127.8.8.8", "::1", "::ffff:127.0.0.1"):
        assert client.get("/api/houses", environ_base={"REMOTE_ADDR": address}).status_code == 200
