"""The real server, killed with SIGKILL while phones send to it: what it acknowledged is there when it wakes."""

import http.client
import json
import random
import re
import threading
import time
from contextlib import contextmanager

import pytest
from scantling.store import canonical_text, open_store

from tests.faults.days import NOW_MS, notebook_of
from tests.faults.twin import Twin
from tests.program import Program

KILLS = 4
PATIENCE = 60


@contextmanager
def serving(folder, port=0):
    """A server of its own process on this folder, killed at the end."""
    process = Program(folder, "serve", "--port", port)
    try:
        for line in process.stdout:
            if found := re.search(r"http://[^\s:]+:(\d+)", line):
                yield process, int(found[1])
                return
        raise AssertionError("the server did not say where it serves")
    finally:
        process.kill()
        process.communicate(PATIENCE)


def sender(port, acknowledged):
    """A way to the server that is lost when it is; it notes what was acknowledged."""

    def send(path, request):
        connection = http.client.HTTPConnection("127.0.0.1", port, timeout=PATIENCE)
        try:
            connection.request("POST", f"/api/sync{path}", json.dumps(request), {"Content-Type": "application/json"})
            answer = connection.getresponse()
            text = answer.read()
            assert answer.status == 200, text
            reply = json.loads(text)
        except (OSError, http.client.HTTPException):
            return None
        finally:
            connection.close()
        acknowledged.update(reply.get("acked", ()))
        return reply

    return send


@pytest.mark.parametrize("seed", [1, 2])
def test_a_server_killed_again_and_again_has_all_that_it_acknowledged(seed, tmp_path):
    chance = random.Random(seed)
    phones = [Twin(random.Random(seed * 10 + number), NOW_MS) for number in range(2)]
    acknowledged = set()
    for killed in range(1, KILLS + 1):
        with serving(tmp_path) as (process, port):
            send = sender(port, acknowledged)
            threads = [threading.Thread(target=write_and_share, args=(phone, send)) for phone in phones]
            for thread in threads:
                thread.start()
            time.sleep(chance.uniform(0.05, 0.6))
            if killed == KILLS:  # a busy machine may have acknowledged nothing before it was killed each time
                wait_for(acknowledged)
            process.kill()
            for thread in threads:
                thread.join(PATIENCE)
        store = open_store(tmp_path)
        with store.reading() as ledger:
            kept = {row.entry["id"] for row in ledger.read_all()}
        store.close()
        assert acknowledged <= kept
    with serving(tmp_path) as (_, port):
        send = sender(port, acknowledged)
        for _ in range(3):
            requests = [phone.synchronize(send) for phone in phones]
    assert requests == [1, 1]
    store = open_store(tmp_path)
    with store.reading() as ledger:
        told = sorted(row.text for row in ledger.read_all())
        answer = notebook_of([row.entry for row in ledger.read_all()])
    store.close()
    for phone in phones:
        assert sorted(map(canonical_text, phone.entries())) == told
        assert notebook_of(phone.entries()) == answer


def wait_for(acknowledged):
    deadline = time.monotonic() + PATIENCE
    while not acknowledged and time.monotonic() < deadline:
        time.sleep(0.01)
    assert acknowledged


def write_and_share(phone, send):
    """Until the server is gone."""
    for number in range(500):
        phone.write("device", {"name": f"{number} " + "x" * 400})
        if number % 5 == 4 and phone.synchronize(send) is None:
            return
