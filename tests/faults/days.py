"""Bad days for two phones and a laptop, drawn from a seed; and what must be true when they are over.

Requests and replies are lost, doubled, delayed beyond later ones, and cut short. Clocks jump by decades. The laptop's
database and the phones are put back to older copies, all of them at once too: one stolen bag. Phones are cloned, lose
entries, and hold damaged ones. Journals travel as files.
"""

import json
import os
import random
import shutil
import sqlite3
from collections import Counter
from pathlib import Path

from scantling.clock import DAY_MS, now_ms
from scantling.doctor.clocks import look_at_clock
from scantling.doctor.keeping import look_at_folder, look_at_notebook
from scantling.engine.desk import Desk
from scantling.journal_file.restoring import restore
from scantling.laptop import Laptop
from scantling.store import FILE_NAME, canonical_text, open_store
from scantling.sync import compare, exchange, fetch

#: A journal is read back from memory as well as from a disk: what is tested here is not the disk, and it is slow.
MEMORY = Path("/dev/shm") if os.access("/dev/shm", os.W_OK) else None
EVENTS = 75
PHONES_AT_MOST = 5
ROUNDS_TO_REST = 4
YEAR_MS = 31_557_600_000
NOW_MS = 1_795_000_000_000
CLOCKS = (0, 0, 0, -20 * YEAR_MS, 20 * YEAR_MS, -60 * YEAR_MS, 90_000_000, -90_000_000, 500 * YEAR_MS)
PATHS = {"": lambda store, sent: exchange(store, sent, "build"), "/compare": compare, "/fetch": fetch}


class Network:
    """The way to the laptop. While it is calm, all arrives once and at once."""

    def __init__(self, chance, folder):
        self.chance, self.folder, self.calm = chance, Path(folder), False
        self.old_requests, self.copies, self.sent = [], [], 0
        self.store = open_store(self.folder)

    def send(self, path, request):
        """The reply, or None when it did not come. What crosses is text, as it is on a wire."""
        text = json.dumps(request)
        self.sent += len(request.get("entries", ()))
        luck = 1 if self.calm else self.chance.random()
        if luck < 0.10:
            return None
        self.old_requests.append((path, text))
        reply = self._deliver(path, text)
        if luck < 0.15:
            reply = self._deliver(path, text)
        if luck > 0.90 and not self.calm:  # lost, or cut short: a phone cannot tell and need not
            return None
        return json.loads(reply)

    def _deliver(self, path, text):
        return json.dumps(PATHS[path](self.store, json.loads(text)))

    def deliver_an_old_request(self):
        if self.old_requests:
            self._deliver(*self.chance.choice(self.old_requests))

    def copy_aside(self):
        """A backup as a person makes one: the file as it is at that moment."""
        aside = self.folder / f"copy-{len(self.copies)}"
        with sqlite3.connect(self.folder / FILE_NAME) as source, sqlite3.connect(aside) as target:
            source.backup(target)
        source.close()
        target.close()
        self.copies.append(aside)

    def put_back(self):
        if not self.copies:
            return
        self.store.close()
        for path in self.folder.glob(FILE_NAME + "*"):
            path.unlink()
        shutil.copy(self.chance.choice(self.copies), self.folder / FILE_NAME)
        self.store = open_store(self.folder)

    def entries(self):
        with self.store.reading() as ledger:
            return [row.entry for row in ledger.read_all()]

    def write_by_hand(self, name):
        """The laptop writes too, as a program does that asks it to."""
        Laptop(self.store, lambda: NOW_MS).write("device", {"name": name})

    def read_file(self, lines):
        restored = restore(self.store, ["\n".join(lines).encode()])
        assert not restored.refusals


class Days:
    """One run. `make_phone(chance, at_ms)` gives a phone: a twin, or the page's own code in a browser."""

    def __init__(self, seed, folder, make_phone):
        self.chance = random.Random(seed)
        self.network = Network(self.chance, folder)
        self.make_phone = make_phone
        self.phones = [make_phone(self.chance, NOW_MS) for _ in range(2)]
        self.copies = []
        self.houses = []

    def live(self, events=EVENTS):
        deeds = list(DEEDS)
        for _ in range(events):
            deed = self.chance.choices(deeds, [DEEDS[one] for one in deeds])[0]
            deed(self, self.chance.choice(self.phones))

    def write(self, phone):
        """What a person writes leans on what the phone knows: it strikes, supersedes, and adds."""
        phone.at_ms += self.chance.randrange(1, 10_000)
        known = phone.entries()
        kind = self.chance.choice(("house", "setting", "setting", "strike", "device", "newer"))
        some = self.chance.choice(known)["id"] if known else None
        house = self.chance.choice(self.houses) if self.houses else None
        if kind == "strike" and some:
            phone.write("strike", {"entry": some, "why": ""})
        elif kind == "setting" and house:
            body = {"of": house, "name": "base.thickness", "value": f"{self.chance.randrange(1, 16)}/16"}
            phone.write("setting", body, [some] if some and self.chance.random() < 0.5 else [])
        elif kind == "newer":
            phone.write("paper_roll", {"width": 20.5, "½": [None, {"𝔘": 1e-7, "\uffff": "é"}]})
        elif kind == "device":
            phone.write("device", {"name": f"phone {self.chance.randrange(100)}"})
        else:
            self.houses.append(f"{self.chance.getrandbits(32):08x}-0000-4000-8000-000000000000")
            phone.write("house", {"house": self.houses[-1], "name": "a house", "built": None})

    def synchronize(self, phone):
        phone.synchronize(self.network.send)

    def delay(self, _):
        self.network.deliver_an_old_request()

    def jump(self, phone):
        phone.at_ms = NOW_MS + self.chance.choice(CLOCKS)

    def copy_aside(self, phone):
        self.network.copy_aside()
        self.copies.append((phone, phone.copy()))

    def put_phone_back(self, _):
        if self.copies:
            phone, copy = self.chance.choice(self.copies)
            phone.put_back(copy)

    def put_laptop_back(self, _):
        self.network.put_back()

    def steal_the_bag(self, phone):
        """Laptop and phone are gone, and both are set up again from what copies there are."""
        self.network.put_back()
        self.put_phone_back(phone)

    def clone(self, phone):
        if len(self.phones) < PHONES_AT_MOST:
            twin = self.make_phone(self.chance, phone.at_ms)
            twin.put_back(phone.copy())
            self.phones.append(twin)

    def forget(self, phone):
        known = [entry["id"] for entry in phone.entries()]
        phone.forget(self.chance.sample(known, min(len(known), 3)))

    def damage(self, phone):
        known = [entry for entry in phone.entries() if entry["kind"] == "device"]
        if known:
            entry = self.chance.choice(known)
            phone.damage(entry["id"], entry | {"body": {"name": "damaged"}})

    def carry_a_file(self, phone):
        self.chance.choice(self.phones).read_file(phone.entries())

    def carry_a_file_to_the_laptop(self, phone):
        held = {entry["id"]: canonical_text(entry) for entry in self.network.entries()}
        told = {entry["id"]: canonical_text(entry) for entry in phone.entries()}
        self.network.read_file([text for key, text in told.items() if held.get(key, text) == text])

    def write_on_the_laptop(self, _):
        self.network.write_by_hand(f"laptop {self.chance.randrange(100)}")

    # ---- afterwards

    def held(self):
        """The ids of all that anybody has."""
        return {entry["id"] for held in (*self.phones, self.network) for entry in held.entries()}

    def come_to_rest(self):
        """Calm days, until an exchange of each phone is one request that sends nothing."""
        self.network.calm = True
        for _ in range(ROUNDS_TO_REST):
            self.network.sent = 0
            requests = [phone.synchronize(self.network.send) for phone in self.phones]
            if requests == [1] * len(self.phones) and self.network.sent == 0:
                return
        raise AssertionError(f"still not at rest after {ROUNDS_TO_REST} rounds: {requests} requests")

    def check(self, before):
        """Everything is everywhere, once; all notebooks are equal byte for byte."""
        kept = self.network.entries()
        assert len({entry["id"] for entry in kept}) == len(kept)
        assert before <= {entry["id"] for entry in kept}
        told = sorted(map(canonical_text, kept))
        answer = notebook_of(kept)
        for phone in self.phones:
            assert not phone.waiting()
            assert not phone.refused()
            assert sorted(map(canonical_text, phone.entries())) == told
            assert notebook_of(phone.entries()) == answer

    def check_names(self):
        """Who had a twin has met it by now, and goes on under another name: no number is given twice any more."""
        for name in ("first", "second"):
            for phone in self.phones:
                phone.write("device", {"name": f"the {name} after"})
            self.come_to_rest()
        numbers = Counter((entry["device"], entry["seq"]) for entry in self.network.entries())
        last = [entry for entry in self.network.entries() if entry["body"].get("name") == "the second after"]
        assert len(last) == len(self.phones)
        assert all(numbers[entry["device"], entry["seq"]] == 1 for entry in last)

    def check_doctor(self):
        """On the laptop all is sound; of what was done to it the doctor names the clocks that ran away, and no more."""
        now = now_ms()
        told, notebook = look_at_notebook(self.network.folder)
        found = [*look_at_folder(self.network.folder, served=False), *told,
                 *look_at_clock(self.network.folder, notebook, now, lambda command: None)]  # fmt: skip
        ahead = any(int(entry["stamp"][:12], 16) > now + DAY_MS for entry in self.network.entries())
        assert {finding.key for finding in found if finding.wrong} == ({"clock-ahead"} if ahead else set())

    def close(self):
        self.network.store.close()


DEEDS = {
    Days.write: 40,
    Days.synchronize: 30,
    Days.delay: 3,
    Days.jump: 3,
    Days.copy_aside: 4,
    Days.put_phone_back: 2,
    Days.put_laptop_back: 2,
    Days.steal_the_bag: 2,
    Days.clone: 1,
    Days.forget: 2,
    Days.damage: 1,
    Days.carry_a_file: 2,
    Days.carry_a_file_to_the_laptop: 1,
    Days.write_on_the_laptop: 2,
}


def notebook_of(entries):
    return Desk(entries).answer_text('{"ask": "notebook"}')


def live_through(seed, folder, make_phone, events=EVENTS):
    """One run from its seed, checked; the seed is in whatever goes wrong."""
    days = Days(seed, folder, make_phone)
    try:
        days.live(events)
        before = days.held()
        days.come_to_rest()
        days.check(before)
        days.check_names()
        days.check_doctor()
    except Exception as error:
        error.add_note(f"seed {seed}")
        raise
    finally:
        days.close()
