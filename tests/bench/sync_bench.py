"""How fast a phone and the laptop share: over HTTP on loopback, the laptop a process of its own, its journal on a disk.

The phone here is a client that does nothing else, so that what is measured is the laptop and the wire; how long the
page's own journal takes for the same is measured in a browser.
"""

import gzip
import http.client
import itertools
import json
import re
import statistics
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import ExitStack, contextmanager
from dataclasses import replace
from itertools import chain
from pathlib import Path
from typing import Any

from row import Row

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from scantling.engine.notebook import fold
from scantling.sync import ENTRIES_AT_ONCE, PROTOCOL

from tests import postgres

ENTRIES = 10_000
PHONES = 50
#: What each of them brings.
EACH = 200
AGAIN = 20
#: Connections that ask without a pause, and for how long.
ASKING = 8
ASKING_SECONDS = 3
WALL = "0190aaaa-0000-7000-8000-000000000000"

Entry = dict[str, Any]


def make_entries(count: int, number: int = 0) -> list[Entry]:
    """Readings of one wall, as one phone would write them."""
    device = f"{number + 1:016x}"
    return [
        {
            "id": f"0190aaaa-{number:04x}-7{seq >> 12 & 0xFFF:03x}-8{seq & 0xFFF:03x}-{seq:012x}", "device": device,
            "seq": seq, "stamp": f"{0x19C00000000 + seq:012x}-0000-{device}", "version": 1, "kind": "reading",
            "body": {"of": WALL, "what": "length", "text": f"{seq % 200} 3/16"}, "supersedes": [],
        }
        for seq in range(1, count + 1)
    ]  # fmt: skip


@contextmanager
def laptop(*options: str) -> Iterator[int]:
    """The port of a laptop with an empty notebook; `options` name another place for its journal."""
    with tempfile.TemporaryDirectory() as folder:
        command = [sys.executable, "-m", "scantling", *options, "--data", folder, "serve", "--port", "0"]
        process = subprocess.Popen(command, stdout=subprocess.PIPE, text=True)
        try:
            assert process.stdout
            yield next(int(found[1]) for line in process.stdout if (found := re.search(r"http://[^\s:]+:(\d+)", line)))
        finally:
            process.kill()
            process.communicate()


class Phone:
    """One connection, kept alive; packs what it sends as the page does."""

    def __init__(self, port: int, number: int) -> None:
        self.connection = http.client.HTTPConnection("127.0.0.1", port, timeout=120)
        self.device, self.database, self.cursor = f"{number + 1:016x}", None, 0

    def close(self) -> None:
        self.connection.close()

    def exchange(self, entries: list[Entry]) -> dict[str, Any]:
        said = {"protocol": PROTOCOL, "device": self.device, "database": self.database, "cursor": self.cursor}
        body = gzip.compress(json.dumps(said | {"entries": entries}).encode(), 6)
        headers = {"Content-Type": "application/json", "Content-Encoding": "gzip"}
        self.connection.request("POST", "/api/sync", body, headers)
        answer = self.connection.getresponse()
        reply: dict[str, Any] = json.loads(answer.read())
        assert answer.status == 200, reply
        self.database, self.cursor = reply["database"], reply["cursor"]
        return reply

    def share(self, entries: list[Entry]) -> int:
        """Everything over, everything back; how many came."""
        came, sent = 0, 0
        while True:
            reply = self.exchange(entries[sent : sent + ENTRIES_AT_ONCE])
            sent += ENTRIES_AT_ONCE
            came += len(reply["entries"])
            if not reply["left"] and sent >= len(entries):
                return came


def timed(work: Any) -> float:
    """Milliseconds."""
    started = time.perf_counter()
    work()
    return (time.perf_counter() - started) * 1000


def measure_one(options: Sequence[str]) -> Iterator[Row]:
    """One phone with a long journal, then another that reads it."""
    entries = make_entries(ENTRIES)
    with laptop(*options) as port:
        first, second = Phone(port, 0), Phone(port, 1)
        yield Row(f"first sync, {ENTRIES} entries to the laptop", timed(lambda: first.share(entries)), "ms", 2000)
        yield Row(f"first sync, {ENTRIES} entries to a new phone", timed(lambda: second.share([])), "ms", 2000)
        nothing = [timed(lambda: first.share([])) for _ in range(AGAIN)]
        yield Row("next sync, nothing new", statistics.median(nothing), "ms", 50)
        fresh = iter(make_entries(AGAIN, 7))
        one = [timed(lambda: first.share([next(fresh)])) for _ in range(AGAIN)]
        yield Row("next sync, one new entry", statistics.median(one), "ms", 50)
        yield Row(
            "requests a second, nothing new", asked_in_a_second(port, second.cursor, second.database), "/s", None, 200
        )


def asked_in_a_second(port: int, cursor: int, database: Any) -> float:
    """Requests a second that a few connections are answered at once, each asking as soon as it was answered."""
    phones = [Phone(port, number) for number in range(ASKING)]
    counts: list[int] = []
    end = time.perf_counter() + ASKING_SECONDS

    def ask(phone: Phone) -> None:
        phone.database, phone.cursor, count = database, cursor, 0
        while time.perf_counter() < end:
            phone.share([])
            count += 1
        counts.append(count)

    at_once(phones, ask)
    assert len(counts) == ASKING
    return sum(counts) / ASKING_SECONDS


def at_once(phones: Iterable[Phone], work: Callable[[Phone], None]) -> float:
    """Milliseconds until all of them are done."""
    threads = [threading.Thread(target=work, args=[phone]) for phone in phones]
    return timed(lambda: ([thread.start() for thread in threads], [thread.join() for thread in threads]))


def measure_many(options: Sequence[str], servers: int = 1) -> Iterator[Row]:
    """A crowd that comes in at the same time; each of them takes home what the others brought before it."""
    with ExitStack() as stack:
        ports = [stack.enter_context(laptop(*options)) for _ in range(servers)]
        phones = [Phone(ports[number % servers], number) for number in range(PHONES)]
        journals = {phone.device: make_entries(EACH, number) for number, phone in enumerate(phones)}
        took: list[float] = []
        came: list[int] = []
        share = lambda phone: took.append(timed(lambda: came.append(phone.share(journals[phone.device]))))  # noqa: E731
        whole = at_once(phones, share)
        assert len(took) == len(came) == PHONES
        where = f" at {servers} servers" if servers > 1 else ""
        yield Row(f"{PHONES} phones at once{where}, {EACH} entries each: all done", whole, "ms", 20_000)
        yield Row("the slowest of them", max(took), "ms", 20_000)
        yield Row("entries a second taken", PHONES * EACH / whole * 1000, "/s", at_least=500)
        yield Row("and handed on to the others", sum(came) / whole * 1000, "/s")


@contextmanager
def databases() -> Iterator[dict[str, Callable[[], tuple[str, ...]]]]:
    """For each database, options by which a laptop begins a new notebook in it."""
    found: dict[str, Callable[[], tuple[str, ...]]] = {"SQLite": tuple}
    if postgres.why_not():
        print(postgres.why_not())
        yield found
        return
    with postgres.serving(fsync="on") as server:
        number = itertools.count(1)
        yield {**found, "PostgreSQL": lambda: ("--database", f"{server}postgres", "--household", f"h{next(number)}")}


def main() -> int:
    """1 when a figure is not what it must be."""
    print("Phone and laptop")
    missed = 0
    with databases() as found:
        begin = list(found.values())
        tables = [chain(measure_one(new()), measure_many(new())) for new in begin]
        for rows in zip(*tables, strict=True):
            missed += show(rows, found)
        for new in begin[1:]:  # a file has one server
            missed += sum(show([row], ["PostgreSQL"]) for row in measure_many(new(), 2))
    entries = make_entries(ENTRIES)
    missed += show([Row(f"fold of {ENTRIES} entries", timed(lambda: fold(entries)), "ms", 500)], [""])
    return int(missed > 0)


def show(rows: Sequence[Row], names: Iterable[str]) -> int:
    """The same figure of each database, one below the other; how many of them were missed."""
    for row, name in zip(rows, names, strict=True):
        replace(row, what=f"{row.what}, {name}".rstrip(", ")).show()
    return sum(row.verdict == "MISSED" for row in rows)


if __name__ == "__main__":
    sys.path.insert(0, str(Path(__file__).parent))
    sys.exit(main())
