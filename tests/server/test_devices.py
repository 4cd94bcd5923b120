"""Who may enter: the laptop's own page; a device with a token, until it is struck off; and nobody else."""

import hashlib

import pytest
from scantling.api import Config, create_app
from scantling.lan.pairing import CODE_MS, WRONG_CODES, PairingError, pair, show_code

from tests.server.test_api_door import error_of

NAME = "shed.home.arpa"
HOST = f"https://{NAME}"
ELSEWHERE = "https://notes.example.org"
PHONE = {"REMOTE_ADDR": "192.168.7.20"}
NOW = 1_800_000_000_000
SECRET = "the house of nobody else"  # stands in the notebook; no refusal may hold it


@pytest.fixture
def laptop(tmp_path, page):
    app = create_app(Config(tmp_path, names=(NAME,), site=page, origins=(ELSEWHERE,)))
    with app.test_client() as client:
        assert client.post("/api/houses", json={"name": SECRET}).status_code == 201
        yield client
    app.extensions["scantling"].store.close()


@pytest.fixture
def ask(laptop):
    """Asks as a phone of the network does."""

    def call(method, path, token=None, **more):
        headers = {**({"Authorization": f"Bearer {token}"} if token else {}), **more.pop("headers", {})}
        return laptop.open(path, method=method, base_url=HOST, headers=headers, environ_base=PHONE, **more)

    return call


def let_in(laptop, ask, name="the phone"):
    code = laptop.post("/api/devices/codes").json["code"]
    paired = ask("POST", "/api/devices", json={"code": code, "name": name})
    assert paired.status_code == 201, paired.text
    return paired.json["token"], paired.json["device"]["id"], code


def every_call(laptop):
    spec = laptop.get("/api/openapi.json").json
    for path, methods in spec["paths"].items():
        for method in methods.keys() & {"get", "post", "put", "delete"}:
            if (method, path) != ("post", "/api/devices"):
                yield method.upper(), path.replace("{", "").replace("}", "")
    yield "GET", "/api/openapi.json"
    yield "GET", "/api/"
    yield "GET", "/api/nowhere"


def test_a_device_that_is_not_paired_gets_the_page_and_no_byte_of_the_house(laptop, ask):
    assert ask("GET", "/").status_code == 200
    calls = list(every_call(laptop))
    assert len(calls) > 20
    before = laptop.get("/api/journal").data
    for method, path in calls:
        for token in (None, "x", "a" * 43):
            refused = ask(method, path, token)
            assert error_of(refused, 401)["key"] == "not-paired"
            assert SECRET not in refused.text
    assert laptop.get("/api/journal").data == before


def test_a_paired_device_reads_and_writes_until_it_is_struck_off_and_never_again(laptop, ask):
    token, device, _ = let_in(laptop, ask)
    assert SECRET in ask("GET", "/api/houses", token).text
    assert ask("POST", "/api/houses", token, json={"name": "x"}).status_code == 201
    assert laptop.delete(f"/api/devices/{device}").status_code == 200
    for method, path in every_call(laptop):
        refused = ask(method, path, token)
        assert error_of(refused, 401)["key"] == "struck-device"
        assert SECRET not in refused.text


def test_a_code_lets_one_device_in_and_not_two(laptop, ask):
    _, _, code = let_in(laptop, ask)
    again = ask("POST", "/api/devices", json={"code": code, "name": "another"})
    assert error_of(again, 403)["key"] == "used-code"
    assert len(laptop.get("/api/devices").json["devices"]) == 1


def test_a_mistyped_code_is_refused_and_the_right_one_still_counts_as_it_is_written(laptop, ask):
    code = laptop.post("/api/devices/codes").json["code"]
    mistyped = ("B" if code[0] == "A" else "A") + code[1:]
    wrong = ask("POST", "/api/devices", json={"code": mistyped, "name": "x"})
    assert error_of(wrong, 403)["key"] == "wrong-code"
    said = f" {code.lower().replace('-', ' ')} "
    assert ask("POST", "/api/devices", json={"code": said, "name": "x"}).status_code == 201


def test_guessing_closes_every_open_code(laptop, ask):
    code = laptop.post("/api/devices/codes").json["code"]
    for _ in range(WRONG_CODES):
        wrong = ask("POST", "/api/devices", json={"code": "AAAA-AAAA", "name": "x"})
        assert error_of(wrong, 403)["key"] == "wrong-code"
    assert error_of(ask("POST", "/api/devices", json={"code": code, "name": "x"}), 403)["key"] == "closed-code"


@pytest.mark.parametrize(
    "later", [CODE_MS, CODE_MS * 100, -CODE_MS - 1], ids=["ten minutes", "long", "a clock set back"]
)
def test_a_code_ends_after_ten_minutes_also_by_a_clock_set_back(later, store):
    code = show_code(store, NOW)
    with pytest.raises(PairingError) as refused:
        pair(store, code, "x", NOW + later)
    assert refused.value.key == "old-code"


def test_neither_code_nor_token_is_kept_in_any_file_of_the_notebook(laptop, ask, tmp_path):
    token, _, code = let_in(laptop, ask)
    kept = b"".join(path.read_bytes() for path in tmp_path.iterdir() if path.is_file())
    assert hashlib.sha256(token.encode()).hexdigest().encode() in kept
    for secret in (token, code, code.replace("-", "")):
        assert secret.encode() not in kept


def test_only_the_laptop_shows_codes_and_strikes_others_off(laptop, ask):
    token, device, _ = let_in(laptop, ask)
    _, other, _ = let_in(laptop, ask, "the tablet")
    assert error_of(ask("POST", "/api/devices/codes", token), 403)["key"] == "owner-only"
    assert error_of(ask("DELETE", f"/api/devices/{other}", token), 403)["key"] == "owner-only"
    assert ask("DELETE", f"/api/devices/{device}", token).status_code == 200
    assert error_of(laptop.delete("/api/devices/0123"), 404)["key"] == "no-such-device"


def test_the_list_says_who_was_let_in_who_asks_and_who_was_struck(laptop, ask):
    token, device, _ = let_in(laptop, ask)
    seen = ask("GET", "/api/devices", token).json
    assert (seen["this"], seen["owner"]) == (device, False)
    assert [one["name"] for one in seen["devices"]] == ["the phone"]
    assert "token" not in seen["devices"][0]
    own = laptop.get("/api/devices").json
    assert (own["this"], own["owner"], own["network"]) == (None, True, None)
    assert laptop.delete(f"/api/devices/{device}").json["devices"][0]["struck_ms"]


@pytest.mark.parametrize("header", ["Forwarded", "X-Forwarded-For", "X-Forwarded-Host", "X-Real-IP", "Via"])
def test_what_came_through_a_proxy_that_nobody_told_of_is_not_the_owners(header, laptop):
    refused = laptop.get("/api/houses", headers={header: "for=203.0.113.9"})
    assert error_of(refused, 403)["key"] == "through-a-proxy"


def test_a_page_of_the_allow_list_syncs_with_a_token_and_gets_nothing_without_even_on_this_machine(laptop, ask):
    token, _, _ = let_in(laptop, ask)
    asked = {"Origin": ELSEWHERE, "Access-Control-Request-Method": "POST", "Sec-Fetch-Site": "cross-site"}
    before = ask("OPTIONS", "/api/sync", headers=asked)
    assert before.status_code == 204
    assert before.headers["Access-Control-Allow-Origin"] == ELSEWHERE
    assert "Authorization" in before.headers["Access-Control-Allow-Headers"]
    from_there = {"Origin": ELSEWHERE, "Sec-Fetch-Site": "cross-site"}
    answered = ask("GET", "/api/houses", token, headers=from_there)
    assert (answered.status_code, answered.headers["Access-Control-Allow-Origin"]) == (200, ELSEWHERE)
    assert "Access-Control-Allow-Credentials" not in answered.headers
    for refused in (ask("GET", "/api/houses", headers=from_there), laptop.get("/api/houses", headers=from_there)):
        assert error_of(refused, 401)["key"] == "not-paired"
    assert error_of(ask("GET", "/api/houses", token, headers={"Origin": f"{ELSEWHERE}.evil.example"}), 403)


def test_a_token_opens_nothing_to_a_page_of_another_site_or_under_another_name(laptop, ask):
    token, _, _ = let_in(laptop, ask)
    assert error_of(ask("GET", "/api/houses", token, headers={"Origin": "https://evil.example"}), 403)
    rebound = ask("GET", "/api/houses", token, headers={"Host": "evil.example"})
    assert error_of(rebound, 421)["key"] == "wrong-host"
    assert SECRET not in rebound.text
