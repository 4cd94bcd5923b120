"""The laptop in a crowd: fifty senders of a byte a second, and a long journal brought in while others write.

A change must pass both in small; `python3 tests soak` holds the senders for a minute and brings in 60,000 entries.
"""

import contextlib
import http.client
import json
import socket
import statistics
import threading
import time

import pytest
from scantling.store import open_store

from tests.bench.sync_bench import Phone, make_entries
from tests.faults.test_days import RUNS
from tests.faults.test_killed import PATIENCE, serving
from tests.program import Program

SOAK = RUNS >= 1000
SLOW = 50
ROUNDS = 60 if SOAK else 3
IMPORTED = 60_000 if SOAK else 4_000
WRITERS = 3
#: A request that took so long, in seconds, waited for something else than a busy machine.
STALLED = 5 if SOAK else 15
#: A server that has read no house takes 80 MB, and a body is taken whole besides; measured with 60,000 entries: 145 MB.
MEGABYTES = 300
HEAD = b"POST /api/ask HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: 5000\r\n\r\n"


@contextlib.contextmanager
def slow_senders(port, data):
    """Senders of a byte a second; all of them end with the test."""
    over = threading.Event()
    connections = [socket.create_connection(("127.0.0.1", port)) for _ in range(SLOW)]

    def drip():
        for byte in data:
            if over.wait(1):
                return
            for connection in connections:
                with contextlib.suppress(OSError):  # ended by the server, as it may
                    connection.send(bytes([byte]))

    thread = threading.Thread(target=drip, daemon=True)
    thread.start()
    try:
        yield
    finally:
        over.set()
        thread.join(5)
        for connection in connections:
            connection.close()


@pytest.mark.parametrize("sent", [b"", HEAD], ids=["in the headers", "in the body"])
def test_fifty_senders_of_a_byte_a_second_keep_no_honest_request_waiting_for_a_second(sent, tmp_path):
    with serving(tmp_path) as (_, port), slow_senders(port, sent + b"GET / HTTP/1.1\r\nX-Slow: " + b"x" * 5000):
        time.sleep(2)
        took = []
        for _ in range(ROUNDS):
            began = time.monotonic()
            with contextlib.closing(Phone(port, 0)) as phone:
                assert phone.exchange([])["left"] == 0
            took.append(time.monotonic() - began)
            time.sleep(1 if SOAK else 0)
    # One may have waited for the machine, which does other things too; who waits for a sender waits an hour.
    assert statistics.median(took) < 1
    assert max(took) < STALLED


def peak_megabytes(process):
    with open(f"/proc/{process.pid}/status") as status:
        return next(int(line.split()[1]) for line in status if line.startswith("VmHWM")) / 1000


def test_a_long_journal_is_brought_in_by_file_and_by_page_while_others_write(tmp_path):
    """Half by the page and half by another process on the same notebook; nobody hears that the database is locked."""
    halves = [make_entries(IMPORTED // 2, number) for number in range(2)]
    lines = ["".join(json.dumps(entry) + "\n" for entry in half) for half in halves]
    (tmp_path / "half.ndjson").write_text(lines[1])
    done, took, wrote = threading.Event(), [], []

    def write(number, port):
        with contextlib.closing(Phone(port, number)) as phone:
            for entry in make_entries(IMPORTED, number):
                began = time.monotonic()
                assert phone.exchange([entry])["acked"] == [entry["id"]]
                took.append(time.monotonic() - began)
                wrote.append(entry["id"])
                if done.is_set():
                    return

    folder = tmp_path / "notebook"
    with serving(folder) as (process, port):
        failed = []
        writers = [threading.Thread(target=caught(write, failed), args=(10 + one, port)) for one in range(WRITERS)]
        for writer in writers:
            writer.start()
        restoring = Program(folder, "restore", tmp_path / "half.ndjson")
        connection = http.client.HTTPConnection("127.0.0.1", port, timeout=600)
        connection.request("POST", "/api/journal", lines[0].encode(), {"Content-Type": "application/x-ndjson"})
        answered = json.loads(connection.getresponse().read())
        said = restoring.communicate(timeout=600)
        done.set()
        for writer in writers:
            writer.join(PATIENCE)
        connection.close()
        most = peak_megabytes(process)
    assert failed == []
    assert (restoring.returncode, said[1]) == (0, "")
    assert (answered["stored"], answered["left_out"]) == (IMPORTED // 2, 0)
    assert len(wrote) >= WRITERS
    assert max(took) < STALLED
    assert most < MEGABYTES
    store = open_store(folder)
    with store.reading() as ledger:
        kept = [row.entry["id"] for row in ledger.read_all()]
    store.close()
    assert sorted(kept) == sorted({entry["id"] for half in halves for entry in half} | set(wrote))


def caught(work, failed):
    def run(*arguments):
        try:
            work(*arguments)
        except Exception as error:
            failed.append(repr(error))

    return run
