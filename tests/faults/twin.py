"""A phone as the page makes one, in few lines of Python: what `web/journal` does with entries, step for step.

Hundreds of runs a minute need one that lives in the same process as the laptop; a handful of the same runs use the
page's own code in a browser, so that the two cannot drift apart unseen.
"""

from collections.abc import Callable
from typing import Any

from scantling.clock import HybridClock
from scantling.store import canonical_text, digest_of, sum_of
from scantling.store.canonical import says_the_same
from scantling.sync import PROTOCOL

Entry = dict[str, Any]
Send = Callable[[str, dict[str, Any]], dict[str, Any] | None]
COMPARISONS_AT_MOST = 50
ROUNDS_AT_MOST = 400


class Twin:
    """Entries by id, each with its standing; the rest is what the page keeps in its facts."""

    def __init__(self, chance, at_ms):
        self.chance, self.at_ms = chance, at_ms
        self.kept, self.standing, self.digests, self.aside = {}, {}, {}, {}
        self.seq, self.clock, self.database, self.cursor = 0, HybridClock(), None, 0
        self.device = self._name()

    def _name(self):
        return f"{self.chance.getrandbits(64):016x}"

    def _mint(self):
        text = f"{self.chance.getrandbits(128):032x}"
        return f"{text[:8]}-{text[8:12]}-7{text[13:16]}-8{text[17:20]}-{text[20:]}"

    # ---- what a person does

    def write(self, kind, body, supersedes=()):
        self.seq += 1
        entry = {
            "id": self._mint(), "device": self.device, "seq": self.seq,
            "stamp": self.clock.stamp(self.at_ms, self.device),
            "version": 1, "kind": kind, "body": body, "supersedes": list(supersedes),
        }  # fmt: skip
        self.kept[entry["id"]], self.standing[entry["id"]] = entry, "waiting"

    def entries(self):
        return list(self.kept.values())

    def read_file(self, entries):
        fresh = [entry for entry in entries if entry["id"] not in self.kept]
        for entry in fresh:
            self.kept[entry["id"]], self.standing[entry["id"]] = entry, "waiting"
        self._meet(fresh)

    def copy(self):
        """All that is on its disk."""
        clock = (self.clock._ms, self.clock._counter)
        plain = {name: getattr(self, name) for name in ("seq", "device", "database", "cursor")}
        tables = {name: dict(getattr(self, name)) for name in ("kept", "standing", "digests", "aside")}
        return plain, tables, clock

    def put_back(self, copy):
        plain, tables, (self.clock._ms, self.clock._counter) = copy
        for name, value in plain.items():
            setattr(self, name, value)
        for name, table in tables.items():
            setattr(self, name, dict(table))

    def forget(self, some):
        """Its memory lost these, and nobody was told."""
        for key in some:
            if self.standing.get(key) == "shared":
                del self.kept[key], self.standing[key], self.digests[key]

    def damage(self, key, entry):
        """Its memory says otherwise now; what it had noted of the entry's digest it notes anew when it counts."""
        if self.standing.get(key) == "shared":
            self.kept[key] = entry
            self.digests[key] = digest_of(canonical_text(entry))

    def waiting(self):
        return [key for key, standing in self.standing.items() if standing == "waiting"]

    def refused(self):
        return [key for key, standing in self.standing.items() if standing == "refused"]

    # ---- the exchange

    def synchronize(self, send: Send) -> int | None:
        """How many requests it took, or None when one was lost."""
        compared = requests = 0
        for _ in range(ROUNDS_AT_MOST):
            sent = self.waiting()[: self.chance.randrange(1, 40)]
            requests += 1
            reply = self._ask(send, "", database=self.database, cursor=self.cursor,
                              entries=[self.kept[key] for key in sent])  # fmt: skip
            if reply is None:
                return None
            self._take(reply, sent)
            if reply["left"] or self.waiting():
                continue
            if reply["total"] == sum_of(self.digests.values()):
                return requests
            compared += 1
            assert compared <= COMPARISONS_AT_MOST, "the two do not come to agree"
            requests += 1
            if not self._compare(send):
                return None
        raise AssertionError("the exchange did not come to an end")

    def _ask(self, send, path, **said):
        return send(path, {"protocol": PROTOCOL, "device": self.device, **said})

    def _take(self, reply, sent):
        why = {one["id"]: one["message"] for one in reply["rejected"]}
        digests = {key: digest_of(canonical_text(self.kept[key])) for key in sent}
        self._settle(reply["instead"], why)
        for key in reply["acked"]:
            if self.standing[key] != "shared":
                self.standing[key], self.digests[key] = "shared", digests[key]
        for key in why:
            if self.standing.get(key) == "waiting":
                self.standing[key] = "refused"
        self._settle(reply["entries"], why)
        self.database, self.cursor = reply["database"], reply["cursor"]

    def _settle(self, arrived, why):
        fresh = []
        for entry in arrived:
            key, text = entry["id"], canonical_text(entry)
            known = self.kept.get(key)
            if known is None:
                fresh.append(entry)
            elif not says_the_same(canonical_text(known), text):
                self.aside[canonical_text(known)] = why.get(key, "other words")
            self.kept[key], self.standing[key], self.digests[key] = entry, "shared", digest_of(text)
        self._meet(fresh)

    def _meet(self, fresh):
        for entry in fresh:
            self.clock.see(entry["stamp"], self.at_ms)
        if any(entry["device"] == self.device for entry in fresh):
            self.device, self.seq = self._name(), 0

    def _compare(self, send):
        sums: dict[str, str] = {}
        for digest in self.digests.values():
            sums[digest[:2]] = sum_of((sums.get(digest[:2], "0"), digest))
        compared = self._ask(send, "/compare", sums=sums)
        if compared is None:
            return False
        ours = {digest: key for key, digest in self.digests.items() if digest[:2] in compared["differ"]}
        theirs = {digest for digests in compared["differ"].values() for digest in digests}
        lacking = sorted(theirs - ours.keys())
        while lacking:
            fetched = self._ask(send, "/fetch", digests=lacking[:500])
            if fetched is None:
                return False
            self._settle(fetched["entries"], {})
            here = set(self.digests.values())
            left = [digest for digest in lacking if digest not in here]
            if len(left) == len(lacking):
                break
            lacking = left
        for digest in ours.keys() - theirs:
            key = ours[digest]
            if self.digests.get(key) == digest:  # or what the laptop has under this id has taken its place just now
                self.standing[key] = "waiting"
                del self.digests[key]
        return True
