"""The one origin of a notebook: chosen once, kept, and changed by nobody without being told."""

import datetime as dt
import json
import re
from concurrent.futures import ThreadPoolExecutor
from ipaddress import ip_address
from types import SimpleNamespace

import pytest
from scantling.lan import announce
from scantling.lan.addresses import is_private
from scantling.lan.announce import Announcement, find_addresses
from scantling.lan.authority import make_authority
from scantling.lan.home import Home
from scantling.lan.identity import FILE_NAME, PORT, Identity, take_identity
from scantling.lan.refusals import LanError
from scantling.lan.trust import CERTIFICATE, create_trust_app
from zeroconf import EventLoopBlocked, Zeroconf

LOOPBACK = ip_address("127.0.0.1")
NOW = dt.datetime(2026, 5, 4, tzinfo=dt.UTC)


def test_the_name_has_letters_of_chance_and_stays(tmp_path):
    first = take_identity(tmp_path)
    assert re.fullmatch(r"https://scantling-[a-z2-9]{5}\.local:8117", first.origin)
    assert (first.port, first.trust_port) == (PORT, PORT - 1)
    assert take_identity(tmp_path) == first == take_identity(tmp_path, first.port)
    assert take_identity(tmp_path / "another").name != first.name


def test_another_port_is_refused_with_what_it_would_cost_unless_it_is_meant(tmp_path):
    first = take_identity(tmp_path)
    with pytest.raises(LanError) as refused:
        take_identity(tmp_path, 9000)
    assert refused.value.key == "other-port"
    assert first.origin in refused.value.message
    assert take_identity(tmp_path, 9000, move=True) == Identity(first.name, 9000) == take_identity(tmp_path)


@pytest.mark.parametrize(
    "text", ["", "{", "[]", '{"name": "www.example.org", "port": 8117}', '{"name": "scantling-ab2cd.local"}']
)
def test_a_damaged_identity_is_refused_and_not_made_anew(text, tmp_path):
    (tmp_path / FILE_NAME).write_text(text)
    with pytest.raises(LanError) as refused:
        take_identity(tmp_path)
    assert refused.value.key == "identity-broken"
    assert (tmp_path / FILE_NAME).read_text() == text


def test_it_answers_to_its_name_and_address_and_follows_a_new_address(tmp_path):
    home = Home(tmp_path, host="127.0.0.1")
    assert home.host_names == {home.identity.name, "127.0.0.1"}
    assert not home.look()
    home._host = "127.0.0.2"
    assert home.look()
    assert "127.0.0.2" in home.host_names
    assert json.loads((tmp_path / FILE_NAME).read_text())["name"] == home.identity.name


@pytest.mark.parametrize(
    ("address", "private"),
    [("10.0.0.1", True), ("172.31.9.9", True), ("192.168.0.1", True), ("169.254.1.1", True), ("fd00::1", True),
     ("127.0.0.1", True), ("172.32.0.1", False), ("11.0.0.1", False), ("100.64.0.1", False), ("2001:db8::1", False)],
)  # fmt: skip
def test_private_addresses_are_those_of_the_standards(address, private):
    """RFC 1918, RFC 3927, RFC 4193; 100.64/10 (RFC 6598) is a provider's and not a house's."""
    assert is_private(ip_address(address)) == private


def find_service():
    """What a phone that asks for the first time is told."""
    asking = Zeroconf(interfaces=["127.0.0.1"])
    try:
        return asking.get_service_info("_https._tcp.local.", "scantling-zq7xw._https._tcp.local.", timeout=5000)
    finally:
        asking.close()


def test_the_name_is_found_on_the_network_and_moves_with_the_address():
    """In a thread of its own: where a loop runs, as Playwright's does, zeroconf would wait for that one."""
    with ThreadPoolExecutor(1) as elsewhere:
        elsewhere.submit(announce_and_move).result()


def announce_and_move():
    identity = Identity("scantling-zq7xw.local", 8117)
    announcement = Announcement(identity, [LOOPBACK], only="127.0.0.1")
    try:
        assert find_addresses(identity, only="127.0.0.1") == ["127.0.0.1"]
        found = find_service()
        assert (found.server, found.port) == ("scantling-zq7xw.local.", 8117)
        assert found.parsed_addresses() == ["127.0.0.1"]
        announcement.move([ip_address("127.0.0.9")])
        assert find_service().parsed_addresses() == ["127.0.0.9"]
    finally:
        announcement.close()


def test_a_machine_too_busy_to_announce_the_name_is_a_sentence_and_is_tried_again(monkeypatch, tmp_path):
    closed, busy = [], [True]

    class Network:
        def __init__(self, **chosen):
            self.close = lambda: closed.append(self)

        def register_service(self, service, allow_name_change):
            if busy:
                raise EventLoopBlocked

    monkeypatch.setattr(announce, "Zeroconf", Network)
    home = Home(tmp_path, host="127.0.0.1")
    assert "too busy to announce" in home.announce()
    with pytest.raises(TimeoutError):
        home.look()
    assert len(closed) == 2
    busy.clear()
    home.look()
    home.look()
    home.close()
    assert len(closed) == 3


@pytest.fixture
def trust():
    identity = Identity("scantling-zq7xw.local", 8117)
    authority = make_authority(identity.name, NOW)
    app = create_trust_app(identity, authority, lambda: frozenset({identity.name}))

    def get(path, host=f"{identity.name}:8116", **more):
        return app.test_client().get(path, base_url=f"http://{host}", **more)

    return SimpleNamespace(get=get, authority=authority)


def test_the_trust_page_shows_the_steps_the_meaning_the_way_back_and_the_fingerprint(trust):
    page = trust.get("/").text
    assert trust.authority.fingerprint in page
    for said in ("What trusting it means", "How to take it back", "Certificate Trust Settings", "CA certificate"):
        assert said in page
    assert 'href="https://scantling-zq7xw.local:8117/"' in page


@pytest.mark.parametrize(
    ("agent", "kind"),
    [("Mozilla/5.0 (iPhone; CPU iPhone OS 18_0)", "iPhone"), ("Linux; Android 15", "Android"), ("x", "Another")],
)
def test_the_steps_of_the_phone_that_asks_stand_open(agent, kind, trust):
    page = trust.get("/", headers={"User-Agent": agent}).text
    assert re.findall(r"<details open>\s*<summary>(\w+)", page) == [kind]


def test_the_certificate_goes_out_in_the_type_that_a_phone_installs_and_nothing_runs_on_the_page(trust):
    taken = trust.get(CERTIFICATE)
    assert (taken.content_type, taken.data) == ("application/x-x509-ca-cert", trust.authority.der)
    assert b"PRIVATE" not in taken.data
    for path in ("/", CERTIFICATE, "/trust.css"):
        answered = trust.get(path)
        assert answered.status_code == 200
        assert "default-src 'none'" in answered.headers["Content-Security-Policy"]
        assert b"<script" not in answered.data
        assert b"style=" not in answered.data


def test_the_trust_page_answers_to_no_other_name_and_holds_no_notebook(trust):
    assert trust.get("/", "evil.example").status_code == 421
    for path in ("/api/houses", "/api/devices", "/sw.js"):
        assert trust.get(path).status_code == 404
