"""Nothing is lost and nothing is there twice: phones and a laptop through every kind of bad day, then all are equal.

Each run is drawn from a seed: lost requests, lost replies, late repeats of old requests, clocks years apart, a laptop
whose database is put back from an old copy, a phone that loses what it had fetched, a phone cloned onto another.
"""

import random
import shutil
import sqlite3

import pytest
from scantling.store import FILE_NAME, open_store
from scantling.sync import PROTOCOL, exchange

RUNS = (*range(7), 171)  # in the last, by counts alone, an entry is missed that a laptop put back lacks
EVENTS = 160
DAYS = {"restored": {"restore"}, "cloned": {"clone"}, "restored and cloned": {"restore", "clone"}}


class Network:
    """The way to the laptop: it loses requests and replies, and delivers old requests once more."""

    def __init__(self, chance, folder):
        self.chance, self.folder, self.calm = chance, folder, False
        self.old_requests = []
        self.store = open_store(folder)

    def send(self, request):
        if not self.calm and self.chance.random() < 0.15:
            return None
        self.old_requests.append(request)
        reply = exchange(self.store, request, "build")
        if not self.calm and self.chance.random() < 0.15:
            return None
        return reply

    def repeat_an_old_request(self):
        if self.old_requests:
            exchange(self.store, self.chance.choice(self.old_requests), "build")

    def copy_aside(self):
        """A backup as a person makes one: the file as it is at that moment."""
        source, aside = sqlite3.connect(self.folder / FILE_NAME), sqlite3.connect(self.folder / "aside")
        source.backup(aside)
        source.close()
        aside.close()

    def put_back(self):
        if not (self.folder / "aside").exists():
            return
        self.store.close()
        for path in self.folder.glob(FILE_NAME + "*"):
            path.unlink()
        shutil.copy(self.folder / "aside", self.folder / FILE_NAME)
        self.store = open_store(self.folder)


class Phone:
    """What a phone does, in few lines: keep everything, send what is not acknowledged, compare counts."""

    def __init__(self, chance, device, clock_ms):
        self.chance, self.device, self.clock_ms, self.seq = chance, device, clock_ms, 0
        self.kept, self.acked, self.written, self.set_aside = {}, set(), set(), {}
        self.database, self.cursor = None, 0

    def write(self):
        self.seq += 1
        self.clock_ms += self.chance.randrange(1, 10_000)
        entry = {
            "id": self._mint(), "device": self.device, "seq": self.seq, "version": 1, "kind": "device",
            "stamp": f"{self.clock_ms:012x}-0000-{self.device}", "body": {"name": f"{self.chance.random()}"},
            "supersedes": [],
        }  # fmt: skip
        self._keep_own(entry)

    def _keep_own(self, entry):
        self.kept[entry["id"]] = entry
        self.written.add(entry["id"])

    def _mint(self):
        text = f"{self.chance.getrandbits(128):032x}"
        return f"{text[:8]}-{text[8:12]}-7{text[13:16]}-8{text[17:20]}-{text[20:]}"

    def clone(self):
        twin = Phone(self.chance, self.device, self.clock_ms)
        twin.seq, twin.database, twin.cursor = self.seq, self.database, self.cursor
        twin.kept, twin.acked, twin.written = dict(self.kept), set(self.acked), set(self.written)
        return twin

    def lose_what_was_fetched(self):
        """A browser that forgot: what this phone has not sent yet is what it must not lose, and does not here."""
        unsent = {key: entry for key, entry in self.kept.items() if key not in self.acked}
        self.kept, self.acked, self.database, self.cursor = unsent, set(), None, 0

    def synchronize(self, network):
        more = True
        for _ in range(12):
            unsent = [entry for key, entry in self.kept.items() if key not in self.acked]
            reply = network.send(self._request(unsent[: self.chance.randrange(1, 40)]))
            if reply is None:
                return False
            if reply.get("reset"):
                self.acked, self.database, self.cursor = set(), reply["database"], 0
                continue
            self._take(reply)
            more = reply["more"] or any(key not in self.acked for key in self.kept) or self._heal(reply["have"])
            if not more:
                return True
        return not more

    def _request(self, entries):
        return {
            "protocol": PROTOCOL, "device": self.device, "database": self.database, "cursor": self.cursor,
            "entries": entries,
        }  # fmt: skip

    def _take(self, reply):
        self.database, self.cursor = reply["database"], reply["cursor"]
        self.acked.update(reply["acked"])
        for entry in reply["entries"]:
            self.kept[entry["id"]] = entry
            self.acked.add(entry["id"])
        for refused in reply["rejected"]:
            assert refused["key"] == "seq-taken", refused
            self._rename(refused["id"])

    def _rename(self, refused_id):
        """A clone notices that its name is taken: it takes a new one, and writes the refused entry again under it.
        A refused entry of somebody else is set aside, or it would be written again by each who had read it."""
        refused = self.kept.pop(refused_id)
        if refused_id not in self.written:
            self.set_aside[refused_id] = refused
            return
        if refused["device"] == self.device:
            self.device, self.seq = f"{self.chance.getrandbits(64):016x}", 0
        self.seq += 1
        self._keep_own({**refused, "id": self._mint(), "device": self.device, "seq": self.seq})

    def _heal(self, have):
        """Compare the counts by device: send again what the laptop lacks, read again what this phone lacks."""
        mine = {}
        for entry in self.kept.values():
            mine[entry["device"]] = mine.get(entry["device"], 0) + 1
        lacking = {device for device, count in mine.items() if have.get(device, 0) < count}
        self.acked -= {key for key, entry in self.kept.items() if entry["device"] in lacking}
        behind = any(mine.get(device, 0) < count for device, count in have.items())
        if behind:
            self.cursor = 0
        return bool(lacking) or behind


def live_through(chance, network, phones, days):
    """One bad day after another."""
    for _ in range(EVENTS):
        phone = chance.choice(phones)
        event = chance.random()
        if event < 0.55:
            phone.write()
        elif event < 0.85:
            phone.synchronize(network)
        elif event < 0.90:
            network.repeat_an_old_request()
        elif event < 0.93:
            network.copy_aside()
        elif event < 0.95 and "restore" in days:
            network.put_back()
        elif 0.95 <= event < 0.97:
            phone.lose_what_was_fetched()
        elif event >= 0.97 and len(phones) < 4 and "clone" in days:
            phones.append(phone.clone())


def said_by(entries):
    return sorted(entry["body"]["name"] for entry in entries)


def in_store(store):
    with store.reading() as ledger:
        return [row.entry for row in ledger.read_all()]


@pytest.mark.parametrize("days", DAYS.values(), ids=DAYS)
@pytest.mark.parametrize("seed", RUNS)
def test_after_any_days_nothing_is_lost_and_nothing_is_there_twice(seed, days, tmp_path):
    chance = random.Random(seed)
    network = Network(chance, tmp_path)
    clocks = (1_790_000_000_000, 1_790_000_000_000 - 30 * 86_400_000, 1_821_000_000_000)
    phones = [Phone(chance, f"{chance.getrandbits(64):016x}", clock) for clock in clocks]
    live_through(chance, network, phones, days)
    held = {name for phone in phones for name in said_by(phone.kept.values())}
    network.calm = True
    for _ in range(8):
        for phone in phones:
            phone.synchronize(network)
    kept = said_by(in_store(network.store))
    network.store.close()
    set_aside = {name for phone in phones for name in said_by(phone.set_aside.values())}
    assert held <= {*kept, *set_aside}
    assert all(said_by(phone.kept.values()) == kept for phone in phones)
    # A laptop put back to before a clone was noticed can meet the same words under the old name and the new: kept
    # twice, which a person can strike, or set aside with one who had read them. Without that, once is once.
    if len(days) == 1:
        assert not set_aside
        assert len(kept) == len(set(kept))
