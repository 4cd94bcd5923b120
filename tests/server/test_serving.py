"""The server as a process: it says when it answers, bears silence and floods, and stops when told."""

import contextlib
import datetime as dt
import gc
import http.client
import json
import signal
import socket
import ssl
import threading
import time
import warnings
from ipaddress import ip_address

import pytest
from scantling.lan.authority import make_authority
from scantling.lan.home import Home
from scantling.lan.leaf import keep_leaf, leaf_path
from scantling.serving import NotebookServer, intake
from scantling.serving.server import THREADS

from tests.ports import free_port
from tests.program import Program, run

PATIENCE = 20
NAME = "shed.home.arpa"


@pytest.fixture
def start(tmp_path):
    """Start `scantling serve` on a free port; every one that was started is stopped."""
    running = []

    def begin(*arguments):
        process = Program(tmp_path, "serve", "--port", "0", *arguments)
        running.append(process)
        return process, int(process.stdout.readline().rpartition(":")[2])

    yield begin
    for process in running:
        process.kill()
        process.communicate()


def get(port, path="/api/houses", **headers):
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=PATIENCE)
    connection.request("GET", path, headers=headers)
    response = connection.getresponse()
    body = response.read()
    connection.close()
    return response.status, body


def test_it_prints_one_line_with_its_address_and_answers_there(start):
    process, port = start()
    assert get(port)[0] == 200
    assert get(port, "/")[0] == 200
    process.terminate()
    out, err = process.communicate(timeout=PATIENCE)
    assert (process.returncode, out, err) == (0, "", "")


@pytest.mark.parametrize("times", [1, 3], ids=["once", "again and again"])
@pytest.mark.parametrize("name", [signal.SIGTERM, signal.SIGINT])
def test_a_signal_stops_it_cleanly_also_when_sent(name, times, start):
    process, _ = start()
    for _ in range(times):
        process.send_signal(name)
    began = time.monotonic()
    out, err = process.communicate(timeout=PATIENCE)
    assert (process.returncode, out, err) == (0, "", "")
    assert time.monotonic() - began < 5


def test_what_was_acknowledged_before_a_kill_is_there_after_it(start):
    process, port = start()
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=PATIENCE)
    for number in range(20):
        body = json.dumps({"name": f"house {number}"})
        connection.request("POST", "/api/houses", body, {"Content-Type": "application/json"})
        response = connection.getresponse()
        assert (response.status, response.read()[:9]) == (201, b'{"entry":')
    process.kill()
    process.wait(PATIENCE)
    connection.close()
    _, port = start()
    assert len(json.loads(get(port)[1])["houses"]) == 20


def test_many_silent_connections_do_not_keep_anybody_else_waiting(start):
    _, port = start()
    silent = [socket.create_connection(("127.0.0.1", port)) for _ in range(THREADS * 4)]
    began = time.monotonic()
    assert get(port)[0] == 200
    assert time.monotonic() - began < 3
    for one in silent:
        one.close()


def test_a_sender_of_too_much_gets_to_hear_so(start):
    _, port = start()
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=PATIENCE)
    connection.request("POST", "/api/sync", b" " * 5_000_000, {"Content-Type": "application/json"})
    response = connection.getresponse()
    assert (response.status, json.loads(response.read())["error"]["key"]) == (413, "too-large")
    connection.close()


def test_a_body_without_a_length_is_refused_and_not_cut_off(start):
    _, port = start()
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=PATIENCE)
    pieces = (b" " * 30_000 for _ in range(100))
    connection.request("POST", "/api/ask", pieces, {"Content-Type": "application/json"}, encode_chunked=True)
    response = connection.getresponse()
    assert (response.status, json.loads(response.read())["error"]["key"]) == (411, "no-length")
    connection.close()


def test_a_foreign_name_is_refused_and_an_own_one_is_not(start):
    _, port = start("--name", "shed.home.arpa")
    assert get(port, Host="evil.example")[0] == 421
    assert get(port, "/", Host=f"shed.home.arpa:{port}")[0] == 200
    assert get(port, Host=f"shed.home.arpa:{port}")[0] == 401  # under a name of the network, a device is to be paired


def test_a_port_that_is_taken_is_said_in_one_sentence(start, tmp_path):
    _, port = start()
    second = run(tmp_path / "other", "serve", "--port", port, timeout=PATIENCE)
    assert second.returncode == 2
    assert second.stdout == ""
    assert second.stderr.startswith(f"scantling: Port {port} on 127.0.0.1 cannot be used")
    assert second.stderr.count("\n") == 1


@pytest.mark.parametrize("host", ["0.0.0.0", "::", "192.0.2.7", ""])
def test_an_address_of_the_network_is_refused_with_the_way_that_is_safe(host, tmp_path):
    """192.0.2.0/24 is kept for documents (RFC 5737): it is nobody's."""
    refused = run(tmp_path, "serve", "--host", host, "--port", "0", timeout=PATIENCE)
    assert (refused.returncode, refused.stdout) == (2, "")
    assert "--lan" in refused.stderr
    assert refused.stderr.count("\n") == 1


def test_an_address_that_is_none_is_refused_in_one_sentence(tmp_path):
    refused = run(tmp_path, "serve", "--host", "no address", "--port", "0", timeout=PATIENCE)
    assert refused.returncode == 2
    assert refused.stderr.startswith("scantling: There is no address")


#: Half a second each by itself, and a hundred of them in one request.
PLANS = [
    {
        "ask": "boards",
        "kerf": "1/8",
        "stock": [
            {"length": "8 ft", "price": "9.95"},
            {"length": "10 ft", "price": "12.35", "limit": 9},
            {"length": "14 ft", "price": "17.2", "limit": 5},
        ],
        "pieces": [f"{11 + n * 37 % 61} {n * 5 % 16}/16" for n in range(150)],
    }
] * 100


HEAD = b"POST /api/ask HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: 5000\r\n\r\n"


def test_a_request_that_does_not_become_whole_in_its_time_is_ended(monkeypatch, page, tmp_path):
    monkeypatch.setattr(intake, "REQUEST_SECONDS", 0.5)
    server = NotebookServer(lambda environ, start_response: [], "127.0.0.1", 0)
    server.prepare()
    thread = threading.Thread(target=server.serve, daemon=True)
    thread.start()
    try:
        for begun in (b"", b"GET / HTTP/1.1\r\nHost: loc", HEAD + b"{"):
            with socket.create_connection(("127.0.0.1", server.port), timeout=PATIENCE) as connection:
                connection.sendall(begun)
                began = time.monotonic()
                with contextlib.suppress(ConnectionResetError):
                    assert connection.recv(100) == b""
                assert 0.3 < time.monotonic() - began < 5
    finally:
        server.stop()
        thread.join(PATIENCE)


def test_a_stop_in_the_middle_of_a_long_plan_and_of_half_a_request_takes_less_than_three_seconds(start):
    process, port = start()
    half = socket.create_connection(("127.0.0.1", port))
    half.sendall(HEAD)
    planning = http.client.HTTPConnection("127.0.0.1", port, timeout=PATIENCE)
    planning.request("POST", "/api/ask", json.dumps(PLANS), {"Content-Type": "application/json"})
    time.sleep(1)
    began = time.monotonic()
    process.terminate()
    out, err = process.communicate(timeout=PATIENCE)
    half.close()
    assert time.monotonic() - began < 3
    assert (process.returncode, out, err) == (0, "", "")
    with contextlib.closing(planning), contextlib.suppress(http.client.HTTPException, OSError):
        assert planning.getresponse().status == 500, "the plan was not as long as this test needs it"


@pytest.mark.parametrize(
    "sent",
    [
        b"nonsense\r\n\r\n",
        b"GET /\xff HTTP/1.1\r\nHost: localhost\r\n\r\n",
        b"GET /api/houses?\xff=1 HTTP/1.1\r\nHost: localhost\r\n\r\n",
        b"GET / HTTP/1.1\r\n\r\n",
        b"GET / HTTP/1.1\r\nHost: a\r\nHost: b\r\n\r\n",
        b"GET / HTTP/1.1\r\nHost: localhost\r\nX: " + b"x" * 90_000,
    ],
    ids=["no HTTP", "a path in no letters", "a query in no letters", "no host", "two hosts", "headers without end"],
)
def test_what_is_no_proper_request_ends_nothing_but_itself_and_writes_no_log(sent, start):
    process, port = start()
    with socket.create_connection(("127.0.0.1", port), timeout=PATIENCE) as connection, contextlib.suppress(OSError):
        connection.sendall(sent)
        answer = connection.recv(1000)
        assert answer.startswith((b"HTTP/1.1 4", b"HTTP/1.1 200"))
    assert get(port)[0] == 200
    process.terminate()
    assert process.communicate(timeout=PATIENCE) == ("", "")


def test_no_part_of_an_answer_waits_for_the_part_before_it_to_be_acknowledged(start):
    """The best on one connection: a busy machine makes some late, and the wait of 40 ms would make all, but for the
    first few, which every system acknowledges at once."""
    _, port = start()
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=PATIENCE)
    took = []
    for _ in range(60):
        began = time.perf_counter()
        connection.request("GET", "/api/houses")
        connection.getresponse().read()
        took.append(time.perf_counter() - began)
    connection.close()
    assert min(took[30:]) < 0.03


def test_lan_serves_the_page_over_tls_beside_the_laptops_own(start, tmp_path):
    lan_port = free_port()
    process, port = start("--lan", "--host", "127.0.0.1", "--lan-port", str(lan_port))
    line = process.stdout.readline()
    name = line.split("https://")[1].split(":")[0]
    assert get(port)[0] == 200
    assert get(lan_port - 1, Host=f"{name}:{lan_port - 1}")[0] == 404  # the trust page has no notebook
    trust = ssl.create_default_context(cafile=tmp_path / "certificates" / "authority.pem")
    plain = socket.create_connection(("127.0.0.1", lan_port), PATIENCE)
    with trust.wrap_socket(plain, server_hostname=name) as connection:
        connection.sendall(f"GET /api/houses HTTP/1.1\r\nHost: {name}:{lan_port}\r\n\r\n".encode())
        assert connection.recv(1000).startswith(b"HTTP/1.1 401")
    process.terminate()
    process.communicate(timeout=PATIENCE)
    assert process.returncode == 0


def test_a_certificate_of_ones_own_serves_paired_devices_to_who_trusts_its_authority(start, tmp_path):
    now = dt.datetime.now(dt.UTC)
    authority = make_authority(NAME, now)
    keep_leaf(tmp_path / "elsewhere", authority, NAME, [ip_address("127.0.0.1")], now)
    both = leaf_path(tmp_path / "elsewhere")
    tls_port = str(free_port())
    process, port = start("--cert", both, "--key", both, "--host", "127.0.0.1", "--name", NAME, "--lan-port", tls_port)

    def ask(method, path, trust, said=None, **headers):
        host = f"{NAME}:{tls_port}"
        connection = http.client.HTTPSConnection("127.0.0.1", int(tls_port), timeout=PATIENCE, context=trust)
        with contextlib.closing(connection):
            connection.sock = trust.wrap_socket(
                socket.create_connection(("127.0.0.1", int(tls_port)), PATIENCE), server_hostname=NAME
            )
            headers = {"Host": host, "Origin": f"https://{host}", "Content-Type": "application/json", **headers}
            connection.request(method, path, said and json.dumps(said), headers)
            answered = connection.getresponse()
            return answered.status, json.loads(answered.read())

    trust = ssl.create_default_context(cadata=authority.der)
    own = http.client.HTTPConnection("127.0.0.1", port, timeout=PATIENCE)
    own.request("POST", "/api/devices/codes")
    code = json.loads(own.getresponse().read())["code"]
    own.close()
    assert ask("GET", "/api/houses", trust)[0] == 401
    status, paired = ask("POST", "/api/devices", trust, {"code": code, "name": "the phone"})
    assert status == 201
    assert ask("GET", "/api/houses", trust, Authorization=f"Bearer {paired['token']}")[0] == 200
    with pytest.raises(ssl.SSLCertVerificationError):
        ask("GET", "/api/houses", ssl.create_default_context())
    process.terminate()
    assert process.communicate(timeout=PATIENCE) == ("", "")


@pytest.mark.parametrize("address", [None, "127.0.0.1"], ids=["this machine", "by its address"])
def test_behind_a_proxy_the_last_of_two_forwarded_lines_counts(address, start):
    _, port = start("--name", NAME, "--behind-proxy", *filter(None, [address]))
    for first, last, status in (("evil.example", NAME, 401), (NAME, "evil.example", 421)):
        lines = "".join(f"Forwarded: for=192.0.2.43;proto=https;host={host}\r\n" for host in (first, last))
        with socket.create_connection(("127.0.0.1", port), PATIENCE) as connection:
            connection.sendall(f"GET /api/houses HTTP/1.1\r\nHost: localhost\r\n{lines}\r\n".encode())
            assert connection.recv(1000).startswith(f"HTTP/1.1 {status}".encode())


def test_a_stop_hangs_up_on_who_reads_no_answer_and_says_no_farewell(tmp_path):
    def answer(environ, start_response):
        start_response("200 OK", [("Content-Length", "100000")])
        return [b"x" * 100_000]

    home = Home(tmp_path, port=0, host="127.0.0.1")
    server = NotebookServer(answer, "127.0.0.1", 0, home.tls)
    server.prepare()
    thread = threading.Thread(target=server.serve)
    thread.start()
    trust = ssl.create_default_context(cadata=home.authority.der)
    deaf = [
        trust.wrap_socket(socket.create_connection(("127.0.0.1", server.port)), server_hostname=home.identity.name)
        for _ in range(4)
    ]
    for connection in deaf:
        connection.sendall(b"GET / HTTP/1.1\r\nHost: x\r\n\r\n")
    with warnings.catch_warnings(record=True) as left:
        warnings.simplefilter("always", ResourceWarning)
        server.stop()
        thread.join(PATIENCE)
        del server
        gc.collect()
    for connection in deaf:
        connection.close()
    assert [str(one.message) for one in left] == []
