"""What a proxy says of who asked: believed of a named proxy alone, and of nobody who only writes like one.

Examples and grammar: RFC 7239, sections 4 to 7; addresses of documents: RFC 5737 and RFC 3849.
"""

import ipaddress

import pytest
from scantling.api import Config, create_app
from scantling.api.forwarded import parse_forwarded
from scantling.api.refusals import DoorError
from scantling.clock import now_ms
from scantling.lan.pairing import show_code

from tests.server.test_api_door import error_of

NAME = "shed.home.arpa"
PROXY, STRANGER = "192.168.7.2", "192.168.7.66"
STANDARD = {"Forwarded": f"for=203.0.113.9;proto=https;host={NAME}"}
COMMON = {"X-Forwarded-For": "203.0.113.9", "X-Forwarded-Proto": "https", "X-Forwarded-Host": NAME}
INNER = {"Host": "localhost:8017"}  # as a proxy calls what is behind it


@pytest.fixture
def app(tmp_path, page):
    made = create_app(Config(tmp_path, names=(NAME,), site=page, proxies=(ipaddress.ip_network(PROXY),)))
    yield made
    made.extensions["scantling"].store.close()


@pytest.fixture
def ask(app):
    def call(method, path, peer=PROXY, **more):
        return app.test_client().open(path, method=method, environ_base={"REMOTE_ADDR": peer}, **more)

    return call


@pytest.fixture
def token(app, ask):
    code = show_code(app.extensions["scantling"].store, now_ms())
    headers = {**INNER, **STANDARD, "Origin": f"https://{NAME}"}
    return ask("POST", "/api/devices", json={"code": code, "name": "the phone"}, headers=headers).json["token"]


@pytest.mark.parametrize(
    "said",
    [
        pytest.param(STANDARD, id="the standard's header"),
        pytest.param(COMMON, id="the common headers"),
        pytest.param({"Forwarded": f'For="[2001:db8::17]:4711";PROTO=HTTPS;Host="{NAME}:443"'}, id="capitals, quotes"),
        pytest.param({"Forwarded": f"for=_hidden;proto=https;host={NAME}"}, id="a hidden asker"),
        pytest.param({"Forwarded": f"host=evil.example, for=unknown ; proto=https;host={NAME}"}, id="the last counts"),
        pytest.param({**COMMON, "X-Forwarded-Host": f"evil.example, {NAME}"}, id="the last of the common ones"),
    ],
)
def test_a_named_proxy_is_believed_and_every_device_behind_it_is_to_be_paired(said, ask, token):
    host = f"{NAME}:443" if ":443" in said.get("Forwarded", "") else NAME
    own = {**INNER, **said, "Origin": f"https://{host}"}
    assert error_of(ask("GET", "/api/houses", headers=own), 401)["key"] == "not-paired"
    assert ask("GET", "/api/houses", headers={**own, "Authorization": f"Bearer {token}"}).status_code == 200


@pytest.mark.parametrize("said", [STANDARD, COMMON, {"Forwarded": "for=127.0.0.1"}, {"X-Forwarded-For": "127.0.0.1"}])
@pytest.mark.parametrize("peer", [STRANGER, "127.0.0.1", "::1", "2001:db8::2", ""])
def test_who_writes_like_the_proxy_from_anywhere_else_gets_nothing(peer, said, ask, token):
    for path in ("/api/houses", "/"):
        for headers in ({"Host": NAME}, INNER, {"Host": NAME, "Authorization": f"Bearer {token}"}):
            refused = ask("GET", path, peer, headers={**headers, **said})
            assert error_of(refused, 403)["key"] == "through-a-proxy"


def test_whoever_the_proxy_names_is_never_the_owner(ask):
    for node in ("127.0.0.1", '"[::1]"', "unknown"):
        for host in ("localhost", NAME):
            said = {"Forwarded": f"for={node};proto=http;host={host}"}
            assert error_of(ask("GET", "/api/houses", headers={**INNER, **said}), 401)["key"] == "not-paired"
    assert error_of(ask("GET", "/api/houses", "127.0.0.1"), 401)["key"] == "not-paired"


def test_past_the_proxy_the_names_of_loopback_open_nothing(ask):
    assert error_of(ask("GET", "/api/houses", STRANGER, headers=INNER), 421)["key"] == "wrong-host"


def test_a_name_that_is_not_ours_is_refused_through_the_proxy_too(ask, token):
    said = {"Forwarded": "for=203.0.113.9;proto=https;host=evil.example", "Authorization": f"Bearer {token}"}
    assert error_of(ask("GET", "/api/houses", headers={**INNER, **said}), 421)["key"] == "wrong-host"


def test_an_asker_who_smuggles_the_other_kind_through_the_proxy_is_refused(ask, token):
    both = {**INNER, **STANDARD, "X-Forwarded-Host": "evil.example", "Authorization": f"Bearer {token}"}
    assert error_of(ask("GET", "/api/houses", headers=both), 400)["key"] == "two-forwardings"


@pytest.mark.parametrize(
    "text",
    ["for", "for=", "for=a b", "for =a", 'for="192.0.2.43', "=x", "for=a;for=b", "for=[2001:db8::1]", "a=b;c"],
)
def test_what_is_no_forwarded_header_is_refused(text, ask):
    with pytest.raises(DoorError):
        parse_forwarded(text)
    assert error_of(ask("GET", "/api/houses", headers={**INNER, "Forwarded": text}), 400)["key"] == "wrong-forwarded"


@pytest.mark.parametrize("said", [{"proto": "file"}, {"host": '"a b"'}, {"host": '"a,b"'}, {"host": '"[x]"'}], ids=str)
def test_a_scheme_or_name_that_none_can_be_is_refused(said, ask):
    text = ";".join(f"{name}={value}" for name, value in said.items())
    assert error_of(ask("GET", "/api/houses", headers={**INNER, "Forwarded": text}), 400)["key"] == "wrong-forwarded"


@pytest.mark.parametrize(
    ("text", "last"),
    [
        pytest.param('for="_gazonk"', {"for": "_gazonk"}, id="section 4, first"),
        pytest.param('For="[2001:db8:cafe::17]:4711"', {"for": "[2001:db8:cafe::17]:4711"}, id="section 4, second"),
        pytest.param(
            "for=192.0.2.60;proto=http;by=203.0.113.43",
            {"for": "192.0.2.60", "proto": "http", "by": "203.0.113.43"},
            id="section 4, third",
        ),
        pytest.param("for=192.0.2.43, for=198.51.100.17", {"for": "198.51.100.17"}, id="section 4, fourth"),
        pytest.param("for=192.0.2.43,, ;;proto=http;,", {"proto": "http"}, id="empty pairs and elements"),
        pytest.param(r'for="a\"b\\,;c"', {"for": r'a"b\,;c'}, id="escapes and separators within quotes"),
    ],
)
def test_the_examples_of_the_standard_are_read_as_it_says(text, last):
    assert parse_forwarded(text) == last
