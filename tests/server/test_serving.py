"""The server as a process: it says when it answers, bears silence and floods, and stops when told."""

import http.client
import json
import signal
import socket
import subprocess
import sys
import time

import pytest
from scantling.serving import THREADS

PATIENCE = 20


@pytest.fixture
def start(tmp_path):
    """Start `scantling serve` on a free port; every one that was started is stopped."""
    running = []

    def run(*arguments):
        command = [sys.executable, "-m", "scantling", "--data", tmp_path, "serve", "--port", "0", *arguments]
        process = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
        running.append(process)
        return process, int(process.stdout.readline().rpartition(":")[2])

    yield run
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
    assert get(port, Host=f"shed.home.arpa:{port}")[0] == 200


def test_a_port_that_is_taken_is_said_in_one_sentence(start, tmp_path):
    _, port = start()
    command = [sys.executable, "-m", "scantling", "--data", tmp_path, "serve", "--port", str(port)]
    second = subprocess.run(command, capture_output=True, text=True, timeout=PATIENCE, check=False)
    assert second.returncode == 2
    assert second.stdout == ""
    assert second.stderr.startswith(f"scantling: Port {port} on 127.0.0.1 cannot be used")
    assert second.stderr.count("\n") == 1
